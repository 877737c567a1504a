//! A small strategy, made by hand, in words.

use super::{plain_blanks, speak};
use crate::{GainKind, plain};
use thinwright_core::estimate::{Known, Unknown};
use thinwright_core::field::{Field, FieldId};
use thinwright_core::gain::{Gain, Turned, What};
use thinwright_core::limits::{LimitId, Severity};
use thinwright_core::methods::{MethodId, Rejection};
use thinwright_core::order::OrderId;
use thinwright_core::strategy::{
    Change, Considered, Decided, Entry, Finding, Lever, Loads, Measure, OrderReport, OrderVerdict,
    Outcome, Refusal, Remedy, Setup, Step, Strategy, Verdict,
};
use thinwright_core::task::{Face, TaskKind};
use thinwright_quantity::{
    Duration, Force, Length, Power, Speed, SpindleSpeed, Stress, Torque, UnitSystem,
};

fn finding(limit: LimitId, likely: f64, worst: f64, set_by: Option<Unknown>) -> Finding {
    let measure = |demand| Measure {
        demand,
        allowed: 1.0,
    };
    Finding {
        limit,
        severity: limit.spec().severity,
        at_likely: measure(likely),
        at_worst: measure(worst),
        set_by,
        remedies: vec![Remedy {
            lever: Lever::StepDown,
            to: 3.0e-4,
            utilisation: 0.8,
        }],
    }
}

pub(super) fn step(number: u32, findings: Vec<Finding>) -> Step {
    let (mm, n) = (Length::mm, Force::n);
    Step {
        number,
        task: TaskKind::SlotsThrough,
        method: MethodId::Zigzag,
        cutter: 0,
        n: SpindleSpeed::rpm(18_000.0),
        vf: Speed::mm_per_min(400.0),
        fz: mm(0.0222),
        vc: Speed::m_per_min(169.6),
        ae: mm(3.0),
        ap: mm(0.5),
        levels: 8,
        z: (mm(6.0), mm(-0.3)),
        leave: (mm(0.0), mm(0.0)),
        entry: Entry::Side,
        opening_feed: None,
        corner_feed: None,
        time: Duration::s(600.0),
        path: mm(4200.0),
        loads: Loads {
            peak_lateral: n(40.0),
            mean_lateral: n(15.0),
            mean_axial: n(-5.0),
            torque: Torque::n_m(0.06),
            power: Power::w(60.0),
            chip: (mm(0.01), mm(0.02)),
            deflection: mm(0.02),
            stress: Stress::n_per_mm2(300.0),
        },
        web: None,
        rib: None,
        findings,
        considered: vec![
            Considered {
                method: MethodId::FullWidth,
                cutter: 0,
                verdict: Verdict::Slower(Duration::s(700.0)),
            },
            Considered {
                method: MethodId::DrilledEnds,
                cutter: 0,
                verdict: Verdict::Unfit(Rejection::NoDrill),
            },
        ],
        stability: None,
        listen: None,
        cautions: vec!["break_through".to_owned()],
    }
}

/// The chosen order and two that were set aside.
fn orders() -> [OrderReport; 3] {
    [
        (7500.0, 1, None),
        (8100.0, 1, Some(Decided::Time(Duration::s(600.0)))),
        (
            7000.0,
            3,
            Some(Decided::Warning {
                task: TaskKind::FloorSkim,
                limit: LimitId::WebSoftness,
                utilisation: Some(1.4),
            }),
        ),
    ]
    .map(|(time, warnings, decided)| OrderReport {
        order: OrderId::SlotsLast,
        first: Face::A,
        backing: "plug".to_owned(),
        boss_bolted: true,
        verdict: OrderVerdict::Works {
            time: Duration::s(time),
            warnings,
            worst: Some((LimitId::WebSlenderness, 1.3)),
            softest_web: None,
        },
        decided,
    })
}

fn strategy() -> Strategy {
    let first = step(
        1,
        vec![
            finding(
                LimitId::SlotWidth,
                0.5,
                0.9,
                Some(Unknown::MachineStiffness),
            ),
            finding(LimitId::Breakage, 0.3, 0.6, Some(Unknown::Kc)),
            finding(LimitId::Chatter, 2.0, 9.0, Some(Unknown::Damping)),
        ],
    );
    let second = step(
        2,
        vec![
            finding(LimitId::WebSlenderness, 1.3, 1.3, None),
            finding(
                LimitId::AxisThrust,
                0.6,
                0.85,
                Some(Unknown::MachineStiffness),
            ),
        ],
    );
    Strategy {
        setups: vec![Setup {
            face_up: Face::A,
            hold: "frame_screws".to_owned(),
            backing: "none".to_owned(),
            boss_bolted: false,
            stock: Length::mm(12.0),
            steps: vec![first, second],
        }],
        time: Duration::s(7500.0),
        reckoned: Duration::s(8400.0),
        cutter_changes: 1,
        orders: orders().into(),
        defaults: Vec::new(),
        cautions: vec!["no_gloves".to_owned()],
        gains: Vec::new(),
        web_error: None,
        turn_over: None,
    }
}

fn fill(answers: &mut thinwright_core::answers::Answers) {
    answers.set(
        FieldId::in_row(Field::CutterDiameter, 0),
        "3",
        Known::DataSheet,
    );
    answers.set(
        FieldId::in_row(Field::CutterFlutes, 0),
        "1",
        Known::DataSheet,
    );
    answers.set(Field::Name, "Trial", Known::Estimated);
    answers.set(Field::Material, "al_6082_t6", Known::Estimated);
}

#[test]
fn what_a_change_brings_is_said_with_its_size() {
    let gain = |what: What, saved_s: f64| Gain {
        what,
        time: Duration::s(7000.0),
        saved_s,
        cleared: Vec::new(),
        turned: None,
    };
    let measure = Gain {
        turned: Some(Turned {
            task: TaskKind::SlotsThrough,
            lever: Lever::StepDown,
            from: 0.3e-3,
            to: 0.8e-3,
        }),
        cleared: vec![(TaskKind::SlotsThrough, LimitId::WebLift); 2],
        ..gain(What::Measure(Unknown::MachineStiffness), 840.0)
    };
    let kept = gain(What::LetGo(FieldId::in_row(Field::PinCutter, 9)), 12.0);
    let all = [measure, kept, gain(What::BoltBoss, -300.0)];
    speak(UnitSystem::Metric, fill, |speaker| {
        let lines = |kind| {
            let lines = speaker.gains(&all, kind).into_iter();
            lines.map(|l| plain_blanks(&l)).collect::<Vec<_>>()
        };
        assert_eq!(
            lines(GainKind::Measure),
            [
                "Stiffness of the machine (push the spindle sideways with 50 N and read the dial): 14 min less; \
              cut the slots through: step-down 0.3 mm to 0.8 mm; no more warning of web lift"
            ]
        );
        assert_eq!(
            lines(GainKind::Change),
            ["Boss bolted down for the second face: 5 min more; milder warnings"]
        );
        assert_eq!(
            lines(GainKind::Kept),
            ["Slots: cutter: . Let go: the same time"]
        );
        assert!(lines(GainKind::Buy).is_empty());
    });
}

#[test]
fn what_binds_is_kept_and_warnings_stand_beside() {
    speak(UnitSystem::Metric, fill, |speaker| {
        let strategy = strategy();
        let steps = &strategy.setups[0].steps;
        let binding: Vec<_> = steps
            .iter()
            .map(|s| speaker.binding(s).map(|f| f.limit))
            .collect();
        assert_eq!(
            binding,
            [Some(LimitId::SlotWidth), Some(LimitId::AxisThrust)]
        );
        let warnings: Vec<Vec<LimitId>> = steps
            .iter()
            .map(|s| speaker.warnings(s).iter().map(|f| f.limit).collect())
            .collect();
        assert_eq!(warnings, [vec![], vec![LimitId::WebSlenderness]]);
    });
}

#[test]
fn orders_name_the_figure_that_decided() {
    speak(UnitSystem::Metric, fill, |speaker| {
        let orders = strategy().orders;
        let ends = [
            "10 min longer",
            "leaves web softness 1.40 on the step that is to skim the floor",
        ];
        for (order, end) in orders[1..].iter().zip(ends) {
            let text = plain_blanks(&speaker.set_aside(order));
            assert!(text.ends_with(end), "{text}");
        }
    });
}

#[test]
fn orders_that_differ_in_nothing_new_are_left_out() {
    let orders = strategy().orders;
    let (told, rest) = crate::telling(&orders);
    assert_eq!((told.len(), rest), (1, 2));
    let mut more = orders.clone();
    more[1].first = Face::B;
    more[2].backing = "none".to_owned();
    assert_eq!(crate::telling(&more).1, 0);
}

#[test]
fn a_caution_is_said_once_with_its_steps() {
    speak(UnitSystem::Metric, fill, |speaker| {
        let said = speaker.cautions(&strategy());
        assert_eq!(said.len(), 2);
        assert!(said[1].ends_with("(Steps 1 and 2)"), "{}", said[1]);
    });
    let numbers = crate::cautions::numbers;
    assert_eq!(numbers(&[1, 2, 3, 5, 7, 8]), "1 to 3, 5, 7 and 8");
    assert_eq!(numbers(&[4]), "4");
}

#[test]
fn the_whole_is_said_in_plain_text() {
    speak(UnitSystem::Metric, fill, |speaker| {
        let text = plain(speaker, &Outcome::Feasible(Box::new(strategy())));
        for line in [
            "Trial; aluminium 6082-T6",
            "1 setup, 2 steps, 1 cutter change, 2 h 05 min in all",
            "Setup 1: face A up; screws through a frame of the blank; stock 12 mm thick",
            "  Step 1. Cut the slots through: zigzag ramp (10 min, path 4.2 m)",
            "    spindle speed n: 18 000 rpm",
            "    step-down ap: 0.5 mm",
            "      would help: step-down 0.3 mm instead of 0.5 mm: 0.80",
            "    set aside: full width, level by level with 3 mm end mill, 1 flute: works, 12 min instead of 10 min",
            "    set aside: ends drilled first with 3 mm end mill, 1 flute: the rack has no drill that fits",
        ] {
            assert!(
                text.lines().any(|l| l == line),
                "not a line: {line}\n{text}"
            );
        }
        assert!(
            text.contains("not kept: web span 1.30, warning: "),
            "{text}"
        );
        assert_eq!(text.find('\u{A0}'), None);
    });
}

#[test]
fn a_no_names_the_smallest_change() {
    let refusal = Refusal {
        task: TaskKind::SlotsThrough,
        tried: vec![Considered {
            method: MethodId::FullWidth,
            cutter: 0,
            verdict: Verdict::Breaks {
                limit: LimitId::ShankClearance,
                measure: Measure {
                    demand: 3.5e-3,
                    allowed: 3.0e-3,
                },
            },
        }],
        conflict: Vec::new(),
        gains: Vec::new(),
        changes: vec![Change {
            field: FieldId::in_row(Field::CutterReach, 0),
            from: 0.011,
            to: 0.014,
        }],
        orders: Vec::new(),
    };
    assert_eq!(LimitId::ShankClearance.spec().severity, Severity::Stop);
    speak(UnitSystem::Metric, fill, |speaker| {
        let text = plain(speaker, &Outcome::Refused(Box::new(refusal)));
        let no = "There is no way to cut the slots through. The smallest change that would help: Cutter 1: reach below \
                  the shank 14 mm instead of 11 mm.";
        assert!(text.lines().any(|l| l == no), "{text}");
        assert!(
            text.contains("breaks shank clearance (1.17): half the shank and its air take 3.5 mm"),
            "{text}"
        );
    });
}
