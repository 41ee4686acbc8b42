"""One way to ask for a case in words: `outlet_setting inlet=5.2 limit=after`.

The command line, the fences of the chapters and the tests all speak it.
"""

from collections.abc import Iterable

from calc.calculators import calculator
from calc.errors import Refused
from calc.model import Case, Typed, solve


def case_of(words: Iterable[str], unit_set: str = "us") -> Case:
    """The case that `words` ask for: a calculator's name, then input=value.

    Raises KeyError for a calculator that does not exist, Refused "no value" for a word
    that is no input=value. Bad values stand in the case's errors.
    """
    name, *pairs = words
    typed = {}
    for pair in pairs:
        field, equals, text = pair.partition("=")
        if not equals:
            raise Refused("no value", field)
        typed[field.strip()] = Typed(text)
    return solve(calculator(name), typed, unit_set)
