//! The web as a picture: its compliance everywhere, how it bows, its tones. For the page; the search needs less.

use crate::cache::Cache;
use crate::job::Job;
use crate::part::State;
use crate::plan::Point;
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
    /// Whether the part has been turned over.
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
    /// How far two meshes differ at the softest place, as a share; `None` when only one was made.
    pub error: Option<f64>,
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

/// Looks at the web. The cache changes how long it takes, never what is seen.
///
/// # Errors
/// Why there is nothing to be seen.
pub fn picture(_job: &Job, _sight: &Sight, _cache: &mut Cache) -> Result<WebPicture, WebError> {
    Err(WebError::NoFloor)
}
