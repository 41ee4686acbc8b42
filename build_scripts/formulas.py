"""Turns the formulas of the calculators into MathML, once, at build.

The browser gets the result as data: the converter never goes to the reader.
"""

import ast
import json
import re
from collections.abc import Iterator
from pathlib import Path

from latex2mathml.converter import convert

from calc.views.browser import learn_formulas
from calc.views.formula import as_latex, letter_latex, letters

CALCULATORS = Path(__file__).resolve().parents[1] / "calc" / "calculators"


def as_json() -> str:
    """The MathML of every formula and letter that a calculator may show, as JSON."""
    every = sorted({formula for file in CALCULATORS.glob("*.py") for formula in written_in(file)})
    names = sorted({name for formula in every for name in letters(formula)})
    return json.dumps(
        {
            "templates": {formula: template(formula) for formula in every},
            "symbols": {name: inner(convert(letter_latex(name))) for name in names},
        }
    )


def teach() -> None:
    """Let this process draw formulas as the browser will."""
    learn_formulas(as_json())


def written_in(file: Path) -> Iterator[str]:
    """Every string of a module that is a formula: a letter, an equals sign, an expression."""
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            left, equals, right = node.value.partition(" = ")
            if equals and left.isidentifier() and is_expression(right):
                yield node.value


def is_expression(text: str) -> bool:
    try:
        ast.parse(text, mode="eval")
    except SyntaxError:
        return False
    return True


def template(formula: str) -> str:
    """MathML of the formula with ⟦name⟧ where each letter stands."""
    return convert(as_latex(formula, lambda name: f"\\text{{⟦{name}⟧}}"), display="block")


def inner(math: str) -> str:
    """What stands inside the <math> element, to be put into another one."""
    return re.sub(r"</?math[^>]*>", "", math)
