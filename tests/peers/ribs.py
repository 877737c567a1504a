"""Ribs in their own plane: plane stress, quadratic triangles. How far the side of a slot gives way at mid length.

Slots lie along x in a square plate clamped at its outer edge; the rib is |y| < width / 2, the slot being cut lies above it,
the neighbour below. A force across the rib, evenly spread over a short length of the upper slot's side, at mid length;
its displacement is the mean over the same length. C = displacement / force * E * thickness.
"""
import gmsh
import numpy as np
import scipy.sparse.linalg as spl
import skfem
from skfem import Basis, BilinearForm, ElementTriP2, ElementVector, FacetBasis, LinearForm

import shapes

NU = 0.33
HALF_SIDE = 60.0
LOAD_LENGTH = 1.5
# Elements across the rib or the slot at the two levels, and elements along the load.
ACROSS = (4, 6)
ALONG_LOAD = 4
TOLERANCE_LEAST = 0.01
# Rib width, slot width, slot length over all [mm], neighbour open.
CASES = [(b, 3.0, length, True) for b in (2.0, 4.0, 8.0) for length in (30.0, 50.0)]
CASES += [(4.0, 2.0, 30.0, True), (4.0, 8.0, 30.0, True)]
CASES += [(4.0, 3.0, length, False) for length in (30.0, 50.0)]


def mesh(b, w, length, neighbour, across):
    shapes.start("rib")
    occ = gmsh.model.occ
    plate = [surface_of_square()]
    half = (length - w) / 2
    slots = [(-half, y, half, y, w) for y in ((b + w) / 2, -(b + w) / 2)][:2 if neighbour else 1]
    body, _ = occ.cut(plate, [shapes.surface({"slot": s}) for s in slots])
    ends = [(0, occ.addPoint(x, b / 2, 0)) for x in (-LOAD_LENGTH / 2, LOAD_LENGTH / 2)]
    occ.fragment(body, ends)
    occ.synchronize()
    fine, load = min(b, w) / across, LOAD_LENGTH / ALONG_LOAD * ACROSS[0] / across

    def size(dim, tag, x, y, z, lc):
        near = np.hypot(max(abs(x) - half, 0), max(abs(y) - b / 2 - w, 0))
        at_load = np.hypot(max(abs(x) - LOAD_LENGTH / 2, 0), y - b / 2)
        return min(fine + shapes.SIZE_GROWTH * max(near - w / 2, 0), load + shapes.SIZE_GROWTH * at_load)

    return shapes.finish(HALF_SIDE / 4, size)


def surface_of_square():
    return shapes.surface({"rect": [-HALF_SIDE, -HALF_SIDE, HALF_SIDE, HALF_SIDE, 0]})


@BilinearForm
def plane(u, v, _):
    a, b = u.grad, v.grad
    normal = a[0, 0] * b[0, 0] + a[1, 1] * b[1, 1] + NU * (a[0, 0] * b[1, 1] + a[1, 1] * b[0, 0])
    return (normal + (1 - NU) / 2 * (a[0, 1] + a[1, 0]) * (b[0, 1] + b[1, 0])) / (1 - NU**2)


def compliance(m, b):
    basis = Basis(m, ElementVector(ElementTriP2(), 2), intorder=5)
    facets = m.boundary_facets()
    x, y = m.p[:, m.facets[:, facets]].mean(1)
    loaded = facets[(abs(y - b / 2) < 1e-6) & (abs(x) < LOAD_LENGTH / 2)]
    outer = facets[np.maximum(abs(x), abs(y)) > HALF_SIDE - 1e-6]
    side = FacetBasis(m, basis.elem, facets=loaded, intorder=5)
    assert abs(side.dx.sum() - LOAD_LENGTH) < 1e-6, side.dx.sum()
    load = LinearForm(lambda v, _: -v[1]).assemble(side) / LOAD_LENGTH
    free = np.setdiff1d(np.arange(basis.N), basis.get_dofs(outer).all())
    K = plane.assemble(basis)[free][:, free].tocsc()
    return float(load[free] @ spl.spsolve(K, load[free], permc_spec="MMD_AT_PLUS_A"))


def rows(value):
    found = []
    for b, w, length, neighbour in CASES:
        coarse, fine = (compliance(mesh(b, w, length, neighbour, n), b) for n in ACROSS)
        error = abs(fine - coarse) / fine
        state = "open" if neighbour else "uncut"
        inputs = {"nu": value(NU, "-"), "slot_width": value(w, "mm"), "slot_length": value(length, "mm"), "neighbour": value(state, "text"),
                  "load_length": value(LOAD_LENGTH, "mm"), "half_side": value(HALF_SIDE, "mm")}
        if neighbour:
            inputs["rib_width"] = value(b, "mm")
        name = f"rib-{b:g}-slot-{w:g}x{length:g}" if neighbour else f"rib-uncut-slot-{w:g}x{length:g}"
        found.append({
            "id": name, "topic": "rib in its own plane", "inputs": inputs, "expected": {"C": value(float(f"{fine:.5g}"), "-")},
            "tolerance_rel": float(f"{TOLERANCE_LEAST + 2 * error:.2g}"), "theory": "plane_stress",
            "source": f"own computation, scikit-fem {skfem.__version__}, quadratic triangles", "address": "", "read_or_memory": "computed",
            "note": "C = displacement / force * E * thickness of the side of the slot being cut, at mid length, across the slot, load and mean "
                    "over the load length; slots with round ends, slot_length over all, in a square plate clamped at its outer edge, the rib in "
                    f"its middle; neighbour {state}; an infinite plate would have no finite C, far size adds about 0.28 for e times the side; "
                    f"two meshes, last step {100 * error:.2f} %"})
    return found
