"""The head that a pump gives at a flow."""

from math import log
from typing import NamedTuple

Point = tuple[float, float]  # flow, m³/s; head, m


class PumpCurve(NamedTuple):
    """H = H0 - a Q^n. Heads in m above the water the pump stands in."""

    shut_off: float
    factor: float
    power: float

    def head(self, flow: float) -> float:
        """Head at a flow, m; below 0 where the pump can no longer reach."""
        lost: float = self.factor * max(flow, 0.0) ** self.power
        return self.shut_off - lost


def curve_through(shut_off: float, middle: Point, far: Point) -> PumpCurve:
    """The curve through three points of a pump's data sheet.

        n = ln((H0 - H2) / (H0 - H1)) / ln(Q2 / Q1),   a = (H0 - H1) / Q1^n

    shut_off -- head at no flow, m
    middle, far -- two more points, the head falling as the flow rises. A sheet for another
                speed or another number of stages shows another pump.

    >>> curve = curve_through(100.0, (2.0, 90.0), (4.0, 60.0))
    >>> round(curve.power, 9), round(curve.factor, 9)
    (2.0, 2.5)

    Source: [rossman-2000], power function through three points.
    """
    fall, deep = shut_off - middle[1], shut_off - far[1]
    power = log(deep / fall) / log(far[0] / middle[0])
    return PumpCurve(shut_off, fall / middle[0] ** power, power)


def rated_curve(flow: float, head: float) -> PumpCurve:
    """The curve of a pump of which one point is known, the one it is rated for.

    Shut-off head 4/3 of the rated one, no head at twice the rated flow: a parabola.
    It may be 10 % off: take three points where the sheet has them.

    >>> from calc.units import ft, gpm
    >>> round(rated_curve(8 * gpm, 225 * ft).shut_off / ft, 6)
    300.0

    Source: [rossman-2000], single-point curve.
    """
    return curve_through(head * 4 / 3, (flow, head), (2 * flow, 0.0))
