"""What the handbook says of its own reliability: sources, reviews, editions."""

import re
from pathlib import Path

import pytest

from build_scripts.book import whole
from build_scripts.book.tree import text as words
from build_scripts.offline import build_date
from build_scripts.pages import foot, reviews
from build_scripts.pages.foot import UNREVIEWED
from calc import EDITION
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
