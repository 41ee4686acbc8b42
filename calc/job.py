"""The job: values measured once that serve every page, and the file that carries them.

The file is JSON that a person can read; `job.schema.json` describes it. It may come from
a stranger, so whatever is wrong with it is told as `Refused`: `field` is the value
concerned, the facts are member (where in the file), text, wanted, most, version, newest,
line and column.
"""

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any, NamedTuple

from calc.calculators import names
from calc.errors import Refused
from calc.job_file import (
    check_members,
    check_object,
    check_size,
    check_text,
    clipped,
    is_date,
    parsed,
)
from calc.model import Calculator, Choice, Input, Typed, Value
from calc.units import Kind, Unit, gauge_pressure, share
from calc.vocabulary import words

FORMAT = "pail-and-timer-job"
VERSION = 1

_MARK = re.compile(r"[a-z_][a-z0-9_-]*(?:\.[a-z0-9_-]+)+")
_CLOCK = re.compile(r"T(?:[01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]Z")


class JobValue(NamedTuple):
    """One value of a job, all as written in the file.

    value  -- as typed: nothing of it is lost
    unit   -- what a bare number in `value` is meant in; None for a choice
    origin -- "measured", "assumed", or the calculator it comes from
    when   -- UTC, as 2026-11-25T10:04:00Z
    """

    value: str
    unit: str | None
    plus_minus: str
    origin: str
    when: str
    note: str = ""


class Mark(NamedTuple):
    """What was said of one step of a visit: done, or which of its answers was picked.

    when -- UTC, as 2026-11-25T10:04:00Z; `note` is what was found
    """

    value: str
    when: str
    note: str = ""


_MEMBERS = ("format", "version", "name", "date", "handbook", "values")
_MAY_HAVE = ("marks",)
_CHOICE_MEMBERS = tuple(each for each in JobValue._fields if each not in ("unit", "plus_minus"))


@dataclass(frozen=True, kw_only=True)
class Job:
    """A visit to one house: its values by the names of `calc.vocabulary.words`.

    date   -- as 2026-11-25; `handbook` is the revision that wrote the job
    values -- put there by `read_job` and `kept`, which check them
    marks  -- the steps of visits that were gone, by the visit's name, a point and the step's;
              put there by `marked`
    """

    name: str
    date: str
    handbook: str
    values: Mapping[str, JobValue] = field(default_factory=dict)
    marks: Mapping[str, Mark] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for member in ("name", "date", "handbook"):
            check_text(getattr(self, member), member)
        if not is_date(self.date):
            raise Refused("job date", member="date", text=self.date)


def typed(job: Job, calculator: Calculator) -> dict[str, Typed]:
    """What the job gives a calculator, by the names of its inputs."""
    wanted = (each.name for each in calculator.inputs if each.name in job.values)
    return {name: typed_value(job.values[name]) for name in wanted}


def typed_value(value: JobValue) -> Typed:
    """A value of a job as it stood in its field."""
    return Typed(value.value, value.unit or "", sure=value.plus_minus)


def kept(
    job: Job, name: str, given: Typed, origin: str, when: str, unit_set: str = "us", note: str = ""
) -> Job:
    """The job with one value more, or another in its place. Refused if it cannot be used.

    unit_set -- the reader's, which says what a bare number means where `given` has no unit
    """
    each = _word(name, words())
    value = JobValue(given.text, None, "", origin, when, note)
    if isinstance(each, Input):
        unit = each.unit_called(given.unit, unit_set).symbol
        value = value._replace(unit=unit, plus_minus=given.sure)
    _check_value(each, value)
    return replace(job, values={**job.values, name: value})


def without(job: Job, name: str) -> Job:
    """The job without that value; the same job if it has none."""
    return replace(job, values={each: job.values[each] for each in job.values if each != name})


def marked(job: Job, step: str, mark: Mark | None) -> Job:
    """The job with one step of a visit marked; None takes its mark away."""
    marks = {each: job.marks[each] for each in job.marks if each != step}
    if mark is not None:
        _check_mark(step, mark)
        marks[step] = mark
    return replace(job, marks=marks)


class Compared(NamedTuple):
    """One value of two visits, SI; None where a visit has none.

    unit   -- the reader's for it; None for a choice
    change -- new less old; None unless both are one figure. A difference has no zero
              point: it is shown as change / unit.scale
    share  -- change as a share of the old figure; None where that means nothing
    """

    word: Input | Choice
    old: Value | None
    new: Value | None
    unit: Unit | None = None
    change: float | None = None
    share: float | None = None


def compared(old: Job, new: Job, unit_set: str) -> list[Compared]:
    """The values of two visits side by side, in the order of the calculators."""
    either = old.values.keys() | new.values.keys()
    return [_compared(each, old, new, unit_set) for name, each in words().items() if name in either]


def _compared(each: Input | Choice, old: Job, new: Job, unit_set: str) -> Compared:
    before, after = _si(each, old), _si(each, new)
    if isinstance(each, Choice):
        return Compared(each, before, after)
    change = part = None
    if isinstance(before, float) and isinstance(after, float):
        change = after - before
        part = change / abs(before) if before and _has_true_zero(each.kind) else None
    return Compared(each, before, after, each.usual(unit_set), change, part)


def si_of(job: Job, name: str) -> float | None:
    """A quantity of the job, SI; None if it has none, or several readings, or a choice."""
    value = _si(words()[name], job)
    return value if isinstance(value, float) else None


def _si(each: Input | Choice, job: Job) -> Value | None:
    value = job.values.get(each.name)
    return each.take(typed_value(value), "us")[0] if value else None


def _has_true_zero(kind: Kind) -> bool:
    """Whether per cent of it mean something: not of per cent, nor where zero is a convention."""
    return kind not in (share, gauge_pressure) and not any(unit.zero for unit in kind.units)


def write_job(job: Job) -> str:
    """The text of the job's file, the same for equal jobs."""
    data: dict[str, object] = {"format": FORMAT, "version": VERSION}
    data |= {member: getattr(job, member) for member in ("name", "date", "handbook")}
    data["values"] = {name: _entry(value) for name, value in sorted(job.values.items())}
    if job.marks:
        data["marks"] = {step: mark._asdict() for step, mark in sorted(job.marks.items())}
    text = json.dumps(data, ensure_ascii=False, indent=2) + "\n"
    check_size(text)
    return text


def _entry(value: JobValue) -> dict[str, str]:
    members = _CHOICE_MEMBERS if value.unit is None else JobValue._fields
    return {member: getattr(value, member) for member in members}


def read_job(text: str) -> Job:
    """The job in the text of a file. Raises Refused, and nothing else, if it is none."""
    check_size(text)
    data = parsed(text.removeprefix("\ufeff"))
    if not isinstance(data, dict):
        raise Refused("job not an object")
    if data.get("format") != FORMAT:
        raise Refused("job foreign", wanted=FORMAT)
    _check_version(data)
    check_members(data, (*_MEMBERS, *(member for member in _MAY_HAVE if member in data)))
    check_object(data["values"], "values")
    known = words()
    values = {name: _value(name, entry, known) for name, entry in data["values"].items()}
    marks = _marks(data.get("marks", {}))
    head = {member: data[member] for member in ("name", "date", "handbook")}
    return Job(**head, values=values, marks=marks)


def _check_version(data: Mapping[str, Any]) -> None:
    if "version" not in data:
        raise Refused("job member missing", member="version")
    version = data["version"]
    if not isinstance(version, float):
        raise Refused("job member type", member="version", wanted="a number")
    if version > VERSION:
        raise Refused("job newer", version=f"{version:g}", newest=VERSION)
    if version < VERSION:  # once there is a version 2, a file of version 1 is made one here
        raise Refused("job older", version=f"{version:g}")


def _value(name: str, entry: Any, known: Mapping[str, Input | Choice]) -> JobValue:
    each = _word(name, known)
    check_object(entry, name, name)
    is_choice = isinstance(each, Choice)
    check_members(entry, _CHOICE_MEMBERS if is_choice else JobValue._fields, f"{name}.", name)
    value = JobValue(**({"unit": None, "plus_minus": ""} | entry))
    _check_value(each, value)
    return value


def _marks(data: Any) -> dict[str, Mark]:
    check_object(data, "marks")
    made = {}
    for step, entry in data.items():
        check_object(entry, f"marks.{clipped(step)}")
        check_members(entry, Mark._fields, f"marks.{clipped(step)}.")
        made[step] = Mark(**entry)
        _check_mark(step, made[step])
    return made


def _check_mark(step: str, mark: Mark) -> None:
    member = f"marks.{clipped(step)}"
    check_text(step, member)
    if not _MARK.fullmatch(step):
        raise Refused("job mark", member=member)
    for part in Mark._fields:
        check_text(getattr(mark, part), f"{member}.{part}")
    if not _is_moment(mark.when):
        raise Refused("job time", member=f"{member}.when", text=mark.when)


def _is_moment(text: str) -> bool:
    return is_date(text[:10]) and bool(_CLOCK.fullmatch(text[10:]))


def _word(name: str, known: Mapping[str, Input | Choice]) -> Input | Choice:
    if name not in known or not known[name].once:
        raise Refused("job value unknown", text=clipped(name))
    return known[name]


def _check_value(each: Input | Choice, value: JobValue) -> None:
    for member in _CHOICE_MEMBERS if isinstance(each, Choice) else JobValue._fields:
        check_text(getattr(value, member), f"{each.name}.{member}", each.name)
    if not _is_moment(value.when):
        raise Refused("job time", each.name, member=f"{each.name}.when", text=value.when)
    if value.origin not in ("measured", "assumed", *names()):
        raise Refused("job origin", each.name, member=f"{each.name}.origin", text=value.origin)
    given = typed_value(value)
    if isinstance(each, Choice):
        each.take(given, "us")
        return
    # a bare number of no unit would mean one thing to a reader of gpm, another to one of L/min
    if not value.unit and each.usual("us").symbol:
        raise Refused("job no unit", each.name, member=f"{each.name}.unit")
    each.take_sure(given, *each.take(given, "us"))
