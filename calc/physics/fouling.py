"""How a filter's resistance grows with the water it has passed, and when that is too much.

Resistance is pressure lost in the bed over flow, Pa per (m³/s). A fouling law says how it
grows with throughput V: dr/dV = k rⁿ.
"""

from collections.abc import Sequence
from math import exp, log, sqrt
from typing import NamedTuple

# n of each law; by what it is like, from the gentlest to the one that ends most abruptly
LAWS = {"cake": 0.0, "intermediate": 1.0, "standard": 1.5, "complete": 2.0}


def bed_resistance(flow: float, pressure: float, coefficient: float) -> float:
    """Resistance of a filter bed, from the flow that passes it and the rest of the inlet.

        r = p / Q - Q / C²

    flow        -- m³/s
    pressure    -- gauge before the filter less the lift to the open tank, Pa. A gauge
                   behind the filter is not needed
    coefficient -- C of the rest, limit, pipe and float valve, m³/s per √Pa: flow with the
                   filter bypassed over the root of the pressure then

    With cut-in pressure and the least flow allowed it is the most resistance allowed:

    >>> from calc.units import gpm, psi
    >>> bypassed = 1 / sqrt(0.846446 * psi / gpm**2)
    >>> round(bed_resistance(5 * gpm, (40 - 2.5985) * psi, bypassed) / (psi / gpm), 4)
    3.2481

    Below 0 the coefficient is too small, or the gauge read low. The bed is taken as
    laminar: [ergun], first term. Source: pressure drops add at one flow.
    """
    return pressure / flow - flow / coefficient**2


def straightened(resistance: float, exponent: float) -> float:
    """The coordinate in which a law is a straight line of slope k against throughput.

        y = r^(1-n) / (1-n),   ln r for n = 1

    resistance -- above 0, but for the cake law, exponent 0

    Source: dr/dV = k rⁿ integrated; [hermia-1982], [grace-1956].
    """
    if exponent == 1:
        return log(resistance)
    return float(resistance ** (1 - exponent) / (1 - exponent))


def resistance_at(coordinate: float, exponent: float) -> float:
    """Resistance back from the coordinate of `straightened`; infinite where the law ends.

    >>> round(resistance_at(straightened(2.5, 1.5), 1.5), 12)
    2.5
    """
    if exponent == 1:
        return exp(min(coordinate, 700.0))
    if exponent > 1 and coordinate >= 0:
        return float("inf")
    return float(((1 - exponent) * coordinate) ** (1 / (1 - exponent)))


class Fit(NamedTuple):
    """A straight line by least squares, in the coordinate of its law.

    middle, height -- weighted means of throughput and coordinate
    scatter        -- of one reading about the line, in resistance; 0 for two readings
    weight, spread -- sum of the weights, and of weights times squares about the middle
    freedom        -- readings less two
    """

    exponent: float
    middle: float
    height: float
    slope: float
    scatter: float
    weight: float
    spread: float
    freedom: int

    def resistance(self, throughput: float) -> float:
        """Resistance on the line after that throughput."""
        coordinate = self.height + self.slope * (throughput - self.middle)
        return resistance_at(coordinate, self.exponent)

    def reaches(self, resistance: float) -> float:
        """Throughput at which the line reaches the resistance. The slope must not be 0.

        V = V̄ + (y* - ȳ) / k
        """
        return self.middle + (straightened(resistance, self.exponent) - self.height) / self.slope


def fitted(throughputs: Sequence[float], resistances: Sequence[float], exponent: float) -> Fit:
    """The law's line through two readings or more, by weighted least squares.

    throughputs -- m³ since the last service, not all the same
    resistances -- above 0, but for the cake law

    Each reading counts by w = r^(2n). A gauge errs by as much at any reading, so all
    resistances are equally sure, but dy = r^-n dr: the coordinate of a small resistance
    errs by more. Without weights one reading of the clean filter would decide.

    >>> fit = fitted([0, 2500, 5000, 7500, 10000], [0.32, 0.70, 1.15, 1.48, 1.98], 0.0)
    >>> round(fit.resistance(0), 3), round(fit.slope, 7), round(fit.scatter, 4)
    (0.306, 0.000164, 0.0421)

    Source: [draper-smith]; laws as in `straightened`.
    """
    weights = [1.0 if exponent == 0 else r ** (2 * exponent) for r in resistances]
    heights = [straightened(r, exponent) for r in resistances]
    weight = sum(weights)
    middle = sum(w * v for w, v in zip(weights, throughputs, strict=True)) / weight
    height = sum(w * y for w, y in zip(weights, heights, strict=True)) / weight
    lines = list(zip(weights, throughputs, heights, strict=True))
    spread = sum(w * (v - middle) ** 2 for w, v, _ in lines)
    slope = sum(w * (v - middle) * (y - height) for w, v, y in lines) / spread
    left = sum(w * (y - height - slope * (v - middle)) ** 2 for w, v, y in lines)
    freedom = len(weights) - 2
    scatter = sqrt(left / freedom) if freedom else 0.0
    return Fit(exponent, middle, height, slope, scatter, weight, spread, freedom)


def reached_between(
    fit: Fit, resistance: float, factor: float
) -> tuple[float | None, float | None]:
    """Least and largest throughput at which the true line may reach a resistance.

        (y* - ȳ - k (V - V̄))² = t² s² (1/Σw + (V - V̄)²/S)

    fit        -- of three readings or more: two leave no doubt to reckon with, not none
    resistance -- y* is its coordinate
    factor     -- t, one-sided, of `fit.freedom`: each end then holds with its chance

    None for an end that does not exist: the slope may be 0, or the readings scatter
    as far as the resistance asked for.

    >>> from calc.physics.student import student_t
    >>> fit = fitted([0, 2500, 5000, 7500, 10000], [0.32, 0.70, 1.15, 1.48, 1.98], 0.0)
    >>> round(reached_between(fit, 3.248, student_t(0.95, 3))[0])
    16984

    Source: [fieller-1954].
    """
    doubt = (factor * fit.scatter) ** 2
    away = straightened(resistance, fit.exponent) - fit.height
    steep = fit.slope**2 - doubt / fit.spread
    level = away**2 - doubt / fit.weight
    if steep <= 0 and level <= 0:
        return None, None
    root = sqrt(doubt * max(away**2 / fit.spread + steep / fit.weight, 0.0))
    toward = fit.slope * away
    if steep > 0:
        low, high = sorted((toward + sign * root) / steep for sign in (-1, 1))
        return fit.middle + low, fit.middle + high
    # the slope may be 0: open above, and open far below, where no reading is
    if toward > 0:
        return fit.middle + level / (toward + root), None
    return (fit.middle + (toward - root) / steep if steep else None), None
