//! Where the zeros of a real polynomial lie: none in the unit disk, or some.

/// How far a polynomial g0 + g1 w + g2 w^2 ... is from having a zero in the unit disk: positive when it has none.
///
/// Schur and Cohn's recursion (any handbook of digital filters or of control, from memory): each step takes off the highest
/// power, and its reflection coefficient must stay below 1. Told is the least of 1 - |coefficient|. The polynomial is
/// used up.
pub(super) fn clearance(g: &mut [f64]) -> f64 {
    let mut least = 1.0_f64;
    let mut degree = g.len().saturating_sub(1);
    while degree > 0 {
        let k = g[degree] / g[0];
        let room = 1.0 - k.abs();
        if room.is_nan() || room <= 0.0 {
            return if room.is_nan() { -1.0 } else { room };
        }
        least = least.min(room);
        if k != 0.0 {
            let (mut low, mut high) = (0, degree);
            while low < high {
                let (a, b) = (g[low], g[high]);
                g[low] = a - k * b;
                g[high] = b - k * a;
                low += 1;
                high -= 1;
            }
            if low == high {
                g[low] *= 1.0 - k;
            }
        }
        degree -= 1;
    }
    least
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The real polynomial with these zeros (pairs are given once, with their imaginary part).
    fn with_zeros(zeros: &[(f64, f64)]) -> Vec<f64> {
        let mut g = vec![1.0];
        for &(re, im) in zeros {
            let factor = if im == 0.0 {
                vec![-re, 1.0]
            } else {
                vec![re * re + im * im, -2.0 * re, 1.0]
            };
            let mut product = vec![0.0; g.len() + factor.len() - 1];
            for (i, a) in g.iter().enumerate() {
                for (j, b) in factor.iter().enumerate() {
                    product[i + j] += a * b;
                }
            }
            g = product;
        }
        g
    }

    #[test]
    #[allow(clippy::float_cmp, reason = "0 marks a real zero")]
    fn zeros_just_inside_and_just_outside_are_told_apart() {
        let others = [(1.7, 0.4), (-2.2, 0.0), (0.3, 1.9), (1.01, 0.0)];
        for pair in [(0.6, 0.8), (-0.28, 0.96), (-1.0, 0.0), (0.0, 1.0)] {
            for (by, inside) in [(1.0 - 1e-9, true), (1.0 + 1e-9, false)] {
                let mut zeros = others.to_vec();
                zeros.push((pair.0 * by, pair.1 * by));
                let found = clearance(&mut with_zeros(&zeros));
                assert_eq!(found <= 0.0, inside, "{pair:?} {by}: {found}");
            }
        }
    }
}
