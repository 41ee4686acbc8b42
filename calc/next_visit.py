"""One house, several visits: the next one begun from the last, and what has drifted since."""

from collections.abc import Iterable
from dataclasses import replace
from typing import NamedTuple

from calc import EDITION
from calc.job import Compared, Job, compared
from calc.model import Choice, Input, Typed

_DUST = 1e-9  # 5.6 less 5.4 is a hair more than 0.2 in floats


def next_visit(job: Job, date: str) -> Job:
    """A job for the next visit to the same house. Every value keeps the day it was measured on."""
    return replace(job, date=date, handbook=EDITION)


def previous_visit(job: Job, others: Iterable[Job]) -> Job | None:
    """The last visit to the same house before this one: same name, an earlier date."""
    same = (each for each in others if each.name == job.name and each.date < job.date)
    return max(same, key=lambda each: each.date, default=None)


def measured_anew(job: Job, before: Job, name: str) -> bool:
    """Whether the visit has its own value, not the one carried over from the visit before."""
    return name in job.values and job.values.get(name) != before.values.get(name)


class Drift(NamedTuple):
    """A value that has changed by more than both visits leave in doubt. SI.

    old_sure, new_sure -- plus-or-minus of each, 19 times in 20; 0 for what is exact
    """

    compared: Compared
    old_sure: float
    new_sure: float


def drifts(before: Job, job: Job, unit_set: str = "us") -> list[Drift]:
    """What has drifted from one visit to the other. A change that either plus-or-minus covers
    is none: nobody could tell it from the doubt of the measurement."""
    every = compared(before, job, unit_set)
    both = (each for each in every if {each.word.name} <= before.values.keys() & job.values.keys())
    found = (
        Drift(each, _sure(each.word, before), _sure(each.word, job))
        for each in both
        if measured_anew(job, before, each.word.name)
    )
    return [each for each in found if _has_drifted(each)]


def _has_drifted(drift: Drift) -> bool:
    each = drift.compared
    if isinstance(each.word, Choice):
        return each.old != each.new
    most = max(drift.old_sure, drift.new_sure)
    return each.change is not None and abs(each.change) > most * (1 + _DUST)


def _sure(word: Input | Choice, job: Job) -> float:
    if isinstance(word, Choice):
        return 0.0
    value = job.values[word.name]
    given = Typed(value.value, value.unit or "", sure=value.plus_minus)
    return word.take_sure(given, *word.take(given, "us"))
