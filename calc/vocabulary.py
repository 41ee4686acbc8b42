"""One name, one quantity: the inputs of all calculators gathered, so that a value measured
for one page serves every other."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from functools import cache

from calc.calculators import calculator, names
from calc.model import Calculator, Choice, Input

# What two inputs of one name must share. Range and default are each calculator's own affair.
_MEANING = ("kind", "symbol", "label", "several", "options", "once")


@cache
def words() -> dict[str, Input | Choice]:
    """Every input of every calculator by its name. All their modules are imported for it."""
    return gathered(calculator(name) for name in names())


def gathered(calculators: Iterable[Calculator]) -> dict[str, Input | Choice]:
    """The inputs of `calculators` by name, each with the widest of its ranges.

    A value that one calculator can use may so be kept; another whose arithmetic holds less
    far refuses it beside its own field.

    Raises ValueError, naming the calculators, where one name has two meanings and where an
    output is left as an input that cannot take it.
    """
    every = list(calculators)
    found: dict[str, Input | Choice] = {}
    owner: dict[str, str] = {}
    wrong: list[str] = []
    for one in every:
        for each in one.inputs:
            word = found.setdefault(each.name, each)
            first = owner.setdefault(each.name, one.name)
            if differ := _differences(word, each):
                wrong.append(f"{each.name} of {first} and of {one.name}: not one {differ}")
            else:
                found[each.name] = _wider(word, each)
    wrong += (fault for one in every for fault in _misleft(one, found))
    if wrong:
        raise ValueError("; ".join(wrong))
    return found


def _differences(word: Input | Choice, each: Input | Choice) -> str:
    differ = (what for what in _MEANING if getattr(word, what, None) != getattr(each, what, None))
    return ", ".join(differ)


def _wider(word: Input | Choice, each: Input | Choice) -> Input | Choice:
    if not (isinstance(word, Input) and isinstance(each, Input)):
        return word
    low, high = min(word.low, each.low), max(word.high, each.high)
    return word if (low, high) == (word.low, word.high) else replace(word, low=low, high=high)


def _misleft(one: Calculator, found: Mapping[str, Input | Choice]) -> Iterator[str]:
    for output, targets in one.leaves.items():
        for name in targets:
            word = found.get(name)
            if not isinstance(word, Input) or word.kind != one.output(output).kind:
                yield f"{one.name} leaves {output} as {name}: no input of its kind"
            elif not word.once:
                yield f"{one.name} leaves {output} as {name}: no value of the job"
