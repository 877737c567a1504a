//! The depths of both recesses and the web between them: one of the three may be left to be worked out.

use super::part::{FROM_ZERO, LENGTH};
use super::reader::Reader;
use crate::field::Field;
use crate::problem::ProblemKind;
use thinwright_quantity::Length;

/// Lengths nearer than this are one and the same, m.
const HAIR: f64 = 1.0e-9;
/// Depths and webs nearer than this agree: three sizes rounded to the ten-thousandth of an inch are no contradiction, m.
const AGREE: f64 = 5.0e-6;

/// The depths of face A and face B, m; `None` after a problem, be it of the thickness.
pub(super) fn read(reader: &mut Reader, thickness: Option<f64>) -> Option<(f64, f64)> {
    let fields = [Field::DepthA, Field::DepthB, Field::Web];
    let empty = fields.map(|f| reader.empty(f));
    let a = reader.typed(Field::DepthA, FROM_ZERO);
    let b = reader.typed(Field::DepthB, FROM_ZERO);
    let web = reader.typed(Field::Web, LENGTH);
    let typed = [a, b, web];
    if typed
        .iter()
        .zip(empty)
        .any(|(value, empty)| value.is_none() && !empty)
    {
        return None;
    }
    let thickness = thickness?;
    let (a, b) = match worked_out(thickness, typed) {
        Ok(depths) => depths,
        Err((field, kind)) => {
            reader.problem(field, kind);
            return None;
        }
    };
    // So small a depth is rounding of inches, not a recess.
    let b = if b < AGREE { 0.0 } else { b };
    if thickness - a - b <= HAIR {
        let m = Length::from_si;
        let kind = ProblemKind::NoWeb {
            thickness: m(thickness),
            depth_a: m(a),
            depth_b: m(b),
        };
        reader.problem(Field::DepthA, kind.clone());
        reader.problem(if empty[1] { Field::Web } else { Field::DepthB }, kind);
        return None;
    }
    if a <= HAIR {
        let kind = ProblemKind::TooSmall {
            value: a,
            least: LENGTH.0,
        };
        reader.problem(Field::DepthA, kind);
        return None;
    }
    Some((a, b))
}

/// Both depths from what of depth A, depth B and web is given.
fn worked_out(thickness: f64, given: [Option<f64>; 3]) -> Result<(f64, f64), (Field, ProblemKind)> {
    let m = Length::from_si;
    let too_thick = |depth: f64, web: f64| {
        let kind = ProblemKind::WebTooThick {
            thickness: m(thickness),
            depth: m(depth),
            web: m(web),
        };
        (Field::Web, kind)
    };
    match given {
        [Some(a), b, None] => Ok((a, b.unwrap_or(0.0))),
        [Some(a), None, Some(web)] if thickness - a - web < -HAIR => Err(too_thick(a, web)),
        [Some(a), None, Some(web)] => Ok((a, (thickness - a - web).max(0.0))),
        [None, b, Some(web)] => {
            let b = b.unwrap_or(0.0);
            let a = thickness - b - web;
            if a <= HAIR {
                Err(too_thick(b, web))
            } else {
                Ok((a, b))
            }
        }
        [Some(a), Some(b), Some(web)] if (thickness - a - b - web).abs() > AGREE => {
            let kind = ProblemKind::WebDisagrees {
                thickness: m(thickness),
                depth_a: m(a),
                depth_b: m(b),
                web: m(web),
            };
            Err((Field::Web, kind))
        }
        [Some(a), Some(b), Some(_)] => Ok((a, b)),
        [None, _, None] => Err((Field::DepthA, ProblemKind::Missing)),
    }
}
