//! Orders: which face first, the slots when, with which backing. Plain data; states follow by folding the tasks.

use crate::job::Job;
use crate::part::Height;
use crate::task::{Face, Task, TaskKind};

/// When the slots are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OrderId {
    /// Everything from one face.
    OneFace,
    /// Slots cut blind in the first setup, into stock that the second recess removes.
    SlotsIntoStock,
    /// In the second setup: recess roughed, slots, then the floor skimmed.
    SlotsBeforeSkim,
    /// In the second setup, last of all but the outline, through the finished web.
    SlotsLast,
    /// No slots to place.
    NoSlots,
}

/// One clamping of a plan.
#[derive(Clone, Debug, PartialEq)]
pub struct SetupPlan {
    /// The face that looks at the spindle.
    pub face: Face,
    /// Whether the part has been turned over for it.
    pub second: bool,
    /// Index into the backings that the person can make.
    pub backing: usize,
    /// The boss is bolted down.
    pub bolted: bool,
    /// What is cut.
    pub tasks: Vec<Task>,
}

/// An order with a way of holding: everything but the cutters and numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// When the slots are cut.
    pub order: OrderId,
    /// The face cut first.
    pub first: Face,
    /// The clampings.
    pub setups: Vec<SetupPlan>,
}

/// Every plan worth working out, in a fixed order; none where what is fixed leaves none.
pub fn plans(job: &Job) -> Vec<Plan> {
    let mut plans = every_plan(job);
    // What needs no backing comes first: it sets the price that a backing has to beat.
    plans.sort_by_key(|plan| plan.setups.iter().any(|s| s.backing > 0));
    // What a part of one face leaves no choice in cannot be fixed otherwise either.
    if job.part.recesses.len() > 1 {
        plans.retain(|plan| kept(job, plan));
    }
    plans
}

/// Whether a plan is as the person has fixed it.
fn kept(job: &Job, plan: &Plan) -> bool {
    let pins = &job.pins;
    let fits = |pin: Option<bool>, is: bool| pin.is_none_or(|pin| pin == is);
    let choices = job.holding.backings.len() > 1;
    let second = plan.setups.iter().find(|s| s.second);
    pins.first.is_none_or(|face| face == plan.first)
        && (plan.order == OrderId::NoSlots || pins.order.is_none_or(|order| order == plan.order))
        && (!choices || second.is_none_or(|s| fits(pins.backed, s.backing > 0)))
        && (!job.holding.boss_bolted || second.is_none_or(|s| fits(pins.bolted, s.bolted)))
}

fn every_plan(job: &Job) -> Vec<Plan> {
    let heights = Heights::new(job);
    let two_sided = job.part.recesses.len() > 1;
    let mut plans = Vec::new();
    if !two_sided {
        let face = job.part.recesses.first().map_or(Face::A, |r| r.face);
        let order = if job.part.slots.is_empty() {
            OrderId::NoSlots
        } else {
            OrderId::OneFace
        };
        plans.push(one_face(heights, face, order));
        return plans;
    }
    let orders: &[OrderId] = if job.part.slots.is_empty() {
        &[OrderId::NoSlots]
    } else {
        &[
            OrderId::SlotsIntoStock,
            OrderId::SlotsBeforeSkim,
            OrderId::SlotsLast,
        ]
    };
    let bolted: &[bool] = if job.holding.boss_bolted {
        &[false, true]
    } else {
        &[false]
    };
    for first in [Face::A, Face::B] {
        for order in orders {
            for backing in 0..job.holding.backings.len() {
                for bolted in bolted {
                    plans.push(two_faces(heights, first, *order, (backing, *bolted)));
                }
            }
        }
    }
    plans
}

/// Heights of the tasks of one face.
#[derive(Clone, Copy)]
struct Heights<'a> {
    job: &'a Job,
    face: Face,
    /// Whether the blank stands out around the outline.
    margin: bool,
}

impl<'a> Heights<'a> {
    fn new(job: &'a Job) -> Heights<'a> {
        let around = job.part.blank_area.subtract(&job.part.outline_area);
        Heights {
            job,
            face: Face::A,
            margin: !around.is_empty(1.0),
        }
    }

    fn seen_from(self, face: Face) -> Heights<'a> {
        Heights { face, ..self }
    }

    fn mm(value: f64) -> i64 {
        Height::from_m(value * 1.0e-3).0
    }

    /// A height so far below another, seen from this face.
    fn below(&self, height: Height, by: i64) -> Height {
        match self.face {
            Face::A => Height(height.0 - by),
            Face::B => Height(height.0 + by),
        }
    }

    fn task(&self, kind: TaskKind, from: Height, to: Height) -> Task {
        Task {
            kind,
            face: self.face,
            from,
            to,
        }
    }

    fn surface(&self) -> Height {
        self.job.part.face_height(self.face)
    }

    fn floor(&self) -> Height {
        self.job.part.floor(self.face)
    }

    /// The floor with its allowance: no more than half of what there is to cut.
    fn rough_floor(&self) -> Height {
        let depth = (self.surface().0 - self.floor().0).abs();
        let allowance = Self::mm(self.job.numbers.floor_allowance_mm);
        self.below(self.floor(), -allowance.min(depth / 2))
    }

    fn facing(&self) -> Option<Task> {
        let raw = match self.face {
            Face::A => self.job.part.blank_heights.1,
            Face::B => self.job.part.blank_heights.0,
        };
        (raw != self.surface()).then(|| self.task(TaskKind::Facing, raw, self.surface()))
    }

    fn bore(&self) -> Option<Task> {
        let through = Self::mm(self.job.numbers.overtravel_mm);
        let far = self.job.part.face_height(self.face.other());
        self.job.part.bore.as_ref()?;
        Some(self.task(TaskKind::Bore, self.surface(), self.below(far, through)))
    }

    fn clearing(&self) -> Task {
        self.task(TaskKind::Clearing, self.surface(), self.rough_floor())
    }

    fn floor_skim(&self) -> Task {
        self.task(TaskKind::FloorSkim, self.rough_floor(), self.floor())
    }

    fn wall_skim(&self) -> Task {
        self.task(TaskKind::WallSkim, self.surface(), self.floor())
    }

    /// Slots from this face's floor (rough or finished) through the web.
    fn slots_through(&self, finished: bool) -> Task {
        let from = if finished {
            self.floor()
        } else {
            self.rough_floor()
        };
        let far = self.job.part.floor(self.face.other());
        let to = self.below(far, Self::mm(self.job.numbers.overtravel_mm));
        self.task(TaskKind::SlotsThrough, from, to)
    }

    /// Slots from this face's floor, blind, so deep that roughing the other recess opens them.
    fn slots_blind(&self) -> Task {
        let numbers = &self.job.numbers;
        let z_error = (numbers.seat_error_um + numbers.touch_error_um) * 1.0e-3;
        let deeper = numbers.floor_allowance_mm + numbers.slot_overdepth_mm + z_error;
        let far = self.job.part.floor(self.face.other());
        self.task(
            TaskKind::SlotsBlind,
            self.floor(),
            self.below(far, Self::mm(deeper)),
        )
    }

    /// Depth of the groove of the first side: past the middle.
    fn meeting(&self) -> Height {
        let half = Height::from_m(0.5 * self.job.part.thickness);
        self.below(half, Self::mm(self.job.numbers.outline_overlap_mm))
    }

    fn groove(&self) -> Option<Task> {
        self.margin
            .then(|| self.task(TaskKind::OutlineGroove, self.surface(), self.meeting()))
    }

    /// The outline from this face down to the groove of the other, or all through.
    fn outline(&self, met: bool) -> Option<Task> {
        let to = if met {
            // Into the groove, by more than turning over may err.
            let groove = self.seen_from(self.face.other()).meeting();
            self.below(groove, Self::mm(self.job.numbers.overtravel_mm))
        } else {
            self.job.part.face_height(self.face.other())
        };
        self.margin
            .then(|| self.task(TaskKind::OutlineFinish, self.surface(), to))
    }
}

fn one_face(heights: Heights, face: Face, order: OrderId) -> Plan {
    let (here, there) = (heights.seen_from(face), heights.seen_from(face.other()));
    let mut setups = Vec::new();
    // The raw back is skimmed first, so that the part can lie on it.
    if let Some(task) = there.facing() {
        setups.push(SetupPlan {
            face: face.other(),
            second: false,
            backing: 0,
            bolted: false,
            tasks: vec![task],
        });
    }
    let mut tasks: Vec<Task> = here.facing().into_iter().chain(here.bore()).collect();
    tasks.extend([here.clearing(), here.floor_skim(), here.wall_skim()]);
    if order == OrderId::OneFace {
        tasks.push(here.slots_through(true));
    }
    tasks.extend(here.outline(false));
    setups.push(SetupPlan {
        face,
        second: !setups.is_empty(),
        backing: 0,
        bolted: false,
        tasks,
    });
    Plan {
        order,
        first: face,
        setups,
    }
}

fn two_faces(
    heights: Heights,
    first: Face,
    order: OrderId,
    (backing, bolted): (usize, bool),
) -> Plan {
    let (here, there) = (heights.seen_from(first), heights.seen_from(first.other()));
    let mut one: Vec<Task> = here.facing().into_iter().chain(here.bore()).collect();
    one.extend([here.clearing(), here.floor_skim(), here.wall_skim()]);
    if order == OrderId::SlotsIntoStock {
        one.push(here.slots_blind());
    }
    one.extend(here.groove());
    let mut two: Vec<Task> = there.facing().into_iter().collect();
    two.push(there.clearing());
    if order == OrderId::SlotsBeforeSkim {
        two.push(there.slots_through(false));
    }
    two.extend([there.floor_skim(), there.wall_skim()]);
    if order == OrderId::SlotsLast {
        two.push(there.slots_through(true));
    }
    two.extend(there.outline(true));
    let setups = vec![
        SetupPlan {
            face: first,
            second: false,
            backing: 0,
            bolted: false,
            tasks: one,
        },
        SetupPlan {
            face: first.other(),
            second: true,
            backing,
            bolted,
            tasks: two,
        },
    ];
    Plan {
        order,
        first,
        setups,
    }
}
