//! One step: number, task, cutter and the values to type; it opens to everything behind them.

use super::detail::Detail;
use super::numbers::Numbers;
use crate::desk::use_desk;
use crate::keep::Keeping;
use crate::state::{Action, Charts, Shown};
use crate::text;
use thinwright_core::Outcome;
use thinwright_core::pin::Place;
use thinwright_core::strategy::Step;
use thinwright_quantity::UnitSystem;
use thinwright_words::{Band, Speaker, band, utilisation, verdict};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct StepProps {
    pub(crate) shown: Shown,
    /// Which setup, and which step of it, from 0.
    pub(crate) setup: usize,
    pub(crate) at: usize,
    /// Which step of all, from 0.
    pub(crate) index: usize,
    pub(crate) open: bool,
    pub(crate) units: UnitSystem,
    pub(crate) keeping: Keeping,
    pub(crate) place: Place,
    /// Charts of stability; none while it is folded.
    pub(crate) charts: Option<Charts>,
}

/// The step of an outcome.
pub(super) fn step_of(shown: &Shown, setup: usize, at: usize) -> Option<&Step> {
    match &*shown.outcome {
        Outcome::Feasible(strategy) => strategy.setups.get(setup)?.steps.get(at),
        Outcome::Refused(_) => None,
    }
}

/// One step.
#[component]
pub(crate) fn StepView(props: &StepProps) -> Html {
    let desk = use_desk();
    let Some(step) = step_of(&props.shown, props.setup, props.at) else {
        return html! {};
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let (index, open) = (props.index, props.open);
    let onclick = desk.on(move |_: MouseEvent| Action::OpenStep((!open).then_some(index)));
    let detail = format!("step-{}", step.number);
    html! {
        <li class={classes!("step", open.then_some("step-open"))}>
            <h4 class="step-head">
                <button type="button" class="step-button" aria-expanded={open.to_string()} aria-controls={detail.clone()}
                    {onclick}>
                    <span class="step-number">{ step.number }</span>
                    <span class="step-title">{ speaker.step(step) }</span>
                    <span class="step-time">{ speaker.time(step.time) }</span>
                    <span class="step-sign" aria-hidden="true"></span>
                </button>
            </h4>
            <Numbers shown={props.shown.clone()} setup={props.setup} at={props.at} open={open}
                keeping={props.keeping.clone()} place={props.place} />
            { binding(&speaker, step) }
            { next(&speaker, step) }
            <div id={detail}>
                if open {
                    <Detail
                        shown={props.shown.clone()} setup={props.setup} at={props.at} units={props.units}
                        charts={props.charts.clone().unwrap_or_default()}
                    />
                }
            </div>
        </li>
    }
}

/// What binds the step, in words.
fn binding(speaker: &Speaker<'_>, step: &Step) -> Html {
    let Some(finding) = speaker.binding(step) else {
        return html! {};
    };
    let holds = speaker.catalog.numbers.utilisation_holds;
    let fails = band(finding.utilisation(), holds) == Band::Fails;
    html! {
        <p class={classes!("binding", fails.then_some("binding-fails"))}>
            if fails { <span class="mark" aria-hidden="true">{ text::MARK }</span> }
            <span class="binding-which">{ text::binds() }</span>
            { " " }
            <b>{ thinwright_words::limit_name(finding.limit) }</b>
            { " " }
            <span class="figure">{ utilisation(finding.utilisation()) }</span>
            { format!(", {}: {}", verdict(finding, holds), speaker.finding(finding)) }
        </p>
    }
}

/// What would bind next, in words.
fn next(speaker: &Speaker<'_>, step: &Step) -> Html {
    let Some(finding) = speaker.next(step) else {
        return html! {};
    };
    html! {
        <p class="binding">
            <span class="binding-which">{ text::next() }</span>
            { " " }
            <b>{ thinwright_words::limit_name(finding.limit) }</b>
            { " " }
            <span class="figure">{ utilisation(finding.utilisation()) }</span>
        </p>
    }
}
