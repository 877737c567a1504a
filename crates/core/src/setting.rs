//! What a setup brings to a task: hold, backing, what is not known for sure, the web as it stands.

use crate::cache::Cache;
use crate::case::{Held, Responses};
use crate::estimate::{Estimates, Unknown};
use crate::grip;
use crate::job::Job;
use crate::order::SetupPlan;
use crate::part::State;
use crate::read::range;
use crate::task::{Task, TaskKind};
use crate::web::{self, Standing, WebAnswer, WebError};
use thinwright_catalog::HoldRow;

/// How a setup holds the part.
pub(crate) fn held<'a>(job: &'a Job, setup: &SetupPlan) -> Held<'a> {
    Held {
        hold: if setup.second {
            &job.holding.second
        } else {
            &job.holding.first
        },
        backing: &job.holding.backings[setup.backing.min(job.holding.backings.len() - 1)],
        bolted: setup.bolted,
    }
}

/// What is not known for sure in a setup: the job's, with the hold's and the backing's own.
pub(crate) fn estimates(job: &Job, setup: &SetupPlan) -> Estimates {
    let held = held(job, setup);
    // After turning over, the recess that is already there lies open below.
    let below = job.part.recess(setup.face.other());
    let lies_on = if setup.second {
        let open = below.map_or(0.0, |recess| recess.area.area_mm2());
        job.part.outline_area.area_mm2() - open
    } else {
        job.part.blank_area.area_mm2()
    };
    let mut estimates = job.estimates;
    estimates[Unknown::Friction as usize] = range(&held.hold.friction, 1.0);
    estimates[Unknown::Grip as usize] = grip::clamping(held.hold, lies_on);
    estimates[Unknown::BedStiffness as usize] = range(&held.backing.bed, 1.0);
    for (estimate, settled) in estimates.iter_mut().zip(job.settled) {
        if settled {
            *estimate = estimate.settled(job.numbers.measured_spread);
        }
    }
    estimates
}

/// What is looked up before the candidates of a task are judged: the web as it stands, ribs, errors of turning over.
pub fn known(
    job: &Job,
    setup: &SetupPlan,
    task: &Task,
    states: (&State, &State),
    cache: &mut Cache,
) -> Responses {
    responses(job, (setup, true), task, states, cache)
}

/// The same; without `webs`, as if none gave.
pub(crate) fn responses(
    job: &Job,
    (setup, webs): (&SetupPlan, bool),
    task: &Task,
    (before, after): (&State, &State),
    cache: &mut Cache,
) -> Responses {
    let works_on_web = matches!(
        task.kind,
        TaskKind::Clearing | TaskKind::FloorSkim | TaskKind::SlotsThrough | TaskKind::SlotsBlind
    );
    // A part that lies flat with its back uncut is carried everywhere; on parallels or in a chuck it is not.
    let two_sided = job.part.recesses.len() > 1;
    let carried = (!setup.second || !two_sided) && !held(job, setup).hold.squeezes;
    // Slots are cut one by one: the web that the last one is cut in has all the others open.
    let state = if matches!(task.kind, TaskKind::SlotsThrough) {
        after
    } else {
        before
    };
    let state = if matches!(task.kind, TaskKind::Clearing | TaskKind::FloorSkim) {
        after
    } else {
        state
    };
    let under = Under {
        setup,
        hold: held(job, setup).hold,
        bed: {
            let bed = &estimates(job, setup)[Unknown::BedStiffness as usize];
            (bed.low, bed.likely)
        },
    };
    let web = match webs && works_on_web && !carried {
        true => under.web(job, state, cache),
        false => Ok(None),
    };
    let ahead = match (&web, task.kind) {
        (Ok(Some(web)), TaskKind::Clearing) => under.ahead(job, (before, after), web, cache),
        _ => None,
    };
    let slots = matches!(task.kind, TaskKind::SlotsThrough | TaskKind::SlotsBlind);
    let numbers = &job.numbers;
    let errors = [numbers.seat_error_um, numbers.touch_error_um].map(|um| um * 1.0e-6);
    Responses {
        web: web.ok().flatten(),
        ahead,
        web_error: web.err(),
        rib: slots.then(|| web::ribs(job, before)).flatten(),
        turn_over: if setup.second && two_sided {
            libm::hypot(errors[0], errors[1])
        } else {
            errors[1]
        },
    }
}

/// What lies under a part in a setup.
struct Under<'a> {
    setup: &'a SetupPlan,
    hold: &'a HoldRow,
    /// Winkler modulus of the backing, N/m3: at least and likely.
    bed: (f64, f64),
}

impl Under<'_> {
    fn standing<'a>(&self, state: &'a State) -> Standing<'a> {
        Standing {
            state,
            up: self.setup.face,
            squeezed: self.hold.squeezes,
            bolted: self.setup.bolted,
            seat: self.hold.seat,
        }
    }

    fn web(
        &self,
        job: &Job,
        state: &State,
        cache: &mut Cache,
    ) -> Result<Option<WebAnswer>, WebError> {
        cache.webs.web(job, &self.standing(state), self.bed)
    }

    /// The web while it is cleared in one level; none where no cutter is long enough for that.
    fn ahead(
        &self,
        job: &Job,
        (before, after): (&State, &State),
        all_cut: &WebAnswer,
        cache: &mut Cache,
    ) -> Option<WebAnswer> {
        let standings = (&self.standing(before), &self.standing(after));
        cache
            .webs
            .centre_out(job, standings, all_cut)
            .ok()
            .flatten()
    }
}

/// Time to clamp, back and find the datum, s; a backing serves the whole batch.
pub(crate) fn setting_up(job: &Job, setup: &SetupPlan) -> f64 {
    let held = held(job, setup);
    let backing = held.backing.setup.si() / f64::from(job.holding.quantity.max(1));
    let turn = if setup.second {
        job.numbers.turn_over_s
    } else {
        0.0
    };
    let bolt = if setup.bolted {
        job.numbers.bolt_boss_s
    } else {
        0.0
    };
    held.hold.setup.si() + backing + turn + bolt
}
