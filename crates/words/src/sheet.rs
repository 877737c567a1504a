//! Words of the printed sheet.

use crate::Speaker;
use crate::cautions::numbers;
use crate::drawing::unit_word;
use crate::limits::limit_name;
use crate::setups::face;
use crate::text::upper_first;
use crate::verdicts::utilisation;
use thinwright_core::estimate::Unknown;
use thinwright_core::job::{Cutter, Form, Job};
use thinwright_core::strategy::{Finding, Setup};
use thinwright_core::task::{Face, TaskKind};
use thinwright_quantity::{Kind, UnitSystem};

/// A sketch of a setup, for those who cannot see it.
pub fn sketch_said(setup: &Setup) -> String {
    format!(
        "Sketch seen from the spindle: {} up, with the datum and the stock at the end of the setup",
        face(setup.face_up)
    )
}

/// Heading of the sheet.
pub const HEADING: &str = "Strategy sheet";
/// What the sheet is not.
pub const NOT_A_PROGRAM: &str = "Values to type, not a program. Computed, never tried: read the cautions, prove every path above the work first.";

/// Labels of the sheet's head.
pub const MATERIAL: &str = "Material";
/// Label: the blank.
pub const BLANK: &str = "Blank";
/// Label: the machine.
pub const MACHINE: &str = "Machine";
/// Label: units.
pub const UNITS: &str = "Units";
/// Label: revision.
pub const REVISION: &str = "Revision";
/// Label: date, left to write.
pub const PRINTED: &str = "Printed on";
/// Label: time.
pub const TIME: &str = "Time";

/// Size of the blank: round or rectangular outline, thickness.
pub fn blank_size(speaker: &Speaker<'_>, job: &Job) -> String {
    let thick = job.part.blank_heights.1.m() - job.part.blank_heights.0.m();
    let length = |mm: f64| speaker.value(Kind::Length, mm * 1.0e-3);
    match job.part.blank.outer.bounds() {
        Some(b) => format!(
            "{} \u{D7} {} \u{D7} {}",
            length(b.width()),
            length(b.height()),
            speaker.value(Kind::Length, thick)
        ),
        None => speaker.value(Kind::Length, thick),
    }
}

/// Heading of a setup.
pub fn setup_heading(speaker: &Speaker<'_>, number: usize, setup: &Setup) -> String {
    format!("Setup {number}: {}", speaker.setup(setup))
}

/// Where to set zero, and what to stay clear of.
pub fn datum(speaker: &Speaker<'_>, job: &Job, setup: &Setup, first: bool) -> Vec<String> {
    let place = if job.part.bore.is_some() && !first {
        "x, y: middle of the bore"
    } else if first {
        "x, y: middle of the blank, from two touched edges"
    } else {
        "x, y: middle of the part, from the same edges or pins as before"
    };
    let turn = if first {
        String::new()
    } else {
        " Turned over about the y axis.".to_owned()
    };
    let mut out = vec![
        format!("Zero at {place}.{turn}"),
        format!(
            "z = 0 at the face that the part lies on; its top is at z {}.",
            speaker.length(setup.stock)
        ),
        "Keep out: never into clamps, screws, parallels or bed; end heights are in the table."
            .to_owned(),
    ];
    if setup.backing == "none" && web_cut(setup) && !first {
        out.push("Nothing backs the web: light cuts only where the table says so.".to_owned());
    }
    out
}

fn web_cut(setup: &Setup) -> bool {
    setup.steps.iter().any(|s| s.web.is_some())
}

/// Under a sketch.
pub fn sketch_caption(up: Face) -> String {
    format!("{} up; not to scale", upper_first(face(up)))
}

/// Columns of the step table.
pub const STEP_COLUMNS: [&str; 10] = [
    "No.",
    "Step",
    "Cutter",
    "n",
    "vf",
    "ae",
    "ap \u{D7} levels",
    "z",
    "Leave: wall, floor",
    "Time",
];

/// Caption of the step table.
pub fn step_caption(number: usize, units: UnitSystem) -> String {
    let (n, vf) = match units {
        UnitSystem::Metric => ("rpm", "mm/min"),
        UnitSystem::Inch => ("rpm", "in/min"),
    };
    format!(
        "Steps of setup {number}: n in {n}, vf in {vf}, lengths in {}; cutter: row, size, flutes z, stick-out; z above the bed",
        unit_word(units)
    )
}

/// Columns of the cutter table.
pub const CUTTER_COLUMNS: [&str; 8] = [
    "Cutter",
    "\u{D8}",
    "Flutes",
    "Flute length",
    "Stick-out",
    "Corner radius",
    "Made of",
    "Steps",
];

/// Caption of the cutter table.
pub fn cutter_caption(units: UnitSystem) -> String {
    format!("Cutters, lengths in {}", unit_word(units))
}

/// What must be measured before a step that cannot be undone.
pub fn hold_point(task: TaskKind) -> Option<&'static str> {
    match task {
        TaskKind::FloorSkim => Some("measure the floor, then set the height."),
        TaskKind::SlotsThrough => Some("check that what lies under the web is tight."),
        TaskKind::OutlineFinish => Some("check what still holds the part."),
        TaskKind::Facing
        | TaskKind::Bore
        | TaskKind::Clearing
        | TaskKind::WallSkim
        | TaskKind::SlotsBlind
        | TaskKind::OutlineGroove => None,
    }
}

/// Headings of what is checked and written down.
pub const BEFORE_START: &str = "Before every start";
/// Heading: after turning over.
pub const AFTER_TURN: &str = "After turning over";
/// Heading: stop and measure.
pub const STOP_AND_MEASURE: &str = "Stop and measure";
/// Heading: cautions.
pub const CAUTIONS: &str = "Cautions: manuals, local rules and trained people come first";
/// Heading: turning over.
pub const TURNING: &str = "Turning over";
/// Heading: what was assumed.
pub const ASSUMED: &str = "Taken from tables, because nothing was answered";

/// Heading: what is kept of the whole job.
pub const KEPT_OF_JOB: &str = "Kept by hand for the whole job";

/// What comes before a step.
pub fn before_step(number: u32, text: &str) -> String {
    format!("Before step {number}: {text}")
}

/// Caption of the listen ladders.
pub const EAR_CAPTION: &str =
    "By ear: step-down. Deeper while it stays quiet; stop at the first rising tone";
/// Their columns.
pub const EAR_COLUMNS: [&str; 5] = [
    "Step",
    "Start",
    "Deeper by",
    "Planned",
    "Quiet at any speed",
];

/// Step numbers.
pub fn step_numbers(steps: &[u32]) -> String {
    numbers(steps)
}

/// The tabs of a step, behind how it gets in.
pub fn tabs_left(tabs: &str) -> String {
    format!(" Tabs: {tabs}.")
}

/// How the cutter gets in.
pub fn in_by(entry: &str) -> String {
    format!("In: {entry}.")
}

/// The feed of passes at full width.
pub fn opening_feed(feed: &str) -> String {
    format!(" First pass of each level: {feed}.")
}

/// The feed in corners.
pub fn corner_feed(feed: &str) -> String {
    format!(" In corners: {feed}.")
}

/// The closest limit, how close, and how sure that is.
pub fn closest(finding: &Finding, verdict: &str) -> String {
    format!(
        " Closest limit: {} {}, {verdict} ({}).",
        limit_name(finding.limit),
        utilisation(finding.utilisation()),
        sureness(finding.set_by),
    )
}

/// A cutter in a step table: row, diameter, flutes, stick-out; sizes already written.
pub fn cutter_short(cutter: &Cutter, d: &str, stick_out: &str) -> String {
    let row = u32::from(cutter.row) + 1;
    if cutter.drill {
        format!("{row}: drill \u{D8}{d}, out {stick_out}")
    } else {
        format!("{row}: \u{D8}{d}, z {}, out {stick_out}", cutter.z)
    }
}

/// Where there is nothing.
pub const NOTHING: &str = "-";

/// A cutter's row in the rack, and its kind.
pub fn cutter_row(cutter: &Cutter) -> String {
    let kind = if cutter.drill { "drill" } else { "end mill" };
    format!("{}: {kind}", u32::from(cutter.row) + 1)
}

/// What a cutter is made of.
pub fn cutter_made_of(cutter: &Cutter) -> &'static str {
    if cutter.carbide {
        "carbide"
    } else {
        "high-speed steel"
    }
}

/// A clause as a sentence.
pub fn sentence(clause: &str) -> String {
    format!("{}.", upper_first(clause))
}

/// The first letter large.
pub fn upper(text: &str) -> String {
    upper_first(text)
}

/// Many short things in a row.
pub fn joined(items: &[String]) -> String {
    format!("{}.", items.join("; "))
}

/// A part without a name.
pub const NO_NAME: &str = "Part without a name";

/// Caption of the table from measured to offset.
pub const MEASURED_CAPTION: &str = "Measured, and the offset that follows (measured less wanted)";
/// Its columns.
pub const MEASURED_COLUMNS: [&str; 4] = ["Place", "Wanted", "Measured", "Offset"];

/// Places that are measured, with what is wanted.
pub fn measured_rows(speaker: &Speaker<'_>, job: &Job) -> Vec<(&'static str, String)> {
    let with = |size: f64, tolerance: Option<f64>| {
        let size = speaker.value(Kind::Length, size);
        match tolerance {
            Some(t) => format!("{size} \u{B1} {}", speaker.value(Kind::ShortLength, t)),
            None => size,
        }
    };
    let web = with(job.part.web(), job.wanted.web);
    let mut rows = vec![("Web, middle", web.clone()), ("Web, at the rim", web)];
    if let Some(slot) = job.part.slots.first() {
        let width = with(slot.width, job.wanted.slot);
        rows.push(("Slot, top", width.clone()));
        rows.push(("Slot, bottom", width));
    }
    rows
}

/// Caption of the table of what was run.
pub const RUN_CAPTION: &str = "What was really run";
/// Its columns.
pub const RUN_COLUMNS: [&str; 6] = [
    "Step",
    "n",
    "vf",
    "ae",
    "ap",
    "How it went: sound, chips, size",
];

/// Lines to sign.
pub const SIGNATURES: [&str; 3] = ["Set up by", "Checked by", "Run on (date)"];

/// How sure a limit's value is: by what it is held back, or not at all.
pub fn sureness(unknown: Option<Unknown>) -> String {
    match unknown {
        Some(unknown) => format!("{} estimated", crate::unknown_name(unknown)),
        None => "no estimate".to_owned(),
    }
}

/// Form of the blank in brackets, if it is known.
pub fn form(form: Form) -> &'static str {
    match form {
        Form::Unknown => "form not known",
        Form::Rolled => "rolled",
        Form::Stretched => "rolled and stretched",
        Form::Cast => "cast",
        Form::Extruded => "extruded or drawn",
    }
}
