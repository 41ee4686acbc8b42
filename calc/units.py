"""Units. Multiply to come in, divide to go out: `5 * gpm`, `flow / gpm`.

Inside everything is SI. A `Kind` is what a number measures; it knows the units its
readers use. Conversion factors: Thompson and Taylor, Guide for the Use of the SI, NIST
Special Publication 811, 2008, Appendix B; those marked = are exact there.
"""

import re
from collections.abc import Iterator
from math import sqrt
from typing import NamedTuple

from calc.errors import Refused
from calc.figures import NUMBER, plain, read_number

inch = 0.0254  # =
ft = 12 * inch  # =
mm, cm, m = 1e-3, 1e-2, 1.0
gal = 231 * inch**3  # = US gallon
imp_gal = 4.54609e-3  # =
qt = gal / 4  # =
L = 1e-3  # =
second, minute, hour, day = 1.0, 60.0, 3600.0, 86400.0
lb = 0.45359237  # = avoirdupois pound
lbf = lb * 9.80665  # =
Pa, kPa, bar = 1.0, 1e3, 1e5
psi = lbf / inch**2
inH2O = 249.08891  # conventional, 4 degC water
ftH2O = 12 * inH2O
gpm = gal / minute
percent = 1e-2
atm = 101325.0  # = standard atmosphere, Pa

# Water's weight against the US unit of flow coefficient: gpm of 60 degF water at 1 psi.
Cv = gpm / sqrt(psi)
Kv = 1.0 / hour / sqrt(bar)


class Unit(NamedTuple):
    """One unit: SI value = number * scale + zero. `also` are other ways to write it."""

    symbol: str
    scale: float
    also: tuple[str, ...] = ()
    zero: float = 0.0

    def into_si(self, number: float) -> float:
        return number * self.scale + self.zero

    def out_of_si(self, value: float) -> float:
        return (value - self.zero) / self.scale


class Kind(NamedTuple):
    """What a number measures, the units it may be given in, and one for each unit set."""

    name: str
    units: tuple[Unit, ...]
    us: str
    si: str

    def unit(self, symbol: str) -> Unit:
        """The unit of this kind written `symbol`. KeyError for any other."""
        found = self._named(symbol)
        if found is None:
            raise KeyError(f"{symbol!r} is no unit of {self.name}")
        return found

    def usual(self, unit_set: str) -> Unit:
        """The unit readers of the set "us" or "si" expect."""
        return self.unit(self.si if unit_set == "si" else self.us)

    def _named(self, symbol: str) -> Unit | None:
        wanted = symbol.casefold()
        for unit in self.units:
            if wanted in (unit.symbol.casefold(), *unit.also):
                return unit
        return None

    def read(self, text: str, unit: Unit) -> tuple[float, Unit]:
        """SI value of `text` and the unit it was given in; a bare number is in `unit`.

        >>> flow.read("20 L/min", flow.unit("gpm"))[1].symbol
        'L/min'
        >>> round(length.read("12' 6\\"", length.unit("ft"))[0] / ft, 6)
        12.5

        Raises Refused: blank, unreadable, ambiguous, unknown unit, wrong kind.
        """
        body = plain(text)
        if not body:
            raise Refused("blank")
        if self is duration and (clock := _CLOCK.fullmatch(body)):
            return float(clock[1]) * minute + read_number(clock[2]), unit
        pairs = list(self._pairs(body, unit))
        first_number, first_unit = pairs[0]
        value = first_unit.into_si(first_number)
        for number, each in pairs[1:]:
            if each.zero or number < 0:
                raise Refused("unreadable", text=text)
            value += (-1 if body[0] == "-" else 1) * number * each.scale
        return value, first_unit if len(pairs) == 1 else unit

    def _pairs(self, body: str, unit: Unit) -> Iterator[tuple[float, Unit]]:
        place = 0
        while place < len(body):
            number = NUMBER.match(body, place)
            if not number:
                raise Refused("unreadable", text=body)
            place = number.end()
            symbol = _symbol(body, place)
            if symbol is None:
                if place < len(body) or number.start():
                    raise Refused("unknown unit", text=body[place:].strip() or body)
                yield read_number(number[0]), unit
                return
            place = symbol[1]
            yield read_number(number[0]), self._own(symbol[0])

    def _own(self, symbol: str) -> Unit:
        found = self._named(symbol)
        if found is None:
            other = next(kind for kind in KINDS if kind._named(symbol))
            raise Refused("wrong kind", unit=symbol, kind=other.name)
        return found


_CLOCK = re.compile(r"(\d{1,4}):([0-5]?\d(?:[.,]\d+)?)")


def _symbol(body: str, place: int) -> tuple[str, int] | None:
    """The longest unit symbol that stands at `place`, and where it ends (blanks skipped)."""
    start = place
    while start < len(body) and body[start].isspace():
        start += 1
    for end in range(min(len(body), start + _LONGEST), start, -1):
        ends_word = end == len(body) or not (body[end - 1].isalpha() and body[end].isalpha())
        if ends_word and body[start:end].casefold() in _SYMBOLS:
            after = end
            while after < len(body) and (body[after].isspace() or body[after] == ","):
                after += 1
            return body[start:end], after
    return None


volume = Kind(
    "volume",
    (
        Unit("gal", gal, ("gallon", "gallons", "us gal")),
        Unit("L", L, ("litre", "litres", "liter", "liters")),
        Unit("qt", qt, ("quart", "quarts")),
        Unit("m³", 1.0, ("m3",)),
        Unit("ft³", ft**3, ("ft3", "cu ft")),
        Unit("imp gal", imp_gal, ("imperial gallon", "imperial gallons", "uk gal")),
    ),
    us="gal",
    si="L",
)
flow = Kind(
    "flow",
    (
        Unit("gpm", gpm, ("gal/min", "us gpm")),
        Unit("L/min", L / minute, ("lpm",)),
        Unit("L/s", L, ("lps",)),
        Unit("m³/h", 1 / hour, ("m3/h",)),
        Unit("gal/h", gal / hour, ("gph",)),
        Unit("gal/day", gal / day, ("gpd",)),
    ),
    us="gpm",
    si="L/min",
)
gauge_pressure = Kind(
    "gauge pressure",
    (
        Unit("psi", psi, ("psig",)),
        Unit("kPa", kPa),
        Unit("bar", bar),
        Unit("ft of water", ftH2O, ("fth2o", "ft h2o")),
    ),
    us="psi",
    si="kPa",
)
duration = Kind(
    "time",
    (
        Unit("s", second, ("sec", "second", "seconds")),
        Unit("min", minute, ("minute", "minutes")),
        Unit("h", hour, ("hour", "hours", "hr")),
        Unit("days", day, ("day",)),
    ),
    us="min",
    si="min",
)
length = Kind(
    "length",
    (
        Unit("ft", ft, ("'", "foot", "feet")),
        Unit("in", inch, ('"', "inch", "inches")),
        Unit("m", m, ("metre", "metres", "meter", "meters")),
        Unit("cm", cm),
        Unit("mm", mm),
    ),
    us="ft",
    si="m",
)
flow_coefficient = Kind("flow coefficient", (Unit("Cv", Cv), Unit("Kv", Kv)), us="Cv", si="Kv")
mass = Kind("mass", (Unit("lb", lb, ("pounds", "pound")), Unit("kg", 1.0)), us="lb", si="kg")
pressure_gradient = Kind(
    "pressure for each length",
    (Unit("psi/ft", psi / ft), Unit("kPa/m", kPa)),
    us="psi/ft",
    si="kPa/m",
)
share = Kind("share", (Unit("%", percent, ("percent", "per cent")),), us="%", si="%")
number = Kind("number", (Unit("", 1.0),), us="", si="")

KINDS = (
    volume,
    flow,
    gauge_pressure,
    duration,
    length,
    flow_coefficient,
    mass,
    pressure_gradient,
    share,
    number,
)
_SYMBOLS = {
    name.casefold()
    for kind in KINDS
    for unit in kind.units
    for name in (unit.symbol, *unit.also)
    if name
}
_LONGEST = max(map(len, _SYMBOLS))
