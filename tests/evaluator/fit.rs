//! Whether the cutter gets to where it is used, and leaves what is drawn.

use super::Complaints;
use super::drawing::Outline;
use super::holding;
use super::scene::Scene;
use super::stops::boxed;
use thinwright_core::methods::MethodId;
use thinwright_core::strategy::Entry;
use thinwright_core::task::TaskKind;

const HAIR: f64 = 1.0e-9;

pub(crate) fn check(scene: &Scene, out: &mut Complaints) {
    let (step, cutter) = (scene.step, scene.cutter);
    if cutter.drill {
        out.add(
            "a drill that mills",
            step.number,
            0.0,
            format!("{:?}", step.method),
        );
    }
    match step.task {
        TaskKind::Clearing | TaskKind::FloorSkim | TaskKind::WallSkim => recess(scene, out),
        TaskKind::SlotsThrough | TaskKind::SlotsBlind => slots(scene, out),
        TaskKind::Bore => bore(scene, out),
        TaskKind::Facing | TaskKind::OutlineGroove | TaskKind::OutlineFinish => {}
    }
    suits(scene, out);
    rubs(scene, out);
    ridges(scene, out);
    for what in holding::unfit(scene) {
        out.add(what, step.number, 0.0, scene.hold.id.clone());
    }
}

/// A method for its own task.
fn suits(scene: &Scene, out: &mut Complaints) {
    let right = match scene.step.method {
        MethodId::Facing => scene.step.task == TaskKind::Facing,
        MethodId::BoreHelix => scene.step.task == TaskKind::Bore,
        MethodId::OffsetClearing | MethodId::LightClearing => scene.step.task == TaskKind::Clearing,
        MethodId::FloorSkim => scene.step.task == TaskKind::FloorSkim,
        MethodId::WallSkim => scene.step.task == TaskKind::WallSkim,
        MethodId::OutlineGroove => scene.step.task == TaskKind::OutlineGroove,
        MethodId::OutlineTabs => scene.step.task == TaskKind::OutlineFinish,
        MethodId::FullWidth
        | MethodId::Zigzag
        | MethodId::SidePasses
        | MethodId::Peeling
        | MethodId::DrilledEnds => scene.slots(),
    };
    if !right {
        let figures = format!("{:?} for {:?}", scene.step.method, scene.step.task);
        out.add("method for another task", scene.step.number, 0.0, figures);
    }
}

/// The narrowest place between the walls of the recess, and boss, less what stays on both, m.
fn narrowest(scene: &Scene, plan: &Outline) -> f64 {
    let boss = scene.drawing.boss;
    let left = match scene.step.task {
        TaskKind::WallSkim => 0.0,
        _ => scene.step.leave.0.si(),
    };
    let clear = if boss > 0.0 {
        0.5 * (plan.across() - boss)
    } else {
        plan.across()
    };
    clear - 2.0 * left
}

fn recess(scene: &Scene, out: &mut Complaints) {
    let (d, number) = (scene.cutter.d, scene.step.number);
    let Some(hollow) = scene.hollow() else {
        return out.add("recess that is not drawn", number, 0.0, String::new());
    };
    let clear = narrowest(scene, &hollow.plan);
    if d >= clear {
        out.add(
            "cutter wider than the way",
            number,
            d / clear,
            format!("{d} in {clear} m"),
        );
    }
    if let Some(corner) = scene.corner().filter(|_| boxed(scene))
        && 0.5 * d > corner + HAIR
    {
        let figures = format!("radius {} in {corner} m", 0.5 * d);
        out.add(
            "cutter too wide for the corners",
            number,
            0.5 * d / corner,
            figures,
        );
    }
    if let Some(hole) = scene.entry_hole() {
        // The widest place of a box with a boss is its corners, wider than the narrowest.
        let most = if boxed(scene) && scene.drawing.boss > 0.0 {
            hollow.plan.across()
        } else {
            clear
        };
        if hole > most * (1.0 + 1.0e-6) {
            let figures = format!("{hole} in {most} m");
            out.add("helix wider than the recess", number, hole / most, figures);
        }
        opens(scene, hole, out);
    }
}

/// A helix leaves no core and lets its chips out.
fn opens(scene: &Scene, hole: f64, out: &mut Complaints) {
    let (numbers, ratio) = (&scene.job.numbers, hole / scene.cutter.d);
    let (least, most) = (numbers.helix_over_d_least, numbers.helix_over_d_most);
    out.between(
        ("hole of the helix over the cutter", scene.step.number),
        ratio,
        (least, most),
        1.0e-6,
    );
}

fn bore(scene: &Scene, out: &mut Complaints) {
    let number = scene.step.number;
    match scene.entry_hole() {
        Some(hole) => {
            out.same(
                "hole of the bore",
                number,
                (scene.drawing.bore, hole),
                1.0e-6,
            );
            opens(scene, hole, out);
        }
        None => out.add("bore without its helix", number, 0.0, String::new()),
    }
    centre(scene, out);
}

/// A cutter that goes down where nothing was opened cuts to its centre.
fn centre(scene: &Scene, out: &mut Complaints) {
    if !scene.cutter.centre_cutting {
        out.add(
            "down with a cutter that has no centre",
            scene.step.number,
            0.0,
            String::new(),
        );
    }
}

fn slots(scene: &Scene, out: &mut Complaints) {
    let (number, numbers) = (scene.step.number, &scene.job.numbers);
    let share = scene.cutter.d / scene.slot_width();
    let (least, most) = match scene.step.method {
        MethodId::FullWidth | MethodId::Zigzag => (0.97, 1.0),
        MethodId::SidePasses => (
            numbers.slot_cutter_share_least,
            numbers.slot_cutter_share_most,
        ),
        MethodId::Peeling => (0.5, numbers.peel_cutter_share_most),
        _ => (numbers.slot_cutter_share_least, 1.0),
    };
    out.between(
        ("cutter over the slot's width", number),
        share,
        (least, most),
        1.0e-5,
    );
    if scene.step.method == MethodId::DrilledEnds {
        drill(scene, out);
    } else {
        centre(scene, out);
    }
    if scene.step.method == MethodId::Peeling {
        let hole = scene.entry_hole().unwrap_or(0.0);
        out.same(
            "helix of the peeled slot",
            number,
            (scene.slot_width(), hole),
            1.0e-6,
        );
    }
}

/// The drill stays inside the slot, lets the mill in, and is long enough for its point to come through.
fn drill(scene: &Scene, out: &mut Complaints) {
    let number = scene.step.number;
    let Entry::Drilled { hole, drill, .. } = scene.step.entry else {
        return;
    };
    let Some(drill) = scene.job.rack.iter().find(|c| c.row == drill && c.drill) else {
        return out.add("drill that is not in the rack", number, 0.0, String::new());
    };
    let numbers = &scene.job.numbers;
    out.same("hole of the drill", number, (drill.d, hole.si()), 1.0e-9);
    let most = scene.slot_width() - numbers.end_drill_under_mm * 1.0e-3;
    if drill.d > most + HAIR {
        let figures = format!("{} in {most} m", drill.d);
        out.add(
            "drill wider than the slot's ends",
            number,
            drill.d / most,
            figures,
        );
    }
    let point = numbers.drill_point_over_d * drill.d;
    let flutes = scene.stand.depth() + point;
    if flutes > drill.flute_length + HAIR {
        let figures = format!("{flutes} m with its point, flutes {} m", drill.flute_length);
        out.add(
            "drill deeper than its flutes",
            number,
            flutes / drill.flute_length,
            figures,
        );
    }
    let out_of_collet = scene.stand.total() + point + numbers.nut_clearance_mm * 1.0e-3;
    if out_of_collet > drill.stick_out + HAIR {
        let figures = format!("{out_of_collet} m needed, {} m out", drill.stick_out);
        out.add(
            "drill too short for its collet nut",
            number,
            out_of_collet / drill.stick_out,
            figures,
        );
    }
}

/// A shank as thick as the cut rubs in it below the flutes and the neck.
fn rubs(scene: &Scene, out: &mut Complaints) {
    let cutter = scene.cutter;
    let tight = cutter.shank > cutter.d * (1.0 - 1.0e-6);
    if scene.step.task == TaskKind::Facing || !tight {
        return;
    }
    let deep = if scene.slots() {
        scene.stand.depth()
    } else {
        scene.stand.total()
    };
    let relieved = cutter.reach.max(cutter.flute_length);
    if deep > relieved + HAIR {
        let figures = format!("{deep} m deep, {relieved} m relieved");
        out.add(
            "shank that rubs in the cut",
            scene.step.number,
            deep / relieved,
            figures,
        );
    }
}

/// Rounded corners leave ridges between passes: no higher than the floor's allowance, or than the web may err.
fn ridges(scene: &Scene, out: &mut Complaints) {
    let (re, d) = (scene.cutter.corner, scene.cutter.d);
    let allowed = match scene.step.task {
        TaskKind::Clearing => scene.step.leave.1.si(),
        TaskKind::FloorSkim => scene.job.wanted.web.unwrap_or(f64::INFINITY),
        _ => return,
    };
    let over = 0.5 * (scene.ae() - (d - 2.0 * re));
    if over <= 0.0 {
        return;
    }
    let ridge = re - (re * re - over.min(re) * over.min(re)).sqrt();
    if ridge > allowed {
        let figures = format!("{ridge} m high, {allowed} m allowed");
        out.add(
            "ridges between passes",
            scene.step.number,
            ridge / allowed,
            figures,
        );
    }
}
