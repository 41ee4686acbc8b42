"""Air around a house: how heavy, how thick, and how much water it can carry.

Temperatures are in kelvin, pressures are absolute.
"""

from math import exp, sqrt

from calc.physics.water import vapour_pressure
from calc.units import atm

GAS_CONSTANT = 287.055  # J/(kg K), of dry air, from memory
LIGHTER = 0.621945  # molar mass of water over that of dry air, from memory
ICE_POINT = 273.16  # K, above it vapour is at rest with water, below it with ice; [iapws-ice]
_TRIPLE_PRESSURE = 611.657  # Pa, [iapws-ice]
_ICE = (
    (-21.2144006, 0.00333333333),
    (27.3203819, 1.20666667),
    (-6.10598130, 1.70333333),
)


def pressure(altitude: float) -> float:
    """Pressure of the air, Pa.

        p = 101 325 Pa (1 - z / 44 331 m)^5.2559

    altitude -- z, height above the sea, m

    Holds up to 11 km, for the average day; weather moves it by 3 %.

    At 5 000 ft a sixth of the air is gone:

    >>> from calc.units import ft
    >>> round(pressure(5000 * ft) / pressure(0), 3)
    0.832

    Source: [us-standard-1976], equation (33a), constants from memory.
    """
    share: float = (1 - altitude / 44331.0) ** 5.2559
    return atm * share


def saturation_pressure(temperature: float) -> float:
    """Pressure of water vapour over water, and over ice where it freezes, Pa.

        ice:  ln(p / pt) = Tt/T Σ a (T / Tt)^b

    temperature -- K, 233 to 373

    >>> round(saturation_pressure(263.15), 1)  # -10 °C
    259.9

    Source: [iapws-sat] over water, [iapws-ice] over ice.
    """
    if temperature >= ICE_POINT:
        return vapour_pressure(temperature)
    far = temperature / ICE_POINT
    total = sum(factor * far**power for factor, power in _ICE)
    return _TRIPLE_PRESSURE * exp(total / far)


def humidity(temperature: float, pressure: float) -> float:
    """Water carried by each kg of dry air when it can take no more, kg/kg.

        W = 0.621945 pv / (p - pv)

    temperature -- K
    pressure    -- p, absolute, Pa

    Vapour is taken as an ideal gas: 0.5 % too little.

    >>> round(humidity(283.15, 101325), 5)
    0.00763

    Source: Dalton's law.
    """
    vapour = saturation_pressure(temperature)
    return LIGHTER * vapour / (pressure - vapour)


def density(temperature: float, pressure: float, humidity: float = 0.0) -> float:
    """Mass of a cubic metre of air with its vapour, kg/m³.

        rho = p (1 + W) / (R T (1 + W / 0.621945))

    temperature -- K
    pressure    -- p, absolute, Pa
    humidity    -- W, water for each kg of dry air, kg/kg; damp air is the lighter

    >>> round(density(293.15, 101325), 4)
    1.2041

    Source: ideal gas law.
    """
    damp = (1 + humidity) / (1 + humidity / LIGHTER)
    return pressure * damp / (GAS_CONSTANT * temperature)


def viscosity(temperature: float) -> float:
    """Dynamic viscosity of air, Pa·s.

        mu = 1.458e-6 T^(3/2) / (T + 110.4)

    temperature -- K. Warm air is the thicker, unlike water

    Dry air; saturated air at 30 °C is 1 % thinner.

    >>> round(viscosity(293.15) * 1e6, 1)
    18.1

    Source: [us-standard-1976], equation (51), from memory.
    """
    return 1.458e-6 * temperature * sqrt(temperature) / (temperature + 110.4)
