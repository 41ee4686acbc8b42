"""The valve that sets a flow: how far open, how touchy, and when it starts to tear the water."""

from collections.abc import Sequence
from itertools import pairwise
from math import exp, log, pi, sqrt
from typing import NamedTuple

from calc.physics.water import CRITICAL_PRESSURE

Table = Sequence[tuple[float, float]]

# Opening of a full-bore valve and its loss factor K, from most closed to most open.
# [perry-cock]: a plug cock by the angle of its handle away from open, its last line from memory
# of Weisbach's table; a quarter-turn ball valve is taken to be like it. A globe valve with a
# plug disk by the share of its stem's travel.
COCK: Table = tuple(
    (degrees * pi / 180, loss)
    for degrees, loss in ((65, 486.0), (60, 206.0), (40, 17.3), (20, 1.56), (10, 0.29), (5, 0.05))
)
GLOBE: Table = ((0.25, 112.0), (0.5, 36.0), (0.75, 13.0), (1.0, 9.0))

# Usual pressure recovery factors FL, [iec-60534-2-1]. A ball valve has this when wide open, up
# to 0.85 when nearly shut; a globe valve that flows the wrong way has 0.8.
RECOVERY_COCK = 0.6
RECOVERY_GLOBE = 0.9
QUIET = 2.0  # cavitation index from which a globe valve is quiet: common practice, no source


class Opening(NamedTuple):
    """Where a valve must stand, and how flow changes there: d ln Q for each unit of opening."""

    at: float
    slope: float


def coefficient_of_loss(loss: float, bore: float, density: float) -> float:
    """Flow coefficient of a fitting of loss factor K, m³/s per √Pa.

        C = (pi D² / 4) √(2 / (rho K))

    loss -- K, for the speed in a pipe of this bore
    bore -- inside diameter, m

    >>> from calc.units import Cv, inch
    >>> round(coefficient_of_loss(206, 0.824 * inch, 999.1) / Cv, 2)
    1.41

    Source: K v²/2 and Q = C √Δp for the same pressure.
    """
    return pi * bore**2 / 4 * sqrt(2 / (density * loss))


def loss_of_coefficient(coefficient: float, bore: float, density: float) -> float:
    """Loss factor K of a valve of flow coefficient C, for the speed in a pipe of its bore.

        K = 2 / rho (pi D² / (4 C))²

    Source: `coefficient_of_loss`, backwards.
    """
    return 2 / density * (pi * bore**2 / 4 / coefficient) ** 2


def opening(table: Table, loss: float) -> Opening | None:
    """Where between the lines of a table a valve has this K; None past either end.

    Straight between two lines in ln K. The slope is that of the stretch, at a fixed
    pressure drop: flow goes as 1/√K.

    Half shut, a cock changes its flow by 6.2 % for each degree:

    >>> half = opening(COCK, 60)
    >>> round(abs(half.slope) * pi / 180, 4)
    0.0619

    Source: interpolation in [perry-cock].
    """
    for (near, near_loss), (far, far_loss) in pairwise(table):
        if far_loss <= loss <= near_loss:
            steep = (far - near) / log(far_loss / near_loss)
            return Opening(near + steep * log(loss / near_loss), -0.5 / steep)
    return None


def flow_after_knock(slope: float, moved: float) -> float:
    """How many times the flow passes after the handle has moved: exp(s x), at a fixed drop.

    Source: the slope of `opening`, carried on.
    """
    return exp(slope * moved)


def critical_ratio(vapour_pressure: float) -> float:
    """Pressure in the narrowest place when flow chokes, over vapour pressure: FF.

        FF = 0.96 - 0.28 √(pv / pc)

    vapour_pressure -- absolute Pa

    >>> round(critical_ratio(1228.1), 4)  # water at 10 °C
    0.9579

    Source: [iec-60534-2-1].
    """
    return 0.96 - 0.28 * sqrt(vapour_pressure / CRITICAL_PRESSURE)


def choking_drop(upstream: float, vapour_pressure: float, recovery: float) -> float:
    """Pressure drop past which a valve passes no more water, Pa.

        Δp = FL² (p1 - FF pv)

    upstream -- before the valve, absolute Pa: gauge and air together
    vapour_pressure -- absolute Pa
    recovery -- FL: 1 for a valve that wins no pressure back behind its narrowest place

    Source: [iec-60534-2-1].
    """
    return recovery**2 * (upstream - critical_ratio(vapour_pressure) * vapour_pressure)


def cavitation_index(upstream: float, downstream: float, vapour_pressure: float) -> float:
    """Cavitation index of a throttled valve: the lower, the harder bubbles form and collapse.

        sigma = (p1 - pv) / (p1 - p2)

    upstream, downstream -- absolute Pa, the first above the second

    Source: [isa-75-23].
    """
    return (upstream - vapour_pressure) / (upstream - downstream)
