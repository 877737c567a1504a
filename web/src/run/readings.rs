//! The form of a reading, what it says, and where it can go from there.

use super::PartProps;
use super::draft::Draft;
use super::form::line;
use super::read::{Against, Told, Use, numbers, told};
use crate::desk::{Desk, use_desk};
use crate::select::{Entries, Select};
use crate::state::Action;
use thinwright_core::{Field, Known};
use thinwright_quantity::{Kind, Rounding, format_bare};
use thinwright_words::Speaker;
use thinwright_words::run::{self as words, READINGS, Reading, Went};
use yew::prelude::*;

/// What was typed: which reading, and its entries.
type Typed = (Reading, Vec<String>);

/// Readings of the step at hand.
#[component]
pub(super) fn Readings(props: &PartProps) -> Html {
    let desk = use_desk();
    let typed = use_state(|| (Reading::Web, Vec::new()));
    let speaker = props.ran.speaker(&desk.catalog);
    let units = props.ran.answers.units;
    let (reading, texts) = (*typed).clone();
    let read = numbers(reading, &texts, units);
    let said = match (&read, Against::of(props)) {
        (Ok(Some(values)), Some(against)) => {
            let mut cache = props.books.0.borrow_mut();
            Some(told(reading, values, &against, (&speaker, &mut cache)))
        }
        _ => None,
    };
    let entry = |(at, reading): (usize, &Reading)| {
        (
            AttrValue::from(at.to_string()),
            AttrValue::from(reading.name()),
        )
    };
    let entries: Entries = vec![("".into(), READINGS.iter().enumerate().map(entry).collect())];
    let chosen = READINGS.iter().position(|r| *r == reading).unwrap_or(0);
    let on_choose = {
        let typed = typed.setter();
        Callback::from(move |key: String| {
            let reading = key.parse().ok().and_then(|at: usize| READINGS.get(at));
            typed.set((*reading.unwrap_or(&Reading::Web), Vec::new()));
        })
    };
    let lines = reading.entries().into_iter().enumerate();
    let lines = lines.map(|(at, (label, kind))| {
        let setter = typed.setter();
        let now: Typed = (*typed).clone();
        let on_type = Callback::from(move |text: String| {
            let (reading, mut texts) = now.clone();
            texts.resize(reading.entries().len(), String::new());
            texts[at] = text;
            setter.set((reading, texts));
        });
        let value = texts.get(at).cloned().unwrap_or_default();
        line(
            (format!("ran-read-{at}"), html! { { label } }, kind),
            (value, read == Err(at), ""),
            (units, on_type),
        )
    });
    html! {
        <div class="ran-readings">
            <h3 class="part-name">{ words::readings() }</h3>
            <label class="field-label" for="ran-reading">{ words::which_reading() }</label>
            <Select id={AttrValue::from("ran-reading")} {entries} chosen={AttrValue::from(chosen.to_string())} {on_choose} />
            <p class="part">{ reading.how() }</p>
            <div class="ran-numbers">{ for lines }</div>
            <div role="status">{ said.map(|said| result(props, (&desk, &speaker), said)).unwrap_or_default() }</div>
        </div>
    }
}

fn result(
    props: &PartProps,
    (desk, speaker): (&Desk, &Speaker<'_>),
    said: Result<Told, String>,
) -> Html {
    let told = match said {
        Err(why) => return html! { <p class="part field-problem">{ why }</p> },
        Ok(told) => told,
    };
    let line = |line: &String| html! { <p class="part">{ line }</p> };
    html! {
        <>
            { for told.lines.iter().map(line) }
            if let Some(to_use) = told.to_use { { use_it(props, (desk, speaker), to_use, &told.lines) } }
        </>
    }
}

/// The button that takes a reading where it belongs.
fn use_it(
    props: &PartProps,
    (desk, speaker): (&Desk, &Speaker<'_>),
    to_use: Use,
    lines: &[String],
) -> Html {
    let (draft, on_draft, desk) = (props.draft.clone(), props.on_draft.clone(), desk.clone());
    let units = speaker.units;
    let name = match to_use {
        Use::Off(_) | Use::Force(_) => words::into_note(),
        Use::Runout(_) => words::into_answers(),
    };
    let first = lines.first().cloned().unwrap_or_default();
    let onclick = Callback::from(move |_: MouseEvent| match to_use {
        Use::Off(by) => on_draft.emit(Draft {
            went: Some(Went::Gave),
            off: format_bare(Kind::ShortLength, by, units, Rounding::Nearest),
            ..draft.clone()
        }),
        Use::Force(force) => on_draft.emit(Draft {
            force: Some((force, first.clone())),
            ..draft.clone()
        }),
        Use::Runout(swing) => {
            let text = format_bare(Kind::ShortLength, swing, units, Rounding::Up);
            desk.say(Action::Keep(vec![(Field::Runout.into(), text)]));
            desk.say(Action::Know(Field::Runout.into(), Known::Measured));
        }
    });
    html! { <button type="button" class="button" {onclick}>{ name }</button> }
}
