"""Doses against the published recipes, and chlorine's chemistry against what others print."""

from math import log10, pi

import pytest

from calc.figures import agrees
from calc.physics.chlorine import (
    ASCORBIC,
    CHLORINE,
    acid_constant,
    ascorbic_acid,
    dry_dose,
    hypochlorous_share,
    level_given,
    liquid_dose,
)
from calc.physics.well import stored_volume
from calc.units import L, cup, fl_oz, ft, gal, gram, imp_gal, inch, mg, mL, oz, qt

BLEACH = 52.5  # kg/m³ of chlorine in liquid of 5.25 %
HUNDRED = 100 * gal


def ppm(chlorine: float, water: float) -> float:
    return level_given(chlorine, water) / (mg / L)


@pytest.mark.parametrize(
    ("strength", "unit", "printed"),
    [
        (5.25, mL, "721"), (5.25, cup, "3.05"), (5.25, fl_oz, "24.4"), (6, cup, "2.67"),
        (8.25, mL, "459"), (8.25, cup, "1.94"),
    ],
)  # fmt: skip
def test_liquid_for_100_gallons(strength: float, unit: float, printed: str) -> None:
    """By hand: 37.85 g of chlorine in 100 gal at 100 mg/L, over 10 g/L for each per cent."""
    assert agrees(liquid_dose(HUNDRED, 100 * mg / L, strength / 100) / unit, printed)
    by_hand = 378.5411784 * 0.1 / (10 * strength) * L
    assert liquid_dose(HUNDRED, 100 * mg / L, strength / 100) == pytest.approx(by_hand, rel=1e-9)


@pytest.mark.parametrize(
    ("strength", "unit", "printed"), [(65, gram, "58.2"), (70, gram, "54.1"), (70, oz, "1.9")]
)
def test_dry_for_100_gallons(strength: float, unit: float, printed: str) -> None:
    """By hand: 37.85 g of chlorine over the share that is chlorine."""
    assert agrees(dry_dose(HUNDRED, 100 * mg / L, strength / 100) / unit, printed)


@pytest.mark.parametrize(
    ("chlorine", "water", "printed"),
    [
        pytest.param(3 * cup * BLEACH, HUNDRED, "98.4", id="hickory-disinfect, bleach"),
        pytest.param(2 * oz * 0.70, HUNDRED, "104.8", id="hickory-disinfect, granules"),
        pytest.param(0.75 * qt * BLEACH, HUNDRED, "98.4", id="wi-dnr-bacteria, 100 ppm"),
        pytest.param(1.5 * qt * BLEACH, HUNDRED, "196.9", id="wi-dnr-bacteria, 200 ppm"),
        pytest.param(4.5 * cup * BLEACH, stored_volume(5 * ft, 1 * ft), "100.5", id="cdc-dug"),
        pytest.param(112 * fl_oz * BLEACH, HUNDRED, "459", id="mesa-shock, bleach"),
        pytest.param(8 * oz * 0.70, HUNDRED, "419", id="mesa-shock, granules"),
        pytest.param(1 * gal * 50, 200 * gal, "250", id="agwt-disinfect, 5 %"),
        pytest.param(1 * gal * 60, 200 * gal, "300", id="agwt-disinfect, 6 %"),
        pytest.param(3 * oz * 0.65, HUNDRED, "146", id="nc-2c-0111, 65 %"),
    ],
)
def test_what_recipes_give(chlorine: float, water: float, printed: str) -> None:
    """The recipes as printed, and the level each works out to by hand."""
    assert agrees(ppm(chlorine, water), printed)


def test_a_dug_well_of_30_feet() -> None:
    """[cdc-dug]: 30 ft of 4 1/2 cups are 135 cups; at 16 a gallon 8.44 gal."""
    whole = liquid_dose(stored_volume(5 * ft, 30 * ft), 100.5 * mg / L, 0.0525)
    assert agrees(whole / cup, "135")
    assert agrees(whole / gal, "8.44")


# Inside diameter, imperial gallons a foot, litres of 5.25 % and 12 %, grams of 70 % a foot.
ALBERTA = [
    (4, 1.1, 0.019, 0.008, 1.44),
    (6, 2.4, 0.042, 0.018, 3.12),
    (8, 4.2, 0.072, 0.032, 5.46),
]


@pytest.mark.parametrize(("diameter", "water", "weak", "strong", "dry"), ALBERTA)
def test_narrow_wells_of_alberta(
    diameter: float, water: float, weak: float, strong: float, dry: float
) -> None:
    """[alberta-shock] Table 1, 200 ppm in twice the casing: 198 to 204, but 4 in and 12 %: 192."""
    twice = 2 * stored_volume(diameter * inch, 1 * ft)
    assert agrees(twice / imp_gal, str(water)) or diameter == 8  # 4.35 there: printed 4.2
    assert 198 <= round(ppm(weak * L * BLEACH, water * imp_gal)) <= 204
    assert 198 <= round(ppm(dry * gram * 0.70, water * imp_gal)) <= 204
    found = round(ppm(strong * L * 120, water * imp_gal))
    assert found == 192 if diameter == 4 else 198 <= found <= 204


@pytest.mark.parametrize(
    ("diameter", "weak", "strong", "dry"), [(24, 0.340, 0.148, 25.4), (36, 0.760, 0.34, 57.2)]
)
def test_wide_wells_of_alberta(diameter: float, weak: float, strong: float, dry: float) -> None:
    """[alberta-shock] Table 1, 200 ppm in the casing itself: 198 to 204."""
    water = stored_volume(diameter * inch, 1 * ft)
    assert 198 <= ppm(weak * L * BLEACH, water) <= 204
    assert 198 <= ppm(strong * L * 120, water) <= 204
    assert 198 <= ppm(dry * gram * 0.70, water) <= 204


@pytest.mark.parametrize(
    ("water", "weak", "strong"), [(5, 4.75, 2.1), (10.9, 10.5, 4.55), (19.1, 18, 8)]
)
def test_fifty_ppm_of_alberta(water: float, weak: float, strong: float) -> None:
    """[ahs-shock] Table 1: litres a foot, millilitres of 5.25 % and of 12 %: 50 ppm."""
    assert ppm(weak * mL * BLEACH, water * L) == pytest.approx(50, rel=0.015)
    assert ppm(strong * mL * 120, water * L) == pytest.approx(50, rel=0.015)


def test_the_mix_that_is_not_300() -> None:
    """[wi-dnr-bacteria]: "300 ppm" for 2 quarts in 100 gallons is 262."""
    assert agrees(ppm(2 * qt * BLEACH, HUNDRED), "262")


# Depths in feet, then cups for casings of 1 to 6 inches.
ST_CLAIR = [
    (25, 50, (0.25, 0.75, 1.5, 2.5, 3.5, 5)),
    (50, 100, (0.5, 1.5, 3, 5, 7, 10)),
    (100, 150, (1, 3, 4, 7, 10, 15)),
]


def st_clair(row: int, diameter: int, deep: bool) -> float:
    first, last, cups = ST_CLAIR[row]
    water = stored_volume(diameter * inch, (last if deep else first) * ft)
    return ppm(cups[diameter - 1] * cup * BLEACH, water)


def test_the_table_that_does_not_give_500() -> None:
    """[st-clair-disinfect] by hand: 6 in, 5 cups in 50 ft (73.4 gal): 223; in 25 ft 447.

    At the deep end of its row one cell of 18 reaches the 500 that the table is said to give.
    """
    assert agrees(5 * 236.588 * 0.0525 * 1000 / (73.44 * 3.78541), "223")
    assert [round(st_clair(row, 6, deep=True)) for row in range(3)] == [223, 223, 223]
    assert [round(st_clair(row, 6, deep=False)) for row in range(3)] == [447, 447, 335]
    deep = sorted(st_clair(row, inches, deep=True) for row in range(3) for inches in range(1, 7))
    assert [round(deep[0]), round(deep[-2]), round(deep[-1])] == [214, 402, 536]


@pytest.mark.parametrize(
    ("bleach", "depth", "printed"),
    [(9 * fl_oz, 10, "251"), (gal / 2, 50, "357"), (3 * qt, 100, "268")],
)
def test_a_table_without_a_level(bleach: float, depth: float, printed: str) -> None:
    """[brunswick-disinfect], 6 in: the level jumps from row to row."""
    assert agrees(ppm(bleach * BLEACH, stored_volume(6 * inch, depth * ft)), printed)


def test_the_storage_mix_of_alberta() -> None:
    """[alberta-shock] procedure: "200 gal. (1000 L)" are two different waters, 231 or 210 ppm."""
    assert agrees(200 * imp_gal / L, "909")
    assert agrees(ppm(4 * L * BLEACH, 200 * imp_gal), "231")
    assert agrees(ppm(4 * L * BLEACH, 1000 * L), "210")
    assert agrees(ppm(1.5 * L * 120, 1000 * L), "180")


@pytest.mark.parametrize(
    ("diameter", "printed"),
    [(2, "0.16"), (4, "0.65"), (5, "1.02"), (6, "1.47"), (8, "2.61"), (10, "4.08"), (48, "94.00")],
)
def test_gallons_in_a_foot(diameter: float, printed: str) -> None:
    """[mesa-shock] Table I."""
    assert agrees(stored_volume(diameter * inch, 1 * ft) / gal, printed)


@pytest.mark.parametrize(
    ("ph", "printed"), [(6.5, "0.92"), (7.0, "0.79"), (7.5, "0.55"), (8.0, "0.28"), (8.5, "0.11")]
)
def test_the_form_that_kills(ph: float, printed: str) -> None:
    """By hand with the 7.58 that textbooks print for 20 °C, from 1 / (1 + K / h)."""
    assert agrees(hypochlorous_share(ph, 293.15), printed)
    assert agrees(1 / (1 + 10**-7.58 / 10**-ph), printed)


def test_the_acid_constant() -> None:
    """A problem of a textbook: 2.7e-8 at 20 °C; another, seen in 2026: pK 7.54 at 25 °C."""
    assert acid_constant(293.15) == pytest.approx(-log10(2.7e-8), abs=0.02)
    assert agrees(acid_constant(298.15), "7.54")


def test_neutralizing_200_gallons() -> None:
    """Stoichiometry by hand: 75.7 g of chlorine, 188 g of ascorbic acid; weights added up."""
    assert pytest.approx(6 * 12.011 + 8 * 1.008 + 6 * 15.999, abs=1e-9) == ASCORBIC
    assert pytest.approx(2 * 35.45) == CHLORINE
    chlorine = 200 * gal * 100 * mg / L
    assert agrees(chlorine / gram, "75.7")
    assert agrees(ascorbic_acid(chlorine) / gram, "188")


def test_bore_by_the_sphere_of_archimedes() -> None:
    """By reason: two thirds of a cylinder as high as wide are its sphere."""
    assert stored_volume(2.0, 2.0) * 2 / 3 == pytest.approx(4 / 3 * pi, rel=1e-12)
