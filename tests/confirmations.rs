//! What has to be confirmed before the sheet is printed without a mark: it arises where the risk is, and anew where it
//! hangs on something else.
#![cfg(test)]

use thinwright_catalog::Catalog;
use thinwright_core::confirm::confirmations;
use thinwright_core::strategy::{Outcome, Strategy};
use thinwright_core::{Answers, Field, FieldId, Job, Known, advise, read};
use thinwright_jobfile::Sample;

/// The first sample with some answers changed, and its strategy.
fn worked_out(change: impl FnOnce(&mut Answers)) -> (Job, Strategy) {
    let mut answers = Sample::by_id("mirror-back-plate").unwrap().job().answers;
    change(&mut answers);
    let job = read(&answers, &Catalog::builtin()).unwrap();
    match advise(&job) {
        Outcome::Feasible(strategy) => (job, *strategy),
        Outcome::Refused(refusal) => panic!("{refusal:?}"),
    }
}

fn keys(change: impl FnOnce(&mut Answers)) -> Vec<String> {
    let (job, strategy) = worked_out(change);
    let all = confirmations(&job, &strategy);
    all.into_iter().map(|c| c.key).collect()
}

const OFFCUT: &str = "loose_piece@screws_rim";

#[test]
fn what_comes_free_is_confirmed_for_its_hold() {
    let (job, strategy) = worked_out(|_| ());
    let all = confirmations(&job, &strategy);
    assert_eq!(all.len(), 1, "{all:?}");
    assert_eq!(
        (all[0].key.as_str(), all[0].caution.as_str()),
        (OFFCUT, "loose_piece")
    );
    // Only where a piece comes free: slots and the bore leave as chips, though the caution stands there too.
    let told = strategy.setups.iter().flat_map(|s| &s.steps);
    let told: Vec<u32> = told
        .filter(|s| s.cautions.contains(&all[0].caution))
        .map(|s| s.number)
        .collect();
    assert!(
        all[0].steps.len() < told.len() && all[0].steps.iter().all(|s| told.contains(s)),
        "{all:?}"
    );
    let held = keys(|a| a.set_text(Field::HoldSecond, "tape_glue"));
    assert_eq!(held, ["loose_piece@tape_glue"]);
}

#[test]
fn magnesium_titanium_and_fibre_dust_are_confirmed_by_material() {
    for (material, key) in [
        ("magnesium_az91", "magnesium_fire@magnesium_az91"),
        ("g10", "fibre_dust@g10"),
    ] {
        let all = keys(|a| a.set_text(Field::Material, material));
        assert!(all.contains(&key.to_owned()), "{material}: {all:?}");
    }
    // Titanium needs a stiffer machine than the sample has: the table says it all the same.
    for id in ["ti_6al4v", "ti_grade2"] {
        let catalog = Catalog::builtin();
        let cautions = &catalog.material(id).unwrap().cautions;
        let confirm = |id: &String| catalog.caution(id).is_some_and(|row| row.confirm);
        assert!(cautions.iter().any(confirm), "{id}");
    }
}

#[test]
fn the_speed_marked_on_a_cutter_holds() {
    let at = |field| FieldId::in_row(field, 0);
    let fastest = |strategy: &Strategy| {
        let steps = strategy.setups.iter().flat_map(|s| &s.steps);
        steps
            .filter(|s| s.cutter == 0)
            .map(|s| s.n.to_rpm())
            .fold(0.0, f64::max)
    };
    let (_, free) = worked_out(|_| ());
    assert!(fastest(&free) > 10_000.0);
    let (job, held) = worked_out(|a| a.set(at(Field::CutterMarked), "10000", Known::DataSheet));
    let n = fastest(&held);
    assert!(n > 0.0 && n <= 10_000.0, "{n}");
    assert_eq!(confirmations(&job, &held).len(), 1);
    // A machine that cannot turn as slowly runs it too fast: that is told at the step, and has to be confirmed.
    let (job, over) = worked_out(|a| a.set(at(Field::CutterMarked), "6000", Known::DataSheet));
    let all = confirmations(&job, &over);
    let key = all
        .iter()
        .find(|c| c.caution == "cutter_over_speed")
        .unwrap();
    assert_eq!(
        key.key,
        "cutter_over_speed@1@6000 rpm@8000 rpm".replace(" rpm", "")
    );
    let told = over.setups.iter().flat_map(|s| &s.steps);
    let told = told.filter(|s| s.cautions.contains(&"cutter_over_speed".to_owned()));
    assert_eq!(told.map(|s| s.number).collect::<Vec<_>>(), key.steps);
}

#[test]
fn a_speed_that_is_kept_above_the_mark_is_confirmed_anew_for_each_speed() {
    let over = |pinned: &'static str| {
        let all = keys(|a| {
            a.set(
                FieldId::in_row(Field::CutterMarked, 0),
                "12000",
                Known::DataSheet,
            );
            let place = thinwright_core::pin::Place::by_key("clearing-a").unwrap();
            a.set_text(FieldId::in_row(Field::PinSpeed, place.row()), pinned);
            a.set_text(FieldId::in_row(Field::PinCutter, place.row()), "1");
        });
        all.into_iter()
            .filter(|k| k.starts_with("cutter_over_speed@1@"))
            .collect::<Vec<_>>()
    };
    assert!(over("12000").is_empty());
    let (some, more) = (over("15000"), over("18000"));
    assert!(
        some.len() == 1 && more.len() == 1 && some != more,
        "{some:?} {more:?}"
    );
}
