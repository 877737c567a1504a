//! The least chip that an edge still cuts.

use crate::math::{FRAC_PI_4, cos};

/// Least chip thickness as a share of the edge radius.
///
/// Units: -, m; m. Valid for: shares of 0.14 to 0.43 in the source. Source: cheng2018.
pub fn least_chip(ratio: f64, edge_radius: f64) -> f64 {
    ratio * edge_radius
}

/// Least chip thickness from the friction angle beta: re (1 - cos(pi/4 - beta/2)).
///
/// Units: m, rad; m. Valid for: beta of 0 to pi/2. Source: son2005, from memory.
/// # Example
/// Friction angle 30 degrees: 0.134 of the edge radius.
pub fn son_least_chip(edge_radius: f64, friction_angle: f64) -> f64 {
    edge_radius * (1.0 - cos(FRAC_PI_4 - 0.5 * friction_angle))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn more_friction_cuts_thinner() {
        assert!((son_least_chip(1.0, 30.0_f64.to_radians()) - 0.134).abs() < 5e-4);
        assert!(son_least_chip(1.0, 0.6) < son_least_chip(1.0, 0.5));
        assert!(son_least_chip(1.0, 2.0 * FRAC_PI_4).abs() < 1e-15);
        assert!((least_chip(0.3, 5e-6) - 1.5e-6).abs() < 1e-18);
    }
}
