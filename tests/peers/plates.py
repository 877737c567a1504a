"""Independent references for the plate solver. Run with any Python 3.11 or later:

    python3 tests/peers/plates.py outlines [o1 o3 ...]   writes shared/reference/outlines.json (rows of the named ones)
    python3 tests/peers/plates.py ribs                   the same for ribs in their own plane
    python3 tests/peers/plates.py check                  these programs against closed forms
    python3 tests/peers/plates.py timing                 writes tests/peers/timing.json; a quiet machine, please

Makes its own environment under target/peers; CalculiX (Debian: calculix-ccx) must be there for the solids.
"""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import venv

HERE = pathlib.Path(__file__).resolve().parent
TOP = HERE.parent.parent
WORK = TOP / "target" / "peers"
RESULT = TOP / "shared" / "reference" / "outlines.json"
# Element sizes [mm] of the two levels, and the order at which a third level was seen to go on.
SIZES = (3.0, 2.0)
ORDER = 3
FORCE = 100.0
# A tolerance is twice the estimated error and this much; never more than the last two.
ROOM = 0.01
MOST = {"mindlin": 0.03, "solid3d": 0.05}
ONE_THREAD = dict(OMP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1", PYTHONDONTWRITEBYTECODE="1")
SAYS = {
    "mindlin": "kappa 5/6, rotary inertia; supported edge: w = 0 only; a bed resists w only, per area of mid-plane",
    "solid3d": "symmetric about the mid-plane (boss and steps on both sides alike); half of the load on either face of the patch; "
               "clamped and supported edges held over their whole height; thickness steps are square",
}


def environment():
    """Runs this script again inside its own environment, which it makes first where it must."""
    folder = WORK / "venv"
    python = folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    if pathlib.Path(sys.prefix) == folder and all(os.environ.get(k) == v for k, v in ONE_THREAD.items()):
        return
    needs = (HERE / "requirements.txt").read_text()
    made = folder / "requirements.txt"
    if not made.exists() or made.read_text() != needs:
        venv.create(folder, with_pip=True, clear=True)
        subprocess.run([python, "-m", "pip", "install", "--quiet", "-r", HERE / "requirements.txt"], check=True)
        made.write_text(needs)
    done = subprocess.run([python, __file__, *sys.argv[1:]], env=dict(os.environ, **ONE_THREAD))
    sys.exit(done.returncode)


def ccx_version():
    if not shutil.which("ccx"):
        sys.exit("CalculiX is missing: install calculix-ccx (and libglu1-mesa, libxcursor1, libxft2, libxinerama1 for gmsh)")
    return subprocess.run(["ccx", "-v"], capture_output=True, text=True).stdout.split()[-1]


def value(v, unit):
    return {"value": v, "unit": unit}


def digits(v, n=6):
    return float(f"{v:.{n}g}")


def extrapolated(coarse, fine):
    """Limit of each value, and the greatest relative error: what the last step changed, or what the limit still adds."""
    ratio = (SIZES[0] / SIZES[1]) ** ORDER
    limit = [f + (f - c) / (ratio - 1) for c, f in zip(coarse, fine, strict=True)]
    error = max(max(abs(f - c), abs(l - f)) / abs(l) for c, f, l in zip(coarse, fine, limit))
    return [digits(v) for v in limit], error


def row(name, o, theory, source, expected, note, suffix=""):
    """`expected`: name to (unit, values at the coarse mesh, at the fine one)."""
    found, errors = {}, {}
    for key, (unit, coarse, fine) in expected.items():
        limit, errors[key] = extrapolated(coarse, fine)
        found[key] = value(limit, unit)
    material = o["material"]
    inputs = {"E": value(material["E"], "MPa"), "nu": value(material["nu"], "-"), "rho": value(material["rho"], "kg/m^3"),
              "F": value(FORCE, "N"), "patch_radius": value(o["patch"], "mm"), "edge": value(o["edge"], "text"),
              "regions": value([{**r["shape"], "thickness": r["thickness"], "bed_N_per_m3": r["bed"]} for r in o["regions"]], "mm"),
              "slots": value([s["slot"] for s in o["slots"]], "mm"), "points": value(o["points"], "mm")}
    if suffix:
        inputs["points"] = value([o["points"][k] for k in o["stress"]], "mm")
    told = ", ".join(f"{k} {100 * e:.2f} %" for k, e in errors.items())
    return {"id": f"{name}-{theory}{suffix}", "topic": "outline of our own: " + theory, "inputs": inputs, "expected": found,
            "tolerance_rel": digits(min(MOST[theory], ROOM + 2 * max(errors.values())), 2), "theory": theory,
            "source": source, "address": "", "read_or_memory": "computed",
            "note": f"{o['says']}; regions painted in order, later over earlier, slots cut through last (middles of the round ends, "
                    f"width); w: mean over the patch, clipped to the material, under F spread evenly on it, for each point; {note}; "
                    f"element sizes {SIZES[0]:g} and {SIZES[1]:g} mm (half of it at slots, a third at patches), extrapolated; "
                    f"estimated error {told}"}


def mindlin_rows(name, o, meshes):
    import mindlin
    import skfem
    source = f"own computation, scikit-fem {skfem.__version__}, quadratic triangles"
    w, f, greatest, mean = [], [], [], []
    for m in meshes:
        plate = mindlin.Plate(o, m)
        plate.factor()
        w.append([FORCE * plate.compliance(k) for k in range(len(o["points"]))])
        f.append(list(plate.tones()) if o.get("tones", True) else [])
        both = [plate.stress(k) for k in o["stress"]]
        greatest.append([FORCE * a for a, _ in both])
        mean.append([FORCE * b for _, b in both])
    expected = {"w": ("mm", *w), "f": ("Hz", *f)} if f[0] else {"w": ("mm", *w)}
    rows = [row(name, o, "mindlin", source, expected, SAYS["mindlin"])]
    if o["stress"]:
        says = ("sigma_max: greatest absolute principal bending stress at the extreme fibre within the patch that bears the load, slopes' "
                "gradients at the nodes averaged over the patch's triangles; sigma_mean: principal stress of the patch's mean tensor")
        rows.append(row(name, o, "mindlin", source, {"sigma_max": ("MPa", *greatest), "sigma_mean": ("MPa", *mean)}, says, "-stress"))
    return rows


def solid_row(name, o, meshes, version):
    import solid
    folder = WORK / "solids"
    folder.mkdir(parents=True, exist_ok=True)
    w, f = [], []
    for m in meshes:
        body = solid.Solid(o, m, folder)
        w.append([FORCE * c for c in body.compliances()])
        f.append(body.tones())
    source = f"own computation, CalculiX {version}, fifteen-node wedges"
    return row(name, o, "solid3d", source, {"w": ("mm", *w), "f": ("Hz", *f)}, SAYS["solid3d"])


def keep(rows):
    """Puts rows in place of those of the same id, a row a line."""
    old = json.loads(RESULT.read_text()) if RESULT.exists() else []
    new = {r["id"]: r for r in old} | {r["id"]: r for r in rows}
    RESULT.write_text("[\n" + ",\n".join(json.dumps(new[k]) for k in sorted(new)) + "\n]\n")
    for r in rows:
        print(r["id"], r["tolerance_rel"], {k: v["value"] for k, v in r["expected"].items()}, flush=True)


def outlines(names):
    import shapes
    version = ccx_version()
    for name in names or shapes.OUTLINES:
        o = shapes.OUTLINES[name]
        meshes = [shapes.mesh(o, h) for h in SIZES]
        keep(mindlin_rows(name, o, meshes))
        if o["solid"]:
            keep([solid_row(name, o, meshes, version)])


if __name__ == "__main__":
    environment()
    what, names = (sys.argv[1:] or ["outlines"])[0], sys.argv[2:]
    if what == "outlines":
        outlines(names)
    elif what == "ribs":
        import ribs
        keep(ribs.rows(value))
    elif what == "check":
        import checks
        ccx_version()
        checks.run(WORK)
    elif what == "timing":
        import timing
        timing.run(HERE / "timing.json")
    else:
        sys.exit(__doc__)
