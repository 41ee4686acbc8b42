"""A formula as JavaScript: so that a package without Python can follow a student's own figures."""

import ast

from calc.views.formula import letters, sides

_SIGNS = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*", ast.Div: "/"}
_NAMES = {"sqrt": "Math.sqrt", "min": "Math.min", "max": "Math.max", "exp": "Math.exp",
          "ln": "Math.log", "log": "Math.log"}  # fmt: skip


def as_script(formula: str) -> str:
    """The right side of a formula as an expression over an object `k` of letters, SI.

    >>> as_script("v = 4 * G / (pi * D_v**2)")
    '((4*k.G)/(Math.PI*(k.D_v**2)))'
    """
    return _script(sides(formula)[1])


def _script(node: ast.expr) -> str:
    match node:
        case ast.Name(id=name):
            return "Math.PI" if name == "pi" else f"k.{name}"
        case ast.Constant(value=value):
            return repr(value)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return f"(-{_script(operand)})"
        case ast.BinOp(left=left, op=ast.Pow(), right=right):
            return f"({_script(left)}**{_script(right)})"
        case ast.BinOp(left=left, op=sign, right=right):
            return f"({_script(left)}{_SIGNS[type(sign)]}{_script(right)})"
        case ast.Call(func=ast.Name(id=function), args=many):
            return f"{_NAMES[function]}({','.join(map(_script, many))})"
    raise ValueError(f"no script for {ast.dump(node)}")


def needed(formula: str) -> list[str]:
    """The letters on the right side of a formula."""
    return [letter for letter in letters(formula)[1:] if letter != "pi"]
