"""The pages of the built handbook as text, for tests that need no browser."""

import re
from collections.abc import Iterator
from html import unescape
from pathlib import Path

from tests.conftest import Site


def article(site: Site, path: str) -> str:
    """What stands on a page, less the ways about it."""
    html = (site.folder / path).read_text(encoding="utf-8")
    return html.partition("<article")[2].partition("</article>")[0]


def text(html: str) -> str:
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", html))).strip()


def sections(html: str) -> dict[str, tuple[str, str]]:
    """Heading and text of each section, by its id."""
    parts = re.split(r'<h[1-6] id="', html)[1:]
    found = re.compile(r'([^"]+)">(.*?)(?:<a class="headerlink".*?)?</h\d>(.*)', re.DOTALL)
    matches = [found.fullmatch(part) for part in parts]
    return {each[1]: (text(each[2]), text(each[3])) for each in matches if each}


def links(html: str, path: str) -> Iterator[tuple[str, str]]:
    """Where a page leads to: path in the site, and id there."""
    for link in re.findall(r'href="([^":]+)"', html):
        to, _, id_ = link.partition("#")
        whole = (Path("/") / path).parent / to if to else Path("/") / path
        yield str(whole.resolve().relative_to("/")), id_
