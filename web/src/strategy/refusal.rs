//! A reasoned no: what stands in the way, what was tried, and the smallest changes that would do.

use super::detail::titled;
use crate::desk::use_desk;
use crate::state::{Action, Shown};
use crate::text;
use thinwright_core::Outcome;
use thinwright_core::field::Input;
use thinwright_core::gain::{Gain, What};
use thinwright_core::strategy::Change;
use thinwright_quantity::{Kind, Rounding, UnitSystem, format_bare};
use thinwright_words::Speaker;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct RefusalProps {
    pub(crate) shown: Shown,
    pub(crate) units: UnitSystem,
    pub(crate) stale: bool,
}

/// The value of a change as a person would type it, rounded to the side that helps.
fn typed(change: &Change, units: UnitSystem) -> String {
    let kind = match change.field.field.spec().input {
        Input::Quantity(kind) => kind,
        Input::Text | Input::Choice(_) | Input::Row(_) => Kind::Ratio,
    };
    let rounding = if change.to > change.from {
        Rounding::Up
    } else {
        Rounding::Down
    };
    format_bare(kind, change.to, units, rounding)
}

/// The no.
#[component]
pub(crate) fn RefusalView(props: &RefusalProps) -> Html {
    let desk = use_desk();
    let Outcome::Refused(refusal) = &*props.shown.outcome else {
        return html! {};
    };
    let answers = &props.shown.answers;
    let speaker = Speaker::new(props.units, &desk.catalog, answers);
    let change = |change: &Change| {
        let (id, text) = (change.field, typed(change, answers.units));
        let onclick = desk.on(move |_: MouseEvent| Action::Type(id, text.clone()));
        let words = speaker.change(change);
        html! {
            <li class="change">
                <span>{ words.clone() }</span>
                <button type="button" class="button" {onclick} disabled={props.stale}
                    aria-label={text::apply_change(&words)}>{ text::apply() }</button>
            </li>
        }
    };
    let frees = |gain: &Gain| {
        let let_go = match gain.what {
            What::LetGo(id) => {
                let onclick = desk.on(move |_: MouseEvent| Action::LetGo(id));
                let label = text::let_go_of(&speaker.place(id));
                html! { <button type="button" class="button" {onclick} aria-label={label}>{ text::let_go() }</button> }
            }
            _ => html! {},
        };
        html! { <li class="change"><span>{ speaker.frees(gain) }</span>{ let_go }</li> }
    };
    let tried: Vec<String> = refusal
        .tried
        .iter()
        .map(|c| speaker.considered(c, None))
        .collect();
    let orders = refusal
        .orders
        .iter()
        .map(|o| format!("{}: {}", speaker.order(o), speaker.order_figures(o)));
    html! {
        <div class="refusal">
            <p class="refusal-line">
                <span class="mark" aria-hidden="true">{ text::MARK }</span>{ speaker.refusal(refusal) }
            </p>
            { titled("h3", text::conflict(refusal.conflict.len()), &speaker.conflict(refusal)) }
            if props.shown.stage.open() { <p class="part part-quiet">{ text::lists_come() }</p> }
            if !refusal.gains.is_empty() {
                <h3 class="part-name">{ text::possible() }</h3>
                <ul class="changes-that-help">{ refusal.gains.iter().map(frees).collect::<Html>() }</ul>
            }
            if !refusal.changes.is_empty() {
                <h3 class="part-name">{ text::changes_that_help() }</h3>
                <ul class="changes-that-help">{ refusal.changes.iter().map(change).collect::<Html>() }</ul>
            }
            { titled("h3", text::tried(), &tried) }
            { titled("h3", text::orders(), &orders.collect::<Vec<_>>()) }
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_core::{Field, FieldId};

    #[test]
    fn a_change_is_rounded_to_the_side_that_helps() {
        let field = FieldId::in_row(Field::CutterReach, 0);
        let up = Change {
            field,
            from: 0.011,
            to: 0.014_000_4,
        };
        assert_eq!(typed(&up, UnitSystem::Metric), "14.001");
        let down = Change {
            field,
            from: 0.02,
            to: 0.014_000_4,
        };
        assert_eq!(typed(&down, UnitSystem::Metric), "14");
    }
}
