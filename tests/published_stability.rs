//! Stability of milling against published and recomputed values: `shared/reference/stability.json`.
#![cfg(test)]

mod agreement;

use agreement::{Answer, Row};
use core::f64::consts::PI;
use thinwright_chatter::floor::axial_quiet_depth;
use thinwright_chatter::lobe::limit_at_speed;
use thinwright_chatter::process_damping::{quiet_depth_with_process_damping, surely_quiet_speed};
use thinwright_chatter::speed::best_speed;
use thinwright_chatter::zero_order::mean_force_change;
use thinwright_chatter::{Cut, Mode, directional, quiet_depth, quiet_depth_one_mode};

const PERIOD: &str = "needs the map over one tooth period (Floquet)";
const SCHEME: &str = "holds for one discretisation of the tooth period only";
const MATHIEU: &str = "delayed Mathieu equation: witness for the map over one period";
const IMPULSE: &str = "impulsive limit: witness for the map over one period";
const TIME: &str = "needs integration in time with loss of contact";

/// Cases that the zero-order solution cannot answer.
const WAITING: &[(&str, &str)] = &[
    ("A1_published_modulus_w0.2", PERIOD),
    ("A3_published_modulus_w0.7", PERIOD),
    ("A4_published_modulus_w1.0", PERIOD),
    ("B1_rho_IS04_1dof_down_1.0_12000rpm", PERIOD),
    ("B3_rho_IS04_1dof_down_0.5_9000rpm", PERIOD),
    ("B5_rho_IS04_1dof_down_0.1_15000rpm", PERIOD),
    ("B6_rho_IS04_1dof_up_0.1_11000rpm", PERIOD),
    ("B8_rho_IS04_1dof_up_0.05_19000rpm", PERIOD),
    ("B9_rho_IS04_2dof_down_0.05_15000rpm", PERIOD),
    ("B11_rho_IS04_2dof_down_1.0_10000rpm", PERIOD),
    ("B14_rho_SHOP6_down_0.1_18000rpm", PERIOD),
    ("C1_blim_IS04_1dof_down_1.0_6000rpm", PERIOD),
    ("C3_blim_IS04_1dof_down_1.0_20000rpm", PERIOD),
    ("C4_blim_IS04_1dof_down_0.75_10000rpm", PERIOD),
    ("C5_blim_IS04_1dof_down_0.5_7000rpm", PERIOD),
    ("C7_blim_IS04_1dof_up_0.5_18000rpm", PERIOD),
    ("C9_blim_IS04_1dof_up_0.25_11000rpm", PERIOD),
    ("C10_blim_IS04_1dof_down_0.1_6000rpm", PERIOD),
    ("C11_blim_IS04_1dof_up_0.1_6000rpm", PERIOD),
    ("C13_blim_IS04_1dof_down_0.05_6000rpm", PERIOD),
    ("C14_blim_IS04_1dof_down_0.05_15000rpm", PERIOD),
    ("C16_blim_IS04_1dof_up_0.05_11000rpm", PERIOD),
    ("C18_blim_IS04_1dof_up_0.02_18500rpm", PERIOD),
    ("C20_blim_IS04_2dof_up_0.05_19000rpm", PERIOD),
    ("C21_blim_IS04_2dof_down_0.5_12000rpm", PERIOD),
    ("C23_blim_IS04_2dof_down_1.0_15000rpm", PERIOD),
    ("C24_blim_AB95_up_0.5_9000rpm", PERIOD),
    ("C26_blim_AB95_down_0.5_6000rpm", PERIOD),
    ("C27_blim_BM03_down_0.05_3300rpm", PERIOD),
    ("C31_blim_SHOP6_slot_1.0_10000rpm", PERIOD),
    ("C32_blim_SHOP6_up_0.08_24000rpm", PERIOD),
    ("E6_exact_root_4tooth_5000", PERIOD),
    ("F1_scheme_sdm1_m40_down_1.0_5000", SCHEME),
    ("F2_scheme_sdm1_m40_down_0.05_15000", SCHEME),
    ("F4_scheme_sdm1_m40_up_0.5_9000", SCHEME),
    ("G1_delayed_mathieu_a2_eps1.0", MATHIEU),
    ("G3_delayed_mathieu_a1_eps1.0", MATHIEU),
    ("G4_delayed_mathieu_b1_eps2.0", MATHIEU),
    ("H1_impulse_limit_19000", IMPULSE),
    ("K1_nonlinear_IS04_1dof_down_0.5_x0.8", TIME),
    ("K2_nonlinear_IS04_1dof_down_0.5_x1.25", TIME),
    ("K4_nonlinear_IS04_1dof_up_0.05_x1.25", TIME),
    ("K6_nonlinear_AB95_up_0.5_x1.25", TIME),
];

fn teeth(row: &Row) -> u32 {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a count of teeth"
    )]
    let teeth = row.input("teeth") as u32;
    teeth
}

fn cut(row: &Row) -> Cut {
    Cut {
        z: teeth(row),
        phi_st: row.input("entry_angle"),
        phi_ex: row.input("exit_angle"),
        kt: row.input("Kt"),
        kr_ratio: row.input("Kn") / row.input("Kt"),
    }
}

fn mode(row: &Row, axis: &str) -> Mode {
    let value = |what: &str| row.input(&format!("{axis}_mode_{what}"));
    Mode {
        k: value("k"),
        zeta: value("zeta"),
        omega_n: 2.0 * PI * value("fn"),
    }
}

fn modes(row: &Row) -> (Mode, Mode) {
    let y = if row.has("y_mode_k") {
        mode(row, "y")
    } else {
        Mode::rigid()
    };
    (mode(row, "x"), y)
}

fn limit(row: &Row, name: &'static str) -> Answer {
    let (x, y) = modes(row);
    let limit = limit_at_speed(&x, &y, &cut(row), row.input("spindle")).unwrap();
    vec![
        (name, vec![limit.depth]),
        ("chatter_frequency", vec![limit.omega / (2.0 * PI)]),
    ]
}

fn process_damping(row: &Row) -> Answer {
    // Four teeth in a slot: the force change is constant, and equals the normal coefficient.
    let (mode, kn, c) = (
        mode(row, "x"),
        row.input("Kn"),
        row.input("process_damping_C"),
    );
    let damped = quiet_depth_with_process_damping(&mode, kn, c, row.input("cutting_speed"));
    vec![
        ("absolute_min_depth_limit", vec![damped]),
        (
            "without_process_damping",
            vec![quiet_depth(&mode, &Mode::rigid(), &cut(row))],
        ),
        (
            "cutting_speed_below_which_every_depth_is_stable",
            vec![surely_quiet_speed(&mode, kn, c)],
        ),
    ]
}

fn floor_mode(row: &Row) -> Answer {
    let floor = Mode {
        k: row.input("floor_k"),
        zeta: row.input("floor_zeta"),
        omega_n: 1.0,
    };
    let cut = Cut {
        z: teeth(row),
        phi_st: 0.0,
        phi_ex: row.input("exit_minus_entry"),
        kt: row.input("Kt"),
        kr_ratio: row.input("Kr"),
    };
    vec![(
        "min_depth_limit",
        vec![axial_quiet_depth(&floor, &cut, row.input("kappa"))],
    )]
}

fn answer(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    let class = id.chars().next()?;
    match class {
        'D' if id.contains("_zoa_min_") => {
            let (x, y) = modes(row);
            let cut = cut(row);
            let (scanned, closed) = (quiet_depth(&x, &y, &cut), quiet_depth_one_mode(&x, &cut));
            // Both ways must meet the value: the one further off is handed on.
            let further = if (scanned / closed - 1.0).abs() < 1e-9 {
                closed
            } else {
                f64::NAN
            };
            Some(vec![
                ("mean_force_variation", vec![mean_force_change(&cut)]),
                ("min_depth_limit", vec![further]),
            ])
        }
        'D' => Some(limit(row, "zero_order_depth_limit")),
        'E' if row.has("spindle") && !row.has("axial_depth") => Some(limit(row, "depth_limit")),
        'I' => Some(process_damping(row)),
        'J' => {
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "a count of vibrations"
            )]
            let k = row.input("k") as u32;
            Some(vec![(
                "spindle",
                vec![best_speed(row.input("fn"), teeth(row), k)],
            )])
        }
        'L' => Some(floor_mode(row)),
        'N' => {
            let a = directional(
                row.input("entry_angle"),
                row.input("exit_angle"),
                row.input("Kr"),
            );
            let all = [
                ("alpha_xx", a.xx),
                ("alpha_xy", a.xy),
                ("alpha_yx", a.yx),
                ("alpha_yy", a.yy),
            ];
            Some(
                all.into_iter()
                    .map(|(name, value)| (name, vec![value]))
                    .collect(),
            )
        }
        _ => None,
    }
}

#[test]
fn stability_agrees_with_what_is_published() {
    agreement::run("stability.json", WAITING, answer);
}
