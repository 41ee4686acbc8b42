"""The physics that a calculator rests on, as its docstrings say it."""

import inspect
import re
import sys
from collections.abc import Iterable, Iterator
from types import FunctionType

from build_scripts.pages.markdown import code, heading, prose
from calc.model import Calculator

_PARAMETER = re.compile(r"(?P<names>\w+(?:, \w+)*) +-- (?P<said>.+)")


def arithmetic(calculator: Calculator) -> Iterator[str]:
    """Each function that the calculator's module takes from `calc.physics`."""
    for function in functions(calculator):
        yield heading(3, f"`{function.__name__}`", f"arithmetic-{function.__name__}")
        yield from blocks(inspect.getdoc(function) or "")
        yield f"In `{function.__module__}`."


def functions(calculator: Calculator) -> list[FunctionType]:
    """The functions of `calc.physics` that the calculator's module imports, in order."""
    module = sys.modules[calculator.work.__module__]
    return [
        each
        for each in vars(module).values()
        if inspect.isfunction(each) and each.__module__.startswith("calc.physics.")
    ]


def blocks(docstring: str) -> Iterator[str]:
    """A docstring in the order of the house as Markdown, block by block."""
    for block in docstring.split("\n\n"):
        lines = block.splitlines()
        if lines[0].startswith(">>> "):
            yield code(lines)
        elif all(line.startswith("    ") for line in lines):
            yield code([line.strip() for line in lines])
        elif _PARAMETER.match(lines[0]):
            yield "\n".join(map(_parameter, _joined(lines)))
        else:
            yield prose(" ".join(line.strip() for line in lines))


def _joined(lines: Iterable[str]) -> list[str]:
    """The parameters of a block, each on one line."""
    whole: list[str] = []
    for line in lines:
        if _PARAMETER.match(line):
            whole.append(line)
        else:
            whole[-1] += f" {line.strip()}"
    return whole


def _parameter(line: str) -> str:
    found = _PARAMETER.match(line)
    assert found
    return f"- `{found['names']}`: {prose(found['said'])}"
