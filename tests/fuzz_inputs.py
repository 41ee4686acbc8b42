"""Nonsense that is nearly sense: figures, jobs, requests, response files and exports, each a good
one with some of it changed, or anything at all."""

import json
from collections.abc import Callable
from copy import deepcopy
from typing import Any

from hypothesis import strategies as st

from calc import demo
from calc.calculators import calculator, names
from calc.coursework.record import Sheet, Try, replayed, sheet
from calc.coursework.response import response
from calc.coursework.sets import problem_set
from calc.job import Job, Mark, kept, marked, write_job
from calc.model import Calculator, Typed
from calc.sheets import SHEETS
from calc.units import KINDS
from calc.views.browser import ON_COURSE, ON_FORM_AND_JOB, ON_HOUSE, ON_JOBS, ON_SHEETS
from calc.visits.all_visits import VISITS
from calc.vocabulary import words
from tests.model.given import NASTY

WHEN = "2026-11-25T10:04:00Z"
FORMULA = ("=", "+", "-", "@", "\t", "\r")
MARKED_UP = ("<fuzz>", '"><fuzz x="', "' fuzz='", "</p><fuzz>", "&lt;fuzz&gt;", "<!--", "]]>")
SYMBOLS = sorted(
    {text for kind in KINDS for unit in kind.units for text in (unit.symbol, *unit.also)}
)
PARTS = (
    *"0123456789", " ", ".", ",", "-", "−", "+", "/", "±", "+/-", ";", ":", "½", "⅞", "e", "E",
    "e308", "e-320", "1e308", "9" * 39, "00", " 000", "\u202f", "\u00a0", "\t", "\n", "'", '"', "%",
    "1,234", "1 1/2", "1-1/2", "12' 6\"", "1:02", "٣", "²", "\ud800", "\x00", "İ", "ß", "K",
)  # fmt: skip
short = st.one_of(st.sampled_from((*PARTS, *SYMBOLS, *MARKED_UP)), st.text(max_size=3))
written = st.one_of(
    st.lists(short, max_size=12).map("".join),
    st.sampled_from([*NASTY, *MARKED_UP]),
    st.text(max_size=40),
)
long = st.builds(
    lambda parts, times: "".join(parts) * times,
    st.lists(short, min_size=1, max_size=3),
    st.sampled_from((30, 300, 3_000, 30_000)),
)
rarely_long = st.integers(0, 9).flatmap(lambda dice: written if dice else long)
number = st.one_of(
    st.from_regex(r"[-+−]? ?[0-9]{1,4}([.,][0-9]{0,5})?(e-?[0-9]{1,3})?", fullmatch=True),
    st.from_regex(r"[0-9]{1,3}([ ,\u202f][0-9]{3}){1,3}([.,][0-9])?", fullmatch=True),
    st.from_regex(r"([0-9]{1,3}[ -])?[0-9]{1,2}/[0-9]{1,2}|[0-9]{0,2}[½⅞]", fullmatch=True),
    st.floats(allow_nan=False, allow_infinity=False).map(repr),
)
anything = st.recursive(
    st.one_of(
        st.none(), st.booleans(), st.integers(), st.floats(), written,
        st.sampled_from((10**400, -1, 0, 401, 1e999, "measured", WHEN)),
    ),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3), st.dictionaries(written, inner, max_size=3)
    ),
    max_leaves=6,
)  # fmt: skip


@st.composite
def figures(draw: st.DrawFn) -> list[str]:
    """Kind, unit, and a text for it."""
    kind = draw(st.sampled_from(KINDS))
    own = [text for unit in kind.units for text in (unit.symbol, *unit.also)]
    amounts = st.tuples(number, st.sampled_from(("", " ")), st.sampled_from(own)).map("".join)
    likely = st.lists(amounts, min_size=1, max_size=3).map(" ".join)
    text = draw(st.one_of(number, likely, likely, cut(likely), written, rarely_long))
    return [kind.name, draw(st.sampled_from(kind.units)).symbol, text]


@st.composite
def cut(draw: st.DrawFn, texts: st.SearchStrategy[str]) -> str:
    """A text with a few cuts, each with something put in its place."""
    text = draw(texts)
    for _ in range(draw(st.integers(1, 4))):
        place = draw(st.integers(0, len(text)))
        gone = draw(st.sampled_from((0, 0, 1, 1, 5, 40)))
        text = text[:place] + draw(short) + text[place + gone :]
    return text


@st.composite
def changed(draw: st.DrawFn, many: list[Any]) -> Any:
    """Data with one or two of its parts changed for anything, gone, or there under another name."""
    data = deepcopy(draw(st.sampled_from(many)))
    for _ in range(draw(st.integers(1, 2))):
        inner, last = draw(st.sampled_from(list(_places(data))))
        how = draw(st.sampled_from(("other", "text", "gone", "twin")))
        if how == "gone":
            del inner[last]
        elif how == "twin" and isinstance(inner, dict):
            inner[draw(written)] = inner[last]
        elif how == "twin":
            inner.append(inner[last])
        else:
            inner[last] = draw(anything if how == "other" else written)
        if not data:
            break
    return data


def _places(data: Any) -> list[tuple[Any, Any]]:
    found = []
    keys = list(data) if isinstance(data, dict) else range(len(data))
    for key in keys:
        found.append((data, key))
        if isinstance(data[key], dict | list):
            found += _places(data[key])
    return found


def _example(name: str, date: str, *only: str) -> Job:
    made = Job(name=name, date=date, handbook="0.1.0")
    for each in only:
        made = kept(made, each, Typed(words()[each].default), "measured", WHEN)
    return marked(made, "first-survey.well", Mark("done", WHEN, "cap <loose>"))


EXAMPLES = [
    Job(name="", date="2026-11-25", handbook=""),
    _example("Quarry Road (invented)", "9999-12-31", "inlet", "filter_flows", "limit"),
    _example("<fuzz>", "0001-01-01", *(name for name, each in words().items() if each.once)),
    demo.as_found(), demo.as_left(),
]  # fmt: skip
JOBS = [write_job(each) for each in EXAMPLES]


def jobs() -> st.SearchStrategy[str]:
    """Texts of job files."""
    data = changed([json.loads(text) for text in JOBS])
    return st.one_of(
        data.map(lambda each: json.dumps(each, ensure_ascii=False, indent=2) + "\n"),
        data.map(json.dumps),
        cut(st.sampled_from(JOBS)),
        st.binary(max_size=200).map(lambda raw: raw.decode("utf-8", "replace")),
        anything.map(json.dumps),
        long,
    )


DOES = ("answer", "sure", "backwards", "varied", "record")
ROOMS = (*ON_JOBS, *ON_HOUSE, *ON_SHEETS, *ON_COURSE, *ON_FORM_AND_JOB)
QUICK = [name for name in names() if not calculator(name).simulation]
TABLES = {name: json.loads(json.dumps(visit)) for name, visit in VISITS.items()}


def _about(declared: Calculator, pick: Callable[[Any], Any]) -> dict[str, Any]:
    """Members that may be asked with, each with what a page might send."""
    inputs, outputs = ([each.name for each in many] for many in (declared.inputs, declared.outputs))
    here = st.sampled_from(inputs)
    fields = st.fixed_dictionaries({"text": written}, optional={"unit": short, "sure": written})
    words_ = st.lists(st.tuples(here, written).map("=".join), max_size=3)
    return {
        "units": pick(st.sampled_from(("us", "si"))), "key": "k", "root": "../",
        "words": [declared.name, *pick(words_)], "fields": pick(st.dictionaries(here, fields)),
        "wanted": pick(st.sampled_from(outputs)), "seen": pick(st.sampled_from(outputs)),
        "free": pick(here), "varied": pick(here), "target": pick(written),
        "job": pick(st.sampled_from(JOBS)), "old": JOBS[1], "new": JOBS[2], "others": JOBS[:2],
        "name": pick(here), "text": pick(st.one_of(written, st.sampled_from(JOBS[:2]))),
        "unit": "", "when": WHEN, "date": "2026-11-26", "now": "2026-11-25", "origin": "measured",
        "mark": pick(st.sampled_from(("", "a.b"))), "value": "done", "note": pick(written),
        "says": pick(written), "touched": inputs[:1], "ticked": [pick(here), *_left(declared)],
        "dates": {"filter": pick(written)}, "origins": {inputs[0]: pick(written)},
        "places": {declared.name: "a.html"}, "back": "house",
        "sheet": pick(st.sampled_from([*(each.name for each in SHEETS), "all"])),
        "set": "balance", "number": pick(st.sampled_from(("17", "0", "401"))),
        "word": pick(written), "section": pick(written), "learner": pick(written),
        "tries": [*(list(each) for each in TRIES[:2]), [*TRIES[3][:2], pick(written), pick(short)]],
    }  # fmt: skip


def _left(declared: Calculator) -> list[str]:
    return [f"{name}>{place}" for name, places in declared.leaves.items() for place in places]


@st.composite
def requests(draw: st.DrawFn) -> dict[str, Any]:
    """A request of a page, with what comes from an address, a file, a field or storage changed."""
    do = draw(st.sampled_from((*DOES, *DOES, *ROOMS)))
    declared = calculator(draw(st.sampled_from(QUICK)))
    asked = {"do": do, "calculator": declared.name} | _about(declared, draw)
    for member in draw(st.sampled_from((("words",), ("fields",)))):
        del asked[member]
    if draw(st.integers(0, 3)) == 0:
        asked = draw(changed([asked]))
    if do == "visit-show":  # the table is the build's, and stays
        visit = draw(st.sampled_from(sorted(TABLES)))
        asked |= {"visit": visit, "table": TABLES[visit]}
    elif do == "trouble-show":
        asked["table"] = {}
    return asked


BALANCE = problem_set("balance")


def _tries(made: Sheet) -> list[Try]:
    """Each question of a sheet answered: right, but for every third."""
    found = []
    for place, (problem, name) in enumerate(made.standings):
        right = made.variants[problem].question(name).right
        if isinstance(right, str):
            found.append(Try(problem, name, right))
        else:
            kind = made.variants[problem].question(name).kind
            assert kind
            unit = kind.units[0]
            off = 1.3 if place % 3 == 0 else 1.0
            found.append(Try(problem, name, f"{unit.out_of_si(right * off):.4g}", unit.symbol))
    return found


TRIES = _tries(sheet(BALANCE, 17))
RESPONSE = response(
    BALANCE, 17, TRIES, replayed(BALANCE, 17, TRIES), section="A", learner="1017"
)  # fmt: skip


def response_files() -> st.SearchStrategy[str]:
    """Response files of one learner or of several; a byte that is no UTF-8 is a surrogate."""
    one = json.loads(RESPONSE)
    data = changed([one, [one, one | {"learner": "1018"}]])
    return st.one_of(
        data.map(json.dumps),
        data.map(lambda each: json.dumps(each, ensure_ascii=False)).map(_as_bytes),
        cut(st.just(RESPONSE)).map(_as_bytes),
        st.binary(max_size=100).map(lambda raw: raw.decode("utf-8", "surrogateescape")),
    )


def _as_bytes(text: str) -> str:
    """The text as a file can hold it: a lone surrogate of another sort is a broken byte."""
    raw = text.encode("utf-8", "surrogatepass")
    return raw.decode("utf-8", "surrogateescape")


KEPT = "~".join(["1", BALANCE.revision, "17", "", "00-5.5", "01-%E2%88%922 gpm", "105x"])
ROWS = [
    {"learner": "1017", "cmi.suspend_data": KEPT, "cmi.core.score.raw": "95"},
    {
        "cmi.core.student_id": "1018", "score": "87,5", "variant": "3",
        "cmi.interactions.0.id": f"{TRIES[0].problem}.{TRIES[0].question}.try1",
        "cmi.interactions.0.student_response": "0.00025",
        "cmi.interactions_1.id": f"{TRIES[0].problem}.{TRIES[0].question}.try2",
        "cmi.interactions_1.student_response": "b",
    },
    {"learner": "1019", "element": "cmi.suspend_data", "value": KEPT, "set": "balance"},
]  # fmt: skip


def _table(rows: list[dict[str, Any]], mark: str) -> str:
    heads = list(dict.fromkeys(str(name) for row in rows for name in row))
    lines = [heads, *([str(row.get(name, "")) for name in heads] for row in rows)]
    return "".join(mark.join(line) + "\n" for line in lines)


def exports() -> st.SearchStrategy[str]:
    """Tables of an LMS, with any of the marks that keep their columns apart."""
    mark = st.sampled_from(",;\t")
    many = [[row] for row in ROWS]
    changes = changed([*many, ROWS]).filter(lambda rows: all(isinstance(r, dict) for r in rows))
    tables = st.builds(_table, changes, mark).map(_as_bytes)
    good = st.builds(_table, st.sampled_from([*many, ROWS]), mark)
    raw = st.binary(max_size=100).map(lambda raw: raw.decode("utf-8", "surrogateescape"))
    return st.one_of(tables, cut(good).map(_as_bytes), raw)
