"""What is given nonsense, and what must hold of it: a target is a strategy and a check.

A check takes one input, made of what JSON can hold, and returns what came of it in a word. It
fails with whatever is raised: a refusal that the reader is told is no failure.
"""

import csv
import io
import json
import tempfile
from collections.abc import Callable, Iterable
from math import isclose, isfinite
from pathlib import Path
from time import thread_time
from typing import Any, NamedTuple

from hypothesis import strategies as st

from calc.coursework.lms import Defaults, exported
from calc.coursework.regrade import Response, Unreadable, as_csv, regraded, responses
from calc.errors import Refused
from calc.figures import plainly_written, read_number
from calc.job import read_job, write_job
from calc.request import case_of, words_of
from calc.units import KINDS
from calc.views.browser import SHAPES, reply
from calc.views.jobs import job_refusal_words
from calc.views.words import reason_words
from tests import fuzz_inputs as given
from tests.views.reading import read

FIGURE_LIMIT, JOB_LIMIT = 0.05, 1.0  # s of processor time
HTML = ("answer", "html", "record", "found", "drawn", "told", "worked")
KIND = {each.name: each for each in KINDS}


class Target(NamedTuple):
    """Inputs to try, and the check that each must pass."""

    inputs: st.SearchStrategy[Any]
    check: Callable[[Any], str]


def within(limit: float, work: Callable[[], object]) -> None:
    """Fails if the work takes longer even at the third go: a machine may stumble once."""
    for _ in range(3):
        start = thread_time()
        work()
        if thread_time() - start <= limit:
            return
    raise AssertionError(f"takes over {limit} s")


def figure(text: list[str]) -> str:
    """A text read as a quantity: a finite number or a refusal that can be worded, in 50 ms."""
    name, symbol, typed = text
    kind = KIND[name]
    unit = kind.unit(symbol)
    told: list[Refused | tuple[float, Any]] = []

    def once() -> None:
        try:
            told.append(kind.read(typed, unit))
        except Refused as refused:
            told.append(refused)

    within(FIGURE_LIMIT, once)
    if isinstance(came := told[0], Refused):
        facts = {"example": "", "wanted": name, **came.facts}
        assert reason_words(Refused(came.reason, "", **facts))
        assert "{" not in reason_words(Refused(came.reason, "", **(facts | {"text": ""})))
        return came.reason
    assert isfinite(came[0])
    assert came[1] in kind.units
    number, apart = kind.apart(typed)
    if apart:
        assert kind.read(number, kind.unit(apart))[0] == came[0]
    _written_again(typed)
    return "read"


def _written_again(text: str) -> None:
    """A number written with all its digits and read is the same number."""
    try:
        number = read_number(text)
    except Refused:
        return
    assert read_number(f"{number:.17g}") == number
    if not number or 1e-9 < abs(number) < 1e15:
        assert isclose(read_number(plainly_written(number, 15)), number, rel_tol=1e-14)


def job(text: str) -> str:
    """A text read as a job: refused in words, or written, read and written to the last byte."""
    told: list[Any] = []

    def once() -> None:
        try:
            told.append(read_job(text))
        except Refused as refused:
            told.append(refused)

    within(JOB_LIMIT, once)
    if isinstance(came := told[0], Refused):
        assert job_refusal_words(came)
        return came.reason
    written = write_job(came)
    assert read_job(written) == came
    assert write_job(read_job(written)) == written
    assert _data(written) == _data(text.removeprefix("\ufeff"))  # nothing was left out
    return "read"


def _data(text: str) -> Any:
    data = json.loads(text)
    return data if data.get("marks", True) else {k: v for k, v in data.items() if k != "marks"}


def link(request: dict[str, Any]) -> str:
    """A request to the page's worker: a reply whose HTML is whole and escaped, or a refusal."""
    try:
        told = json.loads(reply(json.dumps(request)))
    except Refused as refused:
        return refused.reason
    except KeyError as missing:
        if _is_asked_in_vain(missing.args[0], request):
            return "no such thing"
        raise
    for html in (*(told.get(part) or "" for part in HTML), *told.get("parts", {}).values()):
        assert "<fuzz" not in html
        assert not [each for each in read(html).all() if "fuzz" in each.attributes]
    if "refused" in told:
        return "refused"
    if "words" in told:
        _asks_again(told["words"])
    return str(request.get("do", "answer"))


def _is_asked_in_vain(key: str, request: dict[str, Any]) -> bool:
    """Whether it is a member that lacks or a name of nothing. Any other key is the program's."""
    return _is_named(key, request) or (key in SHAPES and key not in request)


def _is_named(key: str, inside: Any) -> bool:
    """Whether the text stands anywhere in the request, alone or beside a sign of the page's."""
    if isinstance(inside, dict):
        return any(_is_named(key, each) for each in (*inside, *inside.values()))
    if isinstance(inside, list):
        return any(_is_named(key, each) for each in inside)
    return isinstance(inside, str) and key in (inside, *inside.split(">"), *inside.split("="))


def _asks_again(words: list[str]) -> None:
    """The link that a page offers shows the next reader the same values, in any units."""
    case = case_of(words)
    if case.errors:
        return
    for unit_set in ("us", "si"):
        again = case_of(words_of(case), unit_set)
        assert again.values == case.values


def response_file(text: str) -> str:
    """A file that a learner sends in."""
    return _graded(text, ".json", responses)


def lms(text: str) -> str:
    """A table that an instructor exports."""
    return _graded(text, ".csv", lambda file: exported(file, Defaults("balance", "A")))


def _graded(text: str, suffix: str, taken: Callable[[Path], Iterable[Response]]) -> str:
    """Unreadable, or a grade for each response that a gradebook can take in."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder, f"sent{suffix}")
        file.write_bytes(text.encode("utf-8", "surrogateescape"))
        try:
            many = list(taken(file))
        except Unreadable:
            return "unreadable"
    grades = regraded(many)
    assert all(0 <= each.sheet.score <= 1 for each in grades)
    told = as_csv(grades).encode().decode()
    rows = list(csv.DictReader(io.StringIO(told, newline=""), strict=True))
    assert len(rows) == len(grades)
    said = [row[name] for row in rows for name in ("learner", "section", "revision", "remarks")]
    assert not [cell for cell in said if cell.startswith(given.FORMULA)]
    return "graded"


TARGETS = {
    "parser": Target(given.figures(), figure),
    "job": Target(given.jobs(), job),
    "link": Target(given.requests(), link),
    "responses": Target(given.response_files(), response_file),
    "lms": Target(given.exports(), lms),
}
