"""The foot of each page: who has reviewed it, and which edition it is of."""

import tomllib
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from build_scripts.offline import build_date
from calc import EDITION
from calc.views.html import tag

FILE = Path(__file__).resolve().parents[1] / "reviews.toml"
UNREVIEWED = "Not yet reviewed by a licensed practitioner."
# pages that the build writes from declarations
MADE = ("coursework/problems", "coursework/topics.md", "reference/", "sources.md")


def reviews() -> dict[str, Any]:
    """What stands in the file of reviews. KeyError for a review that lacks one of its facts."""
    said = tomllib.loads(FILE.read_text(encoding="utf-8"))
    for path, many in said.items():
        if path != "nothing_to_review":
            for each in many:
                told(each)
    return said


def told(review: Mapping[str, Any]) -> str:
    """One review in words."""
    return f"Reviewed by {review['reviewer']} on {review['date']}: {review['scope']}."


def foot(path: str, said: Mapping[str, Any]) -> str:
    """The last line of a page at `path` in docs/; the edition is apart, for the printed edition
    says it on every sheet."""
    edition = f"Pail and Timer, edition {EDITION} of {build_date()}."
    return tag(
        "p",
        *(tag("span", each, class_="page-review") for each in _reviewed(path, said)),
        " ",
        tag("span", edition, class_="page-edition"),
        class_="page-foot",
        data_search_exclude=True,
    )


def _reviewed(path: str, said: Mapping[str, Any]) -> Iterable[str]:
    if path in said["nothing_to_review"] or path.startswith(MADE):
        return []
    return [told(each) for each in said.get(path, [])] or [UNREVIEWED]
