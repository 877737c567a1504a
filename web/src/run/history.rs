//! What was noted, the latest first; a note can be taken back and counted again.

use super::RanProps;
use super::draft::went;
use crate::desk::{Desk, use_desk};
use crate::state::Action;
use thinwright_jobfile::Record;
use thinwright_words::run as words;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(super) struct HistoryProps {
    pub(super) ran: RanProps,
}

/// The history.
#[component]
pub(super) fn History(props: &HistoryProps) -> Html {
    let desk = use_desk();
    let ran = &props.ran;
    let speaker = ran.speaker(&desk.catalog);
    let entries = ran.records.iter().enumerate().rev().map(|(at, record)| {
        let learned = record.learned.iter();
        let learned = learned.map(|l| speaker.learned_line(l.field.field, &l.before, &l.after));
        entry(&desk, (at, record), learned.collect())
    });
    html! {
        <div class="ran-history">
            <h3 class="part-name" id="ran-history" tabindex="-1">{ words::history() }</h3>
            if ran.records.is_empty() {
                <p class="part">{ words::no_history() }</p>
            } else {
                <ul class="ran-list">{ for entries }</ul>
            }
        </div>
    }
}

/// How a record went, in words; nothing where that was not said.
pub(crate) fn outcome_of(record: &Record) -> Option<&'static str> {
    record.outcome.map(|ran| went(ran).name())
}

fn entry(desk: &Desk, (at, record): (usize, &Record), learned: Vec<String>) -> Html {
    let number = at + 1;
    let values: Vec<String> = record
        .values
        .iter()
        .map(|(name, value)| words::value_written(name, value))
        .collect();
    let counts = !record.taken_back;
    let turn = desk.on(move |_: MouseEvent| Action::Count(at, !counts));
    let name = match counts {
        true => words::take_back(),
        false => words::count_again(),
    };
    html! {
        <li class="ran-entry" key={at}>
            <p class="ran-head">
                <span class="ran-number">{ number }</span>{ " " }
                <b>{ words::record_head(record.step, &record.task) }</b>{ " " }
                <span class="ran-date">{ &record.date }</span>
            </p>
            if !record.method.is_empty() { <p class="part">{ &record.method }</p> }
            if let Some(outcome) = outcome_of(record) { <p class="ran-outcome">{ outcome }</p> }
            if !values.is_empty() { <p class="part figure">{ values.join("; ") }</p> }
            if !record.note.is_empty() { <p class="ran-note">{ &record.note }</p> }
            { taught(record, learned) }
            if !record.judged.is_empty() && !record.elsewhere {
                <button type="button" class="button" aria-label={words::record_number(number, name)} onclick={turn}>{ name }</button>
            }
        </li>
    }
}

fn taught(record: &Record, learned: Vec<String>) -> Html {
    let still = match (record.taken_back, record.elsewhere) {
        (_, true) => Some(words::elsewhere()),
        (true, _) => Some(words::taken_back()),
        _ if learned.is_empty() && !record.judged.is_empty() => Some(words::taught_nothing()),
        _ => None,
    };
    html! {
        <>
            { for learned.into_iter().map(|line| html! { <p class="part">{ line }</p> }) }
            if let Some(still) = still { <p class="part ran-still">{ still }</p> }
        </>
    }
}
