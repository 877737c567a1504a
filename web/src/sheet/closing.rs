//! What is checked, measured and written down.

use super::Topic;
use super::setup::named;
use crate::run::outcome_of;
use thinwright_jobfile::Record;
use thinwright_words::{GainKind, after_turn_over, before_start, sheet as words};
use yew::prelude::*;

/// Empty rows for what was run.
const RUN_ROWS: usize = 4;
/// Room of a note, in empty rows.
const ROWS_OF_A_NOTE: usize = 2;
/// Most lines of what is worth measuring.
const WORTH_ROWS: usize = 3;

pub(super) fn closing(topic: &Topic, web: Html) -> Html {
    let (speaker, strategy) = (&topic.speaker, topic.strategy);
    let turned = strategy.setups.len() > 1;
    let budget = strategy
        .turn_over
        .iter()
        .map(|b| words::sentence(&speaker.turn_over(b)));
    html! {
        <>
            <section class="sheet-lists">
                <div>{ ticks(words::before_start(), &before_start()) }</div>
                if turned {
                    <div>{ ticks(words::after_turn(), &after_turn_over()) }</div>
                    <div>{ named(words::turning(), budget.collect()) }</div>
                }
                { web }
            </section>
            <section class="sheet-cautions">{ named(words::cautions(), speaker.cautions(strategy)) }</section>
            <section class="sheet-worth">
                { named(GainKind::Measure.heading(), worth_measuring(topic)) }
                { named(words::kept_of_job(), speaker.kept_of_job()) }
            </section>
            <section class="sheet-tables">
                { measured(topic) }
                { run(topic) }
            </section>
            <section class="sheet-signatures">
                { for words::signatures().map(|s| html! { <p class="sheet-sign">{ s }</p> }) }
            </section>
        </>
    }
}

/// What would save most if it were known.
fn worth_measuring(topic: &Topic) -> Vec<String> {
    let lines = topic
        .speaker
        .gains(&topic.strategy.gains, GainKind::Measure);
    lines.into_iter().take(WORTH_ROWS).collect()
}

/// A list with a box to tick before each line.
fn ticks(heading: &'static str, items: &[&'static str]) -> Html {
    html! {
        <>
            <h3>{ heading }</h3>
            <ul class="sheet-ticks">
                { for items.iter().map(|i| html! { <li><span class="tick" aria-hidden="true"></span>{ *i }</li> }) }
            </ul>
        </>
    }
}

fn measured(topic: &Topic) -> Html {
    let rows = words::measured_rows(&topic.speaker, topic.job);
    html! {
        <table class="sheet-measured">
            <caption>{ words::measured_caption() }</caption>
            <thead>
                <tr>{ for words::measured_columns().map(|c| html! { <th scope="col">{ c }</th> }) }</tr>
            </thead>
            <tbody>
                { for rows.into_iter().map(|(place, wanted)| html! {
                    <tr><th scope="row">{ place }</th><td class="sheet-number">{ wanted }</td><td></td><td></td></tr>
                }) }
            </tbody>
        </table>
    }
}

/// What was run, then empty rows for what will be.
fn run(topic: &Topic) -> Html {
    let columns = words::run_columns();
    let counted = topic.stamp.records.iter().filter(|r| !r.taken_back);
    let rows: Vec<Html> = counted.map(ran).collect();
    // What was written down takes more room than an empty row.
    let empty = RUN_ROWS.saturating_sub(ROWS_OF_A_NOTE * rows.len());
    let blank = || html! { <tr>{ for columns.map(|_| html! { <td></td> }) }</tr> };
    html! {
        <table class="sheet-run">
            <caption>{ words::run_caption() }</caption>
            <thead>
                <tr>{ for columns.map(|c| html! { <th scope="col">{ c }</th> }) }</tr>
            </thead>
            <tbody>
                { for rows }
                { for (0..empty).map(|_| blank()) }
            </tbody>
        </table>
    }
}

/// A row of what was run.
fn ran(record: &Record) -> Html {
    let value = |name: &str| {
        let found = record.values.iter().find(|(n, _)| n == name);
        let text = found.map(|(_, value)| value.clone()).unwrap_or_default();
        html! { <td class="sheet-number">{ text }</td> }
    };
    let how = [
        outcome_of(record).unwrap_or_default(),
        record.note.as_str(),
        record.date.as_str(),
    ];
    let how: Vec<&str> = how.into_iter().filter(|t| !t.is_empty()).collect();
    html! {
        <tr>
            <td class="sheet-number">{ record.step }</td>
            { for ["n", "vf", "ae", "ap"].map(value) }
            <td>{ how.join("; ") }</td>
        </tr>
    }
}
