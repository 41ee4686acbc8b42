"""Finds the inline scripts of a page, and stops the build at what the book's policy refuses.

Without this a page would lose, in the reader's browser alone, a style or a script that a chapter
or a new edition of the theme has brought.
"""

from collections.abc import Mapping
from hashlib import sha256
from html.parser import HTMLParser

from build_scripts.bundle import integrity

REFUSED = {"base", "embed", "iframe", "object", "style"}
REFUSED_ATTRIBUTES = {"style", "action", "formaction"}
FETCHED = ("src", "href", "xlink:href", "srcset", "poster")
RUN = {None, "", "module", "text/javascript"}  # other types of script are data


def scripts(html: str, page: str) -> set[str]:
    """Hashes of the inline scripts of a page, as a policy names them."""
    reader = Reader()
    reader.feed(html)
    if reader.refused:
        raise RuntimeError(f"{page}: the policy of headers.py refuses {reader.refused[0]}.")
    return {integrity(sha256(script.encode()).hexdigest()) for script in reader.scripts}


class Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.scripts: list[str] = []
        self.refused: list[str] = []
        self.inside = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag in REFUSED or any(map(_runs, given)) or _leaves(tag, given):
            self.refused.append(self.get_starttag_text() or tag)
        self.inside = tag == "script" and "src" not in given and given.get("type") in RUN
        if self.inside:
            self.scripts.append("")

    def handle_data(self, data: str) -> None:
        if self.inside:
            self.scripts[-1] += data

    def handle_endtag(self, tag: str) -> None:
        self.inside = False


def _runs(attribute: str) -> bool:
    return attribute.startswith("on") or attribute in REFUSED_ATTRIBUTES


def _leaves(tag: str, given: Mapping[str, str | None]) -> bool:
    """Whether an element asks another host, or its address is a script."""
    asks = tag != "a" and given.get("rel") != "canonical"
    starts = ("javascript:", "http:", "https:", "//") if asks else ("javascript:",)
    return any((given.get(name) or "").strip().lower().startswith(starts) for name in FETCHED)
