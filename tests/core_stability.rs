//! Push and tap tests as answers, and what they make of a strategy: unmeasured it is advice, measured it binds.
#![cfg(test)]

mod core_cases;

use core::f64::consts::{PI, TAU};
use core_cases::answers;
use thinwright_catalog::Catalog;
use thinwright_chatter::floquet::{Moving, System};
use thinwright_chatter::{Cut, Edge, Mode};
use thinwright_core::estimate::{Known, Unknown};
use thinwright_core::heard::chatter;
use thinwright_core::limits::LimitId;
use thinwright_core::problem::ProblemKind;
use thinwright_core::stability::{StabilityReport, lobes};
use thinwright_core::strategy::{Lever, Outcome, Step, Strategy};
use thinwright_core::vibration::{TipKnown, Whose};
use thinwright_core::{Job, decide, read};
use thinwright_quantity::Frequency;

const PUSH: &[(&str, &str)] = &[
    ("push.force", "50 N"),
    ("push.arm", "25"),
    ("push.rod", "8"),
    ("push.x-up", "0.035"),
    ("push.x-down", "0.03"),
    ("push.y-up", "0.03"),
    ("push.y-down", "0.026"),
];
const TAP: &[(&str, &str)] = &[("cutter.1.tone", "1850"), ("cutter.2.tone", "2400")];

fn job(sample: &str, changes: &[&[(&str, &str)]]) -> Job {
    read(&answers(sample, &changes.concat()), &Catalog::builtin()).unwrap()
}

fn strategy(sample: &str, changes: &[&[(&str, &str)]]) -> Strategy {
    match decide(&job(sample, changes)) {
        Outcome::Feasible(strategy) => *strategy,
        Outcome::Refused(refusal) => panic!("{:?}", refusal.tried),
    }
}

fn steps(strategy: &Strategy) -> impl Iterator<Item = &Step> {
    strategy.setups.iter().flat_map(|setup| &setup.steps)
}

#[test]
fn a_push_gives_stiffness_without_the_rod_and_lost_motion() {
    let job = job("mirror-back-plate", &[PUSH]);
    let push = job.machine.push.unwrap();
    // By hand, as in Gere: the rod gives 64 a3 / (3 pi E d4) = 0.1295 um/N; X: 0.6 - 0.1295 = 0.4705 um/N.
    let rod = 64.0 * 25e-3_f64.powi(3) / (3.0 * PI * 200e9 * 8e-3_f64.powi(4));
    let (x, y) = (push.axes[0].unwrap(), push.axes[1].unwrap());
    assert!((x.stiffness.likely * (30e-6 / 50.0 - rod) - 1.0).abs() < 1e-9);
    assert!((y.stiffness.likely * (26e-6 / 50.0 - rod) - 1.0).abs() < 1e-9);
    assert!((x.lost - 5e-6).abs() < 1e-12 && (y.lost - 4e-6).abs() < 1e-12);
    assert!(push.axes[2].is_none());
    // The scale errs by 5 %, the dial by 5 um: 5.2 um of the 23.5 um that the machine gave.
    let share = libm::hypot(0.05 * 30e-6, 5e-6) / (30e-6 - 50.0 * rod);
    assert!((x.stiffness.likely / x.stiffness.low - 1.0 - share).abs() < 1e-9);
    // The softer direction counts, measured, whatever stood there; what was lost is the backlash.
    let used = job.estimates[Unknown::MachineStiffness as usize];
    assert_eq!(used, x.stiffness);
    assert_eq!(used.known, Known::Measured);
    assert!((job.machine.backlash - 5e-6).abs() < 1e-12);
}

#[test]
fn what_is_missing_or_impossible_in_a_push_is_told_at_its_place() {
    let problems = |changes: &[(&str, &str)]| {
        let all = [PUSH, changes].concat();
        read(&answers("mirror-back-plate", &all), &Catalog::builtin()).unwrap_err()
    };
    let one = |changes: &[(&str, &str)]| {
        let found = problems(changes);
        assert_eq!(found.len(), 1, "{found:?}");
        (found[0].field.key(), found[0].kind.clone())
    };
    assert_eq!(
        one(&[("push.force", "")]),
        ("push.force".to_owned(), ProblemKind::Missing)
    );
    assert_eq!(
        one(&[("push.x-up", "")]),
        ("push.x-up".to_owned(), ProblemKind::Missing)
    );
    // A thin rod gives more than the dial read, along both axes.
    let thin = problems(&[("push.rod", "2")]);
    let places: Vec<String> = thin.iter().map(|p| p.field.key()).collect();
    assert_eq!(places, ["push.x-down", "push.y-down"]);
    assert!(
        thin.iter()
            .all(|p| matches!(p.kind, ProblemKind::TooSmall { .. }))
    );
    let nothing: Vec<(&str, &str)> = PUSH[3..].iter().map(|(key, _)| (*key, "")).collect();
    assert_eq!(
        one(&nothing),
        ("push.x-down".to_owned(), ProblemKind::Missing)
    );
    let far = one(&[("cutter.1.tone", "900000")]);
    assert_eq!(far.0, "cutter.1.tone");
}

#[test]
fn nothing_measured_is_advice_and_no_lobes() {
    let strategy = strategy("mirror-back-plate", &[]);
    let mut deeper = 0;
    for step in steps(&strategy) {
        let Some(report) = &step.stability else {
            continue;
        };
        assert_eq!(report.known, TipKnown::Nothing);
        assert!(report.limit.is_none() && report.here.is_none() && report.speeds.is_empty());
        assert!(lobes(report).is_none());
        let quiet = step
            .findings
            .iter()
            .find(|f| f.limit == LimitId::Chatter)
            .unwrap();
        assert!((quiet.at_worst.allowed / report.quiet.0.si() - 1.0).abs() < 1e-9);
        assert!(step.findings.iter().all(|f| f.limit != LimitId::Stability));
        deeper += usize::from(quiet.utilisation() > 1.0);
    }
    assert!(deeper > 3, "shops cut deeper than what is surely quiet");
}

/// The least depth that sings over speeds that stand for the error of the tone, by the kernel itself.
fn least(report: &StabilityReport, spread: f64) -> f64 {
    let omega = |f: Frequency| TAU * f.si();
    let tip = |m: &&thinwright_core::stability::ModeReport| {
        matches!(m.whose, Whose::Cutter | Whose::Machine)
    };
    let moving: Vec<Moving> = report
        .modes
        .iter()
        .filter(tip)
        .map(|m| {
            let mode = Mode {
                k: m.stiffness.si(),
                zeta: m.damping,
                omega_n: omega(m.frequency.unwrap()),
            };
            match m.axis {
                thinwright_core::vibration::Axis::X => Moving::x(mode),
                _ => Moving::y(mode),
            }
        })
        .collect();
    let cut = &report.cut;
    let cut = Cut {
        z: cut.z,
        phi_st: cut.arc.0.si(),
        phi_ex: cut.arc.1.si(),
        kt: cut.kt.si(),
        kr_ratio: cut.kr_ratio,
    };
    let system = System::new(&moving, &cut, &Edge::sharp()).unwrap();
    let most = 4.0 * report.cut.ap.si();
    let speeds =
        [-1.0, -0.5, 0.0, 0.5, 1.0].map(|share| report.cut.n.si() * (1.0 + spread * share));
    let depths = speeds.map(|n| system.limit(n, most).map_or(most, |c| c.depth));
    depths.into_iter().fold(f64::INFINITY, f64::min)
}

#[test]
fn measured_it_chooses_and_what_is_held_is_quiet() {
    for sample in ["mirror-back-plate", "grille-frame"] {
        let plain = strategy(sample, &[]);
        let measured = strategy(sample, &[TAP, PUSH]);
        let (mut held, mut beyond) = (0, 0);
        for step in steps(&measured) {
            let finding = step.findings.iter().find(|f| f.limit == LimitId::Stability);
            let Some(finding) = finding else {
                continue;
            };
            let report = step.stability.as_ref().unwrap();
            assert_eq!(report.known, TipKnown::Measured);
            assert!(step.findings.iter().all(|f| f.limit != LimitId::Chatter));
            if finding.utilisation() > 1.0 {
                beyond += 1;
                continue;
            }
            held += 1;
            // Not deeper than four fifths of what sings anywhere within the error of the tone, where speeds can be picked.
            let tones = report.modes.iter().filter_map(|m| m.frequency);
            let slowest = tones.map(Frequency::si).fold(f64::INFINITY, f64::min);
            if slowest < 8.0 * report.cut.n.si() * f64::from(report.cut.z) {
                let bound = 0.8 * least(report, 0.02) * 1.01;
                let ap = step.ap.si();
                assert!(ap <= bound, "{ap} against {bound}, {report:?}");
            }
        }
        assert!(held >= 3, "{sample}: {held} held, {beyond} beyond");
        assert_ne!(plain.time, measured.time, "it chooses");
    }
}

#[test]
fn a_tone_alone_shows_lobes_but_refuses_nothing() {
    let strategy = strategy("mirror-back-plate", &[TAP]);
    let step = steps(&strategy)
        .find(|s| s.stability.as_ref().is_some_and(|r| !r.speeds.is_empty()))
        .unwrap();
    let report = step.stability.as_ref().unwrap();
    assert_eq!(report.known, TipKnown::Frequency);
    assert!(step.findings.iter().all(|f| f.limit != LimitId::Stability));
    // The error of the tone costs depth, and a good speed is better than the one taken.
    let here = report.here.unwrap();
    for speed in &report.speeds {
        assert!(speed.off <= speed.depth && speed.depth > here, "{speed:?}");
    }
    let chart = lobes(report).unwrap();
    assert_eq!(
        (chart.speeds.len(), chart.limit.len(), chart.flip.len()),
        (200, 200, 200)
    );
    let some = chart.limit.iter().flatten().count();
    assert!(some > 20, "{some}");
    // Nothing in the chart lies below what is quiet at any speed.
    let quiet = report.quiet.0.si();
    assert!(
        chart
            .limit
            .iter()
            .flatten()
            .all(|depth| depth.si() > 0.95 * quiet)
    );
}

#[test]
fn fewer_flutes_and_a_sharp_corner_are_remedies_with_their_effect() {
    let changes: &[(&str, &str)] = &[
        ("cutter.1.flutes", "3"),
        ("cutter.1.corner-radius", "1"),
        ("holding.backing", "none"),
    ];
    let strategy = strategy("mirror-back-plate", &[changes]);
    let remedies = |limit: LimitId, lever: Lever| {
        let findings = steps(&strategy)
            .flat_map(|s| &s.findings)
            .filter(move |f| f.limit == limit);
        let all = findings.flat_map(move |f| f.remedies.iter().map(move |r| (f.utilisation(), r)));
        all.filter(move |(_, r)| r.lever == lever)
            .collect::<Vec<_>>()
    };
    let flutes = remedies(LimitId::Chatter, Lever::Flutes);
    assert!(!flutes.is_empty());
    assert!(
        flutes
            .iter()
            .all(|(now, r)| r.utilisation < *now && r.to < 3.0)
    );
    let songs = steps(&strategy)
        .flat_map(|s| &s.findings)
        .filter(|f| f.limit == LimitId::WebSong)
        .count();
    if songs > 0 {
        let sharp = remedies(LimitId::WebSong, Lever::CornerRadius);
        assert!(
            sharp
                .iter()
                .all(|(now, r)| r.utilisation < *now && r.to <= 0.0)
        );
    }
}

#[test]
fn a_tone_heard_is_told_whose_it_is_and_what_to_try() {
    let job = job("mirror-back-plate", &[TAP]);
    let Outcome::Feasible(strategy) = decide(&job) else {
        panic!("it can be made");
    };
    let step = steps(&strategy)
        .find(|s| s.cutter == 0 && s.stability.is_some())
        .unwrap();
    let said = chatter(&job, step, Frequency::from_si(1900.0));
    let (whose, own) = said.whose.unwrap();
    assert!(matches!(whose, Whose::Cutter | Whose::Machine));
    assert!((own.si() - 1850.0).abs() < 1e-9);
    // Whole vibrations between two teeth, on the typed grid.
    if let Some(n) = said.speed {
        let z = f64::from(job.rack[0].z);
        let cycles = 1900.0 / (n.si() * z);
        assert!((cycles - cycles.round()).abs() < 0.02 * cycles, "{cycles}");
    }
    assert!(said.depth < step.ap && said.depth.si() > 0.0);
    assert!(
        chatter(&job, step, Frequency::from_si(9000.0))
            .whose
            .is_none()
    );
}
