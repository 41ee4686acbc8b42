"""What the page's worker answers: units switched, texts kept, nothing let through."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.calculators import calculator, names
from calc.model import UNIT_SETS, Choice, Input, Typed
from calc.views.browser import reply
from tests.model.given import CALCULATORS, NASTY, patient, texts, typed
from tests.views.reading import read

every_calculator = pytest.mark.parametrize("name", names())
SCRIPT = "<script>alert(1)</script>\"'&"
Fields = dict[str, Typed]


def ask(name: str, fields: Fields, units: str = "us") -> Any:
    """The reply to what a page sends when it shows every field in the usual unit."""
    sent = {field: {"text": t.text, "unit": t.unit, "show": ""} for field, t in fields.items()}
    request = {"calculator": name, "key": "k", "root": "", "units": units, "fields": sent}
    return json.loads(reply(json.dumps(request)))


@every_calculator
def test_the_defaults(name: str) -> None:
    """The declarations: with nothing typed, the worked example, and no errors."""
    told = ask(name, {})
    assert list(told["fields"]) == [each.name for each in calculator(name).inputs]
    assert not any(field["error"] for field in told["fields"].values())
    assert told["says"]
    assert read(told["answer"]).all("dl")


@every_calculator
def test_a_brief_answer_is_the_whole_one_without_its_working(name: str) -> None:
    request = {"calculator": name, "key": "k", "root": "", "units": "us", "fields": {}}
    whole, brief = (json.loads(reply(json.dumps(request | {"brief": it}))) for it in (False, True))
    steps = whole["answer"].partition('<ol class="calc-steps">')
    rest = steps[2].partition("</details>")
    assert steps[1] == '<ol class="calc-steps">'
    assert brief == whole | {"answer": steps[0] + rest[1] + rest[2]}


@every_calculator
@patient
@given(data=st.data())
def test_switching_units_and_back_loses_nothing(name: str, data: st.DataObject) -> None:
    """By reason: US, SI, US again: the typed texts to the letter, and the same answer."""
    declared = calculator(name)
    fields = data.draw(typed(declared))
    first, other, again = (ask(name, fields, units) for units in ("us", "si", "us"))
    assert first == again
    for each in declared.inputs:
        shown = again["fields"][each.name]
        if fields[each.name].unit == shown.get("unit", ""):
            assert shown["text"] == fields[each.name].text
    wrong = [{n: bool(f["error"]) for n, f in told["fields"].items()} for told in (first, other)]
    assert wrong[0] == wrong[1]


@every_calculator
@patient
@given(data=st.data())
def test_a_shown_text_means_what_was_typed(name: str, data: st.DataObject) -> None:
    """Rounding: a value shown in another unit is the one typed, to four figures."""
    declared = calculator(name)
    fields = data.draw(typed(declared))
    for units in UNIT_SETS:
        told = ask(name, fields, units)["fields"]
        for each in declared.inputs:
            if not isinstance(each, Input) or "unit" not in told[each.name]:
                continue
            kind, shown = each.kind, told[each.name]
            was = [
                _si(kind, text, fields[each.name].unit)
                for text in fields[each.name].text.split(";")
            ]
            now = [_si(kind, text, shown["unit"]) for text in shown["text"].split(";")]
            assert now == pytest.approx(was, rel=6e-4)


def _si(kind: Any, text: str, unit: str) -> float:
    value: float = kind.read(text, kind.unit(unit))[0]
    return value


def test_a_text_with_its_own_unit() -> None:
    """By hand: 20 L/min typed into a field in gpm reads 5.28 gpm, and stays as typed."""
    field = ask("outlet_setting", {"inlet": Typed("20 L/min", "gpm")})["fields"]["inlet"]
    assert (field["text"], field["unit"], field["error"]) == ("20 L/min", "gpm", "")
    assert field["reading"].replace("\u00a0", " ") == "= 5.28 gpm"


def test_the_reading_is_in_the_other_set() -> None:
    """[nist-811] by hand: 5 gpm beside 18.9 L/min, 20 L/min beside 5.28 gpm."""
    for text, unit, units, reading in (
        ("5", "gpm", "us", "18.9 L/min"),
        ("20", "L/min", "si", "5.28 gpm"),
    ):
        field = ask("outlet_setting", {"inlet": Typed(text, unit)}, units)["fields"]["inlet"]
        assert field["reading"].replace("\u00a0", " ") == f"= {reading}"


EVERY_FIELD = [(declared.name, each.name) for declared in CALCULATORS for each in declared.inputs]


@pytest.mark.parametrize(("name", "field"), EVERY_FIELD)
def test_a_script_never_gets_into_the_answer(name: str, field: str) -> None:
    """The HTML standard: what the page puts in as HTML is well formed and holds no script.

    The texts, readings and errors of the fields are put in as text.
    """
    for text in (SCRIPT, f"5 {SCRIPT}", f"5 ± {SCRIPT}"):
        told = ask(name, {field: Typed(text)})
        assert "<script" not in told["answer"]
        assert not read(told["answer"]).all("script")
        assert told["fields"][field]["text"] == text
        assert told["fields"][field]["error"]
        assert told["says"].startswith("No answer")


def as_in_the_form(each: Input | Choice, text: str) -> Typed:
    """A text as the page sends it: with the unit that stands beside it."""
    return Typed(text, "" if isinstance(each, Choice) else each.usual("us").symbol)


@every_calculator
@patient
@given(data=st.data())
def test_any_text_gets_a_reply(name: str, data: st.DataObject) -> None:
    """By reason: the worker never falls over what is typed; every text comes back."""
    declared = {each.name: each for each in calculator(name).inputs}
    fields = sorted(declared)
    some = data.draw(st.dictionaries(st.sampled_from(fields), texts, min_size=1, max_size=3))
    told = ask(name, {field: as_in_the_form(declared[field], text) for field, text in some.items()})
    read(told["answer"])
    for field, text in some.items():
        if told["fields"][field]["error"]:
            assert told["fields"][field]["text"] == text


@every_calculator
def test_hard_texts_get_a_reply(name: str) -> None:
    """By reason, as above: in every field at once."""
    for text in NASTY:
        told = ask(name, {each.name: Typed(text) for each in calculator(name).inputs})
        read(told["answer"])
        assert any(field["error"] for field in told["fields"].values())


def test_a_request_of_another_shape() -> None:
    """By reason: an old page may send units that are none, or fields that are gone."""
    request = {"calculator": "pail_flow", "units": "imperial", "fields": {"gone": {"text": "5"}}}
    told = json.loads(reply(json.dumps(request)))
    assert told["says"] == "No answer: 1 to mend."
    assert "gone" not in told["fields"]
