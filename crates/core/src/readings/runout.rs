//! Swing of a dial against the cutter's shank or a pin at the real stick-out: runout, against the feed per tooth.

use super::{Said, Unreadable, above_nothing, at_least};
use thinwright_catalog::Numbers;

/// What a swing says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Swing {
    /// Total indicated runout, m.
    pub runout: Said,
    /// The same over the feed per tooth.
    pub share: Said,
    /// Greatest chip of the tooth that stands out over that of teeth without runout, at least 1.
    pub heaviest: f64,
    /// Whether a tooth hardly cuts at all: its chip is thinner than a tenth of its share.
    pub idle_tooth: bool,
    /// Whether there is one tooth only, which shares with none.
    pub alone: bool,
}

/// Chip of a tooth over its share below which it does not cut.
const IDLE: f64 = 0.1;

/// What the full swing of a dial says of a cutter with `z` teeth at a feed per tooth.
///
/// Of two teeth opposite each other the one stands out by half of the swing, the other stands back by half: the first cuts
/// what the second leaves, so its chip grows by the whole swing, up to both shares. With more teeth neighbours differ by
/// less: by the swing times the sine of half the angle between them.
/// Units: m. Source: derived (geometry of an offset circle).
///
/// # Errors
/// What cannot be, and a feed of nothing.
pub fn runout(swing: f64, fz: f64, z: u32, numbers: &Numbers) -> Result<Swing, Unreadable> {
    let swing = at_least(swing, 0.0)?;
    let fz = above_nothing(fz).map_err(|_| Unreadable::NothingReckoned)?;
    let runout = Said::around(swing, numbers.reading_runout_um * 1.0e-6);
    let step = match z {
        0 | 1 => 0.0,
        z => swing * libm::sin(core::f64::consts::PI / f64::from(z)),
    };
    let most = f64::from(z.max(1));
    Ok(Swing {
        runout,
        share: runout.over(fz),
        heaviest: (1.0 + step / fz).min(most),
        idle_tooth: z > 1 && 1.0 - step / fz < IDLE,
        alone: z <= 1,
    })
}
