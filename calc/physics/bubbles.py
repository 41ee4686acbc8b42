"""One bubble on its way up: how fast radon crosses its skin, and how full it leaves."""

from math import cbrt, exp, pi, sqrt
from typing import NamedTuple

from calc.physics.radon_solubility import air_to_water, diffusivity
from calc.physics.water import density, viscosity

RISE = 0.25  # m/s, bubbles of 1 to 20 mm in water rise at 0.2 to 0.35, from memory


class Bubble(NamedTuple):
    """A bubble in a house's aerator.

    clean      -- speed at which radon crosses its skin when clean, m/s
    stiff      -- the same for a skin stiffened by dirt, as a share of that
    units      -- how often over it can fill itself on its way up
    saturation -- how full it bursts, 0 to 1
    """

    clean: float
    stiff: float
    units: float
    saturation: float


def bubble(temperature: float, depth: float, diameter: float, skin: float) -> Bubble:
    """A bubble that starts under that much water.

    temperature -- K
    depth, diameter -- m
    skin        -- transfer through its skin, as a share of a clean one's

    Source: the functions below, at a rise of 0.25 m/s.
    """
    spread, held = diffusivity(temperature), air_to_water(temperature)
    thickness = viscosity(temperature) / density(temperature)
    clean = transfer_velocity_higbie(spread, RISE, diameter)
    stiff = transfer_velocity_froessling(spread, RISE, diameter, thickness) / clean
    units = transfer_units(skin * clean, depth, RISE, diameter, held)
    return Bubble(clean, stiff, units, saturation(units))


def transfer_velocity_higbie(diffusivity: float, rise: float, diameter: float) -> float:
    """Speed at which radon crosses the skin of a clean bubble, K, m/s.

        K = 2 √(D v / (π d))

    diffusivity -- of radon in water, m²/s
    rise        -- speed of the bubble, m/s: 0.2 to 0.3 for bubbles of 1 to 10 mm
    diameter    -- of the bubble, m. The holes of a stone are far smaller than its bubbles

    The skin moves freely only in clean water. Iron, oils and time stiffen it.

    >>> round(transfer_velocity_higbie(0.813e-9, 0.25, 3e-3) * 1e4, 2)  # 10 °C, 3 mm
    2.94

    Source: [higbie-1935], from memory; [alves-2005] found it to hold for the clean part.
    """
    return 2 * sqrt(diffusivity * rise / (pi * diameter))


def transfer_velocity_froessling(
    diffusivity: float, rise: float, diameter: float, viscosity: float
) -> float:
    """Speed at which radon crosses the skin of a bubble stiffened by dirt, m/s.

        K = D / d (2 + 0.6 Re^(1/2) Sc^(1/3)),   Re = v d / nu,  Sc = nu / D

    diffusivity, rise, diameter -- as in `transfer_velocity_higbie`
    viscosity   -- kinematic, nu, m²/s

    >>> round(transfer_velocity_froessling(0.813e-9, 0.25, 3e-3, 1.306e-6) * 1e5, 1)
    4.6

    Source: [froessling-1938], from memory; [alves-2005] found it to hold for the stiff part.
    """
    reynolds, schmidt = rise * diameter / viscosity, viscosity / diffusivity
    return diffusivity / diameter * (2 + 0.6 * sqrt(reynolds) * cbrt(schmidt))


def transfer_units(
    velocity: float, depth: float, rise: float, diameter: float, air_to_water: float
) -> float:
    """How often over a bubble can fill itself on its way up, u.

        u = 6 K (h / v) / (d H′)

    velocity     -- K, m/s
    depth        -- h, water over the point where the bubbles start, m; not the tank's height
    rise         -- v, m/s
    diameter     -- d, m
    air_to_water -- H′

    Source: mass balance of one round bubble of fixed size in water of one strength.
    """
    return 6 * velocity * (depth / rise) / (diameter * air_to_water)


def saturation(units: float) -> float:
    """Radon in the bubble as it bursts, as a share of what it could carry at rest.

        f = 1 - exp(-u)

    units -- from `transfer_units`

    Fine bubbles through half a metre of clean water come out a third full:

    >>> round(saturation(transfer_units(2.936e-4, 0.5, 0.25, 3e-3, 2.856)), 3)
    0.337

    Source: as `transfer_units`.
    """
    return 1 - exp(-units)
