//! When it goes wrong: causes are ranked by the step's own findings, and changes are what the search says of them, too.
#![cfg(test)]

mod core_cases;

use core_cases::answers;

use thinwright_catalog::Catalog;
use thinwright_core::limits::LimitId;
use thinwright_core::strategy::{Outcome, Step, Strategy};
use thinwright_core::trouble::{
    Advice, Against, Cause, Change, Known, Move, Repeats, Said, Sign, Spot, Suspect, Value, advise,
    rank,
};
use thinwright_core::{Answers, Cache, Job, decide, read};
use thinwright_quantity::{Frequency, Rounding, format_bare};

const SAMPLES: [&str; 3] = ["mirror-back-plate", "grille-frame", "filter-cover"];
/// Utilisations that are worked out twice agree to this.
const SAME: f64 = 1.0e-9;

type Worked = (Answers, Job, Strategy);

fn work_out(answers: Answers) -> Worked {
    let job = read(&answers, &Catalog::builtin()).unwrap();
    match decide(&job) {
        Outcome::Feasible(strategy) => (answers, job, *strategy),
        Outcome::Refused(refusal) => panic!("{:?}", refusal.tried),
    }
}

fn samples() -> &'static [Worked] {
    // A job is not shared between threads: each thread keeps its own.
    thread_local! {
        static HERE: &'static [Worked] = Box::leak(
            SAMPLES.map(|id| work_out(answers(id, &[]))).to_vec().into_boxed_slice());
    }
    HERE.with(|here| *here)
}

fn steps(strategy: &Strategy) -> Vec<&Step> {
    strategy.setups.iter().flat_map(|s| &s.steps).collect()
}

fn said(signs: &[Sign]) -> Said {
    Said {
        signs: signs.iter().map(|sign| (*sign, 1.0)).collect(),
        ..Said::default()
    }
}

fn share(suspects: &[Suspect], cause: Cause) -> f64 {
    let found = suspects.iter().find(|s| s.cause == cause);
    found.map_or(0.0, |s| s.share)
}

/// A step with the utilisation of a limit so many times what it is, its range with it.
fn scaled(step: &Step, limit: LimitId, by: f64) -> Step {
    let mut step = step.clone();
    for finding in step.findings.iter_mut().filter(|f| f.limit == limit) {
        finding.at_likely.demand *= by;
        finding.at_worst.demand *= by;
    }
    step
}

/// Each rule of practice: a sign, and the causes that it names.
const RULES: &[(u32, Sign, &[Cause])] = &[
    (1, Sign::Squeal, &[Cause::ToolSings, Cause::WebSings]),
    (2, Sign::Squeal, &[Cause::ToolSings]),
    (3, Sign::Squeal, &[Cause::ToolSings]),
    (4, Sign::Stuck, &[Cause::BuiltUp, Cause::ThinChip]),
    (
        5,
        Sign::Dust,
        &[Cause::ThinChip, Cause::Runout, Cause::Dull],
    ),
    (6, Sign::Blue, &[Cause::HotEdge]),
    (7, Sign::Deepening, &[Cause::PulledOut]),
    (8, Sign::Taper, &[Cause::CutterBends]),
    (9, Sign::Ridges, &[Cause::Tram]),
    (10, Sign::FloorUneven, &[Cause::WebMoves]),
    (
        11,
        Sign::Burrs,
        &[Cause::Dull, Cause::ThinChip, Cause::LooseExit],
    ),
    (
        12,
        Sign::BrokeEntering,
        &[Cause::SteepEntry, Cause::ChipsPack],
    ),
    (13, Sign::BrokeDeep, &[Cause::ChipsPack]),
    (
        14,
        Sign::BrokeShank,
        &[Cause::Overloaded, Cause::Runout, Cause::PartMoves],
    ),
    (
        15,
        Sign::Melts,
        &[
            Cause::ThinChip,
            Cause::HeatStays,
            Cause::ChipsPack,
            Cause::Dull,
        ],
    ),
    (16, Sign::Shifted, &[Cause::StepsLost]),
    (17, Sign::Round, &[Cause::Backlash]),
    (
        18,
        Sign::Slows,
        &[Cause::Stalls, Cause::Dull, Cause::ChipsPack],
    ),
    (19, Sign::Shiny, &[Cause::Runout]),
    (20, Sign::Bowed, &[Cause::Stress, Cause::Clamps]),
    (21, Sign::Flaps, &[Cause::LooseSkin]),
    (22, Sign::Thrown, &[Cause::LooseSlug]),
];

#[test]
fn every_rule_of_practice_leads_from_its_sign_to_its_causes() {
    let (_, job, strategy) = &samples()[0];
    let numbers: Vec<u32> = RULES.iter().map(|r| r.0).collect();
    assert_eq!(numbers, (1..=22).collect::<Vec<_>>());
    for (rule, sign, causes) in RULES {
        let id = format!("DIAG-{rule:02}");
        for step in steps(strategy) {
            let suspects = rank(job, step, &said(&[*sign]));
            for cause in *causes {
                let suspect = suspects.iter().find(|s| s.cause == *cause);
                let suspect = suspect.unwrap_or_else(|| panic!("{id}: {cause:?}"));
                assert!(suspect.practice.contains(&id), "{id}: {cause:?}");
                assert!(suspect.share > 0.0);
            }
            let sum: f64 = suspects.iter().map(|s| s.share).sum();
            assert!((sum - 1.0).abs() < SAME);
        }
    }
}

#[test]
fn a_step_stands_again_as_the_search_had_it() {
    for (_, job, strategy) in samples() {
        let mut cache = Cache::default();
        for (at, step) in steps(strategy).into_iter().enumerate() {
            for cause in Cause::all() {
                let advice = advise(job, (strategy, at), &cause.into(), &mut cache).unwrap();
                for change in advice.change.iter().chain(&advice.aside) {
                    as_told(step, change);
                }
            }
        }
    }
}

/// What a change starts from is what the strategy tells of the step.
fn as_told(step: &Step, change: &Change) {
    let from = &change.from;
    assert!(
        (from.time.si() - step.time.si()).abs() < 1.0e-6,
        "{change:?}"
    );
    assert_eq!(
        (from.n, from.vf, from.ae, from.ap),
        (step.n, step.vf, step.ae, step.ap)
    );
    for shift in change.others.iter().chain(&change.own) {
        let told = step.findings.iter().find(|f| f.limit == shift.limit);
        let told = told.map_or(0.0, |f| f.utilisation());
        assert!(
            (shift.before - told).abs() <= SAME * told.max(1.0),
            "{:?}: {told}",
            shift
        );
    }
}

#[test]
fn the_same_sign_ranks_otherwise_where_the_limits_stand_otherwise() {
    let (_, job, strategy) = &samples()[0];
    let told = said(&[Sign::BrokeDeep]);
    let mut seen = 0;
    for step in steps(strategy) {
        let has = |limit| step.findings.iter().any(|f| f.limit == limit);
        if !has(LimitId::Breakage) || !has(LimitId::ChipRoom) {
            continue;
        }
        seen += 1;
        let far = scaled(step, LimitId::Breakage, 0.1);
        let near = scaled(
            &scaled(step, LimitId::ChipRoom, 0.05),
            LimitId::DepthToWidth,
            0.05,
        );
        let near = scaled(&near, LimitId::Breakage, 8.0);
        let first = |step: &Step| rank(job, step, &told)[0].cause;
        assert_eq!(
            first(&scaled(&far, LimitId::ChipRoom, 8.0)),
            Cause::ChipsPack
        );
        assert_eq!(first(&near), Cause::Overloaded);
    }
    assert!(seen > 0);
}

#[test]
fn steps_of_one_job_rank_the_same_sign_otherwise() {
    let order = |job: &Job, step: &Step, sign: Sign| -> Vec<Cause> {
        let suspects = rank(job, step, &said(&[sign]));
        suspects.iter().map(|s| s.cause).collect()
    };
    for (_, job, strategy) in samples() {
        let differs = Sign::all().filter(|sign| {
            let all = steps(strategy).into_iter().map(|s| order(job, s, *sign));
            let all: Vec<Vec<Cause>> = all.collect();
            all.iter().any(|other| *other != all[0])
        });
        let differs: Vec<Sign> = differs.collect();
        assert!(!differs.is_empty());
    }
}

#[test]
fn a_cause_gains_as_its_limit_comes_nearer() {
    for (_, job, strategy) in samples() {
        for step in steps(strategy) {
            for cause in Cause::all().filter(|c| !c.limits().is_empty()) {
                let sign = Sign::all().find(|sign| {
                    let suspects = rank(job, step, &said(&[*sign]));
                    share(&suspects, cause) > 0.0 && suspects.len() > 1
                });
                let Some(sign) = sign else { continue };
                let mut last = 0.0;
                for k in 0..12 {
                    let by = 0.05 * libm::pow(2.0, f64::from(k));
                    let all = cause.limits().iter();
                    let step = all.fold(step.clone(), |step, limit| scaled(&step, *limit, by));
                    // A cause that shares its limits gains with it: its own weight is what must not fall.
                    let suspects = rank(job, &step, &said(&[sign]));
                    let own = suspects
                        .iter()
                        .find(|s| s.cause == cause)
                        .unwrap()
                        .plausible;
                    assert!(
                        own >= last,
                        "{cause:?} {sign:?} at {by}: {own} after {last}"
                    );
                    last = own;
                }
                // Three times the limit at likely values leaves little doubt.
                for limit in cause.limits() {
                    let finding = step.findings.iter().find(|f| f.limit == *limit);
                    let likely = finding.map_or(0.0, |f| f.at_likely.utilisation());
                    if likely > 0.0 && likely.is_finite() {
                        let broken = scaled(step, *limit, 3.0 / likely);
                        let suspects = rank(job, &broken, &said(&[sign]));
                        let own = suspects.iter().find(|s| s.cause == cause).unwrap();
                        assert!(own.plausible > 0.9 && own.limit == Some(*limit), "{own:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn place_repetition_and_a_second_sign_count() {
    let (_, job, strategy) = &samples()[0];
    let step = steps(strategy)[0];
    let plain = rank(job, step, &said(&[Sign::Shifted]));
    let told = |spot, repeats| {
        let mut all = said(&[Sign::Shifted]);
        (all.spot, all.repeats) = (spot, repeats);
        rank(job, step, &all)
    };
    let lost = |s: &[Suspect]| share(s, Cause::StepsLost);
    assert!(lost(&told(Some(Spot::Opening), None)) > lost(&plain));
    assert!(lost(&told(Some(Spot::Through), None)) < lost(&plain));
    let loose = rank(job, step, &said(&[Sign::Shifted, Sign::Loose]));
    assert!(share(&loose, Cause::PartMoves) > share(&plain, Cause::PartMoves));
    // A sign that nobody is sure of changes nothing.
    let mut unsure = said(&[Sign::Shifted]);
    unsure.signs.push((Sign::Loose, 0.0));
    assert!(
        (share(&rank(job, step, &unsure), Cause::PartMoves) - share(&plain, Cause::PartMoves))
            .abs()
            < SAME
    );
    let same = told(None, Some(Repeats::Same));
    assert!(
        same.iter()
            .all(|s| s.clues.iter().any(|c| matches!(c.known, Known::Repeats(_))))
    );
    let mut tried = said(&[Sign::Shifted]);
    tried.tried = vec![(Cause::StepsLost, false)];
    assert!(lost(&rank(job, step, &tried)) < lost(&plain));
    assert!(rank(job, step, &Said::default()).is_empty());
    unsure.signs.push((Sign::Hum, f64::NAN));
    assert!(rank(job, step, &unsure).iter().all(|s| s.share.is_finite()));
}

#[test]
fn changes_break_nothing_that_refuses_and_ease_the_limit_behind_the_cause() {
    let worth = Catalog::builtin().numbers.trouble_worth;
    let mut changed = 0;
    for (_, job, strategy) in samples() {
        let mut cache = Cache::default();
        for at in 0..steps(strategy).len() {
            for cause in Cause::all() {
                let advice = advise(job, (strategy, at), &cause.into(), &mut cache).unwrap();
                assert!(advice.act == cause.act());
                let Some(change) = &advice.change else {
                    continue;
                };
                changed += 1;
                assert!(change.holds(), "{change:?}");
                if let Some(own) = change.own {
                    assert!(own.after <= own.before * (1.0 - worth), "{cause:?} {own:?}");
                }
                on_the_grid(job, change);
            }
        }
    }
    assert!(changed > 100, "{changed}");
}

/// The numbers can be typed: on the grid, within the machine.
fn on_the_grid(job: &Job, change: &Change) {
    let whole = |x: f64, step: f64| (x / step - (x / step).round()).abs() < 1.0e-6;
    let to = &change.to;
    assert!(
        whole(to.n.si(), job.grid.n) && whole(to.vf.si(), job.grid.vf),
        "{to:?}"
    );
    assert!(to.n.si() <= job.machine.n.1 + 1.0e-9 && to.vf.si() <= job.machine.feed + 1.0e-12);
    assert!(to.fz.si() > 0.0 && to.ap.si() > 0.0 && to.ae.si() > 0.0);
}

fn taken(answers: &Answers, change: &Change) -> Answers {
    let mut answers = answers.clone();
    for take in &change.take {
        let text = match (take.value, take.field.field.spec().input) {
            (Value::Si(si), thinwright_core::field::Input::Quantity(kind)) => {
                format_bare(kind, si, answers.units, Rounding::Nearest)
            }
            (Value::Key(key), _) => key.to_owned(),
            (Value::Count(count), _) => count.to_string(),
            (Value::Si(_), _) => panic!("a quantity for {:?}", take.field),
        };
        answers.set_text(take.field, text);
    }
    answers
}

#[test]
fn a_change_that_is_taken_over_comes_out_of_the_search_as_it_was_told() {
    let causes = [
        Cause::ToolSings,
        Cause::CutterBends,
        Cause::StepsLost,
        Cause::ThinChip,
        Cause::Stalls,
        Cause::WebMoves,
    ];
    let mut taken_over = Vec::new();
    for (answers, job, strategy) in samples() {
        let mut cache = Cache::default();
        for (at, cause) in causes.into_iter().enumerate() {
            let at = (at * 2 + 1) % steps(strategy).len();
            let Advice { change, .. } =
                advise(job, (strategy, at), &cause.into(), &mut cache).unwrap();
            let Some(change) = change.filter(|c| !c.take.is_empty()) else {
                continue;
            };
            let (task, number) = (steps(strategy)[at].task, steps(strategy)[at].number);
            let again = work_out(taken(answers, &change)).2;
            let same = steps(&again).into_iter().filter(|s| s.task == task);
            let found = same.min_by_key(|s| s.number.abs_diff(number)).unwrap();
            let near = |a: f64, b: f64| (a - b).abs() <= SAME * b;
            let to = &change.to;
            assert!(
                near(found.n.si(), to.n.si()) && near(found.vf.si(), to.vf.si()),
                "{cause:?}"
            );
            assert!(
                near(found.ae.si(), to.ae.si()) && near(found.ap.si(), to.ap.si()),
                "{cause:?}"
            );
            // Where the order of the work stays, the limits are what was told, too.
            if again.orders[0].order == strategy.orders[0].order
                && found.number == number
                && found.leave == steps(strategy)[at].leave
            {
                for shift in change.own.iter().chain(&change.others) {
                    let told = found.findings.iter().find(|f| f.limit == shift.limit);
                    let told = told.map_or(0.0, |f| f.utilisation());
                    assert!(
                        (told - shift.after).abs() < 1.0e-6 * told.max(1.0),
                        "{cause:?} {shift:?}: {told}"
                    );
                }
                taken_over.push(change.step);
            }
        }
    }
    assert!(taken_over.len() >= 5, "{taken_over:?}");
}

#[test]
fn a_tone_that_was_heard_picks_the_speed() {
    let (_, job, strategy) = &samples()[0];
    let at = steps(strategy)
        .iter()
        .position(|s| s.stability.is_some())
        .unwrap();
    let step = steps(strategy)[at];
    let z = f64::from(job.rack.iter().find(|c| c.row == step.cutter).unwrap().z);
    // A tone a third above the teeth: one vibration less than a whole number between two of them.
    let tone = Frequency::from_si(1.06 * step.n.si() * z);
    let against = Against {
        tone: Some(tone),
        ..Cause::ToolSings.into()
    };
    let mut cache = Cache::default();
    let advice = advise(job, (strategy, at), &against, &mut cache).unwrap();
    let all: Vec<&Change> = advice.change.iter().chain(&advice.aside).collect();
    let speed = all.iter().find(|c| c.step == Move::OtherSpeed).unwrap();
    // Source: smith1990: n = f / (z k), here k = 1.
    let in_step = tone.si() / z;
    // Within what a tone errs by: the limit is held over that error, and is not highest in its middle.
    assert!((speed.to.n.si() / in_step - 1.0).abs() < 0.02, "{speed:?}");
    assert!(
        speed.own.unwrap().after < speed.own.unwrap().before,
        "{speed:?}"
    );
}

#[test]
fn rivals_are_compared_by_the_limit_and_both_are_told() {
    let (_, job, strategy) = &samples()[0];
    let mut cache = Cache::default();
    for at in 0..steps(strategy).len() {
        let advice = advise(job, (strategy, at), &Cause::ToolSings.into(), &mut cache).unwrap();
        let all: Vec<&Change> = advice.change.iter().chain(&advice.aside).collect();
        let of = |step: Move| all.iter().find(|c| c.step == step).and_then(|c| c.own);
        let Some((up, down)) = of(Move::FeedUpSpeedDown).zip(of(Move::BothDown)) else {
            continue;
        };
        assert!(up.after > 0.0 && down.after > 0.0);
        // A thicker chip presses less for each micrometre more, so the feed that goes up is the quieter one.
        assert!(up.after <= down.after + SAME, "{up:?} {down:?}");
    }
}

#[test]
fn the_runout_that_is_aimed_at_follows_from_the_limits() {
    let numbers = Catalog::builtin().numbers;
    let mut seen = Vec::new();
    for (_, job, strategy) in samples() {
        let mut cache = Cache::default();
        for (at, step) in steps(strategy).into_iter().enumerate() {
            let advice = advise(job, (strategy, at), &Cause::Runout.into(), &mut cache).unwrap();
            let all = advice.change.into_iter().chain(advice.aside);
            for change in all.filter(|c| c.step == Move::Reseat) {
                let (field, aim) = change.aim.unwrap();
                assert_eq!(field, thinwright_core::Field::Runout);
                let share = aim / step.fz.si();
                let fair = (share - numbers.trouble_runout_fair).abs() < SAME;
                assert!(
                    fair || (share - numbers.trouble_runout_fine).abs() < SAME,
                    "{share}"
                );
                seen.push(fair);
            }
        }
    }
    assert!(seen.contains(&true), "{seen:?}");
}

#[test]
fn what_is_not_this_strategy_gives_no_advice() {
    let (_, job, strategy) = &samples()[0];
    let (_, other, _) = &samples()[1];
    let mut cache = Cache::default();
    let count = steps(strategy).len();
    assert!(advise(job, (strategy, count), &Cause::ToolSings.into(), &mut cache).is_none());
    assert!(advise(other, (strategy, 0), &Cause::ToolSings.into(), &mut cache).is_none());
    let mut empty = strategy.clone();
    empty.orders.clear();
    assert!(advise(job, (&empty, 0), &Cause::ToolSings.into(), &mut cache).is_none());
}
