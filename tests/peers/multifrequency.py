"""Second opinion: the same map in the frequency domain. The vibration is a chatter frequency and its neighbours a whole
number of tooth frequencies away; the force change couples them by its Fourier coefficients. Truncated on either side, the
error falls only with a power of how many are kept, because the force jumps where a tooth enters or leaves."""
import math

import numpy as np

# Neighbours kept on either side: so many over the share of the time in which a tooth cuts, within these bounds.
PER_SHARE = 6
FEWEST, MOST = 16, 72
# Frequencies between zero and half the tooth frequency, beyond which everything is mirrored; halvings of a bracket.
FREQUENCIES = 1200
HALVINGS = 20
# An eigenvalue is the continued one if it moved by less than this share; and is real if its angle is below this.
NEAR = 0.5
REAL = 1e-3


class Coupled:
    def __init__(self, job, most):
        self.job, self.most = job, most
        self.tooth = 2 * math.pi / job.period
        share = (job.cut.leaves - job.cut.enters) / job.cut.pitch
        kept = int(min(MOST, max(FEWEST, PER_SHARE / share)))
        self.orders = np.arange(-kept, kept + 1)
        axes = job.axes()
        change = {s: job.cut.mean(s)[np.ix_(axes, axes)] for s in range(-2 * kept, 2 * kept + 1)}
        self.change = np.block([[change[p - q] for q in self.orders] for p in self.orders])
        self.lie = job.directions()

    def matrix(self, omega):
        """Receptance times change times (1 - delay): a depth is a limit where 1 + depth eigenvalue = 0."""
        gives = np.stack([m.give(omega + self.orders * self.tooth) for m in self.job.modes], -1)
        blocks = np.einsum("am,wm,bm->wab", self.lie, gives, self.lie)
        count = len(self.lie)
        rows = self.change.reshape(len(self.orders), count, -1)
        whole = np.einsum("wab,wbc->wac", blocks, rows).reshape(rows.shape[0] * count, -1)
        return whole * (1 - np.exp(-1j * omega * self.job.period))

    def eigenvalues(self, omega):
        return np.linalg.eigvals(self.matrix(omega))

    def worth(self, values):
        """Only what can be a limit within the depths looked at."""
        return values[abs(values) > 0.3 / self.most]

    def crossing(self, low, high, start):
        """The depth where an eigenvalue, followed from `start` at `low`, becomes real and negative before `high`."""
        for _ in range(HALVINGS):
            middle = 0.5 * (low + high)
            now = self.eigenvalues(middle)
            now = now[abs(now - start).argmin()]
            if now.imag * start.imag > 0:
                low, start = middle, now
            else:
                high = middle
        return -1.0 / start.real if start.real < 0 else math.inf


def tone(job, depth, multiplier):
    """The strongest frequency [Hz] in the places of the tool at a limit, and the next one's share of it."""
    it = Coupled(job, depth)
    base = math.atan2(abs(multiplier.imag), multiplier.real) / job.period
    values, vectors = np.linalg.eig(it.matrix(base))
    shape = vectors[:, abs(1 + depth * values).argmin()].reshape(len(it.orders), -1)
    heard = abs(base + it.orders * it.tooth)
    loud = np.linalg.norm(shape, axis=1)
    first = loud.argmax()
    # A flip holds every frequency twice.
    others = abs(heard - heard[first]) > 1e-6 * it.tooth
    return heard[first] / (2 * math.pi), loud[others].max() / loud[first]


def limit(job, most):
    """The least depth at which the cut is on its limit, up to `most`; infinite if none."""
    it = Coupled(job, most)
    least = math.inf
    grid = np.linspace(0.0, 0.5 * it.tooth, FREQUENCIES + 1)
    grid[0] = 1e-6 * it.tooth
    before = it.worth(it.eigenvalues(grid[0]))
    for low, high in zip(grid, grid[1:]):
        now = it.worth(it.eigenvalues(high))
        for start in before:
            if not len(now):
                break
            end = now[abs(now - start).argmin()]
            near = abs(end - start) < NEAR * abs(start)
            if near and start.imag * end.imag <= 0 and min(start.real, end.real) < 0:
                if -1.0 / min(start.real, end.real) < least:
                    least = min(least, it.crossing(low, high, start))
        before = now
    # Every second tooth alike: real already at half the tooth frequency.
    for value in it.eigenvalues(0.5 * it.tooth):
        if value.real < 0 and abs(value.imag) < REAL * abs(value.real):
            least = min(least, -1.0 / value.real)
    return least
