"""Pages that are written from the declarations, and citations in the written ones."""

import re

from calc import sources
from calc.calculators import calculator, names
from calc.sources import SOURCES, Source

SEEN = {
    "read": "Read in the source.",
    "second-hand": "Seen second-hand, in a text or code that names it.",
    "from memory": "From memory: not yet confirmed.",
}
CITATION = re.compile(r"\[@([a-z0-9-]+)\]")


def with_citations(markdown: str, root: str) -> str:
    """Markdown in which every [@source] is a link to the page of sources."""

    def link(found: re.Match[str]) -> str:
        return f"([{sources.entry(found[1]).short}]({root}sources.md#{found[1]}))"

    return CITATION.sub(link, markdown)


def sources_page() -> str:
    """The page of sources: each with how well it was seen and which calculators rest on it."""
    entries = sorted(SOURCES.items(), key=lambda item: (item[1].author, item[1].year))
    return "\n\n".join(
        [
            "# Sources",
            "Every number in this handbook comes from one of these, or says that it is from "
            "memory or common practice. If you find one wrong, trust your own reading of the "
            "source and tell us.",
            *(source_entry(name, source) for name, source in entries),
        ]
    )


def source_entry(name: str, source: Source) -> str:
    used = ", ".join(calculator(each).title for each in names() if name in calculator(each).sources)
    note = f" {source.note}" if source.note else ""
    by = f" Used by: {used}." if used else ""
    return (
        f'<p id="{name}" markdown>**{source.author}**, *{source.title}*, {source.year}. '
        f"{source.place}. {SEEN[source.seen]}{note}{by}</p>"
    )
