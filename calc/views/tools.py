"""What stands under an answer: working backwards, one figure varied, the job, what to take away.

All of it needs the running page; it is hidden until the script is there.
"""

from calc.model import Case, Input
from calc.views.html import Safe, joined, tag

COUNTED = "This answer is counted, week by week. Change a figure above and it is counted again."

ACTIONS = (
    ("copy", "Copy link"),
    ("code", "Show code"),
    ("record", "Print record"),
    ("blank", "Print blank form"),
)
OPENS = {"code": "false"}  # what shows something below, and whether it does


def tools(case: Case, key: str) -> Safe:
    """The tools of a calculator; `key` makes their ids the page's own."""
    buttons = [
        tag("button", words, type="button", data_do=do, aria_expanded=OPENS.get(do))
        for do, words in ACTIONS
    ]
    return tag(
        "div",
        *(
            (_longer(),)
            if case.calculator.simulation
            else (_backwards(case, key), _varied(case, key))
        ),
        tag(
            "details",
            tag("summary", "Job"),
            tag("div", class_="calc-job-inside"),
            class_="calc-job",
            data_do="job-panel",
        ),
        tag("div", *buttons, class_="calc-actions"),
        tag("div", class_="calc-code", hidden=True),
        class_="calc-tools",
        hidden=True,
        data_search_exclude=True,
    )


def _longer() -> Safe:
    return tag(
        "div",
        tag("p", "Few weeks make a rough answer. More of them narrow it."),
        tag("button", "Count longer", type="button", data_do="longer"),
        tag("button", "Stop", type="button", data_do="enough", disabled=True),
        tag("p", class_="calc-counted"),
        class_="calc-longer",
    )


def _backwards(case: Case, key: str) -> Safe:
    return tag(
        "details",
        tag("summary", "Work backwards"),
        tag("p", "Say what the answer should be, and which figure may change."),
        _picker(f"{key}-wanted", "Answer wanted", _outputs(case)),
        tag("label", "How much", for_=f"{key}-target"),
        tag("input", type="text", inputmode="decimal", id=f"{key}-target", autocomplete="off"),
        _picker(f"{key}-free", "Figure to change", _inputs(case)),
        tag("button", "Find it", type="button", data_do="backwards"),
        tag("div", class_="calc-found", role="status"),
        class_="calc-asks calc-backwards",
    )


def _varied(case: Case, key: str) -> Safe:
    return tag(
        "details",
        tag("summary", "Vary one figure"),
        tag("p", "See the answer rise and fall as one figure changes and the rest stay."),
        _picker(f"{key}-varied", "Figure to vary", _inputs(case)),
        _picker(f"{key}-seen", "Answer to see", _outputs(case)),
        tag("button", "Draw it", type="button", data_do="varied"),
        tag("div", class_="calc-drawn", role="status"),
        class_="calc-asks calc-varied",
    )


def _outputs(case: Case) -> list[tuple[str, str]]:
    return [(each.name, each.label) for each in case.calculator.outputs]


def _inputs(case: Case) -> list[tuple[str, str]]:
    inputs = (each for each in case.calculator.inputs if isinstance(each, Input))
    return [(each.name, each.label) for each in inputs if each.several == 1]


def _picker(id_: str, label: str, options: list[tuple[str, str]]) -> Safe:
    every = [tag("option", words, value=name) for name, words in options]
    return joined([tag("label", label, for_=id_), tag("select", *every, id=id_)])
