"""Gives the handbook nonsense for as long as you like: `python -m tests.fuzz link --minutes 10`.

What fails is shrunk, printed and kept in a folder, from which the next run tries it first. Once
mended it goes into `fuzz_corpus.json`, with the reason; `test_fuzz_corpus.py` tries it ever after.
"""

import argparse
import sys
import traceback
import warnings
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from random import SystemRandom
from time import monotonic
from typing import Any

from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis.database import DirectoryBasedExampleDatabase
from hypothesis.errors import HypothesisWarning

from tests.fuzz_targets import TARGETS, Target

FOLDER = Path(__file__).resolve().parents[1] / ".hypothesis" / "fuzz"
PHASES = (Phase.reuse, Phase.generate, Phase.target, Phase.shrink)
ROUND = 1000  # inputs of one seed; then hypothesis starts elsewhere


def fuzzed(
    name: str, target: Target, minutes: float, most: int = ROUND, first: int | None = None
) -> bool:
    """Tries a target until the time is over or something fails. Prints what came of it.

    most  -- inputs of one round; the first round is always tried
    first -- seed of the first round, for a test that is to go the same way each time
    """
    came: Counter[str] = Counter()

    def once(told: Any) -> None:
        came[target.check(told)] += 1

    database = DirectoryBasedExampleDatabase(FOLDER / name)
    steady = settings(
        max_examples=most, deadline=None, database=database, print_blob=False, phases=PHASES,
        suppress_health_check=list(HealthCheck), report_multiple_bugs=False,
    )  # fmt: skip
    end = monotonic() + 60 * minutes
    sound = _round(steady, target, once, first)
    while sound and monotonic() < end:
        sound = _round(steady, target, once)
    print(f"{name}: {came.total()} inputs, {'nothing' if sound else 'something'} failed")
    for what, times in came.most_common():
        print(f"  {times:9}  {what}")
    return sound


def _round(
    steady: settings, target: Target, once: Callable[[Any], None], start: int | None = None
) -> bool:
    start = SystemRandom().getrandbits(64) if start is None else start
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", HypothesisWarning)  # of an input too long to print well
        try:
            seed(start)(steady(given(target.inputs)(once)))()
        except Exception:
            traceback.print_exc()
            return False
    return True


def main() -> int:
    """The command. Returns 1 if anything failed."""
    parser = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    parser.add_argument("targets", nargs="*", help=f"some of {', '.join(TARGETS)}; else all")
    parser.add_argument("--minutes", type=float, default=10, help="for each target")
    asked = parser.parse_args()
    if unknown := [name for name in asked.targets if name not in TARGETS]:
        parser.error(f"no target {unknown[0]}")
    names = asked.targets or list(TARGETS)
    sound = [fuzzed(name, TARGETS[name], asked.minutes) for name in names]
    return int(not all(sound))


if __name__ == "__main__":
    sys.exit(main())
