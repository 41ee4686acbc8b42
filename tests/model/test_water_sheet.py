"""Report, cartridge and germs: the calculators by hand and by another way than their own."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.calculators.water_report import PARAMETERS
from calc.figures import agrees
from calc.levels import LEVELS
from calc.model import Case
from calc.request import case_of
from calc.units import L, day, gal, mg, minute
from calc.views.words import finding_words
from tests.model.given import steady

MG_L = mg / L


def asked(words: str) -> Case:
    case = case_of(words.split())
    assert case.answer, case.errors
    return case


def outputs(words: str) -> dict[str, float | None]:
    case = asked(words)
    assert case.answer
    return dict(case.answer.outputs)


def heads(words: str) -> set[tuple[str, str]]:
    case = asked(words)
    assert case.answer
    return {(finding.level, finding.head) for finding in case.answer.findings}


@pytest.mark.parametrize(
    ("words", "level", "name"),
    [
        ("nitrate=10", "danger", "nitrate"),
        ("nitrate=45 infant=yes", "danger", "nitrate"),
        ("arsenic=5", "danger", "arsenic"),
        ("uranium=30", "danger", "uranium"),
        ("lead=10", "danger", "lead"),
        ("copper=1.3", "danger", "copper"),
        ("copper=1", "caution", "copper"),
        ("fluoride=4", "danger", "fluoride"),
        ("fluoride=1.5", "caution", "fluoride"),
        ("manganese=0.08", "caution", "manganese"),
        ("manganese=0.05", "caution", "manganese"),
        ("total_iron=0.3", "caution", "iron"),
        ("sodium=20", "caution", "sodium"),
    ],
)
def test_each_parameter_speaks_at_its_level(words: str, level: str, name: str) -> None:
    """By hand from the table of levels: a level is passed when it is reached."""
    head = f"{PARAMETERS[name].word} is at or over a level."
    assert (level, head) in heads(f"water_report {words}")


@pytest.mark.parametrize("name", PARAMETERS)
def test_none_found_is_over_nothing(name: str) -> None:
    """By reason: a result of 0 passes no level, and each parameter has one."""
    said = heads(
        "water_report nitrate=0 arsenic=0 uranium=0 lead=0 copper=0 fluoride=0 manganese=0 "
        "total_iron=0 sodium=0"
    )
    assert not any(head.startswith(PARAMETERS[name].word) for _, head in said)
    assert LEVELS[name]


def test_a_level_is_told_with_its_body_its_kind_and_its_year() -> None:
    """The task: what people act on for health says whose it is, what it is and when."""
    case = asked("water_report arsenic=7")
    assert case.answer
    (told,) = (f for f in case.answer.findings if f.head.startswith("Arsenic"))
    words = finding_words(case, told).replace("\u00a0", " ")
    assert "New Hampshire and New Jersey, 5.0 µg/L" in words
    assert "law for supplies, not for a private well; text of 2019" in words
    assert "US EPA" not in words


@pytest.mark.parametrize(("panel", "left_out"), [("yearly", 8), ("no metals", 5), ("whole", 0)])
def test_what_was_not_tested_is_left_out(panel: str, left_out: int) -> None:
    """Counted by hand; a figure left in the field of what was not tested says nothing."""
    case = case_of(["water_report", f"panel={panel}", "arsenic=500"])
    assert case.answer
    assert case.answer.outputs["not_tested"] == left_out
    told = {finding.head for finding in case.answer.findings}
    assert ("Arsenic is at or over a level." in told) == (panel == "whole")


def test_nitrate_may_be_given_either_way() -> None:
    """By hand: 50 mg/L as NO3 is 11.3 as N, over US EPA's 10."""
    found = case_of(["water_report", "nitrate=50 mg/L as NO3"])
    assert found.answer
    assert agrees((found.answer.outputs["nearest"] or 0) * 100, "113")
    assert ("danger", "Nitrate is at or over a level.") in {
        (f.level, f.head) for f in found.answer.findings
    }


def test_balance_of_the_worked_sheet() -> None:
    """By hand with a handbook's equivalent weights: 1.346 and 1.368 meq/L."""
    found = outputs("ion_balance")
    cations = 13 / 20.04 + 3 / 12.15 + 9 / 22.99 + 1.2 / 39.1 + 0.8 / 27.92
    anions = 40 / 50.04 + 12 / 35.45 + 9 / 48.03 + 0.6 / 14.01
    assert found["cations"] == pytest.approx(cations, rel=1e-3)
    assert found["anions"] == pytest.approx(anions, rel=1e-3)
    assert found["charge_ratio"] == pytest.approx(100 * cations / 135, rel=1e-3)
    assert (found["solids_ratio"] or 0) / (MG_L / 1e-4) == pytest.approx(88 / 135)


@steady
@given(st.floats(4.8, 8.2), st.floats(4.8, 8.2), st.floats(5, 400))
def test_stone_goes_with_ten_to_the_ph(site: float, lab: float, alkalinity: float) -> None:
    """By hand: a pH one lower is ten times the gas, whatever the alkalinity."""
    found = outputs(f"field_ph raw_ph={site} lab_ph={lab} alkalinity={alkalinity}")
    assert found["times"] == pytest.approx(10 ** (lab - site), rel=1e-9)
    assert found["co2_lost"] == pytest.approx(1 - 1 / (found["times"] or 1), abs=1e-9)


def test_field_ph_of_a_worked_water() -> None:
    """PHREEQC: pH 6.2, alkalinity 20, 10 °C hold 31.1 mg/L; 2.274 times that is 70.8 of stone."""
    case = case_of(
        ["field_ph", "raw_ph=6.2", "lab_ph=6.9", "alkalinity=20", "water_temperature=10 °C"]
    )
    assert case.answer
    assert (case.answer.outputs["co2_real"] or 0) / MG_L == pytest.approx(31.1, rel=0.02)
    assert (case.answer.outputs["stone_real"] or 0) / MG_L == pytest.approx(70.8, rel=0.02)


def test_cartridge_by_hand() -> None:
    """By hand: R 0.333 new and 0.665 today; at 6 gpm 1.5 may be; complete law 42 days in all."""
    found = outputs("cartridge")
    new, now, most = 2 / 6, 4.5 / 5.5 - 5.5 / 36, 10 / 6 - 6 / 36
    life = 4000 / 150 * (1 - new / most) / (1 - new / now)
    assert (found["complete_life"] or 0) / day == pytest.approx(life)
    assert (found["days_left"] or 0) / day == pytest.approx(life - 4000 / 150)
    cake = 4000 / 150 * (most - new) / (now - new)
    assert (found["cake_life"] or 0) / day == pytest.approx(cake)


def test_uv_by_hand() -> None:
    """By hand: half the flow, twice the dose; a new lamp over an old one 1 to 0.8."""
    same = "uvt=75 sleeve=100 lamp_age=365"
    assert (outputs(f"uv_dose {same} uv_flow=8")["dose"] or 0) / 10 == pytest.approx(40)
    assert (outputs(f"uv_dose {same} uv_flow=4")["dose"] or 0) / 10 == pytest.approx(80)
    fresh = outputs("uv_dose uvt=75 sleeve=100 lamp_age=0 uv_flow=8")
    assert (fresh["dose"] or 0) / 10 == pytest.approx(50)
    tested_new = outputs("uv_dose uvt=75 sleeve=100 lamp_age=365 uv_flow=8 rated_when=new")
    assert (tested_new["dose"] or 0) / 10 == pytest.approx(32)


@steady
@given(st.floats(1, 20), st.floats(40, 99), st.floats(0, 365))
def test_the_largest_flow_gets_just_enough(flow: float, uvt: float, age: float) -> None:
    """The other way round: at the largest flow told, the dose is what unsafe water needs."""
    found = outputs(f"uv_dose uv_flow={flow} uvt={uvt} lamp_age={age}")
    most = (found["most_flow"] or 0) / (gal / minute)
    if 0.1 <= most <= 100:
        again = outputs(f"uv_dose uv_flow={most!r} uvt={uvt} lamp_age={age}")
        assert (again["dose"] or 0) / 10 == pytest.approx(40, rel=1e-9)


def test_contact_time_by_hand() -> None:
    """By hand: 80 gal, 5 gpm, 0.3: 4.8 min; 6 are asked at 10 °C, so 100 gal; 3.2 log."""
    found = outputs("contact_time")
    assert agrees((found["contact_minutes"] or 0) / minute, "4.8")
    assert agrees(found["virus_credit"] or 0, "3.2")
    assert (found["volume_needed"] or 0) / gal == pytest.approx(100)
    enough = outputs("contact_time contact_volume=100.1")
    assert enough["virus_credit"] == 4.0
    assert (found["bleach"] or 0) / (1e-6 / minute) == pytest.approx(
        5 * 3785.41 * 3 / 52500, rel=1e-4
    )


def test_a_stirred_tank_needs_three_times_the_volume() -> None:
    """By hand from the factors: 0.1 against 0.3."""
    poor = outputs("contact_time")["volume_needed"] or 0
    stirred = outputs("contact_time baffling=unbaffled")["volume_needed"] or 0
    assert stirred == pytest.approx(3 * poor)
    assert outputs("contact_time baffling=none")["volume_needed"] is None
