"""What must hold of every run of the open tank."""

from itertools import pairwise

import pytest
from hypothesis import given, settings

from calc.physics.tank_run import Draw, Plant
from calc.units import gal, gpm, minute
from tests.model.given import steady
from tests.physics.given import FREE, LONG, Start, open_times, starts

many = settings(steady, max_examples=150)


@many
@given(starts())
def test_no_water_is_made_or_lost(start: Start) -> None:
    """Conservation of water: what the inlet brought less what the house had is what is left.

    The inlet's share is its flow over the times the float was open; a run that ends at
    rest has given every draw its volume.
    """
    result = start.run()
    last = result.points[-1]
    assert last.time < LONG
    entered = start.plant.inlet * sum(end - begin for begin, end in open_times(start, result))
    delivered = sum(draw.volume for draw in start.draws)
    gained = last.level - start.level + last.stored - start.stored
    assert entered - delivered == pytest.approx(gained, rel=0, abs=1e-9 * (entered + delivered))


@many
@given(starts())
def test_volumes_stay_where_they_can_be(start: Start) -> None:
    """Geometry: no tank holds less than nothing or more than its switch lets in."""
    plant = start.plant
    slack = 1e-12 * (plant.float_closed + plant.drawdown + plant.residual)
    for _, level, stored, *_ in start.run().points:
        assert -slack <= level <= plant.float_closed + slack
        assert -plant.residual - slack <= stored <= plant.drawdown + slack


@many
@given(starts())
def test_time_runs_on_and_switches_alternate(start: Start) -> None:
    """A float or a pump that is on must go off before it can come on again."""
    result = start.run()
    times = [point.time for point in result.points]
    assert times == sorted(times)
    for on, off in (("float opens", "float closes"), ("pump starts", "pump stops")):
        turns = [event for _, event in result.events if event in (on, off)]
        assert all(one != next_ for one, next_ in pairwise(turns))


def lowest_margin(start: Start, leaves: float, spare: float) -> float:
    """How far the level stays above V_on + min(0, Qi - q) t less `spare`, over the whole run."""
    plant, result = start.plant, start.run()
    floor = min(start.level, plant.float_open)
    return min(
        point.level - (floor - spare + min(0.0, plant.inlet - leaves) * (point.time - begin))
        for begin, end in open_times(start, result)
        for point in result.points
        if begin <= point.time <= end
    )


@many
@given(starts("before"))
def test_bound_with_the_limit_before_the_pressure_tank(start: Start) -> None:
    """The bound derived in `open_tank.sure_reserve`: V >= V_on + min(0, Qi - q) t."""
    start = start._replace(level=min(start.level, start.plant.float_open))
    assert lowest_margin(start, start.plant.pump, 0.0) >= -1e-9 * start.plant.float_closed


@many
@given(starts("after"))
def test_bound_with_the_limit_after_the_pressure_tank(start: Start) -> None:
    """The bound derived in `open_tank.sure_reserve`: V >= V_on - dV + min(0, Qi - q) t."""
    start = start._replace(level=min(start.level, start.plant.float_open))
    margin = lowest_margin(start, start.plant.house, start.plant.drawdown)
    assert margin >= -1e-9 * start.plant.float_closed


def test_bound_after_the_pressure_tank_is_sharp() -> None:
    """As derived in `open_tank.sure_reserve`: a mighty pump takes one drawdown, near enough."""
    plant = Plant(4 * gpm, 4e5 * gpm, 4 * gpm, 9.5 * gal, 11 * gal, 5.9 * gal, 0.9 * gal)
    start = Start(plant, [Draw(0.0, 4 * gpm, 40 * gal)], 9.5 * gal, 0.0)
    assert start.run().lowest.level / gal == pytest.approx(9.5 - 5.9, abs=1e-3)


def marched(start: Start, step: float, until: float) -> tuple[float, float | None]:
    """Lowest level and first dry moment, by small equal steps of time."""
    plant, level, stored = start.plant, start.level, start.stored
    filling, pumping = level <= plant.float_open, stored <= 0
    left = [draw.volume for draw in start.draws]
    lowest, dry = level, None
    for turn in range(int(until / step)):
        inlet = plant.inlet * step if filling else 0.0
        pumped = min(plant.pump * step, level + inlet) if pumping else 0.0
        asked = [
            min(draw.flow * step, rest) if draw.start <= turn * step else 0.0
            for draw, rest in zip(start.draws, left, strict=True)
        ]
        wanted = sum(asked)
        met = min(wanted, plant.house * step, stored + plant.residual + pumped)
        share = met / wanted if wanted else 0.0
        left = [rest - one * share for rest, one in zip(left, asked, strict=True)]
        level, stored = level + inlet - pumped, stored + pumped - met
        filling = level <= plant.float_open or (filling and level < plant.float_closed)
        pumping = stored <= 0 or (pumping and stored < plant.drawdown)
        lowest = min(lowest, level)
        if level <= 0 and dry is None:
            dry = turn * step
    return lowest, dry


HOUSE = Plant(4.4 * gpm, 6 * gpm, FREE, 9.5 * gal, 11 * gal, 5.9 * gal, 0.9 * gal)


@pytest.mark.parametrize(
    "start",
    [
        Start(HOUSE, [Draw(0, 6 * gpm, 25 * gal)], 11 * gal, 5.9 * gal),
        Start(HOUSE, [Draw(0, 8 * gpm, 22 * gal), Draw(100, 2 * gpm, 9 * gal)], 9.5 * gal, 0.0),
        Start(HOUSE._replace(inlet=2 * gpm), [Draw(0, 6 * gpm, 45 * gal)], 11 * gal, 3 * gal),
        Start(
            HOUSE._replace(pump=12 * gpm, house=5 * gpm),
            [Draw(30, 4 * gpm, 18 * gal), Draw(75, 3 * gpm, 14 * gal)],
            11 * gal,
            5.9 * gal,
        ),
    ],
    ids=["one fill", "two draws", "runs dry", "shared limit"],
)
def test_small_steps_of_time_agree(start: Start) -> None:
    """A second method: equal steps of 0.05 s, each of which may be off by one step's flow."""
    step = 0.05
    result = start.run()
    lowest, dry = marched(start, step, 25 * minute)
    off = 4 * start.plant.pump * step
    assert lowest == pytest.approx(result.lowest.level, rel=0, abs=off)
    exact = result.first("dry")
    assert (dry is None) == (exact is None)
    if dry is not None and exact is not None:
        slowest = start.plant.pump - start.plant.inlet
        assert dry == pytest.approx(exact, rel=0, abs=off / slowest + step)
