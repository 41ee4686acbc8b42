"""The chart in an answer: axes around the data, all within them and to scale, and in words."""

from itertools import pairwise
from typing import NamedTuple

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.calculators import calculator
from calc.charts import Chart
from calc.figures import agrees, read_number
from calc.model import UNIT_SETS, Case, Typed, solve
from calc.units import duration, volume
from calc.views.answer import answer
from calc.views.words import spoken
from tests.model.given import patient, typed
from tests.views.reading import Element, read

TANK = calculator("tank_draw")
in_both_sets = pytest.mark.parametrize("unit_set", UNIT_SETS)
type Place = tuple[float, float]


class Picture(NamedTuple):
    """What is drawn: a figure and a height for each line of the grid, the line, the mark."""

    grid: list[Place]
    sides: Place
    line: list[Place]
    mark: Place


def figure_of(case: Case) -> Element:
    return read(answer(case, "key", "")).one("figure")


def picture(figure: Element) -> Picture:
    svg = figure.one("svg")
    rules = [each for each in svg.all("line") if each.attributes["class"] == "chart-grid"]
    heights = [float(rule.attributes["y1"]) for rule in rules]
    figures = [each for each in svg.all("text") if each.attributes.get("text-anchor") == "end"]
    corners = svg.one("polyline").attributes["points"].split()
    marks = [each for each in svg.all("circle") if "chart-mark" in each.attributes["class"]]
    return Picture(
        [
            (read_number(text.text), height)
            for text, height in zip(figures, heights, strict=False)
            if abs(float(text.attributes["y"]) - height) < 8
        ],
        (float(rules[0].attributes["x1"]), float(rules[0].attributes["x2"])),
        [(float(x), float(y)) for x, y in (corner.split(",") for corner in corners)],
        (float(marks[0].attributes["cx"]), float(marks[0].attributes["cy"])),
    )


def points_of(case: Case) -> list[Place]:
    assert case.answer
    (chart,) = case.answer.charts
    assert isinstance(chart, Chart)
    return [(x, y) for x, y in chart.lines[0].points if y is not None]


@patient
@given(st.data(), st.sampled_from(UNIT_SETS))
def test_all_is_drawn_within_the_axes(data: st.DataObject, unit_set: str) -> None:
    """By reason: the axes reach from under the lowest value to over the highest, and round it."""
    case = solve(TANK, data.draw(typed(TANK)), unit_set)
    assume(case.answer)
    drawn = picture(figure_of(case))
    values, heights = [value for value, _ in drawn.grid], [height for _, height in drawn.grid]
    unit = volume.usual(unit_set)
    levels = [unit.out_of_si(level) for _, level in points_of(case)]
    assert min(values) <= min(levels) * (1 + 1e-9)
    assert max(values) >= max(levels) * (1 - 1e-9)
    assert 3 <= len(values) <= 9
    for x, y in [*drawn.line, drawn.mark]:
        assert drawn.sides[0] - 0.1 <= x <= drawn.sides[1] + 0.1
        assert min(heights) - 0.1 <= y <= max(heights) + 0.1


@patient
@given(st.data(), st.sampled_from(UNIT_SETS))
def test_the_axis_has_even_and_round_figures(data: st.DataObject, unit_set: str) -> None:
    """Common practice: steps of 1, 2, 2½ or 5 times a power of ten, evenly apart."""
    case = solve(TANK, data.draw(typed(TANK)), unit_set)
    assume(case.answer)
    grid = picture(figure_of(case)).grid
    steps = [b - a for (a, _), (b, _) in pairwise(grid)]
    gaps = [a - b for (_, a), (_, b) in pairwise(grid)]
    assert steps == pytest.approx([steps[0]] * len(steps), rel=1e-6)
    assert gaps == pytest.approx([gaps[0]] * len(gaps), abs=0.25)
    assert float(f"{steps[0]:.6e}".partition("e")[0]) in (1, 2, 2.5, 5)


@in_both_sets
def test_places_are_to_scale(unit_set: str) -> None:
    """By hand: straight proportion, from the figures on the axis to the corners of the line."""
    case = solve(TANK, {}, unit_set)
    drawn, points = picture(figure_of(case)), points_of(case)
    (low, bottom), (high, top) = drawn.grid[0], drawn.grid[-1]
    (start, _), (end, _) = points[0], points[-1]
    left, right = drawn.line[0][0], drawn.line[-1][0]
    unit = volume.usual(unit_set)
    for (x, y), (time, level) in zip(drawn.line, points, strict=True):
        share = (unit.out_of_si(level) - low) / (high - low)
        assert y == pytest.approx(bottom - share * (bottom - top), abs=0.1)
        assert x == pytest.approx(left + (time - start) / (end - start) * (right - left), abs=0.11)


@in_both_sets
def test_the_table_holds_the_same_figures(unit_set: str) -> None:
    """By reason: the table is the chart for who cannot see it."""
    case = solve(TANK, {}, unit_set)
    table = figure_of(case).one("table")
    heads = [head.text for head in table.one("thead").all("th")][-2:]
    x, y = (
        kind.unit(head.rpartition(", ")[2])
        for kind, head in zip((duration, volume), heads, strict=True)
    )
    rows = table.one("tbody").all("tr")
    for row, (time, level) in zip(rows, points_of(case), strict=True):
        cells = [cell.text for cell in row.children]
        assert agrees(x.out_of_si(time), cells[0])
        assert agrees(y.out_of_si(level), cells[1])
    assert y == volume.usual(unit_set)


def test_a_long_table_is_thinned_but_keeps_its_ends() -> None:
    """By reason: a run of hundreds of pump starts floods no page; first and last stay."""
    given_ = {
        "draw_flow": "20 gpm", "draw_volume": "500 gal", "pump": "40 gpm", "house_tank": "3 gal",
        "worst_outlet": "40 gpm", "worst_inlet": "45 gpm",
    }  # fmt: skip
    case = solve(TANK, {name: Typed(text) for name, text in given_.items()})
    points = points_of(case)
    rows = figure_of(case).one("table").one("tbody").all("tr")
    assert len(points) > 200
    assert len(rows) <= 61
    ends = [rows[0].children[0].text, rows[-1].children[0].text]
    assert agrees(points[0][0] / 60, ends[0])
    assert agrees(points[-1][0] / 60, ends[1])


@in_both_sets
def test_the_description_names_the_lowest_level(unit_set: str) -> None:
    """The answer itself: lowest level and its moment, in the picture's own description."""
    case = solve(TANK, {}, unit_set)
    assert case.answer
    lowest, when = case.answer.outputs["lowest"], case.answer.outputs["lowest_at"]
    assert lowest is not None
    assert when is not None
    svg = figure_of(case).one("svg")
    for words in (spoken(lowest, volume, unit_set), spoken(when, duration, unit_set)):
        assert words in svg.one("desc").text
    assert svg.attributes["role"] == "img"
    assert svg.attributes["aria-labelledby"] == svg.one("title").attributes["id"]
    assert svg.attributes["aria-describedby"] == svg.one("desc").attributes["id"]


@patient
@given(st.data())
def test_the_line_is_the_run(data: st.DataObject) -> None:
    """The answer itself: the lowest corner is the lowest level told, and the mark stands there."""
    case = solve(TANK, data.draw(typed(TANK)))
    assume(case.answer)
    assert case.answer
    assert min(level for _, level in points_of(case)) == case.answer.outputs["lowest"]
    drawn = picture(figure_of(case))
    assert drawn.mark in drawn.line
    assert drawn.mark[1] == max(y for _, y in drawn.line)
