"""The calculators of the well by other ways: scipy's solver, published tests, and each other."""

from collections.abc import Iterable
from math import log

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import curve_fit
from scipy.stats import linregress

from calc.figures import agrees
from calc.request import case_of
from calc.units import day, ft, gal, gpm, hour, inch, minute
from tests.physics.pumping_data import FETTER, KORENDIJK, TODD, drawdown_in_a_real_well

Found = dict[str, float | None]


def outputs(*words: str) -> Found:
    case = case_of(words)
    assert case.answer, case.errors
    return dict(case.answer.outputs)


def table(readings: Iterable[tuple[float, float]], unit: str) -> list[str]:
    """Readings of drawdown as words for the calculator, under a static level of 10."""
    pairs = list(readings)
    times = ";".join(f"{t} min" for t, _ in pairs)
    levels = ";".join(f"{10 + s} {unit}" for _, s in pairs)
    return [f"test_times={times}", f"test_levels={levels}", f"static_level=10 {unit}"]


def test_well_supply_beside_scipy() -> None:
    """scipy's solver of the balance with the pump cut back at the lowest level.

    6 in, 100 ft of drawdown, 0.02 gpm a foot down to a fracture 60 ft down, 4 gpm for an hour.
    """
    found = outputs("well_supply", "fracture_depth=90", "well_pump=4")
    area, each = np.pi * (6 * inch) ** 2 / 4, 0.02 * gpm / ft

    def rate(_: float, state: np.ndarray) -> list[float]:
        inflow = each * min(state[0], 60 * ft)
        given = 4 * gpm if state[0] < 100 * ft else inflow
        return [(given - inflow) / area, given]

    solved = solve_ivp(rate, (0, 60 * minute), [0.0, 0.0], max_step=5, rtol=1e-8)
    assert found["peak_supply"] == pytest.approx(solved.y[1, -1], rel=1e-3)
    down = solved.t[np.argmax(solved.y[0] >= 100 * ft)]
    assert found["pump_down"] == pytest.approx(down, abs=10)
    assert found["full_yield"] == pytest.approx(1.2 * gpm)


def test_well_supply_by_hand() -> None:
    """Worked by hand: 8 gpm, 0.02 gpm a foot, 150 ft: 34.5 minutes, and 44.1 by the sum."""
    words = "static_level=30", "pump_depth=190", "fracture_depth=190", "well_pump=8"
    found = outputs("well_supply", *words)
    assert agrees((found["pump_down"] or 0) / minute, "34.5")
    assert agrees((found["naive_down"] or 0) / minute, "44.1")
    assert agrees((found["recovery"] or 0) / minute, "169")
    assert agrees((found["well_stored"] or 0) / gal, "220")
    assert found["day_supply"] == pytest.approx(4320 * gal / day)


def test_well_test_by_hand() -> None:
    """Worked by hand: 100 to 60 ft of drawdown in 45 minutes is 0.01667 gpm a foot."""
    found = outputs("well_test", "rise_times=0;45", "rise_levels=130;90", "drop_pipe=0")
    assert agrees((found["inflow_each"] or 0) / (gpm / ft), "0.01667")
    assert found["inflow_low"] is None


def test_well_test_beside_scipy() -> None:
    """scipy's least squares on the curve itself, every level as sure as the next: a weighted line
    through logarithms comes within its interval, and within half a percent."""
    found = outputs("well_test")
    times = np.array([1, 10, 20, 30, 45, 60, 90, 120]) * minute
    levels = np.array([88.6, 77.6, 68.3, 58.8, 47.3, 37.7, 24.4, 16.3])
    (_, speed), _ = curve_fit(lambda t, s, k: s * np.exp(-k * t), times, levels, p0=(90, 2e-4))
    area = np.pi * ((6 * inch) ** 2 - (1.315 * inch) ** 2) / 4
    low, each, high = (found[name] or 0 for name in ("inflow_low", "inflow_each", "inflow_high"))
    assert low < area * speed < high
    assert each == pytest.approx(area * speed, rel=5e-3)


def test_fetter_in_twelve_readings() -> None:
    """[fetter-2001] table 5.1: the last twelve readings give the book's 1400 ft²/d within 4 %."""
    words = ["test_flow=220 gpm", "test_distance=824 ft"]
    found = outputs("pumping_test", *words, *table(FETTER[-12:], "ft"))
    assert found["transmissivity"] == pytest.approx(1400 * ft**2 / day, rel=0.04)
    assert found["storativity"] == pytest.approx(1.75e-5, rel=0.06)
    assert found["last_inflow"] is None


def test_todd_in_twelve_readings() -> None:
    """[todd-1980]: the last ten readings give 1130 m²/d, as scipy's line through them does."""
    flow = f"test_flow={2500 / day / gpm!r} gpm"
    words = ["test_phase=recovery", flow, "pumped_for=4 h", "test_distance=60 m"]
    found = outputs("pumping_test", *words, *table(TODD[5:], "m"))
    assert (found["transmissivity"] or 0) * day == pytest.approx(1130, abs=1)
    line = linregress([np.log10((240 + t) / t) for t, _ in TODD[5:]], [s for _, s in TODD[5:]])
    assert found["per_cycle"] == pytest.approx(line.slope)
    assert found["zero_miss"] == pytest.approx(line.intercept, abs=1e-9)


def test_korendijk_in_twelve_readings() -> None:
    """[kruseman-1990]: early readings give 385 m²/d within 4 %, late ones half as much more."""
    words = [f"test_flow={788 / day / gpm!r} gpm", "test_distance=30 m"]
    early = [each for each in KORENDIJK if 2 <= each[0] <= 20]
    found = outputs("pumping_test", *words, *table(early, "m"))
    late = outputs("pumping_test", *words, *table(KORENDIJK[-12:], "m"))
    assert (found["transmissivity"] or 0) * day == pytest.approx(385, rel=0.04)
    assert (late["transmissivity"] or 0) * day > 1.5 * 385


@pytest.mark.parametrize("t", [3.0, 5.0, 20.0])
def test_a_test_with_casing_storage(t: float) -> None:
    """The exact answer of Papadopulos and Cooper, read without error: what is left after Schafer's
    time gives T within 12 %; with the beginning in it the same line is a third and more off."""
    minutes = [10, 30, 60, 120, 240, 480, 720, 1440, 2880, 4320, 7200, 10080]
    levels = [
        drawdown_in_a_real_well(gpm, t * ft**2 / day, 1e-4, 3 * inch, m * minute) / ft
        for m in minutes
    ]
    words = table(zip(minutes, levels, strict=True), "ft")
    found = outputs("pumping_test", "test_flow=1 gpm", "drop_pipe=0", *words)
    assert found["transmissivity"] == pytest.approx(t * ft**2 / day, rel=0.12)
    spoiled = linregress(np.log10(minutes[:7]), levels[:7]).slope
    if t < 20:
        assert log(10) * gpm / (4 * np.pi * spoiled * ft) < 0.67 * t * ft**2 / day


def test_low_yield_beside_the_well() -> None:
    """The other calculator, asked for each remedy in turn."""
    found = outputs("low_yield")
    august = "static_level=80", "well_inflow=0.008", "peak_use=160", "daily_use=300"

    def given(*words: str) -> float:
        return outputs("well_supply", *august, *words)["peak_supply"] or 0.0

    assert found["as_is_supply"] == pytest.approx(given())
    assert found["spread_supply"] == pytest.approx(given("peak_time=120"))
    assert found["deeper_supply"] == pytest.approx(given("pump_depth=200"))
    assert found["throttled_supply"] == pytest.approx(given("well_pump=0.35"))
    assert found["stored_supply"] == pytest.approx(given("well_pump=0.35") + 150 * gal)


def test_storage_tank_by_hand() -> None:
    """Worked by hand: 5, 0.5, 4 and 0.3 gpm over 1, 2, 1 and 4 hours, 1.5 gpm: 240 gal."""
    words = "stretch_flows=5;0.5;4;0.3", "stretch_times=1 h;2 h;1 h;4 h", "tank_supply=1.5"
    found = outputs("storage_tank", *words, "tank_usable=240.1")
    assert agrees((found["storage_needed"] or 0) / gal, "240")
    assert found["empty_after"] is None
    short = outputs("storage_tank", *words, "tank_usable=140")
    assert (short["empty_after"] or 0) == pytest.approx(40 * minute)
    assert (found["refill"] or 0) == pytest.approx(240.1 / 1.5 * minute)


def test_storage_tank_ages_its_water() -> None:
    """By hand: 573.5 gal at 150 a day is a half-life of radon: half is left, or 0.59 mixed."""
    found = outputs("storage_tank", "tank_usable=543.525", "tank_dead=30", "daily_use=150")
    assert (found["turnover"] or 0) / day == pytest.approx(3.8235)
    assert found["radon_plug"] == pytest.approx(0.5)
    assert agrees(found["radon_mixed"] or 0, "0.5906")
    assert (found["day_drawn"] or 0) / (2.5 * gpm * hour / 2) == pytest.approx(183 / 75)


def test_a_leak_by_the_gauge() -> None:
    """By hand: 20 gal · 42.696 psi · (1/54.696 psi - 1/62.696 psi), and 5.907 gal a start."""
    found = outputs("house_leak")
    leaked, leak, starts = found["house_leaked"], found["leak_flow"], found["leak_starts"]
    assert leaked is not None
    assert agrees(leaked / gal, "1.992")
    assert leak is not None
    assert agrees(leak / gal * day, "95.6")
    assert starts is not None
    assert agrees(starts, "16.19")
