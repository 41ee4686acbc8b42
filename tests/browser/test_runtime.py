"""docs/app/python.js asks calc in a worker, and gives up on one that is silent."""

import json
from typing import Any

import pytest
from playwright.sync_api import Page, Route, Worker

from tests.conftest import OpenPage, Site

pytestmark = pytest.mark.browser

# A page that does nothing by itself: no form that starts Python early, no timers of the theme,
# which fail on a false clock.
BARE = "app/python.js"
MANIFEST = "runtime/manifest.json"
REQUEST = {"calculator": "pail_flow", "fields": {}, "units": "us"}


def ask(page: Page, request: dict[str, Any] = REQUEST) -> Any:
    """Return the reply to a request, or the words of the error."""
    return page.evaluate(
        """async (request) => {
          const { ask } = await import("/app/python.js");
          return ask(request).catch((error) => error.message);
        }""",
        request,
    )


def python_workers(page: Page) -> list[Worker]:
    return [worker for worker in page.workers if worker.url.endswith("/app/worker.js")]


def manifest(site: Site) -> dict[str, dict[str, str]]:
    """Role -> path, bytes and sha256 of each file of the runtime."""
    told: dict[str, dict[str, str]] = json.loads((site.folder / MANIFEST).read_text())
    return told


def test_calc_answers(page: OpenPage) -> None:
    assert "answer" in ask(page(BARE))


def test_one_worker_answers_every_question(page: OpenPage) -> None:
    opened = page(BARE)
    ask(opened)
    ask(opened)
    assert len(python_workers(opened)) == 1


def test_an_error_in_calc_is_told_and_leaves_the_worker_running(page: OpenPage) -> None:
    opened = page(BARE)
    assert "KeyError" in ask(opened, {})
    assert "answer" in ask(opened)


def test_a_browser_without_webassembly_is_told_at_once(page: OpenPage) -> None:
    opened = page(BARE)
    opened.evaluate("delete globalThis.WebAssembly")
    assert "no WebAssembly" in ask(opened)
    assert not python_workers(opened)


@pytest.mark.parametrize(
    ("file", "told"),
    [
        ("app/worker.js", "did not start"),
        ("engine", ".js does not come: 404"),
        ("wasm", ".wasm does not come: 404"),
        ("library", ".zip does not come: 404"),
        ("calc", ".zip does not come: 404"),
        ("calculators/pail_flow", ".zip does not come: 404"),
    ],
)
def test_a_file_that_is_missing_is_told(
    file: str, told: str, page: OpenPage, site: Site, faults: list[str]
) -> None:
    path = manifest(site).get(file, {"path": file})["path"]
    opened = page(BARE)
    opened.route(f"**/{path}", lambda route: route.fulfill(status=404))
    with opened.expect_response(f"**/{path}"):  # told of its own accord, and maybe later
        assert told in ask(opened)
    opened.unroute_all()
    assert "answer" in ask(opened)
    assert set(faults) == {f"404 {site.url}{path}"}
    faults.clear()


@pytest.mark.parametrize(
    ("worker", "waits_for", "limit", "told"),
    [
        ("onmessage = () => {};", "", "01:00", "did not start within a minute"),
        (
            "onmessage = ({ data: { id, request } }) => id && !request && postMessage({ id });",
            "await start();",
            "00:10",
            "took too long",
        ),
    ],
    ids=["start", "request"],
)
def test_a_silent_worker_is_ended_at_its_limit(
    worker: str, waits_for: str, limit: str, told: str, page: OpenPage
) -> None:
    def silence(route: Route) -> None:
        route.fulfill(body=worker, content_type="text/javascript")

    opened = page(BARE)
    opened.route("**/app/worker.js", silence)
    opened.clock.install()
    opened.evaluate(
        f"""async (request) => {{
          const {{ ask, start }} = await import("/app/python.js");
          {waits_for}
          globalThis.asked = ask(request).catch((error) => error.message);
        }}""",
        REQUEST,
    )
    opened.clock.fast_forward(limit)
    assert told in opened.evaluate("asked")
    opened.unroute_all()
    assert "answer" in ask(opened)


def test_requests_to_other_hosts_are_noticed(page: OpenPage, faults: list[str]) -> None:
    """Of the page and of its workers; without this the other browser tests prove less."""
    elsewhere = "http://127.0.0.1:9/"
    page(BARE).evaluate(
        """async (url) => {
          const source = `fetch("${url}").catch(() => postMessage(0));`;
          const worker = new Worker(URL.createObjectURL(new Blob([source])));
          await new Promise((done) => { worker.onmessage = done; });
          await fetch(url).catch(() => {});
        }""",
        elsewhere,
    )
    assert faults == [f"left the site for {elsewhere}"] * 2
    faults.clear()
