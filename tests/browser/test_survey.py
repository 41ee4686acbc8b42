"""The survey sees a fault of each kind that it looks for, and none where there is none."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.survey import told
from tests.browser.survey_looks import LOADED, Finding

pytestmark = pytest.mark.browser

SOUND = """<style>:focus-visible { outline: 3px solid } button { border: 1px solid }</style>
<article><p>One line.</p><p>Another.</p><button style="padding:12px">Press</button></article>"""
FAULTS = {
    "cut": "<div style='width:40px;overflow:hidden;white-space:nowrap'>Longer than its box</div>",
    "overlaps": "<p>Below it.</p><p style='margin-top:-32px'>Over the one above.</p>",
    "ringless": "<style>a:focus-visible { outline: none !important }</style><a href='#x'>Go</a>",
    "sideways": "<div style='width:2000px'>Wide.</div>",
    "small": "<button style='width:20px;height:20px;padding:0;overflow:hidden'></button>",
    "swallowed": "<article><svg width='50' height='50'>"
    "<path d='M0 9h50' fill='none' stroke='#eee'/></svg>",
    "moving": "<style>@keyframes a { to { left: 9px } } i { position: relative;"
    " animation: a 9s infinite }</style><i>It moves.</i>",
}


@pytest.fixture
def blank(browser: Browser) -> Iterator[Page]:
    page = browser.new_page(viewport={"width": 320, "height": 700})
    for script in LOADED:
        page.add_init_script(path=script)
    page.goto("about:blank")
    page.keyboard.press("Tab")
    yield page
    page.close()


def seen(page: Page, look: str, body: str) -> list[str]:
    page.emulate_media(forced_colors="active" if look == "swallowed" else "none")
    page.evaluate("(body) => { document.body.innerHTML = body; }", body)
    found: list[str] = page.evaluate(f"survey.{look}()")
    return found


@pytest.mark.parametrize("look", FAULTS)
def test_each_look_sees_its_fault(blank: Page, look: str) -> None:
    assert seen(blank, look, SOUND) == []
    assert len(seen(blank, look, SOUND + FAULTS[look])) == 1


def test_a_fault_on_many_pages_is_one_line() -> None:
    found = [Finding("cut", "a word", page, "filled") for page in ("a.html", "b.html", "c.html")]
    assert list(told(found)) == ["\ncut", "  a word -- a.html [filled] and 2 more"]
