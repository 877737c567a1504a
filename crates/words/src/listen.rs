//! The listen ladder: how to find a quiet depth by ear.

use crate::Speaker;
use thinwright_core::strategy::Listen;
use thinwright_quantity::{Kind, Length, Rounding, format};

impl Speaker<'_> {
    /// How to go down by ear.
    pub fn listen(&self, listen: &Listen) -> String {
        let quiet = self.length_down(listen.quiet);
        if listen.planned <= listen.quiet {
            return std::format!(
                "{} is quiet at any speed, up to {quiet}",
                self.length(listen.planned)
            );
        }
        std::format!(
            "start at {}, go deeper by {} while it stays quiet, stop at the first rising tone; {} is planned; quiet at \
             any speed up to {quiet}",
            self.length(listen.start),
            self.length(listen.increment),
            self.length(listen.planned),
        )
    }

    /// A length that must not be exceeded.
    fn length_down(&self, value: Length) -> String {
        format(Kind::Length, value.si(), self.units, Rounding::Down)
    }
}
