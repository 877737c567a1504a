//! Is a tone a multiple of the spindle's speed, of the teeth's rate, or neither?

/// Where the room for error fills more than this share of the distance between lines, one line or another is near by
/// chance as often as not: then nearness says nothing.
const TELLING: f64 = 0.5;

/// The multiple of a rate that is nearest to a frequency.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Nearest {
    /// Which multiple, at least 1.
    pub multiple: f64,
    /// Its frequency [1/s].
    pub frequency: f64,
    /// How far the tone is above it, as a share of the tone's frequency; below is negative.
    pub off: f64,
    /// What of the distance between two lines the room for error takes up, both sides; above a half nearness says nothing.
    pub filled: f64,
}

/// What a tone is, seen from the spindle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// On a multiple of the rate of teeth: the cut itself.
    Teeth,
    /// On a multiple of the speed, not of the teeth: runout, a bent or chipped tooth.
    Revolution,
    /// On no line: what chatter is like.
    Off,
    /// Not on a multiple of the rate of teeth; those of the speed are too dense to say more.
    NotTeeth,
    /// Even the multiples of the rate of teeth are too dense to say anything.
    Unclear,
}

/// A tone beside the lines of the spindle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lines {
    /// Nearest multiple of the speed n.
    pub revolution: Nearest,
    /// Nearest multiple of z n.
    pub teeth: Nearest,
    /// What follows.
    pub origin: Origin,
}

fn nearest(frequency: f64, rate: f64, error: f64) -> Nearest {
    let multiple = libm::round(frequency / rate).max(1.0);
    Nearest {
        multiple,
        frequency: multiple * rate,
        off: (frequency - multiple * rate) / frequency,
        filled: 2.0 * error * frequency / rate,
    }
}

/// A tone beside the multiples of the speed n and of the rate of teeth z n.
///
/// The k-th line is off by k times what the speed is off, that is by the same share of its frequency as the speed: `error`
/// is that share, with the tone's own, say 0.01. Chatter of an interrupted cut lies between those lines; what a period of
/// teeth repeats lies on them.
///
/// Units: frequency [1/s]; speed n [1/s]; z teeth; error, a share. Nothing where one of them is not a number above 0.
/// Source: any text on machine-tool dynamics, from memory; where lines are too dense it is our own rule.
#[must_use]
pub fn lines(frequency: f64, n: f64, z: u32, error: f64) -> Option<Lines> {
    let given = [frequency, n, f64::from(z), error];
    if !given.iter().all(|x| x.is_finite() && *x > 0.0) {
        return None;
    }
    let revolution = nearest(frequency, n, error);
    let teeth = nearest(frequency, n * f64::from(z), error);
    let on = |line: Nearest| line.off.abs() <= error;
    let tells = |line: Nearest| line.filled <= TELLING;
    let origin = match () {
        () if !tells(teeth) => Origin::Unclear,
        () if on(teeth) => Origin::Teeth,
        () if !tells(revolution) => Origin::NotTeeth,
        () if on(revolution) => Origin::Revolution,
        () => Origin::Off,
    };
    Some(Lines {
        revolution,
        teeth,
        origin,
    })
}

#[cfg(test)]
mod tests;
