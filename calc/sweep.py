"""One answer against one input, all others as given."""

from dataclasses import replace

from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.model import Case, Input, Output

REACH = 0.5  # of the present value, to either side of it
SURES = 4  # plus-or-minuses at least: all that the measurement may mean is in the picture

FAR = 30  # times the middle one: an answer that runs away would press all others flat

type Points = tuple[tuple[float, float | None], ...]


def sweep(case: Case, input_name: str, output_name: str, points: int = 41) -> Chart | None:
    """How an answer of an answered case follows one of its inputs, with the case marked.

    points -- values of the input for which the work is done, evenly apart; at least 2

    The line is broken where there is no such answer or the inputs contradict each other.
    None where that is so everywhere. Raises ValueError for an input that is not one number.
    """
    each, here = case.calculator.input(input_name), case.values[input_name]
    if not (case.answer and isinstance(each, Input) and isinstance(here, float)):
        raise ValueError(f"{input_name} of {case.calculator.name} is not one number")
    output, present = case.calculator.output(output_name), case.answer.outputs[output_name]
    line, reasons = [(here, present)], [output.none] if present is None else []
    for x in _steps(each, here, case.sures.get(input_name, 0.0), points):
        try:
            y = case.work({**case.values, input_name: x}).outputs[output_name]
            reasons += [output.none] if y is None else []
        except Refused:
            y = None
            reasons.append("the inputs contradict each other")
        line.append((x, y))
    heights = sorted(abs(y) for _, y in line if y is not None)
    if not heights:
        return None
    far = FAR * max(heights[len(heights) // 2], abs(present or 0.0)) or heights[-1]
    if heights[-1] > far:
        line = [(x, y if y is None or abs(y) <= far else None) for x, y in line]
        reasons.append("the answer runs off the picture")
    why = "; ".join(dict.fromkeys(filter(None, reasons)))
    return _chart(case, each, output, tuple(sorted(line, key=lambda point: point[0])), why)


def _steps(each: Input, here: float, sure: float, points: int) -> list[float]:
    """Values around the present one, within the range. That one itself is not among them."""
    zero = each.usual("us").zero
    reach = max(REACH * abs(here - zero), SURES * sure) or (each.high - each.low) / 10
    low, high = max(each.low, here - reach), min(each.high, here + reach)
    steps = (low + (high - low) * n / (points - 1) for n in range(points))
    return [step for step in steps if abs(step - here) > 1e-9 * (high - low)]


def _chart(case: Case, each: Input, output: Output, line: Points, why: str) -> Chart:
    unit = case.units[each.name].symbol  # the reader's own, where the field is shown in another
    here = case.values[each.name]
    assert case.answer
    assert isinstance(here, float)
    present = case.answer.outputs[output.name]
    ends = (("at least", output.low), ("at most", output.high))
    return Chart(
        title=f"{output.label}, by: {each.label}",
        says="All other inputs are as given."
        + (f" Where the line is broken: {why}." if why else ""),
        x=Axis(each.label, replace(each, us=unit, si=unit)),
        y=Axis(output.label, output),
        lines=(Line(output.label, line),),
        limits=tuple(Limit(label, end) for label, end in ends if end is not None),
        marks=() if present is None else (Mark("you are here", here, present, here=True),),
    )
