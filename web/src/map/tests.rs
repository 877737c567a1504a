//! Maps as a whole, over the plan of a sample.

use super::chart::{Chart, Shows, chart};
use super::fixture::disc;
use super::give::levels;
use super::ground::Paper;
use super::places::places;
use super::{sight, softest_step, steps};
use crate::drawing::{Mark, Stroke, moment};
use thinwright_catalog::Catalog;
use thinwright_core::strategy::Strategy;
use thinwright_core::task::Face;
use thinwright_core::{Job, Outcome, WebPicture, decide, read};
use thinwright_quantity::UnitSystem;
use thinwright_words::map::{self as words, Place};

const PAPER: Paper = Paper {
    width: 120.0,
    height: 128.0,
    letter: 4.0,
};

/// The back plate: recesses of 140 mm, a boss of 36 mm, like the made-up disc.
fn sample() -> (Job, Box<Strategy>) {
    let answers = thinwright_jobfile::samples()[0].job().answers;
    let job = read(&answers, &Catalog::builtin()).unwrap();
    match decide(&job) {
        Outcome::Feasible(strategy) => (job, strategy),
        Outcome::Refused(_) => panic!("the sample is refused"),
    }
}

fn drawn(picture: &WebPicture, tone: bool) -> Chart {
    let (job, strategy) = sample();
    let moment = moment(&job, &strategy, softest_step(&strategy).unwrap()).unwrap();
    let shows = if tone {
        Shows::Tone(picture)
    } else {
        Shows::Gives(picture, words::gauge(UnitSystem::Metric, picture.most))
    };
    let chart = chart(&job, &moment, &shows, (Face::A, PAPER)).unwrap();
    for mark in &chart.marks {
        match mark {
            Mark::Line(_, path) => {
                assert!(!path.contains("NaN") && !path.contains("inf"), "{path}");
            }
            Mark::Text(letters) => {
                let (x, y) = letters.at;
                let inside = (0.0..=chart.width).contains(&x) && (0.0..=chart.height).contains(&y);
                assert!(inside && !letters.text.is_empty(), "{letters:?}");
            }
            Mark::Window { .. } | Mark::Dimension { .. } => panic!("not on a map"),
        }
    }
    chart
}

fn count(chart: &Chart, stroke: Stroke) -> usize {
    let strokes = chart
        .marks
        .iter()
        .filter(|m| matches!(m, Mark::Line(s, path) if *s == stroke && !path.is_empty()));
    strokes.count()
}

fn texts(chart: &Chart) -> Vec<&str> {
    let texts = chart.marks.iter().filter_map(|m| match m {
        Mark::Text(letters) => Some(letters.text.as_str()),
        Mark::Line(..) | Mark::Window { .. } | Mark::Dimension { .. } => None,
    });
    texts.collect()
}

#[test]
fn a_map_has_lines_greys_values_and_its_softest_place() {
    let picture = disc();
    let chart = drawn(&picture, false);
    // 0.1 to 78.6 um under 100 N: every 10.
    let gauge = words::gauge(UnitSystem::Metric, picture.most);
    let levels = levels(&picture, &gauge);
    assert_eq!(levels.len(), 7);
    assert_eq!(count(&chart, Stroke::Tint), 7);
    assert_eq!(count(&chart, Stroke::Index), 3);
    assert_eq!(count(&chart, Stroke::Contour), 4);
    let texts = texts(&chart);
    for value in ["20", "40", "60"] {
        assert!(texts.contains(&value), "{value} is not among {texts:?}");
    }
    assert!(texts.contains(&"softest: 1.27\u{A0}N/\u{B5}m"), "{texts:?}");
    assert_eq!(
        words::lines_caption(&gauge),
        "Lines: give in \u{B5}m under 100\u{A0}N"
    );
}

#[test]
fn a_tone_has_both_signs_and_what_stays_still() {
    let chart = drawn(&disc(), true);
    assert_eq!(count(&chart, Stroke::Tint), 4);
    assert_eq!(count(&chart, Stroke::Contour), 4);
    assert_eq!(count(&chart, Stroke::Minus), 4);
    // Swinging about the upright: still along it, above and below the boss.
    assert_eq!(count(&chart, Stroke::Still), 1);
    let texts = texts(&chart);
    assert_eq!(texts.iter().filter(|t| **t == "+").count(), 1, "{texts:?}");
    assert_eq!(
        texts.iter().filter(|t| **t == "\u{2212}").count(),
        1,
        "{texts:?}"
    );
    let mut backed = disc();
    backed.tones.clear();
    let chart = drawn(&backed, true);
    assert_eq!(count(&chart, Stroke::Tint), 0);
}

#[test]
fn a_map_keeps_its_size_whatever_it_shows() {
    let (job, strategy) = sample();
    let mut sizes = Vec::new();
    for step in 0..steps(&strategy).count() {
        let moment = moment(&job, &strategy, step).unwrap();
        let chart = chart(&job, &moment, &Shows::Words("nothing"), (Face::B, PAPER)).unwrap();
        sizes.push((chart.width, chart.height));
    }
    assert!(
        sizes.len() > 5 && sizes.windows(2).all(|w| w[0] == w[1]),
        "{sizes:?}"
    );
}

#[test]
fn places_are_where_they_are_said_to_be() {
    let (job, strategy) = sample();
    let picture = disc();
    let softest = softest_step(&strategy).unwrap();
    let mut sight = sight(&job, &strategy, softest).unwrap();
    let last = steps(&strategy).count() - 1;
    sight.state = moment(&job, &strategy, last).unwrap().after;
    assert!(job.part.slots_open(&sight.state));
    let found = places(&job, Face::B, &sight, &picture);
    let patch = sight.patch.to_mm();
    let radius = |place: Place| {
        let (_, p, compliance) = *found.iter().find(|f| f.0 == place).unwrap();
        assert!(compliance > 0.0 && compliance <= picture.most);
        super::fixture::radius(p)
    };
    assert_eq!(found[0].0, Place::Softest);
    let wall = radius(Place::Wall);
    assert!((wall - (70.0 - patch)).abs() < 0.2, "{wall}");
    let boss = radius(Place::Boss);
    assert!((boss - (18.0 + patch)).abs() < 0.2, "{boss}");
    // The slots reach from 29 to 59 mm, their middles lie 8 mm apart.
    let rib = radius(Place::Rib);
    assert!((44.0..45.0).contains(&rib), "{rib}");
}

#[test]
fn what_is_looked_at_is_the_web_at_its_weakest_in_the_step() {
    let (job, strategy) = sample();
    let mut looked = 0;
    for (at, step) in steps(&strategy).enumerate() {
        let Some(sight) = sight(&job, &strategy, at) else {
            assert!(step.web.is_none());
            continue;
        };
        let web = step.web.as_ref().unwrap();
        let left = job.part.web_now(&sight.state);
        assert!(
            (left - web.thickness.si()).abs() < 1.0e-9,
            "step {}: {left}",
            step.number
        );
        assert!(sight.second);
        looked += 1;
    }
    assert!(looked >= 2);
}
