"""The open tank through a draw: float, pump 2 and house pressure tank, event by event.

Between two events every flow is constant, so every volume is a straight line in time and
the next event is found by division: exact to rounding. The flows are those of the worst
case; a limit's flow that changes with pressure is not followed here.
"""

from dataclasses import dataclass, field
from typing import NamedTuple

EVENTS = {
    "draw starts": "the draw starts",
    "draw ends": "the draw ends",
    "pump starts": "pump 2 starts",
    "pump stops": "pump 2 stops",
    "float opens": "the float opens the inlet",
    "float closes": "the float closes the inlet",
    "dry": "the intake uncovers",
    "house tank empty": "the house pressure tank is empty",
}
_MOST_EVENTS = 20_000


class Plant(NamedTuple):
    """What is installed. Volumes m³, above the intake; flows m³/s.

    inlet      -- with the float open
    pump       -- pump 2 into the house pressure tank, its own limit included
    house      -- most that reaches the house: a limit after the pressure tank, or infinite
    float_open, float_closed -- volumes at which the float opens and closes the inlet
    drawdown   -- of the house pressure tank between cut-in and cut-out
    residual   -- what it still gives below cut-in
    """

    inlet: float
    pump: float
    house: float
    float_open: float
    float_closed: float
    drawdown: float
    residual: float = 0.0


class Draw(NamedTuple):
    """Water taken in the house: from `start` (s) at `flow` (m³/s) until `volume` (m³) is had."""

    start: float
    flow: float
    volume: float


class Point(NamedTuple):
    """The state at one moment: s, m³ in the open tank, m³ in the pressure tank above cut-in."""

    time: float
    level: float
    stored: float


class Run(NamedTuple):
    """What happened: the corners of the lines, and each event with its time, s."""

    points: tuple[Point, ...]
    events: tuple[tuple[float, str], ...]

    def first(self, event: str) -> float | None:
        """When an event first happened, s; None if it did not."""
        return next((time for time, name in self.events if name == event), None)

    @property
    def lowest(self) -> Point:
        """The moment of the lowest level. Lines are straight, so it is a corner."""
        return min(self.points, key=lambda point: point.level)


@dataclass
class _Now:
    plant: Plant
    draws: list[Draw]
    level: float
    stored: float
    filling: bool = False
    pumping: bool = False
    time: float = 0.0
    had: dict[int, float] = field(default_factory=dict)

    def drawn_by(self) -> dict[int, float]:
        """Flow each running draw would take if nothing held it back, by its place."""
        started = [i for i in range(len(self.draws)) if i in self.had]
        return {i: self.draws[i].flow for i in started if self.had[i] < self.draws[i].volume}

    def rates(self) -> tuple[float, float, float]:
        """Rate of the open tank, of the pressure tank, and the share of the draws met."""
        inlet = self.plant.inlet if self.filling else 0.0
        pump = self.plant.pump if self.pumping else 0.0
        if self.level <= 0:
            pump = min(pump, inlet)  # the rest of what pump 2 moves is air
        wanted = sum(self.drawn_by().values())
        met = min(wanted, self.plant.house)
        if self.stored <= -self.plant.residual:
            met = min(met, pump)
        return inlet - pump, pump - met, met / wanted if wanted else 0.0

    def waits(self) -> dict[str, float]:
        """Time to each event that these rates lead to."""
        level_rate, stored_rate, met = self.rates()
        plant = self.plant
        waits: dict[str, float] = {}
        if level_rate < 0:
            # of two events at one moment the first named wins: switches before emptiness
            if not self.filling:
                waits["float opens"] = max(0.0, self.level - plant.float_open) / -level_rate
            waits["dry"] = self.level / -level_rate
        if level_rate > 0 and self.filling:
            waits["float closes"] = max(0.0, plant.float_closed - self.level) / level_rate
        if stored_rate < 0:
            if not self.pumping:
                waits["pump starts"] = max(0.0, self.stored) / -stored_rate
            waits["house tank empty"] = (self.stored + plant.residual) / -stored_rate
        if stored_rate > 0 and self.pumping:
            waits["pump stops"] = max(0.0, plant.drawdown - self.stored) / stored_rate
        for place, flow in self.drawn_by().items():
            if met:
                left = (self.draws[place].volume - self.had[place]) / (flow * met)
                waits["draw ends"] = min(left, waits.get("draw ends", left))
        coming = [draw.start for i, draw in enumerate(self.draws) if i not in self.had]
        if coming:
            waits["draw starts"] = max(0.0, min(coming) - self.time)
        return waits

    def pass_time(self, wait: float) -> None:
        level_rate, stored_rate, met = self.rates()
        for place, flow in self.drawn_by().items():
            self.had[place] += flow * met * wait
        self.level += level_rate * wait
        self.stored += stored_rate * wait
        self.time += wait

    def switch(self, event: str) -> None:
        """Do what the event does, with the state set on its threshold exactly."""
        plant = self.plant
        match event:
            case "dry":
                self.level = 0.0
            case "house tank empty":
                self.stored = -plant.residual
            case "float opens":
                self.filling, self.level = True, min(self.level, plant.float_open)
            case "float closes":
                self.filling, self.level = False, plant.float_closed
            case "pump starts":
                self.pumping, self.stored = True, min(self.stored, 0.0)
            case "pump stops":
                self.pumping, self.stored = False, plant.drawdown
            case "draw starts" | "draw ends":
                self._open_and_close_taps()

    def _open_and_close_taps(self) -> None:
        for place, draw in enumerate(self.draws):
            if draw.start <= self.time:
                had = self.had.setdefault(place, 0.0)
                if draw.volume - had <= 1e-12 * draw.volume:
                    self.had[place] = draw.volume


def run(plant: Plant, draws: list[Draw], level: float, stored: float, until: float) -> Run:
    """What the open tank goes through from time 0 until all is at rest again, or `until`.

    plant  -- what is installed
    draws  -- in any order; may overlap, and share what there is in proportion
    level  -- in the open tank at the start, m³
    stored -- in the house pressure tank above cut-in at the start, m³
    until  -- s; a tank that can never fill again would go on for ever

    Float and pump 2 start at rest unless their volumes say otherwise.
    Source: conservation of water, derived here.
    """
    now = _Now(plant, list(draws), level, stored, level <= plant.float_open, stored <= 0)
    points, events = [Point(0.0, level, stored)], []
    was_dry = level <= 0
    for _ in range(_MOST_EVENTS):
        waits = now.waits()
        if not waits:
            break
        event = min(waits, key=waits.__getitem__)
        if now.time + waits[event] >= until:
            now.pass_time(until - now.time)
            points.append(Point(now.time, now.level, now.stored))
            break
        now.pass_time(waits[event])
        now.switch(event)
        if not (event == "dry" and was_dry):
            events.append((now.time, event))
        was_dry = now.level <= 0
        points.append(Point(now.time, now.level, now.stored))
    else:
        raise RuntimeError(
            f"more than {_MOST_EVENTS} events: a float or pressure band is far too small"
        )
    return Run(tuple(points), tuple(events))
