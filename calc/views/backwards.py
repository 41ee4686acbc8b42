"""Working backwards in words: which value of one input gives the answer that is wanted."""

from math import isclose
from typing import NamedTuple

from calc.backwards import CELLS, Found, solutions
from calc.errors import Refused
from calc.figures import plainly_written
from calc.model import Case, Input, Output
from calc.uncertainty import TRIALS
from calc.views.html import Safe, tag
from calc.views.words import output_like_words, with_unit

BEYOND = 10  # so many times past the range a solution is still looked for, to say it lies there
LOOKS = 4  # parts of a range, at whose ends the answer tells whether it is level
SLOW_CELLS = CELLS // 4  # where the work takes long, so that it makes fewer trials


class Told(NamedTuple):
    """What was found, in sentences, and the values that solve it as a person types them."""

    sentences: tuple[str, ...]
    values: tuple[str, ...]


def backwards(case: Case, wanted: str, text: str, free: str) -> Told:
    """Which value of the input `free` makes the output `wanted` what `text` says.

    The other inputs stay as they are. Raises Refused, with the output as its field, for a
    text that is no such quantity, and KeyError for a name that is none.
    """
    output, each = case.calculator.output(wanted), case.calculator.input(free)
    if not isinstance(each, Input) or each.several > 1:
        raise KeyError(free)
    try:
        target, _ = output.kind.read(text, output.usual(case.unit_set))
    except Refused as refused:
        refused.field = wanted
        raise
    found = solutions(
        lambda value: _answer(case, wanted, free, value),
        target,
        each.low,
        each.high,
        *_beyond(each),
        cells=CELLS if case.calculator.trials >= TRIALS else SLOW_CELLS,
    )
    return _told(case, output, each, target, found)


def _beyond(each: Input) -> tuple[float | None, float | None]:
    """How far below and above its range to look. Ten times a temperature is no temperature."""
    if any(unit.zero for unit in each.kind.units):
        return None, None
    return (each.low / BEYOND if each.low > 0 else each.low), each.high * BEYOND


def _answer(case: Case, wanted: str, free: str, value: float) -> float | None:
    try:
        return case.work({**case.values, free: value}).outputs[wanted]
    except (ZeroDivisionError, ValueError, OverflowError, RuntimeError, TypeError):
        # Past its range the arithmetic need not hold: a root may be complex, which has no order.
        return None  # Refused is a ValueError


def _told(case: Case, output: Output, each: Input, target: float, found: Found) -> Told:
    goal = f"{output.label}: {output_like_words(case, output, target)}"
    values = [_typed(case, each, root) for root in found.roots]
    if found.stretches:
        ends = [f"{_typed(case, each, a)} to {_typed(case, each, b)}" for a, b in found.stretches]
        several = f"{goal}. Any value of “{each.label}” from {', and from '.join(ends)} gives it."
        return Told((several,), tuple(values))
    if not found.roots:
        return Told(tuple(_none(case, output, each, goal, found)), ())
    if len(values) == 1:
        return Told((f"{goal}. “{each.label}” must be {values[0]}.",), tuple(values))
    shown = f"{', '.join(values[:-1])} and {values[-1]}"
    return Told((f"{goal}. “{each.label}” may be {shown}: each gives it.",), tuple(values))


def _none(case: Case, output: Output, each: Input, goal: str, found: Found) -> list[str]:
    low, high = _typed(case, each, each.low), _typed(case, each, each.high)
    if not found.nearest:
        said = [f"“{output.label}” has no value, whatever “{each.label}” is from {low} to {high}."]
    elif _is_level(case, output, each, found.nearest.value):
        return [f"“{each.label}” does not change “{output.label}”."]
    else:
        value = output_like_words(case, output, found.nearest.value)
        said = [
            f"{goal}. No value of “{each.label}” from {low} to {high} gives it.",
            f"The nearest is {value}, at {_typed(case, each, found.nearest.at)}.",
        ]
    for beyond in (found.beyond_low, found.beyond_high):
        if beyond is not None:
            place = _typed(case, each, beyond)
            said.append(f"It would take {place}, outside the range in which this holds.")
    return said


def _is_level(case: Case, output: Output, each: Input, level: float) -> bool:
    """Whether the answer has this value all over the range, as far as a few places tell."""
    places = (each.low + (each.high - each.low) * part / LOOKS for part in range(LOOKS + 1))
    told = (_answer(case, output.name, each.name, place) for place in places)
    return all(value is not None and isclose(value, level) for value in told)


def _typed(case: Case, each: Input, value: float) -> str:
    unit = case.units[each.name]
    return with_unit(plainly_written(unit.out_of_si(value), 4), unit)


def found_html(told: Told, free: str) -> Safe:
    """What was found, with a button for each value that takes it into the form."""
    said = [tag("p", sentence) for sentence in told.sentences]
    uses = [
        tag("button", f"Use {value}", type="button", data_use=free, data_value=value)
        for value in told.values
    ]
    return Safe("".join([*said, *uses]))
