"""Pictures of treatment equipment for a train drawn down the page, in the handbook's manner.

Each is 50 tall, stands over the pipe at `PIPE`, and hides it. Line weights: 4 for the pipe, 1.6
for bodies, 0.8 for what is in them.
"""

from collections.abc import Callable, Mapping

from calc.views.html import Safe, joined, tag
from calc.views.lettering import short

PIPE = 40
TALL = 50.0
INK, WATER = "currentColor", "var(--accent, #00525e)"
_GROUND, _WET = "var(--ground, #fff)", "var(--water, #d5e9eb)"


def symbol(name: str, top: float) -> Safe:
    """The picture of that name, its top edge at `top`."""
    return tag("g", *SYMBOLS[name](), transform=f"translate(0 {short(top)})")


def _body(path: str, fill: str = _GROUND) -> Safe:
    return tag("path", d=path, fill=fill, stroke=INK, stroke_width="1.6")


def _fine(path: str, stroke: str = INK) -> Safe:
    return tag("path", d=path, fill="none", stroke=stroke, stroke_width="0.8")


def _bed(*inside: Safe) -> list[Safe]:
    """A tall tank with a dome, a valve on top and what is in it."""
    return [_body("M24 50V14Q24 5 40 5T56 14V50Z"), _body("M34 0h12v7h-12z"), *inside]


def _dots(radius: float, fill: str, apart: int) -> Safe:
    """Grains of a bed, in rows."""
    places = [(x, y) for y in range(24, 49, apart) for x in range(29, 53, apart)]
    look = {"fill": fill, "stroke": INK, "stroke_width": "0.8"}
    return joined([tag("circle", cx=x, cy=y, r=radius, **look) for x, y in places])


def _pressure_tank(x: int) -> list[Safe]:
    return [
        _body(f"M{x} 38V17q0 -12 12 -12t12 12V38Z"),
        tag("path", d=f"M{x} 24h24v14h-24z", fill=_WET, stroke=WATER, stroke_width="0.8"),
        _body(f"M{x} 38V17q0 -12 12 -12t12 12V38Z", "none"),
        tag("path", d=f"M{x} 38H{PIPE}", fill="none", stroke=WATER, stroke_width="1.6"),
    ]


def _pump() -> list[Safe]:
    circle = {"stroke": INK, "stroke_width": "1.6", "fill": _GROUND}
    return [
        *_pressure_tank(58),
        tag("circle", cx=PIPE, cy=25, r=15, **circle),
        _body("M29 15H51L40 40Z", "none"),
    ]


def _well() -> list[Safe]:
    return [_fine("M14 12l-6 6M22 12l-6 6M72 12l-6 6M64 12l-6 6"), *_pump(), _body("M8 12H24")]


def _cartridge() -> list[Safe]:
    return [_body("M24 4h32v8h-32zM28 12h24v34q-12 8 -24 0z"), _fine("M33 20h14M33 28h14M33 36h14")]


def _sediment() -> list[Safe]:
    return [_body("M24 4h32v8h-32zM28 12h24v26l-12 12l-12 -12z"), _fine("M28 24l24 8M28 32l24 -8")]


def _uv() -> list[Safe]:
    rays = "M20 12l-8 -4M20 25h-9M20 38l-8 4M60 12l8 -4M60 25h9M60 38l8 4"
    return [_body("M28 2h24v46h-24z"), _body("M37 8h6v34h-6z"), _fine(rays)]


def _soda_ash() -> list[Safe]:
    circle = {"stroke": INK, "stroke_width": "1.6", "fill": _GROUND}
    return [
        _body("M4 22h24v26h-24z"),
        tag("path", d="M4 32h24v16h-24z", fill=_WET, stroke=WATER, stroke_width="0.8"),
        _body("M4 22h24v26h-24z", "none"),
        _body("M16 40V12H40", "none"),
        tag("circle", cx=16, cy=12, r=8, **circle),
        _body("M34 6l12 6l-12 6z"),
    ]


def _open_tank() -> list[Safe]:
    bubbles = [(20, 38, 3), (26, 28, 4), (16, 26, 3), (32, 40, 3), (50, 34, 3), (58, 26, 3)]
    look = {"fill": "none", "stroke": INK, "stroke_width": "0.8"}
    return [
        tag("path", d="M8 4H72V48H8z", fill=_GROUND),
        tag("path", d="M8 16H72V48H8z", fill=_WET, stroke=WATER, stroke_width="0.8"),
        tag("path", d="M40 0V12M40 40V50", fill="none", stroke=WATER, stroke_width="4"),
        _body("M8 2V48H72V2", "none"),
        *(tag("circle", cx=x, cy=y, r=r, **look) for x, y, r in bubbles),
    ]


def _house() -> list[Safe]:
    return [_body("M14 48V22L40 4L66 22V48Z"), _fine("M34 48V34h12V48")]


SYMBOLS: Mapping[str, Callable[[], list[Safe]]] = {
    "well": _well,
    "sediment": _sediment,
    "soda_ash": _soda_ash,
    "neutralizer": lambda: _bed(_dots(2.4, _GROUND, 7)),
    "iron_filter": lambda: _bed(_dots(2.0, INK, 6)),
    "softener": lambda: [
        *_bed(_dots(1.6, _WET, 4)),
        _body("M60 26h16v24h-16z"),
        _fine("M60 34h16"),
    ],
    "carbon": lambda: _bed(
        _fine(
            "M24 26l24 24M32 20l24 24M40 20l16 16M24 36l14 14"
            "M56 26l-24 24M48 20l-24 24M40 20l-16 16M56 36l-14 14"
        )
    ),
    "tank": _open_tank,
    "pump": _pump,
    "cartridge": _cartridge,
    "uv": _uv,
    "house": _house,
}
