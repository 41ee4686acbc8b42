"""Flow into the open tank: what pushes, and all that holds back between gauge and spout."""

from collections.abc import Callable
from math import inf
from typing import NamedTuple

from calc.physics import pipe
from calc.physics.pump_curve import PumpCurve
from calc.roots import bracket
from calc.units import GRAVITY, gpm


class Water(NamedTuple):
    """The water that flows: density in kg/m³, dynamic viscosity in Pa·s."""

    density: float
    viscosity: float

    @property
    def weight(self) -> float:
        """Pressure under each metre of it, Pa/m."""
        return self.density * GRAVITY


class Path(NamedTuple):
    """What the water passes on its way from the gauge to the open tank.

    rise     -- of the spout above the gauge, m
    length, bore -- of the pipe, m
    fittings -- K of all fittings, valve heads and the open end, for that bore
    bed      -- resistance of the filter bed at the water's own viscosity, Pa per (m³/s)
    limit    -- flow coefficient of the inlet limit, m³/s per √Pa; infinite if there is none
    most     -- flow that a compensating limit lets pass whatever the drop, m³/s
    """

    rise: float
    length: float
    bore: float
    fittings: float
    bed: float
    limit: float = inf
    most: float = inf


class Losses(NamedTuple):
    """Where the pressure goes at one flow, Pa."""

    lift: float
    pipe: float
    fittings: float
    bed: float
    limit: float


def losses(path: Path, flow: float, water: Water) -> Losses:
    """Pressure spent on each part of the path at a flow, Pa, with a limit that does not move.

    Source: each part's own; [ergun] for the bed, whose second term is left to the fittings.
    """
    nu = water.viscosity / water.density
    friction = pipe.head_loss(flow, path.length, path.bore, pipe.ROUGHNESS_DRAWN, nu)
    return Losses(
        lift=water.weight * path.rise,
        pipe=water.weight * friction,
        fittings=water.weight * pipe.minor_loss(flow, path.bore, path.fittings),
        bed=path.bed * flow,
        limit=(flow / path.limit) ** 2,
    )


def balance(supply: Callable[[float], float], spent: Callable[[float], float]) -> float:
    """The flow at which what is spent is what is supplied, m³/s; 0 where nothing can flow.

    supply -- pressure or head at a flow, never rising with it
    spent  -- the same, always rising, without bound

    Source: one flow through all; found to rounding by [brent-1973].
    """

    def left(flow: float) -> float:
        return supply(flow) - spent(flow)

    if left(0.0) <= 0:
        return 0.0
    enough = 8 * gpm
    while left(enough) > 0:
        enough *= 2
    return bracket(left, 0.0, enough)[0]


def inlet_flow_from_tank(gauge: float, path: Path, water: Water) -> float:
    """Flow into the open tank while the gauge before the path stands still, m³/s.

    Holds for as long as the well's pressure tank holds that pressure: moments, if the
    pump cannot keep up.

    Source: `balance` of the gauge and the `losses`.
    """
    passed = balance(lambda _: gauge, lambda flow: sum(losses(path, flow, water)))
    return min(passed, path.most)


def inlet_flow_from_pump(pump: PumpCurve, level: float, path: Path, water: Water) -> float:
    """Flow into the open tank when the well pump alone feeds it and runs on, m³/s.

    level -- of the water in the well below the gauge while pumping, m: add the loss in the
             drop pipe. The static level, seen with the pump off, is higher and flatters.

    Source: `balance` of the pump's curve and the `losses`.
    """

    def supply(flow: float) -> float:
        return water.weight * (pump.head(flow) - level)

    return min(balance(supply, lambda flow: sum(losses(path, flow, water))), path.most)
