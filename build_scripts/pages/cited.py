"""Citations. Chapters and generated pages write [@id]; declarations and docstrings write [id]."""

import re
from collections.abc import Iterator

from calc import sources
from calc.levels import LEVELS
from calc.other_treatment import UNSOURCED, options

_OPTIONS = re.compile(r"^```options\n(\w+)\n", re.MULTILINE)
CITATION = re.compile(r"\[@([a-z0-9-]+)\]")


def with_citations(markdown: str, root: str) -> str:
    """Markdown in which every [@source] is a link to the page of sources."""

    def link(found: re.Match[str]) -> str:
        return f"([{sources.entry(found[1]).short}]({root}sources.md#{found[1]}))"

    return CITATION.sub(link, markdown)


def cited(markdown: str) -> list[str]:
    """The sources that a page cites, each once: in its text, then in tables it lets be drawn."""
    return list(dict.fromkeys([*CITATION.findall(markdown), *_drawn(markdown)]))


def _drawn(markdown: str) -> Iterator[str]:
    for substance in _OPTIONS.findall(markdown):
        told = [each.source for each in options(substance)]
        told += [each.source for each in LEVELS.get(substance, ())]
        yield from (each for each in told if each not in UNSOURCED)
