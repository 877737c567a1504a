//! Setups in words.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::field::Table;
use thinwright_core::strategy::Setup;
use thinwright_core::task::Face;

/// A face's name.
pub fn face(face: Face) -> &'static str {
    tr(match face {
        Face::A => "face A",
        Face::B => "face B",
    })
}

impl Speaker<'_> {
    /// How a setup is clamped: `face A up; vise; stock 18 mm; web not backed`.
    pub fn setup(&self, setup: &Setup) -> String {
        let mut out = vec![say!(
            "{face} up; {hold}; stock {thickness} thick",
            face = face(setup.face_up),
            hold = self.row(Table::Holds, &setup.hold),
            thickness = self.length(setup.stock)
        )];
        if setup.backing != "none" {
            let backing = self.row(Table::Backings, &setup.backing);
            out.push(say!("web backed: {backing}", backing));
        }
        if setup.boss_bolted {
            out.push(tr("boss bolted down").to_owned());
        }
        out.join("; ")
    }
}
