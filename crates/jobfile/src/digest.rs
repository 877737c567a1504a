//! A short fingerprint of answers: tells whether a sheet and a file belong together.

use crate::answers::{known_word, unit_word};
use thinwright_core::answers::Answers;

/// Start and factor of the 64-bit hash FNV-1a (Fowler, Noll, Vo; from memory, checked against its published values).
const START: u64 = 0xcbf2_9ce4_8422_2325;
const FACTOR: u64 = 0x0000_0100_0000_01b3;

pub(crate) fn fnv1a(bytes: &[u8]) -> u64 {
    bytes.iter().fold(START, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(FACTOR)
    })
}

/// The digest of answers: 16 hexadecimal digits over the units and every text, place and way of knowing.
///
/// Not a protection against anyone: it notices slips, not intent.
pub fn digest(answers: &Answers) -> String {
    let mut all = format!("units {}\n", unit_word(answers.units));
    for (id, answer) in answers
        .iter()
        .filter(|(id, a)| !a.text.is_empty() || id.row.is_some())
    {
        // The length in front keeps texts with line breaks apart.
        all += &format!(
            "{} {} {} {}\n",
            id.key(),
            known_word(answer.known),
            answer.text.len(),
            answer.text
        );
    }
    format!("{:016x}", fnv1a(all.as_bytes()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_core::estimate::Known;
    use thinwright_core::field::Field;
    use thinwright_quantity::UnitSystem;

    #[test]
    fn the_hash_is_the_published_one() {
        // Source: test vectors of FNV-1a, 64 bit, in draft-eastlake-fnv (from memory).
        assert_eq!(fnv1a(b""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(fnv1a(b"a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(fnv1a(b"foobar"), 0x8594_4171_f739_67e8);
    }

    #[test]
    fn every_difference_shows() {
        let mut seen = Vec::new();
        let mut note = |answers: &Answers| {
            let digest = digest(answers);
            assert!(!seen.contains(&digest));
            seen.push(digest);
        };
        let mut answers = Answers::new(UnitSystem::Metric);
        note(&answers);
        note(&Answers::new(UnitSystem::Inch));
        answers.set(Field::Web, "4", Known::Estimated);
        note(&answers);
        answers.set(Field::Web, "4 ", Known::Estimated);
        note(&answers);
        answers.set(Field::Web, "4", Known::Measured);
        note(&answers);
        answers.set(Field::Web, "", Known::Estimated);
        assert_eq!(digest(&answers), digest(&Answers::new(UnitSystem::Metric)));
    }
}
