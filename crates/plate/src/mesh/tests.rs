//! Meshes are what they must be, on typical plans and on odd ones.

mod odd;
mod plans;
mod sound;

use super::{Fineness, Loop, LoopKind, Mesh, MeshError, mesh};
use plans::{COARSE, FINE, bracket, circle, disc, failed, made, rectangle, slot, typical};
use sound::{area, check, inside, least_angle, straddles};
use std::f64::consts::PI;

/// Triangles of a typical plan whose loops do not cross at small angles have no smaller angle, degrees.
const LEAST_ANGLE: f64 = 18.0;
/// Smallest angle where recesses cross at a small angle: half of what that leaves between a chord and a curve.
const LEAST_AT_CROSSINGS: f64 = 6.0;

#[test]
#[allow(clippy::print_stdout, reason = "the figures are wanted at a look")]
fn typical_plans_are_well_shaped_and_small() {
    for (name, loops) in typical() {
        for (which, fineness) in [("coarse", COARSE), ("fine", FINE)] {
            let mesh = made(&loops, &fineness);
            check(&mesh, &loops);
            let angles: Vec<f64> = mesh
                .triangles
                .iter()
                .map(|&t| least_angle(&mesh, t))
                .collect();
            let least = angles.iter().copied().fold(90.0, f64::min);
            let small = angles.iter().filter(|&&angle| angle < 20.0).count();
            let (n, m) = (mesh.nodes.len(), mesh.triangles.len());
            println!(
                "{name:28} {which:6} {n:6} nodes, least angle {least:4.1}, {small}/{m} under 20"
            );
            let crosses = name.contains("cross");
            let bound = if crosses {
                LEAST_AT_CROSSINGS
            } else {
                LEAST_ANGLE
            };
            assert!(least > bound, "{name} {which}: {least}");
            assert!(small * 200 <= m, "{name} {which}: {small} of {m}");
        }
    }
    let nodes = |loops: &[Loop], fineness| made(loops, fineness).nodes.len();
    assert!((700..1400).contains(&nodes(&disc(0.07), &COARSE)));
    assert!((2000..4500).contains(&nodes(&disc(0.07), &FINE)));
}

#[test]
fn areas_are_kept() {
    let mesh = made(&[rectangle(LoopKind::Outer, [0.06, 0.03], 0.0)], &COARSE);
    approx(area(&mesh, |_| true), 0.06 * 0.03, 1e-12);
    for fineness in [COARSE, FINE] {
        let mesh = made(&disc(0.07), &fineness);
        let whole = PI * (0.08_f64.powi(2) - 0.005_f64.powi(2));
        // Chords up to a third longer than asked lie two thirds of their sagitta off the circle, on average.
        let edge = fineness.most * 4.0 / 3.0;
        let lost = 2.0 * PI * 0.08 * edge * edge / (8.0 * 0.08) * 2.0 / 3.0;
        let found = area(&mesh, |_| true);
        assert!(
            found < whole * 1.0001 && found > whole - lost,
            "{found} {whole} {lost}"
        );
        let within = |r: f64| area(&mesh, |p| p[0].hypot_of(p[1]) < r);
        approx(
            within(0.07),
            PI * (0.07_f64.powi(2) - 0.005_f64.powi(2)),
            0.01,
        );
    }
}

trait Hypot {
    fn hypot_of(self, other: f64) -> f64;
}

impl Hypot for f64 {
    fn hypot_of(self, other: f64) -> f64 {
        libm::hypot(self, other)
    }
}

fn approx(found: f64, expected: f64, share: f64) {
    let off = (found - expected).abs();
    assert!(off <= share * expected, "{found} instead of {expected}");
}

#[test]
fn no_triangle_lies_across_a_line() {
    // Lines may lie off by a chord's sagitta, and by what lines move that nearly coincide.
    let sagitta = |edge: f64, r: f64| edge * edge / (8.0 * r);
    for (name, loops) in typical() {
        for fineness in [COARSE, FINE] {
            let mesh = made(&loops, &fineness);
            let off = 0.15 * fineness.most + sagitta(1.4 * fineness.most, 0.067);
            let across = straddles(&mesh, &loops, off);
            assert_eq!(across, 0, "{name}");
        }
    }
}

#[test]
fn ribs_and_slots_have_their_elements() {
    // Between the walls of the first group's rib, y 2 to 6 mm, away from the slots' ends.
    let rib = |p: [f64; 2]| p[0] > 0.034 && p[0] < 0.056 && p[1] > 0.0019 && p[1] < 0.0061;
    let wall = |p: [f64; 2]| (p[1] - 0.002).abs() < 1e-5 || (p[1] - 0.006).abs() < 1e-5;
    for (fineness, rows) in [(COARSE, 1.0), (FINE, 2.0)] {
        let mesh = made(&disc(0.07), &fineness);
        for triangle in &mesh.triangles {
            let corners = triangle.map(|i| mesh.nodes[i as usize]);
            if corners.iter().all(|&p| rib(p) && wall(p)) {
                let y = corners.map(|p| p[1]);
                let apart = y.iter().any(|a| (a - y[0]).abs() > 1e-3);
                assert!(!apart, "one element across a rib: {corners:?}");
            }
        }
        let on = mesh.nodes.iter().filter(|&&p| rib(p) && wall(p)).count();
        let between = mesh.nodes.iter().filter(|&&p| rib(p) && !wall(p)).count();
        let (on, between) = (0.5 * on as f64, between as f64);
        assert!(
            between > 0.8 * rows * on && between < 1.5 * rows * on,
            "{between} nodes beside walls of {on}"
        );
    }
}

#[test]
fn nearly_coincident_lines_become_one() {
    let same = made(&disc(0.07), &COARSE);
    let near = made(&disc(0.0695), &COARSE);
    let apart = made(&disc(0.067), &COARSE);
    assert!(near.nodes.len() < same.nodes.len() + 40);
    assert!(apart.nodes.len() > same.nodes.len() + 80);
    let ring = area(&apart, |p| {
        let r = p[0].hypot_of(p[1]);
        r > 0.067 && r < 0.07
    });
    approx(ring, PI * (0.07_f64.powi(2) - 0.067_f64.powi(2)), 0.02);
}

#[test]
fn what_runs_out_over_the_edge_is_cut_there() {
    let mut loops = vec![rectangle(LoopKind::Outer, [0.06, 0.03], 0.0)];
    loops.push(slot([0.0, 0.0], [0.05, 0.0], 0.004));
    loops.push(circle(LoopKind::Hole, [-0.03, 0.015], 0.006));
    let mesh = made(&loops, &COARSE);
    check(&mesh, &loops);
    let hole = 0.25 * PI * 0.006 * 0.006;
    approx(area(&mesh, |_| true), 0.06 * 0.03 - hole, 0.005);
    let open = 0.5 * PI * 0.002 * 0.002 + 0.03 * 0.004;
    approx(area(&mesh, |p| inside(&loops[1], p)), open, 0.02);
}

#[test]
fn too_narrow_is_said() {
    let beside = |width: f64, rib: f64| {
        vec![
            rectangle(LoopKind::Outer, [0.06, 0.03], 0.0),
            slot([-0.01, 0.0], [0.01, 0.0], width),
            slot([-0.01, width + rib], [0.01, width + rib], width),
        ]
    };
    let MeshError::Unresolved { width, edge } = failed(&beside(0.003, 0.0005), &COARSE) else {
        panic!("a thin rib");
    };
    approx(width, 0.0005, 1e-6);
    approx(edge, 0.00025, 1e-6);
    let thin = failed(&beside(0.0003, 0.003), &COARSE);
    assert!(matches!(thin, MeshError::Unresolved { .. }), "{thin:?}");
    made(&beside(0.003, 0.0009), &COARSE);
    // Thin over a short way only, where a round end comes near a boss: that is meshed.
    let tip = [
        rectangle(LoopKind::Outer, [0.06, 0.03], 0.0),
        circle(LoopKind::Line, [0.0; 2], 0.01),
        slot([0.0123, 0.0], [0.025, 0.0], 0.004),
    ];
    check(&made(&tip, &COARSE), &tip);
    // Two slots that touch all along are one opening, without a rib.
    check(&made(&beside(0.003, 0.0), &COARSE), &beside(0.003, 0.0));
}

#[test]
fn wrong_input_is_said() {
    let outer = || rectangle(LoopKind::Outer, [0.06, 0.03], 0.0);
    let loose = |points: Vec<[f64; 2]>, kind| Loop { points, kind };
    assert_eq!(failed(&[], &COARSE), MeshError::NoOutline);
    assert_eq!(failed(&[outer(), outer()], &COARSE), MeshError::NoOutline);
    let two = loose(vec![[0.0; 2], [0.01, 0.0]], LoopKind::Outer);
    assert_eq!(failed(&[two], &COARSE), MeshError::NoOutline);
    let mut odd = outer();
    odd.points[1][0] = f64::NAN;
    assert_eq!(failed(&[odd], &COARSE), MeshError::NotFinite);
    let tie = vec![[0.0, 0.0], [0.01, 0.01], [0.01, 0.0], [0.0, 0.012]];
    let crossed = failed(&[outer(), loose(tie, LoopKind::Line)], &COARSE);
    assert_eq!(crossed, MeshError::SelfCrossing { loop_index: 1 });
    let back = vec![[0.0, 0.0], [0.01, 0.0], [0.005, 0.0], [0.005, 0.01]];
    let folded = failed(&[outer(), loose(back, LoopKind::Line)], &COARSE);
    assert_eq!(folded, MeshError::SelfCrossing { loop_index: 1 });
    let few = Fineness {
        most_nodes: 30,
        ..COARSE
    };
    let large = failed(&disc(0.07), &few);
    assert!(matches!(large, MeshError::TooLarge { nodes } if nodes > 30));
    for fineness in [
        Fineness {
            most: f64::NAN,
            ..COARSE
        },
        Fineness {
            least: 0.1,
            ..COARSE
        },
        Fineness {
            across: 0.5,
            ..COARSE
        },
    ] {
        assert_eq!(failed(&[outer()], &fineness), MeshError::Fineness);
    }
}

#[test]
fn the_same_input_gives_the_same_mesh() {
    for loops in [disc(0.0695), bracket()] {
        let bits = |mesh: &Mesh| -> Vec<[u64; 2]> {
            mesh.nodes.iter().map(|p| p.map(f64::to_bits)).collect()
        };
        let (one, two) = (made(&loops, &FINE), made(&loops, &FINE));
        assert_eq!(bits(&one), bits(&two));
        assert_eq!(one.triangles, two.triangles);
        let turned: Vec<Loop> = loops
            .iter()
            .map(|given| Loop {
                points: given.points.iter().rev().copied().collect(),
                kind: given.kind,
            })
            .collect();
        let other = mesh(&turned, &FINE).unwrap();
        approx(area(&other, |_| true), area(&one, |_| true), 1e-3);
    }
}
