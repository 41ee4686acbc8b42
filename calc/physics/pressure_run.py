"""The open tank through a schedule of draws with flows that follow the pressures.

Between two switches each pressure tank is a `Path` of its own: what enters and leaves it
depends on its own pressure alone. The level is what one brings less what the other takes;
where it crosses a threshold or turns is found by narrowing down.
"""

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from calc.physics.pressure_plant import Drawn, PressurePlant, balanced
from calc.physics.scalar_path import Path, Rates
from calc.physics.tank_switches import (
    FREE,
    MOST_EVENTS,
    Draw,
    Flows,
    Point,
    Run,
    State,
    Stop,
    Watch,
)
from calc.roots import bracket

_SLICES = 8  # of a stretch in which the level may turn
_SAMPLES = 4  # of a stretch, for its picture
_SHORT = 3.0  # s; a stretch of less is drawn straight
_SAME = 1e-12  # of a tank: two volumes nearer than this are one


class _Goal(NamedTuple):
    """A volume of a pressure tank at which something changes; "" for a bend in its curve."""

    at: float
    event: str


class _Moment(NamedTuple):
    level: float
    stored: float
    well: float
    flows: Flows
    sums: Flows
    shares: tuple[float, float]  # sums of the met share, and of √Pa before the open taps


class _Stretch:
    """The time from one switch to the next."""

    def __init__(self, state: State, plant: PressurePlant) -> None:
        self.state, self.plant = state, plant
        self.drawn = Drawn.of([state.draws[i] for i in state.running])
        self.house, self.house_goal = self._way("stored", self._house_rates())
        self.well, self.well_goal = self._way("well", self._well_rates())

    def _house_rates(self) -> Callable[[float], Rates]:
        plant, drawn, on = self.plant, self.drawn, self.state.pump_on
        pump, tank, throttle = plant.pump, plant.house, plant.throttle

        def rates(stored: float) -> Rates:
            pressure = tank.pressure(stored)
            pumped = pump.flow(pressure) if on else 0.0
            share, root = drawn.at(pressure, throttle)
            return pumped - drawn.delivered(share, root), pumped, share, root

        if self.state.stored <= -plant.residual and rates(self.state.stored)[0] < 0:
            if not on:
                return lambda _: (0.0, 0.0, 0.0, 0.0)
            share, root = balanced(pump, drawn, throttle, tank.pressure(-plant.residual))
            return lambda _: (0.0, drawn.delivered(share, root), share, root)
        return rates

    def _well_rates(self) -> Callable[[float], Rates]:
        plant = self.plant
        is_open = self.state.filling and self.state.inlet_may_open
        if isinstance(plant.well, float):
            steady = plant.well if is_open else 0.0
            return lambda _: (0.0, steady, steady)
        tank, pump, inlet = plant.well
        on = self.state.pump_1_on

        def at_pressure(pressure: float) -> Rates:
            lifted = pump.flow(pressure) if on else 0.0
            entered = inlet.flow(pressure) if is_open else 0.0
            return lifted - entered, entered, lifted

        def rates(well: float) -> Rates:
            return at_pressure(tank.pressure(well))

        if self.state.well <= -plant.well_residual and rates(self.state.well)[0] < 0:
            if not on or pump.flow(inlet.back) <= 0:
                return lambda _: (0.0, 0.0, 0.0)
            most = tank.pressure(-plant.well_residual)
            even = bracket(lambda p: at_pressure(p)[0], inlet.back, most)[0]
            flow = inlet.flow(even)
            return lambda _: (0.0, flow, flow)
        return rates

    def _way(self, of: str, rates: Callable[[float], Rates]) -> tuple[Path, _Goal]:
        """The path of a pressure tank to the first volume at which something changes."""
        start: float = getattr(self.state, of)
        rate = rates(start)[0]
        way = (rate > 0) - (rate < 0)
        goals = [
            _Goal(watch.at if (watch.at - start) * way > 0 else start, watch.event)
            for watch in self.state.watched()
            if watch.of == of and watch.way == way
        ]
        apart = _SAME * (self.plant.house.size if of == "stored" else 1.0)
        goals += [_Goal(at, "") for at in self._bends(of) if (at - start) * way > apart]
        goal = min(goals, key=lambda each: (each.at - start) * way, default=_Goal(start, ""))
        if not way:
            goal = _Goal(start + 1.0, "")  # it stands still, and never gets there
        return Path(rates, start, goal.at), goal

    def _bends(self, of: str) -> Iterator[float]:
        """Volumes at which a curve changes its formula: no quadrature may span them."""
        plant = self.plant
        if of == "stored":
            tank = plant.house
            bends = plant.pump.limited_below(), self.drawn.steady_fails_below(plant.throttle)
        elif isinstance(plant.well, float):
            return
        else:
            tank, pump, inlet = plant.well
            bends = pump.limited_below(), inlet.limited_above()
        yield from (tank.stored(p) for p in bends if tank.precharge < p < tank.cut_out)

    def at(self, time: float) -> _Moment:
        stored, house, house_sums = self.house.at(time)
        well, inflow, well_sums = self.well.at(time)
        share, root = house[2], house[3]
        delivered = self.drawn.delivered(house_sums[1], house_sums[2])
        return _Moment(
            self.state.level + well_sums[0] - house_sums[0],
            stored,
            well,
            Flows(inflow[1], house[1], self.drawn.delivered(share, root), inflow[2]),
            Flows(well_sums[0], house_sums[0], delivered, well_sums[1]),
            (house_sums[1], house_sums[2]),
        )

    def level_rate(self, time: float) -> float:
        return self.well.at(time)[1][1] - self.house.at(time)[1][1]

    def level(self, time: float) -> float:
        return self.state.level + self.well.at(time)[2][0] - self.house.at(time)[2][0]

    def had(self, place: int, shares: tuple[float, float]) -> float:
        """Water a draw has had since the stretch began, given `_Moment.shares`."""
        draw = self.state.draws[place]
        if not draw.open_tap:
            return draw.flow * shares[0]
        taps = sum(
            d.flow for d in map(self.state.draws.__getitem__, self.state.running) if d.open_tap
        )
        return draw.flow / taps * self.drawn.open_taps * shares[1]

    def turns(self, end: float) -> list[float]:
        """Where the level turns. Both flows only rise or only fall, so that their ends often
        show that it cannot."""
        starts, ends = self.at(0.0).flows, self.at(end).flows
        inflows, pumped = (starts.inflow, ends.inflow), (starts.pumped, ends.pumped)
        if min(inflows) >= max(pumped) or max(inflows) <= min(pumped):
            return []
        times = [end * n / _SLICES for n in range(_SLICES + 1)]
        rates = [(time, self.level_rate(time)) for time in times]
        return [
            bracket(self.level_rate, a, b)[0]
            for (a, one), (b, other) in pairwise(rates)
            if one * other < 0
        ]


class _Next(NamedTuple):
    wait: float
    event: str
    at: float = 0.0
    by_clock: bool = False


def _next(stretch: _Stretch, until: float) -> tuple[_Next, list[float]]:
    """What ends the stretch, and when the level turned before."""
    state = stretch.state
    ends = [_Next(until - state.time, "until")]
    ends += [_Next(time - state.time, e, time, True) for e, time in state.scheduled().items()]
    first = min(ends)
    for path, goal in ((stretch.house, stretch.house_goal), (stretch.well, stretch.well_goal)):
        wait = path.end(first.wait)
        if wait <= first.wait:
            first = _Next(wait, goal.event, goal.at)
    first = _first_had(stretch, first)
    turns = stretch.turns(first.wait)
    for start, end in pairwise([0.0, *turns, first.wait]):
        found = _crossed(stretch, start, end)
        if found:
            return found, [time for time in turns if time < found.wait]
    return first, turns


def _first_had(stretch: _Stretch, first: _Next) -> _Next:
    """`first`, or the end of a draw that has had its volume before it."""
    state = stretch.state
    for i in state.running:
        draw = state.draws[i]
        if draw.volume == FREE:
            continue
        left = draw.volume - state.had[i]

        def over(time: float, i: int = i, left: float = left) -> float:
            return stretch.had(i, stretch.at(time).shares) - left

        if over(first.wait) >= 0:
            first = _Next(bracket(over, 0.0, first.wait)[0] if over(0.0) < 0 else 0.0, "had", i)
    return first


def _crossed(stretch: _Stretch, start: float, end: float) -> _Next | None:
    """The first threshold that the level crosses while it only rises or only falls."""
    before, after = stretch.level(start), stretch.level(end)
    way = 1 if after > before else -1
    if after == before:
        return None

    def is_passed(watch: Watch) -> bool:
        return watch.of == "level" and watch.way == way and (after - watch.at) * way >= 0

    passed = [watch for watch in stretch.state.watched() if is_passed(watch)]
    if not passed:
        return None
    watch = min(passed, key=lambda each: max(0.0, (each.at - before) * way))
    if (watch.at - before) * way <= 0:
        return _Next(start, watch.event, watch.at)
    time, _ = bracket(lambda t: stretch.level(t) - watch.at, start, end)
    return _Next(time, watch.event, watch.at)


def _pass_time(stretch: _Stretch, wait: float) -> Flows:
    state, moment = stretch.state, stretch.at(wait)
    for i in state.running:
        state.had[i] += stretch.had(i, moment.shares)
    state.level, state.stored, state.well = moment.level, moment.stored, moment.well
    state.time += wait
    return moment.sums


def _points(stretch: _Stretch, wait: float, turns: list[float]) -> Iterator[Point]:
    """The start of the stretch, its turning points, and what its picture needs between."""
    state = stretch.state
    parts = range(1, _SAMPLES) if wait > _SHORT else ()
    times = sorted({0.0, *turns, *(wait * n / _SAMPLES for n in parts)})
    for time in times:
        moment = stretch.at(time)
        point = state.point(moment.flows, air=False)
        yield point._replace(
            time=state.time + time, level=moment.level, stored=moment.stored, well=moment.well
        )


def run(
    plant: PressurePlant,
    draws: Sequence[Draw],
    level: float,
    stored: float,
    until: float,
    *,
    well: float | None = None,
    stops: Sequence[Stop] = (),
) -> Run:
    """What the open tank goes through from time 0 until it is dry, or `until`.

    plant  -- what is installed
    draws  -- in any order; may overlap
    level  -- in the open tank at the start, m³
    stored -- in the house pressure tank above cut-in at the start, m³
    until  -- s
    well   -- in the well's pressure tank above its cut-in, m³; full if left out
    stops  -- what is out of service, and when

    It ends when the intake uncovers: from then on pump 2 moves air with the water, which its
    curve does not tell of.

    Source: conservation of water; Boyle's law; a scheme of our own, checked against scipy.
    """
    if well is None:
        well = plant.well_drawdown if plant.well_drawdown < FREE else 0.0
    state = State(plant, draws, stops, level, stored, well)
    points, events, moved = list[Point](), list[tuple[float, str]](), [Flows()]
    for _ in range(MOST_EVENTS):
        stretch = _Stretch(state, plant)
        coming, turns = _next(stretch, until)
        points += _points(stretch, coming.wait, turns)
        moved.append(_pass_time(stretch, coming.wait))
        if coming.event == "until":
            break
        _switch(state, coming)
        if coming.event:
            events.append((state.time, "draw ends" if coming.event == "had" else coming.event))
        if coming.event == "dry":
            break
    else:
        raise RuntimeError(f"more than {MOST_EVENTS} events: a switch's band is far too small")
    last = stretch.at(coming.wait).flows
    points.append(state.point(last, air=coming.event == "dry"))
    total = Flows(*(sum(part) for part in zip(*moved, strict=True)))
    return Run(tuple(points), tuple(events), total)


def _switch(state: State, coming: _Next) -> None:
    if coming.by_clock:
        state.time = max(state.time, coming.at)
    if coming.event == "had":
        state.had[int(coming.at)] = state.draws[int(coming.at)].volume
        state.switch("draw ends")
    elif coming.event:
        state.switch(coming.event, coming.at)
