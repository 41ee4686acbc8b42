"""A symptom, the steps that narrow it down, and what each reading may mean."""

from typing import NamedTuple


class Branch(NamedTuple):
    """One thing a reading may show. `ask`: the calculator that goes on from here, or nothing."""

    shows: str
    means: str
    do: str
    ask: str = ""


class Step(NamedTuple):
    """One measurement and what it may show, likeliest first."""

    take: str
    branches: tuple[Branch, ...]


class Symptom(NamedTuple):
    """What is complained of. `first` comes before any measuring."""

    title: str
    first: str
    steps: tuple[Step, ...]
