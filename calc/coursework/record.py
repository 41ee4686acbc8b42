"""What a student tried, judged again in the order it was tried: the page, the LMS and the
instructor's re-grading all come to the same marks."""

import zlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from calc.coursework.grading import Verdict, judged
from calc.coursework.problem import ProblemSet
from calc.coursework.variants import Question, Variant, variant


class Try(NamedTuple):
    """One answer to one question, as it was typed."""

    problem: str
    question: str
    text: str
    unit: str = ""


@dataclass
class Standing:
    """Where a question stands: its best marks, tries that count, misses, the last verdict, and
    whether it was ever right."""

    question: Question
    best: float = 0.0
    tries: int = 0
    misses: int = 0
    last: Verdict | None = None
    solved: bool = False

    def take(self, verdict: Verdict) -> None:
        """Count a verdict. A guess among options costs what chance would have brought."""
        self.last = verdict
        if verdict.judged == "ask":
            return
        self.tries += 1
        marks = verdict.marks
        if self.question.options:
            marks *= max(0.0, 1 - self.misses / (len(self.question.options) - 1))
        self.best = max(self.best, marks)
        right = verdict.judged in ("right", "digits")
        self.solved |= right
        self.misses += not right


@dataclass
class Sheet:
    """A variant of each problem of a set, its check code, and how its questions stand."""

    code: str
    variants: Mapping[str, Variant]
    standings: dict[tuple[str, str], Standing] = field(default_factory=dict)

    @property
    def marks(self) -> float:
        """Marks earned."""
        return sum(each.best * each.question.marks for each in self.standings.values())

    @property
    def full(self) -> int:
        """Marks to be had."""
        return sum(each.question.marks for each in self.standings.values())

    @property
    def score(self) -> float:
        """Share of the marks that are earned, 0 to 1."""
        return self.marks / self.full


def sheet(problem_set: ProblemSet, number: int, salt: str = "") -> Sheet:
    """The sheet of that number, nothing tried."""
    variants = {
        each.name: variant(problem_set, each.name, number, salt) for each in problem_set.problems
    }
    standings = {
        (name, question.name): Standing(question)
        for name, each in variants.items()
        for question in each.questions
    }
    return Sheet(check_code(problem_set, number, variants.values()), variants, standings)


def replayed(problem_set: ProblemSet, number: int, tries: Iterable[Try], salt: str = "") -> Sheet:
    """The sheet after these tries. KeyError for a question that the sheet does not have."""
    made = sheet(problem_set, number, salt)
    own: dict[str, dict[str, float]] = {}
    for each in tries:
        standing = made.standings[each.problem, each.question]
        figures = own.setdefault(each.problem, {})
        verdict = judged(made.variants[each.problem], each.question, each.text, each.unit, figures)
        standing.take(verdict)
        if isinstance(verdict.value, float):
            figures[each.question] = verdict.value
    return made


def check_code(problem_set: ProblemSet, number: int, variants: Iterable[Variant]) -> str:
    """Six characters that tell whether a sheet, a key and a program belong together.

    A CRC of the revision, the questions and their answers to six figures. It finds a mistake,
    not a forger: the recipe is public.
    """
    told = [problem_set.name, problem_set.revision, str(number)]
    for each in variants:
        told.append(each.text)
        for question in each.questions:
            right = question.right
            told.append(f"{question.ask} {right if isinstance(right, str) else f'{right:.6g}'}")
    return f"{zlib.crc32('|'.join(told).encode()) & 0xFFFFFF:06x}"
