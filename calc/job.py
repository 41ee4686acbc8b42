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
from itertools import accumulate
from typing import Any, NamedTuple, NoReturn

from calc.calculators import names
from calc.errors import Refused
from calc.model import Calculator, Choice, Input, Typed, Value
from calc.units import Kind, Unit, gauge_pressure, share
from calc.vocabulary import words

FORMAT = "pail-and-timer-job"
VERSION = 1
MOST_BYTES = 200_000
MOST_TEXT = 300
MOST_DEEP = 20  # a job is three deep

_UNSHOWABLE = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff]")
_DATE = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")
_CLOCK = re.compile(r"T(?:[01][0-9]|2[0-3]):[0-5][0-9]:[0-5][0-9]Z")
_STRING_OR_BRACKET = re.compile(r'"[^"\\]*+(?:\\.[^"\\]*+)*+"?|[][{}]', re.DOTALL)
_TURNS = {"[": 1, "{": 1, "]": -1, "}": -1}


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


_MEMBERS = ("format", "version", "name", "date", "handbook", "values")
_CHOICE_MEMBERS = tuple(each for each in JobValue._fields if each not in ("unit", "plus_minus"))


@dataclass(frozen=True, kw_only=True)
class Job:
    """A visit to one house: its values by the names of `calc.vocabulary.words`.

    date   -- as 2026-11-25; `handbook` is the revision that wrote the job
    values -- put there by `read_job` and `kept`, which check them
    """

    name: str
    date: str
    handbook: str
    values: Mapping[str, JobValue] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for member in ("name", "date", "handbook"):
            _check_text(getattr(self, member), member)
        if not _is_date(self.date):
            raise Refused("job date", member="date", text=self.date)


def typed(job: Job, calculator: Calculator) -> dict[str, Typed]:
    """What the job gives a calculator, by the names of its inputs."""
    wanted = (each.name for each in calculator.inputs if each.name in job.values)
    return {name: _typed(job.values[name]) for name in wanted}


def _typed(value: JobValue) -> Typed:
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


def _si(each: Input | Choice, job: Job) -> Value | None:
    value = job.values.get(each.name)
    return each.take(_typed(value), "us")[0] if value else None


def _has_true_zero(kind: Kind) -> bool:
    """Whether per cent of it mean something: not of per cent, nor where zero is a convention."""
    return kind not in (share, gauge_pressure) and not any(unit.zero for unit in kind.units)


def write_job(job: Job) -> str:
    """The text of the job's file, the same for equal jobs."""
    data: dict[str, object] = {"format": FORMAT, "version": VERSION}
    data |= {member: getattr(job, member) for member in ("name", "date", "handbook")}
    data["values"] = {name: _entry(value) for name, value in sorted(job.values.items())}
    text = json.dumps(data, ensure_ascii=False, indent=2) + "\n"
    _check_size(text)
    return text


def _entry(value: JobValue) -> dict[str, str]:
    members = _CHOICE_MEMBERS if value.unit is None else JobValue._fields
    return {member: getattr(value, member) for member in members}


def read_job(text: str) -> Job:
    """The job in the text of a file. Raises Refused, and nothing else, if it is none."""
    _check_size(text)
    data = _parsed(text.removeprefix("\ufeff"))
    if not isinstance(data, dict):
        raise Refused("job not an object")
    if data.get("format") != FORMAT:
        raise Refused("job foreign", wanted=FORMAT)
    _check_version(data)
    _check_members(data, _MEMBERS)
    _check_object(data["values"], "values")
    known = words()
    values = {name: _value(name, entry, known) for name, entry in data["values"].items()}
    return Job(name=data["name"], date=data["date"], handbook=data["handbook"], values=values)


def _check_size(text: str) -> None:
    # surrogates that stand alone have no UTF-8: they are counted here and refused later
    if len(text) > MOST_BYTES or len(text.encode("utf-8", "surrogatepass")) > MOST_BYTES:
        raise Refused("job too large", most=MOST_BYTES)


def _parsed(text: str) -> Any:
    # Counted beforehand: in a browser deep nesting ends Python itself, it raises nothing.
    turns = (_TURNS.get(each, 0) for each in _STRING_OR_BRACKET.findall(text))
    if max(accumulate(turns), default=0) > MOST_DEEP:
        raise Refused("job too deep")
    try:
        # parse_int: an int of thousands of digits would be an error of its own kind
        return json.loads(
            text, object_pairs_hook=_object, parse_int=float, parse_constant=_no_number
        )
    except json.JSONDecodeError as broken:
        raise Refused("job not json", line=broken.lineno, column=broken.colno) from None


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for key, value in pairs:
        if key in made:
            raise Refused("job member twice", member=_clipped(key))
        made[key] = value
    return made


def _no_number(text: str) -> NoReturn:
    raise Refused("job no number", text=text)


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


def _check_members(
    data: Mapping[str, Any], wanted: tuple[str, ...], path: str = "", of: str = ""
) -> None:
    for member in wanted:
        if member not in data:
            raise Refused("job member missing", of, member=path + member)
    for member in data:
        if member not in wanted:
            raise Refused("job member unknown", of, member=path + _clipped(member))


def _check_object(data: object, member: str, of: str = "") -> None:
    if not isinstance(data, dict):
        raise Refused("job member type", of, member=member, wanted="an object in braces")


def _value(name: str, entry: Any, known: Mapping[str, Input | Choice]) -> JobValue:
    each = _word(name, known)
    _check_object(entry, name, name)
    is_choice = isinstance(each, Choice)
    _check_members(entry, _CHOICE_MEMBERS if is_choice else JobValue._fields, f"{name}.", name)
    value = JobValue(**({"unit": None, "plus_minus": ""} | entry))
    _check_value(each, value)
    return value


def _word(name: str, known: Mapping[str, Input | Choice]) -> Input | Choice:
    if name not in known or not known[name].once:
        raise Refused("job value unknown", text=_clipped(name))
    return known[name]


def _check_value(each: Input | Choice, value: JobValue) -> None:
    for member in _CHOICE_MEMBERS if isinstance(each, Choice) else JobValue._fields:
        _check_text(getattr(value, member), f"{each.name}.{member}", each.name)
    if not (_is_date(value.when[:10]) and _CLOCK.fullmatch(value.when[10:])):
        raise Refused("job time", each.name, member=f"{each.name}.when", text=value.when)
    if value.origin not in ("measured", "assumed", *names()):
        raise Refused("job origin", each.name, member=f"{each.name}.origin", text=value.origin)
    given = _typed(value)
    if isinstance(each, Choice):
        each.take(given, "us")
        return
    # a bare number of no unit would mean one thing to a reader of gpm, another to one of L/min
    if not value.unit and each.usual("us").symbol:
        raise Refused("job no unit", each.name, member=f"{each.name}.unit")
    each.take_sure(given, *each.take(given, "us"))


def _check_text(text: object, member: str, of: str = "") -> None:
    if not isinstance(text, str):
        raise Refused("job member type", of, member=member, wanted="text in quotes")
    if len(text) > MOST_TEXT:
        raise Refused("job text long", of, member=member, most=MOST_TEXT)
    if _UNSHOWABLE.search(text):
        raise Refused("job text unshowable", of, member=member)


def _clipped(text: str) -> str:
    """A name from the file, short and clean enough for a sentence."""
    clean = _UNSHOWABLE.sub("\N{REPLACEMENT CHARACTER}", text)
    return clean if len(clean) <= 40 else f"{clean[:40]}…"


def _is_date(text: str) -> bool:
    """Whether it is a day of the calendar, as 2026-11-25. (`datetime` is heavy in a browser.)"""
    found = _DATE.fullmatch(text)
    if not found:
        return False
    year, month, day = map(int, found.groups())
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    days = (31, 29 if leap else 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
    return year > 0 and 1 <= month <= 12 and 1 <= day <= days[month - 1]
