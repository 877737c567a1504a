//! The strategy as it is told: chosen ways with all their findings, loads and reasons.

use crate::case::{Case, Load};
use crate::choice;
use crate::confirm::over_speed;
use crate::estimate::Unknown;
use crate::job::{Cutter, Job};
use crate::judge::{Scene, Way, judge};
use crate::limits::{LIMITS, finding};
use crate::listen;
use crate::loads::LoadBook;
use crate::methods::{METHODS, Method, corner_share};
use crate::order_reports::orders;
use crate::part::State;
use crate::pass::{Detail, Pass};
use crate::setting::{estimates, held};
use crate::shape::Target;
use crate::solve::{Solved, WorkedPlan};
use crate::stability;
use crate::strategy::{Finding, Loads, RibReport, Setup, Step, Strategy, TurnOver, WebReport};
use crate::tally::Tally;
use crate::task::{Face, TaskKind};
use thinwright_catalog::CautionScope;
use thinwright_mechanics::{chip, corner, kinematics, power};
use thinwright_quantity::{
    Duration, Force, Frequency, Length, Power, Speed, SpindleSpeed, Stiffness, Stress, Torque,
};

/// Tells the best plan among all that were worked out.
pub(crate) fn strategy(
    (job, loads, tally): (&Job, &LoadBook, &Tally),
    best: &WorkedPlan,
    all: &[WorkedPlan],
) -> Strategy {
    let mut number = 0;
    let setups = best.plan.setups.iter().zip(&best.setups);
    let setups = setups.map(|(plan, solved)| {
        let (held, estimates) = (held(job, plan), estimates(job, plan));
        let base = lies_on(job, solved.first().map(|s| s.before.as_ref()), plan.face);
        let steps = solved.iter().filter_map(|s| {
            number += 1;
            let scene = Scene {
                job,
                shape: &s.found.shape,
                known: &s.found.known,
                held,
                estimates: &estimates,
                loads,
                tally,
            };
            step(&scene, s, (number, base, plan.face))
        });
        Setup {
            face_up: plan.face,
            hold: held.hold.id.clone(),
            backing: held.backing.id.clone(),
            boss_bolted: plan.bolted,
            steps: steps.collect(),
            stock: solved
                .first()
                .map_or(Length::default(), |s| stock(&s.before)),
        }
    });
    Strategy {
        setups: setups.collect(),
        time: Duration::from_si(best.time),
        reckoned: seconds(best.price),
        cutter_changes: best.changes,
        orders: orders(job, best, all),
        defaults: job.defaults.clone(),
        cautions: job_cautions(job),
        gains: Vec::new(),
        turn_over: turn_over(job, best),
        web_error: best.web_error(),
    }
}

/// A price as a time.
pub(crate) fn seconds(price_ms: i64) -> Duration {
    #[allow(
        clippy::cast_precision_loss,
        reason = "milliseconds of a job, far inside what a float tells apart"
    )]
    let ms = price_ms as f64;
    Duration::from_si(ms * 1.0e-3)
}

/// Thickness of the stock, from its lowest to its highest place.
fn stock(state: &State) -> Length {
    let solid = || state.stock.iter().filter(|(bottom, top)| bottom < top);
    let top = solid().map(|s| s.1).max().unwrap_or_default();
    let bottom = solid().map(|s| s.0).min().unwrap_or_default();
    Length::from_si(top.m() - bottom.m())
}

/// Height of the face that the part lies on, m.
fn lies_on(job: &Job, state: Option<&State>, up: Face) -> f64 {
    let solid = state.map(|s| {
        s.stock
            .iter()
            .filter(|(bottom, top)| bottom < top)
            .collect::<Vec<_>>()
    });
    let solid = solid.unwrap_or_default();
    match up {
        Face::A => solid
            .iter()
            .map(|s| s.0)
            .min()
            .unwrap_or(job.part.blank_heights.0)
            .m(),
        Face::B => solid
            .iter()
            .map(|s| s.1)
            .max()
            .unwrap_or(job.part.blank_heights.1)
            .m(),
    }
}

/// One step; `place` is its number, the height the part lies on, and the face up.
fn step(scene: &Scene, solved: &Solved, place: (u32, f64, Face)) -> Option<Step> {
    let job = scene.job;
    let way = solved.way.as_ref()?;
    let method = METHODS.iter().find(|m| m.id == way.method)?;
    let cutter = job.rack.iter().find(|c| c.row == way.cutter)?;
    let pass = (method.pass)(job, scene.shape, cutter, &way.choice, Detail::Exact);
    let load = Load::new(job, cutter, &way.choice, &pass);
    let case = scene.case(method, cutter, (&way.choice, &pass), &load);
    let mut findings: Vec<Finding> = LIMITS.iter().filter_map(|l| finding(l, &case)).collect();
    // The closest first; what cannot be told apart keeps the table's order.
    findings.sort_by(|a, b| b.utilisation().total_cmp(&a.utilisation()));
    Some(tell(
        &case,
        &pass,
        way,
        (method, findings, judge(scene, true).beside(way)),
        place,
    ))
}

type Told<'a> = (&'a Method, Vec<Finding>, Vec<crate::strategy::Considered>);

fn tell(
    case: &Case,
    pass: &Pass,
    way: &Way,
    told: Told,
    (number, base, face): (u32, f64, Face),
) -> Step {
    let (method, findings, considered) = told;
    let (job, choice, shape, cutter) = (case.job, case.choice, case.shape, case.cutter);
    let height = |h: crate::part::Height| match face {
        Face::A => Length::from_si(h.m() - base),
        Face::B => Length::from_si(base - h.m()),
    };
    let chatters = matches!(shape.task.kind, TaskKind::FloorSkim)
        .then_some(())
        .is_none();
    Step {
        number,
        task: shape.task.kind,
        method: method.id,
        cutter: cutter.row,
        n: SpindleSpeed::from_si(choice.n),
        vf: Speed::from_si(choice.vf),
        fz: Length::from_si(choice.fz),
        vc: Speed::from_si(kinematics::surface_speed(cutter.d, choice.n)),
        ae: Length::from_si(choice.ae),
        ap: Length::from_si(choice.ap),
        levels: choice.levels,
        z: (height(shape.task.from), height(shape.task.to)),
        leave: (
            Length::from_si(shape.leave.0),
            Length::from_si(shape.leave.1),
        ),
        entry: (method.entry)(job, shape, cutter, choice),
        corner_feed: corner_feed(case),
        opening_feed: opening_feed(case, pass),
        time: Duration::from_si(way.time),
        path: Length::from_si(pass.path + pass.slow_path + pass.helix_path),
        loads: loads(case),
        web: web(case),
        rib: rib(case),
        findings,
        considered,
        stability: stability::report(case),
        listen: if chatters {
            listen::ladder(case, choice.ap)
        } else {
            None
        },
        cautions: step_cautions(job, shape.task.kind, cutter, choice.n),
    }
}

/// Feed of the passages at full width that open a way for the others, where it has to be lower.
fn opening_feed(case: &Case, pass: &Pass) -> Option<Speed> {
    let share = pass.slow_share;
    let opens = pass.slow_path > 0.0 && share < 1.0 && case.shape.task.kind == TaskKind::Clearing;
    opens.then(|| Speed::from_si(choice::down(share * case.choice.vf, case.job.grid.vf)))
}

/// Feed in the corners that keeps the mean chip, where a corner engages the cutter further than the wall does.
fn corner_feed(case: &Case) -> Option<Speed> {
    let Target::Region { corner, .. } = &case.shape.target else {
        return None;
    };
    let (d, choice) = (case.cutter.d, case.choice);
    if !corner.is_finite() || choice.ae >= d * 0.999 {
        return None;
    }
    let factor = if case.shape.task.kind == TaskKind::WallSkim {
        let angle = corner::engagement_in_arc(d, corner.max(d / 2.0), choice.ae);
        corner::feed_factor(d, choice.ae, angle).max(case.job.numbers.corner_feed)
    } else {
        corner_share(case.job, d, choice.ae)
    };
    // Typed on the grid, never above what was worked out.
    let feed = choice::down(factor * choice.vf, case.job.grid.vf);
    (feed < choice.vf - 0.5 * case.job.grid.vf).then(|| Speed::from_si(feed))
}

fn loads(case: &Case) -> Loads {
    let (load, choice, d) = (case.load, case.choice, case.cutter.d);
    let worst = &load.worst;
    let quarter = core::f64::consts::FRAC_PI_2;
    Loads {
        peak_lateral: Force::from_si(worst.peak_lateral),
        mean_lateral: Force::from_si(worst.mean_lateral),
        mean_axial: Force::from_si(load.usual.mean_axial),
        torque: Torque::from_si(worst.peak_torque),
        power: Power::from_si(power::power_from_torque(worst.mean_torque, choice.n)),
        chip: (
            Length::from_si(chip::mean_chip_thickness(choice.fz, choice.ae, d, quarter)),
            Length::from_si(chip::greatest_chip_thickness(
                choice.fz, choice.ae, d, quarter,
            )),
        ),
        deflection: Length::from_si(load.usual.mean_lateral * case.chain()),
        stress: Stress::from_si(load.bending.0),
    }
}

fn web(case: &Case) -> Option<WebReport> {
    let web = case.web()?;
    let backed = case.web_compliance()?;
    Some(WebReport {
        thickness: Length::from_si(web.thickness),
        stiffness: Stiffness::from_si(1.0 / backed),
        unbacked: Stiffness::from_si(1.0 / web.bare),
        chain: Stiffness::from_si(1.0 / case.chain()),
        frequency: Frequency::from_si(web.frequency),
        tooth_passing: Frequency::from_si(case.choice.n * f64::from(case.cutter.z)),
        softest: Length::from_si(web.softest()),
        other_way: other_way(case),
        error: web.error,
    })
}

/// What clearing the other way would meet.
fn other_way(case: &Case) -> Option<Stiffness> {
    let ahead = case.known.ahead.as_ref()?;
    let other = if case.choice.levels == 1 {
        case.known.web.as_ref()?
    } else {
        ahead
    };
    let bed = case.get(Unknown::BedStiffness);
    Some(Stiffness::from_si(1.0 / other.backed(bed)))
}

fn rib(case: &Case) -> Option<RibReport> {
    let ribs = case.known.rib.filter(|_| !case.shape.slots().is_empty())?;
    Some(RibReport {
        open: Stiffness::from_si(1.0 / ribs.open),
        solid: Stiffness::from_si(1.0 / ribs.solid),
    })
}

fn turn_over(job: &Job, best: &WorkedPlan) -> Option<TurnOver> {
    best.plan.setups.iter().any(|s| s.second).then(|| {
        let numbers = &job.numbers;
        let parts = [
            ("seat_error_um", numbers.seat_error_um),
            ("touch_error_um", numbers.touch_error_um),
        ];
        let total = parts.iter().fold(0.0, |sum: f64, p| libm::hypot(sum, p.1));
        TurnOver {
            parts: parts
                .iter()
                .map(|(id, um)| (*id, Length::um(*um)))
                .collect(),
            total: Length::um(total),
            allowed: job.wanted.web.map(Length::from_si),
        }
    })
}

/// Cautions of the job as a whole: those for everyone, the material's, the hold's and the chip clearing's.
fn job_cautions(job: &Job) -> Vec<String> {
    let always = job
        .tables
        .1
        .cautions
        .iter()
        .filter(|c| c.scope == CautionScope::Always)
        .map(|c| c.id.clone());
    let holding = &job.holding;
    let mut ids: Vec<String> = always
        .chain(job.material.cautions.iter().cloned())
        .chain(holding.first.cautions.iter().cloned())
        .chain(holding.second.cautions.iter().cloned())
        .chain(holding.chips.cautions.iter().cloned())
        .collect();
    let mut seen = std::collections::BTreeSet::new();
    ids.retain(|id| seen.insert(id.clone()));
    ids
}

fn step_cautions(job: &Job, kind: TaskKind, cutter: &Cutter, n: f64) -> Vec<String> {
    let of = |scope: CautionScope| {
        job.tables
            .1
            .cautions
            .iter()
            .filter(move |c| c.scope == scope)
    };
    let breaks_through = matches!(
        kind,
        TaskKind::SlotsThrough | TaskKind::OutlineFinish | TaskKind::Bore
    );
    let fast = kinematics::surface_speed(cutter.d, job.machine.n.1)
        > job.numbers.fast_cutter_m_per_min / 60.0;
    // A cutter that says it stands the machine's top speed is no question.
    let bears = cutter
        .marked
        .is_some_and(|marked| marked >= job.machine.n.1);
    let over = over_speed(job, cutter, n);
    let through = of(CautionScope::BreakThrough).filter(|_| breaks_through);
    through
        .chain(of(CautionScope::OverSpeed).filter(|_| over))
        .chain(of(CautionScope::FastCutter).filter(|_| fast && !bears))
        .map(|c| c.id.clone())
        .collect()
}
