"""Service dates, the calendar file, the next visit, and what the sheets name."""

import csv
import json
from datetime import date, timedelta
from io import StringIO
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar import Calendar

from calc.calculators import calculator
from calc.calculators.aerator_service import RETEST
from calc.calendar_file import MOST_OCTETS, Event, calendar_file, folded, uid
from calc.days import day_number, day_text
from calc.forecasts import FORECASTS, dues, settled, wanted_of_house
from calc.job import Job, kept, read_job, without, write_job
from calc.model import Typed
from calc.next_visit import drifts, measured_anew, next_visit, previous_visit
from calc.sheets import SHEETS, names_in
from calc.units import day
from calc.views import sheets as requests
from calc.vocabulary import words
from tests.model.given import steady

STAMP = "2026-11-25T10:04:00Z"
EMPTY = Job(name="Quarry Road house, Alder Ledge (invented)", date="2026-11-25", handbook="0.1.0")
days = st.dates(min_value=date(1900, 1, 1), max_value=date(2399, 12, 31))
lines = st.text(st.characters(exclude_categories=["Cs"]), max_size=200)


def events_in(text: str) -> list[Any]:
    """The events of a calendar file, as the library reads them."""
    return list(Calendar.from_ical(text).walk("VEVENT"))


def example(*calculators: str, when: str = STAMP) -> Job:
    """A job that holds the worked example of calculators, as if it had been measured."""
    job = EMPTY
    for each in (each for name in calculators for each in calculator(name).inputs):
        if each.once:
            job = kept(job, each.name, Typed(each.default), "measured", when)
    return job


def due_of(job: Job, name: str, **by_hand: str) -> str | None:
    return next(due.day for due in dues(job, by_hand) if due.forecast.name == name)


@steady
@given(days, st.integers(0, 20_000))
def test_days_are_counted_as_the_standard_library_counts_them(start: date, later: int) -> None:
    """Second method: `datetime`, over four hundred years and more."""
    number = day_number(start.isoformat())
    assert day_text(number) == start.isoformat()
    assert day_text(number + later) == (start + timedelta(days=later)).isoformat()


@steady
@given(st.lists(st.tuples(lines, days, lines, lines), max_size=4))
def test_a_calendar_file_is_read_by_a_library(raw: list[tuple[str, date, str, str]]) -> None:
    """Second method: the library `icalendar` reads back every day, title and text."""
    events = [Event(k, d.isoformat(), t, s, "2026-11-25") for k, d, t, s in raw]
    text = calendar_file(events, STAMP)
    found = events_in(text)
    assert len(found) == len(events)
    for event, read in zip(events, found, strict=True):
        assert read.errors == []
        assert read.decoded("DTSTART") == date.fromisoformat(event.day)
        assert read["DTSTART"].params["VALUE"] == "DATE"
        assert read["UID"] == uid(event.key)
        for told, member in ((event.title, "SUMMARY"), (event.says, "DESCRIPTION")):
            whole = told.replace("\r\n", "\n").replace("\r", "\n")
            assert read[member] == "".join(c for c in whole if c in "\t\n" or c.isprintable())


@steady
@given(lines)
def test_lines_are_folded_as_the_standard_says(line: str) -> None:
    """RFC 5545 section 3.1: at most 75 octets, broken by CRLF and a space, whole characters."""
    pieces = folded(line).encode().split(b"\r\n ")
    assert b"".join(pieces).decode() == line
    assert all(len(piece) + (place > 0) <= MOST_OCTETS for place, piece in enumerate(pieces))


def test_a_calendar_file_has_what_the_standard_wants() -> None:
    """RFC 5545: CRLF at every line's end, 3.6 members once, 3.6.1 DTSTAMP in UTC."""
    text = calendar_file(
        [Event("a", "2027-01-05", "Salt; media, or \\", "x\ny", "2026-11-25")], STAMP
    )
    assert text.endswith("END:VCALENDAR\r\n")
    assert "\n" not in text.replace("\r\n", "")
    assert "DTSTAMP:20261125T100400Z\r\n" in text
    assert "DTSTART;VALUE=DATE:20270105\r\n" in text
    assert "SUMMARY:Salt\\; media\\, or \\\\\r\n" in text
    assert "DESCRIPTION:x\\ny\r\n" in text
    for once in ("VERSION:2.0", "PRODID:", "BEGIN:VEVENT", "UID:"):
        assert text.count(f"\r\n{once}") == 1


def test_the_hash_is_the_published_one() -> None:
    """FNV-1a, 128 bits, of "foobar": 343e1662793c64bf6f0d3597ba446f18 in the authors' vectors,
    as others' tests print it; bits of version and variant are RFC 9562's."""
    published = "343e1662793c64bf6f0d3597ba446f18"
    ours = uid("foobar").replace("-", "")
    assert [ours[n] for n in range(32) if n not in (12, 16)] == [
        published[n] for n in range(32) if n not in (12, 16)
    ]
    assert ours[12] == "8"
    assert int(ours[16], 16) >> 2 == 2


def test_a_later_visit_replaces_the_date_in_the_calendar() -> None:
    """RFC 5545 3.8.7.4: the same UID, a higher sequence."""
    first = Event("filter of A", "2027-01-05", "t", "s", "2026-11-25")
    later = first._replace(day="2027-06-01", since="2027-01-05")
    one, other = (events_in(calendar_file([each], STAMP))[0] for each in (first, later))
    assert one["UID"] == other["UID"]
    assert one["SEQUENCE"] < other["SEQUENCE"]
    assert uid("filter of B") != uid("filter of A")


def test_dates_come_from_the_calculators() -> None:
    """Second way: the calculator asked by itself, and days counted by `datetime`."""
    job = example("filter_due", "aerator_service")
    assert job.values
    for name, declared, output in (
        ("filter", "filter_due", "due_surely"),
        ("blower", "aerator_service", "clean_due"),
    ):
        idle = next(each.idle for each in FORECASTS if each.name == name)
        case = settled(job, calculator(declared), idle=idle)
        assert case
        assert case.answer
        wait = case.answer.outputs[output]
        assert wait is not None
        after = date(2026, 11, 25) + timedelta(days=int(wait / day))
        assert due_of(job, name) == after.isoformat()


def test_radon_is_tested_again_a_year_after() -> None:
    """[mw-rn-2020] 8.5: yearly at least. 2027 has no leap day before it."""
    job = kept(EMPTY, "treated_radon", Typed("240 pCi/L"), "measured", STAMP)
    assert 365 * day == RETEST
    assert due_of(job, "radon") == "2027-11-25"


def test_no_date_comes_from_the_example() -> None:
    """By reason: whatever the job lacks of this house, no date is made up, and it is named."""
    assert [due.day for due in dues(EMPTY)] == [None] * len(FORECASTS)
    whole = example("filter_due")
    for name in calculator("filter_due").invented:
        (due,) = (d for d in dues(without(whole, name)) if d.forecast.name == "filter")
        assert due.day is None
        assert due.missing == (name,)


def test_a_carried_over_figure_is_counted_from_its_own_day() -> None:
    """By hand: measured in May, carried over in November: the date is still that of May."""
    may = example("filter_due", when="2026-05-04T15:00:00Z")
    then = due_of(may, "filter")
    assert then
    assert then < "2026-11-25"
    near = example("filter_due", when="2026-11-26T03:00:00Z")  # late in the evening in the west
    assert due_of(near, "filter") == due_of(example("filter_due"), "filter")


def test_a_date_set_by_hand_goes_first() -> None:
    job = example("filter_due")
    assert due_of(job, "filter", filter="2027-03-01") == "2027-03-01"
    assert due_of(job, "salt", salt="2027-02-01") == "2027-02-01"
    assert due_of(job, "salt") is None


def test_the_calendar_holds_the_dates_there_are() -> None:
    """Second method: the library `icalendar`, from the job's text to the days."""
    asked = {"job": write_job(example("filter_due")), "when": STAMP}
    told = requests.calendar(asked | {"dates": {"lamp": "2027-11-01", "salt": "no day"}})
    found = events_in(told["ics"])
    assert told["count"] == len(found) == 2
    assert {str(each["SUMMARY"]).partition(":")[0] for each in found} == {
        "Service the filter",
        "Change the lamp",
    }


def visits(old: Typed, new: Typed, name: str = "inlet") -> tuple[Job, Job]:
    before = kept(EMPTY, name, old, "measured", STAMP)
    after = next_visit(before, "2027-05-03")
    return before, kept(after, name, new, "measured", "2027-05-03T09:00:00Z")


@pytest.mark.parametrize(
    ("old", "new", "is_named"),
    [
        (Typed("5.6 gpm", sure="0.2 gpm"), Typed("5.2 gpm", sure="0.3 gpm"), True),
        (Typed("5.6 gpm", sure="0.2 gpm"), Typed("5.35 gpm", sure="0.3 gpm"), False),
        (Typed("5.6 gpm", sure="0.3 gpm"), Typed("5.35 gpm", sure="0.2 gpm"), False),
        (Typed("5.6 gpm", sure="0.2 gpm"), Typed("5.4 gpm", sure="0.2 gpm"), False),
        (Typed("5.6 gpm", sure="3 %"), Typed("20 L/min", sure="3 %"), True),
        (Typed("5.6 gpm", sure="3 %"), Typed("21.2 L/min", sure="3 %"), False),
    ],
)
def test_a_drift_exceeds_the_doubt_of_both_visits(old: Typed, new: Typed, is_named: bool) -> None:
    """By hand: named only if the change is more than either plus-or-minus."""
    found = drifts(*visits(old, new))
    assert [each.compared.word.name for each in found] == ["inlet"] * is_named


def test_a_choice_that_changed_is_named() -> None:
    before, after = visits(Typed("before"), Typed("after"), "limit")
    assert [each.compared.word.name for each in drifts(before, after)] == ["limit"]
    assert drifts(*visits(Typed("before"), Typed("before"), "limit")) == []


@steady
@given(st.floats(1, 20), st.floats(1, 20), st.floats(0, 2), st.floats(0, 2))
def test_what_is_named_has_moved_past_both(old: float, new: float, one: float, two: float) -> None:
    """By reason, over any figures: named if and only if the change is more than both."""
    before, after = (
        Typed(f"{v:.4f} gpm", sure=f"{s:.4f} gpm") for v, s in ((old, one), (new, two))
    )
    change = abs(round(new, 4) - round(old, 4))
    most = max(round(one, 4), round(two, 4))
    if abs(change - most) > 1e-6:
        assert bool(drifts(*visits(before, after))) == (change > most)


def test_the_next_visit_keeps_every_figure_with_its_day() -> None:
    before = example("filter_due", "outlet_setting")
    after = next_visit(before, "2027-05-03")
    assert after.values == before.values
    assert read_job(write_job(after)) == after
    assert not any(measured_anew(after, before, name) for name in after.values)
    assert drifts(before, after) == []
    asked = {"job": write_job(before), "date": "2026-11-20"}
    assert "check the clock" in requests.next(asked)["refused"]


def test_the_visit_before_is_the_last_of_the_same_house() -> None:
    one, two = EMPTY, next_visit(EMPTY, "2027-05-03")
    other = Job(name="Another", date="2027-06-01", handbook="0.1.0")
    now = next_visit(EMPTY, "2028-01-10")
    assert previous_visit(now, [one, other, two, now]) == two
    assert previous_visit(one, [one, two, other]) is None


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.name)
def test_a_sheet_names_values_that_a_job_keeps(sheet: object) -> None:
    assert isinstance(sheet, type(SHEETS[0]))
    known = words()
    assert names_in(sheet) <= {name for name, word in known.items() if word.once}
    for name in sheet.answers:
        # else the headline could never stand there
        assert all(known[each].once for each in calculator(name).invented)


def test_forecasts_name_what_there_is() -> None:
    known = words()
    for each in FORECASTS:
        assert bool(each.calculator) == bool(each.outputs)
        assert not each.since or known[each.since].once
        if each.calculator:
            declared = calculator(each.calculator)
            assert {declared.output(name).kind.name for name in each.outputs} == {"time"}
            wanted = wanted_of_house(declared, each.idle)
            assert all(known[name].once for name in wanted), "it could never be answered"


def test_the_csv_holds_every_reading() -> None:
    """Second method: the standard library's `csv` reads it back."""
    job = kept(example("filter_due"), "limit", Typed("before"), "measured", STAMP, note='=a"b\n1')
    told = requests.csv({"job": write_job(job)})["csv"]
    rows = list(csv.DictReader(StringIO(told, newline="")))
    assert {row["Name"] for row in rows} == {*job.values}
    flows = [row["Value"] for row in rows if row["Name"] == "filter_flows"]
    assert flows == ["6.65", "6.65", "6.25", "6.1", "5.6"]
    (limit,) = (row for row in rows if row["Name"] == "limit")
    assert limit["Note"] == "'=a\"b\n1"  # a spreadsheet must not reckon it


def test_a_clock_before_the_jobs_own_figures_is_said() -> None:
    asked = {"job": write_job(example("filter_due"))}
    assert "set the clock" in requests.show(asked | {"now": "2026-11-20"})["html"]
    assert "set the clock" not in requests.show(asked | {"now": "2026-11-25"})["html"]
    assert json.dumps(requests.show(asked))


def test_a_value_is_a_line_until_it_is_measured() -> None:
    blank = requests.printed({"job": "", "sheet": "commissioning"})["record"]
    job = kept(EMPTY, "inlet", Typed("5.6", "gpm", sure="3 %"), "measured", STAMP)
    filled = requests.printed({"job": write_job(job), "sheet": "commissioning"})["record"]
    assert "5.6\u00a0gpm" in filled
    assert "± 3 %" in filled
    assert blank.count("record-line") == filled.count("record-line") + 1
