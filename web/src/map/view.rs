//! The figure on the page: the map of the step in hand, or of the softest step; what it shows; its tables.

use super::chart::{Shows, chart};
use super::give::field;
use super::ground::Paper;
use super::legend;
use super::steps::Steps;
use super::{sight, softest_step};
use crate::desk::use_desk;
use crate::drawing::{Moment, draw, moment, number};
use crate::state::{Looks, Shown};
use std::rc::Rc;
use thinwright_core::strategy::Strategy;
use thinwright_core::task::Face;
use thinwright_core::{Detail, Outcome, Sight, WebPicture};
use thinwright_quantity::UnitSystem;
use thinwright_words::{Speaker, map as words};
use yew::prelude::*;

/// Paper of the map on the page: on the narrowest screen 3 px a unit.
const PAPER: Paper = Paper {
    width: 120.0,
    height: 128.0,
    letter: 4.0,
};

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct WebViewProps {
    pub(crate) shown: Shown,
    /// The step in hand, counted from 0.
    pub(crate) step: Option<usize>,
    pub(crate) looks: Looks,
    pub(crate) units: UnitSystem,
}

/// What there is of the web in a step.
struct Found<'a> {
    moment: Moment<'a>,
    sight: Option<Sight>,
    picture: Option<(Rc<WebPicture>, bool)>,
    /// Words where there is no picture: in its place, and below it.
    words: (&'static str, String),
}

fn find<'a>(
    props: &'a WebViewProps,
    strategy: &'a Strategy,
    speaker: &Speaker<'_>,
    at: usize,
) -> Option<Found<'a>> {
    let shown = &props.shown;
    let moment = moment(&shown.job, strategy, at)?;
    let sight = sight(&shown.job, strategy, at);
    let seen = sight.as_ref().map(|s| props.looks.at(&shown.answers, s));
    let (picture, words) = match seen {
        None => (None, (words::no_web(), words::no_web_why().to_owned())),
        Some(None) => (None, (words::working_out(), String::new())),
        Some(Some((Err(why), _))) => (None, (words::no_map(), speaker.web_error(why))),
        Some(Some((Ok(picture), detail))) => {
            let fine = detail == Detail::Fine;
            (
                Some((picture.clone(), fine)),
                ("", speaker.map_error(picture, fine)),
            )
        }
    };
    Some(Found {
        moment,
        sight,
        picture,
        words,
    })
}

/// The figure; nothing where no step works on a web.
#[component]
pub(crate) fn WebView(props: &WebViewProps) -> Html {
    let desk = use_desk();
    let tone = use_state(|| false);
    let Outcome::Feasible(strategy) = &*props.shown.outcome else {
        return html! {};
    };
    let steps =
        html! { <Steps shown={props.shown.clone()} step={props.step} units={props.units} /> };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let found = softest_step(strategy).and_then(|softest| {
        let at = props.step.unwrap_or(softest);
        Some((find(props, strategy, &speaker, at)?, at == softest))
    });
    let Some((found, of_all)) = found else {
        return html! {
            <section class="web web-bare" aria-label={words::steps()}>
                { steps }
                <p class="part-quiet">{ words::never_a_web() }</p>
            </section>
        };
    };
    let on_tone = {
        let tone = tone.clone();
        Callback::from(move |on: bool| tone.set(on))
    };
    html! {
        <section class="web" id="web" aria-labelledby="web-name">
            { steps }
            <h2 class="section-name" id="web-name">{ words::name() }</h2>
            <p class="web-of">
                { speaker.map_of(found.moment.step) }
                <span class="web-softest">if of_all { { words::softest_of_all() } }</span>
            </p>
            { choice(*tone, &on_tone) }
            { figure(props, &speaker, &found, *tone) }
            { beside(props, &speaker, &found, *tone) }
        </section>
    }
}

/// What the map shows: what the web gives, or its lowest tone.
fn choice(tone: bool, on_tone: &Callback<bool>) -> Html {
    let one = |name: &'static str, is_tone: bool| {
        let onchange = on_tone.reform(move |_: Event| is_tone);
        html! {
            <label class="web-choice">
                <input type="radio" name="web-shows" checked={tone == is_tone} {onchange} />{ name }
            </label>
        }
    };
    html! {
        <fieldset class="web-choices">
            <legend class="away">{ words::shown() }</legend>
            { one(words::gives(), false) }
            { one(words::tone(), true) }
        </fieldset>
    }
}

fn figure(props: &WebViewProps, speaker: &Speaker<'_>, found: &Found, tone: bool) -> Html {
    let shows = match &found.picture {
        None => Shows::Words(found.words.0),
        Some((picture, _)) if tone => Shows::Tone(picture),
        Some((picture, _)) => Shows::Gives(picture, words::gauge(props.units, picture.most)),
    };
    let Some(chart) = chart(&props.shown.job, &found.moment, &shows, (Face::A, PAPER)) else {
        return html! {};
    };
    let said = match (&found.picture, &found.moment.step.web) {
        (Some((picture, _)), Some(web)) if tone => speaker.tone(picture, web),
        (Some((picture, _)), _) => {
            let gauge = words::gauge(props.units, picture.most);
            let range = field(picture, &gauge).range().unwrap_or_default();
            speaker.map_said(picture, (range.0 * gauge.size, range.1 * gauge.size))
        }
        (None, _) => found.words.0.to_owned(),
    };
    let view_box = format!("0 0 {} {}", number(chart.width), number(chart.height));
    html! {
        <figure class="map-figure">
            <svg class="map" viewBox={view_box} role="img" aria-label={said} xmlns="http://www.w3.org/2000/svg">
                { draw(&chart.marks, None, None) }
            </svg>
        </figure>
    }
}

/// What stands beside the map.
fn beside(props: &WebViewProps, speaker: &Speaker<'_>, found: &Found, tone: bool) -> Html {
    let moment = &found.moment;
    let tables = match (&found.picture, &moment.step.web, &found.sight) {
        (Some((picture, _)), Some(web), _) if tone => html! {
            <>
                <p>{ speaker.tone(picture, web) }</p>
                if !picture.tones.is_empty() { <p class="part-quiet">{ words::tone_legend() }</p> }
            </>
        },
        (Some((picture, _)), _, Some(sight)) => {
            let gauge = words::gauge(props.units, picture.most);
            html! {
                <>
                    { legend::lines(picture, &gauge) }
                    { legend::of_places(speaker, &props.shown.job, (moment.setup.face_up, sight), (picture, &gauge)) }
                </>
            }
        }
        _ => html! {},
    };
    html! {
        <div class="web-beside">
            { tables }
            <p class="part-quiet" role="status">{ if tone && found.picture.is_some() { "" } else { &found.words.1 } }</p>
        </div>
    }
}
