"""Valves and beds against their own definitions and against each other."""

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.physics.restriction import (
    flow_at_lower_drop,
    flow_at_other_drop,
    flow_coefficient,
    flow_through,
    flow_through_bed,
    in_parallel,
    in_series,
)
from calc.units import Cv, gpm, psi
from tests.model.given import steady

coefficients = st.lists(st.floats(0.01, 100), min_size=1, max_size=5)
drops = st.floats(0.1, 150).map(lambda number: number * psi)


@steady
@given(coefficients, st.floats(0.1, 50))
def test_drops_in_series_add_up(numbers: list[float], flow: float) -> None:
    """[iec-60534-2-1]: one flow through all; each takes (Q/C)², and together they take the sum."""
    apart = sum((flow / each) ** 2 for each in numbers)
    assert (flow / in_series(*numbers)) ** 2 == pytest.approx(apart, rel=1e-12)
    assert in_series(*numbers) <= min(numbers) * (1 + 1e-12)


@steady
@given(coefficients, drops)
def test_flows_in_parallel_add_up(numbers: list[float], drop: float) -> None:
    """[iec-60534-2-1]: one drop over all; the flows add."""
    apart = sum(flow_through(each, drop) for each in numbers)
    assert flow_through(in_parallel(*numbers), drop) == pytest.approx(apart, rel=1e-12)


def test_equal_valves() -> None:
    """By hand: two of Cv 1 in series make 1/√2, in parallel 2."""
    assert in_series(Cv, Cv) == pytest.approx(Cv / sqrt(2), rel=1e-12)
    assert in_parallel(Cv, Cv) == 2 * Cv


@steady
@given(st.floats(0.1, 50), drops)
def test_flow_coefficient_and_back(flow: float, drop: float) -> None:
    """[iec-60534-2-1]: the coefficient of a measured flow gives that flow back."""
    assert flow_through(flow_coefficient(flow, drop), drop) == pytest.approx(flow, rel=1e-12)


linears = st.floats(0, 20).map(lambda number: number * psi / gpm)
quadratics = st.floats(1e-6, 5).map(lambda number: number * psi / gpm**2)


@steady
@given(drops, linears, quadratics)
def test_flow_through_a_bed_spends_the_drop(drop: float, linear: float, quadratic: float) -> None:
    """[ergun]: put back, a Q + b Q² is the drop."""
    flow = flow_through_bed(drop, linear, quadratic)
    assert linear * flow + quadratic * flow**2 == pytest.approx(drop, rel=1e-12)


@steady
@given(drops, st.floats(0.01, 1), linears, quadratics)
def test_the_truth_lies_between_two_bounds(
    drop: float, part: float, linear: float, quadratic: float
) -> None:
    """[ergun] solved anew: a bed with a valve falls more than a valve, less than in proportion."""
    before = flow_through_bed(drop, linear, quadratic)
    after = flow_through_bed(part * drop, linear, quadratic)
    assert flow_at_lower_drop(before, drop, part * drop) <= after * (1 + 1e-12)
    assert after <= flow_at_other_drop(before, drop, part * drop) * (1 + 1e-12)


def test_a_bed_without_one_of_its_terms() -> None:
    """Darcy's law when all is linear, a valve when nothing is."""
    assert flow_through_bed(30 * psi, 6 * psi / gpm, 0.0) == pytest.approx(5 * gpm, rel=1e-12)
    valve = flow_through_bed(25 * psi, 0.0, psi / gpm**2)
    assert valve == pytest.approx(flow_through(Cv, 25 * psi), rel=1e-12)


@pytest.mark.parametrize("drop", [0.0, -3 * psi])
def test_nothing_flows_uphill(drop: float) -> None:
    """By reason: no drop, no flow."""
    assert flow_through(Cv, drop) == 0
    assert flow_through_bed(drop, 1.0, 1.0) == 0
    assert flow_at_other_drop(gpm, 40 * psi, drop) == 0
    assert flow_at_lower_drop(gpm, 40 * psi, drop) == 0


def test_a_higher_drop_promises_no_more() -> None:
    """By reason: the cautious rule holds for a fall, so a rise leaves the flow as measured."""
    assert flow_at_lower_drop(5 * gpm, 40 * psi, 60 * psi) == 5 * gpm
