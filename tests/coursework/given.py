"""What the tests of the coursework are given: every problem, and its variants."""

from functools import lru_cache

import pytest

from calc.coursework.deck import VARIANTS
from calc.coursework.problem import Part, Pick, Problem, ProblemSet
from calc.coursework.sets import names, problem_set
from calc.coursework.variants import Variant, variant

SETS = [problem_set(name) for name in names()]
PROBLEMS = [
    pytest.param(each, problem.name, id=f"{each.name}-{problem.name}")
    for each in SETS
    for problem in each.problems
]
every_problem = pytest.mark.parametrize(("problems", "name"), PROBLEMS)
every_set = pytest.mark.parametrize("problems", SETS, ids=[each.name for each in SETS])


@lru_cache(maxsize=2)
def variants(problems: ProblemSet, name: str) -> tuple[Variant, ...]:
    """The variants of a problem that are assigned. Kept while the tests of it run."""
    return tuple(variant(problems, name, number) for number in range(1, VARIANTS + 1))


def numbers_asked(problem: Problem) -> list[Part]:
    return [each for each in problem.parts if isinstance(each, Part)]


def decisions(problem: Problem) -> list[Pick]:
    return [each for each in problem.parts if isinstance(each, Pick)]
