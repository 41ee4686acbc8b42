"""Charts of any kind as pictures: whole, readable, and within their frame."""

from itertools import combinations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from calc.charts import Bars, Chart
from calc.model import UNIT_SETS, solve
from calc.views.chart import figure, svg
from calc.views.strokes import COLUMN, MOST_POINTS, thinned
from tests.model.given import steady
from tests.views.drawings import (
    CASE,
    SVG,
    barred,
    between,
    charts,
    corners,
    crosses,
    letters,
    lines_drawn,
    number,
    parsed,
    places,
    shapes_in_key,
    shapes_of,
    words_inside,
)
from tests.views.reading import read

SHAPES = {"line", "polyline", "polygon", "circle", "rect", "text"}


@settings(steady, max_examples=100)
@given(st.one_of(charts(), barred()), st.sampled_from(UNIT_SETS))
def test_nothing_leaves_the_picture(chart: Chart | Bars, unit_set: str) -> None:
    """By reason: what lies outside the viewBox is cut off. It is XML, too."""
    root = parsed(svg(solve(CASE.calculator, {}, unit_set), chart, "k"))
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    shapes = [shape for shape in root.iter() if shape.tag.removeprefix(SVG) in SHAPES]
    assert shapes
    for shape in shapes:
        for x, y in places(shape):
            assert 0 <= x <= width, (shape.attrib, shape.text)
            assert 0 <= y <= height, (shape.attrib, shape.text)


@settings(steady, max_examples=100)
@given(charts())
def test_what_is_drawn_lies_between_the_axes(chart: Chart) -> None:
    """By reason: a point beyond its axis cannot be read off. A mark counts by its middle."""
    root = parsed(svg(CASE, chart, "k"))
    across, upright = between(root)
    drawn = [place for shape in shapes_of(root, "polyline", "polygon") for place in corners(shape)]
    drawn += [(number(dot, "cx"), number(dot, "cy")) for dot in shapes_of(root, "circle")]
    assert len(drawn) + len(shapes_in_key(root, "circle")) >= 1
    for x, y in drawn:
        assert across[0] - 0.1 <= x <= across[1] + 0.1
        assert upright[0] - 0.1 <= y <= upright[1] + 0.1


@settings(steady, max_examples=100)
@given(charts())
def test_words_in_the_picture_collide_with_nothing(chart: Chart) -> None:
    """The rule: no words over other words, over a line or a limit, or out of the frame."""
    root = parsed(svg(CASE, chart, "k"))
    words = [letters(text) for text in words_inside(root)]
    across, upright = between(root)
    for box in words:
        assert across[0] - 0.1 <= box.left < box.right <= across[1] + 0.1
        assert upright[0] - 0.1 <= box.top < box.bottom <= upright[1] + 0.1
        assert not [line for line in lines_drawn(root) if crosses(line, box)]
    assert not [pair for pair in combinations(words, 2) if pair[0].meets(pair[1])]


@settings(steady, max_examples=100)
@given(charts())
def test_all_words_of_a_chart_stand_apart(chart: Chart) -> None:
    """The rule for figures along the axes, names, key and words inside alike."""
    root = parsed(svg(CASE, chart, "k"))
    texts = [text for text in root.iter(f"{SVG}text") if (text.text or "").strip()]
    for one, other in combinations(texts, 2):
        assert not letters(one).meets(letters(other)), (one.text, other.text)


@settings(steady, max_examples=60)
@given(charts())
def test_everything_is_named(chart: Chart) -> None:
    """By reason: what has no name cannot be told apart; spaces may wrap."""
    root = parsed(svg(CASE, chart, "k"))
    said = "".join("".join(text.text or "" for text in root.iter(f"{SVG}text")).split())
    named = [limit.label for limit in chart.limits] + [mark.label for mark in chart.marks]
    if len(chart.lines) + len(chart.bands) > 1:
        named += [line.label for line in chart.lines] + [band.label for band in chart.bands]
    for name in [*named, chart.x.label, chart.y.label]:
        assert "".join(name.split()) in said


@settings(steady, max_examples=50)
@given(st.one_of(charts(), barred()))
def test_a_picture_is_whole_without_a_style_sheet(chart: Chart | Bars) -> None:
    """The rule: attributes alone do, no line is filled, and nothing is fetched or run."""
    root = parsed(svg(CASE, chart, "k"))
    assert root.attrib["role"] == "img"
    assert [child.tag for child in root][:2] == [f"{SVG}title", f"{SVG}desc"]
    assert root[0].text or not chart.title
    assert root.attrib["aria-labelledby"] == root[0].attrib["id"]
    assert root.attrib["aria-describedby"] == root[1].attrib["id"]
    for shape in root.iter():
        name = shape.tag.removeprefix(SVG)
        assert name in SHAPES | {"svg", "title", "desc", "g"}
        assert not {"style", "href", "onload"} & set(shape.attrib)
        if name in {"polyline", "polygon", "line", "circle"}:
            assert "stroke" in shape.attrib or name == "circle"
        if name == "polyline":
            assert shape.attrib["fill"] == "none"


@settings(steady, max_examples=60)
@given(st.lists(st.tuples(st.floats(0, 360), st.floats(0, 200)), min_size=1, max_size=3000))
@example([(n / 10, float(n == 1777)) for n in range(3000)])
def test_thinning_keeps_every_extreme(many: list[tuple[float, float]]) -> None:
    """Jugel and others, M4, 2014, from memory: first, last, lowest, highest of each column."""
    line = sorted(many, key=lambda point: point[0])
    kept = thinned(line)
    if len(line) <= MOST_POINTS:
        assert kept == line
        return
    assert len(kept) <= 4 * (360 / COLUMN + 1)
    rest = iter(line)
    assert all(any(point == other for other in rest) for point in kept), "not in their order"
    for column in {x // COLUMN for x, _ in line}:
        whole, left = ([y for x, y in points if x // COLUMN == column] for points in (line, kept))
        assert (whole[0], whole[-1]) == (left[0], left[-1])
        assert (min(whole), max(whole)) == (min(left), max(left))


@settings(steady, max_examples=50)
@given(barred())
def test_bars_are_to_scale(bars: Bars) -> None:
    """By reason: twice as much is twice as long; nothing is longer than the longest."""
    root = parsed(svg(CASE, bars, "k"))
    drawn = [number(bar, "width") for bar in shapes_of(root, "rect")]
    assert len(drawn) == len(bars.bars)
    longest = max(bar.value for bar in bars.bars)
    for width, bar in zip(drawn, bars.bars, strict=True):
        whole = drawn[[each.value for each in bars.bars].index(longest)]
        assert width == pytest.approx(whole * bar.value / longest if longest else 0, abs=0.11)


@settings(steady, max_examples=60)
@given(st.one_of(charts(), barred()))
def test_the_figure_is_well_formed(chart: Chart | Bars) -> None:
    """The strict reader: a picture, its caption, and folded away a table and a file."""
    whole = read(figure(CASE, chart, "k")).one("figure", "calc-chart")
    assert [child.name for child in whole.children] == ["svg", "figcaption", "details"]
    assert [child.name for child in whole.children[2].children] == ["summary", "table", "p"]
