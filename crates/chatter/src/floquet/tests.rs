//! The limit and the radius against recomputed values; properties.

use super::{Kind, Moving, System};
use crate::{Cut, Edge, Mode};
use core::f64::consts::{PI, TAU};

fn mode(f: f64, zeta: f64, k: f64) -> Mode {
    Mode { k, zeta, omega_n: TAU * f }
}

#[test]
fn smoke() {
    let m = mode(922.0, 0.011, 1340049.6480507487);
    let cut = Cut { z: 2, phi_st: 0.0, phi_ex: PI, kt: 6e8, kr_ratio: 1.0 / 3.0 };
    let s = System::new(&[Moving::x(m)], &cut, &Edge::sharp()).unwrap();
    for d in [0.2e-3, 0.5e-3, 0.7e-3, 1.0e-3] {
        println!("{:?}", s.radius(5000.0 / 60.0, d));
    }
    let c = s.at(6000.0 / 60.0, 2e-3).unwrap().limit().unwrap();
    println!("{c:?} want 0.3532242 hopf -0.36656 0.9304");
    let c = s.at(20000.0 / 60.0, 4e-3).unwrap().limit().unwrap();
    println!("{c:?} want 1.417506 flip");
    assert_eq!(c.kind, Kind::Flip);
    let s = System::new(&[Moving::x(m), Moving::y(m)], &cut, &Edge::sharp()).unwrap();
    println!("{:?} want 0.1144476", s.at(15000.0 / 60.0, 1e-3).unwrap().limit().unwrap());
}
