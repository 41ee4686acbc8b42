"""What the page's worker calls: one request in as JSON, one reply out as JSON.

A request has `calculator`, `key` (the section's id), `root` (the way to the handbook's
root), `units` ("us" or "si"), and either `fields`, name -> {text, unit, show, sure}: what was
typed, the unit it was typed in, the unit to show it in ("" for the usual), the plus-or-minus;
or `words`, a shared link's name and input=value. `do` says what is wanted; see `DOES`. An answer
that is `brief` comes without its working.
"""

import json
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import replace
from importlib import import_module
from typing import Any

from calc.calculators import calculator
from calc.errors import Refused
from calc.figures import written
from calc.model import UNIT_SETS, Calculator, Case, Choice, Input, Typed, solve
from calc.request import LONGEST, typed_of, words_of
from calc.views.answer import answer, errors
from calc.views.form import reading, shown_sure, shown_text
from calc.views.formula import SYMBOLS, TEMPLATES
from calc.views.html import tag
from calc.views.tools import COUNTED
from calc.views.words import finding_words, reason_words, refusal_words

type Data = Mapping[str, Any]
type Reply = dict[str, Any]

PACKAGES = ("calc", "calc.calculators", "calc.fields", "calc.physics", "calc.mathml")
WEEKS_A_YEAR = 365 / 7
MOST_WEEKS = 2000  # in one request: no more than a fast machine counts within a few seconds


def reply(request: str) -> str:
    """The reply to a request of the page, both JSON.

    KeyError for what does not exist. A member of another kind than a page sends is refused:
    what stands in the browser's storage may be damaged, or of another edition.
    """
    asked: Data = json.loads(request)
    do = asked.get("do", "answer")
    if odd := [each for each in asked if not _fits(asked[each], SHAPES.get(each, object))]:
        return json.dumps({"refused": reason_words(Refused("request", member=odd[0]))})
    if do in ON_COURSE:
        return json.dumps(_course(do, asked))
    if do in ON_JOBS + ON_HOUSE + ON_SHEETS + ON_FORM_AND_JOB:
        return json.dumps(_job(do, asked))
    return json.dumps(DOES[do](_case(asked), asked))


def _fits(told: object, shape: Any) -> bool:
    """Whether it is of this type; a list or a mapping of one shape has only such in it."""
    if isinstance(shape, list):
        return isinstance(told, list) and all(_fits(each, shape[0]) for each in told)
    if isinstance(shape, dict):
        return isinstance(told, dict) and all(_fits(each, shape[str]) for each in told.values())
    return isinstance(told, shape)


def _job(do: str, asked: Data) -> Reply:
    """What concerns the job; the names are those of the functions of their modules."""
    from calc.views import house, jobs, sheets, trouble, visit

    room, _, what = do.partition("-")
    rooms = {"job": jobs, "sheet": sheets, "house": house, "trouble": trouble, "visit": visit}
    does: Callable[..., Reply] = getattr(rooms[room], what.replace("-", "_"))
    try:
        return does(_case(asked), asked) if do in ON_FORM_AND_JOB else does(asked)
    except Refused as refused:
        return jobs.refusal(refused)


def _course(do: str, asked: Data) -> Reply:
    """The page of a problem set. Its module is named as text: no other page is to carry it."""
    told: Reply = import_module("calc.coursework.practice").reply(do.partition("-")[2], asked)
    return told


def _case(asked: Data) -> Case:
    unit_set = asked["units"] if asked.get("units") in UNIT_SETS else "us"
    declared = calculator(asked["calculator"])
    _learn_formulas(declared.name)
    if "words" in asked:
        return solve(declared, _linked(declared, asked["words"]), unit_set)
    return solve(declared, _typed(declared, asked.get("fields", {}), unit_set), unit_set)


def _linked(declared: Calculator, words: list[str]) -> dict[str, Typed]:
    """What a link sets. It comes from a stranger: what it names in vain is left out."""
    known = {each.name for each in declared.inputs}
    pairs = (typed_of(declared, word) for word in words[1:] if "=" in word)
    return {name: typed for name, typed in pairs if name in known}


def _typed(
    declared: Calculator, fields: Mapping[str, Mapping[str, str]], unit_set: str
) -> dict[str, Typed]:
    usual = {e.name: e.usual(unit_set).symbol for e in declared.inputs if isinstance(e, Input)}
    return {
        name: Typed(
            each.get("text", ""),
            each.get("unit", ""),
            each.get("show") or usual.get(name, ""),
            each.get("sure", ""),
        )
        for name, each in fields.items()
    }


def _answer(case: Case, asked: Data) -> Reply:
    """The answer, what a reader who cannot see it is told, every field, and the link."""
    wrong = errors(case)
    return {
        "answer": answer(
            case, asked.get("key", ""), asked.get("root", ""), brief=asked.get("brief", False)
        ),
        "says": _says(case),
        "words": words_of(case),
        "fields": {
            each.name: _field(case, each) | {"error": wrong.get(each.name, "")}
            for each in case.calculator.inputs
        },
    }


def _says(case: Case) -> str:
    if not case.answer:
        return f"No answer: {len(case.errors)} to mend."
    first = case.answer.findings[0]
    return f"{first.head} {finding_words(case, first)}"


def _field(case: Case, each: Input | Choice) -> dict[str, str]:
    if each.name not in case.units:
        return {"text": case.typed[each.name].text}
    return {
        "text": shown_text(case, each.name),
        "unit": case.units[each.name].symbol,
        "reading": reading(case, each.name),
        "sure": shown_sure(case, each.name),
    }


def _sure(case: Case, asked: Data) -> Reply:
    """The answer again, with its plus-or-minus: slower, so asked for second."""
    from calc.views.sure import sureness

    sures = sureness(case)
    return {"answer": answer(case, asked.get("key", ""), asked.get("root", ""), sures=sures)}


def _longer(case: Case, asked: Data) -> Reply:
    """The answer after so many more `weeks` than are in the `tally`, and the new tally.

    No tally at first: the count then starts anew, with the first answer's weeks.
    """
    simulation = case.calculator.simulation
    if not (case.answer and simulation):
        return {"tally": None}
    weeks = max(1, min(int(asked.get("weeks", 1)), MOST_WEEKS))
    tally = simulation.more(case.values, asked.get("tally") or {}, weeks)
    counted = replace(case, answer=simulation.told(case.values, tally))
    html = answer(counted, asked.get("key", ""), asked.get("root", ""))
    weeks = int(tally["weeks"])
    return {
        "answer": html,
        "tally": tally,
        "says": _says(counted),
        "counted": f"{weeks} weeks counted: {written(weeks / WEEKS_A_YEAR, 2)} house-years.",
    }


def _backwards(case: Case, asked: Data) -> Reply:
    """What one figure must be for a wanted answer, as HTML."""
    from calc.views.backwards import backwards, found_html

    if case.calculator.simulation:
        return {"found": tag("p", COUNTED)}
    if not case.answer:
        return {"found": tag("p", "Mend the figures above first.")}
    try:
        told = backwards(case, asked["wanted"], asked["target"][:LONGEST], asked["free"])
    except Refused as refused:
        return {"found": tag("p", refusal_words(case, refused))}
    return {"found": found_html(told, asked["free"])}


def _varied(case: Case, asked: Data) -> Reply:
    """One answer against one figure, drawn."""
    from calc.sweep import sweep
    from calc.views.chart import figure

    if case.calculator.simulation:
        return {"drawn": tag("p", COUNTED)}
    is_one = isinstance(case.values[asked["varied"]], float) if case.answer else False
    drawn = sweep(case, asked["varied"], asked["seen"]) if is_one else None
    if drawn is None:
        return {"drawn": tag("p", "There is nothing to draw: no such number here, or no answer.")}
    return {"drawn": figure(case, drawn, f"{asked['key']}-sweep")}


def _record(case: Case, asked: Data) -> Reply:
    """The record of the case on one page, or the blank form of it."""
    from calc.views.record import Head, blank, record

    head = Head(*(str(asked.get(part, "")) for part in Head._fields))
    if asked.get("blank"):
        return {"record": blank(case.calculator, case.unit_set, head)}
    if not case.answer:
        return {"record": ""}
    return {"record": record(case, head, asked.get("origins", {}))}


# What is needed only now and then is imported only then: a page starts with the answer.
DOES: Mapping[str, Callable[[Case, Data], Reply]] = {
    "answer": _answer,
    "sure": _sure,
    "backwards": _backwards,
    "varied": _varied,
    "longer": _longer,
    "record": _record,
}
ON_JOBS = ("job-new", "job-read", "job-show", "job-drop", "job-compare", "job-record", "job-mark")
ON_HOUSE = (
    "house-show", "house-demo-job", "house-what-if", "trouble-show", "visit-show", "visit-fill-in",
)  # fmt: skip
ON_SHEETS = ("sheet-show", "sheet-printed", "sheet-csv", "sheet-calendar", "sheet-next")
ON_COURSE = ("course-show", "course-check", "course-deal", "course-response")
ON_FORM_AND_JOB = ("job-panel", "job-use", "job-keep", "job-keep-all")


# What the members of a request are. `table` is not among them: it is the build's, in the page.
_TEXTS = (
    "do", "calculator", "key", "root", "units", "wanted", "target", "free", "varied", "seen", "job",
    "old", "new", "name", "text", "unit", "when", "date", "now", "origin", "mark", "value", "note",
    "says", "sheet", "set", "word", "section", "learner", "visit", "back",
)  # fmt: skip
SHAPES: Mapping[str, Any] = {
    **dict.fromkeys(_TEXTS, str),
    **{each: [str] for each in ("words", "touched", "ticked", "others")},
    **{each: {str: str} for each in ("origins", "dates", "places")},
    "fields": {str: {str: str}},
    "number": (str, int),
    "brief": bool,
    "tally": (dict, type(None)),  # none at first
    "weeks": (int, float),
    "tries": [[str]],
}


def _learn_formulas(name: str) -> None:
    """The build puts the MathML of a calculator's formulas beside it; the wheel has none."""
    with suppress(ModuleNotFoundError):
        made = import_module(f"calc.mathml.{name}")
        TEMPLATES.update(made.TEMPLATES)
        SYMBOLS.update(made.SYMBOLS)


def take(archive: str) -> None:
    """More of `calc` has come: the zip file at this path holds modules of a calculator."""
    for package in PACKAGES:
        import_module(package).__path__.append(f"{archive}/{package.replace('.', '/')}")
