"""The fences that show the job in use: ```house, ```visit NAME and ```trouble.

The build draws the invented house, the empty sheet and what a customer may say; a script puts in
what the job has. A visit that does not exist stops the build.
"""

import json
from typing import Any, NamedTuple

from markdown.extensions.toc import slugify
from pymdownx.superfences import SuperFencesException

from build_scripts.fences import Fences
from build_scripts.pages.uses import Book
from build_scripts.sheets import visit_sheet
from calc import demo
from calc.diagnosis.path import Symptom
from calc.diagnosis.symptoms import SYMPTOMS
from calc.views.house import Where, house_html
from calc.views.html import Safe, joined, tag
from calc.visits.all_visits import VISITS

CHAPTER = "well/diagnosis.html"


class Houses(NamedTuple):
    """Draws the fences; `fences` knows the page that is being built."""

    book: Book
    fences: Fences

    def house(self, _source: str, *_args: Any, **_options: Any) -> Safe:
        """The section of the page; a script shows the job in use in its place."""
        place = Where(self.fences.page.root, self.book.places())
        inside = tag(
            "calc-house",
            tag("p", "This is the invented house, as it was left.", data_part="said",
                role="status", class_="calc-say"),
            tag("div", house_html(demo.as_left(), place, "us"), data_part="house"),
            _what_if_form(),
            data_root=place.root,
            data_places=json.dumps(place.places),
        )  # fmt: skip
        return tag("section", inside, class_="calc", id="house")

    def visit(self, source: str, *_args: Any, **_options: Any) -> Safe:
        """The sheet of one visit."""
        name = source.strip()
        if name not in VISITS:
            raise SuperFencesException(f"there is no visit {name!r}, but {', '.join(VISITS)}")
        root = self.fences.page.root
        self.fences.page.keys |= {step.name for step in VISITS[name].steps}
        drawn = visit_sheet(name, VISITS[name], root)
        return self._sheet(drawn, VISITS[name], do="visit-show", visit=name)

    def trouble(self, _source: str, *_args: Any, **_options: Any) -> Safe:
        """The trouble call. Without a script the complaints lead to their ways in the chapter."""
        root = self.fences.page.root
        links = [
            tag("li", tag("a", f"“{each.says}”", href=f"{root}{CHAPTER}#{anchor(each)}"))
            for each in SYMPTOMS.values()
        ]
        drawn = tag("div", tag("ul", *links), data_part="sheet")
        return self._sheet(drawn, SYMPTOMS, do="trouble-show")

    def _sheet(self, inside: Safe, table: object, **data: str) -> Safe:
        root = self.fences.page.root
        sheet = tag(
            "calc-visit",
            tag("p", data_part="said", role="status", class_="calc-say"),
            _start(),
            tag("p", tag("a", "Choose or start another job", href=f"{root}jobs.html")),
            tag("div", data_part="progress", class_="visit-progress"),
            tag("div", inside, class_="visit-steps"),
            data_root=root,
            data_places=json.dumps(self.book.places()),
            data_table=json.dumps(table, ensure_ascii=False),
            **{f"data_{name}": value for name, value in data.items()},
        )
        return tag("section", sheet, class_="calc", id="visit")


def anchor(symptom: Symptom) -> str:
    """The id of a symptom's heading in the chapter on diagnosis, as the contents name it."""
    return slugify(symptom.title, "-")


def _start() -> Safe:
    """Which job this visit fills, and how to begin one."""
    return tag(
        "form",
        tag("label", "Name of the job: a place, no person", for_="visit-job"),
        tag(
            "div",
            tag("input", type="text", id="visit-job", data_part="name", maxlength=80),
            tag("button", "Start", type="submit"),
            class_="calc-entry",
        ),
        data_part="start",
        hidden=True,
        autocomplete="off",
    )


def _what_if_form() -> Safe:
    """Asks for one figure and another value for it. A script fills in the figures there are."""
    return joined(
        (
            tag(
                "form",
                tag("h3", "What if"),
                tag("label", "This figure", for_="what-if-name"),
                tag("div", tag("select", id="what-if-name", data_part="name"), class_="calc-entry"),
                tag("label", "were, with its unit", for_="what-if-text"),
                tag(
                    "div",
                    tag("input", type="text", id="what-if-text", data_part="text"),
                    class_="calc-entry",
                ),
                tag("div", tag("button", "Compare", type="submit"), class_="calc-actions"),
                data_part="ask",
                hidden=True,
                novalidate=True,
                autocomplete="off",
            ),
            tag("div", data_part="changed"),
            tag(
                "p",
                tag("button", "Keep the copy as a job", type="button", data_do="take"),
                data_part="take",
                class_="calc-actions",
                hidden=True,
            ),
        )
    )
