"""Radon in a house's air that its own water brings, and how widely houses differ."""

from collections.abc import Sequence
from math import erf, exp, expm1, hypot, log, sqrt

from calc.physics.decay import RADON, decay_constant

# [nrc-1999] table 3.1, the committee's own column: geometric standard deviations among houses.
SPREAD_VOLUME = 2.0
SPREAD_AIR_CHANGE = 2.3
SPREAD_RELEASE = 1.3
SPREAD_WATER_USE = 1.8
# Share of its radon that water gives off in all its uses together: the table's middle.
RELEASE = 0.52
BEST_TRANSFER = 1e-4  # [nrc-1999] p. 182, mean of many houses


def transfer(water_use: float, release: float, volume: float, air_change: float) -> float:
    """Radon in the air over radon in the water, averaged over the house and the year.

        f = W e / (V (l + λ))

    water_use -- W, all that runs indoors, m³/s; a garden hose does not count
    release -- e, share of its radon that the water gives off, 0 to 1
    volume -- V, air that mixes with it, m³: all floors between which doors stand open
    air_change -- l, outdoor air for each volume, 1/s. The one that is guessed worst

    Holds for one well mixed volume. A bathroom during a shower holds many times as much for an
    hour, see `room_air`.

    A house of average American figures for one person:

    >>> from calc.units import hour
    >>> round(transfer(9.4e-3 / hour, 0.52, 115, 0.77 / hour) * 1e4, 2)
    0.55

    Source: Nazaroff and others 1987, as given in [nrc-1999] p. 50; its table 3.1.
    """
    return water_use * release / (volume * (air_change + decay_constant(RADON)))


def room_air(
    water: float, flow: float, release: float, volume: float, air_change: float, time: float
) -> float:
    """Radon that running water has added to the air of one closed room, Bq/m³.

        Ca = e Cw q / (V l) (1 - exp(-l t)),   l = air change + λ

    water -- Cw, radon in the water, Bq/m³
    flow -- q, m³/s
    release -- e, of a shower about 0.65 (from memory), 0.92 measured in one house
    volume -- V of the room, m³
    air_change -- of the room, 1/s, with its door as it is
    time -- s since the water was turned on

    Holds for a mixed room that began clean. Published: over 100 kBq/m³ after about an hour from
    3000 Bq/L in 15 m³; this balance gives the same order:

    >>> from calc.units import L, hour, minute
    >>> round(room_air(3000 / L, 12 * L / minute, 0.7, 15, 0.5 / hour, 1 * hour) / 1e3)
    79

    Source: balance of a mixed room; the measurement from [norway-2016], second-hand.
    """
    loss = air_change + decay_constant(RADON)
    return release * water * flow / (volume * loss) * -expm1(-loss * time)


def water_for_air(air: float, transferred: float) -> float:
    """Radon in the water that adds so much to the air, in the unit of `air`.

        Cw = Ca / f

    air -- what the water may add
    transferred -- f, see `transfer`

    Outdoor air holds 15 Bq/m³. Water that adds as much again indoors, in the mean of many houses:

    >>> round(water_for_air(15, BEST_TRANSFER))
    150000

    Source: [nrc-1999] p. 182.
    """
    return air / transferred


def combined_spread(spreads: Sequence[float]) -> float:
    """Geometric standard deviation of a product or quotient of independent lognormal figures.

        ln s = √(Σ (ln sᵢ)²)

    spreads -- sᵢ, 1 for a figure that is known

    >>> round(combined_spread([2.0, 2.3, 1.3, 1.8]), 2)
    3.53

    Source: property of the lognormal distribution; 3.5 in [nrc-1999] table 3.1.
    """
    return exp(hypot(*(log(each) for each in spreads)))


def lognormal_mean(middle: float, spread: float) -> float:
    """Mean of a lognormal distribution, in the unit of `middle`.

        mean = middle exp((ln s)² / 2)

    middle -- geometric mean: half of all lie under it. The mean is higher, for a few houses have
              very much
    spread -- s, geometric standard deviation

    >>> round(lognormal_mean(0.55, 3.5), 1)
    1.2

    Source: property of the distribution; 1.2e-4 in [nrc-1999] p. 57.
    """
    return middle * exp(log(spread) ** 2 / 2)


def lognormal_point(middle: float, spread: float, z: float) -> float:
    """The figure that lies z standard deviations of the logarithm above the middle.

        x = middle sᶻ

    z -- 1.96 and -1.96 hold 19 of 20 between them, 1.645 has 19 of 20 below it

    >>> round(lognormal_point(0.55, 3.5, 1.645), 1)
    4.3

    Source: property of the distribution.
    """
    point: float = middle * spread**z
    return point


def share_above(limit: float, middle: float, spread: float) -> float:
    """Share of a lognormal distribution that lies above a limit, 0 to 1.

        p = ½ (1 - erf(ln(limit / middle) / (√2 ln s)))

    limit, middle -- in one unit, above 0
    spread -- s, over 1

    >>> share_above(2.0, 2.0, 3.5)
    0.5

    Source: property of the distribution.
    """
    return (1 - erf(log(limit / middle) / (sqrt(2) * log(spread)))) / 2
