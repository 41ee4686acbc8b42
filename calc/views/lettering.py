"""Words in a picture: how wide they are, where they wrap, and where they fit."""

from collections.abc import Iterable, Iterator
from math import ceil, floor
from textwrap import wrap
from typing import NamedTuple

from calc.views.html import Safe, joined, tag

WIDTH = 360  # of every picture. At the 288 px that a phone of 320 leaves, its letters are 11 px
SIZE = 14  # of a letter
ADVANCE = 0.6 * SIZE  # of a letter: more than the mean of any plain typeface
ASCENT, DESCENT = 11, 4
LEADING = 18  # from one baseline to the next

Point = tuple[float, float]


class Box(NamedTuple):
    """A piece of the picture."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: "Box") -> bool:
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def holds(self, other: "Box") -> bool:
        return (
            self.left <= other.left
            and other.right <= self.right
            and self.top <= other.top
            and other.bottom <= self.bottom
        )


class Words(NamedTuple):
    """Words with their place: anchor "start", "middle" or "end" on a baseline."""

    text: str
    x: float
    y: float
    anchor: str = "start"

    @property
    def box(self) -> Box:
        return self._box(width_of(self.text))

    def _box(self, width: float) -> Box:
        left = self.x - {"start": 0.0, "middle": width / 2, "end": width}[self.anchor]
        return Box(left, self.y - ASCENT, left + width, self.y + DESCENT)

    def drawn(self) -> Safe:
        anchor = None if self.anchor == "start" else self.anchor
        x, y = short(self.x), short(self.y)
        return tag("text", self.text, x=x, y=y, text_anchor=anchor, class_="chart-text")

    def drawn_on_ground(self) -> Safe:
        """Drawn on a patch that hides the grid. A stroke around the letters would do the
        same, but some programs draw it over them."""
        left, top, right, bottom = self._box(0.9 * width_of(self.text))
        size = {"width": short(right - left), "height": short(bottom - top)}
        patch = {"fill": "#fff", "fill_opacity": "0.85", "class_": "chart-ground"}
        return joined([tag("rect", x=short(left), y=short(top), **size, **patch), self.drawn()])


def short(number: float) -> str:
    """A place in the picture, to a tenth.

    >>> short(12.04), short(-0.01)
    ('12', '0')
    """
    return f"{round(number, 1) + 0.0:g}"


def width_of(text: str) -> float:
    return len(text) * ADVANCE


def wrapped(text: str, width: float = WIDTH) -> list[str]:
    """The lines of a text that is too wide for one."""
    return wrap(text, floor(width / ADVANCE)) or [""]


class Room:
    """What is free of a picture's `bounds` after lines were drawn and words placed in it."""

    _COLUMN = 3.0  # wide; a line is remembered by its highest and lowest place in each
    _CLEAR = 1.5  # between words and a line

    def __init__(self, bounds: Box) -> None:
        self._bounds = bounds
        self._taken: list[Box] = []
        self._ink: dict[int, list[tuple[float, float]]] = {}

    def take(self, box: Box) -> None:
        self._taken.append(box)

    def draw(self, points: Iterable[Point]) -> None:
        """A line through the points."""
        before: Point | None = None
        for point in points:
            for column, top, bottom in self._crossed(before or point, point):
                self._ink.setdefault(column, []).append((top, bottom))
            before = point

    def _crossed(self, start: Point, end: Point) -> Iterator[tuple[int, float, float]]:
        (x0, y0), (x1, y1) = sorted((start, end))
        slope = (y1 - y0) / (x1 - x0) if x1 > x0 else 0.0
        for column in range(floor(x0 / self._COLUMN), floor(x1 / self._COLUMN) + 1):
            left = max(x0, column * self._COLUMN)
            right = min(x1, (column + 1) * self._COLUMN)
            ends = (y0 + slope * (left - x0), y0 + slope * (right - x0)) if slope else (y0, y1)
            yield column, min(ends), max(ends)

    def place(self, places: Iterable[Words]) -> Words | None:
        """The first of the places that is free, taken; None if no one is."""
        for words in places:
            if self._is_free(words.box):
                self.take(words.box)
                return words
        return None

    def _is_free(self, box: Box) -> bool:
        if not self._bounds.holds(box) or any(box.meets(taken) for taken in self._taken):
            return False
        top, bottom = box.top - self._CLEAR, box.bottom + self._CLEAR
        columns = range(floor(box.left / self._COLUMN), ceil(box.right / self._COLUMN))
        return not any(
            high < bottom and top < low
            for column in columns
            for high, low in self._ink.get(column, ())
        )
