"""Every sentence a calculator can say, each reached by a case, with its figures put in."""

import ast
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import calc.calculators
from calc.calculators import calculator, names
from calc.model import UNIT_SETS, solve
from calc.request import case_of
from calc.views.words import finding_words, output_words, refusal_words
from tests.model.given import patient, typed

FOLDER = Path(calc.calculators.__file__).parent
FINDINGS = [
    ("pail_flow", "good", "Measured."),
    ("pail_flow pail=1 runs=8", "caution", "Rough."),
    ("pail_flow runs=53", "caution", "More runs."),
    ("pail_flow", "good", "Enough runs."),
    ("pail_flow timing=2", "good", "Enough runs."),
    ("outlet_setting outlet=4", "good", "Safe."),
    ("outlet_setting outlet=4.7", "caution", "Too close."),
    ("outlet_setting outlet=6", "danger", "Can run dry."),
    ("outlet_setting limit=after house_tank=80", "danger", "Not safe."),
    ("outlet_setting inlet=4.5", "caution", "Service is due."),
    ("outlet_setting inlet=7", "caution", "Keep the service promise."),
    ("outlet_setting house_gauge=30 outlet=4", "caution", "Not proven."),
    ("outlet_setting house_gauge=30", "caution", "Not the worst case."),
    ("outlet_setting limit=after", "caution", "Open pipe only."),
    ("tank_draw worst_inlet=2", "danger", "Runs dry."),
    ("tank_draw worst_inlet=4.8", "caution", "Lasts, this time."),
    ("tank_draw worst_inlet=7", "good", "Lasts."),
    ("aeration_removal", "danger", "Short of the target."),
    ("aeration_removal", "good", "One more stage, or more air."),
    ("aeration_removal aerator_air=30", "caution", "Only while it is clean."),
    ("aeration_removal aerator=trays aerator_air=60", "good", "Reaches the target."),
    ("aeration_removal air_radon=900", "danger", "Out of reach."),
    ("aeration_removal air_radon=200", "caution", "Give the blower clean air."),
    ("packed_tower", "danger", "Too short."),
    ("packed_tower tower_height=16", "caution", "High enough on paper."),
    ("packed_tower tower_height=25", "good", "High enough."),
    ("packed_tower aerator_air=0.2", "danger", "Too little air."),
    ("packed_tower tower_diameter=3", "caution", "Outside the trials."),
    ("packed_tower packing=50", "caution", "Packing too coarse."),
    ("re_aeration", "good", "Wait, then draw."),
    ("re_aeration aerator_air=0.5", "caution", "A long wait."),
    ("re_aeration", "danger", "Keep the lid shut."),
    ("re_aeration", "caution", "The house is not clean yet."),
    ("spray_removal", "danger", "Too little goes round."),
    ("spray_removal spray_way=passes", "danger", "Short of the target."),
    ("spray_removal spray_way=passes passes=6", "good", "Reaches the target."),
    ("spray_removal aerator_air=1", "caution", "Stale air."),
    ("spray_removal pass_removal=2", "caution", "Measure again."),
]
CONTRADICTIONS = [
    ("pail_flow mark=2", "mark", "is over a quarter of the pail (5 gal)"),
    ("outlet_setting rise=60 inlet_gauge=20", "inlet_gauge", "cannot lift water by 60 ft"),
    ("outlet_setting rise=60 well_cut_in=20", "well_cut_in", "cannot lift water by 60 ft"),
    ("outlet_setting cut_out=30", "cut_out", "must be above the cut-in of 30 psi"),
    ("outlet_setting precharge=50", "precharge", "must be below the cut-out of 50 psi"),
    ("outlet_setting inlet=5±3", "inlet", "is known too loosely to set a limit by"),
    ("outlet_setting outlet=6±41%", "outlet", "is known too loosely to set a limit by"),
    (
        "tank_draw float_closed=9",
        "float_closed",
        "must be well above the float's opening at 9.5 gal",
    ),
    ("tank_draw cut_out=29", "cut_out", "must be above the cut-in of 30 psi"),
    ("tank_draw precharge=55", "precharge", "must be below the cut-out of 50 psi"),
    ("tank_draw house_tank=1", "house_tank", "gives too little between cut-in and cut-out"),
    ("tank_draw limit=after pump=5", "pump", "must pass at least 6 gpm"),
    ("aeration_removal raw_radon=200", "target_radon", "must be below 200 pCi/L"),
    (
        "aeration_removal raw_radon=310 air_radon=1000",
        "air_radon",
        "gives the water more than 310 pCi/L",
    ),
    ("packed_tower raw_radon=200", "target_radon", "must be below 200 pCi/L"),
    ("re_aeration raw_radon=200", "target_radon", "must be below 200 pCi/L"),
    ("re_aeration air_radon=1000", "air_radon", "keeps the water above 300 pCi/L"),
    ("spray_removal raw_radon=200", "target_radon", "must be below 200 pCi/L"),
]


@pytest.mark.parametrize(("asked", "level", "head"), FINDINGS)
def test_findings(asked: str, level: str, head: str) -> None:
    """By hand: which side of each limit the case lies on."""
    case = case_of(asked.split())
    assert case.answer
    said = {(finding.level, finding.head) for finding in case.answer.findings}
    assert (level, head) in said


@pytest.mark.parametrize(("asked", "field", "says"), CONTRADICTIONS)
def test_contradictions(asked: str, field: str, says: str) -> None:
    """By hand: inputs that cannot both be true are refused at one of them, with its figures."""
    case = case_of(asked.split())
    assert case.answer is None
    (error,) = case.errors
    assert (error.field, error.reason) == (field, "contradiction")
    label = case.calculator.input(field).label
    assert refusal_words(case, error).replace("\u00a0", " ") == f"{label} {says}."


def constants_of(call: str, place: int, keyword: str) -> set[tuple[str, str]]:
    """The words that each calculator's module gives to `call` at `place` or by `keyword`,
    written there or kept first in a variable of the keyword's name."""
    found = set()
    for name in names():
        words: list[ast.expr] = []
        for node in ast.walk(ast.parse((FOLDER / f"{name}.py").read_text(encoding="utf-8"))):
            match node:
                case ast.Call(func=ast.Name(id=called)) if called == call:
                    words += [each.value for each in node.keywords if each.arg == keyword]
                    words += node.args[place : place + 1]
                case ast.Assign(targets=[ast.Name(id=variable)]) if variable == keyword:
                    words.append(node.value)
        found |= {(name, word.value) for word in words if isinstance(word, ast.Constant)}
    return {(name, word) for name, word in found if isinstance(word, str)}


def test_every_finding_has_its_case() -> None:
    """The code of the calculators: each head in it is reached by a case above."""
    reached = {(asked.split()[0], head) for asked, _, head in FINDINGS}
    assert reached == constants_of("Finding", 1, "head")


def test_every_contradiction_has_its_case() -> None:
    """The code of the calculators: each contradiction in it is reached by a case above."""
    reached = set()
    for asked, *_ in CONTRADICTIONS:
        (error,) = case_of(asked.split()).errors
        reached.add((asked.split()[0], error.facts["says"]))
    assert reached == constants_of("Refused", 99, "says")


@pytest.mark.parametrize("name", names())
@settings(patient, max_examples=100)
@given(data=st.data())
def test_sentences_have_their_figures_put_in(name: str, data: st.DataObject) -> None:
    """By reason: no brace, no empty figure and no nan reaches a reader."""
    declared = calculator(name)
    case = solve(declared, data.draw(typed(declared)), data.draw(st.sampled_from(UNIT_SETS)))
    said = [refusal_words(case, error) for error in case.errors]
    if case.answer:
        said += [finding_words(case, finding) for finding in case.answer.findings]
        said += [output_words(case, output) for output in declared.outputs]
    for words in said:
        assert words
        assert not set("{}") & set(words)
        assert not {"nan", "inf", "None"} & set(words.replace("\u00a0", " ").split())
