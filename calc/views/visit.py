"""A visit on the page: its steps as a sheet to fill, and what a job has of them."""

from collections.abc import Iterator, Mapping
from typing import Any

from calc.calculators import calculator
from calc.errors import Refused
from calc.house.runs import is_example, run
from calc.job import Job, kept, read_job, typed_value, write_job
from calc.model import Calculator, Choice, Input, Typed
from calc.views.house import Where, labels, link, run_html, where
from calc.views.html import Safe, joined, tag
from calc.views.jobs import job_refusal_words
from calc.visits.path import Step, Visit, visit_of
from calc.vocabulary import words

type Data = Mapping[str, Any]
type Reply = dict[str, Any]


def show(asked: Data) -> Reply:
    """How far a job is on a visit: its figures, the steps that are done, the answers.

    visit -- its name; `table` is the visit itself, as the page has it
    """
    job, name = read_job(asked["job"]), asked["visit"]
    gone, place = visit_of(asked["table"]), where(asked)
    units = "si" if asked.get("units") == "si" else "us"
    done = [step.name for step in gone.steps if is_done(job, name, step)]
    parts = {"progress": _progress(job, name, gone)}
    for step in gone.steps:
        at = place._replace(back=f"visit.{name}.{step.name}")
        parts[f"answer-{step.name}"] = joined(list(_answer(job, name, step, at, units)))
    return {"parts": parts, "fields": _fields(job, gone, units), "done": done}


def fill_in(asked: Data) -> Reply:
    """The job with one figure that was typed on a sheet, or why it is refused."""
    job, name = read_job(asked["job"]), asked["name"]
    units = "si" if asked.get("units") == "si" else "us"
    given = Typed(asked["text"], asked.get("unit", ""))
    if job.values.get(name) and typed_value(job.values[name])[:2] == given[:2]:
        return {"job": asked["job"]}
    try:
        return {"job": write_job(kept(job, name, given, "measured", asked["when"], units))}
    except Refused as refused:
        return {"refused": job_refusal_words(refused)}


def missing(job: Job, step: Step) -> list[Input | Choice]:
    """Figures that a step asks for, and that the job has not."""
    known = words()
    wanted = (*step.asks, *(each.partition(">")[2] for each in step.keeps))
    return [known[name] for name in dict.fromkeys(wanted) if name not in job.values]


def is_done(job: Job, name: str, step: Step) -> bool:
    """Whether a step is ticked; a figure alone may come from an earlier visit."""
    return f"{name}.{step.name}" in job.marks


def _progress(job: Job, name: str, gone: Visit) -> Safe:
    """How many steps are done, and what is missing, each with the way to it."""
    open_ = [step for step in gone.steps if not is_done(job, name, step)]
    done = len(gone.steps) - len(open_)
    lacking = {step.name: missing(job, step) for step in gone.steps}
    items = [
        tag("li", tag("a", step.title, href=f"#{step.name}"), _what(lacking[step.name]))
        for step in gone.steps
        if step in open_ or lacking[step.name]
    ]
    head = tag("p", tag("strong", f"{done} of {len(gone.steps)} steps done."))
    if not items:
        return joined((head, tag("p", "Nothing is missing. Save the job’s file.")))
    return joined(
        (
            head,
            tag("details", tag("summary", "Still open"), tag("ul", *items), class_="calc-more"),
        )
    )


def _what(lacking: list[Input | Choice]) -> str:
    return f": missing {labels(tuple(lacking))}" if lacking else ""


def _answer(job: Job, name: str, step: Step, place: Where, units: str) -> Iterator[Safe]:
    """What a step's calculator says to the job's figures, or the way to it."""
    mark = job.marks.get(f"{name}.{step.name}")
    if not step.opens:
        return
    declared = calculator(step.opens)
    if _only_of_the_house(declared):
        yield run_html(run(job, declared, unit_set=units), place, keeps=step.keeps)
        return
    yield tag("p", link(step.opens, place, step.keeps))
    if mark and mark.note:
        yield tag("p", f"Found: {mark.note}", class_="house-usual")


def _only_of_the_house(declared: Calculator) -> bool:
    """Whether nothing of it is measured anew each time."""
    return all(each.once or not is_example(each) for each in declared.inputs) and any(
        each.once for each in declared.inputs
    )


def _fields(job: Job, gone: Visit, units: str) -> dict[str, dict[str, str]]:
    """What stands in the fields of the sheet: the job's figures as typed, else the usual unit."""
    known = words()
    found = {}
    for name in dict.fromkeys(each for step in gone.steps for each in step.asks):
        each = known[name]
        if name in job.values:
            there = typed_value(job.values[name])
            when = job.values[name].when
            found[name] = {"text": there.text, "unit": there.unit, "when": when}
        elif isinstance(each, Input):
            found[name] = {"text": "", "unit": each.usual(units).symbol}
    return found
