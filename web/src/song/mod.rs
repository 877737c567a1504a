//! Whether a step will sing: in words, as a chart of depth over spindle speed, and as a table.

mod axes;
mod chart;
mod hatch;
mod sign;
mod table;
#[cfg(test)]
mod tests;
mod view;

pub(crate) use view::Song;
