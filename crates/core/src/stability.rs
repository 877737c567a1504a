//! Will a step sing: what vibrates, how deep it stays quiet, which speeds are good; and the chart of it.

use crate::case::Case;
use crate::choice;
use crate::estimate::Draw;
use crate::limits::stability_ends;
use crate::quiet::{MOST_CYCLES, banded, quiet, scenes};
use crate::vibration::{Axis, Scene, TipKnown, Voice, Whose, coupled, tip_known};
use thinwright_chatter::floquet::{Kind, System};
use thinwright_chatter::process_damping::surely_quiet_speed;
use thinwright_chatter::speed::best_speed;
use thinwright_chatter::zero_order::mean_force_change;
use thinwright_chatter::{Cut, Edge, Mode};
use thinwright_quantity::{Angle, Frequency, Length, Speed, SpindleSpeed, Stiffness, Stress};

/// What there is to say of a step's stability.
#[derive(Clone, Debug, PartialEq)]
pub struct StabilityReport {
    /// How the cutter's tip is known.
    pub known: TipKnown,
    /// What vibrates, at the bad ends of what is not known.
    pub modes: Vec<ModeReport>,
    /// The cut, at the same ends.
    pub cut: CutReport,
    /// The share of the linear limit that is used.
    pub share: f64,
    /// Depth that is quiet at any speed, with the share taken: at the bad ends, and at likely values.
    pub quiet: (Length, Length),
    /// Where the step sings at its speed, without the share, if a frequency is known; `None` too where it stays quiet up to
    /// [`StabilityReport::top`].
    pub limit: Option<LimitReport>,
    /// Depth quiet at the step's speed with the share taken and the error of the frequencies, if one is known.
    pub here: Option<Length>,
    /// Speeds at which more is quiet, the deepest first, if a frequency is known.
    pub speeds: Vec<SpeedReport>,
    /// Error of a frequency whose cost stands beside each speed, as a share.
    pub tone_error: f64,
    /// Cutting speed below which the flank's rubbing would keep it quiet anyhow; not counted.
    pub damped_below: Option<Speed>,
    /// Depth up to which the chart reaches.
    pub top: Length,
    /// Speeds of the machine and of the cutter in the material: what the chart covers.
    pub range: (SpindleSpeed, SpindleSpeed),
}

/// A vibration.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ModeReport {
    /// Whose.
    pub whose: Whose,
    /// In which direction.
    pub axis: Axis,
    /// Stiffness in that direction.
    pub stiffness: Stiffness,
    /// Damping ratio.
    pub damping: f64,
    /// Its frequency, if it is known.
    pub frequency: Option<Frequency>,
}

/// A cut as far as stability asks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CutReport {
    /// Spindle speed.
    pub n: SpindleSpeed,
    /// Step-down.
    pub ap: Length,
    /// Teeth.
    pub z: u32,
    /// Angles of entry and exit.
    pub arc: (Angle, Angle),
    /// Tangential coefficient: slope of the force over chip thickness.
    pub kt: Stress,
    /// Radial over tangential coefficient.
    pub kr_ratio: f64,
    /// Corner radius where it works on a floor.
    pub corner: Length,
}

/// Where a step sings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LimitReport {
    /// Depth.
    pub depth: Length,
    /// Every other tooth cuts deep (flip), not a vibration of its own frequency (Hopf).
    pub flip: bool,
    /// Whose vibration.
    pub whose: Whose,
    /// Its frequency.
    pub frequency: Frequency,
}

/// A speed at which more is quiet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpeedReport {
    /// The speed, as typed.
    pub n: SpindleSpeed,
    /// Depth quiet there, with the share taken.
    pub depth: Length,
    /// The same with the frequency off by [`StabilityReport::tone_error`] to the worse side.
    pub off: Length,
    /// A multiple of the web's tone lies here: no speed for finishing the web, which then swings with the teeth.
    pub drums: bool,
}

/// How much further than the step-down the chart reaches.
const HEADROOM: f64 = 2.5;
/// Shares of a lobe's own speed that are looked at: the peak lies near it, and falls off steeply to one side.
const ABOUT_A_LOBE: [f64; 2] = [1.0, 0.97];
/// Speeds that are told.
const MOST_SPEEDS: usize = 3;

/// Spindle speeds at which the teeth keep step with a tone, and those beside them, on the grid, from `low` to `high`, 1/s.
pub(crate) fn in_step(tone: f64, z: u32, grid: f64, (low, high): (f64, f64)) -> Vec<f64> {
    let lobes = (0..MOST_CYCLES).map(|k| best_speed(tone, z, k));
    let speeds = lobes.flat_map(|n| ABOUT_A_LOBE.map(|share| choice::down(share * n, grid)));
    let inside = speeds.filter(|n| *n >= low && *n <= high * (1.0 + 1.0e-9));
    let mut speeds: Vec<f64> = inside.collect();
    speeds.sort_by(|a, b| b.total_cmp(a));
    speeds.dedup_by(|a, b| (*a - *b).abs() < 0.5 * grid);
    speeds
}

/// The report of a step; none for drills.
pub(crate) fn report(likely: &Case) -> Option<StabilityReport> {
    let case = Case {
        draw: Draw::at(likely.estimates, stability_ends(tip_known(likely))),
        ..*likely
    };
    let scene = Scene::new(&case, false)?;
    let numbers = &case.job.numbers;
    let known = tip_known(&case);
    let top = HEADROOM * case.choice.ap;
    let at_any = |case: &Case| Length::from_si(quiet(case).unwrap_or(0.0));
    let speeds = speeds(&case, known);
    Some(StabilityReport {
        known,
        modes: scene
            .voices
            .iter()
            .map(|voice| mode(voice, known))
            .collect(),
        cut: cut(&case, &scene),
        share: numbers.stability_share,
        quiet: (at_any(&case), at_any(likely)),
        limit: limit(&case, known, top),
        here: (known > TipKnown::Nothing)
            .then(|| banded(&case, case.choice.n))
            .flatten()
            .map(Length::from_si),
        speeds,
        tone_error: numbers.tone_error_cost,
        damped_below: damped_below(&case, &scene, known),
        top: Length::from_si(top),
        range: range(&case),
    })
}

fn mode(voice: &Voice, known: TipKnown) -> ModeReport {
    let tip = matches!(voice.whose, Whose::Cutter | Whose::Machine);
    let tuned = !tip || known > TipKnown::Nothing;
    ModeReport {
        whose: voice.whose,
        axis: voice.axis,
        stiffness: Stiffness::from_si(voice.mode.k),
        damping: voice.mode.zeta,
        frequency: tuned.then(|| Frequency::from_si(voice.mode.omega_n / core::f64::consts::TAU)),
    }
}

fn cut(case: &Case, scene: &Scene) -> CutReport {
    let rounded = scene.edge != Edge::sharp();
    CutReport {
        n: SpindleSpeed::from_si(case.choice.n),
        ap: Length::from_si(scene.ap),
        z: scene.cut.z,
        arc: (
            Angle::from_si(scene.cut.phi_st),
            Angle::from_si(scene.cut.phi_ex),
        ),
        kt: Stress::from_si(scene.cut.kt),
        kr_ratio: scene.cut.kr_ratio,
        corner: Length::from_si(if rounded { case.cutter.corner } else { 0.0 }),
    }
}

/// Where the step sings at its speed with its frequencies as they were measured: in the worse direction of feed.
fn limit(case: &Case, known: TipKnown, top: f64) -> Option<LimitReport> {
    (known > TipKnown::Nothing).then_some(())?;
    let found = scenes(case).into_iter().filter_map(|scene| {
        let crossing = scene.limit(case.choice.n, top)?;
        Some((crossing, scene))
    });
    let (crossing, scene) = found.min_by(|a, b| a.0.depth.total_cmp(&b.0.depth))?;
    let song = scene.system()?.song(case.choice.n, &crossing)?;
    Some(LimitReport {
        depth: Length::from_si(crossing.depth),
        flip: crossing.kind == Kind::Flip,
        whose: coupled(&scene.voices).get(song.mode)?.whose,
        frequency: Frequency::from_si(song.omega / core::f64::consts::TAU),
    })
}

fn range(case: &Case) -> (SpindleSpeed, SpindleSpeed) {
    let (least, most) = case.job.machine.n;
    let top = choice::greatest_surface_speed(case.job, case.cutter)
        / (core::f64::consts::PI * case.cutter.d);
    let high = most.min(top.max(case.choice.n));
    let low = least.max(LOWEST_SHARE * high).min(case.choice.n);
    (SpindleSpeed::from_si(low), SpindleSpeed::from_si(high))
}

/// The chart starts at this share of its highest speed.
const LOWEST_SHARE: f64 = 0.25;

fn speeds(case: &Case, known: TipKnown) -> Vec<SpeedReport> {
    let Some(ring) = case.cutter.ring.filter(|_| known > TipKnown::Nothing) else {
        return Vec::new();
    };
    let (low, high) = range(case);
    let now = banded(case, case.choice.n).unwrap_or(0.0);
    let tones = [ring.frequency.0, ring.frequency.1];
    let mut tried: Vec<(f64, f64)> = tones
        .iter()
        .flat_map(|tone| in_step(*tone, case.cutter.z, case.job.grid.n, (low.si(), high.si())))
        .filter_map(|n| Some((n, banded(case, n)?)))
        .filter(|(_, depth)| *depth > 1.05 * now)
        .collect();
    tried.sort_by(|a, b| b.1.total_cmp(&a.1).then(b.0.total_cmp(&a.0)));
    // One of each lobe: what is within a few per cent of a better one is no other speed.
    let mut kept: Vec<(f64, f64)> = Vec::new();
    for one in tried {
        if kept.iter().all(|k| (k.0 / one.0 - 1.0).abs() > 0.08) && kept.len() < MOST_SPEEDS {
            kept.push(one);
        }
    }
    kept.into_iter()
        .map(|(n, depth)| speed(case, n, depth))
        .collect()
}

fn speed(case: &Case, n: f64, depth: f64) -> SpeedReport {
    let numbers = &case.job.numbers;
    let error = numbers.tone_error_cost;
    // A tone that is higher by a share is a speed that is lower by it.
    let off = [1.0 - error, 1.0 + error].map(|factor| banded(case, n * factor).unwrap_or(0.0));
    SpeedReport {
        n: SpindleSpeed::from_si(n),
        depth: Length::from_si(depth),
        off: Length::from_si(off[0].min(off[1])),
        drums: crate::limits::drums(case, n),
    }
}

/// Cutting speed below which the rubbing of the flank alone keeps the step quiet, if a frequency is known.
fn damped_below(case: &Case, scene: &Scene, known: TipKnown) -> Option<Speed> {
    (known > TipKnown::Nothing).then_some(())?;
    let tip = scene
        .voices
        .iter()
        .filter(|v| matches!(v.whose, Whose::Cutter | Whose::Machine));
    let k_cut = mean_force_change(&scene.cut).abs();
    let c = case.job.numbers.process_damping_n_per_mm * 1.0e3;
    let slowest = tip
        .map(|v| surely_quiet_speed(&v.mode, k_cut, c))
        .reduce(f64::min)?;
    (slowest > 0.0).then(|| Speed::from_si(slowest))
}

/// The chart of a step: depths over spindle speeds.
#[derive(Clone, Debug, PartialEq)]
pub struct Lobes {
    /// Spindle speeds.
    pub speeds: Vec<SpindleSpeed>,
    /// The first depth that sings at each, without the share; `None` where the step stays quiet up to the top of the chart.
    pub limit: Vec<Option<Length>>,
    /// Whether every other tooth cuts deep there (flip).
    pub flip: Vec<bool>,
}

/// Speeds of a chart.
pub const CHART_SPEEDS: u32 = 200;

/// The chart of a step, if a frequency is known: without one there are no lobes to be drawn.
pub fn lobes(report: &StabilityReport) -> Option<Lobes> {
    (report.known > TipKnown::Nothing).then_some(())?;
    let system = system(report, false)?;
    // Feed along Y turns the tip by a right angle.
    let turned = match differs(report) {
        true => self::system(report, true),
        false => None,
    };
    let (low, high) = (report.range.0.si(), report.range.1.si());
    let top = report.top.si();
    let mut found = Lobes {
        speeds: Vec::new(),
        limit: Vec::new(),
        flip: Vec::new(),
    };
    for i in 0..CHART_SPEEDS {
        let n = low + (high - low) * f64::from(i) / f64::from(CHART_SPEEDS - 1);
        let systems = std::iter::once(&system).chain(&turned);
        let crossings = systems.filter_map(|s| s.limit(n, top));
        let first = crossings.min_by(|a, b| a.depth.total_cmp(&b.depth));
        found.speeds.push(SpindleSpeed::from_si(n));
        found.limit.push(first.map(|c| Length::from_si(c.depth)));
        found.flip.push(first.is_some_and(|c| c.kind == Kind::Flip));
    }
    Some(found)
}

/// Whether the tip differs between X and Y.
fn differs(report: &StabilityReport) -> bool {
    let tip = |axis: Axis| {
        let of = report
            .modes
            .iter()
            .filter(move |m| m.axis == axis && m.whose != Whose::Rib);
        of.map(|m| m.frequency.map_or(0, |f| f.si().to_bits()))
            .collect::<Vec<_>>()
    };
    tip(Axis::X) != tip(Axis::Y)
}

fn system(report: &StabilityReport, turned: bool) -> Option<System> {
    let voices: Option<Vec<Voice>> = report.modes.iter().map(|m| voice(m, turned)).collect();
    let moving: Vec<_> = coupled(&voices?).iter().map(Voice::moving).collect();
    let cut = &report.cut;
    let cut = Cut {
        z: cut.z,
        phi_st: cut.arc.0.si(),
        phi_ex: cut.arc.1.si(),
        kt: cut.kt.si(),
        kr_ratio: cut.kr_ratio,
    };
    System::new(&moving, &cut, &Edge::sharp())
}

/// A vibration as it was reported; none where its frequency is not known.
fn voice(report: &ModeReport, turned: bool) -> Option<Voice> {
    let tip = matches!(report.whose, Whose::Cutter | Whose::Machine);
    let axis = match report.axis {
        Axis::X if turned && tip => Axis::Y,
        Axis::Y if turned && tip => Axis::X,
        axis => axis,
    };
    let mode = Mode {
        k: report.stiffness.si(),
        zeta: report.damping,
        omega_n: core::f64::consts::TAU * report.frequency?.si(),
    };
    Some(Voice {
        whose: report.whose,
        axis,
        mode,
    })
}
