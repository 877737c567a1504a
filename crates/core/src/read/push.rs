//! The push test: force, arm and readings along X, Y and Z, as stiffness with its uncertainty and lost motion.

use super::reader::Reader;
use crate::estimate::{Estimate, Known};
use crate::field::Field;
use crate::job::{Push, Pushed};
use crate::problem::ProblemKind;
use thinwright_mechanics::push::{rod_compliance, stiffness, uncertainty};

const FORCE: (f64, f64) = (0.5, 2.0e3);
const ARM: (f64, f64) = (1.0e-3, 0.2);
const ROD: (f64, f64) = (1.0e-3, 0.05);
const READING: (f64, f64) = (0.0, 0.02);

/// Each axis: movement as the force comes on, and back as it goes.
const AXES: [(Field, Field); 3] = [
    (Field::PushXUp, Field::PushXDown),
    (Field::PushYUp, Field::PushYDown),
    (Field::PushZUp, Field::PushZDown),
];

/// Reads the push test; `None` where none was made, or after a problem.
pub(super) fn read(reader: &mut Reader) -> Option<Push> {
    let readings = AXES.iter().flat_map(|(up, down)| [*up, *down]);
    let mut fields = readings.chain([Field::PushForce]);
    if fields.all(|field| reader.empty(field)) {
        return None;
    }
    let force = reader.needed(Field::PushForce, FORCE);
    let numbers = reader.catalog.numbers;
    let arm = reader.or_silent(Field::PushArm, ARM, numbers.push_arm_mm * 1.0e-3);
    let rod = match reader.empty(Field::PushRod) {
        true => Some(0.0),
        false => reader.typed(Field::PushRod, ROD).zip(arm).map(|(d, arm)| {
            let e_mod = numbers.push_rod_modulus_n_per_mm2 * 1.0e6;
            rod_compliance(e_mod, d, arm)
        }),
    };
    let axes = AXES.map(|axis| readings_of(reader, axis));
    let (force, rod) = (force?, rod?);
    if axes.iter().all(Option::is_none)
        && AXES.iter().all(|a| reader.empty(a.0) && reader.empty(a.1))
    {
        reader.problem(Field::PushXDown, ProblemKind::Missing);
    }
    let mut found = [None; 3];
    for ((at, readings), (_, down)) in found.iter_mut().zip(axes).zip(AXES) {
        let Some((up, back)) = readings else {
            continue;
        };
        *at = pushed(reader, (force, rod), (up, back));
        if at.is_none() {
            let least = rod * force;
            reader.problem(down, ProblemKind::TooSmall { value: back, least });
        }
    }
    found
        .iter()
        .any(Option::is_some)
        .then_some(Push { axes: found })
}

/// Both readings of an axis, or none; a single one is a problem at the other.
fn readings_of(reader: &mut Reader, (up, down): (Field, Field)) -> Option<(f64, f64)> {
    if reader.empty(up) && reader.empty(down) {
        return None;
    }
    let (up, down) = (reader.needed(up, READING), reader.needed(down, READING));
    up.zip(down)
}

fn pushed(reader: &Reader, (force, rod): (f64, f64), (up, back): (f64, f64)) -> Option<Pushed> {
    let numbers = &reader.catalog.numbers;
    let k = stiffness(force, back, rod)?;
    let dial = numbers.push_dial_um * 1.0e-6;
    let share = uncertainty(numbers.push_scale_share, dial, (force, back, rod));
    let share = share.clamp(numbers.push_spread_least, numbers.push_spread_most);
    Some(Pushed {
        // What is read too small by a share is too stiff by more: the ends are those of the movement.
        stiffness: Estimate {
            low: k / (1.0 + share),
            likely: k,
            high: k / (1.0 - share),
            known: Known::Measured,
        },
        lost: (up - back).max(0.0),
    })
}
