//! How to find the depth that runs quietly, by ear: where to start, how to go on, what to stop at.

use crate::case::{Case, cutting};
use crate::estimate::Unknown;
use crate::strategy::Listen;
use thinwright_chatter::{Cut, Mode, quiet_depth_detuned};
use thinwright_mechanics::kienzle::specific_cutting_force;
use thinwright_quantity::Length;

/// Depth that is quiet at any speed, m: cutter and machine as one mode in x and y, at most a share of the linear limit.
pub(crate) fn quiet_depth(case: &Case) -> Option<f64> {
    if case.cutter.drill || case.cutter.z == 0 {
        return None;
    }
    // No frequency is known, and none is needed: the least depth over all speeds does not depend on it.
    let mode = Mode {
        k: 1.0 / case.chain(),
        zeta: case.get(Unknown::Damping),
        omega_n: core::f64::consts::TAU * 1.0e3,
    };
    let chip = 0.5 * case.choice.fz;
    let cut = Cut {
        z: case.cutter.z,
        phi_st: case.pass.usual.immersion.phi_st,
        phi_ex: case.pass.usual.immersion.phi_ex,
        // The slope of force over chip thickness, which is what regenerates: (1 - mc) kc(h).
        kt: (1.0 - case.job.material.mc)
            * specific_cutting_force(&cutting(case.job), chip)
            * case.force_factor(),
        kr_ratio: case.job.material.radial_ratio.likely,
    };
    let depth = quiet_depth_detuned(&mode, &mode, &cut) * case.job.numbers.stability_share;
    (depth.is_finite() && depth > 0.0).then_some(depth)
}

/// The ladder of a step.
pub(crate) fn ladder(case: &Case, planned: f64) -> Option<Listen> {
    let numbers = &case.job.numbers;
    let quiet = quiet_depth(case)?;
    let grid = case.job.grid.depth;
    let start = (numbers.listen_start_share * planned).max(quiet.min(planned));
    Some(Listen {
        quiet: Length::from_si(quiet),
        start: Length::from_si(crate::choice::down(start, grid)),
        increment: Length::from_si(crate::choice::up(
            numbers.listen_increment_share * planned,
            grid,
        )),
        planned: Length::from_si(planned),
    })
}
