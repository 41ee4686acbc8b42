"""Every unit against pint and scipy, and how values with units are read."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pint import UnitRegistry
from scipy import constants

from calc import units
from calc.errors import Refused
from calc.units import KINDS, Kind, Unit, duration, flow, gal, gauge_pressure, length, psi, volume
from tests.model.given import steady

PINT = {
    "°": "degree",
    "rad": "radian",
    "gal": "gallon",
    "L": "liter",
    "qt": "quart",
    "m³": "meter**3",
    "ft³": "foot**3",
    "imp gal": "imperial_gallon",
    "gpm": "gallon/minute",
    "L/min": "liter/minute",
    "L/s": "liter/second",
    "m³/h": "meter**3/hour",
    "gal/h": "gallon/hour",
    "gal/day": "gallon/day",
    "psi": "psi",
    "kPa": "kilopascal",
    "bar": "bar",
    "ft of water": "foot_H2O",
    "s": "second",
    "min": "minute",
    "h": "hour",
    "days": "day",
    "ft": "foot",
    "in": "inch",
    "m": "meter",
    "cm": "centimeter",
    "mm": "millimeter",
    "Cv": "gallon/minute/psi**0.5",
    "Kv": "meter**3/hour/bar**0.5",
    "lb": "pound",
    "kg": "kilogram",
    "psi/ft": "psi/foot",
    "kPa/m": "kilopascal/meter",
    "%": "percent",
    "": "dimensionless",
    "cfm": "foot**3/minute",
    "in of water": "inch_H2O",
    "Pa": "pascal",
    "psia": "psi",
    "kPa abs": "kilopascal",
    "inHg": "inch_Hg",
    "atm": "atmosphere",
    "ft²": "foot**2",
    "in²": "inch**2",
    "m²": "meter**2",
    "cm²": "centimeter**2",
    "ft/s": "foot/second",
    "ft/min": "foot/minute",
    "m/s": "meter/second",
    "m/h": "meter/hour",
    "gpm/ft²": "gallon/minute/foot**2",
    "°F": "degF",
    "°C": "degC",
    "K": "kelvin",
    "hp": "horsepower",
    "W": "watt",
    "kW": "kilowatt",
    "kWh": "kilowatt_hour",
    "MJ": "megajoule",
    "mg/L": "milligram/liter",
    "µg/L": "microgram/liter",
    "g/L": "gram/liter",
    "mg/L as CaCO3": "milligram/liter",
    "gpg": "grain/gallon",
    "°dH": "lime_degree",
    "°fH": "french_degree",
    "pCi/L": "picocurie/liter",
    "Bq/L": "becquerel/liter",
    "Bq/m³": "becquerel/meter**3",
    "L/day": "liter/day",
    "ft/s²": "foot/second**2",
    "m/s²": "meter/second**2",
    "psi/gpm": "psi*minute/gallon",
    "kPa·min/L": "kilopascal*minute/liter",
    "µCi": "microcurie",
    "MBq": "megabecquerel",
    "kBq": "kilobecquerel",
    "Bq": "becquerel",
    "pCi/g": "picocurie/gram",
    "Bq/g": "becquerel/gram",
    "Bq/kg": "becquerel/kilogram",
    "mSv": "millisievert",
    "mrem": "millirem",
    "µSv/h": "microsievert/hour",
    "mrem/h": "millirem/hour",
    "per h": "1/hour",
    "per day": "1/day",
    "years": "year",
    "months": "month",
    "mL": "milliliter",
    "g": "gram",
    "cpm": "1/minute",
    "cps": "1/second",
    "cpm/pCi": "1/minute/picocurie",
    "cps/Bq": "1/second/becquerel",
    "ppm": "ppm",
    "$": "dimensionless",
    "$/kWh": "1/kilowatt_hour",
    "kVA": "kilovolt*ampere",
    "VA": "volt*ampere",
    "V": "volt",
    "A": "ampere",
    "Ω": "ohm",
    "Ω/kft": "ohm/kilofoot",
    "Ω/km": "ohm/kilometer",
    "cups": "cup",
    "fl oz": "fluid_ounce",
    "oz": "ounce",
    "gpm/ft": "gallon/minute/foot",
    "L/min/m": "liter/minute/meter",
    "m²/day": "meter**2/day",
    "gpd/ft": "gallon/day/foot",
    "ft²/day": "foot**2/day",
    "mL/min": "milliliter/minute",
    "grains": "grain",
    "g as CaCO3": "gram",
    "gr/ft³": "grain/foot**3",
    "g/L as CaCO3": "gram/liter",
    "lb/ft³": "pound/foot**3",
    "gal/ft³": "gallon/foot**3",
    "L/L": "liter/liter",
    "lb/ft²": "pound/foot**2",
    "kg/m²": "kilogram/meter**2",
    "gpg per mg/L": "grain/gallon/(milligram/liter)",
    "mg/L per mg/L": "dimensionless",
    "gr/lb": "grain/pound",
    "g/kg": "gram/kilogram",
    "mg/L as N": "milligram/liter",
    "mg/L as NO3": "nitrate_milligram/liter",
    "meq/L": "millimole/liter",
    "mmol/L": "millimole/liter",
    "mol/L": "mole/liter",
    "µS/cm": "microsiemens/centimeter",
    "mS/cm": "millisiemens/centimeter",
    "g/mol": "gram/mole",
    "µS/cm per meq/L": "microsiemens/centimeter/(millimole/liter)",
    "mg/L per µS/cm": "milligram/liter/(microsiemens/centimeter)",
    "mJ/cm²": "millijoule/centimeter**2",
    "per cm": "1/centimeter",
    "mg·min/L": "milligram*minute/liter",
}
COARSE = {"inHg": 5e-7}  # pint weighs the mercury; the conventional inch is a rounded figure
EVERY = [(kind, unit) for kind in KINDS for unit in kind.units]
NAMED = [(kind, unit, name) for kind, unit in EVERY for name in (unit.symbol, *unit.also) if name]
every_unit = pytest.mark.parametrize(
    ("kind", "unit"), EVERY, ids=[f"{k.name} {u.symbol}" for k, u in EVERY]
)


@pytest.fixture(scope="module")
def registry() -> UnitRegistry:
    registry = UnitRegistry()
    registry.define("lime_degree = 10 * 100.0869 / 56.0774 milligram / liter")
    registry.define("french_degree = 10 milligram / liter")
    registry.define("nitrate_milligram = 14.007 / (14.007 + 3 * 15.999) milligram")
    return registry


@every_unit
def test_against_pint(kind: Kind, unit: Unit, registry: UnitRegistry) -> None:
    """pint, whose factors are its own: every unit of every kind, both ways."""
    theirs = registry.Quantity(7.3, PINT[unit.symbol]).to_base_units()
    close = COARSE.get(unit.symbol, 1e-9)
    assert unit.into_si(7.3) == pytest.approx(float(theirs.magnitude), rel=close)
    assert unit.out_of_si(float(theirs.magnitude)) == pytest.approx(7.3, rel=close)


@every_unit
def test_one_kind_measures_one_thing(kind: Kind, unit: Unit, registry: UnitRegistry) -> None:
    """pint's dimensions: units of one kind measure the same."""
    first = registry.Quantity(1.0, PINT[kind.units[0].symbol])
    assert registry.Quantity(1.0, PINT[unit.symbol]).dimensionality == first.dimensionality


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [
        ("inch", constants.inch), ("ft", constants.foot), ("gal", constants.gallon),
        ("imp_gal", constants.gallon_imp), ("L", constants.liter), ("lb", constants.pound),
        ("lbf", constants.pound_force), ("psi", constants.psi), ("bar", constants.bar),
        ("atm", constants.atmosphere), ("minute", constants.minute), ("hour", constants.hour),
        ("day", constants.day), ("kPa", constants.kilo), ("percent", constants.centi),
        ("hp", constants.horsepower), ("grain", constants.grain),
    ],
)  # fmt: skip
def test_against_scipy(ours: str, theirs: float) -> None:
    """scipy.constants, which follows [nist-811]."""
    assert getattr(units, ours) == pytest.approx(theirs, rel=1e-12)


@steady
@given(st.sampled_from(EVERY), st.floats(-1e9, 1e9))
def test_into_si_and_out_again(pair: tuple[Kind, Unit], number: float) -> None:
    """By reason: nothing is lost on the way in and out."""
    unit = pair[1]
    assert unit.out_of_si(unit.into_si(number)) == pytest.approx(number, rel=1e-12, abs=1e-11)


@pytest.mark.parametrize(
    ("kind", "unit", "name"), NAMED, ids=[f"{k.name} {name}" for k, _, name in NAMED]
)
def test_every_name_of_every_unit_is_read(kind: Kind, unit: Unit, name: str) -> None:
    """The declaration: a unit may be written in each of its ways, large or small, spaced or not."""
    default = kind.usual("us")
    for text in (f"3 {name}", f"3{name}", f"3 {name.upper()}", f" 3  {name} "):
        assert kind.read(text, default) == (unit.into_si(3), unit), text
    assert kind.unit(name) == unit


@every_unit
def test_a_bare_number_is_in_the_unit_of_its_field(kind: Kind, unit: Unit) -> None:
    """The declaration: the unit beside the field counts."""
    assert kind.read("2.5", unit) == (unit.into_si(2.5), unit)


@pytest.mark.parametrize(
    ("kind", "text", "number", "symbol"),
    [
        (length, "12' 6\"", 12.5, "ft"), (length, "12 ft 6 in", 12.5, "ft"),
        (length, "5 1/2 in", 5.5, "in"), (length, "-2 ft 6 in", -2.5, "ft"),
        (volume, "5 gal 2 qt", 5.5, "gal"), (volume, "½ gal", 0.5, "gal"),
        (duration, "1:02", 62, "s"), (duration, "1:02.5", 62.5, "s"),
        (duration, "1:02,5", 62.5, "s"), (duration, "1 min 2 s", 62, "s"),
        (duration, "1½ min", 90, "s"),
        (flow, "20 L/min", 20, "L/min"), (gauge_pressure, "−5 psi", -5, "psi"),
        (gauge_pressure, "5 ft of water", 5, "ft of water"),
    ],
)  # fmt: skip
def test_values_with_units(kind: Kind, text: str, number: float, symbol: str) -> None:
    """By hand: what the trade writes."""
    value, _ = kind.read(text, kind.usual("us"))
    assert value == pytest.approx(kind.unit(symbol).into_si(number), rel=1e-12)


@pytest.mark.parametrize(
    ("kind", "text", "reason"),
    [
        (flow, "", "blank"), (flow, "  ", "blank"), (flow, "gpm", "unreadable"),
        (flow, "5 psi", "wrong kind"), (length, "3 gal", "wrong kind"),
        (flow, "1,234 gpm", "ambiguous"),
        (flow, "5 furlongs", "unknown unit"), (flow, "5 gpmx", "unknown unit"),
        (volume, "5 gal 3", "unknown unit"), (volume, "5 gal -3 qt", "unreadable"),
        (flow, "1:02", "unknown unit"), (duration, "1:75", "unknown unit"),
        (volume, "5 gal 3 psi", "wrong kind"),
    ],
)  # fmt: skip
def test_values_that_are_refused(kind: Kind, text: str, reason: str) -> None:
    """By hand: no text is taken for something it does not say."""
    with pytest.raises(Refused) as refused:
        kind.read(text, kind.usual("us"))
    assert refused.value.reason == reason


@pytest.mark.parametrize("kind", KINDS, ids=[kind.name for kind in KINDS])
def test_no_name_means_two_units_of_a_kind(kind: Kind) -> None:
    """By reason: else a text would say which unit it means only to the one who wrote the list."""
    meant: dict[str, set[str]] = {}
    for each, unit, name in NAMED:
        if each == kind:
            meant.setdefault(name.casefold(), set()).add(unit.symbol)
    assert all(len(units) == 1 for units in meant.values()), meant


def test_a_unit_of_another_kind_is_none_of_this() -> None:
    """The declaration: asking a kind for a unit it has not is a mistake in the program."""
    with pytest.raises(KeyError, match="psi"):
        flow.unit("psi")


def test_gauge_pressure_of_a_water_column() -> None:
    """[nist-811] by hand: 1 psi holds 2.3067 ft of water at 4 °C; the trade says 2.31."""
    assert psi / units.ftH2O == pytest.approx(2.3067, abs=5e-5)
    assert gal / units.L == pytest.approx(3.785411784, rel=1e-12)
