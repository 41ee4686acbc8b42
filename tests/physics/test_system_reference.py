"""Both runs of the whole system against a general solver, on plants of every kind they know."""

import pytest

from calc.physics.tank_switches import EVENTS
from calc.units import gal, minute
from tests.physics.reference_system import trial
from tests.physics.systems import PRESSURES, STEADY, ours

SCENARIOS = STEADY | PRESSURES


@pytest.mark.parametrize("name", SCENARIOS)
def test_same_events_as_the_solver(name: str) -> None:
    """scipy.integrate.solve_ivp, DOP853 at rtol 1e-10, every switch a terminal event.

    The same events in the same order, within 1e-3 min as the target says (constant flows:
    1e-6), the same lowest level within 1e-3 gal (1e-8), and the same volumes at the end.
    """
    system, start, until = SCENARIOS[name]
    in_time, in_volume = (1e-6, 1e-8) if name in STEADY else (1e-3, 1e-3)
    mine, theirs = ours(system, start, until), trial(system, start, until, name in PRESSURES)
    assert [event for _, event in mine.events] == [event for _, event in theirs.events]
    for (time, event), (reference, _) in zip(mine.events, theirs.events, strict=True):
        assert time / minute == pytest.approx(reference, rel=0, abs=in_time), event
    assert mine.lowest.level / gal == pytest.approx(theirs.lowest, rel=0, abs=in_volume)
    last = mine.points[-1]
    assert last.level / gal == pytest.approx(theirs.state[0], rel=0, abs=in_volume)
    assert last.stored / gal == pytest.approx(theirs.state[1], rel=0, abs=in_volume)
    if system.well:
        assert last.well / gal == pytest.approx(theirs.state[2], rel=0, abs=in_volume)


def test_the_scenarios_see_every_event() -> None:
    """The lists would prove less if one kind of event never came in them."""
    runs = [ours(*scenario) for scenario in SCENARIOS.values()]
    assert {event for run in runs for _, event in run.events} == set(EVENTS)
