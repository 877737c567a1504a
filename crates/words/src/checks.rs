//! Checks before the start, and the points at which to stop and measure.

use crate::language::{tr, tr_all};

/// Heading over cautions.
pub fn cautions_heading() -> &'static str {
    tr("Cautions. The manuals of machine and cutter, local rules and trained people come first")
}

/// What heights are counted from.
pub fn heights() -> &'static str {
    tr("Heights z count up from the face that the part lies on")
}

/// Before the first start of a setup.
pub fn before_start() -> [&'static str; 8] {
    tr_all([
        "The machine's manual comes first: its own start-up checks are done.",
        "Blank, backing and every screw or clamp tight; keys and wrenches out.",
        "Cutter sharp, clean in its collet, stick-out as on the sheet; spindle turns free by hand and the right way round.",
        "Cutter and holder are allowed at this spindle speed.",
        "Zero found and checked on a second place; height set again after every cutter change.",
        "Path run dry above the work: first move, clamps and screw heads stay clear.",
        "Guard, eyes and ears protected; no gloves, sleeves or hair near the spindle; chips can leave.",
        "One hand at the stop, someone within earshot, and nobody leaves while it runs.",
    ])
}

/// Before cuts that cannot be undone.
pub fn hold_points() -> [&'static str; 3] {
    tr_all([
        "Before the first floor skim: measure the floor that is left, then set the height.",
        "Before slots go through: check what lies under the web, and that it is tight.",
        "Before the outline is cut free: check what still holds the part.",
    ])
}

/// After the part is turned over.
pub fn after_turn_over() -> [&'static str; 3] {
    tr_all([
        "Edges deburred, seat and part wiped clean; no chip under the part.",
        "Datum found again on the same pins or edges, height touched on the seat and not on the part.",
        "After unclamping, measure web and flatness again: the part may have moved.",
    ])
}
