"""Responses of a class, graded again: what they earn, and what does not add up."""

import csv
import io
import json
from collections.abc import Iterable, Iterator
from math import isfinite
from pathlib import Path
from typing import Any, NamedTuple

from calc.coursework.deck import VARIANTS, seat
from calc.coursework.grading import judged
from calc.coursework.problem import ProblemSet
from calc.coursework.record import Sheet, Try, replayed, sheet
from calc.coursework.response import FORMAT, VERSION
from calc.coursework.sets import problem_set
from calc.coursework.variants import EXAMPLE

LARGEST = 1_000_000  # bytes of a file: a term of tries is a tenth of it
ALIKE = 3  # wrong or odd answers that two may share by chance are fewer
SLACK = 0.005  # a score is told in whole per cent


class Response(NamedTuple):
    """What one learner sent in.

    claimed -- the score that came with it, 0 to 1
    notes   -- what the instructor should know of how it came
    """

    file: str
    learner: str
    section: str
    set: ProblemSet
    revision: str
    number: int
    code: str
    claimed: float | None
    tries: tuple[Try, ...]
    notes: tuple[str, ...] = ()


class Grade(NamedTuple):
    """A response graded again. `remarks` are for the instructor to look into."""

    response: Response
    sheet: Sheet
    remarks: tuple[str, ...]


class Unreadable(ValueError):
    """A file that is no response, and why."""


def responses(file: Path) -> Iterator[Response]:
    """The responses in a file: one JSON object or a list of them. Raises Unreadable."""
    try:
        if file.stat().st_size > LARGEST:
            raise Unreadable(f"{file}: larger than {LARGEST} bytes")
        data = json.loads(file.read_text(encoding="utf-8"))
    except Unreadable:
        raise
    except (OSError, ValueError, RecursionError) as why:  # an int of 5000 digits is a ValueError
        raise Unreadable(f"{file}: {why}") from None
    for each in data if isinstance(data, list) else [data]:
        yield _response(file, each)


def _response(file: Path, data: object) -> Response:
    if not isinstance(data, dict) or data.get("format") != FORMAT:
        raise Unreadable(f"{file}: no responses of this handbook")
    if data.get("version") != VERSION:
        raise Unreadable(f"{file}: version {data.get('version')}, this program reads {VERSION}")
    try:
        made = Response(
            file=str(file),
            learner=_text(data["learner"]),
            section=_text(data.get("section", "")),
            set=problem_set(str(data["set"])),
            revision=_text(data["revision"]),
            number=int(data["variant"]),
            code=_text(data.get("code", "")),
            claimed=None if data.get("claimed") is None else claimed_share(data["claimed"]),
            tries=tuple(Try(*map(_text, each)) for each in data["tries"]),
        )
        check_variant(made.number)
    except KeyError as missing:
        raise Unreadable(f"{file}: {missing} is missing or unknown") from None
    except (TypeError, ValueError, OverflowError) as why:
        raise Unreadable(f"{file}: {why}") from None
    if unknown := [each for each in made.tries if each[:2] not in _questions(made.set)]:
        raise Unreadable(f"{file}: no question {unknown[0].question} in {made.set.name}")
    return made


def _text(said: object) -> str:
    """What was said, as text. ValueError where no file can hold it: half of a character."""
    text = str(said)
    text.encode()
    return text


def claimed_share(said: Any) -> float:
    """A score as it was claimed, a share. ValueError for what is no number."""
    share = float(said)
    if not isfinite(share):
        raise ValueError(f"{said} is no score")
    return share


def check_variant(number: int) -> None:
    """ValueError for a number that nobody is dealt; 0 is the worked example on the page."""
    if not 1 <= number <= VARIANTS:
        raise ValueError(f"there is no variant {number}")


def _questions(of: ProblemSet) -> set[tuple[str, str]]:
    """All questions of a set, by problem and name: the same in every variant."""
    return {*sheet(of, EXAMPLE).standings}


def regraded(many: Iterable[Response], salt: str = "", dealt: bool = True) -> list[Grade]:
    """Each response graded by its tries alone.

    dealt -- whether variants were dealt by section and learner; False for a class list
    """
    given = list(many)
    sheets = [replayed(each.set, each.number, each.tries, salt) for each in given]
    return [
        Grade(
            each,
            sheet,
            (
                *each.notes,
                *_own_remarks(each, sheet, dealt),
                *_shared(each, given, dealt),
                *_copies(each, sheet, zip(given, sheets, strict=True)),
            ),
        )
        for each, sheet in zip(given, sheets, strict=True)
    ]


def _own_remarks(response: Response, sheet: Sheet, dealt: bool) -> Iterator[str]:
    if response.revision != response.set.revision:
        yield f"sheet of {response.revision}, graded by {response.set.revision}"
    elif response.code and response.code != sheet.code:
        yield "check code does not fit: another edition, another word of the school, or altered"
    if dealt and response.number != (own := seat(response.section, response.learner)):
        yield f"variant {response.number}, but this learner was dealt {own}"
    if response.claimed is not None and response.claimed > sheet.score + SLACK:
        if not response.tries:
            yield f"claims {response.claimed:.0%} without any response"
        else:
            yield f"claims {response.claimed:.0%}, the responses earn {sheet.score:.0%}"


def _shared(response: Response, given: Iterable[Response], dealt: bool) -> Iterator[str]:
    """Two sheets of one learner, or, on a class list, two learners with one sheet."""
    alike = [each for each in given if each.set is response.set]
    own = [each for each in alike if _whose(each) == _whose(response)]
    if len(own) > 1:
        yield f"{len(own)} responses of this learner"
    for other in () if dealt else alike:
        same = (other.section, other.number) == (response.section, response.number)
        if same and other.learner != response.learner:
            yield f"variant {response.number} is {other.learner}'s too; a class list has it once"


def _whose(response: Response) -> tuple[str, str]:
    return response.section, response.learner


def _copies(
    response: Response, sheet: Sheet, others: Iterable[tuple[Response, Sheet]]
) -> Iterator[str]:
    """Numbers that earn nothing here and are somebody else's: right there, or typed there too."""
    odd = [each for each in response.tries if _earns_nothing(sheet, each)]
    for other, theirs in others:
        if other is response or other.set is not response.set:
            continue
        if other.number == response.number:
            same = {each._replace(unit="") for each in odd} & {
                each._replace(unit="") for each in other.tries
            }
            if len(same) >= ALIKE:
                yield f"{len(same)} wrong answers are {other.learner}'s too"
        elif (fits := sum(_right_on(theirs, each) for each in odd)) >= ALIKE:
            yield f"{fits} answers are right for variant {other.number}, {other.learner}'s"


def _earns_nothing(sheet: Sheet, each: Try) -> bool:
    standing = sheet.standings[each.problem, each.question]
    return standing.best == 0 and not standing.question.options


def _right_on(sheet: Sheet, each: Try) -> bool:
    dealt = sheet.variants[each.problem]
    return judged(dealt, each.question, each.text, each.unit).judged == "right"


def as_csv(grades: Iterable[Grade]) -> str:
    """A line for each response, for a gradebook."""
    out = io.StringIO()
    write = csv.writer(out, lineterminator="\n").writerow
    write(("learner", "section", "set", "revision", "variant", "marks", "of", "score", "claimed",
           "tries", "remarks"))  # fmt: skip
    for response, made, remarks in grades:
        claimed = "" if response.claimed is None else f"{response.claimed:.3f}"
        write(
            (_cell(response.learner), _cell(response.section), response.set.name,
             _cell(response.revision), response.number, f"{made.marks:.2f}", made.full,
             f"{made.score:.3f}", claimed, sum(each.tries for each in made.standings.values()),
             _cell("; ".join(remarks)))
        )  # fmt: skip
    return out.getvalue()


def _cell(text: str) -> str:
    """Text that a spreadsheet takes for text: one that begins like a formula gets an apostrophe."""
    return f"'{text}" if text[:1] in ("=", "+", "-", "@", "\t", "\r") else text
