//! The values of a step that a person types, each with the way to keep it; what is kept stands framed, as a size that is
//! not for anybody to change does in a drawing, and can be typed anew below.

use super::step::step_of;
use crate::desk::use_desk;
use crate::keep::{Keeping, Pin, PinEntry, carrier};
use crate::state::{Action, Shown};
use crate::text;
use thinwright_core::FieldId;
use thinwright_core::field::{Field, Input};
use thinwright_core::pin::Place;
use thinwright_core::strategy::Step;
use thinwright_quantity::{Rounding, UnitSystem, format_bare};
use thinwright_words::{Speaker, method_name, place_name};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct NumbersProps {
    pub(crate) shown: Shown,
    pub(crate) setup: usize,
    pub(crate) at: usize,
    pub(crate) open: bool,
    pub(crate) keeping: Keeping,
    pub(crate) place: Place,
}

/// A value of a step, as it is read and as it is kept.
struct Value {
    label: &'static str,
    symbol: &'static str,
    said: String,
    field: Field,
    /// Nothing where there is no choice.
    kept: Option<String>,
}

/// The values, and what is kept of them.
#[component]
pub(crate) fn Numbers(props: &NumbersProps) -> Html {
    let desk = use_desk();
    let Some(step) = step_of(&props.shown, props.setup, props.at) else {
        return html! {};
    };
    let (keeping, place) = (&props.keeping, props.place);
    let speaker = Speaker::new(keeping.units, &desk.catalog, &props.shown.answers);
    let mut values = values(&speaker, step);
    let methods = methods(step);
    let method_kept = keeping.pin(FieldId::in_row(Field::PinMethod, place.row()));
    if method_kept.is_some() || (props.open && methods.len() > 1) {
        values.push(Value {
            label: text::method(),
            symbol: "",
            said: method_name(step.method).to_owned(),
            field: Field::PinMethod,
            kept: Some(step.method.key().to_owned()),
        });
    }
    let cell = |value: Value| {
        let id = FieldId::in_row(value.field, place.row());
        let kept = keeping.pin(id).is_some();
        let wide = value.field == Field::PinMethod;
        html! {
            <div class={classes!("number", wide.then_some("number-wide"), kept.then_some("number-held"))}>
                <dt>{ value.label }if !value.symbol.is_empty() { <i class="symbol">{ value.symbol }</i> }</dt>
                <dd class={classes!("number-value", kept.then_some("number-kept"))}>{ value.said.clone() }</dd>
                if kept || value.kept.is_some() {
                    <dd class="number-keep">
                        <KeepButton {id} what={value.label} said={value.said} {kept} text={value.kept} step={step.number} />
                    </dd>
                }
            </div>
        }
    };
    let carries = carrier(Some(&props.shown), place) == Some(step.number);
    let pins: Vec<&Pin> = keeping.at(place).filter(|_| carries).collect();
    let entry = |pin: &&Pin| {
        let (rack, units) = (keeping.rack.clone(), keeping.units);
        html! { <PinEntry key={pin.id.key()} pin={(*pin).clone()} {rack} {units} methods={methods.clone()} /> }
    };
    html! {
        <>
            <dl class="numbers">{ values.into_iter().map(cell).collect::<Html>() }</dl>
            if !pins.is_empty() {
                <div class="pins step-pins" role="group" aria-label={text::kept_at(place_name(place))}>
                    { pins.iter().map(entry).collect::<Html>() }
                </div>
            }
        </>
    }
}

fn values(speaker: &Speaker<'_>, step: &Step) -> Vec<Value> {
    // As a person types it, in the units of the answers.
    let bare = |field: Field, si: f64| match field.spec().input {
        Input::Quantity(kind) if si > 0.0 => {
            let units: UnitSystem = speaker.answers.units;
            Some(format_bare(kind, si, units, Rounding::Nearest))
        }
        _ => None,
    };
    let value = |label, symbol, said, field, kept| Value {
        label,
        symbol,
        said,
        field,
        kept,
    };
    let number = (u32::from(step.cutter) + 1).to_string();
    let (n, vf, ae, ap) = (step.n, step.vf, step.ae, step.ap);
    let cutter = speaker.cutter(step.cutter);
    let (speed, feed) = (speaker.spindle_speed(n), speaker.feed(vf));
    let (over, down) = (speaker.length(ae), speaker.length(ap));
    let of = |field: Field, si: f64| (field, bare(field, si));
    let (n, vf) = (of(Field::PinSpeed, n.si()), of(Field::PinFeed, vf.si()));
    let (ae, ap) = (
        of(Field::PinStepover, ae.si()),
        of(Field::PinStepDown, ap.si()),
    );
    vec![
        value(text::cutter(), "", cutter, Field::PinCutter, Some(number)),
        value(text::speed(), "n", speed, n.0, n.1),
        value(text::feed(), "vf", feed, vf.0, vf.1),
        value(text::stepover(), "ae", over, ae.0, ae.1),
        value(text::step_down(), "ap", down, ap.0, ap.1),
    ]
}

/// The methods that there are for a step: its own first.
fn methods(step: &Step) -> Vec<&'static str> {
    let mut out = vec![step.method.key()];
    for considered in &step.considered {
        let key = considered.method.key();
        if !out.contains(&key) {
            out.push(key);
        }
    }
    out
}

#[derive(Clone, PartialEq, Properties)]
struct KeepProps {
    id: FieldId,
    what: &'static str,
    said: String,
    kept: bool,
    text: Option<String>,
    step: u32,
}

/// Keeps a value, or lets go of it: one button, whichever it is.
#[component]
fn KeepButton(props: &KeepProps) -> Html {
    let desk = use_desk();
    let (id, text) = (props.id, props.text.clone());
    let (word, label) = if props.kept {
        (text::let_go(), text::let_go_at(props.what, props.step))
    } else {
        (
            text::keep(),
            text::keep_value(props.what, &props.said, props.step),
        )
    };
    let kept = props.kept;
    let onclick = desk.on(move |_: MouseEvent| match text.clone() {
        Some(text) if !kept => Action::Keep(vec![(id, text)]),
        _ => Action::LetGo(id),
    });
    html! { <button type="button" class="keep" aria-label={label} {onclick}>{ word }</button> }
}
