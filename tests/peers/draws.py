"""Cases drawn by lot, always the same ones, and what the collocation says of each."""
import math
import multiprocessing
import os

import numpy as np

import collocation
import milling
import multifrequency

SEED = 20261125
# How many of each sort. The first three have one mode for each direction named; `twice` two for each of x and y; `web` a
# cutter in x and y over a web that gives along the axis, cut by a corner.
SORTS = {"x": 65, "y": 60, "equal": 45, "detuned": 50, "unlike": 50, "twice": 22, "web": 20}
IMMERSION = (0.03, 1.5)
CYCLES = (0.3, 8.0)
ZETA = (0.005, 0.06)
STIFFNESS = (3e5, 3e7)
HERTZ = (150.0, 4000.0)
KT = (3e8, 3e9)
RATIO = (0.05, 0.6)
DETUNED = 0.3
CORNER = (2e-4, 3e-3)
PLANNED = (1e-4, 3e-3)
# Every so many of the cases get a second opinion, from the sorts whose modes are few.
SECOND_EVERY = 5
PROCESSES = 2
# Radius told at these shares of the limit.
AROUND = (0.97, 1.03)


def short(value, digits=5):
    return float(f"{value:.{digits}g}")


class Lot:
    def __init__(self, rng):
        self.rng = rng

    def evenly(self, low, high):
        return short(self.rng.uniform(low, high))

    def by_size(self, low, high):
        return short(math.exp(self.rng.uniform(math.log(low), math.log(high))))

    def mode(self, along):
        return {"k": self.by_size(*STIFFNESS), "zeta": self.by_size(*ZETA), "hertz": self.by_size(*HERTZ), "along": along}

    def like(self, mode, along, **others):
        return {**mode, "along": along, **others}

    def modes(self, sort):
        x, y, z = [1, 0, 0], [0, 1, 0], [0, 0, 1]
        if sort in "xy":
            return [self.mode(x if sort == "x" else y)]
        first = self.mode(x)
        if sort == "equal":
            return [first, self.like(first, y)]
        detuned = short(first["hertz"] * (1 + self.rng.uniform(-DETUNED, DETUNED)))
        if sort == "detuned":
            return [first, self.like(first, y, hertz=detuned)]
        near = self.like(self.mode(y), y, hertz=detuned, k=short(first["k"] * self.by_size(0.3, 3.0)))
        if sort == "unlike":
            return [first, near]
        if sort == "twice":
            slow = [self.like(m, m["along"], hertz=short(m["hertz"] * self.by_size(0.2, 0.8)), zeta=self.by_size(*ZETA),
                              k=short(m["k"] * self.by_size(0.5, 5.0))) for m in (first, near)]
            return [first, near, *slow]
        web = self.like(self.mode(z), z, hertz=short(first["hertz"] * self.by_size(0.3, 1.5)), k=short(first["k"] * self.by_size(0.03, 1.0)))
        return [first, near, web]

    def case(self, name, sort):
        z = int(self.rng.integers(1, 7))
        share = min(1.0, self.by_size(*IMMERSION))
        up = bool(self.rng.integers(2))
        angle = math.acos(1 - 2 * share)
        modes = self.modes(sort)
        case = {"id": name, "sort": sort, "z": z, "immersion": share, "way": "slot" if share == 1 else "up" if up else "down",
                "phi_st": 0.0 if up or share == 1 else math.pi - angle, "phi_ex": angle if up or share == 1 else math.pi,
                "kt": self.by_size(*KT), "kr_ratio": self.evenly(*RATIO),
                "n": short(modes[0]["hertz"] / (z * self.by_size(*CYCLES))), "modes": modes}
        if sort == "web":
            case |= {"corner": self.by_size(*CORNER), "planned": self.by_size(*PLANNED)}
        return case


def cases():
    lot = Lot(np.random.default_rng(SEED))
    return [lot.case(f"{sort}{i + 1:02d}", sort) for sort, count in SORTS.items() for i in range(count)]


def job(case):
    cut = milling.Cut(case["z"], case["phi_st"], case["phi_ex"], case["kt"], case["kt"] * case["kr_ratio"],
                      case.get("corner", 0.0), case.get("planned", 0.0))
    modes = [milling.Mode(m["k"], m["zeta"], milling.TURN * m["hertz"], tuple(m["along"])) for m in case["modes"]]
    return milling.Job(cut, tuple(modes), case["n"])


def answered(case):
    """The case with `most`, where the search ended, and its first `limit` (depth, or factor of H for a web) or none."""
    it = job(case)
    unit = milling.depth_unit(it)
    found, period = collocation.settled_limit(it, unit)
    said = {"most": short(collocation.MOST * unit, 9), "order": period.order, "limit": None}
    if found:
        limit, multiplier = short(found[0], 9), complex(short(found[1].real, 8), short(abs(found[1].imag), 8))
        hertz, next_ = multifrequency.tone(it, limit, multiplier)
        said |= {"limit": limit, "tone": short(hertz, 6), "next_tone": short(next_, 3),
                 "multiplier": [multiplier.real, multiplier.imag], "kind": collocation.kind(multiplier),
                 "around": [short(period.radius(share * found[0]), 8) for share in AROUND]}
    if case["second"]:
        second = multifrequency.limit(it, collocation.MOST * unit)
        said["second"] = short(second, 6) if second < said["most"] else None
    print(case["id"], said, flush=True)
    return {k: v for k, v in case.items() if k != "second"} | said


def run():
    asked = cases()
    for i, case in enumerate(asked):
        case["second"] = i % SECOND_EVERY == 0 and case["sort"] != "twice"
    with multiprocessing.Pool(PROCESSES, initializer=os.nice, initargs=(10,)) as pool:
        return pool.map(answered, asked, chunksize=1)
