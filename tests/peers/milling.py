"""The cut and what gives way: the one model that every reference for stability here shares. SI throughout.

Axes: x feed, y normal to it, z along the cutter's axis, away from its tip. A tooth at phi (from +y, turning towards +x)
looks outward along e = (sin phi, cos phi, 0); the cutting force pushes the tool along c = (-cos phi, sin phi, 0).
A piece ds of its edge with lead angle kappa has the normal n = sin(kappa) e - cos(kappa) z. Moved by u since the tooth
before it, it takes off h = n . u more, and pushes the tool by (kt c - kn n) h ds. The sum over the edge and the teeth in
the cut is -H u. Straight teeth, equal pitch, circular paths.
"""
import math
from dataclasses import dataclass

import numpy as np

TURN = 2 * math.pi
# An entry or exit within this angle of a tooth period's end is at its end.
SLACK = 1e-12
# So many times the depth that the greatest force change at the softest frequency would allow, see `depth_unit`.
MIXED = 8.0


@dataclass(frozen=True)
class Cut:
    z: int
    enters: float
    leaves: float
    kt: float
    kn: float
    corner: float = 0.0
    # Depth of the edge where the corner counts; without one, H is per metre of depth.
    planned: float = 0.0

    @property
    def pitch(self):
        return TURN / self.z

    def edge(self):
        """Integrals over the edge: e e, e z, z z for the part along n; e, z for the part along c."""
        if not self.planned:
            return 1.0, 0.0, 0.0, 1.0, 0.0
        r, deep = self.corner, self.planned
        side = max(0.0, deep - r)
        steepest = math.acos(max(0.0, r - deep) / r) if r > 0 else 0.0
        swing = 0.25 * math.sin(2 * steepest)
        s, c = math.sin(steepest), math.cos(steepest)
        return (side + r * (steepest / 2 - swing), r * s * s / 2, r * (steepest / 2 + swing), side + r * (1 - c), r * s)

    def force_change(self, phi, teeth):
        """H [N/m] (with a corner) or [N/m^2], shape (..., 3, 3), of `teeth` (numbers, one pitch apart) with tooth 0 at phi."""
        phi = np.asarray(phi, float)
        ee, ez, zz, te, tz = self.edge()
        whole = np.zeros(phi.shape + (3, 3))
        for j in teeth:
            s, c = np.sin(phi + j * self.pitch), np.cos(phi + j * self.pitch)
            out = np.stack([s, c, 0 * s], -1)
            along = np.stack([-c, s, 0 * s], -1)
            up = np.broadcast_to([0.0, 0.0, 1.0], out.shape)
            takes = te * out - tz * up
            whole += self.kn * (ee * pair(out, out) - ez * (pair(out, up) + pair(up, out)) + zz * pair(up, up))
            whole -= self.kt * pair(along, takes)
        return whole

    def windows(self):
        """One tooth period of angle, split where a tooth enters or leaves: (from, to, teeth in the cut)."""
        cuts = {0.0, self.pitch}
        for edge in (self.enters, self.leaves):
            inside = edge % self.pitch
            if SLACK < inside < self.pitch - SLACK:
                cuts.add(inside)
        cuts = sorted(cuts)
        for a, b in zip(cuts, cuts[1:]):
            middle = 0.5 * (a + b)
            yield a, b, [j for j in range(self.z) if self.enters < middle + j * self.pitch < self.leaves]

    def mean(self, harmonic=0):
        """Mean over a tooth period of H exp(-i harmonic z phi)."""
        x, w = np.polynomial.legendre.leggauss(40 + 8 * abs(harmonic))
        whole = np.zeros((3, 3), complex)
        for a, b, teeth in self.windows():
            if teeth:
                phi = a + 0.5 * (b - a) * (x + 1)
                turned = np.exp(-1j * harmonic * self.z * phi) * w * 0.5 * (b - a)
                whole += np.einsum("g,gij->ij", turned, self.force_change(phi, teeth))
        return whole / self.pitch


def pair(a, b):
    return a[..., :, None] * b[..., None, :]


@dataclass(frozen=True)
class Mode:
    k: float
    zeta: float
    omega: float
    along: tuple

    def give(self, omega):
        """Receptance [m/N] at omega [rad/s], of either sign."""
        return self.omega**2 / self.k / (self.omega**2 - omega**2 + 2j * self.zeta * self.omega * omega)


@dataclass(frozen=True)
class Job:
    cut: Cut
    modes: tuple
    # Turns per second.
    n: float

    @property
    def period(self):
        return 1.0 / (self.n * self.cut.z)

    def axes(self):
        """Which of x, y, z any mode moves along."""
        return [i for i in range(3) if any(m.along[i] for m in self.modes)]

    def directions(self):
        """Rows: axes that move; columns: modes."""
        return np.array([[m.along[i] for m in self.modes] for i in self.axes()])


def depth_unit(job, points=6000):
    """A depth (or factor of H) to measure limits by: least limit of the averaged problem over all speeds,

    where 1 + 2 b Re(eigenvalue of mean H times receptance) = 0; where H nearly cancels in the mean, MIXED of what its size would give."""
    axes, lie = job.axes(), job.directions()
    among = np.ix_(axes, axes)
    omegas = [m.omega for m in job.modes]
    omega = np.linspace(0.3 * min(omegas), 2.5 * max(omegas), points)
    gives = np.stack([m.give(omega) for m in job.modes], -1)
    compliance = np.einsum("am,wm,bm->wab", lie, gives, lie)
    worst = -np.linalg.eigvals(job.cut.mean().real[among] @ compliance).real.min()
    size = 0.0
    for a, b, teeth in job.cut.windows():
        if teeth:
            change = job.cut.force_change(np.linspace(a, b, 50), teeth)[:, axes][:, :, axes]
            size += np.linalg.norm(change, axis=(1, 2)).mean() * (b - a) / job.cut.pitch
    least = 0.5 / (size * np.linalg.norm(compliance, axis=(1, 2)).max())
    return float(min(0.5 / worst if worst > 0 else math.inf, MIXED * least))
