//! What lies beside a map: its lines with their values, some places with theirs.

use super::give::{Level, levels};
use super::places::places;
use thinwright_core::task::Face;
use thinwright_core::{Job, Sight, WebPicture};
use thinwright_quantity::Length;
use thinwright_words::Speaker;
use thinwright_words::map::{self as words, Gauge};
use yew::prelude::*;

/// Darkness that each step of grey adds; the style sheet has the same.
const STEP: f64 = 0.07;

/// The lines of the map, the softest first, each between the greys on its two sides.
pub(super) fn lines(picture: &WebPicture, gauge: &Gauge) -> Html {
    let levels = levels(picture, gauge);
    let rows = levels.iter().enumerate().rev().map(|(k, level)| {
        let [give, stiffness] = words::row(gauge, level.compliance);
        html! {
            <tr>
                <td>{ swatch(level, k) }</td>
                <td class="map-number">{ give }</td>
                <td class="map-number">{ stiffness }</td>
            </tr>
        }
    });
    html! {
        <table class="map-table">
            <caption>{ words::lines_caption(gauge) }</caption>
            { head(&words::line_columns()) }
            <tbody>{ rows.collect::<Html>() }</tbody>
        </table>
    }
}

/// The same in a row, the stiffest first: their greys and gives alone.
pub(crate) fn key(picture: &WebPicture, gauge: &Gauge) -> Html {
    let levels = levels(picture, gauge);
    let one = |(k, level): (usize, &Level)| {
        let give = words::give(level.compliance / gauge.size);
        html! { <span>{ swatch(level, k) }{ give }</span> }
    };
    levels.iter().enumerate().map(one).collect()
}

fn head(columns: &[&'static str]) -> Html {
    html! { <thead><tr>{ for columns.iter().map(|c| html! { <th scope="col">{ *c }</th> }) }</tr></thead> }
}

/// A line with the grey on its stiffer side (left) and on its softer side.
fn swatch(level: &Level, below: usize) -> Html {
    let grey = |steps: usize| {
        let steps = i32::try_from(steps).unwrap_or(i32::MAX);
        format!("{:.3}", 1.0 - (1.0 - STEP).powi(steps))
    };
    let class = if level.heavy {
        "ink-index"
    } else {
        "ink-contour"
    };
    html! {
        <svg class="map-swatch" viewBox="0 0 12 5" preserveAspectRatio="none" aria-hidden="true">
            <rect x="0" y="0" width="6" height="5" fill-opacity={grey(below)} />
            <rect x="6" y="0" width="6" height="5" fill-opacity={grey(below + 1)} />
            <path {class} d="M6 0V5" />
        </svg>
    }
}

/// The table of places.
pub(super) fn of_places(
    speaker: &Speaker<'_>,
    job: &Job,
    (face, sight): (Face, &Sight),
    (picture, gauge): (&WebPicture, &Gauge),
) -> Html {
    let rows = places(job, face, sight, picture).into_iter().map(|(place, p, compliance)| {
        let [give, stiffness] = words::row(gauge, compliance);
        html! {
            <tr>
                <th scope="row">
                        { words::place_name(place) }
                        <span class="map-at">{ speaker.web_place((Length::mm(p.x), Length::mm(p.y))) }</span>
                    </th>
                <td class="map-number">{ give }</td>
                <td class="map-number">{ stiffness }</td>
            </tr>
        }
    });
    html! {
        <table class="map-table">
            <caption>{ words::places() }</caption>
            { head(&words::place_columns()) }
            <tbody>{ rows.collect::<Html>() }</tbody>
        </table>
    }
}
