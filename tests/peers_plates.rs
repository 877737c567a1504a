//! The plate solver and the ribs of `mechanics` against programs that share nothing with them:
//! `shared/reference/outlines.json`, see `tests/peers`.
#![cfg(test)]

mod agreement;
#[path = "peers_plates/outline.rs"]
mod outline;
mod plates;
#[path = "peers_plates/table.rs"]
mod table;

use outline::{Case, cases, number, rows};
use plates::{Fine, Place, Shape};
use table::{Against, Deviation};
use thinwright_mechanics::rib;
use thinwright_plate::fem::{Plate, Theory};

/// Greatest edge, m, and elements across a rib, of the two meshes that the answers are extrapolated from.
const MESHES: [Fine; 2] = [(0.003, 4.0), (0.002, 6.0)];
/// How far beyond its patch a place must be from slots and steps for the patch to be drawn in the mesh, in radii.
const OPEN: f64 = 1.5;
/// What plate theory may differ by from a solid, besides the tolerance of the row. The solid's faces give way less than the
/// middle plane under a patch no wider than the web is thick: 1 to 2 %.
const THEORY_W: f64 = 0.02;
const THEORY_F: f64 = 0.01;
/// Within so many thicknesses of the thin part of a step the moved line is on the safe side, by up to this share.
const BESIDE: f64 = 5.0;
const THEORY_BESIDE: f64 = 0.10;
/// The side of a slot in the solid: one number for all slots, the greatest met, so never too stiff and this much too soft.
const SOLID_SIDE: f64 = 0.05;

/// What a case gives on one mesh: nodes, deflections, tones.
type OnMesh = (f64, Vec<f64>, Vec<f64>);

/// Whether nothing but one thickness is around a place.
fn is_open(case: &Case, (at, radius): (Place, f64)) -> bool {
    let around = OPEN * radius;
    let alike = |region: &plates::Region| {
        let inner = region.shape.grown(-around).contains(at);
        inner || !region.shape.grown(around).contains(at)
    };
    let slots = case.plan.slots.iter();
    slots.clone().all(|s| !s.grown(around).contains(at)) && case.plan.regions.iter().all(alike)
}

fn on_mesh(case: &Case, fine: Fine) -> OnMesh {
    let mut plan = if case.solid {
        case.plan.with_moved_steps()
    } else {
        case.plan.clone()
    };
    let open = case.patches.iter().filter(|patch| is_open(case, **patch));
    plan.drawn
        .extend(open.map(|(at, r)| Shape::circle(*at, *r)));
    let grid = plan.grid(fine);
    let stands = (plan.layout(&grid), plan.mass(&grid));
    let what = (&case.stuff, Theory::ShearFlexible);
    let found = plates::ask(&grid, stands, what, &case.patches, case.f.len());
    let w = found.compliance.iter().map(|c| case.force * c);
    #[allow(clippy::cast_precision_loss, reason = "a count of nodes")]
    let nodes = grid.mesh().nodes.len() as f64;
    (nodes, w.collect(), found.frequency)
}

/// Each value of two meshes where it goes to, the error falling with one over the number of nodes.
fn extrapolated(nodes: [f64; 2], coarse: &[f64], fine: &[f64]) -> Vec<f64> {
    let share = 1.0 / (1.0 - nodes[0] / nodes[1]);
    let both = coarse.iter().zip(fine);
    both.map(|(c, f)| c + share * (f - c)).collect()
}

/// Greatest bending stress of the mean moment under each patch, Pa.
fn stresses(case: &Case) -> Vec<f64> {
    let mut plan = case.plan.clone();
    let rims = case.patches.iter().map(|(at, r)| Shape::circle(*at, *r));
    plan.drawn.extend(rims);
    let grid = plan.grid(MESHES[1]);
    let layout = plan.layout(&grid);
    let plate = Plate::new(&grid, &case.stuff, layout, Theory::ShearFlexible).unwrap();
    let of = |(at, radius): &(Place, f64)| {
        let patch = plate.patch(*at, *radius).unwrap();
        let ([x, y, xy], _) = plate.mean_moment(&plate.deflection(&patch), &patch);
        let most = 0.5 * (x + y).abs() + libm::hypot(0.5 * (x - y), xy);
        let t = case.plan.thickness(*at);
        case.force * 6.0 * most / (t * t)
    };
    case.patches.iter().map(of).collect()
}

/// Whether a place lies within five thicknesses of the thin part from a step.
fn is_beside(case: &Case, at: Place) -> bool {
    let regions = &case.plan.regions;
    let mut steps = regions.iter().enumerate().skip(1);
    steps.any(|(index, region)| {
        let thin = region.thickness.min(regions[index - 1].thickness);
        let inner = region.shape.grown(-BESIDE * thin).contains(at);
        region.shape.grown(BESIDE * thin).contains(at) && !inner
    })
}

/// What plates say of a case, beside what its row says.
fn deviations(case: &Case) -> Vec<Deviation> {
    let mut all = Vec::new();
    let mut note = |against, value: f64, expected: f64, allowed: (f64, f64)| {
        all.push(Deviation {
            id: case.id.clone(),
            against,
            share: value / expected - 1.0,
            allowed,
        });
    };
    let even = |room: f64| (-case.tolerance - room, case.tolerance + room);
    if !case.w.is_empty() {
        let [coarse, fine] = MESHES.map(|fine| on_mesh(case, fine));
        let nodes = [coarse.0, fine.0];
        let w = extrapolated(nodes, &coarse.1, &fine.1);
        let on_bed = case.plan.regions.iter().any(|r| r.bed > 0.0);
        for ((w, expected), (at, _)) in w.iter().zip(&case.w).zip(&case.patches) {
            let (against, allowed) = match (case.solid, is_beside(case, *at)) {
                (false, _) if on_bed => (Against::PlateOnBed, even(0.0)),
                (false, _) => (Against::Plate, even(0.0)),
                (true, false) => (Against::Solid, even(THEORY_W)),
                (true, true) => (
                    Against::SolidBeside,
                    (even(THEORY_W).0, case.tolerance + THEORY_BESIDE),
                ),
            };
            note(against, *w, *expected, allowed);
        }
        let f = extrapolated(nodes, &coarse.2, &fine.2);
        for (f, expected) in f.iter().zip(&case.f) {
            let (against, allowed) = if case.solid {
                (Against::SolidTone, even(THEORY_F))
            } else {
                (Against::PlateTone, even(0.0))
            };
            note(against, *f, *expected, allowed);
        }
    }
    if !case.sigma.is_empty() {
        for (s, expected) in stresses(case).iter().zip(&case.sigma) {
            note(Against::Stress, *s, *expected, even(0.0));
        }
    }
    all
}

/// The ribs: give of a slot's side, over 1 / (E t).
fn ribs() -> Vec<Deviation> {
    let all = rows();
    let plane = all.iter().filter(|row| row["theory"] == "plane_stress");
    let of = |row: &serde_json::Value| {
        let input = |name: &str| number(&row["inputs"][name]);
        let (expected, tolerance) = (
            number(&row["expected"]["C"]),
            row["tolerance_rel"].as_f64().unwrap(),
        );
        let (against, found, allowed) = if row["inputs"]["neighbour"]["value"] == "open" {
            let slot = (1e-3 * input("slot_length"), 1e-3 * input("slot_width"));
            let section = (1e-3 * input("rib_width"), 1.0);
            let found = rib::beside_slot((1.0, input("nu")), slot, section);
            (Against::Rib, found, (-tolerance, tolerance))
        } else {
            let found = rib::beside_solid(1.0, 1.0);
            (Against::Side, found, (-tolerance, SOLID_SIDE))
        };
        Deviation {
            id: row["id"].as_str().unwrap().to_owned(),
            against,
            share: found / expected - 1.0,
            allowed,
        }
    };
    plane.map(of).collect()
}

#[test]
fn plates_and_ribs_agree_with_independent_programs() {
    let mut all: Vec<Deviation> = cases().iter().flat_map(deviations).collect();
    all.extend(ribs());
    let count = rows().len();
    let mut asked: Vec<&str> = all.iter().map(|d| d.id.as_str()).collect();
    asked.dedup();
    assert_eq!(asked.len(), count, "a row of the file is not compared");
    table::check(count, &all);
}
