"""This house on the page: its schematic, its figures part by part, what runs from them, what if."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any, NamedTuple

from calc import demo
from calc.calculators import calculator
from calc.house.runs import Run, runs
from calc.job import Job, compared, kept, read_job, write_job
from calc.model import Case, Choice, Input, Typed
from calc.views.answer import errors, finding_html
from calc.views.html import Safe, cited, joined, tag
from calc.views.jobs import as_kept, came_from, cells, compared_row, table
from calc.views.schematic import parts, schematic
from calc.views.words import output_words
from calc.vocabulary import words

type Data = Mapping[str, Any]
type Reply = dict[str, Any]


class Where(NamedTuple):
    """Where calculators are live: the way to the root, calculator -> page, what to come back to."""

    root: str
    places: Mapping[str, str]
    back: str = "house"


def where(asked: Data) -> Where:
    """What the page says of it."""
    return Where(asked.get("root", ""), asked.get("places", {}), asked.get("back", "house"))


def show(asked: Data) -> Reply:
    """The house in a job: the drawing, the figures, the answers."""
    job = read_job(asked["job"])
    return {"html": house_html(job, where(asked), _units(asked)), "choices": choices(job)}


def demo_job(asked: Data) -> Reply:
    """The invented house as a job, as it was found or as it was left."""
    return {"job": write_job(demo.as_left() if asked.get("left") else demo.as_found())}


def what_if(asked: Data) -> Reply:
    """A copy of the job with one figure changed, and what that changes."""
    old, name = read_job(asked["job"]), asked["name"]
    origin, when = "assumed", asked["when"]
    new = kept(old, name, Typed(asked["text"]), origin, when, _units(asked), note="what if")
    said = as_kept(words()[name], new.values[name])
    new = replace(new, name=f"{old.name[:200]}, what if: {words()[name].label} {said}"[:300])
    changed = [each for each in compared(old, new, _units(asked)) if each.old != each.new]
    heads = ("Figure", "As it is", "What if", "Change")
    parts_ = (
        table("What was changed", heads, [compared_row(each) for each in changed]),
        _answers_table(old, new, _units(asked)),
    )
    return {"job": write_job(new), "html": joined(parts_)}


def house_html(job: Job, place: Where, unit_set: str) -> Safe:
    """All of it."""
    done = runs(job, unit_set)
    return joined(
        (
            tag("figure", schematic(job, "house"), class_="scene"),
            *(run_html(one, place, heading="h3") for one in done),
            tag(
                "details",
                tag("summary", "Every figure, part by part"),
                _figures(job),
                class_="calc-more",
            ),
        )
    )


def run_html(one: Run, place: Where, heading: str = "p", keeps: tuple[str, ...] = ()) -> Safe:
    """What one calculator says of the house, or what it still needs."""
    return tag(
        "section",
        tag(heading, link(one.calculator.name, place, keeps)),
        *_said(one, place.root),
        class_="house-run",
    )


def _said(one: Run, root: str) -> Iterator[Safe]:
    if one.case is None:
        yield tag("p", f"Still missing: {labels(one.missing)}.", class_="house-missing")
        return
    if not one.case.answer:
        yield tag("p", refused_words(one.case), class_="house-missing")
        return
    yield finding_html(one.case, one.case.answer.findings[0], root)
    if one.usual:
        taken = "; ".join(f"{_small(e.label)} {_default(e)} ({e.origin})" for e in one.usual)
        yield tag("p", cited(f"Taken as usual: {taken}.", root), class_="house-usual")


def refused_words(case: Case) -> str:
    """Why there is no answer: each figure concerned, and what is wrong with it."""
    told = (f"{case.calculator.input(n).label}: {why}" for n, why in errors(case).items())
    return " ".join(told)


def link(name: str, place: Where, keeps: tuple[str, ...] = ()) -> Safe:
    """A link that opens a calculator with the job's figures in it.

    keeps -- answers that the way back puts into the job, as output>figure
    """
    page = place.places.get(name, f"reference/calculators/{name}.html")
    words_ = "".join(f"&keeps={each.replace('>', '%3E')}" for each in keeps)
    href = f"{place.root}{page}#{name}&job={place.back}{words_}"
    return tag("a", calculator(name).title, href=href, class_="visit-open")


def choices(job: Job) -> list[tuple[str, str]]:
    """The figures of a house that a "what if" may change: name and label."""
    known = words()
    names = [name for part in parts(job) for name in part.values if name in job.values]
    quantities = [known[name] for name in names]
    return [(e.name, e.label) for e in quantities if isinstance(e, Input) and e.several == 1]


def _answers_table(old: Job, new: Job, unit_set: str) -> Safe:
    """What the runs of two jobs say differently."""
    rows = []
    for before, after in zip(runs(old, unit_set), runs(new, unit_set), strict=True):
        if not (before.case and after.case and before.case.answer):
            continue
        if not after.case.answer:
            rows.append(cells(after.calculator.title, "", refused_words(after.case)))
            continue
        first, second = before.case.answer.findings[0], after.case.answer.findings[0]
        if first.head != second.head:
            rows.append(cells(after.calculator.title, first.head, second.head))
        for output in after.calculator.outputs:
            was, is_ = (output_words(case, output) for case in (before.case, after.case))
            if was != is_:
                rows.append(cells(output.label, was, is_))
    if not rows:
        return tag("p", "It changes no answer.")
    return table("What that changes", ("Answer", "As it is", "What if"), rows)


def _figures(job: Job) -> Safe:
    known = words()
    made = []
    for part in parts(job):
        there = [name for name in part.values if name in job.values]
        rows = [
            cells(known[name].label, as_kept(known[name], job.values[name]),
                  came_from(job.values[name]))
            for name in there
        ]  # fmt: skip
        lacking = [known[name] for name in part.values if name not in job.values]
        if rows:
            made.append(table(part.title, ("Figure", "Value", "From"), rows))
        if lacking:
            made.append(tag("p", f"{part.title}, not measured: {labels(tuple(lacking))}."))
    return joined(made)


def labels(many: tuple[Input | Choice, ...]) -> str:
    """What inputs are called, in a sentence."""
    return "; ".join(_small(each.label) for each in many)


def _small(label: str) -> str:
    return label[0].lower() + label[1:]


def _default(each: Input | Choice) -> str:
    return each.options[each.default] if isinstance(each, Choice) else each.default


def _units(asked: Data) -> str:
    return "si" if asked.get("units") == "si" else "us"
