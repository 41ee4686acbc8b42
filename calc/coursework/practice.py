"""What the page of a problem set asks for: a sheet to fill in, one answer checked, a response.

A request has `set`, `number` and `word`, as they were typed, and `tries`: what was tried on this
sheet, in order. Nothing is kept here; the page keeps the tries and sends them again.
"""

from collections.abc import Mapping
from typing import Any

from calc.coursework.deck import VARIANTS, seat
from calc.coursework.practice_sheet import question_told, score, sheet_html, worked
from calc.coursework.problem import ProblemSet
from calc.coursework.record import Sheet, Try, replayed
from calc.coursework.response import response
from calc.coursework.sets import problem_set

type Reply = dict[str, Any]
LONGEST = 200  # characters of a word, a class, a name
_LETTERS = set("0123456789abcdefghijklmnopqrstuvwxyz-")


def reply(what: str, asked: Mapping[str, Any]) -> Reply:
    """The reply to `show`, `check`, `deal` or `response`; {refused} says why there is none."""
    if what == "deal":
        return _deal(asked)
    number = _number(str(asked["number"]))
    if not number:
        return {"refused": f"Variants run from 1 to {VARIANTS}."}
    chosen = problem_set(asked["set"])
    try:
        tries = [Try(*each) for each in asked["tries"]]
        made = replayed(chosen, number, tries, _text(asked, "word"))
    except (TypeError, KeyError):  # kept by another edition, or damaged
        return {"refused": "What was kept of this sheet does not fit it. Take another variant."}
    return _told(what, chosen, number, tries, made, asked)


def _told(
    what: str,
    chosen: ProblemSet,
    number: int,
    tries: list[Try],
    made: Sheet,
    asked: Mapping[str, Any],
) -> Reply:
    if what == "show":
        return _show(chosen, number, tries, made, _text(asked, "word"))
    if what == "check" and not tries:
        return {"refused": "There is no answer to check."}
    if what == "check":
        return _check(chosen, number, tries, made, _text(asked, "word"))
    return _response(chosen, number, tries, made, asked)


def _number(text: str) -> int:
    """The variant that is meant; 0, the worked example, for anything else."""
    text = text.strip()
    number = int(text) if text.isascii() and text.isdecimal() and len(text) < 5 else 0
    return number if number <= VARIANTS else 0


def _text(asked: Mapping[str, Any], part: str) -> str:
    """What was typed, as a file can hold it: half a character becomes a question mark."""
    return str(asked.get(part, "")).strip()[:LONGEST].encode(errors="replace").decode()


def _show(chosen: ProblemSet, number: int, tries: list[Try], made: Sheet, word: str) -> Reply:
    html = sheet_html(chosen, number, tries, made, word)
    return {"html": html, "score": score(made), "number": number}


def _check(chosen: ProblemSet, number: int, tries: list[Try], made: Sheet, word: str) -> Reply:
    """How the last of the tries stands. One that is asked back is not worth keeping."""
    last = tries[-1]
    standing = made.standings[last.problem, last.question]
    assert standing.last
    return {
        "told": question_told(chosen, number, last.problem, standing, word),
        "worked": worked(made, last.problem),
        "score": score(made),
        "counts": standing.last.judged != "ask",
    }


def _who(asked: Mapping[str, Any]) -> tuple[str, str]:
    return _text(asked, "section"), _text(asked, "learner")


def _deal(asked: Mapping[str, Any]) -> Reply:
    """The variant that follows from class and learner."""
    section, learner = _who(asked)
    if not learner:
        return {"refused": "Write first how your school lists you: a number will do."}
    return {"number": seat(section, learner)}


def _response(
    chosen: ProblemSet, number: int, tries: list[Try], made: Sheet, asked: Mapping[str, Any]
) -> Reply:
    section, learner = _who(asked)
    if not learner:
        return {"refused": "Write first how your school lists you: a number will do."}
    name = f"{chosen.name}-{number}-{_file_part(learner)}.json"
    says = f"Saved as {name}. Hand that file in."
    if number != (dealt := seat(section, learner)):
        says += (
            f" By class and name your variant is {dealt}; hand in {number} if it was given to you."
        )
    text = response(chosen, number, tries, made, section=section, learner=learner)
    return {"file": text, "name": name, "says": says}


def _file_part(text: str) -> str:
    return "".join(sign if sign in _LETTERS else "-" for sign in text.lower())[:40]
