"""What a writer changes shows on the served page, though not every page is made anew."""

import json
from typing import Any
from urllib.request import urlopen

from build_scripts.benchmarks import builds

OTHER = ("index.html", "open-tank/inlet.html", "reference/units.html")


def test_a_change_of_a_chapter_and_of_calc_shows_while_serving() -> None:
    """By reason. What has not come through within five minutes ends in TimeoutError."""
    with builds.copied() as project, builds.serving(project) as url:
        pages, found = {path: text_of(url, path) for path in OTHER}, searched(url)
        builds.changed(project, url, "a chapter")
        assert {path: text_of(url, path) for path in OTHER} == pages
        differing = [
            (old["location"], new["text"].replace(old["text"], ""))
            for old, new in zip(found, searched(url), strict=True)
            if old != new
        ]
        assert differing == [("balance.html", "<p>Changed in a chapter.</p> ")]
        builds.changed(project, url, "calc")
        assert "Changed in a chapter." in text_of(url, "balance.html")


def text_of(url: str, path: str) -> str:
    """A served page without the script that waits for the next one."""
    with urlopen(url + path) as page:
        text: str = page.read().decode()
    return text.partition("livereload(")[0]


def searched(url: str) -> list[dict[str, Any]]:
    """All that the served search finds, page after page."""
    with urlopen(f"{url}search/search_index.json") as page:
        found: list[dict[str, Any]] = json.load(page)["docs"]
    return found
