//! The section of a step: words, chart, signs, table.

use super::axes::{HEIGHT, WIDTH};
use super::chart::{Shows, chart};
use super::{sign, table};
use crate::desk::use_desk;
use crate::drawing::{draw, number};
use crate::state::{Charts, Shown};
use thinwright_core::strategy::Step;
use thinwright_core::vibration::TipKnown;
use thinwright_quantity::UnitSystem;
use thinwright_words::{Speaker, stability as words};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct SongProps {
    pub(crate) shown: Shown,
    pub(crate) step: Step,
    pub(crate) charts: Charts,
    pub(crate) units: UnitSystem,
}

/// Whether a step will sing; nothing for a drill.
#[component]
pub(crate) fn Song(props: &SongProps) -> Html {
    let desk = use_desk();
    let step = &props.step;
    let Some(report) = &step.stability else {
        return html! {};
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let drawn = props.charts.at(&props.shown, step);
    let lobes = drawn.and_then(|drawn| drawn.as_deref());
    let shows = match (report.known, lobes) {
        (TipKnown::Nothing, _) => Shows::AnySpeed,
        (_, Some(lobes)) => Shows::Lobes(lobes),
        (_, None) => Shows::Words(words::working_out()),
    };
    let said = match shows {
        Shows::Words(text) => text.to_owned(),
        Shows::Lobes(_) | Shows::AnySpeed => speaker.chart_said(report, lobes),
    };
    let marks = chart(props.units, report, &shows);
    let view_box = format!("0 0 {} {}", number(WIDTH), number(HEIGHT));
    let lines = speaker.song(step);
    html! {
        <section class="song" aria-labelledby="song-name">
            <h5 class="part-name" id="song-name">{ words::name() }</h5>
            <ul class="part part-list">{ for lines.into_iter().map(|line| html! { <li>{ line }</li> }) }</ul>
            <figure class="song-figure">
                <svg class="song-chart map" viewBox={view_box} role="img" aria-label={said} xmlns="http://www.w3.org/2000/svg">
                    { draw(&marks, None, None) }
                </svg>
                { sign::legend(&speaker, report, lobes) }
            </figure>
            if let Some(lobes) = lobes { { table::table(&speaker, report, lobes) } }
        </section>
    }
}
