//! Tool life after Taylor.

use crate::math::{ln, pow};

/// Life over reference life for a speed over reference speed: ratio^(-1/n).
///
/// Units: -; -. Source: taylor1907.
pub fn life_ratio(speed_ratio: f64, exponent: f64) -> f64 {
    pow(speed_ratio, -1.0 / exponent)
}

/// Exponent n of V T^n = C from two points.
///
/// Units: speeds alike, lives alike; -. Source: taylor1907.
pub fn exponent(v1: f64, t1: f64, v2: f64, t2: f64) -> f64 {
    ln(v1 / v2) / ln(t2 / t1)
}

/// Speed over reference speed for a life over reference life, with feed and depth changed too:
/// life^(-n) feed^(-y) depth^(-x).
///
/// Units: -; -. Source: extended Taylor equation.
pub fn speed_ratio(life: f64, exponent: f64, others: &[(f64, f64)]) -> f64 {
    others
        .iter()
        .fold(pow(life, -exponent), |v, (ratio, power)| {
            v * pow(*ratio, -power)
        })
}
