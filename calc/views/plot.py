"""A chart over two axes as SVG: what is drawn, and the words in it and under it.

Words stand in the picture only where they meet no line, no other words and no edge.
What finds no such place is told under the axis, in a key.
"""

from collections.abc import Callable, Iterator
from functools import partial
from typing import NamedTuple

from calc.charts import Chart, Limit, Mark
from calc.views.axes import margins, said, x_scale, y_scale
from calc.views.html import Safe, tag
from calc.views.lettering import LEADING, WIDTH, Box, Point, Room, Words, width_of, wrapped
from calc.views.strokes import (
    RADIUS,
    Frame,
    area,
    band,
    dot,
    grid,
    limit_line,
    pieces,
    straight,
    stroke,
)

TALL = 196  # between the axes
SWATCH = 46  # wide, before each entry of the key
GAP = RADIUS + 5  # from the middle of a mark to its words


class Note(NamedTuple):
    """What a thing in the picture is called.

    places -- where the words may stand beside it, the best first
    swatch -- draws a bit of it in the key, on a baseline
    text   -- what the key says
    """

    places: list[Words]
    swatch: Callable[[float], Safe]
    text: str


def plot(chart: Chart, unit_set: str) -> tuple[list[Safe], float]:
    """What is drawn of a chart, and how tall it is."""
    frame = framed(chart, unit_set)
    lines = [pieces(line, frame) for line in chart.lines]
    limits = [_across(limit, frame) for limit in chart.limits]
    room = Room(frame.box)
    for points in [*(piece for line in lines for piece in line), *limits]:
        room.draw(points)
    for mark in chart.marks:
        _keep_clear(room, frame, mark)
    notes = [(note, room.place(note.places)) for note in _notes(chart, frame, unit_set)]
    names = _names(frame)
    key, tall = _key([note for note, placed in notes if not placed], names[-1].y)
    drawn = [
        *(band(each, frame) for each in chart.bands),
        *grid(frame),
        *(limit_line(*ends) for ends in limits),
        *(stroke(n, piece) for n, line in enumerate(lines) for piece in line),
        *(part for mark in chart.marks for part in _mark(mark, frame)),
        *(placed.drawn_on_ground() for _, placed in notes if placed),
        *(words.drawn() for words in names),
        *([tag("g", *key, class_="chart-key")] if key else []),
    ]
    return drawn, tall


def framed(chart: Chart, unit_set: str) -> Frame:
    """The axes of a chart, with room for their figures and for the name of the upright one."""
    places = list(chart.places())
    y = y_scale(chart.y, unit_set, [y for _, y in places] + [limit.y for limit in chart.limits])
    figures = max(map(width_of, y.figures)) + 8
    x = x_scale(chart.x, unit_set, [x for x, _ in places], figures)
    left, right = margins(x, figures)
    top = LEADING * len(wrapped(y.name)) + 14.0
    return Frame(x, y, Box(left, top, WIDTH - right, top + TALL))


def _names(frame: Frame) -> list[Words]:
    """Names of the axes: of the upright one above it, of the other below."""
    under = frame.box.bottom + 20 + LEADING
    above = [Words(text, 2, LEADING * n + 14) for n, text in enumerate(wrapped(frame.y.name))]
    below = enumerate(wrapped(frame.x.name))
    return above + [Words(text, WIDTH - 2, under + LEADING * n, "end") for n, text in below]


def _across(limit: Limit, frame: Frame) -> tuple[Point, Point]:
    y = frame.up(limit.y)
    return (frame.box.left, y), (frame.box.right, y)


def _mark(mark: Mark, frame: Frame) -> Iterator[Safe]:
    """A mark; from that of the present case a line leads down to the axis."""
    place = frame.place(mark.x, mark.y)
    if mark.here:
        yield straight(
            place, (place[0], frame.box.bottom), "chart-drop", "1", stroke_dasharray="2 3"
        )
    yield dot(place, mark.here)


def _keep_clear(room: Room, frame: Frame, mark: Mark) -> None:
    x, y = frame.place(mark.x, mark.y)
    room.take(Box(x - RADIUS - 1, y - RADIUS - 1, x + RADIUS + 1, y + RADIUS + 1))
    if mark.here:
        room.draw([(x, y), (x, frame.box.bottom)])


def _notes(chart: Chart, frame: Frame, unit_set: str) -> Iterator[Note]:
    if len(chart.lines) + len(chart.bands) > 1:
        for number, line in enumerate(chart.lines):
            yield Note([], partial(_line_swatch, number), line.label)
        for each in chart.bands:
            yield Note([], _band_swatch, each.label)
    for limit in chart.limits:
        text = f"{limit.label}: {said(chart.y, unit_set, limit.y)}"
        yield Note(_beside_limit(limit, frame), _limit_swatch, text)
    for mark in chart.marks:
        text = f"{mark.label} {said(chart.y, unit_set, mark.y)}"
        places = _beside_mark(text, frame.place(mark.x, mark.y))
        full = f"{text} at {said(chart.x, unit_set, mark.x)}"
        yield Note(places, partial(_mark_swatch, mark.here), full)


def _beside_limit(limit: Limit, frame: Frame) -> list[Words]:
    (left, y), (right, _) = _across(limit, frame)
    quarter = (right - left) / 4
    return [
        Words(limit.label, x, baseline, anchor)
        for x, anchor in (
            (right - 3, "end"),
            (left + 4, "start"),
            *((left + n * quarter, "middle") for n in (2, 3, 1)),
        )
        for baseline in (y - 6, y + 15)
    ]


def _beside_mark(text: str, place: Point) -> list[Words]:
    """To its right, to its left, then over or under it, shifted as far as still belongs to it."""
    x, y = place
    rows = (y - GAP, y + GAP + 11, y - GAP - 10, y + GAP + 21)
    shifts = (0.5, 0.3, 0.7, 0.1, 0.9)
    over = [(x - shift * width_of(text), row, "start") for row in rows for shift in shifts]
    sides = [(x + GAP, y + 5, "start"), (x - GAP, y + 5, "end")]
    return [Words(text, *at) for at in sides + over]


def _line_swatch(number: int, y: float) -> Safe:
    return stroke(number, [(2, y - 5), (SWATCH - 6, y - 5)])


def _band_swatch(y: float) -> Safe:
    return area([(2, y - 11), (SWATCH - 6, y - 11), (SWATCH - 6, y + 1), (2, y + 1)])


def _limit_swatch(y: float) -> Safe:
    return limit_line((2, y - 5), (SWATCH - 6, y - 5))


def _mark_swatch(here: bool, y: float) -> Safe:
    return dot((SWATCH / 2 - 2, y - 5), here)


def _key(notes: list[Note], below: float) -> tuple[list[Safe], float]:
    """The key under a baseline, and where the picture ends."""
    drawn, y = list[Safe](), below + 4
    for note in notes:
        y += LEADING + 2
        drawn.append(note.swatch(y))
        for n, text in enumerate(wrapped(note.text, WIDTH - SWATCH)):
            y += LEADING if n else 0
            drawn.append(Words(text, SWATCH, y).drawn())
    return drawn, y + 6
