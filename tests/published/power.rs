//! Power, torque and time of worked examples.

use super::values;
use crate::agreement::{Answer, Row};
use core::f64::consts::FRAC_PI_2;
use thinwright_mechanics::chip::mean_chip_thickness;
use thinwright_mechanics::engagement::engagement_angle;
use thinwright_mechanics::kienzle::{Cutting, specific_cutting_force};
use thinwright_mechanics::kinematics::{
    face_approach, feed_per_tooth, feed_speed, slab_approach, spindle_speed, surface_speed,
};
use thinwright_mechanics::power::{
    cutting_power, motor_power, power_from_unit, removal_rate, tangential_force, torque_from_power,
    unit_power_from_k_factor,
};

/// Kienzle's law with the constants of a case; the reference chip is 1 mm.
pub(super) fn cutting(row: &Row) -> Cutting {
    Cutting {
        kc1_1: row.input("kc1_1"),
        mc: row.input("mc"),
        h_ref: 1e-3,
        radial_ratio: 0.0,
        axial_ratio: 0.0,
        wear: 1.0,
    }
}

pub(crate) fn answer(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    let input = |name: &str| row.input(name);
    match id {
        "power-elhofy-slot" => slot(row),
        "power-kalpakjian-slab" => slab(row),
        "power-kalpakjian-face" => face(row),
        "power-gate2015-travel" => values([(
            "travel",
            input("length") + slab_approach(input("depth"), input("cutter_d")),
        )]),
        "power-groover-face-in" => face_in_inches(row),
        "power-k-factor-hp" => {
            let q = removal_rate(input("width"), input("depth"), input("feed"));
            let unit = unit_power_from_k_factor(input("K"));
            values([("power", power_from_unit(unit, q, 1.0, 1.0))])
        }
        "power-cortesi" => {
            let v = input("power") / input("force");
            // The force follows from the speed again.
            assert!((tangential_force(input("power"), v) / input("force") - 1.0).abs() < 1e-12);
            values([
                ("implied_cutting_speed", v),
                ("implied_n", spindle_speed(v, input("tool_d"))),
            ])
        }
        _ if id.starts_with("power-k-") => {
            let unit = unit_power_from_k_factor(input("K"));
            values([("unit_power", unit), ("specific_energy", unit)])
        }
        _ if id.starts_with("power-approx-") => {
            let kc = unit_power_from_k_factor(input("coefficient_x"));
            let q = removal_rate(input("ae"), input("ap"), input("vf"));
            values([("power", cutting_power(kc, q)), ("implied_kc_over_eta", kc)])
        }
        _ if id.starts_with("power-ks-") => {
            let pc = cutting_power(input("Ks"), input("Q"));
            values([
                ("Ks", input("Ks")),
                ("power", motor_power(pc, input("efficiency"))),
            ])
        }
        _ if id.starts_with("power-kc-method-") => by_specific_force(row),
        _ if id.starts_with("power-groover-u-") => {
            let unit = power_from_unit(input("unit_energy"), 1.0, 1.0, 1.0);
            values([("unit_power", unit), ("unit_energy", unit)])
        }
        _ if id.starts_with("power-groover-") || id.starts_with("power-degarmo-") => {
            peripheral(row)
        }
        _ if id.starts_with("power-mh-kp-") => {
            values([("Kp", power_from_unit(input("Kp"), 1.0, 1.0, 1.0))])
        }
        _ if id.starts_with("power-mh-calc-") => {
            let q = removal_rate(input("width"), input("depth"), input("feed"));
            let pc = power_from_unit(input("Kp"), q, input("feed_factor"), input("wear_factor"));
            let pm = motor_power(pc, input("efficiency"));
            values([("Q", q), ("Pc", pc), ("Pm", pm), ("Pm_metric", pm)])
        }
        _ => None,
    }
}

/// Full width, with the printed specific force.
fn slot(row: &Row) -> Option<Answer> {
    let (d, vf) = (row.input("cutter_d"), row.input("table_feed"));
    let n = vf / feed_speed(row.input("fz"), row.count("teeth"), 1.0);
    let vc = surface_speed(d, n);
    let pc = cutting_power(row.input("ks"), removal_rate(d, row.input("depth"), vf));
    values([
        ("n", n),
        ("cutting_speed", vc),
        ("mean_total_tangential_force", tangential_force(pc, vc)),
        ("cutting_power", pc),
        (
            "motor_power",
            motor_power(pc, row.input("motor_efficiency")),
        ),
    ])
}

/// From feed per tooth over the mean chip to force, power and torque.
fn by_specific_force(row: &Row) -> Option<Answer> {
    let (d, ae) = (row.input("D"), row.input("ae"));
    let n = spindle_speed(row.input("vc"), d);
    let vf = feed_speed(row.input("fz"), row.count("z"), n);
    let hm = mean_chip_thickness(row.input("fz"), ae, d, FRAC_PI_2);
    let kc = specific_cutting_force(&cutting(row), hm);
    let pc = cutting_power(kc, removal_rate(ae, row.input("ap"), vf));
    values([
        ("n", n),
        ("vf", vf),
        ("phi", engagement_angle(ae, d)),
        ("hm", hm),
        ("kc", kc),
        ("Pc", pc),
        ("Pmotor", motor_power(pc, row.input("efficiency"))),
        ("torque", torque_from_power(pc, n)),
    ])
}

fn slab(row: &Row) -> Option<Answer> {
    let (n, depth) = (row.input("n"), row.input("depth"));
    let vf = feed_speed(row.input("fz"), row.count("teeth"), n);
    let q = removal_rate(row.input("width"), depth, vf);
    let power = cutting_power(row.input("unit_energy"), q);
    let travel = row.input("length") + slab_approach(depth, row.input("cutter_d"));
    values([
        ("vf", vf),
        ("mrr", q),
        ("power", power),
        ("torque", torque_from_power(power, n)),
        ("cutting_time", travel / vf),
    ])
}

/// The example lets the cutter run in and out by half its diameter.
fn face(row: &Row) -> Option<Answer> {
    let (vf, d) = (row.input("feed"), row.input("cutter_d"));
    let q = removal_rate(row.input("width"), row.input("depth"), vf);
    values([
        ("mrr", q),
        (
            "fz",
            feed_per_tooth(vf, row.count("inserts"), row.input("n")),
        ),
        (
            "cutting_time",
            (row.input("length") + 2.0 * face_approach(d, d)) / vf,
        ),
        ("power", cutting_power(row.input("unit_energy"), q)),
    ])
}

fn face_in_inches(row: &Row) -> Option<Answer> {
    let (d, width) = (row.input("cutter_d"), row.input("width"));
    let n = spindle_speed(row.input("speed"), d);
    let vf = feed_speed(row.input("fz"), row.count("teeth"), n);
    values([
        ("n", n),
        ("feed", vf),
        ("approach_centred", face_approach(width, d)),
        ("mrr", removal_rate(width, row.input("depth"), vf)),
    ])
}

fn peripheral(row: &Row) -> Option<Answer> {
    let (d, depth) = (row.input("cutter_d"), row.input("depth"));
    let n = spindle_speed(row.input("cutting_speed"), d);
    let vf = feed_speed(row.input("fz"), row.count("teeth"), n);
    let approach = slab_approach(depth, d);
    values([
        ("n", n),
        ("feed", vf),
        ("approach", approach),
        ("cutting_time", (row.input("length") + approach) / vf),
        ("mrr", removal_rate(row.input("width"), depth, vf)),
    ])
}
