"""What every calculator gets from its declaration, on the page: links, codes, jobs, records."""

import json
from io import BytesIO
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from pypdf import PdfReader

from tests.browser.using import axe, change, form, output
from tests.conftest import OpenPage

pytestmark = pytest.mark.browser

JSQR = Path(__file__).resolve().parents[2] / "node_modules/jsqr/dist/jsQR.js"
SLOW = 30_000  # ms, for the first answer of a busy machine


def do(page: Page, calculator: str, what: str) -> None:
    page.locator(f"#{calculator} [data-do={what}]").click()


def start_job(page: Page, name: str) -> None:
    page.locator("#job-name").fill(name)
    page.locator("[data-do=start]").click()
    expect(page.locator("[data-part=said]")).to_contain_text("is the job in use", timeout=SLOW)


def follow(page: Page, address: str) -> None:
    """Open a link as a stranger would: in a fresh page load."""
    page.goto("about:blank")
    page.goto(address)


def test_a_link_holds_the_figures(page: OpenPage) -> None:
    opened = page("balance.html")
    change(opened, "outlet_setting", "outlet", "1 1/2")
    link = opened.url
    assert link.endswith("#outlet_setting&outlet=1+1%2F2+gpm")
    follow(opened, link)
    expect(form(opened, "outlet_setting")).to_have_attribute("data-state", "answered", timeout=SLOW)
    expect(opened.locator("#outlet_setting-outlet")).to_have_value("1 1/2")
    expect(opened.locator("#outlet_setting .calc-finding").first).to_contain_text("Safe.")


def test_a_long_list_of_options_is_one_to_open(page: OpenPage) -> None:
    """Picked in the list, told by the link, and there again when the link is followed."""
    opened = page("well/pump-and-pipe.html")
    pipe = opened.locator("#pipe_loss-pipe_kind")
    before = output(opened, "pipe_loss", "bore")
    pipe.select_option("copperL-0.75")
    expect(form(opened, "pipe_loss")).to_have_attribute("data-state", "answered", timeout=SLOW)
    # [copper-tube], type L, 3/4 in: 0.785 in inside
    expect(opened.locator("#pipe_loss [data-output=bore] dd")).to_contain_text("0.785")
    assert before != output(opened, "pipe_loss", "bore")
    link = opened.url
    assert "pipe_kind=copperL-0.75" in link
    follow(opened, link)
    expect(form(opened, "pipe_loss")).to_have_attribute("data-state", "answered", timeout=SLOW)
    expect(pipe).to_have_value("copperL-0.75")


@pytest.mark.parametrize(
    "hash_",
    [
        "outlet_setting&outlet=<img src=x onerror=alert(1)>",
        "outlet_setting&nobody=5&outlet=4&__class__=1",
        "outlet_setting&outlet=" + "9" * 1500,
        "outlet_setting&%%%&outlet=5",
        "outlet_setting&" + "outlet=4&" * 5000,
        "no_such_thing&outlet=4",
        "outlet_setting&limit=sideways&outlet=1e999",
    ],
)
def test_a_link_from_a_stranger_does_no_harm(page: OpenPage, hash_: str, faults: list[str]) -> None:
    opened = page(f"balance.html#{hash_}")
    opened.on("dialog", lambda dialog: faults.append(f"a dialog: {dialog.message}"))
    opened.wait_for_timeout(1500)
    change(opened, "outlet_setting", "outlet", "4.6")
    expect(opened.locator("#outlet_setting .calc-answer img")).to_have_count(0)


def test_the_code_holds_the_link(page: OpenPage) -> None:
    """Read back by another program: jsQR."""
    opened = page("balance.html")
    change(opened, "pail_flow", "pail", "3")
    do(opened, "pail_flow", "code")
    expect(opened.locator("#pail_flow .calc-code svg")).to_be_visible()
    opened.evaluate(JSQR.read_text(encoding="utf-8"))
    read = opened.evaluate(
        """async () => {
          const svg = document.querySelector("#pail_flow .calc-code svg").outerHTML;
          const picture = new Image();
          picture.src = "data:image/svg+xml," + encodeURIComponent(svg);
          await picture.decode();
          const canvas = new OffscreenCanvas(400, 400).getContext("2d");
          canvas.fillStyle = "#fff";
          canvas.fillRect(0, 0, 400, 400);
          canvas.drawImage(picture, 0, 0, 400, 400);
          return jsQR(canvas.getImageData(0, 0, 400, 400).data, 400, 400).data;
        }"""
    )
    assert read == opened.url


def test_every_answer_gets_its_plus_or_minus(page: OpenPage) -> None:
    opened = page("balance.html")
    answered = change(opened, "tank_draw", "worst_inlet", "4.9")
    sure = answered.locator("[data-output=lowest] .calc-sure")
    expect(sure).to_contain_text("±", timeout=SLOW)
    before = sure.inner_text()
    answered.locator("[data-field=worst_inlet] [data-sure]").fill("20 %")
    expect(answered.locator("[data-output=lowest] .calc-sure")).not_to_have_text(
        before, timeout=SLOW
    )
    answered.locator(".calc-sureness > summary").click()
    expect(answered.locator(".calc-sureness")).to_contain_text("measure that again")


def test_working_backwards_finds_the_figure_and_takes_it_over(page: OpenPage) -> None:
    opened = page("balance.html")
    asks = opened.locator("#outlet_setting .calc-backwards")
    asks.locator("summary").click()
    asks.locator("#outlet_setting-wanted").select_option("margin")
    asks.locator("#outlet_setting-target").fill("0.2 gpm")
    asks.locator("#outlet_setting-free").select_option("outlet")
    do(opened, "outlet_setting", "backwards")
    expect(asks.locator(".calc-found")).to_contain_text("must be 4.6\u00a0gpm", timeout=SLOW)
    asks.get_by_role("button", name="Use 4.6").click()
    expect(form(opened, "outlet_setting").locator(".calc-finding").first).to_contain_text("Safe.")
    asks.locator("#outlet_setting-target").fill("<b>x</b>")
    do(opened, "outlet_setting", "backwards")
    expect(asks.locator(".calc-found")).to_contain_text("“<b>x</b>” is not a number")


def test_a_figure_measured_once_serves_the_next_page(page: OpenPage) -> None:
    opened = page("jobs.html")
    start_job(opened, "Quarry Road <b>")
    opened.goto(opened.url.replace("jobs.html", "balance.html"))
    change(opened, "outlet_setting", "house_tank", "33")
    panel = opened.locator("#outlet_setting .calc-job")
    panel.locator("summary").click()
    # only what was typed here is ticked: an example's figure is no measurement
    expect(panel.locator("[data-keep]:checked")).to_have_count(1, timeout=SLOW)
    do(opened, "outlet_setting", "job-keep")
    expect(opened.locator("#outlet_setting [data-told]")).to_contain_text("Kept in Quarry Road <b>")
    opened.reload()
    other = opened.locator("#tank_draw .calc-job")
    other.locator("summary").click()
    expect(other).to_contain_text("1 of its figures fit here", timeout=SLOW)
    expect(opened.locator("#tank_draw-house_tank")).to_have_value("20")  # nothing unasked
    do(opened, "tank_draw", "job-use")
    expect(opened.locator("#tank_draw-house_tank")).to_have_value("33")


def test_nothing_in_a_job_is_overwritten_unasked(page: OpenPage) -> None:
    opened = page("jobs.html")
    start_job(opened, "Quarry Road")
    opened.goto(opened.url.replace("jobs.html", "balance.html"))
    for size in ("33", "44"):
        change(opened, "outlet_setting", "house_tank", size)
        panel = opened.locator("#outlet_setting .calc-job")
        panel.locator("summary").click()
        row = panel.locator("tr", has_text="Size of the house pressure tank")
        expect(row).to_contain_text(f"{size}\u00a0gal", timeout=SLOW)
        ticked = row.locator("[data-keep]")
        assert ticked.is_checked() == (size == "33")
        do(opened, "outlet_setting", "job-keep")
        expect(opened.locator("#outlet_setting [data-told]")).to_contain_text("Kept in")
        panel.locator("summary").click()
    opened.goto(opened.url.split("balance")[0] + "jobs.html")
    expect(opened.locator("[data-part=values]")).to_contain_text("33\u00a0gal", timeout=SLOW)


def test_jobs_are_saved_opened_compared_and_removed(page: OpenPage, tmp_path: Path) -> None:
    opened = page("jobs.html")
    start_job(opened, "March")
    with opened.expect_download() as saved:
        opened.locator("[data-do=export]").click()
    file = tmp_path / "march.json"
    saved.value.save_as(file)
    job = json.loads(file.read_text(encoding="utf-8"))
    assert (job["format"], job["name"], job["values"]) == ("pail-and-timer-job", "March", {})
    entry = {"plus_minus": "", "origin": "measured", "when": "2026-03-02T10:00:00Z", "note": ""}
    job["values"] = {"inlet": {"value": "5.6", "unit": "gpm"} | entry}
    first, second = tmp_path / "first.json", tmp_path / "second.json"
    first.write_text(json.dumps(job))
    job |= {"name": "November", "values": {"inlet": {"value": "4.9", "unit": "gpm"} | entry}}
    second.write_text(json.dumps(job))
    for path in (first, second):
        opened.locator("input[type=file]").set_input_files(path)
        expect(opened.locator("[data-part=values]")).to_contain_text("gpm", timeout=SLOW)
    expect(opened.locator("[data-part=list] label")).to_have_count(3)
    opened.locator("#job-first").select_option(label=f"November, {job['date']}")
    opened.locator("#job-second").select_option(index=1)
    opened.locator("[data-do=compare]").click()
    expect(opened.locator("[data-part=compared]")).to_contain_text("−12\u00a0%", timeout=SLOW)
    opened.on("dialog", lambda dialog: dialog.accept())
    opened.locator("[data-do=remove]").click()
    expect(opened.locator("[data-part=list] label")).to_have_count(2)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("{", "cannot be read"),
        ('{"format": "someone-elses"}', "no job of this handbook"),
        ('{"format": "pail-and-timer-job", "version": 99}', "this handbook reads version 1"),
        ("[" * 100_000, "nested too deeply"),
        ("<script>alert(1)</script>", "cannot be read"),
    ],
)
def test_a_foreign_file_is_refused_and_changes_nothing(
    page: OpenPage, tmp_path: Path, text: str, told: str
) -> None:
    opened = page("jobs.html")
    file = tmp_path / "foreign.json"
    file.write_text(text)
    opened.locator("input[type=file]").set_input_files(file)
    expect(opened.locator("[data-part=said]")).to_contain_text(told, timeout=SLOW)
    expect(opened.locator("[data-part=list] label")).to_have_count(0)


@pytest.mark.parametrize("paper", ["Letter", "A4"])
@pytest.mark.parametrize("what", ["record", "blank"])
@pytest.mark.parametrize("name", ["pail_flow", "outlet_setting", "tank_draw"])
def test_a_record_is_one_page(page: OpenPage, name: str, what: str, paper: str) -> None:
    opened = page("balance.html")
    opened.evaluate("window.print = () => {}")  # the sheet stays until it is printed
    do(opened, name, what)
    expect(opened.locator(".sheet .record-code svg")).to_have_count(1, timeout=SLOW)
    printed = PdfReader(BytesIO(opened.pdf(format=paper, prefer_css_page_size=False)))
    assert len(printed.pages) == 1
    text = printed.pages[0].extract_text()
    for said in ("edition", "Signature", "local codes", "Radon"):
        assert said in text
    # nobody may take an example's figure for a measurement
    assert ("not measured" in text) == (what == "record")


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_a_whole_job_prints_on_one_page(page: OpenPage, paper: str) -> None:
    opened = page("jobs.html")
    start_job(opened, "Quarry Road")
    opened.goto(opened.url.replace("jobs.html", "balance.html"))
    change(opened, "outlet_setting", "house_tank", "33")
    opened.locator("#outlet_setting .calc-job summary").click()
    expect(opened.locator("#outlet_setting [data-keep]")).to_have_count(16, timeout=SLOW)
    for box in opened.locator("#outlet_setting [data-keep]").all():
        box.check()
    do(opened, "outlet_setting", "job-keep")
    expect(opened.locator("#outlet_setting [data-told]")).to_contain_text("Kept in")
    opened.goto(opened.url.split("balance")[0] + "jobs.html")
    opened.evaluate("window.print = () => {}")
    do_job = opened.locator("[data-do=record]")
    do_job.click()
    expect(opened.locator(".sheet .record-table tbody tr")).to_have_count(16, timeout=SLOW)
    printed = PdfReader(BytesIO(opened.pdf(format=paper)))
    assert len(printed.pages) == 1
    assert "33 gal" in printed.pages[0].extract_text().replace("\u00a0", " ")


def test_one_figure_varied_is_drawn_with_the_present_case(page: OpenPage) -> None:
    opened = page("balance.html")
    asks = opened.locator("#outlet_setting .calc-varied")
    asks.locator("summary").first.click()
    asks.locator("#outlet_setting-varied").select_option("outlet")
    asks.locator("#outlet_setting-seen").select_option("margin")
    do(opened, "outlet_setting", "varied")
    expect(asks.locator("svg")).to_contain_text("you are here", timeout=SLOW)


def test_the_jobs_page_is_accessible_with_a_job_in_it(page: OpenPage) -> None:
    opened = page("jobs.html")
    start_job(opened, "Quarry Road")
    assert axe(opened) == []
