"""Fillings of the drawings as lines: Chromium prints each pattern as a picture, some of a megabyte.

A shape that was filled with a pattern is left empty, and the pattern's tile is laid side by side
behind it, cut off at its outline.
"""

import re
from collections.abc import Iterator
from itertools import count
from math import floor
from xml.etree.ElementTree import Element

from build_scripts.book.tree import make

PLACED = ("d", "x", "y", "width", "height", "cx", "cy", "r", "rx", "ry")
TAKES = {"M": 2, "L": 2, "H": 1, "V": 1, "Q": 4, "T": 2, "C": 6, "S": 4, "A": 7, "Z": 0}
_PART = re.compile(r"([a-zA-Z])([^a-zA-Z]*)")
_NUMBER = re.compile(r"-?(?:\d+\.?\d*|\.\d+)")

type Box = tuple[float, float, float, float]  # left, top, right, bottom


def as_lines(body: Element) -> None:
    """Lay the tiles of every pattern in `body` where it fills a shape."""
    patterns = {f"url(#{each.get('id')})": each for each in body.iter("pattern")}
    numbers = count(1)
    for parent in list(body.iter()):
        for place, shape in reversed(list(enumerate(parent))):
            pattern = patterns.get(shape.get("fill", ""))
            if pattern is not None:
                parent[place] = _laid(shape, pattern, f"fill-{next(numbers)}")
    for pattern in patterns.values():
        pattern.tag = "g"


def _laid(shape: Element, pattern: Element, name: str) -> Element:
    geometry = {each: shape.attrib[each] for each in PLACED if each in shape.attrib}
    cut = make("clipPath", Element(shape.tag, geometry), id=name)
    tiles = Element("g", {"clip-path": f"url(#{name})", "stroke": "none", "fill": "none"})
    wide, tall = float(pattern.attrib["width"]), float(pattern.attrib["height"])
    left, top, right, bottom = _box(shape)
    for x in _steps(left, right, wide):
        for y in _steps(top, bottom, tall):
            at = {"href": f"#{pattern.get('id')}", "x": f"{x:g}", "y": f"{y:g}"}
            tiles.append(Element("use", at))
    moved = {"transform": shape.attrib.pop("transform")} if "transform" in shape.attrib else {}
    shape.set("fill", "none")
    whole = Element("g", moved)
    whole.extend((cut, tiles, shape))
    whole.tail, shape.tail = shape.tail, None
    return whole


def _steps(start: float, end: float, step: float) -> Iterator[float]:
    first = floor(start / step)
    return (number * step for number in range(first, floor(end / step) + 1))


def _box(shape: Element) -> Box:
    """A box that holds the shape: of a curve the points that steer it."""
    if shape.tag == "path":
        return _around(list(_points(shape.attrib["d"])))
    of = {each: float(shape.get(each, "0")) for each in PLACED if each != "d"}
    if shape.tag == "circle":
        return of["cx"] - of["r"], of["cy"] - of["r"], of["cx"] + of["r"], of["cy"] + of["r"]
    return of["x"], of["y"], of["x"] + of["width"], of["y"] + of["height"]


def _around(points: list[tuple[float, float]]) -> Box:
    xs, ys = zip(*points, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _points(path: str) -> Iterator[tuple[float, float]]:
    x = y = x0 = y0 = 0.0
    for letter, written in _PART.findall(path):
        kind = letter.upper()
        figures = [float(each) for each in _NUMBER.findall(written)]
        if kind == "Z":
            x, y = x0, y0
        for start in range(0, len(figures), TAKES[kind] or 1):
            given = figures[start : start + TAKES[kind]]
            for point in _pairs(kind, given, (x, y), letter.islower()):
                yield point
                end = point
            x, y = end
            if kind == "M" and start == 0:
                x0, y0 = end


def _pairs(
    kind: str, given: list[float], at: tuple[float, float], moves: bool
) -> Iterator[tuple[float, float]]:
    """The points that one command names; `moves`: counted from where the last one ended."""
    from_x, from_y = at if moves else (0.0, 0.0)
    if kind == "H":
        yield from_x + given[0], at[1]
    elif kind == "V":
        yield at[0], from_y + given[0]
    else:
        given = given[5:] if kind == "A" else given
        yield from ((from_x + a, from_y + b) for a, b in zip(given[::2], given[1::2], strict=True))
