"""Check values: cases in words, with the figure that a source gives and how near we must come.

A row whose `within` is empty must round to the figure printed. The figures are of the source, or
of a method of another's; never of this handbook's own calculators.
"""

import csv
import shlex
from functools import cache
from pathlib import Path
from typing import NamedTuple

from calc.figures import agrees
from calc.model import Case, Output
from calc.request import case_of
from calc.units import Unit

FILE = Path(__file__).with_name("checks.csv")


class Check(NamedTuple):
    """One row. `asked` is what stands behind `python -m calc`.

    within -- half-width in the row's unit, or a share of the figure as "2 %"
    source -- an id of `calc.sources`, or another method's name
    """

    part: str
    asked: str
    output: str
    expected: str
    unit: str
    within: str
    source: str
    place: str

    @property
    def calculator(self) -> str:
        return shlex.split(self.asked)[0]

    @cache  # noqa: B019 -- rows are few, and each is asked several times
    def case(self) -> Case:
        """The case that is asked for, answered. ValueError, with the row, if it is refused."""
        case = case_of(shlex.split(self.asked))
        if case.errors or not case.answer:
            raise ValueError(f"{self.asked}: {case.errors}")
        return case

    def declared(self) -> Output:
        """The output that is compared."""
        outputs = {each.name: each for each in self.case().calculator.outputs}
        return outputs[self.output]

    def shown_in(self) -> Unit:
        """The unit of the figures. KeyError for one that this output does not have."""
        return self.declared().kind.unit(self.unit)

    def found(self) -> float:
        """Our answer in the row's unit."""
        answer = self.case().answer
        value = answer.outputs[self.output] if answer else None
        if value is None:
            raise ValueError(f"{self.asked}: no {self.output}")
        return self.shown_in().out_of_si(value)

    def holds(self) -> bool:
        """Whether our answer comes as near as the row asks."""
        found = self.found()
        if not self.within:
            return agrees(found, self.expected)
        wanted, (width, _, share) = float(self.expected), self.within.partition(" ")
        return abs(found - wanted) <= float(width) * (abs(wanted) / 100 if share else 1)


def checks() -> list[Check]:
    """All rows of the file. TypeError for one with too few or too many parts."""
    with FILE.open(encoding="utf-8", newline="") as file:
        head, *rows = csv.reader(file)
    assert head == list(Check._fields)
    return [Check(*row) for row in rows]
