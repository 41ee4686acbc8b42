"""A flow measured with a pail and a timer, and how far it can be trusted."""

from math import sqrt
from typing import NamedTuple

# Two-sided 95 % values of Student's t, [jcgm-100] Table G.2, degrees of freedom -> t.
STUDENT_T_95 = {
    1: 12.71, 2: 4.30, 3: 3.18, 4: 2.78, 5: 2.57, 6: 2.45, 7: 2.36, 8: 2.31, 9: 2.26, 10: 2.23,
    11: 2.20, 12: 2.18, 13: 2.16, 14: 2.14, 15: 2.13, 16: 2.12, 17: 2.11, 18: 2.10, 19: 2.09,
    20: 2.09, 25: 2.06, 30: 2.04, 35: 2.03, 40: 2.02, 45: 2.01, 50: 2.01, 100: 1.984,
}  # fmt: skip
T_95_MANY = 1.960


class Budget(NamedTuple):
    """Relative standard uncertainties of a timed pail: of the mark, the thumb, the runs."""

    mark: float
    timing: float
    runs: float
    whole: float


def uncertainty_budget(
    volume: float, mark: float, time: float, timing: float, spread: float, runs: int
) -> Budget:
    """Relative standard uncertainty of a flow V / t, and its three parts.

        (u(Q)/Q)² = (u(V)/V)² + (u(t)/t)² + s²/n,   u(V) = a/√3

    volume -- water to the mark, m³
    mark   -- how far the mark may be off either way, m³; taken as equally likely anywhere
              in between, hence √3
    time   -- mean of the runs, s
    timing -- standard deviation of starting and stopping the watch, s
    spread -- relative standard deviation of one run
    runs   -- how many

    The mark and the thumb's habit are the same in every run, so more runs shrink only
    the last part.

    Source: [jcgm-100] equations (5) and (12), 4.2.3 and 4.3.7.
    """
    parts = mark / sqrt(3) / volume, timing / time, spread / sqrt(runs)
    return Budget(*parts, sqrt(sum(part**2 for part in parts)))


def relative_spread(times: tuple[float, ...]) -> float:
    """Standard deviation of the times over their mean; 0 for a single run.

    Source: [jcgm-100] equation (4).
    """
    if len(times) < 2:
        return 0.0
    mean = sum(times) / len(times)
    return sqrt(sum((time - mean) ** 2 for time in times) / (len(times) - 1)) / mean


def effective_freedom(budget: Budget, runs: int) -> float:
    """Effective degrees of freedom of the whole budget; the runs alone have n - 1.

    Source: [jcgm-100] equation (G.2b), the other parts known exactly.
    """
    if budget.runs == 0 or runs < 2:
        return float("inf")
    return (runs - 1) * (budget.whole / budget.runs) ** 4


def coverage_factor(freedom: float) -> float:
    """Factor from a standard uncertainty to a plus-or-minus that covers 95 %.

    Degrees of freedom between two lines of the table take the lower, as the guide says.

    >>> coverage_factor(2.9), coverage_factor(1e9)
    (4.3, 1.96)

    Source: [jcgm-100] Table G.2 and G.4.1.
    """
    if freedom > max(STUDENT_T_95):
        return T_95_MANY
    return STUDENT_T_95[max(line for line in STUDENT_T_95 if line <= max(freedom, 1))]
