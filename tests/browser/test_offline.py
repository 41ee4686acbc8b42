"""The book on the device, with the server gone."""

import re
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from calc import EDITION
from tests.browser.keeping import SLOW, Host, desk, keep, listed, pages, state, wait_for
from tests.browser.using import axe, change

pytestmark = pytest.mark.browser


def test_a_first_visit_fetches_no_chapter_and_no_engine_unasked(
    device: BrowserContext, host: Host
) -> None:
    page = desk(device, host)
    now = state(page)
    assert not now["engine"]
    assert not now["wanted"]
    kinds = {path: each["kind"] for path, each in listed(host).items()}
    assert {kinds[path] for path in host.asked if path in kinds} == {"shell"}


def test_what_it_costs_is_told_before(device: BrowserContext, host: Host) -> None:
    page = desk(device, host)
    now = state(page)
    shell = sum(each["bytes"] for each in listed(host).values() if each["kind"] == "shell")
    every = sum(each["bytes"] for each in listed(host).values())
    assert (now["bytes"], now["lacking"]) == (shell, every - shell)
    expect(page.locator("[data-part=lacking]")).to_contain_text(f"{(every - shell) / 1e6:.1f}")
    expect(page.locator("[data-part=edition]")).to_contain_text(
        re.compile(rf"^Edition {re.escape(EDITION)} of \w+ \d+, 20\d\d$")
    )


def test_with_the_server_gone_everything_works(
    device: BrowserContext, host: Host, tmp_path: Path
) -> None:
    page = desk(device, host)
    keep(page)
    host.stop()
    before = len(host.asked)
    for path in [*pages(host), "", "reference/calculators.html?x=1#top"]:
        page.goto(host.url + path)
        expect(page.locator("article h1")).to_be_visible()
        assert not page.url.startswith(f"{host.url}offline.html?")
    search(page, host)
    page.goto(f"{host.url}balance.html")
    answered = change(page, "tank_draw", "worst_inlet", "4.9")
    expect(answered.locator(".calc-answer svg").first).to_be_visible()
    page.locator("#tank_draw [data-do=code]").click()
    expect(page.locator("#tank_draw .calc-code svg")).to_be_visible()
    assert page.pdf().startswith(b"%PDF")
    assert len(host.asked) == before


def search(page: Page, host: Host) -> None:
    page.goto(f"{host.url}index.html")
    page.locator("label.md-header__button[for=__search]").click()
    page.locator("[data-md-component=search-query]").press_sequentially("pail")
    found = page.locator(".md-search-result__item a").first
    expect(found).to_be_visible(timeout=SLOW)
    found.click()
    expect(page.locator("article mark, article h1").first).to_be_visible()


def test_the_book_is_there_in_a_new_browser(browser: Browser, host: Host, tmp_path: Path) -> None:
    def start() -> BrowserContext:
        return browser.browser_type.launch_persistent_context(
            tmp_path / "profile", executable_path="/usr/bin/chromium", args=["--no-sandbox"]
        )

    with start() as device:
        keep(desk(device, host))
    host.stop()
    with start() as device:
        page = device.new_page()
        page.goto(f"{host.url}balance.html")
        change(page, "outlet_setting", "outlet", "4.6")


def test_a_chapter_that_was_read_is_there_and_another_says_why_not(
    device: BrowserContext, host: Host
) -> None:
    page = desk(device, host)
    page.goto(f"{host.url}jobs.html")
    host.stop()
    page.goto(f"{host.url}jobs.html?again#the-file")
    expect(page.locator("article h1")).to_contain_text("Your jobs")
    page.goto(f"{host.url}reference/units.html#flow")
    expect(page.locator("[data-part=asked]")).to_contain_text("not on this device")
    assert page.locator("[data-part=again]").get_attribute("href") == f"{host.url}{AWAY}"
    host.start()
    page.locator("[data-part=again]").click()
    expect(page.locator("article h1")).to_contain_text("Units")


AWAY = "reference/units.html"


def test_the_engine_is_kept_when_it_is_used(device: BrowserContext, host: Host) -> None:
    page = desk(device, host)
    page.goto(f"{host.url}balance.html")
    change(page, "outlet_setting", "outlet", "4.6")
    wait_for(page, "engine")
    host.stop()
    page.reload()
    change(page, "outlet_setting", "outlet", "4.7")


def test_removing_leaves_what_the_pages_need_and_the_jobs(
    device: BrowserContext, host: Host
) -> None:
    page = desk(device, host)
    keep(page)
    page.evaluate("localStorage.setItem('current-job', 'mine')")
    page.get_by_role("button", name="Remove what is kept").click()
    expect(page.locator("[data-part=lacking]")).to_contain_text("to fetch", timeout=SLOW)
    assert not state(page)["wanted"]
    assert page.evaluate("localStorage.getItem('current-job')") == "mine"
    host.stop()
    page.reload()
    expect(page.locator("article h1")).to_be_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_serious_at_the_desk(
    scheme: Literal["light", "dark"], device: BrowserContext, host: Host
) -> None:
    page = desk(device, host)
    page.emulate_media(color_scheme=scheme)
    page.goto(f"{host.url}offline.html?away=jobs.html")
    expect(page.locator("[data-part=asked]")).to_be_visible()
    expect(page.locator("offline-line")).to_be_visible(timeout=SLOW)
    assert axe(page) == []
    for control in page.locator("offline-desk button:visible, offline-desk a:visible").all():
        box = control.bounding_box()
        assert box
        assert box["height"] >= 48
    page.set_viewport_size({"width": 320, "height": 800})
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
