"""What a calculator is: inputs, outputs, a question, and the work that answers it.

A calculator is declared once. Forms, checks, the working, the command line and the
JSON description are derived from the declaration, so nothing here draws or words.
"""

import inspect
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

from calc import sources
from calc.errors import Refused
from calc.units import Kind, Unit

Level = Literal["good", "caution", "danger"]
UNIT_SETS = ("us", "si")
Value = float | tuple[float, ...] | str


class Typed(NamedTuple):
    """What stands in a field: the text, the unit a bare number in it is meant in, and the
    unit to show it in. An empty unit is the usual one of the reader's set."""

    text: str
    unit: str = ""
    show: str = ""


@dataclass(frozen=True, kw_only=True)
class Field:
    """What every input and output has."""

    name: str
    label: str
    kind: Kind
    symbol: str = ""
    us: str = ""
    si: str = ""

    def usual(self, unit_set: str) -> Unit:
        """The unit readers of the set "us" or "si" expect here."""
        chosen = self.si if unit_set == "si" else self.us
        return self.kind.unit(chosen) if chosen else self.kind.usual(unit_set)


class Quantity(NamedTuple):
    """An SI value, and the kind or field that says in which units it is shown."""

    value: float
    like: Kind | Field
    digits: int = 3


@dataclass(frozen=True, kw_only=True)
class Input(Field):
    """One thing the reader measures or knows.

    default -- as a person writes it, with its unit; `origin` says where it comes from
    low, high -- range in which the arithmetic holds, SI
    measure -- how to measure it, and how it is got wrong
    several -- how many readings the field may hold
    """

    default: str
    origin: str
    low: float
    high: float
    measure: str
    group: str = ""
    caution: str = ""
    several: int = 1

    def __post_init__(self) -> None:
        self.take(Typed(self.default), "us")
        for unit_set in UNIT_SETS:
            self.usual(unit_set)

    def take(self, typed: Typed, unit_set: str) -> tuple[Value, Unit]:
        """SI value of what was typed and the unit it was given in. Refused if unusable."""
        unit = self.unit_called(typed.unit, unit_set)
        if self.several == 1:
            return self._one(typed.text, unit)
        texts = [text for text in _readings(typed.text) if text]
        if not texts:
            raise Refused("blank", self.name)
        if len(texts) > self.several:
            raise Refused("too many", self.name, high=self.several)
        taken = [self._one(text, unit) for text in texts]
        return tuple(value for value, _ in taken), taken[0][1]

    def unit_called(self, symbol: str, unit_set: str) -> Unit:
        """The unit of that symbol, the usual one for none. Refused if it is no unit of this."""
        try:
            return self.kind.unit(symbol) if symbol else self.usual(unit_set)
        except KeyError:
            raise Refused("unknown unit", self.name, text=symbol) from None

    def _one(self, text: str, unit: Unit) -> tuple[float, Unit]:
        try:
            value, given = self.kind.read(text, unit)
        except Refused as refused:
            refused.field = self.name
            raise
        if not self.low <= value <= self.high:
            reason = "below" if value < self.low else "above"
            raise Refused(reason, self.name, low=self.low, high=self.high, unit=given)
        return value, given


def _readings(text: str) -> Iterable[str]:
    """Readings kept apart by semicolons or line ends; a comma may be a decimal mark."""
    return (part.strip() for part in text.replace("\n", ";").split(";"))


@dataclass(frozen=True, kw_only=True)
class Choice:
    """One thing the reader picks. `options` maps the value to its words."""

    name: str
    label: str
    options: Mapping[str, str]
    default: str
    origin: str
    measure: str
    group: str = ""

    def __post_init__(self) -> None:
        self.take(Typed(self.default), "us")

    def take(self, typed: Typed, _unit_set: str) -> tuple[Value, None]:
        """The option picked. Refused if it is none of them."""
        picked = typed.text.strip()
        if picked not in self.options:
            raise Refused("no such option", self.name, text=picked, options=tuple(self.options))
        return picked, None


@dataclass(frozen=True, kw_only=True)
class Output(Field):
    """One thing the calculator answers.

    digits -- significant figures it deserves
    low, high -- outside them it is marked with the words `outside`, SI
    none -- what to say when there is no such number
    """

    digits: int = 3
    low: float | None = None
    high: float | None = None
    outside: str = ""
    none: str = ""

    def is_outside(self, value: float) -> bool:
        """Whether the value passes one of its limits."""
        under = self.low is not None and value < self.low
        return under or (self.high is not None and value > self.high)


@dataclass(frozen=True)
class Step:
    """One step of the working: a formula in Python's syntax and what its letters stand for.

    `given` needs only the letters that are not symbols of inputs or outputs.
    """

    label: str
    formula: str
    given: Mapping[str, Quantity] = field(default_factory=dict)


@dataclass(frozen=True)
class Finding:
    """What the answer means, in words: `head` in a word or two, `text` in a sentence.

    {name} in the text stands for an input, an output or a quantity in `given`.
    """

    level: Level
    head: str
    text: str
    given: Mapping[str, Quantity] = field(default_factory=dict)


class Axis(NamedTuple):
    """An axis of a chart; figures are drawn in the unit of the input or output `like`."""

    label: str
    like: Field


class Line(NamedTuple):
    """Points joined by straight lines, SI."""

    label: str
    points: tuple[tuple[float, float], ...]


class Mark(NamedTuple):
    """A point worth naming, SI."""

    label: str
    x: float
    y: float


class Limit(NamedTuple):
    """A level drawn across the whole chart, SI."""

    label: str
    y: float


@dataclass(frozen=True)
class Chart:
    """Lines over two axes. `says` tells a reader who cannot see it what it shows."""

    title: str
    says: str
    x: Axis
    y: Axis
    lines: tuple[Line, ...]
    limits: tuple[Limit, ...] = ()
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True)
class Answer:
    """What the work returns. The first finding is the headline."""

    outputs: Mapping[str, float | None]
    findings: tuple[Finding, ...]
    steps: tuple[Step, ...]
    charts: tuple[Chart, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Calculator:
    """A question, what must be known to answer it, and the work that does."""

    name: str
    title: str
    question: str
    inputs: tuple[Input | Choice, ...]
    outputs: tuple[Output, ...]
    work: Callable[..., Answer]
    cautions: tuple[str, ...]
    sources: tuple[str, ...]

    def __post_init__(self) -> None:
        names = [each.name for each in (*self.inputs, *self.outputs)]
        if len(set(names)) != len(names):
            raise ValueError(f"{self.name}: a name stands twice among {names}")
        wanted = list(inspect.signature(self.work).parameters)
        if wanted != [each.name for each in self.inputs]:
            raise ValueError(f"{self.name}: the work takes {wanted}, the inputs differ")
        for source in self.sources:
            sources.entry(source)
        if not (self.cautions and self.sources):
            raise ValueError(f"{self.name}: no cautions or no sources")

    def input(self, name: str) -> Input | Choice:
        """The input of that name. KeyError if there is none."""
        return _by_name(self.inputs, name)

    def output(self, name: str) -> Output:
        """The output of that name. KeyError if there is none."""
        return _by_name(self.outputs, name)


def _by_name[T: (Input | Choice, Output)](many: tuple[T, ...], name: str) -> T:
    for each in many:
        if each.name == name:
            return each
    raise KeyError(name)


@dataclass(frozen=True)
class Case:
    """A calculator with one set of inputs: what was typed, what it means, what it gives.

    given -- the unit each input was given in; `units` the one it is shown in
    """

    calculator: Calculator
    unit_set: str
    typed: Mapping[str, Typed]
    values: Mapping[str, Value]
    given: Mapping[str, Unit]
    units: Mapping[str, Unit]
    errors: tuple[Refused, ...]
    answer: Answer | None


def solve(
    calculator: Calculator, typed: Mapping[str, Typed] | None = None, unit_set: str = "us"
) -> Case:
    """The case for what was typed; an input left out has its default.

    Nothing raises: what is wrong with the inputs stands in `errors`, and then there is
    no answer. A name that is no input of the calculator is an error too.
    """
    typed = typed or {}
    filled = {each.name: Typed(each.default) for each in calculator.inputs} | dict(typed)
    values: dict[str, Value] = {}
    given: dict[str, Unit] = {}
    units: dict[str, Unit] = {}
    known = {each.name for each in calculator.inputs}
    errors = [Refused("no such input", name) for name in filled if name not in known]
    for each in calculator.inputs:
        try:
            values[each.name], unit = each.take(filled[each.name], unit_set)
            if isinstance(each, Input) and unit:
                given[each.name] = unit
                units[each.name] = _shown_in(each, typed.get(each.name), unit, unit_set)
        except Refused as refused:
            errors.append(refused)
    answer = None
    if not errors:
        try:
            answer = calculator.work(**values)
        except Refused as refused:
            errors.append(refused)
    return Case(calculator, unit_set, filled, values, given, units, tuple(errors), answer)


def _shown_in(each: Input, typed: Typed | None, given: Unit, unit_set: str) -> Unit:
    if typed is None:
        return each.usual(unit_set)
    return each.unit_called(typed.show, unit_set) if typed.show else given
