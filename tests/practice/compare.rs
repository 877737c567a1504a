//! Advice against ranges: one group for each range, quantity and place.

use super::ranges::{Row, Says, Span};
use super::values::Cut;
use thinwright_catalog::Catalog;
use thinwright_core::methods::MethodId;

/// A difference of more than this factor takes a reason.
pub(crate) const FACTOR: f64 = 2.0;
/// Typed values lie on a grid: half a percent is none.
const ROUNDING: f64 = 1.005;

/// What is compared in one line of the table.
pub(crate) struct Group<'a> {
    pub(crate) row: &'a Row,
    pub(crate) quantity: String,
    pub(crate) unit: &'static str,
    pub(crate) place: String,
    /// Diameter of the cutter in mm where the range goes by it.
    pub(crate) d: Option<f64>,
    pub(crate) span: Option<Span>,
    /// The word expected instead of a range.
    pub(crate) word: String,
    pub(crate) values: Vec<f64>,
    pub(crate) words: Vec<String>,
    /// Values outside because the machine ends there.
    pub(crate) ended: usize,
    /// Factors by which values lie under and over the range; 1 where none does.
    pub(crate) below: f64,
    pub(crate) above: f64,
    /// The cuts with these factors.
    pub(crate) worst: [String; 2],
}

impl<'a> Group<'a> {
    pub(crate) fn new(row: &'a Row, quantity: &str, unit: &'static str, place: &str) -> Group<'a> {
        Group {
            row,
            quantity: quantity.to_owned(),
            unit,
            place: place.to_owned(),
            d: None,
            span: None,
            word: String::new(),
            values: Vec::new(),
            words: Vec::new(),
            ended: 0,
            below: 1.0,
            above: 1.0,
            worst: [String::new(), String::new()],
        }
    }

    pub(crate) fn add(
        &mut self,
        value: f64,
        told: impl Fn() -> String,
        ended: impl Fn(bool) -> bool,
    ) {
        let Some(span) = self.span else { return };
        self.values.push(value);
        let below = span.low.map_or(1.0, |low| low / value);
        let above = span.high.map_or(1.0, |high| value / high);
        if below.max(above) > ROUNDING && ended(below > above) {
            self.ended += 1;
            return;
        }
        if below > self.below {
            (self.below, self.worst[0]) = (below, told());
        }
        if above > self.above {
            (self.above, self.worst[1]) = (above, told());
        }
    }

    /// Words other than the expected one.
    pub(crate) fn other_words(&self) -> usize {
        self.words.iter().filter(|w| **w != self.word).count()
    }

    /// The sides on which the difference takes a reason, with its factor.
    pub(crate) fn differences(&self) -> Vec<(&'static str, f64)> {
        let mut found = Vec::new();
        for (side, by) in [("below", self.below), ("above", self.above)] {
            if by > FACTOR * ROUNDING {
                found.push((side, by));
            }
        }
        if self.other_words() > 0 {
            found.push(("other", 1.0));
        }
        found
    }
}

fn applies(row: &Row, cut: &Cut) -> bool {
    let method = cut.step.method.key();
    let task = format!("{:?}", cut.step.task);
    row.word("number").is_empty()
        && row.word("machine").is_empty()
        && row.admits("materials", &cut.job.material.id)
        && row.admits("machines", &cut.job.machine.class.id)
        && row.admits("cutter", cut.cutter())
        && row.admits("methods", method)
        && row.admits("task", &task)
        && row.between(["d_from", "d_to"], cut.d())
        && row.between(["ae_from", "ae_to"], cut.stepover())
        && (row.word("slot_tolerance").is_empty() || cut.close_slots())
}

/// Adds the values of a step to the groups of every range that is for it.
pub(crate) fn gather<'a>(groups: &mut Vec<Group<'a>>, rows: &'a [Row], place: &str, cut: &Cut) {
    for row in rows.iter().filter(|row| applies(row, cut)) {
        for (quantity, unit, says) in &row.says {
            let d = matches!(says, Says::ByDiameter(_)).then(|| cut.d());
            let same = |g: &Group| {
                g.row.id == row.id && g.quantity == *quantity && g.place == place && g.d == d
            };
            let span = says.at(cut.d());
            let value = cut.value(quantity).filter(|_| span.is_some());
            let word = matches!(says, Says::Word(_));
            if value.is_none() && !word {
                continue;
            }
            let at = groups.iter().position(same).unwrap_or_else(|| {
                groups.push(Group::new(row, quantity, unit, place));
                groups.len() - 1
            });
            let group = &mut groups[at];
            (group.d, group.span) = (d, span);
            if let Says::Word(expected) = says {
                group.word.clone_from(expected);
                group.words.push(cut.step.method.key().to_owned());
            }
            if let Some(value) = value {
                group.add(
                    value,
                    || cut.told(),
                    |below| cut.at_machines_end(quantity, below),
                );
            }
        }
    }
}

/// Entries of a class of machines that a row names: both ends of a range.
fn machine_entry(catalog: &Catalog, id: &str, entry: &str) -> Vec<f64> {
    let machine = catalog.machine(id).unwrap();
    match entry {
        "stiffness_n_per_um" => vec![
            machine.stiffness.low.si() * 1.0e-6,
            machine.stiffness.high.si() * 1.0e-6,
        ],
        "torque_n_m" => {
            let torque = |(n, p): &(
                thinwright_quantity::SpindleSpeed,
                thinwright_quantity::Power,
            )| { p.si() / (core::f64::consts::TAU * n.si()) };
            vec![machine.curve.iter().map(torque).fold(0.0, f64::max)]
        }
        "acceleration_mm_per_s2" => vec![machine.acceleration.si() * 1.0e3],
        "runout_mm" => vec![
            machine.runout.low.si() * 1.0e3,
            machine.runout.high.si() * 1.0e3,
        ],
        other => panic!("no entry {other}"),
    }
}

/// The groups of what stands in the tables: chosen numbers and classes of machines.
pub(crate) fn tables<'a>(groups: &mut Vec<Group<'a>>, rows: &'a [Row], catalog: &Catalog) {
    for row in rows {
        let (number, machine) = (row.word("number"), row.word("machine"));
        let (place, values) = if !number.is_empty() {
            let found = catalog.number_row(number);
            let value = found.unwrap_or_else(|| panic!("no number {number}")).value;
            ("numbers.json", vec![value])
        } else if !machine.is_empty() {
            (
                "machines.json",
                machine_entry(catalog, machine, row.word("entry")),
            )
        } else {
            continue;
        };
        let (quantity, unit, says) = &row.says[0];
        let mut group = Group::new(row, quantity, unit, place);
        group.span = says.at(0.0);
        for value in values {
            group.add(value, String::new, |_| false);
        }
        groups.push(group);
    }
}

/// Methods named by rows that are none.
pub(crate) fn unknown_methods(rows: &[Row]) -> Vec<String> {
    let known = |word: &str| MethodId::all().any(|m| m.key() == word);
    let named = rows.iter().flat_map(|row| row.word("methods").split(' '));
    named
        .filter(|word| !word.is_empty() && !known(word))
        .map(str::to_owned)
        .collect()
}
