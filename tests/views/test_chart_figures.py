"""The figures of a chart: the table for who cannot see it, the file for a spreadsheet."""

import csv as standard
import io
from base64 import b64decode
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.charts import Axis, Band, Bar, Bars, Chart, Limit, Line, Mark
from calc.figures import read_number
from calc.model import UNIT_SETS, Case, solve
from calc.units import duration, flow, gal, gpm, minute, share, volume
from calc.views.chart import csv, figure, table
from calc.views.chart_table import MOST_ROWS
from tests.model.given import steady
from tests.views.drawings import CASE, charts, labels
from tests.views.reading import read

TIME, LEVEL = Axis("Time", duration), Axis("Level", volume)


def cells(case: Case, chart: Chart | Bars) -> list[list[str]]:
    """The file as another program reads it; a fault in it is an error there."""
    return list(standard.reader(io.StringIO(csv(case, chart), newline=""), strict=True))


def rising(many: int) -> Line:
    return Line("level", tuple((60.0 * n, n * gal) for n in range(many)))


@settings(steady, max_examples=60)
@given(charts(), st.sampled_from(UNIT_SETS))
def test_the_file_holds_every_figure(chart: Chart, unit_set: str) -> None:
    """Python's csv module reads back what RFC 4180 asks for, to six figures and unthinned."""
    head, *rows = cells(solve(CASE.calculator, {}, unit_set), chart)
    assert all(len(row) == len(head) == 3 for row in rows)
    unit = chart.y.like.usual(unit_set)
    meant = [y for line in chart.lines for _, y in line.points]
    meant += [
        y
        for band in chart.bands
        for y in (*[p[1] for p in band.points], *[p[2] for p in band.points])
    ]
    meant += [limit.y for limit in chart.limits] + [mark.y for mark in chart.marks]
    assert len(rows) == len(meant)
    if not head[2].endswith(f", {unit.symbol}"):
        return  # a time in the unit that suits it: tested by hand below
    for row, y in zip(rows, meant, strict=True):
        if y is None:
            assert row[2] == ""
        else:
            assert float(row[2]) == pytest.approx(unit.out_of_si(y), rel=6e-6)


def test_the_file_by_hand() -> None:
    """By hand: 1 gal at 1 min, none at 2 min, a band, a limit and a mark."""
    chart = Chart(
        "A tank",
        "It fills.",
        TIME,
        LEVEL,
        (
            Line(
                'level, "house"',
                ((minute, gal), (2 * minute, None), (3 * minute, 1.23456789 * gal)),
            ),
        ),
        (Limit("float closes", 11 * gal),),
        (Mark("lowest", minute, gal),),
        (Band("19 times in 20", ((minute, 0.5 * gal, 2 * gal),)),),
    )
    assert csv(CASE, chart).split("\r\n") == [
        '"Line","Time, min","Level, gal"',
        '"level, ""house""",1,1',
        '"level, ""house""",2,',
        '"level, ""house""",3,1.23457',
        '"19 times in 20, lowest",1,0.5',
        '"19 times in 20, highest",1,2',
        '"float closes",,11',
        '"lowest",1,1',
        "",
    ]


@settings(steady, max_examples=60)
@given(st.sampled_from("=+-@＝＋－＠"), st.sampled_from(("", " ", "\t", "\r\n")), labels)
def test_no_label_is_a_formula(sign: str, before: str, rest: str) -> None:
    """Known spreadsheet fault: a cell that starts so is run. An apostrophe makes it text."""
    bars = Bars("Doubt", "", share, (Bar(f"{before}{sign}{rest}", 0.5, f"{sign}cmd"),))
    (_, (label, _, words)) = cells(CASE, bars)
    assert label == f"'{before}{sign}{rest}"
    assert words == f"'{sign}cmd"


def test_a_number_under_zero_stays_a_number() -> None:
    """By reason: the guard is for words."""
    chart = Chart("Margin", "", TIME, Axis("Margin", flow), (Line("m", ((0.0, -1.5 * gpm),)),))
    assert cells(CASE, chart)[1] == ["m", "0", "-1.5"]


def test_the_link_holds_the_file() -> None:
    """The rule: a link that needs neither server nor script, UTF-8 by its mark."""
    chart = Chart("Level at 0 °C", "", TIME, Axis("Level ½", volume), (rising(3),))
    link = read(figure(CASE, chart, "k")).one("a")
    assert link.text == "Download the figures (CSV)"
    assert link.attributes["download"] == "tank-draw-level-at-0-c.csv"
    kind, _, data = link.attributes["href"].partition(",")
    assert kind == "data:text/csv;charset=utf-8;base64"
    assert b64decode(data, validate=True) == b"\xef\xbb\xbf" + csv(CASE, chart).encode()


@settings(steady, max_examples=40)
@given(st.integers(1, 400))
def test_a_long_table_is_thinned_and_says_so(many: int) -> None:
    """By reason: evenly, first and last stay, and the reader is told where the rest is."""
    chart = Chart("A tank", "It fills.", TIME, LEVEL, (rising(many),))
    drawn = read(table(CASE, chart))
    rows = drawn.one("tbody").all("tr")
    levels = [round(read_number(row.one("td").text)) for row in rows]
    assert len(rows) <= MOST_ROWS + 1
    assert (levels[0], levels[-1]) == (0, many - 1)
    steps = {b - a for a, b in pairwise(levels[:-1])}
    assert len(steps) <= 1
    caption = drawn.one("caption").text
    assert caption.startswith("A tank.")
    assert ("the file has them all" in caption) == (len(rows) < many)
    assert len(cells(CASE, chart)) == many + 1


def test_the_table_says_which_line() -> None:
    """By hand: a group for each line and band, every cell with its heads."""
    lines = (Line("inlet", ((0.0, gal), (minute, None))), Line("outlet", ((0.0, 2 * gal),)))
    band = Band("19 times in 20", ((0.0, gal, 3 * gal),))
    drawn = read(table(CASE, Chart("A tank", "", TIME, LEVEL, lines, bands=(band,))))
    assert [head.text for head in drawn.one("thead").all("th")] == ["Time, s", "Level, gal"]
    groups = [
        [cell.text for cell in body.all() if cell.name != "tr"] for body in drawn.all("tbody")
    ]
    assert groups == [
        ["inlet", "0", "1.000", "60.00", "none"],
        ["outlet", "0", "2.000"],
        ["19 times in 20", "0", "1.000 to 3.000"],
    ]
    assert {head.attributes["scope"] for head in drawn.all("th")} == {"col", "row", "rowgroup"}


def test_bars_by_hand() -> None:
    """By hand: shares to two figures in the table, to six in the file."""
    bars = Bars(
        "Doubt", "", share, (Bar("Flow in", 2 / 3, "moves it by 0.2 gpm"), Bar("Rise", 1 / 3))
    )
    rows = [[cell.text for cell in row.children] for row in read(table(CASE, bars)).all("tr")]
    assert rows == [
        ["Of what", "Share", "In words"],
        ["Flow in", "67\u00a0%", "moves it by 0.2 gpm"],
        ["Rise", "33\u00a0%", ""],
    ]
    assert cells(CASE, bars) == [
        ["Of what", "Share, %", "In words"],
        ["Flow in", "66.6667", "moves it by 0.2 gpm"],
        ["Rise", "33.3333", ""],
    ]
