//! Setups in words.

use crate::Speaker;
use thinwright_core::field::Table;
use thinwright_core::strategy::Setup;
use thinwright_core::task::Face;

/// A face's name.
pub fn face(face: Face) -> &'static str {
    match face {
        Face::A => "face A",
        Face::B => "face B",
    }
}

impl Speaker<'_> {
    /// How a setup is clamped: `face A up; vise; stock 18 mm; web not backed`.
    pub fn setup(&self, setup: &Setup) -> String {
        let mut out = format!(
            "{} up; {}; stock {} thick",
            face(setup.face_up),
            self.row(Table::Holds, &setup.hold),
            self.length(setup.stock)
        );
        if setup.backing != "none" {
            out += &format!(
                "; web backed: {}",
                self.row(Table::Backings, &setup.backing)
            );
        }
        if setup.boss_bolted {
            out += "; boss bolted down";
        }
        out
    }
}
