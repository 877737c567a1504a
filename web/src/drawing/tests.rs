//! The drawings of the samples as a whole.

use super::cut::{self, Block, Strip};
use super::layout::{Picture, picture};
use super::mark::Mark;
use super::moment::moment;
use super::{frame, section};
use std::collections::BTreeSet;
use thinwright_catalog::Catalog;
use thinwright_core::strategy::Strategy;
use thinwright_core::{Field, FieldId, Job, Outcome, advise, read};

fn jobs() -> Vec<Job> {
    let catalog = Catalog::builtin();
    let samples = thinwright_jobfile::samples().iter();
    samples
        .map(|s| read(&s.job().answers, &catalog).unwrap())
        .collect()
}

fn strategy(job: &Job) -> Option<Box<Strategy>> {
    match advise(job) {
        Outcome::Feasible(strategy) => Some(strategy),
        Outcome::Refused(_) => None,
    }
}

/// Every path is of finite numbers, every text lies on the paper.
fn sound(picture: &Picture) {
    fn each(marks: &[Mark], height: f64) {
        for mark in marks {
            match mark {
                Mark::Line(_, path) => {
                    assert!(!path.contains("NaN") && !path.contains("inf"), "{path}");
                }
                Mark::Text(letters) => {
                    let (x, y) = letters.at;
                    let on_paper = (0.0..=frame::WIDTH).contains(&x) && (0.0..=height).contains(&y);
                    assert!(on_paper, "{letters:?}");
                    assert!(!letters.text.is_empty());
                }
                Mark::Window { marks, .. } | Mark::Dimension { marks, .. } => each(marks, height),
            }
        }
    }
    each(&picture.marks, picture.height);
}

fn fields(picture: &Picture) -> BTreeSet<FieldId> {
    let fields = picture.marks.iter().filter_map(|m| match m {
        Mark::Dimension { field, .. } => Some(*field),
        Mark::Line(..) | Mark::Text(_) | Mark::Window { .. } => None,
    });
    fields.collect()
}

#[test]
fn every_sample_and_step_is_drawn_soundly() {
    let mut drawn = 0;
    for job in jobs() {
        sound(&picture(&job, None));
        let Some(strategy) = strategy(&job) else {
            continue;
        };
        let mut step = 0;
        while let Some(moment) = moment(&job, &strategy, step) {
            sound(&picture(&job, Some(&moment)));
            step += 1;
        }
        let steps = strategy.setups.iter().map(|s| s.steps.len()).sum::<usize>();
        assert_eq!(step, steps);
        drawn += step;
    }
    assert!(drawn > 10, "{drawn}");
}

#[test]
fn sizes_are_tied_to_their_answers() {
    let jobs = jobs();
    let has = |job: &Job, wanted: &[Field]| {
        let found = fields(&picture(job, None));
        for field in wanted {
            assert!(found.contains(&(*field).into()), "{}: {field:?}", job.name);
        }
    };
    // The mirror back plate is round, with polar slots.
    has(
        &jobs[0],
        &[
            Field::Diameter,
            Field::Thickness,
            Field::DepthA,
            Field::DepthB,
            Field::Web,
            Field::RecessDiameterA,
            Field::Boss,
            Field::SlotWidth,
            Field::SlotLength,
            Field::SlotPitch,
            Field::SlotInner,
        ],
    );
    // The grille frame is rectangular, with parallel slots.
    has(
        &jobs[1],
        &[
            Field::Length,
            Field::Width,
            Field::RecessLengthA,
            Field::RecessWidthA,
            Field::RecessCornerA,
            Field::SlotWidth,
            Field::SlotLength,
            Field::SlotPitch,
        ],
    );
}

/// The steps' own heights, folded one after the other, must end in the part as its regions say it.
#[test]
fn the_last_step_leaves_the_finished_part() {
    for job in jobs() {
        let Some(strategy) = strategy(&job) else {
            continue;
        };
        let steps = strategy.setups.iter().map(|s| s.steps.len()).sum::<usize>();
        let last = moment(&job, &strategy, steps - 1).unwrap();
        let strips = cut::strips(&job.part, section::middle(&job.part));
        let inside: Vec<Strip> = strips.into_iter().filter(|s| s.cell.outline).collect();
        let area = |blocks: &[Block]| -> f64 {
            blocks
                .iter()
                .map(|b| (b.x.1 - b.x.0) * (b.z.1 - b.z.0))
                .sum()
        };
        let (left, wanted) = (
            cut::stock(&job.part, &last.after, &inside),
            cut::finished(&job.part, &inside),
        );
        assert!(
            (area(&left) - area(&wanted)).abs() < 1e-3 * area(&wanted),
            "{}",
            job.name
        );
        assert_eq!(left.len(), wanted.len(), "{}", job.name);
    }
}
