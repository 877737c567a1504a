//! Orders for charts of stability, and the charts: to the last bit there and back.

use super::outcomes::Odd;
use crate::{ChartOf, FromWorker, Order, Report, ToWorker};
use thinwright_core::stability::{
    CutReport, LimitReport, Lobes, ModeReport, SpeedReport, StabilityReport,
};
use thinwright_core::vibration::{Axis, TipKnown, Whose};
use thinwright_quantity::{Angle, Frequency, SpindleSpeed, Stiffness, Stress};

pub(super) fn stability(odd: &mut Odd) -> StabilityReport {
    StabilityReport {
        known: TipKnown::Frequency,
        modes: vec![
            ModeReport {
                whose: Whose::Machine,
                axis: Axis::Y,
                stiffness: Stiffness::from_si(odd.next()),
                damping: odd.next(),
                frequency: None,
            },
            ModeReport {
                whose: Whose::Web,
                axis: Axis::Z,
                stiffness: Stiffness::from_si(odd.next()),
                damping: odd.next(),
                frequency: Some(Frequency::from_si(odd.next())),
            },
        ],
        cut: CutReport {
            n: SpindleSpeed::from_si(odd.next()),
            ap: odd.m(),
            z: 3,
            arc: (Angle::from_si(odd.next()), Angle::from_si(odd.next())),
            kt: Stress::from_si(odd.next()),
            kr_ratio: odd.next(),
            corner: odd.m(),
        },
        share: odd.next(),
        quiet: (odd.m(), odd.m()),
        limit: Some(LimitReport {
            depth: odd.m(),
            flip: true,
            whose: Whose::Rib,
            frequency: Frequency::from_si(odd.next()),
        }),
        here: Some(odd.m()),
        speeds: vec![SpeedReport {
            n: SpindleSpeed::from_si(odd.next()),
            depth: odd.m(),
            off: odd.m(),
            drums: true,
        }],
        tone_error: odd.next(),
        damped_below: Some(odd.speed()),
        top: odd.m(),
        range: (
            SpindleSpeed::from_si(odd.next()),
            SpindleSpeed::from_si(odd.next()),
        ),
    }
}

#[test]
fn orders_for_a_chart_come_back() {
    let mut odd = Odd(1.0);
    for known in [TipKnown::Nothing, TipKnown::Frequency, TipKnown::Measured] {
        let mut report = stability(&mut odd);
        report.known = known;
        if known == TipKnown::Nothing {
            (report.limit, report.here, report.damped_below) = (None, None, None);
            report.speeds.clear();
        }
        let message = ToWorker {
            generation: 7,
            order: Order::Chart(ChartOf { step: 12, report }),
        };
        assert_eq!(ToWorker::decode(&message.encode()), Ok(message));
    }
}

#[test]
fn charts_come_back() {
    let mut odd = Odd(1.0);
    let speeds = (0..40).map(|_| SpindleSpeed::from_si(odd.next())).collect();
    let limit = (0..40).map(|i| (i % 3 > 0).then(|| odd.m())).collect();
    let full = Lobes {
        speeds,
        limit,
        flip: (0..40).map(|i| i % 7 == 0).collect(),
    };
    for lobes in [Some(full), None] {
        let message = FromWorker {
            generation: 7,
            report: Report::Chart { step: 12, lobes },
        };
        assert_eq!(FromWorker::decode(&message.encode()), Ok(message));
    }
}

#[test]
fn a_chart_without_its_step_names_the_place() {
    let message = FromWorker {
        generation: 7,
        report: Report::Chart {
            step: 12,
            lobes: None,
        },
    };
    let text = message.encode();
    let broken = text.replacen("\"step\"", "\"stop\"", 1);
    assert_ne!(text, broken);
    assert!(FromWorker::decode(&broken).is_err());
}
