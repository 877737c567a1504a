//! What is computed for each case of `shared/reference/mechanics.json`, by topic.

pub(crate) mod cutting;
pub(crate) mod geometry;
pub(crate) mod listed;
pub(crate) mod power;
pub(crate) mod strength;
pub(crate) mod tables;

use crate::agreement::Answer;

/// An answer of plain numbers.
fn values<const N: usize>(all: [(&'static str, f64); N]) -> Option<Answer> {
    Some(
        all.into_iter()
            .map(|(name, value)| (name, vec![value]))
            .collect(),
    )
}
