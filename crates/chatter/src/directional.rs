//! Directional factors: how a displacement in one direction changes the force in another, averaged over a tooth period.

use crate::math::{acos, cos, sin};
use core::f64::consts::PI;

/// The four averaged directional factors \[-\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Directional {
    /// Force in feed from displacement in feed.
    pub xx: f64,
    /// Force in feed from displacement across.
    pub xy: f64,
    /// Force across from displacement in feed.
    pub yx: f64,
    /// Force across from displacement across.
    pub yy: f64,
}

/// Averaged directional factors between entry and exit angle \[rad\], for the ratio of radial to tangential coefficient.
///
/// Closed form of `altintas1995` (from memory; checked by integrating the force of one tooth). They are integrals over the
/// arc: multiply by z / (2 pi) for the mean. Valid for a circular tooth path and no helix.
#[must_use]
pub fn directional(phi_st: f64, phi_ex: f64, kr_ratio: f64) -> Directional {
    let start = primitive(phi_st, kr_ratio);
    let end = primitive(phi_ex, kr_ratio);
    Directional {
        xx: end.xx - start.xx,
        xy: end.xy - start.xy,
        yx: end.yx - start.yx,
        yy: end.yy - start.yy,
    }
}

fn primitive(phi: f64, kr: f64) -> Directional {
    let (s2, c2) = (sin(2.0 * phi), cos(2.0 * phi));
    Directional {
        xx: 0.5 * (c2 - 2.0 * kr * phi + kr * s2),
        xy: 0.5 * (-s2 - 2.0 * phi + kr * c2),
        yx: 0.5 * (-s2 + 2.0 * phi + kr * c2),
        yy: 0.5 * (-c2 - 2.0 * kr * phi - kr * s2),
    }
}

/// Entry and exit angle \[rad\] of an up-milling (conventional) cut of radial share `ae_over_d` of the diameter, held to 0..1.
#[must_use]
pub fn up_milling(ae_over_d: f64) -> (f64, f64) {
    (0.0, acos(1.0 - 2.0 * ae_over_d.clamp(0.0, 1.0)))
}

/// Entry and exit angle \[rad\] of a down-milling (climb) cut of radial share `ae_over_d` of the diameter, held to 0..1.
#[must_use]
pub fn down_milling(ae_over_d: f64) -> (f64, f64) {
    (acos(2.0 * ae_over_d.clamp(0.0, 1.0) - 1.0), PI)
}

/// Entry and exit angle \[rad\] of a full-width slot.
#[must_use]
pub fn slotting() -> (f64, f64) {
    (0.0, PI)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Mean force change of one tooth by direct summation: the outside witness of the closed form.
    fn summed(phi_st: f64, phi_ex: f64, kr: f64) -> [f64; 4] {
        let steps = 20_000_u32;
        let h = (phi_ex - phi_st) / f64::from(steps);
        let mut sum = [0.0; 4];
        for i in 0..steps {
            let phi = phi_st + (f64::from(i) + 0.5) * h;
            let (s, c) = (sin(phi), cos(phi));
            // Ft = kt b h, Fr = kr Ft, h = dx sin + dy cos; the sign is that of the published factors (force opposes).
            sum[0] -= 2.0 * (c + kr * s) * s * h;
            sum[1] -= 2.0 * (c + kr * s) * c * h;
            sum[2] += 2.0 * (s - kr * c) * s * h;
            sum[3] += 2.0 * (s - kr * c) * c * h;
        }
        sum
    }

    #[test]
    fn closed_form_is_the_integral_of_the_tooth_force() {
        for (st, ex, kr) in [
            (0.0, PI, 0.3),
            (0.0, 1.2, 0.07),
            (2.4, PI, 0.5),
            (0.4, 2.0, 0.2),
        ] {
            let a = directional(st, ex, kr);
            for (closed, direct) in [a.xx, a.xy, a.yx, a.yy].into_iter().zip(summed(st, ex, kr)) {
                assert!((closed - direct).abs() < 1e-7, "{closed} against {direct}");
            }
        }
    }

    #[test]
    fn arcs_meet_at_the_full_slot() {
        assert!((up_milling(1.0).1 - slotting().1).abs() < 1e-12);
        assert!((down_milling(1.0).0 - slotting().0).abs() < 1e-7);
        assert!((up_milling(0.5).1 - 0.5 * PI).abs() < 1e-12);
    }
}
