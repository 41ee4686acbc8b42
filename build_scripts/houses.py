"""The ```house fence: the house of the job in use. The build draws the invented one into it."""

import json
from typing import Any, NamedTuple

from build_scripts.fences import Fences
from build_scripts.pages.uses import Book
from calc import demo
from calc.views.house import Where, house_html, what_if_form
from calc.views.html import Safe, tag


class Houses(NamedTuple):
    """Draws the fence; `fences` knows the page that is being built."""

    book: Book
    fences: Fences

    def draw(self, _source: str, *_args: Any, **_options: Any) -> Safe:
        """The section of the page; a script shows the job in use in its place."""
        place = Where(self.fences.page.root, self.book.places())
        inside = tag(
            "calc-house",
            tag("p", "This is the invented house, as it was left.", data_part="said",
                role="status", class_="calc-say"),
            tag("div", house_html(demo.as_left(), place, "us"), data_part="house"),
            what_if_form(),
            data_root=place.root,
            data_places=json.dumps(place.places),
        )  # fmt: skip
        return tag("section", inside, class_="calc", id="house")
