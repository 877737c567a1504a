//! What was learned, as answers: an end of a range each, in fields that are not asked.

use super::rule::Taught;
use super::world::Quantity;
use crate::answers::Answers;
use crate::estimate::{Estimate, Estimates};
use crate::field::{Field, Group};
use crate::problem::ProblemKind;
use crate::read::Reader;
use thinwright_catalog::MaterialRow;
use thinwright_quantity::{Kind, Rounding, format_bare, parse};

/// The fields of each quantity: its lower and its upper end. Stiffness and damping stand as they are, the specific cutting
/// force as a factor on the likely value of the material's row.
pub const LEARNED: [(Quantity, Field, Field); 3] = [
    (
        Quantity::Stiffness,
        Field::LearnedStiffnessLow,
        Field::LearnedStiffnessHigh,
    ),
    (Quantity::Kc, Field::LearnedKcLow, Field::LearnedKcHigh),
    (
        Quantity::Damping,
        Field::LearnedDampingLow,
        Field::LearnedDampingHigh,
    ),
];

/// Less than this share is not worth an answer.
const WORTH: f64 = 0.01;
/// Bounds that catch slips, SI.
const STIFFNESS: (f64, f64) = (1.0e3, 1.0e9);
const FACTOR: (f64, f64) = (1.0e-2, 1.0e2);
const DAMPING: (f64, f64) = (1.0e-4, 0.5);

/// Whether a field belongs to the machine and goes with it from job to job: its own group, and what it has taught of its
/// stiffness and its damping. The cutting force belongs to the material.
pub fn is_machines(field: Field) -> bool {
    match field.spec().group {
        Group::Machine => true,
        Group::Learned => !matches!(field, Field::LearnedKcLow | Field::LearnedKcHigh),
        _ => false,
    }
}

/// The answers as if nothing had been learned.
pub fn forgotten(answers: &Answers) -> Answers {
    let mut answers = answers.clone();
    for field in LEARNED.iter().flat_map(|(_, low, high)| [*low, *high]) {
        answers.clear(field);
    }
    answers
}

/// What stands for a quantity in its fields: the kind, the size of one, and the bounds.
fn scale(quantity: Quantity, material: &MaterialRow) -> (Kind, f64, (f64, f64)) {
    match quantity {
        Quantity::Stiffness => (Kind::Stiffness, 1.0, STIFFNESS),
        Quantity::Kc => (Kind::Ratio, material.kc1_1.likely.si(), FACTOR),
        Quantity::Damping => (Kind::Ratio, 1.0, DAMPING),
    }
}

/// Every field with its text after what was taught; empty where an end stays where it was. Rounded outwards.
pub fn texts(taught: &Taught, answers: &Answers, material: &MaterialRow) -> Vec<(Field, String)> {
    let each = LEARNED.iter().flat_map(|(quantity, low, high)| {
        let (kind, one, _) = scale(*quantity, material);
        let ((least, most), (from, to)) = taught.of(*quantity);
        let end = |field: Field, was: f64, now: f64, rounding| {
            let text = format_bare(kind, now / one, answers.units, rounding);
            let rounded = parse(kind, &text, answers.units).unwrap_or(was / one) * one;
            let narrows = match rounding {
                Rounding::Down => rounded > was * (1.0 + WORTH),
                Rounding::Up | Rounding::Nearest => rounded < was * (1.0 - WORTH),
            };
            // What was carried over from an earlier job stays, word for word.
            let kept = answers.text(field.into()).to_owned();
            (field, if narrows { text } else { kept })
        };
        [
            end(*low, least, from, Rounding::Down),
            end(*high, most, to, Rounding::Up),
        ]
    });
    each.collect()
}

/// Narrows the estimates by what was learned; gives them as they were before where anything was.
///
/// The likely value keeps its place between the ends, by ratio.
pub(crate) fn narrow(
    reader: &mut Reader,
    estimates: &mut Estimates,
    material: &MaterialRow,
) -> Option<Estimates> {
    let before = *estimates;
    for (quantity, low, high) in LEARNED {
        let (_, one, bounds) = scale(quantity, material);
        let (from, to) = (reader.typed(low, bounds), reader.typed(high, bounds));
        if let (Some(from), Some(to)) = (from, to)
            && from > to
        {
            let problem = ProblemKind::TooLarge {
                value: from,
                greatest: to,
            };
            reader.problem(low, problem);
            continue;
        }
        let estimate = &mut estimates[quantity.unknown() as usize];
        let ends = (estimate.low / one, estimate.high / one);
        let hair = 1.0e-6;
        if let Some(value) = from.filter(|f| *f > ends.1 * (1.0 + hair)) {
            let greatest = ends.1;
            reader.problem(low, ProblemKind::TooLarge { value, greatest });
        } else if let Some(value) = to.filter(|t| *t < ends.0 * (1.0 - hair)) {
            let least = ends.0;
            reader.problem(high, ProblemKind::TooSmall { value, least });
        } else {
            let low = from.map_or(estimate.low, |f| estimate.low.max(f * one));
            let high = to.map_or(estimate.high, |t| estimate.high.min(t * one));
            *estimate = between(estimate, low.min(estimate.high), high.max(estimate.low));
        }
    }
    (*estimates != before).then_some(before)
}

/// An estimate with other ends.
fn between(estimate: &Estimate, low: f64, high: f64) -> Estimate {
    if (low, high) == (estimate.low, estimate.high) {
        return *estimate;
    }
    let whole = libm::log(estimate.high / estimate.low);
    let place = match whole > 0.0 {
        true => libm::log(estimate.likely / estimate.low) / whole,
        false => 0.5,
    };
    Estimate {
        low,
        likely: (low * libm::pow(high / low, place)).clamp(low, high.max(low)),
        high: high.max(low),
        known: estimate.known,
    }
}
