//! Webs that were worked out before: meshes by the lines of a part, answers by the state that it stands in.

use super::ahead::centre_out;
use super::asked::patch_radius;
use super::plan::{WebPlan, lines};
use super::standing::{Rest, Standing};
use super::trust::{Trust, trust};
use super::{WebAnswer, WebError, reckon};
use crate::job::Job;
use crate::part::{Part, State};
use crate::picture::Detail;
use crate::task::Face;
use std::collections::BTreeMap;
use std::rc::Rc;
use thinwright_plate::mesh::Loop;

/// Most plans that are kept.
const MOST_PLANS: usize = 6;
/// Most answers that are kept for a plan.
const MOST_ANSWERS: usize = 4096;

type Answer = Result<Option<WebAnswer>, WebError>;

/// What an answer depends on beside the plan: stock and rest of each cell, then bits of everything else.
type Key = (Vec<(i64, Rest)>, Vec<u64>);

/// One plan of a part.
#[derive(Clone, Debug)]
struct Known {
    lines: Vec<Loop>,
    coarse: Result<Rc<WebPlan>, WebError>,
    fine: Option<Result<Rc<WebPlan>, WebError>>,
    answers: BTreeMap<Key, Answer>,
    trust: BTreeMap<Vec<u64>, Result<Trust, WebError>>,
}

/// The book.
#[derive(Clone, Debug, Default)]
pub(crate) struct WebBook {
    plans: Vec<Known>,
    /// Which plan the part in hand has.
    of: Option<(Part, usize)>,
    worked_out: u64,
}

impl WebBook {
    /// The entry of a part's plan, made if it is new.
    fn known(&mut self, part: &Part) -> &mut Known {
        let at = match &self.of {
            Some((of, at)) if of == part => *at,
            _ => self.find(part),
        };
        &mut self.plans[at]
    }

    fn find(&mut self, part: &Part) -> usize {
        let lines = lines(part);
        let at = self.plans.iter().position(|p| p.lines == lines);
        let at = at.unwrap_or_else(|| {
            if self.plans.len() >= MOST_PLANS {
                self.plans.clear();
            }
            let coarse = WebPlan::new(part, &lines, Detail::Coarse).map(Rc::new);
            self.plans.push(Known {
                lines,
                coarse,
                fine: None,
                answers: BTreeMap::new(),
                trust: BTreeMap::new(),
            });
            self.plans.len() - 1
        });
        self.of = Some((part.clone(), at));
        at
    }

    /// The mesh of a part's plan.
    ///
    /// # Errors
    /// Why there is none.
    pub(crate) fn plan(&mut self, part: &Part, detail: Detail) -> Result<Rc<WebPlan>, WebError> {
        let known = self.known(part);
        match detail {
            Detail::Coarse => known.coarse.clone(),
            Detail::Fine => {
                let Known { fine, lines, .. } = known;
                let make = || WebPlan::new(part, lines, Detail::Fine).map(Rc::new);
                fine.get_or_insert_with(make).clone()
            }
        }
    }

    /// The web of a part that stands so, on a bed whose modulus (N/m3) is at least and likely this.
    ///
    /// # Errors
    /// Why the plate gives no answer.
    pub(crate) fn web(&mut self, job: &Job, standing: &Standing, bed: (f64, f64)) -> Answer {
        let plan = self.plan(&job.part, Detail::Coarse)?;
        let key = key(job, &[standing], bed);
        let trust = self.trust(job, standing.state)?;
        self.remembered(&job.part, key, || {
            reckon(job, (&plan, trust), standing, bed)
        })
    }

    /// The web while it is cleared at full depth from the inside outwards, from one state to the next.
    ///
    /// # Errors
    /// Why the plate gives no answer.
    pub(crate) fn centre_out(
        &mut self,
        job: &Job,
        (before, after): (&Standing, &Standing),
        all_cut: &WebAnswer,
    ) -> Answer {
        let plan = self.plan(&job.part, Detail::Coarse)?;
        let known = [all_cut.bare, all_cut.radius, all_cut.frequency];
        let mut key = key(job, &[before, after], all_cut.bed_key());
        key.1.extend(known.map(f64::to_bits));
        let trust = self.trust(job, after.state)?;
        self.remembered(&job.part, key, || {
            centre_out((job, &plan, trust), before, after, all_cut)
        })
    }

    /// How far the coarse mesh of a job's part can be trusted in a state: ribs between open slots ask more of it.
    ///
    /// # Errors
    /// Why the plate gives no answer.
    pub(crate) fn trust(&mut self, job: &Job, state: &State) -> Result<Trust, WebError> {
        let material = &job.material;
        let part = &job.part;
        let numbers = [
            part.thickness,
            part.floor(Face::A).m(),
            part.floor(Face::B).m(),
            material.nu,
            patch_radius(job),
            job.holding.second.seat / material.e_mod.si(),
        ];
        let open = part.slots_begun(state);
        let bits = numbers.into_iter().map(f64::to_bits);
        let key: Vec<u64> = bits.chain([u64::from(open)]).collect();
        if let Some(known) = self.known(part).trust.get(&key) {
            return *known;
        }
        let meshes = [Detail::Coarse, Detail::Fine].map(|detail| self.plan(part, detail));
        let found = match meshes {
            [Ok(coarse), Ok(fine)] => trust(job, (&coarse, &fine), open),
            [Err(error), _] | [_, Err(error)] => Err(error),
        };
        self.known(part).trust.insert(key, found);
        found
    }

    fn remembered(&mut self, part: &Part, key: Key, reckon: impl FnOnce() -> Answer) -> Answer {
        if let Some(answer) = self.known(part).answers.get(&key) {
            return *answer;
        }
        let answer = reckon();
        self.worked_out += 1;
        let answers = &mut self.known(part).answers;
        if answers.len() >= MOST_ANSWERS {
            answers.clear();
        }
        answers.insert(key, answer);
        answer
    }

    /// How many answers were worked out since it was new.
    pub(crate) fn worked_out(&self) -> u64 {
        self.worked_out
    }
}

fn key(job: &Job, standings: &[&Standing], bed: (f64, f64)) -> Key {
    let cells = standings.iter().flat_map(|s| s.cells(&job.part));
    let material = &job.material;
    let numbers = [
        material.e_mod.si(),
        material.nu,
        material.density.si(),
        patch_radius(job),
        bed.0,
        bed.1,
    ];
    let flags = standings
        .iter()
        .flat_map(|s| [u64::from(s.bolted), u64::from(s.up as u8), s.seat.to_bits()]);
    let bits = numbers.into_iter().map(f64::to_bits).chain(flags);
    (cells.collect(), bits.collect())
}
