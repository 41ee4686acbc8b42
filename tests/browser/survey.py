"""Accessibility of every page of a built handbook: python -m tests.browser.survey SITE

Not among the tests of each change, because it takes long. It serves the folder SITE, opens each
page in Chromium and prints one line for a finding; the status is not zero if there is one.

    --pages GLOB   only pages whose path fits, as "well/*.html"; several may stand here
    --at-once N    so many pages at the same time, 2 unless told

What is looked at, and with what, stands in `survey_looks`; how forms come into their states in
`survey_states.js`. Every page is seen as a stranger finds it, with all that opens open. Pages with
forms are seen again in a browser that holds the invented house as its job: filled, with the tools
under an answer used; failing, with letters, nothing or 1e30 in the fields; and contradicting
themselves, as the cases of `tests/model/test_findings.py` do.
"""

import argparse
import sys
from collections import defaultdict
from collections.abc import Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from pathlib import Path
from queue import Empty, SimpleQueue
from threading import Thread

from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright
from playwright.sync_api import Error as PlaywrightError

from tests.browser.survey_looks import LOADED, Finding, looked_at, once
from tests.conftest import Handler, Server
from tests.model.test_findings import CONTRADICTIONS

FORMS = "calc-form, calc-course, calc-visit, calc-house, calc-jobs, calc-record"
CASES = {asked.split()[0]: asked.split()[1:] for asked, *_ in CONTRADICTIONS}
SLOW = 90_000  # ms, for a busy machine


def main() -> None:
    parser = argparse.ArgumentParser(description="Accessibility of a built handbook.")
    parser.add_argument("site", type=Path)
    parser.add_argument("--pages", nargs="+", default=["**/*.html"])
    parser.add_argument("--at-once", type=int, default=2)
    asked = parser.parse_args()
    paths = pages(asked.site, asked.pages)
    if not paths:
        sys.exit(f"no page of {asked.site} fits {' '.join(asked.pages)}")
    with Server(("127.0.0.1", 0), partial(Handler, directory=asked.site)) as server:
        Thread(target=server.serve_forever).start()
        found = surveyed(f"http://127.0.0.1:{server.server_port}/", paths, asked.at_once)
        server.shutdown()
    for line in told(found):
        print(line)
    sys.exit(f"{len(paths)} pages, {len(found)} findings" if found else 0)


def pages(site: Path, globs: list[str]) -> list[str]:
    fitting = {each for glob in globs for each in site.glob(glob)}
    return sorted(each.relative_to(site).as_posix() for each in fitting)


def told(found: Iterable[Finding]) -> Iterator[str]:
    """A line for each fault, with the first place and the number of others, under its rule."""
    places: defaultdict[tuple[str, str], list[str]] = defaultdict(list)
    for each in found:
        places[each.rule, each.what].append(f"{each.page} [{each.state}]")
    rule = ""
    for (of, what), at in sorted(places.items()):
        if of != rule:
            rule = of
            yield f"\n{rule}"
        others = f" and {len(at) - 1} more" if len(at) > 1 else ""
        yield f"  {what} -- {at[0]}{others}"


def surveyed(url: str, paths: list[str], at_once: int) -> list[Finding]:
    """All findings on these pages. Each thread has a browser of its own."""
    queue: SimpleQueue[str] = SimpleQueue()
    for path in paths:
        queue.put(path)
    with ThreadPoolExecutor(at_once) as pool:
        each = [pool.submit(_one_browser, url, queue) for _ in range(at_once)]
        return sorted(finding for thread in each for finding in thread.result())


def _one_browser(url: str, queue: SimpleQueue[str]) -> list[Finding]:
    found: list[Finding] = []
    with sync_playwright() as playwright:
        flags = ["--no-sandbox", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"]
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium", args=flags)
        stranger, owner = (_context(browser) for _ in range(2))
        first, second = stranger.new_page(), owner.new_page()
        _take_the_house(second, url)
        while path := _next(queue):
            try:
                found += _page(first, second, url, path)
            except PlaywrightError as error:
                found.append(Finding("not surveyed", error.message.split("\n")[0], path, ""))
            print(path, file=sys.stderr, flush=True)
        browser.close()
    return found


def _next(queue: SimpleQueue[str]) -> str:
    try:
        return queue.get_nowait()
    except Empty:
        return ""


def _context(browser: Browser) -> BrowserContext:
    context = browser.new_context(viewport={"width": 320, "height": 800})
    context.set_default_timeout(SLOW)
    for script in LOADED:
        context.add_init_script(path=script)
    return context


def _take_the_house(page: Page, url: str) -> None:
    page.goto(f"{url}jobs.html")
    page.locator("[data-do=demo]").click()
    page.locator("[data-part=values] table").wait_for()


def _page(stranger: Page, owner: Page, url: str, path: str) -> Iterator[Finding]:
    stranger.goto(url + path)
    stranger.evaluate("states.opened()")
    yield from once(stranger, path)
    yield from looked_at(stranger, path, "as it stands")
    if not stranger.locator(FORMS).count():
        return
    owner.goto(url + path)
    for state in ("filled", "failing"):
        owner.evaluate(f"states.{state}()")
        yield from looked_at(owner, path, state)
    if _contradict(owner):
        yield from looked_at(owner, path, "contradicting")
    owner.evaluate("states.forgotten()")


def _contradict(page: Page) -> bool:
    """Bring every calculator that can contradict itself to do so; say whether there is one."""
    done = False
    for form in page.locator("calc-form").all():
        name = form.get_attribute("name")
        asked = CASES.get(name or "")
        if asked:
            form.evaluate("(form, words) => states.contradicted(form, words)", asked)
            done = True
    return done


if __name__ == "__main__":
    main()
