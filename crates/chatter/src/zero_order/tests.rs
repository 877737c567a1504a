use super::*;
use crate::any_speed::quiet_at_any_speed;
use crate::directional::{down_milling, slotting, up_milling};

fn mode(f_n: f64, zeta: f64, k: f64) -> Mode {
    Mode {
        k,
        zeta,
        omega_n: 2.0 * PI * f_n,
    }
}

fn cut(z: u32, arc: (f64, f64), kt: f64, kr_ratio: f64) -> Cut {
    Cut {
        z,
        phi_st: arc.0,
        phi_ex: arc.1,
        kt,
        kr_ratio,
    }
}

/// Source: closed form of one mode, `tlusty1963` (from memory).
#[test]
fn one_mode_agrees_with_the_closed_form() {
    for zeta in [0.002, 0.011, 0.2, 0.6, 1.5] {
        let x = mode(922.0, zeta, 1.34e6);
        for arc in [
            slotting(),
            up_milling(0.05),
            up_milling(0.5),
            down_milling(0.5),
            down_milling(0.1),
        ] {
            let cut = cut(2, arc, 600e6, 1.0 / 3.0);
            let scanned = quiet_depth(&x, &Mode::rigid(), &cut);
            let closed = quiet_depth_one_mode(&x, &cut);
            assert!(
                (scanned / closed - 1.0).abs() < 1e-8,
                "{zeta}: {scanned} against {closed}"
            );
        }
    }
}

/// The coarse look around each mode, against a dense sweep over all frequencies.
#[test]
fn nothing_is_missed_by_the_coarse_look() {
    let cut_slot = cut(3, slotting(), 800e6, 0.3);
    for detune in [1.0, 1.02, 1.05, 1.1, 1.2, 1.5, 3.0] {
        for (zx, zy) in [(0.02, 0.02), (0.01, 0.05), (0.08, 0.02)] {
            let (x, y) = (mode(1000.0, zx, 2e6), mode(1000.0 * detune, zy, 3e6));
            let system = System::new(&x, &y, &cut_slot).unwrap();
            let dense = (1..400_000)
                .map(|i| system.gain(2.0 * PI * f64::from(i) * 0.02))
                .fold(f64::NEG_INFINITY, f64::max);
            let found = system.largest_gain();
            assert!(
                found >= dense * (1.0 - 1e-6),
                "{detune} {zx} {zy}: {found} below {dense}"
            );
        }
    }
}

/// Source: own independent computation in another language (a Floquet sweep confirms the two-mode minima): slot, 3 teeth,
/// aluminium 7075 (767 and 169 N/mm^2), 2 N/um, 2 % damping, the mode across of equal
/// mass; printed to 0.001 mm.
#[test]
fn equal_modes_cost_a_slot_most_of_its_depth() {
    let x = mode(1500.0, 0.02, 2e6);
    let slot = cut(3, slotting(), 767.01e6, 168.8 / 767.01);
    let depth_mm = |y: &Mode| 1e3 * quiet_depth(&x, y, &slot);
    assert!((depth_mm(&Mode::rigid()) - 0.645).abs() < 0.0006);
    for (apart, printed) in [(1.0, 0.069), (1.05, 0.112), (1.10, 0.164), (1.20, 0.231)] {
        let found = depth_mm(&mode(1500.0 * apart, 0.02, 2e6 * apart * apart));
        assert!(
            (found - printed).abs() < 0.0006,
            "{apart}: {found} against {printed}"
        );
    }
    let apart = mode(1800.0, 0.02, 2e6);
    assert!(quiet_at_any_speed(&x, &apart, &slot) < quiet_depth(&x, &apart, &slot));
}

#[test]
fn impossible_input_promises_nothing() {
    let good = mode(1000.0, 0.02, 2e6);
    let slot = cut(3, slotting(), 700e6, 0.3);
    for bad in [
        Mode {
            k: f64::NAN,
            ..good
        },
        Mode { zeta: -0.1, ..good },
        Mode {
            omega_n: 0.0,
            ..good
        },
        Mode {
            omega_n: f64::INFINITY,
            ..good
        },
    ] {
        assert!(quiet_depth(&bad, &good, &slot) <= 0.0);
        assert!(quiet_depth_one_mode(&bad, &slot) <= 0.0);
    }
    for bad in [
        Cut { z: 0, ..slot },
        Cut {
            phi_ex: 0.0,
            ..slot
        },
        Cut {
            kt: f64::NAN,
            ..slot
        },
    ] {
        assert!(quiet_depth(&good, &good, &bad) <= 0.0);
    }
}

fn odd_cases() -> Vec<(Mode, Cut)> {
    let odd = [
        0.0,
        -1.0,
        f64::NAN,
        f64::INFINITY,
        5e-324,
        f64::MIN_POSITIVE,
        f64::MAX,
        1e-3,
        0.5,
        1e3,
        2e6,
    ];
    let x = mode(1000.0, 0.02, 2e6);
    let slot = cut(3, slotting(), 700e6, 0.3);
    let mut all = Vec::new();
    for p in odd {
        for q in odd {
            all.push((Mode { k: p, zeta: q, ..x }, slot));
            all.push((
                Mode {
                    k: p,
                    omega_n: q,
                    ..x
                },
                slot,
            ));
            all.push((
                Mode {
                    zeta: p,
                    omega_n: q,
                    ..x
                },
                slot,
            ));
            all.push((
                x,
                Cut {
                    kt: p,
                    kr_ratio: q,
                    ..slot
                },
            ));
            all.push((
                x,
                Cut {
                    phi_st: p,
                    phi_ex: q,
                    ..slot
                },
            ));
        }
    }
    all
}

/// No input, however odd, gives a panic or a value that is not a number.
#[test]
fn odd_input_gives_no_nonsense() {
    for (x, cut) in odd_cases() {
        for y in [mode(1000.0, 0.02, 2e6), Mode::rigid(), x] {
            let all = [quiet_depth(&x, &y, &cut), quiet_at_any_speed(&y, &x, &cut)];
            assert!(
                all.iter().all(|d| *d >= 0.0),
                "{x:?} {y:?} {cut:?}: {all:?}"
            );
            let at_speed = crate::lobe::limit_at_speed(&x, &y, &cut, 200.0);
            assert!(
                at_speed.is_none_or(|l| l.depth >= 0.0 && l.omega.is_finite()),
                "{x:?} {cut:?}"
            );
        }
        assert!(quiet_depth_one_mode(&x, &cut) >= 0.0, "{x:?} {cut:?}");
        assert!(!mean_force_change(&cut).is_nan(), "{cut:?}");
        assert!(crate::floor::axial_quiet_depth(&x, &cut, &crate::Edge::leaning(1.0)) >= 0.0);
        let rubbed =
            crate::process_damping::quiet_depth_with_process_damping(&x, cut.kt, cut.kt, 5.0);
        assert!(rubbed >= 0.0, "{x:?} {cut:?}");
    }
}
