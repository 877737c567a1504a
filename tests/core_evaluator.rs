//! Every strategy is looked at a second time, by formulas that share nothing with the search but the kernels.
#![cfg(test)]

mod evaluator;

use evaluator::{Complaint, Open, evaluate};
use std::sync::OnceLock;
use std::sync::atomic::{AtomicUsize, Ordering};
use thinwright_catalog::Catalog;
use thinwright_core::strategy::{Outcome, Step, Strategy};
use thinwright_core::task::TaskKind;
use thinwright_core::{Answers, Job, decide, read};
use thinwright_jobfile::samples;
use thinwright_quantity::{Length, Speed, SpindleSpeed};
use workspace_tests::jobs::random_jobs;

/// Jobs drawn by lot that every run looks at, and that a thorough one looks at.
const SOME: u64 = 120;
const MANY: u64 = 1200;

fn strategy(answers: &Answers, catalog: &Catalog) -> Option<Box<Strategy>> {
    let job = read(answers, catalog).unwrap_or_else(|problems| panic!("{problems:?}"));
    match decide(&job) {
        Outcome::Feasible(strategy) => Some(strategy),
        Outcome::Refused(_) => None,
    }
}

/// A job with what was found; nothing where it was refused.
type Looked = (String, Option<Vec<Complaint>>);

/// Looks at jobs on every core there is; the results come in the order of the jobs.
fn look(jobs: &[(String, Answers)], catalog: &Catalog, thorough: bool) -> Vec<Looked> {
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let next = AtomicUsize::new(0);
    let work = || {
        let mut found = Vec::new();
        loop {
            let i = next.fetch_add(1, Ordering::Relaxed);
            let Some((name, answers)) = jobs.get(i) else {
                return found;
            };
            let strategy = strategy(answers, catalog);
            let complaints = strategy.map(|s| evaluate(answers, catalog, &s, thorough));
            found.push((i, (name.clone(), complaints)));
        }
    };
    let mut all = std::thread::scope(|scope| {
        let workers: Vec<_> = (0..cores).map(|_| scope.spawn(work)).collect();
        let joined = workers.into_iter().flat_map(|w| w.join().unwrap());
        joined.collect::<Vec<(usize, Looked)>>()
    });
    all.sort_by_key(|(i, _)| *i);
    all.into_iter().map(|(_, looked)| looked).collect()
}

/// Looks at the samples and at jobs drawn by lot; what nothing explains is a fault.
#[allow(clippy::print_stdout, reason = "the table is for people")]
fn looked_at(count: u64) -> Open {
    let catalog = Catalog::builtin();
    let named = samples()
        .iter()
        .map(|s| (s.id.to_owned(), s.job().answers))
        .chain(random_jobs(count).map(|(seed, answers)| (format!("job {seed}"), answers)));
    let jobs: Vec<(String, Answers)> = named.collect();
    let mut open = Open::default();
    let mut feasible = 0;
    for (name, complaints) in look(&jobs, &catalog, count > SOME) {
        if let Some(complaints) = complaints {
            feasible += 1;
            open.note(&name, complaints);
        }
    }
    println!("{feasible} strategies of {} jobs", jobs.len());
    for line in open.lines() {
        println!("{line}");
    }
    assert!(2 * feasible > jobs.len(), "{feasible}");
    let unknown = open.unknown();
    assert!(unknown.is_empty(), "{unknown:#?}");
    open
}

#[test]
fn strategies_stand_up_to_a_second_look() {
    looked_at(SOME);
}

#[test]
#[ignore = "minutes: run it when the search, a method or a limit changes"]
fn every_strategy_of_many_stands_up_to_a_second_look() {
    let open = looked_at(MANY);
    let idle = open.idle();
    assert!(idle.is_empty(), "nothing raises these any more: {idle:#?}");
}

/// A sample with its strategy and the complaints that stand open against it.
struct Told {
    id: &'static str,
    answers: Answers,
    strategy: Box<Strategy>,
    before: Vec<(String, u32)>,
}

static TOLD: OnceLock<Vec<Told>> = OnceLock::new();

/// The samples that have a strategy.
fn told() -> Vec<Told> {
    let catalog = Catalog::builtin();
    let all = samples().iter().filter_map(|sample| {
        let answers = sample.job().answers;
        let strategy = strategy(&answers, &catalog)?;
        Some(Told {
            id: sample.id,
            before: rules(&answers, &strategy),
            answers,
            strategy,
        })
    });
    all.collect()
}

fn rules(answers: &Answers, strategy: &Strategy) -> Vec<(String, u32)> {
    let complaints = evaluate(answers, &Catalog::builtin(), strategy, false);
    complaints.into_iter().map(|c| (c.rule, c.step)).collect()
}

/// Changes every step in turn that `change` wants to change, and expects a complaint with one of these words each time
/// that was not raised before.
fn is_caught(words: &[&str], change: impl Fn(&mut Step, &Job) -> bool) {
    let mut tried = 0;
    for told in TOLD.get_or_init(told) {
        let job = read(&told.answers, &Catalog::builtin()).unwrap();
        for (i, setup) in told.strategy.setups.iter().enumerate() {
            for k in 0..setup.steps.len() {
                let mut wrong = told.strategy.clone();
                let step = &mut wrong.setups[i].steps[k];
                if !change(step, &job) {
                    continue;
                }
                let (number, task) = (step.number, step.task);
                tried += 1;
                let mut raised = rules(&told.answers, &wrong);
                raised.retain(|r| !told.before.contains(r));
                let caught = raised.iter().any(|r| words.iter().any(|w| r.0.contains(w)));
                assert!(caught, "{}, step {number} {task:?}: {raised:#?}", told.id);
            }
        }
    }
    assert!(tried > 0, "no step to try {words:?} on");
}

/// Another feed, with everything that follows from it.
fn feed(step: &mut Step, job: &Job, factor: f64) {
    let teeth = job.rack.iter().find(|c| c.row == step.cutter).unwrap().z;
    let vf = libm::round(factor * step.vf.si() / job.grid.vf) * job.grid.vf;
    step.vf = Speed::from_si(vf);
    step.fz = Length::from_si(vf / (step.n.si() * f64::from(teeth)));
}

#[test]
fn a_feed_three_times_as_high_is_caught() {
    is_caught(
        &["broken: ", "chip above the material's table"],
        |step, job| {
            feed(step, job, 3.0);
            true
        },
    );
    // Loads are found again as well, not only the machine's own limit on feed.
    is_caught(&["milder than found"], |step, job| {
        feed(step, job, 3.0);
        true
    });
    // A time that was not worked out anew.
    is_caught(&["time of"], |step, _| {
        step.time = step.time * 10.0;
        true
    });
}

#[test]
fn a_cutter_that_does_not_fit_is_caught() {
    is_caught(&["cutter over the slot's width, too high"], |step, job| {
        let wide = job.rack.iter().filter(|c| !c.drill);
        let wide = wide.max_by(|a, b| a.d.total_cmp(&b.d)).unwrap();
        let slots = matches!(step.task, TaskKind::SlotsThrough | TaskKind::SlotsBlind);
        step.cutter = wide.row;
        slots && wide.d > job.part.slots[0].width
    });
    is_caught(&["cutter that is not in the rack"], |step, _| {
        step.cutter = 200;
        true
    });
}

#[test]
fn a_step_down_beyond_the_flutes_is_caught() {
    is_caught(&["broken: "], |step, job| {
        let cutter = job.rack.iter().find(|c| c.row == step.cutter).unwrap();
        let grid = job.grid.depth;
        let ap = (libm::ceil(cutter.flute_length / grid) + 10.0) * grid;
        step.ap = Length::from_si(ap);
        step.levels = 1;
        true
    });
    is_caught(&["levels short of the depth"], |step, _| {
        step.levels -= 1;
        true
    });
    is_caught(&["one level too many"], |step, _| {
        step.levels += 1;
        true
    });
}

/// What the stock itself says of a step that is not where it should be.
const ON_THE_STOCK: &[&str] = &[
    "start",
    "not open",
    "not the drawing's",
    "not skimmed",
    "before clearing",
    "nothing left",
];

/// Whether a strategy with its steps counted anew raises something new about the stock.
fn stock_complains(told: &Told, mut wrong: Strategy) -> bool {
    let mut number = 0;
    for step in wrong.setups.iter_mut().flat_map(|s| &mut s.steps) {
        number += 1;
        step.number = number;
    }
    let raised = rules(&told.answers, &wrong);
    let mut new = raised
        .iter()
        .filter(|r| !told.before.iter().any(|b| b.0 == r.0));
    new.any(|r| ON_THE_STOCK.iter().any(|words| r.0.contains(words)))
}

#[test]
fn a_step_left_out_or_put_off_is_caught() {
    for told in TOLD.get_or_init(told) {
        for i in 0..told.strategy.setups.len() {
            let count = told.strategy.setups[i].steps.len();
            for k in 0..count {
                let mut wrong = (*told.strategy).clone();
                let gone = wrong.setups[i].steps.remove(k);
                wrong.time = wrong.time - gone.time;
                assert!(
                    stock_complains(told, wrong),
                    "{} without {:?}",
                    told.id,
                    gone.task
                );
            }
            // Clearing before anything that works in the recess, facing before all.
            let mut wrong = (*told.strategy).clone();
            let steps = &mut wrong.setups[i].steps;
            if steps.iter().any(|s| s.task == TaskKind::Clearing) {
                steps.reverse();
                assert!(stock_complains(told, wrong), "{} backwards", told.id);
            }
        }
    }
}

#[test]
fn numbers_that_do_not_fit_together_are_caught() {
    is_caught(&["off the grid: n"], |step, _| {
        step.n = step.n * 1.003;
        true
    });
    is_caught(&["speed the spindle does not turn"], |step, job| {
        step.n = SpindleSpeed::from_si(job.machine.n.1 + 10.0 * job.grid.n);
        true
    });
    is_caught(&["milder than found"], |step, _| {
        for finding in &mut step.findings {
            finding.at_worst.demand *= 0.5;
        }
        true
    });
    is_caught(&["not told"], |step, _| {
        step.findings.clear();
        true
    });
    is_caught(&["path"], |step, _| {
        step.path = step.path * 0.2;
        true
    });
    is_caught(&["start"], |step, _| {
        step.z.0 = step.z.0 + Length::mm(0.2);
        true
    });
}
