"""Citations. Chapters and generated pages write [@id]; declarations and docstrings write [id]."""

import re

from calc import sources

CITATION = re.compile(r"\[@([a-z0-9-]+)\]")


def with_citations(markdown: str, root: str) -> str:
    """Markdown in which every [@source] is a link to the page of sources."""

    def link(found: re.Match[str]) -> str:
        return f"([{sources.entry(found[1]).short}]({root}sources.md#{found[1]}))"

    return CITATION.sub(link, markdown)


def cited(markdown: str) -> list[str]:
    """The sources that a page cites, each once, in order."""
    return list(dict.fromkeys(CITATION.findall(markdown)))
