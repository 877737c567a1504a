//! How far the coarse mesh can be trusted: the finished web on two meshes.

use super::asked::{first_tone, patch_radius, plate, softest};
use super::plan::WebPlan;
use super::standing::{Standing, layout};
use super::{WebError, place_back};
use crate::job::Job;
use crate::part::{Part, State};
use crate::task::Face;

/// Ratio of nodes above which two meshes are too alike to tell an error from.
const ALIKE: f64 = 0.8;

/// Errors of the coarse mesh, as shares.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Trust {
    /// By how much the compliance at the softest place is too small; never less than 0.
    pub(crate) compliance: f64,
    /// By how much the first tone is too high; never less than 0.
    pub(crate) tone: f64,
    /// Nodes of the coarse mesh over those of the fine one.
    nodes: f64,
}

impl Trust {
    /// A compliance set right.
    pub(crate) fn softer(&self, compliance: f64) -> f64 {
        compliance * (1.0 + self.compliance)
    }

    /// The error that is left on the fine mesh.
    pub(crate) fn left(&self) -> f64 {
        self.compliance * self.nodes
    }

    /// A tone set right.
    pub(crate) fn lower(&self, tone: f64) -> f64 {
        tone / (1.0 + self.tone)
    }
}

/// The part with everything cut but the outline, and the slots only where they are `open`.
fn finished(part: &Part, open: bool) -> State {
    let (low, high) = (part.face_height(Face::B), part.face_height(Face::A));
    let stock = part.cells.iter().map(|cell| {
        let bottom = if cell.recess.1 {
            part.floor(Face::B)
        } else {
            low
        };
        let top = if cell.recess.0 {
            part.floor(Face::A)
        } else {
            high
        };
        if (cell.slot && open) || cell.bore {
            (low, low)
        } else {
            (bottom, top)
        }
    });
    State {
        stock: stock.collect(),
    }
}

/// Compares the finished part on both meshes, its slots `open` or not yet cut.
///
/// The element's error falls with the square of the edge, that is with one over the number of nodes: what two meshes
/// differ by tells how far the coarser one is off (Richardson's extrapolation).
///
/// # Errors
/// Why the plate gives no answer.
pub(crate) fn trust(
    job: &Job,
    (coarse, fine): (&WebPlan, &WebPlan),
    open: bool,
) -> Result<Trust, WebError> {
    let part = &job.part;
    let state = finished(part, open);
    let up = part.recesses.last().map_or(Face::A, |r| r.face);
    // Only the rim rests: the floor hangs free, whichever face is down.
    let standing = Standing {
        state: &state,
        up,
        squeezed: true,
        bolted: false,
        seat: job.holding.second.seat,
    };
    let cells = standing.cells(part);
    let radius = patch_radius(job);
    let mut at = None;
    let mut found = [(0.0, 0.0); 2];
    for (plan, found) in [coarse, fine].into_iter().zip(&mut found) {
        let layout = layout(plan, &standing, &cells, 0.0);
        let thickness = layout.thickness.clone();
        let mut plate = plate(job, plan, layout)?;
        let floor = |t: usize| thickness[t] > 0.0 && plan.depth(up, t) >= 0.0;
        if at.is_none() {
            at = softest(&mut plate, plan, radius, floor).map(|s| place_back(s.0));
        }
        let patch = at
            .and_then(|at| plate.patch(at, radius))
            .ok_or(WebError::NoFloor)?;
        *found = (plate.compliance(&patch), first_tone(&plate));
    }
    #[allow(clippy::cast_precision_loss, reason = "counts of nodes")]
    let [few, many] = [coarse, fine].map(|plan| plan.grid.mesh().nodes.len() as f64);
    let whole = 1.0 / (1.0 - (few / many).min(ALIKE));
    let share = |from: f64, to: f64| {
        let share = whole * (to / from - 1.0);
        if share.is_finite() {
            share.max(0.0)
        } else {
            0.0
        }
    };
    Ok(Trust {
        compliance: share(found[0].0, found[1].0),
        tone: share(found[1].1, found[0].1),
        nodes: few / many,
    })
}
