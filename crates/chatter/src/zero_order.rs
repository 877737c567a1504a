//! Zero-order solution: limit depths with the force variation averaged over a tooth period.
//!
//! With the averaged directional matrix A and the receptances G, the cut is at its limit at the angular frequency w when an
//! eigenvalue mu of A G has -mu = 2 pi (1 - i cot(w T / 2)) / (z kt a) (`altintas1995`, from memory), so that
//! the depth at that frequency is a = -2 pi / (z kt Re mu), whatever the speed; the speed only picks the frequencies.
//! Read the warning in the crate's head before using a limit at one speed.

use crate::directional::{Directional, directional};
use crate::math::Complex;
use crate::mode::{Cut, Mode};
use core::f64::consts::PI;

/// Where to look around a mode, in damping ratios off its frequency; the neighbours of the best are refined.
const OFFSETS: [f64; 23] = [
    -40.0, -20.0, -10.0, -6.0, -4.0, -3.0, -2.2, -1.6, -1.2, -0.9, -0.5, 0.0, 0.5, 0.9, 1.2, 1.6,
    2.2, 3.0, 4.0, 6.0, 10.0, 20.0, 40.0,
];
/// Steps of the golden section around the best offset (each shrinks the bracket to 0.618).
const REFINEMENTS: u32 = 26;
/// Golden section.
const GOLDEN: f64 = 0.618_033_988_749_894_9;

/// The averaged, two-direction system of one cut.
pub(crate) struct System<'a> {
    pub(crate) x: &'a Mode,
    pub(crate) y: &'a Mode,
    alpha: Directional,
    /// 2 pi / (z kt) \[m^2/N\].
    pub(crate) scale: f64,
}

impl<'a> System<'a> {
    pub(crate) fn new(x: &'a Mode, y: &'a Mode, cut: &Cut) -> Option<Self> {
        let sound = x.is_sound() && y.is_sound() && cut.is_sound();
        sound.then(|| Self {
            x,
            y,
            alpha: directional(cut.phi_st, cut.phi_ex, cut.kr_ratio),
            scale: 2.0 * PI / (f64::from(cut.z) * cut.kt),
        })
    }

    /// Both eigenvalues, negated: where the real part is positive, `scale` over it is the limit depth.
    pub(crate) fn gains(&self, omega: f64) -> [Complex; 2] {
        let (gx, gy) = (self.x.receptance(omega), self.y.receptance(omega));
        let a = &self.alpha;
        let half = gx.scale(0.5 * a.xx).plus(gy.scale(0.5 * a.yy));
        let det = gx.times(gy).scale(a.xx * a.yy - a.xy * a.yx);
        let root = half.times(half).minus(det).sqrt();
        [half.plus(root), half.minus(root)]
    }

    fn gain(&self, omega: f64) -> f64 {
        let [one, other] = self.gains(omega);
        one.re.max(other.re)
    }

    fn largest_gain(&self) -> f64 {
        self.largest_around(self.x).max(self.largest_around(self.y))
    }

    fn largest_around(&self, mode: &Mode) -> f64 {
        let width = mode.zeta * mode.omega_n;
        let at = |offset: f64| self.gain((mode.omega_n + offset * width).max(0.0));
        let mut best = 0;
        let mut most = f64::NEG_INFINITY;
        for (i, &offset) in OFFSETS.iter().enumerate() {
            let gain = at(offset);
            if gain > most {
                (best, most) = (i, gain);
            }
        }
        let mut low = OFFSETS[best.saturating_sub(1)];
        let mut high = OFFSETS[(best + 1).min(OFFSETS.len() - 1)];
        let mut left = high - GOLDEN * (high - low);
        let mut right = low + GOLDEN * (high - low);
        let (mut at_left, mut at_right) = (at(left), at(right));
        for _ in 0..REFINEMENTS {
            if at_left > at_right {
                (high, right, at_right) = (right, left, at_left);
                left = high - GOLDEN * (high - low);
                at_left = at(left);
            } else {
                (low, left, at_left) = (left, right, at_right);
                right = low + GOLDEN * (high - low);
                at_right = at(right);
            }
        }
        most.max(at_left).max(at_right)
    }
}

/// Depth \[m\] up to which the cut is quiet at any spindle speed: the least zero-order limit over all frequencies.
///
/// Two modes, one in feed (`x`), one across (`y`); give [`Mode::rigid`] for a direction that does not move. Infinite when no
/// depth sings. Impossible input gives 0: no depth is known to be quiet. `altintas1995`, from memory; one mode alone agrees
/// with the closed form of [`quiet_depth_one_mode`].
#[must_use]
pub fn quiet_depth(x: &Mode, y: &Mode, cut: &Cut) -> f64 {
    let Some(system) = System::new(x, y, cut) else {
        return 0.0;
    };
    let gain = system.largest_gain();
    // A gain that overflowed says nothing, and so promises nothing.
    if !gain.is_finite() {
        0.0
    } else if gain > 0.0 {
        system.scale / gain
    } else {
        f64::INFINITY
    }
}

/// Depth \[m\] quiet at any speed when only the feed direction gives: closed form.
///
/// 2 k zeta (1 + zeta) / h for a positive mean force change h, 2 k zeta (1 - zeta) / |h| for a negative one (light
/// down-milling, where the chatter lies below the natural frequency). Tlusty and Polacek 1963 (`tlusty1963`), with the
/// averaged coefficient of `altintas1995`; both from memory. 0 for impossible input.
#[must_use]
pub fn quiet_depth_one_mode(mode: &Mode, cut: &Cut) -> f64 {
    if !mode.is_sound() || !cut.is_sound() {
        return 0.0;
    }
    let h = mean_force_change(cut);
    let share = if h > 0.0 {
        mode.zeta * (1.0 + mode.zeta)
    } else if mode.zeta < 0.5 {
        mode.zeta * (1.0 - mode.zeta)
    } else {
        // So much damping that the mode gives most when it does not vibrate at all.
        0.25
    };
    let depth = 2.0 * mode.k * share / h.abs();
    if depth.is_nan() { 0.0 } else { depth }
}

/// Mean over a tooth period of the force in feed per depth and displacement in feed \[Pa\]; 0 for an impossible cut.
#[must_use]
pub fn mean_force_change(cut: &Cut) -> f64 {
    if !cut.is_sound() {
        return 0.0;
    }
    let alpha = directional(cut.phi_st, cut.phi_ex, cut.kr_ratio);
    -f64::from(cut.z) * cut.kt * alpha.xx / (4.0 * PI)
}

#[cfg(test)]
mod tests;
