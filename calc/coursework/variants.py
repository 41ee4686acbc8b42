"""One variant of a problem: its numbers, its words, and what is right."""

import re
from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from math import isfinite

from calc.calculators import calculator
from calc.coursework.deck import VARIANTS, Hand, card
from calc.coursework.problem import Part, Pick, Problem, ProblemSet, Recall, Slip
from calc.coursework.slips import Common, common
from calc.coursework.working import Working
from calc.model import Case, Quantity, Typed, solve
from calc.units import Kind, Unit
from calc.views.words import input_words

EXAMPLE = 0  # the variant that nobody is assigned, for worked examples
CLOSE = 0.01  # figures that differ by less are not asked to be told apart
CLEAR = 2.0  # tolerances that a slip must be away from the right answer
TRIES = 60

EDGE = 1 + 1e-4  # what lies on the edge is within; a package has its figures to seven digits


@dataclass(frozen=True, kw_only=True, eq=False)
class Question:
    """A part of one variant, as it is asked.

    right   -- SI value, or the option
    options -- option -> its words; empty for a number
    usual   -- the unit in which the answer is printed
    band    -- how far an answer may be off, SI; `absolute` says that it is no share of it
    slips   -- slip -> the SI value that it leads to
    """

    name: str
    ask: str
    marks: int
    section: str
    right: float | str
    options: Mapping[str, str] = field(default_factory=dict)
    because: str = ""
    kind: Kind | None = None
    usual: Unit | None = None
    band: float = 0.0
    absolute: bool = False
    digits: int = 0
    slips: tuple[tuple[Slip | Common, float], ...] = ()

    def near(self, value: float, about: float | None = None) -> bool:
        """Whether an SI value is the right one, or another one, within what is allowed."""
        assert isinstance(self.right, float)
        if about is None or self.absolute or not self.right:
            width = self.band
        else:
            width = self.band * abs(about / self.right)
        return abs(value - (self.right if about is None else about)) <= width * EDGE


@dataclass(frozen=True, eq=False)
class Variant:
    """A problem with its numbers drawn.

    places    -- which of its values each draw took
    text      -- the story, empty for questions of recall
    questions -- what is asked, in order
    case      -- what the calculator makes of it; None for questions of recall
    """

    problem: Problem | Recall
    number: int
    places: tuple[int, ...]
    text: str
    questions: tuple[Question, ...]
    case: Case | None = None

    def question(self, name: str) -> Question:
        """The question of that name. KeyError if there is none."""
        return {each.name: each for each in self.questions}[name]

    @cached_property
    def working(self) -> Working | None:
        """The calculator's working; None for questions of recall."""
        return Working(self.case) if self.case else None


class Unsound(ValueError):
    """A problem for which no card is fit to be asked."""


@lru_cache(maxsize=512)
def variant(problem_set: ProblemSet, name: str, number: int, salt: str = "") -> Variant:
    """The variant of that number, 0 to 400; 0 is the worked example.

    salt -- a word that a school keeps to itself: with it the decks are the school's own, and
            this program alone does not tell its keys
    """
    if not 0 <= number <= VARIANTS:
        raise ValueError(f"there is no variant {number}: they run from 1 to {VARIANTS}")
    problem = problem_set.problem(name)
    seed = f"{salt}|{problem_set.name}|{name}|{problem_set.revision}"
    # a card that is refused gives way to one further down, which no other number comes to
    for position in range(number, min(problem.size, TRIES * (VARIANTS + 1)), VARIANTS + 1):
        dealt = _dealt(problem, number, Hand(card(seed, problem.size, position)))
        if dealt:
            return dealt
    raise Unsound(f"{problem_set.name}, {name}: no card fit for variant {number}")


def _dealt(problem: Problem | Recall, number: int, hand: Hand) -> Variant | None:
    if isinstance(problem, Recall):
        return Variant(problem, number, (), "", tuple(_recalled(problem, hand)))
    places = tuple(hand.pick(len(values)) for values in problem.draws.values())
    drawn = zip(problem.draws.items(), places, strict=True)
    texts = {name: values[place] for (name, values), place in drawn}
    case = solved(problem, texts)
    if not case.answer or not problem.keep(case):
        return None
    working = Working(case)
    asked = [_asked(part, working) for part in problem.parts]
    questions = tuple(each for each in asked if each)
    if len(questions) < len(asked):
        return None
    return Variant(problem, number, places, told(problem.text, case), questions, case)


def solved(problem: Problem, texts: Mapping[str, str]) -> Case:
    """The calculator's case for what was drawn, written as it stands on the sheet."""
    given = {**problem.fixed, **texts}
    return solve(
        calculator(problem.calculator), {name: Typed(text) for name, text in given.items()}
    )


def told(text: str, case: Case, open_: Container[str] = ()) -> str:
    """A text with the inputs of a case put in, in the units they were given in."""
    return re.sub(
        r"\{(\w+)\}",
        lambda hole: hole[0] if hole[1] in open_ else _listed(input_words(case, hole[1])),
        text,
    )


def template(text: str, problem: Problem, example: Variant) -> str:
    """The text with only what is drawn left open."""
    assert example.case
    return told(text, example.case, problem.draws)


def drawn_words(problem: Problem, name: str, text: str) -> str:
    """A drawn value as it stands in the text."""
    return told(f"{{{name}}}", solved(problem, {name: text}))


def _listed(words: str) -> str:
    """Readings kept apart by semicolons, as a sentence lists them."""
    *before, last = words.split("; ")
    return f"{', '.join(before)} and {last}" if before else last


def _recalled(problem: Recall, hand: Hand) -> Iterator[Question]:
    places = hand.order(len(problem.facts), problem.asked)
    for number, at in enumerate(places, 1):
        fact = problem.facts[at]
        words = (fact.right, *fact.wrong)
        order = hand.order(len(words), len(words))
        yield Question(
            name=f"q{number}",
            ask=fact.ask,
            marks=1,
            section=fact.section,
            right="abcdef"[order.index(0)],
            options={"abcdef"[place]: words[each] for place, each in enumerate(order)},
            because=fact.because,
        )


def _asked(part: Part | Pick, working: Working) -> Question | None:
    """The question, or None if this case is not fit for it."""
    case = working.case
    ask = told(part.ask, case)
    if isinstance(part, Pick):
        return _decided(part, ask, working)
    found = _found(part.finds, working)
    if found is None or not isfinite(found.value):
        return None
    kind = found.like if isinstance(found.like, Kind) else found.like.kind
    band = allowed(part, kind, found.value)
    slips: list[tuple[Slip | Common, float]] = [
        (slip, value)
        for slip in part.slips
        if (value := _slipped(slip, part.finds, working)) is not None
    ]
    slips += [(each, each.of(found.value)) for each in common(kind) if found.value]
    if not band or any(abs(value - found.value) <= CLEAR * band for _, value in slips):
        return None
    return Question(
        name=part.finds,
        ask=ask,
        marks=part.marks,
        section=part.section,
        right=found.value,
        kind=kind,
        usual=found.like.usual("us"),
        band=band,
        absolute=isinstance(part.tolerance, str),
        digits=part.digits,
        slips=tuple(slips),
    )


def _decided(part: Pick, ask: str, working: Working) -> Question | None:
    """The decision, or None if a comparison is so close that a small part of it would turn it."""
    right = ""
    for name, _, when in part.options:
        holds = working.holds(when, CLOSE) if when else True
        if holds is None:
            return None
        if holds:
            right = name
            break
    return Question(
        name=part.finds,
        ask=ask,
        marks=part.marks,
        section=part.section,
        right=right,
        options={option.name: option.words for option in part.options},
        because=part.because,
    )


def _found(finds: str, working: Working) -> Quantity | None:
    """A letter of the working, or an output by its name."""
    if finds in working.found:
        return working.stands[finds]
    output = working.case.calculator.output(finds)
    assert working.case.answer
    value = working.case.answer.outputs[finds]
    return None if value is None else Quantity(value, output, output.digits)


def allowed(part: Part, kind: Kind, right: float) -> float:
    """How far an answer may be off, SI."""
    if isinstance(part.tolerance, float):
        return part.tolerance * abs(right)
    width, unit = kind.read(part.tolerance, kind.usual("us"))
    return width - unit.zero


def _slipped(slip: Slip, finds: str, working: Working) -> float | None:
    if " = " in slip.formula:
        return working.value(finds, {}, slip.formula)
    return working.other(slip.formula)
