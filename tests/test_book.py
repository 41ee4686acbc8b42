"""The printed edition and the EPUB, made from the built handbook."""

import re
import shutil
import subprocess
import zipfile
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple
from xml.etree.ElementTree import Element, fromstring

import pytest
from playwright.sync_api import Browser
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from build_scripts.book import epub, index, pdf, whole
from build_scripts.book.paper import CONTROLS, on_paper
from build_scripts.book.tree import as_xhtml, classes, read, text
from build_scripts.book.whole import Book
from calc import EDITION
from tests.conftest import Site
from tests.test_drawings import NAMES, drawn

EPUBCHECK = Path("/usr/share/java/epubcheck.jar")
MM = 72 / 25.4
PAPERS = {"Letter": (612, 792), "A4": (210 * MM, 297 * MM)}
XHTML = "{http://www.w3.org/1999/xhtml}"


class Printed(NamedTuple):
    """A printed edition, and the words of each page."""

    paper: str
    reader: PdfReader
    pages: list[str]

    def on(self, number: int) -> str:
        return self.pages[number - 1]


@pytest.fixture(scope="module")
def book(site: Site) -> Book:
    return whole.book(site.folder)


@pytest.fixture(scope="module", params=PAPERS)
def printed(
    request: pytest.FixtureRequest, book: Book, tmp_path_factory: pytest.TempPathFactory
) -> Printed:
    target = tmp_path_factory.mktemp("book") / f"{request.param}.pdf"
    pdf.write(book, target, request.param)
    reader = PdfReader(target)
    return Printed(request.param, reader, [plain(page.extract_text()) for page in reader.pages])


@pytest.fixture(scope="module")
def epub_file(book: Book, tmp_path_factory: pytest.TempPathFactory) -> Path:
    target = tmp_path_factory.mktemp("book") / "book.epub"
    epub.write(book, target)
    return target


def plain(said: str) -> str:
    return " ".join(said.replace("\u00a0", " ").split())


def tops(reader: PdfReader) -> list[str]:
    return [str(entry.title) for entry in reader.outline if not isinstance(entry, list)]


def below(reader: PdfReader, *titles: str) -> list[str]:
    """The outline's entries right under one, which is found by its title and those over it."""
    entries: list[Any] = reader.outline
    for title in titles:
        place = next(
            n
            for n, each in enumerate(entries)
            if not isinstance(each, list) and each.title == title
        )
        branch = entries[place + 1]
        assert isinstance(branch, list)
        entries = branch
    return [str(each.title) for each in entries if not isinstance(each, list)]


def test_every_page_has_the_size_asked_for(printed: Printed) -> None:
    wide, high = PAPERS[printed.paper]
    for page in printed.reader.pages:
        assert float(page.mediabox.width) == pytest.approx(wide, abs=1)
        assert float(page.mediabox.height) == pytest.approx(high, abs=1)


def test_the_outline_follows_the_navigation(printed: Printed, book: Book) -> None:
    chapters = [each.title for each in book.chapters if each.depth == 0]
    assert "Open tank" in chapters
    assert tops(printed.reader) == ["Contents", *chapters, "Index"]
    parts = ["Calculators", "Glossary", "Units", "Words", "Sources", "Without a source read",
             "Check values", "Host it yourself"]  # fmt: skip
    assert below(printed.reader, "Reference") == parts
    first = "The open tank: what enters and what leaves"
    assert below(printed.reader, "Open tank")[0] == first
    sections = below(printed.reader, "Open tank", first)
    assert sections[:2] == ["What you are looking at", "How the tank runs dry"]


def test_the_contents_name_the_page_on_which_each_heading_stands(
    printed: Printed, book: Book
) -> None:
    listed = " ".join(page for page in printed.pages if "Pail and Timer Contents" in page[:40])
    for title in ["What to know", "Units", "Index",  # sections of a chapter that is no part's
                  *(each.title for each in book.chapters[1:])]:  # fmt: skip
        found = re.search(rf"{re.escape(title)} (\d+)\b", listed)
        assert found, f"{title} is not in the contents"
        assert title in printed.on(int(found[1]))


def test_a_link_to_another_chapter_names_its_page(printed: Printed) -> None:
    (met,) = (each for each in printed.pages if "Start with what you meet Air, or no water" in each)
    for title in (
        "how the tank runs dry",
        "the worst inlet decides",
        "where the outlet limit belongs",
    ):
        found = re.search(rf"{title} \(p\. (\d+)\)", met, re.IGNORECASE)
        assert found
        assert title in printed.on(int(found[1])).casefold()


def test_each_page_bears_the_head_of_its_chapter_its_number_and_the_edition(
    printed: Printed, book: Book
) -> None:
    edition = f"edition {EDITION} of {book.date}"
    assert all(edition in page for page in printed.pages[1:])
    bare = (plain(page.replace(edition, "")) for page in printed.pages)
    heads = {n: each for n, each in enumerate(bare, 1) if n > 1}
    for number, page in heads.items():
        assert page.startswith("Pail and Timer ")
        assert re.search(rf"\b{number}\b", page[:120] + page[-8:])
    start = next(n for n, each in heads.items() if "How the tank runs dry Pump 2" in each)
    end = next(n for n, each in heads.items() if "Check yourself 1." in each)
    assert end > start
    for number in range(start, end + 1):
        assert (
            heads[number]
            .replace(str(number), "")
            .strip()
            .startswith("Pail and Timer The open tank")
        )


def test_a_screen_reader_gets_structure_language_and_title(printed: Printed) -> None:
    root = printed.reader.root_object
    marked = root["/MarkInfo"]
    assert isinstance(marked, DictionaryObject)
    assert marked["/Marked"]
    assert "/StructTreeRoot" in root
    assert len(list(structure(printed.reader))) > 1000
    assert str(root["/Lang"]) == "en"
    assert printed.reader.metadata
    assert printed.reader.metadata.title == "Pail and Timer"


def test_drawings_charts_and_formulas_say_what_they_show(printed: Printed) -> None:
    said = [str(each.get("/Alt", "")) for each in structure(printed.reader)]
    assert "The open aerated tank between two pumps" in said
    assert "Water above the intake through the draw" in said
    assert "Q = V / t" in said


def structure(reader: PdfReader) -> Iterator[dict[str, object]]:
    for number in sorted({*reader.xref[0], *reader.xref_objStm}):
        thing = reader.get_object(number)
        if isinstance(thing, dict) and thing.get("/Type") == "/StructElem":
            yield thing


def test_nothing_is_left_to_press_or_fill_in(printed: Printed, book: Book) -> None:
    assert "/AcroForm" not in printed.reader.root_object
    for chapter in book.chapters:
        tags = {each.tag for each in chapter.body.iter()}
        assert not tags & (CONTROLS | {"form", "details", "script"})
        assert not [tag for tag in tags if "-" in tag]
    text_of_all = " ".join(printed.pages)
    assert text_of_all.count("Copy link") == 1  # the page on wrong numbers speaks of it
    assert "becomes your answer" not in text_of_all


def test_every_drawing_is_drawn_with_lines(printed: Printed, book: Book) -> None:
    """Chromium prints a pattern as a picture, and the book was 92 MB."""
    titles = {title.text for chapter in book.chapters for title in chapter.body.iter("title")}
    assert {drawn(name)[0].text for name in NAMES} <= titles
    assert not [page for page in printed.reader.pages if page.images]


def test_no_word_of_a_chapter_is_lost(printed: Printed, book: Book) -> None:
    wanted: Counter[str] = Counter()
    for chapter in book.chapters:
        wanted += Counter(words(shown(chapter.body)))
    got = Counter(words(" ".join(printed.pages)))
    assert len(wanted) > 500
    assert {word: n for word, n in wanted.items() if got[word] < n} == {}


def words(said: str) -> list[str]:
    return re.findall(r"[A-Za-z]{4,}", said)


def shown(element: Element) -> str:
    """What is printed of an element as words: no formula, drawing, or points of a chart.

    Chromium prints letters with a halo as outlines; a drawing's description stands for them.
    """
    if element.tag in {"svg", "math"} or element.find("table/caption") is not None:
        return f" {element.tail or ''}"
    inside = "".join(map(shown, element))
    return f"{element.text or ''} {inside} {element.tail or ''}"


def test_the_index_names_the_pages_on_which_a_word_stands(printed: Printed) -> None:
    listed = " ".join(page for page in printed.pages if "Pail and Timer Index" in page[:40])
    for entry in ("Blower", "Float valve", "Needle valve", "Showerhead", "Neutralizer",
                  "Its pre-charge", "Worst flow in", "Common mistakes"):  # fmt: skip
        found = re.search(rf"{entry} (\d+(?:, \d+)*)", listed)
        assert found, f"{entry} is not in the index"
        for page in found[1].split(", "):
            assert entry.casefold() in printed.on(int(page)).casefold(), (entry, page)


def test_a_word_found_once_is_in_the_index_once(printed: Printed) -> None:
    """By a search of the pages, not of the book: terms that stand on one page of it."""
    first = next(n for n, page in enumerate(printed.pages) if "Contents" in page[:60])
    last = next(n for n, page in enumerate(printed.pages) if "Reference Calculators" in page)
    listed = " ".join(page for page in printed.pages if "Pail and Timer Index" in page[:40])
    chapters = {n: printed.pages[n].casefold() for n in range(first + 1, last)}
    found = 0
    for term, *_ in index.terms():
        pages = [n + 1 for n, page in chapters.items() if term in page]
        entry = f"{term[:1].upper()}{term[1:]} "
        if len(pages) == 1 and entry in listed:
            found += 1
            assert f"{entry}{pages[0]} " in listed, (term, pages)
    assert found > 5


def test_every_part_of_a_drawing_finds_what_it_names(book: Book) -> None:
    html = as_xhtml(whole.document(book, {}, "A4"))
    named = re.findall(r'<use\b[^>]*\bhref="#([^"]+)"', html)
    named += re.findall(r"url\(#([^)]+)\)", html)
    named += " ".join(re.findall(r'aria-(?:labelled|described)by="([^"]+)"', html)).split()
    ids = re.findall(r'\bid="([^"]+)"', html)
    assert len(named) > 20
    assert set(named) <= set(ids)
    assert len(ids) == len(set(ids))


def test_a_link_with_a_case_leads_to_its_calculator(book: Book) -> None:
    """The chapter on diagnosis: on paper a filled-in form is the place where it stands."""
    (chapter,) = (each for each in book.chapters if each.path == "well/diagnosis.html")
    ids = {each.get("id") for other in book.chapters for each in other.body.iter()}
    hrefs = [a.attrib["href"] for a in chapter.body.iter("a") if "href" in a.attrib]
    led = [href for href in hrefs if href.endswith("tank_draw")]
    assert led
    assert {href.removeprefix("#") for href in led} <= ids


def test_a_form_becomes_a_table_of_its_figures(book: Book, site: Site) -> None:
    html = (site.folder / "balance.html").read_text(encoding="utf-8")
    field = html.partition('data-field="service_at"')[2]
    value = re.search(r'value="([^"]+)"', field)
    chapter = next(each for each in book.chapters if each.slug == "balance")
    rows = [[text(cell) for cell in row] for row in chapter.body.iter("tr")]
    (row,) = (row for row in rows if row[0] == "Flow in at which the filter will be serviced")
    assert value
    assert plain(row[1]).startswith(f"{value[1]} gpm")
    assert row[2].startswith("You decide: the lowest flow in")
    (choice, _) = (row for row in rows if row[0] == "Where the outlet limit sits")
    assert choice[1] == "between pump 2 and the house pressure tank"


def test_a_stray_control_goes_and_the_words_beside_it_stay() -> None:
    field = (
        '<p>Size <input value="5"> of the <select><option>A</select>pail<button>Go</button>.</p>'
    )
    body = on_paper(read(f"<article><h1>A</h1>{field}<textarea>x</textarea></article>"))
    assert text(body) == "ASize of the pail."
    assert not {each.tag for each in body.iter()} & CONTROLS


def test_a_picture_stops_the_book() -> None:
    with pytest.raises(ValueError, match=r"drawings, not pictures: .*pail\.jpg"):
        on_paper(read('<article><h1>A</h1><p><img src="pail.jpg"></p></article>'))


@pytest.mark.browser
@pytest.mark.parametrize("width", [170, 175.9])
def test_nothing_is_wider_than_the_paper(
    book: Book, browser: Browser, tmp_path: Path, width: float
) -> None:
    """Width of A4 and Letter less their margins of 20 mm, in CSS pixels of 1/96 inch."""
    source = tmp_path / "book.xhtml"
    source.write_text(as_xhtml(whole.document(book, {}, "A4")), encoding="utf-8")
    page = browser.new_page(viewport={"width": int(width / 25.4 * 96), "height": 900})
    page.emulate_media(media="print")
    page.goto(source.as_uri())
    wide = page.evaluate("""() => [...document.body.querySelectorAll("*")]
        .filter(e => !e.closest("svg, math") && e.clientWidth && e.scrollWidth > e.clientWidth + 1)
        .map(e => e.textContent.slice(0, 60))""")
    page.close()
    assert wide == []


def test_the_epub_passes_the_checker(epub_file: Path) -> None:
    java = shutil.which("java")
    if java is None or not EPUBCHECK.exists():
        pytest.skip("NOT CHECKED: the EPUB needs Debian's package epubcheck")
    run = subprocess.run(
        [java, "-jar", EPUBCHECK, epub_file], capture_output=True, text=True, check=False
    )
    assert "0 fatals / 0 errors / 0 warnings" in run.stdout, run.stderr[-2000:]


def test_the_epub_reads_in_the_order_of_the_navigation(epub_file: Path, book: Book) -> None:
    with zipfile.ZipFile(epub_file) as archive:
        first = archive.infolist()[0]
        assert (first.filename, first.compress_type) == ("mimetype", zipfile.ZIP_STORED)
        package = archive.read("book/package.opf").decode()
        spine = re.findall(r'<itemref idref="page-([^"]+)"', package)
        assert spine == ["title", *(each.slug for each in book.chapters)]
        balance = fromstring(archive.read("book/balance.xhtml"))
    names = Counter(each.tag for each in balance.iter())
    assert names["{http://www.w3.org/1998/Math/MathML}math"] > 20
    assert names["{http://www.w3.org/2000/svg}svg"] >= 4
    assert not [tag for tag in names if tag.removeprefix(XHTML) in CONTROLS]
    assert any("calc-finding" in classes(each) for each in balance.iter())


def test_the_same_book_gives_the_same_epub(epub_file: Path, book: Book, tmp_path: Path) -> None:
    again = tmp_path / "again.epub"
    epub.write(book, again)
    assert again.read_bytes() == epub_file.read_bytes()
