"""Radon between water and air, held against printed figures and against each other."""

from math import log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.radon_solubility import (
    GAS_CONSTANT,
    ICE_POINT,
    air_to_water,
    diffusivity,
    ostwald_clever,
    ostwald_schubert,
    ostwald_weigel,
    spread,
)
from calc.units import atm
from tests.model.given import steady

# °C, then the three ratios, worked with scipy apart from this code
TABLE = [
    (0, ".5100", ".5144", ".5246"),
    (5, ".4201", ".4183", ".4284"),
    (10, ".3502", ".3461", ".3563"),
    (15, ".2957", ".2912", ".3015"),
    (20, ".2534", ".2488", ".2592"),
    (25, ".2205", ".2156", ".2262"),
    (30, ".1948", ".1895", ".2003"),
]


@pytest.mark.parametrize(("celsius", "weigel", "schubert", "clever"), TABLE)
def test_three_formulas(celsius: float, weigel: str, schubert: str, clever: str) -> None:
    """A table worked beforehand by another program."""
    temperature = celsius + ICE_POINT
    assert agrees(ostwald_weigel(temperature), weigel)
    assert agrees(ostwald_schubert(temperature), schubert)
    assert agrees(ostwald_clever(temperature), clever)


def test_weigel_at_ten_degrees() -> None:
    """[weigel-1978] as quoted: around 0.35."""
    assert agrees(ostwald_weigel(283.15), "0.35")
    assert agrees(air_to_water(283.15), "2.856")


def test_clever_against_the_compilation() -> None:
    """[sander-2023]: 9.1e-5 mol/(m³ Pa) at 25 °C."""
    assert agrees(ostwald_clever(298.15) / (GAS_CONSTANT * 298.15) * 1e5, "9.1")


def test_clever_falls_as_the_compilation_says() -> None:
    """[sander-2023]: d ln H / d(1/T) is 2600 K at 25 °C, printed to two figures."""

    def solubility(temperature: float) -> float:
        return ostwald_clever(temperature) / temperature

    low, high = 297.65, 298.65
    slope = log(solubility(low) / solubility(high)) / (1 / low - 1 / high)
    assert round(slope, -2) == pytest.approx(2600, abs=100)


def test_solubility_in_volumes() -> None:
    """A table of the CRC kind, second-hand: 51.0 mL in 100 mL at 0 °C, 22.4 at 25 °C.

    All three formulas lie within 4 % of both figures.
    """
    for celsius, printed in ((0.0, 0.510), (25.0, 0.224)):
        for formula in (ostwald_weigel, ostwald_schubert, ostwald_clever):
            assert formula(celsius + ICE_POINT) == pytest.approx(printed, rel=0.04)


@steady
@given(st.floats(274.15, 308.15))
def test_the_formulas_stay_together(temperature: float) -> None:
    """By the table: 2.4 % to 6 % apart from 1 to 35 °C, and less dissolves in warmer water."""
    assert 0.02 < spread(temperature) < 0.075
    for formula in (ostwald_weigel, ostwald_schubert, ostwald_clever):
        assert formula(temperature + 0.1) < formula(temperature)


@pytest.mark.parametrize(
    ("celsius", "printed"),
    [(10, 0.81), (15, 0.96), (20, 1.13), (25, 1.33), (30, 1.55), (35, 1.80)],
)
def test_diffusivity(celsius: float, printed: float) -> None:
    """[crc-gases], radon in water after [jahne-1987], 1e-5 cm²/s: within 1 %."""
    assert diffusivity(celsius + ICE_POINT) * 1e9 == pytest.approx(printed, rel=0.01)


def test_henry_constant_of_old_designs() -> None:
    """2 260 atm a mole fraction, as US designs of the 1990s have it, is the value of ice water:
    at 20 °C radon is stripped 2.3 times as easily."""
    moles = 55_400.0
    old = 2260 * atm / (moles * GAS_CONSTANT * 293.15)
    assert agrees(1 / ostwald_clever(293.15) / old, "2.3")
