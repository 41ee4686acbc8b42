"""What the handbook says of its own reliability: sources, reviews, editions."""

import json
import re
from html import unescape
from pathlib import Path

import pytest

from build_scripts.book import whole
from build_scripts.book.tree import text as words
from build_scripts.offline import build_date
from build_scripts.pages import foot, reviews
from build_scripts.pages.doubts import PHRASE, in_module
from build_scripts.pages.foot import UNREVIEWED
from build_scripts.pages.glossary import Term, terms
from calc import EDITION
from calc.calculators import calculator, names
from calc.levels import LEVELS
from calc.sources import SOURCES
from tests.built import article, text
from tests.conftest import Site

ROOT = Path(__file__).resolve().parents[1]
CHAPTERS = sorted(file.relative_to(ROOT / "docs") for file in (ROOT / "docs").rglob("*.md"))
PLAIN = set(reviews()["nothing_to_review"])
WORK = [path.as_posix() for path in CHAPTERS if path.as_posix() not in PLAIN]


@pytest.mark.parametrize("key", SOURCES)
def test_a_source_resolves_to_author_title_year_and_place(key: str) -> None:
    """The rule of the house: a reader with a library card finds the figure."""
    source = SOURCES[key]
    assert source.seen in {"read", "second-hand", "from memory"}
    assert 1600 < source.year <= 2026
    for said in (source.author, source.title, source.place):
        assert re.search(r"[^\W\d_]{2}", said), source
        assert said == said.strip().rstrip("."), source
    # the place says more than title and author do
    assert source.place.casefold() not in {source.title.casefold(), source.author.casefold()}


def test_every_page_says_its_edition_and_day(site: Site) -> None:
    """Each built page, calculators' and sources' too."""
    edition = f"Pail and Timer, edition {EDITION} of {build_date()}."
    pages = [file for file in site.folder.rglob("*.html") if "<article" in file.read_text("utf-8")]
    assert len(pages) > 80
    for file in pages:
        path = file.relative_to(site.folder).as_posix()
        if path != "404.html":
            assert text(article(site, path)).count(edition) == 1, path


@pytest.mark.parametrize("path", WORK)
def test_a_chapter_says_that_nobody_has_reviewed_it(site: Site, path: str) -> None:
    """The file of reviews: it names no reviewer of any chapter yet."""
    said = text(article(site, path.replace(".md", ".html")))
    assert (UNREVIEWED in said) == (path not in reviews())


def test_the_printed_editions_bear_the_mark(site: Site) -> None:
    """The chapters as PDF and EPUB get them."""
    book = whole.book(site.folder)
    marked = {each.path for each in book.chapters if UNREVIEWED in words(each.body)}
    assert marked == {path.replace(".md", ".html") for path in WORK if path not in reviews()}


def test_a_review_takes_the_place_of_the_mark() -> None:
    """An invented review, as the file's head shows it."""
    one = {"reviewer": "a <reviewer>", "date": "2027-03-01", "scope": "all figures"}
    said = {"nothing_to_review": [], "well/storage.md": [one]}
    drawn = foot("well/storage.md", said)
    assert "Reviewed by a &lt;reviewer&gt; on 2027-03-01: all figures." in drawn
    assert UNREVIEWED not in drawn
    assert UNREVIEWED in foot("well/diagnosis.md", said)
    with pytest.raises(KeyError):
        foot("well/storage.md", said | {"well/storage.md": [{"reviewer": "x"}]})


def test_the_file_of_reviews_names_chapters_that_exist() -> None:
    """The files in docs/: a renamed chapter must not lose its review unseen."""
    named = {*PLAIN, *reviews()} - {"nothing_to_review"}
    assert named <= {path.as_posix() for path in CHAPTERS}


def test_the_list_without_a_source_holds_each_mention_of_a_chapter(site: Site) -> None:
    """Counted in the chapters' own text, fences out, against the part of the page for each."""
    html = article(site, "reference/unsourced.html")
    parts = {part.partition('"')[0]: part for part in html.split('<h3 id="in-')[1:]}
    seen = 0
    for path in CHAPTERS:
        name = path.as_posix()
        if name == "index.md":
            continue
        source = re.sub(r"(?ms)^( *)```.*?^\1```", "", (ROOT / "docs" / path).read_text("utf-8"))
        wanted = len(PHRASE.findall(" ".join(re.sub(r"[*|]", " ", source).split())))
        part = parts.get(name.removesuffix(".md").replace("/", "-"), "").partition("<h2")[0]
        assert len(PHRASE.findall(text(part))) >= wanted, name
        seen += wanted
    assert seen > 40


def test_the_list_without_a_source_holds_sources_levels_and_defaults(site: Site) -> None:
    """The declarations themselves."""
    html = article(site, "reference/unsourced.html")
    said = text(html)
    for key, source in SOURCES.items():
        linked = f'href="../sources.html#{key}"' in html.partition('<h2 id="levels"')[0]
        assert linked == (source.seen != "read"), key
    levels = text(html.partition('<h2 id="levels"')[2].partition("<h2")[0])
    doubtful = [each for many in LEVELS.values() for each in many if each.seen != "read"]
    assert levels.count("second-hand") + levels.count("from memory") == len(doubtful)
    for name in names():
        for each in calculator(name).inputs:
            if PHRASE.search(each.origin):
                assert f'href="calculators/{name}.html#{each.name}"' in html, each.origin
                assert each.default in said


def test_the_list_without_a_source_reads_comments_and_texts(tmp_path: Path) -> None:
    """A module of two comments on lines of their own, a docstring, and a clean text."""
    module = tmp_path / "one.py"
    module.write_text(
        '"""All fine.\n\n    A third of a pipe and a bend more, from memory.\n    """\n'
        "# Bores of old iron pipe as they are sold:\n# common practice, no source\n"
        "x = 1  # read in the table\n"
    )
    assert in_module(module) == [
        "A third of a pipe and a bend more, from memory.",
        "Bores of old iron pipe as they are sold: common practice, no source",
    ]


@pytest.mark.parametrize("term", terms(), ids=lambda term: term.name)
def test_search_finds_every_other_name(site: Site, term: Term) -> None:
    """The built index: under the term's own heading, and on the page of each calculator."""
    index = json.loads((site.folder / "search/search_index.json").read_text(encoding="utf-8"))
    sections = {each["location"]: unescape(each["text"]) for each in index["docs"]}
    entry = sections[f"reference/glossary.html#term-{term.name.lower().replace(' ', '-')}"]
    assert all(other in entry for other in term.also)
    for name in term.calculators:
        assert all(other in sections[f"reference/calculators/{name}.html"] for other in term.also)


def test_every_calculator_has_other_names() -> None:
    """The list of calculators: none is found by our own name for it alone."""
    assert set(names()) == {name for term in terms() for name in term.calculators}


@pytest.mark.parametrize(
    "asked",
    ["well tank", "retention tank", "limestone filter", "acid neutralizer", "bubbler", "sump",
     "cycle stop", "jet pump", "drawdown", "precharge", "TDH", "GAC", "voltage drop"],
)  # fmt: skip
def test_the_trade_says_it_so(asked: str) -> None:
    """Words that people type, from common practice: each is a name of some term."""
    known = [word.casefold() for term in terms() for word in (term.name, *term.also)]
    assert asked.casefold() in known


@pytest.mark.parametrize("name", ["privacy", "accessibility", "wrong-number", "copying"])
def test_a_page_about_the_book_is_led_to_from_every_page(site: Site, name: str) -> None:
    """The navigation as built."""
    for path in ("index.html", "well/storage.html"):
        html = (site.folder / path).read_text(encoding="utf-8")
        assert f"about/{name}.html" in html


def test_the_page_on_privacy_names_every_store_that_the_scripts_use(site: Site) -> None:
    """The scripts: each way in which a browser can keep something."""
    code = "".join(file.read_text("utf-8") for file in (ROOT / "docs/app").glob("*.js"))
    said = text(article(site, "about/privacy.html")).casefold()
    ways = {"localStorage": "local storage", "sessionStorage": "session storage",
            "createStore": "indexeddb", "caches.": "cache storage", "document.cookie": "a cookie",
            "navigator.storage": "persistent storage"}  # fmt: skip
    for call, words_ in ways.items():
        assert (call in code) == (words_ in said), call
