"""What a sample of water held when it was drawn, and what a counter can tell."""

from math import sqrt

from calc.physics.decay import remaining
from calc.physics.radon_solubility import air_to_water


def at_draw(measured: float, time: float) -> float:
    """Radon when the sample was drawn, in the unit of `measured`.

        C₀ = C exp(λ t)

    measured -- what was there at the middle of the count
    time -- s from the draw to that moment. A laboratory's figure is usually brought back already:
            ask, for doing it twice adds 44 % to a sample two days old

    >>> from calc.units import hour
    >>> round(at_draw(20000, 60 * hour))
    31467

    Source: law of decay; half-life [icrp-107].
    """
    return measured / remaining(time)


def bubble_loss(share: float, temperature: float) -> float:
    """Share of a vial's radon that has gone into a bubble in it, 0 to 1.

        loss = f H′ / ((1 - f) + f H′)

    share -- f, the bubble's part of the vial's volume
    temperature -- K, of the vial while it stood

    What it tells is the least: water and bubble at rest with each other, nothing lost before the
    cap was on. A sample that shows a bubble has often met more air than the bubble.

    >>> round(bubble_loss(0.05, 283.15), 4)
    0.1307

    Source: shares of one gas between two volumes; H′ from [weigel-1978].
    """
    in_air = share * air_to_water(temperature)
    return in_air / (1 - share + in_air)


def counted(
    gross: float, background: float, efficiency: float, volume: float, time: float
) -> float:
    """Radon at the draw from two counting rates, Bq/m³.

        C = (G - B) / (k V exp(-λ t))

    gross, background -- G of the sample, B of a blank, counts/s
    efficiency -- k, counts for each decay of radon, its children's included
    volume -- V of water in the vial, m³
    time -- s from the draw to the middle of the count

    >>> from calc.units import L, hour, minute, pCi
    >>> k = 6 / minute / pCi
    >>> round(counted(250 / minute, 20 / minute, k, 0.010 * L, 48 * hour) / (pCi / L))
    5509

    Source: liquid scintillation as in [mw-rn-2020], from memory; 6 cpm/pCi is usual, from memory.
    """
    return (gross - background) / (efficiency * volume * remaining(time))


def count_doubt(
    gross: float,
    background: float,
    gross_time: float,
    background_time: float,
    efficiency: float,
    volume: float,
    time: float,
) -> float:
    """Standard uncertainty that the counting alone leaves in the sample, Bq/m³.

        s = √(G / Tg + B / Tb) / (k V exp(-λ t))

    gross_time, background_time -- Tg, Tb, s

    Holds for more than some 20 counts. Calibration, filling and the vial's own bubble come on top.

    >>> from calc.units import L, hour, minute, pCi
    >>> k = 6 / minute / pCi
    >>> long = 50 * minute
    >>> s = count_doubt(250 / minute, 20 / minute, long, long, k, 0.010 * L, 48 * hour)
    >>> round(2 * s / (pCi / L), 1)
    111.3

    Source: counts scatter by their square root [currie-1968].
    """
    rate = sqrt(gross / gross_time + background / background_time)
    return rate / (efficiency * volume * remaining(time))


def least_detectable(
    background: float, count_time: float, efficiency: float, volume: float, time: float
) -> float:
    """Least radon at the draw that a count will find 19 times in 20, Bq/m³.

        MDC = (2.71 + 4.65 √(B T)) / (k V T exp(-λ t))

    background -- B, counts/s
    count_time -- T of sample and blank alike, s

    >>> from calc.units import L, minute, pCi
    >>> k = 6 / minute / pCi
    >>> round(least_detectable(6 / minute, 50 * minute, k, 0.010 * L, 0.0) / (pCi / L), 2)
    27.75

    Source: [currie-1968], 2.71 + 4.65 s.
    """
    counts = 2.71 + 4.65 * sqrt(background * count_time)
    return counts / (efficiency * volume * count_time * remaining(time))


def allowed_difference(sure: float) -> float:
    """Largest difference between two results, over their mean, that their doubt explains 19 times
    in 20.

        d = √2 U

    sure -- U, plus-or-minus of one result, as a share of it

    >>> round(allowed_difference(0.10), 3)
    0.141

    Source: [jcgm-100] equation (10), two independent results.
    """
    return sqrt(2) * sure
