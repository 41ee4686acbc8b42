"""The calculators and a case as plain data, for JSON.

`calculators.schema.json` is the schema of what is declared of the calculators.
"""

from collections.abc import Mapping
from typing import Any

from calc import EDITION, sources
from calc.calculators import calculator, names
from calc.model import Calculator, Case, Choice, Field, Input, Output
from calc.uncertainty import Sure
from calc.units import KINDS, Kind, Unit
from calc.views.formula import as_text, as_worked_text
from calc.views.words import finding_words

FORMAT = "pail-and-timer-calculators"
VERSION = 1

# Kind of quantity -> the SI unit that the factors of its units lead to.
SI_UNITS = {
    "volume": "m³",
    "flow": "m³/s",
    "air flow": "m³/s",
    "gauge pressure": "Pa",
    "absolute pressure": "Pa",
    "time": "s",
    "length": "m",
    "area": "m²",
    "velocity": "m/s",
    "acceleration": "m/s²",
    "flow for each area": "m/s",
    "temperature": "K",
    "power": "W",
    "energy": "J",
    "mass": "kg",
    "concentration": "kg/m³",
    "hardness or alkalinity": "kg/m³",
    "radon": "Bq/m³",
    "flow coefficient": "m³/s/√Pa",
    "resistance of a bed": "Pa·s/m³",
    "pressure for each length": "Pa/m",
    "share": "",
    "number": "",
    "activity": "Bq",
    "activity for each mass": "Bq/kg",
    "dose": "Sv",
    "dose rate": "Sv/s",
    "rate": "1/s",
    "age": "s",
    "angle": "rad",
    "counting rate": "1/s",
    "counts for each activity": "1/(s·Bq)",
    "share of the air": "",
    "money": "",
    "price of energy": "1/J",
    "apparent power": "VA",
    "voltage": "V",
    "current": "A",
    "electrical resistance": "Ω",
    "resistance of wire for each length": "Ω/m",
    "flow for each length": "m²/s",
    "transmissivity": "m²/s",
    "nitrate": "kg/m³",
    "charges of ions": "mol/m³",
    "amount of ions": "mol/m³",
    "mass of a mole": "kg/mol",
    "conductivity": "S/m",
    "conductivity for each charge": "S·m²/mol",
    "solids for each conductivity": "kg/m²/S",
    "dose of ultraviolet light": "J/m²",
    "absorbance": "1/m",
    "chlorine times time": "kg·s/m³",
    "hardness that a bed holds": "kg",
    "hardness for each volume of bed": "kg/m³",
    "mass for each volume of bed": "kg/m³",
    "water for each volume of bed": "",
    "mass for each area": "kg/m²",
    "hardness for each iron": "",
    "hardness for each mass of salt": "",
}

Data = dict[str, Any]


def described() -> Data:
    """All calculators and the kinds of quantity they speak of, for other programs."""
    return {
        "$schema": "calculators.schema.json",
        "format": FORMAT,
        "version": VERSION,
        "edition": EDITION,
        "kinds": [_kind(each) for each in KINDS],
        "calculators": [declaration(calculator(name)) for name in names()],
    }


def _kind(kind: Kind) -> Data:
    return {
        "name": kind.name,
        "si_unit": SI_UNITS[kind.name],
        "units": [
            {"symbol": unit.symbol, "also": list(unit.also), "factor": unit.scale}
            | ({"zero": unit.zero} if unit.zero else {})
            for unit in kind.units
        ],
    }


def declaration(calculator: Calculator) -> Data:
    """Everything that is declared of a calculator."""
    return {
        "name": calculator.name,
        "title": calculator.title,
        "question": calculator.question,
        "inputs": [_input(each) for each in calculator.inputs],
        "outputs": [_declared_output(each) for each in calculator.outputs],
        "leaves": {output: list(kept_as) for output, kept_as in calculator.leaves.items()},
        "cautions": list(calculator.cautions),
        "sources": _sources(calculator),
    }


def _field(each: Field) -> Data:
    return {
        "name": each.name,
        "label": each.label,
        "symbol": each.symbol,
        "kind": each.kind.name,
        "unit": {"us": each.usual("us").symbol, "si": each.usual("si").symbol},
        "units": [unit.symbol for unit in each.kind.units],
    }


def _input(each: Input | Choice) -> Data:
    about: Data = {
        "group": each.group,
        "default": each.default,
        "default_from": each.origin,
        "measure": each.measure,
        "once": each.once,
    }
    if isinstance(each, Choice):
        return {"name": each.name, "label": each.label, "options": dict(each.options), **about}
    unit = each.usual("us")
    bounds = {
        "unit": unit.symbol,
        "low": _figure(unit.out_of_si(each.low)),
        "high": _figure(unit.out_of_si(each.high)),
    }
    more = {"plus_minus": each.sure, "several": each.several, "caution": each.caution}
    return {**_field(each), **about, "range": bounds, **more}


def _declared_output(each: Output) -> Data:
    limits = _limits(each, each.usual("us"))
    return {**_field(each), "digits": each.digits, "limits": limits, "none": each.none}


def _limits(each: Output, unit: Unit) -> Data | None:
    if each.low is None and each.high is None:
        return None
    ends = (("low", each.low), ("high", each.high))
    numbers = {end: _figure(unit.out_of_si(value)) for end, value in ends if value is not None}
    return {**numbers, "unit": unit.symbol, "outside": each.outside}


def _figure(value: float) -> float:
    """A declared figure as it was declared: the way through SI leaves dust behind it."""
    return float(f"{value:.12g}")


def _sources(calculator: Calculator) -> list[Data]:
    return [{"id": each, **sources.entry(each)._asdict()} for each in calculator.sources]


def answered(case: Case, sures: Mapping[str, Sure] | None = None) -> Data:
    """An answered case: inputs as taken, outputs, steps, cautions, sources.

    sures -- how sure the outputs are; with it, everything in doubt says its plus-or-minus
    """
    assert case.answer
    sures = sures or {}
    return {
        "calculator": case.calculator.name,
        "inputs": {each.name: _taken(case, each, bool(sures)) for each in case.calculator.inputs},
        "outputs": {
            each.name: _output(case, each, sures.get(each.name)) for each in case.calculator.outputs
        },
        "findings": [
            {"level": f.level, "head": f.head, "text": finding_words(case, f)}
            for f in case.answer.findings
        ],
        "steps": [
            {"label": s.label, "formula": as_text(s.formula), "worked": as_worked_text(case, s)}
            for s in case.answer.steps
        ],
        "cautions": list(case.calculator.cautions),
        "sources": _sources(case.calculator),
    }


def _taken(case: Case, each: Input | Choice, say_sure: bool) -> Data:
    value = case.values[each.name]
    if isinstance(value, str):
        return {"value": value}
    unit = case.units[each.name]
    if isinstance(value, tuple):
        return {"value": [unit.out_of_si(one) for one in value], "unit": unit.symbol}
    sure = {"plus_minus": case.sures[each.name] / unit.scale} if say_sure else {}
    return {"value": unit.out_of_si(value), "unit": unit.symbol, **sure}


def _output(case: Case, each: Output, sure: Sure | None) -> Data:
    assert case.answer
    value, unit = case.answer.outputs[each.name], each.usual(case.unit_set)
    found: Data = {"value": None if value is None else unit.out_of_si(value), "unit": unit.symbol}
    if limits := _limits(each, unit):
        found["limits"] = limits
    if sure:
        found |= _sure(sure, unit)
    return found


def _sure(sure: Sure, unit: Unit) -> Data:
    """The plus-or-minus, the interval, and the share of the doubt that each input has in it."""
    return {
        "plus_minus": sure.plus_minus / unit.scale,
        "between": [unit.out_of_si(sure.low), unit.out_of_si(sure.high)],
        "by_trials": sure.by_trials,
        "missing": sure.missing,
        "doubt": {part.name: part.share for part in sure.parts},
    }
