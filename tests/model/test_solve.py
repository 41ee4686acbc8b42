"""`solve`: any text in any field, any value in range, and the same answer in every unit."""

from math import isfinite

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.calculators import calculator, names
from calc.model import UNIT_SETS, Calculator, Case, Input, Typed, solve
from calc.units import KINDS
from calc.views.words import refusal_words
from tests.model.given import CALCULATORS, NASTY, anywhere, corners, patient, typed

every_calculator = pytest.mark.parametrize("name", names())
EVERY_FIELD = [(declared, each.name) for declared in CALCULATORS for each in declared.inputs]
SYMBOLS = ["", "furlong", *(unit.symbol for kind in KINDS for unit in kind.units)]


def assert_answered_or_refused(case: Case) -> None:
    """Either errors, each in words beside a field, or every output, finite or none."""
    assert (case.answer is None) == bool(case.errors)
    for error in case.errors:
        words = refusal_words(case, error)
        assert len(words) > 10
        assert "{" not in words.replace(str(error.facts.get("text")), "")
        assert error.field
    if case.answer:
        assert set(case.answer.outputs) == {each.name for each in case.calculator.outputs}
        assert_finite(case.answer.outputs.values())
        assert case.answer.findings


def assert_finite(outputs: object) -> None:
    assert all(value is None or isfinite(value) for value in outputs)  # type: ignore[attr-defined]


@pytest.mark.parametrize(
    ("declared", "field"), EVERY_FIELD, ids=[f"{one.name}-{field}" for one, field in EVERY_FIELD]
)
def test_hard_texts_in_every_field(declared: Calculator, field: str) -> None:
    """By reason: whatever a person types is answered or refused in words, and never lost."""
    for text in NASTY:
        case = solve(declared, {field: Typed(text)})
        assert_answered_or_refused(case)
        assert case.typed[field].text == text
        assert {error.field for error in case.errors} <= {each.name for each in declared.inputs}


@every_calculator
@patient
@given(data=st.data())
def test_any_text_in_any_fields(name: str, data: st.DataObject) -> None:
    """By reason, as above: several fields at once, in any unit, to be shown in any unit."""
    declared = calculator(name)
    fields = st.sampled_from([each.name for each in declared.inputs] + ["no_such"])
    symbols = st.sampled_from(SYMBOLS)
    one = st.builds(
        Typed, st.one_of(st.text(max_size=12), st.sampled_from(NASTY)), symbols, symbols
    )
    some = data.draw(st.dictionaries(fields, one, min_size=1, max_size=4))
    assert_answered_or_refused(solve(declared, some, data.draw(st.sampled_from(UNIT_SETS))))


@every_calculator
def test_defaults_answer(name: str) -> None:
    """The model's own rule: the worked example of every calculator has an answer."""
    for unit_set in UNIT_SETS:
        case = solve(calculator(name), {}, unit_set)
        assert not case.errors
        assert_answered_or_refused(case)


def assert_holds(case: Case) -> None:
    """An answer of finite figures, its working too; or a refusal."""
    assert_answered_or_refused(case)
    if case.answer is None:
        return
    assert_finite(quantity.value for step in case.answer.steps for quantity in step.given.values())


@every_calculator
@patient
@given(data=st.data())
def test_corners_of_the_ranges(name: str, data: st.DataObject) -> None:
    """By reason: where every input stands at an end of its range the arithmetic still holds."""
    assert_holds(solve(calculator(name), data.draw(corners(calculator(name)))))


@every_calculator
@patient
@given(data=st.data())
def test_anywhere_in_the_ranges(name: str, data: st.DataObject) -> None:
    """By reason: within its ranges a calculator answers or refuses; it never breaks."""
    assert_holds(solve(calculator(name), data.draw(anywhere(calculator(name)))))


@every_calculator
@patient
@given(data=st.data())
def test_the_unit_set_changes_no_value(name: str, data: st.DataObject) -> None:
    """By reason: units are how a value is shown, not what it is."""
    declared = calculator(name)
    given_ = data.draw(typed(declared))
    us, si = (solve(declared, given_, unit_set) for unit_set in UNIT_SETS)
    assert us.values == si.values
    assert [error.args for error in us.errors] == [error.args for error in si.errors]
    assert (us.answer and us.answer.outputs) == (si.answer and si.answer.outputs)


@every_calculator
@patient
@given(data=st.data())
def test_the_unit_to_show_changes_no_value(name: str, data: st.DataObject) -> None:
    """By reason, as above, for each field by itself."""
    declared = calculator(name)
    given_ = data.draw(typed(declared))
    shown = {
        each.name: given_[each.name]._replace(
            show=data.draw(st.sampled_from(each.kind.units)).symbol
        )
        for each in declared.inputs
        if isinstance(each, Input)
    }
    case, other = solve(declared, given_), solve(declared, given_ | shown)
    assert case.values == other.values
    assert {name: unit.symbol for name, unit in other.units.items()} == {
        name: typed_.show for name, typed_ in shown.items() if name in other.units
    }


def test_several_readings() -> None:
    """The declaration: readings stand apart by semicolons or line ends; blanks between are none."""
    declared = calculator("pail_flow")
    for text in ("53 s; 54 s; 55 s", "53;54;55", "53\n54\n55", ";53;;54;55;", "53 s\n54; 0:55"):
        assert solve(declared, {"runs": Typed(text)}).values["runs"] == (53, 54, 55), text


def test_more_readings_than_there_is_room_for() -> None:
    """The declaration: the field says how many it holds."""
    several = calculator("pail_flow").input("runs")
    assert isinstance(several, Input)
    for many, reason in ((several.several, None), (several.several + 1, "too many")):
        case = solve(calculator("pail_flow"), {"runs": Typed(";".join(["53"] * many))})
        assert (case.errors[0].reason if case.errors else None) == reason


def test_every_error_is_told_at_once() -> None:
    """By reason: a reader mends a form once, not field by field."""
    wrong = {"inlet": Typed("x"), "outlet": Typed(""), "limit": Typed("beside"), "none": Typed("1")}
    case = solve(calculator("outlet_setting"), wrong)
    assert {error.field for error in case.errors} == set(wrong)
    assert case.answer is None
