"""The JSON description: it holds its schema, and says what is declared."""

import json
from copy import deepcopy
from pathlib import Path
from typing import Any

import pint
import pytest
from jsonschema import Draft202012Validator

from calc.calculators import calculator, names
from calc.model import Choice, Input, solve
from calc.units import KINDS
from calc.views.data import SI_UNITS, answered, described
from calc.views.sure import sureness

ROOT = Path(__file__).resolve().parents[2]
SCHEMA: dict[str, Any] = json.loads((ROOT / "calc" / "calculators.schema.json").read_text("utf-8"))
VALIDATOR = Draft202012Validator(SCHEMA)
DESCRIPTION: dict[str, Any] = json.loads(json.dumps(described()))
GONE = object()

# As pint writes what calc writes otherwise.
PINT = {
    "°": "degree",
    "L": "liter",
    "gpm": "gallon/minute",
    "cfm": "ft**3/minute",
    "psia": "psi",
    "°F": "degF",
    "lb": "pound",
    "hp": "horsepower",
    "ft²": "ft**2",
    "gpm/ft²": "gallon/minute/ft**2",
    "pCi/L": "pCi/liter",
    "mg/L as CaCO3": "mg/liter",
    "mg/L": "mg/liter",
    "mg/L as N": "mg/liter",
    "meq/L": "mmol/liter",
    "µS/cm per meq/L": "microsiemens/centimeter/(mmol/liter)",
    "mg/L per µS/cm": "mg/liter/(microsiemens/centimeter)",
    "%": "percent",
    "psi/ft": "psi/ft",
    "ft/s²": "ft/s**2",
    "psi/gpm": "psi*minute/gallon",
    "per h": "1/hour",
    "per cm": "1/cm",
    "gpg per mg/L": "grain/gallon/(mg/liter)",
    "cpm": "1/minute",
    "cps": "1/second",
    "cpm/pCi": "1/minute/picocurie",
    "cps/Bq": "1/second/becquerel",
    "$": "dimensionless",
    "$/kWh": "1/(kW*hour)",
    "Ω/kft": "ohm/kilofoot",
    "gpm/ft": "gallon/minute/ft",
    "ft²/day": "ft**2/day",
}


def test_the_schema_is_a_schema_whose_address_is_relative() -> None:
    """JSON Schema 2020-12, checked against its own schema."""
    Draft202012Validator.check_schema(SCHEMA)
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert SCHEMA["$id"] == DESCRIPTION["$schema"] == "calculators.schema.json"


def test_the_description_holds_its_schema() -> None:
    """jsonschema, an implementation that is not ours."""
    assert [error.message for error in VALIDATOR.iter_errors(DESCRIPTION)] == []


def spoiled(path: tuple[str | int, ...], value: object) -> Any:
    """The description with one member changed, added, or gone."""
    whole = deepcopy(DESCRIPTION)
    part: Any = whole
    for step in path[:-1]:
        part = part[step]
    if value is GONE:
        del part[path[-1]]
    else:
        part[path[-1]] = value
    return whole


def place(name: str, member: str, field: str) -> tuple[str | int, ...]:
    """The path of an input or output of a calculator."""
    fields = [each.name for each in getattr(calculator(name), member)]
    return ("calculators", names().index(name), member, fields.index(field))


PAIL = place("pail_flow", "inputs", "pail")
LIMIT = place("outlet_setting", "inputs", "limit")
MARGIN = place("outlet_setting", "outputs", "margin")


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("format",), "another"),
        (("version",), 2),
        (("edition",), GONE),
        (("calculators",), []),
        (("author",), "someone"),
        (("kinds", 0, "units", 0, "factor"), 0),
        (("kinds", 0, "units", 0, "factor"), "0.0254"),
        (("calculators", 0, "question"), GONE),
        (("calculators", 0, "question"), ""),
        (("calculators", 0, "cautions"), []),
        (("calculators", 0, "name"), "Outlet setting"),
        (("calculators", 0, "sources", 0, "seen"), "heard"),
        (("calculators", 0, "sources", 0, "year"), "2008"),
        (("calculators", 0, "leaves"), {"worst_inlet": []}),
        ((*PAIL, "measure"), GONE),
        ((*PAIL, "colour"), "blue"),
        ((*PAIL, "once"), "yes"),
        ((*PAIL, "several"), 0),
        ((*PAIL, "range", "high"), "200 gal"),
        ((*PAIL, "range", "low"), None),
        ((*PAIL, "unit", "si"), GONE),
        ((*PAIL, "plus_minus"), 0.1),
        ((*LIMIT, "options"), {"before": "before"}),
        ((*LIMIT, "options"), GONE),
        ((*LIMIT, "kind"), "flow"),
        ((*MARGIN, "limits"), {"unit": "gpm", "outside": "neither low nor high"}),
        ((*MARGIN, "limits", "outside"), ""),
        ((*MARGIN, "digits"), 2.5),
    ],
)
def test_a_broken_description_is_refused(path: tuple[str | int, ...], value: object) -> None:
    """By reason: a schema that takes everything describes nothing."""
    assert not VALIDATOR.is_valid(spoiled(path, value))


def test_every_calculator_is_described_whole() -> None:
    """The declarations, member by member."""
    for told, declared in zip(DESCRIPTION["calculators"], map(calculator, names()), strict=True):
        assert told["leaves"] == {key: [*kept] for key, kept in declared.leaves.items()}
        assert [each["name"] for each in told["outputs"]] == [e.name for e in declared.outputs]
        for field, each in zip(told["inputs"], declared.inputs, strict=True):
            said = (field["name"], field["default"], field["default_from"], field["once"])
            assert said == (each.name, each.default, each.origin, each.once)
            if isinstance(each, Input):
                assert (field["plus_minus"], field["caution"]) == (each.sure, each.caution)


def test_another_program_can_turn_every_range_into_si() -> None:
    """The declarations: number times factor plus zero is the declared SI value."""
    factors = {
        (kind["name"], unit["symbol"]): (unit["factor"], unit.get("zero", 0.0))
        for kind in DESCRIPTION["kinds"]
        for unit in kind["units"]
    }
    for told, declared in zip(DESCRIPTION["calculators"], map(calculator, names()), strict=True):
        for field, each in zip(told["inputs"], declared.inputs, strict=True):
            if not isinstance(each, Choice):
                factor, zero = factors[field["kind"], field["range"]["unit"]]
                ends = [field["range"][end] * factor + zero for end in ("low", "high")]
                assert ends == pytest.approx([each.low, each.high], rel=1e-11)


def test_every_kind_says_the_si_unit_that_its_factors_lead_to() -> None:
    """pint, for the usual US unit of each kind that it knows."""
    registry: pint.UnitRegistry[float] = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
    unknown = set()
    for kind in KINDS:
        unit = kind.usual("us")
        si = "".join(
            {"³": "**3", "²": "**2", "·": "*"}.get(one, one) for one in SI_UNITS[kind.name]
        )
        if kind.name in ("flow coefficient", "number"):
            unknown.add(kind.name)
            continue
        one = registry.Quantity(1.0, PINT.get(unit.symbol, unit.symbol)).to(si or "dimensionless")
        assert one.magnitude == pytest.approx(unit.into_si(1.0), rel=1e-6), kind.name
    assert unknown == {"flow coefficient", "number"}
    assert {*SI_UNITS} == {kind.name for kind in KINDS}


def test_an_answer_says_how_sure_it_is_only_when_asked() -> None:
    """`calc.views.sure`, whose widths are SI; the parts of a doubt add up to the whole."""
    case = solve(calculator("outlet_setting"))
    sures = sureness(case)
    plain, told = answered(case), answered(case, sures)
    assert "plus_minus" not in plain["outputs"]["setting"] | plain["inputs"]["outlet"]
    setting, unit = told["outputs"]["setting"], case.calculator.output("setting").usual("us")
    assert setting["plus_minus"] * unit.scale == pytest.approx(sures["setting"].plus_minus)
    assert setting["between"][0] <= setting["value"] <= setting["between"][1]
    assert sum(setting["doubt"].values()) == pytest.approx(1)
    assert told["inputs"]["outlet"]["plus_minus"] == pytest.approx(0.03 * 6)
