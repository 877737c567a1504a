"""The whole visit in a browser, as a new user makes it. `cargo xtask proof` builds the page and runs this:

    python3 tests/proof/proof.py REVISION [part ...]

Parts: visit, versions, paper, languages, screens, storage, pace, lighthouse, sizes; all of them where none is named, and only then are the
results written to tests/proof/RESULTS.md. Pictures and printed pages for people to look at: target/proof/out.
Makes its own environment under target/proof; needs Chromium, poppler-utils and npm.
"""
import os
import pathlib
import shutil
import subprocess
import sys
import traceback
import venv

HERE = pathlib.Path(__file__).resolve().parent
TOP = HERE.parent.parent
WORK = TOP / "target" / "proof"
PARTS = ("visit", "versions", "paper", "languages", "screens", "storage", "pace", "lighthouse", "sizes")
TITLES = {"visit": "A new user", "versions": "Offline, updates, one file", "paper": "Paper and codes", "languages": "Languages and widths",
          "screens": "Screens", "storage": "Storage", "pace": "Pace", "lighthouse": "Lighthouse 12.2.3", "sizes": "Sizes"}
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage"]


def environment():
    """Runs this script again inside its own environment, which it makes first where it must."""
    folder = WORK / "venv"
    if pathlib.Path(sys.prefix) == folder:
        return
    needs = (HERE / "requirements.txt").read_text()
    made = folder / "requirements.txt"
    python = folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    if not made.exists() or made.read_text() != needs:
        venv.create(folder, with_pip=True, clear=True)
        subprocess.run([python, "-m", "pip", "install", "--quiet", "-r", HERE / "requirements.txt"], check=True)
        made.write_text(needs)
    done = subprocess.run([python, __file__, *sys.argv[1:]], env=dict(os.environ, PYTHONDONTWRITEBYTECODE="1"))
    sys.exit(done.returncode)


class World:
    """What the parts have in common: the page, browsers, a place for pictures."""

    def __init__(self, playwright):
        self.playwright, self.work, self.out = playwright, WORK, WORK / "out"
        self.dist, self.single = TOP / "dist", TOP / "dist-single" / "thinwright.html"
        self.out.mkdir(parents=True, exist_ok=True)
        self.began()

    def began(self):
        self.sites, self.browsers, self.lacking = [], [], []

    def site(self, name):
        """A server with a copy of the page."""
        import served
        self.sites.append(served.Served(self.dist, WORK / "sites" / name))
        return self.sites[-1]

    def browser(self):
        if not self.browsers:
            self.browsers.append(self.playwright.chromium.launch(executable_path=shutil.which("chromium"), args=FLAGS))
        return self.browsers[0]

    def picture(self, person, name):
        person.page.screenshot(path=str(self.out / f"{name}.png"))

    def demand(self, held, otherwise):
        """Something that must hold, but does not keep the rest of a part from being looked at."""
        if not held:
            self.lacking.append(otherwise)

    def ended(self):
        for browser in self.browsers:
            browser.close()
        for site in self.sites:
            site.stop()


def run(world, name):
    """Rows of a part, and why it failed, if it did."""
    import person
    world.began()
    person.BARRIERS.clear()
    try:
        rows = __import__(name).run(world)
    except Exception:
        why = traceback.format_exc()
        print(why)
        return [], "; ".join([why.strip().splitlines()[-1], *world.lacking, *person.BARRIERS])
    finally:
        world.ended()
    return rows, "; ".join([*world.lacking, *person.BARRIERS])


def main():
    environment()
    from playwright.sync_api import sync_playwright
    revision, chosen = sys.argv[1], sys.argv[2:] or PARTS
    lines = ["# What the whole visit showed", "", f"Written by `cargo xtask proof`; not edited by hand. Revision {revision}; {os.cpu_count()} processors, load {os.getloadavg()[0]:.2f} before it began.", ""]
    failed = []
    with sync_playwright() as playwright:
        world = World(playwright)
        lines[2] += f" Chromium {world.browser().version}."
        world.ended()
        for name in chosen:
            print(f"== {name}", flush=True)
            rows, why = run(world, name)
            lines += [f"## {TITLES[name]}", "", "| what | result |", "| --- | --- |"]
            lines += [f"| {what} | {str(result).replace('|', '/')} |" for what, result in rows]
            lines += [f"| **failed** | {why.replace('|', '/')} |"] if why else []
            lines += [""]
            print("\n".join(f"   {what}: {result}" for what, result in rows), flush=True)
            if why:
                failed.append(name)
                print(f"   FAILED: {why}", flush=True)
    (WORK / "RESULTS.md").write_text("\n".join(lines))
    if tuple(chosen) == PARTS:
        (HERE / "RESULTS.md").write_text("\n".join(lines))
    sys.exit(f"failed: {', '.join(failed)}" if failed else 0)


if __name__ == "__main__":
    main()
