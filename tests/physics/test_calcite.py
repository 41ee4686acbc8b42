"""Chalk in water: printed examples, hand calculation, and what must hold for any water."""

from math import log10

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.calcite import (
    CALCITE,
    CAUSTIC,
    MAGNESIA,
    SODA_ASH,
    Base,
    Water,
    blend,
    ccpp,
    dissolved_to,
    dose_for_co2,
    dose_for_ph,
    hardness_of,
    heated,
    langelier,
    magnesia_rest,
    stripped,
    vented,
    water_of_ph,
    with_base,
)
from calc.physics.carbonate import CO2_MOLAR, LITRES, constants, from_ph
from calc.units import L, mg
from tests.model.given import steady

BASES = (CALCITE, MAGNESIA, SODA_ASH, CAUSTIC, blend(0.2))


@st.composite
def waters(draw: st.DrawFn, least: float = 5.0, most: float = 8.5) -> Water:
    """Well waters of any sort, mol/m³."""
    ph, kelvin = draw(st.floats(least, most)), draw(st.floats(274, 303))
    alkalinity, calcium = draw(st.floats(0.1, 7)), draw(st.floats(0.02, 4))
    strength = draw(st.floats(1.0, 3.0)) * max(alkalinity, 2 * calcium)
    assume(from_ph(ph, alkalinity, kelvin, strength).bicarbonate > 0)
    return water_of_ph(ph, alkalinity, calcium, kelvin, strength)


def charge(water: Water) -> float:
    """Alkalinity counted over what is in the water at its pH, mol/m³."""
    state, k = water.state(), constants(water.temperature, water.strength)
    h = 10**-state.ph * LITRES
    return state.bicarbonate + 2 * state.carbonate + k.water / h - h / k.single


shares = st.floats(0.0, 0.99)
bases = st.sampled_from(BASES)


def test_shortcut_as_handbooks_print_it() -> None:
    """[langelier-1936] by handbooks: pHs 8.2 and -0.7 at 25 °C, 7.2 and +0.3 at 82 °C."""
    at = {kelvin: langelier(7.5, 0.320, 0.150, 0.034, kelvin) for kelvin in (298.15, 355.15)}
    assert agrees(at[298.15], "-0.7")
    assert agrees(7.5 - at[298.15], "8.2")
    assert agrees(at[355.15], "0.3")
    assert agrees(7.5 - at[355.15], "7.2")


def test_shortcut_reads_low_in_wells() -> None:
    """By hand: 0.2 to 0.3 lower than the index by activities, for three waters of wells."""
    for celsius, ph, alkalinity, calcium, solids, strength in (
        (12, 7.4, 250, 90, 380, 9.21),
        (10, 7.8, 120, 40, 220, 4.49),
        (15, 7.2, 180, 60, 340, 7.47),
    ):
        kelvin = 273.15 + celsius
        water = water_of_ph(ph, alkalinity / 50.043, calcium / 40.078, kelvin, strength)
        short = langelier(
            ph, solids * mg / L, 2.4973 * calcium * mg / L, alkalinity * mg / L, kelvin
        )
        assert -0.33 < short - water.saturation() < -0.17


@pytest.mark.parametrize(
    ("base", "printed"),
    [(CALCITE, "68.2"), (MAGNESIA, "13.74"), (SODA_ASH, "72.2"), (CAUSTIC, "27.3")],
)
def test_old_rule(base: Base, printed: str) -> None:
    """By hand from the reactions and atomic weights: 30 mg/L of carbon dioxide."""
    milligrams = dose_for_co2(30e-3 / CO2_MOLAR, base) * base.molar * 1000
    assert milligrams == pytest.approx(float(printed), abs=0.1)


def test_hardness_that_bases_add() -> None:
    """By hand: for each mg of carbon dioxide 2.274 of hardness by calcite, 1.137 by magnesia."""
    for base, printed in ((CALCITE, "2.274"), (MAGNESIA, "1.137"), (SODA_ASH, "0.000")):
        amount = dose_for_co2(1 / CO2_MOLAR, base)
        assert agrees(hardness_of(base, amount), printed)


@steady
@given(waters(), shares)
def test_air_takes_no_alkalinity(water: Water, share: float) -> None:
    """Definition: carbon dioxide leaves, charge and calcium stay, whatever the pH."""
    for after in (stripped(water, share), vented(water, 0.02), heated(water, 320)):
        assert charge(after) == pytest.approx(charge(water), rel=1e-9, abs=1e-9)
        assert after.calcium == water.calcium


@steady
@given(waters(), bases, st.floats(0, 2))
def test_mass_of_a_base_is_found_again(water: Water, base: Base, amount: float) -> None:
    """Conservation: carbon and charge counted over what is in the water before and after."""
    after = with_base(water, base, amount)
    before_dic, after_dic = water.state().dic, after.state().dic
    assert after_dic - before_dic == pytest.approx(base.carbon * amount, abs=1e-8)
    assert charge(after) - charge(water) == pytest.approx(base.charge * amount, abs=1e-8)


@steady
@given(waters())
def test_ph_rises_as_carbon_dioxide_leaves(water: Water) -> None:
    """By reason: less acid, higher pH, at every step."""
    steps = [stripped(water, i / 20).state().ph for i in range(20)]
    assert steps == sorted(steps)
    assert steps[-1] > steps[0]


@steady
@given(waters(most=7.0), shares)
def test_rise_of_ph(water: Water, share: float) -> None:
    """By hand: the rise is -log10(1 - share) while the pH stays under 7.8."""
    before, after = water.state().ph, stripped(water, share).state().ph
    assume(after < 7.8)
    assert after - before == pytest.approx(-log10(1 - share), abs=0.03)


@steady
@given(waters(), st.sampled_from((CALCITE, blend(0.1), blend(0.5))), st.floats(-1, 0.5))
def test_dissolved_to_an_index(water: Water, base: Base, index: float) -> None:
    """Its own meaning: the water then has that index, dissolving or falling out."""
    amount = dissolved_to(water, base, index)
    after = with_base(water, base, amount)
    assert after.saturation() == pytest.approx(index, abs=1e-6)
    assert (amount < 0) == (water.saturation() > index)
    assert min(after.calcium, after.dic) > 0


@steady
@given(waters())
def test_ccpp_has_the_sign_of_the_index(water: Water) -> None:
    """By reason: what is over 0 falls out, and at rest nothing does."""
    assert (ccpp(water) > 0) == (water.saturation() > 0)
    rested = with_base(water, CALCITE, dissolved_to(water))
    assert ccpp(rested) == pytest.approx(0, abs=1e-7)


def test_much_scale_from_little_calcium() -> None:
    """By reason: no more falls out than there is calcium, however high the index."""
    for calcium in (0.02, 0.2, 2.0):
        water = water_of_ph(9.4, 6.0, calcium, 300.0, 8.0)
        assert water.saturation() > 0
        assert 0 < ccpp(water) < calcium * CALCITE.molar


@steady
@given(waters(most=6.9), bases, st.floats(7.0, 8.5))
def test_dose_for_a_ph(water: Water, base: Base, target: float) -> None:
    """Its own meaning, and: a higher pH takes more."""
    amount = dose_for_ph(water, base, target)
    assert with_base(water, base, amount).state().ph == pytest.approx(target, abs=1e-6)
    assert dose_for_ph(water, base, target + 0.1) > amount
    assert dose_for_ph(water, base, 4.5) == 0


@steady
@given(waters(most=7.5))
def test_calcite_stops_where_magnesia_goes_on(water: Water) -> None:
    """By reason: rest with calcite is lower than rest with magnesia."""
    assume(water.saturation() < 0)
    calcite = with_base(water, CALCITE, dissolved_to(water)).state().ph
    assert magnesia_rest(water).state().ph > calcite
