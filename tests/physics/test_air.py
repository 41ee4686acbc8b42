"""Air against CoolProp, iapws and the standard atmosphere of the fluids library."""

import fluids
import iapws
import pytest
from CoolProp.HumidAirProp import HAPropsSI
from hypothesis import given
from hypothesis import strategies as st

from calc.physics import air
from calc.units import atm, ft
from tests.model.given import steady

temperatures = st.floats(243.15, 305.15)


@steady
@given(temperatures, st.floats(65e3, 104e3))
def test_humidity_against_coolprop(temperature: float, pressure: float) -> None:
    """CoolProp's humid air, a real gas: it carries 0.3 to 0.6 % more than an ideal one."""
    theirs = HAPropsSI("W", "T", temperature, "P", pressure, "R", 1)
    assert 0.994 < air.humidity(temperature, pressure) / theirs < 0.998


@steady
@given(temperatures, st.floats(65e3, 104e3))
def test_density_against_coolprop(temperature: float, pressure: float) -> None:
    """CoolProp's humid air, saturated and dry, within 0.15 %."""
    for damp in (0.0, 1.0):
        theirs = 1 / HAPropsSI("Vha", "T", temperature, "P", pressure, "R", damp)
        water = damp * air.humidity(temperature, pressure)
        assert air.density(temperature, pressure, water) == pytest.approx(theirs, rel=1.5e-3)


@steady
@given(temperatures, st.floats(65e3, 104e3))
def test_viscosity_against_coolprop(temperature: float, pressure: float) -> None:
    """CoolProp's humid air: dry within 0.5 %, saturated, warm and high up within 2 %."""
    for damp, close in ((0.0, 0.005), (1.0, 0.02)):
        theirs = HAPropsSI("mu", "T", temperature, "P", pressure, "R", damp)
        assert air.viscosity(temperature) == pytest.approx(theirs, rel=close)


@steady
@given(st.floats(220, 273.15))
def test_vapour_over_ice(temperature: float) -> None:
    """The iapws library: [iapws-ice] by another hand."""
    theirs = iapws._iapws._Sublimation_Pressure(temperature) * 1e6
    assert air.saturation_pressure(temperature) == pytest.approx(theirs, rel=1e-9)


def test_no_step_where_water_freezes() -> None:
    """By reason: at the triple point ice and water hold the same vapour."""
    below, above = (air.saturation_pressure(273.16 + d) for d in (-1e-6, 1e-6))
    assert below == pytest.approx(above, rel=1e-5)


@steady
@given(st.floats(0, 12000))
def test_pressure_of_the_standard_atmosphere(feet: float) -> None:
    """[us-standard-1976] as the fluids library has it, which counts geopotential height."""
    theirs = fluids.ATMOSPHERE_1976(feet * ft).P
    assert air.pressure(feet * ft) == pytest.approx(theirs, rel=5e-4)


def test_humidity_as_printed() -> None:
    """Worked beforehand: 7.66 g/kg at 10 °C, 1.61 at -10 °C, by CoolProp, rounded."""
    assert air.humidity(283.15, atm) == pytest.approx(0.00766, rel=0.005)
    assert air.humidity(263.15, atm) == pytest.approx(0.00161, rel=0.008)
