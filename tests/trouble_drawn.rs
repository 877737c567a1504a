//! When it goes wrong, on jobs drawn by lot: every step of every strategy stands again as the search had it, and what is
//! advised holds.
#![cfg(test)]

use thinwright_catalog::Catalog;
use thinwright_core::strategy::{Outcome, Step};
use thinwright_core::trouble::{Cause, Change, Said, Sign, advise, rank};
use thinwright_core::{Cache, decide, read};
use workspace_tests::jobs::drawn;

/// Jobs that are looked at.
const JOBS: u64 = 24;

fn as_told(seed: u64, step: &Step, change: &Change) {
    assert!(
        (change.from.time.si() - step.time.si()).abs() < 1.0e-6,
        "{seed}: {change:?}"
    );
    for shift in change.others.iter().chain(&change.own) {
        let told = step.findings.iter().find(|f| f.limit == shift.limit);
        let told = told.map_or(0.0, |f| f.utilisation());
        let same = told.to_bits() == shift.before.to_bits()
            || (shift.before - told).abs() <= 1.0e-9 * told;
        assert!(same, "{seed}: {shift:?} {told}");
        assert!(!shift.after.is_nan());
    }
}

#[test]
fn steps_of_drawn_jobs_stand_again() {
    let catalog = Catalog::builtin();
    let (mut steps, mut changes) = (0, 0);
    for seed in 0..JOBS {
        let job = read(&drawn(seed).0, &catalog).unwrap();
        let Outcome::Feasible(strategy) = decide(&job) else {
            continue;
        };
        let mut cache = Cache::default();
        for (at, step) in strategy.setups.iter().flat_map(|s| &s.steps).enumerate() {
            steps += 1;
            let said = Said {
                signs: Sign::all().map(|sign| (sign, 0.5)).collect(),
                ..Said::default()
            };
            let suspects = rank(&job, step, &said);
            assert!(
                suspects
                    .iter()
                    .all(|s| s.share.is_finite() && s.share >= 0.0)
            );
            for cause in Cause::all() {
                let advice = advise(&job, (&strategy, at), &cause.into(), &mut cache);
                let advice = advice.unwrap_or_else(|| panic!("{seed}, step {at}: not found"));
                for change in advice.change.iter().chain(&advice.aside) {
                    as_told(seed, step, change);
                    changes += 1;
                }
                assert!(advice.change.is_none_or(|c| c.holds()));
            }
        }
    }
    assert!(steps > 40 && changes > 20 * steps, "{steps} {changes}");
}
