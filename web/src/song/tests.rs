//! The chart without a browser: nothing leaves the paper, hatching stays over the limit, each sign is where it belongs.

use super::axes::{Ground, HEIGHT, WIDTH, round_ticks};
use super::chart::{Shows, chart, top};
use super::hatch;
use super::sign;
use super::table::picked;
use crate::drawing::{Letters, Mark, Stroke, text_width};
use thinwright_core::stability::{
    CutReport, Lobes, ModeReport, SpeedReport, StabilityReport, lobes,
};
use thinwright_core::vibration::{Axis, TipKnown, Whose};
use thinwright_quantity::{Angle, Frequency, Length, SpindleSpeed, Stiffness, Stress, UnitSystem};
use thinwright_words::stability::Sign;

/// Half the diameter down, three teeth, one tone sideways.
pub(super) fn report(known: TipKnown, ap_mm: f64) -> StabilityReport {
    let mode = |axis| ModeReport {
        whose: Whose::Cutter,
        axis,
        stiffness: Stiffness::n_per_um(2.0),
        damping: 0.02,
        frequency: (known > TipKnown::Nothing).then(|| Frequency::from_si(1200.0)),
    };
    let speed = |rpm: f64, drums| SpeedReport {
        n: SpindleSpeed::rpm(rpm),
        depth: Length::mm(0.6),
        off: Length::mm(0.4),
        drums,
    };
    StabilityReport {
        known,
        modes: vec![mode(Axis::X), mode(Axis::Y)],
        cut: CutReport {
            n: SpindleSpeed::rpm(15_000.0),
            ap: Length::mm(ap_mm),
            z: 3,
            arc: (Angle::from_si(1.5), Angle::from_si(3.0)),
            kt: Stress::from_si(8.0e8),
            kr_ratio: 0.3,
            corner: Length::mm(0.0),
        },
        share: 0.8,
        quiet: (Length::mm(0.05), Length::mm(0.2)),
        limit: None,
        here: (known > TipKnown::Nothing).then(|| Length::mm(0.4)),
        speeds: match known {
            TipKnown::Nothing => Vec::new(),
            _ => vec![speed(24_000.0, false), speed(12_000.0, true)],
        },
        tone_error: 0.03,
        damped_below: None,
        top: Length::mm(2.5 * ap_mm),
        range: (SpindleSpeed::rpm(6000.0), SpindleSpeed::rpm(24_000.0)),
    }
}

fn lines(marks: &[Mark], stroke: Stroke) -> Vec<Vec<(f64, f64)>> {
    let paths = marks.iter().filter_map(|m| match m {
        Mark::Line(s, d) if *s == stroke => Some(d.as_str()),
        _ => None,
    });
    paths.flat_map(pieces).collect()
}

/// The places of a path, piece by piece; of an arc its end.
fn pieces(d: &str) -> Vec<Vec<(f64, f64)>> {
    let mut out: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut rest = d;
    while let Some(order) = rest.chars().next() {
        rest = &rest[1..];
        let end = rest.find(['M', 'L', 'A', 'Z']).unwrap_or(rest.len());
        let numbers: Vec<f64> = rest[..end]
            .split_whitespace()
            .map(|n| n.parse().unwrap())
            .collect();
        rest = &rest[end..];
        if order == 'M' {
            out.push(Vec::new());
        }
        if let [.., x, y] = numbers.as_slice() {
            out.last_mut().unwrap().push((*x, *y));
        }
    }
    out
}

fn texts(marks: &[Mark]) -> Vec<&Letters> {
    let texts = marks.iter().filter_map(|m| match m {
        Mark::Text(letters) => Some(letters),
        _ => None,
    });
    texts.collect()
}

/// Everything is on the paper, no text over another.
fn sound(marks: &[Mark]) {
    for m in marks {
        if let Mark::Line(_, d) = m {
            for (x, y) in pieces(d).concat() {
                assert!(
                    (0.0..=WIDTH).contains(&x) && (0.0..=HEIGHT).contains(&y),
                    "{x} {y} of {d}"
                );
            }
        }
    }
    let boxes = texts(marks).into_iter().map(|t| {
        let width = text_width(&t.text, t.height);
        let left = match t.anchor {
            "start" => t.at.0,
            "end" => t.at.0 - width,
            _ => t.at.0 - 0.5 * width,
        };
        (left, left + width, t.at.1 - t.height, t.at.1, &t.text)
    });
    let boxes: Vec<_> = boxes.collect();
    for (k, a) in boxes.iter().enumerate() {
        assert!(
            a.0 > -0.5 && a.1 < WIDTH + 0.5 && a.2 > -0.5 && a.3 < HEIGHT,
            "{a:?}"
        );
        for b in &boxes[..k] {
            let apart = a.1 <= b.0 || b.1 <= a.0 || a.3 <= b.2 || b.3 <= a.2;
            assert!(apart, "{} over {}", a.4, b.4);
        }
    }
}

#[test]
fn nothing_leaves_the_paper_in_either_unit() {
    for units in [UnitSystem::Metric, UnitSystem::Inch] {
        for ap in [0.05, 0.3, 2.0, 12.0] {
            let known = report(TipKnown::Measured, ap);
            let found = lobes(&known).unwrap();
            sound(&chart(units, &known, &Shows::Lobes(&found)));
            sound(&chart(units, &known, &Shows::Words("working out")));
            let bare = report(TipKnown::Nothing, ap);
            sound(&chart(units, &bare, &Shows::AnySpeed));
        }
    }
}

#[test]
fn without_a_tone_there_are_two_level_lines_and_no_lobes() {
    let bare = report(TipKnown::Nothing, 0.3);
    assert!(lobes(&bare).is_none());
    let marks = chart(UnitSystem::Metric, &bare, &Shows::AnySpeed);
    assert!(lines(&marks, Stroke::Hatch).is_empty());
    for stroke in [Stroke::Index, Stroke::Hidden] {
        let found = lines(&marks, stroke);
        assert_eq!(found.len(), 1);
        assert!((found[0][0].1 - found[0][1].1).abs() < 1e-9, "{found:?}");
    }
    // What lies far over the step is left out rather than squeezing it.
    let far = StabilityReport {
        quiet: (Length::mm(0.05), Length::mm(9.0)),
        ..bare
    };
    let marks = chart(UnitSystem::Metric, &far, &Shows::AnySpeed);
    assert!(lines(&marks, Stroke::Hidden).is_empty());
    assert_eq!(
        sign::of(&far, None),
        [Sign::Point, Sign::BadEnd, Sign::Likely]
    );
}

#[test]
fn the_limit_is_drawn_where_it_is() {
    let known = report(TipKnown::Frequency, 0.3);
    let found = lobes(&known).unwrap();
    let marks = chart(UnitSystem::Metric, &known, &Shows::Lobes(&found));
    let ground = Ground::new(
        UnitSystem::Metric,
        known.range,
        top(&known, &Shows::Lobes(&found)),
    );
    let drawn = lines(&marks, Stroke::Index).concat();
    let wanted = found.speeds.iter().zip(&found.limit);
    let mut told = 0;
    for (n, limit) in wanted {
        let Some(limit) = limit else { continue };
        let at = (ground.x(n.si()), ground.y(limit.si()));
        let near = |p: &&(f64, f64)| (p.0 - at.0).abs() < 0.02 && (p.1 - at.1).abs() < 0.02;
        assert!(drawn.iter().any(|p| near(&p)), "{at:?}");
        told += 1;
    }
    assert!(told > 50, "{told}");
    // The mark of the step lies at its own speed and depth.
    let ring = lines(&marks, Stroke::Cutter);
    let at = (ground.x(250.0), ground.y(0.3e-3));
    let holds = ring.iter().any(|r| {
        let x = r.iter().map(|p| p.0);
        let (a, b) = x.fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)));
        (0.5 * (a + b) - at.0).abs() < 0.02 && (r[0].1 - at.1).abs() < 0.02
    });
    assert!(holds, "{ring:?} {at:?}");
}

#[test]
fn a_step_far_above_the_limit_does_not_flatten_it() {
    let loud = report(TipKnown::Frequency, 60.0);
    let found = lobes(&loud).unwrap();
    let marks = chart(UnitSystem::Metric, &loud, &Shows::Lobes(&found));
    let drawn = lines(&marks, Stroke::Index).concat();
    let least = drawn.iter().map(|p| p.1).fold(f64::MAX, f64::min);
    let most = drawn.iter().map(|p| p.1).fold(0.0, f64::max);
    assert!(most - least > 0.3 * HEIGHT, "{least} {most}");
    assert_eq!(sign::of(&loud, Some(&found))[0], Sign::Above);
    // The step is on the paper all the same, at the top.
    let ring = lines(&marks, Stroke::Cutter);
    assert!(ring.iter().any(|r| r[0].1 < least), "{ring:?}");
}

#[test]
fn hatching_covers_what_sings_and_nothing_else() {
    let limit: Vec<(f64, f64)> = (0..=100_u32)
        .map(|k| {
            let x = f64::from(k);
            (x, 40.0 + 30.0 * libm::sin(0.2 * x))
        })
        .collect();
    let (top, pitch) = (25.0, 2.0);
    let lies = |x: f64| {
        let k = limit.iter().rposition(|p| p.0 <= x).unwrap().min(99);
        let (a, b) = (limit[k], limit[k + 1]);
        a.1 + (x - a.0) * (b.1 - a.1) / (b.0 - a.0)
    };
    let mut covered = 0.0;
    for (a, b) in hatch::above(&limit, top, pitch) {
        assert!((a.0 + a.1 - b.0 - b.1).abs() < 1e-9 && a.0 < b.0);
        for share in [0.0, 0.3, 0.7, 1.0] {
            let (x, y) = (a.0 + share * (b.0 - a.0), a.1 + share * (b.1 - a.1));
            assert!(y >= top - 1e-9 && y <= lies(x) + 1e-9, "{x} {y}");
        }
        covered += (b.0 - a.0) * pitch;
    }
    // Each hair of x at a pitch of area: the lines together have the area of the region.
    let area: f64 = (0..1000_u32)
        .map(|k| 0.1 * (lies(0.1 * f64::from(k) + 0.05) - top).max(0.0))
        .sum();
    assert!((covered - area).abs() < 0.02 * area, "{covered} {area}");
}

#[test]
fn figures_on_the_axes_are_round_and_few() {
    let check = |range, count, wanted: &[f64]| {
        let ticks = round_ticks(range, count);
        assert_eq!(ticks.len(), wanted.len(), "{ticks:?}");
        for (a, b) in ticks.iter().zip(wanted) {
            assert!((a - b).abs() < 1e-9 * b.max(1.0), "{ticks:?}");
        }
    };
    check((0.0, 0.75), 6.0, &[0.0, 0.2, 0.4, 0.6]);
    check((6000.0, 24_000.0), 5.0, &[10_000.0, 15_000.0, 20_000.0]);
    check((0.0, 0.0), 5.0, &[]);
    check((0.0, f64::NAN), 5.0, &[]);
}

#[test]
fn the_table_takes_both_ends_and_some_between() {
    let rows = picked(200);
    assert_eq!((rows.len(), rows[0], rows[11]), (12, 0, 199));
    assert!(rows.windows(2).all(|w| w[0] < w[1]));
    assert_eq!(picked(3), [0, 1, 2]);
    assert!(picked(0).is_empty());
}

#[test]
fn each_sign_that_is_drawn_is_told() {
    let known = report(TipKnown::Measured, 0.3);
    let none = Lobes {
        speeds: vec![known.range.0, known.range.1],
        limit: vec![None, None],
        flip: vec![true, false],
    };
    let told = sign::of(&known, Some(&none));
    assert!(!told.contains(&Sign::Flip), "no limit, no way to sing");
    let some = Lobes {
        limit: vec![Some(Length::mm(0.4)), None],
        ..none
    };
    let told = sign::of(&known, Some(&some));
    for sign in [Sign::Flip, Sign::Here, Sign::Speed, Sign::Drums] {
        assert!(told.contains(&sign), "{sign:?}");
    }
}
