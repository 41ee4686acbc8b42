"""Counting longer on the page: piece after piece, until it is stopped or a figure changes."""

import json
import re

import pytest
from playwright.sync_api import Page, expect

from calc.views.browser import reply
from tests.browser.using import axe, change, form, output
from tests.conftest import OpenPage

pytestmark = pytest.mark.browser

SLOW = 60_000  # ms, for a piece on a busy machine
PAGES = [("year_of_draws", "year"), ("first_fix", "fixes")]


def press(page: Page, name: str, what: str) -> None:
    page.locator(f"#{name} [data-do={what}]").click()


def weeks_counted(page: Page, name: str) -> int:
    """Weeks that the page says it has counted; 0 while it says nothing."""
    found = re.match(r"\d+", page.locator(f"#{name} .calc-counted").inner_text())
    return int(found[0]) if found else 0


@pytest.mark.parametrize(("name", "chapter"), PAGES)
def test_counting_longer_until_it_is_stopped(page: OpenPage, name: str, chapter: str) -> None:
    """Against CPython: what the page shows is the answer of as many weeks there."""
    opened = page(f"open-tank/{chapter}.html")
    change(opened, name, "worst_inlet", "4 gpm")
    expect(opened.locator(f"#{name} [data-do=enough]")).to_be_disabled()
    press(opened, name, "longer")
    expect(opened.locator(f"#{name} .calc-counted")).to_contain_text("weeks", timeout=SLOW)
    first = weeks_counted(opened, name)
    expect(opened.locator(f"#{name} .calc-counted")).not_to_contain_text(
        f"{first} weeks", timeout=SLOW
    )
    press(opened, name, "enough")
    expect(opened.locator(f"#{name} [data-do=longer]")).to_be_enabled(timeout=SLOW)
    weeks = weeks_counted(opened, name)
    assert weeks > first
    fields = {"worst_inlet": {"text": "4 gpm"}}
    request = {"calculator": name, "key": name, "fields": fields, "do": "longer", "weeks": weeks}
    mine = json.loads(reply(json.dumps(request)))
    shown = opened.locator(f"#{name} .calc-finding").first.inner_text()
    assert shown.replace("\u00a0", " ").strip() == mine["says"].replace("\u00a0", " ").strip()


def test_a_changed_figure_ends_the_count(page: OpenPage) -> None:
    """By reason: an answer must not stand beside figures it does not belong to."""
    opened = page("open-tank/year.html")
    change(opened, "year_of_draws", "worst_inlet", "4 gpm")
    press(opened, "year_of_draws", "longer")
    expect(opened.locator("#year_of_draws .calc-counted")).to_contain_text("weeks", timeout=SLOW)
    change(opened, "year_of_draws", "worst_inlet", "7 gpm")
    expect(opened.locator("#year_of_draws .calc-finding").first).to_contain_text("Cannot run dry")
    expect(opened.locator("#year_of_draws [data-do=longer]")).to_be_enabled(timeout=SLOW)
    expect(opened.locator("#year_of_draws .calc-counted")).to_be_empty()
    assert output(opened, "year_of_draws", "chance_high") == "0 %"
    expect(form(opened, "year_of_draws")).to_have_attribute("data-state", "answered")


@pytest.mark.parametrize(("name", "chapter"), PAGES)
def test_the_pages_can_be_used_by_everyone(page: OpenPage, name: str, chapter: str) -> None:
    """axe-core: nothing serious, with the tools open."""
    opened = page(f"open-tank/{chapter}.html")
    change(opened, name, "worst_inlet", "4 gpm")
    assert axe(opened) == []
