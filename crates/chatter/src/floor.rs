//! A floor that gives only along the axis of the cutter.

use crate::math::{cos, sin};
use crate::mode::{Cut, Mode};
use core::f64::consts::PI;

/// Depth \[m\] up to which a floor that moves only axially is quiet at any speed, cut by an edge of lead angle `kappa` \[rad\].
///
/// Own reduction of a three-dimensional force model (`altintas2001`, from memory) to one axial mode, with no axial coefficient
/// of its own: a = 2 k zeta (1 + zeta) sin(kappa) / (kt kr cos(kappa)^2 m), m teeth in the cut. A flat end mill (kappa = pi/2) does not
/// regenerate axially with its side edges: the result is infinite. The engaged end edge is not covered. No published number
/// stands behind it: a formula, not a validated result. Impossible input gives 0: no depth is known to be quiet.
#[must_use]
pub fn axial_quiet_depth(floor: &Mode, cut: &Cut, kappa: f64) -> f64 {
    let edge_ok = kappa > 0.0 && kappa <= 0.5 * PI;
    if !floor.is_sound() || !cut.is_sound() || !edge_ok {
        return 0.0;
    }
    let teeth_in_cut = f64::from(cut.z) * (cut.phi_ex - cut.phi_st) / (2.0 * PI);
    let slope = cos(kappa);
    let axial = cut.kt * cut.kr_ratio.max(0.0) * slope * slope / sin(kappa) * teeth_in_cut;
    if slope < FLAT || axial <= 0.0 {
        return f64::INFINITY;
    }
    2.0 * floor.k * floor.zeta * (1.0 + floor.zeta) / axial
}

/// Cosine of the lead angle below which an edge counts as flat \[-\].
const FLAT: f64 = 1e-12;
