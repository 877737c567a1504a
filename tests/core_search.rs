//! The search: slices, caches and the order of the rack change nothing that is told; large jobs come to an end.
#![cfg(test)]

mod core_cases;

use core_cases::{answers, job, only};
use std::time::Instant;
use thinwright_core::answers::Answers;
use thinwright_core::estimate::Known;
use thinwright_core::field::FieldId;
use thinwright_core::gain::{Gain, What};
use thinwright_core::job::Job;
use thinwright_core::search::{Cache, Progress, Search};
use thinwright_core::strategy::{Considered, Entry, Outcome};
use thinwright_core::{advise, decide};
use thinwright_jobfile::samples;

/// The outcome of a search that is advanced by `slice` pieces at a time, how often it was, and its cache.
fn in_slices(job: &Job, slice: u64, cache: Cache) -> (Outcome, u32, Cache) {
    let mut search = Search::new(job.clone(), cache);
    let (mut slices, mut last, mut final_already) = (0, 0, false);
    loop {
        slices += 1;
        match search.advance(slice) {
            Progress::Done(outcome) => return (outcome, slices, search.into_cache()),
            Progress::Working {
                done,
                of,
                best,
                checked,
            } => {
                assert!(last < done && done <= of, "{last} {done} {of}");
                assert!(checked || !matches!(best, Some(Outcome::Refused(_))));
                // What was told as final stays: no better one comes after it.
                assert!(!final_already || (checked && best.is_none()));
                final_already = checked;
                last = done;
            }
        }
    }
}

#[test]
fn slices_of_any_size_give_the_same() {
    for sample in samples() {
        let job = job(&sample.job().answers);
        let whole = advise(&job);
        let mut slices = Vec::new();
        for slice in [0, 1, 2, 5, 7, u64::MAX] {
            let (outcome, count, _) = in_slices(&job, slice, Cache::default());
            assert_eq!(outcome, whole, "{}, {slice} at a time", sample.id);
            slices.push(count);
        }
        // A slice of 0 still goes on; larger slices are fewer.
        assert_eq!(slices[0], slices[1], "{}", sample.id);
        assert!(slices.is_sorted_by(|a, b| a >= b), "{slices:?}");
        // The largest slice ends where the strategy is final, and the next with everything.
        assert_eq!(slices.last(), Some(&2));
    }
}

#[test]
fn a_warm_cache_gives_the_same_even_from_another_job() {
    let mut cache = Cache::default();
    // The second round finds what the first left, and what other jobs left.
    for _ in 0..2 {
        for sample in samples() {
            let job = job(&sample.job().answers);
            let (outcome, _, warmed) = in_slices(&job, 3, cache);
            assert_eq!(outcome, advise(&job), "{}", sample.id);
            cache = warmed;
        }
    }
    // One answer changed at a time, each that the web depends on: a stale answer would show.
    for change in [
        ("part.web", "4.2"),
        ("boss.diameter", "40"),
        ("recess-a.diameter", "138"),
        ("recess-b.diameter", "130"),
        ("slots.length", "28"),
        ("slots.pitch", "9"),
        ("material.row", "brass_cuzn39pb3"),
        ("holding.boss-bolted", "no"),
        ("holding.backing", "putty"),
        ("cutter.2.diameter", "2.5"),
    ] {
        let changed = answers("mirror-back-plate", &[("recess-a.depth", "9"), change]);
        let job = job(&changed);
        let (outcome, _, warmed) = in_slices(&job, 3, cache);
        assert_eq!(outcome, advise(&job), "{change:?}");
        cache = warmed;
    }
}

/// The same rack with its rows in another order: row `k` goes to `to[k]`.
fn shuffled(answers: &Answers, to: &[u8]) -> Answers {
    let mut moved = Answers::new(answers.units);
    for (id, answer) in answers.iter() {
        let row = id.row.map(|r| to[usize::from(r)]);
        let id = FieldId { row, ..*id };
        moved.set(id, answer.text.clone(), answer.known);
    }
    moved
}

/// The rows of cutters that gains are about, counted back; in an order that does not follow the rack.
fn gains(gains: &mut [Gain], back: &impl Fn(u8) -> u8) {
    for gain in gains.iter_mut() {
        match &mut gain.what {
            What::OneMoreFlute { row, .. } | What::HoldShorter { row, .. } => *row = back(*row),
            _ => {}
        }
    }
    gains.sort_by_key(|g| format!("{:?}", g.what));
}

/// An outcome with the rows of its cutters counted as in the rack before it was shuffled.
fn row_back(outcome: Outcome, to: &[u8]) -> Outcome {
    let back = |row: u8| u8::try_from(to.iter().position(|t| *t == row).unwrap()).unwrap();
    let tidy = |considered: &mut Vec<Considered>| {
        for one in considered.iter_mut() {
            one.cutter = back(one.cutter);
        }
        // Told in the order of the rack: the one thing that must follow it.
        considered.sort_by_key(|c| (c.method, c.cutter));
    };
    match outcome {
        Outcome::Feasible(mut strategy) => {
            for step in strategy.setups.iter_mut().flat_map(|s| &mut s.steps) {
                step.cutter = back(step.cutter);
                if let Entry::Drilled { drill, .. } = &mut step.entry {
                    *drill = back(*drill);
                }
                tidy(&mut step.considered);
            }
            for defaulted in &mut strategy.defaults {
                defaulted.field.row = defaulted.field.row.map(back);
            }
            strategy
                .defaults
                .sort_by_key(|d| (d.field.field, d.field.row));
            gains(&mut strategy.gains, &back);
            Outcome::Feasible(strategy)
        }
        Outcome::Refused(mut refusal) => {
            tidy(&mut refusal.tried);
            for change in &mut refusal.changes {
                change.field.row = change.field.row.map(back);
            }
            gains(&mut refusal.gains, &back);
            refusal
                .changes
                .sort_by_key(|c| (c.field.field, c.field.row));
            Outcome::Refused(refusal)
        }
    }
}

#[test]
fn the_order_of_the_rack_changes_row_numbers_only() {
    for sample in samples() {
        let answers = sample.job().answers;
        let rows = answers.rack_rows();
        let same: Vec<u8> = (0..rows).collect();
        let reversed: Vec<u8> = (0..rows).rev().collect();
        let turned: Vec<u8> = (0..rows).map(|r| (r + 1) % rows).collect();
        let plain = row_back(advise(&job(&answers)), &same);
        for to in [reversed, turned] {
            let outcome = row_back(advise(&job(&shuffled(&answers, &to))), &to);
            // Not `assert_eq`: two whole outcomes are no message.
            let (a, b) = (format!("{outcome:#?}"), format!("{plain:#?}"));
            let differs = a.lines().zip(b.lines()).position(|(a, b)| a != b);
            let line = differs.map(|i| (a.lines().nth(i), b.lines().nth(i), i));
            assert!(outcome == plain, "{}, rows {to:?}: {line:?}", sample.id);
        }
    }
}

#[test]
fn two_runs_are_equal() {
    for sample in samples() {
        let answers = sample.job().answers;
        assert_eq!(
            advise(&job(&answers)),
            advise(&job(&answers)),
            "{}",
            sample.id
        );
    }
}

#[allow(clippy::print_stdout, reason = "the time is for people")]
fn timed(what: &str, answers: &Answers) -> Outcome {
    let start = Instant::now();
    let job = job(answers);
    let read = start.elapsed();
    let outcome = decide(&job);
    println!(
        "{what}: read in {read:.2?}, worked out in {:.2?}",
        start.elapsed() - read
    );
    outcome
}

fn steps(outcome: &Outcome) -> usize {
    match outcome {
        Outcome::Feasible(strategy) => strategy.setups.iter().map(|s| s.steps.len()).sum(),
        Outcome::Refused(refusal) => panic!("{refusal:#?}"),
    }
}

#[test]
fn sixty_slots_come_to_an_end() {
    let wheel = answers(
        "mirror-back-plate",
        &[
            ("part.diameter", "400"),
            ("recess-a.diameter", "360"),
            ("recess-b.diameter", "360"),
            ("boss.diameter", "60"),
            ("part.web", "6"),
            ("recess-a.depth", "7"),
            ("slots.groups", "12"),
            ("slots.per-group", "5"),
            ("slots.length", "60"),
            ("slots.inner-radius", "80"),
            ("tolerance.web", "0.2"),
        ],
    );
    assert_eq!(job(&wheel).part.slots.len(), 60);
    assert!(steps(&timed("60 slots", &wheel)) >= 8);
}

#[test]
#[allow(clippy::print_stdout, reason = "the time is for people")]
fn as_many_slots_as_may_be_are_read() {
    let grille = answers(
        "mirror-back-plate",
        &[
            ("part.diameter", "1000"),
            ("recess-a.diameter", "900"),
            ("recess-b.diameter", "900"),
            ("slots.groups", "40"),
            ("slots.per-group", "10"),
            ("slots.width", "2"),
            ("slots.pitch", "4"),
            ("slots.inner-radius", "300"),
        ],
    );
    let start = Instant::now();
    assert_eq!(job(&grille).part.slots.len(), 400);
    println!("400 slots: read in {:.2?}", start.elapsed());
}

#[test]
fn a_rack_of_twenty_comes_to_an_end() {
    let mut answers = answers("mirror-back-plate", &[]);
    for row in 2..20_u8 {
        // End mills from 2 to 12 mm, one to three flutes, cut twice and four times as long as wide.
        let d = 2 + row / 2;
        let long = if row % 2 == 0 { 2 } else { 4 };
        for (word, value) in [
            ("diameter", d),
            ("flutes", 1 + row % 3),
            ("flute-length", long * d),
            ("stick-out", long * d + 4),
        ] {
            let id = FieldId::by_key(&format!("cutter.{}.{word}", row + 1)).unwrap();
            answers.set(id, value.to_string(), Known::DataSheet);
        }
    }
    assert_eq!(job(&answers).rack.len(), 20);
    let outcome = timed("20 cutters", &answers);
    assert!(steps(&outcome) >= 8);
    // More cutters to choose from never cost time and warnings; two of the twenty are the sample's own.
    let price = |outcome: &Outcome| match outcome {
        Outcome::Feasible(strategy) => strategy.time.si(),
        Outcome::Refused(_) => f64::INFINITY,
    };
    let own = decide(&job(&core_cases::answers("mirror-back-plate", &[])));
    assert!(price(&outcome) <= price(&own));
}

#[test]
fn the_plainest_job_of_all_comes_to_an_end() {
    let plain = only(&[
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
    ]);
    assert!(steps(&timed("one recess", &plain)) >= 3);
}
