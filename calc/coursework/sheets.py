"""Sheets and keys as plain text."""

from collections.abc import Iterator

from calc.coursework.deck import VARIANTS
from calc.coursework.helping import full_working, right_words
from calc.coursework.problem import ProblemSet
from calc.coursework.record import Sheet, sheet
from calc.coursework.variants import Question


def sheet_text(problem_set: ProblemSet, number: int, salt: str = "") -> str:
    """The problems of a sheet, without answers."""
    made = sheet(problem_set, number, salt)
    lines = [*_head(problem_set, number, made), ""]
    for name, dealt in made.variants.items():
        lines += [f"{name} ({dealt.problem.form})", *filter(None, [dealt.text])]
        for place, question in enumerate(dealt.questions, 1):
            lines += _asked(place, question)
        lines.append("")
    return _plain(lines)


def key_text(problem_set: ProblemSet, number: int, salt: str = "") -> str:
    """The answers of a sheet, with the working."""
    made = sheet(problem_set, number, salt)
    lines = [*_head(problem_set, number, made), "Key", ""]
    for name, dealt in made.variants.items():
        lines.append(name)
        for place, question in enumerate(dealt.questions, 1):
            lines.append(f"  {place}. {right_words(question)}{_band(question)}")
        lines += [f"     {line}" for line in full_working(dealt)]
        lines.append("")
    return _plain(lines)


def _head(problem_set: ProblemSet, number: int, made: Sheet) -> Iterator[str]:
    yield problem_set.title
    yield (
        f"Set {problem_set.name}, variant {number} of {VARIANTS}, revision "
        f"{problem_set.revision}, check code {made.code}"
    )


def _asked(place: int, question: Question) -> Iterator[str]:
    marks = f" [{question.marks} marks]" if question.marks > 1 else ""
    yield f"  {place}. {question.ask}{marks}"
    if question.options:
        yield from (f"     ( ) {words}" for words in question.options.values())
    elif question.digits > 1:
        yield f"     ____________ with its unit, to {question.digits} figures"
    else:
        yield "     ____________ with its unit"


def _band(question: Question) -> str:
    if question.options or isinstance(question.right, str) or not question.usual:
        return ""
    if question.absolute:
        width = question.band / question.usual.scale
        return f", give or take {width:.3g} {question.usual.symbol}"
    return f", give or take {100 * question.band / abs(question.right):.3g} %"


def _plain(lines: list[str]) -> str:
    return "\n".join(lines).replace("\u00a0", " ").replace("\u202f", " ") + "\n"
