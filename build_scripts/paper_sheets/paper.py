"""What sheets and keys have in common: whose copy it is, and what is told on each page."""

from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple
from xml.etree.ElementTree import Element

from build_scripts.book.tree import make
from calc.coursework.deck import VARIANTS
from calc.coursework.problem import ProblemSet
from calc.coursework.record import Sheet
from calc.coursework.record import sheet as made_sheet

STYLE = Path(__file__).with_name("paper.css")
SIZES = {"Letter": "8.5in 11in", "A4": "210mm 297mm"}
FORMS = {
    "recall": "Recall",
    "one-step": "One step",
    "multi-step": "Several steps",
    "field case": "Field case",
}


class Copy(NamedTuple):
    """A sheet as it is handed to one learner. `label` is what the class list says, or nothing."""

    label: str
    number: int
    sheet: Sheet


def copies(problem_set: ProblemSet, dealt: Iterable[tuple[str, int]], word: str) -> list[Copy]:
    """The sheets of a class, in the order of its list."""
    return [Copy(label, number, made_sheet(problem_set, number, word)) for label, number in dealt]


def whole(title: str, paper: str, heads: Iterable[str], *inside: Element) -> Element:
    """A document whose n-th part, of class `part-n`, has the n-th running head on each page."""
    running = [
        f"@page part{place} {{ @top-left {{ content: {_quoted(said)}; }} }}\n"
        f".part-{place} {{ page: part{place}; }}\n"
        for place, said in enumerate(heads)
    ]
    size = f"@page {{ size: {SIZES[paper]}; }}\n"
    style = STYLE.read_text(encoding="utf-8") + size + "".join(running)
    head = make("head", make("title", title), make("style", style))
    return make("html", head, make("body", *inside), lang="en")


def _quoted(said: str) -> str:
    """A string of CSS: what an instructor called a class may hold anything."""
    return '"' + "".join(f"\\{ord(each):06x}" if each in '"\\<&\n' else each for each in said) + '"'


def marking(problem_set: ProblemSet, copy: Copy) -> str:
    """What tells which key belongs to a sheet."""
    return (
        f"Set {problem_set.name}, variant {copy.number} of {VARIANTS}, revision "
        f"{problem_set.revision}, check code {copy.sheet.code}"
    )


def part(place: int, kind: str, *inside: Element) -> Element:
    """The n-th part, which begins on a new page."""
    return make("section", *inside, class_=f"{kind} part-{place}")
