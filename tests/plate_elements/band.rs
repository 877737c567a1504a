//! Symmetric equations in an envelope: short, plain, and the same for every element that is compared.

use std::collections::VecDeque;

/// Places of the nodes of a graph, numbered outwards from one end of it and turned round (reverse Cuthill–`McKee`).
pub(crate) fn ordering(neighbours: &[Vec<usize>]) -> Vec<usize> {
    let count = neighbours.len();
    let outwards = |start: usize| {
        let mut order = vec![start];
        let mut met = vec![false; count];
        met[start] = true;
        let mut queue = VecDeque::from([start]);
        while let Some(node) = queue.pop_front() {
            let mut next: Vec<usize> = neighbours[node]
                .iter()
                .copied()
                .filter(|n| !met[*n])
                .collect();
            next.sort_by_key(|n| (neighbours[*n].len(), *n));
            for node in next {
                met[node] = true;
                order.push(node);
                queue.push_back(node);
            }
        }
        order
    };
    // The last node met is at an end of the part.
    let end = outwards(0)[count - 1];
    let order = outwards(end);
    assert_eq!(order.len(), count, "the part is in pieces");
    let mut place = vec![0; count];
    for (at, node) in order.into_iter().rev().enumerate() {
        place[node] = at;
    }
    place
}

/// Neighbours of each node of these elements.
pub(crate) fn graph<const N: usize>(count: usize, elements: &[[usize; N]]) -> Vec<Vec<usize>> {
    let mut neighbours = vec![Vec::new(); count];
    for element in elements {
        for a in element {
            neighbours[*a].extend(element.iter().filter(|b| *b != a));
        }
    }
    for of in &mut neighbours {
        of.sort_unstable();
        of.dedup();
    }
    neighbours
}

/// First column of each row of the equations, three to a node.
pub(crate) fn firsts(neighbours: &[Vec<usize>], place: &[usize]) -> Vec<usize> {
    let mut first = vec![0; 3 * place.len()];
    for (node, of) in neighbours.iter().enumerate() {
        let least = of.iter().map(|n| place[*n]).chain([place[node]]).min();
        for k in 0..3 {
            first[3 * place[node] + k] = 3 * least.unwrap();
        }
    }
    first
}

/// Multiplications that the factor takes.
#[allow(clippy::cast_precision_loss, reason = "a count")]
pub(crate) fn multiplications(first: &[usize]) -> f64 {
    let wide = first
        .iter()
        .enumerate()
        .map(|(row, first)| (row - first) as f64);
    wide.map(|w| 0.5 * w * w).sum()
}

/// A symmetric matrix: each row from its first column to the diagonal; then its factor.
pub(crate) struct Envelope {
    first: Vec<usize>,
    rows: Vec<Vec<f64>>,
}

impl Envelope {
    pub(crate) fn new(first: Vec<usize>) -> Envelope {
        let rows = first.iter().enumerate();
        let rows = rows
            .map(|(row, first)| vec![0.0; row - first + 1])
            .collect();
        Envelope { first, rows }
    }

    /// Adds an entry of the lower half; the upper one is left out.
    pub(crate) fn add(&mut self, row: usize, column: usize, value: f64) {
        if column <= row {
            self.rows[row][column - self.first[row]] += value;
        }
    }

    /// L of L L^T in place.
    pub(crate) fn factor(mut self) -> Envelope {
        for i in 0..self.rows.len() {
            let mut row = core::mem::take(&mut self.rows[i]);
            let from = self.first[i];
            for j in from..i {
                let common = from.max(self.first[j]);
                let other = &self.rows[j];
                let ours = &row[common - from..j - from];
                let theirs = &other[common - self.first[j]..j - self.first[j]];
                let sum: f64 = ours.iter().zip(theirs).map(|(a, b)| a * b).sum();
                row[j - from] = (row[j - from] - sum) / other[j - self.first[j]];
            }
            let last = row.len() - 1;
            let squares: f64 = row[..last].iter().map(|v| v * v).sum();
            assert!(row[last] > squares, "nothing holds the plate");
            row[last] = (row[last] - squares).sqrt();
            self.rows[i] = row;
        }
        self
    }

    /// Solves with the factor, in place.
    pub(crate) fn solve(&self, x: &mut [f64]) {
        for i in 0..x.len() {
            let (row, from) = (&self.rows[i], self.first[i]);
            let sum: f64 = row.iter().zip(&x[from..i]).map(|(a, b)| a * b).sum();
            x[i] = (x[i] - sum) / row[i - from];
        }
        for i in (0..x.len()).rev() {
            let (row, from) = (&self.rows[i], self.first[i]);
            x[i] /= row[i - from];
            let value = x[i];
            for (x, a) in x[from..i].iter_mut().zip(row) {
                *x -= a * value;
            }
        }
    }
}
