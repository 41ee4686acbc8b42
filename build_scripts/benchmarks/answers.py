"""How long answers take in CPython."""

from collections.abc import Callable, Iterator
from functools import partial
from statistics import median
from time import perf_counter

from calc.calculators import calculator, names
from calc.model import solve
from calc.views.answer import answer
from calc.views.sure import sureness

RUNS = 7


def timed() -> Iterator[tuple[str, float]]:
    """Milliseconds of each calculator: its figures, the answer drawn, and how sure it is."""
    for name in names():
        case = solve(calculator(name))
        yield f"CPython, ms: {name}, figures", taken(partial(solve, case.calculator))
        yield f"CPython, ms: {name}, drawn", taken(partial(answer, case, name, ""))
        yield f"CPython, ms: {name}, how sure", taken(partial(sureness, case))


def taken(work: Callable[[], object]) -> float:
    """Milliseconds that `work` takes, the median of several runs."""
    times = []
    for _ in range(RUNS):
        start = perf_counter()
        work()
        times.append(perf_counter() - start)
    return 1000 * median(times)
