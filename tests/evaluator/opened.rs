//! The complaints that stand open: known, each with its reason, taken off the list once nothing raises them any more.

use super::Complaint;
use std::collections::BTreeMap;

/// The list: a line each: the rule, a stroke, why.
const LIST: &str = include_str!("open.txt");

/// What was raised, by rule: how often, where it is worst.
#[derive(Default)]
pub(crate) struct Open {
    raised: BTreeMap<String, (u32, String, Complaint)>,
}

impl Open {
    /// Notes the complaints of a job.
    pub(crate) fn note(&mut self, job: &str, complaints: Vec<Complaint>) {
        for complaint in complaints {
            let entry = self
                .raised
                .entry(complaint.rule.clone())
                .or_insert_with(|| (0, job.to_owned(), complaint.clone()));
            entry.0 += 1;
            if complaint.by > entry.2.by {
                (entry.1, entry.2) = (job.to_owned(), complaint);
            }
        }
    }

    fn listed() -> Vec<(&'static str, &'static str)> {
        let lines = LIST
            .lines()
            .filter(|l| !l.is_empty() && !l.starts_with('#'));
        lines.filter_map(|l| l.split_once(" | ")).collect()
    }

    /// Every rule that was raised, a line each.
    pub(crate) fn lines(&self) -> Vec<String> {
        let line = |(rule, (count, job, worst)): (&String, &(u32, String, Complaint))| {
            format!(
                "{count:4}x {rule}; worst {:.3} in {job}, step {}: {}",
                worst.by, worst.step, worst.figures
            )
        };
        self.raised.iter().map(line).collect()
    }

    /// Rules that were raised and are not on the list.
    pub(crate) fn unknown(&self) -> Vec<String> {
        let listed = Open::listed();
        let known = |rule: &str| listed.iter().any(|l| l.0 == rule);
        let lines = self.raised.keys().zip(self.lines());
        lines
            .filter(|(rule, _)| !known(rule))
            .map(|l| l.1)
            .collect()
    }

    /// Rules on the list that nothing raised, or that have no reason.
    pub(crate) fn idle(&self) -> Vec<&'static str> {
        let idle = |l: &(&str, &str)| !self.raised.contains_key(l.0) || l.1.len() < 10;
        Open::listed()
            .into_iter()
            .filter(idle)
            .map(|l| l.0)
            .collect()
    }
}
