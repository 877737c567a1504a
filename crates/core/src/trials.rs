//! What a change would bring: the strategy searched again with one thing changed, and what came of it.

use crate::cache::Cache;
use crate::estimate::{Known, UNKNOWNS, Unknown};
use crate::field::{Field, FieldId, Group};
use crate::gain::{Gain, Turned, What};
use crate::job::Job;
use crate::judge::Way;
use crate::limits::LimitId;
use crate::look::ms;
use crate::order::{Plan, plans};
use crate::pin::kept_allowances;
use crate::series;
use crate::solve::{Solver, WorkedPlan};
use crate::strategy::Lever;
use crate::tally::Tally;
use crate::task::TaskKind;
use thinwright_quantity::{Duration, Length};

/// Other allowances that are tried on the best plan.
pub(crate) const ALLOWANCES: usize = 3;
/// Flutes beyond which one more is not thought of.
const MOST_FLUTES: u32 = 6;

/// Something that is tried.
#[derive(Clone, Debug)]
pub(crate) enum Trial {
    /// One change.
    One(What),
    /// All cutters of the series at hand, then by itself each that was used.
    Series,
}

/// What was tried and what it is worth, ms: time saved and warnings gone.
pub(crate) type Tried = (i64, Gain);

/// The job with other allowances on walls and floors, larger than usual.
pub(crate) fn allowances(job: &Job, which: usize) -> Option<Job> {
    let mut changed = job.clone();
    let numbers = &mut changed.numbers;
    let (wall, floor) = [(true, false), (false, true), (true, true)].get(which)?;
    let kept = job.pins.allowances();
    if *wall && kept.0.is_none() {
        numbers.rough_allowance_mm = numbers.rough_allowance_most_mm;
    }
    if *floor && kept.1.is_none() {
        numbers.floor_allowance_mm = numbers.floor_allowance_most_mm;
    }
    Some(changed)
}

/// Everything that is worth trying on a job, in a fixed order.
pub(crate) fn trials(job: &Job) -> Vec<Trial> {
    let mut trials: Vec<What> = released(job);
    trials.extend(UNKNOWNS.iter().map(|u| What::Measure(*u)));
    for cutter in job.rack.iter().filter(|c| !c.drill) {
        let row = cutter.row;
        // One that was tapped would have to be tapped again.
        if cutter.z < MOST_FLUTES && cutter.ring.is_none() {
            let flutes = cutter.z + 1;
            trials.push(What::OneMoreFlute { row, flutes });
        }
        trials.push(What::HoldShorter {
            row,
            stick_out: Length::default(),
        });
    }
    let catalog = &job.tables.1;
    let two_sided = job.part.recesses.len() > 1;
    if two_sided && job.holding.backings.len() == 1 && job.pins.backed.is_none() {
        let backings = catalog.backings.iter().filter(|b| b.id != "none");
        trials.extend(backings.map(|b| What::Back(b.id.clone())));
    }
    let has_boss = job.part.recesses.iter().any(|r| !r.region.holes.is_empty());
    if two_sided && has_boss && !job.holding.boss_bolted {
        trials.push(What::BoltBoss);
    }
    let better = |c: &&thinwright_catalog::ClearingRow| {
        let now = &job.holding.chips;
        c.depth_factor > now.depth_factor || (c.wet && !now.wet)
    };
    let clearings = catalog.clearings.iter().filter(better);
    trials.extend(clearings.map(|c| What::ClearChips(c.id.clone())));
    let one = trials.into_iter().map(Trial::One);
    one.chain(std::iter::once(Trial::Series)).collect()
}

/// Each pin, let go.
pub(crate) fn released(job: &Job) -> Vec<What> {
    let pinned = |id: &FieldId| matches!(id.field.spec().group, Group::Pins | Group::StepPins);
    let answers = job.tables.0.iter();
    answers
        .filter(|(id, answer)| pinned(id) && !answer.text.trim().is_empty())
        .map(|(id, _)| What::LetGo(*id))
        .collect()
}

/// A plan in the same order and hold.
pub(crate) fn like(plan: &Plan) -> impl Fn(&Plan) -> bool {
    let hold = |p: &Plan| -> Vec<(usize, bool)> {
        p.setups.iter().map(|s| (s.backing, s.bolted)).collect()
    };
    let (order, first, held) = (plan.order, plan.first, hold(plan));
    move |p| p.order == order && p.first == first && hold(p) == held
}

/// The job with a change; nothing where the change makes no difference.
pub(crate) fn changed(job: &Job, what: &What) -> Option<Job> {
    let mut job = job.clone();
    match what {
        What::Measure(unknown) => {
            let estimate = job.estimates[*unknown as usize];
            if estimate.known != Known::Estimated || job.settled[*unknown as usize] {
                return None;
            }
            job.settled[*unknown as usize] = true;
            job.estimates[*unknown as usize] = estimate.settled(job.numbers.measured_spread);
        }
        What::OneMoreFlute { row, flutes } => {
            job.rack.iter_mut().find(|c| c.row == *row)?.z = *flutes;
        }
        What::HoldShorter { row, stick_out } => {
            let cutter = job.rack.iter_mut().find(|c| c.row == *row)?;
            cutter.stick_out = stick_out.si();
        }
        What::Buy(_) => return None,
        What::Back(id) => {
            let row = job.tables.1.backing(id)?.clone();
            job.holding.backings.push(row);
        }
        What::BoltBoss => job.holding.boss_bolted = true,
        What::ClearChips(id) => job.holding.chips = job.tables.1.clearing(id)?.clone(),
        What::LetGo(id) => let_go(&mut job, *id)?,
    }
    Some(job)
}

fn let_go(job: &mut Job, id: FieldId) -> Option<()> {
    let pins = &mut job.pins;
    match id.field {
        Field::PinMostSpeed => job.machine.n.1 = pins.top_speed?,
        Field::PinOrder => pins.order = None,
        Field::PinFirst => pins.first = None,
        Field::PinBacked => pins.backed = None,
        Field::PinBolted => pins.bolted = None,
        _ => {
            let place = crate::pin::Place::by_row(id.row?)?;
            let before = pins.allowances();
            let step = pins.steps.get_mut(&place)?;
            match id.field {
                Field::PinCutter => step.cutter = None,
                Field::PinMethod => step.method = None,
                Field::PinSpeed => step.n = None,
                Field::PinFeed => step.vf = None,
                Field::PinStepover => step.ae = None,
                Field::PinStepDown => step.ap = None,
                _ => return None,
            }
            // Only what is kept of a skim sets what is left for it; larger allowances that were taken stay.
            if pins.allowances() != before {
                job.numbers = kept_allowances(pins, &job.tables.1.numbers);
            }
        }
    }
    Some(())
}

/// The stick-out that the deepest cut of a cutter in a plan needs, m, if it is worth shortening.
fn least_stick_out(job: &Job, best: &WorkedPlan, row: u8) -> Option<f64> {
    let cutter = job.rack.iter().find(|c| c.row == row)?;
    let air = job.numbers.nut_clearance_mm * 1.0e-3;
    let used = best
        .setups
        .iter()
        .flatten()
        .filter(|s| s.way.as_ref().is_some_and(|way| way.cutter == row));
    let deepest = used.map(|s| s.found.shape.total_depth()).reduce(f64::max)?;
    let needed = (deepest + air).max(cutter.flute_length).max(cutter.reach);
    let needed = crate::choice::up(needed, 1.0e-3);
    (needed < cutter.stick_out - 0.5e-3).then_some(needed)
}

/// Whether a change leaves cutters and forces as they are.
fn same_loads(what: &What) -> bool {
    !matches!(
        what,
        What::Measure(Unknown::Runout) | What::OneMoreFlute { .. } | What::HoldShorter { .. }
    )
}

/// Whether a change can turn the order of the work.
fn any_order(what: &What) -> bool {
    matches!(what, What::Back(_) | What::BoltBoss | What::LetGo(_))
}

/// What a trial brings to the best plan of a job.
pub(crate) fn gain(
    (job, best, solver): (&Job, &WorkedPlan, &Solver),
    trial: &Trial,
    books: (&mut Cache, &Tally),
) -> Vec<Tried> {
    match trial {
        Trial::Series => series::gains((job, best, solver), books),
        Trial::One(what) => {
            let mut what = what.clone();
            if let What::HoldShorter { row, stick_out } = &mut what {
                match least_stick_out(job, best, *row) {
                    Some(needed) => *stick_out = Length::from_si(needed),
                    None => return Vec::new(),
                }
            }
            let Some(changed) = changed(job, &what) else {
                return Vec::new();
            };
            let again = if same_loads(&what) {
                Solver::with_loads(solver.loads.clone())
            } else {
                Solver::default()
            };
            let same = like(&best.plan);
            let keep = |plan: &Plan| any_order(&what) || same(plan);
            cheapest_of(&changed, again, (keep, books))
                .map(|then| compared(what.clone(), best, &then))
                .into_iter()
                .collect()
        }
    }
}

/// The cheapest plan of a job among those that are kept; none where each gets stuck.
pub(crate) fn cheapest_of(
    job: &Job,
    mut solver: Solver,
    (keep, (cache, tally)): (impl Fn(&Plan) -> bool, (&mut Cache, &Tally)),
) -> Option<WorkedPlan> {
    let mut best: Option<WorkedPlan> = None;
    for plan in plans(job).into_iter().filter(|plan| keep(plan)) {
        let books = (&mut *cache, tally);
        let beaten = best.as_ref().map(WorkedPlan::rank);
        if beaten.is_some_and(|rank| solver.cannot_beat(job, &plan, rank, books)) {
            continue;
        }
        let worked = solver.work_out(job, plan, (&mut *cache, tally));
        let better = |best: &WorkedPlan| worked.rank() < best.rank();
        if worked.stuck().is_none() && best.as_ref().is_none_or(better) {
            best = Some(worked);
        }
    }
    best
}

/// What one plan has over another.
pub(crate) fn compared(what: What, now: &WorkedPlan, then: &WorkedPlan) -> Tried {
    let gain = Gain {
        what,
        time: Duration::from_si(then.time),
        saved_s: now.time - then.time,
        cleared: cleared(now, then),
        turned: turned(now, then),
    };
    (now.price - then.price, gain)
}

/// Warnings that the first plan leaves and the second does not.
fn cleared(now: &WorkedPlan, then: &WorkedPlan) -> Vec<(TaskKind, LimitId)> {
    let mut left = then.warnings();
    let mut cleared = Vec::new();
    for warning in now.warnings() {
        match left.iter().position(|w| *w == warning) {
            Some(i) => {
                left.swap_remove(i);
            }
            None => cleared.push(warning),
        }
    }
    cleared
}

/// The number that turns most in the step that saves most; none where cutter or method change.
fn turned(now: &WorkedPlan, then: &WorkedPlan) -> Option<Turned> {
    let same_tasks = now.tasks().eq(then.tasks());
    let pairs = now.ways().zip(then.ways()).filter(|_| same_tasks);
    let saves = |(a, b): &((TaskKind, &Way), (TaskKind, &Way))| ms((a.1.time - b.1.time).abs());
    let ((task, a), (_, b)) = pairs.max_by_key(saves)?;
    if (a.cutter, a.method) != (b.cutter, b.method) {
        return None;
    }
    let numbers = [
        (Lever::StepDown, a.choice.ap, b.choice.ap),
        (Lever::Stepover, a.choice.ae, b.choice.ae),
        (Lever::FeedPerTooth, a.choice.fz, b.choice.fz),
        (Lever::SpindleSpeed, a.choice.n, b.choice.n),
    ];
    let moved = |n: &(Lever, f64, f64)| libm::fabs(libm::log(n.2 / n.1));
    let most = numbers
        .into_iter()
        .max_by(|a, b| moved(a).total_cmp(&moved(b)))?;
    let (lever, from, to) = most;
    (moved(&most) > 0.02).then_some(Turned {
        task,
        lever,
        from,
        to,
    })
}

/// What is worth telling of what was tried, the most worth first; a pin is always told, with what it costs.
pub(crate) fn worth(job: &Job, tried: &[Tried]) -> Vec<Gain> {
    let numbers = &job.numbers;
    let least = |tried: &&Tried| match &tried.1.what {
        What::LetGo(_) => true,
        What::Buy(_) => {
            let share = numbers.buy_share * (tried.1.time.si() + tried.1.saved_s);
            tried.0 > ms(share)
        }
        _ => tried.0 > ms(numbers.worth_least_s),
    };
    let mut told: Vec<&Tried> = tried.iter().filter(least).collect();
    told.sort_by_key(|t| -t.0);
    told.into_iter().map(|t| t.1.clone()).collect()
}
