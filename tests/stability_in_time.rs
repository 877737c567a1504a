//! The limits of `shared/reference/milling.json` against integration in time: below them a vibration dies out, above it grows.
#![cfg(test)]

#[path = "peers_stability/drawn.rs"]
mod drawn;
#[path = "stability_in_time/mod.rs"]
mod in_time;

use drawn::Drawn;
use in_time::linear::growth;
use in_time::physical::{Feeding, sampled_peak_to_peak};
use in_time::{Milling, Swinging};

/// Shares of the limit that are tried, as in the file.
const SHARES: [f64; 2] = [0.97, 1.03];
/// How many of the cases have a limit at least.
const AT_LEAST: usize = 240;
/// How far the growth per tooth may be from the radius of the file: the error of the steps.
const GROWTH: f64 = 1e-4;

fn milling(case: &Drawn) -> Milling {
    let swinging = |m: &drawn::Mode| Swinging {
        k: m.k,
        zeta: m.zeta,
        omega: m.omega,
        along: m.along,
    };
    Milling {
        z: case.z,
        phi_st: case.phi_st,
        phi_ex: case.phi_ex,
        kt: case.kt,
        kn: case.kt * case.kr_ratio,
        n: case.n,
        corner: case.corner,
        modes: case.modes.iter().map(swinging).collect(),
    }
}

#[test]
fn vibrations_die_out_below_the_limit_and_grow_above() {
    let all = drawn::all();
    let limited = all
        .iter()
        .filter_map(|case| Some((case, case.limit.as_ref()?)));
    let (mut complaints, mut tried) = (Vec::new(), 0);
    for (case, limit) in limited {
        tried += 1;
        let milling = milling(case);
        for (share, radius) in SHARES.iter().zip(limit.around) {
            let found = growth(&milling, share * limit.at);
            let straddles = (found < 1.0) == (*share < 1.0);
            if !straddles || (found - radius).abs() > GROWTH {
                complaints.push(format!(
                    "{} at {share}: grows by {found}, expected {radius}",
                    case.id
                ));
            }
        }
    }
    assert!(tried >= AT_LEAST, "only {tried} cases");
    assert!(complaints.is_empty(), "{}", complaints.join("\n"));
}

/// Two teeth half in the work (down), 9000 1/min, one mode in feed; the linear limit is 1.5648 mm.
fn half_down() -> Milling {
    Milling {
        z: 2,
        phi_st: core::f64::consts::FRAC_PI_2,
        phi_ex: core::f64::consts::PI,
        kt: 6e8,
        kn: 2e8,
        n: 150.0,
        corner: None,
        modes: vec![Swinging {
            k: 1.340_049_648e6,
            zeta: 0.011,
            omega: core::f64::consts::TAU * 922.0,
            along: [1.0, 0.0, 0.0],
        }],
    }
}

#[test]
fn with_feed_the_cut_settles_below_the_limit_and_keeps_vibrating_above() {
    let milling = half_down();
    let spread = |share: f64| {
        sampled_peak_to_peak(&Feeding {
            milling: &milling,
            depth: share * 1.5648e-3,
            fz: 1e-4,
            teeth: 460,
            looked_at: 60,
        })
    };
    let (quiet, loud) = (spread(0.8), spread(1.25));
    // Teeth leave the cut before the vibration is much larger than the feed.
    assert!(quiet < 1e-8 && loud > 1e-4 && loud < 3e-3, "{quiet} {loud}");
}

#[test]
fn without_teeth_in_the_cut_growth_is_the_decay_of_the_mode() {
    let milling = half_down();
    let decay = libm::exp(-0.011 * milling.modes[0].omega / (2.0 * milling.n));
    let found = growth(&milling, 0.0);
    assert!((found - decay).abs() < 1e-5, "{found} {decay}");
}
