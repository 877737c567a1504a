//! One job worked out in turns, as the page's worker does it.

use thinwright_catalog::Catalog;
use thinwright_core::{Answers, Cache, Outcome, Progress, Search, read};
use thinwright_jobfile::samples;
use workspace_tests::jobs::random_answers;

/// A turn shorter than this is worth making larger, ms; the page's worker does so too.
const SHORT: f64 = 15.0;
/// A turn longer than this lets newer answers wait, ms.
const LONG: f64 = 50.0;
/// Most work of one turn.
const MOST_WORK: u64 = 64;

/// How far a job is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Stage {
    /// The strategy may still change.
    Working,
    /// The strategy is final; only what would change it is still to come.
    Checked,
    /// All is told.
    Done,
}

/// A job under way.
pub(crate) struct Trial {
    search: Search,
    slice: u64,
    stage: Stage,
    feasible: bool,
}

/// The name and the answers of a job: the samples first, then those drawn by lot.
pub(crate) fn job(index: usize) -> (String, Answers) {
    match samples().get(index) {
        Some(sample) => (sample.id.to_owned(), sample.job().answers),
        None => {
            let seed = index as u64 - samples().len() as u64;
            (format!("seed {seed}"), random_answers(seed))
        }
    }
}

impl Trial {
    /// Reads the answers and starts the search, nothing at hand from before.
    pub(crate) fn start(answers: &Answers, catalog: &Catalog) -> Trial {
        let job = read(answers, catalog).expect("samples and drawn jobs can be read");
        Trial {
            search: Search::new(job, Cache::default()),
            slice: 1,
            stage: Stage::Working,
            feasible: false,
        }
    }

    /// One turn.
    pub(crate) fn turn(&mut self) -> Stage {
        let stage = match self.search.advance(self.slice) {
            Progress::Working { checked: false, .. } => Stage::Working,
            Progress::Working { checked: true, .. } => Stage::Checked,
            Progress::Done(outcome) => {
                self.feasible = matches!(outcome, Outcome::Feasible(_));
                Stage::Done
            }
        };
        self.stage = self.stage.max(stage);
        self.stage
    }

    /// Fits the turns to how long the last one took, ms.
    pub(crate) fn took(&mut self, ms: f64) {
        if ms < SHORT {
            self.slice = (self.slice * 2).min(MOST_WORK);
        } else if ms > LONG {
            self.slice = (self.slice / 2).max(1);
        }
    }

    /// Whether there is a strategy; only at the end.
    pub(crate) fn feasible(&self) -> bool {
        self.feasible
    }

    /// Checks of candidates so far.
    pub(crate) fn checks(&self) -> u64 {
        self.search.effort().checks
    }
}
