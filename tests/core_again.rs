//! A told step held against the limits again: with its own numbers exactly what was told, with others what follows.
#![cfg(test)]

mod core_cases;

use core_cases::job;
use thinwright_core::again::{Values, again};
use thinwright_core::decide;
use thinwright_core::job::Job;
use thinwright_core::limits::LimitId;
use thinwright_core::search::Cache;
use thinwright_core::strategy::{Outcome, Step, Strategy};
use thinwright_jobfile::samples;

/// Every sample that has a strategy.
fn strategies() -> Vec<(&'static str, Job, Strategy)> {
    let told = samples().iter().filter_map(|sample| {
        let job = job(&sample.job().answers);
        match decide(&job) {
            Outcome::Feasible(strategy) => Some((sample.id, job, *strategy)),
            Outcome::Refused(_) => None,
        }
    });
    told.collect()
}

fn steps(strategy: &Strategy) -> impl Iterator<Item = &Step> {
    strategy.setups.iter().flat_map(|s| &s.steps)
}

#[test]
fn the_same_numbers_say_the_same() {
    let mut count = 0;
    for (id, job, strategy) in strategies() {
        let mut cache = Cache::default();
        for (at, step) in steps(&strategy).enumerate() {
            let said = again(&job, &strategy, at, Values::of(step), &mut cache);
            let said = said.unwrap_or_else(|| panic!("{id}, step {}: not found", step.number));
            assert_eq!(said.findings, step.findings, "{id}, step {}", step.number);
            assert_eq!(said.fz, step.fz);
            assert_eq!(said.broken(step).count(), 0);
            count += 1;
        }
        let beyond = steps(&strategy).count();
        let values = Values::of(steps(&strategy).next().unwrap());
        assert_eq!(again(&job, &strategy, beyond, values, &mut cache), None);
    }
    assert!(count > 20, "{count} steps");
}

#[test]
fn a_feed_turned_up_or_down_breaks_what_it_should() {
    let (mut rubbed, mut forced) = (0, 0);
    for (id, job, strategy) in strategies() {
        let mut cache = Cache::default();
        for (at, step) in steps(&strategy).enumerate() {
            let turned = |feed: f64, speed: f64, cache: &mut Cache| {
                let values = Values::of(step).turned((feed, speed));
                again(&job, &strategy, at, values, cache).unwrap()
            };
            let slow = turned(0.02, 1.0, &mut cache);
            let fast = turned(4.0, 1.0, &mut cache);
            assert!((slow.fz.si() / step.fz.si() - 0.02).abs() < 1.0e-12, "{id}");
            // At half the speed as well, each tooth takes as much as before.
            let both = turned(0.5, 0.5, &mut cache);
            assert!((both.fz.si() / step.fz.si() - 1.0).abs() < 1.0e-12);
            let has = |said: &thinwright_core::again::Again, limit: LimitId| {
                said.broken(step).any(|f| f.limit == limit)
            };
            rubbed += usize::from(has(&slow, LimitId::Rubbing));
            forced += usize::from(fast.broken(step).count() > 0);
        }
    }
    assert!(
        rubbed > 10 && forced > 10,
        "{rubbed} rubbed, {forced} too hard"
    );
}

#[test]
fn numbers_that_are_none_say_nothing() {
    let (_, job, strategy) = strategies().remove(0);
    let step = steps(&strategy).next().unwrap();
    let mut cache = Cache::default();
    for share in [0.0, -1.0, f64::NAN] {
        let values = Values::of(step).turned((share, 1.0));
        assert_eq!(again(&job, &strategy, 0, values, &mut cache), None);
        let values = Values::of(step).turned((1.0, share));
        assert_eq!(again(&job, &strategy, 0, values, &mut cache), None);
    }
}

#[test]
fn a_strategy_of_another_job_is_not_taken_for_this_one() {
    let all = strategies();
    let (a, b) = (&all[0], &all[1]);
    let step = steps(&b.2).next().unwrap();
    let said = again(&a.1, &b.2, 0, Values::of(step), &mut Cache::default());
    assert_eq!(said, None, "{} for {}", b.0, a.0);
}
