"""Measures the handbook: python3 build_scripts/benchmark.py [--record] [--runs N] [--only KIND...]

Sets up what is missing, then prints answers in CPython, sizes, the time from a keystroke to its
answer, starts in Chromium beside those of stock Pyodide, MicroPython and plain JavaScript, and
builds, each beside the last recorded figure. Figures differ from machine to machine, and with
what else a machine does: compare runs of one that is idle. --record keeps them.
"""

import os
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from build_scripts import environment


def main() -> None:
    environment.prepare("test")
    environment.install_chromium()
    python = str(environment.PYTHON)
    os.execv(python, [python, "-m", "build_scripts.benchmarks", *sys.argv[1:]])


if __name__ == "__main__":
    main()
