"""An independent spectrum of a few sounds with a seed, for crates/sound/src/spectrum/tests.rs:

    python3 tests/peers/sound.py        prints the rows of the test's table (needs numpy and scipy, see requirements.txt)

The sounds are made again here from their seeds: a tone in evenly spread noise, rounded to 32 bits.
"""
import numpy as np
import scipy
from scipy.signal import welch

WORD = (1 << 64) - 1
# Seed, rate [1/s], seconds, tone [1/s], its amplitude, width of the noise, samples of a frame.
SOUNDS = [
    (1, 48000, 0.5, 1000.0, 0.3, 0.2, 4096),
    (2, 44100, 0.3, 3333.3, 0.05, 0.5, 2048),
    (3, 16000, 0.2, 440.0, 0.9, 0.02, 1024),
    (4, 22050, 0.1, 100.0, 0.01, 1.0, 64),
]


def even(seed):
    """Numbers from 0 to 1 by splitmix."""
    while True:
        seed = (seed + 0x9E3779B97F4A7C15) & WORD
        z = seed
        z = ((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9) & WORD
        z = ((z ^ (z >> 27)) * 0x94D049BB133111EB) & WORD
        yield ((z ^ (z >> 31)) >> 11) / (1 << 53)


def main():
    print(f"// scipy {scipy.__version__}, numpy {np.__version__}")
    for seed, rate, seconds, tone, height, width, size in SOUNDS:
        count = int(rate * seconds)
        numbers = even(seed)
        noise = np.array([next(numbers) - 0.5 for _ in range(count)])
        t = np.arange(count) / rate
        x = (height * np.cos(2 * np.pi * tone * t + 0.7) + width * noise).astype(np.float32).astype(float)
        x -= x.mean()
        _, power = welch(x, rate, "hann", size, size // 2, detrend=False, scaling="spectrum")
        peak = round(tone * size / rate)
        for bin_ in sorted({1, peak - 1, peak, peak + 1, size // 3, size // 2}):
            if bin_ > 0:
                print(f"({seed}, {bin_}, {power[bin_]:.12e}),")


main()
