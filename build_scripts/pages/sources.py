"""The page of sources: each with how well it was seen and which pages rest on it."""

from collections.abc import Mapping

from build_scripts.pages.cited import cited
from build_scripts.pages.markdown import escaped
from build_scripts.pages.uses import title
from calc.sources import SOURCES, Source

SEEN = {
    "read": "Read in the source.",
    "second-hand": "Seen second-hand, in a text or code that names it.",
    "from memory": "From memory: not yet confirmed.",
}


def page(pages: Mapping[str, str]) -> str:
    """The page of sources; `pages` are all others, by path, with their [@citations]."""
    entries = sorted(SOURCES.items(), key=lambda item: (item[1].author, item[1].year))
    links: dict[str, list[str]] = {}
    for path, text in pages.items():
        for name in cited(text):
            links.setdefault(name, []).append(f"[{title(text)}]({path})")
    return "\n\n".join(
        [
            "# Sources",
            "Every number in this handbook comes from one of these, or says that it is from "
            "memory or common practice. If you find one wrong, trust your own reading of the "
            "source and [tell us](about/wrong-number.md).",
            *(_entry(name, source, links.get(name, [])) for name, source in entries),
        ]
    )


def _entry(name: str, source: Source, used: list[str]) -> str:
    note = f" {escaped(source.note)}" if source.note else ""
    by = f" Used by: {'; '.join(used)}." if used else ""
    return (
        f'<p id="{name}" markdown>**{escaped(source.author)}**, *{escaped(source.title)}*, '
        f"{source.year}. {escaped(source.place)}. {SEEN[source.seen]}{note}{by}</p>"
    )
