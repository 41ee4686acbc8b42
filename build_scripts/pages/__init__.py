"""What the build adds to docs/: the reference pages, the table of topics, the JSON description of
the calculators, and the schemas of all files that the handbook writes.

All is written from the declarations, so nothing here is kept in git. Pages are Markdown, cite
sources as the chapters do, and link to each other by file, so that a strict build checks both.
"""

import json
from pathlib import Path

from build_scripts.pages import calculators, sources, topics, units, words
from build_scripts.pages.cited import with_citations
from build_scripts.pages.uses import Book
from calc.calculators import calculator, names
from calc.views.data import described

__all__ = ["generated", "with_citations"]

SCHEMAS = sorted((Path(__file__).resolve().parents[2] / "calc").glob("*.schema.json"))


def generated(docs: Path) -> dict[str, str]:
    """The text of every file that is added to the chapters in `docs`, by its path there."""
    every = [calculator(name) for name in names()]
    book = Book(docs)
    pages = {
        "coursework/topics.md": topics.page(),
        "reference/calculators.md": calculators.listing(every),
        **{calculators.path(each): calculators.page(each, book, every) for each in every},
        "reference/units.md": units.page(),
        "reference/words.md": words.page(every),
    }
    return {
        **pages,
        "sources.md": sources.page(book.chapters | pages),
        "reference/calculators.json": json.dumps(described(), ensure_ascii=False, indent=1),
        **{f"reference/{file.name}": file.read_text(encoding="utf-8") for file in SCHEMAS},
    }
