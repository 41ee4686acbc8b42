"""Lifetime risk of radon by two published reckonings that must not be mixed.

One goes from radon in a house's air, the other from radon in its water by way of an average house.
"""

from itertools import pairwise
from typing import NamedTuple

from calc.units import L, pCi

_PCI = pCi / L
# [epa-2003]: radon in the air, pCi/L, and lifetime risk of death by lung cancer.
BY_AIR = {
    "never": ((0.4, 0.00073), (1.25, 0.0023), (2, 0.0037), (4, 0.0073), (8, 0.015), (10, 0.018),
              (20, 0.036)),
    "all": ((1.25, 0.0073), (2, 0.012), (4, 0.023), (8, 0.045), (10, 0.056), (20, 0.11)),
    "smokes": ((1.25, 0.020), (2, 0.032), (4, 0.062), (8, 0.12), (10, 0.15), (20, 0.26)),
}  # fmt: skip
LUNG, STOMACH = 1.6e-8, 0.2e-8  # [nrc-1999] p. 16, for each Bq/m³ in the water


class WaterRisk(NamedTuple):
    """Lifetime risks, shares: of lung cancer by way of the air, of stomach cancer by drinking."""

    lung: float
    stomach: float


def risk_by_air(air: float, group: str) -> float | None:
    """Lifetime risk of death by lung cancer from breathing so much at home, a share.

    Straight lines between the printed figures and from none to the first. None above the last,
    20 pCi/L.

    air -- Bq/m³, averaged over years, not a winter week in the basement
    group -- "never" smoked, "all" as they are, or "smokes"

    >>> risk_by_air(4 * _PCI, "all")
    0.023

    Source: [epa-2003], table as others print it.
    """
    places = [(0.0, 0.0), *((level * _PCI, risk) for level, risk in BY_AIR[group])]
    for (x0, y0), (x1, y1) in pairwise(places):
        if air <= x1:
            return y1 if air == x1 else y0 + (y1 - y0) * (air - x0) / (x1 - x0)
    return None


def risk_by_water(water: float) -> WaterRisk:
    """Lifetime risks from using such water at home, in a house of average transfer.

        lung = 1.6e-8 C,   stomach = 0.2e-8 C,   C in Bq/m³

    water -- Bq/m³

    Men and women, smokers and not, mixed. The house's own volume and air change are not in it.

    >>> round(sum(risk_by_water(300 * _PCI)) * 1e4, 1)
    2.0

    Source: [nrc-1999] p. 16, read.
    """
    return WaterRisk(LUNG * water, STOMACH * water)
