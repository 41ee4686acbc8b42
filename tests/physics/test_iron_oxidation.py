"""Iron and air against printed half times, an integrator and atomic weights."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calc.figures import agrees
from calc.physics.carbonate import log_water
from calc.physics.iron_oxidation import (
    ALKALINITY_USED,
    RATE,
    RUST,
    half_time,
    rusted,
    sludge,
)
from calc.units import L, atm, day, gal, mg, minute
from tests.model.given import steady

PRINTED_PH = (6.2, 6.5, 6.8, 7.0, 7.2, 7.5, 8.0)


@pytest.mark.parametrize(
    ("celsius", "minutes"),
    [
        (5, (4810, 1208, 303, 121, 48, 12.1, 1.2)),
        (10, (1929, 484, 122, 48.4, 19.3, 4.84, 0.48)),
        (15, (812, 204, 51, 20.4, 8.1, 2.04, 0.20)),
        (25, (165, 41, 10.4, 4.1, 1.65, 0.41, 0.04)),
    ],
)
def test_half_times_as_printed(celsius: float, minutes: tuple[float, ...]) -> None:
    """Worked beforehand by another program, at 0.209 atm."""
    for ph, printed in zip(PRINTED_PH, minutes, strict=True):
        found = half_time(ph, celsius + 273.15, 0.209 * atm) / minute
        assert found == pytest.approx(printed, rel=5e-4) or agrees(found, str(printed))


def test_nine_minutes_at_ph_7() -> None:
    """Worked beforehand: pH 7.0, pKw 14.17, 0.21 atm, 9.03 min; and its neighbours."""
    assert log_water(293.15) == pytest.approx(-14.17, abs=3e-3)
    for ph, printed in ((6.2, 359), (6.5, 90), (7.0, 9.03), (7.2, 3.59), (7.5, 0.903)):
        found = half_time(ph, 293.15, 0.21 * atm) / minute
        assert found == pytest.approx(printed, rel=0.01)


@steady
@given(st.floats(6, 8), st.floats(275, 300), st.floats(0.1, 60))
def test_a_mixed_tank(ph: float, temperature: float, minutes: float) -> None:
    """scipy follows the iron of a tank that flows through, until nothing changes."""
    stay = minutes * minute
    hydroxide = 10 ** (log_water(temperature) + ph)
    speed = RATE * hydroxide**2 * 0.2095

    def balance(_: float, iron: Any) -> list[float]:
        return [(1 - iron[0]) / stay - speed * iron[0]]

    end = solve_ivp(balance, (0.0, 40 * stay), [1.0], method="LSODA", rtol=1e-9, atol=1e-12)
    found = rusted(half_time(ph, temperature), stay)
    assert 1 - found == pytest.approx(end.y[0][-1], rel=1e-4, abs=1e-9)


def test_what_iron_makes_and_uses_as_printed() -> None:
    """Worked beforehand: 1.914 of rust, 1.792 of alkalinity for each part of iron."""
    assert agrees(RUST, "1.914")
    assert agrees(ALKALINITY_USED, "1.792")


def test_a_year_of_rust_as_printed() -> None:
    """Worked beforehand: 300 gal/day at 2 mg/L is 4.35 g a day, 1.59 kg a year."""
    made = RUST * 2 * mg / L * 300 * gal / day
    assert agrees(made * day * 1000, "4.35")
    assert agrees(made * 365 * day, "1.59")
    assert agrees(sludge(made * 365 * day, 20.0) / L, "79")
