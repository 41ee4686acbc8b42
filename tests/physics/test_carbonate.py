"""The carbonate system against PHREEQC, its data file, printed constants, and itself."""

from math import log10
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from phreeqpython import PhreeqPython
from scipy.optimize import brentq

from calc.figures import agrees
from calc.physics.carbonate import (
    CACO3_EQUIVALENT,
    CO2_MOLAR,
    activity,
    air_to_water_co2,
    co2_at_rest,
    co2_diffusivity,
    constants,
    from_co2,
    from_dic,
    from_ph,
    log_calcite,
    log_first,
    log_henry,
    log_second,
    log_water,
    saturation_index,
)
from tests.model.given import steady

CELSIUS = 273.15
# °C, pH, then mg/L: alkalinity as CaCO3, Ca, Mg, Na, Cl, SO4. Soft and acid to hard.
WATERS = [
    (10, 6.2, 20, 6, 1.5, 6, 8, 6),
    (8, 5.6, 8, 3, 0.8, 5, 9, 5),
    (12, 6.8, 60, 18, 4, 10, 12, 10),
    (12, 7.4, 250, 90, 18, 12, 20, 30),
    (10, 7.8, 120, 40, 8, 10, 10, 20),
    (15, 7.2, 180, 60, 15, 25, 30, 40),
    (5, 6.3, 40, 14, 3, 5, 6, 8),
    (20, 6.5, 100, 30, 8, 12, 15, 18),
]
every_water = pytest.mark.parametrize("sheet", WATERS, ids=[str(sheet) for sheet in WATERS])
type Sheet = tuple[float, ...]
phs, alkalinities = st.floats(4.5, 9.5), st.floats(0.05, 10)
temperatures, strengths = st.floats(273.15, 313.15), st.floats(0, 40)


@pytest.fixture(scope="module")
def phreeqc() -> PhreeqPython:
    return PhreeqPython(database="phreeqc.dat")


def moles(mg_as_caco3: float) -> float:
    return mg_as_caco3 * 1e-3 / CACO3_EQUIVALENT


def theirs(phreeqc: PhreeqPython, sheet: Sheet) -> Any:
    celsius, ph, alkalinity, calcium, magnesium, sodium, chloride, sulfate = sheet
    return phreeqc.add_solution(
        {
            "units": "mg/L",
            "temp": celsius,
            "pH": ph,
            "Alkalinity": f"{alkalinity} as CaCO3",
            "Ca": calcium,
            "Mg": magnesium,
            "Na": sodium,
            "Cl": f"{chloride} charge",
            "S(6)": f"{sulfate} as SO4",
        }
    )


@pytest.mark.parametrize(
    ("celsius", "henry", "first", "second", "water"),
    [
        (5, "-1.1921", "-6.5163", "-10.5544", "-14.7322"),
        (10, "-1.2694", "-6.4633", "-10.4879", "-14.5338"),
        (15, "-1.3408", "-6.4188", "-10.4284", "-14.3461"),
        (20, "-1.4069", "-6.3819", "-10.3756", "-14.1682"),
        (25, "-1.4679", "-6.3519", "-10.3289", "-13.9995"),
    ],
)
def test_constants_as_printed(
    celsius: float, henry: str, first: str, second: str, water: str
) -> None:
    """Worked beforehand by another program."""
    t = celsius + CELSIUS
    found = (log_henry(t), log_first(t), log_second(t), log_water(t))
    for value, printed in zip(found, (henry, first, second, water), strict=True):
        assert agrees(value, printed)


@pytest.mark.parametrize("celsius", range(2, 31, 4))
def test_constants_against_phreeqc(phreeqc: PhreeqPython, celsius: float) -> None:
    """PHREEQC's own, by the activities in a water it has worked out."""
    t = celsius + CELSIUS
    water = phreeqc.add_solution(
        {"units": "mmol/kgw", "temp": celsius, "pH": 8.0, "Alkalinity": 1, "Ca": 0.2}
    )
    acid = -water.pH
    co2, bicarbonate, carbonate, hydroxide = (
        log10(water.activity(name, units="mol")) for name in ("CO2", "HCO3-", "CO3-2", "OH-")
    )
    assert log_first(t) == pytest.approx(acid + bicarbonate - co2, abs=2e-3)
    assert log_second(t) == pytest.approx(acid + carbonate - bicarbonate, abs=2e-3)
    assert log_water(t) == pytest.approx(acid + hydroxide, abs=7e-3)
    assert log_henry(t) == pytest.approx(co2 - water.si("CO2(g)"), abs=4e-3)
    product = log10(water.activity("Ca+2", units="mol")) + carbonate
    assert log_calcite(t) == pytest.approx(product - water.si("Calcite"), abs=2e-3)


def test_activity_as_printed() -> None:
    """Worked beforehand: 0.9318 and 0.7537 at 0.0045 mol/L and 10 °C."""
    assert agrees(activity(1, 4.5, 283.15), "0.9318")
    assert agrees(activity(2, 4.5, 283.15), "0.7537")
    assert activity(1, 0.0, 283.15) == 1.0


@every_water
def test_carbon_dioxide_against_phreeqc(phreeqc: PhreeqPython, sheet: Sheet) -> None:
    """PHREEQC with all its ions and pairs: within 2.5 % by either ionic strength."""
    celsius, ph, alkalinity, calcium, *_ = sheet
    water = theirs(phreeqc, sheet)
    t, alk = celsius + CELSIUS, moles(alkalinity)
    for strength in (water.I * 1000, 2 * alk):
        found = from_ph(ph, alk, t, strength)
        assert found.co2 == pytest.approx(water.species["CO2"] * 1000, rel=0.025)
        assert found.dic == pytest.approx(water.total_element("C", units="mmol"), rel=0.01)
        index = saturation_index(found, calcium / 40.078, t, strength)
        assert index == pytest.approx(water.si("Calcite"), abs=0.04)


@every_water
@pytest.mark.parametrize("removed", [0.5, 0.8, 0.9, 0.95])
def test_stripping_against_phreeqc(phreeqc: PhreeqPython, sheet: Sheet, removed: float) -> None:
    """PHREEQC takes carbon dioxide out until so much is gone: pH within 0.01, 0.025 over pH 8."""
    celsius, ph, alkalinity, *_ = sheet
    water = theirs(phreeqc, sheet)
    t, alk = celsius + CELSIUS, moles(alkalinity)
    mine = from_ph(ph, alk, t, 2 * alk)
    mine = from_co2(mine.co2 * (1 - removed), alk, t, 2 * alk)

    def stripped(amount: float) -> Any:
        copy = water.copy()
        copy.add("CO2", -amount, "mmol")
        return copy

    wanted = (1 - removed) * water.species["CO2"]
    most = water.total_element("C", units="mmol") * 0.999
    amount = brentq(lambda x: stripped(x).species["CO2"] - wanted, 0.0, most, xtol=1e-9)
    assert mine.ph == pytest.approx(stripped(amount).pH, abs=0.01 if mine.ph < 8 else 0.025)


def test_stripped_waters_as_printed() -> None:
    """Worked beforehand by another program: carbon dioxide before and after, mg/L, and pH."""
    for celsius, ph, alkalinity, removed, before, after, printed in (
        (10, 6.2, 40, 0.90, 64.55, 7.35, 7.143),
        (10, 6.2, 40, 0.95, 64.55, 4.17, 7.389),
        (10, 6.0, 25, 0.80, 64.0, 13.6, 6.672),
        (12, 6.5, 100, 0.90, 77.4, 8.58, 7.455),
        (10, 7.2, 180, 0.90, 29.0, 3.80, 8.080),
        (15, 6.3, 60, 0.85, 69.4, 11.1, 7.094),
    ):
        t, alk = celsius + CELSIUS, moles(alkalinity)
        water, rest = from_ph(ph, alk, t), co2_at_rest(t, 420e-6)
        assert water.co2 * CO2_MOLAR * 1000 == pytest.approx(before, rel=0.01)
        left = rest + (water.co2 - rest) * (1 - removed)
        assert left * CO2_MOLAR * 1000 == pytest.approx(after, rel=0.01)
        assert from_co2(left, alk, t).ph == pytest.approx(printed, abs=0.02)


def test_water_at_rest_with_air_against_phreeqc(phreeqc: PhreeqPython) -> None:
    """PHREEQC in equilibrium with outdoor air; pH 6.2, alkalinity 40, 10 °C."""
    alk = moles(40)
    found = from_co2(co2_at_rest(283.15, 420e-6), alk, 283.15, 2 * alk).ph
    water = phreeqc.add_solution(
        {"temp": 10, "pH": 6.2, "Alkalinity": "40 as CaCO3", "Na": "18 charge", "units": "mg/L"}
    )
    water.equalize(["CO2(g)"], [log10(420e-6)])
    assert found == pytest.approx(water.pH, abs=0.01)


def test_gas_between_air_and_water_as_printed() -> None:
    """Worked beforehand: 0.682 to 1.201 at 5 to 25 °C; 1.0 mg/L at 10 °C outdoors."""
    for celsius, printed in ((5, 0.682), (10, 0.800), (15, 0.927), (20, 1.061), (25, 1.201)):
        assert air_to_water_co2(celsius + CELSIUS) == pytest.approx(printed, rel=3e-3)
    assert agrees(co2_at_rest(283.15, 420e-6) * CO2_MOLAR * 1000, "1.0")


@pytest.mark.parametrize(
    ("celsius", "printed"),
    [(10, 1.26), (15, 1.45), (20, 1.67), (25, 1.91), (30, 2.17), (35, 2.47)],
)
def test_diffusivity_as_printed(celsius: float, printed: float) -> None:
    """[crc-gases]: the table, within 1 %."""
    assert co2_diffusivity(celsius + CELSIUS) * 1e9 == pytest.approx(printed, rel=0.01)


@steady
@given(phs, alkalinities, temperatures, strengths)
def test_there_and_back(ph: float, alkalinity: float, t: float, strength: float) -> None:
    """By reason: pH from carbon dioxide, and from all carbon, is the pH that made them."""
    water = from_ph(ph, alkalinity, t, strength)
    if water.bicarbonate <= 0:
        return
    assert from_co2(water.co2, alkalinity, t, strength).ph == pytest.approx(ph, abs=1e-9)
    assert from_dic(water.dic, alkalinity, t, strength).ph == pytest.approx(ph, abs=1e-9)


@steady
@given(phs, alkalinities, temperatures, strengths)
def test_charge_is_balanced(ph: float, alkalinity: float, t: float, strength: float) -> None:
    """The definition of alkalinity: bicarbonate, carbonate twice, hydroxide, less acid."""
    water, k = from_ph(ph, alkalinity, t, strength), constants(t, strength)
    h = 10**-ph * 1000
    charge = water.bicarbonate + 2 * water.carbonate + k.water / h - h / k.single
    assert charge == pytest.approx(alkalinity, rel=1e-9)


@steady
@given(phs, alkalinities, temperatures, st.floats(0.05, 0.99))
def test_less_carbon_dioxide_is_a_higher_ph(
    ph: float, alkalinity: float, t: float, share: float
) -> None:
    """By reason, and: under pH 8 halving it is worth log10(2)."""
    water = from_ph(ph, alkalinity, t)
    if water.bicarbonate <= 0:
        return
    stripped = from_co2(water.co2 * share, alkalinity, t)
    assert stripped.ph > ph
    if ph > 6 and stripped.ph < 8 and alkalinity > 0.5:
        assert stripped.ph - ph == pytest.approx(-log10(share), abs=0.02)
