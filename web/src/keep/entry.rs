//! The entry of a choice that is kept. What is typed counts when the line is left or Enter is pressed: half a number would
//! turn the strategy over under the hand.

use super::Pin;
use crate::browser;
use crate::desk::use_desk;
use crate::form::element_id;
use crate::language::use_language;
use crate::select::{Entries, Select};
use crate::state::Action;
use crate::text;
use std::rc::Rc;
use thinwright_core::Field;
use thinwright_core::field::{Group, Input};
use thinwright_quantity::UnitSystem;
use thinwright_words::unit;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct PinProps {
    pub(crate) pin: Pin,
    pub(crate) rack: Rc<Vec<AttrValue>>,
    pub(crate) units: UnitSystem,
    /// The keys of the methods that there are for the place; all where it is not known.
    #[prop_or_default]
    pub(crate) methods: Option<Vec<&'static str>>,
}

/// The entry with its label, unit and problem.
#[component]
pub(crate) fn PinEntry(props: &PinProps) -> Html {
    use_language();
    let id = props.pin.id;
    let element = element_id(id);
    let words = thinwright_words::field(id.field);
    let unit = match id.field.spec().input {
        Input::Quantity(kind) if id.field != Field::PinCutter => unit(kind, props.units),
        _ => "",
    };
    let wrong = props.pin.problem.is_some();
    let described = wrong.then(|| AttrValue::from(format!("{element}-wrong")));
    let line = matches!(id.field.spec().input, Input::Quantity(_)) && id.field != Field::PinCutter;
    html! {
        <div class={classes!("pin", wrong.then_some("field-wrong"), (!line).then_some("pin-wide"))}>
            <label class="field-label" for={element.clone()}>
                <span>{ words.label }</span>
                if !words.symbol.is_empty() { <span class="field-symbol">{ words.symbol }</span> }
            </label>
            <div class="field-entry">
                if line {
                    <Line pin={props.pin.clone()} {described} />
                } else {
                    <List ..props.clone() />
                }
                if !unit.is_empty() { <span class="field-unit">{ unit }</span> }
            </div>
            if let Some(problem) = &props.pin.problem {
                <p class="field-problem" id={format!("{element}-wrong")}>
                    <span class="mark" aria-hidden="true">{ text::MARK }</span>{ problem.clone() }
                </p>
            }
        </div>
    }
}

/// A list to choose from.
#[component]
fn List(props: &PinProps) -> Html {
    let desk = use_desk();
    let id = props.pin.id;
    let mut all: Vec<(AttrValue, AttrValue)> = match id.field.spec().input {
        Input::Choice(keys) => {
            let keys = match (&props.methods, id.field) {
                (Some(methods), Field::PinMethod) => methods.as_slice(),
                _ => keys,
            };
            let entry = |key: &&'static str| {
                let words = thinwright_words::choice(id.field, key);
                (AttrValue::from(*key), AttrValue::from(words.to_owned()))
            };
            keys.iter().map(entry).collect()
        }
        _ => {
            let entry = |(at, name): (usize, &AttrValue)| {
                let number = (at + 1).to_string();
                let words = text::numbered(&number, name);
                (AttrValue::from(number), AttrValue::from(words))
            };
            props.rack.iter().enumerate().map(entry).collect()
        }
    };
    if id.field.spec().group == Group::Pins {
        all.insert(0, ("".into(), text::searched().into()));
    }
    let entries: Entries = vec![("".into(), all)];
    let wrong = props.pin.problem.is_some();
    let element = element_id(id);
    let described = wrong.then(|| AttrValue::from(format!("{element}-wrong")));
    let chosen = AttrValue::from(props.pin.text.trim().to_owned());
    let on_choose = desk.on(move |key: String| Action::Type(id, key));
    html! { <Select id={element} {described} {wrong} {entries} {chosen} {on_choose} /> }
}

#[derive(Clone, PartialEq, Properties)]
struct LineProps {
    pin: Pin,
    described: Option<AttrValue>,
}

/// A line to type on.
#[component]
fn Line(props: &LineProps) -> Html {
    let desk = use_desk();
    let again = use_force_update();
    let draft = use_mut_ref(|| None::<String>);
    let id = props.pin.id;
    let element = element_id(id);
    let commit = {
        let (draft, desk) = (draft.clone(), desk.clone());
        move || {
            if let Some(text) = draft.borrow_mut().take() {
                desk.say(Action::Type(id, text));
            }
        }
    };
    {
        // The step may go away, or elsewhere, under the hand: neither text nor focus is lost.
        let (commit, element) = (commit.clone(), element.clone());
        use_effect_with((), move |()| {
            move || {
                commit();
                browser::keep_focus(&element);
            }
        });
    }
    let oninput = {
        let (draft, again) = (draft.clone(), again.clone());
        Callback::from(move |event: InputEvent| {
            let typed = event.target_unchecked_into::<HtmlInputElement>().value();
            *draft.borrow_mut() = Some(typed);
            again.force_update();
        })
    };
    let onkeydown = {
        let (draft, commit) = (draft.clone(), commit.clone());
        Callback::from(move |event: KeyboardEvent| match event.key().as_str() {
            "Enter" => commit(),
            "Escape" => {
                draft.borrow_mut().take();
                again.force_update();
            }
            _ => {}
        })
    };
    let onfocusout = Callback::from(move |_: FocusEvent| commit());
    let value = draft.borrow().clone().map(AttrValue::from);
    let job_wide = id.field.spec().group == Group::Pins;
    html! {
        <input
            id={element} class="entry entry-number" type="text" value={value.unwrap_or(props.pin.text.clone())}
            placeholder={job_wide.then_some(text::searched())} spellcheck="false" autocapitalize="off"
            aria-describedby={props.described.clone()}
            aria-invalid={props.pin.problem.is_some().then_some("true")}
            {oninput} {onkeydown} {onfocusout}
        />
    }
}
