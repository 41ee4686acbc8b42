"""The ```diagnosis fence: the way from one symptom to its causes, drawn from `calc.diagnosis`.

    ```diagnosis
    short_cycling
    ```

Where a branch goes on with a calculator, the link opens it with the numbers filled in. A case that
has no answer stops the build.
"""

import shlex
from typing import Any, NamedTuple
from urllib.parse import quote_plus

from pymdownx.superfences import SuperFencesException

from build_scripts.fences import Fences
from build_scripts.pages.uses import Book
from calc.diagnosis.path import Branch, Step, Symptom
from calc.diagnosis.symptoms import SYMPTOMS
from calc.model import Case
from calc.request import case_of
from calc.views.html import Safe, cited, joined, tag
from calc.views.text import refusals
from calc.views.words import input_words


class Paths(NamedTuple):
    """Draws the fences; `fences` knows the page that is being built."""

    book: Book
    fences: Fences

    def draw(self, source: str, *_args: Any, **_options: Any) -> str:
        """superfences swallows every exception but its own, and would print the fence as code."""
        try:
            return self.path(SYMPTOMS[source.strip()])
        except (KeyError, ValueError) as wrong:
            raise SuperFencesException(f"in the fence\n{source}\n{wrong}") from wrong

    def path(self, symptom: Symptom) -> Safe:
        """What comes first, then the steps in their order."""
        root = self.fences.page.root
        return tag(
            "div",
            tag("p", tag("strong", "First. "), cited(symptom.first, root)),
            tag("ol", joined([self._step(step) for step in symptom.steps])),
            class_="diagnosis",
        )

    def _step(self, step: Step) -> Safe:
        branches = joined([self._branch(branch) for branch in step.branches])
        return tag("li", tag("p", step.take), tag("dl", branches))

    def _branch(self, branch: Branch) -> Safe:
        root = self.fences.page.root
        does = [cited(branch.do, root)]
        if branch.ask:
            does += [Safe(" "), self._link(branch.ask)]
        return joined(
            [
                tag("dt", tag("strong", branch.shows)),
                tag("dd", cited(branch.means, root), tag("br"), tag("em", "Then: "), *does),
            ]
        )

    def _link(self, ask: str) -> Safe:
        words = shlex.split(ask)
        case = case_of(words)
        if not case.answer:
            raise ValueError(f"{ask}: {refusals(case)}")
        place = self.book.place(words[0]).removesuffix(".md")
        asked = "".join(f"&{quote_plus(word, safe='=')}" for word in words[1:])
        href = f"{self.fences.page.root}{place}.html#{words[0]}{asked}"
        return tag("a", case.calculator.title, with_numbers(case, words[1:]), href=href)


def with_numbers(case: Case, words: list[str]) -> str:
    """What the link puts into the form, in words: `: worst flow in 3 gpm`."""
    names = [word.partition("=")[0] for word in words]
    told = (
        f"{case.calculator.input(name).label[0].lower()}{case.calculator.input(name).label[1:]} "
        f"{input_words(case, name)}"
        for name in names
    )
    return f": {'; '.join(told)}" if names else ""
