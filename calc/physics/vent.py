"""The vent of an aerator and the blower that must drive air through water and vent."""

from typing import NamedTuple

from calc.physics import air
from calc.physics.pipe import ROUGHNESS_DRAWN, head_loss, minor_loss, velocity
from calc.units import GRAVITY


class Duct(NamedTuple):
    """A straight smooth pipe with its fittings.

    length   -- m
    bore     -- inside diameter, m
    fittings -- K of all of them added up, 1 for the open end among them
    """

    length: float
    bore: float
    fittings: float


def vent_loss(air_flow: float, duct: Duct, temperature: float, pressure: float) -> float:
    """Pressure lost in the vent, Pa.

        dp = rho (f L/D + K) v² / 2

    air_flow    -- m³/s, at the vent's own temperature and pressure
    duct        -- its inside diameter counts, not its name: 2 in instead of 3 loses seven times
                   as much
    temperature -- K; the air comes out of the water, at its temperature and full of vapour
    pressure    -- of the air outdoors, absolute, Pa

    Holds for drawn plastic pipe and losses that are small against the air's own pressure.
    Rust, a sag with water in it, a nest or ice are not in it.

    Fifty cubic feet a minute through 30 ft of 3 in pipe with four elbows:

    >>> from calc.units import ft, inH2O, inch, minute
    >>> duct = Duct(30 * ft, 3.068 * inch, 4 * 0.5 + 1)
    >>> round(vent_loss(50 * ft**3 / minute, duct, 293.15, 101325) / inH2O, 2)
    0.34

    Source: [rossman-2000] and [colebrook-1939] by `calc.physics.pipe`; air by `calc.physics.air`.
    """
    weight = air.density(temperature, pressure, air.humidity(temperature, pressure))
    thickness = air.viscosity(temperature) / weight
    head = head_loss(air_flow, duct.length, duct.bore, ROUGHNESS_DRAWN, thickness)
    return weight * GRAVITY * (head + minor_loss(air_flow, duct.bore, duct.fittings))


def vent_velocity(air_flow: float, bore: float) -> float:
    """Velocity of the air in the vent, m/s.

        v = 4 G / (pi D²)

    air_flow -- m³/s
    bore     -- inside diameter, m

    Source: `calc.physics.pipe`.
    """
    return velocity(air_flow, bore)


def blower_pressure(depth: float, stones: float, vent: float, fouling: float = 0.0) -> float:
    """Pressure a blower must give, Pa.

        dp = w h + (dp_s + dp_v) (1 + m)

    depth   -- h, water over the point where the bubbles start, m
    stones  -- dp_s, lost in stones, holes, hose and the air's filter, clean, Pa
    vent    -- dp_v, lost in the vent, Pa
    fouling -- m, share by which stones and vent get worse before somebody cleans them.
               Water does not get deeper: the margin is not on it

    w is the weight of water, 9 807 Pa for each metre.

    >>> from calc.units import inH2O, inch
    >>> round(blower_pressure(18 * inch, 6 * inH2O, 0.0, 1.0) / inH2O, 1)
    30.0

    Source: weight of water [nist-811]; the rest adds up.
    """
    return GRAVITY * 1000.0 * depth + (stones + vent) * (1 + fouling)


def blower_power(air_flow: float, pressure: float, efficiency: float) -> float:
    """Power a blower takes from the mains, W.

        P = G dp / eta

    air_flow   -- G, m³/s, as it enters the blower
    pressure   -- dp, Pa
    efficiency -- eta of blower and motor together

    It leaves out that air gives way: 1.7 % too much at 20 inches of water, 5 % at 2 psi.

    >>> from calc.units import ft, inH2O, minute
    >>> round(blower_power(50 * ft**3 / minute, 20 * inH2O, 0.35))
    336

    Source: work is pressure times volume.
    """
    return air_flow * pressure / efficiency
