"""The counting run against the slow ones on the same draws, the bound, and years."""

from itertools import pairwise
from math import log

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.physics.demand import WEEK, WEEKS_A_YEAR, Draws, Household, Pulse, week_of_draws
from calc.physics.open_tank import sure_reserve
from calc.physics.tank_run import Draw, Plant, run
from calc.physics.year_run import Counted, LockOut, counted
from calc.units import day, gal, gpm, minute
from tests.model.given import steady
from tests.physics.given import Start, open_times, plants

FREE = float("inf")
HOUSE = Household(3, 6.3, 2, 25 * gal, 6 * gpm, 0.15, 5.0)
DRAWDOWN = 5.9061 * gal  # 20 gal, 28 psi, 30/50 psi
few = settings(steady, max_examples=25)


def plant_of(inlet: float, outlet: float, limit: float = FREE, drawdown: float = DRAWDOWN) -> Plant:
    """The tank of the notes' table, flows in gpm."""
    return Plant(inlet * gpm, outlet * gpm, limit * gpm, 9.5 * gal, 11 * gal, drawdown, 0.895 * gal)


def first_days(week: int, days: int, keeps_time: bool = True) -> Draws:
    """The first days of a week; all draws keep their volume if not `keeps_time`."""
    draws = week_of_draws(HOUSE, week)
    return tuple(
        (start, pulse._replace(keeps_time=keeps_time and pulse.keeps_time))
        for start, pulse in draws
        if start < days * day
    )


pulses = st.lists(
    st.tuples(
        st.floats(0, 7200),
        st.builds(
            lambda flow, seconds, keeps: Pulse(flow * gpm, seconds, flow * gpm * seconds, keeps),
            st.floats(0.1, 20),
            st.floats(1, 1800),
            st.booleans(),
        ),
    ),
    min_size=1,
    max_size=12,
    unique_by=lambda draw: draw[0],
).map(lambda many: tuple(sorted(many)))


def assert_as_the_slow_run(plant: Plant, draws: Draws, until: float) -> Counted:
    """Against `tank_run.run`, which keeps every corner; what it does not count is read off."""
    mine = counted(plant, draws, until)
    slow = [Draw(start, pulse.flow, pulse.volume) for start, pulse in draws]
    level, stored = plant.float_closed, plant.drawdown
    its = run(plant, slow, level, stored, until)
    happened = [event for _, event in its.events]
    dry = sum(b.time - a.time for a, b in pairwise(its.points) if a.level == b.level == 0)
    last = its.points[-1]
    filled = sum(b - a for a, b in open_times(Start(plant, slow, level, stored), its)) * plant.inlet
    had = filled - (last.level - level) - (last.stored - stored)
    assert mine.lowest == pytest.approx(its.lowest.level, abs=1e-9)
    assert mine.dry_events == happened.count("dry")
    assert mine.starts == happened.count("pump starts")
    assert mine.dry_time == pytest.approx(dry, abs=1e-4)
    assert mine.met == pytest.approx(had, abs=1e-8)
    return mine


@pytest.mark.parametrize(
    "plant",
    [
        plant_of(4, 6),
        plant_of(3, 8),
        plant_of(5, 4.5),
        plant_of(6, 3),
        plant_of(4, 12, 6),
        plant_of(5, 12, 4),
        plant_of(2, 12, 3),
    ],
)
@pytest.mark.parametrize("week", [0, 1])
def test_on_the_draws_of_a_house(plant: Plant, week: int) -> None:
    """`tank_run.run` on two days of the same draws, all of them kept by volume."""
    mine = assert_as_the_slow_run(plant, first_days(week, 2, keeps_time=False), 2.5 * day)
    assert mine.starts > 10


def test_the_comparison_meets_dry_tanks() -> None:
    """By reason: plants that never run dry would prove little."""
    seen = counted(plant_of(3, 8), first_days(0, 2, keeps_time=False), 2.5 * day)
    assert seen.dry_events > 1
    assert seen.dry_time > 60


@steady
@given(plants(), pulses)
def test_on_any_draws_and_plants(plant: Plant, draws: Draws) -> None:
    """`tank_run.run`, as above."""
    kept = tuple((start, pulse._replace(keeps_time=False)) for start, pulse in draws)
    assert_as_the_slow_run(plant, kept, 4e5)


class Stepped:
    """The same plant in steps of a fixed time, from its description alone: no events."""

    def __init__(self, plant: Plant, lock_out: LockOut | None) -> None:
        self.plant, self.lock_out = plant, lock_out
        self.level, self.stored = plant.float_closed, plant.drawdown
        self.filling = self.calling = self.locked = False
        self.dry_time = self.wanted = self.met = 0.0
        self.lowest, self.locks, self.starts = self.level, 0, 0

    def switch(self) -> None:
        plant = self.plant
        if self.level <= plant.float_open:
            self.filling = True
        elif self.level >= plant.float_closed:
            self.filling = False
        if self.stored <= 0 and not self.calling:
            self.calling = True
            self.starts += 1
        elif self.stored >= plant.drawdown:
            self.calling = False
        if self.lock_out and not self.locked and self.level <= self.lock_out.stops:
            self.locked = True
            self.locks += 1
        elif self.lock_out and self.locked and self.level >= self.lock_out.resets:
            self.locked = False
            self.starts += 1

    def step(self, wanted: float, step: float) -> float:
        """One step; the share of the draws met in it."""
        self.switch()
        inlet = self.plant.inlet if self.filling else 0.0
        pump = self.plant.pump if self.calling and not self.locked else 0.0
        if self.level <= 0 and pump > inlet:
            self.dry_time += step
            pump = inlet
        met = min(wanted, self.plant.house)
        if self.stored <= -self.plant.residual:
            met = min(met, pump)
        self.level = max(0.0, self.level + (inlet - pump) * step)
        self.stored = max(-self.plant.residual, self.stored + (pump - met) * step)
        self.lowest = min(self.lowest, self.level)
        self.wanted += wanted * step
        self.met += met * step
        return met / wanted if wanted else 1.0


def stepped(plant: Plant, draws: Draws, until: float, lock_out: LockOut | None) -> Stepped:
    """The draws followed in steps of a quarter of a second."""
    now, step, place = Stepped(plant, lock_out), 0.25, 0
    left: list[tuple[Pulse, float]] = []
    for number in range(int(until / step)):
        while place < len(draws) and draws[place][0] <= number * step:
            left.append((draws[place][1], draws[place][1].seconds))
            place += 1
        share = now.step(sum(pulse.flow for pulse, _ in left), step)
        left = [
            (pulse, rest - step * (1 if pulse.keeps_time else share))
            for pulse, rest in left
            if rest > step * (1 if pulse.keeps_time else share)
        ]
    return now


@pytest.mark.parametrize(
    ("plant", "lock_out"),
    [
        (plant_of(3, 6), None),
        (plant_of(4, 4), None),
        (plant_of(4, 12, 5), None),
        (plant_of(3, 6), LockOut(2 * gal, 9 * gal)),
        (plant_of(2, 12, 4), LockOut(2 * gal, 5 * gal)),
    ],
)
def test_showers_that_keep_their_time(plant: Plant, lock_out: LockOut | None) -> None:
    """A run in fixed steps, which knows no events; its steps leave a little noise."""
    draws = first_days(3, 1)
    mine, its = (
        counted(plant, draws, 1.2 * day, lock_out),
        stepped(plant, draws, 1.2 * day, lock_out),
    )
    assert mine.lowest == pytest.approx(its.lowest, abs=0.1 * gal)
    assert mine.dry_time == pytest.approx(its.dry_time, rel=0.02, abs=5)
    assert mine.wanted == pytest.approx(its.wanted, rel=0.01)
    assert mine.met == pytest.approx(its.met, rel=0.01)
    assert mine.starts == pytest.approx(its.starts, abs=1)
    assert mine.locks == pytest.approx(its.locks, abs=1)


@steady
@given(plants("before"), pulses, st.floats(0.01, 1.0))
def test_an_outlet_no_larger_than_the_inlet_keeps_the_level(
    plant: Plant, draws: Draws, part: float
) -> None:
    """The bound in `sure_reserve`: limit before the pressure tank, no draw goes under the float."""
    plant = plant._replace(pump=part * plant.inlet)
    seen = counted(plant, draws, 4e5)
    assert seen.lowest >= plant.float_open - 1e-12
    assert seen.dry_events == 0


@steady
@given(plants("after"), pulses, st.floats(0.01, 1.0))
def test_a_limit_after_the_tank_takes_a_drawdown(plant: Plant, draws: Draws, part: float) -> None:
    """The bound in `sure_reserve`: after it, no draw takes more than one drawdown below."""
    plant = plant._replace(house=min(part * plant.inlet, plant.pump))
    floor = max(0.0, sure_reserve(plant.float_open, plant.drawdown, limit_before_tank=False))
    assert counted(plant, draws, 4e5).lowest >= floor - 1e-12


@few
@given(plants("before"), st.integers(0, 500), st.floats(0.2, 1.0))
def test_the_bound_on_weeks_of_draws(plant: Plant, week: int, part: float) -> None:
    """The same on what a house does."""
    plant = plant._replace(pump=part * plant.inlet)
    assert counted(plant, week_of_draws(HOUSE, week), WEEK).lowest >= plant.float_open - 1e-12


@steady
@given(plants(), pulses, st.floats(0.05, 0.9), st.floats(0.05, 1))
def test_a_lock_out_keeps_the_intake_wet(
    plant: Plant, draws: Draws, stops: float, above: float
) -> None:
    """By reason: pump 2 stops at the switch, so nothing goes under it."""
    low = stops * plant.float_open
    seen = counted(plant, draws, 4e5, LockOut(low, low + above * (plant.float_closed - low)))
    assert (seen.dry_events, seen.dry_time) == (0, 0)
    assert seen.lowest >= low - 1e-12


def test_a_lock_out_without_play_is_refused() -> None:
    """By reason: at one volume it would stop and start pump 2 for ever."""
    plant = Plant(4 * gpm, 6 * gpm, float("inf"), 9.5 * gal, 11 * gal, 5.9 * gal)
    with pytest.raises(ValueError, match="never rests"):
        counted(plant, (), 4e5, LockOut(2 * gal, 2 * gal))


def year(plant: Plant, household: Household = HOUSE) -> tuple[float, float]:
    """Times dry and minutes dry in a year, from one house-year."""
    seen = [counted(plant, week_of_draws(household, week), WEEK) for week in range(52)]
    scale = WEEKS_A_YEAR / 52
    events = scale * sum(each.dry_events for each in seen)
    return events, scale * sum(each.dry_time for each in seen) / minute


# Times dry in a year: another program, the same plant, a household much like this one.
INDICATIVE = {
    (3, 4): 63, (3, 6): 742, (3, 12): 742, (4, 5): 54, (4, 6): 132, (4, 8): 698,
    (5, 6): 5.9, (5, 8): 70, (6, 8): 12, (6, 12): 17,
}  # fmt: skip


@pytest.mark.parametrize(("flows", "expected"), INDICATIVE.items())
def test_years_like_those_of_another_program(flows: tuple[float, float], expected: float) -> None:
    """Its table, indicative only: its draws are others, so within a factor of two and a half."""
    assert abs(log(year(plant_of(*flows))[0] / expected)) < log(2.5)


def test_a_bigger_pressure_tank_makes_it_worse() -> None:
    """The same program: 72, 135, 269, 600 times a year for 2, 5.9, 12, 24 gal of drawdown."""
    often = [year(plant_of(4, 6, drawdown=each * gal))[0] for each in (2, 5.9, 12, 24)]
    assert often == sorted(often)
    assert often[3] > 3 * often[0]


def test_counts_do_not_depend_on_what_came_before() -> None:
    """By reason: the same week of the same house is the same count."""
    seen = [counted(plant_of(4, 6), week_of_draws(HOUSE, week), WEEK) for week in (5, 3, 5)]
    assert seen[0] == seen[2] != seen[1]
