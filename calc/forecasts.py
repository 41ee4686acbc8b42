"""When to come back: the dates that the job's own figures give, and those to be set by hand.

A forecast is one line of `FORECASTS`. One with a calculator is dated once the job holds what the
calculator must know of this house; one without is dated by the technician.
"""

from typing import NamedTuple

from calc.calculators import calculator
from calc.calculators.aerator_service import RETEST
from calc.days import day_number, day_text
from calc.job import Job, typed
from calc.model import Calculator, Case, solve
from calc.units import day

FARTHEST = 3650 * day  # a date further off is none: nobody should wait ten years for it


class Forecast(NamedTuple):
    """One thing that is due again.

    do         -- what is done then, in words a household understands
    since      -- the value of the job from whose day the time runs
    calculator -- answers how long; `outputs`: the first of them that is a number counts
    idle       -- inputs of it that these outputs do not depend on: they need not be known
    every      -- the time from `since`, s, where no calculator is asked
    """

    name: str
    title: str
    do: str
    since: str = ""
    calculator: str = ""
    outputs: tuple[str, ...] = ()
    idle: tuple[str, ...] = ()
    every: float = 0.0


FORECASTS = (
    Forecast("filter", "Service the filter", "Wash or change the filter before the open tank.",
             "filter_flows", "filter_due", ("due_surely", "due")),
    Forecast("blower", "Clean the aerator", "Clean the aerator, the blower's air filter and the "
             "stones; read the blower's gauge.", "blower_now", "aerator_service", ("clean_due",),
             idle=("tested_ago",)),
    Forecast("radon", "Test the radon again", "Draw two samples on one day: before the aerator and "
             "after it.", "treated_radon", every=RETEST),
    Forecast("media", "Fill up the neutralizer", "Measure the depth of the media and fill up.",
             "bed_depth", "neutralizer", ("refill",)),
    Forecast("salt", "Fill up the salt", "Look into the softener's brine tank and fill up."),
    Forecast("lamp", "Change the lamp", "Change the lamp of the ultraviolet unit and clean its "
             "sleeve."),
)  # fmt: skip


class Due(NamedTuple):
    """What came of one forecast for one job.

    day     -- as 2026-11-25; None where there is none
    since   -- the day from which it was counted; empty if it was set by hand
    missing -- the values without which the job cannot tell, by name
    """

    forecast: Forecast
    day: str | None
    since: str = ""
    missing: tuple[str, ...] = ()

    @property
    def by_hand(self) -> bool:
        return bool(self.day and not self.since)


def dues(job: Job, set_by_hand: dict[str, str] | None = None) -> list[Due]:
    """Every forecast for a job. A date set by hand goes before a computed one."""
    by_hand = set_by_hand or {}
    return [
        Due(each, by_hand[each.name]) if by_hand.get(each.name) else _due(each, job)
        for each in FORECASTS
    ]


def _due(forecast: Forecast, job: Job) -> Due:
    missing = missing_of(forecast, job)
    wait = None if missing or not forecast.since else _wait(forecast, job)
    if wait is None:
        return Due(forecast, None, missing=missing)
    since = _day_of(job, forecast.since)
    return Due(forecast, day_text(day_number(since) + int(wait / day)), since)


def missing_of(forecast: Forecast, job: Job) -> tuple[str, ...]:
    """The values that the job lacks to answer a forecast, by name."""
    declared = calculator(forecast.calculator) if forecast.calculator else None
    wanted = wanted_of_house(declared, forecast.idle) if declared else ()
    since = (forecast.since,) if forecast.since else ()
    return tuple(name for name in dict.fromkeys((*since, *wanted)) if name not in job.values)


def wanted_of_house(declared: Calculator, idle: tuple[str, ...] = ()) -> tuple[str, ...]:
    """What the calculator must be told of this house: no example's figure makes a date."""
    return tuple(name for name in declared.invented if name not in idle)


def settled(
    job: Job, declared: Calculator, unit_set: str = "us", idle: tuple[str, ...] = ()
) -> Case | None:
    """The calculator answered from the job alone; None if the job does not hold enough for it."""
    if any(name not in job.values for name in wanted_of_house(declared, idle)):
        return None
    case = solve(declared, typed(job, declared), unit_set)
    return case if case.answer else None


def _wait(forecast: Forecast, job: Job) -> float | None:
    if not forecast.calculator:
        return forecast.every
    case = settled(job, calculator(forecast.calculator), idle=forecast.idle)
    if case is None or case.answer is None:
        return None
    found = (case.answer.outputs[name] for name in forecast.outputs)
    wait = next((each for each in found if each is not None), None)
    return wait if wait is not None and wait <= FARTHEST else None


def _day_of(job: Job, name: str) -> str:
    """The day a value is of. It is stamped in UTC: within a day of the visit it is the visit's."""
    when = job.values[name].when[:10]
    return job.date if abs(day_number(when) - day_number(job.date)) <= 1 else when
