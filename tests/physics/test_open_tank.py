"""The bounds of the open tank and the guard band, by other ways than their own."""

from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.physics.open_tank import guarded_outlet, largest_draw, sure_reserve, time_to_empty
from calc.physics.tank_run import Draw, Plant
from calc.units import gal, gpm
from tests.model.given import steady
from tests.physics.given import FREE, Start, plants

many = settings(steady, max_examples=150)
shares = st.floats(0.001, 0.2)


def worst_start(plant: Plant, draw: float, volume: float) -> Start:
    """The float just opens and the house pressure tank is about to refill."""
    return Start(plant, [Draw(0.0, draw, volume)], plant.float_open, 0.0)


@many
@given(plants("before"), st.floats(0.3, 3.0))
def test_largest_draw_passes_with_the_limit_before(plant: Plant, eager: float) -> None:
    """A second method, the whole run: a hair less than the largest draw uncovers nothing.

    `eager` is the draw's flow over the limit's. The run includes the refill after the draw.
    """
    reserve = sure_reserve(plant.float_open, plant.drawdown, limit_before_tank=True)
    volume = largest_draw(reserve, plant.inlet, plant.pump, plant.drawdown)
    volume = 100 * gal if volume is None else volume * (1 - 1e-6)
    if volume > 0:
        assert worst_start(plant, eager * plant.pump, volume).run().first("dry") is None


@many
@given(plants("after"), st.floats(0.3, 3.0))
def test_largest_draw_passes_with_the_limit_after(plant: Plant, eager: float) -> None:
    """A second method, the whole run, as above; the draw comes through the limit."""
    reserve = sure_reserve(plant.float_open, plant.drawdown, limit_before_tank=False)
    volume = largest_draw(reserve, plant.inlet, plant.house)
    volume = 100 * gal if volume is None else volume * (1 - 1e-6)
    if reserve > 0 and volume > 0:
        assert worst_start(plant, eager * plant.house, volume).run().first("dry") is None


def test_largest_draw_is_sharp_with_a_mighty_pump() -> None:
    """A second method, the whole run: a hundredth more than the largest draw runs dry.

    The largest draw here is two drawdowns, so that the last refill comes at its very end.
    """
    plant = Plant(4 * gpm, 4e5 * gpm, 6 * gpm, 10 * gal, 12 * gal, 6 * gal, 0.9 * gal)
    volume = largest_draw(sure_reserve(plant.float_open, plant.drawdown, False), 4 * gpm, 6 * gpm)
    assert volume is not None
    assert worst_start(plant, 6 * gpm, 1.01 * volume).run().first("dry") is not None


@many
@given(plants("before"))
def test_time_to_empty_is_when_the_run_is_dry(plant: Plant) -> None:
    """A second method, the whole run: a steady pump empties the tank at that moment."""
    time = time_to_empty(plant.float_open, plant.inlet, plant.pump)
    endless = plant._replace(house=FREE)
    if time is None:
        return
    dry = worst_start(endless, plant.pump, 2 * plant.pump * time).run().first("dry")
    assert dry == pytest.approx(time, rel=1e-9)


@many
@given(st.floats(0.1, 100), shares, shares, st.sampled_from([1.645, 2.326]))
def test_guarded_outlet_solves_its_equation(
    inlet: float, inlet_sure: float, outlet_sure: float, sureness: float
) -> None:
    """[jcgm-106] 8.3.2: q = Qi - z √((ui Qi)² + (uo q)²), put back into itself."""
    q = guarded_outlet(inlet, inlet_sure, outlet_sure, sureness)
    band = sureness * sqrt((inlet_sure * inlet) ** 2 + (outlet_sure * q) ** 2)
    assert 0 < q < inlet
    assert inlet - band == pytest.approx(q, rel=1e-12)


@many
@given(st.floats(0.1, 100), shares, shares, st.sampled_from([1.645, 2.326]))
def test_guarded_outlet_falls_with_every_doubt(
    inlet: float, inlet_sure: float, outlet_sure: float, sureness: float
) -> None:
    """[jcgm-106] 8.3.2: more doubt, or more sureness asked, never allows a larger setting."""
    q = guarded_outlet(inlet, inlet_sure, outlet_sure, sureness)
    assert guarded_outlet(inlet, 1.1 * inlet_sure, outlet_sure, sureness) < q
    assert guarded_outlet(inlet, inlet_sure, 1.1 * outlet_sure, sureness) < q
    assert guarded_outlet(inlet, inlet_sure, outlet_sure, 1.1 * sureness) < q
    assert guarded_outlet(1.1 * inlet, inlet_sure, outlet_sure, sureness) > q


def test_guarded_outlet_without_doubt() -> None:
    """[jcgm-106]: no doubt, no guard band; only the inlet's doubt, a plain share of it."""
    assert guarded_outlet(5 * gpm, 0.0, 0.0, 1.645) == 5 * gpm
    assert guarded_outlet(5 * gpm, 0.02, 0.0, 1.645) == pytest.approx(5 * gpm * (1 - 0.0329))
