"""Pumping tests: three as published, scipy's exponential integral, and a well with casing storage.

The three show how far an answer depends on the readings that are used.
"""

from math import log, log10

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import curve_fit
from scipy.special import exp1
from scipy.stats import linregress
from scipy.stats import t as student

from calc.figures import agrees
from calc.physics.pumping_test import (
    LARGEST_U,
    Line,
    casing_time_papadopulos_cooper,
    casing_time_schafer,
    storativity_of_line,
    straight_from,
    straight_line,
    theis_drawdown,
    transmissivity_of_line,
    well_function,
    zero_time,
)
from calc.units import day, ft, gal, gpm, inch, minute
from tests.model.given import steady
from tests.physics.pumping_data import FETTER, KORENDIJK, TODD, drawdown_in_a_real_well

FT2_DAY = ft**2 / day
M2_DAY = 1 / day
Q_FETTER, R_FETTER = 42350 * ft**3 / day, 824 * ft
Q_TODD, Q_KORENDIJK = 2500 / day, 788 / day


@pytest.mark.parametrize(
    ("u", "printed"),
    [
        (1e-8, "17.843"), (1e-6, "13.238"), (1e-4, "8.6332"), (1e-3, "6.3315"), (0.01, "4.0379"),
        (0.02, "3.3547"), (0.05, "2.4679"), (0.1, "1.8229"), (0.5, "0.55977"), (1, "0.21938"),
        (2, "0.048901"), (5, "0.0011483"),
    ],
)  # fmt: skip
def test_table_of_the_well_function(u: float, printed: str) -> None:
    """W(u) as tabled, worked with scipy; A5."""
    assert agrees(well_function(u), printed)


@steady
@given(st.floats(-30, 2.8))
def test_well_function_beside_scipy(log_u: float) -> None:
    """scipy.special.exp1, to the last digits."""
    assert well_function(10**log_u) == pytest.approx(exp1(10**log_u), rel=1e-13)


@pytest.mark.parametrize(
    ("u", "percent"),
    [(0.001, "-0.02"), (0.01, "-0.2"), (0.02, "-0.6"), (0.05, "-2.0"), (0.1, "-5")],
)
def test_error_of_the_straight_line(u: float, percent: str) -> None:
    """Worked with scipy: how far Cooper and Jacob's logarithm is under W(u)."""
    line = -0.5772156649 - np.log(u)
    assert agrees(100 * (line / well_function(u) - 1), percent)


def test_fetter_forward() -> None:
    """A7: T 1400, S 2.4e-5 gives 10.14 ft after 500 minutes; 10.9 was read."""
    s = theis_drawdown(Q_FETTER, 1400 * FT2_DAY, 2.4e-5, R_FETTER, 500 * minute)
    assert agrees(s / ft, "10.14")


def test_fetter_by_hand() -> None:
    """[fetter-2001]: a drawn line of 5.5 ft and 5.2 min gives 1400 and 1.7e-5."""
    t = transmissivity_of_line(Q_FETTER, 5.5 * ft)
    assert agrees(t / (100 * FT2_DAY), "14")
    assert agrees(storativity_of_line(t, 5.2 * minute, R_FETTER) * 1e5, "1.7")


def line_of(readings: list[tuple[float, float]], size: float) -> Line:
    """The line through minutes and drawdowns of a unit."""
    return straight_line([log10(t * minute) for t, _ in readings], [s * size for _, s in readings])


def test_fetter_by_least_squares() -> None:
    """A6: readings from 100 minutes on give 5.541 ft, T 1400, t₀ 5.54 min, S 1.78e-5.

    With 2.30 for 2.3026, as books print it, T is 1399; S then comes to 1.78e-5.
    """
    line = line_of([each for each in FETTER if each[0] >= 100], ft)
    t = transmissivity_of_line(Q_FETTER, line.per_cycle)
    assert agrees(line.per_cycle / ft, "5.541")
    assert agrees(t / FT2_DAY * 2.30 / log(10) / 10, "140")
    assert agrees(zero_time(line) / minute, "5.54")
    assert storativity_of_line(t, zero_time(line), R_FETTER) == pytest.approx(1.78e-5, rel=0.005)


@pytest.mark.parametrize(
    ("readings", "flow", "distance", "size", "t", "s", "off"),
    [
        (FETTER, Q_FETTER, R_FETTER, ft, 1325 * FT2_DAY, "2.09", "0.091"),
        (KORENDIJK, Q_KORENDIJK, 30.0, 1.0, 480 * M2_DAY, "11", "0.032"),
    ],
)
def test_by_the_curve(
    readings: tuple[tuple[float, float], ...],
    flow: float,
    distance: float,
    size: float,
    t: float,
    s: str,
    off: str,
) -> None:
    """Worked with scipy: Theis's curve through all readings; S in 1e-5."""

    def curve(times: np.ndarray, log_t: float, log_s: float) -> list[float]:
        found = np.exp(log_t) * FT2_DAY, np.exp(log_s), distance
        return [theis_drawdown(flow, *found, each * minute) / size for each in times]

    times, levels = np.array(readings).T
    (log_t, log_s), _ = curve_fit(curve, times, levels, p0=(np.log(3000), np.log(1e-4)))
    assert np.exp(log_t) * FT2_DAY == pytest.approx(t, rel=0.002)
    assert agrees(np.exp(log_s) * 1e5, s)
    assert agrees(float(np.sqrt(np.mean((levels - curve(times, log_t, log_s)) ** 2))), off)


def test_fetter_leaves_out_its_beginning() -> None:
    """By the condition itself: with the line's own S and T, u is 0.05 where the line begins."""
    times = [t * minute for t, _ in FETTER]
    drawn = [s * ft for _, s in FETTER]
    since = straight_from(times, drawn)
    line = line_of([each for each in FETTER if each[0] * minute >= since], ft)
    t = transmissivity_of_line(Q_FETTER, line.per_cycle)
    s = storativity_of_line(t, zero_time(line), R_FETTER)
    assert R_FETTER**2 * s / (4 * t * since) == pytest.approx(LARGEST_U)
    assert 30 < since / minute < 100
    assert t == pytest.approx(1400 * FT2_DAY, rel=0.03)


def recovery_line(readings: list[tuple[float, float]], pumped: float) -> Line:
    """The line of residual drawdown, m, over the ratio of times, minutes."""
    return straight_line([log10((pumped + t) / t) for t, _ in readings], [s for _, s in readings])


def test_todd_by_hand() -> None:
    """[todd-1980], A8: a drawn line of 0.40 m gives 1140, with 2.30 for 2.3026."""
    t = transmissivity_of_line(Q_TODD, 0.40) / M2_DAY
    assert agrees(t * 2.30 / log(10) / 10, "114")
    assert (240 + 30) / 30 == 9.0


@pytest.mark.parametrize(("left_out", "slope", "t"), [(0, "0.3859", "1187"), (5, "0.4056", "1130")])
def test_todd_by_least_squares(left_out: int, slope: str, t: str) -> None:
    """A9: all readings 0.3859 m and 1187; without the first five 0.4056 m and 1130 (worked)."""
    line = recovery_line(list(TODD[left_out:]), 240)
    assert agrees(line.per_cycle, slope)
    # 1129 and 1130 are a rounding apart
    assert transmissivity_of_line(Q_TODD, line.per_cycle) / M2_DAY == pytest.approx(
        float(t), abs=0.6
    )


def test_todd_meets_zero() -> None:
    """By reason: a recovery without boundaries ends at no drawdown where the ratio is 1."""
    line = recovery_line(list(TODD[5:]), 240)
    assert abs(line.zero) < 0.02


def test_korendijk_by_hand() -> None:
    """[kruseman-1990]: 0.375 m and 0.25 min give 385 m²/d and 1.7e-4."""
    t = transmissivity_of_line(Q_KORENDIJK, 0.375)
    assert agrees(t / M2_DAY, "385")
    assert agrees(storativity_of_line(t, 0.25 * minute, 30) * 1e4, "1.7")


def test_korendijk_depends_on_the_readings() -> None:
    """The first twenty minutes agree with the book, 385; what comes after half an hour gives 605.

    The late water leaks in from elsewhere, so the line flattens (worked).
    """
    early = line_of([each for each in KORENDIJK if 1 <= each[0] <= 20], 1.0)
    late = line_of([each for each in KORENDIJK if each[0] >= 30], 1.0)
    assert transmissivity_of_line(Q_KORENDIJK, early.per_cycle) == pytest.approx(
        385 * M2_DAY, rel=0.03
    )
    assert agrees(transmissivity_of_line(Q_KORENDIJK, late.per_cycle) / M2_DAY, "605")


def test_us_constants() -> None:
    """By definition: 264 Q/Δs in gpm, ft and gpd/ft, and 35 Q/Δs in ft²/day, as printed."""
    assert agrees(transmissivity_of_line(gpm, ft) / (gal / day / ft), "264")
    assert agrees(transmissivity_of_line(gpm, ft) / FT2_DAY, "35")


@pytest.mark.parametrize(("t", "minutes"), [(10, "225"), (50, "45"), (100, "22.5"), (1000, "2.25")])
def test_papadopulos_and_cooper_by_hand(t: float, minutes: str) -> None:
    """Worked by hand: 25 r²/T for a 6 in casing."""
    assert agrees(casing_time_papadopulos_cooper(6 * inch, t * FT2_DAY) / minute, minutes)


@pytest.mark.parametrize(("capacity", "minutes"), [(0.05, "399"), (0.5, "39.9")])
def test_schafer_by_hand(capacity: float, minutes: str) -> None:
    """Worked by hand: 6 in casing, 1.66 in pipe."""
    found = casing_time_schafer(6 * inch, 1.66 * inch, capacity * gpm / ft)
    assert agrees(found / minute, minutes)


@pytest.mark.parametrize("storativity", [1e-5, 1e-4, 1e-3])
def test_what_casing_storage_leaves(storativity: float) -> None:
    """The exact answer for a well that stores water, its transform turned back by Stehfest's sum.

    At 25 r²/T its drawdown is within 3 % of Theis's, but its slope still gives T 22 to 36 % too
    low. At Schafer's time it is 14 % too low.
    """
    t, radius = 10 * FT2_DAY, 3 * inch

    def drawdown(time: float) -> float:
        return drawdown_in_a_real_well(gpm, t, storativity, radius, time)

    def found(time: float) -> float:
        return transmissivity_of_line(gpm, (drawdown(1.1 * time) - drawdown(time / 1.1))
                                      / (2 * log10(1.1))) / t  # fmt: skip

    exact = casing_time_papadopulos_cooper(2 * radius, t)
    ideal = theis_drawdown(gpm, t, storativity, radius, exact)
    assert 0.97 < drawdown(exact) / ideal < 0.98
    assert 0.64 < found(exact) < 0.79
    late = exact
    for _ in range(60):
        late = casing_time_schafer(2 * radius, 0.0, gpm / drawdown(late))
    assert late > 1.6 * exact
    assert 0.86 < found(late) < 0.87
    assert found(100 * exact) == pytest.approx(1, abs=0.01)


@steady
@given(st.lists(st.floats(-1, 1), min_size=2, max_size=12), st.integers(0, 10**6))
def test_line_beside_scipy(noise: list[float], seed: int) -> None:
    """scipy.stats.linregress and its standard errors, with scipy's Student's t."""
    logs = np.sort(np.random.default_rng(seed).uniform(0, 4, len(noise))) + np.arange(len(noise))
    levels = 2 + 3 * logs + np.array(noise)
    line, theirs = straight_line(list(logs), list(levels)), linregress(logs, levels)
    assert line.per_cycle == pytest.approx(theirs.slope, abs=1e-9)
    assert line.zero == pytest.approx(theirs.intercept, abs=1e-9)
    if len(noise) == 2:
        assert line.low is line.high is line.zero_sure is None
        return
    factor = student.ppf(0.975, len(noise) - 2)
    assert line.high is not None
    assert line.zero_sure is not None
    assert line.high - line.per_cycle == pytest.approx(factor * theirs.stderr, rel=1e-6, abs=1e-6)
    assert line.zero_sure == pytest.approx(factor * theirs.intercept_stderr, rel=1e-6, abs=1e-6)


def test_a_line_that_does_not_rise() -> None:
    """By reason: nothing is left out where there is no slope to tell it by; no overflow either."""
    assert straight_from([1, 10, 100], [3.0, 2.0, 1.0]) == 1
    assert zero_time(Line(1e-9, -1.0, None, None, None)) == 1e300
    assert zero_time(Line(1e-9, 1.0, None, None, None)) == 1e-300
