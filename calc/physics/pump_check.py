"""What a gauge, a pail and a watch tell of a pump in its well."""

from calc.physics.pump_curve import PumpCurve
from calc.units import WATER_COLUMN


def fill_flow(caught: float, time: float) -> float:
    """Flow of the pump while it fills its pressure tank, m³/s: the mean from cut-in to cut-out.

        Q = V / t

    caught -- water between cut-out and cut-in, caught with the pump off, m³. Reckoned from the
              tank's size it is wrong as soon as the tank is waterlogged
    time   -- the pump takes from cut-in to cut-out with every tap shut, s

    >>> from calc.units import gal, gpm
    >>> round(fill_flow(11.4 * gal, 96.0) / gpm, 3)
    7.125

    Source: definition.
    """
    return caught / time


def measured_head(gauge: float, below: float) -> float:
    """Head a pump makes, told by a gauge, m of water.

        H = p / w + h

    gauge -- with the valve behind it shut: the head at no flow, for seconds only. A pump that
             runs against a shut valve boils its water, and may pass what tank and pipe are made
             for. While it fills a tank: the head at that flow, less what the pipe takes
    below -- from the gauge down to the water in the well at that moment, m

    >>> from calc.units import ft, psi
    >>> round(measured_head(82 * psi, 60 * ft) / ft)
    249

    Source: definition of head; water of 4 °C.
    """
    return gauge / WATER_COLUMN + below


def sheet_flow(head: float, curve: PumpCurve) -> float:
    """Flow that a sound pump of this sheet gives at a head, m³/s; 0 where it cannot reach it.

        Q = [(H0 - H) / a]^(1/n)

    head  -- it has to make, m
    curve -- through three points of the sheet, `calc.physics.pump_curve.curve_through`

    >>> from calc.physics.pump_curve import curve_through
    >>> curve = curve_through(100.0, (2.0, 90.0), (4.0, 60.0))
    >>> round(sheet_flow(90.0, curve), 9), sheet_flow(101.0, curve)
    (2.0, 0.0)

    Source: the curve of [rossman-2000] turned round.
    """
    flow: float = (max(0.0, curve.shut_off - head) / curve.factor) ** (1 / curve.power)
    return flow
