"""The open tank through a schedule of draws with constant flows, event by event.

Between two events every flow is constant, so every volume is a straight line in time and
the next event is found by division: exact to rounding. Where a float valve throttles, the
level relaxes exponentially and the formula is closed too. The flows are those of the worst
case; flows that follow the pressures are in `pressure_run`.
"""

from collections.abc import Callable, Iterator, Sequence
from math import exp, expm1, log
from typing import NamedTuple

from calc.physics.tank_switches import (
    EVENTS,
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

__all__ = ["EVENTS", "FREE", "Draw", "Plant", "Point", "Run", "Stop", "run"]

_SAMPLES = 8  # of a curve, for its picture
_REST = 40  # time constants after which nothing is left of a that a float can tell


class Plant(NamedTuple):
    """What is installed. Volumes m³, above the intake; flows m³/s.

    inlet      -- with the float open
    pump       -- pump 2 into the house pressure tank, its own limit included
    house      -- most that reaches the house: a limit after the pressure tank, or infinite
    float_open, float_closed -- volumes at which the float opens and closes the inlet; one
                  that modulates is wide open at the first and shut at the second
    drawdown   -- of the house pressure tank between cut-in and cut-out
    residual   -- what it still gives below cut-in
    well_pump  -- pump 1 into the well's pressure tank
    well_drawdown, well_residual -- as above, of that tank; infinite: nothing there runs short
    lock_at    -- volume at which the low-level switch locks pump 2 out; 0: there is none
    lock_reset -- volume at which it lets go
    proves     -- what stops with the blower: "nothing", "inlet", or "both" inlet and pump 2
    """

    inlet: float
    pump: float
    house: float
    float_open: float
    float_closed: float
    drawdown: float
    residual: float = 0.0
    modulating: bool = False
    well_pump: float = FREE
    well_drawdown: float = FREE
    well_residual: float = 0.0
    lock_at: float = 0.0
    lock_reset: float = 0.0
    proves: str = "nothing"

    @property
    def band(self) -> float:
        return self.float_closed - self.float_open


class _Motion(NamedTuple):
    """How the water moves until the next event.

    target, slowness -- level the throttling float leads to, and its time constant; 0: straight
    met   -- share of the draws that is met
    capped -- level up to which the float valve asks for more than pump 1 lifts
    """

    flows: Flows
    target: float
    slowness: float
    met: float
    air: bool
    capped: float | None

    @property
    def has_well(self) -> bool:
        return self.flows.lifted < FREE

    def level(self, start: float, wait: float) -> float:
        if self.slowness:
            return self.target + (start - self.target) * exp(-wait / self.slowness)
        return start + (self.flows.inflow - self.flows.pumped) * wait

    def entered(self, start: float, wait: float) -> float:
        """What the inlet brings in that time."""
        if self.slowness:
            fallen = (start - self.target) * expm1(-wait / self.slowness)
            return fallen + self.flows.pumped * wait
        return self.flows.inflow * wait


def _motion(state: State, plant: Plant) -> _Motion:
    wanted = sum(state.draws[i].flow for i in state.running)
    pump = plant.pump if state.pump_on else 0.0
    inflow, slowness, capped = _inflow(state, plant, pump)
    air = state.level <= 0 and pump > inflow
    if air:
        pump = inflow  # the rest of what pump 2 moves is air
    met = min(wanted, plant.house)
    if state.stored <= -plant.residual:
        met = min(met, pump)
    lifted = plant.well_pump if state.pump_1_on else 0.0
    if plant.well_drawdown == FREE:
        lifted = FREE
    flows = Flows(inflow, pump, met, lifted)
    target = plant.float_closed - pump * slowness
    return _Motion(flows, target, slowness, met / wanted if wanted else 0.0, air, capped)


def _inflow(state: State, plant: Plant, pump: float) -> tuple[float, float, float | None]:
    """Flow in, the time constant if it follows the level, and the level up to which it is
    capped by pump 1 if it is."""
    if not state.inlet_may_open or not (state.filling or plant.modulating):
        return 0.0, 0.0, None
    lifted = plant.well_pump if state.pump_1_on else 0.0
    is_short = plant.well_drawdown < FREE and state.well <= -plant.well_residual
    if state.filling:
        inflow = min(plant.inlet, lifted) if is_short else plant.inlet
        return inflow, 0.0, None
    slowness = plant.band / plant.inlet
    if is_short:
        capped = plant.float_closed - lifted * slowness
        if state.level < capped or (state.level == capped and pump > lifted):
            return lifted, 0.0, capped
        if state.level == capped:
            return lifted, slowness, None  # the formula below would round it
    return (plant.float_closed - state.level) / slowness, slowness, None


class _Next(NamedTuple):
    """An event, the time until it, and its threshold or the time of it by the clock."""

    event: str
    wait: float
    at: float = 0.0
    by_clock: bool = False


def _coming(state: State, motion: _Motion) -> Iterator[_Next]:
    """Every event that this motion leads to, with the time until it."""
    watches = list(state.watched())
    if motion.capped is not None:
        watches.append(Watch("", "level", motion.capped, 1))
    for watch in watches:
        if watch.of == "level":
            wait = _level_wait(state.level, motion, watch)
        elif watch.of == "stored":
            rate = motion.flows.pumped - motion.flows.delivered
            wait = _line_wait(state.stored, rate, watch)
        else:
            wait = _well_wait(state, motion, watch)
        if wait is not None:
            yield _Next(watch.event, wait, watch.at)
    for event, time in state.scheduled().items():
        yield _Next(event, max(0.0, time - state.time), time, by_clock=True)
    for i in state.running:
        draw = state.draws[i]
        if motion.met and draw.volume < FREE:
            left = draw.volume - state.had[i]
            yield _Next("draw ends", left / (draw.flow * motion.met))


def _line_wait(now: float, rate: float, watch: Watch) -> float | None:
    if rate * watch.way <= 0:
        return None
    return max(0.0, (watch.at - now) / rate)


def _level_wait(level: float, motion: _Motion, watch: Watch) -> float | None:
    rate = motion.flows.inflow - motion.flows.pumped
    if not motion.slowness:
        return _line_wait(level, rate, watch)
    left, whole = watch.at - motion.target, level - motion.target
    if (motion.target - level) * watch.way <= 0:
        return None
    if (watch.at - level) * watch.way <= 0:
        return 0.0
    return motion.slowness * log(whole / left) if left * whole > 0 else None


def _well_wait(state: State, motion: _Motion, watch: Watch) -> float | None:
    """As `_line_wait`; where the float throttles, the well's tank follows no straight line:
    it turns at most once, where the float asks for what pump 1 lifts."""
    lifted = motion.flows.lifted
    if not motion.slowness:
        return _line_wait(state.well, lifted - motion.flows.inflow, watch)

    def beyond(wait: float) -> float:
        well = state.well + lifted * wait - motion.entered(state.level, wait)
        return (well - watch.at) * watch.way

    flows = motion.flows
    at_first, at_last = (lifted - flows.inflow) * watch.way, (lifted - flows.pumped) * watch.way
    if max(at_first, at_last) <= 0:
        return None
    turn = None
    if at_first * at_last < 0:
        turn = motion.slowness * log((flows.inflow - flows.pumped) / (lifted - flows.pumped))
    if at_first < 0:
        return _first_zero(beyond, turn or 0.0, None, motion.slowness)
    return _first_zero(beyond, 0.0, turn, motion.slowness)


def _first_zero(
    beyond: Callable[[float], float], start: float, ends: float | None, slowness: float
) -> float | None:
    """Where a function that grows from `start` on passes 0, up to `ends` or without end."""
    if beyond(start) >= 0:
        return start
    if ends is not None:
        return bracket(beyond, start, ends)[0] if beyond(ends) >= 0 else None
    step = slowness
    while beyond(start + step) < 0:
        step *= 2
        if step > 1e6 * slowness:
            return None  # it comes to rest on this side
    return bracket(beyond, start, start + step)[0]


def _pass_time(state: State, motion: _Motion, wait: float) -> Flows:
    """Move the water; what went where in that time."""
    flows = motion.flows
    entered = motion.entered(state.level, wait)
    for i in state.running:
        state.had[i] += state.draws[i].flow * motion.met * wait
    if motion.has_well:
        state.well += flows.lifted * wait - entered
    state.level = motion.level(state.level, wait)
    state.stored += (flows.pumped - flows.delivered) * wait
    state.time += wait
    lifted = flows.lifted * wait if motion.has_well else entered
    return Flows(entered, flows.pumped * wait, flows.delivered * wait, lifted)


def _samples(state: State, motion: _Motion, wait: float) -> Iterator[Point]:
    """Points on the way to the next event, where the way is bent."""
    if not motion.slowness or wait <= 0:
        return
    now = state.point(motion.flows, motion.air)
    for n in range(1, _SAMPLES):
        part = wait * n / _SAMPLES
        level = motion.level(state.level, part)
        inflow = motion.flows.pumped + (motion.target - level) / motion.slowness
        stored = state.stored + (motion.flows.pumped - motion.flows.delivered) * part
        well = state.well
        if motion.has_well:
            well += motion.flows.lifted * part - motion.entered(state.level, part)
        flows = motion.flows._replace(inflow=inflow)
        yield Point(state.time + part, level, stored, well, flows, now.on)


def run(
    plant: Plant,
    draws: Sequence[Draw],
    level: float,
    stored: float,
    until: float,
    *,
    well: float | None = None,
    stops: Sequence[Stop] = (),
) -> Run:
    """What the open tank goes through from time 0 until all is at rest again, or `until`.

    plant  -- what is installed
    draws  -- in any order; may overlap, and share what there is in proportion
    level  -- in the open tank at the start, m³
    stored -- in the house pressure tank above cut-in at the start, m³
    until  -- s; a tank that can never fill again would go on for ever
    well   -- in the well's pressure tank above its cut-in, m³; full if left out
    stops  -- what is out of service, and when

    Float and pumps start at rest unless their volumes say otherwise. A tap that is shared
    takes what it wants for as long as it is open, whatever pressure there is.

    Source: conservation of water, derived here. In the band of a float valve
    dV/dt = Q (Vb - V) / (Vb - Va) - Qp, so V relaxes to Vb - Qp (Vb - Va) / Q.
    """
    if well is None:
        well = plant.well_drawdown if plant.well_drawdown < FREE else 1.0
    state = State(plant, draws, stops, level, stored, well)
    motion = _motion(state, plant)
    points, events = [state.point(motion.flows, motion.air)], []
    moved, was_dry = [Flows()], level <= 0
    for _ in range(MOST_EVENTS):
        coming = min(_coming(state, motion), key=lambda each: each.wait, default=None)
        wait = _REST * motion.slowness if coming is None else coming.wait
        if not wait < FREE or (coming is None and not wait):
            break
        is_last = coming is None or state.time + wait >= until
        wait = min(wait, until - state.time) if is_last else wait
        points += _samples(state, motion, wait)
        moved.append(_pass_time(state, motion, wait))
        if coming and not is_last:
            if coming.by_clock:
                state.time = max(state.time, coming.at)
            state.switch(coming.event, coming.at)
            if coming.event and not (coming.event == "dry" and was_dry):
                events.append((state.time, coming.event))
            was_dry = state.level <= 0
        motion = _motion(state, plant)
        points.append(state.point(motion.flows, motion.air))
        if is_last:
            break
    else:
        raise RuntimeError(
            f"more than {MOST_EVENTS} events: a float or pressure band is far too small"
        )
    total = Flows(*(sum(part) for part in zip(*moved, strict=True)))
    return Run(tuple(points), tuple(events), total)
