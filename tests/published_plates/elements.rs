//! Cases that need finite elements: floors with slots, floors of two thicknesses, and whatever was computed as a solid.
//!
//! Thin-plate cases are run by the thin form of the element; solids by the shear-flexible one, with the line between thin
//! and thick moved into the thick part by a quarter of the thin part's thickness (see `plates`).

use super::agreement::{Answer, Row};
use super::plates::{self, Fine, Found, PLACES_C, PLACES_D, Place, Plan, Shape, edge_nodes};
use thinwright_plate::fem::{Held, Stuff, Theory};

/// Greatest edge and elements across a rib: converged well inside the narrowest tolerance of each kind.
const DISC: Fine = (0.005, 1.0);
const SLOTTED: Fine = (0.006, 4.0);
const FLOOR: Fine = (0.003, 3.0);
const WALL: Fine = (0.0015, 1.0);
/// Radius of what stands for a point, m.
const POINT: f64 = 1e-6;

fn stuff(row: &Row) -> Stuff {
    Stuff {
        e_mod: row.input("E"),
        nu: row.input("nu"),
        rho: row.input_or("rho", 2700.0),
    }
}

/// Deflection under the force of the row, and tones where it has any.
fn answer(row: &Row, found: &Found) -> Answer {
    let w = found.compliance.iter().map(|c| row.input("F") * c);
    vec![("w", w.collect()), ("f", found.frequency.clone())]
}

/// How many tones a row prints.
fn tones(row: &Row) -> usize {
    if row.prints("f") {
        row.printed("f").len()
    } else {
        0
    }
}

fn ask(row: &Row, plan: &Plan, fine: Fine, theory: Theory, patches: &[(Place, f64)]) -> Answer {
    let found = plan.ask(fine, (&stuff(row), theory), patches, tones(row));
    answer(row, &found)
}

fn places(patches: &[(Place, f64)]) -> Vec<Place> {
    patches.iter().map(|patch| patch.0).collect()
}

/// Discs as solids, with and without a boss.
pub(super) fn disc_case(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    let boss = id.starts_with("bS");
    if !boss && !id.starts_with("aS") {
        return None;
    }
    let mut plan = Plan::even(
        Shape::circle([0.0, 0.0], row.input("R")),
        row.input("t"),
        Held::Clamped,
    );
    let radius = row.input("patch_radius");
    let mut patches: Vec<(Place, f64)> = Vec::new();
    if boss {
        let r = row.input("boss_r");
        plan = plan.with(Shape::circle([0.0, 0.0], r), row.input("boss_height"));
        patches.push(([0.0, 0.0], r));
        // The row's note tells the places.
        patches.extend([0.03, 0.06, 0.08].map(|r| ([r, 0.0], radius)));
    } else {
        patches.extend(row.list("r").iter().map(|r| ([*r, 0.0], radius)));
    }
    Some(ask(
        row,
        &plan.with_moved_steps(),
        DISC,
        Theory::ShearFlexible,
        &patches,
    ))
}

/// Problem (c): a floor with a boss and groups of slots.
pub(super) fn slotted_disc_case(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    if !id.starts_with('c') {
        return None;
    }
    let plan = plates::problem_c(row.input("t"));
    let boss = row.input("boss_r");
    if id.starts_with("cS") {
        let radius = row.input("patch_radius");
        let mut patches = vec![([0.0, 0.0], boss)];
        patches.extend(PLACES_C.map(|at| (at, radius)));
        let plan = plan.with_moved_steps();
        return Some(ask(row, &plan, SLOTTED, Theory::ShearFlexible, &patches));
    }
    let points: Vec<(Place, f64)> = row
        .list("points_P0..P5")
        .chunks(2)
        .map(|p| ([p[0], p[1]], POINT))
        .collect();
    if id.starts_with("cF-") {
        return Some(ask(row, &plan, SLOTTED, Theory::Thin, &[]));
    }
    let plan = plan.marked(&places(&points));
    if let Some(at) = id.rsplit('P').next().and_then(|n| n.parse::<usize>().ok()) {
        return Some(ask(row, &plan, SLOTTED, Theory::Thin, &points[at..=at]));
    }
    // The boss held.
    let grid = plan.grid(SLOTTED);
    let mut layout = plan.layout(&grid);
    for (held, p) in layout.held.iter_mut().zip(&grid.mesh().nodes) {
        if libm::hypot(p[0], p[1]) < 1.001 * boss {
            *held = Held::Clamped;
        }
    }
    let what = (&stuff(row), Theory::Thin);
    let found = plates::ask(
        &grid,
        (layout, plan.mass(&grid)),
        what,
        &points[1..],
        tones(row),
    );
    Some(answer(row, &found))
}

/// Problem (d): a rectangular floor with and without slots.
pub(super) fn floor_case(row: &Row) -> Option<Answer> {
    let id = row.id.as_str();
    let (thin, slotted, round) = match id {
        _ if id.starts_with("d-K-slots") => (true, true, id.contains("round")),
        _ if id.starts_with("dS-slots") => (false, true, true),
        _ if id.starts_with("dS-plain") => (false, false, true),
        _ => return None,
    };
    let mut plan = plates::floor_d(row.input("t"));
    if thin {
        plan = plan.marked(&PLACES_D);
    }
    if slotted {
        plan = plan.slotted(plates::slots_d(round));
    }
    let radius = row.input_or("patch_radius", POINT);
    let theory = if thin {
        Theory::Thin
    } else {
        Theory::ShearFlexible
    };
    Some(ask(
        row,
        &plan,
        FLOOR,
        theory,
        &PLACES_D.map(|at| (at, radius)),
    ))
}

/// Problem (e): a wall as a solid, held at its foot.
pub(super) fn wall_case(row: &Row) -> Option<Answer> {
    if !row.id.starts_with("eS") {
        return None;
    }
    let (length, height, t) = (row.input("L"), row.input("H"), row.input("t"));
    let plan = Plan::even(
        Shape::rect([0.0, 0.0], [length, height], 0.0),
        t,
        Held::Free,
    );
    let grid = plan.grid(WALL);
    let mut layout = plan.layout(&grid);
    for node in edge_nodes(&grid) {
        if grid.mesh().nodes[node][1] < 1e-9 {
            layout.held[node] = Held::Clamped;
        }
    }
    // A line through the thickness bears on a point of the plate, as far as the mesh tells.
    let at = |share: f64| ([share * length, height], POINT);
    let what = (&stuff(row), Theory::ShearFlexible);
    let found = plates::ask(
        &grid,
        (layout, plan.mass(&grid)),
        what,
        &[at(0.5), at(0.0), at(0.25)],
        tones(row),
    );
    let w: Vec<f64> = found
        .compliance
        .iter()
        .map(|c| row.input("F") * c)
        .collect();
    Some(vec![
        ("w_mid", vec![w[0]]),
        ("w_corner", vec![w[1]]),
        ("w_quarter", vec![w[2]]),
        ("f", found.frequency),
    ])
}

/// Problem (f): half of a floor thin, half thick; places as the notes tell them.
pub(super) fn stepped_case(row: &Row) -> Option<Answer> {
    if !row.id.starts_with("f-") {
        return None;
    }
    let thick = row.input("t2");
    let far = 0.05;
    // The thin half reaches past the edges, so that its only line on the plate is the step.
    let thin = Shape::rect([-far, -far], [0.07, 0.09 + far], 0.0);
    let plan = plates::floor_d(thick).with(thin, row.input("t1"));
    let middle = |x: &[f64]| -> Vec<Place> { x.iter().map(|x| [*x, 0.045]).collect() };
    let (plan, theory, at, radius) = if row.id == "f-K-step" {
        let at = middle(&[0.035, 0.065, 0.07, 0.105]);
        (plan.marked(&at), Theory::Thin, at, POINT)
    } else {
        let radius = row.input("patch_radius");
        let at = middle(&[0.035, 0.062, 0.105]);
        (plan.with_moved_steps(), Theory::ShearFlexible, at, radius)
    };
    let patches: Vec<(Place, f64)> = at.into_iter().map(|at| (at, radius)).collect();
    Some(ask(row, &plan, FLOOR, theory, &patches))
}
