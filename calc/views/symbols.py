"""The symbols of the schematic, each centred on (X, y) of the pipe that runs down the drawing.

`look` is the line of a body: whole where something is known of the part, dashed where nothing is.
"""

from collections.abc import Callable, Mapping

from calc.views.html import Safe, joined, tag
from calc.views.lettering import short

X = 48.0
PIPE = "var(--accent, #00525e)"
_GROUND, _WATER = "var(--ground, #fff)", "var(--water, #d5e9eb)"

type Look = dict[str, str]


def body(path: str, look: Look, **more: str) -> Safe:
    """A body of the drawing: white inside, so that the pipe ends at it."""
    return tag("path", d=path, **({"fill": _GROUND} | look | more))


def _fine(path: str, look: Look) -> Safe:
    return tag("path", d=path, **(look | {"fill": "none", "stroke_width": "0.8"}))


def _circle(x: float, y: float, r: float, look: Look) -> Safe:
    place = {"cx": short(x), "cy": short(y), "r": short(r)}
    return tag("circle", **(place | {"fill": _GROUND} | look))


def _water(x: float, y: float, width: float, tall: float) -> Safe:
    place = {"x": short(x), "y": short(y), "width": short(width), "height": short(tall)}
    return tag("rect", fill=_WATER, stroke="none", **place)


def _well(y: float, look: Look) -> Safe:
    casing = f"M{X - 14:g} {y - 30:g}V{y + 30:g}H{X + 14:g}V{y - 30:g}"
    return joined(
        (
            body(casing, look),
            _water(X - 14, y - 4, 28, 34),
            body(casing, look, fill="none"),
            _fine(f"M{X - 38:g} {y - 22:g}H{X - 14:g}M{X + 14:g} {y - 22:g}H{X + 38:g}", look),
            _fine(f"M{X - 14:g} {y - 4:g}H{X + 14:g}", look),
        )
    )


def _pump(y: float, look: Look) -> Safe:
    triangle = f"M{X - 13:g} {y - 8:g}H{X + 13:g}L{X:g} {y + 15:g}Z"
    return joined((_circle(X, y, 16, look), body(triangle, look, fill="none")))


def _tank(y: float, look: Look) -> Safe:
    left, right = X - 22, X + 22
    dome = (
        f"M{left:g} {y + 26:g}V{y - 10:g}Q{left:g} {y - 28:g} {X:g} {y - 28:g}"
        f"Q{right:g} {y - 28:g} {right:g} {y - 10:g}V{y + 26:g}Z"
    )
    water = _water(left, y, 44, 26)
    return joined((body(dome, look), water, body(dome, look, fill="none")))


def _filter(y: float, look: Look) -> Safe:
    lines = "".join(f"M{X - 14:g} {y + dy:g}h28" for dy in (-9, 0, 9))
    box = f"M{X - 19:g} {y - 20:g}h38v40h-38z"
    return joined((body(box, look), _fine(lines, look)))


def _limit(y: float, look: Look) -> Safe:
    path = f"M{X - 9:g} {y - 11:g}h18l-18 22h18zM{X:g} {y:g}h15m0 -8v16"
    return body(path, look)


def _float(y: float, look: Look) -> Safe:
    valve = f"M{X - 9:g} {y - 14:g}h18l-18 22h18zM{X:g} {y - 3:g}L{X + 24:g} {y + 9:g}"
    return joined((body(valve, look), _circle(X + 28, y + 11, 6, look)))


def _aerator(y: float, look: Look) -> Safe:
    box = f"M{X - 30:g} {y - 26:g}h60v52h-60z"
    bubbles = [
        _circle(X + dx, y + dy, r, look | {"stroke_width": "0.8"})
        for dx, dy, r in ((-12, -8, 4), (2, 0, 3), (10, -12, 4), (-4, 7, 2.5), (14, 5, 3))
    ]
    stone = body(f"M{X - 22:g} {y + 14:g}h44v6h-44z", look)
    water = _water(X - 30, y - 18, 60, 44)
    return joined((body(box, look), water, body(box, look, fill="none"), stone, *bubbles))


def _house(y: float, look: Look) -> Safe:
    return body(
        f"M{X - 24:g} {y + 22:g}V{y - 6:g}L{X:g} {y - 24:g}L{X + 24:g} {y - 6:g}V{y + 22:g}Z", look
    )


def open_tank(y: float, look: Look, levels: Mapping[str, float]) -> Safe:
    """The open tank with a line at each level, a share of the height at which the float closes."""
    top, floor = y - 34, y + 34
    wall = f"M{X - 40:g} {top - 8:g}V{floor:g}H{X + 40:g}V{top - 8:g}"
    lines = "".join(f"M{X - 40:g} {floor - 6 - 58 * share:g}h80" for share in levels.values())
    water = _water(X - 40, floor - 64, 80, 64)
    dashed = look | {"stroke_dasharray": "10 3 2 3"}
    return joined((body(wall, look), water, body(wall, look, fill="none"), _fine(lines, dashed)))


SYMBOLS: Mapping[str, Callable[[float, Look], Safe]] = {
    "well": _well,
    "pump_1": _pump,
    "tank_1": _tank,
    "filter": _filter,
    "inlet_limit": _limit,
    "inlet": _float,
    "aerator": _aerator,
    "pump_2": _pump,
    "outlet_limit": _limit,
    "tank_2": _tank,
    "house": _house,
}
