//! Words of the web's map: what its lines mean, where it is softest, its lowest tone, the steps along which it weakens.

use crate::Speaker;
use crate::figures::{bare, written};
use crate::language::{tr, tr_all};
use crate::say;
use crate::setups::face;
use crate::tasks::task_name;
use crate::text::upper_first;
use thinwright_core::strategy::{Step, WebReport};
use thinwright_core::task::Face;
use thinwright_core::{WebError, WebPicture};
use thinwright_quantity::{Force, Kind, Length, Rounding, Stiffness, UnitSystem};

/// Name of the figure.
pub fn name() -> &'static str {
    tr("Web under the cutter")
}
/// While the picture is on its way.
pub fn working_out() -> &'static str {
    tr("working out the web \u{2026}")
}
/// In a step without a web.
pub fn no_web() -> &'static str {
    tr("no free web in this step")
}
/// Why a step has no web.
pub fn no_web_why() -> &'static str {
    tr("The part lies flat and is carried everywhere, or nothing thin is under the cutter.")
}
/// Where no step at all has one.
pub fn never_a_web() -> &'static str {
    tr("No step works on a free web: the part is carried everywhere while it is cut.")
}
/// What the map may show.
pub fn gives() -> &'static str {
    tr("gives under the cutter")
}
/// What else it may show.
pub fn tone() -> &'static str {
    tr("lowest tone")
}
/// Name of that choice.
pub fn shown() -> &'static str {
    tr("The map shows")
}
/// Where no tone is left.
pub fn no_tone() -> &'static str {
    tr("The backing takes the drum away: there is no tone to show.")
}
/// The same, in the map's place.
pub fn no_tone_here() -> &'static str {
    tr("no tone")
}
/// Where there is no map; why is said beside it.
pub fn no_map() -> &'static str {
    tr("no map")
}
/// What the signs of a tone mean.
pub fn tone_legend() -> &'static str {
    tr(
        "Lines: each a fifth of the greatest swing; + and \u{2212} swing against each other, dash and dot stays still.",
    )
}
/// Columns of the table of lines.
pub fn line_columns() -> [&'static str; 3] {
    tr_all(["line", "gives", "stiffness"])
}
/// Caption of the table of places.
pub fn places() -> &'static str {
    tr("Stiffness in some places")
}
/// Columns of the table of places.
pub fn place_columns() -> [&'static str; 3] {
    tr_all(["place", "gives", "stiffness"])
}
/// The slider over the steps.
pub fn steps() -> &'static str {
    tr("Step in hand")
}
/// The slider before the first step.
pub fn finished() -> &'static str {
    tr("none: the finished part")
}
/// What is said of the step on which the web is softest.
pub fn softest_of_all() -> &'static str {
    tr("the softest web of all steps")
}

/// Thousandths of an inch, and ten pounds of force: what gives are read in there.
const THOU: f64 = 2.54e-5;
/// Greatest give in micrometres; beyond it is read in millimetres.
const MOST_UM: f64 = 1000.0;

/// What gives are read in: so far under such a force.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gauge {
    /// Unit of the give.
    pub unit: &'static str,
    /// The force.
    pub force: &'static str,
    /// Compliance of 1 of that unit under that force, m/N.
    pub size: f64,
}

/// The gauge that reads a web whose greatest compliance is `most`, m/N.
pub fn gauge(units: UnitSystem, most: f64) -> Gauge {
    let (unit, force, size) = match units {
        UnitSystem::Metric => ("\u{B5}m", "100\u{A0}N", 1.0e-6 / 100.0),
        UnitSystem::Inch => ("thou", "10\u{A0}lbf", THOU / Force::lbf(10.0).si()),
    };
    if units == UnitSystem::Metric && most > MOST_UM * size {
        return Gauge {
            unit: "mm",
            force,
            size: 1.0e3 * size,
        };
    }
    Gauge { unit, force, size }
}

/// Caption of the table of lines.
pub fn lines_caption(gauge: &Gauge) -> String {
    say!(
        "Lines: give in {unit} under {force}",
        unit = gauge.unit,
        force = gauge.force
    )
}

/// Heading of the map on paper.
pub fn sheet_heading(step: &Step, up: Face) -> String {
    say!(
        "Web where it is softest: step {number}, {face} up",
        number = step.number,
        face = face(up)
    )
}

/// A give on a line, or in a table: its number alone.
pub fn give(value: f64) -> String {
    bare(Kind::Ratio, value, UnitSystem::Metric, Rounding::Nearest)
}

/// The stiffness of a compliance, m/N.
fn stiffness(compliance: f64) -> String {
    let stiffness = Stiffness::from_si(1.0 / compliance);
    written(
        Kind::Stiffness,
        stiffness.si(),
        UnitSystem::Metric,
        Rounding::Nearest,
    )
}

/// What stands at the softest place.
pub fn softest_mark(compliance: f64) -> String {
    say!("softest: {stiffness}", stiffness = stiffness(compliance))
}

/// A compliance as a row of a table: give, stiffness.
pub fn row(gauge: &Gauge, compliance: f64) -> [String; 2] {
    let give = format!("{}\u{A0}{}", give(compliance / gauge.size), gauge.unit);
    [give, stiffness(compliance)]
}

/// A place whose value is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The softest of all.
    Softest,
    /// The softest middle of a rib between two slots.
    Rib,
    /// Beside the wall.
    Wall,
    /// Beside the boss.
    Boss,
}

/// Name of a place.
pub fn place_name(place: Place) -> &'static str {
    tr(match place {
        Place::Softest => "softest place",
        Place::Rib => "softest rib",
        Place::Wall => "softest at the wall",
        Place::Boss => "softest at the boss",
    })
}

impl Speaker<'_> {
    /// Where a place is in the plan: `x −22.3, y 34.6`.
    pub fn web_place(&self, (x, y): (Length, Length)) -> String {
        let tenth = |v: Length| {
            let tenths = Length::mm((v.to_mm() * 10.0).round() / 10.0).si();
            let text = bare(Kind::ShortLength, tenths, self.units, Rounding::Nearest);
            text.replace('-', "\u{2212}")
        };
        format!("x\u{A0}{}, y\u{A0}{}", tenth(x), tenth(y))
    }

    /// Which step the map belongs to.
    pub fn map_of(&self, step: &Step) -> String {
        say!(
            "step {number}: {task}",
            number = step.number,
            task = task_name(step.task)
        )
    }

    /// A step on the slider: `3 of 12: Clear the recess`.
    pub fn step_of(&self, step: &Step, of: usize) -> String {
        say!(
            "{number} of {of}: {task}",
            of,
            number = step.number,
            task = upper_first(task_name(step.task))
        )
    }

    /// What the map shows, to those who cannot see it.
    pub fn map_said(&self, picture: &WebPicture, (least, most): (f64, f64)) -> String {
        let gauge = gauge(self.units, picture.most);
        let [softest, stiffness] = row(&gauge, picture.most);
        say!(
            "Map of the web: it gives most, {softest} under {force} ({stiffness}), at {distance} from the middle; over the floor from {least} to {most} {unit}.",
            softest,
            stiffness,
            force = gauge.force,
            distance = self.off_middle(picture),
            least = give(least / gauge.size),
            most = give(most / gauge.size),
            unit = gauge.unit
        )
    }

    fn off_middle(&self, picture: &WebPicture) -> String {
        let p = picture.softest;
        let from_middle = (p.x * p.x + p.y * p.y).sqrt();
        self.short(Length::mm((from_middle * 10.0).round() / 10.0))
    }

    /// How sure the picture is.
    pub fn map_error(&self, picture: &WebPicture, fine: bool) -> String {
        let share = give((1000.0 * picture.error).ceil() / 10.0);
        let right = say!("Set right by {share}\u{A0}%, which two meshes tell.", share);
        if fine {
            right
        } else {
            format!("{right} {}", tr("A finer mesh is on its way."))
        }
    }

    /// Why there is no map.
    pub fn web_error(&self, why: &WebError) -> String {
        match why {
            WebError::NoFloor => {
                tr("There is no thin floor under the cutter in this state.").to_owned()
            }
            WebError::TooNarrow { width } => say!(
                "A slot or rib {width} wide is too narrow for the mesh.",
                width = self.length(*width)
            ),
            WebError::SelfCrossing => tr("An outline crosses itself.").to_owned(),
            WebError::Pieces => tr("The part is in pieces in this state.").to_owned(),
            WebError::Unheld => tr("Nothing holds the web in this state.").to_owned(),
            _ => tr("The part needs more triangles than are made.").to_owned(),
        }
    }

    /// The lowest tone beside what the teeth do.
    pub fn tone(&self, picture: &WebPicture, web: &WebReport) -> String {
        if picture.tones.is_empty() {
            return no_tone().to_owned();
        }
        let share = web.tooth_passing.si() / web.frequency.si();
        say!(
            "lowest tone {frequency}; the teeth pass at {tooth_passing}, {ratio} of it",
            frequency = self.frequency(web.frequency),
            tooth_passing = self.frequency(web.tooth_passing),
            ratio = bare(
                Kind::Ratio,
                (share * 100.0).round() / 100.0,
                self.units,
                Rounding::Nearest
            )
        )
    }

    /// The weakening of the web over the steps, to those who cannot see it: number of the step and stiffness, N/m.
    pub fn weakening(&self, steps: &[(u32, f64)]) -> String {
        let (Some(first), Some(softest)) = (
            steps.first(),
            steps.iter().min_by(|a, b| a.1.total_cmp(&b.1)),
        ) else {
            return tr("No step works on a free web.").to_owned();
        };
        let told = |s: &(u32, f64)| {
            say!(
                "{stiffness} in step {step}",
                // No line may end within the unit.
                stiffness = self
                    .stiffness(Stiffness::from_si(s.1))
                    .replace('/', "/\u{2060}"),
                step = s.0
            )
        };
        say!(
            "Web stiffness: {first}; softest, {softest}.",
            first = told(first),
            softest = told(softest)
        )
    }
}
