//! What a factor of a mesh's stiffness looks like: made once for a mesh, used for every state of the part.
//!
//! A node with its three unknowns is one block. Rows are ordered by approximate minimum degree (Amestoy, Davis and Duff 1996).

use amd::{Control, order};

/// No parent: a root of the elimination tree.
pub(super) const NONE: u32 = u32::MAX;

/// Structure of the lower triangular factor, by columns of blocks.
#[derive(Debug, Clone)]
pub(super) struct Pattern {
    /// For each node of the mesh its row.
    pub(super) row_of: Vec<u32>,
    /// For each row the first row below that depends on it.
    pub(super) parent: Vec<u32>,
    /// Where each column begins in `rows`.
    pub(super) column: Vec<usize>,
    /// Rows of the blocks below the diagonal, ascending in each column.
    pub(super) rows: Vec<u32>,
    /// Where each row begins in `columns`.
    pub(super) row: Vec<usize>,
    /// Columns of the blocks left of the diagonal, ascending in each row.
    pub(super) columns: Vec<u32>,
}

fn index(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(NONE)
}

/// Neighbours of every node, ascending, without itself.
fn neighbours(nodes: usize, triangles: &[[u32; 3]]) -> Vec<Vec<u32>> {
    let mut near = vec![Vec::new(); nodes];
    for [a, b, c] in triangles {
        for (p, q) in [(a, b), (b, c), (c, a)] {
            near[*p as usize].push(*q);
            near[*q as usize].push(*p);
        }
    }
    for list in &mut near {
        list.sort_unstable();
        list.dedup();
    }
    near
}

impl Pattern {
    /// The pattern of a mesh; `None` when the ordering fails, which no mesh brings about.
    pub(super) fn new(nodes: usize, triangles: &[[u32; 3]]) -> Option<Pattern> {
        let near = neighbours(nodes, triangles);
        let mut starts = vec![0_i32];
        let mut list = Vec::new();
        for (i, near) in near.iter().enumerate() {
            list.extend(near.iter().map(|&j| i32::try_from(j).unwrap_or(0)));
            list.push(i32::try_from(i).ok()?);
            starts.push(i32::try_from(list.len()).ok()?);
        }
        let (node_of, row_of, _) = order(
            i32::try_from(nodes).ok()?,
            &starts,
            &list,
            &Control::default(),
        )
        .ok()?;
        let node_of: Vec<usize> = node_of
            .iter()
            .filter_map(|&p| usize::try_from(p).ok())
            .collect();
        let row_of: Vec<u32> = row_of
            .iter()
            .filter_map(|&p| u32::try_from(p).ok())
            .collect();
        (node_of.len() == nodes && row_of.len() == nodes)
            .then(|| Pattern::ordered(&near, &node_of, row_of))
    }

    /// Column by column: what stands below in the matrix, and what the children leave.
    fn ordered(near: &[Vec<u32>], node_of: &[usize], row_of: Vec<u32>) -> Pattern {
        let n = node_of.len();
        let mut parent = vec![NONE; n];
        let mut children: Vec<Vec<u32>> = vec![Vec::new(); n];
        let mut seen = vec![NONE; n];
        let mut column = vec![0];
        let mut rows: Vec<u32> = Vec::new();
        for j in 0..n {
            let from = rows.len();
            let mark = index(j);
            let mut take = |i: u32, rows: &mut Vec<u32>| {
                if i > mark && seen[i as usize] != mark {
                    seen[i as usize] = mark;
                    rows.push(i);
                }
            };
            for &other in &near[node_of[j]] {
                take(row_of[other as usize], &mut rows);
            }
            for &child in &children[j] {
                let child = child as usize;
                for at in column[child]..column[child + 1] {
                    let i = rows[at];
                    take(i, &mut rows);
                }
            }
            rows[from..].sort_unstable();
            if let Some(&first) = rows.get(from) {
                parent[j] = first;
                children[first as usize].push(mark);
            }
            column.push(rows.len());
        }
        let mut row = vec![0; n + 1];
        for &i in &rows {
            row[i as usize + 1] += 1;
        }
        for i in 0..n {
            row[i + 1] += row[i];
        }
        let mut next = row.clone();
        let mut columns = vec![0; rows.len()];
        for j in 0..n {
            for &i in &rows[column[j]..column[j + 1]] {
                columns[next[i as usize]] = index(j);
                next[i as usize] += 1;
            }
        }
        Pattern {
            row_of,
            parent,
            column,
            rows,
            row,
            columns,
        }
    }

    /// Number of nodes.
    pub(super) fn len(&self) -> usize {
        self.parent.len()
    }
}
