//! Thickness of the finished web at its centre and at its edge: how much it gave under the cutter, and how true the heights
//! were set.

use super::{Said, Unreadable, above_nothing};
use crate::strategy::Step;
use thinwright_catalog::Numbers;

/// A web that was measured. SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WebThickness {
    /// At its softest place, mostly the centre.
    pub centre: f64,
    /// At its edge, beside the wall.
    pub edge: f64,
}

/// What it says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Web {
    /// How much thicker (below 0: thinner) the centre is than the edge, m.
    pub bow: f64,
    /// What was reckoned for it, m: pushed down while it was cut, it springs back thicker; pulled up, thinner.
    pub reckoned: f64,
    /// Push times give of the web over what was reckoned; none where the bow goes the other way, or is less than the error.
    pub factor: Option<Said>,
    /// How far the edge, where nothing gives, is off the thickness that was asked, m, if it is by more than the error.
    pub height: Option<f64>,
    /// Error of the two thicknesses together, m.
    pub error: f64,
}

/// What the thickness of a web says after its skim.
///
/// Units: m. Two thicknesses are read, so the error of their difference is that of one times the root of two.
/// Source: derived.
///
/// # Errors
/// What cannot be, and a step that touches no web.
pub fn web_thickness(
    read: WebThickness,
    step: &Step,
    numbers: &Numbers,
) -> Result<Web, Unreadable> {
    let (centre, edge) = (above_nothing(read.centre)?, above_nothing(read.edge)?);
    let web = step.web.as_ref().ok_or(Unreadable::NothingReckoned)?;
    let stiffness = above_nothing(web.stiffness.si()).map_err(|_| Unreadable::NothingReckoned)?;
    let asked = web.thickness.si();
    for value in [centre, edge] {
        if value > numbers.reading_odd * asked {
            return Err(Unreadable::TooFar {
                ratio: value / asked,
                most: numbers.reading_odd,
            });
        }
    }
    let one = numbers.reading_thickness_um * 1.0e-6;
    let error = core::f64::consts::SQRT_2 * one;
    let reckoned = step.loads.mean_axial.si() / stiffness;
    let bow = centre - edge;
    let same_way = bow * reckoned > 0.0 && bow.abs() > error;
    let factor = same_way.then(|| Said::around(bow.abs(), error).over(reckoned.abs()));
    let off = edge - asked;
    Ok(Web {
        bow,
        reckoned,
        factor,
        height: (off.abs() > one).then_some(off),
        error,
    })
}
