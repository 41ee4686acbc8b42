"""Every problem times 400: no two alike, sound, and worked by `calc`."""

import re
from math import isfinite
from pathlib import Path

import pytest

from calc.calculators import calculator
from calc.coursework.deck import VARIANTS
from calc.coursework.problem import Problem, ProblemSet, Recall, grid
from calc.coursework.variants import (
    CLEAR,
    Question,
    Variant,
    drawn_words,
    solved,
)
from calc.coursework.working import Working
from calc.model import Case, Choice, Input
from tests.coursework.given import SETS, Dealt, decisions, numbers_asked

DOCS = Path(__file__).resolve().parents[2] / "docs"
# Verbs for what can be seen and marked; "understand" and "know" are not among them.
MEASURABLE = {"Compute", "Decide", "Name", "Explain", "Choose", "Read", "Find", "Compare"}
UNSAID = 0.1  # of itself: what the text leaves out may change by so much
SEEN = 0.3  # of the tolerance: more than that a student would see


def assert_none_alike(many: Dealt) -> None:
    told = {
        (each.text, *((q.ask, *q.options.values()) for q in each.questions))
        for each in many.variants
    }
    assert len(told) == VARIANTS


def test_no_two_variants_are_alike(case: Dealt) -> None:
    """Issue: at least 400 variants. Told apart by what a student reads."""
    assert_none_alike(case)


def test_no_two_variants_of_recall_are_alike(recall: Dealt) -> None:
    """As above; two may ask the same in another order."""
    assert_none_alike(recall)


def test_questions_of_recall_are_sound(recall: Dealt) -> None:
    """By reason: what is right is among the options, and no option stands twice."""
    for each in recall.variants:
        for question in each.questions:
            assert question.options[str(question.right)]
            assert len({*question.options.values()}) == len(question.options)
        assert len({question.ask for question in each.questions}) == len(each.questions)


def test_variants_are_sound(case: Dealt) -> None:
    """Issue: no slip within twice the tolerance of the right answer, nothing refused, a figure
    rounded as asked is still right."""
    for each in case.variants:
        for question in each.questions:
            if question.options:
                assert question.right in question.options
            else:
                assert_sound(question)


def assert_sound(question: Question) -> None:
    assert isinstance(question.right, float)
    assert isfinite(question.right)
    assert question.usual
    assert question.band > 0
    for slip, value in question.slips:
        assert abs(value - question.right) > CLEAR * question.band, slip.hint
    for unit in question.kind.units if question.kind else ():
        rounded = float(f"{unit.out_of_si(question.right):.{_digits(question) - 1}e}")
        assert question.near(unit.into_si(rounded)), unit.symbol


def _digits(question: Question) -> int:
    """Figures asked for; where the width is absolute, as many as a pocket calculator is read to."""
    return 4 if question.absolute else question.digits


def test_the_calculator_gives_the_answers(case: Dealt) -> None:
    """A second reading: each letter asked for is an output of that symbol, or follows from the
    steps evaluated one by one, to 1e-9."""
    problem = case.problem
    assert isinstance(problem, Problem)
    for each in case.variants[::20]:
        working = each.working
        assert working
        for part in numbers_asked(problem):
            right = each.question(part.finds).right
            assert isinstance(right, float)
            if part.finds in working.found:
                follows = working.value(part.finds, {})
                assert follows == pytest.approx(right, rel=1e-9, abs=1e-12)
            else:
                assert each.case
                assert each.case.answer
                assert each.case.answer.outputs[part.finds] == right


def test_every_decision_can_be_right(case: Dealt) -> None:
    """By reason: an option that is never right gives the others away. One in fifty at least."""
    problem = case.problem
    assert isinstance(problem, Problem)
    for part in decisions(problem):
        right = [each.question(part.finds).right for each in case.variants]
        for option in part.options:
            assert right.count(option.name) >= VARIANTS / 50, option.words


def test_nothing_needed_is_left_unsaid(case: Dealt) -> None:
    """By reason: an input that the text does not give must not matter to the answer."""
    problem = case.problem
    assert isinstance(problem, Problem)
    said = {*re.findall(r"\{(\w+)\}", problem.text)}
    said |= {hole for part in problem.parts for hole in re.findall(r"\{(\w+)\}", part.ask)}
    assert {*problem.draws} <= said
    for each in case.variants[:3]:
        assert each.case
        for input_ in calculator(problem.calculator).inputs:
            if input_.name not in said and isinstance(input_, Input) and input_.several == 1:
                assert_no_matter(problem, each, input_, each.case)


def assert_no_matter(problem: Problem, dealt: Variant, input_: Input, case: Case) -> None:
    value = case.values[input_.name]
    assert isinstance(value, float)
    for factor in (1 - UNSAID, 1 + UNSAID):
        moved = min(max(value * factor, input_.low), input_.high)
        unit = input_.usual("us")
        text = f"{unit.out_of_si(moved):.9g} {unit.symbol}"
        drawn = {name: case.typed[name].text for name in problem.draws}
        other = solved(problem, {**drawn, input_.name: text})
        if not other.answer:  # it contradicts another one, which says nothing of the answer
            assert {each.reason for each in other.errors} == {"contradiction"}
            continue
        for part in numbers_asked(problem):
            question = dealt.question(part.finds)
            found = Working(other)
            value_now = (
                found.stands[part.finds].value
                if part.finds in found.found
                else other.answer.outputs[part.finds]
            )
            assert value_now is not None
            assert isinstance(question.right, float)
            assert abs(value_now - question.right) < SEEN * question.band, (
                f"{part.finds} hangs on {input_.name}, which the text does not give"
            )


def test_slips_are_slips_of_this_working(case: Dealt) -> None:
    """By reason: a slip that leads nowhere in any variant is a misspelt formula."""
    problem = case.problem
    assert isinstance(problem, Problem)
    for part in numbers_asked(problem):
        led = {id(s) for each in case.variants[:20] for s, _ in each.question(part.finds).slips}
        for slip in part.slips:
            assert id(slip) in led, slip.formula


@pytest.mark.parametrize("problems", SETS, ids=[each.name for each in SETS])
def test_a_set_stands_on_its_chapter(problems: ProblemSet) -> None:
    """The chapter's own headings; the issue's forms, verbs, level and time."""
    text = (DOCS / problems.chapter).read_text(encoding="utf-8")
    headings = {match[1].strip() for match in re.finditer(r"^#+ (.*)$", text, re.MULTILINE)}
    forms = {each.form for each in problems.problems}
    assert forms == {"recall", "one-step", "multi-step", "field case"}
    for problem in problems.problems:
        assert problem.objective.split()[0] in MEASURABLE
        assert problem.level in (1, 2, 3)
        assert 1 <= problem.minutes <= 30
        asked = problem.facts if isinstance(problem, Recall) else problem.parts
        for each in asked:
            assert each.section in headings, f"{problem.name}: no heading “{each.section}”"
        if problem.form == "field case":
            assert isinstance(problem, Problem)
            assert problem.text.startswith("Invented:")


def test_one_set_a_chapter() -> None:
    """Issue: one set for a chapter; names follow the chapters'."""
    assert len({each.chapter for each in SETS}) == len(SETS)
    for each in SETS:
        path = each.chapter.removesuffix(".md")
        assert each.name == re.sub(r"\W", "_", path)


def test_grids_are_written_as_people_write() -> None:
    """Written by hand."""
    assert grid("0.5", "1.5", "0.5", "psi") == ("0.5 psi", "1 psi", "1.5 psi")
    assert grid("8", "12", "2", "in") == ("8 in", "10 in", "12 in")
    assert grid("0.05", "0.15", "0.05", "gpm") == ("0.05 gpm", "0.1 gpm", "0.15 gpm")


def test_drawn_values_are_words(case: Dealt) -> None:
    """By reason: what is drawn stands in the text as it was written, no digit lost."""
    problem = case.problem
    assert isinstance(problem, Problem)
    for drawn, values in problem.draws.items():
        if isinstance(calculator(problem.calculator).input(drawn), Choice):
            continue
        words = [drawn_words(problem, drawn, text) for text in values]
        assert len({*words}) == len(values)
        for text, shown in zip(values, words, strict=True):
            numbers = re.findall(r"\d+(?:\.\d+)?", text)
            assert [float(n) for n in numbers] == [
                float(n) for n in re.findall(r"\d+(?:\.\d+)?", shown)
            ]
