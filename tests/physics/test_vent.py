"""Ducts against the fluids library, blower power against CoolProp, and cases worked beforehand."""

from math import pi

import fluids
import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics import air
from calc.physics.pipe import ROUGHNESS_DRAWN
from calc.physics.vent import Duct, blower_power, blower_pressure, vent_loss, vent_velocity
from calc.units import atm, ft, hp, inch, inH2O, minute, psi
from tests.model.given import steady

CFM = ft**3 / minute
WARM = 293.15
BORES = {"1.5": 1.610, "2": 2.067, "3": 3.068, "4": 4.026}
# Inches of water in 100 ft, and ft/min, by the fluids library for dry air of 1.2046 kg/m³.
TABLE = [
    (30, "1.5", 4.971, 2122), (30, "2", 1.511, 1287), (30, "3", 0.2309, 584),
    (30, "4", 0.0636, 339), (50, "1.5", 12.31, 3537), (50, "2", 3.725, 2146),
    (50, "3", 0.5661, 974), (50, "4", 0.1553, 566), (75, "2", 7.663, 3218), (75, "3", 1.159, 1461),
    (75, "4", 0.3170, 848), (100, "2", 12.82, 4291), (100, "3", 1.932, 1948),
    (100, "4", 0.5273, 1131), (150, "3", 3.985, 2922), (150, "4", 1.084, 1697),
]  # fmt: skip


@pytest.mark.parametrize(("cfm", "nominal", "loss", "speed"), TABLE)
def test_table_of_ducts(cfm: float, nominal: str, loss: float, speed: float) -> None:
    """A table worked beforehand by the fluids library; damp air is 1 % lighter than its dry air."""
    bore = BORES[nominal] * inch
    found = vent_loss(cfm * CFM, Duct(100 * ft, bore, 0.0), WARM, atm)
    assert found / inH2O == pytest.approx(loss, rel=0.02)
    assert agrees(vent_velocity(cfm * CFM, bore) / (ft / minute), str(speed))


@pytest.mark.parametrize(
    ("cfm", "nominal", "length", "fittings", "loss"),
    [(50, "3", 30, 3, 0.347), (50, "2", 30, 3, 1.979), (100, "4", 45, 3.5, 0.517)],
)
def test_whole_vents(cfm: float, nominal: str, length: float, fittings: float, loss: float) -> None:
    """Worked beforehand by another program."""
    duct = Duct(length * ft, BORES[nominal] * inch, fittings)
    assert vent_loss(cfm * CFM, duct, WARM, atm) / inH2O == pytest.approx(loss, rel=0.03)


@steady
@given(
    st.floats(20, 200), st.floats(1.6, 6), st.floats(1, 200), st.floats(0, 20), st.floats(274, 303)
)
def test_vents_of_another_hand(
    cfm: float, bore: float, length: float, fittings: float, temperature: float
) -> None:
    """The fluids library, turbulent, with the same air."""
    speed = cfm * CFM * 4 / (pi * (bore * inch) ** 2)
    weight = air.density(temperature, atm, air.humidity(temperature, atm))
    reynolds = weight * speed * bore * inch / air.viscosity(temperature)
    if reynolds < 4000:
        return
    friction = fluids.friction_factor(
        Re=reynolds, eD=ROUGHNESS_DRAWN / (bore * inch), Method="Colebrook"
    )
    total = fluids.K_from_f(fd=friction, L=length * ft, D=bore * inch) + fittings
    theirs = fluids.dP_from_K(total, rho=weight, V=speed)
    found = vent_loss(cfm * CFM, Duct(length * ft, bore * inch, fittings), temperature, atm)
    assert found == pytest.approx(theirs, rel=1e-6)


def test_blower_power_as_printed() -> None:
    """Worked beforehand: 335 W or 0.4495 hp by air x inches / (6356 x efficiency); 209 W."""
    watts = blower_power(50 * CFM, 20 * inH2O, 0.35)
    assert watts == pytest.approx(335, rel=0.005)
    assert watts / hp == pytest.approx(50 * 20 / 6356 / 0.35, rel=3e-3)
    assert blower_power(100 * CFM, 8 * inH2O, 0.45) == pytest.approx(209, rel=0.005)


@pytest.mark.parametrize(("pressure", "over"), [(20 * inH2O, 0.017), (2 * psi, 0.05)])
def test_how_much_the_power_overstates(pressure: float, over: float) -> None:
    """CoolProp's air pressed without loss or heat: what the docstring says is left out."""
    start = {name: PropsSI(name, "T", WARM, "P", atm, "Air") for name in "SHD"}
    work = PropsSI("H", "S", start["S"], "P", atm + pressure, "Air") - start["H"]
    assert blower_power(1.0, pressure, 1.0) / (work * start["D"]) - 1 == pytest.approx(
        over, abs=4e-3
    )


@steady
@given(st.floats(0, 5), st.floats(0, 1e4), st.floats(0, 1e4), st.floats(0, 10))
def test_what_the_blower_must_give(
    depth: float, stones: float, vent: float, fouling: float
) -> None:
    """By hand: an inch of depth is an inch of water, and only stones and vent foul."""
    clean = blower_pressure(depth, stones, vent)
    assert clean == pytest.approx(depth / inch * inH2O + stones + vent, rel=1e-4, abs=1e-9)
    more = blower_pressure(depth, stones, vent, fouling) - clean
    assert more == pytest.approx(fouling * (stones + vent), rel=1e-9, abs=1e-7)
