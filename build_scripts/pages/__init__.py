"""What the build adds to docs/: the reference pages, the problem sets and their topics, the JSON
description of the calculators, and the schemas of all files that the handbook writes.

All is written from the declarations, so nothing here is kept in git. Pages are Markdown, cite
sources as the chapters do, and link to each other by file, so that a strict build checks both.
"""

import json
from pathlib import Path

from build_scripts.pages import (
    calculators,
    check_values,
    glossary,
    problems,
    sources,
    topics,
    units,
    unsourced,
    words,
)
from build_scripts.pages.cited import with_citations
from build_scripts.pages.foot import foot, reviews
from build_scripts.pages.uses import Book
from calc.calculators import calculator, names
from calc.coursework import sets
from calc.coursework.problem import ProblemSet
from calc.views.data import described

__all__ = ["foot", "generated", "reviews", "with_citations", "with_problems"]

SCHEMAS = sorted((Path(__file__).resolve().parents[2] / "calc").glob("*.schema.json"))


def generated(docs: Path) -> dict[str, str]:
    """The text of every file that is added to the chapters in `docs`, by its path there."""
    every = [calculator(name) for name in names()]
    book = Book(docs)
    courses = problem_sets()
    pages = {
        "coursework/problems.md": problems.listing(courses),
        **{problems.path(each): problems.page(each) for each in courses},
        "coursework/topics.md": topics.page(),
        "reference/calculators.md": calculators.listing(every),
        **{calculators.path(each): calculators.page(each, book, every) for each in every},
        "reference/glossary.md": glossary.page(book),
        "reference/units.md": units.page(),
        "reference/checks.md": check_values.page(),
        "reference/unsourced.md": unsourced.page(book, every),
        "reference/words.md": words.page(every),
    }
    return {
        **pages,
        "sources.md": sources.page(book.chapters | pages),
        "reference/checks.csv": check_values.as_csv(),
        "reference/calculators.json": json.dumps(described(), ensure_ascii=False, indent=1),
        **{f"reference/{file.name}": file.read_text(encoding="utf-8") for file in SCHEMAS},
    }


def problem_sets() -> list[ProblemSet]:
    return [sets.problem_set(name) for name in sets.names()]


def with_problems(markdown: str, source: str, root: str) -> str:
    """A chapter with a link to its problem set."""
    return problems.with_problems(markdown, source, root, problem_sets())
