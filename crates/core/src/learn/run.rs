//! From a step that was run to the numbers that it is judged by.

use super::seen::{Edge, Force, Give, Seen, Song};
use super::world::World;
use crate::again::{Values, in_case};
use crate::cache::Cache;
use crate::case::Case;
use crate::estimate::Draw;
use crate::job::Job;
use crate::limits::LimitId;
use crate::quiet::{scenes, tip_alone};
use crate::strategy::{Step, Strategy};
use crate::vibration::{Scene, TipKnown, Whose, tip_known};
use thinwright_catalog::Numbers;

/// How a step went.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outcome {
    /// Well: quiet, and nothing broke.
    Held,
    /// It sang.
    Sang,
    /// The wall that it left is off by so much, m, give or take a share.
    Gave {
        /// Off by, m.
        by: f64,
        /// What the instrument leaves open, as a share.
        share: f64,
    },
    /// The cutter broke.
    Broke,
    /// Nothing that teaches: something else, or not said.
    Other,
}

/// What was run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// The numbers that were really run.
    pub values: Values,
    /// How it went.
    pub outcome: Outcome,
    /// What was measured of the force, over the likely one.
    pub force: Option<Force>,
}

/// How far above the step-down a limit at one speed is looked for; beyond, it counts as just there.
const HEADROOM: f64 = 4.0;
/// A push sideways below this share of the whole is none: the wall is not moved by it.
const LEAST_PUSH: f64 = 0.05;

/// The numbers by which a step of a strategy, counted from 0 over all setups, is judged after it was run; nothing where the
/// strategy is not of this job.
pub fn seen(
    job: &Job,
    strategy: &Strategy,
    at: usize,
    run: &Run,
    cache: &mut Cache,
) -> Option<Seen> {
    let step = strategy.setups.iter().flat_map(|s| &s.steps).nth(at)?;
    let found = in_case(job, strategy, (at, run.values), (false, cache), |case| {
        let likely = Case {
            draw: Draw::likely(case.estimates),
            ..*case
        };
        judged(&likely, step, run)
    })?;
    found.at.is_sound().then_some(found)
}

fn judged(case: &Case, step: &Step, run: &Run) -> Seen {
    let sang = match run.outcome {
        Outcome::Held => Some(false),
        Outcome::Sang => Some(true),
        Outcome::Gave { .. } | Outcome::Broke | Outcome::Other => None,
    };
    let give = match run.outcome {
        Outcome::Gave { by, share } => give(case, by, share),
        _ => None,
    };
    Seen {
        at: World::likely(case.estimates),
        tip: case.load.tip,
        song: sang.and_then(|sang| song(case, step, sang)),
        give,
        edge: (run.outcome != Outcome::Other).then(|| Edge {
            broke: run.outcome == Outcome::Broke,
            stress: case.load.bending.0,
            rupture: case.cutter.material.rupture_strength.likely.si(),
        }),
        force: run.force,
    }
}

/// The mean push on the wall that is left; none where the cutter is hardly pushed off it.
fn give(case: &Case, by: f64, share: f64) -> Option<Give> {
    let forces = case.load.wall.unwrap_or(case.load.usual);
    let force = forces.mean_normal.abs();
    (force > LEAST_PUSH * forces.mean_lateral && by > 0.0).then_some(Give {
        give: by,
        force,
        share,
    })
}

/// What a song says of the tip; nothing of drills, nor a quiet cut so slow that its flank keeps it quiet.
fn song(case: &Case, step: &Step, sang: bool) -> Option<Song> {
    let scene = Scene::new(case, false)?;
    let numbers = &case.job.numbers;
    let vc = core::f64::consts::PI * case.cutter.d * case.choice.n;
    let rubs = step.stability.as_ref().and_then(|s| s.damped_below);
    if !sang && rubs.is_some_and(|below| vc < below.si()) {
        return None;
    }
    let depth = case.choice.ap;
    let limit = limit(case, &scene);
    Some(Song {
        sang,
        depth,
        limit,
        damping: crate::vibration::damping(case),
        other: other(&scene, step, depth, numbers),
        told: tip_known(case) != TipKnown::Nothing,
    })
    .filter(|song| song.limit.is_finite() && song.limit > 0.0)
}

/// Depth at which the tip is as likely to sing as not: at the step's speed where a tone is known; else somewhat above what
/// is quiet at any speed, as most speeds are better than the worst.
fn limit(case: &Case, scene: &Scene) -> f64 {
    let any = tip_alone(case, scene);
    if tip_known(case) == TipKnown::Nothing {
        return any * case.job.numbers.learn_lobe_gain;
    }
    let most = HEADROOM * case.choice.ap;
    let found = scenes(case)
        .into_iter()
        .filter_map(|scene| scene.limit(case.choice.n, most))
        .map(|crossing| crossing.depth)
        .fold(f64::INFINITY, f64::min);
    match found.is_finite() {
        true => found,
        false => most.max(any),
    }
}

/// Chance that it is the work that sings at a depth: the rib beside a slot, or the web under a rounded corner.
fn other(scene: &Scene, step: &Step, depth: f64, numbers: &Numbers) -> f64 {
    let ribs = scene.voices.iter().filter(|v| v.whose == Whose::Rib);
    let ribs = ribs.map(|voice| scene.alone(voice));
    let web = step.findings.iter().find(|f| f.limit == LimitId::WebSong);
    let web = web.map(|f| f.at_likely.allowed / numbers.stability_share);
    let limit = ribs.chain(web).fold(f64::INFINITY, f64::min);
    match limit > 0.0 {
        true => super::seen::logistic(depth / limit, numbers.learn_song_spread),
        false => 1.0,
    }
}
