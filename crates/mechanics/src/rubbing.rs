//! The least chip that an edge still cuts.

use crate::math::{FRAC_PI_2, cos};

/// Least chip thickness as a share of the edge radius.
///
/// Units: -, m; m. Valid for: shares of 0.14 to 0.43 in the source. Source: cheng2018.
pub fn least_chip(ratio: f64, edge_radius: f64) -> f64 {
    ratio * edge_radius
}

/// Least chip thickness from the friction angle: re (1 - cos(pi/4 - beta/2)).
///
/// Units: m, rad; m. Source: son2005, from memory.
pub fn son_least_chip(edge_radius: f64, friction_angle: f64) -> f64 {
    edge_radius * (1.0 - cos(0.5 * (FRAC_PI_2 - friction_angle)))
}
