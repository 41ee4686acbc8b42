"""Tries replayed, help after misses, responses graded again, sheets and the command line."""

import csv
import io
import json
from pathlib import Path

import pytest

from calc.__main__ import main
from calc.coursework.deck import place, seat
from calc.coursework.helping import full_working, help_after, right_words
from calc.coursework.record import Try, replayed, sheet
from calc.coursework.regrade import Grade, Unreadable, regraded, responses
from calc.coursework.response import FORMAT, VERSION
from calc.coursework.sets import problem_set
from calc.coursework.sheets import key_text, sheet_text
from calc.coursework.variants import EXAMPLE, variant

BALANCE = problem_set("balance")
type Capture = pytest.CaptureFixture[str]


def right_tries(number: int, salt: str = "") -> list[Try]:
    """What a perfect student types: the key's own figures."""
    tries = []
    for name, each in sheet(BALANCE, number, salt).variants.items():
        for question in each.questions:
            text = str(question.right) if question.options else right_words(question)
            tries.append(Try(name, question.name, text))
    return tries


def test_the_key_scores_full_marks() -> None:
    """By reason: what the key prints, typed in, earns every mark."""
    for number in (1, 200, 400):
        made = replayed(BALANCE, number, right_tries(number))
        assert made.marks == made.full
        assert made.score == 1


def test_another_variants_key_does_not() -> None:
    """By reason: numbers of variant 5 earn little on variant 6."""
    assert replayed(BALANCE, 6, right_tries(5)).score < 0.5


def test_best_try_counts_and_a_question_back_does_not() -> None:
    """By hand, variant 17: a slip (0.3), a question back, then right; a worse one changes
    nothing."""
    tries = [
        Try("cut_out", "Q_x", "8.02", "gpm"),  # in proportion to the pressure
        Try("cut_out", "Q_x", "1,234", "gpm"),
        Try("cut_out", "Q_x", "6.27", "gpm"),
        Try("cut_out", "Q_x", "1", "gpm"),
    ]
    standings = [replayed(BALANCE, 17, tries[:n]).standings["cut_out", "Q_x"] for n in range(1, 5)]
    assert [each.best for each in standings] == [0.3, 0.3, 1, 1]
    assert [each.tries for each in standings] == [1, 1, 2, 3]
    assert [each.misses for each in standings] == [1, 1, 1, 2]


def test_guesses_among_options_earn_what_chance_leaves() -> None:
    """Arithmetic: of three options the second guess is worth half, the third nothing."""
    question = variant(BALANCE, "facts", 17).questions[0]
    wrong = [option for option in question.options if option != question.right]
    order = [*wrong, str(question.right)]
    tries = [Try("facts", question.name, option) for option in order]
    assert replayed(BALANCE, 17, tries).standings["facts", question.name].best == 0
    assert replayed(BALANCE, 17, tries[1:]).standings["facts", question.name].best == 0.5


def test_own_figures_are_carried_in_a_replay() -> None:
    """By hand: 5.5 gpm in is wrong, but 5.5 less 6.25 is −0.75, and is right for it."""
    tries = [Try("worst", "Q_w", "5.50", "gpm"), Try("worst", "M", "-0.75", "gpm")]
    made = replayed(BALANCE, 17, tries)
    assert made.standings["worst", "Q_w"].best == 0
    assert made.standings["worst", "M"].best == 1


def test_help_grows_with_misses() -> None:
    """Issue: first the step, then the formula, then another variant worked."""
    told = [help_after(misses, BALANCE, "cut_out", "Q_x", 17) for misses in range(4)]
    assert not told[0]
    assert told[1] == [
        "Look again at this step: Worst flow out. Read “Where the outlet limit belongs”."
    ]
    assert "Q_x = Q_o × √(p_x / p_d)" in told[2]
    assert "Q_o: Flow out, measured today" in told[2]
    example = variant(BALANCE, "cut_out", EXAMPLE)
    assert example.text in told[3]
    assert example.text != variant(BALANCE, "cut_out", 17).text
    assert not any("6.27" in line for line in told[3])
    assert any("6.268" in line for line in full_working(variant(BALANCE, "cut_out", 17)))


def test_a_word_of_the_school_deals_other_numbers() -> None:
    """By reason: with a word the decks are shuffled otherwise, and the code tells."""
    assert sheet(BALANCE, 17).code != sheet(BALANCE, 17, "larch").code
    assert replayed(BALANCE, 17, right_tries(17), "larch").score < 0.5
    assert replayed(BALANCE, 17, right_tries(17, "larch"), "larch").score == 1


def test_sheets_hold_no_answers() -> None:
    """Issue: keys apart from sheets; both carry variant, revision and check code."""
    told, key = sheet_text(BALANCE, 17), key_text(BALANCE, 17)
    assert "6.27 gpm" in key
    assert "6.27" not in told
    assert "4.63" not in told
    for text in (told, key):
        assert "variant 17 of 400, revision 2026-11-25" in text
        assert sheet(BALANCE, 17).code in text


def response(learner: str, tries: list[Try], /, **changes: object) -> dict[str, object]:
    number = seat("A", learner)
    made: dict[str, object] = {
        "format": FORMAT,
        "version": VERSION,
        "set": "balance",
        "revision": BALANCE.revision,
        "section": "A",
        "learner": learner,
        "variant": number,
        "code": sheet(BALANCE, number).code,
        "claimed": replayed(BALANCE, number, tries).score,
        "tries": [list(each) for each in tries],
    }
    return made | changes


def graded(folder: Path, *many: dict[str, object]) -> list[Grade]:
    file = folder / "responses.json"
    file.write_text(json.dumps(list(many)), encoding="utf-8")
    return regraded(responses(file))


def test_honest_responses_pass(tmp_path: Path) -> None:
    """Issue: the score comes from the responses alone."""
    one, two = "1017", "1018"
    half = right_tries(seat("A", two))[:7]
    grades = graded(tmp_path, response(one, right_tries(seat("A", one))), response(two, half))
    assert [grade.remarks for grade in grades] == [(), ()]
    assert grades[0].sheet.score == 1
    assert 0 < grades[1].sheet.score < 1


def test_forged_responses_are_caught(tmp_path: Path) -> None:
    """Issue: a score without responses, one above them, another's variant, an altered sheet."""
    none = response("1017", [], claimed=1.0)
    more = response("1017", right_tries(seat("A", "1017"))[:3], claimed=0.95)
    other = response("1017", right_tries(5), variant=5, code=sheet(BALANCE, 5).code)
    altered = response("1017", [], code="000000", claimed=0)
    old = response("1017", [], revision="2025-01-01", claimed=0)
    said = [" ".join(grade.remarks) for grade in graded(tmp_path, none, more, other, altered, old)]
    assert "without any response" in said[0]
    assert "claims 95%, the responses earn" in said[1]
    assert "was dealt" in said[2]
    assert "check code" in said[3]
    assert "2025-01-01" in said[4]


def test_copied_responses_are_caught(tmp_path: Path) -> None:
    """Issue: answers that are right for a classmate's numbers and for nobody else's."""
    honest = response("1017", right_tries(seat("A", "1017")))
    copied = response("1018", right_tries(seat("A", "1017")))
    grades = graded(tmp_path, honest, copied)
    assert grades[0].remarks == ()
    assert "1017's" in " ".join(grades[1].remarks)


@pytest.mark.parametrize(
    "text",
    ["", "[", "{}", "[1]", '{"format": "other"}', "[" * 100_000,
     '{"format": "pail-and-timer responses", "version": 9}',
     '{"format": "pail-and-timer responses", "version": 1}'],
)  # fmt: skip
def test_what_is_no_response_is_refused(text: str, tmp_path: Path) -> None:
    """By reason: a line that names the file, and no traceback."""
    file = tmp_path / "r.json"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(Unreadable, match=r"r\.json"):
        list(responses(file))


@pytest.mark.parametrize(
    "changes",
    [{"set": "nope"}, {"variant": 0}, {"variant": 401}, {"variant": "x"}, {"tries": 5},
     {"tries": [["cut_out"]]}, {"tries": [["cut_out", "nope", "1", ""]]}, {"claimed": "much"}],
)  # fmt: skip
def test_a_broken_response_is_refused(changes: dict[str, object], tmp_path: Path) -> None:
    """By reason: as above, for a file whose members make no sense."""
    with pytest.raises(Unreadable, match=r"responses\.json"):
        graded(tmp_path, response("1017", [], **changes))


def test_the_command_line(capsys: Capture, tmp_path: Path) -> None:
    """Issue: sheets, keys and grades by one command each."""
    assert main(["problems"]) == 0
    assert "balance" in capsys.readouterr().out
    assert main(["keys", "balance", "--numbers", "17"]) == 0
    assert "6.27 gpm" in capsys.readouterr().out
    assert main(["sheets", "balance", "--section", "A", "--learner", "1017"]) == 0
    assert f"variant {seat('A', '1017')} of 400" in capsys.readouterr().out
    roster = tmp_path / "class.txt"
    roster.write_text("1017\n\n1018\n", encoding="utf-8")
    arguments = ["sheets", "balance", "--section", "A", "--list", str(roster)]
    assert main([*arguments, "--out", str(tmp_path / "out")]) == 0
    written = sorted(file.name for file in (tmp_path / "out").iterdir())
    assert written == sorted(f"balance-{place('A', row):03d}-sheet.txt" for row in (0, 1))
    capsys.readouterr()
    assert main(["sheets", "balance", "--section", "A", "--count", "2"]) == 0
    told = capsys.readouterr().out
    assert [f"variant {place('A', row)} of" in told for row in (0, 1, 2)] == [True, True, False]


def test_the_gradebook(capsys: Capture, tmp_path: Path) -> None:
    """Issue: a CSV; a name that a spreadsheet would run stays text."""
    file = tmp_path / "r.json"
    file.write_text(json.dumps(response("=1+1", [], claimed=1.0)), encoding="utf-8")
    assert main(["regrade", str(file)]) == 0
    (row,) = csv.DictReader(io.StringIO(capsys.readouterr().out))
    assert row["learner"] == "'=1+1"
    assert (row["marks"], row["score"], row["claimed"]) == ("0.00", "0.000", "1.000")
    assert "without any response" in row["remarks"]
    assert main(["regrade", str(tmp_path / "none.json")]) == 2
    assert "none.json" in capsys.readouterr().err
