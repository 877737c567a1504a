"""Lighthouse on the page as a server gives it: accessibility and best practices must be whole, performance is told."""
import json
import os
import shutil
import subprocess

VERSION = "12.2.3"
WHOLE = ("accessibility", "best-practices")
FLAGS = "--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync"


def run(world):
    folder = world.work / "lighthouse"
    program = folder / "node_modules" / ".bin" / "lighthouse"
    if not program.exists():
        folder.mkdir(parents=True, exist_ok=True)
        (folder / "package.json").write_text('{"private": true}')
        subprocess.run(["npm", "install", "--no-audit", "--no-fund", "--ignore-scripts", f"lighthouse@{VERSION}"], cwd=folder, check=True)
    site = world.site("lighthouse")
    rows = []
    for form in ("mobile", "desktop"):
        report = world.out / f"lighthouse-{form}.json"
        more = ["--preset=desktop"] if form == "desktop" else []
        subprocess.run([program, site.url, "--quiet", "--output=json", f"--output-path={report}", f"--chrome-flags={FLAGS}",
                        "--only-categories=performance,accessibility,best-practices", *more],
                       check=True, env=dict(os.environ, CHROME_PATH=shutil.which("chromium")), timeout=300)
        told = json.loads(report.read_text())
        scores = {name: round(100 * (part["score"] or 0)) for name, part in told["categories"].items()}
        lacking = [audit["title"] for name in WHOLE for ref in told["categories"][name]["auditRefs"]
                   if (audit := told["audits"][ref["id"]])["score"] not in (None, 1) and ref["weight"] > 0]
        world.demand(all(scores[name] == 100 for name in WHOLE), f"{form}: {scores}, {lacking}")
        timing = told["audits"]
        times = ", ".join(f"{word} {timing[id]['displayValue']}" for word, id in (
            ("first paint", "first-contentful-paint"), ("largest", "largest-contentful-paint"), ("blocked", "total-blocking-time"), ("shift", "cumulative-layout-shift")))
        rows.append((f"{form}: accessibility, best practices, performance", f"{scores['accessibility']}, {scores['best-practices']}, {scores['performance']} ({times.replace(chr(0xa0), ' ')})"))
    return rows
