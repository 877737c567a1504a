//! Cutters that bend and break, edges that rub and wear, spindles that run out of power.

use super::values;
use crate::agreement::{Answer, Row};
use thinwright_mechanics::power::torque_from_power;
use thinwright_mechanics::rubbing;
use thinwright_mechanics::spindle::derated;
use thinwright_mechanics::taylor::{exponent, life as life_at, life_ratio, speed_ratio};
use thinwright_mechanics::tool_beam::{Beam, root_stress, series, tip_compliance};

/// A plain rod; its modulus does not matter for stress.
fn rod(e_mod: f64, d: f64, length: f64) -> Beam {
    Beam {
        e_mod,
        shank_d: d,
        flute_d_eff: d,
        flute_length: length,
        stick_out: length,
        neck_d: 0.0,
        neck_length: 0.0,
    }
}

pub(crate) fn bending(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    match id {
        "deflection-overhang-cube" => {
            let length = row.input("length_ratio");
            let ratio =
                tip_compliance(&rod(1.0, 1.0, length)) / tip_compliance(&rod(1.0, 1.0, 1.0));
            values([("deflection", row.input("base_deflection") * ratio)])
        }
        "deflection-cortesi-ratio" => values([
            (
                "tool_deflection",
                row.input("force") / series(&[row.input("k_tool")]),
            ),
            (
                "machine_deflection",
                row.input("force") / series(&[row.input("k_machine")]),
            ),
        ]),
        _ if id.starts_with("deflection-cantilever-") => {
            let (e_mod, d, length) = (row.input("E"), row.input("D"), row.input("overhang"));
            let force = row.input("tip_force");
            let fluted = tip_compliance(&rod(e_mod, d * row.input("De_over_D"), length));
            values([
                ("deflection", force * fluted),
                ("stiffness", 1.0 / fluted),
                (
                    "solid_cylinder_deflection",
                    force * tip_compliance(&rod(e_mod, d, length)),
                ),
            ])
        }
        _ if id.starts_with("deflection-two-step-") => {
            let flutes = row.input("flute_length");
            let compliance = tip_compliance(&Beam {
                e_mod: row.input("E"),
                shank_d: row.input("shank_d"),
                flute_d_eff: row.input("De_over_D") * row.input("flute_D"),
                flute_length: flutes,
                stick_out: flutes + row.input("shank_overhang"),
                neck_d: 0.0,
                neck_length: 0.0,
            });
            values([
                ("deflection", row.input("tip_force") * compliance),
                ("stiffness", 1.0 / compliance),
            ])
        }
        _ if id.starts_with("deflection-bending-stress-") => {
            let beam = rod(
                1.0,
                row.input("D") * row.input("De_over_D"),
                row.input("overhang"),
            );
            values([(
                "root_stress",
                root_stress(&beam, row.input("tip_force"), 0.0),
            )])
        }
        _ => None,
    }
}

pub(crate) fn least_chip(row: &Row) -> Option<Answer> {
    if row.id == "minchip-son-30" {
        let share = rubbing::son_least_chip(1.0, row.input("friction_angle"));
        return values([("hmin_over_re", share)]);
    }
    let computed = row.id.starts_with("minchip-rub-");
    computed
        .then(|| {
            let least = rubbing::least_chip(row.input("ratio"), row.input("edge_radius"));
            values([("h_min", least)])
        })
        .flatten()
}

pub(crate) fn life(row: &Row) -> Option<Answer> {
    match row.id.as_str() {
        "taylor-halved-n025" => values([(
            "life_ratio",
            life_ratio(row.input("speed_ratio"), row.input("n")),
        )]),
        "taylor-half-n05" => values([(
            "life_increase",
            life_ratio(row.input("speed_ratio"), row.input("n")) - 1.0,
        )]),
        "taylor-fit-233" => values([(
            "n",
            exponent(
                row.input("V1"),
                row.input("T1"),
                row.input("V2"),
                row.input("T2"),
            ),
        )]),
        "taylor-rpm-300" => {
            let (n1, t1) = (row.input("n1"), row.input("T1"));
            let n = exponent(n1, t1, row.input("n2"), row.input("T2"));
            values([("T3", life_at(row.input("n3"), n1, n, t1))])
        }
        "taylor-extended" => {
            // V T^0.3 F^0.3 D^0.15 = K, the same life.
            let (feed, depth) = (row.input("feed_ratio"), row.input("depth_ratio"));
            let speed = speed_ratio(1.0, 0.3, &[(feed, 0.3), (depth, 0.15)]);
            values([
                ("speed_change", speed - 1.0),
                ("productivity_change", speed * feed * depth - 1.0),
            ])
        }
        _ => None,
    }
}

pub(crate) fn spindle(row: &Row) -> Option<Answer> {
    let computed = row.id.starts_with("spindle-derate-");
    computed
        .then(|| {
            let n = row.input("n");
            let power = derated(row.input("rated"), row.input("base"), n);
            values([
                ("available", power),
                ("torque", torque_from_power(power, n)),
            ])
        })
        .flatten()
}
