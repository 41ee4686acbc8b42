"""The glossary: the words of the trade, their other names, and where each of them leads."""

from collections.abc import Iterator, Sequence
from itertools import groupby
from pathlib import Path
from typing import NamedTuple

from build_scripts.pages.markdown import escaped, heading, listed, prose
from build_scripts.pages.uses import Book, title
from calc.calculators import calculator

FILE = Path(__file__).with_name("glossary.txt")
INTRODUCTION = """# Glossary

What the trade's words mean here, which other names they go by, and where to go on. The names of
figures are in the [word list](words.md), the units [here](units.md)."""


class Term(NamedTuple):
    """A word of the trade; `calculators` by name, `chapters` by path in docs/."""

    name: str
    also: tuple[str, ...]
    means: str
    calculators: tuple[str, ...]
    chapters: tuple[str, ...]


def terms() -> list[Term]:
    """The terms of the file, in its order. ValueError for a line with a part too few or many."""
    lines = FILE.read_text(encoding="utf-8").splitlines()
    return [_term(line) for line in lines if line and not line.startswith("#")]


def _term(line: str) -> Term:
    name, also, means, calculators, chapters = (part.strip() for part in line.split("|"))
    others = tuple(each.strip() for each in also.split(";"))
    return Term(name, others, means, tuple(calculators.split()), tuple(chapters.split()))


def page(book: Book) -> str:
    """The glossary, each term under a heading of its own, so that search leads to it."""
    every = sorted(terms(), key=lambda term: term.name.casefold())
    parts = ["---\nhide: [toc]\n---", INTRODUCTION]
    for initial, some in groupby(every, lambda term: term.name[0].upper()):
        parts.append(heading(2, initial, f"terms-{initial.lower()}"))
        parts += [block for term in some for block in _entry(term, book)]
    return "\n\n".join(parts)


def _entry(term: Term, book: Book) -> Iterator[str]:
    yield heading(3, escaped(term.name), f"term-{term.name.lower().replace(' ', '-')}")
    yield f"{prose(term.means)} *Other names:* {escaped(', '.join(term.also))}."
    ways = [
        f"[{escaped(calculator(name).title)}](calculators/{name}.md)" for name in term.calculators
    ]
    ways += [f"[{title(book.chapters[path])}](../{path})" for path in term.chapters]
    yield f"Go on to {listed(ways)}."


def other_names(name: str, every: Sequence[Term]) -> str:
    """The line on a calculator's page by which search finds it; empty if no term names it."""
    found = dict.fromkeys(
        word for term in every if name in term.calculators for word in (term.name, *term.also)
    )
    return f"*Other names around it:* {escaped(', '.join(found))}." if found else ""
