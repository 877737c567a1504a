//! The web as a picture: its compliance everywhere, how it bows, its tones. For the page; the search needs less.

use crate::cache::Cache;
use crate::job::Job;
use crate::part::State;
use crate::plan::Point;
use crate::task::Face;
use crate::web::{Standing, layout, place, place_back, plate, softest};
use thinwright_quantity::{Frequency, Length};

/// How closely the web is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Detail {
    /// Within a frame or two; what the search uses.
    Coarse,
    /// The finer of two meshes.
    Fine,
}

/// What is looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Sight {
    /// The stock.
    pub state: State,
    /// The face that looks at the spindle.
    pub up: Face,
    /// Whether it is held as after turning over.
    pub second: bool,
    /// Whether the boss is bolted down.
    pub bolted: bool,
    /// Index into the backings of the job (0 = none).
    pub backing: usize,
    /// Radius of the cutter's patch of contact.
    pub patch: Length,
    /// How closely.
    pub detail: Detail,
}

/// A tone of the web.
#[derive(Clone, Debug, PartialEq)]
pub struct Tone {
    /// Its frequency.
    pub frequency: Frequency,
    /// Its shape: one value per node, the greatest 1 in size.
    pub shape: Vec<f64>,
}

/// The web as a picture, on a mesh of triangles.
#[derive(Clone, Debug, PartialEq)]
pub struct WebPicture {
    /// Nodes, in the plan of the part, mm.
    pub nodes: Vec<Point>,
    /// Triangles of what is solid, by their nodes, counter-clockwise.
    pub triangles: Vec<[u32; 3]>,
    /// For each triangle: it is floor of a recess, not rim or boss.
    pub floor: Vec<bool>,
    /// Compliance under the cutter's patch at each node, m/N.
    pub compliance: Vec<f64>,
    /// The softest place of the floor.
    pub softest: Point,
    /// Compliance there, m/N.
    pub most: f64,
    /// Deflection of each node under a force of 1 N that pushes down at the softest place, m, positive downwards.
    pub bow: Vec<f64>,
    /// The lowest tones, lowest first; none where a backing takes the drum away.
    pub tones: Vec<Tone>,
    /// By how much the mesh comes out too stiff at the softest place, as a share, told from two meshes.
    pub error: f64,
}

/// Why there is no picture of the web.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum WebError {
    /// The part has no floor in this state that a cutter works on.
    NoFloor,
    /// A slot or rib of this width is too narrow for the mesh.
    TooNarrow {
        /// Its width.
        width: Length,
    },
    /// An outline crosses itself.
    SelfCrossing,
    /// The part needs more triangles than are made.
    TooLarge,
    /// The part is in pieces.
    Pieces,
    /// Nothing holds the part.
    Unheld,
}

/// Shapes among which the tones are sought, and tones that are told.
const SHAPES: usize = 10;
const TONES: usize = 6;

/// Looks at the web. The cache changes how long it takes, never what is seen.
///
/// # Errors
/// Why there is nothing to be seen.
pub fn picture(job: &Job, sight: &Sight, cache: &mut Cache) -> Result<WebPicture, WebError> {
    let plan = cache.webs.plan(&job.part, sight.detail)?;
    let trust = cache.webs.trust(job, &sight.state)?;
    let hold = match sight.second {
        true => &job.holding.second,
        false => &job.holding.first,
    };
    let standing = Standing {
        state: &sight.state,
        up: sight.up,
        squeezed: hold.squeezes,
        bolted: sight.bolted,
        seat: hold.seat,
    };
    let backing = job.holding.backings.get(sight.backing);
    let bed = backing.map_or(0.0, |b| b.bed.likely);
    let cells = standing.cells(&job.part);
    let layout = layout(&plan, &standing, &cells, bed);
    let thickness = layout.thickness.clone();
    let mut plate = plate(job, &plan, layout)?;
    let floor = |t: usize| thickness[t] > 0.0 && plan.depth(sight.up, t) >= 0.0;
    let radius = sight.patch.to_m();
    let (softest, most) = softest(&mut plate, &plan, radius, floor).ok_or(WebError::NoFloor)?;
    let patch = plate
        .patch(place_back(softest), radius)
        .ok_or(WebError::NoFloor)?;
    let bow = plate.deflection(&patch).iter().map(|u| u[0]).collect();
    let mesh = plan.grid.mesh();
    let compliance = mesh.nodes.iter().map(|at| {
        plate
            .patch(*at, radius)
            .map_or(0.0, |patch| plate.compliance(&patch))
    });
    let compliance = compliance.collect();
    let solid = (0..mesh.triangles.len()).filter(|t| thickness[*t] > 0.0);
    let tones = match bed > 0.0 {
        true => Vec::new(),
        false => plate.tones::<SHAPES>(TONES),
    };
    Ok(WebPicture {
        nodes: mesh.nodes.iter().map(|at| place(*at)).collect(),
        triangles: solid.clone().map(|t| mesh.triangles[t]).collect(),
        floor: solid.map(floor).collect(),
        compliance,
        softest,
        most,
        bow,
        tones: tones.into_iter().map(Tone::from).collect(),
        error: match sight.detail {
            Detail::Coarse => trust.compliance,
            Detail::Fine => trust.left(),
        },
    })
}

impl From<thinwright_plate::fem::Tone> for Tone {
    fn from(tone: thinwright_plate::fem::Tone) -> Tone {
        Tone {
            frequency: Frequency::from_si(tone.frequency),
            shape: tone.shape,
        }
    }
}
