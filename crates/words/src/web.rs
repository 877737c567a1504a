//! The web and the ribs under a cut, in words.

use crate::Speaker;
use thinwright_core::WebError;
use thinwright_core::strategy::{RibReport, WebReport};

impl Speaker<'_> {
    /// What the web is like under a cut.
    pub fn web(&self, web: &WebReport) -> String {
        let mut out = format!(
            "{} of web under the cut: {} at its softest place, {} from the middle",
            self.length(web.thickness),
            self.stiffness(web.stiffness),
            self.short(web.softest),
        );
        // Shown only where it makes a difference that can be read.
        let unbacked = self.stiffness(web.unbacked);
        if unbacked != self.stiffness(web.stiffness) {
            out += &format!(" ({unbacked} without backing)");
        }
        if let Some(other) = web.other_way {
            let way = if other > web.stiffness {
                "in one level, from the inside outwards"
            } else {
                "level by level"
            };
            out += &format!("; cleared {way} it would be {}", self.stiffness(other));
        }
        out += &format!(
            "; cutter and machine {}; first tone {}, teeth pass at {}",
            self.stiffness(web.chain),
            self.frequency(web.frequency),
            self.frequency(web.tooth_passing),
        );
        out
    }

    /// What the ribs beside the slots are like, sideways.
    pub fn ribs(&self, ribs: &RibReport) -> String {
        format!(
            "sideways {} between two open slots, {} while the neighbour is not cut yet",
            self.stiffness(ribs.open),
            self.stiffness(ribs.solid),
        )
    }

    /// That the web could not be worked out, and why.
    pub fn web_unknown(&self, error: &WebError) -> String {
        format!(
            "The web could not be worked out, so the limits on it were not held. {}",
            self.web_error(error)
        )
    }
}
