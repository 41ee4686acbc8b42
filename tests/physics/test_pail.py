"""The pail and the timer against printed figures and Student's t recomputed."""

from math import sqrt

import pytest
from scipy import stats

from calc.figures import agrees
from calc.physics.pail import (
    STUDENT_T_95,
    T_95_MANY,
    Budget,
    coverage_factor,
    effective_freedom,
    relative_spread,
    uncertainty_budget,
)
from calc.units import gal


def test_budget_of_a_timed_pail() -> None:
    """[jcgm-100] equations (5) and (12) by hand: 5 gal ± 0.1, 60 s, 0.10 s, 1 %, 3 runs: 1.3017 %.

    √((0.1/√3/5)² + (0.1/60)² + 0.01²/3)
    """
    budget = uncertainty_budget(5 * gal, 0.1 * gal, 60, 0.10, 0.01, 3)
    assert agrees(100 * budget.whole, "1.3017")
    assert agrees(100 * budget.mark, "1.1547")


def test_spread_of_runs() -> None:
    """[jcgm-100] equation (4) by hand: 9, 10 and 11 s spread by 1 s in 10."""
    assert relative_spread((9.0, 10.0, 11.0)) == pytest.approx(0.1, rel=1e-12)
    assert relative_spread((9.0,)) == 0


def test_effective_degrees_of_freedom() -> None:
    """[jcgm-100] example of G.4.1, from memory: 10, 5 and 15 readings, 1.03 % in all: 19.0.

    Ours knows one uncertain part at a time; the reciprocals of such results add up.
    """
    parts = ((0.25, 10), (0.57, 5), (0.82, 15))
    alone = (effective_freedom(Budget(0, 0, part, 1.03), readings) for part, readings in parts)
    assert agrees(1 / sum(1 / each for each in alone), "19.0")


def test_degrees_of_freedom_of_a_gauge_block() -> None:
    """[jcgm-100] example H.1.6, its parts as others print them, its 17.5 from memory.

    Parts in nm with their degrees of freedom, 32 nm in all; results grow with the readings
    less one, so that of two readings serves for a part of 25.6 degrees too.
    """
    parts = ((25.0, 18), (9.7, 25.6), (2.9, 50), (16.6, 2))
    alone = (freedom * effective_freedom(Budget(0, 0, part, 32), 2) for part, freedom in parts)
    whole = 1 / sum(1 / each for each in alone)
    assert agrees(whole, "17.5")
    assert coverage_factor(whole) == STUDENT_T_95[17]


def test_degrees_of_freedom_without_scatter() -> None:
    """[jcgm-100] (G.2b): parts known exactly, or a scatter not read off the runs, leave no end."""
    assert effective_freedom(Budget(0.01, 0.01, 0.0, sqrt(2) * 0.01), 3) == float("inf")
    assert effective_freedom(Budget(0.01, 0.01, 0.01, sqrt(3) * 0.01), 1) == float("inf")


@pytest.mark.parametrize("freedom", sorted(STUDENT_T_95))
def test_table_of_students_t(freedom: int) -> None:
    """[jcgm-100] Table G.2, recomputed with scipy: two-sided 95 %, to the digits printed."""
    printed = f"{STUDENT_T_95[freedom]:.{3 if freedom == 100 else 2}f}"
    assert agrees(float(stats.t.ppf(0.975, freedom)), printed)


def test_t_for_very_many_readings() -> None:
    """[jcgm-100] Table G.2, last line, recomputed with scipy."""
    assert agrees(float(stats.norm.ppf(0.975)), f"{T_95_MANY:.3f}")


@pytest.mark.parametrize(
    ("freedom", "line"), [(0.4, 1), (1, 1), (2.9, 2), (3, 3), (17.5, 17), (24.9, 20), (100, 100)]
)
def test_coverage_factor_takes_the_lower_line(freedom: float, line: int) -> None:
    """[jcgm-100] G.4.1: degrees of freedom between two lines of the table are truncated."""
    assert coverage_factor(freedom) == STUDENT_T_95[line]
