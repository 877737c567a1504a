//! The rectangular floor, clamped or simply supported all around.
//!
//! The clamped one is the simply supported one (sine waves, Navier and Levy) whose edges are turned back by edge moments until
//! their slopes vanish (superposition, `timoshenko1959` art. 44, from memory). Seen as energies: the compliance is that of the
//! supported plate less v K^-1 v, v being the edge slopes under the load and K those under the edge moments. Every inner sum
//! is in closed form, and the four symmetries are solved apart.

use crate::dense::Cholesky;
use crate::math::sin;
use crate::rectangle_edges::Fold;
use crate::ritz::{Panel, Ritz};
use crate::sheet::{PlateError, Sheet, on_plate, positive, ratio_within, settled};
use core::f64::consts::PI;

/// Edge waves of one symmetry that are solved together on a short side; a longer side takes more, up to four times.
const COUPLED: f64 = 24.0;
const COUPLED_RATIO_MAX: f64 = 4.0;
/// Waves beyond are taken one by one, until exp(-this) is left of their effect at the load.
const FADED: f64 = 14.0;
/// Most waves on a side.
const WAVES_MAX: u32 = 6000;
/// Terms of the supported plate's series; the mean of the rest is added.
const SUPPORTED_TERMS: u32 = 600;
/// Odd waves in each direction under a uniform load (terms fall off with the sixth power).
const UNIFORM_WAVES: u32 = 81;
/// Share of the shorter side beside an edge in which the deflection is that of a straight clamped edge, distance^2 / (4 pi D),
/// brought to the series' value by a straight line in the distance.
const NEAR: f64 = 0.01;
/// Greatest ratio of the sides.
const ASPECT_MAX: f64 = 10.0;

/// Parities of the waves along x and y: 1 odd (symmetric), 2 even.
const SYMMETRIES: [(u32, u32); 4] = [(1, 1), (1, 2), (2, 1), (2, 2)];

/// A rectangle with a <= b, rigidity 1.
struct Sides {
    a: f64,
    b: f64,
}

/// What a load asks of the edges, for one symmetry: slopes at the x edges by wave along y, and the other way round.
struct Slopes {
    along_y: Vec<f64>,
    along_x: Vec<f64>,
}

impl Sides {
    /// 4 a^3 / (pi^4 b): flexibility of wave (m, n) is this over (m^2 + (n a/b)^2)^2.
    fn unit(&self) -> f64 {
        4.0 * self.a * self.a * self.a / (PI * PI * PI * PI * self.b)
    }

    fn swapped(&self) -> Self {
        Self {
            a: self.b,
            b: self.a,
        }
    }

    fn coupled(&self) -> (u32, u32) {
        let long = COUPLED * (self.b / self.a).min(COUPLED_RATIO_MAX);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 24 and 96"
        )]
        let long = long as u32;
        (24, long)
    }

    /// Sum over the waves m of one parity of m sin(m alpha) / (m^2 + g^2)^2.
    fn slope_sum(g: f64, alpha: f64, parity: u32) -> f64 {
        let (here, there) = (
            Fold::new(g, alpha).sines(g),
            Fold::new(g, alpha + PI).sines(g),
        );
        0.5 * if parity == 1 {
            here - there
        } else {
            here + there
        }
    }

    /// Sum over the waves m of one parity of m^2 / (m^2 + g^2)^2.
    fn moment_sum(g: f64, parity: u32) -> f64 {
        let (here, there) = (
            Fold::new(g, 0.0).curvatures(g),
            Fold::new(g, PI).curvatures(g),
        );
        0.5 * if parity == 1 {
            here - there
        } else {
            here + there
        }
    }

    /// Slope at the edges x = 0, a in wave `n` along y, under a unit load at (x, y); waves along x of one parity.
    fn slope(&self, n: f64, (x, y): (f64, f64), parity: u32) -> f64 {
        let g = n * self.a / self.b;
        self.unit() * sin(n * PI * y / self.b) * Self::slope_sum(g, PI * x / self.a, parity)
    }

    /// Slope at the edges x = 0, a in wave `n` along y, under an edge moment of that wave.
    fn own(&self, n: f64, parity: u32) -> f64 {
        self.unit() * Self::moment_sum(n * self.a / self.b, parity)
    }

    /// Deflection of the supported rectangle under a unit load at (x, y), there.
    fn supported(&self, (x, y): (f64, f64)) -> f64 {
        let ratio = self.b / self.a;
        let r4 = ratio * ratio * ratio * ratio;
        let mut sum = 0.0;
        for i in 1..=SUPPORTED_TERMS {
            let m = f64::from(i);
            let h = m * ratio;
            let wave = sin(m * PI * x / self.a);
            let inner =
                Fold::new(h, 0.0).cosines(h) - Fold::new(h, 2.0 * PI * y / self.b).cosines(h);
            sum += wave * wave * 0.5 * inner * r4;
        }
        let last = f64::from(SUPPORTED_TERMS) + 0.5;
        let rest = ratio * PI / 32.0 / (last * last);
        self.unit() * (sum + rest)
    }

    /// Factored edge flexibility of one symmetry.
    fn edges(&self, (px, py): (u32, u32)) -> Option<Cholesky> {
        let (count_x, count_y) = self.coupled();
        let size = (count_x + count_y) as usize;
        let split = count_y as usize;
        let mut all = vec![0.0; size * size];
        for i in 0..count_y {
            let n = f64::from(2 * i + py);
            let at = i as usize;
            all[at * size + at] = self.own(n, px);
            let g = n * self.a / self.b;
            for k in 0..count_x {
                let m = f64::from(2 * k + px);
                let under = m * m + g * g;
                let other = split + k as usize;
                let value = self.unit() * m * n / (under * under);
                all[at * size + other] = value;
                all[other * size + at] = value;
            }
        }
        let swapped = self.swapped();
        for k in 0..count_x {
            let at = split + k as usize;
            all[at * size + at] = swapped.own(f64::from(2 * k + px), py);
        }
        Cholesky::new(size, all)
    }

    fn slopes(
        &self,
        at: (f64, f64),
        (px, py): (u32, u32),
        (count_x, count_y): (u32, u32),
    ) -> Slopes {
        let swapped = self.swapped();
        Slopes {
            along_y: (0..count_y)
                .map(|i| self.slope(f64::from(2 * i + py), at, px))
                .collect(),
            along_x: (0..count_x)
                .map(|k| swapped.slope(f64::from(2 * k + px), (at.1, at.0), py))
                .collect(),
        }
    }

    /// Deflection of the clamped rectangle under a unit load at (x, y), there.
    fn clamped(&self, at: (f64, f64)) -> Option<f64> {
        let (count_x, count_y) = self.coupled();
        let gap_x = at.0.min(self.a - at.0);
        let gap_y = at.1.min(self.b - at.1);
        let swapped = self.swapped();
        let mut sum = self.supported(at);
        for symmetry in SYMMETRIES {
            let slopes = self.slopes(at, symmetry, (count_x, count_y));
            let mut v = slopes.along_y;
            v.extend(slopes.along_x);
            self.edges(symmetry)?.forward(&mut v);
            sum -= v.iter().map(|s| s * s).sum::<f64>();
            sum -= self.far_waves(at, (symmetry.0, 2 * count_y + symmetry.1), gap_x);
            sum -= swapped.far_waves((at.1, at.0), (symmetry.1, 2 * count_x + symmetry.0), gap_y);
        }
        Some(sum)
    }

    /// What the short waves along y take off, each for itself: they no longer reach the corners.
    fn far_waves(&self, at: (f64, f64), (px, first): (u32, u32), gap: f64) -> f64 {
        let mut sum = 0.0;
        let mut n = first;
        while f64::from(n) * PI * gap / self.b < FADED && n < WAVES_MAX {
            let slope = self.slope(f64::from(n), at, px);
            sum += slope * slope / self.own(f64::from(n), px);
            n += 2;
        }
        sum
    }

    /// Deflection at the centre under a unit pressure: of the supported rectangle, and of the clamped one.
    fn uniform(&self) -> Option<(f64, f64)> {
        let centre = (0.5 * self.a, 0.5 * self.b);
        let area = 4.0 * self.a * self.b / (PI * PI);
        let mut supported = 0.0;
        for i in 0..UNIFORM_WAVES {
            for k in 0..UNIFORM_WAVES {
                let (m, n) = (f64::from(2 * i + 1), f64::from(2 * k + 1));
                let g = n * self.a / self.b;
                let under = m * m + g * g;
                let sign = if (i + k) % 2 == 0 { 1.0 } else { -1.0 };
                supported += sign / (m * n * under * under);
            }
        }
        supported *= self.unit() * area;
        let counts = self.coupled();
        let slopes = self.slopes(centre, (1, 1), counts);
        let mut v = slopes.along_y;
        v.extend(slopes.along_x);
        let pressed = |sides: &Self, n: f64| {
            let g = n * sides.a / sides.b;
            let odd = 0.5 * (Fold::new(g, 0.0).cosines(g) - Fold::new(g, PI).cosines(g));
            sides.unit() * area / n * odd
        };
        let swapped = self.swapped();
        let mut u: Vec<f64> = (0..counts.1)
            .map(|i| pressed(self, f64::from(2 * i + 1)))
            .collect();
        u.extend((0..counts.0).map(|k| pressed(&swapped, f64::from(2 * k + 1))));
        let edges = self.edges((1, 1))?;
        edges.forward(&mut v);
        edges.forward(&mut u);
        let taken: f64 = v.iter().zip(&u).map(|(p, q)| p * q).sum();
        Some((supported, supported - taken))
    }
}

/// Sides with the shorter first, and the point turned with them.
fn ordered(a: f64, b: f64, (x, y): (f64, f64)) -> Result<(Sides, (f64, f64)), PlateError> {
    ratio_within(positive(a)? / positive(b)?, 1.0 / ASPECT_MAX, ASPECT_MAX)?;
    on_plate(x, 0.0, a)?;
    on_plate(y, 0.0, b)?;
    Ok(if a <= b {
        (Sides { a, b }, (x, y))
    } else {
        (Sides { a: b, b: a }, (y, x))
    })
}

/// Deflection per force \[m/N\] under a point load at (x, y) of a rectangle `a` by `b` \[m\] with clamped edges.
///
/// Superposition as in the head of this file; converged to about 1e-5. Sides in a ratio up to 10.
///
/// # Errors
/// Impossible sheet or sides, a load off the plate.
pub fn compliance(
    sheet: &Sheet,
    (a, b): (f64, f64),
    (x, y): (f64, f64),
) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    let (sides, (x, y)) = ordered(a, b, (x, y))?;
    let zone = NEAR * sides.a;
    let inside = (x.clamp(zone, sides.a - zone), y.clamp(zone, sides.b - zone));
    let gap = x.min(sides.a - x).min(y.min(sides.b - y));
    let known = sides.clamped(inside).ok_or(PlateError::NotSettled)?;
    if gap >= zone {
        return settled(known.max(0.0) / d);
    }
    let straight = gap * gap / (4.0 * PI);
    let at_zone = known * 4.0 * PI / (zone * zone);
    settled(straight * (1.0 + (at_zone - 1.0) * gap / zone) / d)
}

/// Deflection per force \[m/N\] at the centre of a clamped rectangle `a` by `b` \[m\]; `timoshenko1959` table 37 (from memory) agrees.
///
/// # Errors
/// Impossible sheet or sides.
pub fn compliance_centre(sheet: &Sheet, a: f64, b: f64) -> Result<f64, PlateError> {
    compliance(sheet, (a, b), (0.5 * a, 0.5 * b))
}

/// Deflection per force \[m/N\] under a point load at (x, y) of a simply supported rectangle; Roark table 11.4 case 1b (`young2002`, read) agrees.
///
/// # Errors
/// As [`compliance`].
pub fn compliance_supported(
    sheet: &Sheet,
    (a, b): (f64, f64),
    (x, y): (f64, f64),
) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    let (sides, at) = ordered(a, b, (x, y))?;
    settled(sides.supported(at).max(0.0) / d)
}

/// Deflection per pressure \[m/Pa\] at the centre of a clamped rectangle; `timoshenko1959` table 35 (from memory) agrees.
///
/// # Errors
/// Impossible sheet or sides.
pub fn uniform_compliance(sheet: &Sheet, a: f64, b: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    let (sides, _) = ordered(a, b, (0.0, 0.0))?;
    settled(sides.uniform().ok_or(PlateError::NotSettled)?.1 / d)
}

/// Deflection per pressure \[m/Pa\] at the centre of a simply supported rectangle; Roark table 11.4 case 1a (`young2002`, read) agrees.
///
/// # Errors
/// Impossible sheet or sides.
pub fn uniform_compliance_supported(sheet: &Sheet, a: f64, b: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    let (sides, _) = ordered(a, b, (0.0, 0.0))?;
    settled(sides.uniform().ok_or(PlateError::NotSettled)?.0 / d)
}

/// The `count` lowest frequencies \[Hz\] of a clamped rectangle, by [`crate::ritz`]; at most 12.
///
/// # Errors
/// Impossible sheet or sides, too many modes.
pub fn frequencies(sheet: &Sheet, a: f64, b: f64, count: usize) -> Result<Vec<f64>, PlateError> {
    Ritz::new(sheet, &Panel::floor(a, b))?.frequencies(sheet, count)
}

/// Lowest frequency \[Hz\] of a clamped rectangle.
///
/// # Errors
/// Impossible sheet or sides.
pub fn first_frequency(sheet: &Sheet, a: f64, b: f64) -> Result<f64, PlateError> {
    Ok(frequencies(sheet, a, b, 1)?[0])
}

#[cfg(test)]
mod tests;
