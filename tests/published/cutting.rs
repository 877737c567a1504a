//! Speeds, chips, and specific cutting force.

use super::power::cutting;
use super::values;
use crate::agreement::{Answer, Row};
use core::f64::consts::FRAC_PI_2;
use thinwright_mechanics::chip::{
    ball_effective_diameter, corner_effective_diameter, greatest_chip_thickness,
    lead_angle_thinning, mean_chip_thickness, mean_chip_thickness_sqrt, radial_thinning,
    round_insert_factor,
};
use thinwright_mechanics::engagement::engagement_angle;
use thinwright_mechanics::kienzle::{Cutting, kienzle_fit, specific_cutting_force};
use thinwright_mechanics::kinematics::{feed_per_tooth, feed_speed, spindle_speed, surface_speed};

pub(crate) fn speed(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    match id {
        "speeds-bingham-example" => {
            let n = spindle_speed(row.input("vc"), row.input("d"));
            values([
                ("n", n),
                ("feed", feed_speed(row.input("fz"), row.count("teeth"), n)),
            ])
        }
        "speeds-niagara-feed" => {
            let feed = |n| feed_speed(row.input("fz"), row.count("teeth"), n);
            values([("feed_per_turn", feed(1.0)), ("feed", feed(row.input("n")))])
        }
        "speeds-rule-4V-over-D" => {
            // Four turns a minute for 1 ft/min on 1 in.
            let exact = spindle_speed(0.3048 / 60.0, 0.0254);
            values([("ratio_rule_to_exact", 4.0 / 60.0 / exact)])
        }
        "speeds-rpm-1.5in-50" => values([("n", spindle_speed(row.input("speed"), row.input("D")))]),
        _ if id.starts_with("speeds-az-rpm-") => {
            values([("n", spindle_speed(row.input("vc"), row.input("d")))])
        }
        _ if id.starts_with("speeds-rpm-") => {
            values([("n", spindle_speed(row.input("vc"), row.input("D")))])
        }
        _ if id.starts_with("speeds-kyocera-vc-") => {
            values([("vc", surface_speed(row.input("D"), row.input("n")))])
        }
        _ => None,
    }
}

pub(crate) fn chip(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    // Printed tables of corrected feed follow the short form of the mean chip.
    let fz_short = |hm: f64, ae: f64| hm / mean_chip_thickness_sqrt(1.0, ae, 1.0, FRAC_PI_2);
    match id {
        "chip-lead-42" => values([(
            "fz",
            row.input("h") / lead_angle_thinning(1.0, row.input("lead")),
        )]),
        "chip-hm-example-ceratizit" => values([(
            "fz_corrected",
            fz_short(row.input("fz_start"), row.input("ae_over_D")),
        )]),
        "chip-gate1994-slab" => {
            let (d, depth) = (row.input("cutter_d"), row.input("depth"));
            let fz = feed_per_tooth(row.input("table_feed"), row.count("teeth"), row.input("n"));
            // In a thin cut the chip grows to twice its mean.
            let twice = 2.0 * mean_chip_thickness_sqrt(fz, depth, d, FRAC_PI_2);
            values([
                (
                    "h_max_exact",
                    greatest_chip_thickness(fz, depth, d, FRAC_PI_2),
                ),
                ("h_max_approx", twice),
            ])
        }
        _ if id.starts_with("chip-phi-") => {
            values([("engagement", engagement_angle(row.input("ae_over_D"), 1.0))])
        }
        _ if id.starts_with("chip-thin-") => values([(
            "feed_multiplier_same_max_chip",
            radial_thinning(row.input("ae_over_D"), 1.0),
        )]),
        _ if id.starts_with("chip-hm-table-") => {
            let hm = row.input("hm");
            let feeds = row.list("ae_over_D").iter().map(|ae| fz_short(hm, *ae));
            Some(vec![("fz", feeds.collect())])
        }
        _ if id.starts_with("chip-round-") && row.has("ap") => values([(
            "feed_multiplier",
            round_insert_factor(row.input("ap"), row.input("insert_d")),
        )]),
        _ if id.starts_with("chip-exact-") => exact_chip(row),
        _ if id.starts_with("chip-ball-deff-") => {
            let share = ball_effective_diameter(row.input("ap_over_D"), 1.0);
            values([("Deff_over_D", share), ("D_over_Deff", 1.0 / share)])
        }
        _ if id.starts_with("chip-deff-") => values([(
            "Deff",
            corner_effective_diameter(row.input("ap"), row.input("D"), row.input("corner_radius")),
        )]),
        _ => None,
    }
}

fn exact_chip(row: &Row) -> Option<Answer> {
    let (fz, ae) = (row.input("fz"), row.input("ae"));
    let (d, kappa) = (row.input("D"), row.input("kappa"));
    values([
        ("engagement", engagement_angle(ae, d)),
        ("h_max", greatest_chip_thickness(fz, ae, d, kappa)),
        ("h_mean_exact", mean_chip_thickness(fz, ae, d, kappa)),
        ("h_mean_sqrt", mean_chip_thickness_sqrt(fz, ae, d, kappa)),
    ])
}

pub(crate) fn force(row: &Row) -> Option<Answer> {
    if row.id.starts_with("kienzle-tun-") {
        return Some(vec![("kc", each_from_the_others(row))]);
    }
    let constants = row.has("kc1_1") && row.has("mc") && row.has("h");
    constants
        .then(|| values([("kc", specific_cutting_force(&cutting(row), row.input("h")))]))
        .flatten()
}

/// Each printed force foretold by Kienzle's law as fitted to the others of its row: whether they follow such a law at all.
fn each_from_the_others(row: &Row) -> Vec<f64> {
    let (chips, printed) = (row.list("feed_per_tooth"), row.printed("kc"));
    let points: Vec<(f64, f64)> = chips.iter().copied().zip(printed.iter().copied()).collect();
    let foretold = |left_out: usize| {
        let mut others = points.clone();
        let (h, _) = others.remove(left_out);
        let (kc1_1, mc) = kienzle_fit(&others, 1e-3);
        let law = Cutting {
            kc1_1,
            mc,
            h_ref: 1e-3,
            radial_ratio: 0.0,
            axial_ratio: 0.0,
            wear: 1.0,
        };
        specific_cutting_force(&law, h)
    };
    (0..points.len()).map(foretold).collect()
}
