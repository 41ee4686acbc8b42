"""A short run of the random edits: two tabs, disturbances, the browser killed."""

import json
import subprocess
import sys

import pytest
from playwright.sync_api import expect

from calc.demo import as_found
from calc.job import write_job
from tests.browser.job_model import Lost, Model
from tests.browser.job_tab import AT_ONCE, HANDS, KEEP_AND_REFUSE, REFUSE, TAKE
from tests.conftest import ROOT, OpenPage, Site

JOB = write_job(as_found())
FLOW = '["5.6", "gpm"]'


@pytest.mark.browser
def test_no_edit_is_lost(site: Site) -> None:
    """In a process of its own: it drives a Chromium of its own, which it kills."""
    command = [sys.executable, "-m", "tests.browser.job_edits", str(site.folder), "--edits", "60"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    counts = dict(line.split(maxsplit=1)[::-1] for line in done.stdout.splitlines()[:-1])
    assert int(counts["edits"]) >= 60
    assert int(counts["kill"]) >= 1


def test_a_loss_is_told() -> None:
    """By hand: a job gone, a figure gone or another, a job of nobody's, a file cut short."""
    model = Model()
    model.kept("1", JOB)
    model.compare({"1": JOB})
    for stored in ({}, {"1": JOB, "2": JOB}, {"1": JOB[:-9]}, {"1": JOB.replace("5.6", "5.7")}):
        with pytest.raises(Lost):
            model.compare(stored)
    model.changed("1", "inlet", '["5.7", "gpm"]')
    with pytest.raises(Lost, match="inlet"):
        model.compare({"1": JOB})
    model.begun("1", "inlet", FLOW)  # was under way: either will do
    model.compare({"1": JOB})
    with pytest.raises(Lost, match=r"5\.7"):
        model.compare({"1": JOB.replace('"5.6"', '"5.7"')})


# Work of a second or two for the page's Python, and a count of how often it is to show a job.
BUSY = """async () => {
  const python = await import(new URL("app/python.js", document.baseURI));
  const post = Worker.prototype.postMessage;
  globalThis.shows = 0;
  Worker.prototype.postMessage = function (message, ...rest) {
    shows += message.request?.do === "job-show";
    return post.call(this, message, ...rest);
  };
  const asked = { do: "backwards", wanted: "lowest", free: "cut_in", target: "100 gal" };
  globalThis.busy = python.ask({ ...asked, calculator: "pressure_draw", units: "us", fields: {} });
}"""
NEWS = """(id) => {
  const channel = new BroadcastChannel("pail-and-timer-jobs");
  for (let n = 0; n < 30; n++) channel.postMessage(id);
}"""


@pytest.mark.browser
def test_two_edits_of_one_page_at_once_without_room(page: OpenPage) -> None:
    """As from two fields of a sheet: the second builds upon the first, which only the page has."""
    opened = page("jobs.html")
    opened.evaluate(HANDS)
    new = opened.evaluate("() => once({ act: 'new', name: 'Quarry Road' })")
    opened.evaluate(REFUSE)
    steps = ("first-survey.well", "first-survey.tank")
    asked = [{"id": new["id"], "do": "job-mark", "mark": each, "value": "done"} for each in steps]
    told = opened.evaluate(AT_ONCE, asked)
    assert all("in this page only" in each["unsaved"] for each in told)
    opened.evaluate(TAKE)
    (last,) = opened.evaluate(AT_ONCE, [{**asked[0], "mark": "first-survey.pump"}])
    assert last["unsaved"] == ""
    assert {*json.loads(last["text"])["marks"]} == {*steps, "first-survey.pump"}


@pytest.mark.browser
def test_a_write_that_was_refused_and_kept_after_all(page: OpenPage) -> None:
    """As where a busy browser answers too late: what is there is this page's own, no other's."""
    opened = page("jobs.html")
    opened.evaluate(HANDS)
    new = opened.evaluate("() => once({ act: 'new', name: 'Quarry Road' })")
    edit = {"id": new["id"], "do": "job-mark", "value": "done"}
    opened.evaluate(KEEP_AND_REFUSE)
    (told,) = opened.evaluate(AT_ONCE, [{**edit, "mark": "a.one"}])
    assert "in this page only" in told["unsaved"]
    opened.evaluate(TAKE)
    (told,) = opened.evaluate(AT_ONCE, [{**edit, "mark": "a.two"}])
    assert told["unsaved"] == ""
    assert {*json.loads(told["text"])["marks"]} == {"a.one", "a.two"}
    assert opened.evaluate("() => once({ act: 'all' })")["all"] == {new["id"]: told["text"]}


@pytest.mark.browser
def test_two_tabs_that_part_from_one_job_make_two_copies(page: OpenPage) -> None:
    """By reason: under one name the second copy would hide the first."""
    opened = page("jobs.html")
    tabs = [opened, opened.context.new_page()]
    tabs[1].goto(opened.url)
    for tab in tabs:
        tab.evaluate(HANDS)
    new = opened.evaluate("() => once({ act: 'new', name: 'Quarry Road' })")
    edit = {"id": new["id"], "do": "job-mark", "value": "done"}
    third = opened.context.new_page()
    third.goto(opened.url)
    third.evaluate(HANDS)
    for step, tab in zip(("a.one", "a.two"), tabs, strict=True):
        tab.evaluate(REFUSE)
        tab.evaluate(AT_ONCE, [{**edit, "mark": step}])
    third.evaluate(AT_ONCE, [{**edit, "mark": "a.three"}])
    for step, tab in zip(("a.four", "a.five"), tabs, strict=True):
        tab.evaluate(TAKE)
        (told,) = tab.evaluate(AT_ONCE, [{**edit, "mark": step}])
        assert "Both are in the list now" in told["fault"]
    copies = [
        id_
        for tab in tabs
        for id_ in tab.evaluate("() => once({ act: 'all' })")["all"]
        if id_ != new["id"]
    ]
    assert len(copies) == len({*copies}) == 2


@pytest.mark.browser
def test_news_that_comes_while_a_job_is_shown_is_shown_as_one(page: OpenPage) -> None:
    """By reason: each on its own, they queue up before what the reader asks next."""
    opened = page("jobs.html")
    other = opened.context.new_page()
    other.goto(opened.url)
    for tab in (opened, other):
        tab.evaluate(HANDS)
    new = other.evaluate("() => once({ act: 'new', name: 'Quarry Road' })")
    opened.evaluate("(id) => localStorage.setItem('current-job', id)", new["id"])
    opened.evaluate(BUSY)
    other.evaluate(NEWS, new["id"])
    edit = {"id": new["id"], "do": "job-mark", "mark": "a.one", "value": "done"}
    other.evaluate(AT_ONCE, [edit])
    opened.evaluate("() => busy")
    expect(opened.locator("[data-part=said]")).to_contain_text("Another tab has changed")
    assert 1 <= opened.evaluate("() => shows") <= 3
