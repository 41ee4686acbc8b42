"""The check values: each row of the file against `calc`, and the page and CSV that show them."""

import csv
import shlex

import pytest

from build_scripts.checks import Check, checks
from build_scripts.pages import check_values
from calc.calculators import names
from calc.model import solve
from calc.request import case_of, typed_of
from calc.sources import SOURCES
from tests.built import article, text
from tests.conftest import Site

ROWS = checks()
# Others' programs and methods that a figure may come from instead of a text.
METHODS = {"by hand", "EPANET 2.2", "PHREEQC 3", "IAPWS-IF97", "fluids", "scipy"}
every_row = pytest.mark.parametrize(
    "row", ROWS, ids=lambda row: f"{row.calculator}-{row.output}-{row.expected}"
)


@every_row
def test_our_answer_is_the_one_expected(row: Check) -> None:
    """The row's own source and place."""
    assert row.holds(), f"{row.found()} is not {row.expected}"


@every_row
def test_a_figure_a_tenth_off_is_seen(row: Check) -> None:
    """By reason: a tolerance that lets everything through checks nothing."""
    wrong = f"{1.1 * float(row.expected):.6g}"
    if float(row.expected) != 0 and row.within != "0.1":
        assert not row._replace(expected=wrong).holds()


@every_row
def test_a_row_says_where_its_figure_comes_from(row: Check) -> None:
    """The rule of the house, and that a source from memory says no printed figure."""
    assert row.source in SOURCES or row.source in METHODS
    assert len(row.place) > 5


def test_the_rows_are_over_all_parts() -> None:
    """At least forty, of every part, and of half the calculators."""
    assert len(ROWS) >= 40
    assert {row.part for row in ROWS} == {"Open tank", "Radon", "The well", "Water treatment"}
    assert len({row.calculator for row in ROWS}) > len(names()) / 2


def test_no_row_stands_twice() -> None:
    assert len({(row.asked, row.output) for row in ROWS}) == len(ROWS)


def test_a_missed_figure_stops_the_build(monkeypatch: pytest.MonkeyPatch) -> None:
    """A false row of its own."""
    false = ROWS[0]._replace(expected="5.5")
    monkeypatch.setattr(check_values, "checks", lambda: [false])
    with pytest.raises(ValueError, match=r"5\.5"):
        check_values.page()


def test_the_page_shows_every_row(site: Site) -> None:
    """The file: each figure with what is asked and how near it must come."""
    said = text(article(site, "reference/checks.html"))
    for row in ROWS:
        assert f"python -m calc {shlex.join(shlex.split(row.asked))}" in said
        assert f"({row.output}): {row.expected}" in said
    assert said.count("; ours ") == len(ROWS)


def test_the_published_table_asks_for_the_same_cases(site: Site) -> None:
    """Read back by csv: all inputs of a row, put into the calculator, give its answer again."""
    with (site.folder / "reference/checks.csv").open(encoding="utf-8", newline="") as file:
        published = list(csv.DictReader(file))
    assert len(published) == len(ROWS)
    for each, row in zip(published, ROWS, strict=True):
        declared = case_of([row.calculator]).calculator
        given = dict(typed_of(declared, word) for word in each["inputs"].split(" | "))
        assert given.keys() == {one.name for one in declared.inputs}
        answer = solve(declared, given).answer
        assert answer
        value = answer.outputs[row.output]
        assert value is not None
        assert row.shown_in().out_of_si(value) == pytest.approx(row.found(), rel=1e-9)
        assert each["ours"] == check_values.ours(row)
