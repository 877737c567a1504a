//! Looks at the web between the slices of a search: what was asked last first, coarsely before finely; and charts of stability,
//! before everything and in the order in which they were asked.

use std::collections::VecDeque;
use thinwright_core::stability::lobes;
use thinwright_core::{Cache, Detail, Job, Sight, WebPicture, picture};
use thinwright_jobfile::{ChartOf, FromWorker, Report};

/// Who looks, and what is still to be looked at.
#[derive(Default)]
pub(super) struct Viewer {
    /// The last answers that could be read.
    job: Option<(u32, Job)>,
    /// What was worked out before for pictures.
    cache: Cache,
    /// What was asked for, the newest last, with what comes next for it.
    sights: Vec<Sight>,
    /// Charts that were asked for, the oldest first: the page knows them by their order.
    charts: VecDeque<ChartOf>,
}

impl Viewer {
    /// Other answers: nobody waits for looks at the old ones.
    pub(super) fn renew(&mut self, generation: u32, job: Job) {
        self.job = Some((generation, job));
        self.sights.clear();
        self.charts.clear();
    }

    /// Takes up a look, unless it is about other answers or waits already.
    pub(super) fn ask(&mut self, generation: u32, sight: &Sight) {
        let waits = self.sights.iter().any(|s| same(s, sight));
        if self.current(generation) && !waits {
            self.sights.push(closely(sight, Detail::Coarse));
        }
    }

    /// Takes up a chart, unless it is about other answers.
    pub(super) fn ask_chart(&mut self, generation: u32, of: &ChartOf) {
        if self.current(generation) {
            self.charts.push_back(of.clone());
        }
    }

    fn current(&self, generation: u32) -> bool {
        self.job.as_ref().is_some_and(|(of, _)| *of == generation)
    }

    /// Whether something is still to be done; something that takes no time: a coarse look, or a chart.
    pub(super) fn waits(&self) -> (bool, bool) {
        let coarse = self.sights.iter().any(|s| s.detail == Detail::Coarse);
        let charts = !self.charts.is_empty();
        (charts || !self.sights.is_empty(), charts || coarse)
    }

    /// Draws up a chart or looks once, and says what it saw; what cannot be seen coarsely may still be seen finely.
    pub(super) fn turn(&mut self) -> Option<FromWorker> {
        let (generation, job) = self.job.as_ref()?;
        if let Some(of) = self.charts.pop_front() {
            return Some(FromWorker {
                generation: *generation,
                report: Report::Chart {
                    step: of.step,
                    lobes: lobes(&of.report),
                },
            });
        }
        let coarse = self.sights.iter().rposition(|s| s.detail == Detail::Coarse);
        let at = coarse.or(self.sights.len().checked_sub(1))?;
        let sight = self.sights[at].clone();
        let seen = picture(job, &sight, &mut self.cache).map(set_right);
        match sight.detail {
            Detail::Coarse => self.sights[at].detail = Detail::Fine,
            Detail::Fine => {
                self.sights.remove(at);
            }
        }
        if sight.detail == Detail::Coarse && seen.is_err() {
            return None;
        }
        Some(FromWorker {
            generation: *generation,
            report: Report::Look {
                sight,
                seen: Box::new(seen),
            },
        })
    }
}

/// A picture as the strategy's figures are: set right by what its mesh comes out too stiff. The page shows the lowest tone.
fn set_right(mut picture: WebPicture) -> WebPicture {
    let softer = 1.0 + picture.error;
    picture.most *= softer;
    let values = picture.compliance.iter_mut().chain(&mut picture.bow);
    values.for_each(|v| *v *= softer);
    picture.tones.truncate(1);
    picture
}

/// The same sight, to another detail.
fn closely(sight: &Sight, detail: Detail) -> Sight {
    Sight {
        detail,
        ..sight.clone()
    }
}

/// Whether two are the same but for their detail.
fn same(a: &Sight, b: &Sight) -> bool {
    closely(a, b.detail) == *b
}
