"""Shear-flexible plates: quadratic triangles with curved sides (scikit-fem), three unknowns a node: w and two slopes.

No reduced integration: quadratic triangles do not lock here, where the mesh is finer than a few thicknesses.
"""
import numpy as np
import scipy.sparse.linalg as spl
from skfem import Basis, BilinearForm, ElementTriP2, ElementVector, LinearForm

import shapes

KAPPA = 5 / 6
INTORDER = 5


class Plate:
    def __init__(self, o, m):
        self.o, self.m = o, m
        self.E, self.nu, self.rho = (o["material"][k] for k in ("E", "nu", "rho"))
        self.basis = Basis(m, ElementVector(ElementTriP2(), 3), intorder=INTORDER)
        self.t = shapes.per_triangle(o, m, "thickness")
        # N/m^3 to N/mm^3.
        self.bed = shapes.per_triangle(o, m, "bed") * 1e-9
        self.free = np.setdiff1d(np.arange(self.basis.N), self.held())
        K, M = self.matrices()
        self.K, self.M = (A[self.free][:, self.free].tocsc() for A in (K, M))

    def held(self):
        if self.o["edge"] == "free":
            return np.array([], int)
        dofs = self.basis.get_dofs(shapes.outer_facets(self.o, self.m))
        # scikit-fem names the components u^1, u^2, u^3 of the vector.
        return dofs.all() if self.o["edge"] == "clamped" else dofs.all(["u^1"])

    def matrices(self):
        E, nu, rho = self.E, self.nu, self.rho * 1e-12
        G = E / 2 / (1 + nu)
        at = lambda v: np.broadcast_to(v[:, None], self.basis.dx.shape)

        @BilinearForm
        def stiffness(u, v, w):
            D = E * w.t**3 / 12 / (1 - nu**2)
            a, b = u.grad, v.grad
            bend = a[1, 0] * b[1, 0] + a[2, 1] * b[2, 1] + nu * (a[1, 0] * b[2, 1] + a[2, 1] * b[1, 0])
            twist = (1 - nu) / 2 * (a[1, 1] + a[2, 0]) * (b[1, 1] + b[2, 0])
            shear = (a[0, 0] - u[1]) * (b[0, 0] - v[1]) + (a[0, 1] - u[2]) * (b[0, 1] - v[2])
            return D * (bend + twist) + KAPPA * G * w.t * shear + w.bed * u[0] * v[0]

        @BilinearForm
        def mass(u, v, w):
            return rho * (w.t * u[0] * v[0] + w.t**3 / 12 * (u[1] * v[1] + u[2] * v[2]))

        return (stiffness.assemble(self.basis, t=at(self.t), bed=at(self.bed)),
                mass.assemble(self.basis, t=at(self.t)))

    def factor(self):
        self.lu = spl.splu(self.K, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options=dict(SymmetricMode=True))

    def patch(self, k):
        """Load of 1 N spread evenly on patch k; also what takes the mean of w over it."""
        part = Basis(self.m, self.basis.elem, elements=shapes.in_patch(self.o, self.m, k), intorder=INTORDER)
        return LinearForm(lambda v, w: v[0]).assemble(part) / part.dx.sum()

    def solve(self, load):
        u = np.zeros(self.basis.N)
        u[self.free] = self.lu.solve(load[self.free])
        return u

    def compliance(self, k):
        load = self.patch(k)
        return float(load @ self.solve(load))

    def stress(self, k):
        """Extreme-fibre bending stress under 1 N on patch k, from the slopes' gradients.

        Greatest: gradients at the six nodes of each triangle of the patch, averaged over the patch's triangles that
        meet at a node, greatest absolute principal stress. Mean: principal stress of the mean tensor.
        """
        u = self.solve(self.patch(k))
        part = shapes.in_patch(self.o, self.m, k)
        corners = np.array([[0, 1, 0, .5, .5, 0], [0, 0, 1, 0, .5, .5]])
        at_nodes = Basis(self.m, self.basis.elem, elements=part, quadrature=(corners, np.ones(6) / 12))
        inside = Basis(self.m, self.basis.elem, elements=part, intorder=INTORDER)
        # Six nodes of each triangle by their place, so that neighbours are averaged.
        place = np.round(at_nodes.global_coordinates().value.transpose(1, 2, 0).reshape(-1, 2), 6)
        _, node = np.unique(place, axis=0, return_inverse=True)
        node, count = node.ravel(), np.bincount(node.ravel())
        tensor = [np.bincount(node, s.ravel()) / count for s in self.fibre(at_nodes, u, part)]
        mean = [float((s * inside.dx).sum() / inside.dx.sum()) for s in self.fibre(inside, u, part)]
        return float(principal(*tensor).max()), float(principal(*mean))

    def fibre(self, basis, u, part):
        g = basis.interpolate(u).grad
        c = self.E * self.t[part][:, None] / 2 / (1 - self.nu**2)
        sx, sy = c * (g[1, 0] + self.nu * g[2, 1]), c * (g[2, 1] + self.nu * g[1, 0])
        return sx, sy, c * (1 - self.nu) / 2 * (g[1, 1] + g[2, 0])

    def tones(self, count=6):
        """Lowest frequencies [Hz]."""
        op = spl.LinearOperator(self.K.shape, matvec=self.lu.solve, dtype=float)
        start = np.random.default_rng(1).standard_normal(self.K.shape[0])
        w = spl.eigsh(self.K, k=count, M=self.M, sigma=0, OPinv=op, return_eigenvectors=False, v0=start)
        return np.sqrt(np.sort(w)) / 2 / np.pi


def principal(sx, sy, txy):
    """Greatest absolute principal stress."""
    middle, radius = (sx + sy) / 2, np.hypot((sx - sy) / 2, txy)
    return np.maximum(np.abs(middle + radius), np.abs(middle - radius))
