//! Pins: what the person has fixed. A pin is read whether or not the step it is for occurs; it waits.

use super::machine::{FEED, SPEED};
use super::reader::Reader;
use crate::field::{Field, FieldId};
use crate::job::{Cutter, Machine};
use crate::methods::MethodId;
use crate::order::OrderId;
use crate::pin::{Pins, Place, StepPin};
use crate::problem::ProblemKind;
use crate::task::Face;

/// Stepovers and step-downs that make sense, m.
const BITE: (f64, f64) = (1.0e-5, 0.1);

/// Reads the pins; the greatest spindle speed goes into the machine.
pub(super) fn read(reader: &mut Reader, machine: Option<&mut Machine>, rack: &[Cutter]) -> Pins {
    let most = reader.typed(Field::PinMostSpeed, SPEED);
    let mut top_speed = None;
    if let (Some(machine), Some(most)) = (machine, most) {
        if most < machine.n.0 {
            let (value, least) = (most, machine.n.0);
            reader.problem(Field::PinMostSpeed, ProblemKind::TooSmall { value, least });
        } else {
            top_speed = Some(machine.n.1);
            machine.n.1 = machine.n.1.min(most);
        }
    }
    let chosen = |reader: &mut Reader, field: Field| {
        let typed = !reader.empty(field);
        typed.then(|| reader.choice(field, 0))
    };
    let order = chosen(reader, Field::PinOrder).map(|i| match i {
        0 => OrderId::SlotsIntoStock,
        1 => OrderId::SlotsBeforeSkim,
        _ => OrderId::SlotsLast,
    });
    let first = chosen(reader, Field::PinFirst);
    let mut pins = Pins {
        order,
        first: first.map(|i| if i == 0 { Face::A } else { Face::B }),
        backed: chosen(reader, Field::PinBacked).map(|i| i == 1),
        bolted: chosen(reader, Field::PinBolted).map(|i| i == 1),
        top_speed,
        steps: std::collections::BTreeMap::new(),
    };
    for place in Place::all() {
        let step = step(reader, place, rack);
        if step != StepPin::default() {
            pins.steps.insert(place, step);
        }
    }
    pins
}

fn step(reader: &mut Reader, place: Place, rack: &[Cutter]) -> StepPin {
    let at = |field: Field| FieldId::in_row(field, place.row());
    let cutter = at(Field::PinCutter);
    let number = reader.typed(cutter, (1.0, f64::from(u8::MAX)));
    let row = number.and_then(|number| {
        let found = rack.iter().find(|c| same(f64::from(c.row) + 1.0, number));
        if found.is_none() {
            reader.problem(cutter, ProblemKind::NoSuchChoice);
        }
        found.map(|c| c.row)
    });
    let method = at(Field::PinMethod);
    let method = (!reader.empty(method)).then(|| reader.choice(method, 0));
    StepPin {
        cutter: row,
        method: method.and_then(|i| MethodId::all().nth(i)),
        n: reader.typed(at(Field::PinSpeed), SPEED),
        vf: reader.typed(at(Field::PinFeed), FEED),
        ae: reader.typed(at(Field::PinStepover), BITE),
        ap: reader.typed(at(Field::PinStepDown), BITE),
    }
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1.0e-6
}
