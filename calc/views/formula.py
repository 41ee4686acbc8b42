"""Formulas: written once in Python's syntax, shown as text, as LaTeX, and with numbers put in."""

import ast
import re
from collections.abc import Callable, Iterable, Mapping
from functools import cache
from typing import NamedTuple

from calc.figures import plainly_written
from calc.model import Calculator, Case, Field, Input, Quantity, Step
from calc.views.html import Safe
from calc.views.words import shown, with_unit

GREEK = {"pi", "mu", "rho", "eta", "lambda", "alpha", "beta", "epsilon", "sigma", "tau"}
_LETTERS = {"pi": "π", "mu": "μ", "rho": "ρ", "eta": "η", "lambda": "λ", "alpha": "α",
            "beta": "β", "epsilon": "ε", "sigma": "σ", "tau": "τ"}  # fmt: skip
_RAISED = {"2": "²", "3": "³"}
_ADD, _MULTIPLY, _NEGATE, _POWER, _ATOM = 1, 2, 3, 4, 5

# formula -> MathML with ⟦name⟧ in place of each letter. Filled when the handbook is built:
# the converter from LaTeX is far too heavy for a phone.
TEMPLATES: dict[str, str] = {}
SYMBOLS: dict[str, str] = {}


def letter(name: str) -> str:
    """A symbol as text: V_on stays V_on, dV becomes ΔV, mu becomes μ."""
    base, _, index = name.partition("_")
    base = _LETTERS.get(base, base)
    if len(base) == 2 and base[0] == "d":
        base = f"Δ{base[1]}"
    return f"{base}_{index}" if index else base


def letter_latex(name: str) -> str:
    """A symbol as LaTeX."""
    base, _, index = name.partition("_")
    tex = f"\\{base}" if base in GREEK else base
    if len(base) == 2 and base[0] == "d":
        tex = f"\\Delta {base[1]}"
    return f"{tex}_{{\\text{{{index}}}}}" if index else tex


@cache  # an answer asks for each formula's letters and sides several times, and so does the next
def sides(formula: str) -> tuple[str, ast.expr]:
    """The letter on the left and the expression on the right of a formula."""
    left, right = formula.split(" = ", 1)
    return left, ast.parse(right, mode="eval").body


class _Style(NamedTuple):
    """How one way of writing puts a formula's parts together."""

    times: str
    minus: str
    group: str
    over: str
    over_binds: int
    power: str
    power_binds: int
    root: str
    function: str


_TEXT = _Style("×", "−", "({0})", "{0} / {1}", _MULTIPLY, "{0}^{1}", _ATOM, "√({0})", "{0}({1})")
_LATEX = _Style(
    r"\times", "-", r"\left({0}\right)", r"\frac{{{0}}}{{{1}}}", _ATOM, "{0}^{{{1}}}", 0,
    r"\sqrt{{{0}}}", r"\{0}\left({1}\right)",
)  # fmt: skip


def as_text(formula: str, name: Callable[[str], str] = letter) -> str:
    """The formula on one line; `name` turns a letter into what stands for it."""
    left, right = sides(formula)
    return f"{name(left)} = {_Writer(_TEXT, name).write(right)[0]}"


def as_latex(formula: str, name: Callable[[str], str] = letter_latex) -> str:
    """The formula as LaTeX."""
    left, right = sides(formula)
    return f"{name(left)} = {_Writer(_LATEX, name).write(right)[0]}"


class _Writer:
    """Writes an expression, with brackets only where they are needed."""

    def __init__(self, style: _Style, name: Callable[[str], str]) -> None:
        self.style, self.name = style, name

    def write(self, node: ast.expr) -> tuple[str, int]:
        """The text, and how tightly it binds."""
        match node:
            case ast.Name(id=name):
                return self._named(self.name(name))
            case ast.Constant(value=value):
                return str(value), _ATOM
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                return f"{self.style.minus}{self._inside(operand, _NEGATE)}", _NEGATE
            case ast.BinOp():
                return self._two(node)
            case ast.Call(func=ast.Name(id=function), args=many):
                inner = [self.write(each)[0] for each in many]
                form = self.style.root if function == "sqrt" else self.style.function
                return form.format(
                    *([] if function == "sqrt" else [function]), "; ".join(inner)
                ), _ATOM
        raise ValueError(f"no way to show {ast.dump(node)}")

    def _two(self, node: ast.BinOp) -> tuple[str, int]:
        style = self.style
        match node.op:
            case ast.Add():
                return self._infix(node, "+", _ADD, _ADD), _ADD
            case ast.Sub():
                return self._infix(node, style.minus, _ADD, _MULTIPLY), _ADD
            case ast.Mult():
                return self._infix(node, style.times, _MULTIPLY, _MULTIPLY), _MULTIPLY
            case ast.Div():
                least = (0, 0) if style.over_binds == _ATOM else (_MULTIPLY, _NEGATE)
                over = self._inside(node.left, least[0]), self._inside(node.right, least[1])
                return style.over.format(*over), style.over_binds
            case ast.Pow():
                raised = self._inside(node.right, style.power_binds)
                base = self._inside(node.left, _ATOM)
                if style is _TEXT and raised in _RAISED:
                    return base + _RAISED[raised], _POWER
                return style.power.format(base, raised), _POWER
        raise ValueError(f"no way to show {ast.dump(node)}")

    def _named(self, text: str) -> tuple[str, int]:
        """A figure with its unit, raised to a power, needs brackets: (1.049 in)²."""
        two = self.style is _TEXT and len(text.split()) == 2
        return text, _NEGATE if two else _ATOM

    def _infix(self, node: ast.BinOp, sign: str, left: int, right: int) -> str:
        return f"{self._inside(node.left, left)} {sign} {self._inside(node.right, right)}"

    def _inside(self, part: ast.expr, least: int) -> str:
        text, binds = self.write(part)
        return text if binds >= least else self.style.group.format(text)


@cache  # a problem's variants ask for the same few formulas ten thousand times
def letters(formula: str) -> tuple[str, ...]:
    """The letters of a formula, left side first."""
    left, right = sides(formula)
    functions = {node.func for node in ast.walk(right) if isinstance(node, ast.Call)}
    names = (n for n in ast.walk(right) if isinstance(n, ast.Name) and n not in functions)
    return (left, *dict.fromkeys(node.id for node in names))


def quantities(case: Case, step: Step) -> Mapping[str, Quantity]:
    """What each letter of a step stands for: given there, or a symbol of an input or output."""
    assert case.answer
    known: dict[str, Quantity] = {}
    for output in case.calculator.outputs:
        answered = case.answer.outputs[output.name]
        if output.symbol and answered is not None:
            known[output.symbol] = Quantity(answered, output, max(output.digits, 4))
    for each in case.calculator.inputs:
        value = case.values[each.name]
        if isinstance(each, Input) and each.symbol and isinstance(value, float):
            known[each.symbol] = Quantity(value, each, 4)
    known |= step.given
    return {name: known[name] for name in letters(step.formula)}


def meanings(calculator: Calculator, steps: Iterable[Step]) -> dict[str, str]:
    """What each letter of the steps is: a field's label, a step's result, or a given figure."""
    steps = tuple(steps)
    given = {name: quantity.label for step in steps for name, quantity in step.given.items()}
    worked = {letters(step.formula)[0]: step.label for step in steps}
    fields = {
        each.symbol: each.label
        for each in (*calculator.outputs, *calculator.inputs)
        if isinstance(each, Field) and each.symbol
    }
    known = given | worked | fields
    return {name: known[name] for step in steps for name in letters(step.formula)}


def put_in(case: Case, quantity: Quantity) -> str:
    """A quantity as it stands in a worked step: inputs in the unit they were given in."""
    like = quantity.like
    if isinstance(like, Field) and like.name in case.units:
        unit = case.units[like.name]
        return with_unit(plainly_written(unit.out_of_si(quantity.value), quantity.digits), unit)
    return shown(quantity.value, like, case.unit_set, quantity.digits)


def as_worked_text(case: Case, step: Step) -> str:
    """The step with this case's numbers put in, and its result: `= 5 gal / 53.5 s = 5.61 gpm`."""
    known = quantities(case, step)
    left, right = sides(step.formula)
    numbers = _Writer(_TEXT, lambda name: _closed(put_in(case, known[name]))).write(right)[0]
    result = put_in(case, known[left])
    return f"= {numbers}" if numbers == result else f"= {numbers} = {result}"


def _closed(text: str) -> str:
    return f"({text})" if text.startswith("−") else text


def letter_mathml(name: str) -> str:
    """A letter as MathML if the handbook was built with it, else as plain text."""
    return Safe(f"<math>{SYMBOLS[name]}</math>") if name in SYMBOLS else letter(name)


def as_mathml(formula: str) -> str:
    """The formula as MathML if the handbook was built with it, else as plain text."""
    if formula not in TEMPLATES:
        return as_text(formula)
    math = re.sub(r"<mtext>⟦(\w+)⟧</mtext>", lambda hole: SYMBOLS[hole[1]], TEMPLATES[formula])
    return Safe(math)
