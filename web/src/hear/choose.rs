//! What is listened to: the use, and the thing that is tapped or the step that is cut.

use super::Chosen;
use super::told::{Teller, steps_for};
use crate::select::Select;
use thinwright_core::{Answers, Field, FieldId};
use thinwright_words::hear::{self as words, Use};
use yew::prelude::*;

/// The key of the spindle among the things to tap.
const SPINDLE: &str = "spindle";
const USES: [Use; 3] = [Use::Cutter, Use::Web, Use::Cut];

/// Says what was chosen anew, and whether what was heard before still belongs to it.
pub(super) type Choose = Callback<(Chosen, bool)>;

/// The three uses.
pub(super) fn uses(chosen: &Chosen, choose: &Choose) -> Html {
    let one = |to: Use| {
        let (choose, next) = (
            choose.clone(),
            Chosen {
                to,
                ..chosen.clone()
            },
        );
        let onchange = Callback::from(move |_: Event| choose.emit((next.clone(), false)));
        radio("hear-use", to.name(), chosen.to == to, onchange)
    };
    html! {
        <fieldset class="hear-uses">
            <legend class="away">{ words::uses() }</legend>
            { for USES.map(one) }
        </fieldset>
    }
}

fn radio(
    group: &'static str,
    name: &'static str,
    checked: bool,
    onchange: Callback<Event>,
) -> Html {
    html! {
        <label class="web-choice">
            <input type="radio" name={group} {checked} {onchange} />
            { name }
        </label>
    }
}

/// The thing or the step.
pub(super) fn object(teller: &Teller, choose: &Choose) -> Html {
    if teller.chosen.to == Use::Cutter {
        thing(teller, choose)
    } else {
        step(teller, choose)
    }
}

/// The rows of the rack that can be tapped.
fn mills(answers: &Answers) -> impl Iterator<Item = u8> + '_ {
    let kind = |row: u8| answers.text(FieldId::in_row(Field::CutterKind, row));
    (0..answers.rack_rows()).filter(move |row| kind(*row).trim() != "drill")
}

/// What was chosen, as far as the rack still has it.
pub(super) fn fitting(chosen: &Chosen, answers: &Answers) -> Chosen {
    let there = |row: &u8| mills(answers).any(|mill| mill == *row);
    Chosen {
        row: chosen
            .row
            .and_then(|row| Some(row).filter(there).or_else(|| mills(answers).next())),
        ..chosen.clone()
    }
}

fn thing(teller: &Teller, choose: &Choose) -> Html {
    let (chosen, answers) = (teller.chosen, &teller.props.answers);
    let mut entries: Vec<(AttrValue, AttrValue)> = mills(answers)
        .map(|row| {
            (
                row.to_string().into(),
                teller.speaker.tapped_cutter(row).into(),
            )
        })
        .collect();
    entries.push((SPINDLE.into(), words::spindle().into()));
    let key = chosen
        .row
        .map_or_else(|| SPINDLE.to_owned(), |row| row.to_string());
    let on_choose = {
        let (choose, chosen) = (choose.clone(), chosen.clone());
        Callback::from(move |key: String| {
            let row = key.parse().ok();
            choose.emit((
                Chosen {
                    row,
                    ..chosen.clone()
                },
                false,
            ));
        })
    };
    let axis = |(x, name): (bool, &'static str)| {
        let (choose, next) = (
            choose.clone(),
            Chosen {
                x,
                ..chosen.clone()
            },
        );
        // What rang along one axis may be taken over for the other as well.
        let onchange = Callback::from(move |_: Event| choose.emit((next.clone(), true)));
        radio("hear-axis", name, chosen.x == x, onchange)
    };
    html! {
        <>
            <label class="field-label" for="hear-thing">{ words::what() }</label>
            <Select id="hear-thing" entries={vec![("".into(), entries)]} chosen={key} {on_choose} />
            if chosen.row.is_some() {
                <fieldset class="hear-uses">
                    <legend class="field-label">{ words::axis() }</legend>
                    { for [(true, "X"), (false, "Y")].map(axis) }
                </fieldset>
            }
        </>
    }
}

fn step(teller: &Teller, choose: &Choose) -> Html {
    let Some((at, step)) = teller.step() else {
        return html! { <p class="hear-alarm">{ words::no_step() }</p> };
    };
    let entries = steps_for(teller.props, teller.chosen.to)
        .into_iter()
        .map(|(i, step)| {
            (
                i.to_string().into(),
                teller.speaker.step_to_hear(step).into(),
            )
        })
        .collect();
    let on_choose = {
        let (choose, chosen) = (choose.clone(), teller.chosen.clone());
        Callback::from(move |key: String| {
            let step = key.parse().ok();
            choose.emit((
                Chosen {
                    step,
                    ..chosen.clone()
                },
                true,
            ));
        })
    };
    let web = teller
        .speaker
        .web_to_tap(step)
        .filter(|_| teller.chosen.to == Use::Web);
    html! {
        <>
            <label class="field-label" for="hear-step">{ words::step() }</label>
            <Select id="hear-step" entries={vec![("".into(), entries)]} chosen={at.to_string()} {on_choose} />
            if let Some(web) = web { <p class="part">{ web }</p> }
        </>
    }
}
