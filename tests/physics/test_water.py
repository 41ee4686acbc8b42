"""Water against another implementation of the same releases and against printed figures."""

import pytest
from iapws import IAPWS97
from iapws._iapws import _Liquid
from iapws.iapws95 import IAPWS95

from calc.figures import agrees
from calc.physics.water import density, vapour_pressure, viscosity

COLD_TO_HOT = [273.16, 278.15, 283.15, 288.15, 293.15, 298.15, 303.15, 333.15, 363.15]


@pytest.mark.parametrize("temperature", COLD_TO_HOT)
def test_density_and_viscosity_of_the_release(temperature: float) -> None:
    """[iapws-liquid] as the iapws library has it."""
    other = _Liquid(temperature)
    assert density(temperature) == pytest.approx(other["rho"], rel=1e-12)
    assert viscosity(temperature) == pytest.approx(other["mu"], rel=1e-12)


@pytest.mark.parametrize("temperature", COLD_TO_HOT)
def test_density_and_viscosity_of_other_formulations(temperature: float) -> None:
    """IAPWS-IF97 of the iapws library, made for steam plants and fitted anew."""
    other = IAPWS97(T=temperature, P=0.1)
    assert density(temperature) == pytest.approx(other.rho, rel=5e-5)
    assert viscosity(temperature) == pytest.approx(other.mu, rel=2e-3)


@pytest.mark.parametrize("temperature", COLD_TO_HOT)
def test_vapour_pressure(temperature: float) -> None:
    """[iapws-sat] as the iapws library has it, and IAPWS-IF97's own equation."""
    assert vapour_pressure(temperature) == pytest.approx(
        IAPWS95._Vapor_Pressure(temperature) * 1e6, rel=1e-12
    )
    assert vapour_pressure(temperature) == pytest.approx(
        IAPWS97(T=temperature, x=0).P * 1e6, rel=5e-4
    )


def test_printed_figures() -> None:
    """[iapws-liquid], values for checking at 298.15 K: 889.997 µPa s; water at 4 degC: 999.97."""
    assert agrees(viscosity(298.15) * 1e6, "890.0")
    assert agrees(density(277.13), "999.97")


def test_a_third_more_in_winter() -> None:
    """Viscosities of 1.52 and 1.14 mPa s, from memory of any table: 33 % more at 5 degC."""
    assert agrees(viscosity(278.15) * 1e3, "1.52")
    assert agrees(viscosity(288.15) * 1e3, "1.14")
    assert agrees(viscosity(278.15) / viscosity(288.15), "1.33")
