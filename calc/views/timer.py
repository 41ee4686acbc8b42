"""The watch beside an input that is timed. Without a script the boxes below it take the times."""

from calc.model import Calculator, Input
from calc.views.html import Safe, tag
from calc.vocabulary import words

FEWEST = 3  # runs; two that happen to agree prove little


def timer(calculator: Calculator, each: Input) -> Safe:
    """A watch for the readings of one input, and where its flow may go in the job."""
    return tag(
        "pail-timer",
        tag("div", "0.0\u00a0s", class_="timer-face", role="timer", data_part="face"),
        _button("press", "Start", class_="timer-press"),
        tag("div", _button("lap", "Next pail"), _button("undo", "Undo"), class_="timer-pair"),
        tag("p", class_="timer-told", role="status", data_part="told"),
        tag("ol", class_="timer-runs", data_part="runs"),
        tag("p", class_="timer-spread", data_part="spread"),
        _keep(calculator),
        hidden=True,
        data_times=each.name,
        data_asks=" ".join(name for name in calculator.invented if name != each.name),
        data_most=each.several,
        data_fewest=FEWEST,
        data_search_exclude=True,
    )


def _keep(calculator: Calculator) -> Safe:
    known = words()
    buttons = [
        _button("keep", known[place].label, data_place=f"{output}>{place}")
        for output, places in calculator.leaves.items()
        for place in places
    ]
    head = tag("p", "Keep it in the job as")
    return tag(
        "div", head, *buttons, _button("anew", "Begin anew"), class_="timer-keep", data_part="keep"
    )


def _button(does: str, label: str, **more: object) -> Safe:
    return tag("button", label, type="button", data_watch=does, **more)
