"""The page of units: every kind of quantity, every unit, how it may be written, its factor."""

from build_scripts.pages.markdown import escaped, heading
from calc.figures import MINUS
from calc.model import UNIT_SETS
from calc.units import KINDS, Kind, Unit
from calc.views.data import SI_UNITS

INTRODUCTION = """# Units

A bare number is meant in the unit beside its field, and every field takes a unit typed behind the
number: `20 L/min`, `1 1/2 in`, `12' 6"`, `3 min 40 s`. Capitals do not matter. A unit of another
kind is refused: a flow cannot be given in psi.

Inside, everything is SI. The factor is the number of SI units in one unit, to fifteen digits, as
the calculators use it. It is computed from the exact inch, foot, pound and gallon [@nist-811];
inches and feet of water and inches of mercury are the conventional ones given there."""


def page() -> str:
    """The page of units."""
    return "\n\n".join([INTRODUCTION, *(_kind(each) for each in KINDS)])


def anchor(kind: Kind) -> str:
    """The address of a kind on the page."""
    return kind.name.replace(" ", "-")


def _kind(kind: Kind) -> str:
    named = SI_UNITS[kind.name] or "a plain number"
    rows = [f"| Unit | Factor to {named} |", "|---|---|", *map(_row, kind.units)]
    usual = [kind.usual(unit_set).symbol for unit_set in UNIT_SETS]
    said = ""
    if usual[0] != usual[1]:
        said = f"Usual: {escaped(usual[0])} in US units, {escaped(usual[1])} in SI units."
    return "\n\n".join(
        [heading(2, kind.name.capitalize(), anchor(kind)), *filter(None, [said]), "\n".join(rows)]
    )


def _row(unit: Unit) -> str:
    also = escaped(f", also {', '.join(unit.also)}") if unit.also else ""
    zero = f", then add {factor(unit.zero)}" if unit.zero else ""
    return f"| **{escaped(unit.symbol) or 'none'}**{also} | {factor(unit.scale)}{zero} |"


def factor(value: float) -> str:
    """A factor to fifteen digits, a power of ten written as one.

    >>> factor(231 * 0.0254**3), factor(1e-3 / 3600)
    ('0.003785411784', '2.77777777777778\\xa0×\\xa010<sup>−7</sup>')
    """
    figure, _, power = f"{value:.15g}".partition("e")
    raised = str(int(power or 0)).replace("-", MINUS)
    return f"{figure}\u00a0×\u00a010<sup>{raised}</sup>" if power else figure
