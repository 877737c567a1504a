//! What would help: each lever of a limit, moved until the finding holds.

use super::Limit;
use super::hold::utilisation;
use crate::case::{Case, Load, Responses};
use crate::choice::Choice;
use crate::job::Cutter;
use crate::methods::METHODS;
use crate::pass::{Detail, Pass};
use crate::strategy::{Lever, Remedy};

/// Halvings of a lever's range when its value is sought.
const HALVINGS: u32 = 12;
/// The most that a lever is moved: to so small a share of its value, or to so many times it.
const FARTHEST: f64 = 8.0;

/// The remedies of a limit that is not comfortably held, the levers in the limit's order.
pub(crate) fn remedies(limit: &Limit, case: &Case, now: f64) -> Vec<Remedy> {
    let holds = case.job.numbers.utilisation_holds;
    if now <= holds {
        return Vec::new();
    }
    limit
        .levers
        .iter()
        .filter_map(|lever| remedy(limit, case, *lever, now))
        .collect()
}

fn remedy(limit: &Limit, case: &Case, lever: Lever, now: f64) -> Option<Remedy> {
    let holds = case.job.numbers.utilisation_holds;
    match lever {
        Lever::Flutes => return fewer_flutes(limit, case, now),
        Lever::CornerRadius => return sharp_corner(limit, case, now),
        _ => {}
    }
    let value = value(case, lever)?;
    let at = |to: f64| moved(limit, case, lever, to);
    let (down, up) = (value / FARTHEST, value * FARTHEST);
    // The lever pulls the way in which its far end is better; a lever that does not help is none.
    let far = if at(down)? < at(up)? { down } else { up };
    let best = at(far)?;
    if best >= now - 1.0e-9 {
        return None;
    }
    let (mut bad, mut good) = (value, far);
    if best <= holds {
        for _ in 0..HALVINGS {
            let middle = 0.5 * (bad + good);
            if at(middle)? <= holds {
                good = middle;
            } else {
                bad = middle;
            }
        }
    }
    Some(Remedy {
        lever,
        to: good,
        utilisation: at(good)?,
    })
}

/// Where a lever stands now; `None` for levers that are moved by an answer, not by a number of the step.
fn value(case: &Case, lever: Lever) -> Option<f64> {
    match lever {
        Lever::StickOut => Some(case.cutter.stick_out),
        Lever::StepDown => Some(case.choice.ap),
        Lever::Stepover => (case.choice.ae < case.cutter.d * 0.999).then_some(case.choice.ae),
        Lever::FeedPerTooth => Some(case.choice.fz),
        Lever::SpindleSpeed => Some(case.choice.n),
        Lever::WebThickness => case.web().map(|w| w.thickness),
        Lever::Backing
        | Lever::BoltedBoss
        | Lever::Flutes
        | Lever::CornerRadius
        | Lever::Grip
        | Lever::Clearing => None,
    }
}

/// As many flutes as hold, or one if none do.
fn fewer_flutes(limit: &Limit, case: &Case, now: f64) -> Option<Remedy> {
    let holds = case.job.numbers.utilisation_holds;
    let at = |z: u32| moved(limit, case, Lever::Flutes, f64::from(z));
    let mut fewer = (1..case.cutter.z).rev();
    let best = fewer.find(|z| at(*z).is_some_and(|u| u <= holds));
    let z = best.unwrap_or(1);
    let utilisation = at(z).filter(|u| *u < now - 1.0e-9)?;
    Some(Remedy {
        lever: Lever::Flutes,
        to: f64::from(z),
        utilisation,
    })
}

/// The corner as sharp as it comes.
fn sharp_corner(limit: &Limit, case: &Case, now: f64) -> Option<Remedy> {
    let sharp = case.cutter.corner > 0.0;
    let utilisation =
        moved(limit, case, Lever::CornerRadius, 0.0).filter(|u| sharp && *u < now - 1.0e-9)?;
    Some(Remedy {
        lever: Lever::CornerRadius,
        to: 0.0,
        utilisation,
    })
}

/// The limit's utilisation with one lever at another value and everything that follows from it.
fn moved(limit: &Limit, case: &Case, lever: Lever, to: f64) -> Option<f64> {
    let job = case.job;
    let mut cutter: Cutter = case.cutter.clone();
    let mut choice: Choice = *case.choice;
    let mut known: Responses = case.known.clone();
    match lever {
        Lever::StickOut => {
            if to < case.shape.total_depth() && to < case.cutter.stick_out {
                return None;
            }
            cutter.stick_out = to;
        }
        Lever::StepDown => choice = choice.with_ap(case.shape.task.depth(), to),
        Lever::Stepover => choice.ae = to.min(cutter.d),
        Lever::FeedPerTooth => {
            choice.fz = to;
            choice.vf = to * choice.n * f64::from(cutter.z);
        }
        Lever::SpindleSpeed => {
            let (least, most) = job.speeds_of(&cutter);
            choice.n = to.clamp(least, most);
            choice.fz = choice.vf / (choice.n * f64::from(cutter.z));
        }
        Lever::WebThickness => known.web = known.web.map(|web| web.at_thickness(to)),
        Lever::Flutes => {
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "a count of flutes"
            )]
            let z = to as u32;
            // As many teeth a second as before would ask for another speed: the feed per tooth stays.
            cutter.z = z;
            choice.vf = choice.fz * choice.n * to;
        }
        Lever::CornerRadius => cutter.corner = to,
        Lever::Backing | Lever::BoltedBoss | Lever::Grip | Lever::Clearing => return None,
    }
    let method = METHODS.iter().find(|m| m.id == case.method)?;
    let pass: Pass = (method.pass)(job, case.shape, &cutter, &choice, Detail::Least);
    let load = Load::new(job, &cutter, &choice, &pass);
    let moved = Case {
        cutter: &cutter,
        choice: &choice,
        pass: &pass,
        load: &load,
        known: &known,
        ..*case
    };
    Some(utilisation(limit, &moved))
}
