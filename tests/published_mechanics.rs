//! Mechanics of cutting against handbooks, catalogues and worked examples: `shared/reference/mechanics.json`.
#![cfg(test)]

mod agreement;
mod published;

use agreement::{Answer, Row, Runner};
use published::{cutting, geometry, listed, power, strength, tables};

/// What is computed for a case, by its topic.
fn answer(row: &Row) -> Option<Answer> {
    match row.topic.as_str() {
        "power" => power::answer(row),
        "speeds" => cutting::speed(row),
        "chip" => cutting::chip(row),
        "kienzle" => cutting::force(row),
        "trochoid" => geometry::trochoid(row),
        "ramp" => geometry::ramp(row),
        "corner" => geometry::corner(row),
        "roughness" => geometry::roughness(row),
        "deflection" => strength::bending(row),
        "minchip" => strength::least_chip(row),
        "taylor" => strength::life(row),
        "spindle" => strength::spindle(row),
        _ => None,
    }
}

fn run(answer: &dyn Fn(&Row) -> Option<Answer>) {
    let waiting = listed::waiting();
    let runner = Runner {
        file: "mechanics.json",
        answer,
        tabled: &tables::complaints,
        waiting: &waiting,
        disagreeing: listed::DISAGREEING,
    };
    runner.run();
}

#[test]
fn mechanics_agree_with_what_is_published() {
    run(&answer);
}

#[test]
#[should_panic(expected = "1 complaints:\nramp-length-5-3: ramp_length")]
fn a_wrong_value_is_noticed() {
    run(&|row| {
        let mut found = answer(row)?;
        if row.id == "ramp-length-5-3" {
            found[0].1[0] *= 1.0 + 2.0 * row.tolerance;
        }
        Some(found)
    });
}

#[test]
#[should_panic(expected = "1 complaints:\nramp-length-5-3: neither run nor listed")]
fn a_case_that_is_left_out_is_noticed() {
    run(&|row| answer(row).filter(|_| row.id != "ramp-length-5-3"));
}

#[test]
#[should_panic(expected = "1 complaints:\nchip-hm-example-ceratizit: agrees now")]
fn a_disagreement_that_is_gone_is_noticed() {
    run(&|row| {
        let mut found = answer(row)?;
        if row.id == "chip-hm-example-ceratizit" {
            found[0].1 = row.printed("fz_corrected").to_vec();
        }
        Some(found)
    });
}
