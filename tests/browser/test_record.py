"""The record on paper and in files, and the job against whatever may go wrong with it."""

import csv
import json
from collections.abc import Mapping
from io import BytesIO, StringIO
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar
from playwright.sync_api import Dialog, Page, expect
from pypdf import PdfReader

from calc.calculators import calculator, names
from calc.job import Job, kept, write_job
from calc.model import Choice, Input, Typed
from calc.sheets import SHEETS
from calc.vocabulary import words
from tests.browser.using import axe, change
from tests.conftest import OpenPage

pytestmark = pytest.mark.browser

SLOW = 60_000  # ms, for the first answer of a busy machine
HOUSE = "Quarry Road house, Alder Ledge (invented)"
EVERY = [each.name for each in SHEETS]


def job(
    name: str = HOUSE,
    date: str = "2026-11-25",
    when: str = "",
    only: tuple[str, ...] = (),
    new: Mapping[str, str] | None = None,
) -> str:
    """A job with the example's figures of all inputs, or `only` those of some calculators."""
    made = Job(name=name, date=date, handbook="0.1.0")
    inputs = {each.name for one in only or names() for each in calculator(one).inputs}
    for each in words().values():
        if each.once and each.name in inputs:
            given = Typed((new or {}).get(each.name, each.default))
            made = kept(made, each.name, given, "measured", when or f"{date}T10:00:00Z")
    return write_job(made)


def take_in(page: Page, text: str, tmp_path: Path) -> None:
    """Open a job file on the page of jobs."""
    file = tmp_path / "job.json"
    file.write_text(text, encoding="utf-8")
    page.locator("input[type=file]").set_input_files(file)
    told = f"{json.loads(text)['date']} is the job in use"
    expect(page.locator("[data-part=said]")).to_contain_text(told, timeout=SLOW)


def record(page: Page) -> None:
    page.goto(page.url.replace("jobs.html", "record.html"))
    expect(page.locator("[data-part=whose]")).not_to_be_empty(timeout=SLOW)


def printed(page: Page, sheet: str, paper: str) -> PdfReader:
    page.evaluate("window.print = () => {}")  # the sheet stays until it is printed
    page.locator(f"[data-sheet={sheet}]").click()
    expect(page.locator(".sheet .record").first).to_be_attached(timeout=SLOW)
    return PdfReader(BytesIO(page.pdf(format=paper)))


def text_of(file: PdfReader, place: int = 0) -> str:
    return " ".join(file.pages[place].extract_text().replace("\u00a0", " ").split())


@pytest.mark.parametrize("paper", ["Letter", "A4"])
@pytest.mark.parametrize("kind", ["blank", "filled", "worst"])
def test_each_sheet_is_one_page(page: OpenPage, tmp_path: Path, kind: str, paper: str) -> None:
    """Blank; filled; and with the longest name a job may have, the longest figures that are typed,
    every choice at its longest, and a visit before from which everything has drifted."""
    opened = page("jobs.html")
    if kind == "worst":
        take_in(opened, job("W" * 300, "2026-05-01"), tmp_path)
        take_in(opened, job("W" * 300, new=long_choices() | long_figures()), tmp_path)
    if kind == "filled":
        take_in(opened, job(), tmp_path)
    record(opened)
    for sheet in SHEETS:
        file = printed(opened, sheet.name, paper)
        assert len(file.pages) == 1, sheet.name
        text = text_of(file)
        assert sheet.title in text
        assert "local codes and licensed practice decide" in text
        assert ("Signature" in text) == sheet.signed


def long_choices() -> dict[str, str]:
    choices = (each for each in words().values() if isinstance(each, Choice))
    return {each.name: longest(each.options) for each in choices}


def longest(options: Mapping[str, str]) -> str:
    return max(options, key=lambda option: len(options[option]))


def long_figures() -> dict[str, str]:
    """Each figure of one reading a little off, typed with more digits than anybody reads."""
    found = {}
    for each in words().values():
        if isinstance(each, Input) and each.several == 1 and each.once:
            value, unit = each.take(Typed(each.default), "us")
            assert isinstance(value, float)
            moved = min(each.high, value * 1.3) if value * 1.3 > each.low else value
            found[each.name] = f"{unit.out_of_si(moved):.17f} {unit.symbol}"
    return found


def test_the_sheets_hold_what_the_job_holds(page: OpenPage, tmp_path: Path) -> None:
    opened = page("jobs.html")
    take_in(opened, job(new={"inlet": "5.61 gpm"}), tmp_path)
    record(opened)
    assert "5.61 gpm" in text_of(printed(opened, "commissioning", "Letter"))
    assert "Can run dry." in text_of(printed(opened, "commissioning", "Letter"))
    assert "4.63 gpm" in text_of(printed(opened, "tags", "A4"))
    household = text_of(printed(opened, "homeowner", "A4"))
    assert "2027-11-25" in household  # a year after the treated water was measured
    assert "Call the same day" in household


def test_the_whole_job_is_one_file(page: OpenPage, tmp_path: Path) -> None:
    opened = page("jobs.html")
    take_in(opened, job(), tmp_path)
    record(opened)
    file = printed(opened, "all", "Letter")
    starts = [text_of(file, place) for place in range(len(SHEETS) + 1)]
    for sheet, start in zip(SHEETS, starts, strict=False):
        assert start.startswith(sheet.title)
    assert starts[-1].startswith(f"Job: {HOUSE}")
    rest = " ".join(text_of(file, place) for place in range(len(SHEETS), len(file.pages)))
    missing = [each.label for each in words().values() if each.once and each.label not in rest]
    assert missing == []


def test_files_hold_the_job(page: OpenPage, tmp_path: Path) -> None:
    """Read back by the libraries `csv` and `icalendar`."""
    opened = page("jobs.html")
    text = job(only=("filter_due",))
    take_in(opened, text, tmp_path)
    record(opened)
    opened.locator("#due-salt").fill("2027-02-03")
    opened.locator("#due-salt").blur()
    expect(opened.locator(".record-dues")).to_contain_text("Set by hand.", timeout=SLOW)
    opened.reload()
    expect(opened.locator("#due-salt")).to_have_value("2027-02-03", timeout=SLOW)
    files = {}
    for what in ("calendar", "csv", "json"):
        with opened.expect_download() as saved:
            opened.locator(f"[data-do={what}]").click()
        files[what] = saved.value.path().read_bytes().decode()
        assert saved.value.suggested_filename.startswith("Quarry-Road-house-Alder-Ledge")
    events: list[Any] = list(Calendar.from_ical(files["calendar"]).walk("VEVENT"))
    assert {str(each["SUMMARY"]).partition(":")[0] for each in events} == {
        "Service the filter",
        "Fill up the salt",
    }
    rows = list(csv.DictReader(StringIO(files["csv"].removeprefix("\ufeff"), newline="")))
    assert {row["Name"] for row in rows} == {*json.loads(text)["values"]}
    assert json.loads(files["json"]) == json.loads(text)


def test_a_date_waits_for_what_is_missing(page: OpenPage, tmp_path: Path) -> None:
    opened = page("jobs.html")
    take_in(opened, job(only=("pail_flow",)), tmp_path)
    record(opened)
    expect(opened.locator(".record-dues")).to_contain_text("Flow in; Gauge before", timeout=SLOW)
    expect(opened.locator("#due-filter")).to_have_value("")
    opened.locator("[data-do=calendar]").click()
    expect(opened.locator("[data-part=said]")).to_contain_text("no date yet", timeout=SLOW)


def test_at_the_next_visit_what_drifted_is_named(page: OpenPage, tmp_path: Path) -> None:
    opened = page("jobs.html")
    take_in(
        opened, job(date="2026-05-01", only=("outlet_setting",), new={"inlet": "6.2 gpm"}), tmp_path
    )
    record(opened)
    opened.locator("[data-do=next]").click()
    expect(opened.locator("[data-part=said]")).to_contain_text("kept its day", timeout=SLOW)
    expect(opened.locator(".record-drift")).to_contain_text("has drifted", timeout=SLOW)
    service = text_of(printed(opened, "service", "Letter"))
    assert "6.2 gpm" in service
    assert "Last visit: 2026-05-01" in service
    opened.goto(opened.url.replace("record.html", "balance.html"))
    change(opened, "outlet_setting", "inlet", "5.2")
    change(opened, "outlet_setting", "outlet", "6.05")
    opened.locator("#outlet_setting .calc-job summary").click()
    for name in ("inlet", "outlet"):
        opened.locator(f"#outlet_setting [data-keep][value={name}]").check(timeout=SLOW)
    opened.locator("#outlet_setting [data-do=job-keep]").click()
    expect(opened.locator("#outlet_setting [data-told]")).to_contain_text("Kept in", timeout=SLOW)
    expect(opened.locator("#outlet_setting [data-told]")).to_contain_text("6.2 gpm")
    opened.goto(opened.url.split("balance")[0] + "record.html")
    drift = opened.locator(".record-drift")
    expect(drift).to_contain_text("Flow in, measured today: 6.20", timeout=SLOW)
    expect(drift).not_to_contain_text("Flow out")  # moved by less than both are in doubt
    service = text_of(printed(opened, "service", "Letter"))
    assert "6.2 gpm 5.2 gpm" in service
    assert "both plus-or-minus: Flow in, measured today." in service


def test_a_clock_before_the_jobs_figures_is_said(page: OpenPage, tmp_path: Path) -> None:
    opened = page("jobs.html")
    take_in(opened, job(only=("pail_flow",)), tmp_path)
    opened.clock.set_fixed_time("2020-01-02T10:00:00")
    record(opened)
    expect(opened.locator("[data-part=shown]")).to_contain_text("set the clock", timeout=SLOW)
    opened.locator("[data-do=next]").click()
    expect(opened.locator("[data-part=said]")).to_contain_text("check the clock", timeout=SLOW)


def test_a_draft_that_is_there_again_gives_way_to_a_newer_figure(
    page: OpenPage, tmp_path: Path
) -> None:
    """A browser that is killed may forget that a draft was taken away."""
    opened = page("jobs.html")
    take_in(opened, job(only=("pail_flow",)), tmp_path)
    drafts = {
        "pail": {"text": "4", "unit": "gal", "when": "2026-11-25T09:59:59Z"},
        "cut_in": {"text": "31", "unit": "psi", "when": "2026-11-25T09:59:59Z"},  # the job has none
    }
    opened.evaluate(LEAVE_DRAFTS, json.dumps(drafts))
    sheet = opened.url.replace("jobs", "visit/balance-and-commission")
    opened.goto(sheet)
    said = opened.locator("calc-visit [data-part=said]")
    expect(said).to_contain_text("not kept because the job has newer figures: “4”.", timeout=SLOW)
    pail = opened.locator("[data-field=pail] input").first
    expect(pail).to_have_value("5 gal")
    expect(opened.locator("[data-field=cut_in] input").first).to_have_value("31")
    opened.wait_for_function(NO_DRAFT)
    # typed over that figure it is the newer one, whatever the clock says
    opened.clock.set_fixed_time("2020-01-02T10:00:00")
    opened.goto(sheet)
    expect(said).to_contain_text("Job: ", timeout=SLOW)
    pail.fill("4")
    opened.reload()
    opened.wait_for_function(NO_DRAFT, timeout=SLOW)
    expect(pail).to_have_value("4")


LEAVE_DRAFTS = """(drafts) => localStorage.setItem(
  `drafts ${localStorage.getItem("current-job")}`, drafts)"""
NO_DRAFT = "() => !Object.keys(localStorage).some((key) => key.startsWith('drafts '))"
JOBS = """() => new Promise((settle) => {
  const open = indexedDB.open("pail-and-timer");
  open.onsuccess = () => {
    const store = open.result.transaction("jobs").objectStore("jobs");
    const [ids, texts] = [store.getAllKeys(), store.getAll()];
    texts.onsuccess = () => {
      open.result.close();
      settle(ids.result.map((id, place) => [id, JSON.parse(texts.result[place])]));
    };
  };
})"""
STORED = """() => new Promise((settle) => {
  const open = indexedDB.open("pail-and-timer");
  open.onsuccess = () => {
    const found = open.result.transaction("jobs").objectStore("jobs").getAll();
    found.onsuccess = () => {
      open.result.close();
      settle(found.result.map((it) => JSON.parse(it)));
    };
  };
})"""


def start(page: Page, name: str) -> None:
    page.locator("#job-name").fill(name)
    page.locator("[data-do=start]").click()
    expect(page.locator("[data-part=said]")).to_contain_text("is the job in use", timeout=SLOW)


def test_the_name_of_a_job_is_cleared_before_it_is_said_to_be_in_use(page: OpenPage) -> None:
    """Later it would clear the next name, which may be typed by then."""
    opened = page("jobs.html")
    opened.evaluate(NAME_WHEN_SAID)
    start(opened, "Quarry Road")
    assert opened.evaluate("window.nameWhenSaid") == ""


NAME_WHEN_SAID = """() => {
  const note = () => (window.nameWhenSaid = document.querySelector("#job-name").value);
  const said = document.querySelector("[data-part=said]");
  new MutationObserver(note).observe(said, { childList: true });
}"""


def tick(page: Page, name: str, text: str) -> None:
    """Type a figure, open the job panel and tick it, ready to be kept."""
    change(page, "outlet_setting", name, text)
    page.locator("#outlet_setting .calc-job summary").click()
    page.locator(f"#outlet_setting [data-keep][value={name}]").check(timeout=SLOW)


def keep(page: Page) -> None:
    page.locator("#outlet_setting [data-do=job-keep]").click()


def told(page: Page, text: str) -> None:
    expect(page.locator("#outlet_setting [data-told]")).to_contain_text(text, timeout=SLOW)


def test_two_tabs_on_one_job_lose_nothing(page: OpenPage) -> None:
    opened = page("jobs.html")
    start(opened, "Quarry Road")
    opened.goto(opened.url.replace("jobs", "balance"))
    other = opened.context.new_page()
    other.goto(opened.url.split("#")[0])
    tick(opened, "inlet", "5.5")
    tick(other, "outlet", "4.5")
    for each in (opened, other):  # at the same moment: both have read the same job
        each.evaluate("document.querySelector('#outlet_setting [data-do=job-keep]').click()")
    told(opened, "")
    expect(opened.locator("#outlet_setting .calc-job table")).to_contain_text("4.5", timeout=SLOW)
    expect(other.locator("#outlet_setting .calc-job table")).to_contain_text("5.5", timeout=SLOW)
    (stored,) = opened.evaluate(STORED)
    assert {name: each["value"] for name, each in stored["values"].items()} == {
        "inlet": "5.5",
        "outlet": "4.5",
    }


def test_a_job_changed_elsewhere_shows_and_keeps_the_ticks(page: OpenPage) -> None:
    opened = page("jobs.html")
    start(opened, "Quarry Road")
    opened.goto(opened.url.replace("jobs", "balance"))
    other = opened.context.new_page()
    other.goto(opened.url.split("#")[0])
    tick(opened, "inlet", "5.5")
    tick(other, "outlet", "4.5")
    keep(other)
    told(opened, "Another tab has changed this job")
    expect(opened.locator("#outlet_setting [data-keep][value=inlet]")).to_be_checked()


def test_a_job_removed_or_swapped_elsewhere_is_said(page: OpenPage) -> None:
    opened = page("jobs.html")
    start(opened, "Quarry Road")
    other = opened.context.new_page()
    other.goto(opened.url)
    opened.goto(opened.url.replace("jobs", "balance"))
    tick(opened, "inlet", "5.5")
    start(other, "Another house")
    told(opened, "Another tab has chosen Another house")
    other.evaluate("new BroadcastChannel('pail-and-timer-jobs').postMessage('heard late')")
    opened.wait_for_timeout(500)
    told(opened, "Another tab has chosen Another house")
    expect(opened.locator("#outlet_setting [data-keep][value=inlet]")).not_to_be_checked()
    keep(opened)
    told(opened, "Kept in Another house")
    assert all(each["values"] == {} for each in opened.evaluate(STORED))
    other.on("dialog", lambda dialog: dialog.accept())
    other.locator("[data-do=remove]").click()
    expect(other.locator("[data-part=said]")).to_contain_text("is removed", timeout=SLOW)
    expect(opened.locator("#outlet_setting .calc-job")).to_contain_text("No job is chosen")
    expect(opened.locator("#outlet_setting-inlet")).to_have_value("5.5")


TYPE_AND_SWITCH = """([name, text, job]) => {
  const box = document.querySelector(`[data-field=${name}] input`);
  box.value = text;
  box.dispatchEvent(new Event("input", { bubbles: true }));
  localStorage.setItem("current-job", job); // as another tab does, before the figure is kept
}"""
CHOOSE = "(job) => localStorage.setItem('current-job', job)"


def test_a_figure_of_a_sheet_goes_into_the_job_for_which_it_was_typed(page: OpenPage) -> None:
    opened = page("jobs.html")
    for name in ("Another house", "Quarry Road"):
        start(opened, name)
        expect(opened.locator("[data-part=said]")).to_contain_text(name)
    jobs = {each["name"]: id_ for id_, each in opened.evaluate(JOBS)}
    opened.goto(opened.url.replace("jobs", "visit/balance-and-commission"))
    said = opened.locator("[data-part=said]")
    expect(said).to_contain_text("Job: Quarry Road", timeout=SLOW)
    opened.evaluate(TYPE_AND_SWITCH, ["precharge", "38", jobs["Another house"]])
    expect(said).to_contain_text("waits for the one before", timeout=SLOW)
    expect(opened.locator("[data-field=precharge] input").first).to_have_value("")
    assert all(each["values"] == {} for each in opened.evaluate(STORED))
    opened.evaluate(CHOOSE, jobs["Quarry Road"])
    opened.reload()
    opened.wait_for_function(NO_DRAFT, timeout=SLOW)
    kept = {each["name"]: each["values"] for each in opened.evaluate(STORED)}
    assert kept["Another house"] == {}
    assert kept["Quarry Road"]["precharge"]["value"] == "38"


def quota(page: Page, size: int | None) -> None:
    """The browser's own limit for the site, in bytes; None sets it free again."""
    devtools = page.context.new_cdp_session(page)
    origin = "/".join(page.url.split("/")[:3])
    limit = {} if size is None else {"quotaSize": size}
    devtools.send("Storage.overrideQuotaForOrigin", {"origin": origin, **limit})


def follow(page: Page, name: str) -> None:
    """Go to a page of the book by a link, without a reload."""
    page.evaluate("(name) => document.querySelector(`a[href$='${name}']`).click()", name)
    page.wait_for_url(f"**/{name}*")


def test_storage_that_is_full_loses_nothing_and_is_said(page: OpenPage) -> None:
    """The browser's own quota. It looks at it anew only after half a minute or if it is short."""
    opened = page("jobs.html")
    quota(opened, 1)
    start(opened, "Quarry Road")
    expect(opened.locator("[data-part=kept]")).to_contain_text("no room left", timeout=SLOW)
    follow(opened, "balance.html")
    tick(opened, "inlet", "5.5")
    keep(opened)
    told(opened, "in this page only")
    follow(opened, "jobs.html")
    expect(opened.locator("[data-part=values]")).to_contain_text("5.5", timeout=SLOW)
    with opened.expect_download() as saved:
        opened.locator("[data-do=export]").click()
    assert '"5.5"' in saved.value.path().read_text(encoding="utf-8")
    quota(opened, None)
    opened.locator("[data-drop=inlet]").click()  # the next change is kept, and all with it
    expect(opened.locator("[data-part=kept]")).to_be_empty(timeout=SLOW)
    (stored,) = opened.evaluate(STORED)
    assert stored["name"] == "Quarry Road"


FULL = """() => {
  IDBObjectStore.prototype.put = () => { throw new DOMException("by test", "QuotaExceededError"); };
}"""


def test_a_job_that_cannot_be_written_stays_as_it_was(page: OpenPage) -> None:
    opened = page("jobs.html")
    start(opened, "Quarry Road")
    before = opened.evaluate(STORED)
    follow(opened, "balance.html")
    opened.evaluate(FULL)
    tick(opened, "inlet", "5.5")
    keep(opened)
    told(opened, "no room left")
    assert opened.evaluate(STORED) == before
    expect(opened.locator("#outlet_setting .calc-job table")).to_contain_text("in use")
    leaving: list[str] = []

    def asked(dialog: Dialog) -> None:
        leaving.append(dialog.type)
        dialog.accept()

    opened.on("dialog", asked)
    opened.reload()
    assert leaving == ["beforeunload"]


def test_a_job_of_a_newer_edition_is_refused_and_can_be_saved(page: OpenPage) -> None:
    opened = page("jobs.html")
    start(opened, "Quarry Road")
    opened.evaluate(
        """() => new Promise((settle) => {
          const open = indexedDB.open("pail-and-timer");
          open.onsuccess = () => {
            const to = open.result.transaction("jobs", "readwrite");
            const job = { format: "pail-and-timer-job", version: 7, name: "A", date: "2030-01-01" };
            to.objectStore("jobs").put(JSON.stringify(job), localStorage.getItem("current-job"));
            to.objectStore("jobs").put("spoiled {", "0-spoiled");
            to.oncomplete = () => { open.result.close(); settle(); };
          };
        })"""
    )
    opened.reload()
    expect(opened.locator("[data-part=said]")).to_contain_text("version 7", timeout=SLOW)
    expect(opened.locator("[data-part=list]")).to_contain_text("a job that cannot be read")
    with opened.expect_download() as saved:
        opened.locator("[data-do=export]").click()
    assert '"version":7' in saved.value.path().read_text(encoding="utf-8")
    record(opened)
    expect(opened.locator("[data-part=said]")).to_contain_text("version 7", timeout=SLOW)


def test_a_file_too_large_is_not_even_read(page: OpenPage, tmp_path: Path) -> None:
    opened = page("jobs.html")
    file = tmp_path / "film.json"
    file.write_bytes(b" " * 300_000)
    opened.locator("input[type=file]").set_input_files(file)
    expect(opened.locator("[data-part=said]")).to_contain_text("larger than 200000 bytes")
    expect(opened.locator("[data-part=list] label")).to_have_count(0)


@pytest.mark.parametrize("width", [320, 390])
def test_the_page_of_the_record_fits_a_phone(page: OpenPage, tmp_path: Path, width: int) -> None:
    opened = page("jobs.html", viewport={"width": width, "height": 700})
    take_in(opened, job(date="2026-05-01"), tmp_path)
    take_in(opened, job(new={"inlet": "4.1 gpm"}), tmp_path)
    record(opened)
    expect(opened.locator(".record-drift")).to_contain_text("Flow in", timeout=SLOW)
    assert opened.evaluate("document.documentElement.scrollWidth") <= width
    for each in opened.locator("calc-record button").all():
        size = each.bounding_box()
        assert size
        assert size["height"] >= 44, each.inner_text()
    assert axe(opened) == []
