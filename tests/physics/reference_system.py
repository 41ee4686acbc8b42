"""The whole system once more, by a general solver of differential equations.

Written from the description of the plant alone, in gallons, minutes and psi: it shares no
line and no unit with `calc.physics`. Between two switches scipy's DOP853 integrates the
balances; every switch is a terminal event, after which it starts anew. Where our own code
divides, or follows each tank by quadrature, this steps all volumes together through time.
"""

from collections.abc import Callable
from math import sqrt
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

type State = NDArray[np.float64]
LEVEL, STORED, WELL, HAD = 0, 1, 2, 3
FEET = 2.309  # of water in a psi
AIR = 14.696
ENDLESS = 1e9
CATCHES_UP = "even"  # the float asks for what pump 1 lifts: nothing is switched


class Tap(NamedTuple):
    """A draw: it ends with its volume or its time, whichever comes first."""

    start: float
    flow: float
    volume: float = ENDLESS
    lasts: float = ENDLESS
    open_tap: bool = False


class Air(NamedTuple):
    """A pressure tank: size, pre-charge, cut-in, cut-out."""

    size: float
    pre: float
    low: float
    high: float

    def above(self, psi: float) -> float:
        """Gallons above what it holds at cut-in."""
        air = self.size * (self.pre + AIR)
        return air / (self.low + AIR) - air / (psi + AIR)

    def psi(self, above: float) -> float:
        air = self.size * (self.pre + AIR)
        return air / (air / (self.low + AIR) - above) - AIR


class Curve(NamedTuple):
    """A pump: head at no flow (ft), loss (ft per gpm²), Cv of its throttle, a limit (gpm)."""

    head: float
    loss: float
    cv: float = ENDLESS
    limit: float = ENDLESS

    def gpm(self, psi: float) -> float:
        left = self.head - FEET * psi
        return min(self.limit, sqrt(max(left, 0.0) / (self.loss + FEET / self.cv**2)))


class Way(NamedTuple):
    """Into the open tank: feet to lift, bed, Cv, limit."""

    feet: float
    linear: float
    quadratic: float
    cv: float
    limit: float = ENDLESS

    def gpm(self, psi: float) -> float:
        def left(q: float) -> float:
            return psi - self.feet / FEET - self.linear * q - (self.quadratic + self.cv**-2) * q * q

        return 0.0 if left(0.0) <= 0 else min(self.limit, brentq(left, 0.0, 200.0, xtol=1e-13))


class System(NamedTuple):
    """The plant. Flows that follow a pressure are a Curve or a Way, steady ones a number."""

    opens: float
    closes: float
    pump: float | Curve
    inlet: float | Way
    taps: tuple[Tap, ...]
    house: Air | tuple[float, float]  # or drawdown and what is left below cut-in
    well: Air | tuple[float, float] | None = None
    pump_1: float | Curve = 0.0
    limit: float = ENDLESS  # gpm, or Cv with an Air
    modulating: bool = False
    lock: float = 0.0
    reset: float = 0.0
    proves: str = "nothing"
    stops: tuple[tuple[str, float, float], ...] = ()


class Trial:
    """The system at one moment, and the mode each of its switches is in."""

    def __init__(self, system: System, level: float, stored: float, well: float) -> None:
        self.system, self.time, self.lowest = system, 0.0, level
        self.state = np.array([level, stored, well, *(0.0 for _ in system.taps)])
        self.waiting, self.running = set(range(len(system.taps))), set[int]()
        self.to_stop, self.stopped = set(range(len(system.stops))), set[int]()
        self.filling, self.pumping, self.lifting = level <= system.opens, stored <= 0, well <= 0
        self.locked, self.dry, self.empty, self.short = (
            level <= system.lock,
            level <= 0,
            False,
            False,
        )
        self.locked = self.locked and system.lock > 0
        self.events: list[tuple[float, str]] = []

    def out(self, *what: str) -> bool:
        return any(self.system.stops[i][0] in what for i in self.stopped)

    def drawdown(self, tank: Air | tuple[float, float]) -> tuple[float, float]:
        """Most above cut-in, and least."""
        if isinstance(tank, Air):
            return tank.above(tank.high), tank.above(tank.pre)
        return tank[0], -tank[1]

    def lifted(self, well: float) -> float:
        one = self.system.pump_1
        if not self.lifting or self.out("well", "power"):
            return 0.0
        if isinstance(one, Curve):
            assert isinstance(self.system.well, Air)
            return one.gpm(self.system.well.psi(well))
        return one

    def entering(self, level: float, well: float) -> float:
        plant = self.system
        held = self.out("inlet", "power") or (plant.proves != "nothing" and self.out("blower"))
        if held or not (self.filling or plant.modulating):
            return 0.0
        if isinstance(plant.inlet, Way):
            assert isinstance(plant.well, Air)
            one = plant.pump_1
            if not self.short:
                return plant.inlet.gpm(plant.well.psi(well))
            if not self.lifted(well):
                return 0.0
            assert isinstance(one, Curve)
            way = plant.inlet
            even = brentq(lambda p: one.gpm(p) - way.gpm(p), 0.0, plant.well.pre, xtol=1e-13)
            return plant.inlet.gpm(even)
        asked = plant.inlet
        if plant.modulating:
            asked *= min(1.0, max(0.0, (plant.closes - level) / (plant.closes - plant.opens)))
        return min(asked, self.lifted(well)) if self.short else asked

    def taken(self, stored: float) -> tuple[float, list[float]]:
        """What pump 2 moves, and what each tap gets."""
        plant = self.system
        held = self.locked or self.out("power") or (plant.proves == "both" and self.out("blower"))
        on = self.pumping and not held
        running = [t for i, t in enumerate(plant.taps) if i in self.running]
        if isinstance(plant.pump, Curve):
            assert isinstance(plant.house, Air)
            psi = plant.house.psi(stored)
            if self.empty:
                psi = self.psi_without_tank(running, on)
            gets = self.through(running, psi)
            pumped = plant.pump.gpm(psi) if on else 0.0
        else:
            asked = sum(t.flow for t in running)
            pumped = plant.pump if on else 0.0
            given = min(asked, plant.limit)
            if self.empty:
                given = min(given, pumped)
            gets = [t.flow * given / asked for t in running]
        each = iter(gets)
        return pumped, [next(each) if i in self.running else 0.0 for i in range(len(plant.taps))]

    def psi_without_tank(self, running: list[Tap], on: bool) -> float:
        pump, house = self.system.pump, self.system.house
        assert isinstance(pump, Curve)
        assert isinstance(house, Air)
        if not on:
            return 0.0
        over = lambda psi: sum(self.through(running, psi)) - pump.gpm(psi)  # noqa: E731
        return brentq(over, 0.0, house.pre, xtol=1e-13)

    def through(self, running: list[Tap], psi: float) -> list[float]:
        """Taps at a pressure, behind the throttle they share."""
        if psi <= 0:
            return [0.0 for _ in running]
        cv = self.system.limit
        steady = sum(t.flow for t in running if not t.open_tap)
        taps = sum(t.flow for t in running if t.open_tap) / sqrt(40)
        if cv < ENDLESS and steady > cv * sqrt(psi):
            return [0.0 if t.open_tap else t.flow / steady * cv * sqrt(psi) for t in running]
        root = sqrt(psi)
        if cv < ENDLESS and taps:
            rest = lambda x: psi - x * x - ((steady + taps * x) / cv) ** 2  # noqa: E731
            root = brentq(rest, 0.0, sqrt(psi), xtol=1e-14)
        return [t.flow / sqrt(40) * root if t.open_tap else t.flow for t in running]

    def rates(self, _time: float, y: State) -> State:
        inflow = self.entering(y[LEVEL], y[WELL])
        pumped, gets = self.taken(y[STORED])
        if self.dry:
            pumped = min(pumped, inflow)
        if self.empty and not isinstance(self.system.pump, Curve) and sum(gets) > pumped:
            gets = [each * pumped / sum(gets) for each in gets]
        well = 0.0
        if self.system.well:
            well = 0.0 if self.short else self.lifted(y[WELL]) - inflow
        return np.array([inflow - pumped, 0.0 if self.empty else pumped - sum(gets), well, *gets])

    def watched(self) -> dict[str, tuple[int, float, int]]:
        """What each switch watches: which volume, where, and the direction it must pass."""
        plant, seen = self.system, dict[str, tuple[int, float, int]]()
        most, least = self.drawdown(plant.house)
        if not self.filling:
            seen["float full open" if plant.modulating else "float opens"] = LEVEL, plant.opens, -1
        elif plant.modulating:
            seen["float throttles"] = LEVEL, plant.opens, 1
        else:
            seen["float closes"] = LEVEL, plant.closes, 1
        if self.locked:
            seen["lock-out ends"] = LEVEL, plant.reset, 1
        elif plant.lock:
            seen["lock-out"] = LEVEL, plant.lock, -1
        if not self.dry:
            seen["dry"] = LEVEL, 0.0, -1
        seen |= (
            {"pump stops": (STORED, most, 1)} if self.pumping else {"pump starts": (STORED, 0, -1)}
        )
        if not self.empty:
            seen["house tank empty"] = STORED, least, -1
        if plant.well:
            most, least = self.drawdown(plant.well)
            seen |= (
                {"pump 1 stops": (WELL, most, 1)}
                if self.lifting
                else {"pump 1 starts": (WELL, 0, -1)}
            )
            if not self.short:
                seen["well tank empty"] = WELL, least, -1
            elif plant.modulating and not isinstance(plant.inlet, Way):
                # a throttling float asks for less and less, and pump 1 catches up
                asks = self.lifted(0.0) / plant.inlet * (plant.closes - plant.opens)
                seen[CATCHES_UP] = LEVEL, plant.closes - asks, 1
        return seen | {f"{i} ends": (HAD + i, plant.taps[i].volume, 1) for i in self.running}

    def clock(self, until: float) -> tuple[float, str]:
        plant = self.system
        coming = [(until, "until")]
        coming += [(plant.taps[i].start, "draw starts") for i in self.waiting]
        coming += [(plant.taps[i].start + plant.taps[i].lasts, f"{i} ends") for i in self.running]
        coming += [(plant.stops[i][1], f"{plant.stops[i][0]} off") for i in self.to_stop]
        coming += [(plant.stops[i][2], f"{plant.stops[i][0]} on") for i in self.stopped]
        return min(coming)

    def step(self, until: float) -> None:
        """On to the next switch, the next draw or the end."""
        ends, called = self.clock(until)
        seen = self.watched()
        watches = [_watch(*each) for each in seen.values()]
        turn: Callable[[float, State], float] = lambda t, y: self.rates(t, y)[LEVEL]  # noqa: E731
        turn.direction = 1  # type: ignore[attr-defined]
        passed: list[str] = []
        if ends > self.time:
            found = solve_ivp(
                self.rates, (self.time, ends), self.state, method="DOP853", rtol=1e-10, atol=1e-11,
                events=[*watches, turn],
            )  # fmt: skip
            self.time, self.state = float(found.t[-1]), found.y[:, -1].copy()
            self.lowest = min(
                [self.lowest, *found.y[LEVEL], *(y[LEVEL] for y in found.y_events[-1])]
            )
            passed = [n for n, t in zip(seen, found.t_events, strict=False) if t.size]
        for name in passed or [called] * (called != "until"):
            if name in seen and passed:
                self.state[seen[name][0]] = seen[name][1]
            self.switch(name)

    def switch(self, name: str) -> None:
        plant = self.system
        what, _, how = name.rpartition(" ")
        if name.endswith(" ends") and name != "lock-out ends":
            self.running.remove(int(what))
            name = "draw ends"
        elif name == "draw starts":
            begun = {i for i in self.waiting if plant.taps[i].start <= self.time}
            self.waiting, self.running = self.waiting - begun, self.running | begun
        elif how in ("off", "on") and what in ("blower", "inlet", "well", "power"):
            place = next(i for i, stop in enumerate(plant.stops) if stop[0] == what)
            self.to_stop -= {place}
            self.stopped ^= {place}
        elif name.startswith("float"):
            self.filling = name in ("float opens", "float full open")
        elif name.startswith("lock"):
            self.locked = name == "lock-out"
        elif name.startswith("pump 1"):
            self.lifting = name == "pump 1 starts"
        elif name.startswith("pump"):
            self.pumping = name == "pump starts"
        elif name == CATCHES_UP:
            self.short = False
            return
        self.dry = self.dry or name == "dry"
        self.empty = self.empty or name == "house tank empty"
        self.short = self.short or name == "well tank empty"
        self.events.append((self.time, name))
        self._leave_the_bottom()

    def _leave_the_bottom(self) -> None:
        """A tank that was empty fills again as soon as more enters than leaves."""
        was = self.dry, self.empty, self.short
        self.dry = self.empty = self.short = False
        inflow = self.entering(self.state[LEVEL], self.state[WELL])
        lifted = self.lifted(self.state[WELL])
        self.short = was[2] and lifted <= inflow
        inflow = self.entering(self.state[LEVEL], self.state[WELL])
        pumped, gets = self.taken(self.state[STORED])
        self.dry = was[0] and pumped >= inflow
        self.empty = was[1] and (min(pumped, inflow) if self.dry else pumped) <= sum(gets)


def _watch(place: int, at: float, way: int) -> Callable[[float, State], float]:
    def seen(_time: float, y: State) -> float:
        return float(y[place]) - at

    seen.terminal, seen.direction = True, way  # type: ignore[attr-defined]
    return seen


def trial(system: System, start: tuple[float, float, float], until: float, to_dry: bool) -> Trial:
    """The system followed from time 0 to `until`, in minutes, or until it is dry."""
    now = Trial(system, *start)
    while now.time < until and not (to_dry and now.dry):
        now.step(until)
    return now
