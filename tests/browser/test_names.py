"""What a reader of the screen is told, taken from Chromium's own tree of names and roles."""

from collections import Counter
from collections.abc import Iterator
from typing import Any, NamedTuple

import pytest
from playwright.sync_api import Page, expect

from tests.browser.using import change, form
from tests.conftest import OpenPage

pytestmark = pytest.mark.browser

SLOW = 60_000  # ms, for the first answer of a busy machine
CONTROLS = {
    "button", "checkbox", "combobox", "DisclosureTriangle", "Date", "radio", "slider", "textbox",
}  # fmt: skip
STOPS = "a[href], button, input, select, summary, [tabindex='0']"
OUT_OF_ORDER = """(form, stops) => {
  const shown = [...form.querySelectorAll(stops)].filter((each) => each.checkVisibility());
  const placeOf = (each) => (each.closest("label") ?? each).getBoundingClientRect();
  const places = shown.map((each) => [each, placeOf(each)]);
  const named = (each) => each.outerHTML.slice(0, 80);
  return places.slice(1).flatMap(([each, at], place) => {
    const [before, was] = places[place];
    const isAbove = at.bottom <= was.top + 1;
    const isLeft = at.right <= was.left + 1 && at.top < was.bottom - 1;
    return isAbove || isLeft ? `${named(before)} before ${named(each)}` : [];
  });
}"""


type AxNode = dict[str, Any]


class Node(NamedTuple):
    """An element as it is told: role, name, description, what is around it, and its group."""

    role: str
    name: str
    told: str
    around: list[str]
    group: str
    invalid: str


def tree(page: Page, selector: str) -> list[Node]:
    """All that is told of the first element that fits, in order."""
    chromium = page.context.new_cdp_session(page)
    asked = {"expression": f"document.querySelector({selector!r})"}
    root = chromium.send("Runtime.evaluate", asked)["result"]["objectId"]
    nodes = chromium.send("Accessibility.queryAXTree", {"objectId": root})["nodes"]
    known = {each["nodeId"]: each for each in nodes}
    return [_node(each, known) for each in nodes if not each["ignored"]]


def _node(each: AxNode, known: dict[str, AxNode]) -> Node:
    given = {one["name"]: one["value"].get("value", "") for one in each.get("properties", [])}
    return Node(
        _said(each, "role"),
        _said(each, "name"),
        _said(each, "description"),
        [_said(one, "role") for one in _around(each, known)],
        next((_said(one, "name") for one in _around(each, known) if _is_group(one)), ""),
        str(given.get("invalid", "")),
    )


def _said(each: AxNode, what: str) -> str:
    return str(each.get(what, {}).get("value", ""))


def _around(each: AxNode, known: dict[str, AxNode]) -> Iterator[AxNode]:
    """What a node stands in, the nearest first."""
    while each := known.get(each.get("parentId", ""), {}):
        yield each


def _is_group(each: AxNode) -> bool:
    return _said(each, "role") in ("group", "radiogroup") and bool(_said(each, "name"))


def controls(page: Page, selector: str) -> list[Node]:
    """The controls; the parts of a date are the browser's own."""
    told = [each for each in tree(page, selector) if each.role in CONTROLS]
    found = [each for each in told if "Date" not in each.around]
    assert found
    return found


def holds(page: Page, selector: str) -> None:
    """Every control has a name of its own, and Tab goes as the eye does."""
    found = controls(page, selector)
    assert [each for each in found if not each.name.strip()] == []
    # radios of two groups may be called the same
    same = Counter((each.role, each.name, each.role == "radio" and each.group) for each in found)
    assert [key for key, count in same.items() if count > 1] == []
    assert page.locator(selector).first.evaluate(OUT_OF_ORDER, STOPS) == []


def with_the_house(page: OpenPage, path: str, **options: Any) -> Page:
    opened = page("jobs.html", **options)
    opened.locator("[data-do=demo]").click()
    expect(opened.locator("[data-part=values] table")).to_be_visible(timeout=SLOW)
    opened.goto(opened.url.replace("jobs.html", path))
    return opened


def everything_opened(page: Page, selector: str) -> None:
    page.locator(selector).first.evaluate(
        "(all) => { for (const each of all.querySelectorAll('details')) each.open = true; }"
    )


def test_a_calculator_with_all_that_opens_open(page: OpenPage) -> None:
    opened = with_the_house(page, "balance.html")
    change(opened, "pail_flow", "pail", "4")
    everything_opened(opened, "#pail_flow")
    expect(opened.locator("#pail_flow .calc-job-inside table")).to_be_visible(timeout=SLOW)
    holds(opened, "#pail_flow calc-form")
    [region] = [each for each in tree(opened, "#pail_flow calc-form") if each.role == "region"]
    assert region.name == "Answer: Flow by pail and timer"


def test_a_name_lost_and_a_name_twice_are_seen(page: OpenPage) -> None:
    """By reason: the rules above could hold because nothing is looked at."""
    opened = page("balance.html")
    holds(opened, "#pail_flow calc-form")
    opened.evaluate("document.querySelector('[for=pail_flow-pail]').textContent = ''")
    with pytest.raises(AssertionError):
        holds(opened, "#pail_flow calc-form")
    opened.reload()
    opened.evaluate("document.querySelector('#pail_flow [data-do=code]').textContent = 'Copy link'")
    with pytest.raises(AssertionError):
        holds(opened, "#pail_flow calc-form")
    opened.reload()
    opened.evaluate("document.querySelector('#pail_flow .calc-actions').style.direction = 'rtl'")
    with pytest.raises(AssertionError):
        holds(opened, "#pail_flow calc-form")


def test_the_watch_with_runs(page: OpenPage) -> None:
    opened = page("balance.html")
    press = opened.locator("#pail_flow .timer-press")
    for _ in range(2):
        for _ in range(2):
            press.focus()
            opened.keyboard.press("Enter")
            opened.wait_for_timeout(450)
    expect(opened.locator("#pail_flow .timer-runs li")).to_have_count(2)
    holds(opened, "pail-timer")
    told = [(each.role, each.name) for each in controls(opened, "pail-timer")]
    assert told[:3] == [("button", "Start run 3"), ("button", "Next pail"), ("button", "Undo")]
    assert ("button", "Leave out: run 2") in told
    assert "timer" in {each.role for each in tree(opened, "pail-timer")}


def test_a_sheet_of_a_visit(page: OpenPage) -> None:
    opened = with_the_house(page, "visit/balance-and-commission.html")
    expect(opened.locator("[data-part=progress]")).to_contain_text("steps done", timeout=SLOW)
    everything_opened(opened, "calc-visit")
    holds(opened, "calc-visit")


def test_a_trouble_call(page: OpenPage) -> None:
    opened = page("visit/trouble-call.html")
    for said in (
        "The water stopped during laundry.",
        "The level falls below the intake, and the taps spit.",
        "As in the record.",
    ):
        button = opened.get_by_role("button", name=said, exact=True)
        button.click(timeout=SLOW)
        expect(button).to_have_count(0, timeout=SLOW)
    expect(opened.get_by_role("button", name="Undo: ")).to_have_count(2)
    holds(opened, "calc-visit")


@pytest.mark.parametrize(
    ("path", "part"), [("jobs.html", "calc-jobs"), ("record.html", "calc-record")]
)
def test_jobs_and_the_record(page: OpenPage, path: str, part: str) -> None:
    opened = with_the_house(page, path)
    expect(opened.locator(f"{part} [data-part=chosen]")).to_be_visible(timeout=SLOW)
    expect(opened.locator(f"{part} :is([data-part=values] table, .record-dues)")).to_be_visible(
        timeout=SLOW
    )
    holds(opened, part)


def test_an_error_is_told_with_its_field(page: OpenPage) -> None:
    opened = page("balance.html")
    change(opened, "pail_flow", "pail", "abc")
    error = opened.locator("#pail_flow-pail-error").inner_text()
    assert "abc" in error
    [field] = [each for each in controls(opened, "#pail_flow") if each.name == "Pail, to the mark"]
    assert field.invalid == "true"
    assert error in field.told
    change(opened, "pail_flow", "pail", "5")
    [field] = [each for each in controls(opened, "#pail_flow") if each.name == "Pail, to the mark"]
    assert field.invalid == "false"
    assert error not in field.told


HEARD = """() => {
  globalThis.heard = [];
  const live = "[role=status], [role=alert], [aria-live]:not([aria-live=off])";
  for (const region of document.querySelectorAll(live)) {
    new MutationObserver(() => {
      const said = region.textContent.trim();
      if (said) heard.push(said);
    }).observe(region, { childList: true, characterData: true, subtree: true });
  }
}"""


def test_an_answer_is_told_once(page: OpenPage) -> None:
    opened = page("balance.html")
    change(opened, "outlet_setting", "outlet", "4.7")  # Python is started, and says no more of it
    opened.wait_for_timeout(1500)
    opened.evaluate(HEARD)
    change(opened, "outlet_setting", "outlet", "4.6")
    sure = form(opened, "outlet_setting").locator(".calc-sure").first
    expect(sure).not_to_be_empty(timeout=SLOW)  # all that comes has come
    opened.wait_for_timeout(1500)
    heard = [each for each in opened.evaluate("heard") if "Starting" not in each]
    assert len(heard) == 1
    assert "Safe." in heard[0]
