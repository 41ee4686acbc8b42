"""What a chart draws, by hand: lines, steps, gaps, bands, marks, and the words for them."""

from itertools import pairwise

import pytest

from calc.charts import Axis, Band, Chart, Line, Mark
from calc.model import UNIT_SETS, solve
from calc.units import duration, flow, gpm, minute, volume
from calc.views.chart import describe, svg
from tests.views.drawings import (
    CASE,
    SVG,
    between,
    corners,
    number,
    parsed,
    places,
    shapes_of,
)

LINE = Line("level", ((0.0, 1.0), (600.0, 2.0)))
TIME, LEVEL = Axis("Time", duration), Axis("Level", volume)


def plain_chart(*lines: Line, **more: tuple[object, ...]) -> Chart:
    return Chart("A tank", "It fills.", TIME, LEVEL, lines or (LINE,), **more)  # type: ignore[arg-type]


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


def test_a_long_line_is_thinned() -> None:
    """By reason: five thousand points would weigh more than the page; the one spike stays."""
    points = tuple((6.0 * n, 5.0 if n == 3333 else 1.0) for n in range(5000))
    (line,) = shapes_of(parsed(svg(CASE, plain_chart(Line("level", points)), "k")), "polyline")
    assert len(corners(line)) < 1000
    lowest = max(y for _, y in corners(line))
    assert [x for x, y in corners(line) if y < lowest - 50]


def test_words_of_the_chart() -> None:
    """By hand: a draw of 10 min from 1 m³ to 2 m³, in the units of either set."""
    chart = plain_chart(limits=(), marks=(Mark("half way", 300.0, 1.5),))
    us, si = (describe(solve(CASE.calculator, {}, each), chart) for each in UNIT_SETS)
    assert (
        "Level: from 264\u00a0gal at 0\u00a0min to 528\u00a0gal at 10\u00a0min\u00a000\u00a0s" in us
    )
    assert "lowest 1\u202f000\u00a0L, highest 2\u202f000\u00a0L." in si
    assert "Half way: 1\u202f500\u00a0L at 5\u00a0min\u00a000\u00a0s." in si


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
