"""What a problem is: its words, what is drawn, what is asked, and how it is got wrong.

A problem stands on a calculator. Its numbers go in as if typed there, its answers, its steps and
their formulas come from there. Nothing is worked out here.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from math import perm, prod
from typing import Literal, NamedTuple

from calc.coursework.deck import VARIANTS
from calc.model import Case

type Form = Literal["recall", "one-step", "multi-step", "field case"]
type Drawn = tuple[str, ...]
SPARE = 2  # a deck holds so many times the variants, for cards that must be refused


def grid(low: str, high: str, step: str, unit: str) -> Drawn:
    """Every number from `low` to `high`, written as a person would.

    >>> grid("4.5", "5", "0.1", "gpm")
    ('4.5 gpm', '4.6 gpm', '4.7 gpm', '4.8 gpm', '4.9 gpm', '5 gpm')
    """
    decimals = max(len(text.partition(".")[2]) for text in (low, high, step))
    first, last, by = (_whole(text, decimals) for text in (low, high, step))
    return tuple(f"{_written(at, decimals)} {unit}" for at in range(first, last + 1, by))


def _whole(text: str, decimals: int) -> int:
    before, _, after = text.partition(".")
    return int(before + after.ljust(decimals, "0"))


def _written(whole: int, decimals: int) -> str:
    text = f"{whole:0{decimals + 1}d}"
    before, after = (text[:-decimals], text[-decimals:]) if decimals else (text, "")
    return f"{before}.{after}".rstrip("0").rstrip(".") if after else before


class Slip(NamedTuple):
    """A known way to get a part wrong.

    hint    -- what to say, naming the slip
    formula -- `d = d / 2` for a letter had in a wrong way, from where the working goes on as it
               should; or what is given in place of the answer, `Q_c`. Letters are the working's,
               names of inputs, outputs and of `calc.units` may stand there too
    marks   -- share of the part's marks that is left
    """

    hint: str
    formula: str
    marks: float = 0.3


@dataclass(frozen=True, kw_only=True, eq=False)
class Part:
    """A number that is asked for.

    finds     -- a letter of the calculator's working, or the name of an output that has none
    tolerance -- relative: 0.02 for arithmetic, 0.05 where a chart or table is read. Or, where
                 the answer may be nought, absolute, with its unit: "0.05 gpm"
    digits    -- significant figures that are asked for
    section   -- the heading of the chapter to read again
    """

    finds: str
    ask: str
    section: str
    tolerance: float | str = 0.02
    digits: int = 3
    marks: int = 1
    slips: tuple[Slip, ...] = ()

    def __post_init__(self) -> None:
        rounding = 0.5 * 10.0 ** (1 - self.digits)
        if isinstance(self.tolerance, float) and self.tolerance < rounding:
            raise ValueError(f"{self.finds}: {self.digits} figures are too few for its tolerance")


class Option(NamedTuple):
    """One of a few decisions, and when it is the right one: `Q_x <= q`, in letters of the
    working, names of inputs, outputs and of `calc.units`. The last of them needs no condition."""

    name: str
    words: str
    when: str = ""


@dataclass(frozen=True, kw_only=True, eq=False)
class Pick:
    """A decision that is asked for. The first option whose condition holds is right."""

    finds: str
    ask: str
    section: str
    options: tuple[Option, ...]
    because: str
    marks: int = 1


@dataclass(frozen=True, kw_only=True, eq=False)
class About:
    """What an instructor wants to know of a problem before it is assigned.

    objective -- what the student can do afterwards, with a verb that can be measured
    level     -- 1: one rule; 2: several steps; 3: a case to judge
    minutes   -- estimated, with paper and a pocket calculator
    """

    name: str
    form: Form
    objective: str
    level: int
    minutes: int


@dataclass(frozen=True, kw_only=True, eq=False)
class Problem(About):
    """A case of a calculator with numbers drawn.

    text  -- the story; {name} stands for an input as it was drawn, fixed or left at its default
    draws -- input -> the values it may have, written with their unit
    fixed -- inputs that are the same in every variant
    keep  -- which cases are worth asking, beyond those a calculator refuses
    """

    text: str
    calculator: str
    draws: Mapping[str, Drawn]
    parts: tuple[Part | Pick, ...]
    fixed: Mapping[str, str] = field(default_factory=dict)
    keep: Callable[[Case], bool] = lambda case: True

    def __post_init__(self) -> None:
        _enough(self.name, self.size)
        _once(self.name, (part.finds for part in self.parts))

    @property
    def size(self) -> int:
        """How many cards the deck has."""
        return prod(len(values) for values in self.draws.values())


class Fact(NamedTuple):
    """A question of recall: what is right, what people answer instead, and why."""

    ask: str
    right: str
    wrong: tuple[str, ...]
    because: str
    section: str


@dataclass(frozen=True, kw_only=True, eq=False)
class Recall(About):
    """Some of many questions, in an order, their options in an order."""

    facts: tuple[Fact, ...]
    asked: int = 3

    def __post_init__(self) -> None:
        _enough(self.name, self.size)
        if len({len(fact.wrong) for fact in self.facts}) > 1:
            raise ValueError(f"{self.name}: the questions have not all as many options")

    @property
    def size(self) -> int:
        """How many cards the deck has."""
        options = len(self.facts[0].wrong) + 1
        many: int = perm(len(self.facts), self.asked) * perm(options, options) ** self.asked
        return many


@dataclass(frozen=True, kw_only=True, eq=False)
class ProblemSet:
    """The problems of one chapter.

    revision -- the day on which its answers last changed; it shuffles the decks anew
    """

    name: str
    chapter: str
    title: str
    revision: str
    problems: tuple[Problem | Recall, ...]

    def __post_init__(self) -> None:
        _once(self.name, (problem.name for problem in self.problems))

    def problem(self, name: str) -> Problem | Recall:
        """The problem of that name. KeyError if there is none."""
        return {each.name: each for each in self.problems}[name]


def _enough(name: str, size: int) -> None:
    if size < SPARE * VARIANTS:
        raise ValueError(f"{name}: {size} cards are too few for {VARIANTS} variants")


def _once(name: str, many: Iterable[str]) -> None:
    names = list(many)
    if len({*names}) != len(names):
        raise ValueError(f"{name}: a name stands twice among {names}")
