"""A second edition on the server: fetched whole, offered, never mixed with the first."""

import pytest
from playwright.sync_api import BrowserContext, expect

from build_scripts import offline
from tests.browser.keeping import SLOW, Host, desk, edit, keep, listed, whole
from tests.browser.using import change

pytestmark = pytest.mark.browser


def test_a_newer_edition_is_fetched_whole_then_offered(device: BrowserContext, host: Host) -> None:
    page = desk(device, host)
    keep(page)
    page.goto(f"{host.url}jobs.html")
    second_edition(host)
    host.asked.clear()
    page.reload()
    offer = page.locator(".offline-offer")
    expect(offer).to_contain_text("A newer edition is ready", timeout=SLOW)
    changed = set(host.asked) & set(listed(host))
    assert "balance.html" in changed
    assert not [path for path in changed if listed(host)[path]["kind"] == "engine"]
    host.stop()
    page.goto(f"{host.url}balance.html")
    expect(page.locator("article h1")).to_contain_text(OLD)
    expect(offer).to_be_visible(timeout=SLOW)
    with page.expect_navigation():
        offer.get_by_role("button", name="Load it").click()
    expect(page.locator("article h1")).to_contain_text(NEW)
    change(page, "outlet_setting", "outlet", "4.6")
    page.goto(f"{host.url}offline.html")
    whole(page)
    assert page.evaluate("caches.keys().then((names) => names.length)") == 1
    assert page.evaluate(KEPT) == len(listed(host)) + 1  # and the wish


KEPT = """async () => {
  const cache = await caches.open((await caches.keys())[0]);
  return (await cache.keys()).length;
}"""
OLD, NEW = "The open tank: what enters and what leaves", "The tank of the second edition"


def second_edition(host: Host) -> None:
    edit(host, "balance.html", f">{OLD}<", f">{NEW}<")
    offline.write(host.folder / host.below)


def test_half_a_newer_edition_is_never_offered(device: BrowserContext, host: Host) -> None:
    page = desk(device, host)
    keep(page)
    edit(host, "jobs.html", "Your jobs", "Your own jobs")
    host.cut = "jobs.html"
    second_edition(host)
    page.evaluate(UPDATE)
    page.goto(f"{host.url}balance.html")
    page.wait_for_timeout(4000)
    expect(page.locator("article h1")).to_contain_text(OLD)
    expect(page.locator(".offline-offer")).to_have_count(0)
    host.cut = ""
    host.asked.clear()
    page.reload()
    expect(page.locator(".offline-offer")).to_be_visible(timeout=SLOW)
    assert "balance.html" not in host.asked  # it had come the first time


UPDATE = "navigator.serviceWorker.ready.then((it) => it.update()).catch(() => {})"


def test_a_file_of_another_edition_is_never_mixed_in(device: BrowserContext, host: Host) -> None:
    """A page that is not kept, on a server that has moved on while sw.js still is the old one."""
    page = desk(device, host)
    edit(host, "balance.html", f">{OLD}<", f">{NEW}<")
    page.goto(f"{host.url}balance.html")
    expect(page.locator("[data-part=asked]")).to_contain_text("newer edition")
    offline.write(host.folder / host.below)
    page.reload()
    page.locator(".offline-offer button").first.click(timeout=SLOW)
    page.wait_for_timeout(1000)
    page.locator("[data-part=again]").click()
    expect(page.locator("article h1")).to_contain_text(NEW)


def test_other_text_leaves_the_program_of_a_page_as_it_is(host: Host) -> None:
    before = listed(host)
    second_edition(host)
    after = listed(host)
    assert {path for path in after if after[path] != before[path]} == {"balance.html"}


def test_a_writers_copy_is_never_kept(device: BrowserContext, host: Host) -> None:
    """And what another copy has left on the same address goes away."""
    page = desk(device, host)
    offline.write_none(host.folder / host.below)
    page.evaluate(UPDATE)
    page.wait_for_function(
        "navigator.serviceWorker.getRegistration().then((it) => !it)", timeout=SLOW
    )
