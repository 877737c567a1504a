//! One setup on paper: sketch, datum, where to stop, what to listen for, and the table of its steps.

use super::Topic;
use crate::drawing::Sketch;
use crate::keep::place_of;
use thinwright_core::pin::Place;
use thinwright_core::stability::StabilityReport;
use thinwright_core::strategy::{Setup, Step};
use thinwright_core::vibration::TipKnown;
use thinwright_quantity::{Kind, Length};
use thinwright_words::{method_name, sheet as words, task_name, verdict};
use yew::prelude::*;

pub(super) fn block(topic: &Topic, index: usize) -> Html {
    let Some(setup) = topic.strategy.setups.get(index) else {
        return html! {};
    };
    let speaker = &topic.speaker;
    let heading = words::setup_heading(speaker, index + 1, setup);
    let datum = words::datum(speaker, topic.job, setup, index == 0);
    html! {
        <section class="sheet-setup">
            <h2>{ heading }</h2>
            <div class="sheet-beside">
                <Sketch job={topic.job.clone()} outcome={topic.outcome.clone()} setup={index} />
                <div class="sheet-notes">
                    { list(datum) }
                    { named(words::stop_and_measure(), stops(setup)) }
                </div>
                { by_ear(topic, setup) }
            </div>
            { table(topic, index + 1, setup) }
        </section>
    }
}

/// A list.
pub(super) fn list(items: Vec<String>) -> Html {
    html! { <ul>{ for items.into_iter().map(|i| html! { <li>{ i }</li> }) }</ul> }
}

/// A list under its heading; nothing where there is nothing to say.
pub(super) fn named(heading: &'static str, items: Vec<String>) -> Html {
    if items.is_empty() {
        return html! {};
    }
    html! { <><h3>{ heading }</h3>{ list(items) }</> }
}

fn stops(setup: &Setup) -> Vec<String> {
    let steps = setup.steps.iter();
    steps
        .filter_map(|s| Some(words::before_step(s.number, words::hold_point(s.task)?)))
        .collect()
}

/// The ladder of every step that may sing; what is quiet anyhow needs none.
fn by_ear(topic: &Topic, setup: &Setup) -> Html {
    let steps = setup.steps.iter();
    let loud = steps.filter_map(|s| {
        // Where a frequency is known, its line under the step says more, unless it may still sing.
        let told =
            |r: &StabilityReport| r.known > TipKnown::Nothing && !topic.speaker.may_it_sing(r);
        s.listen
            .filter(|l| l.planned > l.quiet && !s.stability.as_ref().is_some_and(told))
            .map(|l| (s.number, l))
    });
    let rows: Vec<Html> = loud
        .map(|(number, l)| {
            let depths = [l.start, l.increment, l.planned];
            html! {
                <tr>
                    <th scope="row">{ number }</th>
                    { for depths.map(|d| html! { <td class="sheet-number">{ topic.length(d) }</td> }) }
                    <td class="sheet-number">{ topic.length_down(l.quiet) }</td>
                </tr>
            }
        })
        .collect();
    if rows.is_empty() {
        return html! {};
    }
    html! {
        <table class="sheet-ear">
            <caption>{ words::ear_caption() }</caption>
            <thead>
                <tr>{ for words::ear_columns().map(|c| html! { <th scope="col">{ c }</th> }) }</tr>
            </thead>
            <tbody>{ rows }</tbody>
        </table>
    }
}

fn table(topic: &Topic, number: usize, setup: &Setup) -> Html {
    html! {
        <table class="sheet-steps">
            <caption>{ words::step_caption(number, topic.speaker.units) }</caption>
            <thead>
                <tr>{ for words::step_columns().map(|c| html! { <th scope="col">{ c }</th> }) }</tr>
            </thead>
            { for setup.steps.iter().map(|s| row(topic, s, place_of(setup.face_up, s.task))) }
        </table>
    }
}

/// Two lines a step: what is typed, and under it how to get in and which limit is closest.
fn row(topic: &Topic, step: &Step, place: Place) -> Html {
    let speaker = &topic.speaker;
    let leave = |value: Length| {
        if value.si() > 0.0 {
            topic.length(value)
        } else {
            "0".to_owned()
        }
    };
    let cells = [
        topic.bare(Kind::SpindleSpeed, step.n.si()),
        topic.bare(Kind::FeedSpeed, step.vf.si()),
        topic.length(step.ae),
        format!("{} \u{D7} {}", topic.length(step.ap), step.levels),
        format!(
            "{} \u{2192} {}",
            topic.length(step.z.0),
            topic.length(step.z.1)
        ),
        match step.leave {
            (wall, floor) if wall.si() <= 0.0 && floor.si() <= 0.0 => words::NOTHING.to_owned(),
            (wall, floor) => format!("{}, {}", leave(wall), leave(floor)),
        },
        speaker.time(step.time),
    ];
    let columns = (words::step_columns().len() - 1).to_string();
    html! {
        <tbody>
            <tr>
                <th scope="row" rowspan="2">{ step.number }</th>
                <td class="sheet-what"><b>{ words::upper(task_name(step.task)) }</b>{ ": " }{ method_name(step.method) }</td>
                <td class="sheet-cutter">{ cutter(topic, step) }</td>
                { for cells.into_iter().map(|c| html! { <td class="sheet-number">{ c }</td> }) }
            </tr>
            <tr class="sheet-under"><td colspan={columns}>{ under(topic, step, place) }</td></tr>
        </tbody>
    }
}

/// The cutter by its row, with what it is.
fn cutter(topic: &Topic, step: &Step) -> String {
    let found = topic.job.rack.iter().find(|c| c.row == step.cutter);
    found.map_or_else(String::new, |c| {
        let size = |m: f64| topic.bare(Kind::Length, m);
        words::cutter_short(c, &size(c.d), &size(c.stick_out))
    })
}

fn under(topic: &Topic, step: &Step, place: Place) -> String {
    let speaker = &topic.speaker;
    let mut out = words::in_by(&speaker.entry(&step.entry));
    out.extend(speaker.tabs(step).map(|tabs| words::tabs_left(&tabs)));
    if let Some(feed) = step.opening_feed {
        out += &words::opening_feed(&speaker.feed(feed));
    }
    if let Some(feed) = step.corner_feed {
        out += &words::corner_feed(&speaker.feed(feed));
    }
    if let Some(finding) = speaker.binding(step) {
        let holds = speaker.catalog.numbers.utilisation_holds;
        out += &words::closest(finding, verdict(finding, holds));
    }
    let song = step.stability.as_ref().and_then(|r| speaker.song_short(r));
    if let Some(song) = song {
        out.push(' ');
        out += &song;
    }
    if let Some(kept) = speaker.kept_at(place) {
        out.push(' ');
        out += &kept;
    }
    out
}
