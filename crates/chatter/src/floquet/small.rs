//! Small complex systems of equations.

use crate::math::Complex;

/// Solves a small complex system in place, by elimination with the greatest pivot.
pub(super) fn solve(mut m: Vec<Complex>, b: &mut [Complex]) {
    let size = b.len();
    for i in 0..size {
        let pivot = |r: usize| m[r * size + i].norm2();
        let best = (i..size)
            .max_by(|p, q| pivot(*p).total_cmp(&pivot(*q)))
            .unwrap_or(i);
        for c in 0..size {
            m.swap(i * size + c, best * size + c);
        }
        b.swap(i, best);
        let inverse = m[i * size + i].inverse();
        for r in i + 1..size {
            let factor = m[r * size + i].times(inverse);
            for c in i..size {
                m[r * size + c] = m[r * size + c].minus(factor.times(m[i * size + c]));
            }
            b[r] = b[r].minus(factor.times(b[i]));
        }
    }
    for i in (0..size).rev() {
        let mut sum = b[i];
        for c in i + 1..size {
            sum = sum.minus(m[i * size + c].times(b[c]));
        }
        b[i] = sum.times(m[i * size + i].inverse());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_solution_solves_it_even_where_the_first_pivot_is_nothing() {
        let entries = [
            (0.0, 0.0),
            (1.0, 2.0),
            (0.5, 0.0),
            (2.0, -1.0),
            (0.0, 1.0),
            (1.0, 1.0),
            (0.3, 0.0),
            (-1.0, 0.0),
            (0.0, -2.0),
        ];
        let m: Vec<Complex> = entries
            .iter()
            .map(|(re, im)| Complex::new(*re, *im))
            .collect();
        let right = [
            Complex::new(1.0, 0.0),
            Complex::new(0.0, 1.0),
            Complex::new(2.0, -1.0),
        ];
        let mut x = right.to_vec();
        solve(m.clone(), &mut x);
        for (row, right) in m.chunks_exact(3).zip(right) {
            let sum = row
                .iter()
                .zip(&x)
                .fold(Complex::new(0.0, 0.0), |s, (a, b)| s.plus(a.times(*b)));
            assert!(sum.minus(right).norm2() < 1e-24);
        }
    }
}
