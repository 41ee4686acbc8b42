"""Charts of every kind to be drawn, and pictures read back as geometry."""

import xml.etree.ElementTree as ET
from itertools import pairwise
from typing import NamedTuple

from hypothesis import strategies as st

from calc.charts import Axis, Band, Bar, Bars, Chart, Limit, Line, Mark
from calc.model import Output
from calc.quantity import KINDS
from calc.request import case_of
from calc.units import share

CASE = case_of(["tank_draw"])
SVG = "{http://www.w3.org/2000/svg}"
EM = 0.6 * 14  # of a letter, wider than in any plain typeface

labels = st.text(st.characters(codec="ascii", min_codepoint=32), min_size=1, max_size=90).filter(
    lambda text: bool(text.strip())
)
numbers = st.one_of(
    st.floats(-1e15, 1e15).filter(lambda number: number == 0 or abs(number) > 1e-12),
    st.integers(-20, 20).map(float),
)


def _near(base: float, share: float) -> st.SearchStrategy[float]:
    width = share * (abs(base) or 1.0)
    return st.one_of(st.just(base), st.floats(0, 1).map(lambda part: base + part * width))


# Values of one axis: far apart, close together, or all the same.
spans = st.builds(_near, numbers, st.sampled_from((0.0, 1e-9, 1e-4, 0.03, 1.0, 40.0)))


@st.composite
def axes(draw: st.DrawFn) -> Axis:
    kind = draw(st.sampled_from(KINDS))
    output = Output(name="any", label="any", kind=kind)
    return Axis(draw(labels), kind if draw(st.booleans()) else output)


@st.composite
def charts(draw: st.DrawFn) -> Chart:
    """Any chart that may be declared; the first line is never empty."""
    x, y = draw(spans), draw(spans)
    line = st.builds(
        Line,
        labels,
        st.lists(st.tuples(x, st.one_of(y, y, y, st.none())), max_size=12).map(tuple),
        st.booleans(),
    )
    first = Line(draw(labels), ((draw(x), draw(y)), *draw(line).points), draw(st.booleans()))
    band = st.tuples(x, y, y).map(lambda p: (p[0], min(p[1:]), max(p[1:])))
    return Chart(
        draw(labels),
        draw(labels),
        draw(axes()),
        draw(axes()),
        (first, *draw(st.lists(line, max_size=3))),
        tuple(draw(st.lists(st.builds(Limit, labels, y), max_size=4))),
        tuple(draw(st.lists(st.builds(Mark, labels, x, y, st.booleans()), max_size=3))),
        tuple(
            Band(draw(labels), tuple(p))
            for p in draw(st.lists(st.lists(band, max_size=5), max_size=1))
        ),
    )


@st.composite
def barred(draw: st.DrawFn) -> Bars:
    kind = draw(st.sampled_from((share, *KINDS)))
    lengths = st.one_of(st.just(0.0), st.floats(1e-9, 1e9))
    bars = draw(st.lists(st.builds(Bar, labels, lengths, labels), min_size=1, max_size=6))
    return Bars(draw(labels), draw(labels), kind, tuple(bars))


class Rectangle(NamedTuple):
    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Rectangle") -> bool:
        return max(self.left, other.left) < min(self.right, other.right) and max(
            self.top, other.top
        ) < min(self.bottom, other.bottom)


type Segment = tuple[float, float, float, float]


def parsed(picture: str) -> ET.Element:
    return ET.fromstring(picture)


def number(element: ET.Element, name: str) -> float:
    return float(element.attrib[name])


def letters(text: ET.Element) -> Rectangle:
    """Where the words of a <text> stand, by an estimate of its width."""
    width = EM * len(text.text or "")
    anchor = text.get("text-anchor", "start")
    left = number(text, "x") - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
    return Rectangle(left, number(text, "y") - 11, left + width, number(text, "y") + 4)


def corners(shape: ET.Element) -> list[tuple[float, float]]:
    return [(float(x), float(y)) for x, y in (p.split(",") for p in shape.attrib["points"].split())]


def places(shape: ET.Element) -> list[tuple[float, float]]:
    """The outermost places of any shape."""
    match shape.tag.removeprefix(SVG):
        case "line":
            return [(number(shape, f"x{n}"), number(shape, f"y{n}")) for n in (1, 2)]
        case "polyline" | "polygon":
            return corners(shape)
        case "circle":
            x, y, r = (number(shape, name) for name in ("cx", "cy", "r"))
            return [(x - r, y - r), (x + r, y + r)]
        case "rect":
            x, y = number(shape, "x"), number(shape, "y")
            return [(x, y), (x + number(shape, "width"), y + number(shape, "height"))]
        case "text":
            left, top, right, bottom = letters(shape)
            return [(left, top), (right, bottom)]
    raise AssertionError(f"{shape.tag} is not drawn by any chart")


def crosses(segment: Segment, box: Rectangle) -> bool:
    """Whether a straight line meets a rectangle. Liang and Barsky, 1984, from memory."""
    x, y, x2, y2 = segment
    start, end = 0.0, 1.0
    for delta, near, far in (
        (x2 - x, box.left - x, box.right - x),
        (y2 - y, box.top - y, box.bottom - y),
    ):
        if delta == 0:
            if near >= 0 or far <= 0:
                return False
            continue
        first, last = sorted((near / delta, far / delta))
        start, end = max(start, first), min(end, last)
    return start < end


def shapes_in_key(root: ET.Element, *names: str) -> list[ET.Element]:
    """Shapes of those names under the axis, beside what they stand for."""
    return [each for key in root.iter(f"{SVG}g") for name in names for each in key.iter(SVG + name)]


def shapes_of(root: ET.Element, *names: str) -> list[ET.Element]:
    """Shapes of those names in the picture, in their order; the key is left out."""
    return [each for each in root if each.tag.removeprefix(SVG) in names]


def between(root: ET.Element) -> tuple[tuple[float, float], tuple[float, float]]:
    """Left and right, then top and bottom, of what lies between the axes."""
    axes_and_ticks = [line for line in shapes_of(root, "line") if line.get("class") == "chart-axis"]
    ends = [places(line) for line in axes_and_ticks]
    across = next(line for line in ends if line[0][1] == line[1][1])
    upright = max((line for line in ends if line[0][0] == line[1][0]), key=_tall)
    return (across[0][0], across[1][0]), (min(y for _, y in upright), across[0][1])


def _tall(ends: list[tuple[float, float]]) -> float:
    return abs(ends[0][1] - ends[1][1])


def words_inside(root: ET.Element) -> list[ET.Element]:
    """Texts between the axes: each stands on a patch of its own."""
    return [
        after
        for patch, after in pairwise(root)
        if patch.get("class") == "chart-ground" and after.tag == f"{SVG}text"
    ]


def lines_drawn(root: ET.Element) -> list[Segment]:
    """Every straight piece of the lines and limits in the picture."""
    kinds = {"chart-limit", "chart-drop"}
    limits = [places(line) for line in shapes_of(root, "line") if line.get("class") in kinds]
    lines = [corners(line) for line in shapes_of(root, "polyline")]
    return [(*a, *b) for points in limits + lines for a, b in pairwise(points)]
