//! One question: label, entry, unit, how it is known, why it is asked, and what is wrong.

use super::control::{control, known_choice};
use super::{Questions, element_id};
use crate::desk::use_desk;
use crate::state::Action;
use crate::text;
use thinwright_core::field::Input;
use thinwright_core::{FieldId, Known};
use thinwright_quantity::UnitSystem;
use thinwright_words::unit;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct FieldProps {
    pub(crate) id: FieldId,
    pub(crate) text: AttrValue,
    pub(crate) known: Known,
    pub(crate) default: Option<AttrValue>,
    pub(crate) problem: Option<AttrValue>,
    pub(crate) lit: bool,
    pub(crate) units: UnitSystem,
}

impl FieldProps {
    pub(crate) fn of(questions: &Questions, id: FieldId) -> FieldProps {
        FieldProps {
            id,
            text: questions.answers.text(id).to_owned().into(),
            known: questions.answers.known(id),
            default: questions.defaults.get(&id).cloned().map(AttrValue::from),
            problem: questions.problem(id),
            lit: questions.lit == Some(id),
            units: questions.answers.units,
        }
    }

    /// What the table gives for a quantity, as people read it.
    pub(super) fn told_default(&self) -> Option<AttrValue> {
        let Input::Quantity(kind) = self.id.field.spec().input else {
            return None;
        };
        let default = self.default.as_deref()?;
        Some(text::as_read(kind, default, self.units).into())
    }
}

/// Words of a choice that are too long for half the width, in letters.
const LONG: usize = 14;

/// One question.
#[component]
pub(crate) fn FieldBox(props: &FieldProps) -> Html {
    let desk = use_desk();
    let id = props.id;
    let spec = id.field.spec();
    let words = thinwright_words::field(id.field);
    let element = element_id(id);
    let unit = match spec.input {
        Input::Quantity(kind) => unit(kind, props.units),
        Input::Text | Input::Choice(_) | Input::Row(_) => "",
    };
    // Lists and lines with much beside them take the whole width.
    let long = |key: &&str| thinwright_words::choice(id.field, key).len() > LONG;
    let whole = spec.known_matters
        || match spec.input {
            Input::Text | Input::Row(_) => true,
            Input::Choice(keys) => keys.iter().any(long),
            Input::Quantity(_) => false,
        };
    let described = match props.problem {
        Some(_) => format!("{element}-why {element}-wrong"),
        None => format!("{element}-why"),
    };
    let light = desk.on(move |_: PointerEvent| Action::Light(Some(id)));
    let dark = desk.on(|_: PointerEvent| Action::Light(None));
    let onfocusin = desk.on(move |_: FocusEvent| Action::Light(Some(id)));
    let onfocusout = desk.on(|_: FocusEvent| Action::Light(None));
    let class = classes!(
        "field",
        props.lit.then_some("field-lit"),
        props.problem.is_some().then_some("field-wrong"),
        whole.then_some("field-whole")
    );
    html! {
        <div {class} onpointerenter={light} onpointerleave={dark} {onfocusin} {onfocusout}>
            <label class="field-label" for={element.clone()}>
                { words.label }
                if !words.symbol.is_empty() { <span class="field-symbol">{ words.symbol }</span> }
            </label>
            <div class="field-entry">
                { control(&desk, props, &element, described) }
                if !unit.is_empty() { <span class="field-unit">{ unit }</span> }
                if spec.known_matters { { known_choice(&desk, props, words.label) } }
            </div>
            <p class="field-why" id={format!("{element}-why")}>
                { words.why }
                if let Some(default) = props.told_default() {
                    <span class="field-default">{ text::table_gives(&default) }</span>
                }
            </p>
            if let Some(problem) = &props.problem {
                <p class="field-problem" id={format!("{element}-wrong")}>
                    <span class="mark" aria-hidden="true">{ text::MARK }</span>{ problem.clone() }
                </p>
            }
        </div>
    }
}
