//! Orders for charts of stability, and the charts: to the last bit there and back.

use super::outcomes::{Odd, stability};
use crate::{ChartOf, FromWorker, Order, Report, ToWorker};
use thinwright_core::stability::Lobes;
use thinwright_core::vibration::TipKnown;
use thinwright_quantity::SpindleSpeed;

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
