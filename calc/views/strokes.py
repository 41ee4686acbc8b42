"""The lines, bands and marks of a chart as SVG, between axes that are there already.

Presentation attributes do for paper and for programs that read no style sheet; the
handbook's own style sheet overrides their colours. Lines differ by dash as well as tone.
"""

from collections.abc import Iterable, Iterator
from itertools import groupby, pairwise
from typing import NamedTuple

from calc.charts import Band, Line
from calc.views.axes import Scale
from calc.views.html import Safe, tag
from calc.views.lettering import Box, Point, Words, short

DASHES = ("none", "10 5", "3 4", "16 4 3 4 3 4")
LIMIT_DASH = "14 4 3 4"
RADIUS = 5.0  # of a mark
MOST_POINTS = 400  # of one line; above, it is thinned to what the picture can show
COLUMN = 2.0  # wide, in which a thinned line keeps its first, lowest, highest and last point


class Frame(NamedTuple):
    """Where the axes stand, and where an SI value lands between them."""

    x: Scale
    y: Scale
    box: Box

    def place(self, x: float, y: float) -> Point:
        return self.across(x), self.up(y)

    def across(self, x: float) -> float:
        return round(self.box.left + self.x.share(x) * (self.box.right - self.box.left), 1)

    def up(self, y: float) -> float:
        return round(self.box.bottom - self.y.share(y) * (self.box.bottom - self.box.top), 1)


def pieces(line: Line, frame: Frame) -> list[list[Point]]:
    """The unbroken pieces of a line as it is drawn."""
    found = []
    for there, run in groupby(line.points, lambda point: point[1] is not None):
        if there:
            places = [frame.place(x, y) for x, y in run if y is not None]
            found.append(thinned(list(_stepped(places)) if line.steps else places))
    return found


def _stepped(places: list[Point]) -> Iterator[Point]:
    yield places[0]
    for (_, y), (x, next_y) in pairwise(places):
        yield from ((x, y), (x, next_y)) if next_y != y else ((x, y),)


def thinned(places: list[Point]) -> list[Point]:
    """A long line with four points for each column: no peak or pit is lost."""
    if len(places) <= MOST_POINTS:
        return places
    kept: list[Point] = []
    for _, column in groupby(places, lambda place: place[0] // COLUMN):
        run = list(column)
        heights = [y for _, y in run]
        extremes = (heights.index(min(heights)), heights.index(max(heights)))
        kept += [run[n] for n in sorted({0, *extremes, len(run) - 1})]
    return kept


def stroke(number: int, places: list[Point]) -> Safe:
    """A piece of the line of that number; one of a single point is a dot."""
    class_ = f"chart-line-{number + 1}"
    if len(set(places)) == 1:
        x, y = map(short, places[0])
        return tag("circle", cx=x, cy=y, r="2.5", class_=f"chart-dot {class_}", fill="currentColor")
    return tag(
        "polyline",
        points=_corners(places),
        class_=class_,
        fill="none",
        stroke="currentColor",
        stroke_width="2.5",
        stroke_linejoin="round",
        stroke_dasharray=DASHES[number],
    )


def _corners(places: Iterable[Point]) -> str:
    return " ".join(f"{short(x)},{short(y)}" for x, y in places)


def straight(start: Point, end: Point, class_: str, width: str, **more: str) -> Safe:
    (x1, y1), (x2, y2) = (map(short, start), map(short, end))
    return tag(
        "line", x1=x1, y1=y1, x2=x2, y2=y2, class_=class_, stroke="currentColor",
        stroke_width=width, **more,
    )  # fmt: skip


def band(each: Band, frame: Frame) -> Safe:
    upper = [frame.place(x, high) for x, _, high in each.points]
    lower = [frame.place(x, low) for x, low, _ in each.points]
    return area(upper + lower[::-1])


def area(corners: list[Point]) -> Safe:
    """A stretch that is shaded, with an edge that can be seen."""
    return tag(
        "polygon", points=_corners(corners), class_="chart-band", fill="currentColor",
        fill_opacity="0.15", stroke="currentColor", stroke_width="0.75",
    )  # fmt: skip


def limit_line(start: Point, end: Point) -> Safe:
    return straight(start, end, "chart-limit", "1.25", stroke_dasharray=LIMIT_DASH)


def dot(place: Point, here: bool) -> Safe:
    """A mark; that of the present case is filled."""
    x, y = map(short, place)
    return tag(
        "circle", cx=x, cy=y, r=short(RADIUS), fill="currentColor" if here else "#fff",
        class_="chart-here" if here else "chart-mark", stroke="currentColor", stroke_width="1.5",
    )  # fmt: skip


def grid(frame: Frame) -> Iterator[Safe]:
    """Both axes with their ticks and figures, and a hair line for each figure of the y axis."""
    left, top, right, bottom = frame.box
    for tick, figure in zip(frame.y.ticks, frame.y.figures, strict=True):
        y = frame.up(frame.y.unit.into_si(tick))
        yield straight((left, y), (right, y), "chart-grid", "0.5", stroke_opacity="0.4")
        yield Words(figure, left - 6, y + 5, "end").drawn()
    for tick, figure in zip(frame.x.ticks, frame.x.figures, strict=True):
        x = frame.across(frame.x.unit.into_si(tick))
        yield straight((x, bottom), (x, bottom + 5), "chart-axis", "1")
        yield Words(figure, x, bottom + 20, "middle").drawn()
    yield straight((left, bottom), (right, bottom), "chart-axis", "1")
    yield straight((left, bottom), (left, top), "chart-axis", "1")
