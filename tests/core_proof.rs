//! What must hold of any answer: nothing better makes it worse, and what it says, kept, gives it again.
//!
//! Jobs drawn by lot. Compared is what plans are compared by: the time, with the price of the warnings that are left.
#![cfg(test)]

mod core_cases;

use core_cases::{Lot, job};
use thinwright_core::answers::Answers;
use thinwright_core::estimate::{Known, Unknown};
use thinwright_core::field::{Field, FieldId};
use thinwright_core::gain::{Gain, What};
use thinwright_core::job::Job;
use thinwright_core::limits::LimitId;
use thinwright_core::order::OrderId;
use thinwright_core::pin::Place;
use thinwright_core::strategy::{Finding, Outcome, Setup, Step, Strategy};
use thinwright_core::task::{Face, TaskKind};
use thinwright_core::{advise, decide};
use thinwright_quantity::{Kind, Rounding, UnitSystem, format_bare};
use workspace_tests::jobs::random_jobs;

/// Jobs drawn by lot for each property.
const DRAWN: u64 = 24;
/// Whole milliseconds are compared; the price of a step is rounded down in each.
const ROUNDING_S: f64 = 0.05;

fn feasible(job: &Job) -> Option<Box<Strategy>> {
    match decide(job) {
        Outcome::Feasible(strategy) => Some(strategy),
        Outcome::Refused(_) => None,
    }
}

/// What an outcome costs, s; infinite for a no.
fn cost(strategy: Option<&Strategy>) -> f64 {
    strategy.map_or(f64::INFINITY, |s| s.reckoned.si())
}

/// The greatest utilisation of a limit over all steps.
fn greatest(strategy: Option<&Strategy>, limit: LimitId) -> f64 {
    let steps = strategy
        .into_iter()
        .flat_map(|s| &s.setups)
        .flat_map(|s| &s.steps);
    let findings = steps.flat_map(|s| &s.findings);
    let of_limit = findings.filter(|f| f.limit == limit);
    of_limit.map(Finding::utilisation).fold(0.0, f64::max)
}

/// Something better never makes the answer of any job worse; `but` says where it honestly may.
fn never_worse(
    what: &str,
    better: impl Fn(&mut Job, &mut Lot),
    but: impl Fn(Option<&Strategy>, Option<&Strategy>) -> bool,
) {
    let (mut changed, mut lot) = (0, Lot(9));
    for (seed, answers) in random_jobs(DRAWN) {
        let base = job(&answers);
        let mut improved = base.clone();
        better(&mut improved, &mut lot);
        let (now, then) = (feasible(&base), feasible(&improved));
        let (now_s, then_s) = (cost(now.as_deref()), cost(then.as_deref()));
        if but(now.as_deref(), then.as_deref()) {
            continue;
        }
        assert!(
            then_s <= now_s + ROUNDING_S,
            "{what}, job {seed}: {now_s} s before, {then_s} s after"
        );
        changed += u32::from(then_s < now_s - ROUNDING_S);
    }
    assert!(changed > 0, "{what} never changed anything");
}

fn scale(job: &mut Job, unknown: Unknown, factor: f64) {
    let estimate = &mut job.estimates[unknown as usize];
    estimate.low *= factor;
    estimate.likely *= factor;
    estimate.high *= factor;
}

#[test]
fn a_stiffer_machine_never_costs_time() {
    // But on a stiffer machine the web can be the softest thing about, which is warned of, and avoided at a price: a web
    // that is a third as soft as the machine already may be that on one three times as stiff.
    const STIFFER: f64 = 3.0;
    let softness = |s: Option<&Strategy>| greatest(s, LimitId::WebSoftness);
    never_worse(
        "stiffer",
        |job, _| scale(job, Unknown::MachineStiffness, STIFFER),
        |now, then| softness(now) * STIFFER > 1.0 || softness(then) > 1.0,
    );
}

#[test]
fn axes_that_push_harder_never_cost_time() {
    never_worse(
        "thrust",
        |job, _| scale(job, Unknown::Thrust, 2.0),
        |_, _| false,
    );
}

#[test]
fn a_stronger_spindle_never_costs_time() {
    let stronger = |job: &mut Job, _: &mut Lot| {
        for point in &mut job.machine.curve {
            point.power *= 2.0;
        }
    };
    never_worse("power", stronger, |_, _| false);
}

#[test]
fn a_bigger_rack_never_costs_time() {
    let one_more = |job: &mut Job, lot: &mut Lot| {
        let mut cutter = lot.of(&job.rack).clone();
        cutter.row = job.rack.len().try_into().unwrap();
        cutter.drill = false;
        cutter.z = 2;
        cutter.d *= 0.5 + lot.share();
        cutter.shank = cutter.d;
        cutter.corner = 0.0;
        cutter.flute_length = 2.5 * cutter.d;
        cutter.reach = 3.0 * cutter.d;
        cutter.stick_out = 3.5 * cutter.d;
        job.rack.push(cutter);
    };
    never_worse("rack", one_more, |_, _| false);
}

#[test]
fn looser_tolerances_never_cost_time() {
    let looser = |job: &mut Job, _: &mut Lot| {
        let wanted = &mut job.wanted;
        for tolerance in [&mut wanted.slot, &mut wanted.web, &mut wanted.finish] {
            *tolerance = tolerance.map(|t| 3.0 * t);
        }
    };
    never_worse("tolerance", looser, |_, _| false);
}

/// The answers with everything kept that the strategy says.
fn kept(answers: &Answers, strategy: &Strategy) -> Answers {
    let mut kept = answers.clone();
    let mut keep = |id: FieldId, text: String| kept.set(id, text, Known::DataSheet);
    let order = match strategy.orders[0].order {
        OrderId::SlotsIntoStock => Some("slots-into-stock"),
        OrderId::SlotsBeforeSkim => Some("slots-before-skim"),
        OrderId::SlotsLast => Some("slots-last"),
        OrderId::OneFace | OrderId::NoSlots => None,
    };
    if let Some(order) = order {
        keep(Field::PinOrder.into(), order.to_owned());
    }
    let chosen = &strategy.orders[0];
    let first = if chosen.first == Face::A { "a" } else { "b" };
    let yes_no = |yes: bool| if yes { "yes" } else { "no" }.to_owned();
    keep(Field::PinFirst.into(), first.to_owned());
    keep(Field::PinBacked.into(), yes_no(chosen.backing != "none"));
    keep(Field::PinBolted.into(), yes_no(chosen.boss_bolted));
    for setup in &strategy.setups {
        for step in &setup.steps {
            for (field, text) in numbers(step, answers.units) {
                keep(FieldId::in_row(field, place(setup, step).row()), text);
            }
        }
    }
    kept
}

fn place(setup: &Setup, step: &Step) -> Place {
    let face = |a, b| if setup.face_up == Face::A { a } else { b };
    match step.task {
        TaskKind::Facing => face(Place::FacingA, Place::FacingB),
        TaskKind::Bore => Place::Bore,
        TaskKind::Clearing => face(Place::ClearingA, Place::ClearingB),
        TaskKind::FloorSkim => face(Place::FloorA, Place::FloorB),
        TaskKind::WallSkim => face(Place::WallA, Place::WallB),
        TaskKind::SlotsThrough | TaskKind::SlotsBlind => Place::Slots,
        TaskKind::OutlineGroove => Place::Groove,
        TaskKind::OutlineFinish => Place::Outline,
    }
}

/// The numbers of a step as they are typed.
fn numbers(step: &Step, units: UnitSystem) -> [(Field, String); 6] {
    let typed = |kind, si| format_bare(kind, si, units, Rounding::Nearest);
    [
        (Field::PinCutter, (u32::from(step.cutter) + 1).to_string()),
        (Field::PinMethod, step.method.key().to_owned()),
        (Field::PinSpeed, typed(Kind::SpindleSpeed, step.n.si())),
        (Field::PinFeed, typed(Kind::FeedSpeed, step.vf.si())),
        (Field::PinStepover, typed(Kind::Length, step.ae.si())),
        (Field::PinStepDown, typed(Kind::Length, step.ap.si())),
    ]
}

#[test]
fn what_is_said_and_kept_is_said_again() {
    let mut again = 0;
    for (seed, answers) in random_jobs(DRAWN) {
        let Some(first) = feasible(&job(&answers)) else {
            continue;
        };
        let kept = kept(&answers, &first);
        let Some(second) = feasible(&job(&kept)) else {
            panic!("job {seed}: what was said is refused");
        };
        let told = |s: &Strategy| {
            let steps = s.setups.iter().flat_map(|setup| &setup.steps);
            let steps = steps.map(|step| (step.task, numbers(step, answers.units)));
            steps.collect::<Vec<_>>()
        };
        assert_eq!(told(&first), told(&second), "job {seed}");
        // Not what it is reckoned as: that counts unusual allowances, which are usual once they are kept.
        let difference = (first.time.si() - second.time.si()).abs();
        assert!(
            difference < 1.0e-3 * first.time.si(),
            "job {seed}: {difference} s"
        );
        let warned = |s: &Strategy| {
            let steps = s.setups.iter().flat_map(|setup| &setup.steps);
            let all = steps.flat_map(|step| step.findings.iter().map(|f| (step.task, f)));
            let broken = all.filter(|(_, f)| f.utilisation() > 1.0);
            let mut broken: Vec<_> = broken.map(|(task, f)| (task, f.limit)).collect();
            broken.sort_unstable();
            broken
        };
        assert_eq!(warned(&first), warned(&second), "job {seed}");
        again += 1;
    }
    assert!(again > 10, "{again}");
}

#[test]
fn keeping_what_was_chosen_costs_nothing() {
    let plate = core_cases::answers("mirror-back-plate", &[]);
    let first = feasible(&job(&plate)).expect("the sample has a strategy");
    let (setup, step) = first
        .setups
        .iter()
        .find_map(|setup| {
            let clearing = setup.steps.iter().find(|s| s.task == TaskKind::Clearing)?;
            Some((setup, clearing))
        })
        .expect("it has a recess");
    for (field, text) in numbers(step, plate.units) {
        let mut one = plate.clone();
        let id = FieldId::in_row(field, place(setup, step).row());
        one.set(id, text, Known::DataSheet);
        let Outcome::Feasible(second) = advise(&job(&one)) else {
            panic!("{field:?}: what was chosen is refused");
        };
        let let_go = |g: &&Gain| g.what == What::LetGo(id);
        let price = second.gains.iter().find(let_go);
        let price = price.unwrap_or_else(|| panic!("{field:?} has no price"));
        assert!(price.saved_s.abs() < 1.0, "{field:?}: {} s", price.saved_s);
    }
}
