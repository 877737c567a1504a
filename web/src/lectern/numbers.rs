//! The four numbers of a step, as large as they go.

use super::leaf::step;
use crate::desk::use_desk;
use crate::keep::place_of;
use crate::state::Shown;
use crate::text::lectern as text;
use thinwright_core::FieldId;
use thinwright_core::field::Field;
use thinwright_quantity::UnitSystem;
use thinwright_words::Speaker;
use thinwright_words::lectern::Figure;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct NumbersProps {
    pub(crate) shown: Shown,
    pub(crate) setup: usize,
    /// From 0 over all setups.
    pub(crate) at: usize,
    pub(crate) units: UnitSystem,
}

/// A unit of more letters takes more room beside its number.
const LONG_UNIT: usize = 5;

/// The four, each in a field of its own.
#[component]
pub(crate) fn Numbers(props: &NumbersProps) -> Html {
    let desk = use_desk();
    let shown = &props.shown;
    let Some(step) = step(shown, props.at) else {
        return html! {};
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &shown.answers);
    let setups = super::leaf::strategy(shown).map(|s| &s.setups);
    let face = setups.and_then(|s| s.get(props.setup)).map(|s| s.face_up);
    let kept = |field: Field| {
        let place = face.map(|face| place_of(face, step.task));
        let id = place.map(|place| FieldId::in_row(field, place.row()));
        id.is_some_and(|id| !shown.answers.text(id).trim().is_empty())
    };
    let fields = [
        Field::PinSpeed,
        Field::PinFeed,
        Field::PinStepDown,
        Field::PinStepover,
    ];
    let figures = speaker.figures(step).into_iter().zip(fields);
    let figures = figures.map(|(figure, field)| one(&figure, kept(field)));
    html! { <dl class="lectern-figures">{ figures.collect::<Html>() }</dl> }
}

fn one(figure: &Figure, kept: bool) -> Html {
    let long = figure.unit.chars().count() > LONG_UNIT;
    html! {
        <div class={classes!("lectern-figure", width(&figure.number), kept.then_some("lectern-kept"), long.then_some("lectern-long-unit"))}>
            <dt>
                <i class="symbol" aria-hidden="true">{ figure.symbol }</i>
                <span class="lectern-name">{ figure.name }</span>
                if kept { <span class="lectern-by-hand">{ text::kept() }</span> }
            </dt>
            <dd>
                <span class="lectern-number">{ grouped(&figure.number) }</span>
                { "\u{A0}" }
                <span class="lectern-unit">{ figure.unit.clone() }</span>
            </dd>
        </div>
    }
}

/// Groups of digits, parted by the style sheet: what parts them in print is of another width in every lettering.
fn grouped(number: &str) -> Html {
    let groups = number.split('\u{202F}').enumerate();
    let group = |(at, digits): (usize, &str)| match at {
        0 => html! { { digits.to_owned() } },
        _ => html! { <span class="lectern-group">{ digits.to_owned() }</span> },
    };
    groups.map(group).collect()
}

/// The class that says how many digits wide a number is, in halves: marks and gaps are narrow.
fn width(number: &str) -> &'static str {
    const CLASSES: [&str; 10] = [
        "lectern-wide-3",
        "lectern-wide-3h",
        "lectern-wide-4",
        "lectern-wide-4h",
        "lectern-wide-5",
        "lectern-wide-5h",
        "lectern-wide-6",
        "lectern-wide-6h",
        "lectern-wide-7",
        "lectern-wide-8",
    ];
    let halves: usize = number
        .chars()
        .map(|c| if c.is_ascii_digit() { 2 } else { 1 })
        .sum();
    CLASSES[halves.saturating_sub(6).min(CLASSES.len() - 1)]
}

#[cfg(test)]
mod tests {
    use super::width;

    #[test]
    fn a_number_is_as_wide_as_its_digits() {
        assert_eq!(width("800"), "lectern-wide-3");
        assert_eq!(width("1"), "lectern-wide-3");
        assert_eq!(width("12\u{202F}000"), "lectern-wide-5h");
        assert_eq!(width("0.4724"), "lectern-wide-5h");
        assert_eq!(width("2,5"), "lectern-wide-3");
        assert_eq!(width("123456789012"), "lectern-wide-8");
    }
}
