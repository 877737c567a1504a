"""Outlines of our own and their triangles. Millimetres; the origin is where the outline says.

An outline is plain data, written as it is into shared/reference/outlines.json:
  regions   painted in order, later over earlier: shape, thickness [mm], bed [N/m^3] under it (0: none)
  slots     {"slot": [x0, y0, x1, y1, width]}: middles of the two round ends; cut through
  edge      what holds the outer edge: clamped, supported (w = 0 only) or free
  points    [x, y]: middles of the round patches of radius `patch`, each clipped to the material
"""
import math

import gmsh
import numpy as np
from skfem import MeshTri, MeshTri2

ALUMINIUM = dict(E=69000.0, nu=0.33, rho=2700.0)
STEEL = dict(E=210000.0, nu=0.3, rho=7850.0)
POM = dict(E=2900.0, nu=0.4, rho=1410.0)
PATCH = 2.5
# How much the size grows for each mm away from what is resolved.
SIZE_GROWTH = 0.35


def turned(x, y, degrees):
    a = math.radians(degrees)
    return [round(x * math.cos(a) - y * math.sin(a), 6), round(x * math.sin(a) + y * math.cos(a), 6)]


def polar_slots(groups, offsets, inner, outer, width):
    """Groups of parallel slots; the middle line of group g points to g * 360 / groups degrees."""
    return [{"slot": turned(inner, v, g * 360 / groups) + turned(outer, v, g * 360 / groups) + [width]}
            for g in range(groups) for v in offsets]


def region(shape, thickness, bed=0.0):
    return dict(shape=shape, thickness=thickness, bed=bed)


def outline(regions, slots, edge, points, material=ALUMINIUM, **more):
    return dict(dict(regions=regions, slots=slots, edge=edge, points=points, material=material,
                     patch=PATCH, stress=[], solid=False), **more)


def disc(*more, R=70, slots=(), edge="clamped", web=3, boss=20, web_bed=0.0, boss_bed=0.0, points=(), **rest):
    """A round web with a boss in its middle; `more` are regions painted between web and boss."""
    regions = [region({"circle": [0, 0, R]}, web, web_bed), *more, region({"circle": [0, 0, 18]}, boss, boss_bed)]
    return outline(regions, list(slots), edge, list(points), **rest)


def rimmed(boss_bed):
    """Thick rim 70..80 on an elastic seat; the web is painted over it."""
    return disc(region({"circle": [0, 0, 70]}, 3), R=80, web=19, web_bed=1e11, edge="free", slots=SLOTS, points=POLAR,
                boss_bed=boss_bed)


SLOTS = polar_slots(6, (-8, 0, 8), 33, 59, 4)
# Boss, rib middle, rib at its outer end, between two groups, side of a slot (clipped).
POLAR = [[0, 0], [46, 4], [57, 4], turned(46, 0, 30), [46, 10.5]]
BARS = [{"slot": [35.5 + 7 * k, 16.5, 35.5 + 7 * k, 63.5, 3]} for k in range(8)]

OUTLINES = {
    "o1": disc(slots=SLOTS, points=POLAR, stress=[1, 3], solid=True,
               says="disc with a floating boss, six groups of three slots, rim clamped"),
    "o2": dict(rimmed(0.0), says="the disc of o1 with its thick rim, which lies on an elastic seat; boss floating"),
    "o2b": dict(rimmed(1e11), says="the disc of o1 with its thick rim; rim and boss lie on elastic seats, as if bolted"),
    "o3": outline([region({"rect": [0, 0, 120, 80, 8]}, 3)], BARS, "clamped",
                  [[60, 40], [39, 40], [60, 22], [18, 40], [86.5, 40]], stress=[0, 3], solid=True,
                  says="rectangle with rounded corners, eight parallel slots, edges clamped"),
    "o4": outline([region({"rect": [0, 0, 100, 70, 0]}, 4), region({"circle": [36, 40, 12]}, 15)],
                  [{"slot": [64, 17, 64, 53, 6]}, {"slot": [76, 20, 88, 48, 5]}], "supported",
                  [[36, 40], [70, 36], [52, 20], [20, 15], [57, 45]], material=STEEL, solid=True,
                  says="rectangle with an off-centre boss and two slots, edges simply supported"),
    "o5": disc(slots=SLOTS[::2], points=POLAR, stress=[1],
               says="the disc of o1 with every second slot still closed"),
    "o6soft": disc(slots=SLOTS, points=POLAR, web_bed=5e9, tones=False,
                   says="the disc of o1 on a soft bed under the web, none under boss and slots"),
    "o6hard": disc(slots=SLOTS, points=POLAR, web_bed=1e11, tones=False,
                   says="the disc of o1 on a hard bed under the web, none under boss and slots"),
    "o7": disc(region({"circle": [0, 0, 45]}, 3), web=10, material=POM, solid=True,
               points=[[0, 0], [25, 0], [32, 0], [41, 0], [52, 0]],
               says="half-way through cutting from the middle out: 3 mm inside radius 45, 10 mm outside"),
}


def in_slot(slot, x, y):
    x0, y0, x1, y1, width = slot["slot"]
    ex, ey = x1 - x0, y1 - y0
    s = np.clip(((x - x0) * ex + (y - y0) * ey) / (ex * ex + ey * ey), 0, 1)
    return (x - x0 - s * ex) ** 2 + (y - y0 - s * ey) ** 2 < (width / 2) ** 2


def in_shape(shape, x, y):
    if "circle" in shape:
        a, b, r = shape["circle"]
        return (x - a) ** 2 + (y - b) ** 2 < r * r
    x0, y0, x1, y1, r = shape["rect"]
    dx = np.maximum(np.maximum(x0 + r - x, x - x1 + r), 0)
    dy = np.maximum(np.maximum(y0 + r - y, y - y1 + r), 0)
    return dx * dx + dy * dy <= r * r + 1e-12


def surface(shape):
    occ = gmsh.model.occ
    if "circle" in shape:
        x, y, r = shape["circle"]
        return (2, occ.addDisk(x, y, 0, r, r))
    if "rect" in shape:
        x0, y0, x1, y1, r = shape["rect"]
        return (2, occ.addRectangle(x0, y0, 0, x1 - x0, y1 - y0, roundedRadius=r))
    x0, y0, x1, y1, w = shape["slot"]
    a = math.atan2(y1 - y0, x1 - x0)
    nx, ny = -math.sin(a) * w / 2, math.cos(a) * w / 2
    p = [occ.addPoint(x, y, 0) for x, y in [(x0 + nx, y0 + ny), (x0 - ny, y0 + nx), (x0 - nx, y0 - ny),
                                            (x1 - nx, y1 - ny), (x1 + ny, y1 - nx), (x1 + nx, y1 + ny)]]
    c0, c1 = occ.addPoint(x0, y0, 0), occ.addPoint(x1, y1, 0)
    wire = [occ.addCircleArc(p[0], c0, p[1]), occ.addCircleArc(p[1], c0, p[2]), occ.addLine(p[2], p[3]),
            occ.addCircleArc(p[3], c1, p[4]), occ.addCircleArc(p[4], c1, p[5]), occ.addLine(p[5], p[0])]
    return (2, occ.addPlaneSurface([occ.addCurveLoop(wire)]))


def size_field(o, h):
    """Finer at slots, at patches, at steps of thickness and at the outer edge."""
    circles = [(p[0], p[1], o["patch"], h / 3) for p in o["points"]]
    circles += [(*r["shape"]["circle"], h / 2) for r in o["regions"] if "circle" in r["shape"]]
    circles = np.array(circles)
    slots = np.array([s["slot"] for s in o["slots"]]).reshape(-1, 5).T
    rects = [r["shape"]["rect"] for r in o["regions"] if "rect" in r["shape"]]

    def size(dim, tag, x, y, z, lc):
        d = np.abs(np.hypot(x - circles[:, 0], y - circles[:, 1]) - circles[:, 2])
        best = min(h, float(np.min(circles[:, 3] + SIZE_GROWTH * d)))
        for x0, y0, x1, y1, _ in rects:
            best = min(best, h / 2 + SIZE_GROWTH * min(abs(x - x0), abs(x - x1), abs(y - y0), abs(y - y1)))
        if slots.size:
            ex, ey = slots[2] - slots[0], slots[3] - slots[1]
            s = np.clip(((x - slots[0]) * ex + (y - slots[1]) * ey) / (ex * ex + ey * ey), 0, 1)
            far = np.hypot(x - slots[0] - s * ex, y - slots[1] - s * ey) - slots[4] / 2
            best = min(best, h / 2 + SIZE_GROWTH * max(0.0, float(far.min())))
        return best

    return size


def start(name):
    gmsh.initialize(interruptible=False)
    for key, value in [("General.Terminal", 0), ("General.NumThreads", 1), ("Mesh.MeshSizeExtendFromBoundary", 0),
                       ("Mesh.MeshSizeFromPoints", 0), ("Mesh.MeshSizeFromCurvature", 0), ("Mesh.Algorithm", 6)]:
        gmsh.option.setNumber(key, value)
    gmsh.model.add(name)


def finish(h, size=None, curved=True):
    """Curved six-node (or straight) triangles of the model at hand, as a scikit-fem mesh."""
    gmsh.option.setNumber("Mesh.MeshSizeMax", h)
    if size:
        gmsh.model.mesh.setSizeCallback(size)
    gmsh.model.mesh.generate(2)
    gmsh.model.mesh.setOrder(2 if curved else 1)
    tags, xyz, _ = gmsh.model.mesh.getNodes()
    types, _, nodes = gmsh.model.mesh.getElements(2)
    assert list(types) == [9 if curved else 2], types
    index = np.zeros(int(tags.max()) + 1, int)
    index[tags.astype(int)] = np.arange(len(tags))
    used, triangles = np.unique(index[nodes[0].astype(int)], return_inverse=True)
    gmsh.finalize()
    p, t = xyz.reshape(-1, 3)[used, :2].T, triangles.reshape(-1, 6 if curved else 3).T
    return (MeshTri2 if curved else MeshTri)(np.ascontiguousarray(p), np.ascontiguousarray(t))


def mesh(o, h, graded=True):
    """Triangles of an outline with edges along every slot, step of thickness and patch; curved and graded, or neither."""
    start("outline")
    occ = gmsh.model.occ
    body = [surface(o["regions"][0]["shape"])]
    inner = [surface(r["shape"]) for r in o["regions"][1:]]
    inner += [surface({"circle": [*p, o["patch"]]}) for p in o["points"]]
    if inner:
        body, _ = occ.fragment(body, inner)
    if o["slots"]:
        body, _ = occ.cut(body, [surface(s) for s in o["slots"]])
    occ.synchronize()
    return finish(h, size_field(o, h) if graded else None, graded)


def middles(m):
    """Middle of each triangle."""
    return m.p[:, m.t].mean(1)


def per_triangle(o, m, key):
    """Thickness or bed of each triangle."""
    x, y = middles(m)
    value = np.full(len(x), float(o["regions"][0][key]))
    for r in o["regions"][1:]:
        value[in_shape(r["shape"], x, y)] = r[key]
    return value


def in_patch(o, m, k):
    x, y = middles(m)
    return np.flatnonzero(in_shape({"circle": [*o["points"][k], o["patch"]]}, x, y))


def outer_facets(o, m):
    """Facets along the outer edge, not those along slots."""
    facets = m.boundary_facets()
    x, y = m.p[:, m.facets[:, facets]].mean(1)
    shape = o["regions"][0]["shape"]
    if "circle" in shape:
        return facets[np.hypot(x, y) > shape["circle"][2] - 1.0]
    x0, y0, x1, y1, r = shape["rect"]
    inside = in_shape({"rect": [x0 + 1, y0 + 1, x1 - 1, y1 - 1, max(r - 1, 0)]}, x, y)
    return facets[~inside]
