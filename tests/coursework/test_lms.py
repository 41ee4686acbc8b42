"""Exports of an LMS graded again: what a package kept or reported, as rows of a CSV."""

import csv
import io
from pathlib import Path

import pytest

from calc.__main__ import main
from calc.coursework.deck import place, seat
from calc.coursework.lms import KEPT, SCORE, Defaults, exported
from calc.coursework.record import Sheet, Try, replayed, sheet
from calc.coursework.regrade import Grade, Response, Unreadable, regraded
from calc.coursework.sets import problem_set
from calc.coursework.variants import variant
from tests.coursework.test_record import right_tries

BALANCE = problem_set("balance")
CLASS = Defaults("balance", "A")
type Capture = pytest.CaptureFixture[str]


def kept(number: int, tries: list[Try], floor: str = "") -> str:
    """`cmi.suspend_data` as DEVELOPERS.md tells; each answer brings its unit in its text."""
    problems = list(sheet(BALANCE, number).variants.items())
    names = [name for name, _ in problems]
    told = []
    for each in tries:
        at = names.index(each.problem)
        asked = [question.name for question in problems[at][1].questions].index(each.question)
        told.append(f"{at}{asked}-{each.text.replace('%', '%25').replace('~', '%7E')}")
    return "~".join(["1", BALANCE.revision, str(number), floor, *told])


def written(file: Path, rows: list[dict[str, str]], separator: str = ",") -> Path:
    columns = list(dict.fromkeys(name for row in rows for name in row))
    with file.open("w", encoding="utf-8-sig", newline="") as out:
        writer = csv.DictWriter(out, columns, delimiter=separator)
        writer.writeheader()
        writer.writerows(rows)
    return file


def graded(file: Path, otherwise: Defaults = CLASS) -> list[Grade]:
    return regraded(exported(file, otherwise))


def honest(learner: str) -> dict[str, str]:
    number = seat("A", learner)
    return {"learner": learner, KEPT: kept(number, right_tries(number)), SCORE: "100"}


def test_kept_tries_read_by_hand(tmp_path: Path) -> None:
    """By hand: the second problem's first question in its second unit; a signed answer, escaped."""
    first = list(sheet(BALANCE, 17).variants.values())[1].questions[0]
    assert first.kind
    text = f"1~{BALANCE.revision}~17~~1015.5~10-%E2%88%922 gpm"
    (one,) = exported(written(tmp_path / "e.csv", [{"learner": "x", KEPT: text}]), CLASS)
    problem = BALANCE.problems[1].name
    assert one.tries == (
        Try(problem, first.name, "5.5", first.kind.units[1].symbol),
        Try(problem, first.name, "−2 gpm"),
    )
    assert (one.number, one.claimed) == (17, None)


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_a_row_for_each_learner(separator: str, tmp_path: Path) -> None:
    """Issue: an export grades like the page's file; half the tries earn part."""
    number = seat("A", "1018")
    half = {"learner": "1018", KEPT: kept(number, right_tries(number)[:7]), SCORE: ""}
    grades = graded(written(tmp_path / "e.csv", [honest("1017"), half], separator))
    assert [grade.remarks for grade in grades] == [(), ()]
    assert grades[0].sheet.score == 1
    assert grades[1].sheet.score == replayed(BALANCE, number, right_tries(number)[:7]).score < 1


def test_a_row_for_each_element(tmp_path: Path) -> None:
    """By reason: the other way in which such tables are written comes to the same."""
    rows = [
        {"learner": learner, "element": element, "value": honest(learner)[element]}
        for element in (SCORE, KEPT)
        for learner in ("1017", "1018")
    ]
    grades = graded(written(tmp_path / "e.csv", rows))
    assert [grade.response.learner for grade in grades] == ["1017", "1018"]
    assert [grade.sheet.score for grade in grades] == [1, 1]
    assert [grade.response.claimed for grade in grades] == [1, 1]


def reported(made: Sheet, tries: list[Try]) -> dict[str, str]:
    """Interactions as a package reports them: an option's letter, a figure in SI."""
    told = {}
    for at, each in enumerate(tries):
        question = made.variants[each.problem].question(each.question)
        told[f"cmi.interactions.{at}.id"] = f"{each.problem}.{each.question}.try1"
        right = question.right
        said = (
            "abcdef"[list(question.options).index(each.text)]
            if isinstance(right, str)
            else f"{right:.7g}"
        )
        told[f"cmi.interactions.{at}.student_response"] = said
    return told


def test_interactions_where_nothing_was_kept(tmp_path: Path) -> None:
    """Issue: interactions of an export grade too."""
    number = seat("A", "1017")
    row = {"cmi.core.student_id": "1017", **reported(sheet(BALANCE, number), right_tries(number))}
    (grade,) = graded(written(tmp_path / "e.csv", [row]))
    assert grade.sheet.score == 1
    assert grade.remarks == ()


def test_a_forged_export_is_caught(tmp_path: Path) -> None:
    """Issue: a score that was set by hand, or somebody else's sheet."""
    none = {"learner": "1017", SCORE: "95"}
    number = seat("A", "1018")
    more = {"learner": "1018", KEPT: kept(number, right_tries(number)[:3]), SCORE: "95"}
    other = {"learner": "1019", KEPT: kept(5, right_tries(5)), SCORE: "100"}
    said = [" ".join(g.remarks) for g in graded(written(tmp_path / "e.csv", [none, more, other]))]
    assert "without any response" in said[0]
    assert "claims 95%, the responses earn" in said[1]
    assert "was dealt" in said[2]


def test_a_copy_between_two_exports_is_named(tmp_path: Path) -> None:
    """Issue: another learner's figures on one's own sheet."""
    copied = {
        "learner": "1018", KEPT: kept(seat("A", "1018"), right_tries(seat("A", "1017")))
    }  # fmt: skip
    grades = graded(written(tmp_path / "e.csv", [honest("1017"), copied]))
    assert grades[0].remarks == ()
    assert "1017's" in " ".join(grades[1].remarks)


def test_what_an_lms_could_not_keep_is_said(tmp_path: Path) -> None:
    """By reason: a zero without a word would be taken for the learner's."""
    number = seat("A", "1017")
    full = {"learner": "1017", KEPT: kept(number, right_tries(number)[:2], floor="8000")}
    old = {"learner": "1018", KEPT: "1~2020-01-01~7~~00-a"}
    grades = graded(written(tmp_path / "e.csv", [full, old]))
    assert "no room for all tries" in " ".join(grades[0].remarks)
    assert "sheet of 2020-01-01" in " ".join(grades[1].remarks)


@pytest.mark.parametrize(
    "data",
    [
        "2~2026-11-25~7~",
        "1~",
        "hello",
        *(f"1~{BALANCE.revision}~{rest}" for rest in ("401~", "x~", "7~~Z0-1", "7~~09-1")),
        *(f"1~{BALANCE.revision}~7~~{told}" for told in ("001a", "1", "00-%FF")),
    ],
)
def test_altered_data_stops_no_other(data: str, tmp_path: Path) -> None:
    """By reason: one broken record must not keep a class from its grades."""
    rows = [{"learner": "1018", KEPT: data, SCORE: "90"}, honest("1017")]
    broken, sound = graded(written(tmp_path / "e.csv", rows))
    assert "cannot be read" in " ".join(broken.remarks)
    assert "claims 90%" in " ".join(broken.remarks)
    assert sound.sheet.score == 1


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "learner"),
        ("a,b\n1,2\n", "learner"),
        ("learner,set\n1,nope\n", "no set 'nope'"),
        ("learner,cmi.core.score.raw\n1,much\n", "much"),
        ("learner,variant\n1,x\n", "x"),
    ],
)
def test_what_is_no_export_is_refused(text: str, told: str, tmp_path: Path) -> None:
    """By reason: a line that names the file."""
    file = tmp_path / "e.csv"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(Unreadable, match=r"e\.csv") as raised:
        list(exported(file, CLASS))
    assert told in str(raised.value)


def test_two_sheets_of_one_and_one_sheet_of_two(tmp_path: Path) -> None:
    """By reason: a gradebook takes one row a learner; a class list deals each variant once."""
    twice = graded(written(tmp_path / "e.csv", [honest("1017"), honest("1017")]))
    assert all("2 responses of this learner" in grade.remarks for grade in twice)

    def of(learner: str) -> Response:
        number = place("A", 0)
        tries = (*right_tries(number),)
        return Response("f", learner, "A", BALANCE, BALANCE.revision, number, "", None, tries)

    both = regraded([of("one"), of("two")], dealt=False)
    assert "two's too" in " ".join(both[0].remarks)
    assert "one's too" in " ".join(both[1].remarks)


def test_the_command_takes_both_and_goes_on(capsys: Capture, tmp_path: Path) -> None:
    """Issue: a CSV for a gradebook. By reason: a file that cannot be read is named, the rest
    graded."""
    export = written(tmp_path / "e.csv", [honest("1017")])
    (tmp_path / "bad.json").write_text("{}", encoding="utf-8")
    arguments = ["regrade", str(tmp_path / "bad.json"), str(export), "--set", "balance"]
    assert main([*arguments, "--section", "A"]) == 2
    told = capsys.readouterr()
    assert "bad.json" in told.err
    (row,) = csv.DictReader(io.StringIO(told.out))
    assert (row["learner"], row["score"], row["remarks"]) == ("1017", "1.000", "")
    assert variant(BALANCE, BALANCE.problems[0].name, int(row["variant"]))
