//! Speeds: spindle and surface, feed and feed per tooth.

use crate::math::PI;

/// Surface speed vc = pi d n.
///
/// Units: `d` m, `n` 1/s; m/s. Source: iso3002.
pub fn surface_speed(d: f64, n: f64) -> f64 {
    PI * d * n
}

/// Spindle speed n = vc / (pi d).
///
/// Units: `vc` m/s, `d` m; 1/s. Source: iso3002.
pub fn spindle_speed(vc: f64, d: f64) -> f64 {
    vc / (PI * d)
}

/// Feed speed vf = fz z n.
///
/// Units: `fz` m, `n` 1/s; m/s. Source: iso3002.
pub fn feed_speed(fz: f64, z: u32, n: f64) -> f64 {
    fz * f64::from(z) * n
}

/// Feed per tooth fz = vf / (z n).
///
/// Units: `vf` m/s, `n` 1/s; m. Source: iso3002.
pub fn feed_per_tooth(vf: f64, z: u32, n: f64) -> f64 {
    vf / (f64::from(z) * n)
}

/// Way that a cutter runs into a slab of depth `ae` with its side before it is fully in: sqrt(ae (d - ae)).
///
/// Units: m; m. Valid for: ae up to d. Source: groover, milling times.
/// # Example
/// d 75, ae 5 (mm): 18.7 mm, so that 200 mm of work take 218.7 mm of travel.
pub fn slab_approach(ae: f64, d: f64) -> f64 {
    (ae * (d - ae)).max(0.0).sqrt()
}

/// Way that a cutter runs over a face of width `width` under its middle before it is fully in:
/// (d - sqrt(d2 - width2)) / 2.
///
/// Units: m; m. Valid for: width up to d, half the diameter from there on. Source: groover, milling times.
pub fn face_approach(width: f64, d: f64) -> f64 {
    0.5 * (d - (d * d - width * width).max(0.0).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn printed_speeds() {
        // Source: university shop table, 300 ft/min in aluminium: 4584 rpm at 1/4 in; and 1/32 in teeth of 0.001 at 3/8 in.
        let vc = 300.0 * 0.3048 / 60.0;
        assert!((spindle_speed(vc, 0.25 * 0.0254) * 60.0 - 4584.0).abs() < 1.0);
        assert!((surface_speed(6e-3, spindle_speed(vc, 6e-3)) / vc - 1.0).abs() < 1e-12);
        assert!((feed_per_tooth(feed_speed(4e-5, 3, 200.0), 3, 200.0) / 4e-5 - 1.0).abs() < 1e-12);
    }

    #[test]
    fn approaches_of_worked_examples() {
        // Source: groover, problems with 60 mm cutter, 9 mm deep, and 3 in cutter over 2 in of face.
        assert!((slab_approach(9.0, 60.0) - 21.4243).abs() < 1e-4);
        assert!((face_approach(2.0, 3.0) - 0.382).abs() < 1e-3);
        assert!((face_approach(6.0, 6.0) - 3.0).abs() < 1e-12);
    }
}
