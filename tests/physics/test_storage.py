"""Storage for a peak: worked figures, linear programming, and limits by reason."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import linprog

from calc.figures import agrees
from calc.physics.storage import empty_after, refill_time, shortages, storage_needed, turnover
from calc.units import day, gal, gpm, hour
from tests.model.given import steady

DRAWS = [each * gpm for each in (5, 0.5, 4, 0.3, 0)]
SPANS = [each * hour for each in (1, 2, 1, 4, 16)]


def test_by_hand() -> None:
    """Worked by hand: 5 gpm for an hour, 0.5 for two, 4 for one, 0.3 for four, 1.5 gpm: 240 gal."""
    needed = storage_needed(DRAWS, SPANS, 1.5 * gpm)
    assert needed
    assert agrees(needed / gal, "240")
    shorts = [(t / hour, round(each / gal)) for t, each in shortages(DRAWS, SPANS, 1.5 * gpm)]
    assert shorts == [
        (0, 0), (1, 210), (3, 90), (4, 240), (pytest.approx(4 + 240 / 72), 0), (8, 0), (24, 0),
    ]  # fmt: skip


def test_empty_by_hand() -> None:
    """By hand: 210 gallons short after an hour, so 140 are gone after 40 minutes; 240 never."""
    shorts = shortages(DRAWS, SPANS, 1.5 * gpm)
    assert (empty_after(shorts, 140 * gal) or 0) == pytest.approx(hour * 2 / 3)
    assert (empty_after(shorts, 215 * gal) or 0) == pytest.approx((3 + 125 / 150) * hour)
    assert empty_after(shorts, 240.01 * gal) is None


def test_one_peak_by_hand() -> None:
    """Worked by hand: 5 gpm for an hour with 1 gpm coming: 240 gal, filled again in 4.0 h."""
    needed = storage_needed([5 * gpm, 0], [hour, 23 * hour], 1 * gpm)
    assert needed
    assert agrees(needed / gal, "240")
    assert agrees((refill_time(needed, 1 * gpm) or 0) / hour, "4.0")


def test_lending_rule() -> None:
    """[hud-shared-well]: 3 gpm for four hours, or 720 gallons stored: the same with no well."""
    assert 3 * gpm * 4 * hour == pytest.approx(720 * gal)
    needed = storage_needed([3 * gpm, 0], [4 * hour, 20 * hour], 0.5 * gpm)
    assert needed == pytest.approx(600 * gal)


def test_what_no_tank_can_do() -> None:
    """By reason: more drawn in a day than comes, more leaving than entering."""
    assert storage_needed([2 * gpm], [day], 1.9 * gpm) is None
    assert refill_time(10 * gal, 1 * gpm, 1 * gpm) is None
    assert refill_time(0.0, 1 * gpm, 2 * gpm) == 0


def test_turnover() -> None:
    """By hand: 300 gallons at 150 a day stand for two days."""
    assert turnover(300 * gal, 150 * gal / day) == pytest.approx(2 * day)


stretches = st.lists(st.tuples(st.floats(0, 8), st.floats(0.1, 6)), min_size=1, max_size=7)


@steady
@given(stretches, st.floats(0.2, 8))
def test_beside_linear_programming(pattern: list[tuple[float, float]], supplied: float) -> None:
    """scipy's linprog: the smallest tank whose level, spilling allowed, returns to where it was.

    Unknowns are the tank, the level at each end, and what is spilled in each stretch.
    """
    draws, spans = zip(*pattern, strict=True)
    count = len(pattern)
    drawn = sum(draw * span for draw, span in pattern)
    assume(abs(drawn - supplied * sum(spans)) > 1e-6)  # linprog's own tolerance
    needed = storage_needed(draws, spans, supplied)
    size = 1 + count + count
    equal, right = np.zeros((count, size)), np.zeros(count)
    for i in range(count):
        equal[i, 1 + (i + 1) % count] += 1
        equal[i, 1 + i] -= 1
        equal[i, 1 + count + i] = 1
        right[i] = (supplied - draws[i]) * spans[i]
    above = np.hstack([-np.ones((count, 1)), np.eye(count), np.zeros((count, count))])
    cost = np.zeros(size)
    cost[0] = 1
    best = linprog(cost, above, np.zeros(count), equal, right)
    if needed is None:
        assert not best.success
    else:
        assert best.fun == pytest.approx(needed, rel=1e-6, abs=1e-6)
