//! What must hold whatever the numbers are: a web's cube, a better machine that is never slower, units that change
//! nothing.
#![cfg(test)]

mod core_cases;

use core_cases::{answers, job};
use std::collections::BTreeMap;
use thinwright_core::answers::Answers;
use thinwright_core::decide;
use thinwright_core::field::Input;
use thinwright_core::job::Job;
use thinwright_core::limits::LimitId;
use thinwright_core::order::plans;
use thinwright_core::part::{Part, State};
use thinwright_core::strategy::{Outcome, Strategy};
use thinwright_core::task::TaskKind;
use thinwright_core::web::WebAnswer;
use thinwright_core::{Cache, known};
use thinwright_jobfile::samples;
use thinwright_quantity::{Kind, UnitSystem, parse};

const PLATE: &str = "mirror-back-plate";

/// The part when all is cut.
fn finished(job: &Job) -> State {
    let plan = &plans(job)[0];
    let tasks = plan.setups.iter().flat_map(|s| &s.tasks);
    tasks.fold(job.part.raw(), |state, task| job.part.after(&state, task))
}

fn web_of(changes: &[(&str, &str)], bolted: bool) -> WebAnswer {
    let job = job(&answers(PLATE, changes));
    let plan = plans(&job)
        .into_iter()
        .find(|p| p.setups[1].bolted == bolted);
    let setup = &plan.unwrap().setups[1];
    let skim = setup.tasks.iter().find(|t| t.kind == TaskKind::FloorSkim);
    let (state, cache) = (finished(&job), &mut Cache::default());
    let known = known(&job, setup, skim.unwrap(), (&state, &state), cache);
    known.web.unwrap()
}

#[test]
fn the_stiffness_of_a_web_goes_nearly_with_the_cube_of_its_thickness() {
    // Source: timoshenko1959: D = E t3 / (12 (1 - nu2)), and every deflection goes with 1 / D. A thicker web gains less
    // than that, never more: it rocks its rim more, reaches further into rim and boss, and gives in shear.
    let (square, cube) = ((5.0_f64 / 3.0).powi(2), (5.0_f64 / 3.0).powi(3));
    for bolted in [false, true] {
        for slots in ["none", "polar"] {
            let at =
                |thickness| web_of(&[("part.web", thickness), ("slots.pattern", slots)], bolted);
            let (thick, thin) = (at("5"), at("3"));
            let ratio = thin.bare / thick.bare;
            assert!(
                ratio > square && ratio < cube,
                "{ratio} for {square} to {cube}"
            );
            // The tone with the thickness itself at most: rim and boss weigh the same; stress with the square.
            let tone = thick.frequency / thin.frequency;
            assert!(tone > 1.0 && tone < 5.0 / 3.0, "{tone}");
            let stress = thin.stress(1.5e-3) / thick.stress(1.5e-3);
            assert!((stress * 9.0 / 25.0 - 1.0).abs() < 0.15, "{stress}");
            assert_eq!(thick.slotted, slots == "polar");
        }
    }
    // Open slots make it softer, a bolted boss stiffer.
    let open = web_of(&[], false);
    assert!(web_of(&[("slots.pattern", "none")], false).bare < open.bare);
    assert!(web_of(&[], true).bare <= open.bare);
}

fn strategy(answers: &Answers) -> Box<Strategy> {
    match decide(&job(answers)) {
        Outcome::Feasible(strategy) => strategy,
        Outcome::Refused(refusal) => panic!("{:?} {:#?}", refusal.task, refusal.tried),
    }
}

/// Times of sample (a), changed like this, with one answer at these values, min; without end where it is refused.
fn times(with: &[(&str, &str)], key: &str, values: &[&str]) -> Vec<f64> {
    let at = |value: &&str| {
        let changes = [with, &[(key, *value)]].concat();
        match decide(&job(&answers(PLATE, &changes))) {
            Outcome::Feasible(strategy) => strategy.time.si() / 60.0,
            Outcome::Refused(_) => f64::INFINITY,
        }
    };
    values.iter().map(at).collect()
}

/// Whether a better machine is never slower, and the best of these quicker than the worst.
#[track_caller]
fn never_slower(with: &[(&str, &str)], key: &str, values: &[&str]) {
    let times = times(with, key, values);
    assert!(
        times.is_sorted_by(|a, b| a + 1.0e-6 >= *b),
        "{key} {values:?}: {times:?} min"
    );
    // Or else the numbers are too tame to show anything.
    let finite: Vec<f64> = times.iter().copied().filter(|t| t.is_finite()).collect();
    assert!(
        finite[0] > finite[finite.len() - 1] * 1.01,
        "{key} {values:?}: {times:?} min"
    );
}

#[test]
fn a_stiffer_machine_is_never_slower() {
    // With a tolerance on the slots that a soft machine has to creep for.
    never_slower(
        &[("tolerance.slot", "0.06")],
        "machine.stiffness",
        &["0.05 N/um", "0.1 N/um", "0.3 N/um", "1 N/um", "4 N/um"],
    );
}

#[test]
fn more_thrust_is_never_slower() {
    never_slower(
        &[],
        "machine.thrust",
        &["25 N", "50 N", "100 N", "200 N", "400 N", "800 N"],
    );
}

#[test]
fn a_faster_or_stronger_machine_is_never_slower() {
    never_slower(&[], "machine.power", &["0.1 kW", "0.3 kW", "1 kW", "3 kW"]);
    never_slower(
        &[],
        "machine.acceleration",
        &["100 mm/s2", "300 mm/s2", "1000 mm/s2", "3000 mm/s2"],
    );
}

/// Utilisation of the limits on the web in the tasks that every plan has, the worst of each, at a thickness.
///
/// The tone of a web is left out: it rises with the thickness and may well meet the tooth rate on its way. So are the
/// slots: a plan that cuts them into thick stock has no warning where a plan that cuts them through the web has one,
/// and which of the two is chosen changes with the thickness.
fn of_the_web(thickness: &str) -> BTreeMap<(TaskKind, LimitId), f64> {
    let alone = [
        ("part.web", thickness),
        ("recess-a.depth", "7"),
        ("part.thickness", "22"),
        ("holding.backing", "none"),
        ("holding.boss-bolted", "no"),
        ("tolerance.web", "0.5"),
    ];
    let strategy = strategy(&answers(PLATE, &alone));
    let mut worst: BTreeMap<(TaskKind, LimitId), f64> = BTreeMap::new();
    for step in strategy.setups.iter().flat_map(|s| &s.steps) {
        if !matches!(step.task, TaskKind::Clearing | TaskKind::FloorSkim) {
            continue;
        }
        for finding in &step.findings {
            if matches!(
                finding.limit,
                LimitId::WebSoftness | LimitId::WebSlenderness
            ) {
                let u = worst.entry((step.task, finding.limit)).or_default();
                *u = u.max(finding.utilisation());
            }
        }
    }
    worst
}

#[test]
fn a_thicker_web_never_has_more_warnings() {
    let webs = ["1", "1.5", "2", "3", "4", "6"].map(of_the_web);
    for pair in webs.windows(2) {
        for (place, thin) in &pair[0] {
            // The plain share of span and thickness, and the stiffness, are better in every millimetre.
            let thick = pair[1].get(place).copied().unwrap_or(0.0);
            assert!(thick < *thin, "{place:?}: {thin}, then {thick}");
        }
    }
    let counts = webs.map(|w| w.values().filter(|u| **u > 1.0).count());
    assert!(counts.is_sorted_by(|a, b| a >= b), "{counts:?}");
    // It is a test only if the thinnest is warned of and the thickest is not.
    assert!(counts[0] > 0 && counts[5] == 0, "{counts:?}");
}

/// The same answers as a person would type them who thinks in inches.
fn in_inches(answers: &Answers) -> Answers {
    let mut inches = Answers::new(UnitSystem::Inch);
    for (id, answer) in answers.iter() {
        let text = match id.field.spec().input {
            Input::Quantity(Kind::Length | Kind::ShortLength) if !answer.text.trim().is_empty() => {
                let kind = match id.field.spec().input {
                    Input::Quantity(kind) => kind,
                    _ => Kind::Length,
                };
                let si = parse(kind, &answer.text, answers.units).unwrap();
                // A bare number: inches are what it is read in.
                format!("{:.9}", si / 0.0254)
            }
            _ => answer.text.clone(),
        };
        inches.set(*id, text, answer.known);
    }
    inches
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1.0e-6 * a.abs().max(b.abs()).max(1.0e-3)
}

fn same_part(a: &Part, b: &Part) {
    assert!(close(a.thickness, b.thickness) && close(a.web(), b.web()));
    assert!((a.blank_heights.0.0 - b.blank_heights.0.0).abs() <= 1);
    assert!((a.blank_heights.1.0 - b.blank_heights.1.0).abs() <= 1);
    assert!(close(a.blank_area.area_mm2(), b.blank_area.area_mm2()));
    assert!(close(a.outline_area.area_mm2(), b.outline_area.area_mm2()));
    assert_eq!(a.recesses.len(), b.recesses.len());
    for (a, b) in a.recesses.iter().zip(&b.recesses) {
        assert!(
            (a.floor.0 - b.floor.0).abs() <= 1,
            "{:?} {:?}",
            a.floor,
            b.floor
        );
        assert!(close(a.area.area_mm2(), b.area.area_mm2()));
        assert!(close(a.narrowest, b.narrowest) && close(a.widest, b.widest));
        assert!(a.corner.is_infinite() && b.corner.is_infinite() || close(a.corner, b.corner));
    }
    assert_eq!(a.slots.len(), b.slots.len());
    for (a, b) in a.slots.iter().zip(&b.slots) {
        assert!(close(a.width, b.width) && close(a.length, b.length));
        assert!(a.ends.0.distance(b.ends.0) < 1.0e-6 && a.ends.1.distance(b.ends.1) < 1.0e-6);
        assert!(close(a.area.area_mm2(), b.area.area_mm2()));
    }
    assert_eq!(a.rib.is_some(), b.rib.is_some());
    assert!(close(a.rib.unwrap_or(1.0), b.rib.unwrap_or(1.0)));
    assert_eq!(a.cells.len(), b.cells.len());
}

#[test]
fn inches_give_the_same_part_and_cutters() {
    for sample in samples() {
        let metric = sample.job().answers;
        let (mm, inch) = (job(&metric), job(&in_inches(&metric)));
        assert_eq!(inch.units, UnitSystem::Inch);
        same_part(&mm.part, &inch.part);
        for (a, b) in mm.rack.iter().zip(&inch.rack) {
            assert!(close(a.d, b.d) && close(a.flute_length, b.flute_length));
            assert!(close(a.reach, b.reach) && close(a.shank, b.shank));
            assert!(close(a.stick_out, b.stick_out) && close(a.corner, b.corner));
        }
        let (a, b) = (mm.wanted, inch.wanted);
        for (a, b) in [(a.web, b.web), (a.slot, b.slot), (a.flatness, b.flatness)] {
            assert!(close(a.unwrap_or(1.0), b.unwrap_or(1.0)), "{a:?} {b:?}");
        }
    }
}

#[test]
fn inches_give_the_same_verdict() {
    // Numbers are typed on another grid, so times differ by a little; nothing else does.
    for sample in samples() {
        let metric = sample.job().answers;
        match (decide(&job(&metric)), decide(&job(&in_inches(&metric)))) {
            (Outcome::Feasible(mm), Outcome::Feasible(inch)) => {
                let ratio = inch.time.si() / mm.time.si();
                assert!((ratio - 1.0).abs() < 0.05, "{}: {ratio}", sample.id);
                assert_eq!(mm.setups.len(), inch.setups.len());
            }
            (Outcome::Refused(mm), Outcome::Refused(inch)) => assert_eq!(mm.task, inch.task),
            _ => panic!("{}: feasible in one unit only", sample.id),
        }
    }
}
