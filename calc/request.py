"""One way to ask for a case in words: `outlet_setting inlet=5.2 limit=after`.

The command line, the fences of the chapters, shared links and the tests all speak it.
"""

from collections.abc import Iterable

from calc.calculators import calculator
from calc.errors import Refused
from calc.figures import read_number
from calc.model import Calculator, Case, Choice, Typed, solve, without_sure

LONGEST = 300  # characters of one value: a link from a stranger can hold anything


def case_of(words: Iterable[str], unit_set: str = "us") -> Case:
    """The case that `words` ask for: a calculator's name, then input=value.

    Raises KeyError for a calculator that does not exist, Refused "no value" for a word
    that is no input=value. Bad values stand in the case's errors.
    """
    name, *pairs = words
    chosen = calculator(name)
    return solve(chosen, dict(typed_of(chosen, pair) for pair in pairs), unit_set)


def typed_of(chosen: Calculator, pair: str) -> tuple[str, Typed]:
    """The input that a word input=value names, and its value as if typed into the field."""
    name, equals, text = pair.partition("=")
    name, text = name.strip(), text[:LONGEST]
    if not equals:
        raise Refused("no value", name)
    try:
        each = chosen.input(name)
    except KeyError:
        return name, Typed(text)
    if isinstance(each, Choice) or each.several > 1:
        return name, Typed(text)
    value, sure = without_sure(text)
    number, unit = each.kind.apart(value)
    return name, Typed(number, unit or each.kind.apart(sure)[1], sure=sure)


def words_of(case: Case) -> list[str]:
    """The words that ask for this case: only what differs from the defaults, with its unit.

    A bare number gets the unit in which it was read here: who opens the link may have others.
    """
    words = [case.calculator.name]
    for each in case.calculator.inputs:
        typed = case.typed[each.name]
        usual = "" if isinstance(each, Choice) else each.usual(case.unit_set).symbol
        text = "; ".join(_with_unit(part, typed.unit or usual) for part in typed.text.split(";"))
        if typed.sure and typed.sure != getattr(each, "sure", ""):
            text = f"{text} ± {typed.sure}"
        if text != each.default:
            words.append(f"{each.name}={text}")
    return words


def _with_unit(text: str, unit: str) -> str:
    """A bare number with the unit it is meant in; anything else says its unit itself."""
    text = text.strip()
    try:
        read_number(text)
    except Refused:
        return text
    return f"{text} {unit}".strip()
