"""The open tank's draw once more, by a general solver of differential equations.

Written from the description of the plant alone, in gallons and minutes: it shares no line
and no unit with `calc.physics.tank_run`. Between two switches scipy's DOP853 integrates
the three balances; every switch is a terminal event, after which it starts anew.
"""

from collections.abc import Callable
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy.integrate import solve_ivp

type State = NDArray[np.float64]
type Watched = Callable[[float, State], float]
LEVEL, STORED, HAD = 0, 1, 2


class House(NamedTuple):
    """The plant in gal and gal/min; draws as (start, flow, volume)."""

    inlet: float
    pump: float
    limit: float
    opens: float
    closes: float
    drawdown: float
    left: float
    draws: tuple[tuple[float, float, float], ...]


class Trial:
    """A house at one moment: its volumes, and the mode each of its switches is in."""

    def __init__(self, house: House, level: float, stored: float) -> None:
        self.house, self.time = house, 0.0
        self.state = np.array([level, stored, *(0.0 for _ in house.draws)])
        self.waiting = set(range(len(house.draws)))
        self.running: set[int] = set()
        self.filling, self.pumping = level <= house.opens, stored <= 0
        self.dry, self.empty = level <= 0, False
        self.events: list[tuple[float, str]] = []
        self.lowest = level

    def balances(self) -> State:
        """d/dt of the open tank, the pressure tank and the water each draw has had."""
        house = self.house
        inlet = house.inlet if self.filling else 0.0
        pumped = house.pump if self.pumping else 0.0
        if self.dry and pumped > inlet:
            pumped = inlet
        asked = sum(house.draws[i][1] for i in self.running)
        given = min(asked, house.limit)
        if self.empty:
            given = min(given, pumped)
        shares = [
            house.draws[i][1] / asked * given if i in self.running else 0.0
            for i in range(len(house.draws))
        ]
        return np.array([inlet - pumped, pumped - given, *shares])

    def watched(self) -> dict[str, tuple[Watched, float]]:
        """What each switch watches: a function that passes 0, and the direction it must pass."""
        house, seen = self.house, dict[str, tuple[Watched, float]]()
        if self.filling:
            seen["float closes"] = (lambda _, y: y[LEVEL] - house.closes, 1)
        else:
            seen["float opens"] = (lambda _, y: y[LEVEL] - house.opens, -1)
        if self.pumping:
            seen["pump stops"] = (lambda _, y: y[STORED] - house.drawdown, 1)
        else:
            seen["pump starts"] = (lambda _, y: y[STORED], -1)
        if not self.dry:
            seen["dry"] = (lambda _, y: y[LEVEL], -1)
        if not self.empty:
            seen["house tank empty"] = (lambda _, y: y[STORED] + house.left, -1)
        for i in self.running:
            seen[f"{i} ends"] = (_had_all(HAD + i, house.draws[i][2]), 1)
        return seen

    def step(self, until: float) -> None:
        """On to the next switch, the next draw or the end."""
        ends = min([until, *(self.house.draws[i][0] for i in self.waiting)])
        seen, rates = self.watched(), self.balances()
        for watch, direction in seen.values():
            watch.terminal, watch.direction = True, direction  # type: ignore[attr-defined]
        if ends > self.time:
            found = solve_ivp(
                lambda _t, _y: rates,
                (self.time, ends),
                self.state,
                method="DOP853",
                rtol=1e-10,
                atol=1e-12,
                events=[watch for watch, _ in seen.values()],
            )
            self.time, self.state = float(found.t[-1]), found.y[:, -1].copy()
            passed = [n for n, t in zip(seen, found.t_events, strict=True) if t.size]
            self.lowest = min(self.lowest, float(found.y[LEVEL].min()))
        else:
            passed = []
        for name in passed or ["draw starts"] * (ends < until):
            self.switch(name)

    def switch(self, name: str) -> None:
        """Turn what has passed its threshold, and set the volume on that threshold."""
        house = self.house
        if name.endswith(" ends"):
            self.running.remove(int(name.removesuffix(" ends")))
            name = "draw ends"
        elif name == "draw starts":
            begun = {i for i in self.waiting if house.draws[i][0] <= self.time}
            self.waiting, self.running = self.waiting - begun, self.running | begun
        elif name.startswith("float"):
            self.filling = name == "float opens"
            self.state[LEVEL] = house.opens if self.filling else house.closes
        elif name.startswith("pump"):
            self.pumping = name == "pump starts"
            self.state[STORED] = 0.0 if self.pumping else house.drawdown
        elif name == "dry":
            self.dry, self.state[LEVEL] = True, 0.0
        else:
            self.empty, self.state[STORED] = True, -house.left
        self.events.append((self.time, name))
        self._leave_the_bottom()

    def _leave_the_bottom(self) -> None:
        pumped = self.house.pump if self.pumping else 0.0
        if self.dry and self.filling and self.house.inlet > pumped:
            self.dry = False
        asked = min(sum(self.house.draws[i][1] for i in self.running), self.house.limit)
        if self.empty and (min(pumped, self.house.inlet) if self.dry else pumped) > asked:
            self.empty = False


def _had_all(place: int, volume: float) -> Watched:
    return lambda _, y: y[place] - volume


def trial(house: House, level: float, stored: float, until: float) -> Trial:
    """The house followed from time 0 to `until`, in minutes."""
    now = Trial(house, level, stored)
    while now.time < until:
        now.step(until)
    return now
