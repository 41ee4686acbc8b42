"""Worked waters with the figures that PHREEQC 3 gave for them elsewhere, each to its tolerance.

The other tests ask PHREEQC anew; these hold even where it is not installed.
"""

import pytest

from calc.physics.calcite import (
    CALCITE,
    SODA_ASH,
    SODIUM_MOLAR,
    Water,
    ccpp,
    dissolved_to,
    dose_for_ph,
    hardness_of,
    heated,
    stripped,
    vented,
    water_of_ph,
    with_base,
)
from calc.physics.carbonate import (
    CACO3_EQUIVALENT,
    CO2_MOLAR,
    co2_at_rest,
    log_calcite,
    log_first,
    log_henry,
    log_second,
    log_water,
)
from calc.physics.granular_bed import MEDIA
from calc.physics.neutralizer import grain_surface, passage
from calc.physics.radon_solubility import ICE_POINT
from calc.physics.water_report import ionic_strength
from calc.units import L, mg

MG_L = mg / L
CARBON = 12.011e-3  # kg/mol
COLD = 10 + ICE_POINT


def water(ph: float, alkalinity: float, **ions: float) -> Water:
    """A water of 10 °C from its sheet, mg/L, alkalinity as CaCO3."""
    sheet = {name: each * MG_L for name, each in ions.items()} | {"alkalinity": alkalinity * MG_L}
    charge, calcium = alkalinity * MG_L / CACO3_EQUIVALENT, ions["calcium"] / 40.078
    return water_of_ph(ph, charge, calcium, COLD, ionic_strength(sheet))


SOFT = water(6.2, 20, calcium=6, magnesium=1.5, sodium=6, chloride=8, sulfate=6)
NEAR_REST = water(7.8, 120, calcium=40, magnesium=8, sodium=10, chloride=10, sulfate=20)


@pytest.mark.parametrize(
    ("celsius", "henry", "first", "second", "calcite"),
    [
        (25, -1.4679, -6.3519, -10.3289, -8.4798),
        (10, -1.2694, -6.4633, -10.4879, -8.4105),
    ],
)
def test_constants(
    celsius: float, henry: float, first: float, second: float, calcite: float
) -> None:
    """Checks A4 and A5, [plummer-1982]: within 0.0005."""
    kelvin = celsius + ICE_POINT
    found = (log_henry(kelvin), log_first(kelvin), log_second(kelvin), log_calcite(kelvin))
    assert found == pytest.approx((henry, first, second, calcite), abs=5e-4)


def test_water_product() -> None:
    """Check A5: -14.5338 at 10 °C within 0.0005."""
    assert log_water(COLD) == pytest.approx(-14.5338, abs=5e-4)


def test_soft_water_as_it_comes() -> None:
    """Check A6: carbon dioxide 31.1 mg/L within 2 %, carbon 13.31 within 1 %, index -3.18."""
    assert SOFT.state().co2 * CO2_MOLAR / MG_L == pytest.approx(31.1, rel=0.02)
    assert SOFT.dic * CARBON / MG_L == pytest.approx(13.31, rel=0.01)
    assert SOFT.saturation() == pytest.approx(-3.18, abs=0.04)


def test_soft_water_over_stone() -> None:
    """Check A7: pH 8.06, 68.1 mg/L dissolve, hardness 89.3."""
    stone = dissolved_to(SOFT)
    rested = with_base(SOFT, CALCITE, stone)
    assert rested.state().ph == pytest.approx(8.06, abs=0.04)
    assert stone * CALCITE.molar / MG_L == pytest.approx(68.1, abs=1.5)
    magnesium = 1.5 * 4.118
    hardness = 6 * 2.4973 + magnesium + hardness_of(CALCITE, stone) / MG_L
    assert hardness == pytest.approx(89.3, abs=1.5)


def test_soft_water_in_air() -> None:
    """Check A8: under 10^-3.4 atm of carbon dioxide pH 7.72, index -1.67."""
    aired = vented(SOFT, co2_at_rest(COLD, 10**-3.4))
    assert aired.state().ph == pytest.approx(7.72, abs=0.03)
    assert aired.saturation() == pytest.approx(-1.67, abs=0.05)


def test_air_then_stone() -> None:
    """Check A9: four fifths of the gas gone pH 6.90; then stone 16.5 mg/L and pH 8.85."""
    aired = stripped(SOFT, 0.8)
    assert aired.state().ph == pytest.approx(6.90, abs=0.02)
    stone = dissolved_to(aired)
    assert stone * CALCITE.molar / MG_L == pytest.approx(16.5, abs=1.0)
    assert with_base(aired, CALCITE, stone).state().ph == pytest.approx(8.85, abs=0.05)


def test_soda_ash() -> None:
    """Check A10: to pH 7.5 61.0 mg/L within 2 %, which bring 26.5 mg/L of sodium."""
    dose = dose_for_ph(SOFT, SODA_ASH, 7.5)
    assert dose * SODA_ASH.molar / MG_L == pytest.approx(61.0, rel=0.02)
    assert dose * SODA_ASH.sodium * SODIUM_MOLAR / MG_L == pytest.approx(26.5, rel=0.02)


def test_water_near_rest() -> None:
    """Check A11: index -0.072, potential -1.46 mg/L; at 60 °C index 0.329, pH 7.54."""
    assert NEAR_REST.saturation() == pytest.approx(-0.072, abs=0.04)
    assert ccpp(NEAR_REST) / MG_L == pytest.approx(-1.46, abs=1.0)
    hot = heated(NEAR_REST, 60 + ICE_POINT)
    assert hot.saturation() == pytest.approx(0.329, abs=0.10)
    assert hot.state().ph == pytest.approx(7.54, abs=0.06)


def test_a_minute_in_the_bed() -> None:
    """Check A12: grains of 0.7 mm, one minute of empty bed: pH 7.10, alkalinity 63."""
    bed = passage(SOFT, CALCITE, grain_surface(0.7e-3, MEDIA["calcite"]))
    assert bed
    left = bed.water(60.0)
    assert left.state().ph == pytest.approx(7.10, abs=0.05)
    assert left.alkalinity * CACO3_EQUIVALENT / MG_L == pytest.approx(63, abs=2)
