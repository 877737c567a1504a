//! The cut and the cutter.

use crate::Kernel;
use crate::units::*;
use thinwright_mechanics::engagement::Immersion;
use thinwright_mechanics::force::{Bite, Mill};
use thinwright_mechanics::kienzle::Cutting;
use thinwright_mechanics::spindle::CurvePoint;
use thinwright_mechanics::tool_beam::Beam;
use thinwright_mechanics::{
    chip, engagement, force, kienzle, kinematics, power, spindle, tool_beam,
};

/// Lead angle, rad.
const KAPPA: f64 = 0.8;

pub(crate) fn chips(u: &Units) -> Vec<Kernel> {
    let (fz, ae, d, n) = (u.mm(0.04), u.mm(1.1), u.mm(6.0), u.of(300.0, RATE));
    let (ap, re, speed) = (u.mm(0.3), u.mm(0.5), u.of(2.0, SPEED));
    let ends = |i: Immersion| vec![(i.phi_st.max(0.1), NUMBER), (i.phi_ex, NUMBER)];
    vec![
        (
            "kinematics::surface_speed",
            vec![(kinematics::surface_speed(d, n), SPEED)],
        ),
        (
            "kinematics::spindle_speed",
            vec![(kinematics::spindle_speed(speed, d), RATE)],
        ),
        (
            "kinematics::feed_speed",
            vec![(kinematics::feed_speed(fz, 3, n), SPEED)],
        ),
        (
            "kinematics::feed_per_tooth",
            vec![(kinematics::feed_per_tooth(speed, 3, n), LENGTH)],
        ),
        (
            "kinematics::slab_approach",
            vec![(kinematics::slab_approach(ae, d), LENGTH)],
        ),
        (
            "kinematics::face_approach",
            vec![(kinematics::face_approach(ae, d), LENGTH)],
        ),
        ("engagement::down", ends(Immersion::down(ae, d))),
        ("engagement::up", ends(Immersion::up(ae, d))),
        ("engagement::slot", ends(Immersion::slot())),
        ("engagement::centred", ends(Immersion::centred(ae, d))),
        (
            "engagement::width",
            vec![(Immersion::down(ae, d).width(), NUMBER)],
        ),
        (
            "engagement::engagement_angle",
            vec![(engagement::engagement_angle(ae, d), NUMBER)],
        ),
        (
            "engagement::ae_for_angle",
            vec![(engagement::ae_for_angle(KAPPA, d), LENGTH)],
        ),
        (
            "chip::mean_chip_thickness",
            vec![(chip::mean_chip_thickness(fz, ae, d, KAPPA), LENGTH)],
        ),
        (
            "chip::mean_chip_thickness_sqrt",
            vec![(chip::mean_chip_thickness_sqrt(fz, ae, d, KAPPA), LENGTH)],
        ),
        (
            "chip::feed_for_mean_chip",
            vec![(chip::feed_for_mean_chip(fz, ae, d, KAPPA), LENGTH)],
        ),
        (
            "chip::greatest_chip_thickness",
            vec![(chip::greatest_chip_thickness(fz, ae, d, KAPPA), LENGTH)],
        ),
        (
            "chip::radial_thinning",
            vec![(chip::radial_thinning(ae, d), NUMBER)],
        ),
        (
            "chip::lead_angle_corner",
            vec![(chip::lead_angle_corner(ap, re), NUMBER)],
        ),
        (
            "chip::lead_angle_thinning",
            vec![(chip::lead_angle_thinning(fz, KAPPA), LENGTH)],
        ),
        (
            "chip::ball_effective_diameter",
            vec![(chip::ball_effective_diameter(ap, d), LENGTH)],
        ),
        (
            "chip::corner_effective_diameter",
            vec![(chip::corner_effective_diameter(ap, d, re), LENGTH)],
        ),
        (
            "chip::round_insert_factor",
            vec![(chip::round_insert_factor(ap, d), NUMBER)],
        ),
    ]
}

fn cutting(u: &Units) -> Cutting {
    Cutting {
        kc1_1: u.of(8.0e8, STRESS),
        mc: 0.23,
        h_ref: u.mm(1.0),
        radial_ratio: 0.35,
        axial_ratio: 0.25,
        wear: 1.2,
    }
}

/// All forces of a bite; the mill has runout and a round corner, so that every part of the model is in them.
fn all_forces(u: &Units, immersion: Immersion) -> Vec<(f64, Dimension)> {
    let mill = Mill {
        d: u.mm(6.0),
        z: 3,
        helix: 0.6,
        runout: u.mm(0.006),
        corner_radius: u.mm(0.4),
    };
    let bite = Bite {
        fz: u.mm(0.03),
        immersion,
        ap: u.mm(2.5),
    };
    let f = force::forces(&mill, &cutting(u), &bite);
    vec![
        (f.peak_lateral, FORCE),
        (f.mean_feed, FORCE),
        (f.mean_normal, FORCE),
        (f.mean_lateral, FORCE),
        (f.peak_normal, FORCE),
        (f.least_normal, FORCE),
        (f.peak_axial, FORCE),
        (f.mean_axial, FORCE),
        (f.peak_torque, TORQUE),
        (f.mean_torque, TORQUE),
    ]
}

pub(crate) fn forces_and_power(u: &Units) -> Vec<Kernel> {
    let (h, stress, flow) = (u.mm(0.02), u.of(2e9, STRESS), u.of(1e-6, FLOW));
    let (power, torque, n) = (u.of(400.0, POWER), u.of(0.5, TORQUE), u.of(300.0, RATE));
    let down = Immersion::down(u.mm(2.5), u.mm(6.0));
    let points = [
        (u.mm(0.02), stress),
        (u.mm(0.1), 0.7 * stress),
        (u.mm(0.2), 0.5 * stress),
    ];
    let (kc1_1, mc) = kienzle::kienzle_fit(&points, u.mm(1.0));
    let mut forces = all_forces(u, Immersion::slot());
    forces.extend(all_forces(u, Immersion::centred(u.mm(5.0), u.mm(6.0))));
    let curve = [(100.0, 300.0), (250.0, 500.0), (400.0, 600.0)].map(|(n, power)| CurvePoint {
        n: u.of(n, RATE),
        power: u.of(power, POWER),
    });
    let available = |n: f64| (spindle::available_power(&curve, u.of(n, RATE)), POWER);
    vec![
        (
            "kienzle::specific_cutting_force",
            vec![(kienzle::specific_cutting_force(&cutting(u), h), STRESS)],
        ),
        (
            "kienzle::mean_specific_cutting_force",
            vec![(
                kienzle::mean_specific_cutting_force(&cutting(u), h, &down),
                STRESS,
            )],
        ),
        (
            "kienzle::rake_correction",
            vec![(kienzle::rake_correction(0.2, 0.1, 0.86), NUMBER)],
        ),
        ("kienzle::kienzle_fit", vec![(kc1_1, STRESS), (mc, NUMBER)]),
        ("force::forces", forces),
        (
            "power::removal_rate",
            vec![(
                power::removal_rate(u.mm(2.0), u.mm(1.0), u.of(0.02, SPEED)),
                FLOW,
            )],
        ),
        (
            "power::cutting_power",
            vec![(power::cutting_power(stress, flow), POWER)],
        ),
        (
            "power::power_from_unit",
            vec![(power::power_from_unit(stress, flow, 0.9, 1.2), POWER)],
        ),
        (
            "power::unit_power_from_k_factor",
            vec![(
                power::unit_power_from_k_factor(u.of(4e-10, [1, -1, 2])),
                STRESS,
            )],
        ),
        (
            "power::power_from_torque",
            vec![(power::power_from_torque(torque, n), POWER)],
        ),
        (
            "power::torque_from_power",
            vec![(power::torque_from_power(power, n), TORQUE)],
        ),
        (
            "power::motor_power",
            vec![(power::motor_power(power, 0.8), POWER)],
        ),
        (
            "power::tangential_force",
            vec![(power::tangential_force(power, u.of(3.0, SPEED)), FORCE)],
        ),
        (
            "spindle::available_power",
            vec![available(50.0), available(300.0)],
        ),
        (
            "spindle::derated",
            vec![(spindle::derated(power, u.of(400.0, RATE), n), POWER)],
        ),
    ]
}

/// A cutter with a neck, in the units.
pub(crate) fn beam(u: &Units) -> Beam {
    Beam {
        e_mod: u.of(6e11, STRESS),
        shank_d: u.mm(6.0),
        flute_d_eff: u.mm(2.4),
        flute_length: u.mm(9.0),
        stick_out: u.mm(30.0),
        neck_d: u.mm(2.8),
        neck_length: u.mm(7.0),
    }
}

pub(crate) fn cutter(u: &Units) -> Vec<Kernel> {
    let beam = beam(u);
    let (e_mod, rho) = (u.of(6e11, STRESS), u.of(14_500.0, DENSITY));
    let springs = [1e6, 3e6, 8e6].map(|k| u.of(k, STIFFNESS));
    vec![
        (
            "tool_beam::second_moment",
            vec![(tool_beam::second_moment(u.mm(6.0)), [4, 0, 0])],
        ),
        (
            "tool_beam::compliance_at",
            vec![(
                tool_beam::compliance_at(&beam, u.mm(2.0), u.mm(12.0)),
                COMPLIANCE,
            )],
        ),
        (
            "tool_beam::tip_compliance",
            vec![(tool_beam::tip_compliance(&beam), COMPLIANCE)],
        ),
        (
            "tool_beam::root_stress",
            vec![(
                tool_beam::root_stress(&beam, u.of(30.0, FORCE), u.mm(1.0)),
                STRESS,
            )],
        ),
        (
            "tool_beam::series",
            vec![(tool_beam::series(&springs), STIFFNESS)],
        ),
        (
            "tool_beam::first_frequency",
            vec![(
                tool_beam::first_frequency(e_mod, u.mm(6.0), u.mm(30.0), rho),
                RATE,
            )],
        ),
    ]
}
