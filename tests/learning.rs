//! What was run narrows what is not known, and nothing else: on whole jobs, from the step that was run to the next strategy.
#![cfg(test)]

mod core_cases;

use core_cases::{Stage, answers, job, stages};
use std::collections::BTreeMap;
use thinwright_catalog::Catalog;
use thinwright_core::again::Values;
use thinwright_core::answers::Answers;
use thinwright_core::choice::Choice;
use thinwright_core::estimate::{Known, Unknown};
use thinwright_core::field::{Field, FieldId};
use thinwright_core::job::{Cutter, Job};
use thinwright_core::learn::{
    LEARNED, Outcome as Went, Quantity, Run, Seen, forgotten, seen, teach, texts,
};
use thinwright_core::limits::{LIMITS, LimitId, Severity, utilisation};
use thinwright_core::methods::{METHODS, Method};
use thinwright_core::order::plans;
use thinwright_core::problem::ProblemKind;
use thinwright_core::strategy::{Step, Strategy};
use thinwright_core::{Cache, Outcome, decide, read};
use thinwright_quantity::{Length, Speed};

fn strategy(job: &Job) -> Strategy {
    match decide(job) {
        Outcome::Feasible(strategy) => *strategy,
        Outcome::Refused(refusal) => panic!("{refusal:?}"),
    }
}

fn steps(strategy: &Strategy) -> Vec<&Step> {
    strategy.setups.iter().flat_map(|s| &s.steps).collect()
}

/// What a step says after it was run at its own numbers, or deeper.
fn run(job: &Job, strategy: &Strategy, at: usize, deeper: f64, outcome: Went) -> Seen {
    let told = Values::of(steps(strategy)[at]);
    let values = Values {
        ap: Length::from_si(told.ap.si() * deeper),
        ..told
    };
    let run = Run {
        values,
        outcome,
        force: None,
    };
    seen(job, strategy, at, &run, &mut Cache::default()).expect("a step of this strategy")
}

/// The answers after these were taught.
fn taught(answers: &Answers, seen: &[Seen]) -> Answers {
    let job = job(answers);
    let taught = teach(&job.estimates, &job.numbers, seen);
    assert_eq!(taught.at_odds, [0; 0]);
    let mut answers = answers.clone();
    for (field, text) in texts(&taught, &answers.clone(), &job.material) {
        answers.set(field, text, Known::Estimated);
    }
    answers
}

fn ends(job: &Job, quantity: Quantity) -> (f64, f64) {
    let estimate = job.estimates[quantity.unknown() as usize];
    (estimate.low, estimate.high)
}

/// A router with a roughing step whose depth is set by what it gives.
fn router() -> Answers {
    answers("mirror-back-plate", &[])
}

fn clearing(strategy: &Strategy) -> usize {
    let deepest = |step: &&Step| {
        step.findings
            .iter()
            .any(|f| f.limit == LimitId::RoughDeflection)
    };
    let at = steps(strategy).iter().position(deepest);
    at.expect("a step that clears")
}

#[test]
fn a_machine_that_held_deeper_gets_a_deeper_plan() {
    let answers = answers("mirror-back-plate", &[("machine.class", "belt_router")]);
    let before = job(&answers);
    let first = strategy(&before);
    let at = clearing(&first);
    let step = steps(&first)[at];
    // Read at the wall: half of what was reckoned, three times.
    let chain = step.loads.deflection.si() / step.loads.mean_lateral.si();
    let forces = run(
        &before,
        &first,
        at,
        1.0,
        Went::Gave {
            by: 1.0e-6,
            share: 0.1,
        },
    );
    let force = forces.give.expect("pushed off its wall").force;
    let by = 0.5 * force * chain;
    let gave = run(&before, &first, at, 1.0, Went::Gave { by, share: 0.1 });
    let after = taught(&answers, &[gave; 3]);
    let after = job(&after);
    let (least, most) = ends(&before, Quantity::Stiffness);
    let now = ends(&after, Quantity::Stiffness);
    assert!(now.0 > 1.2 * least && now.1 <= most, "{now:?}");
    let second = strategy(&after);
    assert!(
        second.reckoned.si() < first.reckoned.si(),
        "{:?} {:?}",
        first.reckoned,
        second.reckoned
    );
    // The same tasks in the same order; some are cut deeper, none shallower.
    let (first, second) = (steps(&first), steps(&second));
    assert_eq!(first.len(), second.len());
    let deeper = first.iter().zip(&second).filter(|(a, b)| {
        assert!(a.task == b.task && b.ap.si() > a.ap.si() - 1.0e-9);
        b.ap.si() > 1.2 * a.ap.si()
    });
    assert!(deeper.count() > 0);
}

#[test]
fn a_taught_job_is_what_its_answers_say() {
    // With the cutter's tone known, what held and what sang says something of the machine.
    let answers = answers("mirror-back-plate", &[("cutter.1.tone", "500")]);
    let before = job(&answers);
    let first = strategy(&before);
    let at = clearing(&first);
    let song = run(&before, &first, at, 1.0, Went::Held).song.unwrap();
    let at_limit = song.limit / song.depth;
    let held = [run(&before, &first, at, 2.0 * at_limit, Went::Held); 4];
    let sang = [run(&before, &first, at, 0.6 * at_limit, Went::Sang); 3];
    for seen in [held.as_slice(), sang.as_slice()] {
        let taught = taught(&answers, seen);
        let after = job(&taught);
        let mut narrower = 0;
        for quantity in Quantity::ALL {
            let (was, now) = (ends(&before, quantity), ends(&after, quantity));
            assert!(now.0 >= was.0 && now.1 <= was.1 && now.0 <= now.1);
            narrower += u32::from(now != was);
            // Likely stays inside.
            let estimate = after.estimates[quantity.unknown() as usize];
            assert!((estimate.low..=estimate.high).contains(&estimate.likely));
        }
        assert!(narrower > 0, "{taught:?}");
        // What is taken back is gone to the letter.
        assert_eq!(job(&forgotten(&taught)).estimates, before.estimates);
    }
}

/// A coarse net of numbers for a cutter and a method.
fn candidates(stage: &Stage, method: &Method, cutter: &Cutter) -> Vec<Choice> {
    let deepest = (method.deepest)(stage.job, &stage.shape, cutter);
    let (slow, fast) = stage.job.machine.n;
    let stepovers = (method.stepovers)(stage.job, &stage.shape, cutter);
    let ways = [
        (1.0, 0.02e-3, fast),
        (0.3, 0.08e-3, slow),
        (0.5, 0.2e-3, fast),
    ];
    let all = [stepovers.1, stepovers.0].into_iter().flat_map(|share| {
        ways.map(|(part, fz, n)| {
            let vf = fz * n * f64::from(cutter.z);
            let numbers = [share.min(1.0) * cutter.d, part * deepest, n, vf];
            stage.choice(cutter, numbers)
        })
    });
    all.collect()
}

/// Nothing learned makes a limit of safety milder, on any candidate of a net of them.
#[test]
fn limits_of_safety_are_never_loosened() {
    let narrow: &[(&str, &str)] = &[
        ("learned.stiffness-low", "1.1"),
        ("learned.stiffness-high", "1.3"),
        ("learned.kc-low", "0.9"),
        ("learned.kc-high", "0.95"),
        ("learned.damping-low", "0.03"),
    ];
    let plain = job(&router());
    let learned = job(&answers("mirror-back-plate", narrow));
    assert!(ends(&learned, Quantity::Kc).1 < ends(&plain, Quantity::Kc).1);
    let first = |job: &Job| plans(job).remove(0);
    let (plan, same) = (first(&plain), first(&learned));
    assert_eq!(plan, same);
    let (before, after) = (stages(&plain, &plan), stages(&learned, &plan));
    let mut seen: BTreeMap<LimitId, u32> = BTreeMap::new();
    let mut milder = 0;
    for (before, after) in before.iter().zip(&after) {
        for method in METHODS {
            for cutter in &plain.rack {
                if (method.fits)(&plain, &before.shape, cutter).is_err() {
                    continue;
                }
                for choice in candidates(before, method, cutter) {
                    let of = |stage: &Stage, limit| {
                        stage.look(method, cutter, &choice, |case| utilisation(limit, case))
                    };
                    for limit in LIMITS {
                        let (was, now) = (of(before, limit), of(after, limit));
                        if limit.id.spec().severity == Severity::Stop {
                            assert!(now >= was * (1.0 - 1.0e-9), "{:?} {was} {now}", limit.id);
                            *seen.entry(limit.id).or_default() += u32::from(was > 0.0);
                        } else {
                            milder += u32::from(now < 0.98 * was);
                        }
                    }
                }
            }
        }
    }
    // It was looked at, and what was learned does ease what is not for safety.
    for limit in [
        LimitId::Breakage,
        LimitId::AxisThrust,
        LimitId::Holding,
        LimitId::SpindlePower,
    ] {
        assert!(seen.get(&limit).is_some_and(|n| *n > 10), "{limit:?}");
    }
    assert!(milder > 10, "{milder}");
}

fn problems(changes: &[(&str, &str)]) -> Vec<(String, ProblemKind)> {
    let problems = read(&answers("mirror-back-plate", changes), &Catalog::builtin()).unwrap_err();
    let each = problems.into_iter();
    each.map(|p| (p.field.key(), p.kind)).collect()
}

#[test]
fn what_contradicts_the_tables_is_a_problem_at_its_place() {
    let job = job(&router());
    let (low, high) = ends(&job, Quantity::Stiffness);
    let one = |changes: &[(&str, &str)]| {
        let found = problems(changes);
        assert_eq!(found.len(), 1, "{found:?}");
        found[0].clone()
    };
    let stiff = one(&[("learned.stiffness-low", "100")]);
    assert_eq!(stiff.0, "learned.stiffness-low");
    assert_eq!(
        stiff.1,
        ProblemKind::TooLarge {
            value: 1.0e8,
            greatest: high
        }
    );
    let soft = one(&[("learned.stiffness-high", "0.01")]);
    assert_eq!(
        soft,
        (
            "learned.stiffness-high".to_owned(),
            ProblemKind::TooSmall {
                value: 1.0e4,
                least: low
            }
        )
    );
    let crossed = one(&[("learned.kc-low", "1.1"), ("learned.kc-high", "0.9")]);
    assert_eq!(crossed.0, "learned.kc-low");
    assert!(matches!(
        one(&[("learned.damping-low", "much")]).1,
        ProblemKind::Text(_)
    ));
    // Wider than the table is no problem, and widens nothing.
    let wide = answers(
        "mirror-back-plate",
        &[
            ("learned.stiffness-low", "0.001"),
            ("learned.kc-high", "90"),
        ],
    );
    assert_eq!(self::job(&wide).estimates, job.estimates);
}

#[test]
fn what_was_carried_over_stays_to_the_letter() {
    let carried = answers("mirror-back-plate", &[("learned.stiffness-low", "0.70")]);
    let job = job(&carried);
    let first = strategy(&job);
    let at = clearing(&first);
    // Far below any limit: teaches nothing new.
    let held = run(&job, &first, at, 0.1, Went::Held);
    let taught = taught(&carried, &[held]);
    assert_eq!(taught.text(Field::LearnedStiffnessLow.into()), "0.70");
}

#[test]
fn a_step_is_judged_at_the_numbers_that_were_run() {
    let answers = router();
    let job = job(&answers);
    let first = strategy(&job);
    let at = clearing(&first);
    let told = run(&job, &first, at, 1.0, Went::Held);
    let deeper = run(&job, &first, at, 2.0, Went::Held);
    let (a, b) = (told.song.unwrap(), deeper.song.unwrap());
    assert!((b.depth / a.depth - 2.0).abs() < 1.0e-9);
    assert!((b.limit / a.limit - 1.0).abs() < 1.0e-9);
    assert!(deeper.edge.unwrap().stress > 1.3 * told.edge.unwrap().stress);
    // Loads told with the step are those that it is judged by.
    let step = steps(&first)[at];
    assert!((told.edge.unwrap().stress / step.loads.stress.si() - 1.0).abs() < 1.0e-9);
    assert!(
        (told.at.stiffness - job.estimates[Unknown::MachineStiffness as usize].likely).abs() < 1.0
    );
    // A step of nobody, and numbers that are none.
    let mut cache = Cache::default();
    let none = Run {
        values: Values {
            vf: Speed::from_si(0.0),
            ..Values::of(step)
        },
        outcome: Went::Held,
        force: None,
    };
    assert_eq!(seen(&job, &first, at, &none, &mut cache), None);
    let good = Run {
        values: Values::of(step),
        ..none
    };
    assert_eq!(seen(&job, &first, 999, &good, &mut cache), None);
    let drilled = steps(&first).iter().position(|s| s.stability.is_none());
    if let Some(at) = drilled {
        assert_eq!(run(&job, &first, at, 1.0, Went::Sang).song, None);
    }
}

#[test]
fn every_end_has_its_field() {
    for (quantity, low, high) in LEARNED {
        for field in [low, high] {
            let id = FieldId::from(field);
            assert_eq!(FieldId::by_key(&id.key()), Some(id), "{quantity:?}");
        }
        assert_ne!(low, high);
    }
}
