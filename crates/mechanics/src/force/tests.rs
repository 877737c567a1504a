use super::*;
use crate::math::{PI, acos, cos, sin};

fn cutting() -> Cutting {
    Cutting {
        kc1_1: 8.0e8,
        mc: 0.25,
        h_ref: 1e-3,
        radial_ratio: 0.3,
        axial_ratio: 0.25,
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

/// The same forces by thin discs and small turns, written from the geometry alone.
fn brute(mill: &Mill, cutting: &Cutting, bite: &Bite) -> Forces {
    let (discs, turns) = if bite.ap > 1e-3 {
        (600, 1440)
    } else {
        (60, 1440)
    };
    let mut out = Forces {
        peak_normal: f64::NEG_INFINITY,
        least_normal: f64::INFINITY,
        ..Forces::default()
    };
    let teeth = f64::from(mill.z);
    let reach = |j: f64| mill.runout * cos(TAU * j / teeth - PI / 2.0 + PI / teeth);
    let radius = mill.corner_radius.max(bite.fz);
    for t in 0..turns {
        let turn = TAU * f64::from(t) / f64::from(turns);
        let mut at = At::default();
        for tooth in 0..mill.z {
            let j = f64::from(tooth);
            for disc in 0..discs {
                let height = (f64::from(disc) + 0.5) / f64::from(discs) * bite.ap;
                let lag = height * tan(mill.helix) / (0.5 * mill.d);
                let mut phi = turn - TAU * j / teeth - lag;
                while phi < 0.0 {
                    phi += TAU;
                }
                if phi < bite.immersion.phi_st || phi > bite.immersion.phi_ex {
                    continue;
                }
                let even = bite.fz * sin(phi);
                let chips =
                    (1..=mill.z).map(|k| f64::from(k) * even + reach(j) - reach(j - f64::from(k)));
                let h = chips.fold(f64::INFINITY, f64::min).max(0.0);
                if h <= 0.0 {
                    continue;
                }
                let kappa = if height < radius {
                    acos(1.0 - height / radius)
                } else {
                    PI / 2.0
                };
                let kc = cutting.kc1_1 * libm::pow(h * sin(kappa) / cutting.h_ref, -cutting.mc);
                let ft = kc * h * bite.ap / f64::from(discs);
                let side = cutting.radial_ratio * ft * sin(kappa);
                at.feed += ft * cos(phi) + side * sin(phi);
                at.normal += side * cos(phi) - ft * sin(phi);
                at.axial += cutting.radial_ratio * ft * cos(kappa);
                at.axial -= cutting.axial_ratio * tan(mill.helix) / tan(PI / 6.0) * ft * sin(kappa);
                at.torque += ft * 0.5 * mill.d;
            }
        }
        out.peak(&at);
        out.mean_feed += at.feed / f64::from(turns);
        out.mean_normal += at.normal / f64::from(turns);
        out.mean_axial += at.axial / f64::from(turns);
        out.mean_torque += at.torque / f64::from(turns);
    }
    out
}

#[test]
fn agrees_with_brute_force() {
    let immersions = [
        Immersion::slot(),
        Immersion::down(1.5e-3, 6e-3),
        Immersion::up(0.6e-3, 6e-3),
        Immersion::down(0.1e-3, 6e-3),
    ];
    for (z, helix, runout, corner_radius) in [
        (1, 25.0, 0.0, 0.0),
        (3, 30.0, 0.0, 0.5e-3),
        (4, 40.0, 5e-6, 0.0),
        (2, 10.0, 1e-5, 1.0e-3),
        (3, 45.0, 3e-5, 0.2e-3),
    ] {
        for immersion in immersions {
            for ap in [0.5e-3, 9e-3] {
                let mill = Mill {
                    corner_radius,
                    ..mill(z, helix, runout)
                };
                let bite = Bite {
                    fz: 4e-5,
                    immersion,
                    ap,
                };
                same(
                    &forces(&mill, &cutting(), &bite),
                    &brute(&mill, &cutting(), &bite),
                    &mill,
                );
            }
        }
    }
}

/// Demands that means agree within a hundredth, peaks within a hundredth of the greatest sideways force.
fn same(fast: &Forces, slow: &Forces, mill: &Mill) {
    let arm = 0.5 * mill.d;
    let tangential = slow.mean_torque / arm;
    let means = [
        (fast.mean_torque / arm, tangential),
        (fast.mean_axial, slow.mean_axial),
        (fast.mean_feed, slow.mean_feed),
        (fast.mean_normal, slow.mean_normal),
    ];
    for (a, b) in means {
        assert!(
            (a - b).abs() <= 0.01 * tangential,
            "{fast:?} {slow:?} {mill:?}"
        );
    }
    // A round corner enters from its tip up; the model lets it enter as a whole. Its means are exact, its peaks less so.
    let round = mill.corner_radius > 0.0;
    let share = if round { 0.02 } else { 0.01 };
    let peaks = [
        (fast.peak_lateral, slow.peak_lateral),
        (fast.peak_normal, slow.peak_normal),
        (fast.least_normal, slow.least_normal),
        (fast.peak_torque / arm, slow.peak_torque / arm),
    ];
    let axial = Some((fast.peak_axial, slow.peak_axial)).filter(|_| !round);
    for (a, b) in peaks.into_iter().chain(axial) {
        assert!(
            (a - b).abs() <= share * slow.peak_lateral,
            "{fast:?} {slow:?} {mill:?}"
        );
    }
}

#[test]
fn work_done_is_specific_force_times_volume() {
    // Constant kc (mc = 0): torque times angle must equal kc times the volume removed, whatever helix, runout, corner.
    let cutting = Cutting {
        mc: 0.0,
        ..cutting()
    };
    for (z, helix, ae, runout) in [
        (1, 0.0, 6e-3, 0.0),
        (2, 30.0, 6e-3, 1e-5),
        (3, 45.0, 1e-3, 4e-6),
        (4, 30.0, 3e-3, 0.0),
    ] {
        let bite = Bite {
            fz: 5e-5,
            immersion: Immersion::down(ae, 6e-3),
            ap: 4e-3,
        };
        let mill = Mill {
            corner_radius: 0.4e-3,
            ..mill(z, helix, runout)
        };
        let work = forces(&mill, &cutting, &bite).mean_torque * TAU;
        let volume = ae * bite.ap * bite.fz * f64::from(z);
        let ratio = work / (cutting.kc1_1 * volume);
        // The trapezoids of the table lose step2 / 12 of a sine, and no more.
        let loss = (bite.immersion.width() / 24.0).powi(2) / 12.0;
        assert!(
            (1.0 - 1.01 * loss..1.0 + 1e-9).contains(&ratio),
            "{z} {helix} {ae}: {ratio}"
        );
    }
}

#[test]
fn mean_power_is_that_of_the_mean_specific_force() {
    // With the exponent: power from torque against kc (averaged over the chip) times removal rate.
    let n = 300.0;
    for ae in [0.3e-3, 1.5e-3, 6e-3] {
        let bite = Bite {
            fz: 5e-5,
            immersion: Immersion::down(ae, 6e-3),
            ap: 4e-3,
        };
        let torque = forces(&mill(3, 30.0, 0.0), &cutting(), &bite).mean_torque;
        let power = crate::power::power_from_torque(torque, n);
        let vf = crate::kinematics::feed_speed(bite.fz, 3, n);
        let kc = crate::kienzle::mean_specific_cutting_force(&cutting(), bite.fz, &bite.immersion);
        let closed = crate::power::cutting_power(kc, crate::power::removal_rate(ae, bite.ap, vf));
        assert!(
            (power / closed - 1.0).abs() < 5e-3,
            "{ae}: {}",
            power / closed
        );
    }
}

#[test]
fn four_straight_teeth_in_a_slot_push_evenly() {
    // Constant kc, four teeth, full width: the sums of sin cos and sin2 over the teeth are constant (altintas1995).
    let cutting = Cutting {
        mc: 0.0,
        ..cutting()
    };
    let bite = Bite {
        fz: 5e-5,
        immersion: Immersion::slot(),
        ap: 1e-3,
    };
    let f = forces(&mill(4, 0.0, 0.0), &cutting, &bite);
    assert!((f.peak_normal / f.least_normal - 1.0).abs() < 5e-3, "{f:?}");
    // Mean normal force on the work: -z ap kt fz / 4 (altintas1995, mean forces of a slot).
    let closed = -1e-3 * cutting.kc1_1 * 5e-5;
    assert!((f.mean_normal / closed - 1.0).abs() < 2e-3, "{f:?}");
    // The corner, 50 um deep, turns (1 - pi / 4) of its radial force downwards.
    let feed = 0.3 * (1e-3 - 5e-5 * (1.0 - PI / 4.0)) * cutting.kc1_1 * 5e-5;
    assert!((f.mean_feed / feed - 1.0).abs() < 2e-3, "{f:?}");
}

#[test]
fn means_are_those_of_the_closed_form() {
    // Source: altintas1995, mean forces on the cutter for a constant kt, kr; here on the work, so with the other sign.
    let cutting = Cutting {
        mc: 0.0,
        ..cutting()
    };
    for immersion in [
        Immersion::up(1e-3, 6e-3),
        Immersion::down(2e-3, 6e-3),
        Immersion::centred(4e-3, 6e-3),
    ] {
        let bite = Bite {
            fz: 1e-5,
            immersion,
            ap: 5e-3,
        };
        let f = forces(&mill(3, 35.0, 0.0), &cutting, &bite);
        let scale = 3.0 * bite.ap * bite.fz * cutting.kc1_1 / (8.0 * PI);
        let over = |of: fn(f64) -> f64| of(immersion.phi_ex) - of(immersion.phi_st);
        let (c, s) = (over(|p| cos(2.0 * p)), over(|p| 2.0 * p - sin(2.0 * p)));
        let feed = -scale * (c - 0.3 * s);
        let normal = -scale * (s + 0.3 * c);
        assert!((f.mean_feed / feed - 1.0).abs() < 3e-3, "{f:?} {feed}");
        assert!(
            (f.mean_normal / normal - 1.0).abs() < 3e-3,
            "{f:?} {normal}"
        );
    }
}

#[test]
fn up_and_down_milling_mirror() {
    // Without radial force, mirrored engagement gives the same normal force and the opposite feed force.
    let cutting = Cutting {
        radial_ratio: 0.0,
        ..cutting()
    };
    let at = |immersion| {
        let bite = Bite {
            fz: 5e-5,
            immersion,
            ap: 1e-3,
        };
        forces(&mill(3, 0.0, 0.0), &cutting, &bite)
    };
    let (up, down) = (
        at(Immersion::up(1e-3, 6e-3)),
        at(Immersion::down(1e-3, 6e-3)),
    );
    assert!((up.mean_normal / down.mean_normal - 1.0).abs() < 1e-9);
    assert!((up.mean_feed / down.mean_feed + 1.0).abs() < 1e-9);
    assert!((up.mean_torque / down.mean_torque - 1.0).abs() < 1e-9);
}

#[test]
fn climb_milling_pushes_the_wall_away_and_conventional_draws_it_in() {
    // The finished wall is at phi = pi when climbing (right of the feed), at phi = 0 otherwise (left).
    let at = |immersion| {
        let bite = Bite {
            fz: 5e-5,
            immersion,
            ap: 1e-3,
        };
        forces(&mill(3, 30.0, 0.0), &cutting(), &bite)
    };
    assert!(at(Immersion::down(1e-3, 6e-3)).mean_normal < 0.0);
    assert!(at(Immersion::up(2e-3, 6e-3)).mean_normal < 0.0);
    // Both teeth and table: climbing drags the work along with the cutter's far side, against the feed.
    assert!(at(Immersion::down(1e-3, 6e-3)).mean_feed < 0.0);
    assert!(at(Immersion::up(1e-3, 6e-3)).mean_feed > 0.0);
}

#[test]
fn a_steep_helix_lifts_and_a_corner_presses() {
    let bite = Bite {
        fz: 5e-5,
        immersion: Immersion::slot(),
        ap: 2e-3,
    };
    let axial = |helix, corner_radius| {
        let mill = Mill {
            corner_radius,
            ..mill(2, helix, 0.0)
        };
        forces(&mill, &cutting(), &bite).mean_axial
    };
    assert!(axial(40.0, 0.0) < 0.0);
    assert!(axial(-40.0, 0.0) > 0.0);
    assert!(axial(0.0, 1e-3) > 0.0);
    assert!(axial(40.0, 1e-3) > axial(40.0, 0.0));
    // At 30 degrees and a sharp corner the lift is the ratio of the tangential force, but for the corner's share.
    let f = forces(&mill(2, 30.0, 0.0), &cutting(), &bite);
    let tangential = f.mean_torque / 3e-3;
    assert!((f.mean_axial / tangential + 0.25).abs() < 0.01, "{f:?}");
}

#[test]
fn force_grows_with_feed_depth_width_and_runout() {
    let at = |fz, ae, ap, runout| {
        let bite = Bite {
            fz,
            immersion: Immersion::down(ae, 6e-3),
            ap,
        };
        forces(&mill(3, 30.0, runout), &cutting(), &bite).peak_lateral
    };
    let base = at(3e-5, 1e-3, 1e-3, 2e-6);
    assert!(at(4e-5, 1e-3, 1e-3, 2e-6) > base);
    assert!(at(3e-5, 1.5e-3, 1e-3, 2e-6) > base);
    assert!(at(3e-5, 1e-3, 1.5e-3, 2e-6) > base);
    assert!(at(3e-5, 1e-3, 1e-3, 6e-6) > base);
    // A thin chip suffers most: here one tooth of three takes all of it.
    let ratio = at(1e-5, 0.1e-3, 1e-3, 2e-5) / at(1e-5, 0.1e-3, 1e-3, 0.0);
    assert!((ratio - libm::pow(3.0, 0.75)).abs() < 0.05, "{ratio}");
}

#[test]
fn nothing_comes_of_nothing_and_nonsense_ends() {
    let bite = Bite {
        fz: 0.0,
        immersion: Immersion::slot(),
        ap: 1e-3,
    };
    let none = Forces::default();
    assert_eq!(forces(&mill(2, 30.0, 0.0), &cutting(), &bite), none);
    for bad in [f64::NAN, f64::INFINITY, 1e300, -1.0, 1e-300] {
        let odd = Mill {
            d: bad,
            helix: bad,
            runout: bad,
            ..mill(u32::MAX, 30.0, 0.0)
        };
        let _ = forces(&odd, &cutting(), &Bite { fz: 1e-5, ..bite });
        let _ = forces(
            &mill(2, 89.999_999, 0.0),
            &cutting(),
            &Bite {
                fz: 1e-5,
                ap: bad,
                ..bite
            },
        );
        let _ = forces(&mill(2, 30.0, 0.0), &cutting(), &Bite { fz: bad, ..bite });
    }
}
