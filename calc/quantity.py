"""Units and kinds of quantity, and how a quantity is read from what a person typed."""

import re
from collections.abc import Iterator
from math import isinf
from typing import NamedTuple

from calc.errors import Refused
from calc.figures import NUMBER, plain, read_number

MINUTE = 60.0
LONGEST = 300  # characters of a quantity: reading a text takes time that grows with it


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

        >>> from calc.units import flow, ft, length
        >>> flow.read("20 L/min", flow.unit("gpm"))[1].symbol
        'L/min'
        >>> round(length.read("12' 6\\"", length.unit("ft"))[0] / ft, 6)
        12.5

        Raises Refused: blank, unreadable, ambiguous, unknown unit, wrong kind.
        """
        body = plain(text)
        if not body:
            raise Refused("blank")
        if len(body) > LONGEST:
            raise Refused("unreadable", text=f"{body[:LONGEST]}…")
        if self.name == "time" and (clock := _CLOCK.fullmatch(body)):
            return float(clock[1]) * MINUTE + read_number(clock[2]), unit
        pairs = list(self._pairs(body, unit))
        first_number, first_unit = pairs[0]
        value = first_unit.into_si(first_number)
        for number, each in pairs[1:]:
            if each.zero or number < 0:
                raise Refused("unreadable", text=text)
            value += (-1 if body[0] == "-" else 1) * number * each.scale
        if isinf(value):  # 1e308 is a number; as many days are more seconds than any
            raise Refused("unreadable", text=text)
        return value, first_unit if len(pairs) == 1 else unit

    def apart(self, text: str) -> tuple[str, str]:
        """Number and unit of a text that is one number and one unit; else the text and "".

        >>> from calc.units import flow
        >>> flow.apart("4.630 gpm"), flow.apart("4.63")
        (('4.630', 'gpm'), ('4.63', ''))
        """
        body = plain(text)
        number = NUMBER.match(body)
        symbol = _symbol(body, number.end()) if number else None
        if number and symbol and symbol[1] == len(body) and (unit := self._named(symbol[0])):
            return number[0].strip(), unit.symbol
        return text, ""

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
            other = next(each for each in KINDS if each._named(symbol))
            raise Refused("wrong kind", unit=symbol, kind=other.name)
        return found


_CLOCK = re.compile(r"(\d{1,4}):([0-5]?\d(?:[.,]\d+)?)")


def _symbol(body: str, place: int) -> tuple[str, int] | None:
    """The longest unit symbol that stands at `place`, and where it ends (blanks skipped)."""
    start = place
    while start < len(body) and body[start].isspace():
        start += 1
    for end in range(min(len(body), start + max(map(len, _SYMBOLS))), start, -1):
        ends_word = end == len(body) or not (body[end - 1].isalpha() and body[end].isalpha())
        if ends_word and body[start:end].casefold() in _SYMBOLS:
            after = end
            while after < len(body) and (body[after].isspace() or body[after] == ","):
                after += 1
            return body[start:end], after
    return None


KINDS: list[Kind] = []
_SYMBOLS: set[str] = set()


def kind(name: str, *units: Unit, us: str, si: str) -> Kind:
    """A kind of quantity, known from now on to every field that is given the wrong one."""
    made = Kind(name, units, us, si)
    KINDS.append(made)
    _SYMBOLS.update(text.casefold() for unit in units for text in (unit.symbol, *unit.also) if text)
    return made
