"""Cartridge filters: pressure drop against flow, housings side by side, and how long they last."""

from collections.abc import Mapping
from typing import NamedTuple

from calc.physics.fouling import LAWS, fitted


class Cartridge(NamedTuple):
    """One housing with its element, SI.

    element -- resistance of the element, Pa per (m³/s); grows with the dirt
    housing -- Pa per (m³/s)²: ports, head and fittings; stays
    """

    element: float
    housing: float


def cartridge(drop: float, empty_drop: float, flow: float) -> Cartridge:
    """A housing told by two readings at one flow: with its element and without.

        k = p_e / Q²,   R = (p - p_e) / Q

    drop       -- pressure before the housing less pressure behind it, Pa
    empty_drop -- the same without the element, Pa; less than `drop`
    flow       -- m³/s through this one housing

    An element of depth or pleats loses pressure in proportion to flow, ports and fittings with
    its square. Sold as one figure at one flow, a drop cannot be carried to another flow.

    >>> from calc.units import gpm, psi
    >>> one = cartridge(3 * psi, 1 * psi, 5 * gpm)
    >>> round(pressure_drop(one, 10 * gpm) / psi, 6)
    8.0

    Source: Darcy's law for the element; [iec-60534-2-1] for the rest.
    """
    return Cartridge((drop - empty_drop) / flow, empty_drop / flow**2)


def pressure_drop(one: Cartridge, flow: float, housings: int = 1) -> float:
    """Pressure that a flow loses in housings side by side, Pa.

        p = R (Q/N) + k (Q/N)²

    flow     -- through all of them, m³/s
    housings -- N, alike and equally dirty, with pipes that share the flow evenly

    Source: each passes its part, and all lose the same.
    """
    each = flow / housings
    return one.element * each + one.housing * each**2


def most_resistance(housing: float, spare: float, flow: float, housings: int = 1) -> float:
    """Resistance that each element may reach, Pa per (m³/s). Below 0: no element is clean enough.

        R = p / (Q/N) - k (Q/N)

    housing -- k, Pa per (m³/s)²
    spare   -- p, pressure that may be lost, Pa
    flow    -- that must still pass all housings together, m³/s

    Source: `pressure_drop`, turned round.
    """
    each = flow / housings
    return spare / each - housing * each


def water_until(
    clean: float, later: float, passed: float, most: float, housings: int = 1
) -> Mapping[str, float]:
    """Water that passes until each element has its most resistance, m³, by each fouling law.

        cake V = v (m-1)/(r-1),  intermediate v ln m / ln r,
        standard v (1-1/√m)/(1-1/√r),  complete v (1-1/m)/(1-1/r),  N times that for N housings

    clean, later -- resistance of a new element, and after `passed` went through it; later is
                    more, or nothing can be told
    passed       -- v, m³ through one element
    most         -- above `clean`

    One later reading fits every law; only a third can tell them apart. Plan on the shortest,
    complete blocking.

    Doubled after 20 days, 7.5 times allowed:

    >>> [round(each, 2) for each in water_until(1.0, 2.0, 20.0, 7.5).values()]
    [130.0, 58.14, 43.35, 34.67]

    Source: the laws as in `calc.physics.fouling`; dirt shared evenly among housings.
    """
    return {
        name: housings * fitted((0.0, passed), (clean, later), exponent).reaches(most)
        for name, exponent in LAWS.items()
    }
