//! Tooth passing, or its double or triple, near the first tone of the bare web.
//!
//! Demand is the share of the tone that the nearest harmonic must keep away; allowed is how far away it is.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

/// Harmonics of tooth passing that are looked at.
const HARMONICS: u32 = 3;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::WebTone,
    source: "leissa1969",
    needs: Needs::Numbers,
    moves: Moves::STILL.n(Move::Unknown),
    bad_ends: &[(Unknown::WebTone, BadEnd::Sampled)],
    levers: &[Lever::SpindleSpeed, Lever::Backing, Lever::WebThickness],
    measure: |case| {
        let web = case.web()?;
        if case.held.backing.bed.likely > 0.0 && web.frequency > 0.0 {
            // A bed under the web takes the drum away.
            return None;
        }
        let tone = web.frequency * case.get(Unknown::WebTone);
        let passing = case.choice.n * f64::from(case.cutter.z);
        let away = (1..=HARMONICS)
            .map(|k| (f64::from(k) * passing / tone - 1.0).abs())
            .fold(f64::INFINITY, f64::min);
        Some(Measure {
            demand: case.job.numbers.web_tone_share,
            allowed: away,
        })
    },
};
