"""One page of the record: a sheet with what the job holds, and lines for the rest."""

from collections.abc import Iterator

from calc import EDITION
from calc.calculators import calculator
from calc.figures import written
from calc.forecasts import Due, settled
from calc.model import Choice
from calc.next_visit import Drift, drifts
from calc.sheets import Part, Sheet, Tag, names_in
from calc.units import Unit
from calc.views.html import Safe, joined, tag
from calc.views.jobs import change_words, value_words
from calc.views.record import SIGNED
from calc.views.sheet_rows import Visit, part_table, writing_line
from calc.views.words import finding_words, with_unit

MOST_NAMED = 8  # values that drifted, in a paragraph on paper
LIMITS = "Not a design stamp and no permit: local codes and licensed practice decide."


def page(sheet: Sheet, visit: Visit) -> Safe:
    """The page of one sheet, filled from a visit as far as it goes."""
    inside = [tag("h1", sheet.title), _under(visit)]
    inside += [tag("p", text) for text in sheet.says]
    inside += [part for name in sheet.answers for part in _answer(name, visit)]
    inside += [part_table(part, visit) for part in sheet.parts]
    inside += [_listed(head, lines) for head, lines in sheet.lists]
    if sheet.tags:
        inside.append(tag("div", *(_tag(each, visit) for each in sheet.tags), class_="record-tags"))
    if sheet.dates:
        inside.append(_dates_table(visit))
    if sheet.drift:
        inside.append(_drift_line(sheet, visit))
    if sheet.signed:
        signed = (tag("p", writing_line(), tag("span", each)) for each in SIGNED)
        inside.append(tag("div", *signed, class_="record-signed"))
    inside.append(tag("footer", tag("p", LIMITS)))
    return tag("article", *inside, class_=f"record record-page-{sheet.name.replace('_', '-')}")


def _under(visit: Visit) -> Safe:
    job = visit.job
    said = f"Job: {job.name if job else '_' * 30}   Date: {job.date if job else '_' * 14}"
    before = f"   Last visit: {visit.before.date}" if visit.before else ""
    return tag("p", f"{said}{before}   Pail and Timer, edition {EDITION}", class_="record-head")


def _answer(name: str, visit: Visit) -> Iterator[Safe]:
    """What a calculator says of the job, if the job alone answers it."""
    case = settled(visit.job, calculator(name), visit.unit_set) if visit.job else None
    if case and case.answer:
        first = case.answer.findings[0]
        yield tag(
            "p", tag("strong", first.head), " ", finding_words(case, first), class_="record-finding"
        )


def _listed(head: str, lines: tuple[str, ...]) -> Safe:
    return joined([tag("h2", head), tag("ul", *(tag("li", each) for each in lines))])


def _tag(label: Tag, visit: Visit) -> Safe:
    job = visit.job
    return tag(
        "section",
        tag("h2", label.title),
        tag("p", label.says),
        part_table(Part("", label.lines, ("Value", "Day")), visit),
        tag("p", *((job.name, tag("br"), job.date) if job else (writing_line(wide=True),))),
        class_="record-tag",
    )


def _dates_table(visit: Visit) -> Safe:
    rows = [
        tag(
            "tr",
            tag("th", due.forecast.title, scope="row"),
            tag("td", due.day or writing_line()),
            tag("td", why(due) if due.day else ""),
        )
        for due in visit.dues
    ]
    return tag(
        "table", tag("caption", "Next dates, at the latest"), tag("tbody", *rows),
        class_="record-table record-dates",
    )  # fmt: skip


def why(due: Due) -> str:
    """Where a date comes from."""
    return "set by hand" if due.by_hand else f"from the figures of {due.since}"


def drift_list(visit: Visit) -> Safe:
    """What has drifted since the visit before, in words; nothing where there was none."""
    if not (visit.job and visit.before):
        return Safe()
    found = drifts(visit.before, visit.job, visit.unit_set)
    if not found:
        said = f"Nothing measured today has drifted since {visit.before.date} by more than the "
        return tag("p", f"{said}plus-or-minus of both visits.", class_="record-drift")
    lines = [
        tag("li", tag("strong", each.compared.word.label), *_drift_words(each)) for each in found
    ]
    head = tag("h2", f"Drifted since {visit.before.date}")
    return tag("div", head, tag("ul", *lines), class_="record-drift")


def _drift_line(sheet: Sheet, visit: Visit) -> Safe:
    """The same in one paragraph, for paper: what stands on the sheet first, and not without end."""
    if not (visit.job and visit.before):
        return Safe()
    found = [each.compared.word for each in drifts(visit.before, visit.job, visit.unit_set)]
    if not found:
        return drift_list(visit)
    found.sort(key=lambda word: word.name not in names_in(sheet))
    more = len(found) - MOST_NAMED
    said = "; ".join(word.label for word in found[:MOST_NAMED])
    rest = f"; and {more} more, on the page of the record" if more > 0 else ""
    head = tag("strong", f"Drifted since {visit.before.date}, by more than both plus-or-minus: ")
    return tag("p", head, f"{said}{rest}.", class_="record-finding")


def _drift_words(drift: Drift) -> list[str]:
    each = drift.compared
    if isinstance(each.word, Choice):
        return [f": {each.word.options[str(each.old)]}; now {each.word.options[str(each.new)]}."]
    then, now = value_words(each, each.old), value_words(each, each.new)
    sures = " and ".join(_sure_words(each.unit, one) for one in (drift.old_sure, drift.new_sure))
    return [f": {then}, now {now} ({change_words(each)}; known to {sures})."]


def _sure_words(unit: Unit | None, sure: float) -> str:
    assert unit
    return f"± {with_unit(written(sure / unit.scale, 2), unit)}"
