"""The pages of the problem sets as built: what is on them, and that no key is on the site."""

import json
import re
from collections.abc import Iterator

import pytest

from build_scripts.pages import problems
from calc.coursework.deck import VARIANTS
from calc.coursework.helping import full_working, right_words
from calc.coursework.package import package
from calc.coursework.problem import ProblemSet
from calc.coursework.record import sheet
from calc.coursework.sets import problem_set
from calc.coursework.variants import EXAMPLE, Question, variant
from tests.built import article, links, text
from tests.conftest import Site
from tests.coursework.given import SETS

every_set = pytest.mark.parametrize("chosen", SETS, ids=lambda each: each.name)
EXACT = 6  # significant digits: so many do not agree by chance
BARE = 3  # blanks in "= 3.2 gpm", or in one more word
FIGURE = re.compile(r"(?<![\w.])\d+(?:\.\d+)?(?:e-?\d+)?(?![\w.]*\d)")
READ = {".html", ".js", ".mjs", ".json", ".xml", ".txt", ".svg"}


def where(chosen: ProblemSet) -> str:
    return problems.path(chosen).replace(".md", ".html")


@every_set
def test_a_page_says_what_the_set_is_for(site: Site, chosen: ProblemSet) -> None:
    told = text(article(site, where(chosen)))
    for problem in chosen.problems:
        assert f"{text(problem.objective)} ({problem.form}, level {problem.level}, " in told
    for word in ("Marks:", "Revision:", "about", "minutes"):
        assert word in told


@every_set
def test_without_a_script_variant_0_is_read_with_its_answers(
    site: Site, chosen: ProblemSet
) -> None:
    told = text(article(site, where(chosen)))
    for dealt in sheet(chosen, EXAMPLE).variants.values():
        assert spaced(dealt.text) in told
        for each in dealt.questions:
            assert spaced(each.ask) in told
            assert spaced(right_words(each)) in told


@every_set
def test_chapter_list_and_set_lead_to_each_other(site: Site, chosen: ProblemSet) -> None:
    chapter = chosen.chapter.replace(".md", ".html")
    for path in (chapter, "coursework/problems.html"):
        assert where(chosen) in {to for to, _ in links(article(site, path), path)}
    assert chapter in {to for to, _ in links(article(site, where(chosen)), where(chosen))}


@pytest.fixture(scope="module")
def figures(site: Site) -> set[str]:
    """Every exact figure in any file of the site that can be read as text."""
    every = (file for file in site.folder.rglob("*") if file.suffix in READ)
    return {each for file in every for each in exact(file.read_text(encoding="utf-8"))}


def exact(text: str) -> Iterator[str]:
    for found in FIGURE.findall(text):
        if len(found.partition("e")[0].replace(".", "").strip("0")) >= EXACT:
            yield found


@every_set
def test_no_table_of_answers_is_on_the_site(figures: set[str], chosen: ProblemSet) -> None:
    """Every answer of all 400 variants, SI to seven digits, as a package for an LMS has them.

    One in a hundred may be a file's size, or another figure, by chance.
    """
    key = answers(chosen)
    assert len(key & figures) <= len(key) / 100


def test_a_table_of_answers_would_be_found() -> None:
    """By reason: a search that finds nothing would pass the site."""
    storage = problem_set("well_storage")
    key = answers(storage)
    assert len(key) > VARIANTS
    assert len(key & set(exact(json.dumps(package(storage))))) > 0.9 * len(key)


def answers(chosen: ProblemSet) -> set[str]:
    return set(exact(" ".join(f"{each.right:.7g}" for each in numbers(chosen))))


def numbers(chosen: ProblemSet) -> Iterator[Question]:
    for problem in chosen.problems:
        for number in range(1, VARIANTS + 1):
            dealt = variant(chosen, problem.name, number)
            yield from (each for each in dealt.questions if not each.options)


@every_set
def test_nothing_of_a_variant_that_is_assigned_is_on_its_page(
    site: Site, chosen: ProblemSet
) -> None:
    """Stories and lines of working, less those that variant 0 happens to have as well."""
    html = article(site, where(chosen))
    told = {text(each) for each in re.findall(r"<p(?: [^>]*)?>(.*?)</p>", html, re.DOTALL)}
    own = set(lines(chosen, EXAMPLE))
    assert own <= told
    others = {line for number in range(1, VARIANTS, 7) for line in lines(chosen, number)} - own
    assert len(others) > VARIANTS / 7
    assert others & told == set()


def lines(chosen: ProblemSet, number: int) -> Iterator[str]:
    """Stories, and lines of working that are more than a bare figure."""
    for dealt in sheet(chosen, number).variants.values():
        if dealt.working:
            yield spaced(dealt.text)
            worked = (spaced(line) for line in full_working(dealt) if line.startswith("="))
            yield from (line for line in worked if line.count(" ") > BARE)


def spaced(words: str) -> str:
    return re.sub(r"\s+", " ", words).strip()
