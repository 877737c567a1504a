"""The same outlines as quadratic solids (CalculiX, fifteen-node wedges) on the same triangles, pulled up from the mid-plane.

The part is symmetric about its mid-plane and bends antisymmetrically: the upper half is enough, u = v = 0 on the
mid-plane. Half of the load lies on the upper face of a patch, half on the lower, and w is their mean with the load's weight.
"""
import os
import re
import subprocess

import numpy as np
from skfem import Basis, ElementTriP2, LinearForm

import shapes

# Tallest layer of wedges [mm].
LAYER = 4.0
# Degrees of freedom held: of all on a clamped face, w on a supported one.
HELD = {"clamped": "1,3", "supported": "3,3"}


def levels(heights):
    """Heights of the layers' faces, from the half thicknesses that occur."""
    z = [0.0]
    for top in sorted(set(heights)):
        n = int(np.ceil((top - z[-1]) / LAYER))
        z += list(z[-1] + (top - z[-1]) * np.arange(1, n + 1) / n)
    return np.array(z)


class Solid:
    def __init__(self, o, m, folder):
        self.o, self.m, self.folder = o, m, folder
        self.flat = Basis(m, ElementTriP2(), intorder=5)
        self.top = shapes.per_triangle(o, m, "thickness") / 2
        z = levels(self.top)
        tri, place = self.flat.element_dofs.T, self.flat.doflocs
        # Anticlockwise, with the sides' middles in the wedge's order.
        p = place[:, tri[:, :3]]
        clock = np.cross((p[:, :, 1] - p[:, :, 0]).T, (p[:, :, 2] - p[:, :, 0]).T) < 0
        tri = np.where(clock[:, None], tri[:, [0, 2, 1, 5, 4, 3]], tri)
        self.number = {}
        self.wedges = []
        for layer in range(len(z) - 1):
            a, b = 2 * layer, 2 * layer + 2
            for e in np.flatnonzero(self.top > z[layer] + 1e-9):
                low, high, mid = ([(int(n), k) for n in ns] for ns, k in
                                  ((tri[e], a), (tri[e], b), (tri[e, :3], a + 1)))
                self.wedges.append([self.node(k) for k in low[:3] + high[:3] + low[3:] + high[3:] + mid])
        height = np.empty(2 * len(z) - 1)
        height[::2], height[1::2] = z, (z[1:] + z[:-1]) / 2
        self.xyz = [(*place[:, n], height[k]) for n, k in self.number]
        self.z = z

    def node(self, key):
        return self.number.setdefault(key, len(self.number) + 1)

    def loads(self, k):
        """Consistent nodal forces of 1/2 N on the upper face of patch k."""
        part = shapes.in_patch(self.o, self.m, k)
        basis = Basis(self.m, ElementTriP2(), elements=part, intorder=5)
        f = LinearForm(lambda v, w: v).assemble(basis) / basis.dx.sum()
        level = 2 * int(np.argmin(abs(self.z - self.top[part[0]])))
        return {self.number[n, level]: f[n] for n in np.flatnonzero(f)}

    def deck(self, steps):
        o, lines = self.o, ["*NODE,NSET=ALL"]
        lines += [f"{i},{x:.12g},{y:.12g},{z:.12g}" for i, (x, y, z) in enumerate(self.xyz, 1)]
        lines.append("*ELEMENT,TYPE=C3D15,ELSET=PART")
        for i, w in enumerate(self.wedges, 1):
            lines += [f"{i}," + ",".join(map(str, w[:10])) + ",", ",".join(map(str, w[10:]))]
        E, nu, rho = (o["material"][k] for k in ("E", "nu", "rho"))
        lines += ["*MATERIAL,NAME=M", "*ELASTIC", f"{E},{nu}", "*DENSITY", f"{rho * 1e-12:.6e}",
                  "*SOLID SECTION,ELSET=PART,MATERIAL=M", "*BOUNDARY"]
        lines += [f"{i},1,2" for (n, k), i in self.number.items() if k == 0]
        edge = set(self.flat.get_dofs(shapes.outer_facets(o, self.m)).all().tolist())
        lines += [f"{i},{HELD[o['edge']]}" for (n, k), i in self.number.items() if n in edge]
        return "\n".join(lines + steps) + "\n"

    def run(self, name, steps):
        with open(os.path.join(self.folder, name + ".inp"), "w") as f:
            f.write(self.deck(steps))
        done = subprocess.run(["ccx", name], cwd=self.folder, capture_output=True, text=True,
                              env=dict(os.environ, OMP_NUM_THREADS="1"))
        assert "Job finished" in done.stdout, done.stdout[-2000:]
        with open(os.path.join(self.folder, name + ".dat")) as f:
            return f.read()

    def compliances(self):
        steps, loads = [], [self.loads(k) for k in range(len(self.o["points"]))]
        for k, f in enumerate(loads):
            steps += [f"*NSET,NSET=P{k}"] + [f"{i}," for i in f]
        for k, f in enumerate(loads):
            steps += ["*STEP", "*STATIC", "*CLOAD,OP=NEW"] + [f"{i},3,{v / 2:.12g}" for i, v in f.items()]
            steps += [f"*NODE PRINT,NSET=P{k}", "U", "*END STEP"]
        # One block of the file for each step.
        blocks = self.run("static", steps).split("displacements")[1:]
        found = []
        for f, block in zip(loads, blocks, strict=True):
            rows = (line.split() for line in block.splitlines())
            u = {int(r[0]): float(r[3]) for r in rows if len(r) == 4 and r[0].isdigit()}
            found.append(sum(v * u[i] for i, v in f.items()))
        return found

    def tones(self, count=6):
        text = self.run("tones", ["*STEP", "*FREQUENCY", str(count), "*END STEP"])
        rows = re.findall(r"^\s+\d+\s+\S+\s+\S+\s+(\S+)\s+\S+\s*$", text, re.M)
        return [float(r) for r in rows[:count]]
