"""Off-gas against cases worked beforehand, scipy's integrator and CoolProp."""

from typing import Any

import pytest
from CoolProp.HumidAirProp import HAPropsSI
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calc.figures import agrees
from calc.physics.off_gas import DECAY, FROM_USE, condensate, even_share, room_radon, vent_radon
from calc.units import L, atm, day, ft, gal, gpm, hour, minute, pCi
from tests.model.given import steady

CFM, unit = ft**3 / minute, pCi / L
BASEMENT = 8000 * ft**3


@pytest.mark.parametrize(
    ("raw", "removal", "water", "air", "printed"),
    [
        (20000 * unit, 0.99, 5 * gpm, 60 * CFM, "220.6"),
        (100000 * unit, 0.995, 4 * gpm, 100 * CFM, "532.0"),
    ],
)
def test_vents_as_printed(
    raw: float, removal: float, water: float, air: float, printed: str
) -> None:
    """Worked beforehand by another program."""
    assert agrees(vent_radon(raw * removal, water, air) / unit, printed)


def test_a_vent_in_the_other_units() -> None:
    """Worked beforehand: 1 000 Bq/L, 98 %, 15 L/min in 2 m³/min makes 7 350 Bq/m³."""
    assert agrees(vent_radon(980e3, 15 * L / minute, 2 / minute), "7350")


def test_what_a_day_lets_go() -> None:
    """Worked beforehand: 300 gal/day of 20 000 pCi/L, 22.71 µCi a day, 8.290 mCi a year."""
    release = 20000 * unit * 300 * gal
    assert agrees(release / (1e6 * pCi), "22.71")
    assert agrees(365 * release / (1e9 * pCi), "8.290")
    assert agrees(365 * release / 1e6, "307")


def test_a_leak_into_a_basement() -> None:
    """Worked beforehand: all of it 13.6 pCi/L, a leak of 5 % 0.68, in 8 000 ft³ at 0.3 an hour."""
    release = 20000 * unit * 300 * gal / day
    assert agrees(room_radon(release, BASEMENT, 0.3 / hour) / unit, "13.6")
    assert agrees(room_radon(0.05 * release, BASEMENT, 0.3 / hour) / unit, "0.68")


def test_decay() -> None:
    """Worked beforehand by another program: 0.0075536 an hour."""
    assert agrees(DECAY * hour, "0.0075536")


@steady
@given(st.floats(10, 1e4), st.floats(20, 500), st.floats(0.05, 5), st.floats(0.1, 48))
def test_a_room_fills(release: float, volume: float, changes: float, hours: float) -> None:
    """scipy's integrator on the room's balance."""

    def balance(_: float, radon: Any) -> list[float]:
        return [release / volume - (changes / hour + DECAY) * radon[0]]

    theirs = solve_ivp(balance, (0, hours * hour), [0.0], rtol=1e-8, atol=1e-9).y[0][-1]
    found = room_radon(release, volume, changes / hour, hours * hour)
    assert found == pytest.approx(theirs, rel=1e-5)
    assert found <= room_radon(release, volume, changes / hour)


@steady
@given(st.floats(0.5, 1), st.floats(50, 2000), st.floats(20, 500), st.floats(0.05, 5))
def test_the_even_leak(removal: float, gallons: float, volume: float, changes: float) -> None:
    """The other function: that share, leaked, adds one part in ten thousand of the raw water."""
    water, raw = gallons * gal / day, 1e6
    leak = even_share(removal, water, volume, changes / hour)
    added = room_radon(leak * removal * raw * water, volume, changes / hour)
    assert added == pytest.approx(FROM_USE * raw, rel=1e-12)


@pytest.mark.parametrize(
    ("cfm", "warm", "cold", "printed", "close"),
    [(50, 10, -10, 0.634, 0.02), (100, 12, -5, 1.30, 0.02), (60, 8, 5, 0.16, 0.04)],
)
def test_condensate_as_printed(
    cfm: float, warm: float, cold: float, printed: float, close: float
) -> None:
    """Worked beforehand by another program, kg in an hour; the last is printed to two figures."""
    found = condensate(cfm * CFM, warm + 273.15, cold + 273.15, atm)
    assert found * hour == pytest.approx(printed, rel=close)


@steady
@given(st.floats(274, 300), st.floats(240, 300), st.floats(65e3, 104e3))
def test_condensate_against_coolprop(warm: float, cold: float, pressure: float) -> None:
    """CoolProp's humid air: dry air times the difference of what it carries; none if no colder."""
    carried = [HAPropsSI("W", "T", t, "P", pressure, "R", 1) for t in (warm, min(cold, warm))]
    dry = 1 / HAPropsSI("Vda", "T", warm, "P", pressure, "R", 1)
    theirs = dry * (carried[0] - carried[1])
    assert condensate(1.0, warm, cold, pressure) == pytest.approx(theirs, rel=0.012, abs=3e-7)
    assert (condensate(1.0, warm, cold, pressure) == 0) == (cold >= warm)
