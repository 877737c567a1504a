//! Who speaks: the unit system, the tables and the rack that sentences refer to.

use crate::figures::written;
use crate::gains::place_name;
use crate::say;
use crate::text::plural;
use thinwright_catalog::Catalog;
use thinwright_core::answers::Answers;
use thinwright_core::field::{Field, FieldId, Group};
use thinwright_core::limits::LimitId;
use thinwright_core::pin::Place;
use thinwright_quantity::{
    Angle, Duration, Force, Frequency, Kind, Length, Power, Rounding, Speed, SpindleSpeed,
    Stiffness, Stress, UnitSystem, format, parse,
};

/// Makes sentences in one unit system about one job.
#[derive(Clone, Copy, Debug)]
pub struct Speaker<'a> {
    /// Units of every number.
    pub units: UnitSystem,
    /// Names of materials, machines, holds and the rest.
    pub catalog: &'a Catalog,
    /// The answers, for the names of cutters.
    pub answers: &'a Answers,
    for_program: bool,
}

impl<'a> Speaker<'a> {
    /// A speaker.
    pub fn new(units: UnitSystem, catalog: &'a Catalog, answers: &'a Answers) -> Speaker<'a> {
        Speaker {
            units,
            catalog,
            answers,
            for_program: false,
        }
    }

    /// The same for another program: numbers with a point, units as standards write them.
    pub(crate) fn to_a_program(self) -> Speaker<'a> {
        Speaker {
            for_program: true,
            ..self
        }
    }

    /// A value in the SI unit of its kind, as people read it.
    pub fn value(&self, kind: Kind, si: f64) -> String {
        if self.for_program {
            format(kind, si, self.units, Rounding::Nearest)
        } else {
            written(kind, si, self.units, Rounding::Nearest)
        }
    }

    /// A length of part or cutter.
    pub fn length(&self, value: Length) -> String {
        self.value(Kind::Length, value.si())
    }

    /// A length of chips, errors and bends.
    pub fn short(&self, value: Length) -> String {
        self.value(Kind::ShortLength, value.si())
    }

    /// A feed.
    pub fn feed(&self, value: Speed) -> String {
        self.value(Kind::FeedSpeed, value.si())
    }

    /// A surface speed.
    pub fn surface_speed(&self, value: Speed) -> String {
        self.value(Kind::SurfaceSpeed, value.si())
    }

    /// A spindle speed.
    pub fn spindle_speed(&self, value: SpindleSpeed) -> String {
        self.value(Kind::SpindleSpeed, value.si())
    }

    /// An angle.
    pub fn angle(&self, value: Angle) -> String {
        self.value(Kind::Angle, value.si())
    }

    /// A force.
    pub fn force(&self, value: Force) -> String {
        self.value(Kind::Force, value.si())
    }

    /// A power.
    pub fn power(&self, value: Power) -> String {
        self.value(Kind::Power, value.si())
    }

    /// A stress.
    pub fn stress(&self, value: Stress) -> String {
        self.value(Kind::Stress, value.si())
    }

    /// A stiffness.
    pub fn stiffness(&self, value: Stiffness) -> String {
        self.value(Kind::Stiffness, value.si())
    }

    /// A frequency.
    pub fn frequency(&self, value: Frequency) -> String {
        self.value(Kind::Frequency, value.si())
    }

    /// A value of a limit: in the unit of what it measures.
    pub fn of_limit(&self, limit: LimitId, si: f64) -> String {
        self.value(limit.spec().kind, si)
    }

    /// A length of path: metres or feet.
    pub fn path(&self, value: Length) -> String {
        let (size, unit) = match self.units {
            UnitSystem::Metric => (value.to_m(), "m"),
            UnitSystem::Inch => (value.to_inch() / 12.0, "ft"),
        };
        std::format!("{}\u{A0}{unit}", self.value(Kind::Ratio, size))
    }

    /// A span of time as said in a shop: `45 s`, `12 min`, `2 h 05 min`; nearest, never 0 for something.
    pub fn time(&self, value: Duration) -> String {
        let seconds = value.to_s();
        if !seconds.is_finite() || seconds < 0.0 {
            return "-".to_owned();
        }
        let whole = |x: f64| format(Kind::Count, x, self.units, Rounding::Nearest);
        if seconds < 99.5 {
            return std::format!("{}\u{A0}s", whole(seconds.round().max(1.0)));
        }
        let minutes = (seconds / 60.0).round();
        if minutes < 90.0 {
            return std::format!("{}\u{A0}min", whole(minutes));
        }
        let hours = (minutes / 60.0).floor();
        std::format!(
            "{}\u{A0}h\u{A0}{:02.0}\u{A0}min",
            whole(hours),
            minutes - 60.0 * hours
        )
    }

    /// A cutter of the rack by what it is: `6 mm end mill, 1 flute`; `cutter 3` where the row says too little.
    pub fn cutter(&self, row: u8) -> String {
        let text = |field| self.answers.text(FieldId::in_row(field, row)).trim();
        let number = u32::from(row) + 1;
        let Ok(d) = parse(
            Kind::Length,
            text(Field::CutterDiameter),
            self.answers.units,
        ) else {
            return say!("cutter {number}", number);
        };
        let diameter = self.value(Kind::Length, d);
        if text(Field::CutterKind) == "drill" {
            return say!("{diameter} drill", diameter);
        }
        match text(Field::CutterFlutes).parse::<u32>() {
            Ok(z) => say!(
                "{diameter} end mill, {flutes}",
                diameter,
                flutes = plural(z, "flute", "flutes")
            ),
            Err(_) => say!("{diameter} end mill", diameter),
        }
    }

    /// The place of an answer in words: `Thickness over all`, `Cutter 2: flute length`.
    pub fn place(&self, id: FieldId) -> String {
        let label = crate::field(id.field).label;
        match id.row {
            None => label.to_owned(),
            Some(row) => {
                let place = match id.field.spec().group {
                    Group::StepPins => Place::by_row(row).map(|p| place_name(p).to_owned()),
                    _ => None,
                };
                let place =
                    place.unwrap_or_else(|| say!("Cutter {number}", number = u32::from(row) + 1));
                std::format!("{place}: {}", crate::text::lower_first(label))
            }
        }
    }
}
