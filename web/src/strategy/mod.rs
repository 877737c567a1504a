//! The strategy as a route card: setups, steps, what was worked out beside, or a reasoned no.

mod bars;
mod changed;
mod changes;
mod detail;
mod gains;
mod notes;
mod numbers;
mod orders;
mod refusal;
mod step;
mod values;
mod whole;

pub(crate) use changed::said;

use crate::desk::use_desk;
use crate::keep::{Keeping, place_of};
use crate::state::{Charts, Shown};
use crate::text;
use changes::Changes;
use notes::Notes;
use orders::Orders;
use refusal::RefusalView;
use step::StepView;
use thinwright_core::Outcome;
use thinwright_core::strategy::{Setup, Strategy};
use thinwright_quantity::UnitSystem;
use thinwright_words::Speaker;
use whole::Whole;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct RouteProps {
    pub(crate) shown: Shown,
    pub(crate) baseline: Option<Shown>,
    pub(crate) units: UnitSystem,
    /// The step that is open, from 0 over all setups.
    pub(crate) step: Option<usize>,
    /// What is shown belongs to other answers.
    pub(crate) stale: bool,
    /// What the person keeps.
    pub(crate) keeping: Keeping,
    /// Charts of stability.
    pub(crate) charts: Charts,
}

/// The strategy.
#[component]
pub(crate) fn Route(props: &RouteProps) -> Html {
    let desk = use_desk();
    let shown = &props.shown;
    let speaker = Speaker::new(props.units, &desk.catalog, &shown.answers);
    let inner = match &*shown.outcome {
        Outcome::Feasible(strategy) => feasible(props, &speaker, strategy),
        Outcome::Refused(_) => {
            html! { <RefusalView shown={shown.clone()} units={props.units} stale={props.stale} /> }
        }
    };
    let changes = props.baseline.clone().filter(|b| !b.same(shown));
    html! {
        <div class={classes!("route", props.stale.then_some("route-stale"))}>
            if let Some(before) = changes {
                <Changes {before} now={shown.clone()} units={props.units} />
            }
            { inner }
            if shown.stage.stands() { <Whole shown={shown.clone()} units={props.units} /> }
        </div>
    }
}

fn feasible(props: &RouteProps, speaker: &Speaker<'_>, strategy: &Strategy) -> Html {
    let shown = &props.shown;
    let mut first = 0;
    let setups = strategy.setups.iter().enumerate().map(|(number, setup)| {
        let from = first;
        first += setup.steps.len();
        html! { <li key={number} class="setup">{ setup_view(props, speaker, (number, from), setup) }</li> }
    });
    html! {
        <>
            <p class="route-summary">{ speaker.summary(strategy) }</p>
            <ol class="setups">{ setups.collect::<Html>() }</ol>
            if let Some(budget) = &strategy.turn_over {
                <p class="route-note">{ speaker.turn_over(budget) }</p>
            }
            <Orders orders={strategy.orders.clone()} units={props.units} answers={shown.answers.clone()} />
            <Notes shown={shown.clone()} units={props.units} />
        </>
    }
}

fn setup_view(
    props: &RouteProps,
    speaker: &Speaker<'_>,
    (number, first): (usize, usize),
    setup: &Setup,
) -> Html {
    let steps = (0..setup.steps.len()).map(|at| {
        let index = first + at;
        let place = place_of(setup.face_up, setup.steps[at].task);
        html! {
            <StepView
                key={place.key()}
                keeping={props.keeping.clone()}
                {place}
                shown={props.shown.clone()}
                setup={number}
                {at}
                {index}
                open={props.step == Some(index)}
                charts={(props.step == Some(index)).then(|| props.charts.clone())}
                units={props.units}
            />
        }
    });
    html! {
        <>
            <h3 class="setup-name">
                <span class="setup-number">{ text::setup(number + 1) }</span>
                { speaker.setup(setup) }
            </h3>
            <ol class="steps">{ steps.collect::<Html>() }</ol>
        </>
    }
}
