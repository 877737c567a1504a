"""What a browser fetches: as it is, and as servers send it."""
from served import FINGERPRINT
import brotli
import gzip

# Brotli's greatest quality, and its usual window, as servers pack files ahead.
QUALITY, WINDOW = 11, 22


def run(world):
    files = sorted(world.dist.iterdir(), key=lambda file: -file.stat().st_size)
    rows, sums = [], [0, 0, 0]
    for file in [*files, world.single]:
        content = file.read_bytes()
        sizes = (len(content), len(gzip.compress(content, 9)), len(brotli.compress(content, quality=QUALITY, lgwin=WINDOW)))
        if file != world.single:
            sums = [a + b for a, b in zip(sums, sizes)]
        rows.append((FINGERPRINT.sub(".", file.name), row(sizes)))
    return [("file: bytes, gzip, brotli", ""), *rows[:-1], ("all of the served page", row(sums)), rows[-1]]


def row(sizes):
    return ", ".join(f"{size:,}".replace(",", " ") for size in sizes)
