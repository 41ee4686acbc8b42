"""Prints how long answers take in CPython and how much a page loads:

    .venv/bin/python -m build_scripts.benchmark [SITE]

SITE is a built handbook; without it only the answers are timed. Figures differ from machine
to machine: compare runs of one machine.
"""

import gzip
import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path
from statistics import median
from time import perf_counter

from calc.calculators import calculator, names
from calc.model import solve
from calc.views.answer import answer
from calc.views.sure import sureness

RUNS = 20


def main() -> None:
    print(f"{'ms, median of ' + str(RUNS):24}{'answer':>9}{'drawn':>9}{'how sure':>9}")
    for name in names():
        case = solve(calculator(name))
        plain = taken(partial(solve, case.calculator))
        drawn = taken(partial(answer, case, name, ""))
        sure = taken(partial(sureness, case))
        print(f"{name:24}{plain:9.2f}{drawn:9.2f}{sure:9.1f}")
    for site in map(Path, sys.argv[1:]):
        print(f"\n{'bytes':24}{'raw':>10}{'gzip':>10}")
        for label, files in weighed(site).items():
            contents = [file.read_bytes() for file in files]
            squeezed = sum(len(gzip.compress(content, 9)) for content in contents)
            print(f"{label:24}{sum(map(len, contents)):10}{squeezed:10}")


def taken(work: Callable[[], object]) -> float:
    """Milliseconds that `work` takes, the median of several runs."""
    times = []
    for _ in range(RUNS):
        start = perf_counter()
        work()
        times.append(perf_counter() - start)
    return 1000 * median(times)


def weighed(site: Path) -> dict[str, list[Path]]:
    """What a page with a calculator loads, by kind."""
    app = site / "app"
    return {
        "our scripts": sorted(app.glob("*.js")),
        "our styles": sorted(app.glob("*.css")),
        "others' scripts": sorted((app / "vendor").glob("*.js")),
        "code maker, if asked": sorted((app / "vendor").glob("*.mjs")),
        "calc": sorted((site / "runtime").glob("calc-*.zip")),
        "Python": sorted((site / "runtime").glob("library-*.zip")),
        "Pyodide": sorted((site / "runtime").glob("pyodide-*[ms]")),
    }


if __name__ == "__main__":
    main()
