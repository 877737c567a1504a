//! What a plate is asked: its softest place, how far it bends there, how it is strained, its first tone.

use super::plan::{WebPlan, place};
use super::{WebError, place_back};
use crate::job::Job;
use crate::plan::Point;
use core::f64::consts::PI;
use thinwright_plate::fem::{FemError, Layout, Plate, Stuff, Theory};

/// Places, softest by their nodes, at which the patch itself is tried.
const TRIED: usize = 8;
/// Shapes among which the first tone is sought.
const SHAPES: usize = 3;

/// What a plate answers at the softest place of its floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Asked {
    /// Compliance of the patch there, m/N.
    pub(crate) most: f64,
    /// The place, mm.
    pub(crate) at: Point,
    /// Radius of the clamped disc with the same bending moment under the patch, m.
    pub(crate) radius: f64,
}

/// A plate of this job.
///
/// # Errors
/// Why it gives no answer.
pub(crate) fn plate<'a>(
    job: &Job,
    plan: &'a WebPlan,
    layout: Layout,
) -> Result<Plate<'a>, WebError> {
    let material = &job.material;
    let stuff = Stuff {
        e_mod: material.e_mod.si(),
        nu: material.nu,
        rho: material.density.si(),
    };
    let plate = Plate::new(&plan.grid, &stuff, layout, Theory::ShearFlexible);
    let plate = plate.map_err(|error| match error {
        FemError::Pieces { .. } => WebError::Pieces,
        FemError::Unheld => WebError::Unheld,
        _ => WebError::NoFloor,
    })?;
    Ok(plate.heavier(&plan.weight))
}

/// Radius of the patch that is asked for, m: that of the thinnest mill at hand.
pub(crate) fn patch_radius(job: &Job) -> f64 {
    let mills = job.rack.iter().filter(|c| !c.drill).map(|c| 0.5 * c.d);
    let least = mills.fold(f64::INFINITY, f64::min);
    if least.is_finite() { least } else { 1.0e-3 }
}

/// The softest of the places on these triangles: the patch on it, its place and compliance.
///
/// The nodes' own compliances, which come all at once, say where to look.
pub(crate) fn softest(
    plate: &mut Plate,
    plan: &WebPlan,
    radius: f64,
    on: impl Fn(usize) -> bool,
) -> Option<(Point, f64)> {
    let mesh = plan.grid.mesh();
    let nodal = plate.nodal_compliance();
    let mut counts = vec![false; mesh.nodes.len()];
    for (index, nodes) in mesh.triangles.iter().enumerate() {
        if on(index) {
            nodes.iter().for_each(|n| counts[*n as usize] = true);
        }
    }
    let mut nodes: Vec<usize> = (0..nodal.len()).filter(|n| counts[*n]).collect();
    nodes.sort_by(|a, b| nodal[*b].total_cmp(&nodal[*a]));
    let tried = nodes.iter().take(TRIED).filter_map(|node| {
        let at = mesh.nodes[*node];
        let patch = plate.patch(at, radius)?;
        Some((place(at), plate.compliance(&patch)))
    });
    tried.fold(None, |most: Option<(Point, f64)>, next| match most {
        Some(most) if most.1 >= next.1 => Some(most),
        _ => Some(next),
    })
}

/// Asks a plate; `None` where there is no floor on these triangles.
pub(crate) fn ask(
    plate: &mut Plate,
    plan: &WebPlan,
    radius: f64,
    on: impl Fn(usize) -> bool,
) -> Option<Asked> {
    let (at, most) = softest(plate, plan, radius, on)?;
    let patch = plate.patch(place_back(at), radius)?;
    let (moment, of) = plate.mean_moment(&plate.deflection(&patch), &patch);
    let [x, y, xy] = moment;
    let greatest = 0.5 * (x + y).abs() + libm::hypot(0.5 * (x - y), xy);
    // A clamped disc of this radius bends as far under a patch as wide as the triangles looked at: the moment
    // under a patch grows with the logarithm of 1/radius, whatever the plate around it (timoshenko1959, art. 19).
    let radius = of * libm::exp(4.0 * PI * greatest / (1.0 + plate.nu()));
    Some(Asked { most, at, radius })
}

/// First frequency of a plate, Hz; 0 where it has none.
pub(crate) fn first_tone(plate: &Plate) -> f64 {
    plate
        .tones::<SHAPES>(1)
        .first()
        .map_or(0.0, |t| t.frequency)
}
