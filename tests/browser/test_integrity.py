"""Files of the runtime whose content is not what the build has written."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.using import change
from tests.conftest import PHONE, Site
from tests.nginx import Nginx
from tests.test_hosting import runtime

pytestmark = pytest.mark.browser

SLOW = 30_000  # ms, for the first answer of a busy machine


@pytest.fixture
def book(site: Site, tmp_path: Path) -> Path:
    """A copy that a test may damage."""
    folder = tmp_path / "site"
    shutil.copytree(site.folder, folder, ignore=shutil.ignore_patterns("*.gz", "*.br"))
    return folder


@pytest.fixture
def page(book: Path, tmp_path: Path, browser: Browser) -> Iterator[Page]:
    """Nothing opened yet, in a browser without service workers, which check by themselves."""
    with Nginx(tmp_path, book) as server:
        context = browser.new_context(**PHONE, service_workers="block", base_url=server.url)
        yield context.new_page()
        context.close()


def damage(file: Path) -> bytes:
    """Change one byte in the middle, and return what the file was."""
    whole = file.read_bytes()
    spoilt = bytearray(whole)
    spoilt[len(whole) // 2] ^= 1
    file.write_bytes(spoilt)
    return whole


ROLES = ["engine", "wasm", "library", "calc", "calculators/outlet_setting"]


@pytest.mark.parametrize("role", ROLES)
def test_a_damaged_file_is_told_and_heals_with_the_server(
    role: str, page: Page, book: Path, site: Site
) -> None:
    """By then the browser keeps the damaged one, and was told to keep it for a year."""
    file = book / runtime(site, role)
    whole = damage(file)
    page.goto("balance.html")
    page.locator("#outlet_setting-outlet").fill("4.6")
    state = page.locator("#outlet_setting .calc-state")
    expect(state).to_contain_text(f"Python did not start: {file.name} comes damaged", timeout=SLOW)
    expect(state).to_contain_text("not your figures")
    file.write_bytes(whole)
    change(page, "outlet_setting", "outlet", "4.5")


def test_webassembly_damaged_on_the_way_is_told_and_the_next_start_has_it_whole(
    page: Page, book: Path, site: Site
) -> None:
    """It is checked while it runs, so that this start is lost; the others are just asked again."""
    path = runtime(site, "wasm")
    spoilt = bytearray((book / path).read_bytes())
    spoilt[len(spoilt) // 2] ^= 1
    page.route(
        f"**/{path}",
        lambda route: route.fulfill(body=bytes(spoilt), content_type="application/wasm"),
        times=1,
    )
    page.goto("balance.html")
    page.locator("#outlet_setting-outlet").fill("4.6")
    state = page.locator("#outlet_setting .calc-state")
    expect(state).to_contain_text("came damaged, and has been fetched again", timeout=SLOW)
    change(page, "outlet_setting", "outlet", "4.5")
