"""The laboratory's sheet: worked figures, and charges counted by another way."""

from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.carbonate import CACO3_EQUIVALENT, CO2_MOLAR, from_co2, from_ph
from calc.physics.water_report import (
    CALCITE_FOR_CO2,
    IONS,
    Balance,
    allowed_difference,
    as_calcium_carbonate,
    balance,
    carbon_dioxide_lost,
    charges,
    dissolved_solids,
    hardness,
    ionic_strength,
    strength_of_conductivity,
    strength_of_solids,
)
from calc.units import L, gal, grain, mg, nitrate
from tests.model.given import steady

MG_L = mg / L
W1 = {"calcium": 6, "magnesium": 1.5, "sodium": 6, "alkalinity": 20, "chloride": 8, "sulfate": 6}
W5 = {"calcium": 40, "magnesium": 8, "sodium": 10, "alkalinity": 120, "chloride": 10, "sulfate": 20}


def sheet(water: Mapping[str, float]) -> dict[str, float]:
    return {name: figure * MG_L for name, figure in water.items()}


@pytest.mark.parametrize(
    ("name", "printed"), [("calcium", "2.4973"), ("magnesium", "4.1180"), ("manganese", "1.8218")]
)
def test_factors_to_calcium_carbonate(name: str, printed: str) -> None:
    """Atomic weights of IUPAC by hand, and what handbooks print: 2.497, 4.118, 1.822."""
    assert agrees(as_calcium_carbonate(name, 1.0), printed)


def test_other_conversions() -> None:
    """By hand from atomic weights and exact units: A1, A14 and the factors of nitrate."""
    assert agrees(grain / gal / MG_L, "17.118")
    assert agrees(CALCITE_FOR_CO2 * 30, "68.2")
    assert agrees(CACO3_EQUIVALENT * 1e3, "50.04")
    as_n = nitrate.unit("mg/L as NO3").into_si(50) / MG_L
    assert agrees(as_n, "11.3")
    assert agrees(nitrate.unit("mg/L as NO3").out_of_si(10 * MG_L), "44.3")


def test_hardness_of_calcium_and_magnesium() -> None:
    """Check A2, by hand: Ca 40, Mg 8 mg/L make 132.84 mg/L, 7.76 grains a gallon."""
    found = hardness(40 * MG_L, 8 * MG_L)
    assert agrees(found / MG_L, "132.84")
    assert agrees(found / (grain / gal), "7.76")


def test_balance_of_a_soft_water() -> None:
    """Check A3: cations 0.6838, anions 0.7502 meq/L, -4.63 %; PHREEQC says -4.65 %."""
    found = balance(sheet(W1))
    assert agrees(found.cations, "0.6838")
    assert agrees(found.anions, "0.7502")
    assert 100 * found.error == pytest.approx(-4.63, abs=0.02)
    assert abs(found.cations - found.anions) < allowed_difference(found)


def test_ionic_strength_and_its_guesses() -> None:
    """PHREEQC: 0.00449 mol/L for W5, 0.00098 for W1, a little lower for its ion pairs; the
    guesses by hand from 220 mg/L and 207 µS/cm."""
    assert ionic_strength(sheet(W5)) == pytest.approx(4.49, rel=0.04)
    assert ionic_strength(sheet(W5)) > 4.49
    assert ionic_strength(sheet(W1)) == pytest.approx(0.98, rel=0.02)
    assert agrees(strength_of_solids(220 * MG_L), "5.5")
    assert agrees(strength_of_conductivity(207e-4), "3.3")


def test_allowed_difference_steps() -> None:
    """[standard-methods] 1030 E: 0.2 up to 3, then 2 %, from 10 on 5 %."""
    assert allowed_difference(Balance(3.0, 3.0)) == 0.2
    assert allowed_difference(Balance(5.0, 5.0)) == pytest.approx(0.2)
    assert allowed_difference(Balance(20.0, 20.0)) == pytest.approx(2.0)


def test_solids_of_a_sheet() -> None:
    """By hand: 0.6 x 120 + 40 + 8 + 10 + 10 + 20 = 160, and 10 of silica."""
    assert dissolved_solids(sheet(W5), 10 * MG_L) / MG_L == pytest.approx(170)


concentrations = st.dictionaries(st.sampled_from(list(IONS)), st.floats(0.01, 500), min_size=1)


@steady
@given(concentrations)
def test_charges_by_moles(water: dict[str, float]) -> None:
    """By moles: half the sum of c z² is the ionic strength, and every charge is counted once."""
    moles = {n: x * MG_L / (IONS[n].equivalent * abs(IONS[n].charge)) for n, x in water.items()}
    found = balance(sheet(water))
    signed = sum(moles[n] * IONS[n].charge for n in moles)
    assert found.cations - found.anions == pytest.approx(signed, abs=1e-9)
    half = sum(moles[n] * IONS[n].charge ** 2 for n in moles) / 2
    assert ionic_strength(sheet(water)) == pytest.approx(half)


@steady
@given(concentrations)
def test_a_sheet_that_is_short_of_an_anion_is_mended_by_it(water: dict[str, float]) -> None:
    """By reason: the chloride that is missing brings the balance to naught."""
    found = balance(sheet(water))
    short = found.cations - found.anions
    if short > 0:
        more = sheet(water)
        more["chloride"] = more.get("chloride", 0.0) + short * IONS["chloride"].equivalent
        assert balance(more).error == pytest.approx(0, abs=1e-9)
        assert charges("chloride", more["chloride"]) >= short * (1 - 1e-12)


@steady
@given(st.floats(5.5, 7.0), st.floats(0.4, 4.0), st.floats(0.05, 0.95))
def test_carbon_dioxide_lost_by_the_carbonate_system(ph: float, alk: float, lost: float) -> None:
    """The whole carbonate system: take a share of the gas out and read the new pH."""
    water = from_ph(ph, alk, 283.15)
    after = from_co2(water.co2 * (1 - lost), alk, 283.15)
    if after.ph < 8:
        assert carbon_dioxide_lost(ph, after.ph) == pytest.approx(lost, abs=0.02)


def test_a_lab_ph_asks_for_a_quarter_of_the_stone() -> None:
    """Worked with PHREEQC: at 6.2 CO2 is 31.1 mg/L and takes 71 mg/L of stone; at 6.9 it is 6."""
    alk = 20 * MG_L / CACO3_EQUIVALENT
    field, lab = (from_ph(ph, alk, 283.15, 0.98).co2 * CO2_MOLAR / MG_L for ph in (6.2, 6.9))
    assert field == pytest.approx(31.1, rel=0.02)
    assert agrees(lab, "6")
    assert 1 - lab / field == pytest.approx(carbon_dioxide_lost(6.2, 6.9), abs=0.005)
