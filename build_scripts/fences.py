"""The fences of the chapters: a calculator with its worked case, and claims about it.

    ```calc                              ```claims
    outlet_setting inlet="5.6 gpm"       tank_draw inlet=3
    pail_setting = 4.63 gpm              lasts = 5.3 min
    ```                                  ```

The first line asks for a case in the words of `calc.request`; each further line claims one of
its outputs, to the digit printed. A false claim stops the build. `claims` draws nothing: it
proves what the text around it says.
"""

import shlex
from functools import cache
from typing import Any

from pymdownx.superfences import SuperFencesException

from calc.figures import agrees, plain
from calc.model import Case
from calc.request import case_of
from calc.units import Unit
from calc.views.page import section
from calc.views.text import refusals
from calc.views.words import output_words


class Page:
    """What the fences of one page need to know of it."""

    def __init__(self, root: str = "") -> None:
        self.root = root
        self.keys: set[str] = set()

    def key(self, name: str) -> str:
        """An id no other calculator of the page has."""
        place = 2
        key = name
        while key in self.keys:
            key, place = f"{name}-{place}", place + 1
        self.keys.add(key)
        return key


class Fences:
    """Draws the fences of the page that is being built."""

    def __init__(self) -> None:
        self.page = Page()

    def calc(self, source: str, *_args: Any, **_options: Any) -> str:
        """A ```calc fence: the calculator, live, with the case as its example."""
        case = proven(source)
        return drawn(source, self.page.key(case.calculator.name), self.page.root)

    def claims(self, source: str, *_args: Any, **_options: Any) -> str:
        """A ```claims fence: nothing to see, all to prove."""
        proven(source)
        return ""


@cache
def drawn(source: str, key: str, root: str) -> str:
    return section(proven(source), key, root)


@cache  # for a writer, who changes one page of many; what calc says changes with its code only
def proven(source: str) -> Case:
    """The case a fence asks for, once its claims hold. SuperFencesException if one does not.

    superfences swallows every other exception and would print the fence as code.
    """
    try:
        return checked(source)
    except (KeyError, ValueError) as wrong:
        raise SuperFencesException(f"in the fence\n{source}\n{wrong}") from wrong


def checked(source: str) -> Case:
    """The case a fence asks for. KeyError or ValueError says what is wrong with it."""
    request, *claims = source.strip().splitlines()
    case = case_of(shlex.split(request))
    if not case.answer:
        raise ValueError(refusals(case))
    for claim in claims:
        name, _, said = (part.strip() for part in claim.partition("="))
        if not holds(case, name, said):
            answer = output_words(case, case.calculator.output(name))
            raise ValueError(f"the chapter says '{name} = {said}', calc says {answer}")
    return case


def holds(case: Case, name: str, said: str) -> bool:
    """Whether output `name` is what the chapter says: in words, or to the digit printed."""
    assert case.answer
    output = case.calculator.output(name)
    value = case.answer.outputs[name]
    if output_words(case, output).replace("\u00a0", " ") == said:
        return True
    if value is None:
        return False
    figure, _, symbol = plain(said).partition(" ")
    unit: Unit = output.kind.unit(symbol)
    return agrees(unit.out_of_si(value), figure)
