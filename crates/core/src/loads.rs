//! Loads by what the cutter meets: worked out once in a search, as plans differ in the web and hardly in the cut.

use crate::case::Load;
use crate::choice::Choice;
use crate::job::{Cutter, Job};
use crate::pass::{Engagement, Pass};
use crate::tally::Tally;
use std::cell::RefCell;
use std::collections::BTreeMap;

/// Everything that loads depend on beside the job: feed per tooth, cutter, and where it is engaged how.
type Key = [u64; 22];

/// The loads of a job that were worked out so far.
#[derive(Clone, Debug, Default)]
pub(crate) struct LoadBook(RefCell<BTreeMap<Key, Load>>);

/// Most loads that are kept.
const MOST: usize = 1 << 16;

fn key(cutter: &Cutter, choice: &Choice, pass: &Pass) -> Key {
    let bits = |e: &Engagement| {
        [
            e.immersion.phi_st.to_bits(),
            e.immersion.phi_ex.to_bits(),
            e.ap.to_bits(),
            e.feed_share.to_bits(),
        ]
    };
    let or_none = |e: &Option<Engagement>| e.as_ref().map_or([0; 4], bits);
    let [a, b, c] = pass.hard.each_ref().map(or_none);
    let places = [bits(&pass.usual), a, b, c, or_none(&pass.wall)];
    let mut key = [0; 22];
    key[0] = choice.fz.to_bits();
    key[1] = u64::from(cutter.row);
    for (to, from) in key[2..].iter_mut().zip(places.as_flattened()) {
        *to = *from;
    }
    key
}

impl LoadBook {
    /// The loads of a candidate.
    pub(crate) fn get(
        &self,
        job: &Job,
        candidate: (&Cutter, &Choice, &Pass),
        tally: &Tally,
    ) -> Load {
        let (cutter, choice, pass) = candidate;
        let key = key(cutter, choice, pass);
        if let Some(load) = self.0.borrow().get(&key) {
            return *load;
        }
        let load = Load::new(job, cutter, choice, pass);
        tally.count(|e| e.loads += 1);
        let mut known = self.0.borrow_mut();
        if known.len() >= MOST {
            known.clear();
        }
        known.insert(key, load);
        load
    }
}
