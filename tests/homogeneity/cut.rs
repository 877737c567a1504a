//! The cut and the cutter: one function per module of the mechanics.

use crate::units::*;
use crate::{Kernel, one};
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

pub(crate) fn kinematics(u: &Units) -> Vec<Kernel> {
    use kinematics::*;
    let (fz, ae, d, n) = (u.mm(0.04), u.mm(1.1), u.mm(6.0), u.of(300.0, RATE));
    let v = u.of(2.0, SPEED);
    vec![
        one("kinematics::surface_speed", surface_speed(d, n), SPEED),
        one("kinematics::spindle_speed", spindle_speed(v, d), RATE),
        one("kinematics::feed_speed", feed_speed(fz, 3, n), SPEED),
        one(
            "kinematics::feed_per_tooth",
            feed_per_tooth(v, 3, n),
            LENGTH,
        ),
        one("kinematics::slab_approach", slab_approach(ae, d), LENGTH),
        one("kinematics::face_approach", face_approach(ae, d), LENGTH),
    ]
}

pub(crate) fn engagement(u: &Units) -> Vec<Kernel> {
    use engagement::*;
    let (ae, d) = (u.mm(1.1), u.mm(6.0));
    // An entry at 0 says nothing about scaling.
    let ends = |i: Immersion| vec![(i.phi_st + 0.1, NUMBER), (i.phi_ex, NUMBER)];
    vec![
        ("engagement::down", ends(Immersion::down(ae, d))),
        ("engagement::up", ends(Immersion::up(ae, d))),
        ("engagement::slot", ends(Immersion::slot())),
        ("engagement::centred", ends(Immersion::centred(ae, d))),
        one("engagement::width", Immersion::down(ae, d).width(), NUMBER),
        one(
            "engagement::engagement_angle",
            engagement_angle(ae, d),
            NUMBER,
        ),
        one("engagement::ae_for_angle", ae_for_angle(KAPPA, d), LENGTH),
    ]
}

pub(crate) fn chip(u: &Units) -> Vec<Kernel> {
    use chip::*;
    let (fz, ae, d) = (u.mm(0.04), u.mm(1.1), u.mm(6.0));
    let (ap, re) = (u.mm(0.3), u.mm(0.5));
    let short = mean_chip_thickness_sqrt(fz, ae, d, KAPPA);
    let greatest = greatest_chip_thickness(fz, ae, d, KAPPA);
    vec![
        one(
            "chip::mean_chip_thickness",
            mean_chip_thickness(fz, ae, d, KAPPA),
            LENGTH,
        ),
        one("chip::mean_chip_thickness_sqrt", short, LENGTH),
        one(
            "chip::feed_for_mean_chip",
            feed_for_mean_chip(fz, ae, d, KAPPA),
            LENGTH,
        ),
        one("chip::greatest_chip_thickness", greatest, LENGTH),
        one("chip::radial_thinning", radial_thinning(ae, d), NUMBER),
        one("chip::lead_angle_corner", lead_angle_corner(ap, re), NUMBER),
        one(
            "chip::lead_angle_thinning",
            lead_angle_thinning(fz, KAPPA),
            LENGTH,
        ),
        one(
            "chip::ball_effective_diameter",
            ball_effective_diameter(ap, d),
            LENGTH,
        ),
        one(
            "chip::corner_effective_diameter",
            corner_effective_diameter(ap, d, re),
            LENGTH,
        ),
        one(
            "chip::round_insert_factor",
            round_insert_factor(ap, d),
            NUMBER,
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

pub(crate) fn kienzle(u: &Units) -> Vec<Kernel> {
    use kienzle::*;
    let (h, stress) = (u.mm(0.02), u.of(2e9, STRESS));
    let down = Immersion::down(u.mm(2.5), u.mm(6.0));
    let points = [
        (h, stress),
        (5.0 * h, 0.7 * stress),
        (9.0 * h, 0.5 * stress),
    ];
    let (kc1_1, mc) = kienzle_fit(&points, u.mm(1.0));
    let mean = mean_specific_cutting_force(&cutting(u), h, &down);
    vec![
        one(
            "kienzle::specific_cutting_force",
            specific_cutting_force(&cutting(u), h),
            STRESS,
        ),
        one("kienzle::mean_specific_cutting_force", mean, STRESS),
        // The factor per radian is a plain number.
        one(
            "kienzle::rake_correction",
            rake_correction(0.2, 0.1, 0.86),
            NUMBER,
        ),
        ("kienzle::kienzle_fit", vec![(kc1_1, STRESS), (mc, NUMBER)]),
    ]
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

pub(crate) fn force(u: &Units) -> Vec<Kernel> {
    let mut forces = all_forces(u, Immersion::slot());
    forces.extend(all_forces(u, Immersion::centred(u.mm(5.0), u.mm(6.0))));
    vec![("force::forces", forces)]
}

pub(crate) fn power(u: &Units) -> Vec<Kernel> {
    use power::*;
    let (stress, flow, v) = (u.of(2e9, STRESS), u.of(1e-6, FLOW), u.of(0.02, SPEED));
    let (watts, torque, n) = (u.of(400.0, POWER), u.of(0.5, TORQUE), u.of(300.0, RATE));
    let k_factor = u.of(4e-10, [1, -1, 2]);
    vec![
        one(
            "power::removal_rate",
            removal_rate(u.mm(2.0), u.mm(1.0), v),
            FLOW,
        ),
        one("power::cutting_power", cutting_power(stress, flow), POWER),
        one(
            "power::power_from_unit",
            power_from_unit(stress, flow, 0.9, 1.2),
            POWER,
        ),
        one(
            "power::unit_power_from_k_factor",
            unit_power_from_k_factor(k_factor),
            STRESS,
        ),
        one(
            "power::power_from_torque",
            power_from_torque(torque, n),
            POWER,
        ),
        one(
            "power::torque_from_power",
            torque_from_power(watts, n),
            TORQUE,
        ),
        one("power::motor_power", motor_power(watts, 0.8), POWER),
        one("power::tangential_force", tangential_force(watts, v), FORCE),
    ]
}

pub(crate) fn spindle(u: &Units) -> Vec<Kernel> {
    let curve = [(100.0, 300.0), (250.0, 500.0), (400.0, 600.0)].map(|(n, power)| CurvePoint {
        n: u.of(n, RATE),
        power: u.of(power, POWER),
    });
    let available = |n: f64| (spindle::available_power(&curve, u.of(n, RATE)), POWER);
    let derated = spindle::derated(u.of(400.0, POWER), u.of(400.0, RATE), u.of(300.0, RATE));
    vec![
        (
            "spindle::available_power",
            vec![available(50.0), available(300.0)],
        ),
        one("spindle::derated", derated, POWER),
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

pub(crate) fn tool_beam(u: &Units) -> Vec<Kernel> {
    use tool_beam::*;
    let (beam, d, length) = (beam(u), u.mm(6.0), u.mm(30.0));
    let (e_mod, rho) = (u.of(6e11, STRESS), u.of(14_500.0, DENSITY));
    let springs = [1e6, 3e6, 8e6].map(|k| u.of(k, STIFFNESS));
    let between = compliance_at(&beam, u.mm(2.0), u.mm(12.0));
    let stress = root_stress(&beam, u.of(30.0, FORCE), u.mm(1.0));
    vec![
        one("tool_beam::second_moment", second_moment(d), [4, 0, 0]),
        one("tool_beam::compliance_at", between, COMPLIANCE),
        one(
            "tool_beam::tip_compliance",
            tip_compliance(&beam),
            COMPLIANCE,
        ),
        one("tool_beam::root_stress", stress, STRESS),
        one("tool_beam::series", series(&springs), STIFFNESS),
        one(
            "tool_beam::first_frequency",
            first_frequency(e_mod, d, length, rho),
            RATE,
        ),
    ]
}
