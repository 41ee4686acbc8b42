"""The ```coursework NAME fence: a problem set to practise on.

    ```coursework
    well_storage
    ```

The build draws variant 0, worked. A script deals the others, which stand nowhere on the site.
"""

from typing import Any, NamedTuple

from pymdownx.superfences import SuperFencesException

from build_scripts.fences import Fences
from calc.coursework.deck import VARIANTS
from calc.coursework.practice_sheet import example_html
from calc.coursework.problem import Problem, ProblemSet
from calc.coursework.sets import problem_set
from calc.views.html import Safe, joined, tag

DEAD = (
    "Other numbers need a running script, which this browser does not run. Variant 0 stands below."
)
CLASS = {
    "section": "Class, as your school writes it",
    "learner": "You, as your school lists you: a number will do",
    "word": "The school's word, if you were given one",
}


class Practice(NamedTuple):
    """Draws the fences; `fences` knows the page that is being built."""

    fences: Fences

    def draw(self, source: str, *_args: Any, **_options: Any) -> Safe:
        """superfences swallows every exception but its own, and would print the fence as code."""
        try:
            chosen = problem_set(source.strip())
        except KeyError as wrong:
            raise SuperFencesException(f"there is no problem set {wrong}") from wrong
        self.fences.page.keys.add("practice")
        return tag("section", _course(chosen), class_="calc", id="practice")


def calculators(chosen: ProblemSet) -> list[str]:
    """Names of the calculators that the problems stand on."""
    return sorted({each.calculator for each in chosen.problems if isinstance(each, Problem)})


def _course(chosen: ProblemSet) -> Safe:
    return tag(
        "calc-course",
        tag("p", DEAD, class_="calc-dead", hidden=True, data_search_exclude=True),
        tag("div", _choose(), _for_a_class(), class_="course-desk", data_part="desk", hidden=True),
        tag("p", data_part="said", role="status", class_="calc-say"),
        tag("p", data_part="score"),
        tag("div", data_part="sheet"),
        tag(
            "div",
            tag("p", tag("strong", "Variant 0, worked."), " It is nobody's to hand in."),
            example_html(chosen),
            data_part="example",
            data_search_exclude=True,  # figures of an example are not what a reader looks for
        ),
        data_set=chosen.name,
        data_revision=chosen.revision,
        data_calculators=" ".join(calculators(chosen)),
        data_variants=VARIANTS,
    )


def _choose() -> Safe:
    """Which variant, the next, the same anew."""
    return tag(
        "form",
        tag("label", f"Variant, 1 to {VARIANTS}", for_="course-number"),
        tag(
            "div",
            tag("input", type="text", inputmode="numeric", id="course-number", value="1",
                data_part="number"),
            tag("button", "Show", type="submit"),
            class_="calc-entry",
        ),
        tag(
            "div",
            _button("next", "Next variant"),
            _button("anew", "Start anew"),
            tag("button", "Bring the tries back", type="button", data_do="back", data_part="back",
                hidden=True),
            class_="calc-actions",
        ),
        novalidate=True,
        autocomplete="off",
    )  # fmt: skip


def _for_a_class() -> Safe:
    boxes = [
        joined(
            (
                tag("label", label, for_=f"course-{name}"),
                tag("div", tag("input", type="text", id=f"course-{name}", data_part=name,
                               autocomplete="off", autocapitalize="none", spellcheck="false"),
                    class_="calc-entry"),
            )
        )
        for name, label in CLASS.items()
    ]  # fmt: skip
    return tag(
        "details",
        tag("summary", "For a class: your variant, your responses"),
        tag(
            "p",
            "What you write here stays on this device until you hand in your responses. The file "
            "holds it, but for the word, and every try.",
        ),
        *boxes,
        tag("div", _button("deal", "Deal my variant"), _button("save", "Save my responses"),
            class_="calc-actions"),
    )  # fmt: skip


def _button(do: str, said: str) -> Safe:
    return tag("button", said, type="button", data_do=do)
