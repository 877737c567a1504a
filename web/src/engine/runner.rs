//! Answers in, reports out, one slice at a time; the same in worker and page. What was worked out before stays warm.

use super::viewer::Viewer;
use thinwright_catalog::Catalog;
use thinwright_core::{Cache, Progress, Search, read};
use thinwright_jobfile::{Covered, FromWorker, Order, Report, ToWorker};

/// A slice shorter than this is worth making larger, ms.
const SHORT: f64 = 15.0;
/// A slice longer than this lets newer answers wait, ms.
const LONG: f64 = 50.0;
/// Most work of one slice.
const MOST_WORK: u64 = 64;

/// A search that newer answers replace.
pub(crate) struct Runner {
    catalog: Catalog,
    cache: Cache,
    search: Option<(u32, Search)>,
    viewer: Viewer,
    /// The last turn was a look, not a slice.
    looked: bool,
    /// The strategy in hand is final: there is time for fine looks.
    stands: bool,
    /// Work of one slice.
    slice: u64,
}

impl Runner {
    pub(crate) fn new() -> Runner {
        Runner {
            catalog: Catalog::builtin(),
            cache: Cache::default(),
            search: None,
            viewer: Viewer::default(),
            looked: false,
            stands: false,
            slice: 1,
        }
    }

    /// Takes up answers in place of all before.
    pub(crate) fn take_up(&mut self, order: &ToWorker) -> Option<FromWorker> {
        let generation = order.generation;
        let answers = match &order.order {
            Order::Work(answers) => answers,
            Order::Stop => return self.stop(generation),
            Order::Look(sight) => {
                self.viewer.ask(generation, sight);
                return None;
            }
            Order::Chart(of) => {
                self.viewer.ask_chart(generation, of);
                return None;
            }
        };
        if let Some((_, search)) = self.search.take() {
            self.cache = search.into_cache();
        }
        match read(answers, &self.catalog) {
            Ok(job) => {
                self.viewer.renew(generation, job.clone());
                self.stands = false;
                self.search = Some((
                    generation,
                    Search::new(job, std::mem::take(&mut self.cache)),
                ));
                None
            }
            Err(problems) => {
                let fields = problems.into_iter().map(|p| p.field).collect();
                Some(FromWorker {
                    generation,
                    report: Report::Problems(fields),
                })
            }
        }
    }

    /// Works one slice, or looks at the web, or draws up a chart, and says how it stands; nothing when there is nothing to do.
    /// Charts and coarse looks go before everything, fine looks wait for the final strategy and then take turns with what is left of the search.
    pub(crate) fn turn(&mut self) -> Option<FromWorker> {
        let (looks, coarse) = self.viewer.waits();
        self.looked = looks && (coarse || self.search.is_none() || (self.stands && !self.looked));
        if self.looked {
            self.viewer.turn()
        } else {
            self.slice()
        }
    }

    fn slice(&mut self) -> Option<FromWorker> {
        let (generation, search) = self.search.as_mut()?;
        let generation = *generation;
        let report = match search.advance(self.slice) {
            Progress::Working { best, checked, .. } => {
                self.stands = checked;
                Report::Working {
                    covered: covered(search),
                    best,
                    checked,
                }
            }
            Progress::Done(outcome) => {
                let covered = covered(search);
                if let Some((_, search)) = self.search.take() {
                    self.cache = search.into_cache();
                }
                Report::Done { covered, outcome }
            }
        };
        Some(FromWorker { generation, report })
    }

    /// Stops the search in hand, if it is that one, and tells the best so far.
    fn stop(&mut self, generation: u32) -> Option<FromWorker> {
        let (_, mut search) = self.search.take_if(|(of, _)| *of == generation)?;
        let (covered, best) = (covered(&search), search.stop());
        self.cache = search.into_cache();
        Some(FromWorker {
            generation,
            report: Report::Stopped { covered, best },
        })
    }

    /// Fits the slices to how long the last one took.
    pub(crate) fn took(&mut self, ms: f64) {
        if self.looked {
            return;
        }
        if ms < SHORT {
            self.slice = (self.slice * 2).min(MOST_WORK);
        } else if ms > LONG {
            self.slice = (self.slice / 2).max(1);
        }
    }

    /// Whether there is work left.
    pub(crate) fn busy(&self) -> bool {
        self.search.is_some() || self.viewer.waits().0
    }
}

/// How much of the ground a search has covered.
fn covered(search: &Search) -> Covered {
    let (done, of) = search.pieces();
    let effort = search.effort();
    #[allow(
        clippy::cast_precision_loss,
        reason = "counts for people: the first digits matter"
    )]
    let count = |n: u64| n as f64;
    Covered {
        done,
        of,
        candidates: count(effort.candidates),
        looked_at: count(effort.checks),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_core::{Detail, Sight, advise};
    use thinwright_jobfile::samples;

    fn order(generation: u32, sample: usize) -> ToWorker {
        ToWorker {
            generation,
            order: Order::Work(samples()[sample].job().answers),
        }
    }

    /// What the first step looks at, or something like it: the raw blank.
    fn sight() -> Sight {
        let job = read(&samples()[0].job().answers, &Catalog::builtin()).unwrap();
        Sight {
            state: job.part.raw(),
            up: thinwright_core::task::Face::B,
            second: true,
            bolted: false,
            backing: 0,
            patch: thinwright_quantity::Length::mm(1.5),
            detail: Detail::Fine,
        }
    }

    fn looks(runner: &mut Runner, turns: usize) -> Vec<(u32, Sight)> {
        let said = (0..turns).filter_map(|_| runner.turn());
        let seen = said.filter_map(|said| match said.report {
            Report::Look { sight, .. } => Some((said.generation, sight)),
            _ => None,
        });
        seen.collect()
    }

    fn look(generation: u32) -> ToWorker {
        ToWorker {
            generation,
            order: Order::Look(sight()),
        }
    }

    #[test]
    fn a_coarse_look_goes_before_the_search_and_a_fine_one_waits_for_its_strategy() {
        let mut runner = Runner::new();
        runner.take_up(&order(1, 0));
        runner.turn();
        // Asked twice, looked once.
        assert!(runner.take_up(&look(1)).is_none() && runner.take_up(&look(1)).is_none());
        let mut seen: Vec<(u32, Detail, bool)> = Vec::new();
        let mut final_yet = false;
        while runner.busy() {
            match runner.turn().map(|said| (said.generation, said.report)) {
                Some((of, Report::Look { sight: at, .. })) => {
                    assert_eq!(at.state, sight().state);
                    seen.push((of, at.detail, final_yet));
                }
                Some((_, Report::Working { checked, .. })) => final_yet = checked,
                Some((_, Report::Done { .. })) => final_yet = true,
                _ => {}
            }
            runner.took(0.0);
        }
        assert_eq!(seen, [(1, Detail::Coarse, false), (1, Detail::Fine, true)]);
    }

    #[test]
    fn a_look_at_older_answers_is_dropped() {
        let mut runner = Runner::new();
        assert!(runner.take_up(&look(1)).is_none() && !runner.busy());
        runner.take_up(&order(1, 0));
        runner.take_up(&look(1));
        runner.take_up(&order(2, 1));
        runner.take_up(&look(1));
        assert_eq!(looks(&mut runner, 4), []);
    }

    fn finish(runner: &mut Runner) -> FromWorker {
        loop {
            let said = runner.turn().unwrap();
            runner.took(0.0);
            // Every report survives its way between the threads.
            assert_eq!(FromWorker::decode(&said.encode()).as_ref(), Ok(&said));
            if let Report::Done { .. } = said.report {
                return said;
            }
        }
    }

    #[test]
    fn newer_answers_replace_older_ones_and_a_warm_start_changes_nothing() {
        let mut runner = Runner::new();
        assert!(runner.take_up(&order(1, 0)).is_none());
        runner.turn();
        assert!(runner.take_up(&order(2, 1)).is_none());
        let said = finish(&mut runner);
        assert_eq!(said.generation, 2);
        assert!(!runner.busy() && runner.turn().is_none());
        let answers = samples()[1].job().answers;
        let job = read(&answers, &Catalog::builtin()).unwrap();
        assert!(matches!(said.report, Report::Done { outcome, .. } if outcome == advise(&job)));
    }

    #[test]
    fn answers_with_problems_are_named() {
        let mut runner = Runner::new();
        let mut answers = samples()[0].job().answers;
        answers.set_text(thinwright_core::Field::Thickness, "thick");
        let bad = ToWorker {
            generation: 7,
            order: Order::Work(answers),
        };
        let said = runner.take_up(&bad).unwrap();
        assert_eq!(said.generation, 7);
        assert!(
            matches!(said.report, Report::Problems(fields) if fields == [thinwright_core::Field::Thickness.into()])
        );
        assert!(runner.turn().is_none());
    }
}
