"""A symptom, its causes, the steps that narrow it down, and what each reading may mean."""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple


class Cause(NamedTuple):
    """One thing that may be wrong.

    weight  -- how often it is this one among the causes of its symptom, against each other.
               Judgement: no count of service calls was found that could be cited
    chapter -- where its fix is told, a path in docs/
    """

    name: str
    weight: float
    chapter: str


class Branch(NamedTuple):
    """One thing a reading may show. `ask`: the calculator that goes on from here, or nothing.

    fits -- the causes of which one expects this reading
    """

    shows: str
    means: str
    do: str
    ask: str = ""
    fits: tuple[str, ...] = ()


class Step(NamedTuple):
    """One measurement and what it may show, likeliest first.

    sure   -- how often a cause shows the reading that fits it. Judgement, as the weights are
    effort -- against a look or a pail: 2 for a licensed person or a day's wait, 3 for a laboratory
    """

    take: str
    branches: tuple[Branch, ...]
    name: str = ""
    sure: float = 0.9
    effort: float = 1.0


class Symptom(NamedTuple):
    """What is complained of. `first` comes before any measuring; `says` is a customer's word."""

    title: str
    first: str
    steps: tuple[Step, ...]
    says: str = ""
    causes: Mapping[str, Cause] = {}


def symptom_of(data: Sequence[Any]) -> Symptom:
    """A symptom again, from what JSON makes of one."""
    title, first, steps, says, causes = data
    return Symptom(
        title,
        first,
        tuple(
            Step(take, tuple(Branch(*each) for each in branches), *more)
            for take, branches, *more in steps
        ),
        says,
        {name: Cause(*cause) for name, cause in causes.items()},
    )
