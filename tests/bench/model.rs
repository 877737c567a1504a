//! Model problem (c) of `shared/reference/plates.md`, 4 mm thick, from its outline to map and tones. The same code natively
//! and as WASM; the clock is the caller's.

use crate::outlines::{ALUMINIUM, PLACES_C, problem_c};
use thinwright_plate::fem::{Plate, Theory};

/// Stages of a run that are timed.
pub(crate) const STAGES: usize = 5;
/// What is told of a run: compliances at the boss and the four places, greatest of either map, m/N; the first tone, Hz.
pub(crate) const TOLD: usize = 8;

const THICKNESS: f64 = 0.004;
/// Radius of a patch, and of the boss, which bears all over, m.
const PATCH: f64 = 0.003;
const BOSS: f64 = 0.012;
/// Greatest edge times the elements across a rib, m.
const EDGE: f64 = 0.02;
/// Runs of which the quickest counts, stage by stage, as with the peers.
const RUNS: usize = 9;
const TONES: usize = 6;

/// What came out, and how long it took.
pub(crate) struct Solved {
    /// The quickest of each stage, ms: mesh; assembly and factor; map of nodes; map of patches; tones.
    pub(crate) ms: [f64; STAGES],
    /// All stages of the first run, ms.
    pub(crate) first: f64,
    pub(crate) nodes: f64,
    pub(crate) told: [f64; TOLD],
}

/// Solves the problem on a mesh with so many elements across a rib, several times.
pub(crate) fn solve(across: f64, now: impl Fn() -> f64) -> Solved {
    let mut solved = once(across, &now);
    for _ in 1..RUNS {
        let again = once(across, &now);
        for (least, ms) in solved.ms.iter_mut().zip(again.ms) {
            *least = least.min(ms);
        }
    }
    solved
}

/// The same once.
pub(crate) fn once(across: f64, now: impl Fn() -> f64) -> Solved {
    let plan = problem_c(THICKNESS).with_moved_steps();
    let mut last = now();
    let mut lap = || {
        let from = last;
        last = now();
        last - from
    };
    let grid = plan.grid((EDGE / across, across));
    let mesh = lap();
    let layout = plan.layout(&grid);
    let plate = Plate::new(&grid, &ALUMINIUM, layout, Theory::ShearFlexible);
    let mut plate = plate.expect("a plate").weighed(&plan.mass(&grid));
    let factor = lap();
    let nodal = plate.nodal_compliance();
    let map = lap();
    let mean = |plate: &mut Plate, at, radius| {
        let patch = plate.patch(at, radius);
        patch.map_or(0.0, |patch| plate.compliance(&patch))
    };
    let nodes = &grid.mesh().nodes;
    let means: Vec<f64> = nodes
        .iter()
        .map(|at| mean(&mut plate, *at, PATCH))
        .collect();
    let patches = lap();
    let tones = plate.tones::<10>(TONES);
    let ms = [mesh, factor, map, patches, lap()];
    let [a, b, c, d] = PLACES_C.map(|at| mean(&mut plate, at, PATCH));
    let boss = mean(&mut plate, [0.0, 0.0], BOSS);
    let most = |map: &[f64]| map.iter().copied().fold(0.0, f64::max);
    let tone = tones.first().map_or(0.0, |tone| tone.frequency);
    #[allow(clippy::cast_precision_loss, reason = "a count of nodes")]
    Solved {
        ms,
        first: ms.iter().sum(),
        nodes: nodes.len() as f64,
        told: [boss, a, b, c, d, most(&nodal), most(&means), tone],
    }
}
