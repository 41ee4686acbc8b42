"""What the page's worker calls: one request in as JSON, one reply out as JSON."""

import json
from collections.abc import Mapping
from pathlib import Path

from calc.calculators import calculator
from calc.model import UNIT_SETS, Calculator, Case, Choice, Input, Typed, solve
from calc.views.answer import answer, errors
from calc.views.form import reading, shown_sure, shown_text
from calc.views.formula import SYMBOLS, TEMPLATES
from calc.views.words import finding_words


def reply(request: str) -> str:
    """The reply to a request of the page.

    Request: calculator, key, root, units ("us" or "si") and fields, each {text, unit, show}:
    what was typed, the unit it was typed in, and the unit to show it in ("" for the usual).
    Reply: answer (HTML), says (the headline, for a reader who cannot see it), and for every
    field its text, unit, reading and error.
    """
    asked = json.loads(request)
    units = asked.get("units")
    fields: dict[str, dict[str, str]] = asked.get("fields", {})
    unit_set = units if units in UNIT_SETS else "us"
    declared = calculator(asked["calculator"])
    case = solve(declared, _typed(declared, fields, unit_set), unit_set)
    wrong = errors(case)
    return json.dumps(
        {
            "answer": answer(case, asked.get("key", ""), asked.get("root", "")),
            "says": _says(case),
            "fields": {
                each.name: _field(case, each) | {"error": wrong.get(each.name, "")}
                for each in case.calculator.inputs
            },
        }
    )


def _says(case: Case) -> str:
    if not case.answer:
        return f"No answer: {len(case.errors)} to mend."
    first = case.answer.findings[0]
    return f"{first.head} {finding_words(case, first)}"


def _typed(
    declared: Calculator, fields: Mapping[str, Mapping[str, str]], unit_set: str
) -> dict[str, Typed]:
    usual = {e.name: e.usual(unit_set).symbol for e in declared.inputs if isinstance(e, Input)}
    return {
        name: Typed(
            each["text"],
            each.get("unit", ""),
            each.get("show") or usual.get(name, ""),
            each.get("sure", ""),
        )
        for name, each in fields.items()
    }


def _field(case: Case, each: Input | Choice) -> dict[str, str]:
    if each.name not in case.units:
        return {"text": case.typed[each.name].text}
    return {
        "text": shown_text(case, each.name),
        "unit": case.units[each.name].symbol,
        "reading": reading(case, each.name),
        "sure": shown_sure(case, each.name),
    }


def learn_formulas(made: str) -> None:
    """Take the MathML that the build made: JSON with "templates" and "symbols"."""
    known = json.loads(made)
    TEMPLATES.update(known["templates"])
    SYMBOLS.update(known["symbols"])


def _learn_from_package() -> None:
    """The build puts its MathML into the package that the page loads; the wheel has none."""
    made = Path(__file__).parents[1] / "formulas.json"
    if made.exists():
        learn_formulas(made.read_text(encoding="utf-8"))


_learn_from_package()
