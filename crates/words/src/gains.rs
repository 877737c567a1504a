//! What a change would bring, in words: what is worth measuring, changing, buying, and what it costs to keep a choice.

use crate::Speaker;
use crate::language::tr;
use crate::limits::limit_name;
use crate::remedies::{lever_kind, lever_name};
use crate::say;
use crate::tasks::task_name;
use crate::text::upper_first;
use crate::unknowns::{unknown_how, unknown_name};
use thinwright_core::field::Table;
use thinwright_core::gain::{Gain, Geometry, Turned, What};
use thinwright_core::pin::Place;
use thinwright_quantity::Duration;

/// Saved times below this are none, s.
const NO_TIME_S: f64 = 30.0;

/// What kinds of changes there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GainKind {
    /// Something that is estimated can be measured.
    Measure,
    /// Something about cutters or holding can be changed.
    Change,
    /// A cutter can be bought.
    Buy,
    /// A choice that the person keeps.
    Kept,
}

/// All kinds, in the order in which they are told.
pub const GAIN_KINDS: [GainKind; 4] = [
    GainKind::Kept,
    GainKind::Measure,
    GainKind::Change,
    GainKind::Buy,
];

impl GainKind {
    /// The kind of a change.
    pub fn of(gain: &Gain) -> GainKind {
        match gain.what {
            What::Measure(_) => GainKind::Measure,
            What::OneMoreFlute { .. }
            | What::HoldShorter { .. }
            | What::Back(_)
            | What::BoltBoss
            | What::ClearChips(_) => GainKind::Change,
            What::Buy(_) => GainKind::Buy,
            What::LetGo(_) => GainKind::Kept,
        }
    }

    /// Heading of a list of such changes.
    pub fn heading(self) -> &'static str {
        tr(match self {
            GainKind::Measure => "Worth measuring",
            GainKind::Change => "Worth changing",
            GainKind::Buy => "Worth buying",
            GainKind::Kept => "Kept by you, and what it costs",
        })
    }
}

/// Where a choice can be kept, in words.
pub fn place_name(place: Place) -> &'static str {
    tr(match place {
        Place::FacingA => "Face A",
        Place::FacingB => "Face B",
        Place::Bore => "Bore",
        Place::ClearingA => "Clearing recess A",
        Place::ClearingB => "Clearing recess B",
        Place::FloorA => "Floor of recess A",
        Place::FloorB => "Floor of recess B",
        Place::WallA => "Walls of recess A",
        Place::WallB => "Walls of recess B",
        Place::Slots => "Slots",
        Place::Groove => "Groove along the outline",
        Place::Outline => "Outline",
    })
}

impl Speaker<'_> {
    /// What is changed.
    pub fn what(&self, what: &What) -> String {
        match what {
            What::Measure(unknown) => format!(
                "{} ({})",
                upper_first(unknown_name(*unknown)),
                unknown_how(*unknown)
            ),
            What::OneMoreFlute { row, flutes } => {
                say!(
                    "{flutes} flutes on the {cutter}",
                    flutes,
                    cutter = self.cutter(*row)
                )
            }
            What::HoldShorter { row, stick_out } => say!(
                "{cutter} held shorter: stick-out {stick_out}",
                cutter = upper_first(&self.cutter(*row)),
                stick_out = self.length(*stick_out)
            ),
            What::Buy(cutter) => upper_first(&self.geometry(cutter)),
            What::Back(id) => say!(
                "Web backed: {backing}",
                backing = self.row(Table::Backings, id)
            ),
            What::BoltBoss => tr("Boss bolted down for the second face").to_owned(),
            What::ClearChips(id) => {
                say!(
                    "Chips cleared: {clearing}",
                    clearing = self.row(Table::Clearings, id)
                )
            }
            What::LetGo(field) => {
                let text = self.answers.text(*field).trim();
                format!("{}: {}", self.place(*field), self.answer(field.field, text))
            }
        }
    }

    /// A cutter by its sizes.
    pub fn geometry(&self, cutter: &Geometry) -> String {
        let material = tr(if cutter.carbide {
            "carbide"
        } else {
            "high-speed steel"
        });
        let kind = tr(if cutter.drill { "drill" } else { "end mill" });
        say!(
            "{diameter} {kind}, {material}, {flutes}, flutes {flute_length} long, reach {reach}, shank {shank}",
            kind,
            material,
            diameter = self.length(cutter.d),
            flutes = crate::text::plural(cutter.flutes, "flute", "flutes"),
            flute_length = self.length(cutter.flute_length),
            reach = self.length(cutter.reach),
            shank = self.length(cutter.shank)
        )
    }

    /// What a change brings: `14 min less; slots: step-down 0.3 mm to 0.8 mm; no more web softness`.
    pub fn brings(&self, gain: &Gain) -> String {
        let mut parts = vec![self.time_saved(gain)];
        if let Some(turned) = &gain.turned {
            parts.push(self.turned(turned));
        }
        let mut cleared: Vec<&str> = gain.cleared.iter().map(|c| limit_name(c.1)).collect();
        cleared.dedup();
        if !cleared.is_empty() {
            parts.push(say!(
                "no more warning of {limits}",
                limits = cleared.join(", ")
            ));
        } else if gain.saved_s < NO_TIME_S && !self.free(gain) {
            // Why else would it be told?
            parts.push(tr("milder warnings").to_owned());
        }
        parts.join("; ")
    }

    /// Whether a kept choice costs nothing that could be told.
    pub(crate) fn free(&self, gain: &Gain) -> bool {
        let kept = matches!(gain.what, What::LetGo(_));
        kept && gain.saved_s.abs() < NO_TIME_S && gain.cleared.is_empty()
    }

    fn time_saved(&self, gain: &Gain) -> String {
        let time = |s: f64| self.time(Duration::from_si(s));
        let saved = gain.saved_s;
        if saved.abs() < NO_TIME_S {
            tr("the same time").to_owned()
        } else if saved > 0.0 {
            say!("{time} less", time = time(saved))
        } else {
            say!("{time} more", time = time(-saved))
        }
    }

    fn turned(&self, turned: &Turned) -> String {
        let task = task_name(turned.task);
        let lever = lever_name(turned.lever);
        match lever_kind(turned.lever) {
            Some(kind) => say!(
                "{task}: {lever} {from} to {to}",
                task,
                lever,
                from = self.value(kind, turned.from),
                to = self.value(kind, turned.to)
            ),
            None => format!("{task}: {lever}"),
        }
    }

    /// A change and what it brings, in one line.
    pub fn gain(&self, gain: &Gain) -> String {
        let what = self.what(&gain.what);
        match gain.what {
            What::LetGo(_) => say!("{what}. Let go: {brings}", what, brings = self.brings(gain)),
            _ => format!("{what}: {}", self.brings(gain)),
        }
    }

    /// What makes a refused job possible: `... : possible in 1 h 20 min`.
    pub fn frees(&self, gain: &Gain) -> String {
        let what = self.what(&gain.what);
        let let_go = matches!(gain.what, What::LetGo(_));
        let time = self.time(gain.time);
        if let_go {
            say!("Let go of {what}: possible, {time} in all", what, time)
        } else {
            say!("{what}: possible, {time} in all", what, time)
        }
    }

    /// The changes of a kind, a line each.
    pub fn gains(&self, gains: &[Gain], kind: GainKind) -> Vec<String> {
        let of_kind = gains.iter().filter(|g| GainKind::of(g) == kind);
        of_kind.map(|g| self.gain(g)).collect()
    }
}
