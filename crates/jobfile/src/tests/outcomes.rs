//! Outcomes over the wire: to the last bit.

use super::charts::stability;
use super::gains::gains;
use crate::{Covered, FromWorker, JobFileError, Report, decode, encode};
use thinwright_core::WebError;
use thinwright_core::estimate::UNKNOWNS;
use thinwright_core::field::{Field, FieldId};
use thinwright_core::limits::LimitId;
use thinwright_core::methods::{MethodId, Rejection};
use thinwright_core::order::OrderId;
use thinwright_core::strategy::{
    Change, Considered, Decided, Defaulted, Entry, Finding, Lever, Listen, Loads, Measure,
    OrderReport, OrderVerdict, Outcome, Refusal, Remedy, RibReport, Setup, Step, Strategy,
    TurnOver, Verdict, WebReport,
};
use thinwright_core::task::{Face, TaskKind};
use thinwright_quantity::{
    Angle, Duration, Force, Frequency, Length, Power, Speed, SpindleSpeed, Stiffness, Stress,
    Torque,
};

/// Numbers that lose a bit wherever something is rounded.
pub(super) struct Odd(pub(super) f64);

impl Odd {
    pub(super) fn next(&mut self) -> f64 {
        self.0 = (self.0 * 1.618_033_988_749_895 + 0.123_456_789).rem_euclid(7.0);
        self.0 * 1.0e-5
    }

    pub(super) fn m(&mut self) -> Length {
        Length::from_si(self.next())
    }

    pub(super) fn speed(&mut self) -> Speed {
        Speed::from_si(self.next())
    }

    pub(super) fn s(&mut self) -> Duration {
        Duration::from_si(self.next())
    }

    fn n(&mut self) -> Force {
        Force::from_si(-self.next())
    }

    fn measure(&mut self) -> Measure {
        Measure {
            demand: self.next(),
            allowed: self.next(),
        }
    }
}

fn findings(odd: &mut Odd) -> Vec<Finding> {
    let limits = LimitId::all().enumerate();
    limits
        .map(|(i, limit)| Finding {
            limit,
            severity: limit.spec().severity,
            at_likely: odd.measure(),
            at_worst: Measure {
                demand: if i == 0 { f64::INFINITY } else { odd.next() },
                allowed: -0.0,
            },
            set_by: (i > 0).then(|| UNKNOWNS[i % UNKNOWNS.len()]),
            remedies: vec![Remedy {
                lever: Lever::StickOut,
                to: odd.next(),
                utilisation: odd.next(),
            }],
        })
        .collect()
}

fn considered(odd: &mut Odd) -> Vec<Considered> {
    let m = odd.measure();
    let unfit = [
        Rejection::NotForThis,
        Rejection::NotADrill,
        Rejection::NoDrill,
        Rejection::TooWide(m),
        Rejection::TooNarrow(m),
        Rejection::CornerTooTight(m),
        Rejection::NotCentreCutting,
        Rejection::NoRoomToEnter(m),
        Rejection::Pinned,
    ];
    let others = [
        Verdict::Slower(odd.s()),
        Verdict::Warned {
            limit: LimitId::Heat,
            utilisation: odd.next(),
            time: odd.s(),
        },
        Verdict::Breaks {
            limit: LimitId::Reach,
            measure: m,
        },
    ];
    let verdicts = unfit.map(Verdict::Unfit).into_iter().chain(others);
    let methods: Vec<MethodId> = MethodId::all().collect();
    let each = verdicts.enumerate();
    each.map(|(i, verdict)| Considered {
        method: methods[i],
        cutter: u8::MAX,
        verdict,
    })
    .collect()
}

fn step(odd: &mut Odd, task: TaskKind, entry: Entry) -> Step {
    Step {
        number: u32::MAX,
        task,
        method: MethodId::Peeling,
        cutter: 3,
        n: SpindleSpeed::from_si(odd.next()),
        vf: odd.speed(),
        fz: odd.m(),
        vc: odd.speed(),
        ae: odd.m(),
        ap: odd.m(),
        levels: 7,
        z: (odd.m(), odd.m()),
        leave: (odd.m(), odd.m()),
        entry,
        opening_feed: Some(odd.speed()),
        corner_feed: Some(odd.speed()),
        time: odd.s(),
        path: odd.m(),
        loads: Loads {
            peak_lateral: odd.n(),
            mean_lateral: odd.n(),
            mean_axial: odd.n(),
            torque: Torque::from_si(odd.next()),
            power: Power::from_si(odd.next()),
            chip: (odd.m(), odd.m()),
            deflection: odd.m(),
            stress: Stress::from_si(odd.next()),
        },
        web: Some(WebReport {
            thickness: odd.m(),
            stiffness: Stiffness::from_si(odd.next()),
            unbacked: Stiffness::from_si(odd.next()),
            chain: Stiffness::from_si(odd.next()),
            frequency: Frequency::from_si(odd.next()),
            tooth_passing: Frequency::from_si(odd.next()),
            softest: odd.m(),
            other_way: Some(Stiffness::from_si(odd.next())),
            error: odd.next(),
        }),
        rib: Some(RibReport {
            open: Stiffness::from_si(odd.next()),
            solid: Stiffness::from_si(odd.next()),
        }),
        findings: findings(odd),
        considered: considered(odd),
        stability: Some(stability(odd)),
        listen: Some(Listen {
            quiet: odd.m(),
            start: odd.m(),
            increment: odd.m(),
            planned: odd.m(),
        }),
        cautions: vec!["break_through".to_owned()],
    }
}

fn orders(odd: &mut Odd) -> Vec<OrderReport> {
    let ids = [
        OrderId::OneFace,
        OrderId::SlotsIntoStock,
        OrderId::SlotsBeforeSkim,
        OrderId::SlotsLast,
        OrderId::NoSlots,
    ];
    ids.into_iter()
        .map(|order| OrderReport {
            order,
            first: if order == OrderId::OneFace {
                Face::A
            } else {
                Face::B
            },
            backing: "plug".to_owned(),
            boss_bolted: order == OrderId::SlotsLast,
            decided: match order {
                OrderId::OneFace => None,
                OrderId::SlotsIntoStock => Some(Decided::Nothing),
                OrderId::SlotsBeforeSkim => Some(Decided::Time(odd.s())),
                _ => Some(Decided::Warning {
                    task: TaskKind::FloorSkim,
                    limit: LimitId::WebSoftness,
                    utilisation: (order == OrderId::NoSlots).then(|| odd.next()),
                }),
            },
            verdict: if order == OrderId::NoSlots {
                OrderVerdict::Fails {
                    task: TaskKind::Bore,
                    limit: None,
                }
            } else {
                OrderVerdict::Works {
                    time: odd.s(),
                    warnings: 2,
                    worst: Some((LimitId::WebTone, odd.next())),
                    softest_web: Some(Stiffness::from_si(odd.next())),
                }
            },
        })
        .collect()
}

fn strategy() -> Outcome {
    let mut odd = Odd(0.5);
    let (hole, angle) = (odd.m(), Angle::from_si(odd.next()));
    let feed = odd.speed();
    let entries = [
        (TaskKind::Facing, Entry::Side),
        (
            TaskKind::Bore,
            Entry::Drilled {
                hole,
                drill: 2,
                n: SpindleSpeed::from_si(50.0),
                feed,
                peck: hole,
            },
        ),
        (TaskKind::Clearing, Entry::Plunge { feed, peck: hole }),
        (TaskKind::FloorSkim, Entry::Zigzag { angle, feed }),
        (
            TaskKind::WallSkim,
            Entry::Helix {
                hole,
                centre_circle: odd.m(),
                pitch: odd.m(),
                angle,
                centre_feed: feed,
            },
        ),
        (TaskKind::SlotsThrough, Entry::Side),
        (TaskKind::SlotsBlind, Entry::Side),
        (TaskKind::OutlineGroove, Entry::Side),
        (TaskKind::OutlineFinish, Entry::Side),
    ];
    let steps = entries.map(|(task, entry)| step(&mut odd, task, entry));
    Outcome::Feasible(Box::new(Strategy {
        setups: vec![Setup {
            face_up: Face::B,
            hold: "vise".to_owned(),
            backing: "none".to_owned(),
            boss_bolted: true,
            stock: odd.m(),
            steps: steps.into(),
        }],
        time: odd.s(),
        reckoned: odd.s(),
        cutter_changes: 2,
        orders: orders(&mut odd),
        defaults: vec![Defaulted {
            field: Field::Boss.into(),
            value: "0\u{A0}mm".to_owned(),
        }],
        cautions: Vec::new(),
        gains: gains(&mut odd),
        turn_over: Some(TurnOver {
            parts: vec![("seat_error_um", odd.m())],
            total: odd.m(),
            allowed: None,
        }),
        web_error: Some(WebError::TooNarrow { width: odd.m() }),
    }))
}

fn refusal() -> Outcome {
    let mut odd = Odd(0.7);
    Outcome::Refused(Box::new(Refusal {
        task: TaskKind::SlotsBlind,
        tried: considered(&mut odd),
        conflict: vec![LimitId::Breakage, LimitId::FeedReliable],
        gains: gains(&mut odd),
        changes: vec![Change {
            field: FieldId::in_row(Field::CutterReach, 0),
            from: odd.next(),
            to: odd.next(),
        }],
        orders: orders(&mut odd),
    }))
}

#[test]
fn outcomes_come_back_to_the_last_bit() {
    for outcome in [strategy(), refusal()] {
        let text = encode(&outcome);
        let back = decode(&text).unwrap();
        // `PartialEq` takes 0 and -0 for the same; the text does not.
        assert_eq!(back, outcome);
        assert_eq!(encode(&back), text);
    }
}

#[test]
fn every_lever_and_unknown_comes_back() {
    let levers = [
        Lever::StickOut,
        Lever::StepDown,
        Lever::Stepover,
        Lever::FeedPerTooth,
        Lever::SpindleSpeed,
        Lever::Flutes,
        Lever::WebThickness,
        Lever::Grip,
        Lever::Backing,
        Lever::BoltedBoss,
        Lever::Clearing,
    ];
    use crate::wire::Wire;
    for lever in levers {
        assert_eq!(Lever::take("", &lever.put()), Ok(lever));
    }
    for unknown in UNKNOWNS {
        assert_eq!(
            thinwright_core::estimate::Unknown::take("", &unknown.put()),
            Ok(unknown)
        );
    }
}

#[test]
fn reports_come_back() {
    let covered = Covered {
        done: 3,
        of: 9,
        candidates: 1.25e9,
        looked_at: 12_345.0,
    };
    let reports = [
        Report::Working {
            covered,
            best: None,
            checked: false,
        },
        Report::Working {
            covered,
            best: Some(refusal()),
            checked: true,
        },
        Report::Done {
            covered,
            outcome: strategy(),
        },
        Report::Stopped {
            covered,
            best: Some(strategy()),
        },
        Report::Problems(vec![
            Field::Web.into(),
            FieldId::in_row(Field::CutterDiameter, 4),
        ]),
    ];
    for report in reports {
        let message = FromWorker {
            generation: 41,
            report,
        };
        assert_eq!(FromWorker::decode(&message.encode()), Ok(message));
    }
}

#[test]
fn a_wrong_outcome_names_its_place() {
    let text = encode(&strategy()).replacen("\"seat_error_um\"", "\"seat\"", 1);
    let error = decode(&text).unwrap_err();
    assert!(
        matches!(&error, JobFileError::Not { place, .. } if place == "outcome.strategy.turn_over.parts.1.number"),
        "{error}"
    );
    let text = encode(&strategy()).replacen("\"stock_m\":", "\"stock_mm\":", 1);
    let place = "outcome.strategy.setups.1.stock_m".to_owned();
    assert_eq!(decode(&text), Err(JobFileError::Missing { place }));
}
