//! The web and the ribs under a cut, in words.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::WebError;
use thinwright_core::strategy::{RibReport, WebReport};

impl Speaker<'_> {
    /// What the web is like under a cut.
    pub fn web(&self, web: &WebReport) -> String {
        let mut out = say!(
            "{thickness} of web under the cut: {stiffness} at its softest place, {distance} from the middle",
            thickness = self.length(web.thickness),
            stiffness = self.stiffness(web.stiffness),
            distance = self.short(web.softest)
        );
        // Shown only where it makes a difference that can be read.
        let unbacked = self.stiffness(web.unbacked);
        if unbacked != self.stiffness(web.stiffness) {
            let aside = say!("{stiffness} without backing", stiffness = unbacked);
            out = format!("{out} ({aside})");
        }
        let mut out = vec![out];
        if let Some(other) = web.other_way {
            let stiffness = self.stiffness(other);
            out.push(if other > web.stiffness {
                say!(
                    "cleared in one level, from the inside outwards it would be {stiffness}",
                    stiffness
                )
            } else {
                say!("cleared level by level it would be {stiffness}", stiffness)
            });
        }
        out.push(say!(
            "cutter and machine {stiffness}; first tone {frequency}, teeth pass at {tooth_passing}",
            stiffness = self.stiffness(web.chain),
            frequency = self.frequency(web.frequency),
            tooth_passing = self.frequency(web.tooth_passing)
        ));
        out.join("; ")
    }

    /// What the ribs beside the slots are like, sideways.
    pub fn ribs(&self, ribs: &RibReport) -> String {
        say!(
            "sideways {open} between two open slots, {solid} while the neighbour is not cut yet",
            open = self.stiffness(ribs.open),
            solid = self.stiffness(ribs.solid)
        )
    }

    /// That the web could not be worked out, and why.
    pub fn web_unknown(&self, error: &WebError) -> String {
        let unknown = tr("The web could not be worked out, so the limits on it were not held.");
        format!("{unknown} {}", self.web_error(error))
    }
}
