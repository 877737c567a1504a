"""The peers themselves against closed forms, so that a slip in them cannot pass for a reference."""
import math

from scipy.integrate import quad

import mindlin
import ribs
import shapes
import solid

E, NU = shapes.ALUMINIUM["E"], shapes.ALUMINIUM["nu"]


def rigidity(t):
    return E * t**3 / 12 / (1 - NU**2)


def plate(shape, t, edge, point, patch, h, bed=0.0):
    o = shapes.outline([shapes.region(shape, t, bed)], [], edge, [point], patch=patch, stress=[0])
    m = shapes.mesh(o, h)
    p = mindlin.Plate(o, m)
    p.factor()
    return p, o, m


def clamped_disc(R, t, a):
    """Middle of a clamped disc, 1 N spread on radius a: mean of w over the patch, with shear, and greatest bending stress."""
    alpha = a / R
    outside = lambda x: (math.log(x) + 0.5 - alpha**2 / 4) ** 2 * x
    inside = lambda x: (x * x / (2 * alpha**2) + math.log(alpha) - alpha**2 / 4) ** 2 * x
    # Work of the load: the square of the curvatures' sum over the disc.
    bend = R * R / (2 * math.pi * rigidity(t)) * (quad(inside, 0, alpha)[0] + quad(outside, alpha, 1)[0])
    shear = (math.log(R / a) + 0.25) / (2 * math.pi * mindlin.KAPPA * E / 2 / (1 + NU) * t)
    stress = 6 / t**2 * (1 + NU) / (4 * math.pi) * (math.log(R / a) + a * a / (4 * R * R))
    return bend + shear, stress


def checks(folder):
    p, o, m = plate({"circle": [0, 0, 90]}, 5, "clamped", [0, 0], 5.0, 3)
    w, stress = clamped_disc(90, 5, 5)
    yield "clamped disc, w", p.compliance(0), w, 0.002
    yield "clamped disc, stress", p.stress(0)[0], stress, 0.02
    body = solid.Solid(o, m, folder)
    yield "clamped disc as a solid, w", body.compliances()[0], w, 0.02
    thin, _, _ = plate({"circle": [0, 0, 90]}, 1, "clamped", [0, 0], 5.0, 4)
    yield "clamped disc, first tone", thin.tones()[0], 10.2158 / 90**2 * math.sqrt(rigidity(1) / 2.7e-9) / 2 / math.pi, 0.002
    p, _, _ = plate({"rect": [0, 0, 100, 100, 0]}, 1, "supported", [50, 50], 1.0, 4)
    yield "supported square, w", p.compliance(0), 0.01160 * 100**2 / rigidity(1), 0.005
    p, _, _ = plate({"circle": [0, 0, 120]}, 1, "free", [0, 0], 1.0, 4, bed=1e9)
    yield "wide plate on a bed, w", p.compliance(0), 1 / 8 / math.sqrt(rigidity(1)), 0.01
    # A slender rib is a beam held at both ends; the lengths differ, so what the ends add drops out.
    soft, stiff = (ribs.compliance(ribs.mesh(1.0, 2.0, length, True, 4), 1.0) for length in (60.0, 40.0))
    ends = [x**3 / 16 + 0.6 * (1 + NU) * x for x in (60.0, 40.0)]
    yield "slender rib, ratio of lengths 60 and 40", soft / stiff, ends[0] / ends[1], 0.03


def run(folder):
    bad = 0
    for name, got, want, tolerance in checks(folder):
        off = got / want - 1
        bad += not abs(off) <= tolerance
        print(f"{'bad' if abs(off) > tolerance else 'good'}: {name}: {got:.6g} against {want:.6g}, {100 * off:+.2f} %", flush=True)
    raise SystemExit(bool(bad))
