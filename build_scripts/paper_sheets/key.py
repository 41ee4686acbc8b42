"""Keys: each variant's answers with what is allowed, the slips that it knows, and the working."""

from collections.abc import Iterator, Sequence
from xml.etree.ElementTree import Element, fromstring

from build_scripts.book.tree import XMLNS, make
from build_scripts.paper_sheets.paper import Copy, marking, part, whole
from build_scripts.paper_sheets.sheet import heading
from calc.coursework.grading import FEW_DIGITS, OTHER_UNIT
from calc.coursework.helping import right_words, steps_needed
from calc.coursework.problem import ProblemSet
from calc.coursework.slips import Common
from calc.coursework.variants import Question, Variant
from calc.figures import written
from calc.model import Step
from calc.views.formula import as_mathml, as_worked_text
from calc.views.words import with_unit

RULES = (
    f"An answer within the range beside it earns full marks, in any unit; {FEW_DIGITS:.0%} with "
    f"too few significant figures, {OTHER_UNIT:.0%} for the right number in a wrong unit. A slip "
    "earns the share beside it. Judge a later step by the student's own earlier figure as well, "
    "and give the better mark. What is picked among options is right or wrong."
)


def document(problem_set: ProblemSet, section: str, copies: list[Copy], paper: str) -> Element:
    """The keys of a class as a document to print: first who has which, then each variant once."""
    once = list({each.number: each for each in copies}.values())
    heads = [f"Key. {problem_set.title}", *(f"Key. {marking(problem_set, each)}" for each in once)]
    first = part(0, "key overview", *_overview(problem_set, section, copies))
    keys = [part(place, "key", *_key(problem_set, each)) for place, each in enumerate(once, 1)]
    return whole(f"{problem_set.title}: keys", paper, heads, first, *keys)


def _overview(problem_set: ProblemSet, section: str, copies: list[Copy]) -> Iterator[Element]:
    yield make("h1", f"Key: {problem_set.title}")
    yield make("p", f"Set {problem_set.name}, revision {problem_set.revision}. {section}".strip())
    yield make("p", RULES)
    yield _table(("Slip of any answer", "Marks"),
                 [(hint, f"{share:.0%}") for hint, share in _common(copies).items()])  # fmt: skip
    rows = [
        (str(row), each.label or "—", str(each.number), each.sheet.code)
        for row, each in enumerate(copies, 1)
    ]
    yield _table(("Row", "For", "Variant", "Check code"), rows)


def _common(copies: list[Copy]) -> dict[str, float]:
    """Slips that the questions of these sheets share, and the share of marks each leaves."""
    return {
        slip.hint: slip.marks
        for copy in copies
        for dealt in copy.sheet.variants.values()
        for question in dealt.questions
        for slip, _ in question.slips
        if isinstance(slip, Common)
    }


def _key(problem_set: ProblemSet, copy: Copy) -> Iterator[Element]:
    yield make("h1", f"Variant {copy.number}: {problem_set.title}")
    for place, dealt in enumerate(copy.sheet.variants.values(), 1):
        yield make("div", *_problem(place, dealt), class_="problem")


def _problem(place: int, dealt: Variant) -> Iterator[Element]:
    yield heading(place, dealt)
    if dealt.text:
        yield make("p", dealt.text, class_="story")
    rows = [
        (f"{place}.{at}", each.ask, right_words(each), _range(each), str(each.marks))
        for at, each in enumerate(dealt.questions, 1)
    ]
    yield _table(("", "Asked", "Answer", "Full marks from … to", "Marks"), rows)
    if steps := steps_needed(dealt):
        yield make("ol", *(_step(dealt, each) for each in steps), class_="steps")
    for reason in dict.fromkeys(each.because for each in dealt.questions if each.because):
        yield make("p", reason, class_="reason")
    slips = [row for at, each in enumerate(dealt.questions, 1) for row in _slips(place, at, each)]
    if slips:
        yield _table(("", "Given instead", "The slip", "Marks"), slips)


def _range(question: Question) -> str:
    if isinstance(question.right, str):
        return "only this"
    low, high = sorted((question.right - question.band, question.right + question.band))
    return f"{_figure(question, low)} … {_figure(question, high)}"


def _figure(question: Question, value: float) -> str:
    assert question.usual
    return with_unit(written(question.usual.out_of_si(value), 4), question.usual)


def _slips(place: int, at: int, question: Question) -> Iterator[tuple[str, ...]]:
    for slip, value in question.slips:
        if not isinstance(slip, Common):
            yield f"{place}.{at}", _figure(question, value), slip.hint, f"{slip.marks:.0%}"


def _step(dealt: Variant, step: Step) -> Element:
    assert dealt.case
    worked = make("span", as_worked_text(dealt.case, step), class_="worked")
    return make("li", f"{step.label}: ", _formula(step.formula), " ", worked)


def _formula(formula: str) -> Element:
    """The formula as MathML of this document."""
    math = fromstring(as_mathml(formula).replace(f' xmlns="{XMLNS["math"]}"', ""))
    math.set("xmlns", XMLNS["math"])
    math.set("display", "inline")
    math.set("displaystyle", "true")  # fractions at full size
    return math


def _table(heads: tuple[str, ...], rows: Sequence[tuple[str, ...]]) -> Element:
    head = make("tr", *(make("th", said) for said in heads))
    body = [make("tr", *(make("td", said) for said in row)) for row in rows]
    return make("table", make("thead", head), make("tbody", *body))
