"""A calculator in a chapter: the form, under it the worked example, and what else it can do."""

from calc.model import Case
from calc.views.answer import answer
from calc.views.backwards import panel
from calc.views.form import form
from calc.views.html import Safe, tag
from calc.views.sure import sureness

EXAMPLE = "Worked example with the figures above. Change one and this becomes your answer."
ACTIONS = (
    ("copy", "Copy link"),
    ("code", "Show code"),
    ("record", "Print record"),
    ("blank", "Print blank form"),
)


def section(case: Case, key: str, root: str) -> Safe:
    """The section that a chapter shows; `key` is its id, `root` the way to the handbook's root."""
    example = answer(case, key, root, EXAMPLE, sureness(case))
    return tag(
        "section",
        tag(
            "calc-form",
            form(case, key, root),
            tag("p", class_="calc-state", role="status"),
            tag("div", example, class_="calc-answer", role="region",
                aria_label=f"Answer: {case.calculator.title}", data_search_exclude=True),
            _tools(case, key),
            name=case.calculator.name,
            data_key=key,
            data_root=root,
        ),
        class_="calc",
        id=key,
    )  # fmt: skip


def _tools(case: Case, key: str) -> Safe:
    """What needs the running page; it is shown once the script is there."""
    buttons = [tag("button", words, type="button", data_do=do) for do, words in ACTIONS]
    return tag(
        "div",
        panel(case, key),
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
