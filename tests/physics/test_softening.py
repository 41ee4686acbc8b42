"""A softener against printed figures, published rules and the balance of charge."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.granular_bed import MEDIA, lifting
from calc.physics.softening import (
    CACO3,
    LEAST_SALT,
    MOST_SALT,
    POTASSIUM,
    POTASSIUM_SALT,
    SODIUM,
    SODIUM_SALT,
    capacity,
    compensated_hardness,
    days_of_capacity,
    exchanged,
    held_at_best,
    resin_depth,
    salt_in_water,
)
from calc.units import L, ft, gal, gpm, grain, inch, lb, mg, mm
from tests.model.given import steady

MG_L, GPG = mg / L, grain / gal
PER_IRON = 3 * GPG / MG_L
salts = st.floats(LEAST_SALT, MOST_SALT)


def test_a_pound_of_salt_as_printed() -> None:
    """[franks-2014]: 5989 grains in a pound of sodium chloride, 4695 of potassium chloride."""
    assert held_at_best(lb) / grain == pytest.approx(5989, rel=2e-3)
    assert held_at_best(lb, POTASSIUM_SALT) / grain == pytest.approx(4695, rel=2e-3)


def test_new_resin_as_printed() -> None:
    """[franks-2014]: 1.9 to 2.0 charges a litre are 41 499 to 43 683 grains a cubic foot, and 7.29
    lb of salt would fill it. The table stays below that and above none."""
    for charges, printed in ((1.9, 41_499), (2.0, 43_683)):
        assert charges * 1e3 * CACO3 / (grain / ft**3) == pytest.approx(printed, rel=3e-3)
    assert 2.0 * 1e3 * SODIUM_SALT / (lb / ft**3) == pytest.approx(7.29, rel=3e-3)
    assert capacity(MOST_SALT) < 1.9 * 1e3 * CACO3


def test_the_published_rule_for_public_supplies() -> None:
    """[il-604-805] (c): at most 20 000 grains a cubic foot at 0.3 lb for each 1000 grains."""
    salt = 0.3 * lb / (1000 * grain) * 20_000 * grain / ft**3
    assert salt == pytest.approx(LEAST_SALT)
    assert capacity(salt) / (grain / ft**3) == pytest.approx(20_000)


@pytest.mark.parametrize(
    ("pounds", "grains"), [(6, 20_000), (8, 24_000), (9, 25_500), (10, 27_000), (15, 30_000)]
)
def test_the_table(pounds: float, grains: float) -> None:
    """Common practice, no source; 9 lb by hand between its neighbours."""
    assert capacity(pounds * lb / ft**3) / (grain / ft**3) == pytest.approx(grains)


def test_a_house_worked_beforehand() -> None:
    """4 people of 75 gal, 18 gpg, 2 mg/L of iron at 3: 24 gpg, 7200 grains a day; 1.5 ft³ at 8 lb
    lasts 4.0 days and takes 1095 lb in 365 days; sodium 141.6 mg/L for the hardness alone."""
    hard = compensated_hardness(18 * GPG, 2 * MG_L, 0.0, PER_IRON)
    assert hard / GPG == pytest.approx(24)
    daily = hard * 4 * 75 * gal
    assert daily / grain == pytest.approx(7200)
    days = days_of_capacity(1.5 * ft**3 * capacity(8 * lb / ft**3), 1.0, daily)
    assert agrees(days, "4.0")
    assert agrees(1.5 * 8 * 365 / days, "1095")
    assert agrees(salt_in_water(exchanged(18 * GPG, 0.0, 0.0)) / MG_L, "141.6")
    assert agrees(salt_in_water(1 * GPG) / MG_L, "7.864")
    assert agrees(salt_in_water(1 * GPG, POTASSIUM) / MG_L, "13.37")


def test_trade_pages_as_printed() -> None:
    """By hand: 10 gpg, 0.5 mg/L of iron and 1 of manganese, two for each: 13. And 3 gpg really
    exchanges as 0.105 gpg for each mg/L of iron."""
    assert compensated_hardness(10, 0.5, 1.0, 2) == pytest.approx(13)
    assert agrees(exchanged(0.0, 1 * MG_L, 0.0) / GPG, "0.105")


def test_resin_is_lifted_as_printed() -> None:
    """Worked beforehand: resin of 0.6 mm at 10 °C falls at 21.8 mm/s, exponent 3.533, and grows by
    51.5 % at 5 gpm/ft²."""
    bed = lifting(0.6 * mm, MEDIA["resin"], 283.15)
    assert bed.fall * 1000 == pytest.approx(21.8, rel=0.01)
    assert bed.exponent == pytest.approx(3.533, rel=5e-3)
    assert bed.expansion(5 * gpm / ft**2) == pytest.approx(0.515, abs=0.01)


@steady
@given(salts, salts)
def test_more_salt_holds_more_and_yields_less(one: float, other: float) -> None:
    """Capacity rises with salt, hardness for each pound falls, and neither passes one charge for
    one."""
    less, more = sorted((one, other))
    assert capacity(less) <= capacity(more) * (1 + 1e-12)
    assert capacity(less) / less >= capacity(more) / more * (1 - 1e-12)
    assert capacity(more) < held_at_best(more)


@steady
@given(st.floats(0, 1000), st.floats(0, 10), st.floats(0, 5))
def test_charge_is_kept(hard: float, iron: float, manganese: float) -> None:
    """Sodium that comes carries the charge that went, by each ion's own equivalent weight."""
    went = hard / 50.0435 + iron / (55.845 / 2) + manganese / (54.938 / 2)
    swapped = exchanged(hard * MG_L, iron * MG_L, manganese * MG_L)
    for salt in (SODIUM, POTASSIUM):
        came = salt_in_water(swapped, salt) / MG_L / (salt * 1000)
        assert came == pytest.approx(went, rel=1e-6, abs=1e-12)


@steady
@given(st.floats(1, 100), st.floats(0, 3), st.floats(0.1, 20))
def test_what_is_held_is_used(held: float, reserve: float, daily: float) -> None:
    """Days and reserve together use up what was held, or there are no days."""
    days = days_of_capacity(held, reserve, daily)
    assert (days + reserve) * daily >= held * (1 - 1e-9)
    assert days == 0 or (days + reserve) * daily == pytest.approx(held)
    assert days <= days_of_capacity(held * 1.1, reserve, daily)


@steady
@given(st.floats(0.5, 5), st.floats(6, 20))
def test_depth_fills_the_tank(cubic_feet: float, inches: float) -> None:
    """Depth times the circle is the resin."""
    depth = resin_depth(cubic_feet * ft**3, inches * inch)
    assert depth * 3.141592653589793 * (inches * inch) ** 2 / 4 == pytest.approx(cubic_feet * ft**3)
