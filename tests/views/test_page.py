"""The form and the answer as HTML: well formed, labelled, escaped, cautions first."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.calculators import calculator, names
from calc.model import UNIT_SETS, Choice, Input, Typed, solve
from calc.sources import SOURCES
from calc.views.answer import answer
from calc.views.answer import errors as told_errors
from calc.views.html import cited, escape, tag
from calc.views.page import section
from tests.model.given import CALCULATORS, patient, typed
from tests.views.reading import Element, read

every_calculator = pytest.mark.parametrize("name", names())
REFERS = ("for", "aria-describedby", "aria-labelledby", "aria-controls")


def page(unit_set: str = "us") -> Element:
    """One page with every calculator on it, and one of them twice."""
    cases = [solve(each, {}, unit_set) for each in [*CALCULATORS, CALCULATORS[0]]]
    return read("".join(section(case, f"c{n}", "../") for n, case in enumerate(cases)))


@pytest.mark.parametrize("unit_set", UNIT_SETS)
def test_ids_are_unique_and_what_refers_to_one_finds_it(unit_set: str) -> None:
    """The HTML standard: an id stands once on a page; labels and descriptions name one."""
    elements = page(unit_set).all()
    ids = [each.attributes["id"] for each in elements if "id" in each.attributes]
    assert len(set(ids)) == len(ids)
    assert all(ids)
    referred = [r for e in elements for name in REFERS for r in e.attributes.get(name, "").split()]
    assert referred
    assert set(referred) <= set(ids)


def test_every_control_has_a_name() -> None:
    """WCAG 2.2, 4.1.2: a label around it, a label for it, or words of its own."""
    root = page()
    labelled = {each.attributes.get("for") for each in root.all("label")}
    for control in root.all("input") + root.all("select"):
        within = control.parent
        inside = within is not None and within.name == "label" and within.text.strip()
        own = control.attributes.get("aria-label", "").strip()
        assert inside or own or control.attributes["id"] in labelled, control.attributes


def test_every_label_labels() -> None:
    """WCAG 2.2, 1.3.1: a label names a control by its id or holds one."""
    for label in page().all("label"):
        assert label.attributes.get("for") or label.all("input")
        assert label.text.strip()


@every_calculator
def test_the_form_holds_every_input(name: str) -> None:
    """The declarations: label, default, units and options of each input; how to measure it."""
    declared = calculator(name)
    root = read(section(solve(declared), "key", ""))
    fields = {e.attributes["data-field"]: e for e in root.all() if "data-field" in e.attributes}
    assert list(fields) == [each.name for each in declared.inputs]
    for each in declared.inputs:
        assert each.label in fields[each.name].text
        assert each.measure in fields[each.name].text
        holds = holds_choice if isinstance(each, Choice) else holds_input
        holds(each, fields[each.name])  # type: ignore[arg-type]


def holds_choice(each: Choice, field: Element) -> None:
    """Side by side, or as a list where there are many."""
    radios = field.all("input") or field.all("option")
    assert [radio.attributes["value"] for radio in radios] == list(each.options)
    picked = [r for r in radios if {"checked", "selected"} & r.attributes.keys()]
    assert [one.attributes["value"] for one in picked] == [each.default]


def holds_input(each: Input, field: Element) -> None:
    units = [unit.symbol for unit in each.kind.units if unit.symbol]  # a plain number has none
    assert [option.text for option in field.all("option")] == units
    selected = [o.text for o in field.all("option") if "selected" in o.attributes]
    usual = each.usual("us").symbol
    assert selected == [usual] * bool(units)
    boxes = [e for e in field.one("div", "calc-entry").all("input") if e.attributes["value"]]
    text = "; ".join(box.attributes["value"] for box in boxes[: each.several])
    value, _ = each.take(Typed(text, usual), "us")
    assert value == pytest.approx(each.take(Typed(each.default), "us")[0], rel=5e-4)


@every_calculator
def test_cautions_come_first(name: str) -> None:
    """By reason: who reads down the page meets the caution before the work."""
    declared = calculator(name)
    html = section(solve(declared), "key", "")
    first = html.index("data-field")
    for caution in declared.cautions:
        assert html.index(cited(caution, "")) < first


@every_calculator
@patient
@given(data=st.data())
def test_every_answer_is_well_formed_and_whole(name: str, data: st.DataObject) -> None:
    """The HTML standard, and: every output, every step, every source, no brace, no nan."""
    declared = calculator(name)
    case = solve(declared, data.draw(typed(declared)), data.draw(st.sampled_from(UNIT_SETS)))
    assume(case.answer)
    assert case.answer
    root = read(answer(case, "key", "../"))
    outputs = [e.attributes["data-output"] for e in root.all() if "data-output" in e.attributes]
    assert outputs == [each.name for each in declared.outputs]
    assert len(root.one("ol", "calc-steps").all("li")) == len(case.answer.steps)
    *links, about = [a.attributes["href"] for a in root.one("p", "calc-sources").all("a")]
    assert about == f"../reference/calculators/{name}.html"
    assert links == [f"../sources.html#{each}" for each in declared.sources]
    assert not {"{", "}"} & set(root.text)
    assert not {"nan", "inf", "None"} & set(root.text.split())


def test_a_value_outside_its_limit_is_told_in_words() -> None:
    """WCAG 2.2, 1.4.1: colour alone tells nothing; a negative margin is also said."""
    declared = calculator("outlet_setting")
    words = declared.output("margin").outside
    for outlet, outside in (("6 gpm", True), ("4 gpm", False)):
        case = solve(declared, {"outlet": Typed(outlet)})
        (margin,) = (
            e
            for e in read(answer(case, "key", "")).all()
            if e.attributes.get("data-output") == "margin"
        )
        assert (words in margin.text) is outside
        assert (margin.attributes.get("data-level") == "danger") is outside


def test_no_answer_stands_beside_wrong_inputs() -> None:
    """By reason: an old answer beside new inputs is a false one."""
    case = solve(calculator("outlet_setting"), {"inlet": Typed("x"), "limit": Typed("beside")})
    root = read(answer(case, "key", ""))
    assert not [e for e in root.all() if "data-output" in e.attributes]
    for name in ("inlet", "limit"):
        assert case.calculator.input(name).label in root.text
    assert set(told_errors(case)) == {"inlet", "limit"}


def test_escaping() -> None:
    """The HTML standard: five signs, in text and in attributes; what is HTML already stays."""
    assert escape("<a href=\"x\">'&amp;'</a>") == (
        "&lt;a href=&quot;x&quot;&gt;&#39;&amp;amp;&#39;&lt;/a&gt;"
    )
    inner = tag("b", "1 < 2")
    assert tag("p", inner, title='"') == '<p title="&quot;"><b>1 &lt; 2</b></p>'
    assert tag("input", value=None, checked=True, hidden=False) == "<input checked>"


def test_a_typed_text_is_escaped_in_the_form() -> None:
    """The HTML standard: the mark of inches is the end of an attribute unless escaped."""
    case = solve(calculator("outlet_setting"), {"rise": Typed("5' 6\"", "ft")})
    root = read(section(case, "key", ""))
    assert "5' 6\"" in [box.attributes.get("value") for box in root.all("input")]


@pytest.mark.parametrize("source", SOURCES)
def test_a_citation_becomes_a_link(source: str) -> None:
    """The rule of `calc.sources`: [id] leads to the page of sources."""
    root = read(cited(f"Said by <some> [{source}].", "../"))
    assert root.one("a").attributes["href"] == f"../sources.html#{source}"
    assert root.text == f"Said by <some> ({SOURCES[source].short})."
