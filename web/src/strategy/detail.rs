//! What stands behind a step: values to copy, limits, loads, the web, and what was set aside.

use super::bars::Findings;
use super::step::step_of;
use super::values::Values;
use crate::desk::use_desk;
use crate::lectern::WayIn;
use crate::run::way_to_run;
use crate::song::Song;
use crate::state::{Charts, Shown};
use crate::text;
use crate::trouble::way_to_trouble;
use thinwright_quantity::UnitSystem;
use thinwright_words::{Speaker, method_how, task_why};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct DetailProps {
    pub(crate) shown: Shown,
    pub(crate) setup: usize,
    pub(crate) at: usize,
    pub(crate) charts: Charts,
    pub(crate) units: UnitSystem,
}

/// What stands behind a step.
#[component]
pub(crate) fn Detail(props: &DetailProps) -> Html {
    let desk = use_desk();
    let Some(step) = step_of(&props.shown, props.setup, props.at) else {
        return html! {};
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let considered = step
        .considered
        .iter()
        .map(|c| speaker.considered(c, Some(step)));
    let cautions = step
        .cautions
        .iter()
        .map(|id| speaker.caution(id).to_owned());
    html! {
        <div class="detail">
            <p class="part"><WayIn number={step.number} open={props.shown.stage.stands()} /></p>
            { part(text::what_and_how(), &[task_why(step.task).to_owned(), method_how(step.method).to_owned()]) }
            { part(text::entry(), &[speaker.entry(&step.entry)]) }
            { part(text::cautions(), &cautions.collect::<Vec<_>>()) }
            <Values shown={props.shown.clone()} setup={props.setup} at={props.at} />
            if let Some(web) = &step.web { { part(text::web(), &[speaker.web(web)]) } }
            if let Some(ribs) = &step.rib { { part(text::ribs(), &[speaker.ribs(ribs)]) } }
            <Song shown={props.shown.clone()} step={step.clone()} charts={props.charts.clone()} units={props.units} />
            { part(text::loads(), &[speaker.loads(&step.loads)]) }
            <Findings shown={props.shown.clone()} setup={props.setup} at={props.at} units={props.units} />
            { part(text::considered(), &considered.collect::<Vec<_>>()) }
            { way_to_trouble() }
            { way_to_run() }
        </div>
    }
}

fn part(heading: &str, lines: &[String]) -> Html {
    titled("h5", heading, lines)
}

/// A heading of a level and its lines; nothing without lines.
pub(super) fn titled(level: &'static str, heading: &str, lines: &[String]) -> Html {
    let name = html! { <@{level} class="part-name">{ heading }</@> };
    let lines: Vec<&String> = lines.iter().filter(|l| !l.is_empty()).collect();
    match lines.as_slice() {
        [] => html! {},
        [line] => html! { <>{ name }<p class="part">{ line }</p></> },
        lines => html! {
            <>
                { name }
                <ul class="part part-list">{ for lines.iter().map(|line| html! { <li>{ line }</li> }) }</ul>
            </>
        },
    }
}
