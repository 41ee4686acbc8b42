"""What a student is told after a miss: the step, then its formula, then a worked example."""

from collections.abc import Iterator

from calc.coursework.problem import ProblemSet
from calc.coursework.variants import EXAMPLE, Question, Variant, variant
from calc.coursework.working import Working
from calc.figures import written
from calc.model import Step
from calc.views.formula import as_text, as_worked_text, letter, letters, meanings
from calc.views.words import with_unit

STEP, FORMULA, WORKED = 1, 2, 3  # misses after which each is told


def help_after(
    misses: int, problem_set: ProblemSet, problem: str, question: str, number: int, salt: str = ""
) -> list[str]:
    """Lines of help for a question missed so often; none before the first miss."""
    asked = variant(problem_set, problem, number, salt)
    lines = [step_line(asked, question)] if misses >= STEP else []
    if misses >= FORMULA:
        lines += formula_lines(asked, question)
    if misses >= WORKED:
        lines += worked_example(variant(problem_set, problem, EXAMPLE), question)
    return lines


def step_line(asked: Variant, name: str) -> str:
    """The step that a question is about, and where it is taught."""
    working, section = asked.working, asked.question(name).section
    if working and name in working.found:
        return f"Look again at this step: {working.found[name].label}. Read “{section}”."
    return f"Read “{section}” again."


def formula_lines(asked: Variant, name: str) -> list[str]:
    """The step's formula and what its letters stand for; none where there is no such step."""
    working = asked.working
    if not working or name not in working.found:
        return []
    formula = working.found[name].formula
    meant = meanings(working.case.calculator, working.steps)
    return [as_text(formula), *(f"{letter(each)}: {meant[each]}" for each in letters(formula))]


def worked_example(example: Variant, name: str) -> list[str]:
    """Another variant, worked as far as this question; none for a question of recall."""
    working = example.working
    if not working:
        return []
    lines = ["A worked example with other numbers.", example.text]
    lines += _worked(working, working.leading_to(name))
    question = example.question(name)
    if question.options:
        lines.append(f"{question.options[str(question.right)]} {question.because}")
    elif name not in working.found:
        lines.append(f"{working.case.calculator.output(name).label}: {right_words(question)}")
    return lines


def right_words(question: Question) -> str:
    """The right answer as a key prints it: the option, or the figure with its unit."""
    if isinstance(question.right, str):
        return question.options[question.right]
    assert question.usual
    digits = max(question.digits, 3)
    return with_unit(written(question.usual.out_of_si(question.right), digits), question.usual)


def full_working(asked: Variant) -> list[str]:
    """Every step that the questions of a variant need, for the key and after success."""
    reasons = [each.because for each in asked.questions if each.because]
    return [*_worked(asked.working, steps_needed(asked)), *reasons] if asked.working else reasons


def steps_needed(asked: Variant) -> list[Step]:
    """The steps of the working that lead to what is asked, in their order."""
    working = asked.working
    if not working:
        return []
    wanted = {id(step) for each in asked.questions for step in working.leading_to(each.name)}
    return [step for step in working.steps if id(step) in wanted]


def _worked(working: Working, steps: list[Step]) -> Iterator[str]:
    for step in steps:
        yield f"{step.label}: {as_text(step.formula)}"
        yield as_worked_text(working.case, step)
