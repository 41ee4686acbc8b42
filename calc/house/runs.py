"""What runs from the description of a house, one after another.

A run takes what was measured, then what an earlier run left for it: a figure in the job that one of
the runs had computed is computed anew, for what it came from may have changed. An example's figure
is never put in for a house's own: what is missing is told, and there is no answer until it is
there. What is usual everywhere is taken as usual, and said.
"""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from calc.calculators import calculator
from calc.figures import plainly_written
from calc.job import Job, typed
from calc.model import Calculator, Case, Choice, Input, Typed, solve

# In the order of the water, so that each finds what an earlier one leaves.
RUNS = (
    "treatment_train",
    "inlet_flow",
    "outlet_setting",
    "filter_due",
    "tank_draw",
    "system_run",
    "aeration_removal",
    "radon_removal",
    "aerator_service",
)


class Run(NamedTuple):
    """One calculator and what the house gives it.

    missing -- inputs that only this house can tell, and has not
    usual   -- inputs taken as usual, in the words of their defaults
    handed  -- input -> the calculator that left it
    case    -- None while anything is missing
    """

    calculator: Calculator
    missing: tuple[Input | Choice, ...]
    usual: tuple[Input | Choice, ...]
    handed: Mapping[str, str]
    case: Case | None


def runs(job: Job, unit_set: str = "us", wanted: Iterable[str] = RUNS) -> list[Run]:
    """All that can be run from a job, in order."""
    left: dict[str, tuple[str, Typed]] = {}
    made = []
    for name in wanted:
        one = run(job, calculator(name), left, unit_set)
        made.append(one)
        if one.case and one.case.answer:
            left |= _left(one.case, left)
    return made


def run(
    job: Job,
    declared: Calculator,
    left: Mapping[str, tuple[str, Typed]] | None = None,
    unit_set: str = "us",
) -> Run:
    """One calculator asked with the figures of the house. `left`: input -> who left it, and it."""
    handed = {e.name: left[e.name] for e in declared.inputs if left and _is_handed(job, e, left)}
    given = {name: each for name, each in typed(job, declared).items() if name not in handed}
    open_ = [e for e in declared.inputs if e.once and e.name not in {*given, *handed}]
    missing = tuple(each for each in open_ if is_example(each))
    usual = tuple(each for each in open_ if not is_example(each))
    given |= {name: typed_ for name, (_, typed_) in handed.items()}
    case = None if missing else solve(declared, given, unit_set)
    return Run(declared, missing, usual, {name: by for name, (by, _) in handed.items()}, case)


def _is_handed(job: Job, each: Input | Choice, left: Mapping[str, tuple[str, Typed]]) -> bool:
    """Whether an input comes from an earlier run: the job has none, or one that a run computed."""
    if each.name not in left:
        return False
    return each.name not in job.values or job.values[each.name].origin in RUNS


def is_example(each: Input | Choice) -> bool:
    """Whether its default is the invented house's own, which says nothing of another house."""
    return "invented" in each.origin


def _left(case: Case, before: Mapping[str, tuple[str, Typed]]) -> dict[str, tuple[str, Typed]]:
    """What an answer leaves for the runs that follow; the first to leave a figure is taken."""
    assert case.answer
    found: dict[str, tuple[str, Typed]] = {}
    for output, places in case.calculator.leaves.items():
        value = case.answer.outputs[output]
        if value is None:
            continue
        unit = case.calculator.output(output).usual("us")
        text = Typed(plainly_written(unit.out_of_si(value), 6), unit.symbol)
        found |= {place: (case.calculator.name, text) for place in places if place not in before}
    return found
