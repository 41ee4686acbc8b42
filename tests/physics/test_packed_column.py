"""The packed column: worked cases, the integral over the column, air from another library."""

import pytest
from fluids.atmosphere import ATMOSPHERE_1976
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from calc.figures import agrees
from calc.physics.air import viscosity as air_viscosity
from calc.physics.packed_column import (
    Packing,
    air_density,
    air_diffusivity,
    column_onda,
    left_column,
    surface_tension,
    transfer_units,
)
from calc.units import atm, gpm, inch
from tests.model.given import steady

RINGS_25, RINGS_38 = Packing(206.0, 0.025), Packing(128.0, 0.038)


def test_first_worked_column() -> None:
    """Worked beforehand: 6 in, 5 gpm, 10 °C, 30 parts of air, 25 mm rings."""
    column = column_onda(5 * gpm, 150 * gpm, 283.15, 6 * inch, RINGS_25)
    assert agrees(column.water_load, "17.288")
    assert agrees(column.air_load, "0.647")
    assert column.wetted == pytest.approx(0.5042, rel=0.001)
    assert column.rate == pytest.approx(1.504e-2, rel=0.001)
    assert column.unit_height == pytest.approx(1.150, rel=0.001)
    for left, units, height in ((0.1, "2.319", 2.67), (0.01, "4.648", 5.34), (1e-3, "6.977", 8.02)):
        found = transfer_units(85.68, left)
        assert agrees(found, units)
        assert found * column.unit_height == pytest.approx(height, rel=0.002)
    assert 0.002 < column.air_side < 0.006


def test_second_worked_column() -> None:
    """Worked beforehand: 8 in, 7 gpm, 15 °C, 15 parts of air, 38 mm rings."""
    column = column_onda(7 * gpm, 105 * gpm, 288.15, 8 * inch, RINGS_38)
    assert agrees(column.water_load, "13.606")
    assert agrees(column.air_load, "0.250")
    assert column.wetted == pytest.approx(0.5373, rel=0.001)
    assert column.rate == pytest.approx(1.3302e-2, rel=0.001)
    assert column.unit_height == pytest.approx(1.024, rel=0.001)
    assert 0.003 < column.air_side < 0.0065


@pytest.mark.parametrize(
    ("factor", "ratio", "units"),
    [(5, 100, "5.4807"), (3, 20, "3.9224"), (2, 10, "3.4095"), (20, 100, "4.7941"),
     (57.12, 1000, "7.0129")],
)  # fmt: skip
def test_transfer_units(factor: float, ratio: float, units: str) -> None:
    """Worked beforehand."""
    assert agrees(transfer_units(factor, 1 / ratio), units)


@steady
@given(st.floats(1.02, 200), st.floats(1e-4, 0.9))
def test_transfer_units_are_the_integral(factor: float, left: float) -> None:
    """scipy's integral of dx / (x - y / H′) over the column, clean air at its foot."""
    found, _ = quad(lambda x: 1 / (x - (x - left) / factor), left, 1, epsrel=1e-10, limit=500)
    assert transfer_units(factor, left) == pytest.approx(found, rel=1e-6)
    assert left_column(factor, transfer_units(factor, left)) == pytest.approx(left, rel=1e-9)


def test_as_much_air_as_it_takes() -> None:
    """The limit at S = 1, and under it: no height leaves less than 1 - S."""
    assert transfer_units(1.0, 0.2) == pytest.approx(4.0)
    assert transfer_units(1 + 1e-7, 0.2) == pytest.approx(4.0, rel=1e-5)
    assert left_column(1.0, 4.0) == pytest.approx(0.2)
    assert left_column(0.5, 1e6) == pytest.approx(0.5)
    assert left_column(50.0, 1e6) == 0.0
    with pytest.raises(ValueError, match=r"math domain error|expected a"):
        transfer_units(0.5, 0.4)


@steady
@given(st.floats(0.01, 1e3), st.floats(0.01, 50))
def test_left_falls_with_air_and_height(factor: float, units: float) -> None:
    """By reason: a share; more height and more air never leave more."""
    left = left_column(factor, units)
    assert 0 <= left < 1
    assert left_column(factor, 1.1 * units) <= left * (1 + 1e-12)
    assert left_column(1.1 * factor, units) <= left * (1 + 1e-12)


def test_surface_tension() -> None:
    """A steam table printed in 1984: 74.22 mN/m at 10 °C, 72.74 at 20, 71.20 at 30."""
    for celsius, printed in ((10, 74.22), (20, 72.74), (30, 71.20)):
        assert surface_tension(celsius + 273.15) * 1e3 == pytest.approx(printed, abs=0.02)


def test_air() -> None:
    """The fluids library: U.S. Standard Atmosphere at the ground."""
    for temperature in (274.15, 283.15, 303.15):
        viscosity = ATMOSPHERE_1976.viscosity(temperature)
        assert air_viscosity(temperature) == pytest.approx(viscosity, rel=1e-4)
        density = ATMOSPHERE_1976.density(temperature, atm)
        assert air_density(temperature) == pytest.approx(density, rel=1e-3)
    assert 1.1e-5 < air_diffusivity(293.15) < 1.25e-5  # published measurements, from memory


def test_small_packing_has_its_own_constant() -> None:
    """[onda-1968]: 2.00 in place of 5.23 for packing under 15 mm."""
    small, large = (
        column_onda(5 * gpm, 150 * gpm, 283.15, 6 * inch, Packing(206.0, size))
        for size in (0.01499, 0.01501)
    )
    resistance = (
        small.air_side / small.rate * small.wetted,
        large.air_side / large.rate * large.wetted,
    )
    assert resistance[0] / resistance[1] == pytest.approx(5.23 / 2.0, rel=0.01)
