//! What a push test gave.

use crate::Speaker;
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
                        format!("{} of it did not come back", self.short(lost))
                    }
                    _ => "all of it came back".to_owned(),
                };
                Some(format!(
                    "Along {axis}: {}, from {} to {}; {back}.",
                    k(pushed.stiffness.likely),
                    k(pushed.stiffness.low),
                    k(pushed.stiffness.high),
                ))
            })
            .collect();
        let sideways = push.axes[..2].iter().flatten().count();
        out.push(match sideways {
            0 => "Along Z alone it says nothing of pushes sideways: the machine's class still stands.",
            1 => "It takes the place of the class; what did not come back counts as backlash.",
            _ => "The softer of X and Y takes the place of the class; what did not come back counts as backlash.",
        }.to_owned());
        out
    }
}
