//! The floor between rim and boss: an annulus clamped at its outer edge.
//!
//! A point load is split into waves cos(n theta) around the ring. For each the free plate's deflection under it,
//! R^2 ln R / (8 pi D) expanded, is corrected by the general solution (r^n, r^-n, r^(n+2), r^(2-n); logarithms for n = 0 and 1;
//! `timoshenko1959` art. 62, from memory) so that both edges are right. At the load itself the free part is zero, so the compliance is the sum
//! of the corrections alone: exact, and quick to converge away from a free edge.

use crate::annulus_modes;
use crate::dense::solve4;
use crate::math::ln;
use crate::sheet::{PlateError, Sheet, on_plate, positive, ratio_within, settled};
use crate::waves::{Term, Wave};
use core::f64::consts::PI;

/// Share of the sum below which the rest of the series is estimated instead of summed.
const TAIL: f64 = 2e-5;
/// The same where the terms fall off quickly, by more than `SLOW` from one to the next: there accuracy is cheap.
const TAIL_QUICK: f64 = 1e-7;
const SLOW: f64 = 0.98;
/// Terms after which the series is given up.
const TERMS_MAX: u32 = 60_000;
/// Terms that are always taken.
const TERMS_MIN: u32 = 6;
/// Share of the ring's width beside a held edge in which the series is not summed, as it would never end: there the deflection
/// tends to that of a straight clamped edge, distance^2 / (4 pi D), by a straight line in the distance.
const NEAR: f64 = 0.01;
/// Radii tried when looking for the softest place, before the golden section.
const SCAN: u32 = 16;
/// Steps of the golden section.
const REFINEMENTS: u32 = 12;
/// A free edge is the softest place when the ring is stiffer this share of its width away.
const BESIDE: f64 = 0.02;
const GOLDEN: f64 = 0.618_033_988_749_894_9;
/// Range of inner over outer radius.
const RATIO_MIN: f64 = 0.005;
const RATIO_MAX: f64 = 0.98;

/// What holds the inner edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InnerEdge {
    /// Nothing: a hole.
    Free,
    /// A boss that moves and tilts as a rigid body.
    RigidFloating,
    /// A boss that is bolted down.
    Clamped,
}

/// An annulus, clamped at its outer edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Annulus {
    /// Inner radius \[m\].
    pub inner: f64,
    /// Outer radius \[m\].
    pub outer: f64,
    /// What holds the inner edge.
    pub inner_edge: InnerEdge,
}

impl Annulus {
    /// Inner over outer radius, once found possible.
    pub(crate) fn checked_ratio(&self) -> Result<f64, PlateError> {
        positive(self.outer)?;
        ratio_within(positive(self.inner)? / self.outer, RATIO_MIN, RATIO_MAX)
    }
}

/// Deflection per force \[m/N\] under a point load at radius `r` of the annulus.
///
/// Exact series of thin-plate theory; the tail that is left out is estimated to some 1e-6 of the sum.
///
/// # Errors
/// Impossible sheet or radii, inner/outer outside 0.005 to 0.98, a load off the plate.
pub fn compliance(sheet: &Sheet, annulus: &Annulus, r: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    let b = annulus.checked_ratio()?;
    let load = on_plate(r, annulus.inner, annulus.outer)? / annulus.outer;
    let sum = share(sheet.nu, annulus.inner_edge, b, load.clamp(b, 1.0))?;
    settled((sum * annulus.outer * annulus.outer / (8.0 * PI * d)).max(0.0))
}

/// Deflection at the load over R^2 / (8 pi D).
fn share(nu: f64, edge: InnerEdge, b: f64, load: f64) -> Result<f64, PlateError> {
    let zone = NEAR * (1.0 - b);
    // What a held boss does as a rigid body is no part of the local bending beside it.
    let rigid = |at: f64| match edge {
        InnerEdge::RigidFloating => rigid_part(nu, b, at).ok_or(PlateError::NotSettled),
        InnerEdge::Free | InnerEdge::Clamped => Ok(0.0),
    };
    let blend = |gap: f64, known: f64| {
        let straight = 2.0 * gap * gap;
        straight * (1.0 + (known / (2.0 * zone * zone) - 1.0) * gap / zone)
    };
    if load >= 1.0 {
        return Ok(0.0);
    }
    if 1.0 - load < zone {
        return Ok(blend(1.0 - load, series(nu, edge, b, 1.0 - zone)?));
    }
    if edge != InnerEdge::Free && load <= b {
        return rigid(b);
    }
    if edge != InnerEdge::Free && load - b < zone {
        let known = series(nu, edge, b, b + zone)? - rigid(b + zone)?;
        return Ok(rigid(load)? + blend(load - b, known));
    }
    series(nu, edge, b, load)
}

/// Waves 0 and 1 of the deflection at the load: those in which a floating boss moves and tilts.
fn rigid_part(nu: f64, b: f64, load: f64) -> Option<f64> {
    let mut sum = 0.0;
    for n in 0..2 {
        let free: f64 = Wave::new(n, b, load)
            .inside
            .iter()
            .map(|t| t.value(load))
            .sum();
        sum += free + correction(nu, InnerEdge::RigidFloating, (b, load), n)?;
    }
    Some(sum)
}

fn series(nu: f64, edge: InnerEdge, b: f64, load: f64) -> Result<f64, PlateError> {
    let mut sum = 0.0;
    let mut last = 0.0;
    for n in 0..TERMS_MAX {
        let term = correction(nu, edge, (b, load), n).ok_or(PlateError::NotSettled)?;
        sum += term;
        if n >= TERMS_MIN {
            // The corrections die out like the images of the load in the two edges, x^n, and like 1/n^3 when it stands
            // on one: x from the last two, then the sum of n^3/(n + j)^3 x^j.
            let m = f64::from(n);
            let grown = m / (m - 1.0);
            let x = (term / last * grown * grown * grown).clamp(0.0, 1.0);
            let rest = term * x / (1.0 - x + 2.0 * x / (m - 1.0));
            let tail = if x > SLOW { TAIL } else { TAIL_QUICK };
            if rest.abs() < tail * sum.abs() && term.abs() < tail * sum.abs() {
                return Ok(sum + rest);
            }
        }
        last = term;
    }
    Err(PlateError::NotSettled)
}

/// What the edges add at the load to wave `n` of the free plate.
fn correction(nu: f64, edge: InnerEdge, (b, load): (f64, f64), n: u32) -> Option<f64> {
    let wave = Wave::new(n, b, load);
    let sum = |terms: &[Term], f: &dyn Fn(&Term) -> f64| terms.iter().map(f).sum::<f64>();
    let mut rows = [[0.0; 4]; 4];
    let mut right = [0.0; 4];
    let mut put = |row: usize, given: &[Term], f: &dyn Fn(&Term) -> f64| {
        for (entry, term) in rows[row].iter_mut().zip(&wave.basis) {
            *entry = f(term);
        }
        right[row] = -sum(given, f);
    };
    put(0, &wave.outside, &|t| t.value(1.0));
    put(1, &wave.outside, &|t| t.slope(1.0));
    let n2 = wave.n * wave.n;
    match (edge, n) {
        (InnerEdge::Free, _) => {
            put(2, &wave.inside, &|t| t.moment(b, n2, nu) * b * b);
            put(3, &wave.inside, &|t| t.shear(b, n2, nu) * b * b * b);
        }
        // A loose boss takes no net force (n = 0) and no net moment (n = 1): the last general solution, which alone
        // carries them, is absent inside the load circle.
        (InnerEdge::RigidFloating, 0) => {
            put(2, &wave.inside, &|t| t.slope(b));
            rows[3] = [0.0, 0.0, 0.0, 1.0];
        }
        (InnerEdge::RigidFloating, 1) => {
            put(2, &wave.inside, &|t| t.slope(b) * b - t.value(b));
            rows[3] = [0.0, 0.0, 0.0, 1.0];
        }
        (InnerEdge::RigidFloating | InnerEdge::Clamped, _) => {
            put(2, &wave.inside, &|t| t.value(b));
            put(3, &wave.inside, &|t| t.slope(b) * b);
        }
    }
    let c = solve4(rows, right)?;
    Some(
        c.iter()
            .zip(&wave.basis)
            .map(|(c, term)| c * term.value(load))
            .sum(),
    )
}

/// Deflection per force \[m/N\] of a rigid boss that is loaded at its centre and only held by the annulus around it.
///
/// R^2 / (16 pi D) (1 - b^2 - 4 b^2 ln(b)^2 / (1 - b^2)) with b = inner/outer, `timoshenko1959` art. 17 (own derivation; the
/// factors printed in `carvill1993` p. 55, read, agree).
///
/// # Errors
/// Impossible sheet or radii.
pub fn boss_compliance(sheet: &Sheet, annulus: &Annulus) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    let b = annulus.checked_ratio()?;
    let (b2, l) = (b * b, ln(b));
    let share = 1.0 - b2 - 4.0 * b2 * l * l / (1.0 - b2);
    settled(annulus.outer * annulus.outer / (16.0 * PI * d) * share)
}

/// The softest radius \[m\] and its compliance \[m/N\].
///
/// # Errors
/// As [`compliance`].
pub fn softest(sheet: &Sheet, annulus: &Annulus) -> Result<(f64, f64), PlateError> {
    let span = annulus.outer - annulus.inner;
    let at = |share: f64| compliance(sheet, annulus, annulus.inner + span * share);
    let mut best = (0.0, at(0.0)?);
    if annulus.inner_edge == InnerEdge::Free && at(BESIDE)? < best.1 {
        return Ok((annulus.inner, best.1));
    }
    for i in 1..SCAN {
        let share = f64::from(i) / f64::from(SCAN);
        let here = at(share)?;
        if here > best.1 {
            best = (share, here);
        }
    }
    let step = 1.0 / f64::from(SCAN);
    let (mut low, mut high) = ((best.0 - step).max(0.0), best.0 + step);
    for _ in 0..REFINEMENTS {
        let left = high - GOLDEN * (high - low);
        let right = low + GOLDEN * (high - low);
        let (at_left, at_right) = (at(left)?, at(right)?);
        for (share, here) in [(left, at_left), (right, at_right)] {
            if here > best.1 {
                best = (share, here);
            }
        }
        if at_left > at_right {
            high = right;
        } else {
            low = left;
        }
    }
    Ok((annulus.inner + span * best.0, best.1))
}

/// Deflection per pressure \[m/Pa\] of the inner edge under a uniform load on the annulus.
///
/// With a free inner edge this is Roark table 11.2 case 2e (`young2002`, read); a floating boss carries no pressure
/// of its own here; zero with a bolted boss.
///
/// # Errors
/// Impossible sheet or radii.
pub fn uniform_compliance(sheet: &Sheet, annulus: &Annulus) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    let b = annulus.checked_ratio()?;
    let nu = sheet.nu;
    let wave = Wave::new(0, b, 1.0);
    // Particular solution r^4 / 64, and no net force at the inner edge: its r^2 ln r part is then known.
    let log_part = Term::log(-0.125 * b * b, 2);
    let quartic = Term::power(1.0 / 64.0, 4);
    let given = [quartic, log_part];
    let ops: [&dyn Fn(&Term) -> f64; 3] = match annulus.inner_edge {
        InnerEdge::Clamped => return Ok(0.0),
        InnerEdge::Free => [&|t| t.value(1.0), &|t| t.slope(1.0), &|t| {
            t.moment(b, 0.0, nu) * b * b
        }],
        InnerEdge::RigidFloating => [&|t| t.value(1.0), &|t| t.slope(1.0), &|t| t.slope(b) * b],
    };
    let mut rows = [[0.0, 0.0, 0.0, 1.0]; 4];
    let mut right = [0.0; 4];
    for (row, op) in ops.iter().enumerate() {
        for (entry, term) in rows[row].iter_mut().zip(&wave.basis) {
            *entry = op(term);
        }
        right[row] = -given.iter().map(op).sum::<f64>();
    }
    let c = solve4(rows, right).ok_or(PlateError::NotSettled)?;
    let w: f64 = c
        .iter()
        .zip(&wave.basis)
        .map(|(c, t)| c * t.value(b))
        .sum::<f64>()
        + given.iter().map(|t| t.value(b)).sum::<f64>();
    let square = annulus.outer * annulus.outer;
    settled(w * square * square / d)
}

/// Lowest frequency \[Hz\] over 0, 1 and 2 nodal diameters; a floating boss is taken without mass.
///
/// # Errors
/// As [`compliance`]; also when no mode is found.
pub fn first_frequency(sheet: &Sheet, annulus: &Annulus) -> Result<f64, PlateError> {
    let mut least = f64::INFINITY;
    for n in 0..3 {
        least = least.min(frequencies(sheet, annulus, &Boss::default(), (n, 1))?[0]);
    }
    settled(least)
}

/// Mass of a floating boss, as far as it vibrates.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Boss {
    /// Mass \[kg\].
    pub mass: f64,
    /// Moment of inertia about a diameter in the plate's mid-plane \[kg m^2\].
    pub inertia: f64,
}

impl Boss {
    /// A solid cylinder of the sheet's material, centred on the mid-plane.
    #[must_use]
    pub fn cylinder(sheet: &Sheet, radius: f64, height: f64) -> Self {
        let mass = sheet.rho * PI * radius * radius * height;
        Self {
            mass,
            inertia: mass * (0.25 * radius * radius + height * height / 12.0),
        }
    }
}

/// The lowest frequencies \[Hz\] with `n` nodal diameters, `count` of them, for `(n, count)`.
///
/// Zeros of the exact determinant in Bessel functions (`leissa1969`); a floating boss adds its mass (n = 0) and its moment of
/// inertia (n = 1), own derivation.
///
/// # Errors
/// As [`compliance`]; a boss whose mass is not a number; when the modes are not found.
pub fn frequencies(
    sheet: &Sheet,
    annulus: &Annulus,
    boss: &Boss,
    (n, count): (u32, usize),
) -> Result<Vec<f64>, PlateError> {
    sheet.checked_rigidity()?;
    let b = annulus.checked_ratio()?;
    for value in [boss.mass, boss.inertia] {
        if !(value >= 0.0 && value.is_finite()) {
            return Err(PlateError::NotPositive { value });
        }
    }
    let square = annulus.outer * annulus.outer;
    let per_area = sheet.rho * sheet.t;
    let ring = annulus_modes::Ring {
        nu: sheet.nu,
        edge: annulus.inner_edge,
        b,
        mass: boss.mass / (per_area * square),
        inertia: boss.inertia / (per_area * square * square),
    };
    let lambdas = ring.lambdas(n, count).ok_or(PlateError::NotSettled)?;
    lambdas
        .into_iter()
        .map(|x| sheet.frequency(x * x, annulus.outer))
        .collect()
}

#[cfg(test)]
mod tests;
