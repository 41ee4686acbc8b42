"""Quantities in words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.units import (
    Kind,
    duration,
    flow,
    gal,
    gauge_pressure,
    gpm,
    hour,
    kPa,
    minute,
    psi,
    volume,
)
from calc.views.words import shown, spoken
from tests.model.given import steady


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (475, "7 min 55 s"), (60, "1 min 00 s"), (59.4, "0.990 min"), (119.6, "2 min 00 s"),
        (3599.7, "60 min 00 s"), (7199.4, "119 min 59 s"), (7199.6, "2 h 00 min"),
        (7260, "2 h 01 min"), (36000, "10 h 00 min"), (-90, "−1 min 30 s"), (0, "0 min"),
    ],
)  # fmt: skip
def test_times_as_a_clock_says_them(seconds: float, words: str) -> None:
    """By hand: minutes and seconds below two hours, hours and minutes above."""
    assert spoken(seconds, duration, "us").replace("\u00a0", " ") == words


@steady
@given(st.floats(minute, 50 * hour))
def test_a_clock_is_read_back(seconds: float) -> None:
    """By reason: what is said differs from the time by no more than half its last figure."""
    words = spoken(seconds, duration, "us").split("\u00a0")
    units = {"h": 3600.0, "min": 60.0, "s": 1.0}
    back = sum(float(n) * units[unit] for n, unit in zip(words[::2], words[1::2], strict=True))
    assert abs(back - seconds) <= (30.5 if "h" in words else 0.5)


@pytest.mark.parametrize(
    ("value", "kind", "us", "si"),
    [
        (5.34527 * gpm, flow, "5.35 gpm", "20.2 L/min"),
        (40 * psi, gauge_pressure, "40.0 psi", "276 kPa"),
        (300 * kPa, gauge_pressure, "43.5 psi", "300 kPa"),
        (11 * gal, volume, "11.0 gal", "41.6 L"),
        (-1.2 * gpm, flow, "−1.20 gpm", "−4.54 L/min"),
    ],
)  # fmt: skip
def test_values_in_both_sets_of_units(value: float, kind: Kind, us: str, si: str) -> None:
    """[nist-811] by hand: three figures, and the unit that readers of each set expect."""
    assert shown(value, kind, "us").replace("\u00a0", " ") == us
    assert shown(value, kind, "si").replace("\u00a0", " ") == si
