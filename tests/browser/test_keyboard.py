"""The book by keys alone. At every stop of Tab the focus is seen, and no place holds it fast."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.using import form
from tests.conftest import ROOT, OpenPage

pytestmark = pytest.mark.browser

SLOW = 60_000  # ms, for the first answer of a busy machine
LOOK = ROOT / "tests/browser/survey.js"
MOST = 150  # stops to anything on a page


class Keys:
    """Somebody without a pointer."""

    def __init__(self, page: Page) -> None:
        self.page = page
        page.add_init_script(path=LOOK)
        page.reload()

    def press(self, *keys: str) -> None:
        for key in keys:
            self.page.keyboard.press(key)

    def write(self, text: str) -> None:
        self.press("ControlOrMeta+a")
        self.page.keyboard.type(text)

    def on(self, key: str = "Tab") -> str:
        """One stop further: what has the focus now, seen to be seen; empty outside of the page."""
        self.press(key)
        stop = self.page.evaluate("survey.settled().then(survey.stop)")
        if stop is None:
            return ""
        assert not stop["fault"], f"{stop['name']} {stop['fault']}"
        return str(stop["name"])

    def to(self, wanted: Locator, key: str = "Tab") -> None:
        for _ in range(MOST):
            self.on(key)
            if wanted.evaluate("(each) => each === document.activeElement"):
                return
        raise AssertionError(f"{MOST} stops and never at {wanted}")


@pytest.fixture
def keys(page: OpenPage) -> Callable[..., Keys]:
    def open_page(path: str, **options: object) -> Keys:
        return Keys(page(path, **options))

    return open_page


def answered(page: Page, name: str) -> None:
    expect(form(page, name)).to_have_attribute("data-state", "answered", timeout=SLOW)


def test_a_calculator_is_filled_read_and_kept(keys: Callable[..., Keys]) -> None:
    hand = keys("jobs.html")
    page = hand.page
    hand.to(page.locator("#job-name"))
    hand.write("Quarry Road")
    hand.to(page.get_by_role("button", name="Start a job"))
    hand.press("Enter")
    expect(page.locator("[data-part=said]")).to_contain_text("is the job in use", timeout=SLOW)
    page.goto(page.url.replace("jobs.html", "balance.html#pail_flow"))
    shown = page.locator("#pail_flow")
    hand.to(page.locator("#pail_flow-pail"))
    hand.write("3")
    answered(page, "pail_flow")
    expect(shown.locator("[data-output=flow] dd")).to_contain_text("3.37\u00a0gpm")  # 180/53.47
    hand.to(shown.get_by_label("Unit of: Pail, to the mark"))
    hand.press("l")  # the list's own letters
    expect(page.locator("#pail_flow-pail")).to_have_value("11.36", timeout=SLOW)
    answered(page, "pail_flow")
    hand.to(shown.locator(".calc-working > summary"))
    hand.press("Enter")
    expect(shown.locator(".calc-working")).to_have_attribute("open", "")
    hand.to(shown.locator(".calc-job > summary"))
    hand.press("Enter")
    pail = shown.get_by_label("Keep Pail, to the mark")
    expect(pail).to_be_checked(timeout=SLOW)
    flow = shown.get_by_label("Keep Flow, as: Flow in, measured today")
    hand.to(flow)
    hand.press("Space")
    hand.to(shown.get_by_role("button", name="Keep what is ticked"))
    hand.press("Enter")
    expect(shown.locator("[data-told]")).to_contain_text("Kept in Quarry Road", timeout=SLOW)


def test_the_watch_is_started_stopped_and_left(keys: Callable[..., Keys]) -> None:
    hand = keys("balance.html#pail_flow")
    watch = hand.page.locator("#pail_flow pail-timer")
    hand.to(watch.get_by_role("button", name="Start"))
    hand.press("Enter")
    expect(watch).to_have_attribute("data-running", "")
    hand.page.wait_for_timeout(500)  # a second press at once would be a wet thumb's
    hand.press("Space")
    expect(watch.locator(".timer-runs li")).to_have_count(1)
    hand.to(watch.get_by_role("button", name="Leave out: run 1"))
    hand.to(hand.page.locator("#pail_flow-runs"))
    hand.to(watch.get_by_role("button", name="Undo", exact=True), "Shift+Tab")


def test_a_problem_is_answered(keys: Callable[..., Keys]) -> None:
    hand = keys("coursework/problems/well_storage.html")
    page = hand.page
    hand.to(page.locator("#course-number"))
    hand.write("17")
    hand.press("Enter")
    expect(page.locator("calc-course > [data-part=said]")).to_contain_text("17.", timeout=SLOW)
    asked = page.locator("[data-question=t_f]")
    hand.to(asked.get_by_role("textbox"))
    hand.write("571")
    hand.to(asked.get_by_role("combobox"))
    hand.press("m", "i", "n")
    hand.to(asked.get_by_role("button", name="Check"))
    hand.press("Enter")
    expect(asked.locator("[data-told]")).to_contain_text("Right.", timeout=SLOW)


@pytest.mark.parametrize("width", [320, 1280])
def test_tab_goes_through_a_whole_page_and_out_of_it(keys: Callable[..., Keys], width: int) -> None:
    hand = keys("well/storage.html", viewport={"width": width, "height": 700})
    stops = []
    while stop := hand.on():
        stops.append(stop)
        assert len(stops) < 2 * MOST, stops[-9:]
    assert "Skip to content" in stops[0]
    told = " ".join(stops)
    for name in ("storage_tank-stretch_flows", "Show the working", "Copy link"):
        assert name in told
    assert ("label.md-header__button" in told) == (width == 320)
    assert ("The pumping test" in told) == (width == 1280)
    assert "First survey" not in told  # in a list that is shut


def test_the_drawer_of_a_phone_opens_leads_on_and_shuts(keys: Callable[..., Keys]) -> None:
    hand = keys("well/storage.html")
    page = hand.page
    button = page.get_by_role("button", name="Contents")
    hand.to(button)
    hand.press("Space")
    expect(button).to_have_attribute("aria-expanded", "true")
    back = page.get_by_role("button", name="The well: back")
    expect(back).to_be_focused()
    hand.press("Enter")
    chapter = page.get_by_role("button", name="The well", exact=True)
    expect(chapter).to_be_focused()
    expect(chapter).to_have_attribute("aria-expanded", "false")
    hand.press("Escape")
    expect(button).to_be_focused()
    expect(button).to_have_attribute("aria-expanded", "false")
    expect(back).to_be_hidden()
    hand.press("Enter")
    hand.to(page.get_by_role("button", name="Visits", exact=True))
    hand.press("Space")
    hand.to(page.get_by_role("link", name="Trouble call"))
    hand.press("Enter")
    page.wait_for_url("**/visit/trouble-call.html")
    expect(page.locator("article h1")).to_be_focused()
    expect(page.locator("#__drawer")).not_to_be_checked()


def test_a_single_letter_does_nothing(keys: Callable[..., Keys]) -> None:
    """The theme would turn the page at n and p, and open its search at f, s and /."""
    hand = keys("well/storage.html")
    address = hand.page.url
    hand.press("n", "p", ".", ",", "f", "s", "/")
    hand.page.wait_for_timeout(300)
    assert hand.page.url == address
    expect(hand.page.locator("#__search")).not_to_be_checked()
