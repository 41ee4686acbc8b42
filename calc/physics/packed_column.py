"""A column of packing that water trickles down against rising air: how high it must be."""

from math import cbrt, exp, log, pi
from typing import NamedTuple

from calc.physics.air import viscosity as air_viscosity
from calc.physics.radon_solubility import GAS_CONSTANT, air_to_water, diffusivity
from calc.physics.water import CRITICAL_TEMPERATURE, density, viscosity
from calc.units import GRAVITY, atm, mm

_AIR_MOLE = 0.028964  # kg/mol of dry air, from memory
_PLASTIC = 0.033  # N/m, surface tension under which water wets polyethylene, [onda-1968]
_SMALL = 15 * mm  # packing under this size has its own constant


class Packing(NamedTuple):
    """Random packing: surface in m² for each m³, and nominal size in m."""

    surface: float
    size: float


class Column(NamedTuple):
    """What Onda's equations say of one column.

    water_load, air_load -- kg/(m² s)
    wetted               -- share of the packing's surface that is wet
    rate                 -- K a, 1/s, of radon from water to air
    air_side             -- share of the resistance that is the air's
    unit_height          -- height of a transfer unit, m
    """

    water_load: float
    air_load: float
    wetted: float
    rate: float
    air_side: float
    unit_height: float


def surface_tension(temperature: float) -> float:
    """Surface tension of water against air, N/m.

        sigma = 0.2358 y^1.256 (1 - 0.625 y),   y = 1 - T / Tc

    temperature -- K

    >>> round(surface_tension(283.15), 4)
    0.0742

    Source: [iapws-tension], coefficients from memory; agrees with printed tables.
    """
    far = 1 - temperature / CRITICAL_TEMPERATURE
    return float(0.2358 * far**1.256 * (1 - 0.625 * far))


def air_density(temperature: float) -> float:
    """Dry air at one atmosphere, kg/m³: the ideal gas."""
    return atm * _AIR_MOLE / (GAS_CONSTANT * temperature)


def air_diffusivity(temperature: float) -> float:
    """How fast radon spreads in air, m²/s: 1.2e-5 at 20 °C, growing as T^1.75, from memory.

    The air's side is under one part in a hundred of the resistance: it hardly matters.
    """
    return float(1.2e-5 * (temperature / 293.15) ** 1.75)


def column_onda(
    water: float, air: float, temperature: float, diameter: float, packing: Packing
) -> Column:
    """Transfer in a packed column by Onda's three equations.

        aw/at = 1 - exp(-1.45 (sc/s)^0.75 Re^0.1 Fr^-0.05 We^0.2)
        kL = 0.0051 (Lm/(aw mu))^(2/3) (mu/(rho D))^(-1/2) (at dp)^0.4 (rho/(mu g))^(-1/3)
        kG = 5.23 at Dg (Gm/(at mug))^0.7 (mug/(rhog Dg))^(1/3) (at dp)^-2
        1/(K a) = 1/(kL aw) + 1/(H′ kG aw),   HTU = U / (K a)

    water, air  -- flows, m³/s
    temperature -- of the water, K; the air takes it on
    diameter    -- inside, m
    packing     -- plastic

    Holds for loads of water 0.8 to 43 and of air 0.014 to 1.7 kg/(m² s) and packing up to 50 mm,
    from memory. Nine in ten data on large packing lie within 34 % above and 16.5 % below what it
    says of K a [dvorak-1996]; near flooding it says nothing.

    Source: [onda-1968]; the constants second-hand, from two public codes.
    """
    area = pi / 4 * diameter**2
    rho, mu, spread = density(temperature), viscosity(temperature), diffusivity(temperature)
    load = water * rho / area
    wet = _wetted(load, temperature, packing)
    k_water = (
        0.0051
        * (load / (wet * packing.surface * mu)) ** (2 / 3)
        * (mu / (rho * spread)) ** -0.5
        * (packing.surface * packing.size) ** 0.4
        * (rho / (mu * GRAVITY)) ** (-1 / 3)
    )
    air_load = air * air_density(temperature) / area
    k_air = air_to_water(temperature) * _air_side(air_load, temperature, packing)
    rate = wet * packing.surface / (1 / k_water + 1 / k_air)
    share = (1 / k_air) / (1 / k_water + 1 / k_air)
    return Column(load, air_load, wet, rate, share, water / area / rate)


def _wetted(load: float, temperature: float, packing: Packing) -> float:
    rho, mu, tension = density(temperature), viscosity(temperature), surface_tension(temperature)
    reynolds = load / (packing.surface * mu)
    froude = load**2 * packing.surface / (rho**2 * GRAVITY)
    weber = load**2 / (rho * tension * packing.surface)
    power = 1.45 * (_PLASTIC / tension) ** 0.75 * reynolds**0.1 * froude**-0.05 * weber**0.2
    return 1 - exp(-power)


def _air_side(load: float, temperature: float, packing: Packing) -> float:
    mu, rho, spread = (
        air_viscosity(temperature),
        air_density(temperature),
        air_diffusivity(temperature),
    )
    constant = 2.0 if packing.size < _SMALL else 5.23
    return float(
        constant
        * packing.surface
        * spread
        * (load / (packing.surface * mu)) ** 0.7
        * cbrt(mu / (rho * spread))
        / (packing.surface * packing.size) ** 2
    )


def transfer_units(factor: float, left: float) -> float:
    """Transfer units that leave that share, clean air.

        NTU = S / (S - 1) ln(((S - 1) / left + 1) / S);   at S = 1:  1 / left - 1

    factor -- S; with S under 1 no height leaves less than 1 - S, and this raises ValueError
    left   -- share left

    >>> round(transfer_units(5, 0.01), 4)
    5.4807

    Source: [colburn-1939], from memory.
    """
    past = factor - 1
    if past == 0:
        return 1 / left - 1
    return factor / past * log((past / left + 1) / factor)


def left_column(factor: float, units: float) -> float:
    """Share left after that many transfer units, clean air.

        left = (S - 1) / (S exp(NTU (S - 1) / S) - 1)

    Source: `transfer_units` turned round.
    """
    past = factor - 1
    if past == 0:
        return 1 / (1 + units)
    power = units * past / factor
    if power < 0:
        return past / (factor * exp(power) - 1)
    return past * exp(-power) / (factor - exp(-power))  # never overflows
