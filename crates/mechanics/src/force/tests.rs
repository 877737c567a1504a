use super::*;
use crate::math::PI;

fn cutting() -> Cutting {
    Cutting {
        kc1_1: 8.0e8,
        mc: 0.25,
        h_ref: 1e-3,
        radial_ratio: 0.3,
        axial_ratio: 0.2,
        wear: 1.0,
    }
}

fn mill(z: u32, helix_deg: f64, runout: f64) -> Mill {
    Mill {
        d: 6e-3,
        z,
        helix: helix_deg.to_radians(),
        runout,
        corner_radius: 0.0,
    }
}

/// The same integral by brute force: thin discs, small turns.
fn brute(mill: &Mill, cutting: &Cutting, bite: &Bite) -> Forces {
    let (discs, turns) = (200, 720);
    let mut out = Forces {
        peak_normal: f64::NEG_INFINITY,
        least_normal: f64::INFINITY,
        ..Forces::default()
    };
    for t in 0..turns {
        let turn = TAU * f64::from(t) / f64::from(turns);
        let (mut feed, mut normal, mut torque) = (0.0, 0.0, 0.0);
        for tooth in 0..mill.z {
            let fz = bite.fz * tooth_share(mill, bite.fz, tooth);
            for disc in 0..discs {
                let depth = (f64::from(disc) + 0.5) / f64::from(discs) * bite.ap;
                let lag = depth * libm::tan(mill.helix) / (0.5 * mill.d);
                let phi = (turn + TAU * f64::from(tooth) / f64::from(mill.z) - lag).rem_euclid(TAU);
                if phi < bite.immersion.phi_st || phi > bite.immersion.phi_ex {
                    continue;
                }
                let h = fz * libm::sin(phi);
                let ft = specific_cutting_force(cutting, h) * h * bite.ap / f64::from(discs);
                let fr = cutting.radial_ratio * ft;
                feed += ft * libm::cos(phi) + fr * libm::sin(phi);
                normal += ft * libm::sin(phi) - fr * libm::cos(phi);
                torque += ft * 0.5 * mill.d;
            }
        }
        let at = At {
            feed,
            normal,
            axial: 0.0,
            torque,
        };
        out.mean(&at);
        out.peak(&at);
    }
    let count = f64::from(turns);
    out.mean_feed /= count;
    out.mean_normal /= count;
    out.mean_torque /= count;
    out
}

#[test]
fn agrees_with_brute_force() {
    for (z, helix, runout) in [
        (1, 25.0, 0.0),
        (3, 30.0, 0.0),
        (4, 40.0, 5e-6),
        (2, 10.0, 1e-5),
    ] {
        for immersion in [
            Immersion::slot(),
            Immersion::down(1.5e-3, 6e-3),
            Immersion::up(0.6e-3, 6e-3),
        ] {
            for ap in [0.5e-3, 3e-3, 9e-3] {
                let (mill, bite) = (
                    mill(z, helix, runout),
                    Bite {
                        fz: 4e-5,
                        immersion,
                        ap,
                    },
                );
                let (fast, slow) = (
                    forces(&mill, &cutting(), &bite),
                    brute(&mill, &cutting(), &bite),
                );
                let size = slow.peak_lateral;
                for (name, a, b, share) in [
                    ("peak", fast.peak_lateral, slow.peak_lateral, 0.02),
                    ("feed", fast.mean_feed, slow.mean_feed, 0.01),
                    ("normal", fast.mean_normal, slow.mean_normal, 0.01),
                    (
                        "torque",
                        fast.mean_torque * 2.0 / mill.d,
                        slow.mean_torque * 2.0 / mill.d,
                        0.01,
                    ),
                    (
                        "peak torque",
                        fast.peak_torque * 2.0 / mill.d,
                        slow.peak_torque * 2.0 / mill.d,
                        0.02,
                    ),
                ] {
                    assert!(
                        (a - b).abs() <= share * size,
                        "{name} z={z} ap={ap} {immersion:?}: {a} {b}"
                    );
                }
            }
        }
    }
}

#[test]
fn work_done_is_specific_force_times_volume() {
    // Constant kc (mc = 0): torque times angle must equal kc times the volume removed, whatever the helix.
    let cutting = Cutting {
        mc: 0.0,
        ..cutting()
    };
    for (z, helix, ae) in [
        (1, 0.0, 6e-3),
        (2, 30.0, 6e-3),
        (3, 45.0, 1e-3),
        (4, 30.0, 3e-3),
    ] {
        let bite = Bite {
            fz: 5e-5,
            immersion: Immersion::down(ae, 6e-3),
            ap: 4e-3,
        };
        let work = forces(&mill(z, helix, 0.0), &cutting, &bite).mean_torque * TAU;
        let volume = ae * bite.ap * bite.fz * f64::from(z);
        assert!(
            (work / (cutting.kc1_1 * volume) - 1.0).abs() < 2e-3,
            "{z} {helix} {ae}: {}",
            work / (cutting.kc1_1 * volume)
        );
    }
}

#[test]
fn four_straight_teeth_in_a_slot_push_evenly() {
    // Known identity: with constant kc, four teeth and full width the force hardly changes through the turn.
    let cutting = Cutting {
        mc: 0.0,
        radial_ratio: 0.3,
        ..cutting()
    };
    let bite = Bite {
        fz: 5e-5,
        immersion: Immersion::slot(),
        ap: 1e-3,
    };
    let f = forces(&mill(4, 0.0, 0.0), &cutting, &bite);
    assert!(
        (f.peak_normal - f.least_normal) / f.peak_normal < 0.01,
        "{f:?}"
    );
}

#[test]
fn up_and_down_milling_mirror() {
    // Without radial force, mirrored engagement gives the same normal force and the opposite feed force.
    let cutting = Cutting {
        radial_ratio: 0.0,
        ..cutting()
    };
    let at = |immersion| {
        forces(
            &mill(3, 0.0, 0.0),
            &cutting,
            &Bite {
                fz: 5e-5,
                immersion,
                ap: 1e-3,
            },
        )
    };
    let (up, down) = (
        at(Immersion::up(1e-3, 6e-3)),
        at(Immersion::down(1e-3, 6e-3)),
    );
    assert!((up.mean_normal / down.mean_normal - 1.0).abs() < 0.01);
    assert!((up.mean_feed / down.mean_feed + 1.0).abs() < 0.01);
    assert!((up.mean_torque / down.mean_torque - 1.0).abs() < 0.01);
}

#[test]
fn a_steep_helix_lifts_and_a_corner_presses() {
    let bite = Bite {
        fz: 5e-5,
        immersion: Immersion::slot(),
        ap: 2e-3,
    };
    assert!(forces(&mill(2, 40.0, 0.0), &cutting(), &bite).mean_axial < 0.0);
    let straight = Mill {
        corner_radius: 1e-3,
        ..mill(2, 0.0, 0.0)
    };
    assert!(forces(&straight, &cutting(), &bite).mean_axial > 0.0);
}

#[test]
fn nothing_comes_of_nothing() {
    let bite = Bite {
        fz: 0.0,
        immersion: Immersion {
            phi_st: 0.0,
            phi_ex: PI,
        },
        ap: 1e-3,
    };
    assert_eq!(
        forces(&mill(2, 30.0, 0.0), &cutting(), &bite),
        Forces::default()
    );
}
