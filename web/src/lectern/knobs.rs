//! The knobs of the machine that turn feed and speed up and down while it runs: where they stand, and what follows.

use super::body::lines;
use crate::language::use_language;
use crate::text::lectern as text;
use thinwright_words::lectern::Line;
use yew::prelude::*;

/// Such knobs click from five to five per cent, from next to nothing to twice what was typed.
const CLICK: u32 = 5;
const LEAST: u32 = 5;
const MOST: u32 = 200;
/// As typed.
const PLAIN: u32 = 100;

/// Where the knobs stand, in per cent of what was typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Knobs {
    pub(crate) feed: u32,
    pub(crate) speed: u32,
}

impl Default for Knobs {
    fn default() -> Knobs {
        Knobs {
            feed: PLAIN,
            speed: PLAIN,
        }
    }
}

impl Knobs {
    /// Whether either is turned at all.
    pub(crate) fn turned(self) -> bool {
        self != Knobs::default()
    }

    /// As shares of what was typed.
    pub(crate) fn shares(self) -> (f64, f64) {
        (f64::from(self.feed) / 100.0, f64::from(self.speed) / 100.0)
    }
}

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct KnobsProps {
    pub(crate) knobs: Knobs,
    pub(crate) on_turn: Callback<Knobs>,
    /// What follows.
    pub(crate) said: Vec<Line>,
}

/// Both knobs, and what follows.
#[component]
pub(crate) fn KnobsView(props: &KnobsProps) -> Html {
    use_language();
    let knobs = props.knobs;
    let (feed, speed) = (props.on_turn.clone(), props.on_turn.clone());
    let feed = Callback::from(move |value| {
        feed.emit(Knobs {
            feed: value,
            ..knobs
        });
    });
    let speed = Callback::from(move |value| {
        speed.emit(Knobs {
            speed: value,
            ..knobs
        });
    });
    html! {
        <>
            <p class="lectern-how">{ text::knobs_how() }</p>
            <Knob name={text::feed_knob()} value={knobs.feed} on_turn={feed} />
            <Knob name={text::speed_knob()} value={knobs.speed} on_turn={speed} />
            <div class="lectern-said" role="status">{ lines(&props.said) }</div>
        </>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct KnobProps {
    name: AttrValue,
    value: u32,
    on_turn: Callback<u32>,
}

/// One knob: less, more, and back to what was typed.
#[component]
fn Knob(props: &KnobProps) -> Html {
    use_language();
    let to = |value: u32| props.on_turn.reform(move |_: MouseEvent| value);
    let value = props.value;
    let less = to(value.saturating_sub(CLICK).max(LEAST));
    let more = to((value + CLICK).min(MOST));
    let name = &props.name;
    html! {
        <div class="lectern-knob" role="group" aria-label={name.clone()}>
            <span class="lectern-knob-name">{ name.clone() }</span>
            <button type="button" class="button" aria-label={text::less(name)} onclick={less}>{ "\u{2212}" }</button>
            <output class="lectern-knob-value" aria-live="polite">{ text::percent(value) }</output>
            <button type="button" class="button" aria-label={text::more(name)} onclick={more}>{ "+" }</button>
            <button type="button" class="button" aria-label={text::as_typed(name)} onclick={to(PLAIN)}>
                { text::percent(PLAIN) }
            </button>
        </div>
    }
}
