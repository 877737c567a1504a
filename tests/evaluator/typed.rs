//! The numbers as a person types them: on the grid, inside the machine's ranges, following from each other.

use super::Complaints;
use super::scene::Scene;
use core::f64::consts::PI;
use thinwright_core::methods::MethodId;
use thinwright_core::strategy::Entry;
use thinwright_mechanics::chip;

/// Share of a step by which a number may lie off the grid: rounding of units.
const OFF_GRID: f64 = 1.0e-4;
/// What follows from two numbers follows to this share.
const FOLLOWS: f64 = 1.0e-9;

/// Whether a number is a whole count of steps, at least one.
fn on(value: f64, step: f64) -> bool {
    let count = value / step;
    count > 0.5 && (count - libm::round(count)).abs() < OFF_GRID
}

pub(crate) fn check(scene: &Scene, out: &mut Complaints) {
    let (job, step, cutter, number) = (scene.job, scene.step, scene.cutter, scene.step.number);
    let grid = &job.grid;
    let mut typed = |what: &str, value: f64, by: f64| {
        if !on(value, by) {
            let figures = format!("{} steps", value / by);
            out.add(format!("off the grid: {what}"), number, 0.0, figures);
        }
    };
    typed("n", step.n.si(), grid.n);
    typed("vf", step.vf.si(), grid.vf);
    typed("ap", step.ap.si(), grid.depth);
    // At full width the stepover is the diameter, whatever that is.
    if scene.ae() < cutter.d * 0.999 {
        typed("ae", scene.ae(), grid.depth);
    }
    if let Some(feed) = step.corner_feed {
        typed("corner feed", feed.si(), grid.vf);
    }
    if let Some(feed) = step.opening_feed {
        typed("opening feed", feed.si(), grid.vf);
    }
    if let Entry::Drilled { n, feed, .. } = step.entry {
        typed("drill n", n.si(), grid.n);
        typed("drill feed", feed.si(), grid.vf);
    }
    ranges(scene, out);
    left_standing(scene, out);
    levels(scene, out);
    chip_load(scene, out);
    entry(scene, out);
}

/// Numbers inside their ranges, and what follows from them.
fn ranges(scene: &Scene, out: &mut Complaints) {
    let (job, step, cutter, number) = (scene.job, scene.step, scene.cutter, scene.step.number);
    let grid = &job.grid;
    let n = step.n.si();
    let (least, most) = job.machine.n;
    // A grid may have no point between two speeds that are nearer than its step.
    if n < least - FOLLOWS || n > most.max(least + grid.n) + FOLLOWS {
        out.add(
            "speed the spindle does not turn",
            number,
            n / most,
            format!("{n} 1/s"),
        );
    }
    if scene.ae() > cutter.d * (1.0 + FOLLOWS) {
        let figures = format!("{} over {}", scene.ae(), cutter.d);
        out.add("stepover wider than the cutter", number, 0.0, figures);
    }
    for (what, feed) in [("corner", step.corner_feed), ("opening", step.opening_feed)] {
        if feed.is_some_and(|f| f.si() >= step.vf.si()) {
            let rule = format!("{what} feed no lower than the feed");
            out.add(rule, number, 0.0, String::new());
        }
    }
    let fz = step.vf.si() / (n * f64::from(cutter.z));
    out.same(
        "feed per tooth that follows",
        number,
        (fz, step.fz.si()),
        FOLLOWS,
    );
    out.same(
        "surface speed that follows",
        number,
        (PI * cutter.d * n, step.vc.si()),
        FOLLOWS,
    );
}

/// One pass along the wall takes all that stands on it.
fn left_standing(scene: &Scene, out: &mut Complaints) {
    let (ae, left) = (scene.ae(), scene.stand.skin);
    if scene.step.method == MethodId::WallSkim && ae < left * (1.0 - 1.0e-9) {
        let figures = format!("{ae} m typed, {left} m left");
        out.add(
            "stepover less than what stands on the wall",
            scene.step.number,
            left / ae,
            figures,
        );
    }
}

/// Levels cover the depth, and not one too many.
fn levels(scene: &Scene, out: &mut Complaints) {
    let (step, depth) = (scene.step, scene.stand.depth());
    let levels = f64::from(step.levels);
    let ap = step.ap.si();
    let figures = format!("{levels} of {ap} m for {depth} m");
    if levels * ap < depth * (1.0 - 1.0e-6) {
        out.add(
            "levels short of the depth",
            step.number,
            depth / (levels * ap),
            figures,
        );
    } else if (levels - 1.0) * ap >= depth * (1.0 - 1.0e-6) {
        out.add(
            "one level too many",
            step.number,
            levels * ap / depth,
            figures,
        );
    }
}

/// The chip stays inside the material's table: the edge has to bear it.
fn chip_load(scene: &Scene, out: &mut Complaints) {
    let table = &scene.job.material.chip_load;
    let d = scene.cutter.d;
    let (Some(first), Some(last)) = (table.first(), table.last()) else {
        return;
    };
    let mut most = last.high.si();
    if d <= first.d.si() {
        most = first.high.si() * d / first.d.si();
    }
    for pair in table.windows(2) {
        let (a, b) = (&pair[0], &pair[1]);
        if d > a.d.si() && d <= b.d.si() {
            let share = (d - a.d.si()) / (b.d.si() - a.d.si());
            most = a.high.si() + share * (b.high.si() - a.high.si());
        }
    }
    let ae = scene.ae().min(d);
    let thickest = scene.step.fz.si() / chip::radial_thinning(ae, d);
    // One step of feed is the least that can be typed.
    let least = scene.job.grid.vf / (scene.step.n.si() * f64::from(scene.cutter.z));
    if thickest > most.max(least) * (1.0 + 1.0e-6) {
        let figures = format!("{thickest} m of chip, {most} m in the table");
        out.add(
            "chip above the material's table",
            scene.step.number,
            thickest / most,
            figures,
        );
    }
}

/// What is told of the way in fits together, and the way in fits the method.
fn entry(scene: &Scene, out: &mut Complaints) {
    let (step, d, number) = (scene.step, scene.cutter.d, scene.step.number);
    let vf = step.vf.si();
    match step.entry {
        Entry::Helix {
            hole,
            centre_circle,
            pitch,
            angle,
            centre_feed,
        } => {
            let circle = hole.si() - d;
            out.same(
                "circle of the helix",
                number,
                (circle, centre_circle.si()),
                1.0e-6,
            );
            let slope = libm::atan2(pitch.si(), PI * circle);
            out.same("slope of the helix", number, (slope, angle.si()), 1.0e-6);
            let feed = vf * scene.ramp() * circle / hole.si();
            out.same(
                "feed of the helix",
                number,
                (feed, centre_feed.si()),
                1.0e-6,
            );
            if pitch.si() > step.ap.si() * (1.0 + 1.0e-9) {
                out.add(
                    "helix steeper than its level",
                    number,
                    0.0,
                    format!("{pitch:?}"),
                );
            }
        }
        Entry::Zigzag { feed, .. } => {
            out.same(
                "feed of the slope",
                number,
                (vf * scene.ramp(), feed.si()),
                1.0e-6,
            );
        }
        Entry::Side | Entry::Plunge { .. } | Entry::Drilled { .. } => {}
    }
    if !of_its_method(scene) {
        let figures = format!("{:?} in {:?}", step.entry, step.method);
        out.add("entry that the method does not have", number, 0.0, figures);
    }
}

/// Whether the way in is one that the method has.
fn of_its_method(scene: &Scene) -> bool {
    let step = scene.step;
    match step.method {
        MethodId::Facing | MethodId::WallSkim => matches!(step.entry, Entry::Side),
        MethodId::OutlineGroove | MethodId::OutlineTabs => matches!(step.entry, Entry::Side),
        MethodId::BoreHelix
        | MethodId::OffsetClearing
        | MethodId::LightClearing
        | MethodId::FloorSkim
        | MethodId::Peeling => matches!(step.entry, Entry::Helix { .. }),
        MethodId::FullWidth | MethodId::Zigzag | MethodId::SidePasses => {
            matches!(step.entry, Entry::Zigzag { .. })
        }
        MethodId::DrilledEnds => matches!(step.entry, Entry::Drilled { .. }),
    }
}
