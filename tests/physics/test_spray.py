"""Sprays: worked cases, a drop solved in steps, limits."""

from math import pi

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calc.figures import agrees
from calc.physics.radon_solubility import air_to_water, diffusivity
from calc.physics.spray import (
    chamber_removal,
    exit_speed,
    fall_time,
    left_passes,
    left_recirculated,
    still_drop,
)
from calc.units import GRAVITY, mm, psi
from tests.model.given import steady

TEN, FIFTEEN = 283.15, 288.15


def test_exit_speed() -> None:
    """Worked beforehand: 10, 20 and 40 psi through a nozzle of 0.95."""
    for pressure, printed in ((10, "11.2"), (20, "15.8"), (40, "22.3")):
        assert agrees(exit_speed(pressure * psi, 999.7), printed)


@pytest.mark.parametrize(
    ("diameter", "time", "temperature", "lost"),
    [(1, 1, TEN, ".1833"), (0.5, 0.3, TEN, ".1997"), (0.5, 1, FIFTEEN, ".3743"),
     (2, 0.5, TEN, ".0670")],
)  # fmt: skip
def test_still_drops(diameter: float, time: float, temperature: float, lost: str) -> None:
    """Worked beforehand by another program."""
    assert agrees(still_drop(diffusivity(temperature), time, diameter * mm), lost)


def test_a_drop_in_steps() -> None:
    """scipy on 200 shells: diffusion out of a sphere whose skin is clean."""
    shells, fourier = 200, 0.05  # 4 D t / d²
    edges = np.linspace(0, 1, shells + 1)
    volumes = (edges[1:] ** 3 - edges[:-1] ** 3) / 3

    def leaving(_: float, inside: np.ndarray) -> np.ndarray:
        flux = np.zeros(shells + 1)
        flux[1:-1] = -(edges[1:-1] ** 2) * np.diff(inside) * shells
        flux[-1] = 2 * shells * inside[-1]
        return -np.diff(flux) / volumes

    run = solve_ivp(leaving, (0, fourier), np.ones(shells), method="BDF", rtol=1e-8, atol=1e-10)
    left = 3 * float(volumes @ run.y[:, -1])
    assert still_drop(fourier / 4, 1.0, 1.0) == pytest.approx(1 - left, rel=1e-4)


def test_the_two_forms_of_a_still_drop_meet() -> None:
    """The short-time form and the series are one curve."""
    for fourier in (0.999e-3, 1.001e-3):
        found = still_drop(fourier / 4, 1.0, 1.0)
        assert found == pytest.approx(6 * (fourier / pi) ** 0.5 - 3 * fourier, rel=1e-9)


def test_chamber() -> None:
    """Worked beforehand: 60 % in clean air at 10 °C is .576 at five parts of air, .496 at one."""
    held = air_to_water(TEN)
    assert agrees(chamber_removal(0.6, held * 5), "0.576")
    assert agrees(chamber_removal(0.6, held * 1), "0.496")
    assert agrees(1 - left_passes(0.576, 3), "0.924")
    assert agrees(left_recirculated(0.6, 6, 3), "0.4545")


@steady
@given(st.floats(0.01, 0.99), st.floats(0.01, 1e3))
def test_chamber_balance(free: float, factor: float) -> None:
    """The balance put back: what the air carries away is what the water lost."""
    removal = chamber_removal(free, factor)
    in_air = removal / factor  # over H′
    assert free * (1 - in_air) == pytest.approx(removal, rel=1e-12)
    assert 0 < removal < free


@steady
@given(st.floats(0.01, 0.99), st.floats(0.1, 100), st.floats(0.1, 100))
def test_tank_balance(removal: float, around: float, through: float) -> None:
    """The balance put back: what enters is what leaves and what the spray takes."""
    left = left_recirculated(removal, around, through)
    assert through * (1 - left) == pytest.approx(around * removal * left, rel=1e-9)


@steady
@given(st.floats(1e-12, 1e-8), st.floats(1e-3, 10), st.floats(1e-4, 1e-2))
def test_still_drops_lose_more_with_time(spread: float, time: float, diameter: float) -> None:
    """By reason: a share, and more of it the longer and the smaller."""
    lost = still_drop(spread, time, diameter)
    assert 0 < lost <= 1
    assert still_drop(spread, 1.2 * time, diameter) >= lost
    assert still_drop(spread, time, 0.8 * diameter) >= lost


@steady
@given(st.floats(0, 30), st.floats(0.01, 5))
def test_fall(speed: float, height: float) -> None:
    """Free fall put back."""
    time = fall_time(speed, height)
    assert speed * time + GRAVITY * time**2 / 2 == pytest.approx(height, rel=1e-9)
