"""How sure the answers are, in words: each with its plus-or-minus, and what to measure again."""

from collections.abc import Mapping

from calc.charts import Bar, Bars
from calc.figures import written
from calc.model import Case, Input, Output
from calc.uncertainty import Sure, propagated
from calc.units import share
from calc.views.words import spoken

LEAST_SHARE = 0.005  # of the doubt; below it an input is not worth a line


def sureness(case: Case) -> dict[str, Sure]:
    """How sure each answer is, from the plus-or-minus of the inputs. Empty without an answer.

    Empty too for a calculator that makes no trials.
    """
    if not case.answer or not case.calculator.trials:
        return {}
    floats = {
        name: value
        for name, value in case.values.items()
        if isinstance(value, float) and case.sures.get(name)
    }
    limits = {
        each.name: (each.low, each.high)
        for each in case.calculator.inputs
        if isinstance(each, Input)
    }

    def work(moved: Mapping[str, float]) -> Mapping[str, float | None]:
        return case.work({**case.values, **moved}).outputs

    sures = {name: case.sures[name] for name in floats}
    return propagated(work, floats, sures, limits, case.calculator.trials)


def output_sure(case: Case, output: Output, sures: Mapping[str, Sure]) -> str:
    """The plus-or-minus of an answer: `± 0.12 gpm`, or `from 2 to 5 gpm` where it is bent."""
    sure = sures.get(output.name)
    if sure is None or not (sure.plus_minus or sure.missing):
        return ""
    if not sure.by_trials:
        return f"± {_width(case, output, sure.plus_minus)}"
    low, high = (spoken(end, output, case.unit_set, output.digits) for end in (sure.low, sure.high))
    said = low if low == high else f"from {low} to {high}"
    return f"{said}; none in {_often(sure.missing)} of trials" if sure.missing else said


def _width(case: Case, output: Output, width: float) -> str:
    zero = output.usual(case.unit_set).zero  # a difference of temperatures has no offset
    return spoken(width + zero, output, case.unit_set, 2)


def _often(share: float) -> str:
    return f"{max(1, round(100 * share))}\u00a0%"


def main_output(case: Case, sures: Mapping[str, Sure]) -> Output | None:
    """The first answer that is in doubt."""
    for output in case.calculator.outputs:
        if output.name in sures and sures[output.name].parts and sures[output.name].plus_minus:
            return output
    return None


def shares(case: Case, sure: Sure) -> list[tuple[str, float]]:
    """Labels of the inputs and their share of the doubt, the greatest first."""
    return [
        (case.calculator.input(part.name).label, part.share)
        for part in sure.parts
        if part.share >= LEAST_SHARE
    ]


def doubt(case: Case, output: Output, sure: Sure) -> Bars:
    """What makes the doubt about an answer, the greatest part first."""
    bars = tuple(Bar(label, part) for label, part in shares(case, sure))
    return Bars(f"What makes the doubt about: {output.label}", "The greatest first.", share, bars)


def advice(case: Case, output: Output, sure: Sure) -> str:
    """What to measure again first, in a sentence."""
    first = shares(case, sure)
    if not first:
        return ""
    label, part = first[0]
    return (
        f"“{label}” makes {written(100 * part, 2)}\u00a0% of the doubt about “{output.label}”: "
        "measure that again before anything else."
    )
