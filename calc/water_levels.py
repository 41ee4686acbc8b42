"""Levels for what a laboratory finds in drinking water, each with its body, date and kind.

To change one, change its line, its year, and `READ` in `calc.levels` when all were looked at.
No level binds a private well, and a state may set its own: ask before anybody pays.
"""

from collections.abc import Iterator, Mapping

from calc.levels import Level
from calc.quantity import Kind
from calc.units import concentration, nitrate, number

# parameter | body | level | kind | year of the text | how it was seen | source | what it says
_TABLE = """
nitrate | US EPA | 10 mg/L as N | enforceable | 2026 | read | cfr-141-62
nitrate | WHO | 50 mg/L as NO3 | advice | 2022 | second-hand | who-gdwq-2022 | bottle-fed infants
arsenic | New Hampshire and New Jersey | 5 µg/L | enforceable | 2019 | second-hand | nh-arsenic-2019
arsenic | US EPA | 10 µg/L | enforceable | 2026 | second-hand | cfr-141-62
arsenic | WHO | 10 µg/L | advice | 2022 | second-hand | who-gdwq-2022 | provisional
uranium | US EPA | 30 µg/L | enforceable | 2000 | second-hand | cfr-141-66
uranium | WHO | 30 µg/L | advice | 2022 | from memory | who-gdwq-2022 | provisional
lead | US EPA | 10 µg/L | action | 2024 | second-hand | cfr-141-80 | 15 µg/L before; goal: none
lead | WHO | 10 µg/L | advice | 2022 | second-hand | who-gdwq-2022 | as low as can be done
copper | US EPA | 1.3 mg/L | action | 2024 | read | cfr-141-80
copper | WHO | 2 mg/L | advice | 2022 | second-hand | who-gdwq-2022
copper | US EPA, taste and stains | 1 mg/L | nuisance | 1991 | read | cfr-143-3
fluoride | WHO | 1.5 mg/L | advice | 2022 | from memory | who-gdwq-2022
fluoride | US EPA | 4 mg/L | enforceable | 2026 | read | cfr-141-62
fluoride | US EPA, stained teeth | 2 mg/L | nuisance | 1991 | read | cfr-143-3
manganese | WHO | 0.08 mg/L | advice | 2022 | second-hand | who-gdwq-2022 | bottle-fed infants
manganese | US EPA | 0.3 mg/L | advice | 2004 | second-hand | epa-manganese-2004 | for a lifetime
manganese | US EPA, black stains | 0.05 mg/L | nuisance | 1991 | read | cfr-143-3
iron | US EPA, rusty stains | 0.3 mg/L | nuisance | 1991 | read | cfr-143-3
sodium | US EPA | 20 mg/L | advice | 2003 | read | epa-sodium-2003 | diets without salt only
sodium | US EPA, salty taste | 60 mg/L | nuisance | 2003 | read | epa-sodium-2003
chloride | US EPA, salty taste | 250 mg/L | nuisance | 1991 | read | cfr-143-3
sulfate | US EPA, taste and bowels | 250 mg/L | nuisance | 1991 | read | cfr-143-3
solids | US EPA | 500 mg/L | nuisance | 1991 | read | cfr-143-3
high_ph | US EPA | 8.5 | nuisance | 1991 | read | cfr-143-3
low_ph | US EPA | 6.5 | nuisance | 1991 | read | cfr-143-3
"""
_KINDS: Mapping[str, Kind] = {"nitrate": nitrate, "high_ph": number, "low_ph": number}


def _read() -> Iterator[tuple[str, Level]]:
    for line in _TABLE.strip().splitlines():
        name, body, level, kind, year, seen, source, *says = line.split(" | ")
        like = _KINDS.get(name, concentration)
        value, _ = like.read(level, like.usual("us"))
        yield name, Level(body, value, kind, int(year), seen, source, "".join(says))


def _gathered() -> Mapping[str, tuple[Level, ...]]:
    found: dict[str, tuple[Level, ...]] = {}
    for name, level in _read():
        found[name] = (*found.get(name, ()), level)
    return found


LEVELS = _gathered()
SOURCES = tuple(dict.fromkeys(level.source for many in LEVELS.values() for level in many))


def health(name: str) -> tuple[Level, ...]:
    """Levels set or advised for health."""
    return tuple(level for level in LEVELS[name] if level.kind != "nuisance")


def nuisance(name: str) -> tuple[Level, ...]:
    """Levels for taste, stains or scale."""
    return tuple(level for level in LEVELS[name] if level.kind == "nuisance")


def strictest(name: str) -> Level:
    """The lowest level for health, whatever its body."""
    return min(health(name), key=lambda level: level.value)
