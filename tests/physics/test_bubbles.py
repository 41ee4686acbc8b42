"""Bubbles: printed cases, limits, and the mass balance solved in steps."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calc.figures import agrees
from calc.physics.bubbles import (
    RISE,
    bubble,
    saturation,
    transfer_units,
    transfer_velocity_froessling,
    transfer_velocity_higbie,
)
from calc.physics.radon_solubility import air_to_water, diffusivity
from tests.model.given import steady

TEN, TWENTY = 283.15, 293.15


@pytest.mark.parametrize(
    ("diameter", "rise", "depth", "temperature", "full"),
    [
        (3e-3, 0.25, 0.50, TEN, ".3372"),
        (2e-3, 0.23, 0.30, TEN, ".3767"),
        (5e-3, 0.24, 0.90, TEN, ".2961"),
        (10e-3, 0.25, 0.45, TEN, ".059"),
        (3e-3, 0.25, 0.25, TWENTY, ".1615"),
    ],
)
def test_how_full_a_clean_bubble_bursts(
    diameter: float, rise: float, depth: float, temperature: float, full: str
) -> None:
    """Cases worked beforehand by another program, to the digit printed, one unit more or less."""
    speed = transfer_velocity_higbie(diffusivity(temperature), rise, diameter)
    units = transfer_units(speed, depth, rise, diameter, air_to_water(temperature))
    decimals = len(full) - 1
    assert saturation(units) == pytest.approx(float(full), abs=1.01 * 10**-decimals)


def test_speed_through_the_skin() -> None:
    """The same: 2.936e-4 m/s for 3 mm at 0.25 m/s and 10 °C."""
    assert agrees(transfer_velocity_higbie(diffusivity(TEN), 0.25, 3e-3) * 1e4, "2.936")


def test_a_rising_bubble_in_steps() -> None:
    """scipy's integrator on one bubble: what crosses its skin stays in it."""
    speed, depth, rise, diameter, held = 2e-4, 0.4, 0.25, 3e-3, 2.856

    def filling(_: float, inside: np.ndarray) -> np.ndarray:
        return 6 / diameter * speed * (1 - inside / held)

    run = solve_ivp(filling, (0, depth / rise), [0.0], rtol=1e-10, atol=1e-12)
    full = saturation(transfer_units(speed, depth, rise, diameter, held))
    assert run.y[0][-1] / held == pytest.approx(full, rel=1e-7)


def test_a_stiff_skin_is_several_times_slower() -> None:
    """[alves-2005] by order of magnitude: stiff is a fifth to a tenth of clean at 1 to 5 mm."""
    for diameter in (1e-3, 3e-3, 5e-3):
        clean = transfer_velocity_higbie(diffusivity(TEN), RISE, diameter)
        stiff = transfer_velocity_froessling(diffusivity(TEN), RISE, diameter, 1.306e-6)
        assert 0.1 < stiff / clean < 0.2


def test_a_still_bubble_is_left_with_conduction() -> None:
    """Langmuir's limit: Sherwood number 2 when nothing moves."""
    assert transfer_velocity_froessling(1e-9, 1e-15, 2e-3, 1e-6) == pytest.approx(1e-6, rel=1e-3)


sizes, depths, skins = st.floats(1e-3, 20e-3), st.floats(0.01, 3.0), st.floats(0.1, 1.0)


@steady
@given(st.floats(274.15, 308.15), depths, sizes, skins)
def test_deeper_finer_and_cleaner_fills_more(
    temperature: float, depth: float, diameter: float, skin: float
) -> None:
    """The mass balance: between nothing and full, and each helps."""
    full = bubble(temperature, depth, diameter, skin).saturation
    assert 0 < full < 1
    assert bubble(temperature, 1.1 * depth, diameter, skin).saturation >= full
    assert bubble(temperature, depth, 0.9 * diameter, skin).saturation >= full
    assert bubble(temperature, depth, diameter, 1.1 * skin).saturation >= full
