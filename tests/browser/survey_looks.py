"""What the survey looks for in a page, and at which widths, in which schemes.

axe-core with all its rules for WCAG 2.0 to 2.2, A and AA, and its best practice, at every impact:
in light at 320 and 1280 px. No style sheet of ours or of the theme has a limit between 320 and
390 px, so at 390 go only the rules that depend on where lines break. Dark changes colors and
nothing else, so in dark, at 320 and 1280, go the rules on colors.

`survey.js` looks at what axe does not: text cut off or lying over other text, at the usual size and
at 200 %; scrolling sideways; controls smaller than 24 px; rings around what has the focus; pictures
and buttons in forced colors; motion where the reader wants none.
"""

from collections.abc import Iterator
from typing import Any, NamedTuple

from playwright.sync_api import Page

from tests.browser.using import AXE
from tests.conftest import ROOT

LOADED = (AXE, *(ROOT / f"tests/browser/{name}.js" for name in ("survey", "survey_states")))
HEIGHT = 800
TAGS = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice")
EVERY = {"runOnly": {"type": "tag", "values": TAGS}, "rules": {"target-size": {"enabled": True}}}
BREAKS = {"type": "rule", "values": ("target-size", "scrollable-region-focusable")}
COLORS = {"type": "rule", "values": ("color-contrast", "link-in-text-block")}
LOOKS: tuple[tuple[int, str, dict[str, Any]], ...] = (
    (320, "light", EVERY),
    (390, "light", {"runOnly": BREAKS}),
    (1280, "light", EVERY),
    (1280, "dark", {"runOnly": COLORS}),
    (320, "dark", {"runOnly": COLORS}),
)
THEMES = '<label class="md-'  # it is a button by its role, and opens without a script as a label
LAYOUT = ("sideways", "overlaps", "cut")
DARK = "(dark) => (document.body.dataset.mdColorScheme === 'slate') === dark"


class Finding(NamedTuple):
    """A fault: by which rule, what it is, on which page and in which state."""

    rule: str
    what: str
    page: str
    state: str


def looked_at(page: Page, path: str, state: str) -> Iterator[Finding]:
    """What is wrong with a page as it is now, at each width and in each scheme."""
    for width, scheme, options in LOOKS:
        _look(page, width, scheme)
        yield from _axe(page, path, f"{state}, {width} {scheme}", options)
        if scheme == "light":
            yield from _asked(page, path, f"{state}, {width}", *LAYOUT, "small")
    _look(page, 320, "light")
    yield from _large(page, path, state)
    for scheme in ("light", "dark"):
        page.emulate_media(forced_colors="active")
        _look(page, 320, scheme)
        yield from _asked(page, path, f"{state}, forced {scheme}", "swallowed")
    page.emulate_media(forced_colors="none")


def once(page: Page, path: str) -> Iterator[Finding]:
    """What needs one look at a page: rings, and stillness where no motion is wanted."""
    for width in (320, 1280):
        _look(page, width, "light")
        page.keyboard.press("Tab")  # a ring is for who uses keys
        yield from _asked(page, path, f"{width}", "ringless")
    page.emulate_media(reduced_motion="reduce")
    _look(page, 320, "dark")
    page.evaluate("document.querySelector('#__drawer')?.click()")
    yield from _asked(page, path, "reduced motion", "moving")
    page.evaluate("document.querySelector('#__drawer')?.click()")
    page.emulate_media(reduced_motion="no-preference")


def _look(page: Page, width: int, scheme: str) -> None:
    page.set_viewport_size({"width": width, "height": HEIGHT})
    page.emulate_media(color_scheme="light" if scheme == "light" else "dark")
    page.wait_for_function(DARK, arg=scheme == "dark")
    page.evaluate("survey.settled()")


def _large(page: Page, path: str, state: str) -> Iterator[Finding]:
    """The browser's own setting, which limits in em follow: what a reader does who needs it."""
    chromium = page.context.new_cdp_session(page)
    for width in (320, 1280):
        page.set_viewport_size({"width": width, "height": HEIGHT})
        chromium.send("Page.setFontSizes", {"fontSizes": {"standard": 32, "fixed": 26}})
        yield from _asked(page, path, f"{state}, {width} with text at 200 %", *LAYOUT)
        chromium.send("Page.setFontSizes", {"fontSizes": {"standard": 16, "fixed": 13}})
    chromium.detach()


def _asked(page: Page, path: str, state: str, *names: str) -> Iterator[Finding]:
    for name in names:
        for what in page.evaluate(f"survey.{name}()"):
            yield Finding(name, what, path, state)


def _axe(page: Page, path: str, state: str, options: dict[str, Any]) -> Iterator[Finding]:
    whole = {"resultTypes": ["violations"], **options}
    found = page.evaluate("(options) => axe.run(document, options)", whole)
    for each in found["violations"]:
        for node in each["nodes"]:
            if each["id"] == "aria-allowed-role" and node["html"].startswith(THEMES):
                continue
            checks = [*node["any"], *node["all"], *node["none"]]
            html = " ".join(node["html"].split())[:110]
            what = f"{html}: {checks[0]['message']}" if checks else html
            yield Finding(f"{each['id']} ({each['impact']})", what, path, state)
