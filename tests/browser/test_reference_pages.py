"""The reference pages in a browser."""

import pytest

from tests.browser.using import axe
from tests.conftest import OpenPage

pytestmark = pytest.mark.browser

PAGES = (
    "calculators",
    "calculators/outlet_setting",
    "units",
    "words",
    "glossary",
    "checks",
    "unsourced",
)


@pytest.mark.parametrize("name", PAGES)
def test_nothing_scrolls_sideways_on_the_smallest_phone(page: OpenPage, name: str) -> None:
    opened = page(f"reference/{name}.html", viewport={"width": 320, "height": 800})
    assert opened.evaluate("document.documentElement.scrollWidth") <= 320
    for table in opened.locator("article table").all():
        box = table.bounding_box()
        assert box
        assert box["x"] + box["width"] <= 320


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", PAGES)
def test_axe_finds_nothing_serious(page: OpenPage, name: str, scheme: str) -> None:
    assert axe(page(f"reference/{name}.html", color_scheme=scheme)) == []
