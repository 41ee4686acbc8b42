"""A case as plain text, for the command line."""

from collections.abc import Iterator

from calc import sources
from calc.model import Case, Input
from calc.views.formula import as_text, as_worked_text
from calc.views.words import finding_words, input_words, output_words, refusal_words


def case_text(case: Case) -> str:
    """Question, inputs, what they mean, the answers, the working, cautions and sources."""
    return "\n".join(_lines(case)).replace("\u00a0", " ") + "\n"


def _lines(case: Case) -> Iterator[str]:
    assert case.answer
    yield case.calculator.title
    yield case.calculator.question
    yield from ("", "Cautions")
    yield from (f"  {caution}" for caution in case.calculator.cautions)
    yield from ("", "Given")
    for each in case.calculator.inputs:
        yield f"  {each.label}: {input_words(case, each.name)}  ({each.name})"
    yield from ("", "Answer")
    for finding in case.answer.findings:
        yield f"  {finding.head} {finding_words(case, finding)}"
    yield ""
    for output in case.calculator.outputs:
        value = case.answer.outputs[output.name]
        outside = value is not None and output.is_outside(value)
        note = f"  {output.outside}" if outside else ""
        yield f"  {output.label}: {output_words(case, output)}{note}  ({output.name})"
    yield from ("", "Working")
    for step in case.answer.steps:
        yield f"  {step.label}"
        yield f"    {as_text(step.formula)}"
        yield f"    {as_worked_text(case, step)}"
    yield from ("", "Sources")
    for source in map(sources.entry, case.calculator.sources):
        yield f"  {source.author}, {source.title}, {source.year}. {source.place} ({source.seen})."


def refusals(case: Case) -> str:
    """What is wrong with the inputs, one line for each, the input's name first."""
    return "\n".join(
        f"{error.field}: {refusal_words(case, error)}" for error in case.errors
    ).replace("\u00a0", " ")


def inputs_help(case: Case) -> str:
    """The inputs with their defaults, for someone who asks what may be given."""
    width = max(len(each.name) for each in case.calculator.inputs)
    return "\n".join(
        f"  {each.name:{width}}  {each.label} [{each.default}]"
        + ("" if isinstance(each, Input) else f" ({', '.join(each.options)})")
        for each in case.calculator.inputs
    )
