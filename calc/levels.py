"""Levels that bodies have set or advised, each with its date. None of them binds a private well.

What a state says can change in a year: ask it before anybody pays for treatment.
"""

from typing import NamedTuple

from calc.units import L, pCi

READ = "November 2026"  # when all of them were looked up
KINDS = {
    "enforceable": "law for supplies, not for a private well",
    "action": "from here on a public supply must act; not a private well",
    "advice": "advice",
    "nuisance": "a goal for taste, stains or scale, not for health",
    "proposal": "proposed, never made law",
}
_PCI, _BQ = pCi / L, 1 / L


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


WATER = (
    Level(
        "US EPA", 300 * _PCI, "proposal", 1999, "read", "epa-1999-proposal", "for public supplies"
    ),
    Level(
        "New Hampshire, with 4 pCi/L in the air",
        2000 * _PCI,
        "advice",
        2020,
        "second-hand",
        "newhampshire-radon-water",
        "consider treatment",
    ),
    Level(
        "European Union",
        100 * _BQ,
        "enforceable",
        2013,
        "read",
        "eu-2013-51",
        "a state may set more",
    ),
    Level(
        "US EPA, where a state has a program for air",
        4000 * _PCI,
        "proposal",
        1999,
        "read",
        "epa-1999-proposal",
        "for public supplies",
    ),
    Level("ANSI/AARST, a standard", 4000 * _PCI, "advice", 2020, "read", "mw-rn-2020", "treat"),
    Level("Maine", 4000 * _PCI, "advice", 2026, "read", "maine-radon-water"),
    Level("Rhode Island", 4000 * _PCI, "advice", 2016, "second-hand", "rhodeisland-radon-water"),
    Level(
        "Vermont",
        4000 * _PCI,
        "advice",
        2026,
        "second-hand",
        "vermont-radon-water",
        "others list 10 000 pCi/L",
    ),
    Level("Connecticut", 5000 * _PCI, "advice", 2026, "read", "connecticut-radon-water"),
    Level(
        "Massachusetts",
        10000 * _PCI,
        "advice",
        2007,
        "read",
        "massachusetts-radon-water",
        "test the air",
    ),
    Level(
        "New Hampshire",
        10000 * _PCI,
        "advice",
        2016,
        "second-hand",
        "newhampshire-radon-water",
        "treat",
    ),
    Level(
        "Finland, private wells",
        1000 * _BQ,
        "advice",
        2024,
        "read",
        "stuk-radon-water",
        "required of supplies",
    ),
)
AIR = (
    Level("US EPA, consider", 2 * _PCI, "advice", 2016, "read", "epa-radon-2016"),
    Level("WHO", 100.0, "advice", 2009, "second-hand", "who-radon-2009", "at most 300 Bq/m³"),
    Level("US EPA, fix", 4 * _PCI, "advice", 2016, "read", "epa-radon-2016"),
    Level("Health Canada", 200.0, "advice", 2012, "read", "canada-radon"),
)
FIX_AIR = 4 * _PCI  # [epa-radon-2016]
OUTDOOR_AIR = 15.0  # Bq/m³, mean of the United States, 14 to 16 [nrc-1999] p. 182
SOURCES = tuple(dict.fromkeys(level.source for level in (*WATER, *AIR)))
