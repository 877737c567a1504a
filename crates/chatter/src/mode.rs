//! What vibrates, and the cut that drives it.

use crate::math::Complex;

/// One mode of vibration at the cutter's tip, in one direction.
///
/// A direction that does not give at all is a mode with infinite `k`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mode {
    /// Modal stiffness at the tip \[N/m\].
    pub k: f64,
    /// Damping ratio \[-\].
    pub zeta: f64,
    /// Natural angular frequency \[rad/s\].
    pub omega_n: f64,
}

impl Mode {
    /// A direction without any give.
    #[must_use]
    pub fn rigid() -> Self {
        Self {
            k: f64::INFINITY,
            zeta: 1.0,
            omega_n: 1.0,
        }
    }

    /// Whether stiffness, damping and frequency are positive numbers (the stiffness may be infinite).
    #[must_use]
    pub fn is_sound(&self) -> bool {
        self.k > 0.0
            && self.zeta > 0.0
            && self.zeta.is_finite()
            && self.omega_n > 0.0
            && self.omega_n.is_finite()
    }

    /// Displacement per force at the angular frequency `omega` \[m/N\].
    pub(crate) fn receptance(&self, omega: f64) -> Complex {
        let ratio = omega / self.omega_n;
        let re = 1.0 - ratio * ratio;
        let im = 2.0 * self.zeta * ratio;
        let factor = 1.0 / (self.k * (re * re + im * im));
        Complex::new(re * factor, -im * factor)
    }
}

/// The cut, as far as stability asks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// Teeth \[-\].
    pub z: u32,
    /// Angle at which a tooth enters, from the normal to the feed \[rad\].
    pub phi_st: f64,
    /// Angle at which it leaves \[rad\]; greater than `phi_st`, at most pi.
    pub phi_ex: f64,
    /// Tangential cutting coefficient \[Pa\]: the part of the force that grows with chip thickness.
    pub kt: f64,
    /// Radial over tangential coefficient \[-\].
    pub kr_ratio: f64,
}

impl Cut {
    /// Whether this is a cut at all: teeth, an arc of contact, a positive coefficient, everything finite.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        self.z > 0
            && self.phi_st >= 0.0
            && self.phi_ex > self.phi_st
            && self.phi_ex <= core::f64::consts::PI + ANGLE_SLACK
            && self.kt > 0.0
            && self.kt <= KT_MAX
            && self.kr_ratio.abs() <= RATIO_MAX
    }
}

/// No edge presses harder than this many times its tangential force \[-\]; keeps the arithmetic in range.
const RATIO_MAX: f64 = 1e3;
/// No solid cuts this hard \[Pa\]; keeps the arithmetic in range.
const KT_MAX: f64 = 1e15;
/// How far rounding may carry an exit angle beyond pi \[rad\].
const ANGLE_SLACK: f64 = 1e-9;
