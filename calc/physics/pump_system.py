"""A pump and the pipe before it: head to overcome, where the two agree, what it takes to drive.

Two pumps in series through an open tank are two systems: the tank has no pressure to pass on,
so each has a total head and an operating point of its own, and their energies add.
"""

from collections.abc import Sequence
from math import log
from typing import NamedTuple

from calc.physics import pipe
from calc.physics.inlet_network import Water, balance
from calc.physics.pump_curve import Point, PumpCurve, curve_through
from calc.roots import bracket
from calc.units import GRAVITY

LEAST_POWER, MOST_POWER = 0.3, 8.0  # of a pump's curve: a choice, no source


class Line(NamedTuple):
    """A run of one pipe: length, bore and roughness in m, K of its fittings for that bore."""

    length: float
    bore: float
    roughness: float
    fittings: float = 0.0


def line_loss(flow: float, line: Line, water: Water) -> float:
    """Head lost in a run of pipe and its fittings, m.

    Source: [rossman-2000]; see `pipe.head_loss` and `pipe.minor_loss`.
    """
    nu = water.viscosity / water.density
    friction = pipe.head_loss(flow, line.length, line.bore, line.roughness, nu)
    return friction + pipe.minor_loss(flow, line.bore, line.fittings)


def total_head(
    flow: float, lift: float, pressure: float, lines: Sequence[Line], water: Water
) -> float:
    """Total dynamic head that a pump must give at a flow, m.

        H = z + P / (rho g) + Σ h

    flow     -- m³/s
    lift     -- z, from the water while it is pumped to the gauge, m: the level at rest is higher
                and flatters
    pressure -- at that gauge and lost on the way to it in anything but pipe, Pa; an open tank
                has none but its nozzle's
    lines    -- runs of pipe from the pump to the gauge
    water    -- cold water is thicker

    The head of speed at the gauge is left out: half a foot at 5 ft/s.

    >>> from calc.units import ft, gpm, inch, psi
    >>> run = Line(390 * ft, 1.380 * inch, pipe.ROUGHNESS_DRAWN, 8.3)
    >>> cold = Water(999.7, 1.306e-3)
    >>> round(total_head(8 * gpm, 190 * ft, 60 * psi, [run], cold) / ft)
    333

    Source: the energy of a steady stream, as in any handbook; [rossman-2000] for the losses.
    """
    weight = water.density * GRAVITY
    return lift + pressure / weight + sum(line_loss(flow, line, water) for line in lines)


def operating_point(
    pump: PumpCurve, lift: float, pressure: float, lines: Sequence[Line], water: Water
) -> Point:
    """Flow, m³/s, and head, m, at which the pump gives just what the system takes.

    Where the pump cannot reach the lift and the pressure: no flow, at its shut-off head.
    Parameters as in `total_head`.

    Source: one flow through pump and pipe; [rossman-2000] for the curve.
    """
    flow = balance(pump.head, lambda q: total_head(q, lift, pressure, lines, water))
    return flow, pump.head(flow)


def at_speed(pump: PumpCurve, ratio: float) -> PumpCurve:
    """The curve of the same pump at another speed.

        Q ~ N, H ~ N², P ~ N³:   H(Q) = N² H0 - a N^(2-n) Q^n

    ratio -- N, new speed over the speed of the sheet. Half the speed gives a quarter of the head,
             and against a deep well no water at all: never take the cube law for a saving.

    From 3450 to 2900 rpm 200 ft become 141.3 ft:

    >>> slow = at_speed(PumpCurve(200.0, 0.0, 2.0), 2900 / 3450)
    >>> round(slow.shut_off, 1)
    141.3

    Source: affinity laws, from memory of any handbook on pumps.
    """
    factor = pump.factor * ratio ** (2 - pump.power)
    return PumpCurve(pump.shut_off * ratio**2, factor, pump.power)


def worn(pump: PumpCurve, left: float) -> PumpCurve:
    """The curve with only a share of its head left at each flow.

    left -- that share

    One measured point cannot tell wear from low speed or a hole in the drop pipe: near that
    point the answers agree, far from it they do not.

    Source: assumption, no source.
    """
    return PumpCurve(pump.shut_off * left, pump.factor * left, pump.power)


def speed_through(pump: PumpCurve, flow: float, head: float) -> float:
    """Speed, over that of the sheet, at which the pump's curve passes a measured point.

    flow, head -- measured, m³/s and m; both above 0

    >>> pump = PumpCurve(100.0, 2.5, 2.0)
    >>> round(speed_through(pump, 2.0, at_speed(pump, 0.9).head(2.0)), 9)
    0.9

    Source: affinity laws as in `at_speed`, solved by [brent-1973].
    """

    def short(ratio: float) -> float:
        return head - at_speed(pump, ratio).head(flow)

    low = high = 1.0
    while short(low) < 0:
        low /= 2
    while short(high) > 0:
        high *= 2
    return low if low == high else bracket(short, low, high)[0]


def water_power(flow: float, head: float, density: float) -> float:
    """Power that the water itself takes along, W: P = rho g Q H.

    In the trade's units gpm × ft / 3960 hp.

    >>> from calc.units import ft, gpm, hp
    >>> round(water_power(25 * gpm, 160 * ft, 998.2) / hp, 2)
    1.01

    Source: work over time; the trade's form from memory.
    """
    return density * GRAVITY * flow * head


def pumping_energy(volume: float, head: float, density: float, efficiency: float) -> float:
    """Energy taken from the wire to pump a volume against a head, J.

        E = rho g V H / eta

    efficiency -- of pump and motor together, wire to water: 0.3 to 0.4 for a small submersible
                  pump, common practice, no source

    A thousand gallons, 200 ft, 0.50 × 0.65:

    >>> from calc.units import ft, gal, hour
    >>> round(pumping_energy(1000 * gal, 200 * ft, 998.2, 0.325) / (1e3 * hour), 2)
    1.93

    Source: conservation of energy.
    """
    return density * GRAVITY * volume * head / efficiency


def curve_of_sheet(flows: Sequence[float], heads: Sequence[float]) -> PumpCurve | None:
    """The curve through three points of a sheet, the first at no flow; None if they make none.

    flows, heads -- m³/s and m. Flows must rise from 0 and heads fall, by enough to tell a power
                    between 0.3 and 8: points that lie close together tell of nothing.

    >>> curve = curve_of_sheet((0.0, 2.0, 4.0), (100.0, 90.0, 60.0))
    >>> curve and round(curve.power, 9)
    2.0

    Source: [rossman-2000], power function through three points; the bounds are a choice.
    """
    if not len(flows) == len(heads) == 3 or flows[0] != 0:
        return None
    if not (0 < flows[1] < flows[2] and heads[0] > heads[1] > heads[2]):
        return None
    power = log((heads[0] - heads[2]) / (heads[0] - heads[1])) / log(flows[2] / flows[1])
    if not LEAST_POWER <= power <= MOST_POWER:
        return None
    return curve_through(heads[0], (flows[1], heads[1]), (flows[2], heads[2]))
