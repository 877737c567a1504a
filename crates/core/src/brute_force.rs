//! The exact parts of the search against brute force: every candidate looked at, every way of every plan tried.
#![cfg(test)]

use crate::answers::Answers;
use crate::cache::Cache;
use crate::choice::{Axes, Choice};
use crate::estimate::Known;
use crate::field::FieldId;
use crate::job::{Cutter, Job};
use crate::judge::{Judged, Scene, Way, judge, ways_to_try};
use crate::limits::{LIMITS, Needs, Severity, utilisation};
use crate::look::{Candidate, ms, warning_price};
use crate::methods::Method;
use crate::numbers::{Numbers, Seeker};
use crate::order::plans;
use crate::pass::Detail;
use crate::read::read;
use crate::setting::{estimates, held, setting_up};
use crate::solve::Solver;
use crate::tally::Tally;
use crate::time;
use thinwright_catalog::Catalog;
use thinwright_mechanics::kinematics;
use thinwright_quantity::UnitSystem;

/// A small job: a plate with a recess in each face, slots, and two cutters.
const PLATE: &[(&str, &str)] = &[
    ("part.shape", "round"),
    ("part.diameter", "70"),
    ("part.thickness", "14"),
    ("recess-a.depth", "6"),
    ("part.web", "2.5"),
    ("recess-a.diameter", "58"),
    ("boss.diameter", "16"),
    ("slots.pattern", "polar"),
    ("slots.groups", "3"),
    ("slots.per-group", "2"),
    ("slots.width", "4"),
    ("slots.length", "12"),
    ("slots.pitch", "8"),
    ("slots.inner-radius", "12"),
    ("holding.backing", "putty"),
    ("cutter.1.diameter", "6"),
    ("cutter.1.flutes", "2"),
    ("cutter.1.flute-length", "12"),
    ("cutter.1.stick-out", "18"),
    ("cutter.2.diameter", "3"),
    ("cutter.2.flutes", "2"),
    ("cutter.2.flute-length", "9"),
    ("cutter.2.stick-out", "13"),
];

/// A plain recess in a rectangle and one cutter.
const TRAY: &[(&str, &str)] = &[
    ("part.shape", "rectangular"),
    ("part.length", "60"),
    ("part.width", "40"),
    ("part.thickness", "8"),
    ("recess-a.depth", "4"),
    ("recess-a.length", "40"),
    ("recess-a.width", "20"),
    ("recess-a.corner", "4"),
    ("cutter.1.diameter", "6"),
    ("cutter.1.flutes", "1"),
    ("cutter.1.flute-length", "12"),
    ("cutter.1.stick-out", "18"),
];

/// What turns these into jobs in which other limits bind.
const TURNS: &[&[(&str, &str)]] = &[
    &[("machine.class", "screw_router")],
    &[
        ("machine.class", "benchtop_mill"),
        ("material.row", "steel_s235"),
    ],
    &[
        ("machine.class", "belt_router"),
        ("holding.backing", "none"),
        ("tolerance.slot", "0.02"),
    ],
    &[("machine.power", "60 W"), ("holding.chips", "none")],
    &[
        ("cutter.1.flute-length", "5"),
        ("cutter.1.stick-out", "6.5"),
    ],
];

/// The feeds of a job are typed in coarse steps here, so that all of them can be looked at.
const FEED_STEP: f64 = 0.08 / 60.0;

fn jobs() -> Vec<Job> {
    let catalog = Catalog::builtin();
    let mut jobs = Vec::new();
    for base in [PLATE, TRAY] {
        for turn in TURNS {
            let mut answers = Answers::new(UnitSystem::Metric);
            for (key, text) in base.iter().chain(*turn) {
                let id = FieldId::by_key(key).unwrap_or_else(|| panic!("no field {key}"));
                answers.set(id, *text, Known::DataSheet);
            }
            let mut job = read(&answers, &catalog).unwrap_or_else(|p| panic!("{turn:?}: {p:?}"));
            job.grid.vf = FEED_STEP;
            jobs.push(job);
        }
    }
    jobs
}

/// What brute force finds for a method with a cutter: price and closest limit of the best candidate.
fn every_candidate(scene: &Scene, method: &Method, cutter: &Cutter) -> Option<(i64, i64)> {
    let (job, shape) = (scene.job, scene.shape);
    let axes = Axes::new(job, shape, cutter, method);
    let mut best: Option<(i64, i64)> = None;
    for net in &axes.nets {
        for (ap, levels) in &axes.depths {
            for n in &net.speeds {
                let feeds = axes.feeds(job, cutter, net, *n);
                for place in 0..=feeds.last {
                    let vf = feeds.at(place);
                    let choice = Choice {
                        n: *n,
                        vf,
                        fz: kinematics::feed_per_tooth(vf, cutter.z, *n),
                        ae: net.ae,
                        ap: *ap,
                        levels: *levels,
                    };
                    let found = one_candidate(scene, (method, cutter), &choice);
                    if let Some(found) = found
                        && best.is_none_or(|best| found < best)
                    {
                        best = Some(found);
                    }
                }
            }
        }
    }
    best
}

/// Price and closest limit of one candidate; nothing where a limit refuses it.
fn one_candidate(
    scene: &Scene,
    (method, cutter): (&Method, &Cutter),
    choice: &Choice,
) -> Option<(i64, i64)> {
    let pass = (method.pass)(scene.job, scene.shape, cutter, choice, Detail::Exact);
    let candidate = Candidate {
        scene,
        method,
        cutter,
        choice,
        pass: &pass,
    };
    let look = candidate.whole();
    if look.broken().is_some() {
        return None;
    }
    let load = scene
        .loads
        .get(scene.job, (cutter, choice, &pass), scene.tally);
    let case = scene.case(method, cutter, (choice, &pass), &load);
    // Each advice limit by itself, whatever it needs.
    let warnings: f64 = LIMITS
        .iter()
        .filter(|l| l.id.spec().severity == Severity::Advice)
        .map(|l| warning_price(scene.job, utilisation(l, &case)))
        .sum();
    let refused = LIMITS.iter().any(|l| {
        l.needs == Needs::Cutter
            && l.id.spec().severity <= Severity::Quality
            && utilisation(l, &case) > 1.0
    });
    assert!(!refused, "no limit that needs only the cutter refuses");
    let time = time::step(scene.job, scene.shape, choice, &pass);
    Some((ms(time + warnings), look.closest()))
}

/// Shows every task of the first and the last plan of a job.
fn each_task(job: &Job, mut look: impl FnMut(&Scene, &Judged)) {
    let (mut cache, tally, mut solver) = (Cache::default(), Tally::default(), Solver::default());
    let plans = plans(job);
    for plan in [plans.first(), plans.last()].into_iter().flatten() {
        let worked = solver.work_out(job, plan.clone(), (&mut cache, &tally));
        for (setup, solved) in worked.plan.setups.iter().zip(&worked.setups) {
            let estimates = estimates(job, setup);
            for one in solved {
                let scene = Scene {
                    job,
                    shape: &one.found.shape,
                    known: &one.found.known,
                    held: held(job, setup),
                    estimates: &estimates,
                    loads: &solver.loads,
                    tally: &tally,
                };
                look(&scene, &one.found.judged);
            }
        }
    }
}

#[test]
fn the_numbers_are_the_cheapest_of_all_candidates() {
    let (mut pairs, mut none, mut warned) = (0, 0, 0);
    for job in jobs() {
        each_task(&job, |scene, _| {
            for (method, cutter) in ways_to_try(scene).1 {
                let expected = every_candidate(scene, method, cutter);
                let found = match Seeker::new(scene, method, cutter).run(i64::MAX) {
                    Numbers::Cheapest(found) => Some((found.price, found.closest)),
                    Numbers::TooDear => panic!("nothing is too dear here"),
                    Numbers::Broken(..) => None,
                };
                let (task, d) = (scene.shape.task.kind, cutter.d);
                assert_eq!(found, expected, "{task:?} by {:?}, {d}", method.id);
                pairs += 1;
                none += u32::from(expected.is_none());
                warned += u32::from(expected.is_some_and(|e| e.1 > 1_000_000));
            }
        });
    }
    // The jobs are worth the name: some ways are refused, some warned of.
    assert!(
        pairs > 60 && none > 3 && warned > 3,
        "{pairs} {none} {warned}"
    );
}

#[test]
fn a_bound_hides_only_what_is_dearer() {
    for job in jobs() {
        each_task(&job, |scene, quick| {
            let all = judge(scene, true);
            let change = ms(2.0 * scene.job.machine.change);
            let least = all.ways.iter().map(|w| w.price).min();
            let kept = |w: &&Way| quick.ways.iter().any(|q| same(q, w));
            for way in all.ways.iter().filter(|w| !kept(w)) {
                let least = least.unwrap_or(i64::MAX);
                let by_itself = quick.ways.iter().filter(|q| q.cutter == way.cutter);
                let own = by_itself.map(|q| q.price).min().unwrap_or(i64::MAX);
                assert!(way.price >= own.min(least + change), "{:?}", way.method);
            }
            // What is kept is as it would be without a bound.
            for quick in &quick.ways {
                assert!(all.ways.iter().any(|w| same(quick, w)), "{quick:?}");
            }
        });
    }
}

fn same(a: &Way, b: &Way) -> bool {
    (a.method, a.cutter, a.price) == (b.method, b.cutter, b.price)
}

/// The price of the cheapest way through all tasks, every way of each tried.
fn every_path(job: &Job, tasks: &[Vec<Way>], last: Option<u8>) -> Option<i64> {
    let Some((first, rest)) = tasks.split_first() else {
        return Some(0);
    };
    let with = |way: &Way| {
        let stays = last == Some(way.cutter) && !way.drilled;
        let change = if stays { 0 } else { ms(job.machine.change) };
        every_path(job, rest, Some(way.cutter)).map(|rest| rest + change + way.price)
    };
    first.iter().filter_map(with).min()
}

#[test]
fn the_plan_is_the_cheapest_of_all_plans_and_ways() {
    for job in jobs() {
        let (mut cache, tally) = (Cache::default(), Tally::default());
        let mut solver = Solver::default();
        let mut best: Option<i64> = None;
        let mut told: Option<i64> = None;
        for plan in plans(&job) {
            let worked = solver.work_out(&job, plan, (&mut cache, &tally));
            let mut tasks: Vec<Vec<Way>> = Vec::new();
            for (setup, solved) in worked.plan.setups.iter().zip(&worked.setups) {
                let estimates = estimates(&job, setup);
                for one in solved {
                    let scene = Scene {
                        job: &job,
                        shape: &one.found.shape,
                        known: &one.found.known,
                        held: held(&job, setup),
                        estimates: &estimates,
                        loads: &solver.loads,
                        tally: &tally,
                    };
                    tasks.push(judge(&scene, true).ways);
                }
            }
            let around: f64 = worked.plan.setups.iter().map(|s| setting_up(&job, s)).sum();
            let expected = every_path(&job, &tasks, None).map(|price| price + ms(around));
            let found = worked.stuck().is_none().then_some(worked.price);
            assert_eq!(
                found, expected,
                "{:?} {:?}",
                worked.plan.order, worked.plan.first
            );
            best = best.into_iter().chain(expected).min();
            told = told.into_iter().chain(found).min();
        }
        assert_eq!(told, best);
    }
}
