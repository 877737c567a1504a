//! The kernels of stability: the cut and its modes, averaged limits, then one tooth period.

use crate::units::*;
use crate::{Kernel, one};
use thinwright_chatter::floquet::{Crossing, Moving, System};
use thinwright_chatter::lobe::limit_at_speed;
use thinwright_chatter::process_damping::*;
use thinwright_chatter::speed::{best_speed, tooth_frequency};
use thinwright_chatter::zero_order::mean_force_change;
use thinwright_chatter::{
    Cut, Edge, Mode, directional, down_milling, floor, quiet_at_any_speed, quiet_depth,
    quiet_depth_one_mode, slotting, up_milling,
};

/// Share of the diameter in the cut.
const WIDTH: f64 = 0.3;
/// Shares of a limit: below it a cut is stable, above it is not.
const BESIDE: [f64; 2] = [0.99, 1.01];

fn mode(u: &Units, f: f64) -> Mode {
    Mode {
        k: u.of(2e6, STIFFNESS),
        zeta: 0.02,
        omega_n: u.of(core::f64::consts::TAU * f, RATE),
    }
}

fn cut(u: &Units) -> Cut {
    let (phi_st, phi_ex) = down_milling(WIDTH);
    Cut {
        z: 3,
        phi_st,
        phi_ex,
        kt: u.of(8e8, STRESS),
        kr_ratio: 0.3,
    }
}

/// A yes as a number that scales; a no is complained of.
fn yes(is: bool) -> (f64, Dimension) {
    (if is { 1.0 } else { f64::NAN }, NUMBER)
}

pub(crate) fn cuts(u: &Units) -> Vec<Kernel> {
    // An entry at 0 says nothing about scaling.
    let ends = |(st, ex): (f64, f64)| vec![(st + 0.1, NUMBER), (ex, NUMBER)];
    let (mode, cut, n) = (mode(u, 900.0), cut(u), u.of(150.0, RATE));
    let a = directional(cut.phi_st, cut.phi_ex, cut.kr_ratio);
    let axial = |edge: Edge| floor::axial_quiet_depth(&mode, &cut, &edge);
    let rounded = axial(Edge::rounded(u.mm(1.0), u.mm(0.7)));
    let (k_cut, c_proc, vc) = (u.of(2e8, STRESS), u.of(2e5, STIFFNESS), u.of(30.0, SPEED));
    let damped = quiet_depth_with_process_damping(&mode, k_cut, c_proc, vc);
    vec![
        ("mode::is_sound", vec![yes(mode.is_sound())]),
        ("mode::is_sound", vec![yes(cut.is_sound())]),
        (
            "directional::directional",
            [a.xx, a.xy, a.yx, a.yy].map(|a| (a, NUMBER)).to_vec(),
        ),
        ("directional::up_milling", ends(up_milling(WIDTH))),
        ("directional::down_milling", ends(down_milling(WIDTH))),
        ("directional::slotting", ends(slotting())),
        one("edge::rounded", rounded, LENGTH),
        one("edge::leaning", axial(Edge::leaning(0.8)), LENGTH),
        one("floor::axial_quiet_depth", rounded, LENGTH),
        one(
            "speed::best_speed",
            best_speed(u.of(900.0, RATE), 3, 1),
            RATE,
        ),
        one("speed::tooth_frequency", tooth_frequency(n, 3), RATE),
        one(
            "process_damping::quiet_depth_with_process_damping",
            damped,
            LENGTH,
        ),
        one(
            "process_damping::surely_quiet_speed",
            surely_quiet_speed(&mode, k_cut, c_proc),
            SPEED,
        ),
    ]
}

pub(crate) fn averaged(u: &Units) -> Vec<Kernel> {
    let (x, y, cut) = (mode(u, 900.0), mode(u, 960.0), cut(u));
    let limit = limit_at_speed(&x, &y, &cut, u.of(150.0, RATE)).unwrap();
    // Within the range of detuning nothing else is worse.
    vec![
        one("zero_order::quiet_depth", quiet_depth(&x, &y, &cut), LENGTH),
        one("mode::rigid", quiet_depth(&x, &Mode::rigid(), &cut), LENGTH),
        one(
            "zero_order::quiet_depth_one_mode",
            quiet_depth_one_mode(&x, &cut),
            LENGTH,
        ),
        one(
            "zero_order::mean_force_change",
            mean_force_change(&cut),
            STRESS,
        ),
        (
            "lobe::limit_at_speed",
            vec![(limit.depth, LENGTH), (limit.omega, RATE)],
        ),
        one(
            "any_speed::quiet_at_any_speed",
            quiet_at_any_speed(&x, &y, &cut),
            LENGTH,
        ),
    ]
}

fn crossing(found: &Crossing) -> Vec<(f64, Dimension)> {
    let (re, im) = found.multiplier;
    vec![(found.depth, LENGTH), (re, NUMBER), (im, NUMBER)]
}

pub(crate) fn floquet(u: &Units) -> Vec<Kernel> {
    let (x, y) = (mode(u, 900.0), mode(u, 960.0));
    let (n, most) = (u.of(150.0, RATE), u.mm(40.0));
    let round = Edge::rounded(u.mm(1.0), u.mm(0.7));
    let system = |moving: &[Moving], edge: &Edge| System::new(moving, &cut(u), edge).unwrap();
    let alone = |moving, edge: &Edge| crossing(&system(&[moving], edge).limit(n, most).unwrap());
    let both = system(&[Moving::x(x), Moving::y(y)], &round);
    let first = both.limit(n, most).unwrap();
    let period = both.at(n, 2.0 * first.depth).unwrap();
    let song = both.song(n, &first).unwrap();
    let stable = BESIDE.map(|share| period.is_stable(share * first.depth));
    let radius = BESIDE.map(|share| both.radius(n, share * first.depth).unwrap());
    vec![
        ("floquet::x", alone(Moving::x(x), &round)),
        ("floquet::y", alone(Moving::y(y), &round)),
        ("floquet::z", alone(Moving::z(x), &round)),
        ("edge::sharp", alone(Moving::x(x), &Edge::sharp())),
        ("floquet::new", crossing(&first)),
        ("floquet::limit", crossing(&first)),
        ("floquet::limit", crossing(&period.limit().unwrap())),
        ("floquet::limit_on", crossing(&on_a_rung(&both, n))),
        (
            "floquet::rung",
            [0, 1, 5].map(|r| (both.rung(r), LENGTH)).to_vec(),
        ),
        one("floquet::at", period.most(), LENGTH),
        one("floquet::most", period.most(), LENGTH),
        ("floquet::is_stable", vec![yes(stable == [true, false])]),
        ("floquet::radius", radius.map(|r| (r, NUMBER)).to_vec()),
        (
            "floquet::song",
            vec![
                (song.omega, RATE),
                (if song.mode == 0 { 1.0 } else { 2.0 }, NUMBER),
            ],
        ),
    ]
}

/// What the first rung on which there is a limit tells.
fn on_a_rung(system: &System, n: f64) -> Crossing {
    let mut rungs = 0..40;
    rungs.find_map(|rung| system.limit_on(n, rung)).unwrap()
}
