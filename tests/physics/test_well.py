"""What a well gives: printed figures, scipy's solver of the same balance, and limits by reason."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calc.figures import agrees
from calc.physics.well import (
    Well,
    drawdown_after,
    inflow_at,
    inflow_for_each,
    inflow_while,
    naive_supply,
    open_area,
    recovery_time,
    specific_capacity,
    stored_volume,
    supply,
    time_to_drawdown,
)
from calc.units import L, day, ft, gal, gpm, hour, inch, m, minute, mm
from tests.model.given import steady

EACH = gpm / ft
SIX = open_area(6 * inch)


@pytest.mark.parametrize(
    ("inches", "printed"),
    [
        (2, "0.16"), (4, "0.65"), (5, "1.02"), (6, "1.47"), (8, "2.61"), (10, "4.08"),
        (12, "5.88"), (24, "23.50"), (30, "36.72"), (42, "71.97"), (48, "94.00"), (3, "0.37"),
    ],
)  # fmt: skip
def test_table_of_casings(inches: float, printed: str) -> None:
    """[mesa-shock] Table I, gallons a foot; 3 in from [hickory-disinfect]; A1."""
    held = stored_volume(inches * inch, 1 * ft) / gal
    assert agrees(held, printed) or agrees(held - 0.005, printed)  # 5.875 is printed 5.88


@pytest.mark.parametrize(("inches", "printed"), [(18, 13.21), (36, 52.87)])
def test_casings_printed_short(inches: float, printed: float) -> None:
    """The same table; A2. Both are cut off, not rounded: 13.219 and 52.877."""
    held = stored_volume(inches * inch, 1 * ft) / gal
    assert 0 <= held - printed < 0.01


def test_box_1() -> None:
    """[gwp-box-1] Box 1: 152 mm, 5 m to water and 5 m kept, 1200 L in two hours.

    9 L/min and 20 m of well is enough; 6 L/min needs 40 m.
    """
    shallow = stored_volume(152 * mm, 10 * m) + 9 * L / minute * 2 * hour
    deep = stored_volume(152 * mm, 30 * m) + 6 * L / minute * 2 * hour
    assert agrees(shallow / L, "1261")
    assert agrees(deep / L, "1264")
    assert stored_volume(152 * mm, 10 * m) + 6 * L / minute * 2 * hour < 1200 * L


def test_solution_to_exercise_1() -> None:
    """[gwp-box-1] Solution to Exercise 1, A3 and A4: 726 L stored, 966 L in two hours."""
    stored = stored_volume(152 * mm, (50 - 5 - 5) * m)
    assert agrees(stored / L, "726")
    well = Well(open_area(152 * mm), 2 * L / minute / (40 * m))
    promised = naive_supply(well, 1.0, 40 * m, 2 * hour)
    assert agrees(promised / L, "966")
    assert inflow_at(well, 40 * m) * day / L == pytest.approx(2880)
    # drawn evenly the two hours give less than the book's sum
    assert supply(well, promised / (2 * hour), 0, 40 * m, 2 * hour).volume < promised


def test_real_casings() -> None:
    """By hand: 6.065 in holds 1.501, a 6.25 in rock hole 1.594 gallons a foot."""
    assert agrees(stored_volume(6.065 * inch, ft) / gal, "1.501")
    assert agrees(stored_volume(6.25 * inch, ft) / gal, "1.594")


def test_specific_capacity() -> None:
    """By hand: 3 gpm at 150 ft is 0.02 gpm for each foot."""
    assert specific_capacity(3 * gpm, 150 * ft) == pytest.approx(0.02 * EACH)


def test_bail_test_by_hand() -> None:
    """Worked by hand: 100 to 60 ft in 45 minutes is 0.01667 gpm a foot, 1.67 gpm at 100 ft."""
    each = inflow_for_each(SIX, 45 * minute, 100 * ft, 60 * ft)
    assert agrees(each / EACH, "0.01667")
    assert agrees(inflow_at(Well(SIX, each), 100 * ft) / gpm, "1.67")


def test_rise_by_hand() -> None:
    """Worked by hand: 20 ft in 30 minutes is 0.979 gpm; pumped at 2 gpm meanwhile, 2.979."""
    assert agrees(inflow_while(SIX, 0, -20 * ft, 30 * minute) / gpm, "0.979")
    assert agrees(inflow_while(SIX, 2 * gpm, -20 * ft, 30 * minute) / gpm, "2.979")


def test_pump_down_by_hand() -> None:
    """Worked by hand: 8 gpm, 0.02 gpm a foot, 150 ft: 34.5 min and 276 gal, not 44.1 min.

    The sum promises 28 % more. The mean inflow is 54 % of the yield. Then 66 ft after an hour's
    rest, 90 % back after 169 minutes.
    """
    well = Well(SIX, 0.02 * EACH)
    down = time_to_drawdown(well, 8 * gpm, 0, 150 * ft)
    assert down
    assert agrees(down / minute, "34.5")
    assert agrees(8 * gpm * down / gal, "276")
    naive = SIX * 150 * ft / (8 * gpm - 3 * gpm)
    assert agrees(naive / minute, "44.1")
    assert agrees(100 * (naive / down - 1), "28")
    mean = 8 * gpm - SIX * 150 * ft / down
    assert agrees(mean / gpm, "1.62")
    assert agrees(100 * mean / (3 * gpm), "54")
    assert agrees(drawdown_after(well, 0, 150 * ft, hour) / ft, "66")
    assert agrees(recovery_time(well, 150 * ft, 0.9) / minute, "169")


wells = st.builds(
    lambda bore, each, fracture: Well(open_area(bore * inch), each * EACH, fracture * ft),
    st.floats(4, 36), st.floats(0.002, 0.5), st.floats(1, 400),
)  # fmt: skip
flows = st.one_of(st.just(0.0), st.floats(0.1, 20)).map(lambda flow: flow * gpm)
levels = st.floats(0, 300).map(lambda level: level * ft)


@steady
@given(wells, flows, levels, st.floats(1, 600).map(lambda time: time * minute))
def test_level_beside_scipy(well: Well, pumped: float, start: float, time: float) -> None:
    """scipy's solver of A ds/dt = Q - what flows in."""

    def rate(_: float, level: np.ndarray) -> list[float]:
        return [(pumped - inflow_at(well, level[0])) / well.area]

    solved = solve_ivp(rate, (0, time), [start], method="LSODA", rtol=1e-9, atol=1e-9)
    assert drawdown_after(well, pumped, start, time) == pytest.approx(
        solved.y[0, -1], rel=1e-5, abs=1e-6
    )


@steady
@given(wells, flows, levels, st.floats(1, 600).map(lambda time: time * minute))
def test_the_time_undoes_the_level(well: Well, pumped: float, start: float, time: float) -> None:
    """The other way round: a level reached after a time is reached in that time."""
    end = drawdown_after(well, pumped, start, time)
    # where the level has all but come to rest its time cannot be told from its place
    assume(abs(pumped - inflow_at(well, end)) > 0.01 * max(pumped, inflow_at(well, start)))
    assume(abs(end - start) > 1e-6)
    back = time_to_drawdown(well, pumped, start, end)
    assert back == pytest.approx(time, rel=1e-6)


@steady
@given(wells, flows, levels, levels, st.floats(1, 600).map(lambda time: time * minute))
def test_water_is_kept(well: Well, pumped: float, start: float, more: float, time: float) -> None:
    """scipy's quadrature of the inflow: what is given flowed in or left the casing."""
    lowest = start + more
    found = supply(well, pumped, start, lowest, time)
    assert found.end <= lowest * (1 + 1e-9)
    until = time if found.down is None else found.down
    times = np.linspace(0, until, 4001)
    inflows = [inflow_at(well, drawdown_after(well, pumped, start, each)) for each in times]
    entered = float(np.trapezoid(inflows, times))
    level = drawdown_after(well, pumped, start, until)
    assert pumped * until == pytest.approx(
        entered + well.area * (level - start), rel=1e-3, abs=1e-4
    )
    held = min(pumped, inflow_at(well, lowest)) if found.down is not None else 0.0
    assert found.volume == pytest.approx(pumped * until + held * (time - until))


@steady
@given(wells, flows, levels, st.floats(1, 600).map(lambda time: time * minute))
def test_the_sum_always_promises_more(
    well: Well, pumped: float, lowest: float, time: float
) -> None:
    """By reason: full yield flows in only at the lowest level."""
    found = supply(well, pumped, 0.0, lowest, time)
    assert found.volume <= naive_supply(well, pumped, lowest, time) * (1 + 1e-9)


def test_never_down() -> None:
    """By reason: a well that makes more than is pumped keeps its level, and comes no further up."""
    well = Well(SIX, 0.02 * EACH)
    assert time_to_drawdown(well, 2 * gpm, 0, 150 * ft) is None
    assert time_to_drawdown(well, 2 * gpm, 150 * ft, 50 * ft) is None
    assert time_to_drawdown(well, 0, 50 * ft, 0) is None
