//! The plate against closed forms of its own crate, and properties that any plate has.

use super::*;
use crate::annulus::{self, Annulus, InnerEdge};
use crate::mesh::Mesh;
use crate::{Sheet, disc};
use approx::assert_relative_eq;
use core::f64::consts::{PI, TAU};

const ALUMINIUM: Stuff = Stuff {
    e_mod: 69e9,
    nu: 0.33,
    rho: 2700.0,
};
const RADIUS: f64 = 0.09;

fn sheet(t: f64) -> Sheet {
    Sheet {
        e_mod: ALUMINIUM.e_mod,
        nu: ALUMINIUM.nu,
        rho: ALUMINIUM.rho,
        t,
    }
}

/// A disc of rings: the k-th has 6 k nodes, evenly.
fn rings(count: u32, radius: f64) -> Mesh {
    let mut nodes = vec![[0.0, 0.0]];
    let mut triangles = Vec::new();
    let first = |k: u32| 1 + 3 * k * (k - 1);
    for k in 1..=count {
        let r = radius * f64::from(k) / f64::from(count);
        for i in 0..6 * k {
            let angle = f64::from(i) / f64::from(6 * k) * TAU;
            nodes.push([r * libm::cos(angle), r * libm::sin(angle)]);
        }
        for sector in 0..6 {
            for i in 0..k {
                let outer = |i: u32| first(k) + (sector * k + i) % (6 * k);
                let inner = |i: u32| match k {
                    1 => 0,
                    _ => first(k - 1) + (sector * (k - 1) + i) % (6 * (k - 1)),
                };
                triangles.push([inner(i), outer(i), outer(i + 1)]);
                if i + 1 < k {
                    triangles.push([inner(i), outer(i + 1), inner(i + 1)]);
                }
            }
        }
    }
    Mesh { nodes, triangles }
}

fn even(grid: &Grid, t: f64) -> Layout {
    let mesh = grid.mesh();
    Layout {
        thickness: vec![t; mesh.triangles.len()],
        bed: vec![0.0; mesh.triangles.len()],
        held: vec![Held::Free; mesh.nodes.len()],
    }
}

fn radius_of(p: &[f64; 2]) -> f64 {
    (p[0] * p[0] + p[1] * p[1]).sqrt()
}

fn clamped(grid: &Grid, t: f64) -> Layout {
    let mut layout = even(grid, t);
    for (held, p) in layout.held.iter_mut().zip(&grid.mesh().nodes) {
        if radius_of(p) > 0.999 * RADIUS {
            *held = Held::Clamped;
        }
    }
    layout
}

#[test]
fn a_clamped_disc_gives_what_the_closed_forms_say() {
    let grid = Grid::new(rings(24, RADIUS)).unwrap();
    for t in [0.002, 0.005, 0.012] {
        let layout = clamped(&grid, t);
        let mut plate = Plate::new(&grid, &ALUMINIUM, layout, Theory::ShearFlexible).unwrap();
        let (sheet, radius) = (sheet(t), 0.005);
        let patch = plate.patch([0.0, 0.0], radius).unwrap();
        let expected = disc::patch_compliance(&sheet, RADIUS, radius).unwrap()
            + disc::patch_shear_compliance(&sheet, RADIUS, radius).unwrap();
        let got = plate.compliance(&patch);
        assert_relative_eq!(got, expected, max_relative = 0.01);
    }
    let mut thin = Plate::new(&grid, &ALUMINIUM, clamped(&grid, 0.003), Theory::Thin).unwrap();
    for r in [0.0, 0.03, 0.06] {
        let patch = thin.patch([r, 0.0], 0.0005).unwrap();
        let expected = disc::compliance(&sheet(0.003), RADIUS, r).unwrap();
        let got = thin.compliance(&patch);
        assert_relative_eq!(got, expected, max_relative = 0.02);
    }
    let tones = thin.tones::<10>(6);
    let expected = disc::frequencies(&sheet(0.003), RADIUS, 6).unwrap();
    for (tone, expected) in tones.iter().zip(&expected) {
        assert_relative_eq!(tone.frequency, *expected, max_relative = 0.015);
    }
    assert_eq!(tones.len(), 6);
}

#[test]
fn a_thick_boss_comes_near_a_rigid_one() {
    let grid = Grid::new(rings(30, RADIUS)).unwrap();
    let mut layout = clamped(&grid, 0.003);
    let boss = 0.012;
    for index in 0..grid.mesh().triangles.len() {
        if radius_of(&grid.middle(index)) < boss {
            layout.thickness[index] = 0.03;
        }
    }
    let mut plate = Plate::new(&grid, &ALUMINIUM, layout, Theory::ShearFlexible).unwrap();
    let ring = Annulus {
        inner: boss,
        outer: RADIUS,
        inner_edge: InnerEdge::RigidFloating,
    };
    let expected = annulus::boss_compliance(&sheet(0.003), &ring).unwrap();
    let patch = plate.patch([0.0, 0.0], 0.01).unwrap();
    assert_relative_eq!(plate.compliance(&patch), expected, max_relative = 0.03);
}

#[test]
fn a_narrow_patch_and_the_selected_inverse_agree_on_a_node() {
    let grid = Grid::new(rings(12, RADIUS)).unwrap();
    let mut plate = Plate::new(
        &grid,
        &ALUMINIUM,
        clamped(&grid, 0.004),
        Theory::ShearFlexible,
    )
    .unwrap();
    let all = plate.nodal_compliance();
    for node in [0, 5, 40, 200] {
        let patch = plate.patch(grid.mesh().nodes[node], 1e-9).unwrap();
        assert_relative_eq!(plate.compliance(&patch), all[node], max_relative = 1e-5);
    }
}

#[test]
fn work_is_mutual() {
    let grid = Grid::new(rings(10, RADIUS)).unwrap();
    let mut plate = Plate::new(
        &grid,
        &ALUMINIUM,
        clamped(&grid, 0.004),
        Theory::ShearFlexible,
    )
    .unwrap();
    let (p, q) = (
        plate.patch([0.02, 0.01], 0.004).unwrap(),
        plate.patch([-0.03, 0.04], 0.003).unwrap(),
    );
    let (one, other) = (plate.between(&p, &q), plate.between(&q, &p));
    assert_relative_eq!(one, other, max_relative = 1e-10);
    assert!(one > 0.0);
    let own = plate.between(&p, &p);
    assert_relative_eq!(own, plate.compliance(&p), max_relative = 1e-10);
}

#[test]
fn more_material_is_never_softer_and_slots_never_stiffer() {
    let grid = Grid::new(rings(14, RADIUS)).unwrap();
    let base = clamped(&grid, 0.004);
    let ask = |layout: Layout| {
        let mut plate = Plate::new(&grid, &ALUMINIUM, layout, Theory::ShearFlexible).unwrap();
        let places = [[0.0, 0.0], [0.03, 0.01], [-0.05, 0.02]];
        places.map(|at| {
            let patch = plate.patch(at, 0.003).unwrap();
            plate.compliance(&patch)
        })
    };
    let plain = ask(base.clone());
    for index in (0..grid.mesh().triangles.len()).step_by(37) {
        let mut thicker = base.clone();
        thicker.thickness[index] *= 2.0;
        assert!(
            ask(thicker)
                .iter()
                .zip(plain)
                .all(|(a, b)| *a <= b * (1.0 + 1e-9))
        );
        let mut open = base.clone();
        open.thickness[index] = 0.0;
        let places_stay = index > 20;
        if places_stay {
            assert!(
                ask(open)
                    .iter()
                    .zip(plain)
                    .skip(1)
                    .all(|(a, b)| *a >= b * (1.0 - 1e-2))
            );
        }
        let mut bedded = base.clone();
        bedded.bed[index] = 1e10;
        assert!(
            ask(bedded)
                .iter()
                .zip(plain)
                .all(|(a, b)| *a <= b * (1.0 + 1e-9))
        );
    }
}

#[test]
fn thin_plates_scale_with_the_cube_of_thickness() {
    let grid = Grid::new(rings(14, RADIUS)).unwrap();
    let of = |t: f64, theory| {
        let mut plate = Plate::new(&grid, &ALUMINIUM, clamped(&grid, t), theory).unwrap();
        let patch = plate.patch([0.02, 0.0], 0.003).unwrap();
        plate.compliance(&patch)
    };
    let cube = |theory, t: f64| of(t, theory) / of(2.0 * t, theory);
    assert_relative_eq!(cube(Theory::Thin, 0.002), 8.0, max_relative = 1e-6);
    assert_relative_eq!(cube(Theory::ShearFlexible, 2e-5), 8.0, max_relative = 1e-4);
    assert!(cube(Theory::ShearFlexible, 0.006) < 7.8);
}

#[test]
fn a_symmetric_part_has_a_symmetric_map() {
    let grid = Grid::new(rings(12, RADIUS)).unwrap();
    let mut plate = Plate::new(
        &grid,
        &ALUMINIUM,
        clamped(&grid, 0.004),
        Theory::ShearFlexible,
    )
    .unwrap();
    let mut at = |angle: f64| {
        let place = [0.04 * libm::cos(angle), 0.04 * libm::sin(angle)];
        let patch = plate.patch(place, 0.003).unwrap();
        plate.compliance(&patch)
    };
    let first = at(0.2);
    for k in 1..6 {
        assert_relative_eq!(
            at(0.2 + f64::from(k) * PI / 3.0),
            first,
            max_relative = 2e-3
        );
    }
}

#[test]
fn what_cannot_be_answered_says_why() {
    let grid = Grid::new(rings(6, RADIUS)).unwrap();
    let ask =
        |layout: Layout| Plate::new(&grid, &ALUMINIUM, layout, Theory::ShearFlexible).map(|_| ());
    assert_eq!(ask(even(&grid, 0.004)), Err(FemError::Unheld));
    // Held in one point it still turns.
    let mut pinned = even(&grid, 0.004);
    pinned.held[7] = Held::Supported;
    assert_eq!(ask(pinned), Err(FemError::Unheld));
    let mut ring = clamped(&grid, 0.004);
    for index in 0..grid.mesh().triangles.len() {
        let r = radius_of(&grid.middle(index));
        if r > 0.03 && r < 0.06 {
            ring.thickness[index] = 0.0;
        }
    }
    assert_eq!(ask(ring), Err(FemError::Pieces { count: 2 }));
    assert_eq!(ask(even(&grid, 0.0)), Err(FemError::Empty));
    assert_eq!(ask(Layout::default()), Err(FemError::Mismatch));
    let mut bad = clamped(&grid, 0.004);
    bad.thickness[3] = f64::NAN;
    assert!(matches!(ask(bad), Err(FemError::Value { value }) if value.is_nan()));
}
