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
    /// First tone of the web, as a factor on what is worked out.
    WebTone,
}

/// All unknowns, in order.
pub const UNKNOWNS: [Unknown; 11] = [
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
    Unknown::WebTone,
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
    /// Neither end need be the worse one: a fixed number of values by lot stand for the range.
    Sampled,
}

/// Worlds drawn where a bad end is sampled: both ends of the range, and 59 by lot.
///
/// The worst of 59 worlds drawn by lot is, at a confidence of 95 %, no milder than 95 % of all: 0.95^59 = 0.048.
/// Source: wilks1941.
pub const WORLDS: u32 = 2 + 59;

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
                BadEnd::Sampled => estimate.likely,
            };
        }
        draw
    }

    /// The named unknowns at their bad ends, and those that are sampled as in the world of this number.
    pub fn in_world(estimates: &Estimates, bad_ends: &[(Unknown, BadEnd)], world: u32) -> Draw {
        let mut draw = Draw::at(estimates, bad_ends);
        for (unknown, end) in bad_ends {
            if *end == BadEnd::Sampled {
                let i = *unknown as usize;
                let estimate = &estimates[i];
                let share = match world {
                    0 => 0.0,
                    1 => 1.0,
                    _ => lot(world, i),
                };
                draw.0[i] = estimate.low + share * (estimate.high - estimate.low);
            }
        }
        draw
    }

    /// The value of one unknown.
    pub fn get(&self, unknown: Unknown) -> f64 {
        self.0[unknown as usize]
    }
}

/// A number from 0 to 1 that looks drawn by lot and is the same everywhere: splitmix64 of world and unknown.
fn lot(world: u32, unknown: usize) -> f64 {
    let mut z = u64::from(world)
        .wrapping_mul(0x9E37_79B9_7F4A_7C15)
        .wrapping_add((unknown as u64 + 1).wrapping_mul(0xD1B5_4A32_D192_ED03));
    z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^= z >> 31;
    f64::from(u32::try_from(z >> 32).unwrap_or(0)) / f64::from(u32::MAX)
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

    #[test]
    fn sampled_worlds_fill_the_range_and_stay_the_same() {
        let estimates: Estimates = std::array::from_fn(|_| Estimate::range(1.0, 2.0, 3.0));
        let ends = [(Unknown::WebTone, BadEnd::Sampled)];
        let draws: Vec<f64> = (0..WORLDS)
            .map(|w| Draw::in_world(&estimates, &ends, w).get(Unknown::WebTone))
            .collect();
        assert!(draws.iter().all(|d| (1.0..=3.0).contains(d)));
        // Ten drawers of the range: none is empty, none holds more than a third.
        let in_drawer = |k: i32| {
            let low = 1.0 + 0.2 * f64::from(k);
            draws
                .iter()
                .filter(|d| **d >= low && **d < low + 0.2)
                .count()
        };
        assert!((0..10).all(|k| (1..20).contains(&in_drawer(k))));
        let again = Draw::in_world(&estimates, &ends, 7).get(Unknown::WebTone);
        assert!((again - draws[7]).abs() < f64::EPSILON);
        // The confidence that the number stands for.
        assert!(0.95_f64.powi(59) < 0.05 && 0.95_f64.powi(58) > 0.05);
    }
}
