//! Moves free nodes so that the triangles around them come nearer to equilateral ones.

use super::planar::{between, shape};
use super::{Mesh, Point};

/// Times that all nodes are looked at.
const SWEEPS: usize = 4;
/// Shares of the way to the neighbours' middle that are tried.
const TRIED: [f64; 2] = [1.0, 0.4];

/// Moves each node from `fixed` on towards the middle of its neighbours where the worst triangle around it gains.
pub(crate) fn smooth(nodes: &mut [Point], fixed: usize, mesh: &Mesh) {
    let mut around: Vec<Vec<u32>> = vec![Vec::new(); nodes.len()];
    for (t, corners) in (0_u32..).zip(&mesh.triangles) {
        for &i in corners {
            if i as usize >= fixed {
                around[i as usize].push(t);
            }
        }
    }
    for _ in 0..SWEEPS {
        for (i, around) in around.iter().enumerate().skip(fixed) {
            if !around.is_empty() {
                improve(nodes, i, around, mesh);
            }
        }
    }
}

fn improve(nodes: &mut [Point], i: usize, around: &[u32], mesh: &Mesh) {
    let old = nodes[i];
    let worst = |nodes: &[Point]| {
        let shapes = around.iter().map(|&t| {
            let [a, b, c] = mesh.triangles[t as usize].map(|i| nodes[i as usize]);
            shape(a, b, c)
        });
        shapes.fold(f64::INFINITY, f64::min)
    };
    let (mut sum, mut n) = ([0.0; 2], 0.0);
    for &t in around {
        for &j in &mesh.triangles[t as usize] {
            if j as usize != i {
                sum = [sum[0] + nodes[j as usize][0], sum[1] + nodes[j as usize][1]];
                n += 1.0;
            }
        }
    }
    let middle = [sum[0] / n, sum[1] / n];
    let before = worst(nodes);
    for share in TRIED {
        nodes[i] = between(old, middle, share);
        if worst(nodes) > before {
            return;
        }
    }
    nodes[i] = old;
}
