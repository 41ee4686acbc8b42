"""Student's t against scipy and printed tables."""

from math import atan, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from calc.figures import agrees
from calc.physics.filter_life import largest_ratio
from calc.physics.pail import STUDENT_T_95
from calc.physics.student import chance_within, student_t
from tests.model.given import steady


@steady
@given(st.floats(0.51, 0.999), st.integers(1, 200))
def test_quantiles(chance: float, freedom: int) -> None:
    """scipy.stats.t, an independent routine."""
    assert student_t(chance, freedom) == pytest.approx(stats.t.ppf(chance, freedom), rel=1e-9)


@pytest.mark.parametrize("freedom", sorted(STUDENT_T_95))
def test_printed_table(freedom: int) -> None:
    """[jcgm-100] Table G.2, two-sided 95 %, to the digits printed."""
    printed = f"{STUDENT_T_95[freedom]:.{3 if freedom == 100 else 2}f}"
    assert agrees(student_t(0.975, freedom), printed)


@steady
@given(st.floats(0.0, 50.0), st.integers(1, 60))
def test_chance_within(t: float, freedom: int) -> None:
    """scipy's distribution function, both tails taken off."""
    expected = stats.t.cdf(t, freedom) - stats.t.cdf(-t, freedom)
    assert chance_within(atan(t / sqrt(freedom)), freedom) == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize("freedom", range(1, 12))
def test_ratio_of_scatters(freedom: int) -> None:
    """scipy.stats.f: the upper 5 % point of the variance ratio."""
    expected = stats.f.ppf(0.95, freedom, freedom)
    assert largest_ratio(freedom) ** 2 == pytest.approx(expected, rel=1e-9)
