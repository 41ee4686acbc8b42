"""The rows of a record's sheet: a value of the job, or a line to write it on."""

from collections.abc import Callable
from typing import NamedTuple

from calc.figures import plainly_written
from calc.forecasts import Due
from calc.job import Job, JobValue, compared
from calc.model import Choice, Input, Typed
from calc.next_visit import measured_anew
from calc.sheets import THEN_AND_NOW, Blank, Line, Named, Pair, Part, Ticks
from calc.views.html import Safe, joined, tag
from calc.views.jobs import as_kept, came_from, change_words
from calc.views.words import with_unit
from calc.vocabulary import words

LONGEST_TYPED = 14  # characters; a figure typed longer than that is printed to six digits


class Visit(NamedTuple):
    """What a sheet is filled from. Without a job it is a blank form."""

    job: Job | None = None
    before: Job | None = None
    unit_set: str = "us"
    dues: tuple[Due, ...] = ()

    def value(self, name: str) -> JobValue | None:
        """The job's value of that name."""
        return self.job.values.get(name) if self.job and name else None


def part_table(part: Part, visit: Visit) -> Safe:
    """A table of a sheet."""
    rows = [_row(line, part, visit) for line in part.lines]
    inside = [tag("caption", part.title)]
    if any(part.heads):
        heads = (tag("th", text, scope="col") for text in ("", *part.heads))
        inside.append(tag("thead", tag("tr", *heads)))
    return tag("table", *inside, tag("tbody", *rows), class_="record-table")


def _row(line: Line, part: Part, visit: Visit) -> Safe:
    if isinstance(line, Ticks):
        return _cells(line.label, part, [joined([_box(each) for each in line.options])])
    if isinstance(line, Blank):
        return _cells(line.label, part, [writing_line(line.unit, wide=True)])
    if isinstance(line, Pair):
        ends = [_end(name, line.unit, visit) for name in (line.before, line.after)]
        more = [writing_line()] * (len(part.heads) - len(ends))
        return _cells(line.label, part, [*ends, *more])
    name, label = line if isinstance(line, Named) else (line, words()[line].label)
    fill: Callable[[Input | Choice, Visit], list[object]] = _FILLS.get(part.heads, _measured)
    return _cells(label, part, fill(words()[name], visit)[: len(part.heads)])


def _cells(label: str, part: Part, cells: list[Safe] | list[object]) -> Safe:
    spare = max(1, len(part.heads)) - len(cells) + 1
    made = [tag("td", each) for each in cells[:-1]]
    last = tag("td", cells[-1], colspan=str(spare) if spare > 1 else None)
    return tag("tr", tag("th", label, scope="row"), *made, last)


def _measured(word: Input | Choice, visit: Visit) -> list[object]:
    value = visit.value(word.name)
    if value is None:
        return [blank_line(word, visit.unit_set), "", ""]
    return [said(word, value), _sure(word, value), came_from(value)]


def _with_day(word: Input | Choice, visit: Visit) -> list[object]:
    value = visit.value(word.name)
    filled = [said(word, value), value.when[:10]] if value else []
    return [*filled] or [blank_line(word, visit.unit_set), writing_line()]


def _then_and_now(word: Input | Choice, visit: Visit) -> list[object]:
    """What the last visit found, what this one found, and by how much it has changed.

    A value only carried over was not measured today: there is a line for it.
    """
    job, before = visit.job, visit.before
    then = before.values.get(word.name) if before else None
    now = visit.value(word.name)
    if job and before and not measured_anew(job, before, word.name):
        now = None
    change = ""
    if job and before and then and now:
        pairs = compared(before, job, visit.unit_set)
        change = next(change_words(each) for each in pairs if each.word.name == word.name)
    old = _last(said(word, then)) if then else ""
    return [old, _last(said(word, now)) if now else blank_line(word, visit.unit_set), change]


def _last(text: str) -> str:
    """The last of several readings: the others are of days before."""
    return text.rpartition(";")[2].strip()


_FILLS = {THEN_AND_NOW: _then_and_now, ("Value", "Day"): _with_day}


def _end(name: str, unit: str, visit: Visit) -> Safe:
    value = visit.value(name)
    if value is not None:
        return Safe(tag("span", said(words()[name], value)))
    return blank_line(words()[name], visit.unit_set) if name else writing_line(unit)


def said(word: Input | Choice, value: JobValue) -> str:
    """A value of the job as it was typed, or to six digits where that is too long to print."""
    plain = value._replace(plus_minus="")
    if isinstance(word, Choice) or len(value.value) <= LONGEST_TYPED or word.several > 1:
        return as_kept(word, plain)
    figure, unit = word.take(Typed(value.value, value.unit or ""), "us")
    return with_unit(plainly_written(unit.out_of_si(float(str(figure))), 6), unit)


def _sure(word: Input | Choice, value: JobValue) -> str:
    sure = "" if isinstance(word, Choice) else value.plus_minus or word.sure
    return f"± {sure}" if sure else ""


def blank_line(word: Input | Choice, unit_set: str) -> Safe:
    """A line to write a value on, with its unit, or boxes for a choice."""
    if isinstance(word, Choice):
        return joined([_box(each) for each in word.options.values()])
    return writing_line(word.usual(unit_set).symbol)


def writing_line(unit: str = "", *, wide: bool = False) -> Safe:
    """A line to write on."""
    line = tag("span", class_="record-line record-wide" if wide else "record-line")
    return joined([line, Safe(" "), tag("span", unit)]) if unit else line


def _box(label: str) -> Safe:
    return tag("span", f"☐ {label}", class_="record-box")
