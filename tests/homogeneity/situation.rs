//! Entries, slots, corners, walls, holding, life and time.

use crate::Kernel;
use crate::cut::beam;
use crate::units::*;
use thinwright_mechanics::time::Segment;
use thinwright_mechanics::{corner, entry, hold, rib, rubbing, slot, surface, taylor, time};

/// An angle, rad.
const ANGLE: f64 = 0.9;

pub(crate) fn entries_and_slots(u: &Units) -> Vec<Kernel> {
    let (d, hole, pitch, depth) = (u.mm(6.0), u.mm(9.0), u.mm(0.5), u.mm(4.1));
    let (width, step, radius) = (u.mm(10.0), u.mm(0.6), u.mm(2.0));
    vec![
        (
            "entry::ramp_length",
            vec![(entry::ramp_length(depth, 0.05), LENGTH)],
        ),
        (
            "entry::helix_angle",
            vec![(entry::helix_angle(pitch, hole, d), NUMBER)],
        ),
        (
            "entry::helix_pitch",
            vec![(entry::helix_pitch(0.05, hole, d), LENGTH)],
        ),
        (
            "entry::path_per_turn",
            vec![(entry::path_per_turn(pitch, hole, d), LENGTH)],
        ),
        (
            "entry::centre_feed_factor",
            vec![(entry::centre_feed_factor(hole, d), NUMBER)],
        ),
        (
            "entry::zigzag_strokes",
            vec![(entry::zigzag_strokes(depth, pitch), NUMBER)],
        ),
        (
            "entry::zigzag_ramp_strokes",
            vec![(entry::zigzag_ramp_strokes(depth, u.mm(20.0), 0.04), NUMBER)],
        ),
        (
            "slot::depth_to_width",
            vec![(slot::depth_to_width(depth, width), NUMBER)],
        ),
        (
            "slot::chip_room",
            vec![(slot::chip_room(4.0, pitch, depth), NUMBER)],
        ),
        (
            "slot::gullet_fill",
            vec![(slot::gullet_fill(4.0, (u.mm(0.04), d), d, 3, 0.5), NUMBER)],
        ),
        (
            "slot::trochoid_engagement_apex",
            vec![(slot::trochoid_engagement_apex(d, width, step), NUMBER)],
        ),
        (
            "slot::trochoid_engagement",
            vec![(slot::trochoid_engagement(d, width, step), NUMBER)],
        ),
        (
            "slot::trochoid_step",
            vec![(slot::trochoid_step(d, width, ANGLE), LENGTH)],
        ),
        (
            "slot::loop_path",
            vec![(slot::loop_path(radius, step), LENGTH)],
        ),
        (
            "slot::loop_acceleration",
            vec![(
                slot::loop_acceleration(u.of(0.03, SPEED), radius),
                ACCELERATION,
            )],
        ),
        (
            "rubbing::least_chip",
            vec![(rubbing::least_chip(0.3, u.mm(0.005)), LENGTH)],
        ),
        (
            "rubbing::son_least_chip",
            vec![(rubbing::son_least_chip(u.mm(0.005), 0.5), LENGTH)],
        ),
    ]
}

pub(crate) fn corners_and_walls(u: &Units) -> Vec<Kernel> {
    let (d, ae, arc, force) = (u.mm(10.0), u.mm(1.0), u.mm(16.0), u.of(30.0, FORCE));
    let (e_mod, length, section) = (u.of(7e10, STRESS), u.mm(40.0), (u.mm(2.0), u.mm(4.0)));
    let arcs = [5.4, 5.95, 8.0].map(|wall| (corner::engagement_in_arc(d, u.mm(wall), ae), NUMBER));
    let strip_at = rib::clamped_strip_compliance_at(e_mod, section, length, u.mm(12.0));
    vec![
        ("corner::engagement_in_arc", arcs.to_vec()),
        (
            "corner::engagement_sharp",
            vec![(corner::engagement_sharp(d, ae), NUMBER)],
        ),
        (
            "corner::centre_feed_inside",
            vec![(corner::centre_feed_inside(arc, d), NUMBER)],
        ),
        (
            "corner::centre_feed_outside",
            vec![(corner::centre_feed_outside(arc, d), NUMBER)],
        ),
        (
            "corner::ae_effective_in_bore",
            vec![(
                corner::ae_effective_in_bore(u.mm(50.0), u.mm(46.0), d),
                LENGTH,
            )],
        ),
        (
            "corner::feed_factor",
            vec![(corner::feed_factor(d, ae, 1.5), NUMBER)],
        ),
        (
            "surface::side_roughness",
            vec![(surface::side_roughness(u.mm(0.1), d), LENGTH)],
        ),
        (
            "surface::floor_roughness",
            vec![(surface::floor_roughness(u.mm(0.1), u.mm(0.5)), LENGTH)],
        ),
        (
            "surface::scallop_stepover",
            vec![(surface::scallop_stepover(u.mm(0.01), d), LENGTH)],
        ),
        (
            "surface::scallop_height",
            vec![(surface::scallop_height(ae, d), LENGTH)],
        ),
        (
            "surface::wall_lean",
            vec![(surface::wall_lean(&beam(u), force, u.mm(3.0)), LENGTH)],
        ),
        (
            "rib::clamped_strip_compliance",
            vec![(
                rib::clamped_strip_compliance(e_mod, section.0, section.1, length),
                COMPLIANCE,
            )],
        ),
        (
            "rib::clamped_strip_compliance_at",
            vec![(strip_at, COMPLIANCE)],
        ),
        (
            "rib::clamped_strip_stress",
            vec![(
                rib::clamped_strip_stress(force, section.0, section.1, length),
                STRESS,
            )],
        ),
        (
            "rib::wall_tip_compliance",
            vec![(
                rib::wall_tip_compliance(e_mod, u.mm(1.0), u.mm(8.0), u.mm(5.0)),
                COMPLIANCE,
            )],
        ),
    ]
}

pub(crate) fn shop(u: &Units) -> Vec<Kernel> {
    let (force, stress) = (u.of(100.0, FORCE), u.of(2e5, STRESS));
    let (v, life, accel, length) = (
        u.of(0.05, SPEED),
        u.of(900.0, TIME),
        u.of(0.5, ACCELERATION),
        u.mm(30.0),
    );
    let chain = [30.0, 4.0, 9.0].map(|mm| Segment {
        length: u.mm(mm),
        v,
        exit_v: 0.4 * v,
    });
    let speeds = (u.of(3.0, SPEED), u.of(5.0, SPEED));
    vec![
        (
            "hold::friction_capacity",
            vec![(hold::friction_capacity(force, 0.2, 2), FORCE)],
        ),
        (
            "hold::required_normal",
            vec![(hold::required_normal(force, 0.2, 2.0), FORCE)],
        ),
        (
            "hold::strap_clamp_force",
            vec![(
                hold::strap_clamp_force(force, u.mm(20.0), u.mm(10.0)),
                FORCE,
            )],
        ),
        (
            "hold::screw_preload",
            vec![(
                hold::screw_preload(u.of(5.0, TORQUE), 0.2, u.mm(5.0)),
                FORCE,
            )],
        ),
        (
            "hold::screws_by_friction",
            vec![(hold::screws_by_friction(force, 0.2, 4), FORCE)],
        ),
        (
            "hold::shear_capacity",
            vec![(hold::shear_capacity(u.mm(4.0), stress, 2), FORCE)],
        ),
        (
            "hold::vacuum_force",
            vec![(hold::vacuum_force(stress, u.of(0.01, AREA)), FORCE)],
        ),
        (
            "hold::tape_area",
            vec![(hold::tape_area(force, stress, 2.0), AREA)],
        ),
        (
            "hold::tipping_force",
            vec![(hold::tipping_force(force, u.mm(10.0), u.mm(50.0)), FORCE)],
        ),
        (
            "taylor::life",
            vec![(taylor::life(speeds.0, speeds.1, 0.25, life), TIME)],
        ),
        (
            "taylor::life_ratio",
            vec![(taylor::life_ratio(0.7, 0.25), NUMBER)],
        ),
        (
            "taylor::speed_for_life",
            vec![(
                taylor::speed_for_life(life, speeds.1, 0.25, 2.0 * life),
                SPEED,
            )],
        ),
        (
            "taylor::exponent",
            vec![(
                taylor::exponent(speeds.1, life, speeds.0, 4.0 * life),
                NUMBER,
            )],
        ),
        (
            "taylor::speed_ratio",
            vec![(taylor::speed_ratio(0.5, 0.25, &[(2.0, 0.3)]), NUMBER)],
        ),
        (
            "time::segment_time",
            vec![(time::segment_time(length, v, accel), TIME)],
        ),
        (
            "time::path_time",
            vec![(time::path_time(length, u.mm(2.0), v, accel), TIME)],
        ),
        (
            "time::junction_speed",
            vec![(time::junction_speed(ANGLE, u.mm(0.01), accel), SPEED)],
        ),
        (
            "time::chain_time",
            vec![(time::chain_time(&chain, accel), TIME)],
        ),
    ]
}
