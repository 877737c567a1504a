//! Clearing at full depth from the inside outwards: the cutter always has uncut stock ahead.

use super::asked::{ask, patch_radius, plate};
use super::plan::WebPlan;
use super::standing::{Standing, layout};
use super::trust::Trust;
use super::{WebAnswer, WebError};
use crate::job::Job;

/// How far from the wall the cut has come, as shares of the widest way: where the web is looked at.
const FRONTS: [f64; 3] = [2.0 / 3.0, 1.0 / 3.0, 1.0 / 12.0];
/// Width behind the front on which the cutter bears, in radii of its patch, and at least as a share of the widest way.
const BAND: (f64, f64) = (2.0, 0.1);

/// The web behind a front that moves outwards: all of it cut from `before` to `after` further from the wall than the
/// front, none of it nearer; the softest of three fronts. Tones and bed are those of the web when all is cut.
///
/// # Errors
/// Why the plate gives no answer.
pub(crate) fn centre_out(
    (job, plan, trust): (&Job, &WebPlan, Trust),
    before: &Standing,
    after: &Standing,
    all_cut: &WebAnswer,
) -> Result<Option<WebAnswer>, WebError> {
    let [thick, thin] = [before, after].map(|s| layout(plan, s, &s.cells(&job.part), 0.0));
    let depth = |t: usize| plan.depth(after.up, t);
    let widest = (0..plan.of.len()).map(depth).fold(0.0, f64::max);
    let radius = patch_radius(job);
    let band = (BAND.0 * radius).max(BAND.1 * widest);
    let mut worst: Option<WebAnswer> = None;
    for share in FRONTS {
        let front = share * widest;
        let mut stock = thin.clone();
        for (index, t) in stock.thickness.iter_mut().enumerate() {
            if depth(index) < front {
                *t = thick.thickness[index];
            }
        }
        let solid = stock.thickness.clone();
        let mut plate = plate(job, plan, stock)?;
        let on = |t: usize| solid[t] > 0.0 && depth(t) >= front && depth(t) <= front + band;
        let Some(asked) = ask(&mut plate, plan, radius, on) else {
            continue;
        };
        let bare = trust.softer(asked.most);
        if worst.is_none_or(|w| bare > w.bare) {
            worst = Some(WebAnswer {
                bare: bare.min(all_cut.bare),
                at: asked.at,
                radius: asked.radius.min(all_cut.radius),
                ..*all_cut
            });
        }
    }
    Ok(worst)
}
