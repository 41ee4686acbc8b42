"""Radon between water and air at rest: three published formulas, and how fast it spreads.

Temperatures are in kelvin; a thermometer in degrees goes through `units.temperature` first.
"""

from math import exp, log

from calc.physics.water import density
from calc.units import atm

ICE_POINT = 273.15  # K
GAS_CONSTANT = 8.314462618  # J/(mol K), exact in the SI
_WATER_MOLE = 0.01801528  # kg/mol, from memory


def ostwald_weigel(temperature: float) -> float:
    """Radon in water over radon in the air above it, both for each volume, when nothing moves.

        Lo = 0.105 + 0.405 exp(-0.0502 t),   t in °C

    temperature -- K, 273 to 308

    At 10 °C water holds about a third of what the same volume of air holds:

    >>> round(ostwald_weigel(283.15), 4)
    0.3502

    Source: [weigel-1978], quoted in talks and manuals that were read; the paper was not.
    """
    return 0.105 + 0.405 * exp(-0.0502 * (temperature - ICE_POINT))


def ostwald_schubert(temperature: float) -> float:
    """The same ratio from measurements of 2012, fresh water.

        ln(beta) = -76.14 + 120.36 (100 K / T) + 31.26 ln(T / 100 K),   Lo = beta T / 273.15 K

    temperature -- K, 273 to 308. beta is a Bunsen coefficient: forgetting T / 273.15 makes the
                   answer up to 8 % low

    >>> round(ostwald_schubert(283.15), 4)
    0.3461

    Source: [schubert-2012]; abstract read, coefficients second-hand.
    """
    bunsen = exp(-76.14 + 120.36 * (100 / temperature) + 31.26 * log(temperature / 100))
    return bunsen * temperature / ICE_POINT


def ostwald_clever(temperature: float) -> float:
    """The same ratio from the critical selection of solubilities of 1979.

        ln(x) = -90.5481 + 130.026 (100 K / T) + 35.0047 ln(T / 100 K),   Lo = x c R T / (1 atm)

    with c the moles of water in a cubic metre.

    temperature -- K, 273 to 308. x is the mole fraction under one atmosphere of radon

    >>> round(ostwald_clever(298.15), 4)
    0.2262

    Source: [clever-1979], coefficients from memory; agrees with [sander-2023] at 25 °C.
    """
    mole_fraction = exp(-90.5481 + 130.026 * (100 / temperature) + 35.0047 * log(temperature / 100))
    moles = density(temperature) / _WATER_MOLE
    return mole_fraction * moles * GAS_CONSTANT * temperature / atm


def air_to_water(temperature: float) -> float:
    """Radon in air over radon in the water under it when nothing moves, H′.

        H′ = 1 / Lo

    temperature -- K of the water. Warmer water lets more go: a unit tested in summer does less
                   in winter only where the well itself grows colder

    >>> round(air_to_water(283.15), 3)
    2.856

    Source: `ostwald_weigel`.
    """
    return 1 / ostwald_weigel(temperature)


def spread(temperature: float) -> float:
    """How far the three formulas lie apart, as a share of the smallest.

    temperature -- K

    >>> round(spread(283.15), 3)
    0.029

    Source: the three above.
    """
    three = [f(temperature) for f in (ostwald_weigel, ostwald_schubert, ostwald_clever)]
    return max(three) / min(three) - 1


def diffusivity(temperature: float) -> float:
    """How fast radon spreads in still water, m²/s.

        D = A exp(-E / (R T)),   A = 0.15877 cm²/s,  E = 23 260 J/mol

    temperature -- K, 283 to 308

    >>> round(diffusivity(293.15) * 1e9, 2)
    1.14

    Source: fit of [jahne-1987], constants from memory; within 1 % of the table in [crc-gases].
    """
    return 0.15877e-4 * exp(-23260 / (GAS_CONSTANT * temperature))
