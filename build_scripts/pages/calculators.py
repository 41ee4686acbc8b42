"""The page of each calculator, and the list of them."""

import shlex
from collections.abc import Iterable, Sequence

from build_scripts.pages.docstrings import arithmetic
from build_scripts.pages.glossary import other_names, terms
from build_scripts.pages.markdown import (
    bullets,
    code,
    escaped,
    heading,
    in_both_sets,
    listed,
    prose,
    symbol,
)
from build_scripts.pages.units import anchor
from build_scripts.pages.uses import Book
from build_scripts.pages.working import formulas
from calc import sources
from calc.model import UNIT_SETS, Calculator, Choice, Input, Output
from calc.units import Unit

INTRODUCTION = """# Calculators

What each asks for, in which range its arithmetic holds, by which formulas it answers, and where
they come from. For other programs all of it is in [calculators.json](calculators.json), described
by a JSON Schema, [calculators.schema.json](calculators.schema.json). See also the
[units](units.md) and the [word list](words.md)."""

ASKED = """A value is measured once and serves every page, unless it says otherwise. Without a
plus-or-minus it is taken as exact."""

ROOT = "../../"  # from a calculator's page to docs/


def path(calculator: Calculator) -> str:
    """Where the page of a calculator stands."""
    return f"reference/calculators/{calculator.name}.md"


def listing(every: Iterable[Calculator]) -> str:
    """The list of calculators, each with its question."""
    entries = (
        f"[{escaped(each.title)}](calculators/{each.name}.md)\n:   {prose(each.question)}"
        for each in sorted(every, key=lambda each: each.title)
    )
    return "\n\n".join([INTRODUCTION, *entries])


def page(calculator: Calculator, book: Book, every: Sequence[Calculator]) -> str:
    """The page of one calculator."""
    live = book.showing(calculator.name, ROOT)
    return "\n\n".join(
        [
            f"# {escaped(calculator.title)}",
            prose(calculator.question),
            _cautions(calculator),
            other_names(calculator.name, terms()),
            f"Work with it in {live}. All [calculators](../calculators.md).",
            heading(2, "What it asks for", "inputs"),
            ASKED,
            *_inputs(calculator, every),
            heading(2, "What it answers", "outputs"),
            *(_output(each, calculator) for each in calculator.outputs),
            heading(2, "Formulas", "formulas"),
            *formulas(calculator),
            heading(2, "The arithmetic", "arithmetic"),
            *arithmetic(calculator),
            heading(2, "On the command line", "command-line"),
            "This asks for the worked example. What you leave out has its default.",
            code(command(calculator)),
            heading(2, "Sources", "sources"),
            *map(_source, calculator.sources),
        ]
    )


def _cautions(calculator: Calculator) -> str:
    said = (caution.partition(".") for caution in calculator.cautions)
    rows = (f"    - **{prose(head)}.**{prose(rest)}" for head, _, rest in said)
    return "\n".join(['!!! danger "Cautions"', "", *rows])


def _inputs(calculator: Calculator, every: Sequence[Calculator]) -> Iterable[str]:
    groups = dict.fromkeys(each.group for each in calculator.inputs)
    for place, group in enumerate(groups, start=1):
        yield heading(3, escaped(group), f"group-{place}")
        for each in calculator.inputs:
            if each.group == group:
                yield heading(4, escaped(each.label), each.name)
                yield _choice(each) if isinstance(each, Choice) else _input(each, every)


def _choice(each: Choice) -> str:
    options = [f"`{value}`: {prose(said)}" for value, said in each.options.items()]
    facts = {
        "Name": f"`{each.name}`",
        "One of": "; ".join(options),
        "Default": f"`{each.default}`",
        "Default from": prose(each.origin),
        "Asked": _asked(each),
    }
    return f"{prose(each.measure)}\n\n{bullets(facts)}"


def _input(each: Input, every: Sequence[Calculator]) -> str:
    left = [
        f"[{escaped(one.title)}]({one.name}.md#{output})"
        for one in every
        for output, kept_as in one.leaves.items()
        if each.name in kept_as
    ]
    facts = {
        "Name": _name(each),
        "Kind": _kind(each, each.kind.units),
        "Readings": f"up to {each.several}, apart by semicolons" if each.several > 1 else "",
        "Range": in_both_sets(each.low, each.high, each),
        "Default": escaped(each.default),
        "Default from": prose(each.origin),
        "Plus-or-minus": escaped(each.sure),
        "Asked": _asked(each),
        "May come from": listed(left, "or"),
    }
    caution = f"**Caution.** {prose(each.caution)}\n\n" if each.caution else ""
    return f"{caution}{prose(each.measure)}\n\n{bullets(facts)}"


def _asked(each: Input | Choice) -> str:
    return "" if each.once else "anew each time"


def _name(each: Input | Output) -> str:
    return f"`{each.name}`" + (f", {symbol(each.symbol)} in formulas" if each.symbol else "")


def _kind(each: Input | Output, units: Iterable[Unit]) -> str:
    symbols = listed([escaped(unit.symbol) for unit in units if unit.symbol], "or")
    link = f"[{each.kind.name}](../units.md#{anchor(each.kind)})"
    return f"{link} in {symbols}" if symbols else link


def _output(each: Output, calculator: Calculator) -> str:
    usual = dict.fromkeys(each.usual(unit_set) for unit_set in UNIT_SETS)
    marked = {"below": each.low, "above": each.high}
    ends = [
        f"{side} {in_both_sets(end, None, each)}" for side, end in marked.items() if end is not None
    ]
    facts = {
        "Name": _name(each),
        "Kind": f"{_kind(each, usual)}, to {each.digits} digits",
        "Marked": f"{listed(ends, 'or')}: {prose(each.outside)}" if ends else "",
        "If there is none": prose(each.none),
        "May be kept as": listed(
            [f"`{name}`" for name in calculator.leaves.get(each.name, ())], "or"
        ),
    }
    return f"{heading(3, escaped(each.label), each.name)}\n\n{bullets(facts)}"


def command(calculator: Calculator) -> list[str]:
    """The lines of the command that asks for the worked example, every input given."""
    given = [shlex.quote(f"{each.name}={each.default}") for each in calculator.inputs]
    lines = [f"python -m calc {calculator.name}", *given]
    return [f"{line} \\" for line in lines[:-1]] + lines[-1:]


def _source(name: str) -> str:
    source = sources.entry(name)
    return f"- [@{name}] *{escaped(source.title)}*. {escaped(source.place)}."
