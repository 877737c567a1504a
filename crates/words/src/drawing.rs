//! Words of the drawing.

use crate::figures::written;
use crate::language::{tr, tr_all};
use crate::say;
use crate::tasks::task_name;
use thinwright_core::strategy::Step;
use thinwright_quantity::{Kind, Length, Rounding, UnitSystem};

/// A field of the title block (ISO 7200).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TitleField {
    /// What the part is called.
    Title,
    /// What it is made of.
    Material,
    /// Scale of the views.
    Scale,
    /// Unit of the sizes.
    Units,
    /// Who made it.
    Drawn,
    /// When.
    Date,
    /// Which sheet of how many.
    Sheet,
}

/// What stands small in a field of the title block.
pub fn title_label(field: TitleField) -> &'static str {
    tr(match field {
        TitleField::Title => "Title",
        TitleField::Material => "Material",
        TitleField::Scale => "Scale",
        TitleField::Units => "Sizes in",
        TitleField::Drawn => "Drawn",
        TitleField::Date => "Date",
        TitleField::Sheet => "Sheet",
    })
}

/// A sheet of so many.
pub fn sheet_of(sheet: u32, of: u32) -> String {
    say!("{sheet} of {of}", sheet, of)
}

/// Name of a unit system on a drawing.
pub fn unit_word(units: UnitSystem) -> &'static str {
    tr(match units {
        UnitSystem::Metric => "mm",
        UnitSystem::Inch => "inches",
    })
}

/// A section's title: `A-A`, with its scale if that differs.
pub fn section_title(letter: char, scale: Option<&str>) -> String {
    match scale {
        Some(scale) => format!("{letter}-{letter} ({scale})"),
        None => format!("{letter}-{letter}"),
    }
}

/// Title of an enlarged place.
pub fn detail_title(letter: char, scale: &str) -> String {
    format!("{letter} ({scale})")
}

/// How many slots, on a leader.
pub fn slots_on_leader(count: usize) -> String {
    format!("{count}\u{D7}")
}

/// How many slots, as said.
pub fn slots_said(count: usize) -> String {
    say!("{count} slots", count = slots_on_leader(count))
}

/// How the web bows under the mean thrust at its softest place; negative where it is lifted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bow {
    /// Give at that place.
    pub most: Length,
    /// Greatest size of it along the section.
    pub here: Length,
    /// How much the drawing exaggerates it.
    pub factor: f64,
}

/// How the web bows, and how much that is exaggerated.
pub fn bow(units: UnitSystem, bow: &Bow) -> String {
    let size = |v: Length| written(Kind::ShortLength, v.si().abs(), units, Rounding::Nearest);
    let factor = written(Kind::Count, bow.factor, units, Rounding::Nearest);
    let (most, here) = (size(bow.most), size(bow.here));
    match (bow.most.si() < 0.0, here == most) {
        (false, true) => say!(
            "web bows by {most} where it is softest, drawn \u{D7}{factor}",
            most,
            factor
        ),
        (true, true) => say!(
            "web lifts by {most} where it is softest, drawn \u{D7}{factor}",
            most,
            factor
        ),
        (false, false) => say!(
            "web bows by {most} where it is softest, by {here} in the section, drawn \u{D7}{factor}",
            most,
            here,
            factor
        ),
        (true, false) => say!(
            "web lifts by {most} where it is softest, by {here} in the section, drawn \u{D7}{factor}",
            most,
            here,
            factor
        ),
    }
}

/// The step shown in the section.
pub fn step_shown(units: UnitSystem, step: &Step, d: Option<Length>) -> String {
    let (number, task) = (step.number, task_name(step.task));
    match d {
        None => say!("step {number}: {task}", number, task),
        Some(d) => say!(
            "step {number}: {task}, cutter \u{D8} {diameter}",
            number,
            task,
            diameter = written(Kind::Length, d.si(), units, Rounding::Nearest)
        ),
    }
}

/// What the lines of a step mean.
pub fn step_legend() -> [&'static str; 2] {
    tr_all([
        "rising hatch: stock after the step; falling hatch: what it takes away",
        "solid: left on for later; dash and two dots: the finished part",
    ])
}

/// What a drawing shows, for those who cannot see it.
pub fn drawing_title(name: &str) -> String {
    let name = name.trim();
    if name.is_empty() {
        tr("Drawing of the part").to_owned()
    } else {
        say!("Drawing of the part: {name}", name)
    }
}

/// The sizes of a drawing in words.
pub fn drawing_said(sizes: &[String], scale: &str) -> String {
    say!(
        "Plan seen from face A, and a section through the middle, scale {scale}. {sizes}.",
        scale,
        sizes = sizes.join("; ")
    )
}

/// While there is no part to draw.
pub fn no_part() -> &'static str {
    tr("The drawing appears when the part's sizes can be read.")
}
