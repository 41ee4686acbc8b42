"""Measures, prints each figure beside the last recorded one, and may record it."""

import argparse
import json
import os
import platform
import tempfile
from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path

from build_scripts.benchmarks import answers, builds, sizes, starts
from build_scripts.benchmarks.served import served
from build_scripts.bundle import ROOT

RECORDED = Path(__file__).with_name("recorded.json")
KINDS = ("answers", "sizes", "simulations", "keystrokes", "starts", "builds")


def main() -> None:
    parser = argparse.ArgumentParser(prog="benchmark.py")
    parser.add_argument("--record", action="store_true", help="keep the figures")
    parser.add_argument("--runs", type=int, default=3, help="fresh browsers for each start (3)")
    parser.add_argument("--only", choices=KINDS, nargs="+", default=KINDS, help="some figures")
    options = parser.parse_args()
    recorded = json.loads(RECORDED.read_text(encoding="utf-8")) if RECORDED.exists() else {}
    before = recorded.get("figures", {})
    load = os.getloadavg()[0]
    print(f"Load before the run: {load:.1f} on {os.cpu_count()} processors.")
    figures: dict[str, float] = {}
    with tempfile.TemporaryDirectory() as folder:
        for name, value in measured(Path(folder) / "site", options.runs, options.only):
            figures[name] = round(value, 3)
            print(line(name, value, before.get(name)), flush=True)
    if options.record:
        about = {"date": date.today().isoformat(), "machine": platform.machine(), "load": load}
        kept = about | {"figures": before | figures}
        RECORDED.write_text(json.dumps(kept, indent=1, sort_keys=True) + "\n", encoding="utf-8")


def measured(site: Path, runs: int, wanted: Sequence[str]) -> Iterator[tuple[str, float]]:
    if "answers" in wanted:
        yield from answers.timed()
    if "builds" in wanted:
        yield from builds.timed()
    builds.build(ROOT, site)
    if "sizes" in wanted:
        yield from sizes.weighed(site)
    starts.add_rivals(site)
    with served(site) as server:
        if "simulations" in wanted:
            yield from starts.simulations(server)
        if "keystrokes" in wanted:
            yield from starts.keystrokes(server)
        if "starts" in wanted:
            yield from starts.timed(server, runs)


def line(name: str, value: float, before: float | None) -> str:
    change = f"{before:12,.2f}{100 * (value / before - 1):+8.0f} %" if before else ""
    return f"{name:52}{value:12,.2f}{change}"


if __name__ == "__main__":
    main()
