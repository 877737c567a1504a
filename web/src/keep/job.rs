//! Choices of the whole job: highest speed, order, first face, backing, boss.

use super::{Keeping, Pin, PinEntry};
use crate::language::use_language;
use crate::text;
use std::rc::Rc;
use thinwright_core::field::{FIELDS, Field, Group};
use thinwright_core::{FieldId, Job};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct JobPinsProps {
    pub(crate) keeping: Keeping,
    /// Which choices the job leaves at all.
    pub(crate) open: Vec<Field>,
}

/// The choices that a job leaves open for the whole of it.
pub(super) fn open(job: Option<&Rc<Job>>) -> Vec<Field> {
    let leaves = |field: Field| {
        let Some(job) = job else {
            return true;
        };
        let turned = job.part.recesses.len() > 1;
        match field {
            Field::PinOrder => turned && !job.part.slots.is_empty(),
            Field::PinFirst => turned,
            Field::PinBacked => turned && job.holding.backings.len() > 1,
            Field::PinBolted => turned && job.holding.boss_bolted,
            _ => true,
        }
    };
    let fields = FIELDS.iter().filter(|s| s.group == Group::Pins);
    fields.map(|s| s.field).filter(|f| leaves(*f)).collect()
}

/// The choices, folded away until one is wanted.
#[component]
pub(crate) fn JobPins(props: &JobPinsProps) -> Html {
    use_language();
    let keeping = &props.keeping;
    let fields = FIELDS.iter().filter(|s| s.group == Group::Pins);
    let mut kept = 0;
    let entries: Vec<Html> = fields
        .filter_map(|spec| {
            let id = FieldId::from(spec.field);
            let pin = keeping.pin(id).cloned();
            kept += usize::from(pin.is_some());
            if pin.is_none() && !props.open.contains(&spec.field) {
                return None;
            }
            let pin = pin.unwrap_or(Pin {
                id,
                text: "".into(),
                problem: None,
            });
            let (rack, units) = (keeping.rack.clone(), keeping.units);
            Some(html! { <PinEntry key={spec.key} {pin} {rack} {units} /> })
        })
        .collect();
    html! {
        <details class="more kept-job">
            <summary class="more-name">{ text::kept_job(kept) }</summary>
            <div class="pins">{ entries }</div>
        </details>
    }
}
