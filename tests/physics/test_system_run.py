"""Both runs of the whole system: printed check values, each class of bug, and what must hold."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.physics.pressure_plant import PressurePlant, Pump, Tank
from calc.physics.pressure_run import run as pressure_run
from calc.physics.pressure_tank import drawdown
from calc.physics.tank_run import FREE, Draw, Plant, Run, Stop, run
from calc.units import gal, gpm, minute, psi
from tests.model.given import steady
from tests.physics.given import plants
from tests.physics.systems import AIR, PRESSURES, STEADY, ours, pressure_plant

many = settings(steady, max_examples=60)
few = settings(steady, max_examples=15)
BAND = drawdown(20 * gal, 28 * psi, 30 * psi, 50 * psi, AIR)
HOUSE = Plant(5 * gpm, 6 * gpm, FREE, 9.5 * gal, 11 * gal, BAND, 0.895 * gal)


def minutes(result: Run, event: str) -> float:
    time = result.first(event)
    assert time is not None
    return time / minute


def gallons(result: Run) -> float:
    return result.lowest.level / gal


def test_drawdown() -> None:
    """Boyle's law by hand: 20 gal at 28 psi, 30/50 psi, air 14.696 psi: 5.90610 gal."""
    assert BAND / gal == pytest.approx(5.90610, abs=1e-5)


def test_both_flows_from_the_start() -> None:
    """By hand: 11 gal, 6 out and 2.5 in, both from the first moment: 11/3.5 = 3.14286 min."""
    plant = HOUSE._replace(inlet=2.5 * gpm, float_open=11 * gal, float_closed=12 * gal)
    result = run(plant, [Draw(0, 6 * gpm, 60 * gal)], 11 * gal, 0.0, FREE)
    assert minutes(result, "dry") == pytest.approx(11 / 3.5, abs=1e-9)


def test_one_fill_of_a_washer() -> None:
    """An independent solver's figures: 25 gal at 6 gpm from 1 min, 5 gpm in.

    The same by hand: 5.9061 gal of pressure tank last 0.98435 min, then 1.5 gal at 6 gpm.
    """
    result = run(HOUSE, [Draw(minute, 6 * gpm, 25 * gal)], 11 * gal, BAND, FREE)
    told = ("pump starts", 1.98435), ("float opens", 2.23435), ("float closes", 7.2344)
    for event, time in told:
        assert minutes(result, event) == pytest.approx(time, abs=1e-4)
    assert gallons(result) == pytest.approx(5.58333, abs=1e-5)
    assert result.lowest.time / minute == pytest.approx(6.1510, abs=1e-4)


def test_half_an_hour_of_drawing() -> None:
    """An independent solver's figure: 2.5 gpm in, 6 gpm drawn for 30 min: dry at 4.94864."""
    plant = HOUSE._replace(inlet=2.5 * gpm)
    result = run(plant, [Draw(minute, 6 * gpm, lasts=30 * minute)], 11 * gal, BAND, FREE)
    assert minutes(result, "dry") == pytest.approx(4.94864, abs=1e-5)


def test_a_pump_curve_and_open_taps_run_dry() -> None:
    """An independent solver's figure: dry at 6.23598 min."""
    result = ours(*PRESSURES["steady in, Cv after"])
    assert minutes(result, "dry") == pytest.approx(6.23598, abs=1e-5)


def test_both_sides_follow_the_pressures() -> None:
    """An independent solver's figures: 5.68028 gal and 56 switchings in 70 min.

    Draws that start and end are no switchings.
    """
    result = ours(*PRESSURES["both sides, bed 6x"])
    switched = [event for _, event in result.events if not event.startswith("draw")]
    assert gallons(result) == pytest.approx(5.68028, abs=1e-5)
    assert len(switched) == 56


def test_an_unthrottled_pump_refills_from_the_reserve() -> None:
    """An independent solver's figures: 5 gpm in and 5 drawn, yet 4.52459 gal at 3.1301 min."""
    result = ours(*PRESSURES["unthrottled"])
    assert gallons(result) == pytest.approx(4.52459, abs=1e-5)
    assert result.lowest.time / minute == pytest.approx(3.1301, abs=1e-4)


def test_a_throttle_before_the_pressure_tank_holds_the_level() -> None:
    """The bound: pump 2 passes no more than enters, so the level stays at the float's opening."""
    assert gallons(ours(*PRESSURES["throttled before"])) == pytest.approx(9.5, abs=1e-9)


# Each class of bug that trial solvers of this system were caught in.


def test_a_threshold_exactly_on_the_state() -> None:
    """The volume is set on the threshold it has reached: without that, rounding leaves it just
    short and the same switch acts again and again, or never."""
    thirds = HOUSE._replace(inlet=7.3 * gpm / 3, drawdown=5.9 * gal / 7, float_closed=9.6 * gal)
    result = run(thirds, [Draw(0, 2.3 * gpm, 40 * gal)], 9.6 * gal, thirds.drawdown, FREE)
    at = {"float opens": "level", "float closes": "level", "pump stops": "stored"}
    exact = {"float opens": 9.5 * gal, "float closes": 9.6 * gal, "pump stops": thirds.drawdown}
    points = {point.time: point for point in result.points}
    assert result.count("float opens") > 20
    for time, event in result.events:
        if event in at:
            assert getattr(points[time], at[event]) == exact[event]
    for on, off in (("float opens", "float closes"), ("pump starts", "pump stops")):
        turns = [event for _, event in result.events if event in (on, off)]
        assert all(one != other for one, other in pairwise(turns))


@pytest.mark.parametrize("follow", [False, True], ids=["constant", "by pressure"])
def test_a_float_that_opens_in_no_time(follow: bool) -> None:
    """After a power cut the level may stand under the float's opening with the float shut, and
    the tank at its cut-in: float and pump 2 act in the very moment the power is back."""
    stops = [Stop("power", 0.0, 5 * minute)]
    draws = [Draw(minute, 4 * gpm, lasts=20 * minute)]
    if follow:
        house = Tank(20 * gal, 28 * psi, 30 * psi, 50 * psi, AIR)
        foot = psi / 2.309
        curve = Pump(150 * foot, 0.45 * foot / gpm**2)
        plant = PressurePlant(9.5 * gal, 11 * gal, house, curve, 5 * gpm)
        result = pressure_run(plant, draws, 9.5 * gal, 0.1 * gal, 40 * minute, stops=stops)
    else:
        result = run(HOUSE, draws, 9.5 * gal, 0.1 * gal, 40 * minute, stops=stops)
    back = next(point for point in reversed(result.points) if point.time == 5 * minute)
    assert back.flows.inflow > 0
    assert "pump 2" in back.on
    assert result.lowest.level > 0


@pytest.mark.parametrize("follow", [False, True], ids=["constant", "by pressure"])
def test_pump_and_draw_end_in_one_moment(follow: bool) -> None:
    """Two things in one moment are both done, whichever is first, and once each.

    The draw is timed to end when pump 2 stops, found by a first run with a longer draw.
    """
    name = "unthrottled" if follow else "a draw by time, held back"
    scenario, start, until = (PRESSURES | STEADY)[name]
    tap = scenario.taps[0]._replace(lasts=15)
    stops = minutes(ours(scenario._replace(taps=(tap,)), start, until), "pump stops")
    tap = tap._replace(lasts=stops - tap.start)
    result = ours(scenario._replace(taps=(tap,)), start, until)
    both = [event for time, event in result.events if abs(time / minute - stops) < 1e-9]
    assert sorted(both) == ["draw ends", "pump stops"]
    assert result.count("draw ends") == 1


def test_dry_stays_dry() -> None:
    """The intake stays uncovered until more enters than pump 2 takes, or pump 2 stops: it does
    not flicker, and no water is pumped that is not there."""
    plant = HOUSE._replace(inlet=2 * gpm)
    result = run(plant, [Draw(0, 6 * gpm, lasts=20 * minute)], 9.5 * gal, 0.0, FREE)
    assert result.count("dry") == 1
    dry = [point for point in result.points if "air" in point.on]
    assert dry
    assert all(point.level == 0 and point.flows.pumped == 2 * gpm for point in dry)
    assert dry[-1].time >= 20 * minute  # the draw ends, pump 2 still refills from 2 gpm
    assert result.points[-1].level == 11 * gal


@pytest.mark.parametrize("volume", [12.0, 25.0])
def test_a_draw_by_volume_ends_later_when_held_back(volume: float) -> None:
    """By hand: a washer that wants 6 gpm behind a limit of 4 takes half as long again; a draw
    by time ends in time and has had less."""
    plant = HOUSE._replace(pump=12 * gpm, house=4 * gpm, inlet=8 * gpm)
    washer = run(plant, [Draw(0, 6 * gpm, volume * gal)], 11 * gal, BAND, FREE)
    assert minutes(washer, "draw ends") == pytest.approx(volume / 4, rel=1e-12)
    shower = run(plant, [Draw(0, 6 * gpm, lasts=volume / 6 * minute)], 11 * gal, BAND, FREE)
    assert minutes(shower, "draw ends") == pytest.approx(volume / 6, rel=1e-12)
    assert shower.moved.delivered / gal == pytest.approx(volume * 4 / 6, rel=1e-12)


def test_the_lowest_level_is_a_turning_point() -> None:
    """Calculus: a minimum between two switches has as much entering as leaving. The corners of
    the run alone would miss it by more than 0.001 gal."""
    result = ours(*PRESSURES["the level turns between two events"])
    low = result.lowest
    corners = {time for time, _ in result.events}
    assert low.time not in corners
    assert low.flows.inflow == pytest.approx(low.flows.pumped, rel=1e-9)
    at_corners = min(point.level for point in result.points if point.time in corners)
    assert at_corners > low.level + 1e-3 * gal


def test_a_pump_too_weak_for_its_cut_out() -> None:
    """By hand: 115 ft is 49.8 psi, short of a cut-out of 50: the pump would never stop."""
    house = Tank(20 * gal, 28 * psi, 30 * psi, 50 * psi)
    foot = psi / 2.309
    with pytest.raises(ValueError, match="never stop"):
        PressurePlant(9.5 * gal, 11 * gal, house, Pump(115 * foot, 1.0), 5 * gpm)


# What must hold of every run.


def balance(result: Run) -> tuple[float, float, float]:
    """Of each tank: what came in less what went out less what it gained."""
    first, last = result.points[0], result.points[-1]
    moved = result.moved
    return (
        moved.inflow - moved.pumped - (last.level - first.level),
        moved.pumped - moved.delivered - (last.stored - first.stored),
        moved.lifted - moved.inflow - (last.well - first.well),
    )


@pytest.mark.parametrize("name", STEADY | PRESSURES)
def test_no_water_is_made_or_lost(name: str) -> None:
    """Conservation of water, tank by tank, to 1e-9 of what was moved."""
    result = ours(*(STEADY | PRESSURES)[name])
    most = sum(result.moved)
    assert balance(result) == pytest.approx((0, 0, 0), rel=0, abs=1e-9 * most)


def _in(low: float, high: float, unit: float) -> st.SearchStrategy[float]:
    return st.floats(low, high).map(lambda number: number * unit)


draws = st.lists(
    st.one_of(
        st.tuples(_in(0, 60, minute), _in(0.1, 20, gpm), _in(0.1, 60, gal)).map(lambda t: Draw(*t)),
        st.tuples(_in(0, 60, minute), _in(0.1, 20, gpm), _in(0.1, 30, minute)).map(
            lambda t: Draw(t[0], t[1], lasts=t[2])
        ),
    ),
    min_size=1,
    max_size=6,
)
stops = st.lists(
    st.tuples(
        st.sampled_from(["blower", "inlet", "well", "power"]),
        _in(0, 40, minute),
        _in(1, 30, minute),
    ).map(lambda t: Stop(t[0], t[1], t[1] + t[2])),
    max_size=3,
    unique_by=lambda stop: stop.what,
)


@st.composite
def whole(draw: st.DrawFn, limit: str, sound: bool) -> Plant:
    """A plant with all its switches. A sound one has a well that keeps up, no less in than out,
    and a lock-out that acts only under what the bound promises."""
    plant = draw(plants(limit))
    share = st.floats(0.05, 0.9)
    leaves = plant.pump if limit == "before" else plant.house
    inlet = leaves * draw(st.floats(1.0, 3.0)) if sound else plant.inlet
    promised = plant.float_open - (plant.drawdown if limit == "after" else 0.0)
    lock = draw(st.booleans()) and promised > 0.1 * gal
    lock_at = draw(share) * (promised if sound else plant.float_open) if lock else 0.0
    return plant._replace(
        inlet=inlet,
        modulating=draw(st.booleans()),
        well_pump=inlet * draw(st.floats(1.0, 3.0) if sound else st.floats(0.2, 3.0)),
        well_drawdown=draw(_in(0.5, 20, gal)),
        well_residual=draw(_in(0, 3, gal)),
        lock_at=lock_at,
        lock_reset=lock_at + draw(share) * (plant.float_open - lock_at),
        proves=draw(st.sampled_from(["nothing", "inlet", "both"])),
    )


@many
@given(whole("any", False), draws, stops, st.floats(0, 1), st.floats(0, 1), st.floats(0, 1))
def test_no_water_is_made_or_lost_by_any_switch(
    plant: Plant, drawn: list[Draw], out: list[Stop], level: float, stored: float, well: float
) -> None:
    """Conservation of water, tank by tank, and no tank holds what it cannot."""
    start = level * plant.float_closed, stored * plant.drawdown, well * plant.well_drawdown
    result = run(plant, drawn, *start[:2], 500 * minute, well=start[2], stops=out)
    most = sum(result.moved) + sum(start)
    assert balance(result) == pytest.approx((0, 0, 0), rel=0, abs=1e-9 * most)
    slack = 1e-9 * most
    for _, high, inside, well_side, *_ in result.points:
        assert -slack <= high <= plant.float_closed + slack
        assert -plant.residual - slack <= inside <= plant.drawdown + slack
        assert -plant.well_residual - slack <= well_side <= plant.well_drawdown + slack


@many
@given(whole("before", True), draws, st.floats(0, 1), st.floats(0, 1))
def test_the_bound_before_is_broken_by_no_schedule(
    plant: Plant, drawn: list[Draw], above: float, stored: float
) -> None:
    """The bound derived in `open_tank.sure_reserve`: no less in than out, limit before the
    pressure tank: the level never falls below the float's opening."""
    level = plant.float_open + above * plant.band
    result = run(plant, drawn, level, stored * plant.drawdown, 500 * minute)
    assert result.lowest.level >= plant.float_open * (1 - 1e-12)


@many
@given(whole("after", True), draws, st.floats(0, 1), st.floats(0, 1))
def test_the_bound_after_is_broken_by_no_schedule(
    plant: Plant, drawn: list[Draw], above: float, stored: float
) -> None:
    """The same with the limit after it: never by more than one drawdown below."""
    level = plant.float_open + above * plant.band
    promised = plant.float_open - plant.drawdown
    result = run(plant, drawn, level, stored * plant.drawdown, 500 * minute)
    assert promised < 0 or result.lowest.level >= promised - 1e-12 * plant.float_closed


@few
@given(
    st.floats(0.1, 6), st.floats(0.02, 0.9), st.floats(0.2, 3), st.floats(12, 60), draws,
    st.booleans(),
)  # fmt: skip
def test_the_bound_before_holds_with_pressures(
    bed: float, cv: float, cv_in: float, size: float, drawn: list[Draw], open_taps: bool
) -> None:
    """The bound with flows that follow the pressures: in at cut-in, out at no pressure.

    The throttle of pump 2 is tightened until it passes no more at 0 psi than enters at 40.
    """
    system, start, _ = PRESSURES["both sides, bed 6x"]
    way, one, two = system.inlet, system.pump_1, system.pump
    assert not isinstance(way, float)
    assert not isinstance(one, float)
    assert not isinstance(two, float)
    way = way._replace(linear=bed, cv=cv_in)
    least = min(way.gpm(40), one.gpm(40))
    two = two._replace(cv=min(cv, least / 65**0.5))
    assert two.gpm(0) <= least
    house = system.house._replace(size=size)  # type: ignore[union-attr]
    safe = system._replace(inlet=way, pump=two, house=house, limit=1e9, taps=())
    taps = [each._replace(open_tap=open_taps) for each in drawn[:2]]
    plant = pressure_plant(safe)
    result = pressure_run(
        plant, taps, start[0] * gal, plant.drawdown, 60 * minute, well=plant.well_drawdown
    )
    assert result.lowest.level >= 9.5 * gal * (1 - 1e-9)
    assert result.first("dry") is None
