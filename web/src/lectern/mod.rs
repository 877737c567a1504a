//! What is read at the machine: one page at a time, in figures that are read from where one stands, nothing to scroll and
//! nothing to type. It is open while the page's address says so.

mod address;
mod after;
mod awake;
mod body;
mod ears;
mod fit;
mod knobs;
mod leaf;
mod numbers;
mod room;
mod run;
mod spot;
#[cfg(test)]
mod tests;
mod turned;
mod view;

pub(crate) use address::use_open;

use crate::confirm::open;
use crate::language::use_language;
use crate::state::{Shown, State, Work};
use crate::text::lectern as text;
use address::use_spot;
use knobs::Knobs;
use leaf::{Tick, strategy};
use spot::Spot;
use std::collections::BTreeSet;
use std::rc::Rc;
use thinwright_core::confirm::Confirmation;
use thinwright_jobfile::Record;
use thinwright_quantity::UnitSystem;
use view::View;
use yew::prelude::*;

/// The way in from the title block.
pub(crate) const OPEN: &str = "at-machine-open";

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct LecternProps {
    /// A checked strategy of the answers as they stand.
    pub(crate) shown: Option<Shown>,
    /// One is being worked out.
    pub(crate) waits: bool,
    pub(crate) units: UnitSystem,
    /// What was run.
    pub(crate) records: Rc<Vec<Record>>,
    /// Risks that nobody has confirmed yet.
    pub(crate) open: Vec<Confirmation>,
}

impl LecternProps {
    pub(crate) fn of(state: &State) -> LecternProps {
        let shown = state.printable().cloned();
        let open = shown.as_ref().map(|s| open(s, &state.confirmed));
        LecternProps {
            shown,
            waits: state.work == Work::Under,
            units: state.answers.units,
            records: state.records.clone(),
            open: open.unwrap_or_default(),
        }
    }
}

/// What was ticked, for which strategy.
#[derive(Clone, Default, PartialEq)]
struct Ticked {
    of: Option<Shown>,
    ticks: BTreeSet<Tick>,
}

impl Ticked {
    /// What was ticked, unless other work was planned since.
    fn now(&self, shown: Option<&Shown>) -> BTreeSet<Tick> {
        let same = |a: &Shown, b: &Shown| {
            let setups = |s| strategy(s).map(|s| s.setups.clone());
            a.same(b) || setups(a) == setups(b)
        };
        match (&self.of, shown) {
            (Some(a), Some(b)) if same(a, b) => self.ticks.clone(),
            _ => BTreeSet::new(),
        }
    }
}

/// The view at the machine, if the address names it.
#[component]
pub(crate) fn Lectern(props: &LecternProps) -> Html {
    use_language();
    let (spot, go) = use_spot();
    // Both outlive the view: the knobs stay where they are, and what is done is done.
    let ticked = use_state(Ticked::default);
    let knobs = use_state_eq(Knobs::default);
    let Some(spot) = spot else {
        return html! {};
    };
    let ticks = ticked.now(props.shown.as_ref());
    let on_tick = {
        let (ticked, ticks, of) = (ticked.setter(), ticks.clone(), props.shown.clone());
        Callback::from(move |tick: Tick| {
            let mut ticks = ticks.clone();
            if !ticks.remove(&tick) {
                ticks.insert(tick);
            }
            let of = of.clone();
            ticked.set(Ticked { of, ticks });
        })
    };
    let on_turn = {
        let setter = knobs.setter();
        Callback::from(move |knobs: Knobs| setter.set(knobs))
    };
    html! {
        <View lectern={props.clone()} {spot} {go} {ticks} {on_tick} knobs={*knobs} {on_turn} />
    }
}

/// Name of a way in: from the title block, or from the step of a number.
fn way_in(number: Option<usize>) -> String {
    number.map_or_else(|| OPEN.to_owned(), |number| format!("{OPEN}-{number}"))
}

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct WayInProps {
    /// Number of the step that it leads to; none: where reading begins.
    #[prop_or_default]
    pub(crate) number: Option<u32>,
    /// Whether there is anything to read.
    pub(crate) open: bool,
}

/// The way to the view: an address like any other, so that the browser's way back leads out again.
#[component]
pub(crate) fn WayIn(props: &WayInProps) -> Html {
    use_language();
    let label = props.number.map(text::open_step);
    let at = props.number.map_or(Spot::FIRST, Spot::before);
    let (href, id) = (at.fragment(), way_in(props.number.map(|_| at.step + 1)));
    if !props.open {
        return html! {
            <button type="button" class="button" {id} disabled=true>{ text::at_machine() }</button>
        };
    }
    html! { <a class="button way-in" {id} {href} aria-label={label}>{ text::at_machine() }</a> }
}
