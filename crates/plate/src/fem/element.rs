//! One triangle of the plate: three nodes, each with a deflection and two slopes.
//!
//! The element is DKMT (Katili, Int. J. Numer. Meth. Engng 36 (1993) 1859; equations derived anew here, from memory): slopes are
//! linear with one quadratic bubble along each side, tied to the nodes by the mean shear of the side. It neither locks on thin
//! plates, where it becomes the discrete Kirchhoff triangle, nor needs more unknowns than that one.

use super::Theory;

/// Unknowns of an element: w, `beta_x`, `beta_y` of each node; shear strain is the slope of w plus beta.
pub(super) const UNKNOWNS: usize = 9;
/// What an element bends by: three curvatures of the linear slopes, three bubbles.
const PARTS: usize = 6;
/// Share of the thickness that carries shear.
const SHEAR_SHARE: f64 = 5.0 / 6.0;
/// Interior points that integrate quadratic functions exactly; each weighs a third.
const POINTS: [[f64; 3]; 3] = [
    [2.0 / 3.0, 1.0 / 6.0, 1.0 / 6.0],
    [1.0 / 6.0, 2.0 / 3.0, 1.0 / 6.0],
    [1.0 / 6.0, 1.0 / 6.0, 2.0 / 3.0],
];
/// Nodes of the three sides.
const SIDES: [(usize, usize); 3] = [(0, 1), (1, 2), (2, 0)];

type Row = [f64; UNKNOWNS];

/// The stiffness of an element, symmetric.
pub(super) type Stiffness = [Row; UNKNOWNS];

/// What a side of the triangle contributes.
struct Side {
    /// Direction cosines.
    along: [f64; 2],
    /// The bubble of the slope along the side, from the nodes.
    bubble: Row,
    /// The shear strain along the side over the bubble.
    shear: f64,
}

/// A triangle, ready to be asked.
pub(super) struct Element {
    pub(super) area: f64,
    /// Gradients of the area coordinates, 1/m.
    grad: [[f64; 2]; 3],
    sides: [Side; 3],
}

impl Element {
    /// The element between three points (m), counter-clockwise, of thickness `t` (m).
    pub(super) fn new(at: [[f64; 2]; 3], t: f64, nu: f64, theory: Theory) -> Element {
        let [a, b, c] = at;
        let area = 0.5 * ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]));
        let grad = [(b, c), (c, a), (a, b)]
            .map(|(p, q)| [(p[1] - q[1]) / (2.0 * area), (q[0] - p[0]) / (2.0 * area)]);
        let side = |k: usize| {
            let (i, j) = SIDES[k];
            let (dx, dy) = (at[j][0] - at[i][0], at[j][1] - at[i][1]);
            let length = (dx * dx + dy * dy).sqrt();
            let along = [dx / length, dy / length];
            // How much shear gives beside bending, over the length of the side.
            let phi = match theory {
                Theory::ShearFlexible => {
                    2.0 / (SHEAR_SHARE * (1.0 - nu)) * (t / length) * (t / length)
                }
                Theory::Thin => 0.0,
            };
            let factor = -1.5 / (length * (1.0 + phi));
            let mut bubble = [0.0; UNKNOWNS];
            for (node, sign) in [(i, -1.0), (j, 1.0)] {
                bubble[3 * node] = sign * factor;
                bubble[3 * node + 1] = 0.5 * length * along[0] * factor;
                bubble[3 * node + 2] = 0.5 * length * along[1] * factor;
            }
            Side {
                along,
                bubble,
                shear: -2.0 / 3.0 * phi,
            }
        };
        Element {
            area,
            grad,
            sides: [side(0), side(1), side(2)],
        }
    }

    /// What the linear part of the slopes bends (xx, yy, 2 xy), from the unknowns; then the three bubbles.
    fn parts(&self) -> [Row; PARTS] {
        let mut rows = [[0.0; UNKNOWNS]; PARTS];
        for (node, g) in self.grad.iter().enumerate() {
            rows[0][3 * node + 1] = g[0];
            rows[1][3 * node + 2] = g[1];
            rows[2][3 * node + 1] = g[1];
            rows[2][3 * node + 2] = g[0];
        }
        for (row, side) in rows[3..].iter_mut().zip(&self.sides) {
            *row = side.bubble;
        }
        rows
    }

    /// Curvatures (xx, yy, 2 xy) at a point of each bubble.
    fn bent(&self, at: &[f64; 3]) -> [[f64; 3]; 3] {
        core::array::from_fn(|k| {
            let (i, j) = SIDES[k];
            let slope = [0, 1].map(|d| 4.0 * (at[i] * self.grad[j][d] + at[j] * self.grad[i][d]));
            let [c, s] = self.sides[k].along;
            [slope[0] * c, slope[1] * s, slope[1] * c + slope[0] * s]
        })
    }

    /// Shear strains (xz, yz) at a point of each bubble: those of the corners, each from its two sides.
    fn sheared(&self, at: &[f64; 3]) -> [[f64; 2]; 3] {
        let mut out = [[0.0; 2]; 3];
        for (node, share) in at.iter().enumerate() {
            let (k, l) = (node, (node + 2) % 3);
            let ([pc, ps], [qc, qs]) = (self.sides[k].along, self.sides[l].along);
            let share = share / (pc * qs - qc * ps);
            let (p, q) = (share * self.sides[k].shear, share * self.sides[l].shear);
            out[k][0] += qs * p;
            out[k][1] -= qc * p;
            out[l][0] -= ps * q;
            out[l][1] += pc * q;
        }
        out
    }

    /// Stiffness for a bending rigidity (N m) of a material of Poisson's ratio `nu` and a thickness `t` (m).
    pub(super) fn stiffness(&self, rigidity: f64, nu: f64, t: f64) -> Stiffness {
        // In terms of the linear part and the bubbles first: few, and most of them constant over the element.
        let mut h = [[0.0; PARTS]; PARTS];
        let units = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
        // kappa G t, from the same rigidity.
        let shear_rigidity = SHEAR_SHARE * 6.0 * rigidity * (1.0 - nu) / (t * t);
        let weight = self.area / 3.0;
        for at in &POINTS {
            let (bent, sheared) = (self.bent(at), self.sheared(at));
            for j in 0..3 {
                let moment = moments(bent[j], rigidity * weight, nu);
                for (i, unit) in units.iter().enumerate() {
                    h[i][3 + j] += dot(unit, &moment);
                }
                for i in 0..=j {
                    let shear = sheared[i][0] * sheared[j][0] + sheared[i][1] * sheared[j][1];
                    h[3 + i][3 + j] += dot(&bent[i], &moment) + shear_rigidity * weight * shear;
                }
            }
        }
        for (j, unit) in units.iter().enumerate() {
            let moment = moments(*unit, rigidity * self.area, nu);
            for i in 0..=j {
                h[i][j] = moment[i];
            }
        }
        self.spread(&symmetric(h))
    }

    /// A stiffness of the parts as one of the unknowns.
    fn spread(&self, h: &[[f64; PARTS]; PARTS]) -> Stiffness {
        let parts = self.parts();
        let mut k = [[0.0; UNKNOWNS]; UNKNOWNS];
        for (of, row) in parts.iter().zip(h) {
            let mut force = [0.0; UNKNOWNS];
            for (part, h) in parts.iter().zip(row) {
                for (force, p) in force.iter_mut().zip(part) {
                    *force += h * p;
                }
            }
            for (k, of) in k.iter_mut().zip(of) {
                for (k, force) in k.iter_mut().zip(&force) {
                    *k += of * force;
                }
            }
        }
        k
    }

    /// Bending moments (x, y, xy; N m/m) in the middle of the element.
    pub(super) fn moment(&self, unknowns: &Row, rigidity: f64, nu: f64) -> [f64; 3] {
        let third = 1.0 / 3.0;
        let of = self.parts().map(|row| {
            let products = row.iter().zip(unknowns).map(|(b, u)| b * u);
            products.sum::<f64>()
        });
        let mut curvature = [of[0], of[1], of[2]];
        for (bent, bubble) in self.bent(&[third; 3]).iter().zip(&of[3..]) {
            for (sum, bent) in curvature.iter_mut().zip(bent) {
                *sum += bent * bubble;
            }
        }
        moments(curvature, rigidity, nu)
    }
}

/// The matrix whose upper half is given.
fn symmetric<const N: usize>(upper: [[f64; N]; N]) -> [[f64; N]; N] {
    core::array::from_fn(|i| core::array::from_fn(|j| upper[i.min(j)][i.max(j)]))
}

fn dot(a: &[f64; 3], b: &[f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// Moments of curvatures.
fn moments([x, y, xy]: [f64; 3], rigidity: f64, nu: f64) -> [f64; 3] {
    [
        rigidity * (x + nu * y),
        rigidity * (y + nu * x),
        rigidity * 0.5 * (1.0 - nu) * xy,
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    const AT: [[f64; 2]; 3] = [[0.01, 0.0], [0.05, 0.012], [0.018, 0.041]];
    const NU: f64 = 0.33;

    fn times(k: &Stiffness, u: &Row) -> Row {
        k.map(|row| row.iter().zip(u).map(|(a, b)| a * b).sum())
    }

    fn field(w: impl Fn(f64, f64) -> [f64; 3]) -> Row {
        let mut u = [0.0; UNKNOWNS];
        for (node, [x, y]) in AT.iter().enumerate() {
            u[3 * node..3 * node + 3].copy_from_slice(&w(*x, *y));
        }
        u
    }

    fn energy(k: &Stiffness, u: &Row) -> f64 {
        times(k, u).iter().zip(u).map(|(f, u)| 0.5 * f * u).sum()
    }

    #[test]
    fn moving_and_tilting_cost_nothing() {
        for t in [0.0005, 0.004, 0.05] {
            let k = Element::new(AT, t, NU, Theory::ShearFlexible).stiffness(10.0, NU, t);
            let rigid = field(|x, y| [0.2 + 3.0 * x - 2.0 * y, -3.0, 2.0]);
            let scale = k[0][0].abs();
            assert!(times(&k, &rigid).iter().all(|f| f.abs() < 1e-10 * scale));
        }
    }

    #[test]
    fn even_bending_has_its_exact_energy_at_any_thickness() {
        let (a, b, c) = (0.7, -0.3, 0.4);
        // w = -(a x2 + b y2 + 2 c x y)/2 bends evenly, without shear.
        let u = field(|x, y| {
            [
                -0.5 * (a * x * x + b * y * y + 2.0 * c * x * y),
                a * x + c * y,
                b * y + c * x,
            ]
        });
        for t in [0.0005, 0.004, 0.05] {
            let element = Element::new(AT, t, NU, Theory::ShearFlexible);
            let k = element.stiffness(10.0, NU, t);
            let density =
                0.5 * 10.0 * (a * a + b * b + 2.0 * NU * a * b + 0.5 * (1.0 - NU) * 4.0 * c * c);
            assert_relative_eq!(energy(&k, &u), density * element.area, max_relative = 1e-10);
            let moment = element.moment(&u, 10.0, NU);
            assert_relative_eq!(moment[0], 10.0 * (a + NU * b), max_relative = 1e-10);
        }
    }

    #[test]
    fn thin_plates_do_not_lock() {
        // In the thin limit the stiffness is that of the discrete Kirchhoff triangle.
        let thin = Element::new(AT, 1e-6, NU, Theory::ShearFlexible).stiffness(10.0, NU, 1e-6);
        let kirchhoff = Element::new(AT, 1e-6, NU, Theory::Thin).stiffness(10.0, NU, 1e-6);
        for (a, b) in thin.iter().flatten().zip(kirchhoff.iter().flatten()) {
            assert_relative_eq!(a, b, max_relative = 1e-6, epsilon = 1e-6);
        }
    }
}
