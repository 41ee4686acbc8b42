"""How high a pump above the water can lift it: the air pushes, the water's vapour pushes back."""

from calc.physics.water import density, vapour_pressure
from calc.units import GRAVITY, atm

# Standard atmosphere below 11 km: temperature at sea level over its fall for each metre,
# 288.15 K / 0.0065 K/m, and the exponent g M / (R L). [us-atmosphere-1976]
SCALE = 288.15 / 0.0065  # m
EXPONENT = GRAVITY * 0.0289644 / (8.31432 * 0.0065)


def air_pressure(altitude: float) -> float:
    """Pressure of the air at an altitude on a standard day, absolute Pa.

        p = 101 325 Pa (1 - 0.0065 h / 288.15)^5.2559

    altitude -- above sea level, m. Weather moves it by 3 % either way.

    >>> round(air_pressure(2000.0) / 1e3, 2)
    79.5

    Source: [us-atmosphere-1976].
    """
    return float(atm * max(0.0, 1 - altitude / SCALE) ** EXPONENT)


def suction_limit(air: float, temperature: float) -> float:
    """Highest lift that any pump could make if it lost nothing, m.

        (p_air - p_vapour) / (rho g)

    air         -- absolute Pa
    temperature -- of the water, K: the warmest day decides

    >>> from calc.units import ft
    >>> round(suction_limit(101325.0, 298.15) / ft, 1)
    32.9

    Source: hydrostatics; [iapws-sat] for the vapour.
    """
    return (air - vapour_pressure(temperature)) / (density(temperature) * GRAVITY)


def npsh_available(limit: float, lift: float, friction: float) -> float:
    """Net positive suction head left at the pump, m: limit less lift less friction.

    limit    -- from `suction_limit`, m
    lift     -- from the water while it is pumped up to the pump, m; below 0 if the water stands
                above the pump
    friction -- in the suction pipe, its foot valve and fittings, m

    Gas in the water comes out before the water boils: gassy water lifts less than this says.

    Source: definition, from memory of any handbook on pumps.
    """
    return limit - lift - friction
