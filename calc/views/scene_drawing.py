"""The drawing of the system at one moment, in the manner of the handbook's other drawings.

Three line weights: heavy for a pipe with water flowing in it, 1.6 for bodies, fine for the rest.
"""

from collections.abc import Callable, Mapping

from calc.charts import Scene
from calc.views.html import Safe, joined, tag
from calc.views.lettering import WIDTH, short

HEIGHT = 452
LEFT, RIGHT, TOP, BOTTOM = 24.0, 336.0, 170.0, 300.0  # of the open tank
FLOORS = {"well": 108.0, "house": 412.0}  # of the pressure tanks
TANK = 46.0  # height of the water in a full one
BUBBLES = ((44, 3, 0.9), (60, 4, 0.7), (76, 3, 0.8), (52, 4, 0.5), (70, 3, 0.3), (58, 4, 0.15))
# x, radius, and the depth as a share of the water over the stone
_FULL, _INTAKE = 26.0, 20.0  # from the rim to a full tank; from the bottom to the intake
_WATER, _INK = "var(--accent, #00525e)", "currentColor"
_DESCRIPTION = (
    "From the well, pump 1 fills pressure tank 1. From there water goes through the filter, the "
    "inlet limit and the float valve into the open aerated tank. Pump 2 takes it from the intake "
    "near the bottom, past pressure tank 2, to the house. The words under the drawing tell the "
    "moment that is drawn."
)

type At = Callable[[str], dict[str, object]]


def height(full: float, level: float) -> float:
    """Where a level of the open tank stands in the picture; `full` is where the float closes."""
    empty = BOTTOM - _INTAKE
    return empty - level / full * (empty - TOP - _FULL)


def drawing(scene: Scene, look: Mapping[tuple[str, str], str], key: str) -> Safe:
    """The picture. `look` says what each moving part is; `key` makes ids the page's own."""

    def at(part: str) -> dict[str, object]:
        own = {name: value for (of, name), value in look.items() if of == part and name != "text"}
        return {"data_part": part, **{name.replace("-", "_"): value for name, value in own.items()}}

    return tag(
        "svg",
        tag("title", scene.title, id=f"{key}-title"),
        tag("desc", _DESCRIPTION, id=f"{key}-desc"),
        _water(at),
        _pipes(at),
        _bodies(222.0 if scene.limit == "before" else 92.0, at),
        _levels(scene),
        _words(scene, look, at),
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {WIDTH} {HEIGHT}",
        role="img",
        aria_labelledby=f"{key}-title",
        aria_describedby=f"{key}-desc",
        class_="scene-drawing",
        color="var(--ink, #0c1517)",
        font_family="sans-serif",
        font_size="14",
        fill=_INK,
    )


def _line(path: str, **more: object) -> Safe:
    look = {"fill": "none", "stroke": _INK, "stroke_width": "1.6"} | more
    return tag("path", d=path, **look)


def _box(x: float, y: float, width: float, tall: float, **more: object) -> Safe:
    place = {"x": short(x), "y": short(y), "width": short(width), "height": short(tall)}
    return tag("rect", **(place | more))


def _water(at: At) -> Safe:
    """The water in the three tanks, with the line of its surface."""
    look = {"fill": "var(--water, #d5e9eb)", "stroke": _WATER, "stroke_width": "0.8"}
    return joined(
        (
            _box(0, 0, WIDTH, HEIGHT, fill="var(--ground, #fff)"),
            tag("rect", x=short(LEFT), width=short(RIGHT - LEFT), **(look | at("water"))),
            tag("rect", x="110", width="48", **(look | at("well tank"))),
            tag("rect", x="126", width="48", **(look | at("house tank"))),
        )
    )


def _pipes(at: At) -> Safe:
    return joined(
        (
            _line("M40 84H110", stroke=_WATER),
            _line("M158 84H312V184", stroke=_WATER, **at("in pipe")),
            _line("M300 280V412H150", stroke=_WATER, **at("out pipe")),
            _line("M150 412H60", stroke=_WATER, **at("house pipe")),
        )
    )


def _bodies(limit: float, at: At) -> Safe:
    ground = {"fill": "var(--ground, #fff)"}
    circle = {"stroke": _INK, "stroke_width": "1.6", "fill": "var(--ground, #fff)"}
    return joined(
        (
            tag("circle", cx="40", cy="84", r="15", **circle),
            _line("M32 74L55 84L32 94Z"),
            _line("M110 108V70Q110 52 134 52Q158 52 158 70V108Z"),
            _box(205, 72, 34, 40, stroke=_INK, stroke_width="1.6", **ground),
            _line("M209 82h26M209 92h26M209 102h26", stroke_width="0.8"),
            _line(_cock(280, 84), **ground),
            _line("M304 144v-14l16 14v-14zM320 137h6", **at("valve")),
            _line(f"M{LEFT:g} {TOP:g}V{BOTTOM:g}H{RIGHT:g}V{TOP:g}"),
            tag("line", x1="312", y1="184", x2="268", stroke=_INK, stroke_width="1.6", **at("arm")),
            tag("circle", cx="264", r="9", **(circle | at("float"))),
            _line("M40 166V288M30 288h60v8H30z"),
            _bubbles(at),
            _line("M288 280h24"),
            tag("text", "air", x="316", y="292", font_weight="700", **at("air")),
            tag("circle", cx="300", cy="412", r="17", **circle),
            _line("M283 412L308 398V426Z"),
            _line("M126 412V374Q126 356 150 356Q174 356 174 374V412Z"),
            _line(_cock(limit, 412), **ground),
            _line("M12 424V396L36 378L60 396V424Z", **ground),
        )
    )


def _cock(x: float, y: float) -> str:
    return f"M{x - 11:g} {y - 8:g}v16l22 -16v16zM{x:g} {y:g}v-13m-7 0h14"


def _bubbles(at: At) -> Safe:
    look = {"fill": "none", "stroke": _INK, "stroke_width": "0.8"}
    drawn = [
        tag("circle", cx=x, r=r, **(look | at(f"bubble {n}")))
        for n, (x, r, _) in enumerate(BUBBLES)
    ]
    return tag("g", *drawn, **at("bubbles"))


def _levels(scene: Scene) -> Safe:
    dashed = {"stroke_dasharray": "14 4 3 4"}
    lines = (height(scene.full, level) for level in (scene.full, scene.opens, 0.0))
    return joined(
        [_line(f"M{LEFT:g} {short(y)}H{RIGHT:g}", stroke_width="0.8", **dashed) for y in lines]
    )


def _words(scene: Scene, look: Mapping[tuple[str, str], str], at: At) -> Safe:
    """Names, and what the moving parts say of themselves, on a rim of the ground's colour."""

    def told(part: str, x: float, y: float, anchor: str = "start") -> Safe:
        place = {"x": short(x), "y": short(y)} | at(part)
        return tag("text", look[part, "text"], text_anchor=anchor, **place)

    def name(text: str, x: float, y: float, anchor: str = "start") -> Safe:
        return tag("text", text, x=short(x), y=short(y), text_anchor=anchor)

    opens = height(scene.full, scene.opens)
    return tag(
        "g",
        name("Well, pump 1", 4, 44),
        told("pump 1", 4, 60),
        name("Pressure tank 1", 104, 44),
        name("Filter", 204, 66),
        name("Inlet limit", 250, 66),
        told("in flow", 300, 116, "end"),
        name("Float valve", 296, 142, "end"),
        told("valve words", 296, 160, "end"),
        told("blower", 24, 160),
        name("float closes", 100, height(scene.full, scene.full) - 4),
        name("float opens", 100, opens + 14 if opens < BOTTOM - 45 else opens - 4),
        name("intake", 100, height(scene.full, 0.0) - 3),
        told("level", 190, 0),
        name("Pump 2", 290, 350, "end"),
        told("pump 2", 290, 366, "end"),
        told("out flow", 350, 446, "end"),
        name("Pressure tank 2", 150, 340, "middle"),
        name("Outlet limit", 222 if scene.limit == "before" else 104, 446, "middle"),
        name("House", 12, 350),
        told("house flow", 12, 368),
        told("clock", 350, 22, "end"),
        stroke="var(--ground, #fff)",
        stroke_width="3",
        stroke_linejoin="round",
        paint_order="stroke",
    )
