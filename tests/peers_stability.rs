//! Limits of stability against programs that share nothing with them: `shared/reference/milling.json`, see `tests/peers`.
#![cfg(test)]

#[path = "peers_stability/drawn.rs"]
mod drawn;

use drawn::{Drawn, Limit};
use thinwright_chatter::floquet::{Crossing, Kind, Moving, System};
use thinwright_chatter::{Cut, Edge, Mode};

/// How far limits may be apart, and how far in half of the cases.
const WORST: f64 = 1e-4;
const MEDIAN: f64 = 1e-6;
/// How far the critical multipliers, of modulus 1, may be apart.
const MULTIPLIER: f64 = 1e-3;
/// How far the radius beside the limit may be apart.
const RADIUS: f64 = 1e-5;
/// How far the strongest frequency may be apart, and how strong the next may be beside it for it to be asked.
const TONE: f64 = 1e-3;
const CLEAR: f64 = 0.7;
/// Cases that must be there, and must have a limit.
const CASES: usize = 270;
const LIMITED: usize = 240;
const TONES: usize = 220;

/// Cases in which both differ, with the reason.
const DISAGREEING: &[(&str, &str)] = &[(
    "equal17",
    "a flip with a radius of at most 1.00065, over less than 0.9 % of the depth: the search steps over it to the limit 2.4 % deeper",
)];

fn system(case: &Drawn) -> System {
    let moving = |m: &drawn::Mode| Moving {
        mode: Mode {
            k: m.k,
            zeta: m.zeta,
            omega_n: m.omega,
        },
        along: m.along,
    };
    let cut = Cut {
        z: case.z,
        phi_st: case.phi_st,
        phi_ex: case.phi_ex,
        kt: case.kt,
        kr_ratio: case.kr_ratio,
    };
    let edge = case.corner.map_or_else(Edge::sharp, |(radius, planned)| {
        Edge::rounded(radius, planned)
    });
    let modes: Vec<Moving> = case.modes.iter().map(moving).collect();
    System::new(&modes, &cut, &edge).expect("a case is possible")
}

/// What a depth is counted in: metres, or the planned depth where the corner counts.
fn unit(case: &Drawn) -> f64 {
    case.corner.map_or(1.0, |(_, planned)| planned)
}

/// The relative error of a limit that both have, or what is wrong.
fn compared(case: &Drawn, found: Option<&Crossing>) -> Result<Option<f64>, String> {
    let (limit, found) = match (&case.limit, found) {
        (None, None) => return Ok(None),
        (Some(limit), Some(found)) => (limit, found),
        (None, Some(found)) => {
            return Err(format!(
                "a limit at {:?}, none expected",
                found.depth / unit(case)
            ));
        }
        (Some(limit), None) => return Err(format!("no limit, {:?} expected", limit.at)),
    };
    let off = found.depth / unit(case) / limit.at - 1.0;
    if off.abs() > WORST {
        return Err(format!("limit off by {:.2} %", 100.0 * off));
    }
    let kind = match found.kind {
        Kind::Hopf => "hopf",
        Kind::Flip => "flip",
        Kind::Unseen => "unseen",
    };
    let away = libm::hypot(
        found.multiplier.0 - limit.multiplier.0,
        found.multiplier.1 - limit.multiplier.1,
    );
    if kind != limit.kind || away > MULTIPLIER {
        return Err(format!(
            "{kind} with {:?}, {} with {:?} expected",
            found.multiplier, limit.kind, limit.multiplier
        ));
    }
    Ok(Some(off.abs()))
}

/// Errors of the radius below and above the limit.
fn beside(case: &Drawn, system: &System, limit: &Limit) -> Vec<String> {
    let shares = [0.97, 1.03].into_iter().zip(limit.around);
    let wrong = shares.filter_map(|(share, expected)| {
        let found = system.radius(case.n, share * limit.at * unit(case));
        let off = found.map(|found| (found - expected).abs());
        (off.is_none_or(|off| off > RADIUS))
            .then(|| format!("radius at {share}: {found:?}, {expected} expected"))
    });
    wrong.collect()
}

#[test]
#[allow(clippy::print_stdout, reason = "the summary is for people")]
fn first_limits_agree_with_collocation() {
    let cases = drawn::all();
    let (mut errors, mut complaints) = (Vec::new(), Vec::new());
    let mut differ = Vec::new();
    for case in &cases {
        let system = system(case);
        match compared(case, system.limit(case.n, case.most * unit(case)).as_ref()) {
            Ok(off) => {
                errors.extend(off);
                let wrong = case
                    .limit
                    .iter()
                    .flat_map(|limit| beside(case, &system, limit));
                complaints.extend(wrong.map(|what| format!("{}: {what}", case.id)));
            }
            Err(what) => {
                differ.push(case.id.as_str());
                if !DISAGREEING.iter().any(|(id, _)| *id == case.id) {
                    complaints.push(format!("{}: {what}", case.id));
                }
            }
        }
    }
    let agree = DISAGREEING.iter().filter(|(id, _)| !differ.contains(id));
    complaints.extend(agree.map(|(id, _)| format!("{id} is listed and agrees")));
    assert!(
        complaints.is_empty(),
        "{} complaints:\n{}",
        complaints.len(),
        complaints.join("\n")
    );
    errors.sort_by(f64::total_cmp);
    assert!(
        cases.len() >= CASES && errors.len() >= LIMITED,
        "{} of {} cases",
        errors.len(),
        cases.len()
    );
    let (median, worst) = (errors[errors.len() / 2], errors[errors.len() - 1]);
    println!(
        "{} cases, {} limits: median error {median:.1e}, worst {worst:.1e}",
        cases.len(),
        errors.len()
    );
    assert!(median < MEDIAN, "median {median:.1e}, worst {worst:.1e}");
}

/// What is heard at the limit is what the frequency domain has strongest.
#[test]
fn the_tone_told_is_the_strongest() {
    let (mut complaints, mut asked) = (Vec::new(), 0);
    for case in &drawn::all() {
        let Some(limit) = &case.limit else { continue };
        let listed = DISAGREEING.iter().any(|(id, _)| *id == case.id);
        if listed || limit.next_tone > CLEAR {
            continue;
        }
        asked += 1;
        let system = system(case);
        let found = system.limit(case.n, case.most * unit(case));
        let song = found.and_then(|crossing| system.song(case.n, &crossing));
        let omega = song.map_or(f64::NAN, |song| song.omega);
        let off = omega / limit.tone - 1.0;
        if off.is_nan() || off.abs() > TONE {
            complaints.push(format!(
                "{}: {omega:.1} rad/s, {:.1} expected, the next {} as strong",
                case.id, limit.tone, limit.next_tone
            ));
        }
    }
    assert!(asked >= TONES, "only {asked} cases");
    assert!(
        complaints.is_empty(),
        "{} of {asked}:\n{}",
        complaints.len(),
        complaints.join("\n")
    );
}
