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
use crate::web::{self, WebAnswer};

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

/// What is looked up before the candidates of a task are judged.
pub(crate) fn responses(
    job: &Job,
    setup: &SetupPlan,
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
    let web = (works_on_web && !carried)
        .then(|| cached_web(job, state, setup.bolted, cache))
        .flatten();
    let slots = matches!(task.kind, TaskKind::SlotsThrough | TaskKind::SlotsBlind);
    let numbers = &job.numbers;
    let errors = [numbers.seat_error_um, numbers.touch_error_um].map(|um| um * 1.0e-6);
    Responses {
        web,
        rib: slots.then(|| web::rib(job, before)).flatten(),
        turn_over: if setup.second && two_sided {
            libm::hypot(errors[0], errors[1])
        } else {
            errors[1]
        },
    }
}

fn cached_web(job: &Job, state: &State, bolted: bool, cache: &mut Cache) -> Option<WebAnswer> {
    let key = web::key(job, state, bolted);
    if let Some(answer) = cache.web(&key) {
        return answer;
    }
    // A geometry that the closed forms do not take has no web answer; the limits on the web then do not apply.
    let answer = web::web(job, state, bolted).ok().flatten();
    cache.put_web(key, answer);
    answer
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
