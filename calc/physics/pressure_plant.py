"""Pumps, pressure tanks, filter and throttles: which flows they give at which volumes."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from math import sqrt
from typing import NamedTuple

from calc.physics.pressure_tank import drawdown, residual
from calc.physics.restriction import flow_through_bed
from calc.physics.tank_switches import FREE, Draw
from calc.roots import bracket
from calc.units import atm, psi

NOMINAL = 40 * psi  # at which an open tap passes its nominal flow; a choice, no source


class Pump(NamedTuple):
    """A pump with the pipe and the throttle behind it: P = P0 - a Q².

    shut_off -- P0, gauge pressure in the pressure tank at which nothing flows any more, Pa
    bend     -- a, Pa per (m³/s)²; a fixed throttle in line adds 1/C²
    limit    -- m³/s that a compensating flow control lets through
    """

    shut_off: float
    bend: float
    limit: float = FREE

    def flow(self, pressure: float) -> float:
        return min(self.limit, sqrt(max(0.0, self.shut_off - pressure) / self.bend))

    def limited_below(self) -> float:
        """Pressure below which the flow control holds the flow."""
        return self.shut_off - self.bend * self.limit**2 if self.limit < FREE else -FREE


class Inlet(NamedTuple):
    """From the well's pressure tank into the open one: P = back + a Q + b Q².

    back   -- gauge pressure it takes to lift the water to the spout, Pa
    linear, quadratic -- of filter bed and restrictions, see `restriction.flow_through_bed`
    limit  -- m³/s that a compensating flow control lets through
    """

    back: float
    linear: float
    quadratic: float
    limit: float = FREE

    def flow(self, pressure: float) -> float:
        return min(self.limit, flow_through_bed(pressure - self.back, self.linear, self.quadratic))

    def limited_above(self) -> float:
        """Pressure above which the flow control holds the flow."""
        if self.limit == FREE:
            return FREE
        return self.back + self.linear * self.limit + self.quadratic * self.limit**2


class Tank(NamedTuple):
    """A pressure tank and its switch: m³ and gauge Pa. See `pressure_tank.drawdown`."""

    size: float
    precharge: float
    cut_in: float
    cut_out: float
    air: float = atm

    @property
    def drawdown(self) -> float:
        return drawdown(self.size, self.precharge, self.cut_in, self.cut_out, self.air)

    @property
    def residual(self) -> float:
        return residual(self.size, self.precharge, self.cut_in, self.air)

    def pressure(self, stored: float) -> float:
        """Gauge pressure with `stored` m³ above what it holds at cut-in. Boyle's law."""
        empty = (
            self.size * (self.precharge + self.air) / (max(self.cut_in, self.precharge) + self.air)
        )
        return self.size * (self.precharge + self.air) / (empty - stored) - self.air

    def stored(self, pressure: float) -> float:
        """The other way round."""
        whole = self.size * (self.precharge + self.air)
        return whole / (max(self.cut_in, self.precharge) + self.air) - whole / (pressure + self.air)


@dataclass(frozen=True)
class PressurePlant:
    """What is installed, by its curves. Volumes m³ above the intake, as in `tank_run.Plant`.

    throttle -- flow coefficient of a fixed throttle after the house pressure tank
    well     -- the well's pressure tank, pump 1 and the way into the open tank; or a steady
                flow in, m³/s
    The level in the open tank changes neither flow: a foot of it is 0.4 psi.
    """

    float_open: float
    float_closed: float
    house: Tank
    pump: Pump
    well: tuple[Tank, Pump, Inlet] | float
    throttle: float = FREE
    lock_at: float = 0.0
    lock_reset: float = 0.0
    proves: str = "nothing"
    modulating = False

    def __post_init__(self) -> None:
        """Raises ValueError for a pump that cannot reach its cut-out: it would never stop."""
        sides = [(self.house, self.pump)]
        if not isinstance(self.well, float):
            sides.append(self.well[:2])
        if any(pump.flow(tank.cut_out) <= 0 for tank, pump in sides):
            raise ValueError("a pump is too weak for its cut-out and would never stop")

    @cached_property
    def drawdown(self) -> float:
        return self.house.drawdown

    @cached_property
    def residual(self) -> float:
        return self.house.residual

    @cached_property
    def well_drawdown(self) -> float:
        return FREE if isinstance(self.well, float) else self.well[0].drawdown

    @cached_property
    def well_residual(self) -> float:
        return 0.0 if isinstance(self.well, float) else self.well[0].residual


class Drawn(NamedTuple):
    """What the taps take together: a steady m³/s, and m³/s per √Pa of open taps."""

    steady: float
    open_taps: float

    @classmethod
    def of(cls, draws: Sequence[Draw]) -> "Drawn":
        taps = sum(draw.flow for draw in draws if draw.open_tap) / sqrt(NOMINAL)
        return cls(sum(draw.flow for draw in draws if not draw.open_tap), taps)

    def at(self, pressure: float, throttle: float) -> tuple[float, float]:
        """Share of the steady flow that is met, and √Pa before the open taps.

        With x² the pressure before the taps, q + k x flows and x² + (q + k x)² / C² = P.
        """
        pressure = max(0.0, pressure)
        if throttle == FREE:
            return float(pressure > 0), sqrt(pressure)
        tight, q, k = 1 / throttle**2, self.steady, self.open_taps
        left = pressure - tight * q**2
        if left <= 0:
            return throttle * sqrt(pressure) / q if q else 1.0, 0.0
        half = q * k * tight
        # the larger root of (1 + k²/C²) x² + 2 (q k / C²) x = left, without cancellation
        return 1.0, left / (half + sqrt(half**2 + (1 + k**2 * tight) * left))

    def delivered(self, share: float, root: float) -> float:
        return self.steady * share + self.open_taps * root

    def steady_fails_below(self, throttle: float) -> float:
        """Pressure under which the steady flow is not met in full."""
        return (self.steady / throttle) ** 2 if throttle < FREE and self.steady else -FREE


def balanced(pump: Pump, drawn: Drawn, throttle: float, most: float) -> tuple[float, float]:
    """What `Drawn.at` gives with an empty pressure tank: pump 2 alone holds the pressure,
    which is no more than `most`."""

    def missing(pressure: float) -> float:
        return drawn.delivered(*drawn.at(pressure, throttle)) - pump.flow(pressure)

    if missing(0.0) >= 0 or missing(least := most * 1e-9) >= 0:
        return pump.flow(0.0) / drawn.steady if drawn.steady else 0.0, 0.0
    return drawn.at(bracket(missing, least, most)[0], throttle)
