//! The web by itself: the depth up to which a rounded corner lets it be, at any speed. A sharp corner does not drive it.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};
use crate::vibration::{Scene, Whose};
use thinwright_chatter::floor::axial_quiet_depth;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::WebSong,
    source: "altintas2001",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Unknown),
    bad_ends: &[(Unknown::Kc, BadEnd::High)],
    levers: &[
        Lever::CornerRadius,
        Lever::StepDown,
        Lever::Stepover,
        Lever::WebThickness,
    ],
    measure: |case| {
        let scene = Scene::new(case, false)?;
        let web = scene.voices.iter().find(|v| v.whose == Whose::Web)?;
        let depth = axial_quiet_depth(&web.mode, &scene.cut, &scene.edge);
        Some(Measure {
            demand: case.choice.ap,
            allowed: case.job.numbers.stability_share * depth,
        })
    },
};
