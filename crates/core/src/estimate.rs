//! What is not known for sure: ranges, and the end at which a limit is held.

/// How an answer is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Known {
    /// Measured on this machine or part.
    Measured,
    /// Read off a data sheet or plate.
    DataSheet,
    /// Estimated, or left to the table.
    Estimated,
}

/// What is not known for sure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unknown {
    /// Specific cutting force, as a factor on its likely value.
    Kc,
    /// Stiffness of the machine at the cutter, sideways, N/m.
    MachineStiffness,
    /// Total indicated runout at the cutter, m.
    Runout,
    /// Thrust that an axis has before it stalls, N.
    Thrust,
    /// Friction under the hold.
    Friction,
    /// Clamping force of the hold, N.
    Grip,
    /// Winkler modulus of the backing, N/m3.
    BedStiffness,
    /// Efficiency from motor to cutter.
    Efficiency,
    /// Damping ratio at the cutter's tip.
    Damping,
    /// Rupture strength of the cutter's material, as a factor on its likely value.
    Rupture,
}

/// All unknowns, in order.
pub const UNKNOWNS: [Unknown; 10] = [
    Unknown::Kc,
    Unknown::MachineStiffness,
    Unknown::Runout,
    Unknown::Thrust,
    Unknown::Friction,
    Unknown::Grip,
    Unknown::BedStiffness,
    Unknown::Efficiency,
    Unknown::Damping,
    Unknown::Rupture,
];

/// A value with its range, in SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The lower end.
    pub low: f64,
    /// The likely value.
    pub likely: f64,
    /// The upper end.
    pub high: f64,
    /// How it is known.
    pub known: Known,
}

impl Estimate {
    /// A value taken as it stands.
    pub fn exact(value: f64, known: Known) -> Estimate {
        Estimate {
            low: value,
            likely: value,
            high: value,
            known,
        }
    }

    /// A range around a likely value.
    pub fn range(low: f64, likely: f64, high: f64) -> Estimate {
        Estimate {
            low,
            likely,
            high,
            known: Known::Estimated,
        }
    }

    /// The same, measured, and found to be as likely as it seemed: within the spread of a measurement.
    pub(crate) fn settled(self, share: f64) -> Estimate {
        Estimate {
            low: self.low.max(self.likely * (1.0 - share)),
            high: self.high.min(self.likely * (1.0 + share)),
            likely: self.likely,
            known: Known::Measured,
        }
    }

    /// A typed value with a relative spread to both sides.
    pub fn spread(value: f64, share: f64, known: Known) -> Estimate {
        Estimate {
            low: value * (1.0 - share),
            likely: value,
            high: value * (1.0 + share),
            known,
        }
    }
}

/// The estimates of a job, one per unknown.
pub type Estimates = [Estimate; UNKNOWNS.len()];

/// The end of an unknown's range that is worse for a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BadEnd {
    /// The limit is closest at the low end.
    Low,
    /// The limit is closest at the high end.
    High,
}

/// One concrete world: a value for every unknown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Draw(pub [f64; UNKNOWNS.len()]);

impl Draw {
    /// Everything at its likely value.
    pub fn likely(estimates: &Estimates) -> Draw {
        Draw(std::array::from_fn(|i| estimates[i].likely))
    }

    /// The named unknowns at their bad ends, the others at their likely values.
    pub fn at(estimates: &Estimates, bad_ends: &[(Unknown, BadEnd)]) -> Draw {
        let mut draw = Draw::likely(estimates);
        for (unknown, end) in bad_ends {
            let estimate = &estimates[*unknown as usize];
            draw.0[*unknown as usize] = match end {
                BadEnd::Low => estimate.low,
                BadEnd::High => estimate.high,
            };
        }
        draw
    }

    /// The value of one unknown.
    pub fn get(&self, unknown: Unknown) -> f64 {
        self.0[unknown as usize]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_draw_takes_the_declared_ends_only() {
        let estimates: Estimates = std::array::from_fn(|_| Estimate::range(1.0, 2.0, 3.0));
        let draw = Draw::at(
            &estimates,
            &[(Unknown::Kc, BadEnd::High), (Unknown::Grip, BadEnd::Low)],
        );
        for unknown in UNKNOWNS {
            let expected = match unknown {
                Unknown::Kc => 3.0,
                Unknown::Grip => 1.0,
                _ => 2.0,
            };
            assert!(
                (draw.get(unknown) - expected).abs() < f64::EPSILON,
                "{unknown:?}"
            );
        }
    }
}
