"""The problem sets, one for a chapter. Each module of this package declares one, named as it is."""

import importlib
import pkgutil
from functools import cache

from calc.coursework.problem import ProblemSet


def names() -> list[str]:
    """Names of all problem sets, in alphabetical order."""
    return list(_found())


@cache  # it reads a folder, and is asked for every problem
def _found() -> tuple[str, ...]:
    return tuple(sorted(each.name for each in pkgutil.iter_modules(__path__)))


def problem_set(name: str) -> ProblemSet:
    """The problem set of that name. KeyError, naming it, if there is none."""
    if name not in _found():
        raise KeyError(name)
    declared = importlib.import_module(f"{__name__}.{name}").SET
    assert isinstance(declared, ProblemSet)
    return declared
