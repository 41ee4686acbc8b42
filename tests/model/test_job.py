"""The job: values kept, files written and read back, bad files refused, two visits compared."""

import json
from contextlib import suppress
from copy import deepcopy
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given, reject
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from calc import job as module
from calc import job_file
from calc.calculators import calculator, names
from calc.errors import Refused
from calc.job import (
    Job,
    Mark,
    compared,
    kept,
    marked,
    read_job,
    typed,
    without,
    write_job,
)
from calc.model import Input, Typed, solve
from calc.units import Kind, gpm, length, psi, temperature
from calc.vocabulary import words
from tests.model.given import CALCULATORS, NASTY, patient, steady, texts
from tests.model.given import typed as typed_for

SCHEMA = json.loads(Path(module.__file__).with_name("job.schema.json").read_text("utf-8"))
FITS = Draft202012Validator(SCHEMA)
EXAMPLE: dict[str, Any] = SCHEMA["examples"][0]
FILE = json.dumps(EXAMPLE, ensure_ascii=False, indent=2) + "\n"
NEW = Job(name="Quarry Road house (invented)", date="2026-11-25", handbook="2026-11")
WHEN = "2026-11-25T10:04:00Z"
GONE = object()
LONG = "\x1b\ud800" + "x" * 9_000


def reason(text: str) -> str:
    """Why a file is refused; empty if it is not. Anything but Refused fails the test."""
    try:
        read_job(text)
    except Refused as refused:
        return refused.reason
    return ""


def spoiled(path: str, value: object) -> dict[str, Any]:
    """The example with one member changed, added or gone."""
    data: dict[str, Any] = deepcopy(EXAMPLE)
    *way, last = path.split("/")
    inner = data
    for step in way:
        inner = inner[step]
    inner[last] = value
    if value is GONE:
        del inner[last]
    return data


@st.composite
def jobs(draw: st.DrawFn) -> Job:
    """A job of what a person might type for one calculator, and might note beside it."""
    line = st.text(st.characters(categories=["L", "N", "P", "S", "Zs"]), max_size=300)
    job = replace(NEW, name=draw(line))
    for name, each in draw(st.sampled_from(CALCULATORS).flatmap(typed_for)).items():
        sure = draw(st.sampled_from(["", "3 %", "0"]))
        origin = draw(st.sampled_from(["measured", "assumed", *names()]))
        with suppress(Refused):  # measured anew for every page, or rounded out of range
            job = kept(job, name, each._replace(sure=sure), origin, WHEN, note=draw(line))
    return job if job.values else reject()


def test_the_schema_is_one_and_says_what_the_code_says() -> None:
    """JSON Schema draft 2020-12, its own schema; and the limits of `calc.job`."""
    Draft202012Validator.check_schema(SCHEMA)
    assert {"title", "description", "examples"} <= {*SCHEMA}
    assert SCHEMA["properties"]["format"]["const"] == module.FORMAT
    assert SCHEMA["properties"]["version"]["const"] == module.VERSION
    assert SCHEMA["$defs"]["text"]["maxLength"] == job_file.MOST_TEXT
    assert tuple(SCHEMA["$defs"]["value"]["properties"]) == module.JobValue._fields


def test_every_name_there_is_fits_the_schema() -> None:
    """The declarations: inputs and calculators are named as the schema allows."""
    for name in (*words(), *(one.name for one in CALCULATORS)):
        Draft202012Validator(SCHEMA["$defs"]["word"]).validate(name)


def test_the_example_of_the_schema_is_a_job_and_is_written_as_it_stands() -> None:
    """By hand: what a reader of the schema copies works, member by member in this order."""
    FITS.validate(EXAMPLE)
    assert write_job(read_job(FILE)) == FILE


@patient
@given(jobs())
def test_what_is_written_is_read_back(job: Job) -> None:
    """By reason: nothing is lost, the schema holds, and equal jobs make equal files."""
    text = write_job(job)
    assert read_job(text) == job
    FITS.validate(json.loads(text))
    assert text.endswith("}\n")
    assert write_job(replace(job, values=dict(reversed([*job.values.items()])))) == text
    assert read_job("\ufeff" + text.replace("\n", "\r\n")) == job


@pytest.mark.parametrize(
    ("path", "value", "why", "member"),
    [
        ("format", "another", "job foreign", ""),
        ("format", GONE, "job foreign", ""),
        ("version", 2, "job newer", ""),
        ("version", 1.5, "job newer", ""),
        ("version", 0, "job older", ""),
        ("version", GONE, "job member missing", "version"),
        ("version", "1", "job member type", "version"),
        ("version", True, "job member type", "version"),
        ("name", GONE, "job member missing", "name"),
        ("name", 5, "job member type", "name"),
        ("name", "x" * 301, "job text long", "name"),
        ("handbook", "a\x00b", "job text unshowable", "handbook"),
        ("comment", "", "job member unknown", "comment"),
        ("date", None, "job member type", "date"),
        ("date", "25.11.2026", "job date", "date"),
        ("date", "2026-13-01", "job date", "date"),
        ("date", "2026-11-25\n", "job date", "date"),
        ("values", [], "job member type", "values"),
        ("values", GONE, "job member missing", "values"),
        ("values/inlet", "5.6 gpm", "job member type", "inlet"),
        ("values/inlet/when", GONE, "job member missing", "inlet.when"),
        ("values/inlet/unit", GONE, "job member missing", "inlet.unit"),
        ("values/inlet/unit", None, "job member type", "inlet.unit"),
        ("values/inlet/value", 5.6, "job member type", "inlet.value"),
        ("values/inlet/value", ["5.6"], "job member type", "inlet.value"),
        ("values/inlet/note", "x" * 301, "job text long", "inlet.note"),
        ("values/inlet/by", "", "job member unknown", "inlet.by"),
        ("values/inlet/when", "2026-11-25 10:04:00", "job time", "inlet.when"),
        ("values/inlet/when", "2026-11-25T24:00:00Z", "job time", "inlet.when"),
        ("values/inlet/origin", "A neighbour", "job origin", "inlet.origin"),
    ],
)
def test_a_broken_file_is_refused_by_the_reader_and_by_the_schema(
    path: str, value: object, why: str, member: str
) -> None:
    """By hand, one fault at a time in a file that is sound without it."""
    data = spoiled(path, value)
    assert not FITS.is_valid(data)
    with pytest.raises(Refused) as refused:
        read_job(json.dumps(data))
    assert refused.value.reason == why
    assert refused.value.facts.get("member", "") == member
    assert refused.value.field == ("inlet" if path.startswith("values/") else "")


@pytest.mark.parametrize(
    ("path", "value", "why", "field"),
    [
        ("date", "2026-02-29", "job date", ""),
        ("date", "0000-01-01", "job date", ""),
        ("values/depth_of_moon", EXAMPLE["values"]["inlet"], "job value unknown", ""),
        ("values/runs", EXAMPLE["values"]["inlet"], "job value unknown", ""),
        ("values/inlet/value", "", "blank", "inlet"),
        ("values/inlet/value", "five", "unreadable", "inlet"),
        ("values/inlet/value", "101", "above", "inlet"),
        ("values/inlet/value", "0.01", "below", "inlet"),
        ("values/inlet/value", "5 psi", "wrong kind", "inlet"),
        ("values/inlet/value", "1,234", "ambiguous", "inlet"),
        ("values/inlet/unit", "psi", "unknown unit", "inlet"),
        ("values/inlet/unit", "", "job no unit", "inlet"),
        ("values/inlet/plus_minus", "a lot", "sure unreadable", "inlet"),
        ("values/inlet/origin", "tea_leaves", "job origin", "inlet"),
        ("values/inlet/when", "2026-02-30T10:04:00Z", "job time", "inlet"),
        ("values/limit/value", "beside", "no such option", "limit"),
        ("values/limit/unit", "", "job member unknown", "limit"),
        ("values/limit", {"value": "before"}, "job member missing", "limit"),
    ],
)
def test_a_file_that_means_nothing_here_is_refused(
    path: str, value: object, why: str, field: str
) -> None:
    """By hand: names, units, ranges and the calendar, of which no schema knows."""
    with pytest.raises(Refused) as refused:
        read_job(json.dumps(spoiled(path, value)))
    assert (refused.value.reason, refused.value.field) == (why, field)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "job not json"),
        (FILE[:-3], "job not json"),
        (FILE + "{}", "job not json"),
        (FILE.replace('"', "'"), "job not json"),
        (FILE.replace('"28"', "9" * 5_000), "job member type"),
        (FILE.replace('"28"', "1e999"), "job member type"),
        (FILE.replace('"28"', "NaN"), "job no number"),
        (FILE.replace('"28"', "-Infinity"), "job no number"),
        (FILE.replace('"limit"', '"inlet"'), "job member twice"),
        (FILE.replace('"note": ""', '"note": "\\ud800"'), "job text unshowable"),
        (FILE.replace('"name"', '"\\ud800"'), "job member missing"),
        (FILE.replace('"values"', '"\\ud800": 0, "values"'), "job member unknown"),
        ("[" * 100_000, "job too deep"),
        ('{"format":' * 19_000, "job too deep"),
        ('"' + "\\[" * 90_000, "job not json"),
        ('"' + '\\"' * 99_000, "job not json"),
        ("null", "job not an object"),
        (f"[{FILE}]", "job not an object"),
        ("{}", "job foreign"),
        (FILE + " " * 200_000, "job too large"),
        (FILE.replace("(invented)", "é" * 100_000), "job too large"),
        (FILE + "\ud800", "job not json"),
    ],
)
def test_a_text_that_is_no_job_is_refused(text: str, why: str) -> None:
    """By hand: broken, foreign, and made to harm."""
    assert reason(text) == why


def test_brackets_in_a_text_are_no_nesting() -> None:
    """By hand: only what nests is counted, however the quotes are escaped."""
    note = '\\" [[[[[[[[[[[[[[[[[[[[[[[[[ {{{{{ " ]] \\'
    assert read_job(json.dumps(spoiled("values/limit/note", note))).values["limit"].note == note


@pytest.mark.parametrize(
    "text",
    [
        json.dumps(spoiled("values/" + LONG, {})),
        json.dumps(spoiled("values/inlet/" + LONG, "")),
        FILE.replace('"values"', f'{json.dumps(LONG)}: 0, {json.dumps(LONG)}: 0, "values"'),
    ],
)
def test_a_refusal_shows_no_more_of_a_name_than_fits_a_line(text: str) -> None:
    """By reason: the file is a stranger's, and its names stand in our sentences."""
    with pytest.raises(Refused) as refused:
        read_job(text)
    (shown,) = map(str, refused.value.facts.values())
    assert len(shown) < 50
    assert "\N{REPLACEMENT CHARACTER}\N{REPLACEMENT CHARACTER}xxx" in shown


def test_a_job_too_large_to_be_read_is_not_written() -> None:
    """By reason: what is saved can be opened again."""
    value = read_job(FILE).values["inlet"]._replace(note="\N{DROPLET}" * 300)
    with pytest.raises(Refused, match="too large"):
        write_job(replace(NEW, values={f"value_{number}": value for number in range(200)}))


any_json = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.floats(allow_nan=False), texts),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(texts, inner, max_size=3)),
    max_leaves=8,
)
PATHS = [
    *EXAMPLE,
    *(f"values/{name}" for name in EXAMPLE["values"]),
    *(f"values/{name}/{member}" for name, each in EXAMPLE["values"].items() for member in each),
    *("more", "values/outlet", "values/inlet/more", "values/limit/unit"),
]


@steady
@given(st.one_of(st.text(), any_json.map(json.dumps)))
def test_any_text_is_refused(text: str) -> None:
    """By reason: no text that was not written as a job is one, and none does worse."""
    assert reason(text)


@steady
@given(st.sampled_from(PATHS), st.one_of(any_json, st.sampled_from(NASTY), st.just(GONE)))
def test_any_change_of_a_good_file_is_taken_or_refused(path: str, value: object) -> None:
    """By reason: what the schema forbids the reader refuses, and what is read reads again."""
    data = spoiled(path, value) if value is not GONE or path in PATHS[:-4] else EXAMPLE
    text = json.dumps(data)
    if not reason(text):
        FITS.validate(data)
        assert read_job(write_job(read_job(text))) == read_job(text)


@steady
@given(st.integers(0, len(FILE)), st.integers(0, 30), st.one_of(st.text(max_size=5), texts))
def test_any_cut_of_a_good_file_is_taken_or_refused(place: int, length: int, put: str) -> None:
    """By reason: a byte lost on the way does no harm."""
    text = FILE[:place] + put + FILE[place + length :]
    assert reason(text) or read_job(write_job(read_job(text))) == read_job(text)


def exists(*parts: int) -> bool:
    """Whether a clock and calendar can show it: Python's own `datetime`, a second method."""
    try:
        datetime(*parts)  # type: ignore[arg-type]  # year, month, day and so on
    except ValueError:
        return False
    return True


@steady
@given(
    st.tuples(st.integers(0, 9999), st.integers(0, 14), st.integers(0, 33)),
    st.tuples(st.integers(0, 26), st.integers(0, 63), st.integers(0, 63)),
)
@example((2024, 2, 29), (23, 59, 59))
@example((2000, 2, 29), (0, 0, 0))
@example((2100, 2, 29), (24, 0, 0))
@example((2026, 4, 31), (1, 2, 3))
def test_days_and_moments_are_those_of_the_calendar(
    day: tuple[int, int, int], clock: tuple[int, int, int]
) -> None:
    """The reference is Python's own `datetime`."""
    date = "{:04}-{:02}-{:02}".format(*day)
    moment = "{}T{:02}:{:02}:{:02}Z".format(date, *clock)
    why = reason(json.dumps(spoiled("date", date)))
    assert why == ("" if exists(*day) else "job date")
    why = reason(json.dumps(spoiled("values/inlet/when", moment)))
    assert why == ("" if exists(*day, *clock) else "job time")


def test_what_is_kept_serves_every_calculator_that_asks() -> None:
    """By hand: typed on one page, the same water on the next, plus-or-minus and all."""
    job = kept(NEW, "inlet", Typed("20", "L/min", "gpm", "3 %"), "pail_flow", WHEN)
    job = kept(job, "limit", Typed("after"), "tank_draw", WHEN, note="seen")
    setting = typed(job, calculator("outlet_setting"))
    assert setting == {"inlet": Typed("20", "L/min", "", "3 %"), "limit": Typed("after")}
    assert typed(job, calculator("tank_draw")) == {"limit": Typed("after")}
    assert typed(job, calculator("pail_flow")) == {}
    case = solve(calculator("outlet_setting"), setting)
    assert not case.errors
    assert case.values["inlet"] == pytest.approx(20e-3 / 60)
    assert case.sures["inlet"] == pytest.approx(0.6e-3 / 60)


def test_a_bare_number_is_kept_with_the_unit_the_reader_meant() -> None:
    """By hand: 20 is 20 L/min to the one reader and 20 gpm to the other, for good."""
    units = {
        unit_set: kept(NEW, "inlet", Typed("20"), "measured", WHEN, unit_set).values["inlet"].unit
        for unit_set in ("us", "si")
    }
    assert units == {"us": "gpm", "si": "L/min"}


def test_marks_are_written_read_back_and_taken_away() -> None:
    """By hand; and a job without marks is written as it was before there were any."""
    job = marked(NEW, "first-survey.well", Mark("done", WHEN, "cap loose"))
    FITS.validate(json.loads(write_job(job)))
    assert read_job(write_job(job)) == job
    assert "marks" not in json.loads(write_job(marked(job, "first-survey.well", None)))


@pytest.mark.parametrize(
    ("step", "mark", "why"),
    [
        ("well", Mark("done", WHEN), "job mark"),
        ("First.well", Mark("done", WHEN), "job mark"),
        ("a." + "b" * 300, Mark("done", WHEN), "job text long"),
        ("a.b", Mark("done", "yesterday"), "job time"),
        ("a.b", Mark("done", WHEN, "x" * 301), "job text long"),
        ("a.b", Mark("\x00", WHEN), "job text unshowable"),
    ],
)
def test_a_mark_that_is_none_is_refused_by_writer_reader_and_schema(
    step: str, mark: Mark, why: str
) -> None:
    """By hand, one fault at a time."""
    with pytest.raises(Refused) as refused:
        marked(NEW, step, mark)
    assert refused.value.reason == why
    data = json.loads(FILE) | {"marks": {step: mark._asdict()}}
    assert reason(json.dumps(data)) == why
    assert not FITS.is_valid(data)


@pytest.mark.parametrize("entry", [[], {"value": "done"}, {**Mark("a", WHEN)._asdict(), "by": ""}])
def test_a_broken_mark_in_a_file_is_refused(entry: object) -> None:
    data = json.loads(FILE) | {"marks": {"a.b": entry}}
    assert reason(json.dumps(data)).startswith("job member")
    assert not FITS.is_valid(data)


def test_keeping_and_dropping_make_another_job() -> None:
    """By reason: what was before can be gone back to."""
    one = kept(NEW, "inlet", Typed("5.6"), "measured", WHEN)
    two = kept(one, "inlet", Typed("4.9"), "measured", WHEN)
    assert [NEW.values, one.values["inlet"].value, two.values["inlet"].value] == [{}, "5.6", "4.9"]
    assert without(two, "inlet") == NEW
    assert without(NEW, "inlet") == NEW


@pytest.mark.parametrize(
    ("name", "value", "origin", "when", "why"),
    [
        ("moon", Typed("5"), "measured", WHEN, "job value unknown"),
        ("runs", Typed("53 s"), "measured", WHEN, "job value unknown"),
        ("inlet", Typed("5", "psi"), "measured", WHEN, "unknown unit"),
        ("inlet", Typed("5 psi"), "measured", WHEN, "wrong kind"),
        ("inlet", Typed("5", sure="some"), "measured", WHEN, "sure unreadable"),
        ("inlet", Typed("5\ud800"), "measured", WHEN, "job text unshowable"),
        ("inlet", Typed("5" + " " * 300), "measured", WHEN, "job text long"),
        ("inlet", Typed("5"), "hearsay", WHEN, "job origin"),
        ("inlet", Typed("5"), "measured", "today", "job time"),
        ("limit", Typed("beside"), "measured", WHEN, "no such option"),
    ],
)
def test_what_could_not_be_read_again_is_not_kept(
    name: str, value: Typed, origin: str, when: str, why: str
) -> None:
    """By reason: a job is always one that `read_job` takes."""
    with pytest.raises(Refused) as refused:
        kept(NEW, name, value, origin, when)
    assert refused.value.reason == why


def visit(**values: str) -> Job:
    job = NEW
    for name, text in values.items():
        job = kept(job, name, Typed(text), "measured", WHEN)
    return job


def test_two_visits_are_compared() -> None:
    """By hand: 5.6 to 4.9 gpm is 0.7 gpm less, an eighth; in the order of the calculators."""
    old = visit(limit="before", inlet="5.6", rise="0", precharge="28", house_tank="20")
    new = visit(inlet="4.9", rise="3", precharge="21", limit="after", outlet="22 L/min")
    rows = {row.word.name: row for row in compared(old, new, "si")}
    assert list(rows) == [name for name in words() if name in rows]
    assert {*rows} == {"inlet", "rise", "precharge", "limit", "house_tank", "outlet"}
    inlet = rows["inlet"]
    assert inlet.unit
    assert inlet.unit.symbol == "L/min"
    assert (inlet.old, inlet.new) == (5.6 * gpm, 4.9 * gpm)
    assert inlet.change == pytest.approx(-0.7 * gpm)
    assert inlet.share == pytest.approx(-0.125)
    assert rows["limit"] == (words()["limit"], "before", "after", None, None, None)
    assert (rows["outlet"].old, rows["outlet"].change, rows["outlet"].share) == (None, None, None)
    assert (rows["house_tank"].new, rows["house_tank"].change) == (None, None)


@pytest.mark.parametrize(
    ("name", "old", "new", "change"),
    [
        ("rise", "0", "3 m", 3.0),
        ("precharge", "28 psi", "21 psi", -7 * psi),
        ("scatter", "1 %", "2 %", 0.01),
    ],
)
def test_per_cent_is_given_only_where_it_means_something(
    name: str, old: str, new: str, change: float
) -> None:
    """By reason: not of nothing, not of gauge pressure with its zero at one atmosphere, and
    not of per cent, where 1 % to 2 % may be told as one more or as a hundred more."""
    (row,) = compared(visit(**{name: old}), visit(**{name: new}), "us")
    assert row.change == pytest.approx(change)
    assert row.share is None


@pytest.mark.parametrize(
    ("kind", "old", "new", "change", "share"),
    [
        (length, "-4 m", "-5 m", -1.0, -0.25),
        (temperature, "10 °C", "50 °F", 0.0, None),
        (temperature, "10 °C", "20 °C", 10.0, None),
    ],
)
def test_what_no_calculator_asks_yet_is_compared_too(
    monkeypatch: pytest.MonkeyPatch,
    kind: Kind,
    old: str,
    new: str,
    change: float,
    share: float | None,
) -> None:
    """By hand: lower is less, of whatever sign; and 20 °C is not twice as warm as 10 °C."""
    depth = Input(
        name="depth", label="Depth", kind=kind, default=old, origin="invented", low=-400.0,
        high=400.0, measure="With a tape.",
    )  # fmt: skip
    monkeypatch.setattr(module, "words", lambda: {"depth": depth})
    (row,) = compared(visit(depth=old), visit(depth=new), "si")
    assert row.change == pytest.approx(change, abs=1e-9)
    assert row.share == (None if share is None else pytest.approx(share))


@patient
@given(jobs())
def test_a_visit_compared_with_itself_has_not_changed(job: Job) -> None:
    """By reason: and every value of it is told."""
    rows = compared(job, job, "us")
    assert {row.word.name for row in rows} == {*job.values}
    assert all(row.old == row.new and not row.change for row in rows)
