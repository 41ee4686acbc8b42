"""What the tests of the coursework are given: every problem, and its variants."""

from typing import NamedTuple

from calc.coursework.deck import VARIANTS
from calc.coursework.problem import Part, Pick, Problem, ProblemSet, Recall
from calc.coursework.sets import names, problem_set
from calc.coursework.variants import Variant, variant

SETS = [problem_set(name) for name in names()]


class Dealt(NamedTuple):
    """A problem of a set, and its variants that are assigned."""

    problems: ProblemSet
    problem: Problem | Recall
    variants: tuple[Variant, ...]


def dealt(problems: ProblemSet, name: str, every: int = 1) -> Dealt:
    many = tuple(variant(problems, name, number) for number in range(1, VARIANTS + 1, every))
    return Dealt(problems, problems.problem(name), many)


def numbers_asked(problem: Problem) -> list[Part]:
    return [each for each in problem.parts if isinstance(each, Part)]


def decisions(problem: Problem) -> list[Pick]:
    return [each for each in problem.parts if isinstance(each, Pick)]
