//! How to find the depth that runs quietly, by ear: where to start, how to go on, what to stop at.

use crate::case::Case;
use crate::quiet::quiet;
use crate::strategy::Listen;
use thinwright_quantity::Length;

/// The ladder of a step.
pub(crate) fn ladder(case: &Case, planned: f64) -> Option<Listen> {
    let numbers = &case.job.numbers;
    let quiet = quiet(case)?;
    let grid = case.job.grid.depth;
    let start = (numbers.listen_start_share * planned).max(quiet.min(planned));
    Some(Listen {
        quiet: Length::from_si(quiet),
        start: Length::from_si(crate::choice::down(start, grid)),
        increment: Length::from_si(crate::choice::up(
            numbers.listen_increment_share * planned,
            grid,
        )),
        planned: Length::from_si(planned),
    })
}
