"""A case as plain text, for the command line."""

from collections.abc import Iterator, Mapping

from calc import sources
from calc.model import Calculator, Case, Choice
from calc.uncertainty import Sure
from calc.views.formula import as_text, as_worked_text
from calc.views.scene import moment_words
from calc.views.sure import advice, main_output, output_sure
from calc.views.words import (
    finding_words,
    input_words,
    output_words,
    refusal_words,
    sure_words,
)


def case_text(case: Case, sures: Mapping[str, Sure], working: bool) -> str:
    """Cautions, inputs, what they mean, the answers and how sure they are, working, sources."""
    parts = [*_lines(case, sures), *(_working(case) if working else ()), *_sources(case)]
    return "\n".join(parts).replace("\u00a0", " ") + "\n"


def _lines(case: Case, sures: Mapping[str, Sure]) -> Iterator[str]:
    assert case.answer
    yield case.calculator.title
    yield case.calculator.question
    yield from ("", "Cautions")
    yield from (f"  {caution}" for caution in case.calculator.cautions)
    yield from ("", "Given")
    for each in case.calculator.inputs:
        words = f"{input_words(case, each.name)} {sure_words(case, each.name)}".strip()
        yield f"  {each.label}: {words}  ({each.name})"
    yield from ("", "Answer")
    for finding in case.answer.findings:
        yield f"  {finding.head} {finding_words(case, finding)}"
    yield ""
    for output in case.calculator.outputs:
        value = case.answer.outputs[output.name]
        words = f"{output_words(case, output)} {output_sure(case, output, sures)}".strip()
        note = f"  {output.outside}" if value is not None and output.is_outside(value) else ""
        yield f"  {output.label}: {words}{note}  ({output.name})"
    for scene in case.answer.scenes:
        yield from ("", "What happens")
        yield from (f"  {moment_words(each, case.unit_set)}" for each in scene.moments if each.says)
    if main := main_output(case, sures):
        yield from ("", f"  {advice(case, main, sures[main.name])}")


def _working(case: Case) -> Iterator[str]:
    assert case.answer
    yield from ("", "Working")
    for step in case.answer.steps:
        yield f"  {step.label}"
        yield f"    {as_text(step.formula)}"
        yield f"    {as_worked_text(case, step)}"


def _sources(case: Case) -> Iterator[str]:
    yield from ("", "Sources")
    for name in case.calculator.sources:
        source = sources.entry(name)
        about = f"{source.author}, {source.title}, {source.year}. {source.place}"
        yield f"  [{name}] {about} ({source.seen})."


def refusals(case: Case) -> str:
    """What is wrong with the inputs, one line for each, the input's name first."""
    return "\n".join(
        f"{error.field}: {refusal_words(case, error)}" for error in case.errors
    ).replace("\u00a0", " ")


def calculator_help(calculator: Calculator) -> str:
    """What a calculator takes and gives, made from its declaration."""
    lines = [calculator.title, calculator.question, "", "Takes"]
    for each in calculator.inputs:
        lines.append(f"  {each.name}  {each.label} [{each.default}]")
        if isinstance(each, Choice):
            lines += [f"      {value}: {words}" for value, words in each.options.items()]
        lines.append(f"      {each.measure}")
    lines += ["", "Gives", *(f"  {each.name}  {each.label}" for each in calculator.outputs)]
    return "\n".join(lines) + "\n"
