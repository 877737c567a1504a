//! What is worth measuring, changing and buying: three short lists, the most worth first.

use crate::browser;
use crate::desk::use_desk;
use crate::form::element_id;
use crate::state::{Shown, Stage};
use crate::text;
use thinwright_core::estimate::Unknown;
use thinwright_core::gain::{Gain, What};
use thinwright_core::{Field, FieldId, Outcome};
use thinwright_quantity::UnitSystem;
use thinwright_words::{GAIN_KINDS, GainKind, Speaker};
use yew::prelude::*;

/// Lines of a list that stand in the open.
const SHORT: usize = 4;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct GainsProps {
    pub(crate) shown: Shown,
    pub(crate) units: UnitSystem,
}

/// The lists; what is kept has a list of its own.
#[component]
pub(crate) fn Gains(props: &GainsProps) -> Html {
    let desk = use_desk();
    let Outcome::Feasible(strategy) = &*props.shown.outcome else {
        return html! {};
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let kinds = GAIN_KINDS.into_iter().filter(|k| *k != GainKind::Kept);
    let list = |kind: GainKind| {
        let gains = strategy.gains.iter().filter(|g| GainKind::of(g) == kind);
        let lines: Vec<Html> = gains.map(|gain| line(&speaker, gain)).collect();
        listed(kind.heading(), &lines)
    };
    let come = match props.shown.stage {
        Stage::First | Stage::Final => Some(text::lists_come()),
        Stage::Stopped | Stage::Cut => Some(text::lists_cut()),
        Stage::Whole => None,
    };
    html! {
        <div class="gains">
            if let Some(come) = come { <p class="part part-quiet">{ come }</p> }
            { kinds.map(list).collect::<Html>() }
        </div>
    }
}

fn listed(heading: &'static str, lines: &[Html]) -> Html {
    if lines.is_empty() {
        return html! {};
    }
    let (short, rest) = lines.split_at(lines.len().min(SHORT));
    html! {
        <>
            <h3 class="part-name">{ heading }</h3>
            <ol class="gain-list">{ short.iter().cloned().collect::<Html>() }</ol>
            if !rest.is_empty() {
                <details class="more">
                    <summary class="more-name">{ text::further(rest.len()) }</summary>
                    <ol class="gain-list" start={(short.len() + 1).to_string()}>{ rest.iter().cloned().collect::<Html>() }</ol>
                </details>
            }
        </>
    }
}

fn line(speaker: &Speaker<'_>, gain: &Gain) -> Html {
    let what = speaker.what(&gain.what);
    let button = entered_at(&gain.what).map(|id| {
        let onclick = Callback::from(move |_: MouseEvent| {
            browser::reveal(&element_id(id));
        });
        let label = text::enter(&speaker.place(id));
        html! { <button type="button" class="button" aria-label={label} {onclick}>{ text::to_field() }</button> }
    });
    html! {
        <li class="gain">
            <p class="gain-words"><b>{ what }</b>{ ": " }{ speaker.brings(gain) }</p>
            { button }
        </li>
    }
}

/// The field that takes what was measured.
fn entered_at(what: &What) -> Option<FieldId> {
    let field = match what {
        What::Measure(Unknown::Kc) => Field::Kc,
        What::Measure(Unknown::MachineStiffness) => Field::Stiffness,
        What::Measure(Unknown::Runout) => Field::Runout,
        What::Measure(Unknown::Thrust) => Field::Thrust,
        _ => return None,
    };
    Some(field.into())
}
