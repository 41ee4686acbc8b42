"""A problem set on the page: on a phone, with the network off, through reload and refusal."""

import json
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Locator, Page, expect

from calc.coursework.record import sheet
from calc.coursework.regrade import regraded, responses
from calc.coursework.sets import problem_set
from calc.coursework.variants import Question
from calc.figures import written
from tests.browser.keeping import Host, desk, keep
from tests.browser.using import axe
from tests.conftest import OpenPage

pytestmark = pytest.mark.browser

SLOW = 90_000  # ms, for the first answer of a busy machine
PLACE = "coursework/problems/well_storage.html"
STORAGE = problem_set("well_storage")
T_F = "571"  # min, the right answer to t_f on variant 17: 200 gal / 0.35 gpm


def show(page: Page, number: int) -> None:
    page.locator("#course-number").fill(str(number))
    page.get_by_role("button", name="Show", exact=True).click()
    expect(said(page)).to_contain_text(f"This is variant {number}.", timeout=SLOW)


def said(page: Page) -> Locator:
    return page.locator("calc-course > [data-part=said]")


def question(page: Page, name: str) -> Locator:
    return page.locator(f"[data-question={name}]")


def give(page: Page, name: str, text: str, unit: str = "") -> Locator:
    """Write an answer, check it, and return what is told of it."""
    form = question(page, name)
    form.get_by_role("textbox").fill(text)
    form.get_by_role("combobox").select_option(unit)
    return check(form)


def check(form: Locator) -> Locator:
    form.get_by_role("button", name="Check").click()
    told = form.locator("[data-told]")
    expect(told.locator(".calc-finding")).to_be_visible(timeout=SLOW)
    return told


def solve(page: Page, problem: str, each: Question) -> None:
    """Give the right answer, in the unit in which a key prints it."""
    if each.options:
        form = page.locator(f"[data-problem={problem}][data-question={each.name}]")
        form.locator(f"label:has([value={each.right}])").click()
        told = check(form)
    else:
        assert each.usual
        assert isinstance(each.right, float)
        told = give(
            page, each.name, written(each.usual.out_of_si(each.right), 4), each.usual.symbol
        )
    expect(told).to_contain_text("Right")


def stories(page: Page) -> str:
    return page.locator("[data-part=sheet]").inner_text()


@pytest.mark.parametrize("width", [390, 320])
def test_on_a_phone_without_network(page: OpenPage, width: int) -> None:
    opened = page(PLACE, viewport={"width": width, "height": 700})
    show(opened, 17)
    opened.context.set_offline(True)
    expect(give(opened, "t_f", "1,234", "min")).to_contain_text("thousand")
    expect(give(opened, "t_f", "")).to_contain_text("Nothing stands here")
    expect(give(opened, "t_f", "twelve", "min")).not_to_contain_text("Tries")
    expect(give(opened, "t_f", "400")).to_contain_text("In which unit?")
    expect(question(opened, "t_f").get_by_role("textbox")).to_have_attribute("aria-invalid", "")
    expect(give(opened, "t_f", T_F, "h")).to_contain_text("Check the unit")
    for place, words in enumerate(("t_f = V_u / S", "A worked example"), 2):
        told = give(opened, "t_f", f"{place}1", "min")
        expect(told).to_contain_text(f"Tries: {place}")
        expect(told).to_contain_text(words)
    for problem, dealt in sheet(STORAGE, 17).variants.items():
        for each in dealt.questions:
            solve(opened, problem, each)
    expect(opened.locator("[data-part=score]")).to_contain_text("Marks: 11 of 11.")
    expect(opened.locator("[data-worked=turnover]")).to_contain_text("= 200 gal / 0.35 gpm")
    assert opened.evaluate("document.documentElement.scrollWidth") <= width
    assert axe(opened) == []
    opened.context.set_offline(False)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_nothing_is_wrong_for_those_who_cannot_see_it(page: OpenPage, scheme: str) -> None:
    opened = page(PLACE, color_scheme=scheme)
    assert axe(opened) == []
    show(opened, 3)
    opened.locator("calc-course summary").click()
    give(opened, "t_f", "1", "min")
    assert axe(opened) == []


@pytest.mark.parametrize("name", ["balance", "radon_sample"])
def test_the_browser_deals_what_python_deals(page: OpenPage, name: str) -> None:
    opened = page(f"coursework/problems/{name}.html")
    for number in (1, 230, 400):
        show(opened, number)
        made = sheet(problem_set(name), number)
        told = " ".join(stories(opened).split())
        for dealt in made.variants.values():
            assert " ".join(dealt.text.split()) in told
        expect(opened.locator("[data-part=score]")).to_contain_text(made.code)


def test_a_school_s_word_deals_other_numbers(page: OpenPage) -> None:
    opened = page(PLACE)
    opened.locator("calc-course summary").click()
    opened.locator("#course-word").fill("heron")
    show(opened, 17)
    made = sheet(STORAGE, 17, "heron")
    told = " ".join(stories(opened).split())
    assert " ".join(made.variants["turnover"].text.split()) in told
    assert made.code in opened.locator("[data-part=score]").inner_text()


def test_a_reload_loses_nothing(page: OpenPage) -> None:
    opened = page(PLACE)
    show(opened, 17)
    give(opened, "t_f", T_F, "min")
    question(opened, "t_s").get_by_role("textbox").fill("12.5")
    question(opened, "t_s").get_by_role("combobox").select_option("h")
    opened.locator("[data-problem=facts][data-question=q2] label").nth(1).click()
    opened.reload()
    expect(said(opened)).to_contain_text("This is variant 17.", timeout=SLOW)
    expect(question(opened, "t_f").locator("[data-told]")).to_contain_text("Right.")
    expect(question(opened, "t_f").get_by_role("textbox")).to_have_value(T_F)
    expect(question(opened, "t_s").get_by_role("textbox")).to_have_value("12.5")
    expect(question(opened, "t_s").get_by_role("combobox")).to_have_value("h")
    picked = opened.locator("[data-problem=facts][data-question=q2] input").nth(1)
    expect(picked).to_be_checked()


def test_a_verdict_is_gone_once_the_answer_beside_it_changes(page: OpenPage) -> None:
    opened = page(PLACE)
    show(opened, 17)
    told = give(opened, "t_f", T_F, "min")
    expect(told).to_contain_text("Right.")
    question(opened, "t_f").get_by_role("textbox").fill("44")
    expect(told.locator(".calc-finding")).to_be_hidden()


def test_begun_anew_and_brought_back(page: OpenPage) -> None:
    opened = page(PLACE)
    show(opened, 17)
    give(opened, "t_f", T_F, "min")
    score = opened.locator("[data-part=score]")
    expect(score).to_contain_text("Marks: 1 of 11.")
    opened.get_by_role("button", name="Start anew").click()
    expect(score).to_contain_text("Marks: 0 of 11.")
    expect(question(opened, "t_f").get_by_role("textbox")).to_have_value("")
    opened.get_by_role("button", name="Bring the tries back").click()
    expect(score).to_contain_text("Marks: 1 of 11.")
    expect(opened.get_by_role("button", name="Bring the tries back")).to_be_hidden()


def test_the_next_variant_keeps_what_was_done_on_the_last(page: OpenPage) -> None:
    opened = page(PLACE)
    show(opened, 400)
    opened.get_by_role("button", name="Next variant").click()
    expect(said(opened)).to_contain_text("This is variant 1.")
    show(opened, 17)
    give(opened, "t_f", T_F, "min")
    show(opened, 18)
    expect(opened.locator("[data-part=score]")).to_contain_text("Marks: 0 of 11.")
    show(opened, 17)
    expect(opened.locator("[data-part=score]")).to_contain_text("Marks: 1 of 11.")


def test_no_such_variant(page: OpenPage) -> None:
    opened = page(PLACE)
    opened.locator("#course-number").fill("401")
    opened.get_by_role("button", name="Show", exact=True).click()
    expect(said(opened)).to_contain_text("from 1 to 400", timeout=SLOW)
    expect(opened.locator("[data-part=example]")).to_be_visible()


def test_two_tabs_on_one_sheet_keep_the_tries_of_both(page: OpenPage) -> None:
    opened = page(PLACE)
    show(opened, 17)
    other = opened.context.new_page()
    other.goto(opened.url)
    expect(said(other)).to_contain_text("This is variant 17.", timeout=SLOW)
    give(opened, "t_f", T_F, "min")
    give(other, "t_s", "1", "h")
    kept = json.loads(opened.evaluate("localStorage.getItem('coursework-well_storage')"))
    (progress,) = kept["sheets"].values()
    assert [each[1] for each in progress["tries"]] == ["t_f", "t_s"]


def test_a_browser_that_keeps_nothing_says_so_and_works_on(page: OpenPage) -> None:
    opened = page(PLACE)
    opened.add_init_script(
        "Storage.prototype.setItem = () => { throw new DOMException('', 'QuotaExceededError'); }"
    )
    opened.reload()
    show(opened, 17)
    expect(said(opened)).to_contain_text("keeps nothing")
    give(opened, "t_f", "1", "min")
    expect(give(opened, "t_f", "2", "min")).to_contain_text("Tries: 2")


def test_responses_are_saved_and_graded_again(page: OpenPage, tmp_path: Path) -> None:
    opened = page(PLACE)
    opened.locator("calc-course summary").click()
    opened.get_by_role("button", name="Deal my variant").click()
    expect(said(opened)).to_contain_text("Write first", timeout=SLOW)
    opened.locator("#course-section").fill("Monday")
    opened.locator("#course-learner").fill("1017")
    opened.get_by_role("button", name="Deal my variant").click()
    expect(said(opened)).to_contain_text("This is variant", timeout=SLOW)
    number = int(opened.locator("#course-number").input_value())
    solve(opened, "turnover", sheet(STORAGE, number).variants["turnover"].question("t_f"))
    give(opened, "t_s", "0.001", "h")
    with opened.expect_download() as saved:
        opened.get_by_role("button", name="Save my responses").click()
    file = tmp_path / saved.value.suggested_filename
    saved.value.save_as(file)
    (grade,) = regraded(responses(file))
    assert grade.remarks == ()
    assert (grade.response.learner, grade.response.number) == ("1017", number)
    assert grade.sheet.marks == 1


def test_with_the_server_gone_a_kept_book_deals_and_checks(
    device: BrowserContext, host: Host
) -> None:
    page = desk(device, host)
    keep(page)
    host.stop()
    page.goto(host.url + PLACE)
    show(page, 17)
    expect(give(page, "t_f", T_F, "min")).to_contain_text("Right.")


def test_without_scripts_variant_0_stands_there_worked(page: OpenPage) -> None:
    opened = page(PLACE, java_script_enabled=False)
    expect(opened.locator("[data-part=example]")).to_be_visible()
    expect(opened.locator("[data-part=desk]")).to_be_hidden()
    expect(opened.locator("[data-part=example]")).to_contain_text("Working")
