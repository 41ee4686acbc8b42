"""What is switched around the open tank: float, pumps, lock-out, blower, taps; and what a run is.

Between two switches water moves by itself: `tank_run` moves it with constant flows,
`pressure_run` with flows that follow the pressures. Both watch the same thresholds.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple, Protocol

FREE = float("inf")
MOST_EVENTS = 20_000

EVENTS = {
    "draw starts": "the draw starts",
    "draw ends": "the draw ends",
    "pump starts": "pump 2 starts",
    "pump stops": "pump 2 stops",
    "float opens": "the float opens the inlet",
    "float closes": "the float closes the inlet",
    "float full open": "the float valve stands wide open",
    "float throttles": "the float valve begins to close",
    "dry": "the intake uncovers",
    "house tank empty": "the house pressure tank is empty",
    "pump 1 starts": "pump 1 starts",
    "pump 1 stops": "pump 1 stops",
    "well tank empty": "the well's pressure tank is empty",
    "lock-out": "the low-level switch locks pump 2 out",
    "lock-out ends": "the low-level switch lets pump 2 run again",
    "blower off": "the blower stops",
    "blower on": "the blower runs again",
    "inlet off": "the inlet is shut",
    "inlet on": "the inlet may open again",
    "well off": "pump 1 is held off",
    "well on": "pump 1 may run again",
    "power off": "the power fails",
    "power on": "the power is back",
}


class Draw(NamedTuple):
    """Water taken in the house: at `flow` (m³/s) from `start` (s) on.

    volume -- m³ after which it ends: a washer, a tub; it takes longer when held back
    lasts  -- s after which it ends: a shower, a hose; it gets less when held back
    open_tap -- `flow` is what the tap passes at the nominal pressure, and follows it;
              else the flow holds as long as there is pressure. Used where pressures are.
    """

    start: float
    flow: float
    volume: float = FREE
    lasts: float = FREE
    open_tap: bool = False

    @property
    def ends(self) -> float:
        return self.start + self.lasts


class Stop(NamedTuple):
    """What is out of service from `start` to `end`, s: "blower", "inlet", "well" or "power".

    The inlet stops while the filter backwashes, pump 1 ("well") when its protection trips.
    """

    what: str
    start: float
    end: float = FREE


class Levels(Protocol):
    """The volumes at which a plant's switches act, m³: see `tank_run.Plant`."""

    @property
    def float_open(self) -> float: ...
    @property
    def float_closed(self) -> float: ...
    @property
    def modulating(self) -> bool: ...
    @property
    def drawdown(self) -> float: ...
    @property
    def residual(self) -> float: ...
    @property
    def well_drawdown(self) -> float: ...
    @property
    def well_residual(self) -> float: ...
    @property
    def lock_at(self) -> float: ...
    @property
    def lock_reset(self) -> float: ...
    @property
    def proves(self) -> str: ...


class Flows(NamedTuple):
    """m³/s: into the open tank, through pump 2, to the house, through pump 1."""

    inflow: float = 0.0
    pumped: float = 0.0
    delivered: float = 0.0
    lifted: float = 0.0


class Point(NamedTuple):
    """The state at one moment, and the flows from it on.

    level  -- in the open tank above the intake, m³
    stored -- in the house pressure tank above its cut-in, m³; `well` in the other one
    on     -- of "float", "pump 1", "pump 2", "locked", "blower", "air" what is so
    """

    time: float
    level: float
    stored: float
    well: float = 0.0
    flows: Flows = Flows()
    on: frozenset[str] = frozenset()


class Run(NamedTuple):
    """What happened: states in the order of time, each event with its time (s), and the water
    that went where, m³: `moved` in the order of `Flows`.

    Between two points of one run with constant flows every volume is a straight line, or
    close to one where the float valve throttles.
    """

    points: tuple[Point, ...]
    events: tuple[tuple[float, str], ...]
    moved: Flows = Flows()

    def first(self, event: str) -> float | None:
        """When an event first happened, s; None if it did not."""
        return next((time for time, name in self.events if name == event), None)

    def count(self, event: str) -> int:
        """How often an event happened."""
        return sum(name == event for _, name in self.events)

    @property
    def lowest(self) -> Point:
        """The moment of the lowest level: a turning point is always among the points."""
        return min(self.points, key=lambda point: point.level)


class Watch(NamedTuple):
    """A threshold: `event` happens when `of` passes `at` upward (way 1) or downward (-1)."""

    event: str
    of: str
    at: float
    way: int


# event -> the volume that it finds on its threshold, where no switch turns
_SETS = {"dry": "level", "": "level", "house tank empty": "stored", "well tank empty": "well"}
# event -> the switch it turns, how, and the volume that is then on its threshold
_TURNS = {
    "float opens": ("filling", True, "level"),
    "float full open": ("filling", True, "level"),
    "float closes": ("filling", False, "level"),
    "float throttles": ("filling", False, "level"),
    "lock-out": ("locked", True, "level"),
    "lock-out ends": ("locked", False, "level"),
    "pump starts": ("pumping", True, "stored"),
    "pump stops": ("pumping", False, "stored"),
    "pump 1 starts": ("lifting", True, "well"),
    "pump 1 stops": ("lifting", False, "well"),
}


@dataclass
class State:
    """The volumes at one moment and how every switch stands."""

    plant: Levels
    draws: Sequence[Draw]
    stops: Sequence[Stop]
    level: float
    stored: float
    well: float
    time: float = 0.0
    filling: bool = field(init=False)
    pumping: bool = field(init=False)
    lifting: bool = field(init=False)
    locked: bool = field(init=False)
    had: dict[int, float] = field(default_factory=dict)
    done: set[int] = field(default_factory=set)
    begun: set[int] = field(default_factory=set)  # places of stops
    over: set[int] = field(default_factory=set)

    def __post_init__(self) -> None:
        """Every switch at rest unless its volume says otherwise."""
        self.filling = self.level <= self.plant.float_open
        self.pumping, self.lifting = self.stored <= 0, self.well <= 0
        self.locked = self.plant.lock_at > 0 and self.level <= self.plant.lock_at

    @property
    def running(self) -> list[int]:
        """Places of the draws that run."""
        return [i for i in self.had if i not in self.done]

    def stopped(self, *what: str) -> bool:
        return any(self.stops[i].what in what for i in self.begun - self.over)

    @property
    def inlet_may_open(self) -> bool:
        held = self.plant.proves in ("inlet", "both") and self.stopped("blower")
        return not held and not self.stopped("inlet", "power")

    @property
    def pump_on(self) -> bool:
        held = self.plant.proves == "both" and self.stopped("blower")
        return self.pumping and not self.locked and not held and not self.stopped("power")

    @property
    def pump_1_on(self) -> bool:
        return self.lifting and not self.stopped("well", "power")

    def watched(self) -> Iterator[Watch]:
        """What can happen next. Of two at one moment the first wins: switches before emptiness."""
        plant = self.plant
        if not self.filling:
            name = "float full open" if plant.modulating else "float opens"
            yield Watch(name, "level", plant.float_open, -1)
        elif plant.modulating:
            yield Watch("float throttles", "level", plant.float_open, 1)
        else:
            yield Watch("float closes", "level", plant.float_closed, 1)
        if self.locked:
            yield Watch("lock-out ends", "level", plant.lock_reset, 1)
        elif plant.lock_at > 0:
            yield Watch("lock-out", "level", plant.lock_at, -1)
        yield Watch("dry", "level", 0.0, -1)
        yield from self._pump_watches()

    def _pump_watches(self) -> Iterator[Watch]:
        plant = self.plant
        if self.pumping:
            yield Watch("pump stops", "stored", plant.drawdown, 1)
        else:
            yield Watch("pump starts", "stored", 0.0, -1)
        yield Watch("house tank empty", "stored", -plant.residual, -1)
        if plant.well_drawdown == FREE:
            return
        if self.lifting:
            yield Watch("pump 1 stops", "well", plant.well_drawdown, 1)
        else:
            yield Watch("pump 1 starts", "well", 0.0, -1)
        yield Watch("well tank empty", "well", -plant.well_residual, -1)

    def scheduled(self) -> Mapping[str, float]:
        """What comes by the clock, and when."""
        coming = [("draw starts", d.start) for i, d in enumerate(self.draws) if i not in self.had]
        coming += [("draw ends", self.draws[i].ends) for i in self.running]
        for i, stop in enumerate(self.stops):
            if i not in self.begun:
                coming.append((f"{stop.what} off", stop.start))
            elif i not in self.over:
                coming.append((f"{stop.what} on", stop.end))
        times: dict[str, float] = {}
        for name, time in coming:
            if time < times.get(name, FREE):
                times[name] = time
        return times

    def switch(self, event: str, at: float = 0.0) -> None:
        """Do what the event does. `at`: its threshold, on which the volume is set exactly."""
        if event in _SETS:
            setattr(self, _SETS[event], at)
        elif event in _TURNS:
            switch, is_on, volume = _TURNS[event]
            setattr(self, switch, is_on)
            # a float that opens may find the level lower already, after a power cut
            late = event in ("float opens", "float full open")
            setattr(self, volume, min(self.level, at) if late else at)
        elif event == "draw starts":
            for i, draw in enumerate(self.draws):
                if draw.start <= self.time:
                    self.had.setdefault(i, 0.0)
        elif event == "draw ends":
            self._close_taps()
        else:
            self._stop_and_go()

    def _close_taps(self) -> None:
        for i in self.running:
            draw = self.draws[i]
            if draw.ends <= self.time or self.had[i] >= draw.volume * (1 - 1e-12):
                self.done.add(i)

    def _stop_and_go(self) -> None:
        for i, stop in enumerate(self.stops):
            if stop.start <= self.time:
                self.begun.add(i)
            if stop.end <= self.time:
                self.over.add(i)

    def point(self, flows: Flows, air: bool) -> Point:
        """This moment as a point of the run."""
        so = {
            "float": flows.inflow > 0,
            "pump 1": self.pump_1_on,
            "pump 2": self.pump_on,
            "locked": self.locked,
            "blower": not self.stopped("blower", "power"),
            "air": air,
        }
        on = frozenset(name for name, is_so in so.items() if is_so)
        return Point(self.time, self.level, self.stored, self.well, flows, on)
