//! Entries, slots, corners, walls, holding, life, time and the push test: one function per module of the mechanics.

use crate::cut::beam;
use crate::units::*;
use crate::{Kernel, one};
use thinwright_mechanics::{corner, entry, hold, push, rib, rubbing, slot, surface, taylor, time};

/// An angle, rad.
const ANGLE: f64 = 0.9;

pub(crate) fn entry(u: &Units) -> Vec<Kernel> {
    use entry::*;
    let (d, hole, pitch, depth) = (u.mm(6.0), u.mm(9.0), u.mm(0.5), u.mm(4.1));
    let strokes = zigzag_ramp_strokes(depth, u.mm(20.0), 0.04);
    vec![
        one("entry::ramp_length", ramp_length(depth, 0.05), LENGTH),
        one("entry::helix_angle", helix_angle(pitch, hole, d), NUMBER),
        one("entry::helix_pitch", helix_pitch(0.05, hole, d), LENGTH),
        one(
            "entry::path_per_turn",
            path_per_turn(pitch, hole, d),
            LENGTH,
        ),
        one(
            "entry::centre_feed_factor",
            centre_feed_factor(hole, d),
            NUMBER,
        ),
        one(
            "entry::zigzag_strokes",
            zigzag_strokes(depth, pitch),
            NUMBER,
        ),
        one("entry::zigzag_ramp_strokes", strokes, NUMBER),
    ]
}

pub(crate) fn slot(u: &Units) -> Vec<Kernel> {
    use slot::*;
    let (d, ap, depth) = (u.mm(6.0), u.mm(0.5), u.mm(4.1));
    let (width, step, radius) = (u.mm(10.0), u.mm(0.6), u.mm(2.0));
    let fill = gullet_fill(4.0, (u.mm(0.04), d), d, 3, 0.5);
    let apex = trochoid_engagement_apex(d, width, step);
    let pull = loop_acceleration(u.of(0.03, SPEED), radius);
    vec![
        one("slot::depth_to_width", depth_to_width(depth, width), NUMBER),
        one("slot::chip_room", chip_room(4.0, ap, depth), NUMBER),
        one("slot::gullet_fill", fill, NUMBER),
        one("slot::trochoid_engagement_apex", apex, NUMBER),
        one(
            "slot::trochoid_engagement",
            trochoid_engagement(d, width, step),
            NUMBER,
        ),
        one(
            "slot::trochoid_step",
            trochoid_step(d, width, ANGLE),
            LENGTH,
        ),
        one("slot::loop_path", loop_path(radius, step), LENGTH),
        one("slot::loop_acceleration", pull, ACCELERATION),
    ]
}

pub(crate) fn rubbing(u: &Units) -> Vec<Kernel> {
    let edge = u.mm(0.005);
    vec![
        one(
            "rubbing::least_chip",
            rubbing::least_chip(0.3, edge),
            LENGTH,
        ),
        one(
            "rubbing::son_least_chip",
            rubbing::son_least_chip(edge, 0.5),
            LENGTH,
        ),
    ]
}

pub(crate) fn corner(u: &Units) -> Vec<Kernel> {
    use corner::*;
    let (d, ae, arc) = (u.mm(10.0), u.mm(1.0), u.mm(16.0));
    let arcs = [5.4, 5.95, 8.0].map(|wall| (engagement_in_arc(d, u.mm(wall), ae), NUMBER));
    let bore = ae_effective_in_bore(u.mm(50.0), u.mm(46.0), d);
    vec![
        ("corner::engagement_in_arc", arcs.to_vec()),
        one("corner::engagement_sharp", engagement_sharp(d, ae), NUMBER),
        one(
            "corner::centre_feed_inside",
            centre_feed_inside(arc, d),
            NUMBER,
        ),
        one(
            "corner::centre_feed_outside",
            centre_feed_outside(arc, d),
            NUMBER,
        ),
        one("corner::ae_effective_in_bore", bore, LENGTH),
        one("corner::feed_factor", feed_factor(d, ae, 1.5), NUMBER),
    ]
}

pub(crate) fn surface(u: &Units) -> Vec<Kernel> {
    use surface::*;
    let (d, f, re) = (u.mm(10.0), u.mm(0.1), u.mm(0.5));
    let lean = wall_lean(&beam(u), u.of(30.0, FORCE), u.mm(3.0));
    vec![
        one("surface::side_roughness", side_roughness(f, d), LENGTH),
        one("surface::floor_roughness", floor_roughness(f, re), LENGTH),
        one(
            "surface::scallop_stepover",
            scallop_stepover(u.mm(0.01), d),
            LENGTH,
        ),
        one(
            "surface::scallop_height",
            scallop_height(u.mm(1.0), d),
            LENGTH,
        ),
        one("surface::wall_lean", lean, LENGTH),
    ]
}

pub(crate) fn rib(u: &Units) -> Vec<Kernel> {
    use rib::*;
    let (e_mod, force) = (u.of(7e10, STRESS), u.of(30.0, FORCE));
    let (width, height, length) = (u.mm(2.0), u.mm(4.0), u.mm(40.0));
    let middle = clamped_strip_compliance(e_mod, width, height, length);
    let aside = clamped_strip_compliance_at(e_mod, (width, height), length, u.mm(12.0));
    let stress = clamped_strip_stress(force, width, height, length);
    let beside = beside_slot((e_mod, 0.33), (length, u.mm(4.0)), (width, height));
    let tone = beside_slot_tone((e_mod, u.of(2700.0, DENSITY)), (length, u.mm(4.0)), width);
    let wall = wall_tip_compliance(e_mod, u.mm(1.0), u.mm(8.0), u.mm(5.0));
    vec![
        one("rib::clamped_strip_compliance", middle, COMPLIANCE),
        one("rib::clamped_strip_compliance_at", aside, COMPLIANCE),
        one("rib::clamped_strip_stress", stress, STRESS),
        one("rib::beside_slot", beside, COMPLIANCE),
        one("rib::beside_slot_tone", tone, RATE),
        one("rib::beside_solid", beside_solid(e_mod, height), COMPLIANCE),
        one("rib::wall_tip_compliance", wall, COMPLIANCE),
    ]
}

pub(crate) fn hold(u: &Units) -> Vec<Kernel> {
    use hold::*;
    let (force, stress, torque) = (u.of(100.0, FORCE), u.of(2e5, STRESS), u.of(5.0, TORQUE));
    let (near, far) = (u.mm(10.0), u.mm(20.0));
    let area = u.of(0.01, AREA);
    vec![
        one(
            "hold::friction_capacity",
            friction_capacity(force, 0.2, 2),
            FORCE,
        ),
        one(
            "hold::required_normal",
            required_normal(force, 0.2, 2.0),
            FORCE,
        ),
        one(
            "hold::strap_clamp_force",
            strap_clamp_force(force, far, near),
            FORCE,
        ),
        one(
            "hold::screw_preload",
            screw_preload(torque, 0.2, u.mm(5.0)),
            FORCE,
        ),
        one(
            "hold::screws_by_friction",
            screws_by_friction(force, 0.2, 4),
            FORCE,
        ),
        one(
            "hold::shear_capacity",
            shear_capacity(u.mm(4.0), stress, 2),
            FORCE,
        ),
        one("hold::vacuum_force", vacuum_force(stress, area), FORCE),
        one("hold::tape_area", tape_area(force, stress, 2.0), AREA),
        one(
            "hold::tipping_force",
            tipping_force(force, near, far),
            FORCE,
        ),
    ]
}

pub(crate) fn taylor(u: &Units) -> Vec<Kernel> {
    use taylor::*;
    let (slow, fast, t) = (u.of(3.0, SPEED), u.of(5.0, SPEED), u.of(900.0, TIME));
    let ratio = speed_ratio(0.5, 0.25, &[(2.0, 0.3)]);
    vec![
        one("taylor::life", life(slow, fast, 0.25, t), TIME),
        one("taylor::life_ratio", life_ratio(0.7, 0.25), NUMBER),
        one(
            "taylor::speed_for_life",
            speed_for_life(t, fast, 0.25, 2.0 * t),
            SPEED,
        ),
        one("taylor::exponent", exponent(fast, t, slow, 4.0 * t), NUMBER),
        one("taylor::speed_ratio", ratio, NUMBER),
    ]
}

pub(crate) fn time(u: &Units) -> Vec<Kernel> {
    use time::*;
    let (v, accel, length) = (u.of(0.05, SPEED), u.of(0.5, ACCELERATION), u.mm(30.0));
    let chain = [30.0, 4.0, 9.0].map(|mm| Segment {
        length: u.mm(mm),
        v,
        exit_v: 0.4 * v,
    });
    vec![
        one("time::segment_time", segment_time(length, v, accel), TIME),
        one(
            "time::path_time",
            path_time(length, u.mm(2.0), v, accel),
            TIME,
        ),
        one(
            "time::junction_speed",
            junction_speed(ANGLE, u.mm(0.01), accel),
            SPEED,
        ),
        one("time::chain_time", chain_time(&chain, accel), TIME),
    ]
}

pub(crate) fn push(u: &Units) -> Vec<Kernel> {
    use push::*;
    let (force, back) = (u.of(50.0, FORCE), u.mm(0.03));
    let rod = rod_compliance(u.of(2e11, STRESS), u.mm(8.0), u.mm(25.0));
    let share = uncertainty(0.05, u.mm(0.005), (force, back, rod));
    vec![
        one("push::rod_compliance", rod, COMPLIANCE),
        one(
            "push::stiffness",
            stiffness(force, back, rod).unwrap(),
            STIFFNESS,
        ),
        one("push::uncertainty", share, NUMBER),
    ]
}
