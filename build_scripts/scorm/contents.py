"""The files of a package: the page, its looks, its script, and the set as a script."""

import html
import json
import re
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from calc.coursework.deck import VARIANTS
from calc.coursework.helping import full_working
from calc.coursework.package import package
from calc.coursework.problem import Problem, ProblemSet
from calc.coursework.variants import variant
from calc.quantity import KINDS
from calc.views.reasons import REASONS

ROOT = Path(__file__).parents[2]
PLAYER = Path(__file__).parent / "player"
ESBUILD = ROOT / "node_modules" / ".bin" / "esbuild"
LOOKS = ROOT / "docs" / "app" / "handbook.css"
SAID = ("blank", "unreadable", "ambiguous", "unknown unit", "wrong kind")
MASTERY = 70.0  # per cent; common practice, no source

_COLOURS = re.compile(r"^\[data-md-color-scheme\] \{\n(.*?)^\}", re.MULTILINE | re.DOTALL)
_DARK = re.compile(r"\[data-md-color-scheme=\"slate\"\] \{\n(.*?)\}", re.DOTALL)
_FIGURE = re.compile(r"\d[\d.\u202f]*")


def contents(
    problem_set: ProblemSet,
    word: str = "",
    answers: bool = True,
    section: str = "",
    mastery: float = MASTERY,
) -> dict[str, bytes]:
    """Name -> bytes of every file but the manifest."""
    page = (PLAYER / "index.html").read_text(encoding="utf-8")
    told = book(problem_set, word, answers, section, mastery)
    return {
        "index.html": page.replace("{title}", html.escape(problem_set.title)).encode(),
        "player.css": f"{colours()}{(PLAYER / 'player.css').read_text(encoding='utf-8')}".encode(),
        "player.js": script(),
        "set.js": as_script(told).encode(),
    }


def book(
    problem_set: ProblemSet, word: str, answers: bool, section: str, mastery: float
) -> dict[str, Any]:
    """What the player is given. Formulas are named in the set and written out by `as_script`."""
    told: dict[str, Any] = {
        "set": package(problem_set, word, answers),
        "section": section,
        "mastery": mastery,
        "reasons": {name: REASONS[name] for name in SAID},
        "kinds": [
            [kind.name, sorted({text for unit in kind.units for text in (unit.symbol, *unit.also)})]
            for kind in KINDS
        ],
    }
    for _, symbols in told["kinds"]:
        if "" in symbols:
            symbols.remove("")
    if answers:
        told["working"] = {
            each.name: working(problem_set, each.name, word)
            for each in problem_set.problems
            if isinstance(each, Problem)
        }
    return told


def working(problem_set: ProblemSet, name: str, word: str) -> dict[str, Any]:
    """The working of all variants: texts that differ in their figures only, once, and the figures.

    `shapes` are texts cut where a figure stands; a row is the place of its shape and the figures.
    """
    shapes: dict[tuple[str, ...], int] = {}
    rows = list[list[int | str]]()
    for number in range(1, VARIANTS + 1):
        text = "\n".join(full_working(variant(problem_set, name, number, word)))
        shape = tuple(_FIGURE.split(text))
        rows.append([shapes.setdefault(shape, len(shapes)), *_FIGURE.findall(text)])
    return {"shapes": list(map(list, shapes)), "rows": rows}


def as_script(told: dict[str, Any]) -> str:
    """The book as a script. Formulas become functions, since an LMS may forbid `eval`."""
    steps = ",".join(f"{json.dumps(each)}:k=>{each}" for each in sorted({*_formulas(told["set"])}))
    data = json.dumps(told, ensure_ascii=False, separators=(",", ":"))
    return f"globalThis.coursework={data};coursework.steps={{{steps}}};\n"


def _formulas(told: dict[str, Any]) -> Iterator[str]:
    for problem in told["problems"]:
        for question in problem.get("questions", ()):
            yield from (script for _, script in question.get("follows", ()))


def colours() -> str:
    """The handbook's colours and line weights, light and dark."""
    css = LOOKS.read_text(encoding="utf-8")
    light, dark = _COLOURS.search(css), _DARK.search(css)
    if not light or not dark:
        raise RuntimeError(f"{LOOKS.name} has its colours elsewhere now")
    return (
        f":root {{\n{light[1]}}}\n@media (prefers-color-scheme: dark) {{ :root {{\n{dark[1]}}} }}\n"
    )


def script() -> bytes:
    """The player as one plain script: a browser that reads from a disk runs no modules."""
    shared = ("--bundle", "--format=iife", "--minify", "--charset=utf8", "--log-level=warning")
    command = [str(ESBUILD), str(PLAYER / "main.mjs"), *shared]
    return subprocess.run(command, check=True, capture_output=True).stdout
