//! What changes would bring, one of each kind.

use super::outcomes::Odd;
use thinwright_core::estimate::UNKNOWNS;
use thinwright_core::field::{Field, FieldId};
use thinwright_core::gain::{Gain, Geometry, Turned, What};
use thinwright_core::limits::LimitId;
use thinwright_core::strategy::Lever;
use thinwright_core::task::TaskKind;

/// A gain of every kind.
pub(super) fn gains(odd: &mut Odd) -> Vec<Gain> {
    let geometry = Geometry {
        drill: false,
        d: odd.m(),
        flutes: 3,
        flute_length: odd.m(),
        reach: odd.m(),
        shank: odd.m(),
        carbide: true,
    };
    let all = [
        What::Measure(UNKNOWNS[0]),
        What::OneMoreFlute { row: 2, flutes: 3 },
        What::HoldShorter {
            row: 0,
            stick_out: odd.m(),
        },
        What::Buy(geometry),
        What::Back("putty".to_owned()),
        What::BoltBoss,
        What::ClearChips("mist".to_owned()),
        What::LetGo(FieldId::in_row(Field::PinCutter, 9)),
        What::LetGo(Field::PinMostSpeed.into()),
    ];
    let each = all.into_iter().enumerate();
    each.map(|(i, what)| Gain {
        what,
        time: odd.s(),
        saved_s: -odd.next(),
        cleared: vec![(TaskKind::FloorSkim, LimitId::WebLift); i % 3],
        turned: (i % 2 == 0).then(|| Turned {
            task: TaskKind::SlotsBlind,
            lever: Lever::StepDown,
            from: odd.next(),
            to: odd.next(),
        }),
    })
    .collect()
}
