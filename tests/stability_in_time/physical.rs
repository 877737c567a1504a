//! The cut as it is: with feed, with teeth that leave the cut, over the surface that was really left. SI throughout.

use super::{Milling, Swinging};
use core::f64::consts::TAU;

/// Steps for each tooth; a whole number of them is the delay.
const STEPS: u32 = 240;

/// A cut with feed, long enough for what happens to have settled.
pub(crate) struct Feeding<'a> {
    pub(crate) milling: &'a Milling,
    /// Axial depth, m.
    pub(crate) depth: f64,
    /// Feed per tooth, m.
    pub(crate) fz: f64,
    /// Teeth that pass, and those at the end that are looked at.
    pub(crate) teeth: u32,
    pub(crate) looked_at: u32,
}

/// A place on the way of the teeth: sine and cosine of its angle, and how far out the surface stands there, moving with the feed.
struct Place {
    s: f64,
    c: f64,
    surface: f64,
}

/// How far the position seen once for each tooth spreads, m: the greatest over feed and the normal to it.
///
/// Nothing where each tooth finds the cutter as the one before did. The modes move in the plane of the feed. Central
/// differences in time; the surface is remembered at every place of the arc, also where a tooth passed above it.
pub(crate) fn sampled_peak_to_peak(feeding: &Feeding) -> f64 {
    let milling = feeding.milling;
    let h = milling.period() / f64::from(STEPS);
    let mut arc = arc(milling);
    let mut now = vec![0.0; milling.modes.len()];
    let mut before = now.clone();
    let mut seen: Vec<[f64; 2]> = Vec::new();
    for tooth in 0..feeding.teeth {
        for places in &mut arc {
            let u = position(&milling.modes, &now);
            let force = force(feeding, u, places);
            for ((q, last), m) in now.iter_mut().zip(&mut before).zip(&milling.modes) {
                let push =
                    (force[0] * m.along[0] + force[1] * m.along[1]) * m.omega * m.omega / m.k;
                let drag = m.zeta * m.omega * h;
                let free = h * h * (push - m.omega * m.omega * *q);
                let next = (2.0 * *q - (1.0 - drag) * *last + free) / (1.0 + drag);
                (*last, *q) = (*q, next);
            }
        }
        if tooth + feeding.looked_at >= feeding.teeth {
            seen.push(position(&milling.modes, &now));
        }
    }
    let spread = |axis: usize| {
        let range =
            |(low, high): (f64, f64), at: &[f64; 2]| (low.min(at[axis]), high.max(at[axis]));
        let (low, high) = seen.iter().fold((f64::INFINITY, f64::NEG_INFINITY), range);
        high - low
    };
    spread(0).max(spread(1))
}

/// For each step of a tooth period, where teeth are in the cut then.
fn arc(milling: &Milling) -> Vec<Vec<Place>> {
    let step = milling.pitch() / f64::from(STEPS);
    let at = |i: u32| {
        let angles =
            (0..milling.z).map(|j| step * f64::from(i) + TAU * f64::from(j) / f64::from(milling.z));
        let inside = angles.filter(|phi| *phi > milling.phi_st && *phi < milling.phi_ex);
        let place = |phi: f64| Place {
            s: libm::sin(phi),
            c: libm::cos(phi),
            surface: 0.0,
        };
        inside.map(place).collect()
    };
    (0..STEPS).map(at).collect()
}

fn position(modes: &[Swinging], q: &[f64]) -> [f64; 2] {
    let along = |axis: usize| modes.iter().zip(q).map(|(m, q)| m.along[axis] * q).sum();
    [along(0), along(1)]
}

/// Force of the teeth in the cut; leaves the surface that they leave.
fn force(feeding: &Feeding, u: [f64; 2], places: &mut [Place]) -> [f64; 2] {
    let (kt, kn) = (feeding.milling.kt, feeding.milling.kn);
    let mut force = [0.0; 2];
    for place in places {
        let out = u[0] * place.s + u[1] * place.c;
        let fed = feeding.fz * place.s;
        let chip = fed + out - place.surface;
        if chip > 0.0 {
            force[0] -= feeding.depth * chip * (kt * place.c + kn * place.s);
            force[1] += feeding.depth * chip * (kt * place.s - kn * place.c);
            place.surface = out;
        } else {
            // The tooth passes above what stands, and the feed carries it nearer.
            place.surface -= fed;
        }
    }
    force
}
