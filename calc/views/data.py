"""A calculator and a case as plain data, for JSON."""

from typing import Any

from calc import sources
from calc.model import Calculator, Case, Choice, Field, Input, Output
from calc.units import Unit
from calc.views.formula import as_text, as_worked_text
from calc.views.words import finding_words

Data = dict[str, Any]


def declaration(calculator: Calculator) -> Data:
    """Everything that is declared of a calculator."""
    return {
        "name": calculator.name,
        "title": calculator.title,
        "question": calculator.question,
        "inputs": [_input(each) for each in calculator.inputs],
        "outputs": [_declared_output(each) for each in calculator.outputs],
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
    about: Data = {"default": each.default, "default_from": each.origin, "measure": each.measure}
    if isinstance(each, Choice):
        return {"name": each.name, "label": each.label, "options": dict(each.options), **about}
    unit = each.usual("us")
    bounds = {
        "unit": unit.symbol,
        "low": unit.out_of_si(each.low),
        "high": unit.out_of_si(each.high),
    }
    return {**_field(each), **about, "range": bounds, "several": each.several}


def _declared_output(each: Output) -> Data:
    return {**_field(each), "digits": each.digits, "limits": _limits(each, each.usual("us"))}


def _limits(each: Output, unit: Unit) -> Data | None:
    if each.low is None and each.high is None:
        return None
    ends = (("low", each.low), ("high", each.high))
    numbers = {end: unit.out_of_si(value) for end, value in ends if value is not None}
    return {**numbers, "unit": unit.symbol, "outside": each.outside}


def _sources(calculator: Calculator) -> list[Data]:
    return [{"id": each, **sources.entry(each)._asdict()} for each in calculator.sources]


def answered(case: Case) -> Data:
    """An answered case: inputs as taken, outputs, steps, cautions, sources."""
    assert case.answer
    return {
        "calculator": case.calculator.name,
        "inputs": {each.name: _taken(case, each) for each in case.calculator.inputs},
        "outputs": {each.name: _output(case, each) for each in case.calculator.outputs},
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


def _taken(case: Case, each: Input | Choice) -> Data:
    value = case.values[each.name]
    if isinstance(value, str):
        return {"value": value}
    unit = case.units[each.name]
    if isinstance(value, tuple):
        return {"value": [unit.out_of_si(one) for one in value], "unit": unit.symbol}
    return {"value": unit.out_of_si(value), "unit": unit.symbol}


def _output(case: Case, each: Output) -> Data:
    assert case.answer
    value, unit = case.answer.outputs[each.name], each.usual(case.unit_set)
    limits = _limits(each, unit)
    found: Data = {"value": None if value is None else unit.out_of_si(value), "unit": unit.symbol}
    return found | ({"limits": limits} if limits else {})
