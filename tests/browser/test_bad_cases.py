"""What a reader is told when something is missing, and what still reads."""

import re

import pytest
from playwright.sync_api import Page, Route, expect

from tests.browser.using import change
from tests.conftest import OpenPage

pytestmark = pytest.mark.browser

SLOW = 30_000  # ms, for the first answer of a busy machine
EXAMPLE = "Can run dry."


def reads(page: Page) -> None:
    """The worked example, its drawing and the cautions stand on the page."""
    expect(page.locator("#outlet_setting .calc-finding").first).to_contain_text(EXAMPLE)
    expect(page.locator("#outlet_setting .calc-figure").first).to_be_visible()
    expect(page.locator("#tank_draw svg").first).to_be_visible()


def typed(page: Page) -> None:
    page.locator("#outlet_setting-outlet").fill("4.6")


def said(page: Page, text: str) -> None:
    expect(page.locator("#outlet_setting .calc-state")).to_contain_text(text, timeout=SLOW)
    expect(page.locator("#outlet_setting .calc-state")).to_contain_text("the worked example")


def test_without_scripts_the_page_reads_and_says_so(page: OpenPage) -> None:
    opened = page("balance.html", java_script_enabled=False)
    reads(opened)
    dead = opened.locator("#outlet_setting .calc-dead")
    expect(dead).to_contain_text("does not run the scripts")
    expect(dead).to_be_visible(timeout=SLOW)  # not at once: a script may still be on its way
    jobs = page("jobs.html", java_script_enabled=False)
    expect(jobs.locator(".calc-dead")).to_contain_text("Jobs need a running script")


def test_a_browser_too_old_for_our_scripts_says_so(page: OpenPage, faults: list[str]) -> None:
    """It stops at words that it does not know, and so never makes the form live."""
    opened = page("index.html")
    opened.route("**/app/calc-*.js", unknown_words)
    opened.goto(opened.url.replace("index.html", "balance.html"))
    reads(opened)
    expect(opened.locator("#outlet_setting .calc-dead")).to_be_visible(timeout=SLOW)
    assert set(faults) == {"page error: Unexpected token '{'"}
    faults.clear()


def unknown_words(route: Route) -> None:
    route.fulfill(body="export class { static {} }", content_type="text/javascript")


def test_a_form_that_lives_never_shows_that_line(page: OpenPage) -> None:
    opened = page("balance.html")
    change(opened, "outlet_setting", "outlet", "4.6")
    opened.wait_for_timeout(5500)
    assert opened.locator(".calc-dead:visible").count() == 0


@pytest.mark.parametrize("name", ["WebAssembly", "Worker"])
def test_without_what_python_needs_the_page_reads_and_says_so(name: str, page: OpenPage) -> None:
    opened = page("index.html")
    opened.add_init_script(f"delete globalThis.{name}")
    opened.goto(opened.url.replace("index.html", "balance.html"))
    reads(opened)
    typed(opened)
    said(opened, f"This browser has no {name}")
    reads(opened)


NEVER = """onmessage = ({ data: { id, request } }) => {
  if (request) for (;;);
  else if (id) postMessage({ id, reply: true });
};"""


def test_a_calculation_that_never_ends_is_stopped_and_told(page: OpenPage) -> None:
    """A busy worker answers no message and has to be ended; the next question starts another."""
    opened = page("index.html")
    opened.route("**/app/worker.js", never)
    opened.route("**/app/python.js", sooner)
    opened.goto(opened.url.replace("index.html", "balance.html"))
    typed(opened)
    said(opened, "The calculation took too long and was stopped.")
    reads(opened)
    opened.unroute("**/app/worker.js")
    change(opened, "outlet_setting", "outlet", "4.5")
    expect(opened.locator("#outlet_setting .calc-finding").first).to_contain_text("Safe.")


SLOWLY = """onmessage = ({ data: { id, request } }) => {
  const end = performance.now() + 1500;
  while (request && performance.now() < end);
  if (id) postMessage({ id, reply: true });
};"""
SEVERAL = """async () => {
  const { ask } = await import(new URL("app/python.js", document.baseURI));
  return Promise.all(Array(4).fill().map(() => ask({ do: "job-new" }))).catch(String);
}"""


def test_what_waits_for_another_calculation_is_not_late(page: OpenPage) -> None:
    """By reason: four of half the limit each, asked at once, are all answered."""
    opened = page("index.html")
    opened.route("**/app/worker.js", slowly)
    opened.route("**/app/python.js", sooner)
    opened.goto(opened.url.replace("index.html", "jobs.html"))
    assert opened.evaluate(SEVERAL) == [True] * 4


def slowly(route: Route) -> None:
    route.fulfill(body=SLOWLY, content_type="text/javascript")


def never(route: Route) -> None:
    route.fulfill(body=NEVER, content_type="text/javascript")


def sooner(route: Route) -> None:
    """The page's own script with a shorter limit, so that a test need not wait for it."""
    whole = route.fetch()
    text, count = re.subn(r"REQUEST_LIMIT = [\d_]+", "REQUEST_LIMIT = 3000", whole.text())
    assert count == 1
    route.fulfill(response=whole, body=text)


BLOCKED = """for (const name of ["localStorage", "sessionStorage", "indexedDB", "caches"]) {
  Object.defineProperty(globalThis, name, {
    get() { throw new DOMException("by test", "SecurityError"); },
  });
}"""


def test_with_storage_blocked_a_job_lasts_as_long_as_its_page(
    page: OpenPage, faults: list[str]
) -> None:
    opened = page("index.html")
    opened.add_init_script(BLOCKED)
    opened.goto(opened.url.replace("index.html", "balance.html"))
    reads(opened)
    change(opened, "outlet_setting", "outlet", "4.6")
    opened.locator("#outlet_setting .calc-job summary").click()
    expect(opened.locator("#outlet_setting .calc-job")).not_to_contain_text("undefined")
    opened.goto(opened.url.split("balance")[0] + "jobs.html")
    expect(opened.locator("[data-part=kept]")).to_contain_text("refuses to keep", timeout=SLOW)
    opened.locator("#job-name").fill("Quarry Road")
    opened.locator("[data-do=start]").click()
    expect(opened.locator("[data-part=said]")).to_contain_text("is the job in use", timeout=SLOW)
    expect(opened.locator("[data-part=kept]")).to_contain_text("in this page only")
    with opened.expect_download() as saved:
        opened.locator("[data-do=export]").click()
    assert '"Quarry Road"' in saved.value.path().read_text(encoding="utf-8")
    assert all("by test" in fault for fault in faults), faults
    faults.clear()


# JavaScript that came into Chromium, Firefox or Safari after November 2024, or is not in all yet.
YOUNG = """for (const [where, ...names] of [
  [globalThis, "Float16Array", "SuppressedError", "DisposableStack", "AsyncDisposableStack",
    "Iterator", "Temporal", "CookieStore", "Scheduler"],
  [Uint8Array, "fromBase64", "fromHex"],
  [Uint8Array.prototype, "toBase64", "toHex", "setFromBase64", "setFromHex"],
  [Math, "sumPrecise", "f16round"],
  [Promise, "try"], [RegExp, "escape"], [Error, "isError"], [Array, "fromAsync"],
  [JSON, "rawJSON", "isRawJSON"], [Map.prototype, "getOrInsert", "getOrInsertComputed"],
  [Intl, "DurationFormat"], [WebAssembly, "Suspending", "promising", "JSTag"],
  [Set.prototype, "union", "difference", "intersection"],
  [Atomics, "pause", "waitAsync"],
]) for (const name of names) delete where[name];
"""


def test_a_browser_two_years_old_calculates(page: OpenPage) -> None:
    """Without what is younger, in the page and in Python's worker."""
    opened = page("index.html")
    opened.add_init_script(YOUNG)
    opened.route("**/app/worker.js", older)
    opened.goto(opened.url.replace("index.html", "balance.html"))
    assert opened.evaluate("typeof Promise.try") == "undefined"
    change(opened, "outlet_setting", "outlet", "4.6")
    expect(opened.locator("#outlet_setting .calc-finding").first).to_contain_text("Safe.")
    [worker] = [each for each in opened.workers if each.url.endswith("worker.js")]
    assert worker.evaluate("typeof Promise.try") == "undefined"


def older(route: Route) -> None:
    whole = route.fetch()
    route.fulfill(response=whole, body=YOUNG + whole.text())


def test_what_a_page_was_left_at_is_undone_and_done_anew_when_it_comes_back(page: OpenPage) -> None:
    """What WebKit needs: there, a page left with anything under way would stop every later one."""
    assert page("jobs.html").evaluate(LEFT_AND_BACK) == {
        "while left": ["one", False],
        "back": ["one, two", ["one, two"]],
    }


LEFT_AND_BACK = """async () => {
  const { createStore, endedWithPage, entries, get, update } = await import("/app/keyval.js");
  const plain = createStore("left-and-back", "texts");
  const ended = endedWithPage(plain);
  await update("a", () => "one", ended);
  let done = false;
  const written = update("a", (was) => `${was}, two`, ended).finally(() => (done = true));
  const read = entries(ended).finally(() => (done = true));
  for (let i = 0; i < 20; i++) await null; // both begin; no answer of a store comes so soon
  dispatchEvent(new Event("pagehide"));
  const whileLeft = [await get("a", plain), done];
  dispatchEvent(new Event("pageshow"));
  await written;
  const texts = (await read).map(([, text]) => text);
  return { "while left": whileLeft, back: [await get("a", plain), texts] };
}"""
