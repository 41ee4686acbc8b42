"""The formulas of a calculator, and what their letters stand for."""

import hashlib
import json
import os
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from build_scripts.pages.markdown import escaped, symbol
from build_scripts.runtime import imports
from calc.model import Calculator, Case, Choice, Input, Quantity, Step, Typed, solve
from calc.units import Kind
from calc.views.formula import as_mathml, as_text, letters
from calc.views.html import tag
from calc.views.words import input_words, shown

CACHE = imports.ROOT / ".cache" / "formulas"
INTRODUCTION = """In the order of the work. Where a step is not taken in every case, one is named
in which it is."""


class Tried(NamedTuple):
    """A case with an answer, and the inputs that make it another than the worked example."""

    changed: tuple[str, ...]
    case: Case


class Shown(NamedTuple):
    """A step, and the cases in which the work takes it, the simplest first."""

    step: Step
    tried: list[Tried]


def formulas(calculator: Calculator) -> list[str]:
    """Every formula in the order of the work, and the letters after them.

    They are kept from build to build, for all the cases take three quarters of it.
    """
    file = CACHE / f"{calculator.name}-{_fingerprint(calculator)}.json"
    if not file.exists():
        CACHE.mkdir(parents=True, exist_ok=True)
        for old in CACHE.glob(f"{calculator.name}-*"):
            old.unlink(missing_ok=True)
        part = CACHE / f".{file.name}.{os.getpid()}"  # another build may be at it as well
        part.write_text(json.dumps(list(_written(calculator))), encoding="utf-8")
        part.replace(file)
    kept: list[str] = json.loads(file.read_text(encoding="utf-8"))
    return kept


def _fingerprint(calculator: Calculator) -> str:
    """A hash of all code that the formulas come from."""
    modules = [f"calc.calculators.{calculator.name}", "calc.views.formula", "calc.views.words"]
    code = [*imports.reached(modules).values(), *sorted(Path(__file__).parent.glob("*.py"))]
    return hashlib.sha256(b"".join(file.read_bytes() for file in code)).hexdigest()[:16]


def _written(calculator: Calculator) -> Iterator[str]:
    every = cases(calculator)
    steps = taken(every)
    yield INTRODUCTION
    for one in steps:
        when = f" {_when(one.tried[0])}" if len(one.tried) < len(every) else ""
        yield f"**{escaped(one.step.label)}.**{when}"
        yield formula(one.step)
    meanings = _meanings(calculator, steps)
    yield "The letters:"
    yield "\n".join(f"- {symbol(name)}: {meaning}" for name, meaning in meanings.items())


def cases(calculator: Calculator) -> list[Tried]:
    """Cases that bring out every step: the worked example; each option picked; and of the options
    that take steps of their own, each with any other option, and with every input in turn at an
    end of its range. Two options that do not fit the worked example are tried at those ends too."""
    options = [
        {each.name: Typed(value)}
        for each in calculator.inputs
        if isinstance(each, Choice)
        for value in each.options
        if value != each.default
    ]
    ends = [
        {each.name: Typed(repr(unit.out_of_si(end)), unit.symbol)}
        for each in calculator.inputs
        if isinstance(each, Input)
        for unit in (each.usual("us"),)
        for end in (each.low, each.high)
    ]
    unlike = _unlike(calculator, [{}, *options])
    pairs = [one | other for one in unlike[1:] for other in options if one.keys() != other.keys()]
    refused = [pair for pair in pairs if not solve(calculator, pair).answer]
    changes: list[dict[str, Typed]] = [
        {},
        *options,
        *(option | end for option in unlike for end in ends),
        *pairs,
        *(pair | end for pair in refused for end in ends),
    ]
    tried = (Tried(tuple(change), solve(calculator, change)) for change in changes)
    return [each for each in tried if each.case.answer]


def _unlike(calculator: Calculator, changes: Iterable[dict[str, Typed]]) -> list[dict[str, Typed]]:
    """Of the changes that take the same steps the first; each of those that are refused."""
    found: dict[object, dict[str, Typed]] = {}
    for change in changes:
        answer = solve(calculator, change).answer
        steps = answer and tuple((step.label, step.formula) for step in answer.steps)
        found.setdefault(steps or tuple(change.items()), change)
    return list(found.values())


def taken(every: Iterable[Tried]) -> list[Shown]:
    """Every step of the cases once, in the order of the work."""
    found: dict[tuple[str, str], Shown] = {}
    order: list[tuple[str, str]] = []
    for one in every:
        assert one.case.answer
        place = 0
        for step in one.case.answer.steps:
            key = step.label, step.formula
            if key not in found:
                found[key] = Shown(step, [])
                order.insert(place, key)
            found[key].tried.append(one)
            place = order.index(key) + 1
    return [found[key] for key in order]


def _when(one: Tried) -> str:
    said = [
        f"{one.case.calculator.input(name).label}: {input_words(one.case, name)}"
        for name in one.changed
    ]
    return f"{escaped('; '.join(said))}." if said else "In the worked example."


def formula(step: Step) -> str:
    """The formula of a step, to be looked at and to be heard."""
    return tag(
        "p",
        as_mathml(step.formula),
        class_="calc-formula",
        role="math",
        aria_label=as_text(step.formula),
        tabindex="0",  # a long one scrolls in its box
        data_search_exclude=True,
    )


def _meanings(calculator: Calculator, steps: list[Shown]) -> Mapping[str, str]:
    """What each letter stands for: an input or output, what a step gives, or a given figure."""
    fields = {
        each.symbol: f"[{escaped(each.label)}](#{each.name})"
        for each in (*calculator.outputs, *calculator.inputs)
        if not isinstance(each, Choice) and each.symbol
    }
    worked = {letters(one.step.formula)[0]: escaped(one.step.label) for one in steps}
    given = {name: said for one in steps for name, said in _given(one.step).items()}
    known = given | worked | fields
    return {name: known[name] for one in steps for name in letters(one.step.formula)}


def _given(step: Step) -> dict[str, str]:
    return {name: _figure(quantity) for name, quantity in step.given.items()}


def _figure(quantity: Quantity) -> str:
    """A figure that no field names: its kind, and what it is in the worked example."""
    like = quantity.like
    kind = like if isinstance(like, Kind) else like.kind
    said = dict.fromkeys(shown(quantity.value, like, s, quantity.digits) for s in ("us", "si"))
    what = quantity.label or kind.name
    return f"{escaped(what)}, {escaped('; '.join(said))} in the worked example"
