//! A floor that gives only along the axis of the cutter.

use crate::edge::Edge;
use crate::mode::{Cut, Mode};
use core::f64::consts::PI;

/// Depth \[m\] up to which a floor that moves only axially is quiet at any speed.
///
/// Own reduction of a three-dimensional force model (`altintas2001`, from memory) to one axial mode, with no axial coefficient
/// of its own: a = 2 k zeta (1 + zeta) / (kt kr c m), c the mean of cos^2 kappa along the edge per depth, m teeth in the cut. A
/// sharp corner does not regenerate axially with its side edges: the result is infinite. The engaged end edge is not
/// covered. No published number stands behind it: a formula, not a validated result; it agrees with [`crate::floquet`]. Impossible
/// input gives 0: no depth is known to be quiet.
#[must_use]
pub fn axial_quiet_depth(floor: &Mode, cut: &Cut, edge: &Edge) -> f64 {
    if !floor.is_sound() || !cut.is_sound() {
        return 0.0;
    }
    let teeth_in_cut = f64::from(cut.z) * (cut.phi_ex - cut.phi_st) / (2.0 * PI);
    let axial = cut.kt * cut.kr_ratio.max(0.0) * edge.cc * teeth_in_cut;
    if edge.cc < SHARP || axial <= 0.0 {
        return f64::INFINITY;
    }
    2.0 * floor.k * floor.zeta * (1.0 + floor.zeta) / axial
}

/// A share of the corner below which an edge counts as sharp \[-\].
const SHARP: f64 = 1e-24;
