"""A case's working followed again: with a student's own figures, or with a slip in it."""

from collections.abc import Mapping
from functools import lru_cache
from math import exp, isfinite, log, nan, pi, sqrt
from types import CodeType

from calc import units
from calc.model import Case, Quantity, Step
from calc.views.formula import letters, quantities

_FUNCTIONS = {
    "sqrt": sqrt, "min": min, "max": max, "exp": exp, "log": log, "ln": log, "pi": pi, "abs": abs
}  # fmt: skip
_UNITS = {name: value for name, value in vars(units).items() if isinstance(value, float)}


class Working:
    """The steps of an answered case, with what their letters stand for."""

    def __init__(self, case: Case) -> None:
        assert case.answer
        self.case = case
        self.steps = case.answer.steps
        self.stands: dict[str, Quantity] = {}
        for step in self.steps:
            self.stands |= quantities(case, step)
        self.found = {letters(step.formula)[0]: step for step in self.steps}
        self._known = {
            name: quantity.value for name, quantity in self.stands.items() if name not in self.found
        }
        self._fields = {
            name: value if isinstance(value, float) else nan
            for name, value in (*case.values.items(), *case.answer.outputs.items())
        }

    def leading_to(self, letter: str) -> list[Step]:
        """The steps that end with this letter and whose results it needs, in their order."""
        wanted, steps = {letter}, list[Step]()
        for step in reversed(self.steps):
            left, *right = letters(step.formula)
            if left in wanted:
                wanted |= {*right}
                steps.insert(0, step)
        return steps

    def value(self, letter: str, own: Mapping[str, float], instead: str = "") -> float | None:
        """What the steps give for a letter, SI; None where they give nothing.

        own     -- figures to take for letters found on the way
        instead -- a formula that stands in for the usual one of its letter
        """
        wrong, _, how = instead.partition(" = ")
        had = dict(self._known)
        if wrong in had:
            had[wrong] = _evaluated(how, had)
        for step in self.steps:
            left, _, right = step.formula.partition(" = ")
            if left in own and left != letter:
                had[left] = own[left]
            else:
                had[left] = _evaluated(how if left == wrong else right, had)
        value = had.get(letter)
        return value if value is not None and isfinite(value) else None

    def other(self, expression: str) -> float | None:
        """What an expression of letters, inputs, outputs and units comes to in this case, SI."""
        right = {name: quantity.value for name, quantity in self.stands.items()}
        value = _evaluated(expression, self._fields | right)
        return value if isfinite(value) else None

    def holds(self, condition: str, close: float) -> bool | None:
        """Whether `left < right` or `left <= right` holds; None if both are about the same."""
        left, sign, right = condition.partition(" <= " if " <= " in condition else " < ")
        less, more = self.other(left), self.other(right)
        if not sign or less is None or more is None:
            return None
        if abs(less - more) <= close * max(abs(less), abs(more)):
            return None
        return less < more


def _evaluated(expression: str, letters: Mapping[str, float]) -> float:
    """NaN where the arithmetic ends, as it may for figures that a student made up."""
    names = {"__builtins__": {}} | _UNITS | _FUNCTIONS | dict(letters)
    try:
        value = eval(_compiled(expression), names)
    except (ArithmeticError, ValueError):
        return nan
    return float(value) if isinstance(value, float | int) else nan


@lru_cache(maxsize=1024)
def _compiled(expression: str) -> CodeType:
    return compile(expression, "<formula>", "eval")
