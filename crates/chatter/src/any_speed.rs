//! The depth that is quiet at any spindle speed, for one mode in feed and one across.

use crate::edge::Edge;
use crate::floquet::{Moving, System};
use crate::mode::{Cut, Mode};
use crate::zero_order::quiet_depth;
use core::f64::consts::TAU;

/// Vibrations between two teeth at which an interrupted cut is worst: just short of half a one, where every other tooth
/// cuts deep.
const CYCLES: [f64; 5] = [0.46, 0.48, 0.49, 0.495, 0.5];
/// The widest detuning of y against x that is looked at \[-\].
pub const DETUNING_MAX: f64 = 0.10;
/// Shares of the widest detuning that are looked at, upwards and downwards.
const DETUNINGS: [f64; 4] = [0.0, 0.2, 0.5, 1.0];

/// Depth \[m\] up to which the cut is quiet at any spindle speed, whatever the detuning of y against x up to [`DETUNING_MAX`].
///
/// Equal modes are often the worst case (a tenth of what one direction alone would allow, in a slot), but nobody knows how
/// equal they are: this is the pessimistic end.
///
/// The least of the zero-order minimum (`altintas1995`, from memory), which holds for many vibrations between two teeth, and
/// of the limits over one tooth period ([`crate::floquet`]) about half a vibration between two teeth: there the average
/// promises up to 1.9 times too much in light cuts and for few teeth (down-milling at 5 %, one tooth: 0.53 of it). Own
/// combination, held within 8 % above the least of a scan over speeds by a test. Infinite when no depth sings; impossible input gives 0.
#[must_use]
pub fn quiet_at_any_speed(x: &Mode, y: &Mode, cut: &Cut) -> f64 {
    let mut least = quiet_depth(x, y, cut);
    if least <= 0.0 {
        return least;
    }
    let moves = x.k.is_finite() && y.k.is_finite();
    for share in DETUNINGS {
        let shift = 1.0 + DETUNING_MAX * share;
        for factor in [shift, 1.0 / shift] {
            let y = Mode {
                omega_n: y.omega_n * factor,
                ..*y
            };
            least = least.min(at_detuning(x, &y, cut));
            if share <= 0.0 || !moves {
                break;
            }
        }
    }
    least
}

fn at_detuning(x: &Mode, y: &Mode, cut: &Cut) -> f64 {
    let mut least = quiet_depth(x, y, cut);
    let moving = [Moving::x(*x), Moving::y(*y)];
    let Some(system) = System::new(&moving, cut, &Edge::sharp()) else {
        return least;
    };
    for mode in [x, y].into_iter().filter(|mode| mode.k.is_finite()) {
        for cycles in CYCLES {
            let n = mode.omega_n / (TAU * cycles * f64::from(cut.z));
            let most = if least.is_finite() {
                least
            } else {
                return least;
            };
            if let Some(found) = system.limit(n, most) {
                least = least.min(found.depth);
            }
        }
    }
    least
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{down_milling, slotting, up_milling};

    #[test]
    fn no_speed_sings_much_shallower() {
        let mut furthest = 1.0_f64;
        for z in 1..=4 {
            let arcs = [
                slotting(),
                up_milling(0.5),
                down_milling(0.2),
                up_milling(0.08),
                down_milling(0.05),
            ];
            for (phi_st, phi_ex) in arcs {
                let cut = Cut {
                    z,
                    phi_st,
                    phi_ex,
                    kt: 7.5e8,
                    kr_ratio: 0.3,
                };
                let mode = |f: f64| Mode {
                    k: 2e6,
                    zeta: 0.02,
                    omega_n: TAU * f,
                };
                let quiet = quiet_at_any_speed(&mode(900.0), &mode(900.0), &cut);
                for detuning in [1.0, 1.03, 1.07, 1.1] {
                    let moving = [Moving::x(mode(900.0)), Moving::y(mode(900.0 * detuning))];
                    let system = System::new(&moving, &cut, &Edge::sharp()).unwrap();
                    for i in 0..80 {
                        let cycles = 0.25 * libm::pow(24.0, f64::from(i) / 79.0);
                        let n = 900.0 / (cycles * f64::from(z));
                        if let Some(found) = system.limit(n, quiet) {
                            furthest = furthest.min(found.depth / quiet);
                        }
                    }
                }
            }
        }
        assert!(furthest > 0.92, "{furthest}");
        assert!(furthest < 1.0, "the scan found nothing: it is none");
    }

    #[test]
    fn odd_input_promises_nothing() {
        let good = Mode {
            k: 2e6,
            zeta: 0.02,
            omega_n: 5000.0,
        };
        let cut = Cut {
            z: 2,
            phi_st: 0.0,
            phi_ex: 1.0,
            kt: 7e8,
            kr_ratio: 0.3,
        };
        assert!(quiet_at_any_speed(&good, &Mode::rigid(), &cut) > 0.0);
        assert!(quiet_at_any_speed(&Mode::rigid(), &Mode::rigid(), &cut).is_infinite());
        let bad = Cut {
            kt: f64::NAN,
            ..cut
        };
        assert!(quiet_at_any_speed(&good, &good, &bad) <= 0.0);
    }
}
