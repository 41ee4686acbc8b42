"""The page of check values, and the same as CSV with every input."""

import csv
import io
import shlex
from collections.abc import Iterator
from itertools import groupby

from build_scripts.checks import Check, checks
from build_scripts.pages.markdown import code, escaped, heading, prose
from calc.calculators import calculator
from calc.model import Case, Input
from calc.sources import SOURCES

INTRODUCTION = """# Check values

Cases with a figure that somebody else gives: a printed table or example, another program, or a
sum worked by hand. Run them against your own tool. Ours has come as near as each says, or this
page would not have been built.

The line is what you type on the command line; inputs that it does not name have the defaults of
the calculator's page. [checks.csv](checks.csv) has every input of each case, for other programs.
No figure expected is taken from our own answers. *By hand* means arithmetic that you can repeat
from what stands beside it; other methods name the program or the equation. If your figure
differs, [tell us](../about/wrong-number.md)."""


def page() -> str:
    """The page, by part of the book and by calculator."""
    parts = [INTRODUCTION]
    for part, rows in groupby(checks(), lambda row: row.part):
        parts.append(heading(2, part, part.lower().replace(" ", "-")))
        for asked, some in groupby(rows, lambda row: row.asked):
            parts += _case(asked, list(some))
    return "\n\n".join(parts)


def _case(asked: str, rows: list[Check]) -> Iterator[str]:
    name = rows[0].calculator
    yield f"**[{escaped(calculator(name).title)}](calculators/{name}.md)**"
    yield code([f"python -m calc {shlex.join(shlex.split(asked))}"])
    yield "\n".join(map(_figure, rows))


def _figure(row: Check) -> str:
    """A row in words. ValueError, which stops the build, if our answer misses."""
    if not row.holds():
        raise ValueError(f"{row.asked}: {row.output} is {row.found()}, not {row.expected}")
    unit = f" {row.unit}" if row.unit else ""
    if not row.within:
        near = "to its last digit"
    else:
        near = f"within {row.within}" + ("" if row.within.endswith("%") else unit)
    source = f"[@{row.source}]" if row.source in SOURCES else escaped(row.source)
    return (
        f"- {escaped(row.declared().label)} (`{row.output}`): **{escaped(row.expected + unit)}** "
        f"{escaped(near)}; ours {escaped(ours(row) + unit)}. {source}: {prose(row.place)}."
    )


def ours(row: Check) -> str:
    """Our answer with one digit more than the figure expected."""
    return f"{row.found():.{len(row.expected.partition('.')[2]) + 1}f}"


def as_csv() -> str:
    """All rows with every input, defaults too, and our answer."""
    file = io.StringIO()
    rows = csv.writer(file, lineterminator="\n")
    rows.writerow([*Check._fields, "inputs", "ours"])
    for row in checks():
        told = " | ".join(_inputs(row.case()))
        rows.writerow([*row, told, ours(row)])
    return file.getvalue()


def _inputs(case: Case) -> Iterator[str]:
    """Every input of a case as name=value, a bare figure with the unit that it is meant in."""
    for each in case.calculator.inputs:
        typed = case.typed[each.name]
        unit = ""
        if isinstance(each, Input) and each.several == 1 and not each.kind.apart(typed.text)[1]:
            unit = typed.unit or each.usual(case.unit_set).symbol
        sure = f" ± {typed.sure}" if typed.sure else ""
        yield f"{each.name}={typed.text}{sure} {unit}".strip()
