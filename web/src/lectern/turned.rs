//! What the limits say of a step while the knobs are turned: worked out once the page has been drawn.

use super::knobs::Knobs;
use super::leaf::{step, strategy};
use crate::state::Shown;
use gloo_timers::callback::Timeout;
use thinwright_core::Cache;
use thinwright_core::again::{Again, Values, again};
use yew::prelude::*;

/// How long the knobs must rest, ms: they are turned click by click.
const REST: u32 = 250;

/// What was worked out: of which step, and for which knobs.
#[derive(Clone, PartialEq)]
struct Said {
    of: (Shown, usize, Knobs),
    again: Option<Again>,
}

/// What a turned step runs at, and what the limits say of it: nothing yet, or that they cannot say.
pub(super) type Turned = (Values, Option<Option<Again>>);

/// What the knobs make of a step; nothing where they stand as typed.
#[hook]
pub(super) fn use_turned(shown: Option<&Shown>, at: usize, knobs: Knobs) -> Option<Turned> {
    let said = use_state(|| None::<Said>);
    let cache = use_mut_ref(Cache::default);
    let asked = shown.cloned().filter(|_| knobs.turned());
    let asked = asked.map(|shown| (shown, at, knobs));
    {
        let said = said.clone();
        use_effect_with(asked.clone(), move |asked| {
            let asked = asked.clone();
            let known = said.as_ref().map(|s| &s.of) == asked.as_ref();
            let timer = asked.filter(|_| !known).map(|of| {
                Timeout::new(REST, move || {
                    let again = look(&of, &mut cache.borrow_mut());
                    said.set(Some(Said { of, again }));
                })
            });
            move || drop(timer)
        });
    }
    let (shown, at, knobs) = asked.as_ref()?;
    let values = Values::of(step(shown, *at)?).turned(knobs.shares());
    let said = said
        .as_ref()
        .filter(|said| Some(&said.of) == asked.as_ref());
    Some((values, said.map(|said| said.again.clone())))
}

fn look((shown, at, knobs): &(Shown, usize, Knobs), cache: &mut Cache) -> Option<Again> {
    let values = Values::of(step(shown, *at)?).turned(knobs.shares());
    again(&shown.job, strategy(shown)?, *at, values, cache)
}
