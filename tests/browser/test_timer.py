"""The watch beside the runs: on a phone, through reload and sleep, with a clock that moves."""

import json
import re
from collections.abc import Iterator
from statistics import mean, stdev
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.using import axe
from tests.conftest import OpenPage

pytestmark = pytest.mark.browser


@pytest.fixture(autouse=True)
def clock_of_the_theme(faults: list[str]) -> Iterator[None]:
    """The theme's own timers complain of a clock that is set: that is the test's doing."""
    yield
    faults[:] = [each for each in faults if "executing a cancelled action" not in each]


SLOW = 60_000  # ms, for the first answer of a busy machine
START = "2026-11-25T10:00:00"
LATER = "2026-11-25T10:00:10"
RUNS = (53.1, 53.9, 53.4)  # s, as in the worked example


def timer(page: Page) -> Locator:
    return page.locator("#pail_flow pail-timer")


def press(page: Page) -> None:
    timer(page).locator(".timer-press").dispatch_event("pointerdown", {"button": 0})


def button(page: Page, name: str) -> Locator:
    return timer(page).get_by_role("button", name=name, exact=True)


def said(page: Page) -> Locator:
    return timer(page).locator("[data-part=told]")


def seconds(page: Page) -> float:
    """What the face of the watch shows."""
    text = timer(page).locator(".timer-face").inner_text().replace("\u00a0s", "")
    minutes, _, left = text.rpartition(":")
    return 60 * float(minutes or 0) + float(left)


def runs(page: Page) -> list[str]:
    return [each.split("\n")[0] for each in timer(page).locator(".timer-runs li").all_inner_texts()]


def watch(page: Page) -> dict[str, Any]:
    return dict(json.loads(page.evaluate("localStorage.getItem('pail-watch')")))


def hold(page: Page) -> None:
    """The clock stands still from now on, but for what the test lets pass."""
    page.clock.install(time=START)
    page.clock.pause_at(LATER)


@pytest.fixture
def clocked(page: OpenPage) -> Page:
    """The chapter of the pail, on a clock that the test moves."""
    opened = page("jobs.html")
    hold(opened)
    opened.goto(opened.url.replace("jobs", "balance"))
    expect(timer(opened)).to_be_visible()
    return opened


def run(page: Page, length: float) -> None:
    """One run of so many seconds, and a rest."""
    press(page)
    page.clock.run_for(round(1000 * length))
    press(page)
    page.clock.run_for(5000)


def test_three_runs_have_a_mean_and_a_scatter(clocked: Page) -> None:
    """Second method: the standard library's `statistics`."""
    for length in RUNS:
        run(clocked, length)
    assert runs(clocked) == ["53.1\u00a0s", "53.9\u00a0s", "53.4\u00a0s"]
    text = timer(clocked).locator(".timer-spread").inner_text()
    found = re.fullmatch(r"3 runs, mean ([\d.]+)\xa0s, scatter of one run ([\d.]+)\xa0%\.?", text)
    assert found, text
    assert float(found[1]) == pytest.approx(mean(RUNS), abs=0.06)
    assert float(found[2]) == pytest.approx(100 * stdev(RUNS) / mean(RUNS), rel=0.06)


def test_the_watch_needs_no_python(page: OpenPage) -> None:
    opened = page("jobs.html")
    opened.route("**/runtime/*", lambda route: route.abort())
    hold(opened)
    opened.goto(opened.url.replace("jobs", "balance"))
    for length in RUNS:
        run(opened, length)
    assert runs(opened) == ["53.1\u00a0s", "53.9\u00a0s", "53.4\u00a0s"]
    expect(opened.locator("#pail_flow-runs-3")).to_have_value("53.40")


def test_a_second_touch_of_a_wet_thumb_does_not_count(clocked: Page) -> None:
    press(clocked)
    clocked.clock.run_for(100)
    press(clocked)
    clocked.clock.run_for(20_000)
    assert seconds(clocked) == pytest.approx(20.1, abs=0.2)
    press(clocked)
    clocked.clock.run_for(120)
    press(clocked)
    assert len(runs(clocked)) == 1


def test_the_watch_runs_on_through_a_reload(clocked: Page) -> None:
    press(clocked)
    clocked.clock.run_for(20_000)
    clocked.reload()
    expect(timer(clocked)).to_have_attribute("data-running", "")
    clocked.clock.run_for(10_000)
    assert seconds(clocked) == pytest.approx(30, abs=0.3)
    press(clocked)
    assert runs(clocked) == ["30.0\u00a0s"]
    clocked.reload()
    assert runs(clocked) == ["30.0\u00a0s"]


def test_the_watch_runs_on_while_no_page_is_open(clocked: Page) -> None:
    """A browser that the phone has closed: nothing of the book ticks on the way."""
    address = clocked.url
    press(clocked)
    clocked.clock.run_for(5_000)
    clocked.goto("about:blank")
    clocked.clock.run_for(30_000)
    clocked.goto(address)
    expect(timer(clocked)).to_have_attribute("data-running", "")
    clocked.clock.run_for(4_000)
    assert seconds(clocked) >= 39


def test_laps_share_the_moment_at_which_pails_change(clocked: Page) -> None:
    press(clocked)
    for length in (30, 31):
        clocked.clock.run_for(1000 * length)
        button(clocked, "Next pail").click()
    clocked.clock.run_for(32_000)
    press(clocked)
    assert runs(clocked) == ["30.0\u00a0s", "31.0\u00a0s", "32.0\u00a0s"]


def test_a_stop_undone_runs_on_as_if_never_pressed(clocked: Page) -> None:
    press(clocked)
    clocked.clock.run_for(12_000)
    press(clocked)
    clocked.clock.run_for(3_000)
    clocked.reload()
    button(clocked, "Undo").click()
    clocked.clock.run_for(5_000)
    press(clocked)
    assert runs(clocked) == ["20.0\u00a0s"]
    button(clocked, "Undo").click()
    button(clocked, "Undo").click()
    assert runs(clocked) == []
    expect(timer(clocked)).not_to_have_attribute("data-running", "")


def test_a_run_left_out_does_not_count(clocked: Page) -> None:
    for length in (*RUNS, 20):
        run(clocked, length)
    timer(clocked).get_by_role("button", name="Leave out: run 4").click()
    expect(timer(clocked).locator(".timer-spread")).to_contain_text("3 runs")
    expect(clocked.locator("#pail_flow-runs-4")).to_have_value("")
    button(clocked, "Undo").click()
    expect(timer(clocked).locator(".timer-spread")).to_contain_text("4 runs")


def shift(page: Page, ms: int) -> None:
    """The clock is set, while the running time of the page goes on."""
    page.evaluate(
        """(ms) => {
          const whole = Date.now;
          Date.now = () => whole.call(Date) + ms;
        }""",
        ms,
    )


@pytest.mark.parametrize(
    ("ms", "told"), [(-3_600_000, "was put back during"), (3_600_000, "jumped ahead during")]
)
def test_a_clock_changed_during_a_run_is_noticed_and_said(
    clocked: Page, ms: int, told: str
) -> None:
    press(clocked)
    clocked.clock.run_for(20_000)
    shift(clocked, ms)
    clocked.clock.run_for(10_000)
    press(clocked)
    assert runs(clocked) == ["30.0\u00a0s"]
    expect(timer(clocked).locator(".timer-runs")).to_contain_text(told)
    other = timer(clocked).locator("[data-watch=other]")
    assert other.count() == (ms > 0)  # a clock put back is plainly wrong
    if ms > 0:
        other.click()
        assert runs(clocked) == ["60:30.0"]


def test_a_phone_that_slept_is_reckoned_by_the_clock(clocked: Page) -> None:
    press(clocked)
    clocked.clock.run_for(5_000)
    # while it sleeps the running time stands still; the page looks when it is shown again
    shift(clocked, 40_000)
    clocked.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    clocked.clock.run_for(5_000)
    press(clocked)
    assert runs(clocked) == ["50.0\u00a0s"]
    expect(timer(clocked).locator(".timer-runs")).to_contain_text("slept")
    timer(clocked).locator("[data-watch=other]").click()
    assert runs(clocked) == ["10.0\u00a0s"]


def test_a_clock_put_back_while_the_page_was_closed_spoils_the_run(clocked: Page) -> None:
    press(clocked)
    clocked.clock.run_for(20_000)
    state = watch(clocked) | {"seen": watch(clocked)["seen"] + 600_000, "owner": "gone"}
    state["started"] += 600_000  # as if all had been ten minutes later than now
    clocked.evaluate("(text) => localStorage.setItem('pail-watch', text)", json.dumps(state))
    clocked.reload()
    clocked.clock.run_for(5_000)
    press(clocked)
    assert "left out" in runs(clocked)[0]
    expect(timer(clocked).locator(".timer-runs")).to_contain_text("cannot be trusted")


def test_two_tabs_show_one_watch(clocked: Page) -> None:
    other = clocked.context.new_page()
    other.goto(clocked.url)
    press(clocked)
    expect(timer(other)).to_have_attribute("data-running", "")
    clocked.clock.run_for(20_000)
    press(other)
    expect(timer(clocked)).not_to_have_attribute("data-running", "")
    assert len(runs(clocked)) == len(runs(other)) == 1


def test_the_screen_is_kept_on_while_it_runs(page: OpenPage) -> None:
    opened = page("jobs.html")
    opened.add_init_script(
        """globalThis.locks = [];
        Object.defineProperty(navigator, "wakeLock", { value: { async request(kind) {
          const lock = new EventTarget();
          lock.release = async () => { locks.push("released"); };
          locks.push(kind);
          return lock;
        } } });"""
    )
    opened.goto(opened.url.replace("jobs", "balance"))
    press(opened)
    expect(said(opened)).to_contain_text("stays on")
    opened.wait_for_timeout(500)
    press(opened)
    assert opened.evaluate("locks") == ["screen", "released"]


def test_without_a_wake_lock_the_watch_says_so(page: OpenPage) -> None:
    opened = page("jobs.html")
    opened.add_init_script('Object.defineProperty(navigator, "wakeLock", { value: undefined });')
    opened.goto(opened.url.replace("jobs", "balance"))
    press(opened)
    expect(said(opened)).to_contain_text("keeps time all the same")


def test_a_key_starts_and_stops_it(page: OpenPage) -> None:
    opened = page("balance.html")
    timer(opened).locator(".timer-press").focus()
    opened.keyboard.press("Enter")
    expect(timer(opened)).to_have_attribute("data-running", "")
    opened.wait_for_timeout(500)
    opened.keyboard.press("Space")
    expect(timer(opened).locator(".timer-runs li")).to_have_count(1)


def test_runs_go_straight_into_the_job_and_out_again(page: OpenPage) -> None:
    opened = page("jobs.html")
    opened.locator("#job-name").fill("Quarry Road")
    opened.locator("[data-do=start]").click()
    expect(opened.locator("[data-part=said]")).to_contain_text("in use", timeout=SLOW)
    hold(opened)
    opened.goto(opened.url.replace("jobs", "balance"))
    run(opened, 53.1)
    run(opened, 53.9)
    button(opened, "Flow in, measured today").click()
    expect(said(opened)).to_contain_text("1 more")
    run(opened, 53.4)
    button(opened, "Flow in, measured today").click()
    expect(said(opened)).to_contain_text("still the example's")
    opened.locator("#pail_flow-pail").fill("5")
    button(opened, "Flow in, measured today").click()
    opened.clock.run_for(1000)
    expect(said(opened)).to_contain_text("Kept in Quarry Road", timeout=SLOW)
    values = opened.evaluate(JOB)["values"]
    assert float(values["inlet"]["value"]) == pytest.approx(5 * 60 / mean(RUNS), rel=1e-4)
    assert values["inlet"]["origin"] == "pail_flow"
    assert re.fullmatch(r"0\.1\d gpm", values["inlet"]["plus_minus"])
    assert values["pail"]["origin"] == "measured"
    button(opened, "Take it out of the job again").click()
    expect(said(opened)).to_contain_text("as it was before")
    assert opened.evaluate(JOB)["values"] == {}


JOB = """() => new Promise((settle) => {
  const open = indexedDB.open("pail-and-timer");
  open.onsuccess = () => {
    const found = open.result.transaction("jobs").objectStore("jobs").getAll();
    found.onsuccess = () => settle(JSON.parse(found.result.at(-1)));
  };
})"""


@pytest.mark.parametrize("width", [320, 390])
def test_the_watch_fits_a_phone_and_a_thumb(page: OpenPage, width: int) -> None:
    opened = page("balance.html", viewport={"width": width, "height": 700})
    for _ in range(2):
        press(opened)
        opened.wait_for_timeout(500)
    box = timer(opened).locator(".timer-press").bounding_box()
    assert box
    assert box["height"] >= 200
    assert box["width"] >= width - 60
    for each in timer(opened).get_by_role("button").all():
        size = each.bounding_box()
        assert size
        assert size["height"] >= 44, each.inner_text()
    assert opened.evaluate("document.documentElement.scrollWidth") <= width
    assert axe(opened) == []
