//! What to do against a cause: changes in the order of practice, each worked out, the first of use taken.

use super::cause::{Act, Cause};
use super::change::{Change, Shift, change};
use super::evaluate::{Came, evaluate};
use super::moves::{Ground, Move, variations};
use super::stand::Stand;
use crate::Cache;
use crate::heard::chatter;
use crate::job::{Job, Ring};
use crate::limits::{LimitId, Severity};
use crate::strategy::Strategy;
use crate::vibration::Whose;
use std::rc::Rc;
use thinwright_quantity::{Frequency, SpindleSpeed};

/// Halvings of a range of feeds.
const HALVINGS: u32 = 12;
/// The most feed that is looked at, times what there is.
const FARTHEST: f64 = 8.0;

/// A cause that something is to be done against.
#[derive(Clone, Debug, PartialEq)]
pub struct Against {
    /// The cause.
    pub cause: Cause,
    /// A tone that was heard.
    pub tone: Option<Frequency>,
    /// Changes that were made already, and did not do.
    pub tried: Vec<Move>,
}

impl From<Cause> for Against {
    fn from(cause: Cause) -> Against {
        Against {
            cause,
            tone: None,
            tried: Vec::new(),
        }
    }
}

/// What to do against a cause.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// What is done by hand first, where there is such a thing.
    pub act: Option<Act>,
    /// The first change of numbers.
    pub change: Option<Change>,
    /// Other changes that practice knows, worked out and set aside, in its order.
    pub aside: Vec<Change>,
}

/// What to do against a cause in a step of a strategy, counted from 0 over all setups; with a tone that was heard, the
/// cutter is taken to ring on it unless it is the work's. None where the strategy is not this job's.
///
/// Changes are tried in the order of practice, each by itself. A change is of use if it breaks no limit that refuses and
/// eases the limit behind the cause by a stated share; the first of use after which that limit holds is taken, else the one
/// that eases it most. Rivals, on which practice is divided, are compared by that limit. The cache changes how long it
/// takes, never what comes of it.
pub fn advise(
    job: &Job,
    (strategy, index): (&Strategy, usize),
    against: &Against,
    cache: &mut Cache,
) -> Option<Advice> {
    let step = strategy.setups.iter().flat_map(|s| &s.steps).nth(index)?;
    let mut stand = Stand::find(job, strategy, index, cache)?;
    let (cause, tone) = (against.cause, against.tone);
    let heard = tone.map(|tone| (tone, chatter(job, step, tone)));
    if let Some((tone, said)) = heard {
        ring(&mut stand, tone, said.whose.map(|w| w.0));
    }
    let stand = Rc::new(stand);
    let before = evaluate(&stand, &stand.cutter, &stand.choice);
    let limit = own(cause, &before);
    let ground = Ground {
        in_step: heard.and_then(|(_, said)| said.speed).map(SpindleSpeed::si),
        enough: limit.and_then(|limit| enough(&stand, limit, &before)),
        limit,
        stand: &stand,
    };
    // Where none of its limits applies, no number of the step bears on it.
    let ladder = match limit.is_some() || cause.limits().is_empty() {
        true => cause.moves(),
        false => &[],
    };
    let mut rungs = Vec::new();
    for rivals in ladder {
        let mut rung = Vec::new();
        for one in rivals.iter().filter(|one| !against.tried.contains(one)) {
            let tried = variations(&ground, *one, cache)
                .into_iter()
                .map(|variation| {
                    change(*one, &stand, (&before, limit), (&variation, step, strategy))
                });
            rung.extend(best(tried.collect(), *one, &stand));
        }
        rungs.push(rung);
    }
    let (change, aside) = choose(rungs, stand.job.numbers.trouble_worth);
    Some(Advice {
        act: cause.act(),
        change,
        aside,
    })
}

/// The cutter rings on a tone that was heard, unless that is the work's or the cutter was tapped.
fn ring(stand: &mut Stand, tone: Frequency, whose: Option<Whose>) {
    if matches!(whose, Some(Whose::Web | Whose::Rib)) || stand.cutter.ring.is_some() {
        return;
    }
    let ring = Some(Ring {
        frequency: (tone.si(), tone.si()),
        damping: None,
    });
    stand.cutter.ring = ring;
    let row = stand.cutter.row;
    stand
        .job
        .rack
        .iter_mut()
        .filter(|c| c.row == row)
        .for_each(|c| c.ring = ring);
}

/// The limit behind a cause: of those that watch it, the nearest.
fn own(cause: Cause, before: &Came) -> Option<LimitId> {
    let watches = before
        .limits
        .iter()
        .filter(|(id, _)| cause.limits().contains(id));
    let nearest = watches.max_by(|a, b| a.1.utilisation().total_cmp(&b.1.utilisation()));
    nearest.map(|(id, _)| *id)
}

/// The least feed per tooth at which a limit that falls with it is met, m; none where it is met as it stands.
fn enough(stand: &Rc<Stand>, limit: LimitId, before: &Came) -> Option<f64> {
    if before.of(limit) <= 1.0 {
        return None;
    }
    let z = f64::from(stand.cutter.z);
    let at = |fz: f64| {
        let mut choice = stand.choice;
        choice.fz = fz;
        choice.vf = fz * choice.n * z;
        evaluate(stand, &stand.cutter, &choice).of(limit)
    };
    let (mut bad, mut good) = (stand.choice.fz, FARTHEST * stand.choice.fz);
    (at(good) <= 1.0).then(|| {
        for _ in 0..HALVINGS {
            let middle = 0.5 * (bad + good);
            if at(middle) <= 1.0 {
                good = middle;
            } else {
                bad = middle;
            }
        }
        // Feeds are typed on a grid, downwards: one step more is enough.
        good + stand.job.grid.vf / (stand.choice.n * z)
    })
}

/// The best of what one move may mean: what holds goes before what does not, then what eases its limit most. Of the two
/// runouts that shops aim at, the milder is enough where the finer eases no limit that is still near.
fn best(tried: Vec<Change>, step: Move, stand: &Stand) -> Option<Change> {
    let numbers = &stand.job.numbers;
    if step == Move::Reseat {
        let near = |c: &Change| {
            let rest = c
                .others
                .iter()
                .filter(|s| s.limit.spec().severity != Severity::Listen);
            rest.map(|s| s.after).fold(0.0, f64::max)
        };
        let finer = |fair: &Change, fine: &Change| {
            near(fair) > numbers.utilisation_holds
                && near(fine) < near(fair) * (1.0 - numbers.trouble_worth)
        };
        return match tried.as_slice() {
            [fair, fine] if finer(fair, fine) => Some(fine.clone()),
            [fair, ..] => Some(fair.clone()),
            [] => None,
        };
    }
    let rank = |c: &Change| (!c.holds(), c.reached());
    tried.into_iter().reduce(|best, next| {
        let ((a, x), (b, y)) = (rank(&best), rank(&next));
        if (b, y) < (a, x - 1.0e-9) { next } else { best }
    })
}

/// The change that is made first, and what is set aside.
fn choose(rungs: Vec<Vec<Change>>, worth: f64) -> (Option<Change>, Vec<Change>) {
    let useful = |c: &Change| {
        let eases = |own: Shift| own.after <= own.before * (1.0 - worth);
        c.holds() && c.own.is_none_or(eases)
    };
    let mildest = |a: Place, b: Place| if b.1 < a.1 - 1.0e-9 { b } else { a };
    // The best of use of each rung: where it stands, and what its limit comes to.
    let mut bests: Vec<Place> = Vec::new();
    let mut at = 0;
    for rung in &rungs {
        let places = rung.iter().enumerate().filter(|(_, c)| useful(c));
        let places = places.map(|(j, c)| (at + j, c.reached()));
        bests.extend(places.reduce(mildest));
        at += rung.len();
    }
    let holds = bests.iter().copied().find(|(_, reached)| *reached <= 1.0);
    let first = holds.or_else(|| bests.into_iter().reduce(mildest));
    let mut all: Vec<Change> = rungs.into_iter().flatten().collect();
    let taken = first.map(|(at, _)| all.remove(at));
    (taken, all)
}

/// Where a change stands among all, and the utilisation that its limit comes to.
type Place = (usize, f64);
