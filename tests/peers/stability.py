"""Independent references for the stability of milling. Run with any Python 3.11 or later:

    python3 tests/peers/stability.py cases      writes shared/reference/milling.json; some minutes
    python3 tests/peers/stability.py check      these programs against exact values, printed ones and each other
    python3 tests/peers/stability.py timing     writes tests/peers/stability-timing.json; a quiet machine, please

Makes its own environment under target/peers, the same as plates.py.
"""
import json
import os
import pathlib
import subprocess
import sys
import venv

HERE = pathlib.Path(__file__).resolve().parent
TOP = HERE.parent.parent
RESULT = TOP / "shared" / "reference" / "milling.json"
PRINTED = TOP / "shared" / "reference" / "stability.json"
ONE_THREAD = dict(OMP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1", PYTHONDONTWRITEBYTECODE="1")


def environment():
    """Runs this script again inside the environment, which it makes first where it must."""
    folder = TOP / "target" / "peers" / "venv"
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


if __name__ == "__main__":
    environment()
    what = (sys.argv[1:] or [""])[0]
    if what == "cases":
        import draws
        rows = draws.run()
        RESULT.write_text("[\n" + ",\n".join(json.dumps(row) for row in rows) + "\n]\n")
    elif what == "check":
        import witnesses
        witnesses.run(json.loads(PRINTED.read_text()), json.loads(RESULT.read_text()))
    elif what == "timing":
        import pace
        pace.run(HERE / "stability-timing.json")
    else:
        sys.exit(__doc__)
