//! What the cutter meets in a step, and how far it travels.

use thinwright_mechanics::engagement::Immersion;

/// One way in which the cutter is engaged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Engagement {
    /// Angles of entry and exit.
    pub immersion: Immersion,
    /// Depth along the tool, m.
    pub ap: f64,
    /// Feed there, as a share of the step's feed.
    pub feed_share: f64,
}

/// What the cutter meets and how far it travels.
#[derive(Clone, Copy, Debug)]
pub struct Pass {
    /// Where it spends most of its time.
    pub usual: Engagement,
    /// Harder places: openings, corners, entries, sides.
    pub hard: [Option<Engagement>; 3],
    /// Where it leaves the finished wall, if it does.
    pub wall: Option<Engagement>,
    /// Path at the step's feed, all levels, m.
    pub path: f64,
    /// Path at a reduced feed (openings, slopes), m.
    pub slow_path: f64,
    /// The reduced feed as a share.
    pub slow_share: f64,
    /// Path down helices, m.
    pub helix_path: f64,
    /// The feed of the cutter's middle there, as a share.
    pub helix_share: f64,
    /// Lifts and plunges through air.
    pub lifts: u32,
    /// Typical length between two stops, m: for the acceleration.
    pub stretch: f64,
    /// Radius of loops, m, where the method runs in loops.
    pub loop_radius: Option<f64>,
    /// Holes drilled before, and the row of the drill.
    pub drilled: Option<(u32, u8)>,
}

/// How exactly path lengths are worked out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    /// By the profile of the region, and never more than the true length: to rule candidates out.
    Least,
    /// By real offsets of the region.
    Exact,
}
