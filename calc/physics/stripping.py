"""Radon left in water that meets clean air, by how the two are led past each other.

All answers are the share left: 0.01 is a removal of 99 %. The stripping factor is

    S = H′ G / L

with G and L the flows of air and water in one unit, and H′ radon in air over radon in water at
rest. Air that brings radon along is reckoned with by `least_radon`.
"""

from collections.abc import Callable
from math import exp, expm1, log, log1p

_HALVINGS = 200
_LEAST, _MOST = 1e-9, 1e12  # no house has a stripping factor like these


def left_basins(factor: float, basins: float, saturation: float = 1.0) -> float:
    """Share left by mixed basins in a row, the air shared equally among them.

        left = (1 + S f / n)^-n

    factor     -- S from ALL the air
    basins     -- n, through which the water passes one after the other
    saturation -- f, how full the air leaves each basin, 0 to 1

    One good basin of ten parts of air for each part of water at 10 °C:

    >>> round(1 - left_basins(28.56, 1), 3)
    0.966

    Source: radon balance of a mixed basin.
    """
    return exp(-basins * log1p(factor * saturation / basins))


def left_cross_flow(factor: float, saturation: float = 1.0) -> float:
    """Share left by a long tray that water crosses while fresh air rises through it everywhere.

        left = exp(-S f)

    factor, saturation -- as in `left_basins`, of which this is the end: endless many basins

    Source: radon balance of a thin slice of the tray.
    """
    return exp(-factor * saturation)


def left_trays(factor: float, trays: float, efficiency: float = 1.0) -> float:
    """Share left by trays above each other, the same air rising through all, water falling.

        left = (S - 1) / (S (1 + E (S - 1))^N - 1);   at S = 1:  1 / (1 + N E)

    factor     -- S
    trays      -- N
    efficiency -- E, how near each tray brings its air to rest with the water that leaves it
                  (Murphree, of the air). 1 makes it the Kremser equation

    >>> round(1 - left_trays(5, 3), 5)
    0.99359

    Source: [kremser-1930] with the efficiency of [lewis-1936] put in, both from memory.
    """
    past = factor - 1
    if past == 0:
        return 1 / (1 + trays * efficiency)
    grown = log1p(past) + trays * log1p(efficiency * past)
    return past * exp(-grown) / -expm1(-grown) if grown > 0 else past / expm1(grown)


def overall_efficiency_lewis(factor: float, efficiency: float) -> float:
    """Ideal trays that one real tray is worth.

        Eo = ln(1 + E (S - 1)) / ln S;   at S = 1:  E

    factor, efficiency -- as in `left_trays`

    >>> round(overall_efficiency_lewis(5, 0.6), 4)
    0.7604

    Source: [lewis-1936], from memory.
    """
    past = factor - 1
    return efficiency if past == 0 else log1p(efficiency * past) / log1p(past)


def ideal_trays(factor: float, left: float) -> float:
    """Ideal trays needed to leave that share.

        N = ln(1 + (S - 1) / left) / ln S - 1;   at S = 1:  1 / left - 1

    factor -- S
    left   -- share that may be left; under 1 - S it is out of reach, however many trays, and
              then this raises ValueError (S under 1: too little air)

    >>> round(ideal_trays(5, 0.01), 4)
    2.7243

    Source: `left_trays` turned round.
    """
    past = factor - 1
    return 1 / left - 1 if past == 0 else log1p(past / left) / log1p(past) - 1


def factor_basins(left: float, basins: float, saturation: float = 1.0) -> float:
    """Stripping factor at which basins leave that share.

        S = n (left^(-1/n) - 1) / f

    left, basins, saturation -- as in `left_basins`

    99 % by three basins:

    >>> round(factor_basins(0.01, 3), 2)
    10.92

    Source: `left_basins` turned round.
    """
    return basins * expm1(-log(left) / basins) / saturation


def factor_cross_flow(left: float, saturation: float = 1.0) -> float:
    """Stripping factor at which a crossed tray leaves that share.

        S = -ln(left) / f

    left, saturation -- as in `left_cross_flow`

    Source: `left_cross_flow` turned round.
    """
    return -log(left) / saturation


def factor_trays(left: float, trays: float, efficiency: float = 1.0) -> float:
    """Stripping factor at which trays leave that share.

    left, trays, efficiency -- as in `left_trays`

    Source: `left_trays` solved by halving; it falls steadily as S grows.
    """
    return _where(lambda factor: left_trays(factor, trays, efficiency) > left)


def _where(short: Callable[[float], bool]) -> float:
    """The point up to which `short` holds, by halving on a log scale."""
    low, high = log(_LEAST), log(_MOST)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        if short(exp(middle)):
            low = middle
        else:
            high = middle
    return exp(high)


def least_radon(air_radon: float, air_to_water: float) -> float:
    """Radon under which that air cannot bring the water, in the unit of air_radon.

        C = Ca / H′

    air_radon    -- radon in the air the blower takes
    air_to_water -- H′

    What stands above the floor is stripped as by clean air: left counts from the floor up.

    Source: `calc.physics.radon_solubility`.
    """
    return air_radon / air_to_water


def batch_rate(factor_flow: float, saturation: float, water: float) -> float:
    """Rate at which one tank full loses its radon while air goes through it, 1/s.

        k = H′ G f / V;   left = exp(-k t)

    factor_flow -- H′ G, m³/s
    saturation  -- f, as in `left_basins`
    water       -- V, water in the tank, m³

    Holds while nothing enters or leaves and the bubbles keep the tank mixed.

    Source: radon balance of a mixed tank.
    """
    return factor_flow * saturation / water


def left_standing(air_to_water: float, air: float, water: float) -> float:
    """Share left in water that stands under closed air until nothing moves any more.

        left = 1 / (1 + H′ Va / Vw)

    air, water -- their volumes, in one unit

    Nothing has gone: the rest stands in the air above.

    >>> round(left_standing(2.856, 1, 1), 4)
    0.2593

    Source: radon balance of a closed tank.
    """
    return 1 / (1 + air_to_water * air / water)
