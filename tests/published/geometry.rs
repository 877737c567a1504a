//! Loops, ramps, corners and the marks of feed: plane geometry.

use super::values;
use crate::agreement::{Answer, Row};
use core::f64::consts::TAU;
use thinwright_mechanics::corner::{
    ae_effective_in_bore, centre_feed_inside, centre_feed_outside, engagement_in_arc,
    engagement_sharp,
};
use thinwright_mechanics::engagement::engagement_angle;
use thinwright_mechanics::entry::{helix_angle, path_per_turn, ramp_length};
use thinwright_mechanics::slot::{loop_path, trochoid_engagement, trochoid_engagement_apex};
use thinwright_mechanics::surface::{floor_roughness, scallop_stepover, side_roughness};

pub(crate) fn trochoid(row: &Row) -> Option<Answer> {
    let (d, width, step) = (
        row.input("tool_D"),
        row.input("slot_width"),
        row.input("step"),
    );
    let radius = 0.5 * (width - d);
    // The way of a loop is the circle and the advance.
    assert!((loop_path(radius, step) - TAU * radius - step).abs() < 1e-15);
    values([
        ("trochoid_radius", radius),
        (
            "engagement_at_apex",
            trochoid_engagement_apex(d, width, step),
        ),
        (
            "max_engagement_over_cycle",
            trochoid_engagement(d, width, step),
        ),
        ("straight_wall_same_step", engagement_angle(step, d)),
    ])
}

pub(crate) fn ramp(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    if id.starts_with("ramp-kyocera-") {
        return values([("tan", 1.0 / ramp_length(1.0, row.input("max_ramp")))]);
    }
    if id.starts_with("ramp-length-") {
        let length = ramp_length(row.input("depth"), row.input("ramp"));
        return values([("ramp_length", length)]);
    }
    if !id.starts_with("ramp-helix-") {
        return None;
    }
    let (d, hole, pitch) = (row.input("tool_D"), row.input("hole_D"), row.input("pitch"));
    values([
        ("centre_path_radius", path_per_turn(0.0, hole, d) / TAU),
        ("helix_angle", helix_angle(pitch, hole, d)),
        ("path_per_turn", path_per_turn(pitch, hole, d)),
    ])
}

pub(crate) fn corner(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    if id == "corner-sandvik-0.4" {
        let share = centre_feed_inside(1.0, row.input("Dc_over_Dm"));
        return values([("kinematic_factor", share), ("feed_factor_printed", share)]);
    }
    let d = row.input("tool_D");
    if id.starts_with("corner-arc-") {
        let ae = row.input("ae");
        let (arc, straight) = (
            engagement_in_arc(d, row.input("wall_corner_radius"), ae),
            engagement_angle(ae, d),
        );
        return values([
            ("engagement_in_arc", arc),
            ("engagement_straight", straight),
            ("ratio", arc / straight),
        ]);
    }
    let feed = |share: f64| values([("tool_centre_feed", row.input("periphery_feed") * share)]);
    match id {
        "corner-sharp-10" => values([("engagement_peak", engagement_sharp(d, row.input("ae")))]),
        "corner-ae-eff-50-46-20" => {
            let (after, before) = (row.input("final_bore"), row.input("existing_bore"));
            values([
                ("ae_effective", ae_effective_in_bore(after, before, d)),
                ("ae_nominal", 0.5 * (after - before)),
            ])
        }
        _ if id.starts_with("corner-feed-inside-") => {
            feed(centre_feed_inside(row.input("hole_or_arc_diameter"), d))
        }
        _ if id.starts_with("corner-feed-outside-") => {
            feed(centre_feed_outside(row.input("boss_diameter"), d))
        }
        _ => None,
    }
}

pub(crate) fn roughness(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    match id {
        "roughness-gate2003" => {
            let (f, r) = (row.input("f"), row.input("r"));
            let after = floor_roughness(f * row.input("feed_ratio"), r);
            values([("roughness_ratio", after / floor_roughness(f, r))])
        }
        "roughness-kyocera-rz-15" => values([(
            "Rz",
            floor_roughness(row.input("f"), row.input("nose_radius")),
        )]),
        _ if id.starts_with("roughness-side-wall-") => {
            values([("Rt", side_roughness(row.input("fz"), row.input("D")))])
        }
        _ if id.starts_with("roughness-scallop-") => {
            let ball = row.input("ball_D");
            let heights = row.list("Rth").iter();
            Some(vec![(
                "stepover",
                heights.map(|h| scallop_stepover(*h, ball)).collect(),
            )])
        }
        _ => None,
    }
}
