"""The references for stability against what is exact, what is printed, and each other."""
import math

import numpy as np

import collocation
import intervals
import milling

# An identity; a Krylov space of 16; what a finite number of harmonics or 200 intervals leave out.
EXACT = 1e-9
KRYLOV = 1e-4
TRUNCATED = 5e-3


def hold(name, found, expected, tolerance):
    off = abs(found / expected - 1)
    print(f"{name}: {found:.9g}, expected {expected:.9g}, off {off:.1e} of {tolerance:.0e}", flush=True)
    if not off <= tolerance:
        raise SystemExit(f"{name} is off")


def job(row):
    read = {key: entry["value"] for key, entry in row["inputs"].items()}
    modes = [milling.Mode(read[f"{axis}_mode_k"], read[f"{axis}_mode_zeta"], milling.TURN * read[f"{axis}_mode_fn"], along)
             for axis, along in (("x", (1, 0, 0)), ("y", (0, 1, 0))) if f"{axis}_mode_k" in read]
    cut = milling.Cut(read["teeth"], read["entry_angle"], read["exit_angle"], read["Kt"], read["Kn"])
    return milling.Job(cut, tuple(modes), read["spindle"] / 60), 1e-3 * read.get("axial_depth", math.nan)


def edges():
    """The closed forms of a corner's edge against sums over little pieces of it."""
    for r, deep in ((1e-3, 2.5e-3), (1e-3, 1e-3), (2e-3, 4e-4)):
        cut = milling.Cut(1, 0.0, math.pi, 7e8, 2e8, r, deep)
        phi = 0.7
        e, c, up = np.array([math.sin(phi), math.cos(phi), 0]), np.array([-math.cos(phi), math.sin(phi), 0]), np.array([0, 0, 1.0])
        pieces = 200_000
        steepest = math.acos(max(0.0, r - deep) / r)
        whole = max(0.0, deep - r) * (cut.kn * np.outer(e, e) - cut.kt * np.outer(c, e))
        kappa = (np.arange(pieces) + 0.5) * steepest / pieces
        n = np.sin(kappa)[:, None] * e - np.cos(kappa)[:, None] * up
        ds = r * steepest / pieces
        whole = whole + ds * (cut.kn * n.T @ n - cut.kt * np.outer(c, n.sum(0)))
        off = abs(cut.force_change(phi, [0]) - whole).max() / abs(whole).max()
        hold(f"edge of corner {r:g}, depth {deep:g}", 1 + off, 1, EXACT)


def exact_root(it, depth):
    """Greatest growth over a period where the force change is constant (four teeth in a slot, one mode)."""
    mode, = it.modes
    h = it.cut.mean().real[0, 0]
    s = (np.linspace(-2, 3, 26)[:, None] / it.period + 1j * np.linspace(0, 3 * mode.omega, 400)).ravel()
    mass = mode.k / mode.omega**2
    f = lambda s: mass * (s * s + 2 * mode.zeta * mode.omega * s) + mode.k + depth * h * (1 - np.exp(-s * it.period))
    slope = lambda s: mass * (2 * s + 2 * mode.zeta * mode.omega) + depth * h * it.period * np.exp(-s * it.period)
    for _ in range(60):
        with np.errstate(all="ignore"):
            s = s - f(s) / slope(s)
        s = s[np.isfinite(s) & (abs(s) < 20 * mode.omega)]
    s = s[abs(f(s)) < 1e-8 * mode.k]
    return math.exp(s.real.max() * it.period)


def printed(rows):
    for row in rows:
        found = {key: entry["value"] for key, entry in row["expected"].items()}
        sort, tolerance = row["id"][0], row["tolerance_rel"]
        if sort == "E" and "spectral_radius" in found:
            it, depth = job(row)
            hold(row["id"], exact_root(it, depth), found["spectral_radius"], tolerance)
            hold(row["id"] + " collocation", collocation.Period(it).radius(depth), exact_root(it, depth), EXACT)
        if sort == "A":
            it, depth = job(row)
            hold(row["id"], intervals.Single(it, 200).plain(np.array([it.n]), np.array([depth]))[0], found["spectral_radius"], tolerance)
        if sort == "B":
            it, depth = job(row)
            hold(row["id"], collocation.Period(it).radius(depth), found["spectral_radius"], tolerance)
            if len(it.modes) == 2:
                coarse = intervals.Double(it, 200).plain(np.array([it.n]), np.array([depth]))[0]
                hold(row["id"] + " 200 intervals", coarse, found["spectral_radius"], TRUNCATED)
        if sort == "C":
            it, _ = job(row)
            limit, _ = collocation.settled_limit(it, milling.depth_unit(it))[0]
            hold(row["id"], 1e3 * limit, found["depth_limit"], tolerance)
        if sort == "F":
            it, depth = job(row)
            at = np.array([it.n]), np.array([depth])
            single = intervals.Single(it)
            hold(row["id"], single.plain(*at)[0], found["spectral_radius"], tolerance)
            hold(row["id"] + " Krylov", single.strong(*at)[0], single.plain(*at)[0], KRYLOV)


def drawn(cases):
    seconds = [case for case in cases if "second" in case]
    for case in seconds:
        if case["limit"] is None or case["second"] is None:
            hold(case["id"] + " has no limit", 1 + (case["limit"] != case["second"]), 1, EXACT)
        else:
            hold(case["id"] + " in the frequency domain", case["second"], case["limit"], TRUNCATED)
    print(f"{len(cases)} cases drawn, {sum(case['limit'] is None for case in cases)} without a limit, {len(seconds)} with a second opinion")


def run(rows, cases):
    edges()
    printed(rows)
    drawn(cases)
