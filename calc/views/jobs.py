"""The job on the page: what of it fits a calculator, what is kept, lists, two visits compared."""

from collections.abc import Iterator, Mapping
from typing import Any

from calc import EDITION
from calc.calculators import calculator, names
from calc.errors import Refused
from calc.figures import plainly_written, written
from calc.job import (
    Compared,
    Job,
    JobValue,
    Mark,
    compared,
    kept,
    marked,
    read_job,
    typed,
    without,
    write_job,
)
from calc.job_file import MOST_TEXT
from calc.model import Case, Choice, Input, Output, Typed, solve
from calc.units import Unit
from calc.views.html import Safe, joined, tag
from calc.views.record import Head, job_record, row
from calc.views.words import (
    input_refusal_words,
    input_words,
    output_words,
    reason_words,
    with_unit,
)
from calc.vocabulary import words

type Data = Mapping[str, Any]
type Reply = dict[str, Any]

ORIGINS = {"measured": "measured", "assumed": "assumed"}


def new(asked: Data) -> Reply:
    """A new job with a name and a date."""
    job = Job(name=asked["name"].strip() or "Job", date=asked["date"], handbook=EDITION)
    return {"job": write_job(job)}


def read(asked: Data) -> Reply:
    """A job file taken in: the job, or in words why it is refused."""
    return {"job": write_job(read_job(asked["text"]))}


def show(asked: Data) -> Reply:
    """The values of a job, each with where it came from and a way to take it out."""
    job = read_job(asked["job"])
    known = words()
    rows = [_value_row(known[name], value) for name, value in job.values.items()]
    if not rows:
        return {"html": tag("p", "Nothing is kept yet. Keep figures from any calculator.")}
    heads = ("Figure", "Value", "From", "Take out")
    return {"html": table("What this job holds", heads, rows)}


def record(asked: Data) -> Reply:
    """The whole job on one page."""
    job = read_job(asked["job"])
    known = words()
    rows = [
        row(known[name].label, as_kept(known[name], value), came_from(value), "")
        for name, value in job.values.items()
    ]
    return {"record": job_record(job, Head(date=job.date), rows)}


def drop(asked: Data) -> Reply:
    """The job without one value."""
    return {"job": write_job(without(read_job(asked["job"]), asked["name"]))}


def compare(asked: Data) -> Reply:
    """Two visits side by side."""
    old, new_ = read_job(asked["old"]), read_job(asked["new"])
    rows = [compared_row(each) for each in compared(old, new_, asked.get("units", "us"))]
    heads = ("Figure", f"{old.name}, {old.date}", f"{new_.name}, {new_.date}", "Change")
    return {"html": table("Two visits", heads, rows)}


def panel(case: Case, asked: Data) -> Reply:
    """What of the job fits this calculator, and what of the calculator may go into the job."""
    job = read_job(asked["job"])
    there = solve(case.calculator, typed(job, case.calculator), case.unit_set)
    touched = asked.get("touched", [])
    once = [each for each in case.calculator.inputs if each.once]
    rows = [_fit_row(case, there, job, each, each.name in touched) for each in once]
    rows += _leave_rows(case)
    fitting = [each.name for each in case.calculator.inputs if each.name in job.values]
    parts = [
        tag("p", f"{job.name}, {job.date}: {len(fitting)} of its figures fit here."),
        _button("job-use", "Use the job's figures", disabled=not fitting),
        table("Tick what the job should keep", ("Keep", "Figure", "Here", "In the job"), rows),
        _origin(asked["key"]),
        _button("job-keep", "Keep what is ticked"),
    ]
    return {"html": joined(parts)}


def use(case: Case, asked: Data) -> Reply:
    """The job's values for this calculator, as typed, and where each came from."""
    job = read_job(asked["job"])
    fields = {
        name: {"text": value.text, "unit": value.unit, "sure": value.sure}
        for name, value in typed(job, case.calculator).items()
    }
    return {"use": fields, "origins": {name: came_from(job.values[name]) for name in fields}}


def keep(case: Case, asked: Data) -> Reply:
    """The job with the ticked values kept: inputs by name, outputs as output>input.

    `says` tells what stood in the job in their place until now.
    """
    job = before = read_job(asked["job"])
    for ticked in asked["ticked"]:
        source, leaves, place = ticked.partition(">")
        value = left_as(case, source) if leaves else case.typed[source]
        if value is None:
            continue
        origin = case.calculator.name if leaves else asked["origin"]
        job = kept(job, place or source, value, origin, asked["when"], case.unit_set)
    return {"job": write_job(job), "says": _replaced(before, job)}


def _replaced(before: Job, job: Job) -> str:
    known = words()
    gone = [name for name, old in before.values.items() if as_new(old) != as_new(job.values[name])]
    said = (f"{known[name].label}: {as_kept(known[name], before.values[name])}" for name in gone)
    return f"Until now the job had {'; '.join(said)}." if gone else ""


def as_new(value: JobValue) -> tuple[str, str | None, str]:
    """What a value says, whenever and from wherever it came."""
    return value.value, value.unit, value.plus_minus


def keep_all(case: Case, asked: Data) -> Reply:
    """As `keep`, but what the job holds already is left as it is; then the step is marked.

    mark -- the visit's step that asked for this answer, or nothing; `says` is the answer
    """
    there = typed(read_job(asked["job"]), case.calculator)
    ticked = [
        each
        for each in asked["ticked"]
        if ">" in each
        or (case.calculator.input(each).once and not _is_same(case, each, there.get(each)))
    ]
    job = keep(case, {**asked, "ticked": ticked})["job"]
    if asked["mark"]:
        note = asked["says"][:MOST_TEXT]
        job = write_job(marked(read_job(job), asked["mark"], Mark("done", asked["when"], note)))
    return {"job": job}


def mark(asked: Data) -> Reply:
    """The job with one step of a visit marked, or no longer marked where `value` is empty."""
    made = Mark(asked["value"], asked["when"], asked.get("note", "")) if asked["value"] else None
    return {"job": write_job(marked(read_job(asked["job"]), asked["mark"], made))}


def _is_same(case: Case, name: str, there: Typed | None) -> bool:
    """Whether the job holds what stands in the form."""
    if there is None:
        return False
    here = case.typed[name]
    unit = case.given[name].symbol if name in case.given else ""
    return (here.text, unit, here.sure) == (there.text, there.unit or unit, there.sure)


def refusal(refused: Refused) -> Reply:
    """A job that is refused, in words."""
    return {"refused": job_refusal_words(refused)}


def job_refusal_words(refused: Refused) -> str:
    """Why a job is refused: the value concerned first, if it is one."""
    each = words().get(refused.field)
    if each is None or refused.reason.startswith("job "):
        return reason_words(refused)
    return f"{each.label}: {input_refusal_words(each, refused)}"


def left_as(case: Case, name: str) -> Typed | None:
    """An answer as if it had been typed, to keep it; None if there is no such number."""
    output = case.calculator.output(name)
    value = case.answer.outputs[name] if case.answer else None
    if value is None:
        return None
    unit = output.usual(case.unit_set)
    return Typed(
        plainly_written(unit.out_of_si(value), 6), unit.symbol, sure=_sure_of(case, name, unit)
    )


def _sure_of(case: Case, name: str, unit: Unit) -> str:
    """The plus-or-minus that the calculator itself gives for an answer; empty if it gives none."""
    giver = case.calculator.sure_of.get(name)
    width = case.answer.outputs[giver] if giver and case.answer else None
    return "" if width is None else f"{plainly_written(width / unit.scale, 2)} {unit.symbol}"


def came_from(value: JobValue) -> str:
    """Where a value of a job came from, and when."""
    said = calculator(value.origin).title if value.origin in names() else value.origin
    return f"{said}, {value.when[:10]}"


def _fit_row(case: Case, there: Case, job: Job, each: Input | Choice, touched: bool) -> Safe:
    here = input_words(case, each.name) if each.name in case.values else ""
    kept_ = ""
    if each.name in job.values:
        kept_ = input_words(there, each.name) if each.name in there.values else "does not fit here"
    # ticked unasked is only what the reader typed and the job does not have: nothing in a job
    # is overwritten by habit, and an example's figure is not a measurement
    checked = touched and not kept_
    differs = here and here != kept_
    box = _box(each.name, each.label, checked=checked) if differs else Safe()
    in_use = f"{kept_}, in use" if kept_ and here == kept_ else kept_
    return cells(box, each.label, here, in_use)


def _leave_rows(case: Case) -> Iterator[Safe]:
    known = words()
    for name, places in case.calculator.leaves.items():
        output: Output = case.calculator.output(name)
        if not case.answer or case.answer.outputs[name] is None:
            continue
        for place in places:
            label = f"{output.label}, as: {known[place].label}"
            box = _box(f"{name}>{place}", label, checked=False)
            yield cells(box, label, output_words(case, output), "")


def _box(value: str, label: str, *, checked: bool) -> Safe:
    return tag(
        "input", type="checkbox", value=value, checked=checked, aria_label=f"Keep {label}",
        data_keep=True,
    )  # fmt: skip


def _origin(key: str) -> Safe:
    options = [tag("option", said, value=value) for value, said in ORIGINS.items()]
    id_ = f"{key}-origin"
    return joined(
        [tag("label", "They are", for_=id_), tag("select", *options, id=id_, data_origin=True)]
    )


def _button(do: str, label: str, *, disabled: bool = False) -> Safe:
    return tag("button", label, type="button", data_do=do, disabled=disabled)


def _value_row(each: Input | Choice, value: JobValue) -> Safe:
    named = f"Take out: {each.label}"
    drop_ = tag("button", "Take out", type="button", aria_label=named, data_drop=each.name)
    return cells(each.label, as_kept(each, value), came_from(value), drop_)


def as_kept(each: Input | Choice, value: JobValue) -> str:
    """A value of a job as it was typed, with its unit and plus-or-minus."""
    if isinstance(each, Choice):
        return each.options[value.value]
    bare = value.unit and not each.kind.apart(value.value.rpartition(";")[2].strip())[1]
    shown = f"{value.value}\u00a0{value.unit}" if bare else value.value
    return f"{shown} ± {value.plus_minus}" if value.plus_minus else shown


def compared_row(each: Compared) -> Safe:
    """One value of two visits, as a row."""
    if isinstance(each.word, Choice):
        ends = [each.word.options[str(end)] if end else "—" for end in (each.old, each.new)]
        return cells(each.word.label, *ends, "" if each.old == each.new else "changed")
    return cells(
        each.word.label,
        value_words(each, each.old),
        value_words(each, each.new),
        change_words(each),
    )


def value_words(each: Compared, value: object) -> str:
    if value is None or each.unit is None:
        return "—"
    values = value if isinstance(value, tuple) else (value,)
    unit = each.unit
    return "; ".join(with_unit(written(unit.out_of_si(float(one)), 3), unit) for one in values)


def change_words(each: Compared) -> str:
    if each.old is None or each.new is None:
        return f"only in the {'second' if each.old is None else 'first'}"
    if each.change is None or each.unit is None:
        return ""
    if not each.change:
        return "none"
    sign = "+" if each.change > 0 else ""
    said = f"{sign}{with_unit(written(each.change / each.unit.scale, 2), each.unit)}"
    return said if each.share is None else f"{said}, {sign}{written(100 * each.share, 2)}\u00a0%"


def table(caption: str, heads: tuple[str, ...], rows: list[Safe]) -> Safe:
    """A table in a box of its own, which a narrow screen scrolls sideways."""
    head = tag("tr", *(tag("th", text, scope="col") for text in heads))
    inside = tag("table", tag("caption", caption), tag("thead", head), tag("tbody", *rows))
    return tag("div", inside, class_="calc-table", tabindex="0", role="group", aria_label=caption)


def cells(*told: object) -> Safe:
    """A row of a table."""
    return tag("tr", *(tag("td", cell) for cell in told))
