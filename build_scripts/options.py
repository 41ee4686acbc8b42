"""The ```options fence: what is done about one substance, as a table from `calc.other_treatment`.

    ```options
    arsenic
    ```

Every row says where it comes from and how well that was seen.
"""

from typing import Any

from pymdownx.superfences import SuperFencesException

from build_scripts.fences import Fences
from calc import sources
from calc.levels import LEVELS
from calc.other_treatment import READ, UNSOURCED, Option, options
from calc.units import concentration, nitrate
from calc.views.html import Safe, cited, tag
from calc.views.words import shown

HEADS = ("What is done", "What goes wrong")  # two, that a phone is wide enough


class Options:
    """Draws the fences; `fences` knows the page that is being built."""

    def __init__(self, fences: Fences) -> None:
        self.fences = fences

    def draw(self, source: str, *_args: Any, **_options: Any) -> str:
        """superfences swallows every exception but its own, and would print the fence as code."""
        try:
            return table(source.strip(), self.fences.page.root)
        except KeyError as wrong:
            raise SuperFencesException(f"in the fence\n{source}\n{wrong}") from wrong


def table(substance: str, root: str) -> Safe:
    """The levels, where there are any, and the options with their sources."""
    rows = [
        tag(
            "tr",
            tag("th", tag("strong", option.where), f": {option.done}", scope="row"),
            tag("td", f"{option.caution} (", _source(option, root), ")"),
        )
        for option in options(substance)
    ]
    heads = tag("thead", tag("tr", *(tag("th", head, scope="col") for head in HEADS)))
    caption = tag("caption", f"{substance.capitalize()}. Looked up in {READ}.")
    whole = tag("table", caption, heads, tag("tbody", *rows))
    return tag("div", _levels(substance, root), whole, class_="options")


def _source(option: Option, root: str) -> Safe | str:
    if option.source in UNSOURCED:
        return option.source
    seen = sources.entry(option.source).seen
    link = cited(f"[{option.source}]", root).strip("()")
    return Safe(f"{link}, {seen}")


def _levels(substance: str, root: str) -> Safe:
    """Who set which level for it, and of what kind it is."""
    like = nitrate if substance == "nitrate" else concentration
    told = [
        tag(
            "li",
            f"{level.body}: {_amount(level.value, substance, like)}, {level.words} ",
            cited(f"[{level.source}]", root),
        )
        for level in LEVELS.get(substance, ())
    ]
    return tag("ul", *told) if told else tag("p", "No body has set a level that we know of.")


def _amount(value: float, substance: str, like: Any) -> str:
    if substance == "nitrate":
        return shown(value, like, "us")
    micro = like.unit("µg/L")
    return f"{micro.out_of_si(value):g} µg/L"
