//! What a person has to confirm before the sheet is printed without a mark: the risks that kill.
//!
//! A confirmation has a key that names the risk and what it hangs on. Where the answers change so that it hangs on something
//! else - another material, another hold, another cutter or speed - it is another key, and is asked for anew.

use crate::job::{Cutter, Job};
use crate::strategy::{Setup, Step, Strategy};
use crate::task::TaskKind;
use thinwright_catalog::{CautionRow, CautionScope};
use thinwright_quantity::{Kind, Rounding, UnitSystem, format_bare};

/// A risk that has to be confirmed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Confirmation {
    /// Name of the risk and of what it hangs on; files keep it once it is confirmed.
    pub key: String,
    /// Id of the caution that says what the risk is.
    pub caution: String,
    /// Numbers of the steps at which it arises; none where it is the whole job's.
    pub steps: Vec<u32>,
}

/// Whether a cutter turns faster, at a spindle speed in 1/s, than is marked on it.
pub fn over_speed(job: &Job, cutter: &Cutter, n: f64) -> bool {
    // Half a step of the grid is what typing takes away.
    let over = |n: f64| {
        cutter
            .marked
            .is_some_and(|most| n > most + 0.5 * job.grid.n)
    };
    // What drills turns at no less than the machine's lowest speed, whatever the step says.
    over(n) || over(job.machine.n.0)
}

/// Everything that a strategy asks to have confirmed, each once.
pub fn confirmations(job: &Job, strategy: &Strategy) -> Vec<Confirmation> {
    let rows = job.tables.1.cautions.iter().filter(|row| row.confirm);
    let mut all: Vec<Confirmation> = Vec::new();
    for row in rows {
        // What hangs on a step is not the whole job's, though a hold may say it for the whole job too.
        let of_step = matches!(
            row.scope,
            CautionScope::BreakThrough | CautionScope::OverSpeed
        );
        if !of_step && strategy.cautions.contains(&row.id) {
            let key = format!("{}@{}", row.id, job.material.id);
            add(&mut all, row, key, None);
        }
        for setup in &strategy.setups {
            for step in setup.steps.iter().filter(|s| s.cautions.contains(&row.id)) {
                for key in keys(job, row, setup, step) {
                    add(&mut all, row, key, Some(step.number));
                }
            }
        }
    }
    all
}

/// What a step's risk hangs on; nothing where it is no more than a caution there.
fn keys(job: &Job, row: &CautionRow, setup: &Setup, step: &Step) -> Vec<String> {
    let id = &row.id;
    match row.scope {
        // Slots and bores leave as chips; along the outline something comes free.
        CautionScope::BreakThrough if step.task != TaskKind::OutlineFinish => Vec::new(),
        CautionScope::BreakThrough => vec![format!("{id}@{}", setup.hold)],
        CautionScope::OverSpeed => {
            let used = job.rack.iter().filter(|c| step.uses(c.row));
            let over = used.filter(|c| over_speed(job, c, speed(job, c, step)));
            over.map(|c| {
                let rpm = |n: f64| {
                    format_bare(Kind::SpindleSpeed, n, UnitSystem::Metric, Rounding::Nearest)
                };
                let marked = rpm(c.marked.unwrap_or_default());
                let n = rpm(speed(job, c, step));
                format!("{id}@{}@{marked}@{n}", u32::from(c.row) + 1)
            })
            .collect()
        }
        CautionScope::Always
        | CautionScope::Material
        | CautionScope::Setup
        | CautionScope::FastCutter
        | CautionScope::Handling => vec![format!("{id}@{}", job.material.id)],
    }
}

/// How fast a cutter turns in a step, 1/s: the drill of drilled ends has its own speed.
fn speed(job: &Job, cutter: &Cutter, step: &Step) -> f64 {
    if step.cutter == cutter.row {
        step.n.si()
    } else {
        crate::time::drill_numbers(job, cutter).0
    }
}

fn add(all: &mut Vec<Confirmation>, row: &CautionRow, key: String, step: Option<u32>) {
    let at = all.iter().position(|c| c.key == key);
    let at = at.unwrap_or_else(|| {
        all.push(Confirmation {
            key,
            caution: row.id.clone(),
            steps: Vec::new(),
        });
        all.len() - 1
    });
    all[at].steps.extend(step);
}
