"""Water against air: the printed table, limits, and counts from stage to stage."""

from math import exp, inf, log

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calc.figures import agrees
from calc.physics.radon_solubility import air_to_water
from calc.physics.stripping import (
    batch_rate,
    factor_basins,
    factor_cross_flow,
    factor_trays,
    ideal_trays,
    least_radon,
    left_basins,
    left_cross_flow,
    left_standing,
    left_trays,
    overall_efficiency_lewis,
)
from calc.units import ft, gal, minute
from tests.model.given import steady

# stages, then S f in all for 90, 95, 99 and 99.9 %, worked beforehand by another program
NEEDED = [
    (1, "9", "19", "99", "999"),
    (2, "4.325", "6.944", "18.00", "61.25"),
    (3, "3.463", "5.143", "10.925", "27.00"),
    (4, "3.113", "4.459", "8.649", "18.49"),
    (6, "2.807", "3.885", "6.927", "12.97"),
    (inf, "2.303", "2.996", "4.605", "6.908"),
]
LEFT = (0.1, 0.05, 0.01, 0.001)

factors = st.floats(1e-2, 1e3)
shares = st.floats(0.01, 1.0)
counts = st.integers(1, 12)


@pytest.mark.parametrize(("basins", "needed"), [(row[0], row[1:]) for row in NEEDED])
def test_air_that_basins_need(basins: float, needed: tuple[str, ...]) -> None:
    """The table of air by stages, to its printed digit."""
    for left, printed in zip(LEFT, needed, strict=True):
        found = factor_cross_flow(left) if basins == inf else factor_basins(left, basins)
        assert agrees(found, printed)


@pytest.mark.parametrize(
    ("ratio", "one_full", "one_third", "three"),
    [
        (5, "93.5", "81.1", "93.0"),
        (10, "96.6", "89.5", "98.26"),
        (20, "98.28", "94.5", "99.67"),
        (30, "98.85", "96.3", "99.89"),
        (60, "99.42", "98.1", "99.98"),
        (119, "99.71", "99.03", "99.998"),
    ],
)
def test_removal_by_air(ratio: float, one_full: str, one_third: str, three: str) -> None:
    """Removal at 10 °C, worked beforehand: one basin, one at f = 0.3, three at f = 0.3."""
    factor = air_to_water(283.15) * ratio
    assert agrees(100 * (1 - left_basins(factor, 1)), one_full)
    assert agrees(100 * (1 - left_basins(factor, 1, 0.3)), one_third)
    assert agrees(100 * (1 - left_basins(factor, 3, 0.3)), three)


@pytest.mark.parametrize(
    ("factor", "trays", "removal"),
    [(5, 2, "96.774"), (5, 3, "99.359"), (3, 4, "99.174"), (10, 2, "99.099"), (2, 3, "93.333"),
     (0.8, 10, "78.121")],
)  # fmt: skip
def test_ideal_trays_remove(factor: float, trays: int, removal: str) -> None:
    """The Kremser equation worked beforehand; 5 and 3 by hand: 1 - 4/624."""
    assert agrees(100 * (1 - left_trays(factor, trays)), removal)


def test_trays_needed() -> None:
    """Worked beforehand: ideal trays for 99 %."""
    for factor, printed in ((5, "2.7243"), (3, "3.827"), (14.28, "1.705")):
        assert agrees(ideal_trays(factor, 0.01), printed)
    with pytest.raises(ValueError, match=r"math domain error|expected a"):
        ideal_trays(0.5, 0.4)  # S = 0.5 leaves at least half


@pytest.mark.parametrize(
    ("factor", "efficiency", "overall", "four_trays"),
    [(5, 0.6, ".7604", "99.400"), (14.28, 0.4, ".6929", "99.941"), (3, 0.5, ".6309", "95.745")],
)
def test_real_trays(factor: float, efficiency: float, overall: str, four_trays: str) -> None:
    """Lewis's efficiency, worked beforehand."""
    assert agrees(overall_efficiency_lewis(factor, efficiency), overall)
    assert agrees(100 * (1 - left_trays(factor, 4, efficiency)), four_trays)


def counted_trays(factor: float, trays: int, efficiency: float) -> float:
    """Share left by solving the balances of all trays at once, water falling, air rising.

    In units of H′ the air that leaves a tray is y = y_below + E (x - y_below).
    """
    matrix, right = np.zeros((2 * trays, 2 * trays)), np.zeros(2 * trays)
    for tray in range(trays):  # 0 on top; x in columns 0..n-1, y behind them
        x, y, below = tray, trays + tray, trays + tray + 1
        matrix[tray, [x, y]] += 1, factor
        matrix[trays + tray, [y, x]] += 1, -efficiency
        if tray:
            matrix[tray, x - 1] -= 1
        else:
            right[tray] = 1
        if tray < trays - 1:
            matrix[tray, below] -= factor
            matrix[trays + tray, below] -= 1 - efficiency
    return float(np.linalg.solve(matrix, right)[trays - 1])


@steady
@given(st.floats(0.05, 50), st.integers(1, 6), st.floats(0.05, 1.0))
def test_trays_counted_one_by_one(factor: float, trays: int, efficiency: float) -> None:
    """numpy on the radon balance of every tray: the closed form is right."""
    found = counted_trays(factor, trays, efficiency)
    assert left_trays(factor, trays, efficiency) == pytest.approx(found, rel=1e-6, abs=1e-13)


@steady
@given(factors, counts, shares)
def test_what_is_left_is_a_share_and_falls(factor: float, stages: int, full: float) -> None:
    """By reason: between all and nothing; more air, more stages, fuller air never leave more."""
    for left in (left_basins, left_trays):
        here = left(factor, stages, full)
        assert 0 <= here < 1
        assert left(1.1 * factor, stages, full) < here or here < 1e-300
        assert left(factor, stages + 1, full) <= here * (1 + 1e-12)
        assert left(factor, stages, 0.9 * full) >= here * (1 - 1e-12)


@steady
@given(factors, counts, shares)
def test_the_order_of_the_types(factor: float, stages: int, full: float) -> None:
    """By reason: a crossed tray beats any count of basins, one basin is the worst of them."""
    crossed, one = left_cross_flow(factor, full), left_basins(factor, 1, full)
    assert crossed <= left_basins(factor, stages, full) * (1 + 1e-12)
    assert left_basins(factor, stages, full) <= one * (1 + 1e-12)
    assert left_basins(factor, 1e7, full) == pytest.approx(crossed, rel=0.2, abs=1e-30)


@steady
@given(counts, shares, st.floats(-1e-6, 1e-6))
def test_kremser_near_one(trays: int, efficiency: float, past: float) -> None:
    """The limit at S = 1 is 1 / (1 + N E), and nothing breaks on the way there."""
    limit = 1 / (1 + trays * efficiency)
    assert left_trays(1.0, trays, efficiency) == limit
    assert left_trays(1.0 + past, trays, efficiency) == pytest.approx(limit, rel=2e-5)
    assert overall_efficiency_lewis(1.0, efficiency) == efficiency
    assert ideal_trays(1.0, limit) == pytest.approx(trays * efficiency)


def test_one_ideal_tray_is_one_full_basin() -> None:
    """By reason: both are one mixed stage."""
    for factor in (0.3, 1.0, 7.0):
        assert left_trays(factor, 1) == pytest.approx(left_basins(factor, 1), rel=1e-12)


@steady
@given(st.floats(1e-6, 0.99), counts, shares)
def test_factors_turn_the_shares_round(left: float, stages: int, full: float) -> None:
    """Put back into the share that it came from."""
    again = left_basins(factor_basins(left, stages, full), stages, full)
    assert again == pytest.approx(left, rel=1e-9)
    assert left_cross_flow(factor_cross_flow(left, full), full) == pytest.approx(left, rel=1e-9)
    again = left_trays(factor_trays(left, stages, full), stages, full)
    assert again == pytest.approx(left, rel=1e-9)


@steady
@given(st.floats(1.01, 100), st.floats(1e-4, 0.5))
def test_ideal_trays_turn_kremser_round(factor: float, left: float) -> None:
    """Put back into the Kremser equation, which takes parts of a tray."""
    assert left_trays(factor, ideal_trays(factor, left)) == pytest.approx(left, rel=1e-6)


def test_a_crossed_tray_in_steps() -> None:
    """scipy's integrator along the tray: each step of water meets fresh air."""
    factor, full = 4.0, 0.3
    run = solve_ivp(lambda _, x: [-factor * full * x[0]], (0, 1), [1.0], rtol=1e-10, atol=1e-13)
    assert left_cross_flow(factor, full) == pytest.approx(run.y[0][-1], rel=1e-7)


def test_batch() -> None:
    """Worked beforehand: 100 gal, 3 cfm, f = 0.35, 10 °C: 10 min leave 10.6 %, 99 % in 20.5."""
    air = 3 * ft**3 / minute
    rate = batch_rate(air_to_water(283.15) * air, 0.35, 100 * gal)
    assert agrees(rate * minute, "0.2243")
    assert agrees(100 * exp(-rate * 10 * minute), "10.6")
    assert agrees(log(100) / rate / minute, "20.5")


def test_standing_and_foul_air() -> None:
    """Worked beforehand: equal volumes at 10 °C leave 0.2593; air of 4 keeps water at 1.4."""
    assert agrees(left_standing(air_to_water(283.15), 1.0, 1.0), "0.2593")
    assert agrees(least_radon(4.0, air_to_water(283.15)), "1.4")


@pytest.mark.parametrize(("removal", "ratio", "full"), [(0.97, 12, ".594"), (0.90, 19, ".104")])
def test_pilot_plant_turned_round(removal: float, ratio: float, full: str) -> None:
    """[bubble-pilot-1999] taken as one mixed basin at 25 °C: how full its bubbles burst."""
    factor = air_to_water(298.15) * ratio
    assert agrees(factor_basins(1 - removal, 1) / factor, full)
