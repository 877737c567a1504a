//! Engagement: between which angles a tooth is in the work.

use crate::math::{PI, acos, asin, cos};

/// Angles at which a tooth enters and leaves, counted from the normal to the left of the feed in the sense of rotation,
/// so that h = fz sin(phi).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Immersion {
    /// Entry, rad.
    pub phi_st: f64,
    /// Exit, rad.
    pub phi_ex: f64,
}

impl Immersion {
    /// Climb (down) milling: from pi - phi to pi; the finished wall is to the right of the feed.
    ///
    /// Units: `ae`, `d` m. Source: altintas1995.
    pub fn down(ae: f64, d: f64) -> Immersion {
        Immersion {
            phi_st: PI - engagement_angle(ae, d),
            phi_ex: PI,
        }
    }

    /// Conventional (up) milling: from 0 to phi; the finished wall is to the left of the feed.
    ///
    /// Units: `ae`, `d` m. Source: altintas1995.
    pub fn up(ae: f64, d: f64) -> Immersion {
        Immersion {
            phi_st: 0.0,
            phi_ex: engagement_angle(ae, d),
        }
    }

    /// Full width: from 0 to pi.
    pub fn slot() -> Immersion {
        Immersion {
            phi_st: 0.0,
            phi_ex: PI,
        }
    }

    /// A strip of width `ae` under the middle of the cutter: as far before the middle as behind it.
    ///
    /// Units: `ae`, `d` m. Valid for: ae up to d, a full slot from there on. Source: derived.
    pub fn centred(ae: f64, d: f64) -> Immersion {
        let half = asin((ae / d).clamp(0.0, 1.0));
        Immersion {
            phi_st: 0.5 * PI - half,
            phi_ex: 0.5 * PI + half,
        }
    }

    /// Angle in the work, rad.
    pub fn width(&self) -> f64 {
        self.phi_ex - self.phi_st
    }
}

/// Engagement angle phi = acos(1 - 2 ae / d).
///
/// Units: m; rad. Valid for: 0 <= ae <= d; clamped outside. Source: derived; printed tables agree.
/// # Example
/// At ae = d/2 a tooth is engaged for a quarter turn: pi/2.
pub fn engagement_angle(ae: f64, d: f64) -> f64 {
    acos((1.0 - 2.0 * ae / d).clamp(-1.0, 1.0))
}

/// Stepover that gives an engagement angle along a straight wall: ae = d (1 - cos phi) / 2.
///
/// Units: rad, m; m. Source: derived, the inverse of [`engagement_angle`].
pub fn ae_for_angle(phi: f64, d: f64) -> f64 {
    0.5 * d * (1.0 - cos(phi))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn up_and_down_are_mirror_images() {
        let (up, down) = (Immersion::up(1.0, 6.0), Immersion::down(1.0, 6.0));
        assert!((up.phi_ex + down.phi_st - PI).abs() < 1e-15);
        assert!((up.width() - down.width()).abs() < 1e-15);
        assert!((Immersion::down(6.0, 6.0).width() - Immersion::slot().width()).abs() < 1e-15);
    }

    #[test]
    fn a_centred_strip_is_as_wide_as_the_cut() {
        // The chord from entry to exit: d sin(half the width).
        for ae in [0.5, 3.0, 6.0, 9.0] {
            let width = Immersion::centred(ae, 6.0).width();
            assert!((6.0 * libm::sin(0.5 * width) - ae.min(6.0)).abs() < 1e-12);
        }
        assert!((Immersion::centred(6.0, 6.0).width() - Immersion::slot().width()).abs() < 1e-12);
    }

    #[test]
    fn printed_angles() {
        // Source: kyocera2021 and others print these for 50, 30, 20, 5 and 4 % of the diameter.
        for (share, degrees) in [
            (0.5, 90.0),
            (0.3, 66.42),
            (0.2, 53.13),
            (0.05, 25.84),
            (0.04, 23.07),
        ] {
            assert!((engagement_angle(share, 1.0).to_degrees() - degrees).abs() < 0.006);
        }
    }

    #[test]
    fn stepover_and_angle_invert() {
        for ae in [0.01, 0.5, 3.0, 5.9] {
            assert!((ae_for_angle(engagement_angle(ae, 6.0), 6.0) - ae).abs() < 1e-12);
        }
    }
}
