"""The lists that the build writes: sources, words, units, and what other programs read."""

import doctest
import importlib
import json
import pkgutil
import re
import sys
from pathlib import Path
from typing import NamedTuple

import pytest

from build_scripts import pages
from calc.calculators import calculator, names
from calc.figures import agrees
from calc.model import Choice
from calc.sources import SOURCES
from calc.units import KINDS
from calc.views.data import described
from tests.built import article, links, text
from tests.conftest import Site

ROOT = Path(__file__).resolve().parents[1]


def test_every_link_leads_somewhere(site: Site) -> None:
    """The built files: a strict build cannot see into the fences of the chapters."""
    found = 0
    for file in (*site.folder.glob("reference/**/*.html"), site.folder / "sources.html"):
        path = file.relative_to(site.folder).as_posix()
        for to, id_ in links(article(site, path), path):
            target = site.folder / to
            assert target.is_file(), f"{path}: {to}"
            assert not id_ or f'id="{id_}"' in target.read_text(encoding="utf-8"), f"{to}#{id_}"
            found += 1
    assert found > 100


def test_every_source_says_where_it_is_used(site: Site) -> None:
    """The other way round: the links to it on all other pages, as built."""
    used: dict[str, set[str]] = {each: set() for each in SOURCES}
    for file in site.folder.rglob("*.html"):
        path = file.relative_to(site.folder).as_posix()
        if path != "sources.html":
            # a calculator in a chapter cites on behalf of its own page
            html = re.sub(r"<section.*?</section>", "", article(site, path), flags=re.DOTALL)
            for to, id_ in links(html, path):
                if to == "sources.html" and id_:
                    used[id_].add(path)
    html = article(site, "sources.html")
    for each in SOURCES:
        entry = html.partition(f'<p id="{each}">')[2].partition("</p>")[0]
        said = {to for to, _ in links(entry.partition("Used by:")[2], "sources.html")}
        assert said == used[each] != set(), each


def test_the_word_list_is_in_order_and_whole(site: Site) -> None:
    """The declarations: each quantity once under each of its labels."""
    html = article(site, "reference/words.html")
    entries = re.findall(r"<dt>(.*?)</dt>\s*<dd>(.*?)</dd>", html, re.DOTALL)
    listed = [(text(label), text(said).partition(":")[0]) for label, said in entries]
    assert listed == sorted(listed, key=lambda each: (each[0].casefold(), each[1]))
    declared = [calculator(name) for name in names()]
    fields = [each for one in declared for each in (*one.inputs, *one.outputs)]
    assert sorted(listed) == sorted({(each.label, each.name) for each in fields})


def test_one_name_is_one_kind_of_quantity() -> None:
    """By reason: what is kept under a name must fit wherever the name is asked for."""
    kinds: dict[str, set[str]] = {}
    for declared in map(calculator, names()):
        for each in (*declared.inputs, *declared.outputs):
            kind = "choice" if isinstance(each, Choice) else each.kind.name
            kinds.setdefault(each.name, set()).add(kind)
    assert {name: found for name, found in kinds.items() if len(found) > 1} == {}


class Row(NamedTuple):
    factor: str
    also: str


def rows(site: Site) -> dict[tuple[str, str], Row]:
    """Each unit on the page of units, by kind and symbol."""
    html = article(site, "reference/units.html")
    found = {}
    for part in html.split("<h2 ")[1:]:
        kind = text(part.partition(">")[2].partition("<")[0]).lower()
        for unit, factor in re.findall(r"<tr>\s*<td>(.*?)</td>\s*<td>(.*?)</td>", part):
            symbol, _, also = text(unit).partition(", also ")
            found[kind, symbol] = Row(text(factor), also)
    return found


def test_the_page_of_units_has_every_unit_with_its_factor(site: Site) -> None:
    """`calc.units`, to the fifteen digits printed."""
    found = rows(site)
    for kind in KINDS:
        for unit in kind.units:
            row = found[kind.name, unit.symbol or "none"]
            assert row.also == ", ".join(unit.also)
            factor, _, zero = row.factor.partition(", then add ")
            figure, _, power = factor.replace("−", "-").partition(" × 10")
            assert float(f"{figure}e{power or 0}") == pytest.approx(unit.scale, rel=1e-14)
            assert float(zero or 0) == pytest.approx(unit.zero, rel=1e-14)
    assert len(found) == sum(len(kind.units) for kind in KINDS)


@pytest.mark.parametrize(
    ("kind", "symbol", "printed"),
    [
        ("volume", "ft³", "0.02831685"),
        ("volume", "gal", "0.003785412"),
        ("gauge pressure", "psi", "6894.757"),
        ("gauge pressure", "ft of water", "2989.067"),
        ("absolute pressure", "inHg", "3386.389"),
        ("length", "in", "0.0254"),
        ("mass", "lb", "0.4535924"),
        ("power", "hp", "745.6999"),
    ],
)
def test_factors_are_those_of_the_guide(site: Site, kind: str, symbol: str, printed: str) -> None:
    """[nist-811] Appendix B.8, to the digits printed there (from memory)."""
    assert agrees(float(rows(site)[kind, symbol].factor), printed)


def test_the_description_is_published_beside_its_schema(site: Site) -> None:
    """`calc.views.data`, whose description the tests of the views hold against the schema."""
    folder = site.folder / "reference"
    published = json.loads((folder / "calculators.json").read_text(encoding="utf-8"))
    assert published == json.loads(json.dumps(described()))
    assert (folder / published["$schema"]).is_file()


def test_every_schema_is_published_as_it_is_in_the_package(site: Site) -> None:
    """The package's own files."""
    schemas = list((ROOT / "calc").glob("*.schema.json"))
    assert schemas
    for schema in schemas:
        assert (site.folder / "reference" / schema.name).read_bytes() == schema.read_bytes()


def test_no_generated_file_stands_among_the_chapters() -> None:
    """The rule of the house."""
    made = pages.generated(ROOT / "docs")
    assert {"sources.md", "reference/words.md"} < made.keys()
    assert [path for path in made if (ROOT / "docs" / path).exists()] == []


def test_the_examples_of_the_page_writers_hold() -> None:
    """doctest."""
    tried = 0
    for module in pkgutil.iter_modules(pages.__path__, "build_scripts.pages."):
        importlib.import_module(module.name)
        result = doctest.testmod(sys.modules[module.name])
        assert result.failed == 0
        tried += result.attempted
    assert tried > 0
