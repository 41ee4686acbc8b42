"""The ```drawing fence: a drawing of the chapter, from docs/drawings/NAME.svg.

    ```drawing
    open-tank-system
    From the well to the house. The letters are used through this chapter.
    ```

The first line names the file; what follows is the caption. A file is plain SVG that begins with its
title and description and draws only what is its own. `LOOKS` says what a class means, symbols.svg
what `href="#valve"` and `url(#water)` are, and a text of the class letter gets its circle.
"""

import re
from functools import cache
from pathlib import Path
from typing import Any
from xml.etree import ElementTree as ET

from pymdownx.superfences import SuperFencesException

from calc.views.html import Safe, tag

FOLDER = Path(__file__).resolve().parents[1] / "docs" / "drawings"
SVG = "http://www.w3.org/2000/svg"
GROUND, WATER = "var(--ground, #fff)", "var(--accent, #00525e)"
INK = {"stroke": "currentColor"}
# Three line weights: 2.8 pipe that carries water, 1.6 bodies, 0.8 hatching, levels and dashes.
LOOKS = {
    "pipe": {"fill": "none", "stroke": WATER, "stroke-width": "2.8", "stroke-linejoin": "round"},
    "body": {"fill": "none", "stroke-width": "1.6", **INK},
    "fine": {"fill": "none", "stroke-width": ".8", **INK},
    "dashed": {"fill": "none", "stroke-width": ".8", "stroke-dasharray": "14 4 3 4", **INK},
    "ground": {"fill": GROUND},
    "water": {"fill": WATER},
    "air": {"fill": "currentColor"},
    "names": {
        "fill": "currentColor",
        "stroke": GROUND,
        "stroke-width": "4",
        "stroke-linejoin": "round",
        "paint-order": "stroke",
    },
    "letter": {"fill": "currentColor", "font-weight": "700", "text-anchor": "middle"},
}
WHOLE = {
    "class": "drawing",
    "role": "img",
    "color": "var(--ink, #0c1517)",
    "font-family": "var(--lettering, -apple-system, 'Segoe UI', Roboto, Arial, sans-serif)",
    "font-size": "15",
}
_POINTS_TO = re.compile(r"#([\w-]+)")


def figure(source: str, *_args: Any, **_options: Any) -> Safe:
    """The fence as HTML. superfences swallows every exception but its own."""
    name, _, caption = source.strip().partition("\n")
    try:
        picture = drawing(name.strip())
    except (OSError, KeyError, ET.ParseError) as wrong:
        raise SuperFencesException(f"in the drawing {name}: {wrong}") from wrong
    told = tag("figcaption", " ".join(caption.split())) if caption else ""
    return tag("figure", picture, told, class_="drawing-figure")


def drawing(name: str) -> Safe:
    """The drawing, ready to stand in a page. OSError, KeyError or ParseError if it cannot be."""
    svg = ET.parse(FOLDER / f"{name}.svg").getroot()
    _dress(svg)
    width, height = svg.attrib["viewBox"].split()[2:]
    svg.insert(
        2, ET.Element(f"{{{SVG}}}rect", {"width": width, "height": height} | LOOKS["ground"])
    )
    svg.insert(2, _symbols(svg))
    for element in svg.iter():
        for attribute, value in element.attrib.items():
            if attribute == "id":
                element.set(attribute, f"{name}-{value}")
            elif attribute == "href" or "url(#" in value:
                element.set(attribute, _POINTS_TO.sub(rf"#{name}-\1", value))
    title, desc = svg[:2]
    title.set("id", f"{name}-title")
    desc.set("id", f"{name}-desc")
    svg.attrib |= WHOLE | {"aria-labelledby": f"{name}-title", "aria-describedby": f"{name}-desc"}
    ET.register_namespace("", SVG)
    return Safe(ET.tostring(svg, encoding="unicode"))


def _dress(svg: ET.Element) -> None:
    """Put in the attributes that a class stands for, and the circles of the letters."""
    for parent in list(svg.iter()):
        for place, child in reversed(list(enumerate(parent))):
            if child.get("class") == "letter":
                x, y = float(child.attrib["x"]), float(child.attrib["y"])
                at = {"cx": f"{x:g}", "cy": f"{y - 5:g}", "r": "11"}
                parent.insert(
                    place, ET.Element(f"{{{SVG}}}circle", at | LOOKS["body"] | LOOKS["ground"])
                )
        if of := parent.attrib.pop("class", None):
            parent.attrib = LOOKS[of] | parent.attrib


def _symbols(svg: ET.Element) -> ET.Element:
    """What it uses of symbols.svg, and what that uses in turn. KeyError if there is none."""
    own = {element.get("id", "") for element in svg.iter()}
    found = ET.Element(f"{{{SVG}}}defs")
    wanted = _used(svg) - own
    while wanted:
        name = min(wanted)
        symbol = ET.fromstring(_library()[name])
        found.append(symbol)
        own.add(name)
        wanted = (wanted | _used(symbol)) - own
    return found


def _used(tree: ET.Element) -> set[str]:
    return {
        name
        for element in tree.iter()
        for attribute, value in element.attrib.items()
        if attribute == "href" or "url(#" in value
        for name in _POINTS_TO.findall(value)
    }


@cache
def _library() -> dict[str, str]:
    symbols = ET.parse(FOLDER / "symbols.svg").getroot()
    _dress(symbols)
    return {each.attrib["id"]: ET.tostring(each, encoding="unicode") for each in symbols}
