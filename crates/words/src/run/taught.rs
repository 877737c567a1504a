//! What was learned, in words: ranges before and after.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::field::Field;
use thinwright_core::job::Job;
use thinwright_core::learn::{LEARNED, Quantity};
use thinwright_quantity::Kind;

/// What is learned of, as it stands in a table.
fn quantity_name(quantity: Quantity) -> &'static str {
    tr(match quantity {
        Quantity::Stiffness => "Stiffness of the machine at the cutter",
        Quantity::Kc => "Cutting force over the table's likely value",
        Quantity::Damping => "Damping at the cutter",
    })
}

impl Speaker<'_> {
    /// The range of a quantity in a job.
    pub fn range_of(&self, job: &Job, quantity: Quantity) -> String {
        let estimate = job.estimates[quantity.unknown() as usize];
        let (kind, one) = match quantity {
            Quantity::Stiffness => (Kind::Stiffness, 1.0),
            Quantity::Kc => (Kind::Ratio, job.material.kc1_1.likely.si()),
            Quantity::Damping => (Kind::Ratio, 1.0),
        };
        say!(
            "{from} to {to}",
            from = self.value(kind, estimate.low / one),
            to = self.value(kind, estimate.high / one)
        )
    }

    /// Ranges that differ between two jobs: name, before, after.
    pub fn ranges(&self, before: &Job, after: &Job) -> Vec<[String; 3]> {
        let each = Quantity::ALL.into_iter().map(|quantity| {
            [
                quantity_name(quantity).to_owned(),
                self.range_of(before, quantity),
                self.range_of(after, quantity),
            ]
        });
        each.filter(|[_, before, after]| before != after).collect()
    }

    /// One answer that a record has changed, as a line of the history.
    pub fn learned_line(&self, field: Field, before: &str, after: &str) -> String {
        let what = crate::field(field).label;
        let kind = match LEARNED.iter().find(|(_, l, h)| [*l, *h].contains(&field)) {
            Some((Quantity::Stiffness, _, _)) => Kind::Stiffness,
            _ => Kind::Ratio,
        };
        let read = |text: &str| match thinwright_quantity::parse(kind, text, self.answers.units) {
            Ok(value) => self.value(kind, value),
            Err(_) => tr("as the table says").to_owned(),
        };
        say!(
            "{what}: {before} before, {after} since",
            what,
            before = read(before),
            after = read(after)
        )
    }
}
