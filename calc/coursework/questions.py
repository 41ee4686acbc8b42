"""A question of a problem as plain data: the same for all variants."""

from calc.coursework.helping import formula_lines, step_line, worked_example
from calc.coursework.problem import Part, Problem
from calc.coursework.script import as_script, needed
from calc.coursework.slips import common
from calc.coursework.variants import Question, Variant, template
from calc.coursework.working import Working
from calc.model import Step
from calc.units import Unit
from calc.views.formula import letters

type Json = dict[str, object]


def question_data(problem: Problem, example: Variant, place: int, answers: bool) -> Json:
    """What a page must know of a question. Without answers: only how to ask it."""
    part, question = problem.parts[place], example.questions[place]
    told: Json = {
        "name": question.name,
        "ask": template(part.ask, problem, example),
        "section": question.section,
        "marks": question.marks,
    }
    if question.options:
        told["options"] = dict(question.options)
    else:
        assert question.kind
        assert question.usual
        told |= {
            "kind": question.kind.name,
            "units": [_unit(unit) for unit in question.kind.units],
            "usual": question.usual.symbol,
            "digits": question.digits,
        }
    if not answers:
        return told
    told["help"] = [
        step_line(example, question.name),
        formula_lines(example, question.name),
        worked_example(example, question.name),
    ]
    if isinstance(part, Part):
        return told | _graded(problem, example, part, question)
    return told | {"because": question.because}


def _unit(unit: Unit) -> list[object]:
    return [unit.symbol, unit.scale, unit.zero, list(unit.also)]


def _graded(problem: Problem, example: Variant, part: Part, question: Question) -> Json:
    """`tolerance` is a share of the right answer, `band` an SI width in its place. `follows` are
    the steps to take again with the student's own figures, over letters in SI."""
    assert question.kind
    width = "band" if question.absolute else "tolerance"
    return {
        width: question.band if question.absolute else part.tolerance,
        "slips": [[slip.hint, slip.marks] for slip in part.slips],
        "common": [list(each) for each in common(question.kind)],
        "follows": [
            [step.formula.partition(" = ")[0], as_script(step.formula)]
            for step in follows(problem, example, part.finds)
        ],
    }


def known_letters(problem: Problem, example: Variant) -> list[str]:
    """Letters that the steps of `follows` need and that no question asks for."""
    asked = {part.finds for part in problem.parts}
    known: set[str] = set()
    for part in problem.parts:
        steps = follows(problem, example, part.finds)
        found = {letters(step.formula)[0] for step in steps}
        known |= {letter for step in steps for letter in needed(step.formula)} - found - asked
    return sorted(known)


def follows(problem: Problem, example: Variant, letter: str) -> list[Step]:
    """The steps to a letter that change with the student's own earlier figures."""
    working = example.working
    assert isinstance(working, Working)
    names = [part.finds for part in problem.parts]
    earlier = {name for name in names[: names.index(letter)] if name in working.found}
    moved, steps = set(earlier), list[Step]()
    for step in working.leading_to(letter):
        left, *right = letters(step.formula)
        if left not in earlier and moved & {*right}:
            steps.append(step)
            moved.add(left)
    return steps if letter in moved else []
