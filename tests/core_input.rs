//! Answers with problems: every one is found at once, at its field, with its numbers; and no text at all does harm.
#![cfg(test)]

mod core_cases;

use core_cases::{Lot, answers, only};
use thinwright_catalog::Catalog;
use thinwright_core::answers::Answers;
use thinwright_core::estimate::Known;
use thinwright_core::field::{FIELDS, Field, FieldId, Group, Input};
use thinwright_core::problem::{Into, Problem, ProblemKind};
use thinwright_core::{decide, job::Job, read};
use thinwright_jobfile::samples;
use thinwright_quantity::{Length, ParseError, ParseErrorKind, UnitSystem};

fn problems(answers: &Answers) -> Vec<Problem> {
    match read(answers, &Catalog::builtin()) {
        Ok(_) => Vec::new(),
        Err(problems) => problems,
    }
}

/// The only problem of sample (a) with some answers changed: its field's key and its kind.
#[track_caller]
fn one(changes: &[(&str, &str)]) -> (String, ProblemKind) {
    let found = problems(&answers("mirror-back-plate", changes));
    assert_eq!(found.len(), 1, "{found:?}");
    (found[0].field.key(), found[0].kind.clone())
}

fn near(length: Length, mm: f64) -> bool {
    (length.si() * 1.0e3 - mm).abs() < 1.0e-6
}

#[test]
fn recesses_that_meet_leave_no_web() {
    // 30 - 18 - 14 = -2.
    let met = answers(
        "mirror-back-plate",
        &[
            ("part.thickness", "30"),
            ("recess-a.depth", "18"),
            ("recess-b.depth", "14"),
            ("part.web", ""),
        ],
    );
    let found = problems(&met);
    let keys: Vec<String> = found.iter().map(|p| p.field.key()).collect();
    // Either depth may be the wrong one: it is said at both.
    assert_eq!(keys, ["recess-a.depth", "recess-b.depth"]);
    for problem in found {
        let ProblemKind::NoWeb {
            thickness,
            depth_a,
            depth_b,
        } = problem.kind
        else {
            panic!("{problem:?}");
        };
        assert!(near(thickness, 30.0) && near(depth_a, 18.0) && near(depth_b, 14.0));
        let left = thickness.si() - depth_a.si() - depth_b.si();
        assert!((left + 2.0e-3).abs() < 1.0e-12, "{left}");
    }
}

#[test]
fn a_web_that_disagrees_is_told_with_all_four_numbers() {
    let (key, kind) = one(&[("recess-b.depth", "5")]);
    assert_eq!(key, "part.web");
    let ProblemKind::WebDisagrees {
        thickness,
        depth_a,
        depth_b,
        web,
    } = kind
    else {
        panic!("{kind:?}");
    };
    assert!(near(thickness, 19.0) && near(depth_a, 9.0) && near(depth_b, 5.0) && near(web, 4.0));
    // With the depth that agrees, 19 - 9 - 4 = 6, there is no problem.
    assert_eq!(
        problems(&answers("mirror-back-plate", &[("recess-b.depth", "6")])),
        []
    );
    // A web thicker than what one recess leaves.
    let (key, kind) = one(&[("part.web", "10.5")]);
    assert_eq!(key, "part.web");
    assert!(
        matches!(kind, ProblemKind::WebTooThick { depth, web, .. } if near(depth, 9.0) && near(web, 10.5))
    );
}

#[test]
fn slots_stay_on_the_floor_off_the_boss_and_apart() {
    // The recess ends at radius 70, the slots at 29 + 45 = 74.
    let (key, kind) = one(&[("slots.length", "45")]);
    assert_eq!(key, "slots.length");
    let ProblemKind::SlotLeavesFloor { by } = kind else {
        panic!("{kind:?}");
    };
    // A round end leaves a round wall with less than its full width.
    assert!((2.0e-3..=4.2e-3).contains(&by.si()), "{by:?}");
    // The boss ends at radius 18, the slots begin at 15.
    let (key, kind) = one(&[("slots.inner-radius", "15"), ("slots.per-group", "1")]);
    assert!(key.starts_with("slots."), "{key}");
    let ProblemKind::SlotMeetsBoss { by } = kind else {
        panic!("{kind:?}");
    };
    assert!((1.0e-3..=3.2e-3).contains(&by.si()), "{by:?}");
    // Slots 4 wide, 3.5 apart.
    let (key, kind) = one(&[("slots.pitch", "3.5")]);
    assert_eq!(key, "slots.pitch");
    assert!(matches!(kind, ProblemKind::SlotsMeet { rib } if rib.si() <= 0.0));
}

#[test]
fn more_slots_than_can_be_worked_out_are_told_before_they_are_drawn() {
    // 200 groups of 200 are 40 000 slots; 400 in all are drawn.
    let (key, kind) = one(&[("slots.groups", "200"), ("slots.per-group", "200")]);
    assert_eq!(key, "slots.per-group");
    assert_eq!(
        kind,
        ProblemKind::TooLarge {
            value: 200.0,
            greatest: 2.0
        }
    );
}

/// Sample (a) changed like this has one misfit: at this field, with its size and room (mm) and what it goes into.
#[track_caller]
fn fits(changes: &[(&str, &str)], at: &str, numbers: (f64, f64), into: Into) {
    let (key, kind) = one(changes);
    assert_eq!(key, at);
    let ProblemKind::DoesNotFit {
        size,
        room,
        into: told,
    } = kind
    else {
        panic!("{kind:?}");
    };
    assert!(
        near(size, numbers.0) && near(room, numbers.1),
        "{size:?} {room:?}"
    );
    assert_eq!(told, into);
}

#[test]
fn what_does_not_fit_is_told_with_size_and_room() {
    fits(
        &[("recess-a.diameter", "170")],
        "recess-a.diameter",
        (170.0, 160.0),
        Into::Outline,
    );
    fits(
        &[("recess-b.diameter", "160.1")],
        "recess-b.diameter",
        (160.1, 160.0),
        Into::Outline,
    );
    fits(
        &[("boss.bore", "40")],
        "boss.bore",
        (40.0, 36.0),
        Into::Boss,
    );
    fits(
        &[("cutter.2.corner-radius", "1.6")],
        "cutter.2.corner-radius",
        (1.6, 1.5),
        Into::CutterRadius,
    );
    fits(
        &[("cutter.1.stick-out", "19")],
        "cutter.1.flute-length",
        (20.0, 19.0),
        Into::StickOut,
    );
}

#[test]
fn what_does_not_fit_twice_is_told_once() {
    // The boss fits into neither recess.
    fits(
        &[("boss.diameter", "150"), ("recess-b.diameter", "141")],
        "boss.diameter",
        (150.0, 140.0),
        Into::Recess,
    );
    // At the face that was answered: face B is like face A.
    fits(
        &[("recess-a.diameter", "170"), ("recess-b.diameter", "")],
        "recess-a.diameter",
        (170.0, 160.0),
        Into::Outline,
    );
    // Half the shorter side of a recess 96 x 56 is 28.
    let found = problems(&answers(
        "filter-cover",
        &[("recess-a.corner", "30"), ("recess-b.corner", "8")],
    ));
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].field.key(), "recess-a.corner");
    assert!(
        matches!(found[0].kind, ProblemKind::DoesNotFit { size, room, into: Into::RecessSide }
        if near(size, 30.0) && near(room, 28.0))
    );
}

#[test]
fn machine_and_good_cut() {
    let (key, kind) = one(&[("machine.speed-min", "25000")]);
    assert_eq!(key, "machine.speed-min");
    // 25 000 and 24 000 a minute, in turns a second.
    assert!(matches!(kind, ProblemKind::TooLarge { value, greatest }
        if (value - 25_000.0 / 60.0).abs() < 1.0e-6 && (greatest - 400.0).abs() < 1.0e-6));
    let some = [
        ("good-cut.diameter", "6"),
        ("good-cut.feed", "800"),
        ("good-cut.step-down", "1"),
    ];
    let found = problems(&answers("mirror-back-plate", &some));
    let keys: Vec<String> = found.iter().map(|p| p.field.key()).collect();
    assert_eq!(
        keys,
        ["good-cut.flutes", "good-cut.speed", "good-cut.stepover"]
    );
    assert!(
        found
            .iter()
            .all(|p| p.kind == ProblemKind::GoodCutIncomplete)
    );
}

#[test]
fn an_empty_rack_and_no_answers_at_all() {
    let found = problems(&only(&[]));
    let keys: Vec<String> = found.iter().map(|p| p.field.key()).collect();
    assert_eq!(
        keys,
        [
            "part.diameter",
            "part.thickness",
            "recess-a.diameter",
            "cutter.1.diameter"
        ],
    );
    assert!(found[..3].iter().all(|p| p.kind == ProblemKind::Missing));
    assert_eq!(found[3].kind, ProblemKind::EmptyRack);
    let mut bare = answers("mirror-back-plate", &[]);
    while bare.rack_rows() > 0 {
        bare.remove_cutter(0);
    }
    let found = problems(&bare);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].kind, ProblemKind::EmptyRack);
}

#[test]
fn everything_wrong_is_told_at_once() {
    let wrong = answers(
        "mirror-back-plate",
        &[
            ("part.diameter", "one hand"),
            ("part.thickness", "19 N"),
            ("material.row", "unobtainium"),
            ("machine.speed-max", "fast"),
            ("machine.stiffness", "-3"),
            ("machine.power", "1e999 kW"),
            ("cutter.1.diameter", ""),
            ("cutter.2.flutes", "100"),
            ("holding.first", "two strong arms"),
            ("tolerance.web", "0"),
        ],
    );
    let found = problems(&wrong);
    let told: Vec<(String, &str)> = found
        .iter()
        .map(|p| {
            let kind = match p.kind {
                ProblemKind::Text(_) => "text",
                ProblemKind::Missing => "missing",
                ProblemKind::NoSuchChoice => "choice",
                ProblemKind::TooSmall { .. } => "small",
                ProblemKind::TooLarge { .. } => "large",
                _ => "other",
            };
            (p.field.key(), kind)
        })
        .collect();
    let expected = [
        ("part.diameter", "text"),
        ("part.thickness", "text"),
        ("tolerance.web", "small"),
        ("material.row", "choice"),
        ("machine.speed-max", "text"),
        ("machine.power", "text"),
        ("machine.stiffness", "small"),
        ("cutter.1.diameter", "missing"),
        ("cutter.2.flutes", "large"),
        ("holding.first", "choice"),
    ];
    assert_eq!(told, expected.map(|(key, kind)| (key.to_owned(), kind)));
    // The reader of the text says why: newtons are no length.
    let unit = found.iter().find(|p| p.field == Field::Thickness.into());
    assert!(
        matches!(
            unit.map(|p| &p.kind),
            Some(ProblemKind::Text(ParseError {
                kind: ParseErrorKind::WrongUnit(_),
                ..
            }))
        ),
        "{unit:?}"
    );
}

/// A text that a person, a slip of the finger or a wicked program may leave in a field.
fn text(lot: &mut Lot, id: FieldId) -> String {
    const STRANGE: &[&str] = &[
        "",
        " ",
        "0",
        "-1",
        "NaN",
        "inf",
        "-inf",
        "1e308",
        "1e-308",
        "-0",
        "1/0",
        "0/0",
        "99999999999999999999",
        "½",
        "１２",
        "−3",
        "1,5,2",
        "1.2.3",
        "3 1/2 in",
        "5'",
        "1e5",
        "0.000001",
        "٣",
        "\u{0}",
        "\u{202e}12",
        "🦀",
        "12 mm mm",
        "1/3/5",
        "yes",
        "no",
        "polar",
        "parallel",
        "rectangular",
        "round",
        "drill",
        "none",
        "4999",
        "5000",
        "200",
        "1000000",
    ];
    match id.field.spec().input {
        Input::Choice(keys) if lot.share() < 0.8 => (*lot.of(keys)).to_owned(),
        Input::Row(_) if lot.share() < 0.9 => String::new(),
        _ if lot.share() < 0.25 => (*lot.of(STRANGE)).to_owned(),
        _ => {
            // Sizes of every order, more of them usual ones.
            let exponent = 4.0 * lot.share() - 1.5;
            let value = libm_pow10(exponent);
            let unit = lot.of(&[
                "", "", "", " mm", " in", "in", " rpm", " kW", " N/um", " um", "°",
            ]);
            format!("{value:.3}{unit}")
        }
    }
}

/// 10 to a power, by whole steps and a straight line between: it only spreads numbers.
fn libm_pow10(exponent: f64) -> f64 {
    let whole = exponent.floor();
    #[allow(clippy::cast_possible_truncation, reason = "between -2 and 3")]
    let steps = whole as i32;
    10.0_f64.powi(steps) * (1.0 + 9.0 * (exponent - whole))
}

/// Answer sets: samples with a few answers replaced by lot, or everything by lot.
fn strange_answers(lot: &mut Lot) -> Answers {
    let all: Vec<FieldId> = FIELDS
        .iter()
        .map(|s| match s.group {
            Group::Cutters => FieldId::in_row(s.field, u8::try_from(lot.below(3)).unwrap()),
            _ => s.field.into(),
        })
        .collect();
    let everything = lot.share() < 0.1;
    let mut answers = if everything {
        Answers::new(*lot.of(&[UnitSystem::Metric, UnitSystem::Inch]))
    } else {
        lot.of(samples()).job().answers
    };
    let count = if everything {
        3 * all.len()
    } else {
        1 + lot.below(3)
    };
    for _ in 0..count {
        let id = *lot.of(&all);
        let text = text(lot, id);
        answers.set(
            id,
            text,
            *lot.of(&[Known::Measured, Known::DataSheet, Known::Estimated]),
        );
    }
    answers
}

/// How much there is to work out, about: cutters times what can be cut.
fn size(job: &Job) -> usize {
    job.rack.len() * (10 + job.part.slots.len() + job.part.cells.len())
}

/// Answer sets that are read, and how many of those that can be read are worked out.
const SETS: usize = 3000;
const WORKED_OUT: usize = 60;

#[test]
fn no_text_does_harm() {
    let mut lot = Lot(1_125);
    let catalog = Catalog::builtin();
    let mut readable: Vec<Job> = Vec::new();
    for _ in 0..SETS {
        let answers = strange_answers(&mut lot);
        match read(&answers, &catalog) {
            Ok(job) => readable.push(job),
            Err(problems) => {
                assert!(!problems.is_empty(), "{answers:?}");
                // Told in the order of the questionnaire.
                let places: Vec<_> = problems
                    .iter()
                    .map(|p| (p.field.field.spec().group, p.field.row, p.field.field))
                    .collect();
                assert!(places.is_sorted(), "{places:?}");
            }
        }
    }
    // Enough of both, or the net has become too coarse or too fine.
    assert!((300..2700).contains(&readable.len()), "{}", readable.len());
    readable.sort_by_key(size);
    for job in readable.iter().take(WORKED_OUT) {
        // Whatever comes of it: every number of it is one.
        let text = format!("{:?}", decide(job));
        assert!(!text.contains("NaN"), "{text}");
    }
}
