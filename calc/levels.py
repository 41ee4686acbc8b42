"""Levels that bodies have set or advised, each with its date. None of them binds a private well.

To change one, change its line in the table and its year, and `READ` when all were looked at. What
a state says can change in a year: ask it before anybody pays for treatment.
"""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from calc.quantity import Kind
from calc.units import L as LITRE
from calc.units import concentration, nitrate, number, pCi, radon

READ = "November 2026"  # when all of them were looked up
KINDS = {
    "enforceable": "law for supplies, not for a private well",
    "action": "from here on a public supply must act; not a private well",
    "advice": "advice",
    "nuisance": "a goal for taste, stains or scale, not for health",
    "proposal": "proposed, never made law",
}
# of what | body | level | kind | year of the text | how it was seen | source | what it says
_TABLE = """
radon_water | US EPA | 300 pCi/L | proposal | 1999 | read | epa-1999-proposal | for public supplies
radon_water | New Hampshire, with 4 pCi/L in the air | 2000 pCi/L | advice | 2020 | second-hand | newhampshire-radon-water | consider treatment
radon_water | European Union | 100 Bq/L | enforceable | 2013 | read | eu-2013-51 | a state may set more
radon_water | US EPA, where a state has a program for air | 4000 pCi/L | proposal | 1999 | read | epa-1999-proposal | for public supplies
radon_water | ANSI/AARST, a standard | 4000 pCi/L | advice | 2020 | read | mw-rn-2020 | treat
radon_water | Maine | 4000 pCi/L | advice | 2026 | read | maine-radon-water
radon_water | Rhode Island | 4000 pCi/L | advice | 2016 | second-hand | rhodeisland-radon-water
radon_water | Vermont | 4000 pCi/L | advice | 2026 | second-hand | vermont-radon-water | others list 10 000 pCi/L
radon_water | Connecticut | 5000 pCi/L | advice | 2026 | read | connecticut-radon-water
radon_water | Massachusetts | 10000 pCi/L | advice | 2007 | read | massachusetts-radon-water | test the air
radon_water | New Hampshire | 10000 pCi/L | advice | 2016 | second-hand | newhampshire-radon-water | treat
radon_water | Finland, private wells | 1000 Bq/L | advice | 2024 | read | stuk-radon-water | required of supplies
radon_air | US EPA, consider | 2 pCi/L | advice | 2016 | read | epa-radon-2016
radon_air | WHO | 100 Bq/m³ | advice | 2009 | second-hand | who-radon-2009 | at most 300 Bq/m³
radon_air | US EPA, fix | 4 pCi/L | advice | 2016 | read | epa-radon-2016
radon_air | Health Canada | 200 Bq/m³ | advice | 2012 | read | canada-radon
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
nitrite | US EPA | 1 mg/L as N | enforceable | 2026 | read | cfr-141-62 | bottle-fed infants
antimony | US EPA | 0.006 mg/L | enforceable | 2026 | read | cfr-141-62
barium | US EPA | 2 mg/L | enforceable | 2026 | read | cfr-141-62
beryllium | US EPA | 0.004 mg/L | enforceable | 2026 | read | cfr-141-62
cadmium | US EPA | 0.005 mg/L | enforceable | 2026 | read | cfr-141-62
chromium | US EPA | 0.1 mg/L | enforceable | 2026 | read | cfr-141-62
cyanide | US EPA | 0.2 mg/L | enforceable | 2026 | read | cfr-141-62 | free cyanide
mercury | US EPA | 0.002 mg/L | enforceable | 2026 | read | cfr-141-62
selenium | US EPA | 0.05 mg/L | enforceable | 2026 | read | cfr-141-62
thallium | US EPA | 0.002 mg/L | enforceable | 2026 | read | cfr-141-62
zinc | US EPA, taste | 5 mg/L | nuisance | 1991 | read | cfr-143-3
iron | US EPA, rusty stains | 0.3 mg/L | nuisance | 1991 | read | cfr-143-3
sodium | US EPA | 20 mg/L | advice | 2003 | read | epa-sodium-2003 | diets without salt only
sodium | US EPA, salty taste | 60 mg/L | nuisance | 2003 | read | epa-sodium-2003
chloride | US EPA, salty taste | 250 mg/L | nuisance | 1991 | read | cfr-143-3
sulfate | US EPA, taste and bowels | 250 mg/L | nuisance | 1991 | read | cfr-143-3
solids | US EPA | 500 mg/L | nuisance | 1991 | read | cfr-143-3
high_ph | US EPA | 8.5 | nuisance | 1991 | read | cfr-143-3
low_ph | US EPA | 6.5 | nuisance | 1991 | read | cfr-143-3
"""  # noqa: E501 - a row is a line
# Of each, what it is measured in where it is not a concentration.
_KINDS: Mapping[str, Kind] = {
    "radon_water": radon,
    "radon_air": radon,
    "nitrate": nitrate,
    "nitrite": nitrate,
    "high_ph": number,
    "low_ph": number,
}


class Level(NamedTuple):
    """One level. `year` is that of the text it was found in.

    value -- SI: Bq/m³ of radon, kg/m³ of what is dissolved
    kind  -- a key of `KINDS`
    seen  -- "read" in the body's own words, or "second-hand" or "from memory": then nobody has
             confirmed it here
    """

    body: str
    value: float
    kind: str
    year: int
    seen: str
    source: str
    says: str = ""

    @property
    def words(self) -> str:
        """What it is, in a line."""
        seen = "" if self.seen == "read" else "; not confirmed at its source"
        says = f": {self.says}" if self.says else ""
        return f"{KINDS[self.kind]}{says}; text of {self.year}{seen}"


def kind_of(name: str) -> Kind:
    """What the levels of that name are measured in."""
    return _KINDS.get(name, concentration)


def _read() -> Iterator[tuple[str, Level]]:
    for line in _TABLE.strip().splitlines():
        name, body, level, kind, year, seen, source, *says = line.split(" | ")
        like = kind_of(name)
        value, _ = like.read(level, like.usual("us"))
        yield name, Level(body, value, kind, int(year), seen, source, "".join(says))


def _gathered() -> Mapping[str, tuple[Level, ...]]:
    found: dict[str, tuple[Level, ...]] = {}
    for name, level in _read():
        found[name] = (*found.get(name, ()), level)
    return found


LEVELS = _gathered()
WATER, AIR = LEVELS["radon_water"], LEVELS["radon_air"]
FIX_AIR = 4 * pCi / LITRE  # [epa-radon-2016]
OUTDOOR_AIR = 15.0  # Bq/m³, mean of the United States, 14 to 16 [nrc-1999] p. 182


def sources_of(*names: str) -> tuple[str, ...]:
    """Keys of the sources of the levels of those names, each once."""
    return tuple(dict.fromkeys(level.source for name in names for level in LEVELS[name]))


def health(name: str) -> tuple[Level, ...]:
    """Levels set or advised for health."""
    return tuple(level for level in LEVELS[name] if level.kind != "nuisance")


def nuisance(name: str) -> tuple[Level, ...]:
    """Levels for taste, stains or scale."""
    return tuple(level for level in LEVELS[name] if level.kind == "nuisance")


def strictest(name: str) -> Level:
    """The lowest level for health, whatever its body."""
    return min(health(name), key=lambda level: level.value)
