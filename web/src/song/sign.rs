//! What the signs of a chart mean: each drawn once, with its words.

use super::chart::{bar, circle, point, speed, step_above};
use super::hatch;
use crate::drawing::{Mark, Path, Stroke, draw, line};
use thinwright_core::stability::{Lobes, StabilityReport};
use thinwright_core::vibration::TipKnown;
use thinwright_words::Speaker;
use thinwright_words::stability::Sign;
use yew::prelude::*;

/// Size of a sign, in the chart's units.
const WIDTH: f64 = 12.0;
const HEIGHT: f64 = 7.0;
const MIDDLE: (f64, f64) = (0.5 * WIDTH, 0.5 * HEIGHT);

/// The signs that a chart has, or will have once it is drawn up.
pub(super) fn of(report: &StabilityReport, lobes: Option<&Lobes>) -> Vec<Sign> {
    let tuned = report.known > TipKnown::Nothing;
    let above = (lobes.is_some() || !tuned) && step_above(report, lobes);
    let mut out = vec![if above { Sign::Above } else { Sign::Point }];
    if !tuned {
        out.extend([Sign::BadEnd, Sign::Likely]);
        return out;
    }
    out.extend([Sign::Limit, Sign::Margin]);
    let flips = |lobes: &Lobes| {
        let mut each = lobes.flip.iter().zip(&lobes.limit);
        each.any(|(flip, limit)| *flip && limit.is_some())
    };
    out.extend(lobes.is_some_and(flips).then_some(Sign::Flip));
    out.extend(report.here.filter(|d| *d <= report.top).map(|_| Sign::Here));
    let speeds = |drums: bool| report.speeds.iter().any(|s| s.drums == drums);
    out.extend(speeds(false).then_some(Sign::Speed));
    out.extend(speeds(true).then_some(Sign::Drums));
    out
}

/// A sign by itself.
fn marks(sign: Sign) -> Vec<Mark> {
    let (x, y) = MIDDLE;
    let across = |stroke| vec![Mark::Line(stroke, line((0.0, y), (WIDTH, y)))];
    match sign {
        Sign::Limit => {
            let low = HEIGHT - 0.6;
            let mut hatching = Path::default();
            for (a, b) in hatch::above(&[(0.0, low), (WIDTH, low)], 0.0, 3.2) {
                hatching.segment(a, b);
            }
            vec![
                Mark::Line(Stroke::Hatch, hatching.0),
                Mark::Line(Stroke::Index, line((0.0, low), (WIDTH, low))),
            ]
        }
        Sign::Margin | Sign::Likely => across(Stroke::Hidden),
        Sign::BadEnd => across(Stroke::Index),
        Sign::Flip => {
            let mut dots = Path::default();
            for k in 0..4 {
                circle(&mut dots, (2.4 + 2.4 * f64::from(k), y), 0.75);
            }
            let mut out = across(Stroke::Index);
            out.push(Mark::Line(Stroke::Ink, dots.0));
            out
        }
        Sign::Point | Sign::Above => point((x, y)).into(),
        Sign::Here => vec![bar((x, y))],
        Sign::Speed => vec![speed((x, y + 1.3), false)],
        Sign::Drums => vec![speed((x, y + 1.3), true)],
    }
}

/// The signs and their words.
pub(super) fn legend(
    speaker: &Speaker<'_>,
    report: &StabilityReport,
    lobes: Option<&Lobes>,
) -> Html {
    let row = |sign: Sign| {
        html! {
            <li class="song-sign">
                <svg class="song-swatch" viewBox={format!("0 0 {WIDTH} {HEIGHT}")} aria-hidden="true">
                    { draw(&marks(sign), None, None) }
                </svg>
                <span>{ speaker.sign(sign, report) }</span>
            </li>
        }
    };
    html! { <ul class="song-signs">{ for of(report, lobes).into_iter().map(row) }</ul> }
}
