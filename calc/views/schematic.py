"""The schematic of one house: its parts down the pipe, each with what was measured on it.

A part of which nothing is known yet is drawn dashed. What the house does not have is not drawn.
"""

from collections.abc import Iterator

from calc.house.parts import PARTS, Part, named
from calc.job import Job, si_of
from calc.model import Choice, Input
from calc.views.html import Safe, joined, tag
from calc.views.jobs import ORIGINS, as_kept
from calc.views.lettering import WIDTH, short
from calc.views.symbols import PIPE, SYMBOLS, X, open_tank
from calc.views.words import shown
from calc.vocabulary import words

_LINE, _ROOM, _TALL = 18.0, 30.0, 84.0  # a line of text; around it; the least that a part takes
_LEVELS = ("float_closed", "float_open", "lock_at")
_UNKNOWN, _BEGUN = "nothing measured yet", "not all measured yet"
_INK = "currentColor"


def schematic(job: Job, key: str) -> Safe:
    """The drawing of the house in a job; ids begin with `key`."""
    drawn, y = [], 0.0
    for part in parts(job):
        lines = told(job, part)
        tall = max(_TALL, _ROOM + _LINE * (len(lines) + 1))
        drawn.append(_part(job, part, lines, y + tall / 2))
        y += tall
    title = f"{job.name}, {job.date}"
    return tag(
        "svg",
        tag("title", title, id=f"{key}-title"),
        tag("desc", _described(job), id=f"{key}-desc"),
        tag("rect", width=short(WIDTH), height=short(y), fill="var(--ground, #fff)"),
        tag("path", d=f"M{X:g} 40V{y - 40:g}", stroke=PIPE, stroke_width="2.8"),
        joined(drawn),
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {WIDTH} {short(y)}",
        role="img",
        aria_labelledby=f"{key}-title",
        aria_describedby=f"{key}-desc",
        class_="scene-drawing",
        color="var(--ink, #0c1517)",
        font_family="sans-serif",
        font_size="14",
        fill=_INK,
    )


def parts(job: Job) -> list[Part]:
    """The parts this house has, in the order of its water."""
    named_ = {part.name: part for part in PARTS}
    chosen = {name: value.value for name, value in job.values.items()}
    if chosen.get("inlet_limit") == "none":
        del named_["inlet_limit"]
    found = list(named_.values())
    if chosen.get("limit") == "after":
        limit, tank = (found.index(named_[name]) for name in ("outlet_limit", "tank_2"))
        found[limit], found[tank] = found[tank], found[limit]
    return found


def told(job: Job, part: Part) -> list[str]:
    """What the drawing says of a part: the lines whose figures are all in the job."""
    begun = any(name in job.values for name in part.values)
    return list(_told(job, part)) or [_BEGUN if begun else _UNKNOWN]


def _told(job: Job, part: Part) -> Iterator[str]:
    known = words()
    for line in part.lines:
        names = named(line)
        if not {*names} <= {*job.values}:
            continue
        if names == ["lock_at"] and not si_of(job, "lock_at"):
            yield "no low-level switch"
        else:
            yield line.format(**{name: _figure(known[name], job, name) for name in names})


def _figure(each: Input | Choice, job: Job, name: str) -> str:
    """As it was typed; what a calculator left, to three digits, as a drawing shows it."""
    value, si = job.values[name], si_of(job, name)
    if value.origin in ORIGINS or si is None or isinstance(each, Choice):
        return as_kept(each, value)
    return shown(si, each, "us")


def _part(job: Job, part: Part, lines: list[str], y: float) -> Safe:
    look = {"stroke": _INK, "stroke_width": "1.6", "stroke_linejoin": "round"}
    if lines == [_UNKNOWN]:
        look["stroke_dasharray"] = "5 3"
    symbol = (
        open_tank(y, look, _levels(job))
        if part.name == "open_tank"
        else SYMBOLS[part.name](y, look)
    )
    top = y - _LINE * len(lines) / 2 + 5
    words_ = [tag("text", part.title, x="104", y=short(top), font_weight="700")]
    words_ += [
        tag("text", line, x="104", y=short(top + _LINE * place))
        for place, line in enumerate(lines, 1)
    ]
    return tag("g", symbol, *words_)


def _levels(job: Job) -> dict[str, float]:
    """The levels of the open tank as shares of the one at which its float closes."""
    levels = {name: si_of(job, name) for name in _LEVELS}
    full = levels["float_closed"]
    return {name: level / full for name, level in levels.items() if full and level}


def _described(job: Job) -> str:
    """The drawing in sentences."""
    return " ".join(f"{part.title}: {'; '.join(told(job, part))}." for part in parts(job))
