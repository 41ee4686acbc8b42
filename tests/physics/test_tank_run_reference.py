"""`tank_run.run` against a general solver, on plants of every kind it knows."""

import pytest

from calc.physics.tank_run import Draw, Plant, run
from calc.units import gal, gpm, minute
from tests.physics.reference_run import House, trial

FREE = float("inf")
UNTIL = 90.0

# name: inlet, pump, limit, opens, closes, drawdown, left, draws; then level and stored at first
SCENARIOS = {
    "limit before, one fill": (House(5, 6, FREE, 9.5, 11, 5.9, 0.9, ((1, 6, 25),)), 11, 5.9),
    "limit before, worst start": (House(4.8, 6, FREE, 9.5, 11, 5.9, 0.9, ((0, 6, 25),)), 9.5, 0),
    "limit after, as much in": (House(5, 12, 5, 9.5, 11, 5.9, 0.9, ((0.5, 8, 40),)), 9.5, 0.4),
    "limit after, less in": (House(3, 12, 5, 9.5, 11, 5.9, 0.9, ((2, 9, 33),)), 11, 5.9),
    "before, two draws at once": (
        House(5.2, 6, FREE, 9.5, 11, 5.9, 0.9, ((1, 2.5, 9), (3.3, 7, 17))), 11, 5.9),
    "after, two draws share the limit": (
        House(4, 13, 6, 9.5, 11, 5.9, 0.9, ((1, 5, 31), (2.7, 3, 8))), 11, 5.9),
    "three draws from the middle": (
        House(4.3, 7, FREE, 9.5, 11, 5.9, 0.9, ((9, 3, 14), (0.2, 1.1, 19), (10, 8, 9))), 10, 3),
    "dry, then recovers": (House(2.5, 6, FREE, 9.5, 11, 5.9, 0.9, ((1, 6, 43),)), 11, 5.9),
    "dry twice": (
        House(2.5, 9, FREE, 9.5, 11, 5.9, 0.9, ((1, 6, 43), (31, 7, 41))), 11, 5.9),
    "dry, limit after": (House(2, 12, 5, 9.5, 11, 5.9, 0.9, ((0, 5, 37),)), 9.5, 0),
    "dry and the house tank empties": (
        House(1.3, 6, FREE, 9.5, 11, 5.9, 0.9, ((0, 8, 29),)), 11, 4),
    "more in than out": (House(7.1, 6, FREE, 9.5, 11, 5.9, 0.9, ((1, 6, 120),)), 11, 5.9),
    "more in than out, small draw": (
        House(7.1, 12, 4, 9.5, 11, 5.9, 0.9, ((1, 2.2, 90),)), 11, 5.9),
    "pump weaker than the draw": (House(5, 4, FREE, 9.5, 11, 5.9, 0.9, ((1, 10, 38),)), 11, 5.9),
    "nothing left below cut-in": (House(5, 4, FREE, 9.5, 11, 5.9, 0, ((1, 10, 38),)), 11, 5.9),
    "starts dry": (House(3, 6, FREE, 9.5, 11, 5.9, 0.9, ((4, 5, 12),)), 0, 0),
    "drawdown larger than the reserve": (
        House(4, 12, 4, 5, 8, 7.3, 1.1, ((0.3, 6, 26),)), 5.5, 0.2),
}  # fmt: skip


def in_si(house: House) -> tuple[Plant, list[Draw]]:
    flows = house.inlet * gpm, house.pump * gpm, house.limit * gpm
    levels, tank = (house.opens * gal, house.closes * gal), (house.drawdown * gal, house.left * gal)
    draws = [Draw(start * minute, flow * gpm, had * gal) for start, flow, had in house.draws]
    return Plant(*flows, *levels, *tank), draws


@pytest.mark.parametrize("name", SCENARIOS)
def test_same_events_as_the_solver(name: str) -> None:
    """scipy.integrate.solve_ivp, DOP853 at rtol 1e-10, every switch a terminal event.

    The same events in the same order, within 1e-6 min, and the same lowest level within
    1e-9 gal; at the end the same volumes.
    """
    house, level, stored = SCENARIOS[name]
    plant, draws = in_si(house)
    ours = run(plant, draws, level * gal, stored * gal, UNTIL * minute)
    theirs = trial(house, level, stored, UNTIL)
    # with nothing below cut-in, empty is the same moment as the pump's start and goes unsaid
    events = [each for each in theirs.events if house.left or each[1] != "house tank empty"]
    assert [event for _, event in ours.events] == [event for _, event in events]
    for (mine, event), (reference, _) in zip(ours.events, events, strict=True):
        assert mine / minute == pytest.approx(reference, rel=0, abs=1e-6), event
    assert ours.lowest.level / gal == pytest.approx(theirs.lowest, rel=0, abs=1e-9)
    last = ours.points[-1]
    assert last.level / gal == pytest.approx(theirs.state[0], rel=0, abs=1e-9)
    assert last.stored / gal == pytest.approx(theirs.state[1], rel=0, abs=1e-9)


def test_the_scenarios_see_every_event() -> None:
    """The list above would prove less if one kind of event never came in it."""
    seen = {
        event
        for house, level, stored in SCENARIOS.values()
        for _, event in trial(house, level, stored, UNTIL).events
    }
    assert seen == {
        "draw starts", "draw ends", "pump starts", "pump stops", "float opens", "float closes",
        "dry", "house tank empty",
    }  # fmt: skip
