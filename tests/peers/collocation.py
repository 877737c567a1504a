"""Reference value: the map over one tooth period by collocation at Chebyshev points, one element for each stretch with the
same teeth in the cut, exact free flight between. Converges faster than any power of the order where the force is smooth."""
import math

import numpy as np
from scipy.linalg import expm, lu_factor, lu_solve
from scipy.optimize import brentq

# Points: so many, and so many for every cycle of the fastest mode within an element.
LEAST_ORDER = 14
PER_CYCLE = 14
# Steps of the search from below for each unit of depth, and how many units it goes through at most.
STEPS = 60
MOST = 10.0
# A hump of the radius this close below one is climbed.
HUMP = 0.97
LIMIT_REL = 1e-9
# Raising the order by half may move the radius at the limit by this much.
SETTLED = 1e-6


def points(order):
    """Chebyshev points in [-1, 1], rising, and the matrix that differentiates what is known there."""
    x = -np.cos(np.pi * np.arange(order + 1) / order)
    gap = x[:, None] - x[None, :] + np.eye(order + 1)
    # Barycentric weights: alternate, halved at both ends.
    weight = (-1.0) ** np.arange(order + 1)
    weight[[0, -1]] *= 0.5
    d = weight[None, :] / weight[:, None] / gap
    np.fill_diagonal(d, 0.0)
    np.fill_diagonal(d, -d.sum(1))
    return x, d


class Period:
    """The map of a job, ready for any depth. Time is counted in 1 / omega of the first mode."""

    def __init__(self, job, more=1.0):
        cut, modes = job.cut, job.modes
        self.count = len(modes)
        unit = modes[0].omega
        per_angle = unit / (2 * math.pi * job.n)
        omega = np.array([m.omega for m in modes]) / unit
        zeta = np.array([m.zeta for m in modes])
        m = self.count
        self.free = np.zeros((2 * m, 2 * m))
        self.free[:m, m:] = np.eye(m)
        self.free[m:, :m] = -np.diag(omega**2)
        self.free[m:, m:] = -np.diag(2 * zeta * omega)
        axes, self.lie = job.axes(), job.directions()
        per_mass = np.array([(x.omega / unit) ** 2 / x.k for x in modes])
        stretches = list(cut.windows())
        longest = max(b - a for a, b, teeth in stretches if teeth) * per_angle
        self.order = int(more * (LEAST_ORDER + PER_CYCLE * longest * omega.max() / (2 * math.pi)))
        x, d = points(self.order)
        self.parts = []
        for a, b, teeth in stretches:
            length = (b - a) * per_angle
            if not teeth:
                self.parts.append(expm(self.free * length))
                continue
            change = cut.force_change(a + 0.5 * (b - a) * (x + 1), teeth)[:, axes][:, :, axes]
            push = per_mass[:, None] * (self.lie.T @ change)
            still = np.kron(d * (2 / length), np.eye(2 * m)) - np.kron(np.eye(len(x)), self.free)
            self.parts.append((still, push))

    def multipliers(self, depth):
        """Eigenvalues of the map at a depth, or at a factor of H."""
        m, axes = self.count, len(self.lie)
        nodes = self.order + 1
        elements = sum(isinstance(p, tuple) for p in self.parts)
        past = elements * nodes * axes
        # What is known: where the tool was at every node one period ago, and the state now.
        state = np.hstack([np.zeros((2 * m, past)), np.eye(2 * m)])
        told, at = [], 0
        for part in self.parts:
            if not isinstance(part, tuple):
                state = part @ state
                continue
            still, push = part
            system, right = still.copy(), np.zeros((2 * m * nodes, past + 2 * m))
            for i in range(nodes):
                rows = slice(2 * m * i + m, 2 * m * (i + 1))
                system[rows, 2 * m * i:2 * m * i + m] += depth * push[i] @ self.lie
                right[rows, at:at + axes] = depth * push[i]
                at += axes
            system[:2 * m] = np.eye(2 * m, 2 * m * nodes)
            right[:2 * m] = state
            found = lu_solve(lu_factor(system, overwrite_a=True, check_finite=False), right, check_finite=False)
            places = found.reshape(nodes, 2 * m, -1)[:, :m]
            told.append((self.lie @ places).reshape(nodes * axes, -1))
            state = found[-2 * m:]
        return np.linalg.eigvals(np.vstack(told + [state]))

    def radius(self, depth):
        return float(abs(self.multipliers(depth)).max())

    def limit(self, unit):
        """First depth where the radius passes one, searched from below in steps of `unit`; None up to MOST units."""
        excess = lambda depth: self.radius(depth) - 1.0
        step = unit / STEPS
        low, before, last = 0.0, None, None
        for i in range(1, int(STEPS * MOST) + 1):
            high = i * step
            now = excess(high)
            if now > 0:
                return self.between(low, high)
            # Three points with the middle one highest, and high enough to pass one between.
            if before is not None and last > max(before, now) and last > HUMP - 1.0:
                top = highest(excess, high - 2 * step, high)
                if excess(top) > 0:
                    return self.between(high - 2 * step, top)
            low, before, last = high, last, now
        return None

    def between(self, low, high):
        low = max(low, 1e-6 * high)
        limit = brentq(lambda depth: self.radius(depth) - 1.0, low, high, xtol=LIMIT_REL * high, rtol=LIMIT_REL)
        all_ = self.multipliers(limit)
        return float(limit), complex(all_[abs(all_).argmax()])


def highest(f, low, high, rounds=24):
    """Golden section for the greatest value between."""
    share = 0.5 * (math.sqrt(5.0) - 1.0)
    for _ in range(rounds):
        left, right = high - share * (high - low), low + share * (high - low)
        if f(left) > f(right):
            high = right
        else:
            low = left
    return 0.5 * (low + high)


def settled_limit(job, unit):
    """The first limit (depth, multiplier) or None, and the period whose order let it stand still."""
    more = 1.0
    while True:
        period, finer = Period(job, more), Period(job, 1.5 * more)
        found = period.limit(unit)
        at = found[0] if found else MOST * unit
        if abs(finer.radius(at) - period.radius(at)) < SETTLED:
            return found, period
        more *= 1.5


def kind(multiplier):
    """How the cut goes wrong: waves of its own frequency, every second tooth alike, or every tooth."""
    if abs(multiplier.imag) > 1e-6:
        return "hopf"
    return "flip" if multiplier.real < 0 else "fold"
