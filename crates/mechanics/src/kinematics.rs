//! Speeds: spindle and surface, feed and feed per tooth.

use crate::math::PI;

/// Surface speed vc = pi d n.
///
/// Units: `d` m, `n` 1/s; m/s. Source: ISO 3002-1.
pub fn surface_speed(d: f64, n: f64) -> f64 {
    PI * d * n
}

/// Spindle speed n = vc / (pi d).
///
/// Units: `vc` m/s, `d` m; 1/s. Source: ISO 3002-1.
pub fn spindle_speed(vc: f64, d: f64) -> f64 {
    vc / (PI * d)
}

/// Feed speed vf = fz z n.
///
/// Units: `fz` m, `n` 1/s; m/s. Source: ISO 3002-3.
pub fn feed_speed(fz: f64, z: u32, n: f64) -> f64 {
    fz * f64::from(z) * n
}

/// Feed per tooth fz = vf / (z n).
///
/// Units: `vf` m/s, `n` 1/s; m. Source: ISO 3002-3.
pub fn feed_per_tooth(vf: f64, z: u32, n: f64) -> f64 {
    vf / (f64::from(z) * n)
}

/// Way a cutter runs before it is fully in a face of width `width`, centred: (d - sqrt(d2 - width2)) / 2 for a face
/// narrower than the cutter; for a slab of depth `ae`, sqrt(ae (d - ae)).
///
/// Units: m. Source: geometry, as used in groover2010 for milling times.
pub fn slab_approach(ae: f64, d: f64) -> f64 {
    (ae * (d - ae)).max(0.0).sqrt()
}
