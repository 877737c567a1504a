//! What a push test gave.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::job::Push;
use thinwright_quantity::{Kind, Length};

impl Speaker<'_> {
    /// What a push test gave, a line each.
    pub fn push(&self, push: &Push) -> Vec<String> {
        let axes = push.axes.iter().zip(["X", "Y", "Z"]);
        let mut out: Vec<String> = axes
            .filter_map(|(pushed, axis)| {
                let pushed = pushed.as_ref()?;
                let k = |si: f64| self.value(Kind::Stiffness, si);
                let back = match Length::from_si(pushed.lost) {
                    lost if lost.si() > 0.0 => {
                        say!(
                            "{length} of it did not come back",
                            length = self.short(lost)
                        )
                    }
                    _ => tr("all of it came back").to_owned(),
                };
                Some(say!(
                    "Along {axis}: {stiffness}, from {low} to {high}; {back}.",
                    axis,
                    back,
                    stiffness = k(pushed.stiffness.likely),
                    low = k(pushed.stiffness.low),
                    high = k(pushed.stiffness.high)
                ))
            })
            .collect();
        let sideways = push.axes[..2].iter().flatten().count();
        out.push(tr(match sideways {
            0 => "Along Z alone it says nothing of pushes sideways: the machine's class still stands.",
            1 => "It takes the place of the class; what did not come back counts as backlash.",
            _ => "The softer of X and Y takes the place of the class; what did not come back counts as backlash.",
        }).to_owned());
        out
    }
}
