"""What the page of a problem set is told: sheets, checks, variants dealt, response files."""

import json
from pathlib import Path
from typing import Any

import pytest

from calc import figures
from calc.coursework.deck import seat
from calc.coursework.helping import full_working, right_words
from calc.coursework.practice import reply
from calc.coursework.practice_sheet import example_html
from calc.coursework.problem import ProblemSet
from calc.coursework.record import Try, sheet
from calc.coursework.regrade import regraded, responses
from calc.coursework.sets import problem_set
from calc.views.html import escape
from tests.coursework.given import SETS

STORAGE = problem_set("well_storage")
every_set = pytest.mark.parametrize("chosen", SETS, ids=lambda each: each.name)


def asked(tries: list[Try] | None = None, **more: str) -> dict[str, Any]:
    return {"set": STORAGE.name, "number": "17", "word": "", "tries": tries or []} | more


def right(chosen: ProblemSet, number: int, word: str = "") -> list[Try]:
    """What a student writes who is right throughout, in the units of the key."""
    return [
        Try(name, each.name, *written(each.right, each.usual))
        for name, dealt in sheet(chosen, number, word).variants.items()
        for each in dealt.questions
    ]


def written(value: Any, unit: Any) -> tuple[str, str]:
    return (value, "") if unit is None else (figures.written(unit.out_of_si(value), 4), unit.symbol)


@pytest.mark.parametrize("number", ["0", "401", "-1", "", "x", "1.5", "१७", "99999999"])
def test_a_variant_that_there_is_none_of_is_refused(number: str) -> None:
    """By reason: 0 is the worked example, and nobody is to hand it in."""
    assert set(reply("show", asked(number=number))) == {"refused"}


@every_set
def test_a_sheet_asks_everything_and_tells_nothing(chosen: ProblemSet) -> None:
    shown = reply("show", asked(set=chosen.name, number="230"))
    for dealt in sheet(chosen, 230).variants.values():
        assert escape(dealt.text) in shown["html"]
        for each in dealt.questions:
            assert escape(each.ask) in shown["html"]
            if not each.options:
                assert str(escape(right_words(each))) not in shown["html"].replace(dealt.text, "")
        for line in full_working(dealt):
            assert str(escape(line)) not in shown["html"]


@every_set
def test_who_is_right_earns_all_marks_and_sees_the_working(chosen: ProblemSet) -> None:
    tries = right(chosen, 230)
    shown = reply("show", asked(tries, set=chosen.name, number="230"))
    full = sheet(chosen, 230).full
    assert shown["score"].startswith(f"Marks: {full} of {full}.")
    for dealt in sheet(chosen, 230).variants.values():
        for line in full_working(dealt):
            assert str(escape(line)) in shown["html"]


def test_the_working_waits_for_the_last_question_of_a_problem() -> None:
    tries = [each for each in right(STORAGE, 17) if each.problem == "turnover"]
    assert reply("check", asked(tries[:1]))["worked"] == ""
    assert "Working" in reply("check", asked(tries))["worked"]
    later_wrong = [*tries, tries[0]._replace(text="1")]
    assert "Working" in reply("check", asked(later_wrong))["worked"]


@pytest.mark.parametrize(
    ("text", "unit", "says"),
    [
        ("1,234", "min", "thousand"),
        ("", "min", ""),
        ("abc", "min", ""),
        ("12", "", "In which unit?"),
        ("12", "gal", ""),
        ("9" * 5000, "min", ""),
    ],
)
def test_what_cannot_be_read_is_asked_back_and_counts_for_nothing(
    text: str, unit: str, says: str
) -> None:
    told = reply("check", asked([Try("turnover", "t_f", text, unit)]))
    assert not told["counts"]
    assert says in told["told"]
    assert "Tries" not in told["told"]


def test_help_grows_with_the_misses() -> None:
    """A step, then its formula, then another variant worked."""
    marks = ("Look again", "t_f = V_u / S", "A worked example with other numbers.")
    for misses in range(4):
        wrong = [Try("turnover", "t_f", "3", "min")] * misses
        shown = reply("show", asked(wrong))["html"]
        assert [mark in shown for mark in marks] == [misses > place for place in range(3)]


def test_the_example_is_variant_0_and_gives_its_answers() -> None:
    html = example_html(STORAGE)
    for dealt in sheet(STORAGE, 0).variants.values():
        assert escape(dealt.text) in html
        for each in dealt.questions:
            assert escape(right_words(each)) in html


def test_a_name_is_dealt_the_seat_that_the_command_line_deals() -> None:
    assert reply("deal", asked(section="Monday", learner=" 1017 ")) == {
        "number": seat("Monday", "1017")
    }
    assert set(reply("deal", asked(section="Monday", learner=" "))) == {"refused"}


def test_a_response_goes_through_regrading_without_a_remark(tmp_path: Path) -> None:
    number = seat("Monday", "Ünal, 7")
    tries = [*right(STORAGE, number, "heron")[:-2], Try("peak", "V_n", "1", "gal")]
    who = {"section": "Monday", "learner": "Ünal, 7", "word": "heron"}
    saved = reply("response", asked(tries, number=str(number), **who))
    file = tmp_path / saved["name"]
    file.write_text(saved["file"], encoding="utf-8")
    (grade,) = regraded(responses(file), "heron")
    assert grade.remarks == ()
    assert grade.response.claimed == pytest.approx(grade.sheet.score, abs=1e-4)
    assert 0 < grade.sheet.score < 1
    assert "heron" not in saved["file"]


def test_a_response_of_another_seat_says_so_and_one_of_nobody_is_refused() -> None:
    other = 1 if seat("Monday", "1017") != 1 else 2
    told = reply("response", asked(number=str(other), section="Monday", learner="1017"))
    assert str(seat("Monday", "1017")) in told["says"]
    assert json.loads(told["file"])["variant"] == other
    assert set(reply("response", asked(section="Monday", learner=""))) == {"refused"}
