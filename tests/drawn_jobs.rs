//! The jobs drawn by lot: they can be read, differ, and cover what the tables have.
#![cfg(test)]

use std::collections::BTreeSet;
use thinwright_catalog::Catalog;
use thinwright_core::{Answers, Field, FieldId, read};
use workspace_tests::jobs::{drawn, random_answers, random_jobs};

const SEEDS: u64 = 200;

fn seen(jobs: &[Answers], field: Field) -> BTreeSet<&str> {
    jobs.iter().map(|a| a.text(field.into())).collect()
}

#[test]
fn every_seed_gives_a_job_that_can_be_read() {
    let catalog = Catalog::builtin();
    let mut redraws = 0;
    let mut texts = BTreeSet::new();
    for seed in 0..SEEDS {
        let (answers, anew) = drawn(seed);
        let problems = read(&answers, &catalog).err();
        assert_eq!(problems, None, "seed {seed}");
        redraws += anew;
        texts.insert(format!("{answers:?}"));
    }
    assert_eq!(texts.len() as u64, SEEDS, "two seeds, one job");
    // A generator that mostly draws what cannot be made draws few of the shapes that are hard to make.
    assert!(u64::from(redraws) <= SEEDS / 2, "{redraws} drawn anew");
}

#[test]
fn a_seed_gives_the_same_job_again() {
    for seed in [0, 1, 77, u64::MAX] {
        assert_eq!(random_answers(seed), random_answers(seed));
    }
}

#[test]
fn every_row_and_every_shape_is_drawn() {
    let catalog = Catalog::builtin();
    let jobs: Vec<Answers> = random_jobs(SEEDS).map(|(_, answers)| answers).collect();
    let groups: BTreeSet<_> = seen(&jobs, Field::Material)
        .into_iter()
        .filter_map(|id| Some(catalog.material(id)?.iso513))
        .collect();
    let all: BTreeSet<_> = catalog.materials.iter().map(|row| row.iso513).collect();
    assert_eq!(groups, all);
    let rows = [
        (Field::Machine, catalog.machines.len()),
        (Field::HoldFirst, catalog.holds.len()),
        (Field::Chips, catalog.clearings.len()),
    ];
    for (field, count) in rows {
        let seen = seen(&jobs, field);
        assert_eq!(seen.len(), count, "{field:?}: {seen:?}");
    }
    // Of a part with one recess the backing is mostly left out.
    assert_eq!(
        seen(&jobs, Field::Backing).len(),
        catalog.backings.len() + 1
    );
    let count = |what: &dyn Fn(&Answers) -> bool| jobs.iter().filter(|a| what(a)).count();
    let given = |field: Field| move |a: &Answers| !a.text(field.into()).is_empty();
    for shape in ["round", "rectangular"] {
        for slots in ["", "parallel", "polar"] {
            let found = count(&|a| {
                a.text(Field::Shape.into()) == shape && a.text(Field::SlotPattern.into()) == slots
            });
            assert!(found >= 8, "{shape}, slots {slots:?}: {found}");
        }
    }
    for field in [Field::Boss, Field::Bore, Field::HoldSecond, Field::Finish] {
        let found = count(&given(field));
        assert!((20..=180).contains(&found), "{field:?}: {found}");
    }
    let inch = count(&|a| a.units == thinwright_quantity::UnitSystem::Inch);
    assert!((20..=180).contains(&inch), "{inch} in inches");
    for rack in 2..=6 {
        assert!(count(&|a| a.rack_rows() == rack) >= 8, "{rack} cutters");
    }
    let drill = |a: &Answers| {
        (0..a.rack_rows()).any(|r| a.text(FieldId::in_row(Field::CutterKind, r)) == "drill")
    };
    assert!(count(&drill) >= 20);
}
