//! Meshes are what they must be on typical plans and on odd ones.

mod plans;

use super::planar::{dot, length, minus, turn};
use super::{Fineness, Loop, LoopKind, Mesh, MeshError, Point};
use plans::{COARSE, FINE, circle, failed, made, typical};
use std::collections::BTreeMap;

/// The least angle of a triangle, degrees.
fn least_angle(corners: [Point; 3]) -> f64 {
    let angle = |i: usize| {
        let (u, v) = (
            minus(corners[(i + 1) % 3], corners[i]),
            minus(corners[(i + 2) % 3], corners[i]),
        );
        libm::acos((dot(u, v) / length(u) / length(v)).clamp(-1.0, 1.0)).to_degrees()
    };
    angle(0).min(angle(1)).min(angle(2))
}

fn corners(mesh: &Mesh, triangle: [u32; 3]) -> [Point; 3] {
    triangle.map(|i| mesh.nodes[i as usize])
}

#[test]
fn report() {
    for (name, loops) in typical() {
        for (which, fineness) in [("coarse", COARSE), ("fine", FINE)] {
            let start = std::time::Instant::now();
            let mesh = made(&loops, &fineness);
            let time = start.elapsed();
            let angles: Vec<f64> = mesh
                .triangles
                .iter()
                .map(|&t| least_angle(corners(&mesh, t)))
                .collect();
            let least = angles.iter().copied().fold(90.0, f64::min);
            let mean = angles.iter().sum::<f64>() / angles.len() as f64;
            let bad = angles.iter().filter(|&&a| a < 20.0).count() as f64 / angles.len() as f64;
            println!(
                "{name:30} {which:6} nodes {:6} triangles {:6} least {least:5.1} mean {mean:5.1} <20: {:5.2}% {time:?}",
                mesh.nodes.len(),
                mesh.triangles.len(),
                100.0 * bad
            );
            if let Ok(dir) = std::env::var("MESH_OUT") {
                let text = format!("{:?}\n{:?}\n", mesh.nodes, mesh.triangles);
                std::fs::write(
                    format!("{dir}/{}_{which}.txt", name.replace([' ', ','], "_")),
                    text,
                )
                .unwrap();
            }
        }
    }
}
