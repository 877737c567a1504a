"""The usual fast way, to measure speed against: the tooth period cut into equal intervals, the mean force change in each,
the place one period ago linear between the ends (first-order semi-discretization). Everything runs over many speeds and
depths at once. `Single` has one mode in x; `Double` one each in x and y."""
import numpy as np

INTERVALS = 40
# Dimension of the Krylov space of the strong variant.
KRYLOV = 16


def mean_change(cut, count):
    """Mean of H over each interval (x and y), by Gauss points on the engaged part of each tooth."""
    x, w = np.polynomial.legendre.leggauss(12)
    edges = np.linspace(0.0, cut.pitch, count + 1)
    whole = np.zeros((count, 2, 2))
    for a, b, teeth in cut.windows():
        for i in range(count):
            low, high = max(a, edges[i]), min(b, edges[i + 1])
            if teeth and high > low:
                change = cut.force_change(low + 0.5 * (high - low) * (x + 1), teeth)[:, :2, :2]
                whole[i] += np.einsum("g,gij->ij", w, change) * 0.5 * (high - low) / (edges[1] - edges[0])
    return whole


class Single:
    """State: place, speed / omega, then places 1, 2, ... intervals ago; time in 1 / omega."""

    def __init__(self, job, count=INTERVALS):
        self.mode, = job.modes
        self.z, self.count = job.cut.z, count
        self.push = mean_change(job.cut, count)[:, 0, 0] / self.mode.k
        # Places that no cutting interval looks back at only add zeros to the spectrum.
        looked_at = {self.ago(count - i - d) for i in np.flatnonzero(self.push) for d in (0, 1)}
        self.read = np.array(sorted({0, 1} | looked_at))

    @staticmethod
    def ago(intervals):
        """Where the place so many intervals ago stands in the state."""
        return intervals + 1 if intervals else 0

    def steps(self, n, depth):
        """For each interval: what place and speed become of themselves, and of the place a period ago at both ends."""
        h = self.mode.omega / (n * self.z) / self.count
        c = self.mode.zeta
        for push in self.push:
            force = depth * push
            stiff = 1.0 + force
            root = np.sqrt((c * c - stiff).astype(complex))
            fade = np.exp(-c * h)
            even, odd = (fade * np.cosh(root * h)).real, (fade * np.sinh(root * h) / root).real
            xx, xv, vx, vv = even + c * odd, odd, -stiff * odd, even - c * odd
            if push == 0.0:
                yield (xx, xv, vx, vv), None
                continue
            # A constant push of one, and one that rises to one.
            x0, v0 = (1 - xx) / stiff, xv
            x1 = (1 - (2 * c * x0 + v0) / h) / stiff
            v1 = x0 / h
            yield (xx, xv, vx, vv), (force * (x0 - x1), force * x1, force * (v0 - v1), force * v1)

    def matrix(self, n, depth):
        size = self.count + 2
        whole = np.zeros((n.size, size, size))
        x, v = np.zeros((2, n.size, size))
        x[:, 0] = v[:, 1] = 1.0
        whole[:, size - 1, 0] = 1.0
        for i, ((xx, xv, vx, vv), back) in enumerate(self.steps(n, depth)):
            x, v = xx[:, None] * x + xv[:, None] * v, vx[:, None] * x + vv[:, None] * v
            if back:
                far, near = self.ago(self.count - i), self.ago(self.count - i - 1)
                x[:, far] += back[0]
                x[:, near] += back[1]
                v[:, far] += back[2]
                v[:, near] += back[3]
            if i < self.count - 1:
                whole[:, self.count - i] = x
        whole[:, 0], whole[:, 1] = x, v
        return whole

    def plain(self, n, depth):
        whole = self.matrix(n, depth)[:, self.read[:, None], self.read[None, :]]
        return abs(np.linalg.eigvals(whole)).max(-1)

    def strong(self, n, depth):
        """The map is marched, never formed: Arnoldi steps for all points at once."""
        steps = list(self.steps(n, depth))

        def mapped(state):
            after = np.empty_like(state)
            x, v = state[0], state[1]
            after[self.count + 1] = x
            for i, ((xx, xv, vx, vv), back) in enumerate(steps):
                x, v = xx * x + xv * v, vx * x + vv * v
                if back:
                    far, near = state[self.ago(self.count - i)], state[self.ago(self.count - i - 1)]
                    x += back[0] * far + back[1] * near
                    v += back[2] * far + back[3] * near
                if i < self.count - 1:
                    after[self.count - i] = x
            after[0], after[1] = x, v
            return after

        start = np.random.default_rng(1).normal(size=self.count + 2)
        basis = np.empty((KRYLOV + 1, self.count + 2, n.size))
        basis[0] = (start / np.linalg.norm(start))[:, None]
        small = np.zeros((n.size, KRYLOV + 1, KRYLOV))
        for j in range(KRYLOV):
            new = mapped(basis[j])
            # Twice is enough.
            for _ in range(2):
                share = np.einsum("ksg,sg->kg", basis[:j + 1], new)
                new -= np.einsum("ksg,kg->sg", basis[:j + 1], share)
                small[:, :j + 1, j] += share.T
            size = np.sqrt(np.einsum("sg,sg->g", new, new))
            small[:, j + 1, j] = size
            basis[j + 1] = new / np.maximum(size, 1e-14)
        return abs(np.linalg.eigvals(small[:, :KRYLOV])).max(-1)


class Double:
    """The same for a mode in x and one in y; exponentials of all intervals and points at once."""

    def __init__(self, job, count=INTERVALS):
        self.modes, self.z, self.count = job.modes, job.cut.z, count
        self.unit = self.modes[0].omega
        omega = np.array([m.omega for m in self.modes]) / self.unit
        self.free = np.zeros((4, 4))
        self.free[:2, 2:] = np.eye(2)
        self.free[2:, :2] = -np.diag(omega**2)
        self.free[2:, 2:] = -np.diag([2 * m.zeta * w for m, w in zip(self.modes, omega)])
        per_mass = np.array([w * w / m.k for m, w in zip(self.modes, omega)])
        self.push = per_mass[:, None] * mean_change(job.cut, count)

    def plain(self, n, depth):
        h = self.unit / (n * self.z) / self.count
        pushed = depth[:, None, None, None] * self.push
        whole = np.zeros((n.size, self.count, 8, 8))
        whole[..., :4, :4] = self.free
        whole[..., 2:4, :2] -= pushed
        whole[..., 2:4, 4:6] = pushed
        whole *= h[:, None, None, None]
        # The place a period ago rises along the interval.
        whole[..., 4, 6] = whole[..., 5, 7] = 1.0
        step = exponential(whole)
        size = 4 + 2 * self.count
        # The state at the beginning stands first, then the places 1, 2, ... intervals ago.
        ago = lambda k: slice(0, 2) if k == 0 else slice(2 + 2 * k, 4 + 2 * k)
        after = np.zeros((n.size, size, size))
        after[:, ago(self.count), :2] = np.eye(2)
        state = np.zeros((n.size, 4, size))
        state[:, :, :4] = np.eye(4)
        for i in range(self.count):
            state = step[:, i, :4, :4] @ state
            level, rise = step[:, i, :4, 4:6], step[:, i, :4, 6:8]
            state[:, :, ago(self.count - i)] += level - rise
            state[:, :, ago(self.count - i - 1)] += rise
            if i < self.count - 1:
                after[:, ago(self.count - i - 1)] = state[:, :2]
        after[:, :4] = state
        return abs(np.linalg.eigvals(after)).max(-1)


def exponential(a):
    """By squaring a Taylor sum, for a stack of small matrices."""
    halvings = max(0, int(np.ceil(np.log2(max(abs(a).sum(-1).max(), 1e-9) / 0.5))))
    a = a / 2.0**halvings
    term = whole = np.broadcast_to(np.eye(a.shape[-1]), a.shape)
    for k in range(1, 13):
        term = term @ a / k
        whole = whole + term
    for _ in range(halvings):
        whole = whole @ whole
    return whole


def limits(radius, speeds, most, scan=24, fine=1e-3):
    """First depth over one at every speed: depths from below, only where none was found yet, then halving. NaN for none."""
    low, high = np.zeros(speeds.size), np.full(speeds.size, np.nan)
    for i in range(1, scan + 1):
        open_ = np.flatnonzero(np.isnan(high))
        if not len(open_):
            break
        depth = np.full(len(open_), most * i / scan)
        over = radius(speeds[open_], depth) > 1.0
        high[open_[over]] = depth[over]
        low[open_[~over]] = depth[~over]
    while True:
        wide = np.flatnonzero(high - low > fine * high)
        if not len(wide):
            return 0.5 * (low + high)
        middle = 0.5 * (low[wide] + high[wide])
        over = radius(speeds[wide], middle) > 1.0
        high[wide[over]] = middle[over]
        low[wide[~over]] = middle[~over]
