"""Charts of any kind as pictures: whole, readable, and within their frame."""

from itertools import combinations, pairwise

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from calc.charts import Axis, Band, Bars, Chart, Line, Mark
from calc.model import UNIT_SETS, solve
from calc.units import duration, flow, gpm, minute, volume
from calc.views.chart import describe, figure, svg
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

LINE = Line("level", ((0.0, 1.0), (600.0, 2.0)))
TIME, LEVEL = Axis("Time", duration), Axis("Level", volume)
SHAPES = {"line", "polyline", "polygon", "circle", "rect", "text"}


def plain_chart(*lines: Line, **more: tuple[object, ...]) -> Chart:
    return Chart("A tank", "It fills.", TIME, LEVEL, lines or (LINE,), **more)  # type: ignore[arg-type]


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


def test_ids_are_the_pages_own() -> None:
    """By reason: two charts of one page must not share an id."""
    drawn = plain_chart()
    ids = [each.attrib["id"] for key in ("a", "b") for each in parsed(svg(CASE, drawn, key))[:2]]
    assert len(set(ids)) == 4


def test_lines_differ_by_dash_and_by_name() -> None:
    """The rule: tone alone tells nothing to who sees no colours, or on grey paper."""
    lines = [Line(name, ((0.0, n), (60.0, n))) for n, name in enumerate("abcd", start=1)]
    root = parsed(svg(CASE, plain_chart(*lines), "k"))
    dashes = [line.attrib["stroke-dasharray"] for line in shapes_of(root, "polyline")]
    assert len(set(dashes)) == 4
    (key,) = root.iter(f"{SVG}g")
    swatches = [line.attrib["stroke-dasharray"] for line in key.iter(f"{SVG}polyline")]
    assert swatches == dashes
    assert [text.text for text in key.iter(f"{SVG}text")] == list("abcd")


def test_steps_hold_until_the_next() -> None:
    """By hand: a pump that starts after 60 s is drawn at rest until then, not on its way."""
    line = Line("pump 2", ((0.0, 0.0), (60.0, 2.0), (120.0, 2.0), (180.0, 0.0)), steps=True)
    (drawn,) = shapes_of(parsed(svg(CASE, plain_chart(line), "k")), "polyline")
    for (x, y), (next_x, next_y) in pairwise(corners(drawn)):
        assert x == next_x or y == next_y
    assert len(corners(drawn)) == 6


def test_a_broken_line_is_not_bridged() -> None:
    """By hand: two pieces and a lone point, which is a dot."""
    points = ((0.0, 1.0), (60.0, 2.0), (120.0, None), (180.0, 3.0), (240.0, None),
              (300.0, 4.0), (360.0, 5.0))  # fmt: skip
    root = parsed(svg(CASE, plain_chart(Line("level", points)), "k"))
    assert [len(corners(line)) for line in shapes_of(root, "polyline")] == [2, 2]
    (dot,) = shapes_of(root, "circle")
    assert dot.attrib["class"].startswith("chart-dot")


def test_the_present_case_stands_out() -> None:
    """The rule: filled, with a line down to the axis; other marks are hollow and have none."""
    marks = (Mark("you are here", 300.0, 1.5, here=True), Mark("least", 0.0, 1.0))
    root = parsed(svg(CASE, plain_chart(marks=marks), "k"))
    here, other = shapes_of(root, "circle")
    assert (here.attrib["fill"], other.attrib["fill"]) == ("currentColor", "#fff")
    (drop,) = [line for line in shapes_of(root, "line") if line.attrib["class"] == "chart-drop"]
    _, upright = between(root)
    assert places(drop) == [
        (number(here, "cx"), number(here, "cy")),
        (number(here, "cx"), upright[1]),
    ]


def test_a_band_lies_around_its_line() -> None:
    """By hand: its corners are the ends of lowest and highest."""
    band = Band("19 times in 20", ((0.0, 0.5, 1.5), (600.0, 1.0, 3.0)))
    root = parsed(svg(CASE, plain_chart(bands=(band,)), "k"))
    (area,) = shapes_of(root, "polygon")
    (line,) = shapes_of(root, "polyline")
    (x0, high0), (x1, high1), (x2, low1), (x3, low0) = corners(area)
    (start, level0), (end, level1) = corners(line)
    assert (x0, x1, x2, x3) == (start, end, end, start)
    assert high0 < level0 < low0
    assert high1 < level1 < low1
    assert (low0 + high0) / 2 == pytest.approx(level0, abs=0.1)
    assert (low1 + high1) / 2 == pytest.approx(level1, abs=0.1)


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


def test_a_long_line_is_thinned() -> None:
    """By reason: five thousand points would weigh more than the page; the one spike stays."""
    points = tuple((6.0 * n, 5.0 if n == 3333 else 1.0) for n in range(5000))
    (line,) = shapes_of(parsed(svg(CASE, plain_chart(Line("level", points)), "k")), "polyline")
    assert len(corners(line)) < 1000
    lowest = max(y for _, y in corners(line))
    assert [x for x, y in corners(line) if y < lowest - 50]


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


def test_words_of_the_chart() -> None:
    """By hand: a draw of 10 min from 1 m³ to 2 m³, in the units of either set."""
    chart = plain_chart(limits=(), marks=(Mark("half way", 300.0, 1.5),))
    us, si = (describe(solve(CASE.calculator, {}, each), chart) for each in UNIT_SETS)
    assert (
        "Level: from 264\u00a0gal at 0\u00a0min to 528\u00a0gal at 10\u00a0min\u00a000\u00a0s" in us
    )
    assert "lowest 1\u202f000\u00a0L, highest 2\u202f000\u00a0L." in si
    assert "Half way: 1\u202f500\u00a0L at 5\u00a0min\u00a000\u00a0s." in si


@settings(steady, max_examples=60)
@given(st.one_of(charts(), barred()))
def test_the_figure_is_well_formed(chart: Chart | Bars) -> None:
    """The strict reader: a picture, its caption, and folded away a table and a file."""
    whole = read(figure(CASE, chart, "k")).one("figure", "calc-chart")
    assert [child.name for child in whole.children] == ["svg", "figcaption", "details"]
    assert [child.name for child in whole.children[2].children] == ["summary", "table", "p"]


@pytest.mark.parametrize(
    "spoiled",
    [
        {"lines": (Line("none", ((0.0, None),)),)},
        {"lines": (Line("nan", ((0.0, float("nan")),)),)},
        {"lines": (Line("inf", ((float("inf"), 1.0),)),)},
        {"lines": (LINE,) * 5},
        {"marks": (Mark("inf", 0.0, float("inf")),)},
    ],
)
def test_a_chart_that_cannot_be_drawn_is_refused(spoiled: dict[str, tuple[object, ...]]) -> None:
    """The rule: a malformed declaration fails where it is made."""
    with pytest.raises(ValueError, match="A tank"):
        Chart(**{"title": "A tank", "says": "", "x": TIME, "y": LEVEL, "lines": (LINE,), **spoiled})  # type: ignore[arg-type]


def test_a_flow_that_never_changes() -> None:
    """By hand: a level line of 5 gpm stands between the ends of an axis that starts from 0."""
    line = Line("flow in", ((0.0, 5 * gpm), (10 * minute, 5 * gpm)))
    chart = Chart("Flow", "It is steady.", TIME, Axis("Flow in", flow), (line,))
    root = parsed(svg(CASE, chart, "k"))
    (drawn,) = shapes_of(root, "polyline")
    _, (top, bottom) = between(root)
    for _, y in corners(drawn):
        assert y == pytest.approx(bottom - 5 / 8 * (bottom - top), abs=0.1)
