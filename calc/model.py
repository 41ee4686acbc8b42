"""What a calculator is: inputs, outputs, a question, and the work that answers it.

A calculator is declared once. Forms, checks, the working, the command line and the
JSON description are derived from the declaration, so nothing here draws or words.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from types import FunctionType
from typing import Literal, NamedTuple, cast

from calc import sources
from calc.charts import Picture, Scene
from calc.errors import Refused
from calc.figures import read_number
from calc.uncertainty import TRIALS
from calc.units import Kind, Unit, share

Level = Literal["good", "caution", "danger"]
UNIT_SETS = ("us", "si")
Value = float | tuple[float, ...] | str


class Typed(NamedTuple):
    """What stands in a field: the text, the unit a bare number in it is meant in, the unit to
    show it in, and the plus-or-minus. An empty unit is the usual one of the reader's set, an
    empty plus-or-minus the one the input declares."""

    text: str
    unit: str = ""
    show: str = ""
    sure: str = ""


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
    """An SI value, and the kind or field that says in which units it is shown.

    label -- what it is, for a letter that is no field's symbol and no step's result
    """

    value: float
    like: Kind | Field
    digits: int = 3
    label: str = ""


@dataclass(frozen=True, kw_only=True)
class Input(Field):
    """One thing the reader measures or knows.

    default -- as a person writes it, with its unit; `origin` says where it comes from
    low, high -- range in which the arithmetic holds, SI
    measure -- how to measure it, and how it is got wrong
    several -- how many readings the field may hold
    sure    -- the plus-or-minus to take when none is given, holding 19 times in 20; empty: exact
    once    -- whether it is measured once and serves every page
    timed   -- whether a watch stands beside it, which fills in its several readings
    """

    default: str
    origin: str
    low: float
    high: float
    measure: str
    group: str = ""
    caution: str = ""
    several: int = 1
    sure: str = ""
    once: bool = True
    timed: bool = False

    def __post_init__(self) -> None:
        value, unit = self.take(Typed(self.default), "us")
        self.take_sure(Typed(self.default), value, unit)
        for unit_set in UNIT_SETS:
            self.usual(unit_set)

    def take(self, typed: Typed, unit_set: str) -> tuple[Value, Unit]:
        """SI value of what was typed and the unit it was given in. Refused if unusable."""
        unit = self.unit_called(typed.unit, unit_set)
        if self.several == 1:
            text, sure = without_sure(typed.text)
            # in 5.6 ± 0.2 gpm the unit is meant for both
            shared = self.kind.apart(sure)[1]
            return self._one(text, self.kind.unit(shared) if shared else unit)
        texts = [text for text in _readings(typed.text) if text]
        if not texts:
            raise Refused("blank", self.name)
        if len(texts) > self.several:
            raise Refused("too many", self.name, high=self.several)
        taken = [self._one(text, unit) for text in texts]
        return tuple(value for value, _ in taken), taken[0][1]

    def take_sure(self, typed: Typed, value: Value, unit: Unit) -> float:
        """Half-width of the plus-or-minus, SI: typed after ± or beside, else the declared one.

        3 % is of the value, but where the unit itself is % it is that many of them.
        """
        text = (without_sure(typed.text)[1] or typed.sure or self.sure).strip()
        if not text or not isinstance(value, float):
            return 0.0
        try:
            if text.endswith("%") and self.kind is not share:
                width = abs(value) * read_number(text[:-1]) / 100
            else:
                width, given = self.kind.read(text, unit)
                width -= given.zero
        except Refused as refused:
            raise Refused("sure unreadable", self.name, text=text) from refused
        if not 0 <= width < self.high - self.low:
            raise Refused("sure unreadable", self.name, text=text)
        return width

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


def without_sure(text: str) -> tuple[str, str]:
    """A text as `5.6 ± 0.2 gpm`, apart: the value, and the plus-or-minus or nothing."""
    for sign in ("±", "+/-", "+-"):
        value, found, sure = text.partition(sign)
        if found:
            return value.strip(), sure.strip()
    return text, ""


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
    once: bool = True

    def __post_init__(self) -> None:
        self.take(Typed(self.default), "us")

    def take(self, typed: Typed, _unit_set: str) -> tuple[Value, None]:
        """The option picked. Refused if it is none of them."""
        picked = typed.text.strip()
        if picked not in self.options:
            raise Refused("no such option", self.name, text=picked, options=", ".join(self.options))
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

    def __post_init__(self) -> None:
        if (self.low is not None or self.high is not None) and not self.outside:
            raise ValueError(f"{self.name}: say in words what is wrong outside its limits")

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


@dataclass(frozen=True)
class Answer:
    """What the work returns. The first finding is the headline."""

    outputs: Mapping[str, float | None]
    findings: tuple[Finding, ...]
    steps: tuple[Step, ...]
    charts: tuple[Picture, ...] = ()
    scenes: tuple[Scene, ...] = ()


type Tally = Mapping[str, float]


class Simulation(NamedTuple):
    """How an answer is counted: weeks left to chance are followed, and a tally is kept.

    more -- the tally after so many weeks more; takes the inputs by name, the tally so far,
            which is empty at first, and the weeks. Each week is the same whenever it is
            followed. The tally says under "weeks" how many are in it
    told -- the answer that a tally gives to these inputs
    """

    more: Callable[[Mapping[str, Value], Tally, int], Tally]
    told: Callable[[Mapping[str, Value], Tally], Answer]


@dataclass(frozen=True, kw_only=True)
class Calculator:
    """A question, what must be known to answer it, and the work that does.

    work   -- takes the inputs by name, SI; after them it may ask for the plus-or-minus of an
              input as NAME_sure, a share of its value
    leaves -- output -> inputs, here or elsewhere, that its value may be kept as
    sure_of -- output -> the output that is its plus-or-minus, kept with it in a job
    trials -- how often the work is asked for the plus-or-minus of a bent answer; fewer where
              the work takes long, on a phone fifty times what it takes here; 0: there is none.
              With fewer, working backwards looks at fewer places too
    simulation -- for an answer that is counted. It carries an interval of its own: it has no
              trials, and is neither worked backwards nor drawn against an input, for each
              of these asks the work a hundred times. It can be counted for longer.
    """

    name: str
    title: str
    question: str
    inputs: tuple[Input | Choice, ...]
    outputs: tuple[Output, ...]
    work: Callable[..., Answer]
    cautions: tuple[str, ...]
    sources: tuple[str, ...]
    leaves: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    sure_of: Mapping[str, str] = field(default_factory=dict)
    trials: int = TRIALS
    simulation: Simulation | None = None

    def __post_init__(self) -> None:
        names = [each.name for each in self.inputs]
        outputs = [each.name for each in self.outputs]
        if len({*names, *outputs}) != len(names) + len(outputs):
            raise ValueError(f"{self.name}: a name stands twice among {names + outputs}")
        wanted = _taken_by(self.work)
        if wanted[: len(names)] != names or not {*self.asks_sure} <= {*names}:
            raise ValueError(f"{self.name}: the work takes {wanted}, the inputs are {names}")
        if not {*self.leaves} <= {*outputs}:
            raise ValueError(f"{self.name}: leaves {list(self.leaves)}, not all of them outputs")
        if any(self.output(a).kind != self.output(b).kind for a, b in self.sure_of.items()):
            raise ValueError(f"{self.name}: a plus-or-minus is of the kind of its output")
        for source in self.sources:
            sources.entry(source)
        if self.simulation and self.trials:
            raise ValueError(f"{self.name}: what is counted has an interval and makes no trials")
        if not (self.cautions and self.sources):
            raise ValueError(f"{self.name}: no cautions or no sources")

    @cached_property
    def asks_sure(self) -> tuple[str, ...]:
        """The inputs whose plus-or-minus the work itself takes."""
        wanted = _taken_by(self.work)[len(self.inputs) :]
        return tuple(name.removesuffix("_sure") for name in wanted)

    @cached_property
    def invented(self) -> tuple[str, ...]:
        """The inputs whose default tells of an invented house, and so nothing of a real one.

        Those whose default is common practice or published may stand.
        """
        return tuple(each.name for each in self.inputs if "invented" in each.origin)

    def input(self, name: str) -> Input | Choice:
        """The input of that name. KeyError if there is none."""
        return _by_name(self.inputs, name)

    def output(self, name: str) -> Output:
        """The output of that name. KeyError if there is none."""
        return _by_name(self.outputs, name)


def _taken_by(work: Callable[..., Answer]) -> list[str]:
    """Names of what a function takes. `inspect` tells as well, but is heavy to load on a phone."""
    code = cast(FunctionType, getattr(work, "__wrapped__", work)).__code__
    return list(code.co_varnames[: code.co_argcount + code.co_kwonlyargcount])


def _by_name[T: (Input | Choice, Output)](many: tuple[T, ...], name: str) -> T:
    for each in many:
        if each.name == name:
            return each
    raise KeyError(name)


@dataclass(frozen=True)
class Case:
    """A calculator with one set of inputs: what was typed, what it means, what it gives.

    given -- the unit each input was given in; `units` the one it is shown in
    sures -- half-widths of the inputs' plus-or-minus, SI
    """

    calculator: Calculator
    unit_set: str
    typed: Mapping[str, Typed]
    values: Mapping[str, Value]
    given: Mapping[str, Unit]
    units: Mapping[str, Unit]
    sures: Mapping[str, float]
    errors: tuple[Refused, ...]
    answer: Answer | None

    def work(self, values: Mapping[str, Value]) -> Answer:
        """The answer with other values for the inputs. Refused where there is none."""
        return _worked(self.calculator, values, self.values, self.sures)


def _worked(
    calculator: Calculator,
    values: Mapping[str, Value],
    nominal: Mapping[str, Value],
    sures: Mapping[str, float],
) -> Answer:
    """The work done; a plus-or-minus it asks for is a share of the nominal value."""
    asked: dict[str, float] = {}
    for name in calculator.asks_sure:
        value = nominal[name]
        asked[f"{name}_sure"] = sures.get(name, 0.0) / value if isinstance(value, float) else 0.0
    return calculator.work(**values, **asked)


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
    sures: dict[str, float] = {}
    known = {each.name for each in calculator.inputs}
    errors = [Refused("no such input", name) for name in filled if name not in known]
    for each in calculator.inputs:
        try:
            values[each.name], unit = each.take(filled[each.name], unit_set)
            if isinstance(each, Input) and unit:
                given[each.name] = unit
                sures[each.name] = each.take_sure(filled[each.name], values[each.name], unit)
                units[each.name] = _shown_in(each, typed.get(each.name), unit, unit_set)
        except Refused as refused:
            errors.append(refused)
    answer = None
    if not errors:
        try:
            answer = _worked(calculator, values, values, sures)
        except Refused as refused:
            errors.append(refused)
    return Case(calculator, unit_set, filled, values, given, units, sures, tuple(errors), answer)


def _shown_in(each: Input, typed: Typed | None, given: Unit, unit_set: str) -> Unit:
    if typed is None:
        return each.usual(unit_set)
    return each.unit_called(typed.show, unit_set) if typed.show else given
