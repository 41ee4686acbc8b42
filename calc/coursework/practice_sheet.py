"""A sheet as HTML: to practise on, and the worked example for where no script runs."""

from calc.coursework.helping import full_working, help_after, right_words
from calc.coursework.problem import ProblemSet
from calc.coursework.record import Sheet, Standing, Try, sheet
from calc.coursework.variants import EXAMPLE, Question, Variant
from calc.views.html import Safe, joined, tag

LEVELS = {"right": "good", "digits": "caution", "ask": None, "unit": "caution", "slip": "caution"}


def sheet_html(
    chosen: ProblemSet, number: int, tries: list[Try], made: Sheet, word: str = ""
) -> Safe:
    """Every problem of a sheet with its boxes, filled with what was tried last."""
    last = {(each.problem, each.question): each for each in tries}
    problems = []
    for place, (name, dealt) in enumerate(made.variants.items(), 1):
        asked = [
            _asked(name, at, standing, last.get((name, standing.question.name)),
                   question_told(chosen, number, name, standing, word))
            for at, standing in enumerate(_standings(made, name), 1)
        ]  # fmt: skip
        done = tag("div", worked(made, name), data_worked=name)
        problems.append(_problem(place, dealt, joined(asked), done))
    return joined(problems)


def example_html(chosen: ProblemSet) -> Safe:
    """Variant 0, which nobody is assigned, with its answers and working."""
    made = sheet(chosen, EXAMPLE)
    return joined(
        [
            _problem(
                place,
                dealt,
                tag("ol", *(_answered(each) for each in dealt.questions)),
                _working(dealt),
            )
            for place, dealt in enumerate(made.variants.values(), 1)
        ]
    )


def question_told(
    chosen: ProblemSet, number: int, problem: str, standing: Standing, word: str = ""
) -> Safe:
    """How a question stands after its last try, and help for its misses."""
    verdict, question = standing.last, standing.question
    if not verdict:
        return Safe()
    level = LEVELS.get(verdict.judged, "danger")
    said = tag("p", verdict.says, class_="calc-finding", data_level=level)
    if not standing.tries:
        return said
    marks = f"{_marks(standing.best * question.marks)} of {question.marks}"
    told = [said, tag("p", f"Marks: {marks}. Tries: {standing.tries}.", class_="course-marks")]
    if not standing.solved:
        lines = help_after(standing.misses, chosen, problem, question.name, number, word)
        told += [tag("p", line) for line in lines]
    return joined(told)


def worked(made: Sheet, problem: str) -> Safe:
    """The full working of a problem once each of its questions has been right."""
    if not all(standing.solved for standing in _standings(made, problem)):
        return Safe()
    return _working(made.variants[problem])


def score(made: Sheet) -> str:
    """Marks earned of those to be had, and the sheet's check code."""
    return f"Marks: {_marks(made.marks)} of {made.full}. Check code {made.code}."


def _standings(made: Sheet, problem: str) -> list[Standing]:
    return [standing for (name, _), standing in made.standings.items() if name == problem]


def _marks(marks: float) -> str:
    return f"{marks:.2f}".rstrip("0").rstrip(".")


def _problem(place: int, dealt: Variant, *inside: object) -> Safe:
    about = dealt.problem
    return tag(
        "section",
        tag("h3", f"{place}. {about.objective}"),
        tag("p", f"{about.form.capitalize()}, level {about.level}, about {about.minutes} min.",
            class_="calc-example"),
        tag("p", dealt.text) if dealt.text else Safe(),
        *inside,
        class_="course-problem",
    )  # fmt: skip


def _working(dealt: Variant) -> Safe:
    lines = full_working(dealt)
    if not lines:
        return Safe()
    return tag("div", tag("p", tag("strong", "Working")), *(tag("p", each) for each in lines),
               class_="course-working")  # fmt: skip


def _answered(question: Question) -> Safe:
    return tag("li", tag("p", question.ask), tag("p", tag("strong", right_words(question))))


def _asked(problem: str, place: int, standing: Standing, last: Try | None, told: Safe) -> Safe:
    """One question as a form of its own, so that Enter checks it and nothing else."""
    question = standing.question
    id_ = f"course-{problem}-{question.name}"
    ask = f"{place}. {question.ask}"
    if question.marks > 1:
        ask += f" ({question.marks} marks)"
    entry = _options if question.options else _entry
    return tag(
        "form",
        entry(id_, ask, question, last),
        tag("div", tag("button", "Check", type="submit", aria_describedby=f"{id_}-ask"),
            class_="calc-actions"),
        tag("div", told, data_told=True, role="status", id=f"{id_}-told"),
        class_="course-question",
        data_problem=problem,
        data_question=question.name,
        novalidate=True,
        autocomplete="off",
    )  # fmt: skip


def _options(id_: str, ask: str, question: Question, last: Try | None) -> Safe:
    labels = [
        tag(
            "label",
            tag("input", type="radio", name=id_, value=option,
                checked=last is not None and last.text == option),
            tag("span", words),
        )
        for option, words in question.options.items()
    ]  # fmt: skip
    return tag("fieldset", tag("legend", ask, id=f"{id_}-ask"), *labels, class_="calc-choice")


def _entry(id_: str, ask: str, question: Question, last: Try | None) -> Safe:
    """No number pad: it has neither minus nor slash, and no letters for a unit."""
    assert question.kind
    box = tag(
        "input",
        type="text",
        id=id_,
        value=last.text if last else "",
        autocapitalize="none",
        spellcheck="false",
        aria_describedby=f"{id_}-told",
    )
    symbols = [unit.symbol for unit in question.kind.units if unit.symbol]
    chosen = last.unit if last else ""
    options = [tag("option", each, value=each, selected=each == chosen) for each in symbols]
    none = tag("option", "unit", value="", selected=not chosen)
    select = tag("select", none, *options, aria_label=f"Unit of: {ask}") if options else Safe()
    digits = f" To {question.digits} figures." if question.digits > 1 else ""
    return tag(
        "div",
        tag("label", f"{ask}{digits}", for_=id_, id=f"{id_}-ask"),
        tag("div", box, select, class_="calc-entry"),
        class_="course-entry",
    )
