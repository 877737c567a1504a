"""What a curve of limits costs with numpy on one thread: 200 speeds, the first depth over one at each, for three widths of cut.

Each speed is searched from below at 24 depths and halved to a thousandth; speeds that have their limit are not asked again.
`off` is the error against the collocation's limits, which the intervals' own coarseness makes."""
import datetime
import json
import math
import os
import platform
import time

import numpy as np
import scipy

import collocation
import intervals
import milling

# Two teeth, the parameters of IS04_1dof and IS04_2dof in stability.json.
MODE = dict(k=1340049.6480507487, zeta=0.011, omega=2 * math.pi * 922.0)
KT, KN, TEETH = 6e8, 2e8, 2
SPEEDS = np.linspace(5000.0, 25000.0, 200) / 60.0
# Width of cut over diameter (down), greatest depth looked at with one mode and with two [m].
WIDTHS = {"slot": (1.0, 4.8e-3, 0.72e-3), "half": (0.5, 3.6e-3, 2.0e-3), "twentieth": (0.05, 15e-3, 25e-3)}
REPEATS = {"plain, one mode": 5, "strong, one mode": 5, "plain, two modes": 2}
# Load average above which other work disturbed the run.
QUIET = 1.3


def job(share, count):
    cut = milling.Cut(TEETH, math.acos(2 * share - 1), math.pi, KT, KN)
    along = [(1, 0, 0), (0, 1, 0)][:count]
    return milling.Job(cut, tuple(milling.Mode(along=a, **MODE) for a in along), SPEEDS[0])


def true_limits(it, most):
    """By collocation, searched at the same depths."""
    found = []
    for n in SPEEDS:
        period = collocation.Period(milling.Job(it.cut, it.modes, n), 1.3)
        found.append(intervals.limits(lambda _, d: np.array([period.radius(x) for x in d]), np.array([n]), most)[0])
    return np.array(found)


def measured(radius, most, repeats):
    seconds = []
    for _ in range(repeats):
        start = time.perf_counter()
        found = intervals.limits(radius, SPEEDS, most)
        seconds.append(time.perf_counter() - start)
    return found, seconds


def run(target):
    before = os.getloadavg()
    rows = []
    for width, (share, *mosts) in WIDTHS.items():
        for count, most in zip((1, 2), mosts):
            it = job(share, count)
            method = intervals.Single(it) if count == 1 else intervals.Double(it)
            ways = {"plain, one mode": method.plain, "strong, one mode": method.strong} if count == 1 else {"plain, two modes": method.plain}
            true = true_limits(it, most)
            for way, radius in ways.items():
                found, seconds = measured(radius, most, REPEATS[way])
                off = abs(found / true - 1)
                rows.append({"way": way, "width": width, "most_m": most, "seconds_least": round(min(seconds), 4),
                             "seconds_median": round(float(np.median(seconds)), 4), "none": int(np.isnan(found).sum()),
                             "none_by_one_only": int((np.isnan(found) != np.isnan(true)).sum()),
                             "off_median": float(f"{np.nanmedian(off):.2g}"), "off_worst": float(f"{np.nanmax(off):.2g}")})
                print(rows[-1], flush=True)
    after = os.getloadavg()
    target.write_text(json.dumps({
        "what": "200 speeds from 5000 to 25000 1/min, first limit of each: 24 depths up to `most_m`, then halved to 1e-3; 40 intervals",
        "date": str(datetime.date.today()), "quiet": before[0] < QUIET and after[0] < QUIET,
        "load_average_before": before, "load_average_after": after, "cores": os.cpu_count(), "threads": 1,
        "versions": {"python": platform.python_version(), "numpy": np.__version__, "scipy": scipy.__version__},
        "rows": rows}, indent=1) + "\n")
