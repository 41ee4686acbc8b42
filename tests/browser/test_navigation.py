"""docs/app/travel.js: one Python for all pages, and links that do what links do."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.using import change, form
from tests.conftest import OpenPage, Site

pytestmark = pytest.mark.browser

SLOW = 30_000  # ms, for the first answer of a busy machine


def python_workers(page: Page) -> int:
    return sum(worker.url.endswith("/app/worker.js") for worker in page.workers)


def mark(page: Page) -> None:
    """Leave a sign in the window that a load would wipe away."""
    page.evaluate("globalThis.sameWindow = true")


def is_same_window(page: Page) -> bool:
    return bool(page.evaluate("globalThis.sameWindow === true"))


def go(page: Page, path: str) -> None:
    """Follow a link to a page as a reader on a phone would, wherever it stands."""
    page.evaluate(
        """(path) => {
          const link = document.createElement("a");
          link.href = `/${path}`;
          document.querySelector("article").append(link);
          link.click();
        }""",
        path,
    )
    page.wait_for_url(f"**/{path.partition('#')[0]}*")
    expect(page.locator("body")).not_to_have_attribute("data-travelling", "")


def test_one_python_answers_on_every_page(page: OpenPage) -> None:
    opened = page("balance.html")
    mark(opened)
    change(opened, "outlet_setting", "outlet", "4.6")
    go(opened, "jobs.html")
    start_job(opened)
    go(opened, "reference/units.html")
    go(opened, "balance.html")
    assert form(opened, "outlet_setting").get_attribute("data-state") is None
    change(opened, "outlet_setting", "outlet", "4.7")
    assert is_same_window(opened)
    assert python_workers(opened) == 1


def start_job(page: Page) -> None:
    page.locator("#job-name").fill("Quarry Road house (invented)")
    page.locator("[data-do=start]").click()
    expect(page.locator("[data-part=said]")).to_contain_text("is the job in use", timeout=SLOW)


def test_links_and_pictures_of_the_next_page_are_right(page: OpenPage, site: Site) -> None:
    """From a page below to one above and back: what is relative must follow the address."""
    opened = page("reference/calculators/pail_flow.html")
    mark(opened)
    for path in ("index.html", "reference/units.html", "balance.html"):
        go(opened, path)
        for link in opened.locator("a[href]").all():
            href = str(link.evaluate("(it) => it.href")).split("#")[0].split("?")[0]
            if href.startswith(site.url):
                assert (site.folder / href.removeprefix(site.url)).exists(), href
        assert opened.locator("link[rel=icon]").evaluate("(it) => it.href").endswith("app/mark.svg")
        assert f"{site.url}app/" in opened.locator("link[rel=icon]").evaluate("(it) => it.href")
    assert is_same_window(opened)


def test_a_link_with_figures_works_from_another_page(page: OpenPage) -> None:
    opened = page("index.html")
    mark(opened)
    go(opened, "balance.html#outlet_setting&outlet=1+1%2F2+gpm")
    expect(form(opened, "outlet_setting")).to_have_attribute("data-state", "answered", timeout=SLOW)
    expect(opened.locator("#outlet_setting-outlet")).to_have_value("1 1/2")
    assert is_same_window(opened)


def test_a_link_within_the_page_keeps_what_was_typed(page: OpenPage) -> None:
    opened = page("balance.html")
    change(opened, "outlet_setting", "outlet", "4.6")
    requests: list[str] = []
    opened.on("request", lambda request: requests.append(request.url))
    opened.evaluate("document.querySelector('article a[href^=\"#\"].headerlink').click()")
    opened.wait_for_timeout(500)
    expect(opened.locator("#outlet_setting-outlet")).to_have_value("4.6")
    assert not [url for url in requests if url.endswith("balance.html")]


def test_a_link_with_figures_works_from_the_same_page(page: OpenPage) -> None:
    opened = page("balance.html")
    change(opened, "pail_flow", "pail", "3")
    opened.evaluate("location.hash = 'outlet_setting&outlet=1+1%2F2+gpm'")
    expect(opened.locator("#outlet_setting-outlet")).to_have_value("1 1/2", timeout=SLOW)
    expect(opened.locator("#pail_flow-pail")).to_have_value("3")


def test_an_answer_that_comes_too_late_leaves_the_address_alone(page: OpenPage) -> None:
    opened = page("balance.html")
    opened.locator("#outlet_setting-outlet").fill("4.6")  # Python is only starting
    go(opened, "jobs.html")
    start_job(opened)  # so that Python has answered what was asked before
    assert opened.url.endswith("jobs.html")


def test_back_and_forward_come_to_the_place_that_was_left(page: OpenPage) -> None:
    opened = page("balance.html")
    mark(opened)
    opened.evaluate("scrollTo({ top: 1500, behavior: 'instant' })")
    opened.wait_for_timeout(400)
    go(opened, "jobs.html")
    assert opened.evaluate("scrollY") == 0
    assert opened.title().startswith("Jobs")
    opened.go_back()
    expect(opened.locator("#outlet_setting calc-form")).to_be_visible()
    assert abs(opened.evaluate("scrollY") - 1500) < 20
    opened.go_forward()
    expect(opened.locator("article h1")).to_contain_text("Your jobs")
    assert is_same_window(opened)


def test_a_reader_of_the_screen_is_led_to_the_new_page(page: OpenPage) -> None:
    opened = page("index.html")
    go(opened, "jobs.html")
    assert opened.evaluate("document.activeElement.tagName") == "H1"


def test_jobs_and_search_work_after_the_journey(page: OpenPage) -> None:
    opened = page("balance.html")
    mark(opened)
    go(opened, "jobs.html")
    start_job(opened)
    opened.locator("label.md-header__button[for=__search]").click()
    opened.locator("[data-md-component=search-query]").press_sequentially("pail")
    opened.locator(".md-search-result__item a").first.click(timeout=SLOW)
    expect(opened.locator("article mark").first).to_be_attached()
    assert is_same_window(opened)


def test_a_page_of_another_program_is_loaded_anew(page: OpenPage) -> None:
    """Scripts of one edition never run on the page of another."""
    opened = page("index.html")
    mark(opened)
    opened.evaluate("document.documentElement.dataset.program = 'older'")
    go(opened, "jobs.html")
    expect(opened.locator("article h1")).to_contain_text("Your jobs")
    assert not is_same_window(opened)


@pytest.mark.parametrize("path", ["reference/calculators.json", "drawings/phone.png"])
def test_a_file_is_no_page(page: OpenPage, path: str) -> None:
    opened = page("index.html")
    mark(opened)
    go(opened, path)
    assert opened.url.endswith(path)
    assert not is_same_window(opened)
