//! Words of the printed sheet.

use crate::Speaker;
use crate::cautions::numbers;
use crate::drawing::unit_word;
use crate::figures::unit;
use crate::language::{tr, tr_all};
use crate::limits::limit_name;
use crate::say;
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
    say!(
        "Sketch seen from the spindle: {face} up, with the datum and the stock at the end of the setup",
        face = face(setup.face_up)
    )
}

/// Heading of the sheet.
pub fn heading() -> &'static str {
    tr("Strategy sheet")
}
/// What the sheet is not.
pub fn not_a_program() -> &'static str {
    tr(
        "Values to type, not a program. Computed, never tried: read the cautions, prove every path above the work first.",
    )
}

/// Labels of the sheet's head.
pub fn material() -> &'static str {
    tr("Material")
}
/// Label: the blank.
pub fn blank() -> &'static str {
    tr("Blank")
}
/// Label: the machine.
pub fn machine() -> &'static str {
    tr("Machine")
}
/// Label: units.
pub fn units() -> &'static str {
    tr("Units")
}
/// Label: revision.
pub fn revision() -> &'static str {
    tr("Revision")
}
/// Label: date, left to write.
pub fn printed() -> &'static str {
    tr("Printed on")
}
/// Label: time.
pub fn time() -> &'static str {
    tr("Time")
}

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
    say!(
        "Setup {number}: {setup}",
        number,
        setup = speaker.setup(setup)
    )
}

/// Where to set zero, and what to stay clear of.
pub fn datum(speaker: &Speaker<'_>, job: &Job, setup: &Setup, first: bool) -> Vec<String> {
    let mut zero = tr(if job.part.bore.is_some() && !first {
        "Zero at x, y: middle of the bore."
    } else if first {
        "Zero at x, y: middle of the blank, from two touched edges."
    } else {
        "Zero at x, y: middle of the part, from the same edges or pins as before."
    })
    .to_owned();
    if !first {
        zero = format!("{zero} {}", tr("Turned over about the y axis."));
    }
    let mut out = vec![
        zero,
        say!(
            "z = 0 at the face that the part lies on; its top is at z {height}.",
            height = speaker.length(setup.stock)
        ),
        tr("Keep out: never into clamps, screws, parallels or bed; end heights are in the table.")
            .to_owned(),
    ];
    if setup.backing == "none" && web_cut(setup) && !first {
        out.push(tr("Nothing backs the web: light cuts only where the table says so.").to_owned());
    }
    out
}

fn web_cut(setup: &Setup) -> bool {
    setup.steps.iter().any(|s| s.web.is_some())
}

/// Under a sketch.
pub fn sketch_caption(up: Face) -> String {
    say!("{face} up; not to scale", face = upper_first(face(up)))
}

/// Columns of the step table.
pub fn step_columns() -> [&'static str; 10] {
    let [number, step, cutter] = tr_all(["No.", "Step", "Cutter"]);
    let [levels, leave, time] = tr_all(["ap \u{D7} levels", "Leave: wall, floor", "Time"]);
    [
        number, step, cutter, "n", "vf", "ae", levels, "z", leave, time,
    ]
}

/// Caption of the step table.
pub fn step_caption(number: usize, units: UnitSystem) -> String {
    say!(
        "Steps of setup {number}: n in {n}, vf in {vf}, lengths in {unit}; cutter: row, size, flutes z, stick-out; z above the bed",
        number,
        n = unit(Kind::SpindleSpeed, units),
        vf = unit(Kind::FeedSpeed, units),
        unit = unit_word(units)
    )
}

/// Columns of the cutter table.
pub fn cutter_columns() -> [&'static str; 8] {
    let [cutter, flutes, length, out, corner, made_of, steps] = tr_all([
        "Cutter",
        "Flutes",
        "Flute length",
        "Stick-out",
        "Corner radius",
        "Made of",
        "Steps",
    ]);
    [
        cutter, "\u{D8}", flutes, length, out, corner, made_of, steps,
    ]
}

/// Caption of the cutter table.
pub fn cutter_caption(units: UnitSystem) -> String {
    say!("Cutters, lengths in {unit}", unit = unit_word(units))
}

/// What must be measured before a step that cannot be undone.
pub fn hold_point(task: TaskKind) -> Option<&'static str> {
    match task {
        TaskKind::FloorSkim => Some(tr("measure the floor, then set the height.")),
        TaskKind::SlotsThrough => Some(tr("check that what lies under the web is tight.")),
        TaskKind::OutlineFinish => Some(tr("check what still holds the part.")),
        TaskKind::Facing
        | TaskKind::Bore
        | TaskKind::Clearing
        | TaskKind::WallSkim
        | TaskKind::SlotsBlind
        | TaskKind::OutlineGroove => None,
    }
}

/// Headings of what is checked and written down.
pub fn before_start() -> &'static str {
    tr("Before every start")
}
/// Heading: after turning over.
pub fn after_turn() -> &'static str {
    tr("After turning over")
}
/// Heading: stop and measure.
pub fn stop_and_measure() -> &'static str {
    tr("Stop and measure")
}
/// Heading: cautions.
pub fn cautions() -> &'static str {
    tr("Cautions: manuals, local rules and trained people come first")
}
/// Heading: turning over.
pub fn turning() -> &'static str {
    tr("Turning over")
}
/// Heading: what was assumed.
pub fn assumed() -> &'static str {
    tr("Taken from tables, because nothing was answered")
}

/// Heading: what is kept of the whole job.
pub fn kept_of_job() -> &'static str {
    tr("Kept by hand for the whole job")
}

/// What comes before a step.
pub fn before_step(number: u32, text: &str) -> String {
    say!("Before step {number}: {text}", number, text)
}

/// Caption of the listen ladders.
pub fn ear_caption() -> &'static str {
    tr("By ear: step-down. Deeper while it stays quiet; stop at the first rising tone")
}
/// Their columns.
pub fn ear_columns() -> [&'static str; 5] {
    tr_all([
        "Step",
        "Start",
        "Deeper by",
        "Planned",
        "Quiet at any speed",
    ])
}

/// Step numbers.
pub fn step_numbers(steps: &[u32]) -> String {
    numbers(steps)
}

/// The tabs of a step, behind how it gets in.
pub fn tabs_left(tabs: &str) -> String {
    behind(&say!("Tabs: {tabs}.", tabs))
}

/// How the cutter gets in.
pub fn in_by(entry: &str) -> String {
    say!("In: {entry}.", entry)
}

/// The feed of passes at full width.
pub fn opening_feed(feed: &str) -> String {
    behind(&say!("First pass of each level: {feed}.", feed))
}

/// The feed in corners.
pub fn corner_feed(feed: &str) -> String {
    behind(&say!("In corners: {feed}.", feed))
}

/// The closest limit, how close, and how sure that is.
pub fn closest(finding: &Finding, verdict: &str) -> String {
    behind(&say!(
        "Closest limit: {limit} {utilisation}, {verdict} ({sureness}).",
        limit = limit_name(finding.limit),
        utilisation = utilisation(finding.utilisation()),
        verdict,
        sureness = sureness(finding.set_by)
    ))
}

/// A sentence that stands behind another.
fn behind(sentence: &str) -> String {
    format!(" {sentence}")
}

/// A cutter in a step table: row, diameter, flutes, stick-out; sizes already written.
pub fn cutter_short(cutter: &Cutter, d: &str, stick_out: &str) -> String {
    let row = u32::from(cutter.row) + 1;
    if cutter.drill {
        say!("{row}: drill \u{D8}{d}, out {stick_out}", row, d, stick_out)
    } else {
        say!(
            "{row}: \u{D8}{d}, z {flutes}, out {stick_out}",
            row,
            d,
            stick_out,
            flutes = cutter.z
        )
    }
}

/// Where there is nothing.
pub const NOTHING: &str = "-";

/// A cutter's row in the rack, and its kind.
pub fn cutter_row(cutter: &Cutter) -> String {
    let kind = tr(if cutter.drill { "drill" } else { "end mill" });
    format!("{}: {kind}", u32::from(cutter.row) + 1)
}

/// What a cutter is made of.
pub fn cutter_made_of(cutter: &Cutter) -> &'static str {
    tr(if cutter.carbide {
        "carbide"
    } else {
        "high-speed steel"
    })
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
pub fn no_name() -> &'static str {
    tr("Part without a name")
}

/// Caption of the table from measured to offset.
pub fn measured_caption() -> &'static str {
    tr("Measured, and the offset that follows (measured less wanted)")
}
/// Its columns.
pub fn measured_columns() -> [&'static str; 4] {
    tr_all(["Place", "Wanted", "Measured", "Offset"])
}

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
    let mut rows = vec![
        (tr("Web, middle"), web.clone()),
        (tr("Web, at the rim"), web),
    ];
    if let Some(slot) = job.part.slots.first() {
        let width = with(slot.width, job.wanted.slot);
        rows.push((tr("Slot, top"), width.clone()));
        rows.push((tr("Slot, bottom"), width));
    }
    rows
}

/// Caption of the table of what was run.
pub fn run_caption() -> &'static str {
    tr("What was really run")
}
/// Its columns.
pub fn run_columns() -> [&'static str; 6] {
    let [step, how] = tr_all(["Step", "How it went: sound, chips, size"]);
    [step, "n", "vf", "ae", "ap", how]
}

/// Lines to sign.
pub fn signatures() -> [&'static str; 3] {
    tr_all(["Set up by", "Checked by", "Run on (date)"])
}

/// How sure a limit's value is: by what it is held back, or not at all.
pub fn sureness(unknown: Option<Unknown>) -> String {
    match unknown {
        Some(unknown) => say!(
            "{unknown} estimated",
            unknown = crate::unknown_name(unknown)
        ),
        None => tr("no estimate").to_owned(),
    }
}

/// Form of the blank in brackets, if it is known.
pub fn form(form: Form) -> &'static str {
    tr(match form {
        Form::Unknown => "form not known",
        Form::Rolled => "rolled",
        Form::Stretched => "rolled and stretched",
        Form::Cast => "cast",
        Form::Extruded => "extruded or drawn",
    })
}
