"""Packages in an independent SCORM 1.2 runtime: begun, left, taken up, finished, looked at."""

import json
import re
import shutil
import zipfile
from collections.abc import Callable, Iterator
from functools import partial
from io import BytesIO
from pathlib import Path
from threading import Thread
from typing import Any, NamedTuple
from urllib.parse import quote

import pytest
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Frame, Page, expect

from build_scripts.scorm import zipped
from calc.coursework.deck import seat
from calc.coursework.helping import full_working, right_words
from calc.coursework.record import Sheet, Try, replayed, sheet
from calc.coursework.regrade import regraded, responses
from calc.coursework.sets import problem_set
from tests.browser.using import axe
from tests.conftest import PHONE, ROOT, Handler, Server
from tests.coursework.player import packed

pytestmark = pytest.mark.browser

BALANCE = problem_set("balance")
NUMBER = seat("", "1017")
RUNTIME = ROOT / "node_modules/scorm-again/dist/scorm12.js"
NEW: dict[str, Any] = {
    "core": {"student_id": "1017", "student_name": "invented", "credit": "credit"}
}
SPAN = re.compile(r"\d{4}:\d\d:\d\d\.\d\d")
type Launch = Callable[..., Page]


class Host(NamedTuple):
    folder: Path
    url: str


@pytest.fixture(scope="module")
def host(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Host]:
    """A folder served: the runtime, a page of an LMS, and packages unpacked beside them."""
    folder = tmp_path_factory.mktemp("lms")
    shutil.copy(RUNTIME, folder)
    shutil.copy(Path(__file__).parent / "lms.html", folder)
    unpack(packed("balance"), folder / "set")
    with Server(("127.0.0.1", 0), partial(Handler, directory=folder)) as server:
        Thread(target=server.serve_forever).start()
        yield Host(folder, f"http://127.0.0.1:{server.server_port}/")
        server.shutdown()


def unpack(data: bytes, folder: Path) -> None:
    with zipfile.ZipFile(BytesIO(data)) as archive:
        archive.extractall(folder)


@pytest.fixture
def launch(browser: Browser, host: Host, faults: list[str]) -> Iterator[Launch]:
    """Opens the LMS with a learner's values; without any it has no runtime."""
    contexts = list[BrowserContext]()

    def note_policy(said: ConsoleMessage) -> None:
        if "Content Security Policy" in said.text:
            faults.append(said.text)

    def opened(cmi: dict[str, Any] | None = None, no: tuple[str, ...] = (), **options: Any) -> Page:
        context = browser.new_context(**PHONE | options)
        contexts.append(context)
        context.on("weberror", lambda error: faults.append(str(error.error)))
        context.on("console", note_policy)
        context.on(
            "request",
            lambda asked: faults.append(asked.url) if not asked.url.startswith(host.url) else None,
        )
        page = context.new_page()
        page.goto(f"{host.url}lms.html#{quote(json.dumps({'cmi': cmi, 'no': no}))}")
        expect(page.frame_locator("iframe").locator("h2")).to_be_visible()
        return page

    yield opened
    for each in contexts:
        each.close()


def package(page: Page) -> Frame:
    return page.frames[-1]


def held(page: Page) -> dict[str, Any]:
    """What the runtime holds."""
    told = page.evaluate("JSON.parse(JSON.stringify(API.cmi))")
    assert isinstance(told, dict)
    return told


def calls(page: Page, name: str) -> list[list[str]]:
    return [each for each in page.evaluate("calls") if each[0] == name]


def leave(page: Page) -> dict[str, Any]:
    """Close the package as a phone does; what the runtime would give back next time."""
    page.evaluate("document.querySelector('iframe').remove()")
    kept = held(page)
    core = {key: kept["core"][key] for key in ("student_id", "lesson_status", "credit")}
    return {
        "core": core | {"score": kept["core"]["score"], "entry": "resume"},
        "suspend_data": kept["suspend_data"],
    }


def places(made: Sheet) -> list[tuple[str, str]]:
    return [*made.standings]


def answer(frame: Frame, each: Try) -> None:
    """Go to the question, type or pick, check."""
    at = places(sheet(BALANCE, NUMBER)).index((each.problem, each.question)) + 1
    frame.get_by_role("button", name=re.compile(rf"^Question {at}:")).click()
    if (pick := frame.locator(f"input[type=radio][value='{each.text}']")).count():
        pick.check()
    else:
        frame.locator("input[name=answer]").fill(each.text)
        frame.locator("select[name=unit]").select_option(each.unit)
    frame.locator("form .check").click()


def right_tries(made: Sheet) -> list[Try]:
    tries = []
    for (name, asked), standing in made.standings.items():
        question = standing.question
        if question.options:
            tries.append(Try(name, asked, str(question.right)))
        else:
            number, _, unit = right_words(question).rpartition("\u00a0")
            assert question.usual
            assert unit == question.usual.symbol
            tries.append(Try(name, asked, number, unit))
    return tries


def a_few(made: Sheet) -> list[Try]:
    """A slip, a wrong figure, then what follows from that one, and a wrong option."""
    cut_out = made.variants["cut_out"].question("Q_x")
    assert cut_out.usual
    slip = cut_out.usual.out_of_si(cut_out.slips[0][1])
    fact = made.variants["facts"].questions[0]
    wrong = next(each for each in fact.options if each != fact.right)
    return [
        Try("facts", fact.name, wrong),
        Try("cut_out", "Q_x", f"{slip:.4g}", cut_out.usual.symbol),
        Try("worst", "Q_w", "9.50", "gpm"),
        Try("worst", "Q_w", "9.60", "gpm"),
        Try("worst", "M", f"{9.6 - drawn_out(made):.4g}", "gpm"),
    ]


def drawn_out(made: Sheet) -> float:
    """The worst flow out of the sheet, as it is told there, gpm."""
    working = made.variants["worst"].working
    assert working
    return working.stands["Q_x"].value / 6.30902e-5


def test_a_sheet_from_start_to_finish(launch: Launch) -> None:
    """Python's marks in the runtime after each try; passed at the end, and closed once."""
    made = sheet(BALANCE, NUMBER)
    page = launch(NEW)
    frame = package(page)
    expect(frame.locator("header")).to_contain_text(f"Variant {NUMBER} of 400")
    expect(frame.locator("header")).to_contain_text(f"check code {made.code}")
    assert held(page)["core"]["lesson_status"] == "incomplete"
    assert held(page)["core"]["score"]["raw"] == ""
    tries = a_few(made)
    for at, each in enumerate(tries, 1):
        answer(frame, each)
        state = replayed(BALANCE, NUMBER, tries[:at])
        last = state.standings[each.problem, each.question].last
        assert last
        expect(frame.locator(".verdict")).to_contain_text(last.says)
        assert float(held(page)["core"]["score"]["raw"]) == pytest.approx(
            100 * state.score, abs=1e-4
        )
        assert calls(page, "LMSCommit")[-1][-1] == "true"
    assert held(page)["core"]["lesson_status"] == "incomplete"
    rest = [each for each in right_tries(made) if each[:2] != ("worst", "M")]
    for each in rest:
        answer(frame, each)
    state = replayed(BALANCE, NUMBER, tries + rest)
    core = held(page)["core"]
    assert float(core["score"]["raw"]) == pytest.approx(100 * state.score, abs=1e-4)
    assert core["lesson_status"] == "passed"
    frame.get_by_role("button", name="Finish").click()
    expect(frame.locator(".notices")).to_contain_text("Finished.")
    page.evaluate("document.querySelector('iframe').remove()")
    assert len(calls(page, "LMSFinish")) == 1
    (span,) = [each[2] for each in calls(page, "LMSSetValue") if each[1].endswith("session_time")]
    assert SPAN.fullmatch(span)
    assert not [each for each in page.evaluate("calls") if each[-1] != "true"]


def test_what_an_interaction_tells(launch: Launch) -> None:
    """The standard: an id of its own, a type, the answer in SI, a result, times."""
    made = sheet(BALANCE, NUMBER)
    page = launch(NEW)
    for each in a_few(made):
        answer(package(page), each)
    told = [*held(page)["interactions"].values()]
    assert [each["id"] for each in told] == [
        f"facts.{a_few(made)[0].question}.try1", "cut_out.Q_x.try1", "worst.Q_w.try1",
        "worst.Q_w.try2", "worst.M.try1",
    ]  # fmt: skip
    assert [each["type"] for each in told] == ["choice", *["numeric"] * 4]
    assert [each["result"] for each in told] == ["wrong", "0.3", "wrong", "wrong", "correct"]
    assert float(told[2]["student_response"]) == pytest.approx(9.5 * 6.30902e-5, rel=1e-5)


def test_left_and_taken_up_again(launch: Launch) -> None:
    """The same variant, marks, words and help; the LMS's score does not fall."""
    made = sheet(BALANCE, NUMBER)
    page = launch(NEW)
    for each in a_few(made):
        answer(package(page), each)
    kept = leave(page)
    again = launch(kept)
    frame = package(again)
    expect(frame.locator("header")).to_contain_text(f"Variant {NUMBER} of 400")
    state = replayed(BALANCE, NUMBER, a_few(made))
    expect(frame.locator(".marks")).to_contain_text(f"Score: {100 * state.score:.2f}"[:-1])
    at = places(made).index(("worst", "Q_w")) + 1
    frame.get_by_role("button", name=re.compile(rf"^Question {at}:")).click()
    expect(frame.locator("input[name=answer]")).to_have_value("9.60")
    expect(frame.locator("select[name=unit]")).to_have_value("gpm")
    expect(frame.locator(".help p")).to_have_count(5)  # the step, the formula, its three letters
    more = next(each for each in right_tries(made) if each[:2] == ("worst", "Q_w"))
    answer(frame, more)
    state = replayed(BALANCE, NUMBER, [*a_few(made), more])
    assert float(held(again)["core"]["score"]["raw"]) == pytest.approx(100 * state.score, abs=1e-4)


def test_looking_back_changes_nothing(launch: Launch) -> None:
    """Review: the answers stand, fields are closed, the runtime is told nothing."""
    page = launch(NEW)
    for each in right_tries(sheet(BALANCE, NUMBER))[:5]:
        answer(package(page), each)
    kept = leave(page)
    kept["core"]["lesson_mode"] = "review"
    again = launch(kept)
    frame = package(again)
    expect(frame.locator(".notices")).to_contain_text("You are looking back")
    frame.get_by_role("button", name=re.compile("^Question 4:")).click()
    expect(frame.locator("fieldset input").first).to_be_disabled()
    expect(frame.locator(".check")).to_be_hidden()
    again.evaluate("document.querySelector('iframe').remove()")
    assert [each[0] for each in again.evaluate("calls")] == ["LMSInitialize"]


def test_the_working_after_success(launch: Launch) -> None:
    """Python's full working, once all of a problem is right."""
    made = sheet(BALANCE, NUMBER)
    page = launch(NEW)
    frame = package(page)
    tries = [each for each in right_tries(made) if each.problem == "pail"]
    for each in tries:
        expect(frame.locator("details")).to_have_count(0)
        answer(frame, each)
    lines = frame.locator("details p").all_inner_texts()
    assert lines == full_working(made.variants["pail"])


@pytest.mark.parametrize("how", ["none", "says no", "other origin", "from a disk"])
def test_practice_without_a_runtime(how: str, launch: Launch, host: Host, browser: Browser) -> None:
    """Issue: the same page, and it says so. A variant can be chosen and is judged."""
    if how == "from a disk":
        context = browser.new_context(**PHONE)
        page = context.new_page()
        page.goto((host.folder / "set" / "index.html").as_uri())
        frame = page.main_frame
    else:
        page = launch(NEW if how == "says no" else None, no=("LMSInitialize",))
        frame = package(page)
        if how == "other origin":
            page.set_content(f'<iframe src="{host.url}set/index.html"></iframe>')
            page.frame_locator("iframe").locator("h2").wait_for()
            frame = package(page)
    expect(frame.locator(".notices")).to_contain_text("this is practice")
    frame.get_by_label("Another variant").fill(str(NUMBER))
    frame.get_by_role("button", name="Open").click()
    expect(frame.locator("header")).to_contain_text(f"Variant {NUMBER} of 400")
    for each in right_tries(sheet(BALANCE, NUMBER))[2:5]:
        answer(frame, each)
        expect(frame.locator(".verdict")).to_contain_text("Right.")
    assert not calls(page, "LMSSetValue") if how == "says no" else True
    page.context.close()


def test_more_than_an_lms_can_hold(launch: Launch) -> None:
    """The standard: 4096 characters of suspend_data, though this runtime takes 64000. What does
    not fit is said, and the score stays when the sheet is taken up again."""
    made = sheet(BALANCE, NUMBER)
    page = launch(NEW)
    frame = package(page)
    answer(frame, Try("worst", "Q_w", "9.5", "gpm"))
    frame.evaluate("""() => {
      const field = document.querySelector("[name=answer]");
      const form = document.querySelector("form");
      for (let at = 1; at <= 350; at += 1) { field.value = `${at}.125 gpm`; form.requestSubmit(); }
    }""")
    expect(frame.locator(".notices")).to_contain_text("The room that an LMS has")
    for each in [each for each in right_tries(made) if each.problem in ("pail", "cut_out")]:
        answer(frame, each)
    score = float(held(page)["core"]["score"]["raw"])
    assert score > 0
    lengths = dict[str, int]()
    for _, element, value, _ in calls(page, "LMSSetValue"):
        lengths[element] = max(lengths.get(element, 0), len(value))
    assert 4000 < lengths.pop("cmi.suspend_data") <= 4096
    assert max(lengths.values()) <= 255
    again = launch(leave(page))
    frame = package(again)
    expect(frame.locator(".marks")).to_contain_text(f"Score: {score:.2f}".rstrip("0").rstrip("."))
    answer(frame, right_tries(made)[0])
    assert float(held(again)["core"]["score"]["raw"]) >= round(score, 2)


def test_an_lms_that_refuses(launch: Launch) -> None:
    """By reason: what is not kept is said, and the page goes on."""
    page = launch(NEW, no=("LMSCommit", "LMSSetValue cmi.suspend_data"))
    frame = package(page)
    answer(frame, right_tries(sheet(BALANCE, NUMBER))[0])
    expect(frame.locator(".notices")).to_contain_text("The LMS did not keep this.")
    expect(frame.locator(".notices")).to_contain_text("does not take your answers")


@pytest.mark.parametrize(
    "kept", ["1~2020-01-01~5~~004a", "nothing of ours", "1~{}~5~~zz0", "1~{}~999~"]
)
def test_what_was_kept_does_not_fit(kept: str, launch: Launch) -> None:
    """By reason: another revision, another package's words, altered ones. The sheet begins anew."""
    page = launch({**NEW, "suspend_data": kept.format(BALANCE.revision)})
    expect(package(page).locator(".notices")).to_contain_text("You begin anew")
    expect(package(page).locator("header")).to_contain_text(f"Variant {NUMBER} of 400")


def test_without_answers_it_only_keeps(launch: Launch, host: Host, tmp_path: Path) -> None:
    """Issue: graded work. All is kept, nothing judged, no score; re-grading knows the file."""
    small = problem_set("open_tank_year")
    shutil.move(host.folder / "set", host.folder / "balance")
    try:
        unpack(zipped(small, answers=False, section="Monday"), host.folder / "set")
        page = launch(NEW)
        frame = package(page)
        number = seat("Monday", "1017")
        made = sheet(small, number)
        for at, standing in enumerate(made.standings.values(), 1):
            frame.get_by_role("button", name=re.compile(rf"^Question {at}:")).click()
            if standing.question.options:
                frame.locator("input[type=radio]").first.check()
            else:
                frame.locator("input[name=answer]").fill(right_words(standing.question))
            frame.locator("form .check").click()
            expect(frame.locator(".verdict")).to_contain_text("Kept.")
        core = held(page)["core"]
        assert (core["lesson_status"], core["score"]["raw"]) == ("completed", "")
        with page.expect_download() as download:
            frame.get_by_role("button", name="Save my answers").click()
        file = tmp_path / "response.json"
        download.value.save_as(file)
    finally:
        shutil.rmtree(host.folder / "set")
        shutil.move(host.folder / "balance", host.folder / "set")
    (grade,) = regraded(responses(file))
    assert not grade.remarks
    numbers = [each for each in grade.sheet.standings.values() if not each.question.options]
    assert all(each.best == 1 for each in numbers)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_anyone_can_use_it(scheme: str, launch: Launch, host: Host) -> None:
    """axe, on a phone: a question of recall, a miss with help, a right answer with its working."""
    page = launch(None, color_scheme=scheme)
    page.goto(f"{host.url}set/index.html")
    frame = page.main_frame
    frame.get_by_label("Another variant").fill(str(NUMBER))
    frame.get_by_role("button", name="Open").click()
    assert not axe(page)
    few = a_few(sheet(BALANCE, NUMBER))
    for each in [few[0], *few[1:2] * 3]:
        answer(frame, each)
        assert not axe(page)
    for each in right_tries(sheet(BALANCE, NUMBER))[3:5]:
        answer(frame, each)
    assert not axe(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    small = "[...document.querySelectorAll('button, select, input')].filter(e => e.offsetParent && "
    small += "e.type !== 'radio' && e.getBoundingClientRect().height < 48).length"
    assert page.evaluate(small) == 0
