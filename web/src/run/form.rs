//! The form of a note, and what it would teach before it is accepted.

use super::PartProps;
use super::draft::{Draft, NUMBERS, Noted, Wrong};
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::select::{Entries, Select};
use crate::state::{Action, Lesson, lesson};
use crate::text;
use thinwright_core::strategy::Step;
use thinwright_core::{Answers, read};
use thinwright_jobfile::Record;
use thinwright_quantity::Kind;
use thinwright_words::run::{self as words, Went};
use thinwright_words::{Speaker, unit};
use web_sys::{HtmlInputElement, HtmlTextAreaElement};
use yew::prelude::*;

/// The form.
#[component]
pub(super) fn Form(props: &PartProps) -> Html {
    let desk = use_desk();
    let speaker = props.ran.speaker(&desk.catalog);
    let Some((job, strategy)) = props.ran.strategy() else {
        return html! {};
    };
    let index = props.draft.index(props.ran.step);
    let Some(step) = strategy.setups.iter().flat_map(|s| &s.steps).nth(index) else {
        return html! {};
    };
    let noted = props.draft.noted(
        (job, strategy, index),
        &speaker,
        &mut props.books.0.borrow_mut(),
    );
    let wrong = noted.as_ref().err().copied();
    let numbers = (0..NUMBERS.len()).map(|at| number(props, step, (at, wrong)));
    let all = strategy.setups.iter().flat_map(|s| &s.steps);
    let entry = |(at, step): (usize, &Step)| {
        (
            AttrValue::from(at.to_string()),
            AttrValue::from(speaker.step_to_choose(step)),
        )
    };
    let entries: Entries = vec![("".into(), all.enumerate().map(entry).collect())];
    let (draft, on_draft) = (props.draft.clone(), props.on_draft.clone());
    let on_choose = Callback::from(move |key: String| {
        on_draft.emit(Draft {
            step: key.parse().ok(),
            numbers: Default::default(),
            ..draft.clone()
        });
    });
    html! {
        <div class="ran-form">
            <h3 class="part-name">{ words::note_a_step() }</h3>
            <label class="field-label" for="ran-step">{ words::step() }</label>
            <Select id={AttrValue::from("ran-step")} {entries} chosen={AttrValue::from(index.to_string())} {on_choose} />
            { how(props) }
            if props.draft.went == Some(Went::Gave) { { off(props, wrong == Some(Wrong::Off)) } }
            <fieldset class="ran-numbers"><legend>{ words::really_run() }</legend>{ for numbers }</fieldset>
            { in_words(props) }
            { came(props, &desk, &speaker, noted) }
        </div>
    }
}

/// How it went: one of five.
fn how(props: &PartProps) -> Html {
    let one = |went: Went| {
        let (draft, on_draft) = (props.draft.clone(), props.on_draft.clone());
        let onchange = Callback::from(move |_: Event| {
            on_draft.emit(Draft {
                went: Some(went),
                ..draft.clone()
            });
        });
        html! {
            <label class="trouble-sign">
                <input type="radio" name="ran-how" checked={props.draft.went == Some(went)} {onchange} />
                <span>{ went.name() }</span>
            </label>
        }
    };
    html! {
        <fieldset class="ran-how" id="ran-how" tabindex="-1">
            <legend>{ words::how_it_went() }</legend>
            { for Went::ALL.into_iter().map(one) }
        </fieldset>
    }
}

/// A line to type on, with its label, unit and what is wrong.
pub(super) fn line(
    (id, label, kind): (String, Html, Kind),
    (value, wrong, why): (String, bool, &'static str),
    (units, on_type): (thinwright_quantity::UnitSystem, Callback<String>),
) -> Html {
    let oninput = on_type
        .reform(|event: InputEvent| event.target_unchecked_into::<HtmlInputElement>().value());
    let about = format!("{id}-about");
    let described = (wrong || !why.is_empty()).then(|| about.clone());
    let unit = unit(kind, units);
    html! {
        <div class={classes!("ran-line", wrong.then_some("field-wrong"))}>
            <label class="field-label" for={id.clone()}>{ label }</label>
            <div class="field-entry">
                <input {id} class="entry entry-number" type="text" {value} {oninput} spellcheck="false" autocapitalize="off"
                    aria-invalid={wrong.then_some("true")} aria-describedby={described} />
                if !unit.is_empty() { <span class="field-unit">{ unit }</span> }
            </div>
            if wrong {
                <p class="field-problem" id={about}><span class="mark" aria-hidden="true">{ text::MARK }</span>{ words::no_number() }</p>
            } else if !why.is_empty() {
                <p class="field-why" id={about}>{ why }</p>
            }
        </div>
    }
}

fn number(props: &PartProps, step: &Step, (at, wrong): (usize, Option<Wrong>)) -> Html {
    let (symbol, kind) = NUMBERS[at];
    let units = props.ran.answers.units;
    let (draft, on_draft) = (props.draft.clone(), props.on_draft.clone());
    let on_type = Callback::from(move |typed: String| {
        let mut draft = draft.clone();
        draft.numbers[at] = Some(typed);
        on_draft.emit(draft);
    });
    let label = html! { <><span>{ words::number_name(at) }</span>{ " " }<span class="field-symbol">{ symbol }</span></> };
    line(
        (format!("ran-{symbol}"), label, kind),
        (
            props.draft.number(at, step, units),
            wrong == Some(Wrong::Number(at)),
            "",
        ),
        (units, on_type),
    )
}

fn off(props: &PartProps, wrong: bool) -> Html {
    let (draft, on_draft) = (props.draft.clone(), props.on_draft.clone());
    let on_type = Callback::from(move |off: String| {
        on_draft.emit(Draft {
            off,
            ..draft.clone()
        });
    });
    let wrong = wrong && !props.draft.off.trim().is_empty();
    let label = html! { { words::off_by() } };
    line(
        ("ran-off".to_owned(), label, Kind::ShortLength),
        (props.draft.off.clone(), wrong, words::off_by_why()),
        (props.ran.answers.units, on_type),
    )
}

fn in_words(props: &PartProps) -> Html {
    let (draft, on_draft) = (props.draft.clone(), props.on_draft.clone());
    let oninput = Callback::from(move |event: InputEvent| {
        let note = event.target_unchecked_into::<HtmlTextAreaElement>().value();
        on_draft.emit(Draft {
            note,
            ..draft.clone()
        });
    });
    html! {
        <div class="ran-words">
            <label class="field-label" for="ran-note">{ words::in_words() }</label>
            <textarea id="ran-note" class="entry" rows="2" value={props.draft.note.clone()} {oninput} />
            if let Some((_, force)) = &props.draft.force { <p class="part">{ force }</p> }
        </div>
    }
}

/// What it would teach, and the buttons.
fn came(
    props: &PartProps,
    desk: &Desk,
    speaker: &Speaker<'_>,
    noted: Result<Noted, Wrong>,
) -> Html {
    let noted = match noted {
        Err(Wrong::Unsaid) => {
            return html! { <p class="part" role="status">{ words::say_how() }</p> };
        }
        Err(_) => return html! {},
        Ok(noted) => noted,
    };
    let teaching = noted.seen.map(|seen| Record {
        judged: seen.numbers(),
        ..noted.record.clone()
    });
    let lesson = teaching.as_ref().and_then(|record| {
        let mut records = (*props.ran.records).clone();
        records.push(record.clone());
        lesson(&records, &props.ran.answers, &desk.catalog)
    });
    let (told, learns) = would_teach(props, desk, speaker, lesson.as_ref());
    let button = |record: Record, name: &'static str, first: bool| {
        let (desk, on_draft, step) = (desk.clone(), props.on_draft.clone(), props.draft.step);
        let onclick = Callback::from(move |_: MouseEvent| {
            let date = browser::now();
            let record = Record {
                date,
                ..record.clone()
            };
            desk.say(Action::NoteRun(Box::new(record)));
            on_draft.emit(Draft {
                step,
                ..Draft::default()
            });
            browser::focus("ran-history");
        });
        let class = classes!("button", "trouble-button", first.then_some("button-first"));
        html! { <button type="button" {class} {onclick}>{ name }</button> }
    };
    html! {
        <>
            { told }
            <div class="buttons">
                if let Some(record) = teaching.filter(|_| learns) { { button(record, words::note_and_learn(), true) } }
                { button(noted.record, words::note_only(), false) }
            </div>
        </>
    }
}

/// What a lesson changes, in words; and whether it may be accepted.
fn would_teach(
    props: &PartProps,
    desk: &Desk,
    speaker: &Speaker<'_>,
    lesson: Option<&Lesson>,
) -> (Html, bool) {
    let Some(lesson) = lesson else {
        return (html! {}, false);
    };
    if lesson.at_odds.contains(&props.ran.records.len()) {
        let others = !props.ran.records.is_empty();
        let told = html! { <p class="part field-problem" role="status">{ words::this_at_odds(others) }</p> };
        return (told, false);
    }
    if !lesson.at_odds.is_empty() {
        let told = html! { <p class="part field-problem" role="status">{ text::at_odds_now(&lesson.at_odds) }</p> };
        return (told, false);
    }
    let mut after: Answers = (*props.ran.answers).clone();
    for (field, text) in &lesson.texts {
        after.set_text(*field, text.clone());
    }
    let jobs = read(&props.ran.answers, &desk.catalog)
        .ok()
        .zip(read(&after, &desk.catalog).ok());
    let rows = jobs.map_or_else(Vec::new, |(before, after)| speaker.ranges(&before, &after));
    let told = html! {
        <div class="ran-teaches" role="status">
            <h4 class="part-name">{ words::would_teach() }</h4>
            if rows.is_empty() {
                <p class="part">{ words::teaches_nothing() }</p>
            } else {
                { super::taught::table(&rows) }
                <p class="part">{ words::learned_use() }</p>
            }
        </div>
    };
    (told, true)
}
