//! How long the line is that keeps a distance from an area's edge, for every distance: what clearing paths are
//! reckoned with before their offsets are worked out.

use super::Area;

/// Distances at which the line is worked out; straight lines between them.
const STATIONS: u32 = 24;
/// The share of a reckoned length that the offsets never fall below.
///
/// Between stations the length is straight but where loops vanish. Offsets of the samples and of jobs drawn by lot
/// stay above this share; a test holds it.
pub const LEAST_SHARE: f64 = 0.97;
/// A pass that would have less room than this is not counted: it may or may not be there (mm).
const ROOM_LEAST_MM: f64 = 0.02;

/// Length of the line at a distance from the edge.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// Distance between two stations (mm).
    step: f64,
    /// Lengths at the stations (mm), from the edge inwards.
    lengths: Vec<f64>,
    /// Distance at which nothing is left (mm).
    deepest: f64,
}

impl Profile {
    /// The profile of an area whose largest inscribed circle has the radius `deepest` (mm).
    pub fn new(area: &Area, deepest: f64) -> Profile {
        let deepest = if deepest.is_finite() {
            deepest.max(0.0)
        } else {
            0.0
        };
        let step = (deepest - ROOM_LEAST_MM).max(0.0) / f64::from(STATIONS - 1);
        let mut lengths = vec![area.perimeter_mm()];
        let mut rest = area.clone();
        for _ in 1..STATIONS {
            rest = rest.offset(-step);
            lengths.push(rest.perimeter_mm());
        }
        Profile {
            step,
            lengths,
            deepest,
        }
    }

    /// Length at a distance from the edge (mm).
    pub fn at(&self, distance: f64) -> f64 {
        if distance > self.deepest || self.step <= 0.0 {
            return 0.0;
        }
        let place = (distance / self.step).clamp(0.0, f64::from(STATIONS - 1));
        let before = libm::floor(place);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 0 and the number of stations"
        )]
        let i = before as usize;
        let a = self.lengths.get(i).copied().unwrap_or(0.0);
        let b = self.lengths.get(i + 1).copied().unwrap_or(a);
        a + (b - a) * (place - before)
    }

    /// Length of all passes from `first` inwards, `step` apart, and of the innermost of them (mm); nothing where they
    /// cannot be counted.
    pub fn passes(&self, first: f64, step: f64) -> (f64, f64) {
        let (mut total, mut last, mut distance) = (0.0, 0.0, first);
        if step > 0.0 {
            while distance < self.deepest - ROOM_LEAST_MM {
                last = self.at(distance);
                total += last;
                distance += step;
            }
        }
        (total, last)
    }
}
