"""The working that is shown is the working that was done."""

import ast
import re
from math import sqrt

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.calculators import calculator, names
from calc.model import UNIT_SETS, Case, solve
from calc.views.formula import (
    as_latex,
    as_text,
    as_worked_text,
    letters,
    meanings,
    quantities,
    sides,
)
from tests.model.given import patient, typed

every_calculator = pytest.mark.parametrize("name", names())
FUNCTIONS = {"sqrt": sqrt, "min": min, "max": max}


def assert_steps_hold(case: Case) -> None:
    """Every formula, computed with the values its letters stand for, gives its left side."""
    assert case.answer
    assert case.answer.steps
    for step in case.answer.steps:
        left, right = sides(step.formula)
        values = {name: known.value for name, known in quantities(case, step).items()}
        code = compile(ast.Expression(right), step.formula, "eval")
        result = eval(code, {"__builtins__": {}} | FUNCTIONS, values)
        assert result == pytest.approx(values[left], rel=1e-9, abs=1e-15), step.formula


def assert_steps_follow(case: Case) -> None:
    """Every letter is an input or a constant, or was found by a step before; outputs are found."""
    assert case.answer
    found = [sides(step.formula)[0] for step in case.answer.steps]
    for place, step in enumerate(case.answer.steps):
        later = set(found[place:]) & set(letters(step.formula)[1:])
        assert not later, f"{step.formula} uses {later} before it is found"
    wanted = {each.symbol for each in case.calculator.outputs
              if each.symbol and case.answer.outputs[each.name] is not None}  # fmt: skip
    assert wanted <= set(found)


@every_calculator
def test_working_of_the_worked_example(name: str) -> None:
    """The formula itself, computed by Python's own reading of it."""
    case = solve(calculator(name))
    assert_steps_hold(case)
    assert_steps_follow(case)


@every_calculator
@patient
@given(data=st.data())
def test_working_of_any_example(name: str, data: st.DataObject) -> None:
    """The formula itself, as above, for whatever branch the inputs lead into."""
    declared = calculator(name)
    case = solve(declared, data.draw(typed(declared)), data.draw(st.sampled_from(UNIT_SETS)))
    assume(case.answer)
    assert_steps_hold(case)
    assert_steps_follow(case)
    assert case.answer
    for step in case.answer.steps:
        for text in (step.label, as_text(step.formula), as_worked_text(case, step)):
            assert text
            assert "nan" not in text.split()


@pytest.mark.parametrize(
    ("formula", "text", "latex"),
    [
        ("Q = V / t", "Q = V / t", r"Q = \frac{V}{t}"),
        ("a = b - (c - d)", "a = b − (c − d)", r"a = b - \left(c - d\right)"),
        ("a = b - c - d", "a = b − c − d", r"a = b - c - d"),
        ("a = (b + c) * d", "a = (b + c) × d", r"a = \left(b + c\right) \times d"),
        ("a = b / (c * d)", "a = b / (c × d)", r"a = \frac{b}{c \times d}"),
        ("a = b / c / d", "a = b / c / d", r"a = \frac{\frac{b}{c}}{d}"),
        ("a = b / (c / d)", "a = b / (c / d)", r"a = \frac{b}{\frac{c}{d}}"),
        ("a = (b * c)**2", "a = (b × c)²", r"a = \left(b \times c\right)^{2}"),
        ("a = 10**(b - c)", "a = 10^(b − c)", r"a = 10^{b - c}"),
        ("a = b**2.5 + c**25", "a = b^2.5 + c^25", r"a = b^{2.5} + c^{25}"),
        ("a = e**(-b)", "a = e^(−b)", r"a = e^{-b}"),
        ("a = -b * c", "a = −b × c", r"a = -b \times c"),
        ("dV = V_t * 2", "ΔV = V_t × 2", r"\Delta V = V_{\text{t}} \times 2"),
        ("t = max(R, 0)", "t = max(R; 0)", r"t = \max\left(R; 0\right)"),
        ("a = sqrt(b + c)", "a = √(b + c)", r"a = \sqrt{b + c}"),
        ("mu = rho * pi", "μ = ρ × π", r"\mu = \rho \times \pi"),
    ],
)
def test_formulas_as_text_and_latex(formula: str, text: str, latex: str) -> None:
    """Written by hand: brackets where arithmetic needs them and nowhere else."""
    assert as_text(formula) == text
    assert as_latex(formula) == latex


def test_a_figure_with_its_unit_is_raised_whole() -> None:
    """By reason: 1.049 in² is an area, (1.049 in)² the square of a bore."""
    case = solve(calculator("intake_depth"))
    assert case.answer
    step = next(step for step in case.answer.steps if "**2" in step.formula)
    assert re.search(r"\([\d.]+\sin\)²", as_worked_text(case, step))


@pytest.mark.parametrize("formula", ["a = b if c else d", "a = b[0]", "a = b // c", "a = b.c"])
def test_what_a_formula_may_not_hold(formula: str) -> None:
    """By reason: what cannot be shown is a mistake in the declaration."""
    with pytest.raises(ValueError, match="no way to show"):
        as_text(formula)


@every_calculator
def test_every_letter_has_a_meaning(name: str) -> None:
    """By reason: a letter that nothing explains teaches nothing."""
    case = solve(calculator(name))
    assert case.answer
    assert all(meanings(case.calculator, case.answer.steps).values())
