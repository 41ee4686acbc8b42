"""What a package left with an LMS, as an instructor exports it: a CSV of SCORM 1.2 elements."""

import csv
import io
import re
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple
from urllib.parse import unquote

from calc.coursework.deck import seat
from calc.coursework.problem import ProblemSet
from calc.coursework.record import Sheet, Try, sheet
from calc.coursework.regrade import Response, Unreadable, check_variant, claimed_share
from calc.coursework.sets import problem_set
from calc.coursework.variants import Question

LARGEST = 20_000_000  # bytes: a class with all that its LMS kept
LEARNER, SCORE, KEPT = "cmi.core.student_id", "cmi.core.score.raw", "cmi.suspend_data"
KEPT_FORM = "1"
INTERACTION = re.compile(r"cmi\.interactions[._](\d+)\.(id|student_response)")
NO_UNIT = "-"
ABOUT = ("learner", "section", "set", "variant")
SEPARATORS = ",;\t"

type Row = Mapping[str, str]


class Defaults(NamedTuple):
    """What the command line says for all rows that do not say it themselves."""

    set: str = ""
    section: str = ""
    word: str = ""


class Left(NamedTuple):
    """What a package left of one learner's sheet."""

    number: int
    revision: str
    tries: list[Try]
    notes: tuple[str, ...]


def exported(file: Path, otherwise: Defaults) -> Iterator[Response]:
    """The responses in an export. Raises Unreadable.

    It has a row for each learner, with a column for each element, or a row for each element:
    `learner`, `element`, `value`. `set`, `section` and `variant` may stand in columns of their own.
    """
    for row in _learners(_rows(file)):
        try:
            yield _response(file, row, otherwise)
        except (KeyError, ValueError) as why:
            raise Unreadable(f"{file}: {row['learner']}: {why}") from None


def _rows(file: Path) -> list[dict[str, str]]:
    try:
        if file.stat().st_size > LARGEST:
            raise Unreadable(f"{file}: larger than {LARGEST} bytes")
        text = file.read_text(encoding="utf-8-sig")
        first = text.partition("\n")[0]
        mark = max(SEPARATORS, key=first.count)
        many = list(csv.DictReader(io.StringIO(text), delimiter=mark, strict=True))
    except (OSError, UnicodeDecodeError, csv.Error) as why:
        raise Unreadable(f"{file}: {why}") from None
    rows: list[dict[str, str]] = [
        {(name or "").strip().lower(): said.strip() for name, said in row.items() if _is_text(said)}
        for row in many
    ]
    for row in rows:
        row["learner"] = row.get("learner") or row.get(LEARNER, "")
    if not rows or not all(row["learner"] for row in rows):
        raise Unreadable(f"{file}: each row needs a learner, in a column of that name or {LEARNER}")
    return rows


def _is_text(said: object) -> bool:
    return isinstance(said, str)  # a row shorter or longer than the first has None or a list


def _learners(rows: Iterable[Row]) -> list[Row]:
    """A row for each learner and set, whichever way they came."""
    gathered: dict[tuple[str, ...], dict[str, str]] = {}
    whole = list[Row]()
    for row in rows:
        if "element" not in row:
            whole.append(row)
            continue
        about = {name: said for name, said in row.items() if name not in ("element", "value")}
        one = gathered.setdefault(tuple(about.get(name, "") for name in ABOUT), dict(about))
        one[row["element"].lower()] = row.get("value", "")
    return [*whole, *gathered.values()]


def _response(file: Path, row: Row, otherwise: Defaults) -> Response:
    try:
        problems = problem_set(row.get("set") or otherwise.set)
    except KeyError as name:
        raise Unreadable(f"{file}: there is no set {name}; name it with --set") from None
    section = row.get("section") or otherwise.section
    number = int(row.get("variant") or seat(section, row["learner"]))
    check_variant(number)
    score = row.get(SCORE) or row.get("score", "")
    try:
        left = _left(row, problems, number, otherwise.word)
    except (KeyError, IndexError, ValueError):
        left = Left(number, problems.revision, [], ("what the LMS kept cannot be read",))
    return Response(
        file=str(file),
        learner=row["learner"],
        section=section,
        set=problems,
        revision=left.revision,
        number=left.number,
        code="",
        claimed=claimed_share(score.replace(",", ".")) / 100 if score else None,
        tries=tuple(left.tries),
        notes=left.notes,
    )


def _left(row: Row, problems: ProblemSet, number: int, word: str) -> Left:
    """What a package left, by `cmi.suspend_data` or, where that is missing, by interactions."""
    kept = row.get(KEPT, "")
    if not kept:
        made = sheet(problems, number, word)
        return Left(number, problems.revision, _from_interactions(made, row), ())
    form, revision, dealt, floor, *told = kept.split("~")
    if form != KEPT_FORM:
        raise ValueError(kept)
    check_variant(int(dealt))
    made = sheet(problems, int(dealt), word)
    # places in an older set say nothing of this one
    tries = [_try(made, each) for each in told] if revision == problems.revision else []
    full = ("the LMS had no room for all tries: ask for the response file",) if floor else ()
    return Left(int(dealt), revision, tries, full)


def _try(made: Sheet, told: str) -> Try:
    """A try as a package keeps it: places of problem, question and unit, and the text."""
    problem = list(made.variants)[_place(told[0])]
    question = made.variants[problem].questions[_place(told[1])]
    unit = ""
    if told[2] != NO_UNIT:
        if not question.kind:
            raise ValueError(told)
        unit = question.kind.units[_place(told[2])].symbol
    return Try(problem, question.name, unquote(told[3:], errors="strict"), unit)


def _place(digit: str) -> int:
    return int(digit, 36)


def _from_interactions(made: Sheet, row: Row) -> list[Try]:
    """Tries as they were reported: `problem.question.try1`, an option's letter or an SI figure."""
    told: dict[int, dict[str, str]] = {}
    for name, said in row.items():
        if found := INTERACTION.fullmatch(name):
            told.setdefault(int(found[1]), {})[found[2]] = said
    tries = list[Try]()
    for _, each in sorted(told.items()):
        if not each.get("id"):
            continue  # a column that only others fill
        problem, name, _ = each["id"].split(".")
        question = made.variants[problem].question(name)
        tries.append(Try(problem, name, _answered(question, each.get("student_response", ""))))
    return tries


def _answered(question: Question, said: str) -> str:
    if question.options:
        return list(question.options)["abcdef".index(said)]
    assert question.usual
    # noughts at the end stay: how many were typed is not known, and all shall count
    return f"{question.usual.out_of_si(float(said)):#.7g} {question.usual.symbol}"
