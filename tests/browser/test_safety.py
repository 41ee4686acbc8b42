"""What the book's policy lets through and what it refuses, served by nginx."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from tests.browser.keeping import keep
from tests.browser.using import change
from tests.conftest import PHONE, Site
from tests.nginx import RECIPES, WHERE, Nginx

pytestmark = pytest.mark.browser

SLOW = 30_000  # ms, for the first answer of a busy machine


@pytest.fixture(scope="module")
def address(site: Site, tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    with Nginx(tmp_path_factory.mktemp("nginx"), site.folder) as server:
        yield server.url


@pytest.fixture
def copy(site: Site, tmp_path: Path) -> Iterator[tuple[Path, str]]:
    """A copy of the book that a test may spoil, and where nginx serves it."""
    folder = tmp_path / "site"
    shutil.copytree(site.folder, folder, ignore=shutil.ignore_patterns("*.gz", "*.br"))
    with Nginx(tmp_path, folder) as server:
        yield folder, server.url


# Told through the console, which a page, its workers and its frames share.
LISTEN = """document.addEventListener("securitypolicyviolation", (event) => {
  console.error(`refused ${event.effectiveDirective} ${event.blockedURI}`);
});"""


@pytest.fixture
def noticed() -> list[str]:
    """What the consoles of a test's pages have said that is an error or a warning."""
    return []


@pytest.fixture
def device(browser: Browser, noticed: list[str]) -> Iterator[BrowserContext]:
    context = browser.new_context(**PHONE)
    context.add_init_script(LISTEN)
    hear(context, noticed)
    yield context
    context.close()


def hear(context: BrowserContext, noticed: list[str]) -> None:
    def note(kind: str, text: str) -> None:
        if kind in ("error", "warning"):
            noticed.append(text)

    context.on("console", lambda said: note(said.type, said.text))
    context.on("weberror", lambda fault: note("error", f"page error: {fault.error}"))


def use_everything(page: Page, address: str) -> None:
    """Go through the book as a reader does."""
    page.goto(address)
    page.locator("label[for=__search]").first.click()
    page.locator("[data-md-component=search-query]").press_sequentially("pail")
    page.locator(".md-search-result__item a").first.click(timeout=SLOW)
    page.goto(f"{address}jobs.html")
    page.locator("#job-name").fill("Quarry Road")
    page.locator("[data-do=start]").click()
    expect(page.locator("[data-part=said]")).to_contain_text("is the job in use", timeout=SLOW)
    with page.expect_download():
        page.locator("[data-do=export]").click()
    page.locator(".md-footer a, .md-nav a", has_text="Open tank").first.evaluate("it => it.click()")
    expect(page).to_have_url(f"{address}balance.html")
    use_a_calculator(page)
    for path in ("sources.html", "reference/calculators/tank_draw.html", "nowhere/at/all.html"):
        page.goto(address + path)
        expect(page.locator("article h1")).to_be_visible()


def use_a_calculator(page: Page) -> None:
    page.evaluate("window.print = () => {}")
    change(page, "outlet_setting", "outlet", "4.6")
    section = page.locator("#outlet_setting")
    section.locator("[data-do=code]").click()
    expect(section.locator(".calc-code svg")).to_be_visible()
    section.locator(".calc-varied summary").first.click()
    section.locator("[data-do=varied]").click()
    expect(section.locator(".calc-drawn svg")).to_be_visible(timeout=SLOW)
    section.locator("[data-do=record]").click()
    expect(page.locator(".sheet .record-code svg")).to_have_count(1, timeout=SLOW)


def refused(noticed: list[str]) -> list[str]:
    return [said for said in noticed if "refused " in said or "Content Security Policy" in said]


@pytest.mark.parametrize("recipe", [0, 1], ids=list(WHERE))
def test_all_that_a_reader_does_works_under_the_policy(
    recipe: int, site: Site, tmp_path: Path, device: BrowserContext, noticed: list[str]
) -> None:
    with Nginx(tmp_path, site.folder, RECIPES[recipe]) as server:
        use_everything(device.new_page(), server.url + list(WHERE.values())[recipe])
    # a browser itself says that the page at a wrong address is not there
    assert [said for said in noticed if "404 (Not Found)" not in said] == []


def test_every_page_is_quiet_under_the_policy(
    address: str, site: Site, device: BrowserContext, noticed: list[str]
) -> None:
    page = device.new_page()
    for file in site.folder.rglob("*.html"):
        page.goto(address + file.relative_to(site.folder).as_posix(), wait_until="networkidle")
        assert noticed == [], file


def test_the_book_is_kept_under_the_policy(
    site: Site, tmp_path: Path, device: BrowserContext, noticed: list[str]
) -> None:
    with Nginx(tmp_path, site.folder) as server:
        page = device.new_page()
        page.goto(f"{server.url}offline.html")
        expect(page.locator("[data-part=state]")).to_contain_text("Ready", timeout=SLOW)
        keep(page)
    page.goto(f"{server.url}balance.html")
    change(page, "outlet_setting", "outlet", "4.6")
    assert refused(noticed) == []


def test_without_https_all_but_the_copying_of_links_works(
    address: str, browser: Browser, noticed: list[str]
) -> None:
    """By a name, for a browser trusts loopback addresses as it trusts https."""
    flags = ["--no-sandbox", "--host-resolver-rules=MAP handbook.test 127.0.0.1"]
    office = browser.browser_type.launch(executable_path="/usr/bin/chromium", args=flags)
    context = office.new_context(**PHONE)
    hear(context, noticed)
    page = context.new_page()
    page.goto(f"{address.replace('127.0.0.1', 'handbook.test')}balance.html")
    assert not page.evaluate("isSecureContext")
    use_a_calculator(page)
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    page.locator("#outlet_setting [data-do=copy]").click()
    expect(page.locator("#outlet_setting .calc-state")).to_contain_text("address bar")
    office.close()
    assert noticed == []


SLIPPED_IN = """
<script>document.title = "taken"</script>
<script src="https://example.org/x.js"></script>
<script src="data:text/javascript,document.title='taken'"></script>
<img src="nothing.png" onerror="document.title = 'taken'">
<img src="https://example.org/x.png">
<a id="trap" href="javascript:document.title='taken'">a link</a>
<p id="styled" style="color: red">a style</p>
<base href="https://example.org/">
<iframe src="https://example.org/"></iframe>
<form id="send" action="https://example.org/"><input name="a" value="b"></form>
</body>"""
REFUSED = {
    "base-uri https://example.org",
    "frame-src https://example.org",
    "img-src https://example.org",
    "script-src-attr inline",
    "script-src-elem data",
    "script-src-elem https://example.org",
    "script-src-elem inline",
    "style-src-attr inline",
}


@pytest.mark.parametrize("bearer", ["header", "page"])
def test_what_is_slipped_into_a_page_is_refused(
    bearer: str, copy: tuple[Path, str], device: BrowserContext, noticed: list[str]
) -> None:
    """By the header alone, and by the page's own policy alone."""
    folder, url = copy
    spoil(folder, bearer)
    page = device.new_page()
    away: list[tuple[str, str | None]] = []
    page.on("requestfailed", lambda asked: away.append((asked.url, asked.failure)))
    page.on("response", lambda answer: away.append((answer.url, None)))
    page.goto(f"{url}balance.html")
    tried = page.evaluate(
        """async () => {
          const inside = document.createElement("div");
          inside.innerHTML = '<img src="data:," onerror="document.title = `taken`">';
          document.body.append(inside);
          return fetch("https://example.org/").then(() => "sent", () => "refused");
        }"""
    )
    assert tried == "refused"
    change(page, "outlet_setting", "outlet", "4.6")
    page.locator("#trap").evaluate("it => it.click()")
    assert "taken" not in page.title()
    black = page.locator("#trap").evaluate("it => getComputedStyle(it.parentElement).color")
    assert page.locator("#styled").evaluate("it => getComputedStyle(it).color") == black
    page.locator("#send").evaluate("it => it.submit()")  # nothing can be asked of the page now
    page.wait_for_timeout(300)
    told = {said.removeprefix("refused ").rstrip("/") for said in refused(noticed)}
    assert {re.sub(r"(org)/.*", r"\1", each) for each in told} >= REFUSED | {
        "connect-src https://example.org",
        "form-action https://example.org",
    }
    assert {why for where, why in away if "example.org" in where} <= {"csp"}


def spoil(folder: Path, bearer: str) -> None:
    """Slip things into a page of a copy, and leave its policy to one bearer."""
    page = folder / "balance.html"
    html = page.read_text(encoding="utf-8").replace("</body>", SLIPPED_IN)
    if bearer == "header":
        html, count = re.subn('<meta http-equiv="Content-Security-Policy"[^>]*>', "", html)
        assert count == 1
    page.write_text(html, encoding="utf-8")


def test_without_a_policy_it_would_have_happened(copy: tuple[Path, str], browser: Browser) -> None:
    """Else the test before this one proves nothing."""
    folder, url = copy
    spoil(folder, "header")
    context = browser.new_context(**PHONE, bypass_csp=True)
    page = context.new_page()
    page.goto(f"{url}balance.html", wait_until="commit")
    expect(page).to_have_title("taken")
    context.close()


# In a task of its own: what Playwright runs itself is let through.
TRIED_IN_WORKER = """() => new Promise((settle) => setTimeout(async () => {
  const said = [];
  addEventListener("securitypolicyviolation", (event) => said.push(event.effectiveDirective));
  try { eval("said.push('evaluated')"); } catch { /* told by the event */ }
  try { new WebSocket("wss://example.org/"); } catch { /* as well */ }
  setTimeout(() => settle(said.sort()), 300);
}))"""


def test_the_policy_holds_in_the_worker(address: str, device: BrowserContext) -> None:
    """It comes with the worker's file: what the page's own policy says does not bind it."""
    page = device.new_page()
    page.goto(f"{address}balance.html")
    change(page, "outlet_setting", "inlet", "5")
    worker = next(each for each in page.workers if "/app/worker" in each.url)
    assert worker.evaluate(TRIED_IN_WORKER) == ["connect-src", "script-src"]


def test_a_policy_without_webassembly_would_be_noticed(
    site: Site, tmp_path: Path, device: BrowserContext, noticed: list[str]
) -> None:
    """Else nothing shows that 'wasm-unsafe-eval' has to be there."""
    rules = tmp_path / "rules.conf"
    served = (site.folder / "hosting/nginx-location.conf").read_text(encoding="utf-8")
    rules.write_text(served.replace(" 'wasm-unsafe-eval'", ""), encoding="utf-8")
    recipe = RECIPES[0].replace("/srv/handbook/hosting/nginx-location.conf", str(rules))
    with Nginx(tmp_path, site.folder, recipe) as server:
        page = device.new_page()
        with page.expect_event("pageerror", lambda fault: "WebAssembly" in fault.message):
            page.goto(f"{server.url}index.html")
            page.evaluate("import('/app/python.js').then(({ start }) => void start())")
    assert any("wasm-eval" in said for said in refused(noticed))


def test_no_page_can_frame_the_book(
    address: str, device: BrowserContext, noticed: list[str]
) -> None:
    page = device.new_page()
    outside = f"{address}outside"  # not even by one of the same host
    frame = f'<title>t</title><iframe src="{address}index.html"></iframe>'
    page.route(outside, lambda route: route.fulfill(body=frame, content_type="text/html"))
    page.goto(outside)
    page.wait_for_timeout(500)
    assert any("frame-ancestors" in said for said in noticed)
    assert page.frames[1].url != f"{address}index.html"
