//! The error budget of turning the part over.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use crate::text::list;
use thinwright_core::strategy::TurnOver;

/// What a contribution is called, by the id of its row in the table of numbers.
fn contribution(id: &str) -> &str {
    match id {
        "seat_error_um" => tr("seat"),
        "touch_error_um" => tr("height touch"),
        "pin_error_um" => tr("pins"),
        _ => id,
    }
}

impl Speaker<'_> {
    /// The budget on one line.
    pub fn turn_over(&self, budget: &TurnOver) -> String {
        let parts: Vec<String> = budget
            .parts
            .iter()
            .map(|(id, size)| format!("{} {}", contribution(id), self.short(*size)))
            .collect();
        let total = self.short(budget.total);
        let parts = list(&parts);
        match budget.allowed {
            Some(allowed) => {
                say!(
                    "turning over may cost the web {total} of its {allowed} ({parts})",
                    total,
                    parts,
                    allowed = self.short(allowed)
                )
            }
            None => say!(
                "turning over may cost the web {total} ({parts})",
                total,
                parts
            ),
        }
    }
}
