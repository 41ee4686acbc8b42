"""Iron, its filter and the softener: the calculators by hand, by printed figures and by balance."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.calculators.iron_contact import iron_contact
from calc.calculators.iron_form import iron_form
from calc.calculators.softener import softener
from calc.figures import agrees
from calc.request import case_of
from calc.units import L, day, ft, gal, gpm, grain, inch, lb, mg, minute, psi
from tests.model.given import steady

MG_L, GPG = mg / L, grain / gal


def outputs(words: str) -> dict[str, float]:
    case = case_of(words.split())
    assert case.answer, case.errors
    return {name: value for name, value in case.answer.outputs.items() if value is not None}


def test_a_house_worked_beforehand() -> None:
    """4 people of 75 gal, 18 gpg, 2 mg/L of iron: 24 gpg, 36 000 grains, 4.0 days, 1095 lb in 365
    days, 2400 grains removed for each pound, 141.6 mg/L of sodium for the hardness alone."""
    words = (
        "softener entering_hardness=18gpg manganese=0 daily_use=300 resin_volume=1.5ft³ "
        "salt_dose=8 sodium=0 raw_iron="
    )
    found = outputs(words + "2")
    assert agrees(found["compensated"] / GPG, "24.0")
    assert agrees(found["resin_holds"] / grain, "36000")
    assert agrees(found["regenerate_every"] / day, "4.0")
    assert agrees(found["salt_year"] / lb * 365 / 365.25, "1095")
    used = found["compensated"] * 300 * gal * 365.25
    assert agrees(used / grain / (found["salt_year"] / lb), "2400")
    assert agrees(outputs(words + "0")["sodium_after"] / MG_L, "141.6")


@pytest.mark.parametrize(("rate", "printed"), [(3, 0.87), (5, 1.47), (8, 2.39), (10, 3.01)])
def test_resin_takes_the_printed_pressure(rate: float, printed: float) -> None:
    """Worked beforehand with the library fluids: 30 in of resin of 0.6 mm at 10 °C."""
    area = 3.14159265 * (12 * inch) ** 2 / 4
    found = outputs(
        f"softener resin_diameter=12 resin_volume={area * 30 * inch / ft**3}ft³ "
        f"service_flow={rate * area / ft**2} water_coldest=10°C"
    )
    assert found["resin_rate"] == pytest.approx(rate * gpm / ft**2, rel=1e-6)
    assert found["resin_loss"] / psi == pytest.approx(printed, rel=0.01)


@pytest.mark.parametrize(
    ("inches", "least", "most"),
    [(10, "4.4", "5.5"), (12, "6.3", "7.9"), (13, "7.4", "9.2"), (16, "11.2", "14.0")],
)
def test_standard_tanks_as_printed(inches: int, least: str, most: str) -> None:
    """Worked beforehand: 8 and 10 gpm/ft², the range of [wi-nr-811-52] for manganese greensand."""
    found = outputs(f"iron_filter tank_diameter={inches}")
    assert agrees(found["wash_least"] / gpm, least)
    assert agrees(found["wash_most"] / gpm, most)


def test_coated_grains_as_printed() -> None:
    """Worked beforehand: 15 gpm/ft² in a 12 in tank is 11.8 gpm."""
    assert agrees(outputs("iron_filter iron_media=coated")["wash_least"] / gpm, "11.8")


@pytest.mark.parametrize(("ph", "minutes"), [(7.0, 48.4), (7.5, 4.84)])
def test_half_times_as_printed(ph: float, minutes: float) -> None:
    """Worked beforehand at 10 °C and 0.209 atm: little iron in much alkalinity, air all there."""
    found = outputs(
        f"iron_contact raw_iron=0.01 alkalinity=400 oxygen=11.26 water_temperature=10°C "
        f"rust_ph={ph}"
    )
    assert found["iron_half"] / minute == pytest.approx(minutes, rel=0.02)


@steady
@given(st.floats(0.05, 20), st.floats(0, 1), st.floats(0, 1))
def test_the_forms_are_all_of_the_iron(total: float, passed: float, stood: float) -> None:
    """Whatever the filter says, nothing is lost, and no form is under none."""
    filtered = passed * total
    found = iron_form(total * MG_L, filtered * MG_L, stood * filtered * MG_L, "no").outputs
    forms = [float(found[name] or 0.0) for name in ("dissolved", "rust_iron", "bound")]
    assert min(forms) >= 0
    assert sum(forms) == pytest.approx(total * MG_L)


contacts = st.fixed_dictionaries(
    {
        "raw_iron": st.floats(0.1, 10).map(lambda each: each * MG_L),
        "alkalinity": st.floats(40, 250).map(lambda each: each * MG_L),
        "water_temperature": st.floats(275, 298),
        "oxygen": st.floats(4, 11).map(lambda each: each * MG_L),
        "contact_volume": st.floats(20, 500).map(lambda each: each * gal),
        "contact_tanks": st.integers(1, 6).map(float),
        "contact_flow": st.floats(1, 10).map(lambda each: each * gpm),
    }
)


@steady
@given(contacts, st.floats(6.2, 8.2), st.floats(0.01, 0.2), st.floats(0.5, 3))
def test_more_rusts_at_higher_ph_and_in_warmer_water(
    water: dict[str, float], ph: float, step: float, degrees: float
) -> None:
    """Iron left falls with pH and temperature, lies between none and all, and the acid it makes
    leaves a lower pH than it found."""

    def left(ph: float, warmer: float) -> tuple[float, ...]:
        given = water | {"water_temperature": water["water_temperature"] + warmer}
        found = iron_contact(
            manganese=0.0, oxidant="air", rust_ph=ph, iron_target=0.3 * MG_L, **given
        ).outputs
        assert float(found["ph_after"] or 0.0) < ph
        return tuple(
            float(found[name] or 0.0) for name in ("iron_left_fast", "iron_left", "iron_left_slow")
        )

    fast, law, slow = left(ph, 0.0)
    assert 0 <= fast <= law <= slow <= water["raw_iron"]
    assert left(ph + step, 0.0)[1] <= law
    assert left(ph, degrees)[1] <= law * (1 + 1e-9)


@steady
@given(
    st.floats(20, 400),
    st.floats(0, 3),
    st.floats(50, 600),
    st.floats(0.5, 4),
    st.floats(6, 15),
    st.sampled_from(["sodium", "potassium"]),
)
def test_a_year_of_salt_is_enough_for_what_it_holds(
    hard: float, iron: float, use: float, resin: float, pounds: float, salt: str
) -> None:
    """In a year the salt could exchange at best more than the water's charges, and the sodium and
    potassium that come in the water are less than the salt brought."""
    found = softener(
        hard * MG_L,
        iron * MG_L,
        0.0,
        3 * GPG / MG_L,
        0.0,
        use * gal / day,
        1.0,
        resin * ft**3,
        10 * inch,
        pounds * lb / ft**3,
        salt,
        60 * gal / ft**3,
        5 * gpm,
        280.0,
    ).outputs
    if found["salt_year"] is None:
        assert found["lasts_for"] == 0
        return
    metal = (22.990 / 58.443, 39.098 / 74.551)[salt == "potassium"]
    brought = float(found["salt_year"] or 0.0) * metal
    came = float(found["added"] or 0.0) * use * gal * 365.25
    assert came < brought
