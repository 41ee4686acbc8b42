"""A visit: steps in the order in which they are gone."""

from collections.abc import Sequence
from typing import Any, NamedTuple


class Step(NamedTuple):
    """One stop of a visit: something to look at, to measure or to decide.

    asks  -- figures that are typed here, by their names in the job
    opens -- the calculator that is opened with the job's figures
    keeps -- answers of it that go into the job, as output>figure
    caution -- stands before the step
    """

    name: str
    title: str
    do: str
    asks: tuple[str, ...] = ()
    opens: str = ""
    keeps: tuple[str, ...] = ()
    caution: str = ""


class Visit(NamedTuple):
    """One kind of visit."""

    title: str
    steps: tuple[Step, ...]


def visit_of(data: Sequence[Any]) -> Visit:
    """A visit again, from what JSON makes of one."""
    title, steps = data
    return Visit(title, tuple(Step(*each) for each in steps))
