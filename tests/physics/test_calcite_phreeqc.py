"""Acid water and scale against PHREEQC 3, which has ion pairs and another activity model.

How near they must be: what leaving out ion pairs costs, told in the module and the chapter.
"""

import pytest

from calc.physics.calcite import (
    CALCITE,
    CAUSTIC,
    MAGNESIA,
    SODA_ASH,
    Water,
    ccpp,
    dissolved_to,
    dose_for_ph,
    heated,
    magnesia_rest,
    stripped,
    vented,
    water_of_ph,
    with_base,
)
from calc.physics.carbonate import CACO3_EQUIVALENT, co2_at_rest
from calc.physics.granular_bed import MEDIA
from calc.physics.neutralizer import grain_surface, passage
from calc.physics.radon_solubility import ICE_POINT
from calc.physics.water_report import strength_of_solids
from tests.physics import phreeqc
from tests.physics.phreeqc import Sheet
from tests.physics.waters import EVERY, NEW, ORDINARY

AIR = -3.4  # log10 of the pressure of carbon dioxide in it, atm
HARD = 150  # alkalinity, mg/L, from which ion pairs count
every_water = pytest.mark.parametrize("sheet", EVERY.values(), ids=EVERY)
ordinary = pytest.mark.parametrize("sheet", ORDINARY.values(), ids=ORDINARY)
acid = pytest.mark.parametrize(
    "sheet", [sheet for sheet in EVERY.values() if sheet.ph < 7], ids=lambda sheet: str(sheet[1:4])
)


def ours(sheet: Sheet) -> Water:
    """The same water, mol/m³, with its ionic strength summed over the ions."""
    charge = sheet.alkalinity * 1e-3 / CACO3_EQUIVALENT
    moles = {
        "calcium": (sheet.calcium / 40.078, 2),
        "magnesium": (sheet.magnesium / 24.305, 2),
        "sodium": (sheet.sodium / 22.98977, 1),
        "chloride": (sheet.chloride / 35.453, 1),
        "sulfate": (sheet.sulfate / 96.06, 2),
    }
    strength = (charge + sum(amount * charges**2 for amount, charges in moles.values())) / 2
    kelvin = sheet.celsius + ICE_POINT
    return water_of_ph(sheet.ph, charge, moles["calcium"][0], kelvin, strength)


def test_there_are_waters_enough() -> None:
    """What was asked of this comparison: twenty waters, seven of them new."""
    assert len(EVERY) >= 20
    assert len(NEW) == 7
    assert not set(NEW.values()) & set(ORDINARY.values())


@every_water
def test_raw_water(sheet: Sheet) -> None:
    """PHREEQC: carbon dioxide within 2.5 %, carbon within 1 %, saturation index within 0.04."""
    water, theirs = ours(sheet), phreeqc.asked(sheet)
    assert water.state().co2 == pytest.approx(1e3 * theirs.co2, rel=0.025)
    assert water.dic == pytest.approx(1e3 * theirs.dic, rel=0.01)
    assert water.saturation() == pytest.approx(theirs.si, abs=0.04)


@every_water
def test_at_rest_with_calcite(sheet: Sheet) -> None:
    """PHREEQC: what dissolves or falls out within 1 mg/L and 2 %, 3.5 in hard water; pH 0.04."""
    water, theirs = ours(sheet), phreeqc.calcite(sheet)
    dissolved = 1e3 * (theirs.calcium - phreeqc.asked(sheet).calcium) * CALCITE.molar
    near = 3.5e-3 if sheet.alkalinity >= HARD else 1e-3 + 0.02 * abs(dissolved)
    assert -ccpp(water) == pytest.approx(dissolved, abs=near)
    rested = with_base(water, CALCITE, dissolved_to(water))
    assert rested.state().ph == pytest.approx(theirs.ph, abs=0.04)


@acid
def test_short_of_rest(sheet: Sheet) -> None:
    """PHREEQC: at an index of -0.5, as water leaves a bed, pH within 0.04."""
    water = ours(sheet)
    short = with_base(water, CALCITE, dissolved_to(water, index=-0.5))
    assert short.state().ph == pytest.approx(phreeqc.calcite(sheet, -0.5).ph, abs=0.04)


@every_water
def test_vented(sheet: Sheet) -> None:
    """PHREEQC: at rest with air pH within 0.05 and index within 0.06, in hard water 0.15."""
    water, theirs = ours(sheet), phreeqc.vented(sheet, AIR)
    airy = vented(water, co2_at_rest(water.temperature, 10**AIR))
    assert airy.state().ph == pytest.approx(theirs.ph, abs=0.05)
    near = 0.15 if sheet.alkalinity >= HARD else 0.06
    assert airy.saturation() == pytest.approx(theirs.si, abs=near)


@acid
def test_stripped_then_calcite(sheet: Sheet) -> None:
    """PHREEQC: four fifths gone, pH within 0.02; then calcite to rest, pH within 0.05."""
    water = stripped(ours(sheet), 0.8)
    assert water.state().ph == pytest.approx(phreeqc.stripped(sheet, 0.8).ph, abs=0.02)
    theirs = phreeqc.stripped(sheet, 0.8, "Calcite 0 10")
    rested = with_base(water, CALCITE, dissolved_to(water))
    assert rested.state().ph == pytest.approx(theirs.ph, abs=0.05)
    assert rested.calcium == pytest.approx(1e3 * theirs.calcium, abs=0.01 + 0.01 * rested.calcium)


@every_water
def test_heated(sheet: Sheet) -> None:
    """PHREEQC: at 60 °C pH within 0.06 and index within 0.10."""
    water, theirs = heated(ours(sheet), 60 + ICE_POINT), phreeqc.heated(sheet, 60)
    assert water.state().ph == pytest.approx(theirs.ph, abs=0.06)
    assert water.saturation() == pytest.approx(theirs.si, abs=0.10)


@acid
@pytest.mark.parametrize("target", [7.0, 7.5, 8.0])
def test_doses(sheet: Sheet, target: float) -> None:
    """PHREEQC: our dose of each base brings its water to the pH within 0.05; at 8, where a little
    moves it far, within 0.15."""
    water = ours(sheet)
    formulas = {"CaCO3": CALCITE, "MgO": MAGNESIA, "Na2CO3": SODA_ASH, "NaOH": CAUSTIC}
    for formula, base in formulas.items():
        amount = dose_for_ph(water, base, target)
        theirs = phreeqc.dosed(sheet, formula, amount * 1e-3)
        near = 0.05 if target < 8 else 0.15
        assert theirs.ph == pytest.approx(target, abs=near), formula


@pytest.mark.parametrize("milligrams", [12, 15, 20, 25])
@acid
def test_magnesia_overshoots(sheet: Sheet, milligrams: float) -> None:
    """PHREEQC: pH with magnesia within 0.05 up to 8, within 0.25 above, where pairs count."""
    amount = milligrams * 1e-3 / MAGNESIA.molar
    mine = with_base(ours(sheet), MAGNESIA, amount).state().ph
    theirs = phreeqc.dosed(sheet, "MgO", amount * 1e-3).ph
    assert mine == pytest.approx(theirs, abs=0.05 if theirs < 8 else 0.25)


@acid
def test_over_magnesia(sheet: Sheet) -> None:
    """PHREEQC with brucite of its file wateq4f: the highest pH within 0.2."""
    mine = magnesia_rest(ours(sheet)).state().ph
    assert mine == pytest.approx(phreeqc.over_magnesia(sheet).ph, abs=0.2)


@acid
@pytest.mark.parametrize("minutes", [0.5, 1, 2, 3])
def test_through_a_bed(sheet: Sheet, minutes: float) -> None:
    """PHREEQC's own integration of the rate of [plummer-1978]: pH within 0.05, alkalinity within
    1 % and 1 mg/L."""
    medium = MEDIA["calcite"]
    surface = grain_surface(0.7e-3, medium)
    bed = passage(ours(sheet), CALCITE, surface)
    assert bed
    mine = bed.water(60 * minutes)
    theirs = phreeqc.through_bed(sheet, surface, medium.porosity, 60 * minutes)
    assert mine.state().ph == pytest.approx(theirs.ph, abs=0.05)
    near = 0.02 + 0.01 * mine.alkalinity
    assert mine.alkalinity == pytest.approx(1e3 * theirs.alkalinity, abs=near)


@ordinary
def test_ionic_strength_from_solids(sheet: Sheet) -> None:
    """PHREEQC: the rule of [langelier-1936] within 40 %, and the index it gives within 0.03."""
    bicarbonate = 1.2192 * sheet.alkalinity
    solids = bicarbonate * 0.49 + sum(sheet[3:])  # half of the bicarbonate leaves when dried
    strength = strength_of_solids(solids * 1e-3)
    assert strength == pytest.approx(1e3 * phreeqc.asked(sheet).strength, rel=0.4)
    water = ours(sheet)
    rough = water_of_ph(sheet.ph, water.alkalinity, water.calcium, water.temperature, strength)
    assert rough.saturation() == pytest.approx(water.saturation(), abs=0.03)
