//! The chart as a table, folded away.

use thinwright_core::stability::{Lobes, StabilityReport};
use thinwright_words::Speaker;
use thinwright_words::stability as words;
use yew::prelude::*;

/// Rows of the table.
const ROWS: usize = 12;

/// Which of so many speeds are told: the first, the last, and others evenly between.
pub(super) fn picked(count: usize) -> Vec<usize> {
    let rows = ROWS.min(count);
    let last = count.saturating_sub(1);
    let gaps = rows.saturating_sub(1).max(1);
    (0..rows).map(|k| k * last / gaps).collect()
}

/// The table.
pub(super) fn table(speaker: &Speaker<'_>, report: &StabilityReport, lobes: &Lobes) -> Html {
    let row = |k: usize| {
        let [n, depth, how] =
            speaker.chart_row(lobes.speeds[k], lobes.limit[k], lobes.flip[k], report.top);
        html! {
            <tr>
                <th scope="row" class="map-number">{ n }</th>
                <td class="map-number">{ depth }</td>
                <td>{ how }</td>
            </tr>
        }
    };
    html! {
        <details class="more song-table">
            <summary class="more-name">{ words::table() }</summary>
            <table class="map-table">
                <caption class="away">{ words::table() }</caption>
                <thead>
                    <tr>{ for words::table_columns().map(|c| html! { <th scope="col">{ c }</th> }) }</tr>
                </thead>
                <tbody>{ for picked(lobes.speeds.len()).into_iter().map(row) }</tbody>
            </table>
        </details>
    }
}
