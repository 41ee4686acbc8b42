"""Turns the formulas of the calculators into MathML, once, at build.

The browser gets the result as modules of data: the converter never goes to the reader.
"""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from latex2mathml.converter import convert

from build_scripts.runtime import imports
from calc.views.formula import SYMBOLS, TEMPLATES, as_latex, letter_latex, letters

CALCULATORS = Path(__file__).resolve().parents[1] / "calc" / "calculators"


def as_modules() -> dict[str, bytes]:
    """The MathML of each calculator's formulas and letters, as a module of `calc` beside it."""
    made = {"calc/mathml/__init__.py": b""}
    for file in CALCULATORS.glob("*.py"):
        templates, symbols = made_of(file)
        code = f"TEMPLATES = {templates!r}\nSYMBOLS = {symbols!r}\n"
        made[f"calc/mathml/{file.name}"] = code.encode()
    return made


def teach() -> None:
    """Let this process draw formulas as the browser will."""
    for file in CALCULATORS.glob("*.py"):
        templates, symbols = made_of(file)
        TEMPLATES.update(templates)
        SYMBOLS.update(symbols)


@cache
def made_of(file: Path) -> tuple[dict[str, str], dict[str, str]]:
    """Formula -> its MathML, and letter -> its own, of all that a module may show."""
    every = sorted(set(written_in(file)))
    names = sorted({name for formula in every for name in letters(formula)})
    return {each: template(each) for each in every}, {name: symbol(name) for name in names}


def written_in(file: Path) -> Iterator[str]:
    """Every string of a module that is a formula: a letter, an equals sign, an expression."""
    for node in ast.walk(ast.parse(_with_shared_steps(file))):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            left, equals, right = node.value.partition(" = ")
            if equals and left.isidentifier() and is_expression(right):
                yield node.value


def _with_shared_steps(file: Path) -> str:
    """The module's code, and that of the functions it calls of modules of shared steps."""
    code = file.read_text(encoding="utf-8")
    for name in imports.imported(file):
        if name.endswith("_steps"):
            shared = imports.ROOT.joinpath(*name.split(".")).with_suffix(".py")
            for made in reversed(ast.parse(shared.read_text(encoding="utf-8")).body):
                if isinstance(made, ast.FunctionDef) and f"{made.name}(" in code:
                    code += f"\n{ast.unparse(made)}"
    return code


def is_expression(text: str) -> bool:
    try:
        ast.parse(text, mode="eval")
    except SyntaxError:
        return False
    return True


@cache
def template(formula: str) -> str:
    """MathML of the formula with ⟦name⟧ where each letter stands."""
    return convert(as_latex(formula, lambda name: f"\\text{{⟦{name}⟧}}"), display="block")


@cache
def symbol(name: str) -> str:
    """MathML of a letter."""
    return inner(convert(letter_latex(name)))


def inner(math: str) -> str:
    """What stands inside the <math> element, to be put into another one."""
    return re.sub(r"</?math[^>]*>", "", math)
