"""The edition to hand out, read from a disk in Chromium."""

import hashlib
import shutil
import subprocess
import sys
import zipfile
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any
from urllib.parse import unquote

import pytest
from playwright.sync_api import Browser, ConsoleMessage, Page, Request, WebError, expect
from pypdf import PdfReader

from build_scripts.handout.page import from_disk
from tests.browser.test_coursework import T_F, give, question, said, show
from tests.browser.test_engine_page import start_job
from tests.browser.using import change, form
from tests.conftest import PHONE, ROOT, OpenPage, Site

pytestmark = pytest.mark.browser

SLOW = 30_000  # ms, for the first answer of a busy machine


@pytest.fixture(scope="module")
def book(site: Site, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The zip, made as it is made for readers."""
    path = tmp_path_factory.mktemp("handout") / "book.zip"
    make(site, path)
    return path


@pytest.fixture(scope="module")
def folder(book: Path) -> Path:
    return unzip(book, book.parent)


@pytest.fixture
def copy(folder: Path, browser: Browser, faults: list[str]) -> Iterator[OpenPage]:
    """Opens a page from the unzipped folder. Whatever a browser has to say is a fault."""
    contexts = []

    def note_request(request: Request) -> None:
        if not request.url.startswith(("file:", "blob:", "data:")):
            faults.append(f"left the disk for {request.url}")

    def note_message(message: ConsoleMessage) -> None:
        faults.append(f"{message.type}: {message.text}")

    def note_error(error: WebError) -> None:
        faults.append(f"page error: {error.error}")

    def open_page(path: str = "index.html", script: str = "", **options: Any) -> Page:
        context = browser.new_context(**(PHONE | options))
        contexts.append(context)
        context.on("request", note_request)
        context.on("console", note_message)
        context.on("weberror", note_error)
        context.add_init_script(script)
        opened = context.new_page()
        opened.goto(f"{folder.as_uri()}/{path}")
        return opened

    yield open_page
    for context in contexts:
        context.close()


def make(site: Site, path: Path) -> None:
    command = [sys.executable, "-m", "build_scripts.handout", str(site.folder), str(path)]
    subprocess.run(command, cwd=ROOT, check=True)


def unzip(book: Path, target: Path) -> Path:
    with zipfile.ZipFile(book) as packed:
        packed.extractall(target)
        return target / packed.namelist()[0].split("/")[0]


def test_a_policy_written_into_a_page_is_taken_out() -> None:
    """It allows a worker from 'self', and here one starts from a Blob."""
    policy = """<meta http-equiv="Content-Security-Policy" content="worker-src 'self'">\n"""
    theme = '<script src="assets/javascripts/bundle.1.min.js"></script>'
    ours = '<script src="app/handout.js"></script>\n      '
    assert from_disk(policy + theme, "app/handout.js") == ours + theme


def test_a_page_without_the_scripts_of_the_theme_is_refused() -> None:
    with pytest.raises(RuntimeError, match="0 times"):
        from_disk("<html></html>", "app/handout.js")


def test_the_zip_says_how_to_open_it_and_what_is_in_it(folder: Path) -> None:
    assert "Unzip the whole folder first" in (folder / "README.txt").read_text()
    lines = (folder / "SHA256SUMS").read_text().splitlines()
    sums = {name: sha256 for sha256, name in (line.split("  ") for line in lines)}
    files = {f.relative_to(folder).as_posix(): f for f in folder.rglob("*") if f.is_file()}
    assert files.keys() - sums.keys() == {"SHA256SUMS"}
    for name, wanted in sums.items():
        assert hashlib.sha256(files[name].read_bytes()).hexdigest() == wanted, name


def test_the_same_site_gives_the_same_zip(site: Site, book: Path, tmp_path: Path) -> None:
    make(site, tmp_path / "again.zip")
    assert (tmp_path / "again.zip").read_bytes() == book.read_bytes()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_page_opens_on_a_phone_without_a_word_from_the_browser(
    copy: OpenPage, folder: Path, scheme: str
) -> None:
    opened = copy(color_scheme=scheme)
    for file in sorted(folder.rglob("*.html")):
        opened.goto(file.as_uri())
        expect(opened.locator("iframe, a[href='index.html']").first).to_be_attached()
        links = opened.evaluate("[...document.links].map(({ href }) => href.split('#')[0])")
        for link in {each for each in links if each.startswith("file:")}:
            assert Path(unquote(link.removeprefix("file://"))).is_file(), f"{file}: {link}"
        assert opened.evaluate("document.documentElement.scrollWidth") <= PHONE["viewport"]["width"]


def test_a_problem_set_is_dealt_checked_and_kept(copy: OpenPage) -> None:
    page = copy("coursework/problems/well_storage.html")
    show(page, 17)
    expect(give(page, "t_f", T_F, "min")).to_contain_text("Right.")
    page.reload()
    expect(said(page)).to_contain_text("This is variant 17.", timeout=SLOW)
    expect(question(page, "t_f").locator("[data-told]")).to_contain_text("Right.")


def test_a_copy_on_a_disk_offers_nothing_to_keep(copy: OpenPage) -> None:
    opened = copy("offline.html")
    expect(opened.locator("[data-part=state]")).to_contain_text("is whole as it is")
    expect(opened.locator("[data-part=can]")).to_be_hidden()
    expect(opened.locator("offline-line")).to_have_count(0)


def test_a_job_chosen_in_another_window_is_the_one_in_use(copy: OpenPage, folder: Path) -> None:
    opened = copy("balance.html")
    panel = opened.locator("#outlet_setting .calc-job")
    panel.locator("summary").click()
    expect(panel).to_contain_text("No job is chosen", timeout=SLOW)
    panel.locator("summary").click()
    other = opened.context.new_page()
    other.goto(f"{folder.as_uri()}/jobs.html")
    start_job(other, "November")
    panel.locator("summary").click()
    expect(panel).to_contain_text("November", timeout=SLOW)


@pytest.mark.parametrize("what", ["record", "blank"])
def test_a_record_prints_on_one_page_with_its_code(copy: OpenPage, what: str) -> None:
    opened = copy("balance.html", script="window.print = () => {}")
    opened.locator(f"#outlet_setting [data-do={what}]").click()
    expect(opened.locator(".sheet .record-code svg")).to_have_count(1, timeout=SLOW)
    printed = PdfReader(BytesIO(opened.pdf(format="Letter")))
    assert len(printed.pages) == 1
    assert "Signature" in printed.pages[0].extract_text()


def test_a_reader_is_told_if_storage_is_refused_and_calculates(
    copy: OpenPage, faults: list[str]
) -> None:
    refuse = """for (const name of ["localStorage", "indexedDB"]) {
      Object.defineProperty(window, name, { get() { throw new Error("storage is off"); } });
    }"""
    opened = copy("jobs.html", script=refuse)
    expect(opened.locator("[data-part=kept]")).to_contain_text(
        "refuses to keep anything (storage is off)", timeout=SLOW
    )
    opened.goto(opened.url.replace("jobs", "balance"))
    change(opened, "outlet_setting", "outlet", "4.6")
    assert set(faults) == {"page error: storage is off"}  # the theme's, for its light or dark
    faults.clear()


@pytest.mark.parametrize(
    ("missing", "told"),
    [("runtime/calc-*.zip.js", "unzip the whole folder"), ("app/worker.js.js", "app/worker.js.js")],
)
def test_a_copy_that_is_not_whole_says_what_is_missing(
    copy: OpenPage, folder: Path, tmp_path: Path, faults: list[str], missing: str, told: str
) -> None:
    broken = shutil.copytree(folder, tmp_path / "broken")
    next(broken.glob(f"embedded/{missing}")).unlink()
    opened = copy()
    opened.goto(f"{broken.as_uri()}/balance.html")
    opened.locator("#outlet_setting-outlet").fill("4.6")
    expect(form(opened, "outlet_setting")).to_have_attribute("data-state", "failed", timeout=SLOW)
    expect(opened.locator("#outlet_setting .calc-state")).to_contain_text(told)
    assert any("ERR_FILE_NOT_FOUND" in fault for fault in faults)
    faults.clear()


def test_without_its_storage_page_it_calculates_and_says_what_it_cannot(
    copy: OpenPage, folder: Path, tmp_path: Path, faults: list[str]
) -> None:
    broken = shutil.copytree(folder, tmp_path / "broken")
    (broken / "storage.html").unlink()
    opened = copy()
    opened.goto(f"{broken.as_uri()}/jobs.html")
    expect(opened.locator("[data-part=kept]")).to_contain_text("storage.html", timeout=SLOW)
    opened.goto(f"{broken.as_uri()}/balance.html")
    expect(form(opened, "outlet_setting").locator(".calc-tools")).to_be_visible(timeout=SLOW)
    change(opened, "outlet_setting", "outlet", "4.6")
    assert all("ERR_FILE_NOT_FOUND" in fault for fault in faults)
    faults.clear()
