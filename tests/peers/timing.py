"""What the job costs with scikit-fem and SciPy: model problem (c) of shared/reference/plates.md, 4 mm thick, one thread.

Mesh, assembly, factor, 200 loads on a patch of radius 3 mm with their means of w, the whole map (a load at every vertex,
from the time of the 200), six tones. Straight triangles of even size; a patch is the quadrature points within it. `off`: w against the solid at boss, two ribs, open web
and between the slots' inner ends and the boss.
"""
import datetime
import json
import math
import os
import platform
import time

import numpy as np
import scipy
import scipy.sparse as sp
import scipy.sparse.linalg as spl
import skfem
from scipy.spatial import cKDTree
from skfem import Basis, BilinearForm, ElementTriMorley
from skfem.helpers import dd, ddot, trace

import mindlin
import shapes

SOLID = "cS-t4"
RIBS = slice(1, 3)
# Patch of the map and of every reference point but the boss, which is loaded all over [mm].
PATCH = 3.0
BOSS = 12.0
LOADS = 200
NEAR = 0.03
REPEATS = 9
# Load average above which other work disturbed the run.
QUIET = 1.3
SIZES = (12.0, 10.0, 9.0, 8.0, 7.0, 6.0, 5.0, 4.5, 4.0, 3.5, 3.0, 2.5, 2.0, 1.5, 1.0)


def problem_c():
    slots = []
    for y in (-18.0, -6.0, 6.0, 18.0):
        outer = math.sqrt(83.0**2 - y * y)
        slots += shapes.polar_slots(5, (y,), outer - 41, outer, 4)
    regions = [shapes.region({"circle": [0, 0, 90]}, 4), shapes.region({"circle": [0, 0, 12]}, 20)]
    return shapes.outline(regions, slots, "clamped", [])


class Morley(mindlin.Plate):
    """The thin-plate element, which knows no shear: its limit on ribs is not the solid's."""

    def __init__(self, o, m):
        self.o, self.m, mat = o, m, o["material"]
        self.basis = Basis(m, ElementTriMorley(), intorder=4)
        t = np.broadcast_to(shapes.per_triangle(o, m, "thickness")[:, None], self.basis.dx.shape)
        E, nu, rho = mat["E"], mat["nu"], mat["rho"] * 1e-12

        @BilinearForm
        def stiffness(u, v, w):
            H, G = dd(u), dd(v)
            return E * w.t**3 / 12 / (1 - nu**2) * ((1 - nu) * ddot(H, G) + nu * trace(H) * trace(G))

        mass = BilinearForm(lambda u, v, w: rho * w.t * u * v)
        held = self.basis.get_dofs(shapes.outer_facets(o, m)).all()
        self.free = np.setdiff1d(np.arange(self.basis.N), held)
        self.K, self.M = (f.assemble(self.basis, t=t)[self.free][:, self.free].tocsc() for f in (stiffness, mass))


def patches(plate, places, radius):
    """Load vectors (columns) of patches about `places`: weights of the quadrature points within, times the shapes there."""
    basis = plate.basis
    points = basis.global_coordinates().value.reshape(2, -1).T
    near = cKDTree(points).query_ball_point(places, radius)
    rows = np.repeat(np.arange(len(places)), [len(n) for n in near])
    at = np.concatenate([np.asarray(n, int) for n in near])
    area = basis.dx.ravel()[at]
    weight = area / np.bincount(rows, area, len(places))[rows]
    shape = []
    for i, local in enumerate(basis.basis):
        v = local[0].value if hasattr(local[0], "value") else np.asarray(local[0])
        v = np.broadcast_to(v[0] if v.ndim == 3 else v, basis.dx.shape).ravel()[at]
        dof = basis.element_dofs[i][at // basis.dx.shape[1]]
        shape.append(sp.coo_matrix((v * weight, (dof, rows)), shape=(basis.N, len(places))))
    return sum(s.tocsr() for s in shape)[plate.free].toarray()


def means(plate, places, radius=PATCH):
    load = patches(plate, places, radius)
    return np.einsum("ij,ij->j", load, plate.lu.solve(load))


def once(kind, o, h):
    """Times of one run [s], and what came out."""
    marks, names = [time.perf_counter()], ("mesh", "assembly", "factor", "loads_200", "tones_6")
    mark = lambda: marks.append(time.perf_counter())
    m = shapes.mesh(o, h, graded=False)
    mark()
    plate = kind(o, m)
    mark()
    plate.factor()
    mark()
    inside = np.flatnonzero(np.hypot(*m.p) < 85)
    means(plate, m.p[:, inside[np.linspace(0, len(inside) - 1, LOADS).astype(int)]].T)
    mark()
    tones = plate.tones()
    mark()
    return dict(zip(names, np.diff(marks))), plate, tones


def best_of(kind, o, h):
    runs = [once(kind, o, h)[0] for _ in range(REPEATS)]
    least = {k: round(float(min(r[k] for r in runs)), 4) for k in runs[0]}
    middle = {k: round(float(np.median([r[k] for r in runs])), 4) for k in runs[0]}
    return least, middle


def settled(ratios):
    """First row from which on all are near 1."""
    good = (abs(ratios - 1) <= NEAR).all(axis=1)
    return next((i for i in range(len(good)) if good[i:].all()), None)


def run(path):
    reference = json.loads((path.parent.parent.parent / "shared/reference/plates.json").read_text())
    solid = next(r for r in reference if r["id"] == SOLID)
    w = np.array(solid["expected"]["w"]["value"])
    places = np.array(next(v for k, v in solid["inputs"].items() if k.startswith("points"))["value"], float)
    o, found = problem_c(), []
    load_before = os.getloadavg()
    for name, kind in (("Mindlin P2", mindlin.Plate), ("Morley", Morley)):
        sweep = []
        for h in SIZES:
            _, plate, tones = once(kind, o, h)
            got = np.concatenate([means(plate, places[:1], BOSS), means(plate, places[1:len(w)])])
            sweep.append(dict(h_mm=h, unknowns=int(plate.K.shape[0]), vertices=int(plate.m.nvertices),
                              off=(100 * got / w - 1).round(4).tolist(), f=tones.round(1).tolist()))
            print(name, sweep[-1], flush=True)
            if plate.K.shape[0] > 60000:
                break
        # The coarsest from which on all finer ones are near, not one that is near by chance.
        ribs = 1 + np.array([s["off"] for s in sweep])[:, RIBS]
        first, against = settled(ribs), "the solid"
        if first is None:
            first, against = settled(ribs / ribs[-1]), "its own finest mesh"
        least, middle = best_of(kind, o, sweep[first]["h_mm"])
        vertices = sweep[first]["vertices"]
        found.append(dict(element=name, near="ribs within 3 % of " + against, **sweep[first], seconds_least=least, seconds_median=middle,
                          whole_map_s=round(least["loads_200"] * vertices / LOADS, 3),
                          total_with_200_s=round(sum(least.values()), 3),
                          total_with_map_s=round(sum(least.values()) + least["loads_200"] * (vertices / LOADS - 1), 3), sweep=sweep))
        print(name, {k: v for k, v in found[-1].items() if k != "sweep"}, flush=True)
    load_after = os.getloadavg()
    versions = dict(python=platform.python_version(), scikit_fem=skfem.__version__, scipy=scipy.__version__, numpy=np.__version__)
    result = dict(problem="(c), 4 mm, one thread", date=datetime.date.today().isoformat(), repeats=REPEATS,
                  quiet=max(load_before[0], load_after[0]) < QUIET,
                  load_average_before=load_before, load_average_after=load_after, cores=os.cpu_count(), versions=versions, peers=found)
    path.write_text(json.dumps(result, indent=1) + "\n")
