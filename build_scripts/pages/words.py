"""The word list: one name for each quantity that a calculator asks for or answers."""

from collections import defaultdict
from collections.abc import Iterable
from itertools import groupby
from typing import NamedTuple

from build_scripts.pages.markdown import escaped, heading, listed, symbol
from build_scripts.pages.units import anchor
from calc.model import Calculator, Choice, Input, Output

INTRODUCTION = """# Words

One name for one quantity: in every calculator, on the command line and in files. They are listed
by what the pages call them; the name comes after it, as you type it in `name=value`."""


class Word(NamedTuple):
    """A quantity: what it is called, its name, and what it is."""

    label: str
    name: str
    about: str


def page(every: Iterable[Calculator]) -> str:
    """The word list, in alphabetical order."""
    places = gathered(every)
    words = sorted(places, key=lambda word: (word.label.casefold(), word.name))
    parts = [INTRODUCTION]
    for initial, some in groupby(words, lambda word: word.label[0].upper()):
        parts += [heading(2, initial, f"words-{initial.lower()}")]
        parts += [_entry(word, places[word]) for word in some]
    return "\n\n".join(parts)


def gathered(every: Iterable[Calculator]) -> dict[Word, dict[str, list[str]]]:
    """Every word with the calculators that ask for it and those that answer it."""
    places: defaultdict[Word, dict[str, list[str]]] = defaultdict(dict)
    for one in every:
        for verb, many in (("Asked by", one.inputs), ("Answered by", one.outputs)):
            for each in many:
                link = f"[{escaped(one.title)}](calculators/{one.name}.md#{each.name})"
                places[_word(each)].setdefault(verb, []).append(link)
    return dict(places)


def _word(each: Input | Choice | Output) -> Word:
    if isinstance(each, Choice):
        options = [f"“{escaped(said)}”" for said in each.options.values()]
        return Word(each.label, each.name, f"{listed(options, 'or')}.")
    letter = f", {symbol(each.symbol)} in formulas" if each.symbol else ""
    kind = f"[{each.kind.name}](units.md#{anchor(each.kind)})"
    return Word(each.label, each.name, f"{kind}{letter}.")


def _entry(word: Word, places: dict[str, list[str]]) -> str:
    said = [word.about, *(f"{verb} {listed(links)}." for verb, links in places.items())]
    return f"**{escaped(word.label)}**\n:   `{word.name}`: {' '.join(said)}"
