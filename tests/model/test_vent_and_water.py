"""Vent, leak, pH and iron by another way than the calculators' own."""

from math import log10, pi

import fluids
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from phreeqpython import PhreeqPython

from calc.calculators import calculator
from calc.charts import Chart
from calc.figures import agrees
from calc.model import Typed, solve
from calc.request import case_of
from calc.units import L, day, ft, gal, gpm, inch, inH2O, mg, minute, pCi
from tests.model.given import patient, typed

many = settings(patient, max_examples=60)
CFM, unit = ft**3 / minute, pCi / L


def outputs(*words: str) -> dict[str, float]:
    case = case_of(words)
    assert case.answer, case.errors
    return {name: value for name, value in case.answer.outputs.items() if value is not None}


def test_blower_and_vent_by_hand() -> None:
    """18 inches of water, 6 of stones, and the fluids library for 30 ft of vent with K 3."""
    found = outputs("blower_and_vent", "water_temperature=20 °C", "altitude=0")
    speed = 12 * CFM * 4 / (pi * (3.068 * inch) ** 2)
    factor = fluids.friction_factor(Re=speed * 3.068 * inch / 1.53e-5, eD=2e-5)
    vent = (factor * 30 * ft / (3.068 * inch) + 3) * 1.194 * speed**2 / 2
    assert found["vent_loss"] == pytest.approx(vent, rel=0.01)
    clean = 24 * inH2O + vent
    assert found["clean_pressure"] == pytest.approx(clean, rel=1e-3)
    assert found["fouled_pressure"] - clean == pytest.approx(6 * inH2O + vent, rel=1e-2)
    # horsepower by the trade's air x inches / (6356 x efficiency)
    assert found["watts"] / 745.7 == pytest.approx(12 * 24.02 / 6356 / 0.35, rel=4e-3)
    assert found["year_energy"] / 3.6e6 == pytest.approx(found["watts"] * 8.766, rel=1e-9)
    assert found["year_cost"] == pytest.approx(found["year_energy"] / 3.6e6 * 0.2, rel=1e-9)


def test_condensate_of_a_day_by_hand() -> None:
    """Four gallons a day: 50 cfm of saturated air from 10 to -10 °C is 0.634 kg an hour."""
    found = outputs(
        "blower_and_vent", "aerator_air=50", "vent_coldest=-10 °C", "altitude=0", "blower_hours=24"
    )
    assert found["vent_water"] * day / gal == pytest.approx(0.634 * 24 / 3.785, rel=0.02)


@many
@given(data=st.data())
def test_the_chart_meets_the_answer(data: st.DataObject) -> None:
    """Drawn at the reader's own air, both lines are the pressures answered."""
    declared = calculator("blower_and_vent")
    case = solve(declared, data.draw(typed(declared)))
    assert case.answer
    chart, found = case.answer.charts[0], case.answer.outputs
    assert isinstance(chart, Chart)
    for line, name in zip(chart.lines, ("clean_pressure", "fouled_pressure"), strict=True):
        last, wanted = line.points[-1], found[name] or 0.0
        rest = line.points[0][1] or 0.0
        assert rest <= wanted <= (last[1] or 0.0)
        # between no loss and the square law: vents lose with a power from 1 to 2
        share = (wanted - rest) / ((last[1] or 0.0) - rest)
        assert 1 / 1.6**2 * 0.999 <= share <= 1 / 1.6 * 1.001


def test_a_leak_by_hand() -> None:
    """Worked beforehand: 20 000 pCi/L, 300 gal/day, 8 000 ft³ at 0.3 an hour: 13.6 and 0.68."""
    found = outputs(
        "vent_leak", "treated_radon=0.1", "daily_use=300", "room_volume=8000", "leak_share=5",
        "aerator_flow=5", "aerator_air=60",
    )  # fmt: skip
    assert agrees(found["open_radon"] / unit, "13.6")
    assert agrees(found["leak_radon"] / unit, "0.68")
    assert agrees(found["day_release"] / (1e6 * pCi), "22.71")
    assert agrees(found["vent_radon"] / unit, "222.8")
    assert found["untreated_radon"] / unit == pytest.approx(2.0, rel=1e-9)
    assert found["even_leak"] == pytest.approx(2 / 13.6, rel=5e-3)


@many
@given(data=st.data())
def test_at_the_even_leak_the_room_is_as_bad(data: st.DataObject) -> None:
    """The calculator asked again at its own answer."""
    declared = calculator("vent_leak")
    case = solve(declared, data.draw(typed(declared)))
    assume(case.answer)
    assert case.answer
    even = case.answer.outputs["even_leak"] or 0.0
    assume(even <= 1)
    again = solve(declared, {**case.typed, "leak_share": Typed(f"{100 * even!r} %")})
    assert again.answer
    found = again.answer.outputs
    assert found["leak_radon"] == pytest.approx(found["untreated_radon"], rel=1e-9)


def test_the_rise_by_hand_and_by_phreeqc() -> None:
    """Three basins by hand: 99.1 % of radon needs f = 3 (0.009^(-1/3) - 1)/45.8, and so on; the
    pH of what is left by PHREEQC."""
    found = outputs("aerated_ph")
    ratio = 12 * CFM / (5.6 * gpm)
    radon = 3 * (0.009 ** (-1 / 3) - 1) / (2.856 * ratio)
    gas = 1 - (1 - radon) ** 4.447
    left = (1 + 0.800 * ratio * gas / 3) ** -3
    rest = 10**-1.2694 * 800e-6
    enters = found["co2_before"] / 44.01
    moles = rest + (enters - rest) * left
    phreeqc = PhreeqPython(database="phreeqc.dat")
    water = phreeqc.add_solution(
        {"units": "mg/L", "temp": 10, "pH": 6.3, "Alkalinity": "40 as CaCO3", "Ca": "18 charge"}
    )
    assert enters == pytest.approx(water.species["CO2"], rel=0.025)
    water.equalize(["CO2(g)"], [log10(moles / 10**-1.2694)])
    assert found["expected_ph"] == pytest.approx(water.pH, abs=0.02)
    assert found["known_removal"] == pytest.approx(0.991, rel=1e-9)


@many
@given(data=st.data())
def test_the_expected_ph_stands_for_the_known_removal(data: st.DataObject) -> None:
    """The calculator asked again: measure the pH that it expects, and it tells the removal."""
    declared = calculator("aerated_ph")
    case = solve(declared, data.draw(typed(declared)))
    assume(case.answer)
    assert case.answer
    expected, rest = (case.answer.outputs[name] or 0.0 for name in ("expected_ph", "rest_ph"))
    assume(5 < expected < min(9, rest - 1e-3))
    again = solve(declared, {**case.typed, "treated_ph": Typed(repr(expected))})
    assert again.answer
    found = again.answer.outputs
    assume(found["implied_removal"] is not None)
    assert found["implied_removal"] == pytest.approx(found["known_removal"], rel=1e-5, abs=1e-6)


@many
@given(data=st.data())
def test_the_index_and_the_end_of_the_ph(data: st.DataObject) -> None:
    """By reason: no pH expected over the highest that the air can bring, nor under the first."""
    declared = calculator("aerated_ph")
    case = solve(declared, data.draw(typed(declared)))
    assume(case.answer)
    assert case.answer
    found = case.answer.outputs
    assume(found["expected_ph"])
    entering = case.values["entering_ph"]
    assert isinstance(entering, float)
    assert entering <= (found["expected_ph"] or 0) + 1e-9 <= (found["rest_ph"] or 0) + 2e-9


def test_published_plants() -> None:
    """[schock-2002]: 18 mg/L of carbon, pH 6.1 to 6.3 became 7.1 to 7.6 while 99 % of the radon
    left. Alkalinity 23 to 31 mg/L is what that carbon and pH leave; flows are not in the abstract,
    so the whole range of air that can do it is tried."""
    for ph, alkalinity in ((6.1, 23), (6.3, 31)):
        for air in (6, 12, 24):
            found = outputs(
                "aerated_ph", f"entering_ph={ph}", f"alkalinity={alkalinity}", "raw_radon=3300",
                "treated_radon=33", "air_co2=420", f"aerator_air={air}",
            )  # fmt: skip
            carbon = (found["co2_before"] / 44.01 + alkalinity / 50.04 / 1e3) * 12.011 * 1e3
            assert carbon == pytest.approx(18, rel=0.08)
            assert 6.95 < found["expected_ph"] < 7.75


def test_iron_by_hand() -> None:
    """300 gal/day at 2 mg/L is 4.35 g of rust a day; half time 0.903 min at pH 7.5 and 20 °C."""
    found = outputs(
        "aerator_iron", "raw_iron=2", "daily_use=300", "treated_ph=7.5", "water_temperature=20 °C"
    )
    assert found["year_solids"] / 365.25 * 1000 == pytest.approx(4.35, rel=2e-3)
    assert found["half_time"] / minute == pytest.approx(0.903, rel=0.01)
    stay = 40 / 300 * 1440
    speed = 0.6931 / (found["half_time"] / minute)
    assert found["in_tank"] == pytest.approx(speed * stay / (1 + speed * stay), rel=1e-3)
    fast = 10 * speed * stay / (1 + 10 * speed * stay)
    days = 2 * gal / L * 20 / (4.35 * fast * 0.5)
    assert found["clean_after"] / day == pytest.approx(days, rel=3e-3)
    assert found["alkalinity_used"] / (mg / L) == pytest.approx(3.58, rel=2e-3)


@many
@given(data=st.data())
def test_iron_in_its_order(data: st.DataObject) -> None:
    """By reason: slower water rusts less here, and a fuller sludge room lasts longer."""
    declared = calculator("aerator_iron")
    case = solve(declared, data.draw(typed(declared)))
    assert case.answer
    found = case.answer.outputs
    slow, law, fast = (found[name] or 0.0 for name in ("in_tank_slow", "in_tank", "in_tank_fast"))
    assert slow <= law <= fast < 1
    year = (found["year_sludge"] or 0.0) / (365.25 * day)
    room = case.values["sludge_room"]
    assert isinstance(room, float)
    # all of it settling at once is the least time there can be
    assert (found["clean_after"] or 0.0) >= room / year * (1 - 1e-9)
