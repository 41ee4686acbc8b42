"""What a pumping test says of the rock: Theis, Cooper and Jacob, and when casing storage spoils it.

T is transmissivity, m²/s: what flows through a metre of width of the aquifer under a slope of 1.
S is storativity, without unit.
"""

from collections.abc import Sequence
from math import exp, log, log10, pi, sqrt
from typing import NamedTuple

from calc.physics.fouling import fitted
from calc.physics.student import student_t
from calc.units import ft, gpm, inch, minute

EULER = 0.5772156649015329
TINY = 1e-300
TWO_SIDED = 0.975  # an interval that holds 19 times in 20
LARGEST_U = 0.05  # here Cooper and Jacob's line is 2 % off the curve
SCHAFER = 0.6 * minute * (gpm / ft) / inch**2  # [schafer-1978]
LONGEST_LOG = 300.0  # of a time, so that its power of ten is a float


def well_function(u: float) -> float:
    """W(u) of Theis, the exponential integral E₁.

        W(u) = -γ - ln u + u - u²/(2·2!) + u³/(3·3!) - ...,   u ≤ 1
        W(u) = e^(-u) / (u + 1 - 1/(u + 3 - 4/(u + 5 - ...))),   u > 1

    u -- above 0

    >>> round(well_function(0.01), 4), round(well_function(2), 6)
    (4.0379, 0.048901)

    Source: [abramowitz-stegun], 5.1.11 and 5.1.22, the fraction by Lentz's way [dlmf].
    """
    if u > 1:
        return exp(-u) * _fraction(u)
    total, term, n = -EULER - log(u), -1.0, 0
    while abs(term) > 1e-17:
        n += 1
        term *= -u / n
        total += term / n
    return total


def _fraction(u: float) -> float:
    below = u + 1
    over, under = 1 / TINY, 1 / below
    value, change, n = under, 0.0, 0
    while abs(change - 1) > 1e-15:
        n += 1
        below += 2
        under = 1 / (below - n * n * under)
        over = below - n * n / over
        change = over * under
        value *= change
    return value


def theis_drawdown(flow: float, transmissivity: float, storativity: float,
                   distance: float, time: float) -> float:  # fmt: skip
    """Drawdown at a distance from a well that is pumped steadily, m.

        s = Q / (4 π T) W(u),   u = r² S / (4 T t)

    flow           -- m³/s
    transmissivity -- m²/s
    storativity    -- of a confined aquifer, 1e-5 to 1e-3; of an open water table some tenths
    distance       -- from the middle of the well, m, above 0
    time           -- since the pump started, s, above 0

    Holds for a confined aquifer that is even and has no end, and a well through all of it that
    stores nothing. 220 gpm, 824 ft away, after 500 minutes:

    >>> from calc.units import day, ft, gpm, minute
    >>> s = theis_drawdown(42350 * ft**3 / day, 1400 * ft**2 / day, 2.4e-5, 824 * ft, 500 * minute)
    >>> round(s / ft, 2)
    10.14

    Source: [theis-1935]; [tm-5-818-5], (C-3) and (C-4).
    """
    u = distance**2 * storativity / (4 * transmissivity * time)
    return flow / (4 * pi * transmissivity) * well_function(u)


def transmissivity_of_line(flow: float, per_cycle: float) -> float:
    """Transmissivity from the slope of a straight line, m²/s.

        T = 2.3026 Q / (4 π Δs)

    flow      -- steady flow of the test, m³/s
    per_cycle -- drawdown for each tenfold time, m; of a recovery, residual drawdown for each
                 tenfold ratio of the time since the start to the time since the stop

    2500 m³ a day and 0.40 m:

    >>> from calc.units import day
    >>> round(transmissivity_of_line(2500 / day, 0.40) * day)
    1145

    Source: [cooper-jacob-1946]; for recovery [theis-1935], as in [todd-1980], (4.50).
    """
    return log(10) * flow / (4 * pi * per_cycle)


def storativity_of_line(transmissivity: float, zero_time: float, distance: float) -> float:
    """Storativity from where the straight line meets zero drawdown.

        S = 2.25 T t₀ / r²

    transmissivity -- m²/s
    zero_time      -- time at which the line, drawn back, shows no drawdown, s
    distance       -- to the well that is pumped, m. In the pumped well itself this says nothing

    Source: [cooper-jacob-1946].
    """
    return 2.25 * transmissivity * zero_time / distance**2


def casing_time_schafer(bore: float, pipe: float, capacity: float) -> float:
    """Time from which what comes from the casing hardly shows, s.

        t [min] = 0.6 (d_c² - d_p²) / (Q/s),   inches and gpm/ft

    bore     -- inside diameter of the casing, m
    pipe     -- outside diameter of the drop pipe, m
    capacity -- specific capacity at that time, m²/s; from the end of the test is the cautious side

    6 in, a 1.66 in pipe and 0.05 gpm a foot, more than six hours:

    >>> from calc.units import ft, gpm, inch, minute
    >>> round(casing_time_schafer(6 * inch, 1.66 * inch, 0.05 * gpm / ft) / minute)
    399

    Source: [schafer-1978].
    """
    return SCHAFER * (bore**2 - pipe**2) / capacity


def casing_time_papadopulos_cooper(bore: float, transmissivity: float) -> float:
    """The same by the exact answer for a well that stores water, s.

        t = 25 r_c² / T

    bore           -- inside diameter of the casing, m; r_c is half of it
    transmissivity -- m²/s

    6 in and 10 ft² a day:

    >>> from calc.units import day, ft, inch, minute
    >>> round(casing_time_papadopulos_cooper(6 * inch, 10 * ft**2 / day) / minute)
    225

    From then on the drawdown is within some percent of Theis's. Source: [papadopulos-cooper-1967].
    """
    return 25 * (bore / 2) ** 2 / transmissivity


class Line(NamedTuple):
    """Drawdown as a straight line over a logarithm to base ten.

    per_cycle -- for each tenfold, m
    zero      -- drawdown where the logarithm is 0, m
    low, high -- between which per_cycle lies 19 times in 20; None from two readings
    zero_sure -- half-width of the same for zero; None from two readings
    """

    per_cycle: float
    zero: float
    low: float | None
    high: float | None
    zero_sure: float | None


def straight_line(logs: Sequence[float], drawdowns: Sequence[float]) -> Line:
    """The line through readings by least squares, and how well they fix it.

    logs      -- logarithms to base ten of the times, or of their ratios; two or more, not all alike
    drawdowns -- m

    >>> line = straight_line([0, 1, 2], [1.0, 2.1, 2.9])
    >>> round(line.per_cycle, 3), round(line.high - line.per_cycle, 2)
    (0.95, 1.1)

    Readings of one test depend on one another, so the interval is rather too narrow. Source:
    [draper-smith].
    """
    fit = fitted(logs, drawdowns, 0.0)
    zero = fit.resistance(0.0)
    if not fit.freedom:
        return Line(fit.slope, zero, None, None, None)
    factor = student_t(TWO_SIDED, fit.freedom) * fit.scatter
    sure = factor / sqrt(fit.spread)
    zero_sure = factor * sqrt(1 / fit.weight + fit.middle**2 / fit.spread)
    return Line(fit.slope, zero, fit.slope - sure, fit.slope + sure, zero_sure)


def zero_time(line: Line) -> float:
    """Time at which a line over the logarithm of seconds shows no drawdown, s.

        t₀ = 10^(-s₀ / Δs)

    line -- of a slope above 0

    >>> round(zero_time(Line(2.0, -4.0, None, None, None)))
    100

    Source: [cooper-jacob-1946].
    """
    return float(10 ** min(max(-line.zero / line.per_cycle, -LONGEST_LOG), LONGEST_LOG))


def straight_from(times: Sequence[float], drawdowns: Sequence[float]) -> float:
    """Time from which the readings of an observation well lie on a straight line, s.

        t = r² S / (4 T u),   u = 0.05

    times, drawdowns -- s and m, three or more readings

    T and S are those of the line itself: it is drawn through all readings, those before that time
    are left out, and so on until none is. Source: the condition of [cooper-jacob-1946], with its
    error computed.
    """
    kept = list(zip(times, drawdowns, strict=True))
    while True:
        line = straight_line([log10(t) for t, _ in kept], [s for _, s in kept])
        if line.per_cycle <= 0:
            return kept[0][0]
        # S / T of the line, whatever the flow
        since = 2.25 * zero_time(line) / (4 * LARGEST_U)
        later = [(t, s) for t, s in kept if t >= since]
        if len(later) in (0, 1, 2, len(kept)):
            return since
        kept = later
