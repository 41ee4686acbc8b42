"""Which fouling laws a filter's readings allow, and where each of them ends."""

from collections.abc import Mapping, Sequence
from math import sqrt
from typing import NamedTuple

from calc.physics.fouling import LAWS, Fit, fitted, reached_between
from calc.physics.student import student_t

SURE = 0.95  # each end of an interval holds 19 times in 20
# A line drawn on for more than this many times the stretch that was measured says
# nothing. Common practice, no source.
FARTHEST = 20


class Outlook(NamedTuple):
    """What one law says.

    reached   -- throughput at which it reaches the critical resistance, m³
    low, high -- between which that lies; None for an end that is not known
    kept      -- whether the readings allow this law
    """

    fit: Fit
    reached: float
    low: float | None
    high: float | None
    kept: bool


def largest_ratio(freedom: int) -> float:
    """Ratio of two scatters that chance alone exceeds once in 20.

        √F = t/√ν + √(t²/ν + 1)

    freedom -- ν, degrees of freedom of each; F is the variance ratio's upper 5 % point

    Three degrees of freedom, F 9.277:

    >>> round(largest_ratio(3) ** 2, 3)
    9.277

    Exact for two sets of readings. For two lines through one set it is a rule of thumb.
    Source: [cacoullos-1965].
    """
    t = student_t(SURE, freedom)
    return t / sqrt(freedom) + sqrt(t**2 / freedom + 1)


def outlooks(
    throughputs: Sequence[float], resistances: Sequence[float], critical: float
) -> Mapping[str, Outlook]:
    """The outlook of each law that the readings can be fitted to, by name.

    throughputs -- m³ since the last service, two or more, not all the same
    resistances -- Pa per (m³/s); one of 0 or less leaves only the cake law
    critical    -- resistance at which the filter is due, above 0

    A law by which resistance does not rise, or that reaches the critical one only far
    beyond the readings, is left out. A law is not kept when the readings scatter about it
    by over `largest_ratio` times as much as about the law they lie closest to.

    Source: the laws as in `calc.physics.fouling`; setting one aside, [cacoullos-1965].
    """
    span = max(throughputs) - min(throughputs)
    found = {}
    for name, exponent in LAWS.items():
        if exponent == 0 or min(resistances) > 0:
            found[name] = fitted(throughputs, resistances, exponent)
    freedom = len(throughputs) - 2
    least = min(fit.scatter for fit in found.values())
    allowed = largest_ratio(freedom) * least if freedom else 0.0
    return {
        name: _outlook(fit, critical, fit.scatter <= allowed)
        for name, fit in found.items()
        if fit.slope > 0 and fit.reaches(critical) <= max(throughputs) + FARTHEST * span
    }


def _outlook(fit: Fit, critical: float, kept: bool) -> Outlook:
    low = high = None
    if fit.freedom:
        low, high = reached_between(fit, critical, student_t(SURE, fit.freedom))
    return Outlook(fit, fit.reaches(critical), low, high, kept)
