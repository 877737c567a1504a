//! The listen ladder: how to find a quiet depth by ear.

use crate::Speaker;
use crate::figures::written;
use crate::say;
use thinwright_core::strategy::Listen;
use thinwright_quantity::{Kind, Length, Rounding};

impl Speaker<'_> {
    /// How to go down by ear.
    pub fn listen(&self, listen: &Listen) -> String {
        let quiet = self.length_down(listen.quiet);
        if listen.planned <= listen.quiet {
            return say!(
                "{planned} is quiet at any speed, up to {quiet}",
                quiet,
                planned = self.length(listen.planned)
            );
        }
        say!(
            "start at {start}, go deeper by {increment} while it stays quiet, stop at the first rising tone; {planned} is planned; quiet at \
             any speed up to {quiet}",
            quiet,
            start = self.length(listen.start),
            increment = self.length(listen.increment),
            planned = self.length(listen.planned)
        )
    }

    /// A length that must not be exceeded.
    fn length_down(&self, value: Length) -> String {
        written(Kind::Length, value.si(), self.units, Rounding::Down)
    }
}
