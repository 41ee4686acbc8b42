"""What an answer is worth, and what to say of it."""

import re
from collections.abc import Mapping
from math import isnan, nan
from typing import Literal, NamedTuple

from calc.coursework.variants import Question, Variant
from calc.errors import Refused
from calc.figures import NUMBER, plain
from calc.units import Unit
from calc.views.words import reason_words

type Judged = Literal["right", "digits", "unit", "slip", "wrong", "ask"]
LONGEST = 60  # characters of an answer
FEW_DIGITS = 0.9
OTHER_UNIT = 0.5
_EXAMPLE = "For example 4.63."


class Verdict(NamedTuple):
    """How an answer is judged.

    judged -- "ask": it cannot be read, so it is asked back and counts as no try
    marks  -- share of the question's marks, 0 to 1
    says   -- what to tell the student, without the answer
    value  -- SI value, or the option
    own    -- whether it is right only for the student's own earlier figures
    """

    judged: Judged
    marks: float
    says: str
    value: float | str | None = None
    own: bool = False


def judged(
    variant: Variant, name: str, text: str, unit: str = "", own: Mapping[str, float] | None = None
) -> Verdict:
    """What an answer to one question of a variant is worth.

    text -- as typed, or the option picked
    unit -- symbol of the unit chosen beside it; may be empty where the text says its unit
    own  -- the student's own earlier figures of this problem, SI, by question
    """
    question = variant.question(name)
    if question.options:
        return _picked(question, text.strip())
    try:
        value, given = read(question, text, unit)
    except Refused as refused:
        return Verdict("ask", 0.0, _asked_back(question, refused))
    verdict = _weighed(variant, question, text, value, own or {})
    if verdict.judged == "wrong" and _other_unit(question, given.out_of_si(value)):
        return Verdict("unit", OTHER_UNIT, "The number is right. Check the unit.", value)
    return verdict


def _picked(question: Question, option: str) -> Verdict:
    if option not in question.options:
        return Verdict("ask", 0.0, "Pick one.")
    if option == question.right:
        return Verdict("right", 1.0, f"Right. {question.because}", option)
    return Verdict("wrong", 0.0, "No.", option)


def read(question: Question, text: str, unit: str = "") -> tuple[float, Unit]:
    """The SI value of an answer and the unit it was given in.

    Raises Refused: as `Kind.read`, "no unit" for a bare number where none is chosen, and
    "unknown unit" for a chosen one that is none of the kind's.
    """
    kind = question.kind
    assert kind
    if len(text) > LONGEST:
        raise Refused("unreadable", text=f"{text[:LONGEST]}…")
    try:
        chosen = kind.unit(unit)
    except KeyError:
        if unit:
            raise Refused("unknown unit", text=unit) from None
        chosen = Unit("", nan)  # a bare number then comes to no number
    value, given = kind.read(text, chosen)
    if isnan(value):
        raise Refused("no unit")
    return value, given


def _asked_back(question: Question, refused: Refused) -> str:
    assert question.kind
    if refused.reason == "no unit":
        return "In which unit? Choose one, or write it behind the number."
    facts = {"example": _EXAMPLE, "wanted": question.kind.name, **refused.facts}
    return reason_words(Refused(refused.reason, "", **facts))


def _weighed(
    variant: Variant, question: Question, text: str, value: float, own: Mapping[str, float]
) -> Verdict:
    right = question.near(value)
    if right or _near_own(variant, question, value, own):
        if _figures(text) < question.digits:
            says = f"The value is right. Give {question.digits} significant figures."
            return Verdict("digits", FEW_DIGITS, says, value, not right)
        says = "Right." if right else "Right for your own earlier figure. That one is not."
        return Verdict("right", 1.0, says, value, not right)
    for slip, wrong in question.slips:
        if question.near(value, wrong):
            return Verdict("slip", slip.marks, slip.hint, value)
    return Verdict("wrong", 0.0, "Not yet.", value)


def _near_own(variant: Variant, question: Question, value: float, own: Mapping[str, float]) -> bool:
    """Whether the answer follows from the student's own earlier figures."""
    working = variant.working
    assert working
    found = {name: figure for name, figure in own.items() if name in working.found}
    if question.name not in working.found or not found:
        return False
    follows = working.value(question.name, found)
    return follows is not None and question.near(value, follows)


def _other_unit(question: Question, number: float) -> bool:
    """Whether the number is right in some unit of its kind."""
    assert question.kind
    return any(question.near(unit.into_si(number)) for unit in question.kind.units)


def _figures(text: str) -> float:
    """Significant figures of the number typed; without end for a fraction or for several numbers.

    Noughts at the end without a point may count or not: they count.
    """
    numbers = [found[0] for found in NUMBER.finditer(plain(text))]
    if len(numbers) != 1 or "/" in numbers[0] or ":" in text:
        return float("inf")
    digits = re.sub(r"\D", "", re.split(r"[eE]", numbers[0])[0]).lstrip("0")
    return len(digits) if digits else float("inf")
