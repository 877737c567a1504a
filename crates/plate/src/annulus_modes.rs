//! Vibration of an annulus that is clamped outside: zeros of its determinant in Bessel functions.

use crate::annulus::InnerEdge;
use crate::bessel::{Value, i_scaled, j, k_scaled, y};
use crate::dense::determinant4;
use crate::math::{exp, root};

/// Where the search for roots starts: below any mode that a boss of reasonable mass leaves.
const FIRST_LAMBDA: f64 = 0.3;
/// Step of the search, over the ring's width: well below the 3 or so between two modes of one shape.
const STEP: f64 = 0.25;
/// Steps after which the search is given up.
const STEPS_MAX: u32 = 4000;

/// The annulus with outer radius 1, rigidity 1 and mass per area 1.
pub(crate) struct Ring {
    pub(crate) nu: f64,
    pub(crate) edge: InnerEdge,
    pub(crate) b: f64,
    pub(crate) mass: f64,
    pub(crate) inertia: f64,
}

/// One of the four solutions at a radius: value, slope, and the sign in Laplacian w = sign lambda^2 w.
struct Piece {
    w: f64,
    dw: f64,
    sign: f64,
}

impl Ring {
    /// The `count` lowest roots lambda (frequency parameter lambda^2) with `n` nodal diameters.
    pub(crate) fn lambdas(&self, n: u32, count: usize) -> Option<Vec<f64>> {
        let mut found = Vec::new();
        let step = STEP / (1.0 - self.b);
        let mut low = FIRST_LAMBDA;
        let mut at_low = self.determinant(n, low);
        for _ in 0..STEPS_MAX {
            if found.len() >= count {
                return Some(found);
            }
            let high = low + step;
            let at_high = self.determinant(n, high);
            if (at_low < 0.0) != (at_high < 0.0) {
                found.push(root(low, high, |x| self.determinant(n, x)));
            }
            (low, at_low) = (high, at_high);
        }
        None
    }

    fn pieces(&self, n: u32, lambda: f64, r: f64) -> [Piece; 4] {
        let x = lambda * r;
        let piece = |v: Value, factor: f64, sign: f64| Piece {
            w: v.f * factor,
            dw: v.df * factor * lambda,
            sign,
        };
        [
            piece(j(n, x), 1.0, -1.0),
            piece(y(n, x), 1.0, -1.0),
            piece(i_scaled(n, x), exp(x - lambda), 1.0),
            piece(k_scaled(n, x), exp(lambda * self.b - x), 1.0),
        ]
    }

    fn determinant(&self, n: u32, lambda: f64) -> f64 {
        let outer = self.pieces(n, lambda, 1.0);
        let inner = self.pieces(n, lambda, self.b);
        let mut rows = [[0.0; 4]; 4];
        for i in 0..4 {
            rows[0][i] = outer[i].w;
            rows[1][i] = outer[i].dw;
            (rows[2][i], rows[3][i]) = self.inner_rows(n, lambda, &inner[i]);
        }
        determinant4(rows)
    }

    fn inner_rows(&self, n: u32, lambda: f64, at: &Piece) -> (f64, f64) {
        let (b, nu, n2) = (self.b, self.nu, f64::from(n) * f64::from(n));
        let laplace = at.sign * lambda * lambda;
        let l4 = lambda * lambda * lambda * lambda;
        // Moment and edge force over -D.
        let moment = laplace * at.w - (1.0 - nu) * (at.dw / b - n2 * at.w / (b * b));
        let shear = laplace * at.dw - (1.0 - nu) * n2 / (b * b) * (at.dw - at.w / b);
        match (self.edge, n) {
            (InnerEdge::Free, _) => (moment, shear),
            (InnerEdge::RigidFloating, 0) => (
                at.dw,
                laplace * at.dw - self.mass * l4 * at.w / (2.0 * core::f64::consts::PI * b),
            ),
            (InnerEdge::RigidFloating, 1) => (
                at.dw - at.w / b,
                core::f64::consts::PI * b * (b * shear - moment) - self.inertia * l4 * at.w / b,
            ),
            (InnerEdge::RigidFloating | InnerEdge::Clamped, _) => (at.w, at.dw),
        }
    }
}
