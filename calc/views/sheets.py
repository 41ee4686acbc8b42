"""The record on the page: sheets to print, the next dates, what has drifted, files to take away."""

from collections.abc import Iterator, Mapping
from typing import Any

from calc import EDITION
from calc.calculators import calculator
from calc.calendar_file import Event, calendar_file
from calc.days import day_number
from calc.errors import Refused
from calc.forecasts import FORECASTS, Due, dues
from calc.job import Job, read_job, write_job
from calc.job_file import is_date
from calc.model import Choice, Typed
from calc.next_visit import next_visit, previous_visit
from calc.sheets import SHEETS
from calc.views import jobs
from calc.views.chart_table import csv_text
from calc.views.html import Safe, joined, tag
from calc.views.sheet_page import drift_list, page, why
from calc.views.sheet_rows import Visit
from calc.vocabulary import words

type Data = Mapping[str, Any]
type Reply = dict[str, Any]


def show(asked: Data) -> Reply:
    """What the record page says of the job: its dates, and what has drifted."""
    visit = _visit(asked)
    assert visit.job
    late = _clock_words(visit.job, asked.get("now", ""))
    parts = [tag("p", late, class_="calc-outside")] if late else []
    return {"html": joined([*parts, _due_fields(visit), drift_list(visit)])}


def printed(asked: Data) -> Reply:
    """One sheet by its name, or all of them and every value, each sheet on a page of its own."""
    visit = _visit(asked)
    wanted = asked["sheet"]
    chosen = [each for each in SHEETS if wanted in (each.name, "all")]
    pages = [page(each, visit) for each in chosen]
    if wanted == "all" and visit.job:
        pages.append(Safe(jobs.record({"job": asked["job"]})["record"]))
    return {"record": joined(pages)}


def csv(asked: Data) -> Reply:
    """Every value of the job as comma-separated values, RFC 4180, a row for each reading."""
    job = read_job(asked["job"])
    heads = ("Name", "Figure", "Value", "Unit", "Plus or minus", "As typed", "From", "When", "Note")
    rows = [row for name in job.values for row in _csv_rows(name, job)]
    return {"csv": csv_text(heads, rows)}


def calendar(asked: Data) -> Reply:
    """The dates of the job as an iCalendar file."""
    visit = _visit(asked)
    assert visit.job
    events = [_event(due, visit.job) for due in visit.dues if due.day]
    return {"ics": calendar_file(events, asked["when"]), "count": len(events)}


def next(asked: Data) -> Reply:
    """The job of the next visit to the same house."""
    job = read_job(asked["job"])
    if asked["date"] <= job.date:
        says = f"This visit is of {job.date}, and the device's clock says {asked['date']}."
        return {"refused": f"{says} The next one must be later: check the clock."}
    return {"job": write_job(next_visit(job, asked["date"]))}


def _visit(asked: Data) -> Visit:
    unit_set = asked.get("units", "us")
    if not asked.get("job"):
        nobodys = tuple(Due(each, None) for each in FORECASTS)
        return Visit(unit_set=unit_set, dues=nobodys)
    job = read_job(asked["job"])
    by_hand = {name: day for name, day in asked.get("dates", {}).items() if is_date(day)}
    before = previous_visit(job, _readable(asked.get("others", [])))
    return Visit(job, before, unit_set, tuple(dues(job, by_hand)))


def _readable(texts: list[str]) -> Iterator[Job]:
    for text in texts:
        try:
            yield read_job(text)
        except Refused:  # the list of jobs says so; it is no earlier visit of this house
            continue


def _clock_words(job: Job, now: str) -> str:
    """A warning if the device's clock stands before what the job already holds."""
    latest = max([job.date, *(each.when[:10] for each in job.values.values())])
    if not now or day_number(now) >= day_number(latest) - 1:  # they are stamped in UTC
        return ""
    return (
        f"This device's clock says {now}, but this job has figures of {latest}. One of them is "
        "wrong: set the clock before you keep more. Nothing has been changed."
    )


def _due_fields(visit: Visit) -> Safe:
    return tag("div", *(_due_field(due) for due in visit.dues), class_="record-dues")


def _due_field(due: Due) -> Safe:
    id_ = f"due-{due.forecast.name}"
    field = tag("input", type="date", id=id_, data_due=due.forecast.name, value=due.day)
    return tag(
        "div",
        tag("label", due.forecast.title, for_=id_),
        tag("div", field, class_="calc-entry"),
        tag("p", _due_words(due), class_="calc-reading"),
    )


def _due_words(due: Due) -> str:
    if due.day:
        return f"{why(due).capitalize()}."
    if due.missing:
        known = words()
        lacking = "; ".join(known[name].label for name in due.missing)
        page = due.forecast.calculator
        asked = f" (“{calculator(page).title}”)" if page else ""
        return f"Set it by hand, or measure first{asked}: {lacking}."
    return "Set it by hand." if not due.forecast.since else "No date within ten years."


def _event(due: Due, job: Job) -> Event:
    assert due.day
    says = f"{due.forecast.do}\n{job.name}: {why(due)}. Pail and Timer, edition {EDITION}."
    title = f"{due.forecast.title}: {job.name}"
    return Event(f"{due.forecast.name} of {job.name}", due.day, title, says, job.date)


def _csv_rows(name: str, job: Job) -> Iterator[tuple[str | float, ...]]:
    word, value = words()[name], job.values[name]
    about = (value.value, value.origin, value.when, value.note)
    if isinstance(word, Choice):
        yield (name, word.label, word.options[value.value], "", "", *about)
        return
    given = Typed(value.value, value.unit or "")
    figures, unit = word.take(given, "us")
    sure = value.plus_minus or word.sure
    for one in figures if isinstance(figures, tuple) else (figures,):
        yield (name, word.label, unit.out_of_si(float(one)), unit.symbol, sure, *about)
