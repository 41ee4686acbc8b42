"""Quantities, sentences and refusals in words, in the reader's units."""

import re
from collections.abc import Callable, Mapping

from calc.errors import Refused
from calc.figures import plainly_written, written
from calc.model import Case, Choice, Field, Finding, Input, Output, Quantity
from calc.quantity import Kind, Unit
from calc.units import duration, minute
from calc.views.reasons import REASONS


def with_unit(figure: str, unit: Unit) -> str:
    """`figure` with its unit, kept on one line.

    >>> from calc.units import share, flow
    >>> with_unit("5.3", flow.unit("gpm"))
    '5.3\\xa0gpm'
    """
    return f"{figure}\u00a0{unit.symbol}" if unit.symbol else figure


def shown(value: float, like: Kind | Field, unit_set: str, digits: int = 3) -> str:
    """The value in the unit that readers of the set expect, as `5.35 gpm`."""
    unit = like.usual(unit_set)
    write = plainly_written if unit.symbol == "" else written
    return with_unit(write(unit.out_of_si(value), digits), unit)


def spoken(value: float, like: Kind | Field, unit_set: str, digits: int = 3) -> str:
    """As `shown`, but minutes and hours as a clock would say them: 7 min 55 s."""
    kind = like if isinstance(like, Kind) else like.kind
    told = like.usual(unit_set).symbol
    if kind is duration and abs(value) >= minute and told not in ("s", "days"):
        return _clock(value)
    return shown(value, like, unit_set, digits)


def _clock(value: float) -> str:
    seconds = round(abs(value))
    sign = "−" if value < 0 else ""
    if seconds < 2 * 3600:
        return f"{sign}{seconds // 60}\u00a0min\u00a0{seconds % 60:02d}\u00a0s"
    minutes = round(seconds / 60)
    return f"{sign}{minutes // 60}\u00a0h\u00a0{minutes % 60:02d}\u00a0min"


def output_words(case: Case, output: Output) -> str:
    """The value of an output of an answered case, or the words for there being none."""
    value = case.answer.outputs[output.name] if case.answer else None
    if value is None:
        return output.none
    return spoken(value, output, case.unit_set, output.digits)


def output_like_words(case: Case, output: Output, value: float) -> str:
    """Another value of an output, worded as the answer would be."""
    return spoken(value, output, case.unit_set, max(output.digits, 3))


def input_words(case: Case, name: str) -> str:
    """The value of an input as it was taken, in the unit it was given in."""
    each, value = case.calculator.input(name), case.values[name]
    if isinstance(each, Choice):
        return each.options[str(value)]
    unit = case.units[name]
    values = value if isinstance(value, tuple) else (value,)
    return "; ".join(with_unit(plainly_written(unit.out_of_si(float(v)), 4), unit) for v in values)


def sure_words(case: Case, name: str) -> str:
    """The plus-or-minus of an input in the unit it is shown in; empty when it is exact."""
    width = case.sures.get(name, 0.0)
    if not width:
        return ""
    unit = case.units[name]
    return f"± {with_unit(written(width / unit.scale, 2), unit)}"


def finding_words(case: Case, finding: Finding) -> str:
    """The sentence of a finding with its figures put in."""
    return _filled(finding.text, lambda name: _named(case, name, finding.given))


def _named(case: Case, name: str, given: Mapping[str, Quantity]) -> str:
    if name in given:
        return spoken(given[name].value, given[name].like, case.unit_set, given[name].digits)
    if name in case.values:
        return input_words(case, name)
    return output_words(case, case.calculator.output(name))


def refusal_words(case: Case, refused: Refused) -> str:
    """What is wrong with one input, in the reader's units."""
    try:
        each = case.calculator.input(refused.field)
    except KeyError:
        return _told(case, refused)
    return input_refusal_words(each, refused, lambda name: input_words(case, name))


def _told(case: Case, refused: Refused) -> str:
    outputs = [each for each in case.calculator.outputs if each.name == refused.field]
    if not outputs:
        return REASONS[refused.reason]
    # an answer that is wanted is read as an input is
    facts = {"wanted": outputs[0].kind.name, "example": "", **refused.facts}
    return _filled(REASONS[refused.reason], lambda name: str(facts[name]))


def input_refusal_words(
    each: Input | Choice, refused: Refused, named: Callable[[str], str] = str
) -> str:
    """What is wrong with a value of one input; `named` words the other inputs."""
    facts = {key: str(fact) for key, fact in refused.facts.items()}
    if isinstance(each, Choice):
        return _filled(REASONS[refused.reason], {**facts, "label": each.label}.__getitem__)
    unit = refused.facts.get("unit")
    if isinstance(unit, Unit):
        for end in ("low", "high"):
            limit = refused.facts[end]
            assert isinstance(limit, float | int)
            facts[end] = with_unit(written(unit.out_of_si(limit)), unit)
    facts |= {
        "label": each.label,
        "wanted": each.kind.name,
        "example": f"For example {each.default.partition(';')[0]}.",
        "says": _filled(facts.get("says", ""), named),
    }
    return _filled(REASONS[refused.reason], facts.__getitem__)


def reason_words(refused: Refused) -> str:
    """What is wrong where no input is concerned, as with a job file."""
    facts = {key: str(fact) for key, fact in refused.facts.items()}
    return _filled(REASONS[refused.reason], lambda name: facts.get(name, ""))


def _filled(text: str, fill: Callable[[str], str]) -> str:
    return re.sub(r"\{(\w+)\}", lambda hole: fill(hole[1]), text)
