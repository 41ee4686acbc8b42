"""A problem set as plain data, for a package that runs without Python.

Everything a browser needs to ask, grade and help is in it: the words once, and for each variant
a row of places and figures. Figures are SI, to seven digits. `DEVELOPERS.md` says how it is read.
"""

from calc import EDITION
from calc.coursework.deck import VARIANTS
from calc.coursework.problem import Fact, Part, Pick, Problem, ProblemSet, Recall
from calc.coursework.questions import Json, known_letters, question_data
from calc.coursework.record import check_code
from calc.coursework.variants import (
    EXAMPLE,
    Question,
    Unsound,
    Variant,
    drawn_words,
    template,
    variant,
)

FORMAT, VERSION = "pail-and-timer coursework", 1


def package(problem_set: ProblemSet, salt: str = "", answers: bool = True) -> Json:
    """The set as data that `json` can write.

    answers -- False leaves out what is right, the slips and what helps: the page then only keeps
               what is typed, and the instructor grades it
    """
    numbers = range(1, VARIANTS + 1)
    dealt = {
        each.name: [variant(problem_set, each.name, number, salt) for number in numbers]
        for each in problem_set.problems
    }
    return {
        "format": FORMAT,
        "version": VERSION,
        "handbook": EDITION,
        "set": problem_set.name,
        "chapter": problem_set.chapter,
        "title": problem_set.title,
        "revision": problem_set.revision,
        "answers": answers,
        "problems": [
            _problem(problem_set, each, dealt[each.name], answers) for each in problem_set.problems
        ],
        "codes": [
            check_code(problem_set, number, [many[number - 1] for many in dealt.values()])
            for number in numbers
        ],
    }


def _problem(
    problem_set: ProblemSet, problem: Problem | Recall, dealt: list[Variant], answers: bool
) -> Json:
    about: Json = {
        "name": problem.name,
        "form": problem.form,
        "objective": problem.objective,
        "level": problem.level,
        "minutes": problem.minutes,
    }
    if isinstance(problem, Recall):
        return about | _recall(problem, dealt, answers)
    example = variant(problem_set, problem.name, EXAMPLE)
    return about | _case(problem, example, dealt, answers)


def _recall(problem: Recall, dealt: list[Variant], answers: bool) -> Json:
    """Questions once, options by the alphabet so that their order tells nothing.

    A row: for each question its place in `facts`, the order of its options, the right letter.
    """
    facts: list[Json] = [
        {"ask": fact.ask, "options": _sorted(fact), "section": fact.section}
        for fact in problem.facts
    ]
    if answers:
        for told, fact in zip(facts, problem.facts, strict=True):
            told["because"] = fact.because
    return {
        "facts": facts,
        "rows": [
            [_fact_row(problem, question, answers) for question in each.questions] for each in dealt
        ],
    }


def _sorted(fact: Fact) -> list[str]:
    return sorted((fact.right, *fact.wrong))


def _fact_row(problem: Recall, question: Question, answers: bool) -> list[object]:
    place = next(at for at, fact in enumerate(problem.facts) if fact.ask == question.ask)
    words = _sorted(problem.facts[place])
    order = [words.index(each) for each in question.options.values()]
    return [place, order, *([question.right] if answers else [])]


def _case(problem: Problem, example: Variant, dealt: list[Variant], answers: bool) -> Json:
    """The story with {name}s for what is drawn, its questions, and the rows.

    A row: places in `draws`; what is right for each question; for each question the values
    its slips lead to, null for none; the values of the letters in `known`.
    """
    known = known_letters(problem, example)
    told: Json = {
        "text": template(problem.text, problem, example),
        "draws": {
            name: [drawn_words(problem, name, text) for text in values]
            for name, values in problem.draws.items()
        },
        "questions": [
            question_data(problem, example, place, answers) for place in range(len(problem.parts))
        ],
    }
    if not answers:
        return told | {"rows": [[each.places] for each in dealt]}
    for each in dealt:
        _same_steps(problem, example, each)
    return told | {"known": known, "rows": [_row(problem, each, known) for each in dealt]}


def _row(problem: Problem, dealt: Variant, known: list[str]) -> list[object]:
    working = dealt.working
    assert working
    right = [_figure(each.right) for each in dealt.questions]
    slips = [
        _slips(question, part)
        for question, part in zip(dealt.questions, problem.parts, strict=True)
    ]
    return [dealt.places, right, slips, [_figure(working.stands[name].value) for name in known]]


def _slips(question: Question, part: Part | Pick) -> list[float | str | None]:
    if isinstance(part, Pick):
        return []
    values = {id(slip): value for slip, value in question.slips}
    return [_figure(values[id(slip)]) if id(slip) in values else None for slip in part.slips]


def _figure(value: float | str) -> float | str:
    return value if isinstance(value, str) else float(f"{value:.7g}")


def _same_steps(problem: Problem, example: Variant, dealt: Variant) -> None:
    """The help is written once for all variants, so all must be worked alike."""
    assert example.working
    assert dealt.working
    for part in problem.parts:
        steps = [[step.formula for step in each.leading_to(part.finds)]
                 for each in (example.working, dealt.working)]  # fmt: skip
        if steps[0] != steps[1]:
            raise Unsound(
                f"{problem.name}, {part.finds}: variant {dealt.number} is worked otherwise than "
                "the example; let `keep` take one kind only"
            )
