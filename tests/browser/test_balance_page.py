"""The open-tank chapter on a phone: read, used, misused, printed."""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

from calc.request import case_of
from calc.views.browser import reply
from tests.browser.using import axe, change, form, output
from tests.conftest import OpenPage, Site

pytestmark = pytest.mark.browser

PAGES = (
    "index.html",
    "about/privacy.html",
    "about/copying.html",
    "balance.html",
    "jobs.html",
    "sources.html",
    "reference/words.html",
)


def test_the_example_is_there_without_a_script(page: OpenPage) -> None:
    opened = page("balance.html", java_script_enabled=False)
    expect(opened.locator("#outlet_setting .calc-example")).to_contain_text("Worked example")
    expect(opened.locator("#outlet_setting .calc-finding").first).to_contain_text("Can run dry.")
    expect(opened.locator("#tank_draw svg").first).to_be_visible()


def test_a_changed_field_gives_the_answer_of_cpython(page: OpenPage) -> None:
    opened = page("balance.html")
    answered = change(opened, "outlet_setting", "outlet", "4.6")
    expect(answered.locator(".calc-finding").first).to_contain_text("Safe.")
    expect(answered.locator(".calc-example")).to_have_count(0)
    fields = {
        each.name: {"text": each.default, "unit": ""}
        for each in case_of(["outlet_setting"]).calculator.inputs
    }
    request = {"calculator": "outlet_setting", "fields": fields, "units": "us"}
    request |= {"key": "outlet_setting", "root": ""}
    fields["outlet"] = {"text": "4.6", "unit": "gpm"}
    mine = json.loads(reply(json.dumps(request)))
    there = opened.evaluate(
        "request => import('/app/python.js').then(({ ask }) => ask(request))", request
    )
    assert there["says"] == mine["says"]
    assert there["fields"] == mine["fields"]
    figures = re.compile(r'<dl class="calc-outputs">.*?</dl>', re.DOTALL)
    assert figures.findall(there["answer"]) == figures.findall(mine["answer"]) != []
    assert there["answer"].count("<math") > 5


def test_no_old_answer_beside_new_inputs(page: OpenPage) -> None:
    """Until Python has answered, the figures of the example are not to be seen."""
    opened = page("balance.html")
    opened.locator("#outlet_setting-outlet").fill("4.6")
    expect(form(opened, "outlet_setting")).to_have_attribute("data-state", "working")
    expect(opened.locator("#outlet_setting .calc-figure").first).to_be_hidden()


def test_the_working_is_of_the_figures_typed(page: OpenPage) -> None:
    """It comes a moment after the answer, or when the reader opens it, and stays open."""
    opened = page("balance.html")
    answered = change(opened, "outlet_setting", "outlet", "4.6")
    answered.locator(".calc-working > summary").click()
    put_in = answered.locator(".calc-put-in").nth(3)
    expect(put_in).to_contain_text("4.600")
    row = answered.locator(".calc-outputs > div").first.element_handle()
    change(opened, "outlet_setting", "outlet", "4.7")
    expect(put_in).to_contain_text("4.700")
    expect(put_in).to_be_visible()
    assert row.evaluate("(it) => it.isConnected")  # the figures in it have changed, not the row


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "Nothing stands here"),
        ("abc", "“abc” is not a number"),
        ("35 psi", "measures gauge pressure; here flow is wanted"),
        ("1,234", "Is “1,234” a thousand-something or a decimal?"),
        ("0", "Too small"),
        ("99999999999", "Too large: the arithmetic holds from 0.100 gpm to 100 gpm"),
        ("<img src=x onerror=alert(1)>", "is not a number"),
    ],
)
def test_bad_input_is_told_beside_its_field_and_kept(page: OpenPage, text: str, told: str) -> None:
    opened = page("balance.html")
    answered = change(opened, "outlet_setting", "outlet", text)
    field = answered.locator("[data-field=outlet]")
    expect(field.locator(".calc-error")).to_contain_text(told)
    box = field.locator("input").first
    expect(box).to_have_attribute("aria-invalid", "true")
    expect(box).to_have_value(text)
    expect(answered.locator(".calc-answer")).to_contain_text("No answer yet")
    expect(answered.locator(".calc-figure")).to_have_count(0)
    change(opened, "outlet_setting", "outlet", "5")
    expect(field.locator(".calc-error")).to_have_text("")


def test_units_convert_and_come_back_as_typed(page: OpenPage) -> None:
    opened = page("balance.html")
    change(opened, "outlet_setting", "outlet", "4.63")
    field = opened.locator("#outlet_setting [data-field=outlet]")
    before = output(opened, "outlet_setting", "margin")
    field.locator("select").select_option("L/min")
    expect(field.locator("input").first).to_have_value("17.53")
    expect(field.locator(".calc-reading")).to_have_text("=\u00a04.63\u00a0gpm")
    field.locator("select").select_option("gpm")
    expect(field.locator("input").first).to_have_value("4.63")
    assert output(opened, "outlet_setting", "margin") == before


def test_one_switch_turns_the_whole_page_to_si_and_back(page: OpenPage) -> None:
    opened = page("balance.html")
    change(opened, "outlet_setting", "outlet", "1 1/2")
    opened.locator("#outlet_setting [data-units][value=si]").check()
    expect(opened.locator("#outlet_setting-outlet")).to_have_value("5.678")
    expect(opened.locator("#pail_flow-pail")).to_have_value("18.93")
    opened.locator("#pail_flow [data-units][value=us]").check()
    expect(opened.locator("#outlet_setting-outlet")).to_have_value("1 1/2")
    expect(opened.locator("#pail_flow-pail")).to_have_value("5")


def test_a_unit_typed_into_the_field_is_understood(page: OpenPage) -> None:
    opened = page("balance.html")
    change(opened, "outlet_setting", "outlet", "20 L/min")
    field = opened.locator("#outlet_setting [data-field=outlet]")
    expect(field.locator(".calc-reading")).to_have_text("=\u00a05.28\u00a0gpm")


def test_runs_of_the_pail_are_counted_as_typed(page: OpenPage) -> None:
    opened = page("balance.html")
    opened.locator("#pail_flow-runs-2").fill("")
    answered = change(opened, "pail_flow", "runs-3", "")
    expect(answered.locator(".calc-finding").nth(1)).to_contain_text("Take 3 more")


def test_by_keyboard_alone(page: OpenPage) -> None:
    opened = page("balance.html")
    opened.locator("#tank_draw-worst_inlet").focus()
    opened.keyboard.press("Control+A")
    opened.keyboard.type("3")
    expect(form(opened, "tank_draw")).to_have_attribute("data-state", "answered", timeout=30_000)
    expect(opened.locator("#tank_draw .calc-finding").first).to_contain_text("Runs dry.")
    opened.keyboard.press("Tab")
    assert opened.evaluate("document.activeElement.tagName") == "SELECT"


def test_a_runtime_that_cannot_start_leaves_the_example(
    page: OpenPage, faults: list[str], site: Site
) -> None:
    opened = page("balance.html")
    opened.route("**/runtime/pyodide-*.js", lambda route: route.abort())
    opened.locator("#outlet_setting-outlet").fill("4")
    expect(form(opened, "outlet_setting")).to_have_attribute("data-state", "failed")
    expect(opened.locator("#outlet_setting .calc-state")).to_contain_text("not your figures")
    expect(opened.locator("#outlet_setting .calc-example")).to_be_visible()
    faults.clear()


@pytest.mark.parametrize("name", PAGES)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_serious(page: OpenPage, name: str, scheme: str) -> None:
    assert axe(page(name, color_scheme=scheme)) == []


def test_axe_would_find_a_field_without_its_label(page: OpenPage) -> None:
    opened = page("balance.html")
    opened.evaluate("document.querySelector('label[for=outlet_setting-outlet]').remove()")
    assert any("label" in each for each in axe(opened))


@pytest.mark.parametrize("name", PAGES)
@pytest.mark.parametrize("width", [320, 390])
def test_nothing_scrolls_sideways(page: OpenPage, name: str, width: int) -> None:
    opened = page(name, viewport={"width": width, "height": 800})
    for details in opened.locator("article details").all():
        details.evaluate("it => it.open = true")
    assert opened.evaluate("document.documentElement.scrollWidth") <= width


def test_targets_are_big_enough_for_a_thumb(page: OpenPage) -> None:
    opened = page("balance.html")
    small = opened.evaluate(
        """[...document.querySelectorAll(
             'calc-form input[type=text], calc-form select, calc-form summary,' +
             'calc-form label:has(input[type=radio])')]
           .filter((it) => it.checkVisibility() && it.getBoundingClientRect().height < 48)
           .map((it) => it.outerHTML.slice(0, 80))"""
    )
    assert small == []


def test_the_chapter_prints_with_its_working_and_figures(page: OpenPage, tmp_path: Path) -> None:
    opened = page("balance.html")
    opened.emulate_media(media="print")
    expect(opened.locator("#outlet_setting .calc-finding").first).to_be_visible()
    expect(opened.locator("#outlet_setting .calc-steps li").first).to_be_visible()
    assert opened.locator("#outlet_setting-outlet").is_visible()
    assert len(opened.pdf(path=tmp_path / "balance.pdf", format="Letter")) > 50_000
