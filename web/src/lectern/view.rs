//! The frame around a page: where one is, the ways on and back, the way out.

use super::LecternProps;
use super::address::Way;
use super::after::After;
use super::awake::{Awake, use_awake};
use super::body::{boxes, lines, values};
use super::fit::use_fit;
use super::knobs::Knobs;
use super::leaf::{Body, Leaf, Tick, leaves};
use super::room::{Room, use_room};
use super::run::Run;
use super::spot::{Part, Spot, index};
use super::turned::{Turned, use_turned};
use crate::browser;
use crate::confirm::on_screen;
use crate::desk::use_desk;
use crate::language::use_language;
use crate::state::Shown;
use crate::text::lectern as text;
use std::collections::BTreeSet;
use std::rc::Rc;
use thinwright_words::Speaker;
use web_sys::HtmlElement;
use yew::prelude::*;

/// The way on, which has the focus at first.
const NEXT: &str = "lectern-next";

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct ViewProps {
    pub(crate) lectern: LecternProps,
    pub(crate) spot: Spot,
    pub(crate) go: Callback<Way>,
    pub(crate) ticks: BTreeSet<Tick>,
    pub(crate) on_tick: Callback<Tick>,
    pub(crate) knobs: Knobs,
    pub(crate) on_turn: Callback<Knobs>,
}

/// The pages that there are in this window.
#[hook]
fn use_leaves(props: &ViewProps, room: Room) -> Rc<Vec<Leaf>> {
    let (language, desk) = (use_language(), use_desk());
    let of = (
        (props.lectern.shown.clone(), props.lectern.records.clone()),
        props.lectern.units,
        room,
        language,
    );
    use_memo(of, move |((shown, records), units, room, _)| {
        let write = |shown: &Shown| {
            let speaker = Speaker::new(*units, &desk.catalog, &shown.answers);
            leaves((shown, records), &speaker, *room)
        };
        shown.as_ref().map(write).unwrap_or_default()
    })
}

/// The element of the view, which takes the focus whenever what had it is gone: keys go on working.
#[hook]
fn use_held() -> NodeRef {
    let root = use_node_ref();
    let held = root.clone();
    use_effect(move || {
        let document = web_sys::window().and_then(|w| w.document());
        let active = document.and_then(|d| d.active_element());
        let nowhere = active.is_none_or(|e| e.tag_name() == "BODY");
        if let Some(root) = held.cast::<HtmlElement>().filter(|_| nowhere) {
            drop(root.focus());
        }
    });
    root
}

/// The view at the machine.
#[component]
pub(crate) fn View(props: &ViewProps) -> Html {
    use_language();
    let awake = use_awake();
    let room = use_room(!props.lectern.open.is_empty());
    let turning = use_state_eq(|| false);
    let node = use_node_ref();
    use_fit(&node);
    let root = use_held();
    use_effect_with((), |()| browser::focus(NEXT));
    let all = use_leaves(props, room);
    let spots: Vec<Spot> = all.iter().map(|leaf| leaf.spot).collect();
    let at = index(&spots, props.spot);
    let leaf = all.get(at);
    let in_hand = leaf.map_or(0, |leaf| leaf.spot.step);
    let turned = use_turned(props.lectern.shown.as_ref(), in_hand, props.knobs);
    let ways = Ways {
        before: at.checked_sub(1).and_then(|at| spots.get(at)).copied(),
        after: spots.get(at + 1).copied(),
        ends: (spots.first().copied(), spots.last().copied()),
        go: props.go.clone(),
        turning: turning.setter(),
        turning_now: *turning && leaf.is_some_and(|leaf| leaf.body == Body::Numbers),
    };
    let steps = spots.last().map_or(0, |last| last.step + 1);
    let place = leaf.map(|leaf| where_it_is(leaf, steps));
    let shape = if room.lies() {
        "lectern-lies"
    } else {
        "lectern-stands"
    };
    let size = format!("lectern-letters-{}", room.letters());
    html! {
        <div class={classes!("lectern", shape, size)} role="dialog" aria-modal="true" aria-labelledby="lectern-name"
            tabindex="-1" ref={root} onkeydown={ways.keys()}>
            <div class="lectern-top">
                <button type="button" class="button lectern-close" onclick={ways.leave()}>{ text::close() }</button>
                <h1 class="lectern-place" id="lectern-name">
                    <span class="away">{ text::at_machine() }</span>
                    { place }
                </h1>
                { light(awake) }
            </div>
            { on_screen(&props.lectern.open) }
            <div class="lectern-body" ref={node} aria-live="polite">{ inside(props, (&all, leaf), &ways, turned) }</div>
            { ways.buttons() }
        </div>
    }
}

/// Where one is, in words.
fn where_it_is(leaf: &Leaf, steps: usize) -> String {
    let own = match leaf.spot.part {
        Part::Cautions | Part::Setup | Part::Turned | Part::Start => text::setup(leaf.setup + 1),
        Part::Before | Part::Numbers | Part::More | Part::After => {
            text::step_of(leaf.spot.step + 1, steps)
        }
    };
    if leaf.pages > 1 {
        format!("{own}, {}", text::page_of(leaf.spot.page + 1, leaf.pages))
    } else {
        own
    }
}

/// The ways from a page.
#[derive(Clone)]
struct Ways {
    before: Option<Spot>,
    after: Option<Spot>,
    ends: (Option<Spot>, Option<Spot>),
    go: Callback<Way>,
    turning: UseStateSetter<bool>,
    turning_now: bool,
}

impl Ways {
    /// To a place, if there is one; the knobs are put away first.
    fn turn_to(&self, spot: Option<Spot>) {
        self.turning.set(false);
        if let Some(spot) = spot.filter(|_| !self.turning_now) {
            self.go.emit(Way::To(spot));
        }
    }

    fn to(&self, spot: Option<Spot>) -> Callback<MouseEvent> {
        let ways = self.clone();
        Callback::from(move |_| ways.turn_to(spot))
    }

    fn leave(&self) -> Callback<MouseEvent> {
        self.go.reform(|_| Way::Out)
    }

    fn knobs(&self) -> Callback<MouseEvent> {
        let (turning, open) = (self.turning.clone(), !self.turning_now);
        Callback::from(move |_| turning.set(open))
    }

    /// The two buttons, far from each other.
    fn buttons(&self) -> Html {
        let shut = |spot: Option<Spot>| spot.is_none().then_some("true");
        html! {
            <>
                <button type="button" class="button lectern-back" aria-disabled={shut(self.before)}
                    onclick={self.to(self.before)}>{ text::back() }</button>
                <button type="button" class="button button-strong lectern-next" id={NEXT} aria-disabled={shut(self.after)}
                    onclick={self.to(self.after)}>{ text::forward() }</button>
            </>
        }
    }

    fn keys(&self) -> Callback<KeyboardEvent> {
        let ways = self.clone();
        Callback::from(move |event: KeyboardEvent| ways.key(&event))
    }

    fn key(&self, event: &KeyboardEvent) {
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return;
        }
        match event.key().as_str() {
            "ArrowRight" | "ArrowDown" | "PageDown" => self.turn_to(self.after),
            "ArrowLeft" | "ArrowUp" | "PageUp" => self.turn_to(self.before),
            "Home" => self.turn_to(self.ends.0),
            "End" => self.turn_to(self.ends.1),
            "Escape" if self.turning_now => self.turning.set(false),
            "Escape" => self.go.emit(Way::Out),
            _ => return,
        }
        event.prevent_default();
    }
}

fn inside(
    props: &ViewProps,
    (all, leaf): (&[Leaf], Option<&Leaf>),
    ways: &Ways,
    turned: Option<Turned>,
) -> Html {
    let (Some(leaf), Some(shown)) = (leaf, props.lectern.shown.clone()) else {
        let text = if props.lectern.waits {
            text::waits()
        } else {
            text::outdated()
        };
        return html! { <p class="lectern-none" role="status">{ text }</p> };
    };
    let page = match &leaf.body {
        Body::Lines(said) => lines(said),
        Body::Ticks(items) => boxes(items, &props.ticks, &props.on_tick),
        Body::Values(items) => values(items),
        Body::After(said) => {
            html! { <After said={said.clone()} step={leaf.spot.step} go={props.go.clone()} /> }
        }
        Body::Numbers => html! {
            <Run {shown} setup={leaf.setup} at={leaf.spot.step} units={props.lectern.units} knobs={props.knobs}
                on_turn={props.on_turn.clone()} {turned} open={ways.turning_now} on_open={ways.knobs()}
                ticked={ticked(all, leaf.setup, &props.ticks)} />
        },
    };
    let heading = match ways.turning_now {
        true => text::knobs_heading(),
        false => &leaf.heading,
    };
    html! { <><h2 class="lectern-heading">{ heading.to_owned() }</h2>{ page }</> }
}

/// How many boxes of a setup are ticked, of how many.
fn ticked(all: &[Leaf], setup: usize, ticks: &BTreeSet<Tick>) -> (usize, usize) {
    let own = all.iter().filter(|leaf| leaf.setup == setup);
    let boxes = own.flat_map(|leaf| match &leaf.body {
        Body::Ticks(items) => items.as_slice(),
        Body::Lines(_) | Body::Numbers | Body::Values(_) | Body::After(_) => &[],
    });
    boxes.fold((0, 0), |(done, of), (tick, _)| {
        (done + usize::from(ticks.contains(tick)), of + 1)
    })
}

/// Whether the screen stays on.
fn light(awake: Awake) -> Html {
    let said = match awake {
        Awake::Asked => "",
        Awake::Held => text::stays_on(),
        Awake::No => text::goes_off(),
    };
    html! { <p class="lectern-light" role="status">{ said }</p> }
}
