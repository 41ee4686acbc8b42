"""A case asked for in words, and the words of a case."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.calculators import calculator, names
from calc.model import UNIT_SETS, Typed, solve
from calc.request import case_of, words_of
from calc.units import gpm
from tests.model.given import patient, typed

every_calculator = pytest.mark.parametrize("name", names())


def test_words_are_what_a_person_types() -> None:
    """By hand: a value with its unit, blanks around the sign, an input left to its default."""
    case = case_of(["outlet_setting", "inlet = 5 1/2 gpm", "limit=after"])
    assert case.values["inlet"] == pytest.approx(5.5 * gpm, rel=1e-12)
    assert case.values["limit"] == "after"
    assert case.typed["outlet"].text == calculator("outlet_setting").input("outlet").default


@every_calculator
def test_the_worked_example_needs_no_words(name: str) -> None:
    """By reason: what is not given has its default."""
    assert words_of(solve(calculator(name))) == [name]


@every_calculator
@patient
@given(data=st.data())
def test_the_words_of_a_case_ask_for_it_again(name: str, data: st.DataObject) -> None:
    """By reason: a shared link shows its reader the same case, whatever their unit set."""
    declared = calculator(name)
    case = solve(declared, data.draw(typed(declared)), data.draw(st.sampled_from(UNIT_SETS)))
    again = case_of(words_of(case), data.draw(st.sampled_from(UNIT_SETS)))
    assert again.values == case.values
    assert again.sures == case.sures
    assert (again.answer and again.answer.outputs) == (case.answer and case.answer.outputs)


@pytest.mark.parametrize(
    ("name", "field", "text", "unit"),
    [
        ("outlet_setting", "rise", "5' 6\"", "ft"),
        ("outlet_setting", "rise", "5 ft 6 in", "m"),
        ("outlet_setting", "rise", "5 1/2", "ft"),
        ("outlet_setting", "rise", "5 ± 0.1", "ft"),
        ("outlet_setting", "float_open", "9 gal 2 qt", "L"),
        ("pail_flow", "runs", "1; 1.1", "min"),
        ("pail_flow", "runs", "1:02; 1:03", "s"),
        ("pail_flow", "runs", "1 min 2 s; 1", "min"),
    ],
)
def test_texts_of_every_sort_ask_for_the_same(name: str, field: str, text: str, unit: str) -> None:
    """By reason, as above: feet and inches, fractions, clocks, several readings in one unit."""
    case = solve(calculator(name), {field: Typed(text, unit)})
    assert not case.errors
    again = case_of(words_of(case))
    assert again.values[field] == case.values[field]
    assert again.sures[field] == pytest.approx(case.sures[field], rel=1e-12)


def test_a_bare_number_goes_along_with_the_unit_it_was_read_in() -> None:
    """By hand: 20 in a link is 20 L/min to this reader, and must be that to the next."""
    case = case_of(["outlet_setting", "inlet=20"], "si")
    assert words_of(case) == ["outlet_setting", "inlet=20 L/min"]
    assert case_of(words_of(case), "us").values == case.values


def test_a_plus_or_minus_goes_along() -> None:
    """By hand: 0.2 gpm given beside the field, 0.4 after the sign."""
    case = solve(calculator("outlet_setting"), {"inlet": Typed("5", "gpm", sure="0.2")})
    assert case_of(words_of(case)).sures["inlet"] == pytest.approx(0.2 * gpm, rel=1e-12)
    case = case_of(["outlet_setting", "inlet=5 ± 0.4 gpm"])
    assert case.sures["inlet"] == pytest.approx(0.4 * gpm, rel=1e-12)
