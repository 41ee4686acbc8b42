"""Fouling laws: printed and worked examples, and each law told from readings made by it."""

from collections.abc import Callable
from math import exp, inf, isfinite, sqrt

import numpy as np
import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from calc.figures import agrees
from calc.physics.filter_life import outlooks
from calc.physics.fouling import (
    LAWS,
    Fit,
    bed_resistance,
    fitted,
    reached_between,
    resistance_at,
    straightened,
)
from calc.physics.restriction import flow_through_bed
from calc.physics.student import student_t
from calc.units import gal, gpm, psi
from tests.model.given import steady

METER = (0.0, 2500.0, 5000.0, 7500.0, 10000.0)
FIVE_TESTS = (0.32, 0.70, 1.15, 1.48, 1.98)
CRITICAL = 3.248  # psi/gpm, worked below
COEFFICIENT = 1 / sqrt(0.846446 * psi / gpm**2)
every_law = pytest.mark.parametrize("exponent", LAWS.values(), ids=list(LAWS))

resistances = st.floats(0.05, 50)
exponents = st.sampled_from(list(LAWS.values()))


def test_critical_resistance_and_its_throughput() -> None:
    """Worked in closed form: cut-in 40 psi, lift 2.5985, B 0.846446, 5 gpm: 3.248 psi/gpm.

    r 0.3 clean and 1.8 after 9000 gal: reached after 17 688 gal.
    """
    critical = bed_resistance(5 * gpm, (40 - 2.5985) * psi, COEFFICIENT)
    assert agrees(critical / (psi / gpm), "3.248")
    line = fitted((0, 9000 * gal), (0.3 * psi / gpm, 1.8 * psi / gpm), 0.0)
    assert agrees(line.reaches(critical) / gal, "17688")


@pytest.mark.parametrize(
    ("cut_in", "needed", "printed"),
    [(40, 4.5, "4.502"), (40, 5.3, "2.571"), (30, 5.0, "1.248")],
)
def test_critical_resistance_of_other_settings(cut_in: float, needed: float, printed: str) -> None:
    """Worked in closed form, as above."""
    critical = bed_resistance(needed * gpm, (cut_in - 2.5985) * psi, COEFFICIENT)
    assert agrees(critical / (psi / gpm), printed)


@steady
@given(st.floats(0.01, 20), st.floats(1, 100), st.floats(0.1, 5))
def test_resistance_and_flow_are_each_others_inverse(
    resistance: float, pressure: float, coefficient: float
) -> None:
    """The flow through bed and limit, solved the other way by `restriction`."""
    flow = flow_through_bed(pressure, resistance, 1 / coefficient**2)
    assert bed_resistance(flow, pressure, coefficient) == pytest.approx(
        resistance, rel=1e-6, abs=1e-9
    )


def test_five_tests() -> None:
    """[fieller-1954] worked apart: b0 .306, b1 1.640e-4, s .0421, G* 17 939, lower 95 % 16 984."""
    line = fitted(METER, FIVE_TESTS, 0.0)
    assert agrees(line.resistance(0), "0.306")
    assert agrees(1e4 * line.slope, "1.640")
    assert agrees(line.scatter, "0.0421")
    assert agrees(line.reaches(3.248), "17939")
    low, high = reached_between(line, 3.248, student_t(0.95, 3))
    assert low is not None
    assert agrees(low, "16984")
    assert high is not None
    assert high > 17939


@every_law
def test_each_law_solves_its_equation(exponent: float) -> None:
    """scipy's solver on dr/dV = k r^n, the law of [hermia-1982] in resistance."""
    slope = 0.2
    volumes = (0.3, 1.1, 2.0)
    run = solve_ivp(
        lambda _, r: slope * r**exponent, (0, 2), [1.0], t_eval=volumes, rtol=1e-10, atol=1e-12
    )
    start = straightened(1.0, exponent)
    for volume, expected in zip(volumes, run.y[0], strict=True):
        found = resistance_at(start + slope * volume, exponent)
        assert found == pytest.approx(float(expected), rel=1e-7)


@pytest.mark.parametrize(
    ("exponent", "grown"),
    [
        (0.0, lambda v: 1 + v),  # a cake that thickens with the water passed
        (1.0, exp),  # grains settle on open area and on one another: open area exp(-v)
        (1.5, lambda v: 1 / (1 - v) ** 2),  # pores narrow: volume 1 - v, resistance 1/area²
        (2.0, lambda v: 1 / (1 - v)),  # each grain closes a pore: open area 1 - v
    ],
)
def test_each_law_by_its_picture(exponent: float, grown: Callable[[float], float]) -> None:
    """Derived from what blocks: the picture's resistance is a straight line in its coordinate."""
    heights = [straightened(grown(v), exponent) for v in (0.0, 0.2, 0.4, 0.6)]
    first = heights[1] - heights[0]
    assert first > 0
    assert np.diff(heights) == pytest.approx([first] * 3, rel=1e-9)


@steady
@given(exponents, resistances)
def test_straightened_and_back(exponent: float, resistance: float) -> None:
    """By reason: the coordinate holds the resistance, and rises with it."""
    y = straightened(resistance, exponent)
    assert resistance_at(y, exponent) == pytest.approx(resistance, rel=1e-9)
    assert straightened(resistance * 1.01, exponent) > y


def made_by(exponent: float, clean: float, growth: float, meter: tuple[float, ...]) -> list[float]:
    """Resistances of a filter that follows the law and has grown so many fold at the last."""
    start, end = (straightened(r, exponent) for r in (clean, clean * growth))
    return [resistance_at(start + (end - start) * v / meter[-1], exponent) for v in meter]


@steady
@given(exponents, resistances, st.floats(1.5, 8), st.floats(1.2, 3))
def test_a_law_is_recovered_by_its_own_fit(
    exponent: float, clean: float, growth: float, further: float
) -> None:
    """Readings made by a law: its fit goes through them, foretells it, and no other fits."""
    readings = made_by(exponent, clean, growth, METER)
    critical = readings[-1] * further
    start, end = straightened(clean, exponent), straightened(readings[-1], exponent)
    true = METER[-1] * (straightened(critical, exponent) - start) / (end - start)
    assume(true < 20 * METER[-1])
    line = fitted(METER, readings, exponent)
    assert line.reaches(critical) == pytest.approx(true, rel=1e-6)
    assert line.scatter < 1e-6 * clean
    for other in LAWS.values():
        if other != exponent:
            assert fitted(METER, readings, other).scatter > line.scatter


@steady
@given(resistances, st.floats(1.5, 8), st.floats(1.2, 3))
def test_the_harder_the_law_the_sooner_it_ends(clean: float, growth: float, further: float) -> None:
    """By reason: through the same two readings the steeper law reaches any limit first."""
    ends = [
        fitted((0, 1000), (clean, clean * growth), exponent).reaches(clean * growth * further)
        for exponent in LAWS.values()
    ]
    assert ends == sorted(ends, reverse=True)


@every_law
def test_weighted_fit(exponent: float) -> None:
    """numpy.polyfit with the square roots of the weights, another routine."""
    heights = [straightened(r, exponent) for r in FIVE_TESTS]
    roots = [r**exponent for r in FIVE_TESTS]
    slope, start = np.polyfit(METER, heights, 1, w=roots)
    line = fitted(METER, FIVE_TESTS, exponent)
    assert line.slope == pytest.approx(slope, rel=1e-9)
    assert line.height - line.slope * line.middle == pytest.approx(start, rel=1e-9)


def band(fit: Fit, volume: float, factor: float) -> float:
    """Half-width of the confidence band of the line at a throughput."""
    return factor * fit.scatter * sqrt(1 / fit.weight + (volume - fit.middle) ** 2 / fit.spread)


@steady
@given(exponents, st.lists(st.floats(0.9, 1.1), min_size=5, max_size=5), st.floats(1.1, 4))
@example(2.0, [1.0, 0.9375, 0.90625, 1.09765625, 0.90625], 1.125)
def test_ends_of_the_interval(exponent: float, off: list[float], further: float) -> None:
    """[fieller-1954] by its meaning: at the ends the band about the line meets the limit.

    Found by scipy's root finder on the band itself, starting from the line's own crossing.
    """
    readings = [r * f for r, f in zip(FIVE_TESTS, off, strict=True)]
    critical = max(readings) * further
    line = fitted(METER, readings, exponent)
    assume(line.scatter > 1e-6)
    factor = student_t(0.95, line.freedom)
    low, high = reached_between(line, critical, factor)
    limit = straightened(critical, exponent)
    reached = line.reaches(critical)

    def above(volume: float, side: int) -> float:
        height = line.height + line.slope * (volume - line.middle)
        return height + side * band(line, volume, factor) - limit

    if low is None:  # the limit lies among the readings, and they may as well have no slope
        assert above(line.middle, 1) >= 0 >= above(line.middle, -1)
        assert abs(line.slope) <= factor * line.scatter / line.spread**0.5
        return
    assert low <= reached
    found = brentq(above, line.middle, reached, args=(1,), xtol=1e-9, rtol=1e-13)
    assert low == pytest.approx(found, rel=1e-6)
    if high is not None:
        assert high >= reached
        assert above(high, -1) == pytest.approx(0.0, abs=1e-6 * abs(limit) + 1e-9)


def test_without_a_slope_there_is_no_end() -> None:
    """By hand: readings that only scatter bound nothing above, and near them nothing at all."""
    line = fitted((0, 1, 2, 3), (1.0, 1.1, 0.9, 1.05), 0.0)
    factor = student_t(0.95, 2)
    low, high = reached_between(line, 2.0, factor)
    assert low is not None
    assert low > 3
    assert high is None
    assert reached_between(line, 1.01, factor) == (None, None)


def test_an_interval_open_above_meets_the_band() -> None:
    """By its meaning, with a slope that is not sure: the one end lies where the band does."""
    meter, readings = (0.0, 1.0, 2.0), (1.0, 1.4, 1.5)
    line = fitted(meter, readings, 0.0)
    factor = student_t(0.95, 1)
    low, high = reached_between(line, 3.0, factor)
    assert high is None
    assert low is not None
    height = line.height + line.slope * (low - line.middle)
    assert height + band(line, low, factor) == pytest.approx(3.0, rel=1e-9)


def test_interval_covers() -> None:
    """Counted over 2000 made series of readings: the lower end holds about 19 times in 20."""
    rng = np.random.default_rng(7)
    true = (3.0 - 0.3) / 1.65e-4
    held = 0
    for _ in range(2000):
        noise = rng.normal(0, 0.05, 5)
        readings = [0.3 + 1.65e-4 * v + e for v, e in zip(METER, noise, strict=True)]
        low, _ = reached_between(fitted(METER, readings, 0.0), 3.0, student_t(0.95, 3))
        held += low is not None and low <= true
    assert 0.935 < held / 2000 < 0.965


def test_two_readings_give_a_line_and_no_interval() -> None:
    """By reason: two points leave nothing over to judge their doubt by."""
    found = outlooks((0, 9000), (0.3, 1.8), CRITICAL)
    assert {*found} == {*LAWS}
    assert all((law.low, law.high, law.kept) == (None, None, True) for law in found.values())


def test_laws_that_the_readings_contradict() -> None:
    """By hand: a straight rise with little scatter sets aside all laws but the cake."""
    found = outlooks(METER, (0.30, 0.71, 1.13, 1.53, 1.95), CRITICAL)
    assert {name for name, law in found.items() if law.kept} == {"cake"}


def test_no_rise_and_no_resistance() -> None:
    """By reason: what falls foretells nothing; below zero there is no power of it."""
    assert not outlooks(METER, FIVE_TESTS[::-1], CRITICAL)
    assert {*outlooks(METER, (-0.02, 0.4, 0.8, 1.2, 1.6), CRITICAL)} == {"cake"}
    assert not outlooks((0, 1), (1.0, 1.001), 2.0)


def test_a_law_that_ends() -> None:
    """By reason: where every pore is shut the resistance is without bound."""
    assert resistance_at(0.0, 2.0) == inf
    assert resistance_at(1.0, 1.5) == inf
    assert isfinite(resistance_at(1e9, 1.0))
