//! Changes of the numbers of a step that practice tries first, as the typed grid has them.

use super::change::{Take, Value};
use super::stand::Stand;
use crate::choice::{Choice, chip_loads, down};
use crate::estimate::{Estimate, Known, Unknown};
use crate::field::Field;
use crate::job::Cutter;
use crate::limits::LimitId;
use crate::task::TaskKind;
use crate::{Cache, FieldId};
use std::rc::Rc;
use thinwright_catalog::Iso513;
use thinwright_mechanics::chip;

/// A change of numbers, or of what they stand on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Move {
    /// The cutter stands out no further than it must.
    Shorter,
    /// Another spindle speed, at the same feed per tooth.
    OtherSpeed,
    /// More feed per tooth at a lower speed.
    FeedUpSpeedDown,
    /// Less feed per tooth at a lower speed.
    BothDown,
    /// Half the step-down.
    HalfDepth,
    /// Half the stepover.
    HalfWidth,
    /// More feed per tooth.
    MoreFeed,
    /// Less feed per tooth.
    LessFeed,
    /// Fewer turns at the same feed.
    SlowerTurns,
    /// A lower surface speed, at the same feed per tooth.
    SlowerEdge,
    /// More turns at the same feed.
    FasterTurns,
    /// The web is backed.
    Back,
    /// The boss is bolted down.
    Bolt,
    /// The cutter is seated anew, so that it runs out by less.
    Reseat,
}

/// A change as it is tried.
#[derive(Clone)]
pub(super) struct Variation {
    pub(super) stand: Rc<Stand>,
    pub(super) cutter: Cutter,
    pub(super) choice: Choice,
    /// An answer that changes with it.
    pub(super) take: Option<Take>,
    /// A reading that the person has to take: the field for it, and what is aimed at, SI.
    pub(super) aim: Option<(Field, f64)>,
}

/// What is known when a change is thought out.
pub(super) struct Ground<'a> {
    pub(super) stand: &'a Rc<Stand>,
    /// Speeds at which the teeth keep step with a tone that was heard, 1/s.
    pub(super) in_step: Option<f64>,
    /// Feed per tooth at which the limit behind the cause is met, m.
    pub(super) enough: Option<f64>,
    pub(super) limit: Option<LimitId>,
}

/// Everything that a move may mean here, in the order of practice; nothing where it changes nothing.
pub(super) fn variations(ground: &Ground, step: Move, cache: &mut Cache) -> Vec<Variation> {
    let stand = ground.stand;
    let numbers = &stand.job.numbers;
    let now = &stand.choice;
    let (trial, halved) = (numbers.trouble_trial, numbers.trouble_halved);
    match step {
        Move::Shorter => shorter(stand).into_iter().collect(),
        Move::OtherSpeed => other_speeds(ground),
        Move::FeedUpSpeedDown => at(stand, now.n * (1.0 - trial), now.fz * (1.0 + trial)),
        Move::BothDown => at(stand, now.n * (1.0 - trial), now.fz * (1.0 - trial)),
        Move::HalfDepth => half_depth(stand, halved),
        Move::HalfWidth => half_width(stand, halved),
        Move::MoreFeed => more_feed(ground),
        Move::LessFeed => at(stand, now.n, now.fz * (1.0 - trial)),
        Move::SlowerTurns => at(stand, now.n * (1.0 - trial), now.fz / (1.0 - trial)),
        Move::SlowerEdge => at(stand, now.n * (1.0 - numbers.trouble_hot_speed), now.fz),
        Move::FasterTurns => at(stand, now.n * (1.0 + trial), now.fz / (1.0 + trial)),
        Move::Back => backed(stand, cache).into_iter().collect(),
        Move::Bolt => bolted(stand, cache).into_iter().collect(),
        Move::Reseat => reseated(stand),
    }
}

impl Variation {
    fn new(stand: &Rc<Stand>, choice: Choice) -> Variation {
        Variation {
            stand: stand.clone(),
            cutter: stand.cutter.clone(),
            choice,
            take: None,
            aim: None,
        }
    }
}

/// A speed and a feed per tooth, as the machine takes them and the grid has them; nothing where that is what stands there.
fn at(stand: &Rc<Stand>, n: f64, fz: f64) -> Vec<Variation> {
    let (job, z) = (&stand.job, f64::from(stand.cutter.z));
    let (least, most) = job.speeds_of(&stand.cutter);
    let n = down(n, job.grid.n).clamp(least.min(most), most);
    let vf = down((fz * n * z).min(job.machine.feed), job.grid.vf);
    let choice = Choice {
        n,
        vf,
        fz: vf / (n * z),
        ..stand.choice
    };
    let same = |a: f64, b: f64, step: f64| (a - b).abs() < 0.5 * step;
    if same(n, stand.choice.n, job.grid.n) && same(vf, stand.choice.vf, job.grid.vf) {
        return Vec::new();
    }
    vec![Variation::new(stand, choice)]
}

fn other_speeds(ground: &Ground) -> Vec<Variation> {
    let (stand, numbers) = (ground.stand, &ground.stand.job.numbers);
    let (least, most) = (numbers.trouble_speed_least, numbers.trouble_speed_most);
    let shares = [least, 0.5 * (least + most), most];
    let around = shares.into_iter().flat_map(|s| [1.0 - s, 1.0 + s]);
    let speeds = ground
        .in_step
        .into_iter()
        .chain(around.map(|s| s * stand.choice.n));
    speeds.flat_map(|n| at(stand, n, stand.choice.fz)).collect()
}

fn shorter(stand: &Rc<Stand>) -> Option<Variation> {
    let to = stand.least_stick_out;
    // Less than half a millimetre is how well anybody sets it.
    (to < stand.cutter.stick_out - 0.5e-3).then(|| {
        let mut variation = Variation::new(stand, stand.choice);
        variation.cutter.stick_out = to;
        variation.take = Some(Take {
            field: FieldId::in_row(Field::CutterStickOut, stand.cutter.row),
            value: Value::Si(to),
        });
        variation
    })
}

fn half_depth(stand: &Rc<Stand>, share: f64) -> Vec<Variation> {
    let grid = stand.job.grid.depth;
    let ap = down(share * stand.choice.ap, grid);
    if ap > stand.choice.ap - 0.5 * grid {
        return Vec::new();
    }
    let choice = stand.choice.with_ap(stand.shape.task.depth(), ap);
    vec![Variation::new(stand, choice)]
}

/// A wall's skim takes what stands there, and a slot as wide as the cutter has no width to choose.
fn half_width(stand: &Rc<Stand>, share: f64) -> Vec<Variation> {
    let grid = stand.job.grid.depth;
    let ae = down(share * stand.choice.ae, grid);
    let fixed =
        stand.choice.ae >= stand.cutter.d * 0.999 || stand.shape.task.kind == TaskKind::WallSkim;
    if fixed || ae > stand.choice.ae - 0.5 * grid {
        return Vec::new();
    }
    vec![Variation::new(stand, Choice { ae, ..stand.choice })]
}

/// More feed: as much as the limit behind the cause asks for, or by the usual share; within the material's range.
fn more_feed(ground: &Ground) -> Vec<Variation> {
    let (stand, now) = (ground.stand, &ground.stand.choice);
    let (job, numbers) = (&stand.job, &stand.job.numbers);
    let (low, high) = chip_loads(job, &stand.cutter);
    let full = now.ae >= stand.cutter.d * (1.0 - 1.0e-9);
    let thinning = chip::radial_thinning(now.ae, stand.cutter.d);
    let most = thinning * if full { (low * high).sqrt() } else { high };
    let mut aims = vec![now.fz * (1.0 + numbers.trouble_trial)];
    aims.extend(ground.enough);
    match ground.limit {
        // Chips that can be seen as such.
        Some(LimitId::Rubbing) => aims.push(numbers.trouble_chip_um * 1.0e-6 * thinning),
        None if job.material.iso513 == Iso513::N => {
            aims.push(numbers.trouble_exit_feed_um * 1.0e-6);
        }
        _ => {}
    }
    let mut aims: Vec<f64> = aims.into_iter().map(|fz| fz.min(most)).collect();
    aims.retain(|fz| *fz > now.fz * (1.0 + numbers.trouble_worth));
    aims.into_iter()
        .flat_map(|fz| at(stand, now.n, fz))
        .collect()
}

fn backed(stand: &Rc<Stand>, cache: &mut Cache) -> Option<Variation> {
    let can =
        stand.job.holding.backings.len() > 1 && stand.setup.backing == 0 && stand.setup.second;
    can.then(|| {
        let setup = crate::order::SetupPlan {
            backing: 1,
            ..stand.setup.clone()
        };
        held_otherwise(stand, setup, Field::PinBacked, cache)
    })
}

fn bolted(stand: &Rc<Stand>, cache: &mut Cache) -> Option<Variation> {
    let can = stand.job.holding.boss_bolted && !stand.setup.bolted && stand.setup.second;
    can.then(|| {
        let setup = crate::order::SetupPlan {
            bolted: true,
            ..stand.setup.clone()
        };
        held_otherwise(stand, setup, Field::PinBolted, cache)
    })
}

fn held_otherwise(
    stand: &Rc<Stand>,
    setup: crate::order::SetupPlan,
    field: Field,
    cache: &mut Cache,
) -> Variation {
    let mut variation = Variation::new(stand, stand.choice);
    variation.stand = Rc::new(stand.with_setup(setup, cache));
    variation.take = Some(Take {
        field: field.into(),
        value: Value::Key("yes"),
    });
    variation
}

/// Runout of the two shares of the feed per tooth that shops aim at, the milder first; what is not less than now is none.
fn reseated(stand: &Rc<Stand>) -> Vec<Variation> {
    let numbers = &stand.job.numbers;
    let now = stand.estimates()[Unknown::Runout as usize];
    let aims =
        [numbers.trouble_runout_fair, numbers.trouble_runout_fine].map(|s| s * stand.choice.fz);
    let less = aims.into_iter().filter(|aim| *aim < now.high);
    less.map(|aim| {
        let mut there = (**stand).clone();
        there.job.estimates[Unknown::Runout as usize] = Estimate::exact(aim, Known::Measured);
        let mut variation = Variation::new(&Rc::new(there), stand.choice);
        variation.aim = Some((Field::Runout, aim));
        variation
    })
    .collect()
}
