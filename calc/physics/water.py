"""Liquid water near atmospheric pressure: how heavy, how thick, and when it boils."""

from math import exp

from calc.units import bar

CRITICAL_TEMPERATURE = 647.096  # K, [iapws-sat]
CRITICAL_PRESSURE = 22.064e6  # Pa, [iapws-sat]

_REFERENCE = 1 * bar  # the pressure that the density is given at
_GAS = 461.51805  # J/(kg K), specific gas constant of [iapws-liquid]
_STEP = 10.0  # K
# volume: constant, then (factor, power) of 10 K/(593 K - T) and of 10 K/(T - 232 K)
_VOLUME = 1.93763157e-2
_VOLUME_WARM = (
    (6.74458446e3, 4),
    (-2.22521604e5, 5),
    (1.00231247e8, 7),
    (-1.63552118e9, 8),
    (8.32299658e9, 9),
)
_VOLUME_COLD = (
    (5.78545292e-3, 1),
    (-1.53195665e-2, 2),
    (3.11337859e-2, 3),
    (-4.23546241e-2, 4),
    (3.38713507e-2, 5),
    (-1.19946761e-2, 6),
)
_VISCOSITY = ((280.68, -1.9), (511.45, -7.7), (61.131, -19.6), (0.45903, -40.0))
_BOILING = (
    (-7.85951783, 1.0),
    (1.84408259, 1.5),
    (-11.7866497, 3.0),
    (22.6807411, 3.5),
    (-15.9618719, 4.0),
    (1.80122502, 7.5),
)


def density(temperature: float) -> float:
    """Mass of a cubic metre of water at 1 bar, kg/m³.

        1/rho = R (10 K) / p [c + Σ a (10 K / (593 K - T))^n + Σ b (10 K / (T - 232 K))^m]

    temperature -- K; a thermometer in degrees goes through `units.temperature` first

    Holds from 253 to 383 K. House pressure adds 0.02 %.

    >>> round(density(283.15), 2)
    999.7

    Source: [iapws-liquid], equation for the specific volume.
    """
    warm = sum(factor * (_STEP / (593 - temperature)) ** power for factor, power in _VOLUME_WARM)
    cold = sum(factor * (_STEP / (temperature - 232)) ** power for factor, power in _VOLUME_COLD)
    return _REFERENCE / (_GAS * _STEP * (_VOLUME + warm + cold))


def viscosity(temperature: float) -> float:
    """Dynamic viscosity of water, Pa·s.

        mu = 1e-6 Σ a (T / 300 K)^b

    temperature -- K

    Holds from 253 to 383 K, within 1 %. A bed of fine grains loses pressure in proportion to it:
    a third more at 5 °C than at 15 °C.

    >>> round(viscosity(278.15) / viscosity(288.15), 2)
    1.33

    Source: [iapws-liquid], equation for the viscosity.
    """
    micro: float = sum(factor * (temperature / 300) ** power for factor, power in _VISCOSITY)
    return 1e-6 * micro


def vapour_pressure(temperature: float) -> float:
    """Pressure at which water boils, absolute Pa.

        ln(pv / pc) = Tc/T Σ a (1 - T/Tc)^n

    temperature -- K, from the ice point to the critical point

    >>> round(vapour_pressure(283.15))  # water at 10 °C boils in a good vacuum
    1228

    Source: [iapws-sat], equation (1).
    """
    far = 1 - temperature / CRITICAL_TEMPERATURE
    total = sum(factor * far**power for factor, power in _BOILING)
    return CRITICAL_PRESSURE * exp(CRITICAL_TEMPERATURE / temperature * total)
