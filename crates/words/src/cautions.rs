//! Cautions: each once, with the steps at which it applies.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use crate::text::list;
use std::collections::BTreeMap;
use thinwright_core::strategy::Strategy;

/// Step numbers as people write them: runs of three or more as `2 to 5`.
pub(crate) fn numbers(steps: &[u32]) -> String {
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for step in steps {
        match runs.last_mut() {
            Some((_, last)) if *last == step.saturating_sub(1) => *last = *step,
            Some((_, last)) if *last == *step => {}
            _ => runs.push((*step, *step)),
        }
    }
    let words = runs
        .into_iter()
        .flat_map(|(first, last)| match last - first {
            0 => vec![first.to_string()],
            1 => vec![first.to_string(), last.to_string()],
            _ => vec![say!("{first} to {last}", first, last)],
        });
    list(&words.collect::<Vec<_>>())
}

impl Speaker<'_> {
    /// The text of a caution; its id where there is none.
    pub fn caution<'a>(&'a self, id: &'a str) -> &'a str {
        self.catalog.caution(id).map_or(id, |row| tr(&row.text))
    }

    /// Every caution once: those of the job as a whole, then those of steps with the numbers of the steps.
    pub fn cautions(&self, strategy: &Strategy) -> Vec<String> {
        let steps = || strategy.setups.iter().flat_map(|s| &s.steps);
        let mut at: BTreeMap<&str, Vec<u32>> = BTreeMap::new();
        let mut order: Vec<&str> = strategy.cautions.iter().map(String::as_str).collect();
        for step in steps() {
            for id in &step.cautions {
                at.entry(id).or_default().push(step.number);
                if !order.contains(&id.as_str()) {
                    order.push(id);
                }
            }
        }
        let text = |id: &&str| match at.get(id) {
            None => self.caution(id).to_owned(),
            Some(steps) if steps.len() == 1 => {
                say!(
                    "{caution} (Step {step})",
                    caution = self.caution(id),
                    step = numbers(steps)
                )
            }
            Some(steps) => say!(
                "{caution} (Steps {steps})",
                caution = self.caution(id),
                steps = numbers(steps)
            ),
        };
        order.iter().map(text).collect()
    }
}
