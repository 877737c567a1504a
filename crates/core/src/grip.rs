//! What the hold holds: friction, screws, stops, vacuum, tape.

use crate::case::Case;
use crate::estimate::{Estimate, Unknown};
use thinwright_catalog::{Grip, HoldRow};
use thinwright_mechanics::hold;

/// Clamping force of a hold, N: of all its screws or clamps, or of its pressure on the area that stays held.
///
/// Units: `area_mm2` mm2, the area that lies on the bed and stays there.
pub(crate) fn clamping(row: &HoldRow, area_mm2: f64) -> Estimate {
    let (low, likely, high) = match &row.grip {
        Grip::Force(force) => {
            let count = if row.each {
                f64::from(row.usual_count)
            } else {
                1.0
            };
            (
                force.low.si() * count,
                force.likely.si() * count,
                force.high.si() * count,
            )
        }
        Grip::Pressure(pressure) => {
            let area = area_mm2.max(0.0) * 1.0e-6;
            (
                pressure.low.si() * area,
                pressure.likely.si() * area,
                pressure.high.si() * area,
            )
        }
    };
    Estimate::range(low, likely, high)
}

/// Sideways force that the hold takes before the part slips, N, while `lift` pulls the part up.
pub(crate) fn capacity(case: &Case, lift: f64) -> f64 {
    let row = case.held.hold;
    let pressed = (case.get(Unknown::Grip) - lift).max(0.0);
    let friction =
        hold::friction_capacity(pressed, case.get(Unknown::Friction), row.friction_faces);
    let shear = row
        .shear_each
        .filter(|_| row.positive)
        .map_or(0.0, |each| each.si() * f64::from(row.usual_count.max(1)));
    // Screws and stops carry load beside friction; the stronger of the two is counted, not both.
    friction.max(shear)
}
