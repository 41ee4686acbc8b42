"""The whole system drawn at one moment of a run, and what changes it to any other.

Each part that moves carries `data-part`; a frame says for every part and attribute what it is
at a moment. The picture is drawn from one frame; `docs/app/calc-scene.js` puts another in.
"""

import json
from collections.abc import Mapping

from calc.charts import Moment, Scene
from calc.model import Case
from calc.units import duration, flow, minute, volume
from calc.views.html import Safe, tag
from calc.views.lettering import short
from calc.views.scene_drawing import BOTTOM, BUBBLES, FLOORS, TANK, drawing, height
from calc.views.words import shown, spoken

_HEAVY, _FINE = "4", "0.8"  # a pipe with water flowing in it, and one without

type Frame = Mapping[tuple[str, str], str]


def scene_figure(case: Case, scene: Scene, key: str) -> Safe:
    """The drawing with its slider, and the same moments in words; ids begin with `key`."""
    frames = [frame(scene, moment, case.unit_set) for moment in scene.moments]
    parts = list(frames[0])
    run = {"parts": parts, "moments": [[one[part] for part in parts] for one in frames]}
    slide = f"{key}-moment"
    return tag(
        "figure",
        tag(
            "calc-scene",
            drawing(scene, frames[scene.shown], key),
            tag(
                "p",
                tag("label", "Step through the run", for_=slide),
                tag(
                    "input",
                    type="range",
                    id=slide,
                    min=0,
                    max=len(frames) - 1,
                    step=1,
                    value=scene.shown,
                    aria_valuetext=frames[scene.shown]["slide", "aria-valuetext"],
                    data_part="slide",
                ),
                class_="scene-slide",
                hidden=True,
            ),
            tag("p", frames[scene.shown]["says", "text"], class_="scene-says", data_part="says"),
            data_run=json.dumps(run, ensure_ascii=False, separators=(",", ":")),
        ),
        tag("figcaption", f"{scene.title}. {scene.says}"),
        tag(
            "details",
            tag("summary", "What happened, in order"),
            _table(scene, case.unit_set),
            class_="scene-moments",
        ),
        class_="calc-chart scene",
    )


def clock(time: float) -> str:
    """A time of the run: 47 s, 6 min 14 s."""
    return spoken(time, duration, "us") if time >= minute else f"{time:.0f}\u00a0s"


def moment_words(moment: Moment, unit_set: str) -> str:
    """One moment in words: when, what, and the level."""
    level = spoken(moment.level, volume, unit_set)
    return f"At {clock(moment.time)}: {moment.says or 'on the way'}. Level {level}."


def frame(scene: Scene, moment: Moment, unit_set: str) -> Frame:
    """What every part is at a moment."""
    surface = height(scene.full, moment.level)
    float_y = min(max(surface, height(scene.full, scene.full)), height(scene.full, 0.0) - 12)
    said = moment_words(moment, unit_set)
    look: dict[tuple[str, str], str] = {
        ("says", "text"): said,
        ("slide", "aria-valuetext"): said,
        ("clock", "text"): clock(moment.time),
        ("water", "y"): short(surface),
        ("water", "height"): short(BOTTOM - surface),
        ("level", "y"): short(min(surface + 18, BOTTOM - 6)),
        ("level", "text"): shown(moment.level, volume, unit_set),
        ("float", "cy"): short(float_y),
        ("arm", "y2"): short(float_y),
        ("air", "visibility"): "visible" if "air" in moment.on else "hidden",
        ("bubbles", "visibility"): "visible" if "blower" in moment.on else "hidden",
        ("blower", "text"): "blower runs" if "blower" in moment.on else "blower stands",
        ("pump 1", "text"): "runs" if "pump 1" in moment.on else "rests",
        ("pump 1", "font-weight"): "700" if "pump 1" in moment.on else "400",
        ("pump 2", "text"): _pump_words(moment),
        ("pump 2", "font-weight"): "700" if "pump 2" in moment.on else "400",
    }
    for n, (_, _, deep) in enumerate(BUBBLES):
        look[f"bubble {n}", "cy"] = short(surface + deep * (BOTTOM - 12 - surface))
    flows = {"in": moment.inflow, "out": moment.pumped, "house": moment.delivered}
    for name, passes in flows.items():
        look[f"{name} pipe", "stroke-width"] = _HEAVY if passes else _FINE
        look[f"{name} flow", "text"] = shown(passes, flow, unit_set)
    for name, share in (("well", moment.well), ("house", moment.house)):
        look[f"{name} tank", "y"] = short(FLOORS[name] - share * TANK)
        look[f"{name} tank", "height"] = short(share * TANK)
    look["valve", "fill"] = "currentColor" if "float" not in moment.on else "var(--ground, #fff)"
    look["valve words", "text"] = "open" if "float" in moment.on else "shut"
    return look


def _pump_words(moment: Moment) -> str:
    if "locked" in moment.on:
        return "locked out"
    if "air" in moment.on:
        return "draws air"
    return "runs" if "pump 2" in moment.on else "rests"


def _table(scene: Scene, unit_set: str) -> Safe:
    """The moments as a table."""
    heads = ("Time", "What happens", "Level", "Flow in", "Pump 2", "House")
    rows = [
        (
            clock(each.time),
            each.says or "on the way",
            shown(each.level, volume, unit_set),
            shown(each.inflow, flow, unit_set),
            f"{_pump_words(each)}, {shown(each.pumped, flow, unit_set)}",
            shown(each.delivered, flow, unit_set),
        )
        for each in scene.moments
    ]
    return tag(
        "table",
        tag("caption", f"{scene.title}. Flows are those from that moment on."),
        tag("thead", tag("tr", *(tag("th", head, scope="col") for head in heads))),
        tag("tbody", *(tag("tr", *(tag("td", cell) for cell in row)) for row in rows)),
        tabindex="0",  # keys reach it, for on a narrow screen it scrolls
    )
