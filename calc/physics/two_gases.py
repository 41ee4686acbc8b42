"""What an aerator does to carbon dioxide, told from what it does to radon, and back.

Both leave through the same skins of the same bubbles. Carbon dioxide crosses them faster, but the
air fills up with it sooner: S = H′ G / L is 3.6 times smaller at 10 °C.
"""

from math import sqrt
from typing import NamedTuple

from calc.physics.carbonate import air_to_water_co2, co2_diffusivity
from calc.physics.radon_solubility import air_to_water, diffusivity
from calc.physics.stripping import (
    factor_basins,
    factor_cross_flow,
    left_basins,
    left_cross_flow,
    left_trays,
)


class Unit(NamedTuple):
    """An aerator of one kind with so many stages.

    kind   -- "basins", "trays" or "crossed", as in `calc.physics.stripping`
    stages -- basins or trays that the water passes; a crossed tray has none
    """

    kind: str
    stages: int

    def left(self, factor: float, saturation: float) -> float:
        """Share left of what can be stripped, at a stripping factor and a fullness of the air."""
        if self.kind == "basins":
            return left_basins(factor, self.stages, saturation)
        if self.kind == "trays":
            return left_trays(factor, self.stages, saturation)
        return left_cross_flow(factor, saturation)

    def saturation(self, factor: float, left: float) -> float:
        """How full the air must leave each stage to leave that share; over 1 it cannot.

            basins:   f = n (y^(-1/n) - 1) / S
            crossed:  f = -ln(y) / S
            trays:    f = ((((S - 1)/y + 1)/S)^(1/n) - 1) / (S - 1);  at S = 1:  (1/y - 1) / n

        factor -- S
        left   -- y, above 0; with trays and S under 1 above 1 - S as well

        Source: `calc.physics.stripping` turned round.
        """
        if self.kind == "basins":
            return factor_basins(left, self.stages) / factor
        if self.kind == "crossed":
            return factor_cross_flow(left) / factor
        past = factor - 1
        if past == 0:
            return (1 / left - 1) / self.stages
        grown: float = ((past / left + 1) / factor) ** (1 / self.stages)
        return (grown - 1) / past


def relative_units(temperature: float) -> float:
    """How much sooner a bubble fills with carbon dioxide than with radon.

        r = √(Dc/Dr) Hr′/Hc′

    temperature -- K

    By the square root for a bubble whose skin moves freely; where dirt has stiffened it, 8 % more.

    >>> round(relative_units(283.15), 2)
    4.45

    Source: [higbie-1935] by way of `calc.physics.carbonate` and `calc.physics.radon_solubility`.
    """
    faster = sqrt(co2_diffusivity(temperature) / diffusivity(temperature))
    return faster * air_to_water(temperature) / air_to_water_co2(temperature)


def other_saturation(saturation: float, relative: float) -> float:
    """How full the same air leaves of the other gas.

        f2 = 1 - (1 - f1)^r

    saturation -- f1, 0 to 1
    relative   -- r, from `relative_units`; 1 / r for the way back from carbon dioxide to radon

    >>> round(other_saturation(0.337, 4.44), 3)
    0.839

    Source: f = 1 - exp(-u) for both gases.
    """
    filled: float = 1 - (1 - saturation) ** relative
    return filled
