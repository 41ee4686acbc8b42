"""A set as data for a browser without Python. How it is graded there: test_player.py."""

import gzip
import json
from typing import Any

import pytest

from build_scripts.runtime.imports import PAGE_ASKS, calculators, reached
from calc.coursework.deck import VARIANTS
from calc.coursework.package import package
from calc.coursework.problem import Problem, ProblemSet
from calc.coursework.record import sheet
from calc.coursework.variants import variant
from tests.coursework.given import SETS
from tests.coursework.player import player

HALF_A_ZIP = 75_000  # bytes; the issue allows 150 kB, page and scripts included


@pytest.fixture(scope="module", params=SETS, ids=[each.name for each in SETS])
def made(request: pytest.FixtureRequest) -> tuple[ProblemSet, dict[str, Any]]:
    problems: ProblemSet = request.param
    return problems, json.loads(json.dumps(package(problems)))


def test_a_package_is_small(made: tuple[ProblemSet, dict[str, Any]]) -> None:
    """Issue: a zip under 150 kB, of which the table may take half."""
    _, told = made
    text = json.dumps(told, ensure_ascii=False, separators=(",", ":"))
    assert len(gzip.compress(text.encode())) < HALF_A_ZIP


def test_rows_are_the_variants(made: tuple[ProblemSet, dict[str, Any]]) -> None:
    """Python's own variants: text put together from the row, right answers to seven digits."""
    problems, told = made
    for each in told["problems"]:
        problem = problems.problem(each["name"])
        assert len(each["rows"]) == VARIANTS
        if not isinstance(problem, Problem):
            continue
        for number in (1, 211, 400):
            dealt = variant(problems, each["name"], number)
            places, right, slips, known = each["rows"][number - 1]
            text = each["text"]
            for (name, words), place in zip(each["draws"].items(), places, strict=True):
                text = text.replace(f"{{{name}}}", words[place])
            assert text == dealt.text
            for value, question in zip(right, dealt.questions, strict=True):
                same = question.right if question.options else pytest.approx(question.right, 1e-6)
                assert value == same
            assert [len(part) for part in slips] == [
                len(question.get("slips", ())) for question in each["questions"]
            ]
            assert len(known) == len(each["known"])


def test_a_first_visit_does_not_carry_the_coursework() -> None:
    """The design: what a page can reach of `calc` from its forms holds no problem and no key."""
    carried = reached([PAGE_ASKS, *calculators()])
    assert not [name for name in carried if name.startswith("calc.coursework")]


def test_check_codes(made: tuple[ProblemSet, dict[str, Any]]) -> None:
    """The same as on paper."""
    problems, told = made
    for number in (1, 211, 400):
        assert told["codes"][number - 1] == sheet(problems, number).code


def test_javascript_follows_own_figures(made: tuple[ProblemSet, dict[str, Any]]) -> None:
    """The player against calc, every variant: later figures from earlier ones a fifth too large."""
    problems, told = made
    cases = [each for each in told["problems"] if "questions" in each]
    compared = 0
    for each, rows in zip(cases, player("follows", problems.name, factor=1.2), strict=True):
        for number, row in enumerate(rows, 1):
            if number % 10:
                continue
            dealt = variant(problems, each["name"], number)
            assert dealt.working
            for at, (question, value) in enumerate(zip(dealt.questions, row, strict=True)):
                if value is None:
                    continue
                own = {
                    before.name: 1.2 * before.right
                    for before in dealt.questions[:at]
                    if isinstance(before.right, float) and before.name in dealt.working.found
                }
                follows = dealt.working.value(question.name, own)
                assert follows is not None
                # seven digits of two figures that nearly cancel are fewer in their difference
                assert abs(value - follows) < question.band / 100
                compared += 1
    assert compared or not any(
        q["follows"] for each in cases for q in each["questions"] if "follows" in q
    )


def test_a_package_without_answers_has_none() -> None:
    """Issue: graded work leaves what is right out: neither figures nor slips nor help."""
    told = package(SETS[0], answers=False)
    text = json.dumps(told)
    for word in ('"slips"', '"help"', '"because"', '"tolerance"', '"follows"', '"common"'):
        assert word not in text
    problem = SETS[0].problems[1]
    right = variant(SETS[0], problem.name, 1).questions[0].right
    assert isinstance(right, float)
    rows = told["problems"][1]["rows"]  # type: ignore[index]
    assert f"{right:.5g}" not in json.dumps(rows)
