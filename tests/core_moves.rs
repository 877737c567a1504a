//! How limits say that they move with speed and feed is how they move: what the search rules numbers out by.
//!
//! Candidates by lot on the tasks of jobs drawn by lot and of the samples: no limit may fall where it says that it
//! grows. Also: what a profile reckons of a clearing path is never more than the offsets give.
#![cfg(test)]

mod core_cases;

use core_cases::{Lot, Stage, answers, job, stages};
use std::collections::BTreeMap;
use thinwright_core::case::Case;
use thinwright_core::choice::Axes;
use thinwright_core::job::{Cutter, Job};
use thinwright_core::limits::{LIMITS, LimitId, Move, utilisation};
use thinwright_core::methods::{METHODS, Method};
use thinwright_core::order::plans;
use thinwright_core::pass::Detail;
use thinwright_jobfile::samples;
use workspace_tests::jobs::random_jobs;

/// Jobs drawn by lot.
const DRAWN: u64 = 80;
/// Pairs of candidates for each method and cutter.
const PAIRS: usize = 12;
/// What rounding, and the steps in which a revolution is gone through, may take away.
const GIVE: f64 = 2.0e-3;

fn each_job(mut look: impl FnMut(&Job)) {
    for sample in samples() {
        look(&job(&sample.job().answers));
    }
    // Tapped and pushed.
    let measured = [("cutter.1.tone", "1850"), ("machine.stiffness", "2 N/um")];
    look(&job(&answers("grille-frame", &measured)));
    for (_, answers) in random_jobs(DRAWN) {
        look(&job(&answers));
    }
}

/// Every method and cutter that fits a task of the last plan.
fn each_way(job: &Job, mut look: impl FnMut(&Stage, &Method, &Cutter)) {
    if let Some(plan) = plans(job).last() {
        for stage in stages(job, plan) {
            for method in METHODS {
                for cutter in &job.rack {
                    if (method.fits)(job, &stage.shape, cutter).is_ok() {
                        look(&stage, method, cutter);
                    }
                }
            }
        }
    }
}

/// The utilisation of every limit for numbers: stepover, step-down, speed, feed per tooth.
fn utilisations(stage: &Stage, method: &Method, cutter: &Cutter, numbers: [f64; 4]) -> Vec<f64> {
    let [ae, ap, n, fz] = numbers;
    let vf = fz * n * f64::from(cutter.z);
    let choice = stage.choice(cutter, [ae, ap, n, vf]);
    stage.look(method, cutter, &choice, |case: &Case| {
        LIMITS.iter().map(|l| utilisation(l, case)).collect()
    })
}

#[test]
fn no_limit_moves_against_its_word() {
    let mut lot = Lot(3);
    let mut moved: BTreeMap<LimitId, u32> = BTreeMap::new();
    let mut one_way: BTreeMap<LimitId, u32> = BTreeMap::new();
    each_job(|job| {
        each_way(job, |stage, method, cutter| {
            let axes = Axes::new(job, &stage.shape, cutter, method);
            for _ in 0..PAIRS {
                let net = lot.of(&axes.nets).clone();
                let (ap, _) = *lot.of(&axes.depths);
                let n = *lot.of(&net.speeds);
                let fz = net.fz.0 + lot.share() * (net.fz.1 - net.fz.0);
                let at = |n: f64, fz: f64| utilisations(stage, method, cutter, [net.ae, ap, n, fz]);
                let here = at(n, fz);
                let (more_fz, most_fz) = (at(n, 1.2 * fz), at(n, 1.5 * fz));
                let more_n = at(1.2 * n, fz);
                for (i, limit) in LIMITS.iter().enumerate() {
                    let what = (limit.id, method.id, stage.shape.task.kind);
                    holds(limit.moves.fz, here[i], more_fz[i], &what);
                    holds(limit.moves.n, here[i], more_n[i], &what);
                    if limit.moves.fz == Move::OneWay {
                        let (a, b, c) = (here[i], more_fz[i], most_fz[i]);
                        assert!((b - a) * (c - b) >= -GIVE, "{what:?} {a} {b} {c}");
                        *one_way.entry(limit.id).or_default() += 1;
                    }
                    if (more_fz[i] - here[i]).abs() > 1.0e-6 * here[i].max(1.0e-3) {
                        *moved.entry(limit.id).or_default() += 1;
                    }
                }
            }
        });
    });
    // Every limit that promises to move with feed was seen to.
    for limit in LIMITS {
        let promises = matches!(limit.moves.fz, Move::Harder | Move::Easier);
        assert!(
            !promises || moved.contains_key(&limit.id),
            "{:?} never moved",
            limit.id
        );
    }
    assert!(!one_way.is_empty());
}

/// Nothing is ruled out by a limit that is not above 1: what moves far below (where forces of two signs nearly cancel)
/// is not looked at.
const LEAST: f64 = 0.5;

fn holds(word: Move, before: f64, after: f64, what: &impl std::fmt::Debug) {
    // Beyond a hundred times its limit nobody asks how far.
    if !(before < 100.0 && after < 100.0) {
        return;
    }
    let ruling = match word {
        Move::Easier => after,
        _ => before,
    };
    if ruling < LEAST {
        return;
    }
    let give = GIVE * before.max(after);
    match word {
        Move::Still => assert!(
            (after - before).abs() <= give,
            "{what:?}: {before} to {after}"
        ),
        Move::Harder => assert!(after >= before - give, "{what:?}: {before} to {after}"),
        Move::Easier => assert!(after <= before + give, "{what:?}: {before} to {after}"),
        Move::OneWay | Move::Unknown => {}
    }
}

#[test]
fn a_profile_never_reckons_more_than_the_offsets_give() {
    let (mut looked, mut least, mut most) = (0, f64::INFINITY, 0.0_f64);
    each_job(|job| {
        each_way(job, |stage, method, cutter| {
            let axes = Axes::new(job, &stage.shape, cutter, method);
            let depth = axes.depths[0];
            for net in &axes.nets {
                let numbers = [net.ae, depth.0, net.speeds[0], 1.0e-3];
                let choice = stage.choice(cutter, numbers);
                let path = |detail| {
                    let pass = (method.pass)(job, &stage.shape, cutter, &choice, detail);
                    pass.path + pass.slow_path + pass.helix_path
                };
                let (reckoned, exact) = (path(Detail::Least), path(Detail::Exact));
                assert!(
                    reckoned <= exact * (1.0 + 1.0e-9),
                    "{:?} {net:?}: {reckoned} {exact}",
                    method.id
                );
                looked += 1;
                least = least.min(reckoned / exact);
                most = most.max(reckoned / exact);
            }
        });
    });
    assert!(looked > 500, "{looked}");
    // It is also worth something.
    assert!(least > 0.4, "{least} to {most}");
}
