"""The edition to hand out, read from a disk in Chromium, Firefox and WebKitGTK."""

import html
import json
import re
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any
from urllib.parse import unquote_plus

import pytest

from calc.views.browser import reply
from tests.browser.engines import ENGINES, RECORDER, STEPS, Chromium, Engine
from tests.browser.test_handout import make, unzip
from tests.conftest import Site

pytestmark = pytest.mark.browser

type Read = Callable[[str, str], Any]


@pytest.fixture(scope="module")
def folder(site: Site, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The unzipped copy, each of its pages noting its faults."""
    target = tmp_path_factory.mktemp("handout")
    make(site, target / "book.zip")
    copy = unzip(target / "book.zip", target)
    for page in copy.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        marked = text.replace('<meta charset="utf-8">', f'<meta charset="utf-8">{RECORDER}', 1)
        assert marked != text
        page.write_text(marked, encoding="utf-8")
    return copy


@pytest.fixture(scope="module", params=["Chromium", *ENGINES])
def engine(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Engine]:
    if request.param == "Chromium":
        page = request.getfixturevalue("browser").new_page()
        yield Chromium(page)
        page.close()
        return
    program, start = ENGINES[request.param]
    if shutil.which(program) is None:
        pytest.skip(f"NOT TESTED IN {request.param.upper()}: {program} is not installed.")
    with start(tmp_path_factory.mktemp("profile")) as started:
        yield started


@pytest.fixture
def read(engine: Engine, folder: Path) -> Read:
    return reader(engine, folder)


def reader(engine: Engine, folder: Path) -> Read:
    """Opens a page, does something there, and returns what the script returns."""

    def do(page: str, script: str) -> Any:
        engine.open("about:blank")
        engine.open(f"{folder.as_uri()}/{page}")
        found = engine.run(STEPS + script)
        assert engine.run("return faults") == engine.faults == []
        return found

    return do


def words(text: str) -> str:
    """HTML as its reader sees it, whatever a browser writes for a space."""
    return re.sub(r"\s+", " ", html.unescape(re.sub(r"<[^>]+>", " ", text))).strip()


def test_the_answer_is_that_of_cpython(read: Read) -> None:
    hash_, shown = read(
        "balance.html",
        """const form = await change("outlet_setting", "outlet", "4.6");
        return [location.hash, form.querySelector(".calc-outputs").outerHTML]""",
    )
    case = [unquote_plus(word) for word in hash_[1:].split("&")]
    assert case == ["outlet_setting", "outlet=4.6 gpm"]
    request = {"calculator": "outlet_setting", "key": case[0], "root": "", "units": "us"}
    mine = json.loads(reply(json.dumps(request | {"words": case})))["answer"]
    found = re.search(r'<dl class="calc-outputs">.*?</dl>', mine, re.DOTALL)
    assert found
    assert words(shown) == words(found[0])


def test_search_finds_pages_of_this_copy(read: Read, folder: Path) -> None:
    found = read(
        "reference/units.html",
        """find("#__search").click();
        const box = find("[data-md-component=search-query]");
        box.value = "outlet";
        box.dispatchEvent(new Event("keyup", { bubbles: true }));
        await until(() => find(".md-search-result__link"));
        return [...document.querySelectorAll(".md-search-result__link")].map(({ href }) => href)""",
    )
    pages = {each.split("?")[0] for each in found}
    assert f"{folder.as_uri()}/balance.html" in pages
    assert all(Path(page.removeprefix("file://")).is_file() for page in pages)


def test_a_link_holds_the_figures(read: Read) -> None:
    shown = read(
        "balance.html#outlet_setting&outlet=1+1%2F2+gpm",
        """await until(() => find("#outlet_setting calc-form").dataset.state === "answered");
        return find("#outlet_setting-outlet").value""",
    )
    assert shown == "1 1/2"


def test_a_record_is_made_with_its_code(read: Read) -> None:
    sheet = read(
        "balance.html",
        """window.print = () => {};
        await customElements.whenDefined("calc-form");
        find("#outlet_setting [data-do=record]").click();
        await until(() => find(".sheet .record-code svg"));
        return find(".sheet").textContent""",
    )
    assert "Signature" in sheet


def test_a_page_left_while_it_reads_does_not_stop_the_next(read: Read, folder: Path) -> None:
    """WebKit answers nothing any more after that, unless what was under way is undone."""
    (folder / "leaving.html").write_text(LEAVING, encoding="utf-8")
    assert read("leaving.html", "return await until(() => answered > 200 && asked - answered)") > 0
    assert "is the job in use" in read("jobs.html", START_JOB)


# It never stops asking for the jobs: whenever it is left, some question is under way.
LEAVING = f"""<!doctype html>
<meta charset="utf-8">
{RECORDER}
<title>Left while it reads</title>
<body>
<iframe src="storage.html"></iframe>
<script>
  let asked = 0;
  let answered = 0;
  const {{ port1, port2 }} = new MessageChannel();
  function ask() {{
    port1.postMessage({{ number: ++asked, what: "entries", words: [["pail-and-timer", "jobs"]] }});
  }}
  port1.onmessage = () => (answered++, ask());
  document.querySelector("iframe").onload = ({{ target }}) => {{
    target.contentWindow.postMessage("", "*", [port2]);
    for (let i = 0; i < 50; i++) ask();
  }};
</script>
"""

START_JOB = """await customElements.whenDefined("calc-jobs");
    find("#job-name").value = "Quarry Road";
    find("[data-do=start]").click();
    const read = (part) => find(`[data-part=${part}]`).textContent.trim();
    await until(() => read("said") && (read("values") || read("kept")));
    return read("kept") || read("said")"""


def test_units_and_jobs_go_from_page_to_page(read: Read) -> None:
    """To Firefox every file is a site of its own, with a storage of its own."""
    assert "is the job in use" in read("jobs.html", START_JOB)
    kept = read(
        "balance.html",
        """await change("outlet_setting", "house_tank", "33");
        find("#outlet_setting .calc-job summary").click();
        await until(() => find("#outlet_setting [data-keep]:checked"));
        find("#outlet_setting [data-do=job-keep]").click();
        const kept = await until(() => find("#outlet_setting [data-told]")?.textContent);
        find("#outlet_setting [data-units][value=si]").click();
        await until(() => find("#outlet_setting calc-form").dataset.state === "answered");
        return kept""",
    )
    assert "Kept in Quarry Road" in kept
    values, units = read(
        "jobs.html",
        """const values = await until(() => find("[data-part=values]").textContent.trim());
        return [values, handout.choices.getItem("units")]""",
    )
    assert ("33\u00a0gal" in values, units) == (True, "si")
