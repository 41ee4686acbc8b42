"""One page to keep: a case with its inputs, answers and cautions, or the same as a blank form."""

from collections.abc import Mapping
from typing import NamedTuple

from calc import EDITION
from calc.job import Job
from calc.model import Calculator, Case, Choice, Input, Output
from calc.request import words_of
from calc.views.html import Safe, tag, uncited
from calc.views.sure import output_sure, sureness
from calc.views.words import finding_words, input_words, output_words, sure_words

SIGNED = ("Measured by", "Licence no.", "Date", "Signature")


class Head(NamedTuple):
    """What stands at the top of a record: the job, the day, and where the figures are kept."""

    job: str = ""
    date: str = ""
    link: str = ""


def record(case: Case, head: Head, origins: Mapping[str, str]) -> Safe:
    """The record of an answered case. `origins` says where each input came from."""
    assert case.answer
    sures = sureness(case)
    rows = [
        row(
            each.label,
            input_words(case, each.name),
            sure_words(case, each.name),
            origins.get(each.name) or _unmeasured(case, each),
        )
        for each in case.calculator.inputs
    ]
    answers = [
        row(o.label, output_words(case, o), output_sure(case, o, sures), "")
        for o in case.calculator.outputs
    ]
    findings = [
        tag("p", tag("strong", f.head), " ", finding_words(case, f), class_="record-finding")
        for f in case.answer.findings
    ]
    return _page(case.calculator, head, rows, answers, findings)


def _unmeasured(case: Case, each: Input | Choice) -> str:
    """What to say of a figure that nobody says where it came from."""
    untouched = not any(word.startswith(f"{each.name}=") for word in words_of(case))
    return "not measured" if untouched else "typed here"


def job_record(job: Job, head: Head, rows: list[Safe]) -> Safe:
    """The record of a whole job: every value it holds, with where each came from."""
    return tag(
        "article",
        tag("h1", f"Job: {job.name}"),
        _under(head._replace(job=job.name)),
        _table("What this job holds", ("Value", "From", ""), rows),
        _signed(),
        _foot(head),
        class_="record",
    )


def blank(calculator: Calculator, unit_set: str, head: Head) -> Safe:
    """The same page to fill in by pen."""
    rows = [_blank_row(each, unit_set) for each in calculator.inputs]
    answers = [row(o.label, _line(_unit(o, unit_set)), "", "") for o in calculator.outputs]
    return _page(calculator, head, rows, answers, [])


def _page(
    calculator: Calculator, head: Head, rows: list[Safe], answers: list[Safe], findings: list[Safe]
) -> Safe:
    return tag(
        "article",
        tag("h1", calculator.title),
        _under(head),
        _cautions(calculator),
        _table("Measured and known", ("Value", "±", "From"), rows),
        *findings,
        _table("Answers", ("Value", "±", ""), answers),
        _signed(),
        _foot(head),
        class_="record",
    )


def _under(head: Head) -> Safe:
    said = f"Job: {head.job or '_' * 30}   Date: {head.date or '_' * 14}   "
    return tag("p", f"{said}Pail and Timer, edition {EDITION}", class_="record-head")


def _signed() -> Safe:
    return tag("div", *(_signature(each) for each in SIGNED), class_="record-signed")


def _foot(head: Head) -> Safe:
    return tag(
        "footer",
        tag("div", class_="record-code"),
        tag("p", head.link, class_="record-link"),
        tag("p", "Not a design stamp and no permit: local codes and licensed practice decide."),
    )


def _cautions(calculator: Calculator) -> Safe:
    words = [tag("li", uncited(text)) for text in calculator.cautions]
    return tag("ul", *words, class_="record-cautions")


def _table(caption: str, heads: tuple[str, str, str], rows: list[Safe]) -> Safe:
    head = tag("tr", *(tag("th", text, scope="col") for text in ("", *heads)))
    body = tag("tbody", *rows)
    return tag("table", tag("caption", caption), tag("thead", head), body, class_="record-table")


def row(label: str, value: object, sure: str, origin: str) -> Safe:
    """A row of a record's table."""
    cells = [tag("td", each) for each in (value, sure, origin)]
    return tag("tr", tag("th", label, scope="row"), *cells)


def _blank_row(each: Input | Choice, unit_set: str) -> Safe:
    if isinstance(each, Choice):
        boxes = "   ".join(f"☐ {words}" for words in each.options.values())
        return row(each.label, boxes, "", "")
    lines = [_line("")] * (each.several - 1) + [_line(_unit(each, unit_set))]
    return row(each.label, Safe(" ".join(lines)), "____" if each.several == 1 else "", "")


def _unit(each: Input | Output, unit_set: str) -> str:
    return each.usual(unit_set).symbol


def _line(unit: str) -> Safe:
    return Safe(f"{tag('span', class_='record-line')} {tag('span', unit)}")


def _signature(label: str) -> Safe:
    return tag("p", tag("span", class_="record-line"), tag("span", label))
