"""A calculator in a chapter: the form, under it the worked example, and what else it can do."""

from calc.model import Case
from calc.views.answer import answer
from calc.views.form import form
from calc.views.html import Safe, tag
from calc.views.sure import sureness
from calc.views.tools import tools

EXAMPLE = "Worked example with the figures above. Change one and this becomes your answer."
DEAD = "This browser does not run the scripts of this page. Below stands the worked example."


def section(case: Case, key: str, root: str) -> Safe:
    """The section that a chapter shows; `key` is its id, `root` the way to the handbook's root."""
    example = answer(case, key, root, EXAMPLE, sureness(case))
    return tag(
        "section",
        tag(
            "calc-form",
            form(case, key, root),
            tag("p", DEAD, class_="calc-dead", hidden=True, data_search_exclude=True),
            tag("p", class_="calc-state", role="status"),
            tag("div", example, class_="calc-answer", role="region",
                aria_label=f"Answer: {case.calculator.title}", data_search_exclude=True),
            tools(case, key),
            name=case.calculator.name,
            data_key=key,
            data_root=root,
        ),
        class_="calc",
        id=key,
    )  # fmt: skip
