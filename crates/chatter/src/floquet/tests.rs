//! Properties of the limit; values from outside stand in the tests of the workspace.

use super::{Kind, Moving, System};
use crate::floor::axial_quiet_depth;
use crate::{Cut, Edge, Mode, down_milling, slotting, up_milling};
use core::f64::consts::TAU;

fn mode(f: f64, zeta: f64, k: f64) -> Mode {
    Mode {
        k,
        zeta,
        omega_n: TAU * f,
    }
}

fn cut(z: u32, (phi_st, phi_ex): (f64, f64)) -> Cut {
    Cut {
        z,
        phi_st,
        phi_ex,
        kt: 7.5e8,
        kr_ratio: 0.3,
    }
}

/// Kinds of cuts: teeth and arc.
fn cuts() -> Vec<Cut> {
    let arcs = [
        slotting(),
        up_milling(0.5),
        down_milling(0.5),
        up_milling(0.08),
        down_milling(0.05),
    ];
    let teeth = [1, 2, 3, 4];
    teeth
        .iter()
        .flat_map(|z| arcs.map(|arc| cut(*z, arc)))
        .collect()
}

const SPEEDS: [f64; 7] = [61.0, 93.0, 140.0, 177.0, 233.0, 310.0, 420.0];

#[test]
fn the_radius_is_one_at_the_limit_and_grows_through_it() {
    let moving = [
        Moving::x(mode(900.0, 0.02, 2e6)),
        Moving::y(mode(1000.0, 0.03, 1.5e6)),
    ];
    let mut kinds = [0, 0];
    for cut in cuts() {
        let system = System::new(&moving, &cut, &Edge::sharp()).unwrap();
        for n in SPEEDS {
            let Some(found) = system.limit(n, 0.03) else {
                assert!(system.radius(n, 0.029).unwrap() < 1.0);
                continue;
            };
            let radius = |share: f64| system.radius(n, share * found.depth).unwrap();
            assert!(
                (radius(1.0) - 1.0).abs() < 1e-7,
                "{cut:?} {n} {found:?} {}",
                radius(1.0)
            );
            assert!(
                radius(0.99) < 1.0 && radius(1.01) > 1.0,
                "{cut:?} {n} {found:?}"
            );
            let size = libm::hypot(found.multiplier.0, found.multiplier.1);
            assert!((size - 1.0).abs() < 1e-9 && found.multiplier.1 >= 0.0);
            kinds[usize::from(found.kind == Kind::Flip)] += 1;
        }
    }
    assert!(kinds[0] > 50 && kinds[1] > 5, "{kinds:?}");
}

#[test]
fn what_scales_in_reality_scales_here() {
    let moving = |f: f64, k: f64| {
        [
            Moving::x(mode(900.0 * f, 0.02, 2e6 * k)),
            Moving::y(mode(1000.0 * f, 0.03, 1.5e6 * k)),
        ]
    };
    for cut in cuts() {
        let limit = |f: f64, k: f64, kt: f64| {
            let cut = Cut {
                kt: cut.kt * kt,
                ..cut
            };
            let system = System::new(&moving(f, k), &cut, &Edge::sharp()).unwrap();
            let found = system.limit(150.0 * f, 0.02 * k / kt)?;
            Some((found.depth, system.song(150.0 * f, &found)?.omega))
        };
        let Some(plain) = limit(1.0, 1.0, 1.0) else {
            continue;
        };
        for (f, k, kt) in [
            (2.0, 1.0, 1.0),
            (1.0, 3.0, 1.0),
            (1.0, 1.0, 0.4),
            (0.5, 0.25, 2.5),
        ] {
            let scaled = limit(f, k, kt).unwrap();
            assert!((scaled.0 * kt / k / plain.0 - 1.0).abs() < 1e-7, "{cut:?}");
            assert!((scaled.1 / f / plain.1 - 1.0).abs() < 1e-7, "{cut:?}");
        }
    }
}

#[test]
fn a_floor_under_a_steady_cut_agrees_with_its_closed_form() {
    // Four teeth in a slot: the force along the axis does not vary, and the least over all speeds is the closed form.
    let floor = mode(1500.0, 0.01, 2e6);
    let cut = cut(4, slotting());
    for edge in [
        Edge::leaning(1.0),
        Edge::leaning(0.4),
        Edge::rounded(1e-3, 0.5e-3),
        Edge::rounded(0.5e-3, 2e-3),
    ] {
        let system = System::new(&[Moving::z(floor)], &cut, &edge).unwrap();
        let closed = axial_quiet_depth(&floor, &cut, &edge);
        let limits = (0..400).filter_map(|i| system.limit(60.0 + f64::from(i), 20.0 * closed));
        let least = limits.map(|c| c.depth).fold(f64::INFINITY, f64::min);
        assert!(
            least > closed * (1.0 - 1e-6) && least < closed * 1.01,
            "{least} {closed}"
        );
    }
    let sharp = System::new(&[Moving::z(floor)], &cut, &Edge::sharp());
    assert!(sharp.is_none() && axial_quiet_depth(&floor, &cut, &Edge::sharp()).is_infinite());
}

#[test]
fn a_mode_that_is_far_away_or_very_stiff_changes_little() {
    let tool = [
        Moving::x(mode(900.0, 0.02, 2e6)),
        Moving::y(mode(1000.0, 0.03, 1.5e6)),
    ];
    let mut with = tool.to_vec();
    with.push(Moving::y(mode(6000.0, 0.02, 4e9)));
    for cut in cuts() {
        let limit = |m: &[Moving]| {
            System::new(m, &cut, &Edge::sharp())
                .unwrap()
                .limit(180.0, 0.02)
                .map(|c| c.depth)
        };
        match (limit(&tool), limit(&with)) {
            (Some(a), Some(b)) => assert!((a / b - 1.0).abs() < 0.02, "{cut:?} {a} {b}"),
            (a, b) => assert_eq!(a.is_some(), b.is_some()),
        }
    }
}

#[test]
fn a_mode_split_in_two_halves_is_the_same_mode() {
    // Two modes of twice the stiffness beside each other give together as the one: more modes, same limit.
    let whole = [
        Moving::x(mode(900.0, 0.02, 2e6)),
        Moving::y(mode(1000.0, 0.03, 1.5e6)),
    ];
    let half = |m: &Moving| Moving {
        mode: Mode {
            k: 2.0 * m.mode.k,
            ..m.mode
        },
        ..*m
    };
    let split: Vec<Moving> = whole.iter().flat_map(|m| [half(m), half(m)]).collect();
    let turned = core::f64::consts::FRAC_1_SQRT_2;
    for cut in cuts() {
        let limit = |m: &[Moving]| {
            System::new(m, &cut, &Edge::sharp())
                .unwrap()
                .limit(145.0, 0.03)
                .map(|c| c.depth)
        };
        if let Some(depth) = limit(&whole) {
            assert!(
                (limit(&split).unwrap() / depth - 1.0).abs() < 1e-7,
                "{cut:?}"
            );
        }
        // Two equal modes may point anywhere.
        let round = mode(900.0, 0.02, 2e6);
        let upright = [Moving::x(round), Moving::y(round)];
        let askew = [[turned, turned, 0.0], [turned, -turned, 0.0]]
            .map(|along| Moving { mode: round, along });
        if let Some(depth) = limit(&upright) {
            assert!(
                (limit(&askew).unwrap() / depth - 1.0).abs() < 1e-7,
                "{cut:?}"
            );
        }
    }
}

#[test]
fn odd_input_gives_nothing_and_no_panic() {
    let good = mode(900.0, 0.02, 2e6);
    let sharp = Edge::sharp();
    let slot = cut(2, slotting());
    assert!(System::new(&[], &slot, &sharp).is_none());
    assert!(System::new(&[Moving::x(Mode::rigid())], &slot, &sharp).is_none());
    assert!(System::new(&[Moving::x(good); super::MOST_MODES + 1], &slot, &sharp).is_none());
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        for m in [
            Mode { zeta: bad, ..good },
            Mode {
                omega_n: bad,
                ..good
            },
        ] {
            assert!(System::new(&[Moving::x(m)], &slot, &sharp).is_none());
        }
        let system =
            System::new(&[Moving::x(good), Moving::y(Mode::rigid())], &slot, &sharp).unwrap();
        assert!(system.at(bad, 1e-3).is_none() && system.at(100.0, bad).is_none());
        assert!(system.limit(bad, 1e-3).is_none() && system.radius(100.0, bad).is_none());
    }
    // Far beyond any cut: as deep as the digits reach, and no further.
    let system = System::new(&[Moving::x(good)], &slot, &sharp).unwrap();
    let period = system.at(1e-2, 1e6);
    assert!(period.is_none_or(|p| p.most() <= 1e6));
}
