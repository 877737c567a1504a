//! What is worth measuring: the estimates whose ranges cost most.

use crate::Speaker;
use crate::limits::limit_name;
use crate::unknowns::{unknown_how, unknown_name};
use crate::verdicts::utilisation;
use thinwright_core::estimate::{Known, UNKNOWNS, Unknown};
use thinwright_core::field::Field;
use thinwright_core::limits::{LimitId, Severity};
use thinwright_core::strategy::Strategy;

/// An estimate that holds a step back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WorthKnowing {
    /// What is only estimated.
    pub unknown: Unknown,
    /// Number of the step that it costs most.
    pub step: u32,
    /// The limit there.
    pub limit: LimitId,
    /// Utilisation at the bad end, which counts.
    pub at_worst: f64,
    /// Utilisation if the likely values held.
    pub at_likely: f64,
}

/// The estimates that hold something back, the costliest first; each once, at the step and limit that it costs most.
///
/// A finding counts when it is tighter than `holds` at the bad end and its cost can be read in two decimals.
pub fn worth_knowing(strategy: &Strategy, holds: f64) -> Vec<WorthKnowing> {
    const READABLE: f64 = 0.01;
    let steps = || strategy.setups.iter().flat_map(|s| &s.steps);
    let cost = |w: &WorthKnowing| w.at_worst - w.at_likely;
    let mut out: Vec<WorthKnowing> = UNKNOWNS
        .iter()
        .filter_map(|unknown| {
            let all = steps().flat_map(|step| {
                let set = step.findings.iter().filter(|f| {
                    f.set_by == Some(*unknown)
                        && f.severity != Severity::Listen
                        && f.utilisation() > holds
                });
                set.map(|f| WorthKnowing {
                    unknown: *unknown,
                    step: step.number,
                    limit: f.limit,
                    at_worst: f.utilisation(),
                    at_likely: f.at_likely.utilisation(),
                })
            });
            let finite = all.filter(|w| cost(w).is_finite() && cost(w) >= READABLE);
            finite.max_by(|a, b| cost(a).total_cmp(&cost(b)))
        })
        .collect();
    out.sort_by(|a, b| cost(b).total_cmp(&cost(a)));
    out
}

/// The answer that an unknown can be typed into.
fn field_of(unknown: Unknown) -> Option<Field> {
    match unknown {
        Unknown::Kc => Some(Field::Kc),
        Unknown::MachineStiffness => Some(Field::Stiffness),
        Unknown::Runout => Some(Field::Runout),
        Unknown::Thrust => Some(Field::Thrust),
        Unknown::Friction
        | Unknown::Grip
        | Unknown::BedStiffness
        | Unknown::Efficiency
        | Unknown::Damping
        | Unknown::Rupture => None,
    }
}

impl Speaker<'_> {
    /// The sentences about what is worth measuring; what was measured already is left out.
    pub fn worth_knowing(&self, strategy: &Strategy) -> Vec<String> {
        let holds = self.catalog.numbers.utilisation_holds;
        let measured = |unknown| {
            field_of(unknown).is_some_and(|field| {
                let id = field.into();
                !self.answers.text(id).trim().is_empty()
                    && self.answers.known(id) == Known::Measured
            })
        };
        let open = worth_knowing(strategy, holds)
            .into_iter()
            .filter(|w| !measured(w.unknown));
        open.map(|w| {
            format!(
                "{}: {}. Step {}, {}: {} at the unfavourable end, {} at the likely value",
                unknown_name(w.unknown),
                unknown_how(w.unknown),
                w.step,
                limit_name(w.limit),
                utilisation(w.at_worst),
                utilisation(w.at_likely),
            )
        })
        .collect()
    }
}
