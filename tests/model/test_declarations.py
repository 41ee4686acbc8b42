"""What is declared: malformed declarations fail at once, and every source is a real one."""

import ast
import re
from dataclasses import replace
from pathlib import Path

import pytest

from calc.calculators import calculator, names
from calc.errors import Refused
from calc.model import UNIT_SETS, Answer, Calculator, Choice, Input, Output, Typed, solve
from calc.other_treatment import OPTIONS
from calc.sources import SOURCES, entry
from calc.units import flow, gpm
from tests.model.given import CALCULATORS

ROOT = Path(__file__).resolve().parents[2]
every_calculator = pytest.mark.parametrize("declared", CALCULATORS, ids=names())
EVERY_INPUT = [(one, each) for one in CALCULATORS for each in one.inputs]
every_input = pytest.mark.parametrize(
    ("declared", "each"), EVERY_INPUT, ids=[f"{one.name}-{each.name}" for one, each in EVERY_INPUT]
)

INLET = Input(
    name="inlet", label="Flow in", kind=flow, default="5 gpm", origin="invented", low=0.1 * gpm,
    high=100 * gpm, measure="With a pail.",
)  # fmt: skip
DOUBLE = Output(name="double", label="Twice the flow in", kind=flow)
LIMIT = Choice(
    name="limit", label="Limit", options={"before": "before", "after": "after"}, default="before",
    origin="invented", measure="Look.",
)  # fmt: skip


def double(inlet: float) -> Answer:
    return Answer({"double": 2 * inlet}, (), ())


WELL_FORMED = Calculator(
    name="double", title="Double", question="What is twice the flow?", inputs=(INLET,),
    outputs=(DOUBLE,), work=double, cautions=("Take care.",), sources=("nist-811",),
)  # fmt: skip


def test_a_well_formed_calculator_answers() -> None:
    """By hand: the example that the tests below spoil is sound itself."""
    case = solve(WELL_FORMED)
    assert case.answer
    assert case.answer.outputs["double"] == 10 * gpm


@pytest.mark.parametrize(
    ("spoiled", "error", "says"),
    [
        ({"inputs": (INLET, INLET)}, ValueError, "stands twice"),
        ({"outputs": (DOUBLE, DOUBLE)}, ValueError, "stands twice"),
        ({"outputs": (replace(DOUBLE, name="inlet"),)}, ValueError, "stands twice"),
        ({"inputs": (replace(INLET, name="outlet"),)}, ValueError, "the work takes"),
        ({"inputs": (INLET, LIMIT)}, ValueError, "the work takes"),
        ({"inputs": ()}, ValueError, "the work takes"),
        ({"sources": ("nist-811", "hearsay-1999")}, KeyError, "hearsay-1999"),
        ({"sources": ()}, ValueError, "no sources"),
        ({"cautions": ()}, ValueError, "no cautions"),
    ],
)
def test_a_malformed_calculator_fails(
    spoiled: dict[str, tuple[object, ...]], error: type[Exception], says: str
) -> None:
    """The model's own rule: a mistake in a declaration shows when it is imported."""
    with pytest.raises(error, match=says):
        replace(WELL_FORMED, **spoiled)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("spoiled", "error"),
    [
        ({"default": "101 gpm"}, Refused),
        ({"default": "0"}, Refused),
        ({"default": ""}, Refused),
        ({"default": "five"}, Refused),
        ({"default": "5 psi"}, Refused),
        ({"us": "psi"}, Refused),
        ({"si": "furlong"}, KeyError),
    ],
)
def test_a_malformed_input_fails(spoiled: dict[str, str], error: type[Exception]) -> None:
    """The model's own rule: a default is in range and a usual unit is one of its kind."""
    with pytest.raises(error):
        replace(INLET, **spoiled)  # type: ignore[arg-type]


def test_a_choice_needs_one_of_its_options_as_default() -> None:
    """The model's own rule."""
    with pytest.raises(Refused):
        replace(LIMIT, default="beside")


def test_what_is_not_declared_is_not_found() -> None:
    """The model's own rule: KeyError for a name that is none."""
    for missing in ("no_such", "tank draw", "../fields", "", "fields", "__init__", "__pycache__"):
        with pytest.raises(KeyError):
            calculator(missing)
    with pytest.raises(KeyError):
        WELL_FORMED.input("double")
    with pytest.raises(KeyError):
        WELL_FORMED.output("inlet")
    with pytest.raises(KeyError, match="hearsay"):
        entry("hearsay")


@every_calculator
def test_a_calculator_is_named_as_its_module_and_has_cautions(declared: Calculator) -> None:
    """The package's own rule, and: cautions come before work that can hurt someone."""
    assert calculator(declared.name) is declared
    assert all(len(caution) > 20 for caution in declared.cautions)
    assert any("local codes" in caution.lower() for caution in declared.cautions)


@every_input
def test_every_input_says_how_and_where_from(declared: Calculator, each: Input | Choice) -> None:
    """The model's own rule: how it is measured, and where its default comes from."""
    assert len(each.measure) > 10
    assert each.origin
    assert each.group


@every_input
def test_a_default_names_its_unit_and_is_in_range(declared: Calculator, each: Input) -> None:
    """The model's own rule: the same default in either set of units."""
    taken = [each.take(Typed(each.default), unit_set) for unit_set in UNIT_SETS]
    assert taken[0] == taken[1]


@every_input
def test_the_ends_of_a_range_as_printed_are_in_it(declared: Calculator, each: Input) -> None:
    """By reason: who types the limit that the error names is not refused again."""
    if not isinstance(each, Input):
        return
    unit = each.usual("us")
    for end in (each.low, each.high):
        each.take(Typed(f"{unit.out_of_si(end):.6g} {unit.symbol}"), "us")


@every_input
def test_just_outside_a_range_is_refused(declared: Calculator, each: Input) -> None:
    """By reason: the range is enforced, on both sides, in every unit of the kind."""
    if not isinstance(each, Input):
        return
    for unit in each.kind.units:
        for end, reason, beyond in ((each.low, "below", -1.0), (each.high, "above", 1.0)):
            outside = unit.out_of_si(end + beyond * 0.001 * (abs(end) or each.high))
            with pytest.raises(Refused) as refused:
                each.take(Typed(f"{outside:.9g}", unit.symbol), "us")
            assert (refused.value.reason, refused.value.field) == (reason, each.name)


def cited_in_code() -> set[str]:
    """Ids in square brackets in the strings and docstrings of `calc`."""
    strings = (
        node.value
        for path in (ROOT / "calc").rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    )
    return {found for text in strings for found in re.findall(r"\[([a-z]+(?:-[a-z0-9]+)*)\]", text)}


def test_every_citation_in_the_code_has_its_source() -> None:
    """The rule of `calc.sources`: every [id] is there.

    An id of one word cannot be told from other words in brackets; those with a hyphen can.
    """
    cited = {each for each in cited_in_code() if "-" in each}
    assert len(cited) > 5
    assert cited <= set(SOURCES)


def test_every_source_is_used() -> None:
    """By reason: a source that nothing cites backs nothing."""
    chapters = "".join(p.read_text(encoding="utf-8") for p in (ROOT / "docs").rglob("*.md"))
    used = cited_in_code() | {each for one in CALCULATORS for each in one.sources}
    used |= {each.source for each in OPTIONS}
    unused = {each for each in SOURCES if each not in used and each not in chapters}
    assert not unused


def test_every_source_says_who_what_when_and_how_it_was_seen() -> None:
    """The rule of `calc.sources`."""
    for source in SOURCES.values():
        assert all((source.author, source.title, source.place))
        assert 1900 < source.year < 2100
        assert source.seen in ("read", "second-hand", "from memory")
