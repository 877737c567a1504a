//! The machine's answers: the class, and the person's own figures over it.

use super::reader::Reader;
use super::{push, range};
use crate::estimate::Estimate;
use crate::field::Field;
use crate::job::{GoodCut, Machine, Push};
use crate::problem::ProblemKind;
use thinwright_mechanics::spindle::CurvePoint;

/// What the machine's class says, unless the person knows better.
pub(super) struct KnownMachine {
    pub(super) stiffness: Estimate,
    pub(super) runout: Estimate,
    pub(super) thrust: Estimate,
}

/// Bounds that catch slips of a unit, SI: (least, greatest).
pub(super) const SPEED: (f64, f64) = (0.1, 5.0e3);
const POWER: (f64, f64) = (5.0, 1.0e5);
pub(super) const FEED: (f64, f64) = (1.0e-5, 2.0);
const STIFFNESS: (f64, f64) = (1.0e3, 1.0e9);
/// A tone that a tap can give, Hz.
pub(super) const TONE: (f64, f64) = (20.0, 2.0e4);
const RUNOUT: (f64, f64) = (0.0, 1.0e-3);
const THRUST: (f64, f64) = (1.0, 1.0e5);
const ACCELERATION: (f64, f64) = (1.0e-3, 50.0);
const NUT: (f64, f64) = (1.0e-3, 0.3);

/// Reads the machine; `None` after a problem.
pub(super) fn read(reader: &mut Reader) -> Option<(Machine, KnownMachine)> {
    let catalog = reader.catalog;
    let class = reader.row(Field::Machine, "screw_router", |id| catalog.machine(id))?;
    let low = reader.or(Field::SpeedMin, SPEED, class.n_min.si());
    let high = reader.or(Field::SpeedMax, SPEED, class.n_max.si());
    let plate = class.curve.iter().map(|p| p.1.si()).fold(0.0, f64::max);
    let power = reader.or(Field::Power, POWER, plate);
    let feed = reader.or(Field::FeedReliable, FEED, class.feed_reliable.si());
    let own = catalog.numbers.own_figure_spread;
    let stiffness = reader.estimate(Field::Stiffness, STIFFNESS, own);
    let runout = reader.estimate(Field::Runout, RUNOUT, own);
    let thrust = reader.estimate(Field::Thrust, THRUST, own);
    let acceleration = reader.or(Field::Acceleration, ACCELERATION, class.acceleration.si());
    let nut = reader.or(Field::NutDiameter, NUT, class.nut_diameter.si());
    let tone = reader.typed(Field::Tone, TONE);
    let push = push::read(reader);
    // What did not come back is backlash, as far as anybody knows.
    let lost = push.as_ref().and_then(Push::lost);
    let slack = lost.unwrap_or(class.backlash.si());
    let backlash = reader.or(Field::Backlash, (0.0, 5.0e-3), slack);
    let (low, high, power, feed) = (low?, high?, power?, feed?);
    if low > high {
        reader.problem(
            Field::SpeedMin,
            ProblemKind::TooLarge {
                value: low,
                greatest: high,
            },
        );
        return None;
    }
    let si = |r: &thinwright_catalog::Range<_>| range(r, 1.0);
    let known = KnownMachine {
        stiffness: (push.as_ref().and_then(Push::softer))
            .or(stiffness)
            .unwrap_or_else(|| si(&class.stiffness.map(thinwright_quantity::Stiffness::si))),
        runout: runout.unwrap_or_else(|| si(&class.runout.map(thinwright_quantity::Length::si))),
        thrust: thrust
            .unwrap_or_else(|| si(&class.axis_thrust.map(thinwright_quantity::Force::si))),
    };
    // The class's curve, scaled to the plate's power and stretched to the person's highest speed.
    let top = class.n_max.si();
    let curve = class.curve.iter().map(|(n, p)| CurvePoint {
        n: n.si() * high / top,
        power: p.si() * power / plate,
    });
    let machine = Machine {
        n: (low, high),
        curve: curve.collect(),
        feed,
        rapid: class.feed_max.si(),
        acceleration: acceleration?,
        nut: nut?,
        backlash: backlash?,
        change: class.change.si(),
        tone,
        push,
        class,
    };
    Some((machine, known))
}

/// Reads the cut that runs well: all six numbers or none.
pub(super) fn good_cut(reader: &mut Reader) -> Option<GoodCut> {
    const FIELDS: [Field; 6] = [
        Field::GoodDiameter,
        Field::GoodFlutes,
        Field::GoodSpeed,
        Field::GoodFeed,
        Field::GoodStepover,
        Field::GoodStepDown,
    ];
    if FIELDS.iter().all(|f| reader.empty(*f)) {
        return None;
    }
    for field in FIELDS {
        if reader.empty(field) {
            reader.problem(field, ProblemKind::GoodCutIncomplete);
        }
    }
    const SIZE: (f64, f64) = (1.0e-5, 0.2);
    let d = reader.typed(Field::GoodDiameter, SIZE);
    let z = reader.count(Field::GoodFlutes, (1, 20), 1);
    let n = reader.typed(Field::GoodSpeed, SPEED);
    let vf = reader.typed(Field::GoodFeed, FEED);
    let ae = reader.typed(Field::GoodStepover, SIZE);
    let ap = reader.typed(Field::GoodStepDown, SIZE);
    let cut = GoodCut {
        d: d?,
        z,
        n: n?,
        vf: vf?,
        ae: ae?,
        ap: ap?,
    };
    if cut.ae > cut.d * (1.0 + 1.0e-6) {
        reader.problem(
            Field::GoodStepover,
            ProblemKind::TooLarge {
                value: cut.ae,
                greatest: cut.d,
            },
        );
        return None;
    }
    Some(cut)
}
