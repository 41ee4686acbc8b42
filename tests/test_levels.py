"""The levels for drinking water: those that could be read, and that each is well told."""

import re
from pathlib import Path

import pytest

from calc.levels import KINDS, LEVELS, health, kind_of, nuisance, strictest
from calc.sources import SOURCES
from calc.units import L, mg


@pytest.mark.parametrize(
    ("name", "printed"),
    [
        ("iron", 0.3),
        ("manganese", 0.05),
        ("copper", 1.0),
        ("fluoride", 2.0),
        ("chloride", 250),
        ("sulfate", 250),
        ("solids", 500),
    ],
)
def test_secondary_levels(name: str, printed: float) -> None:
    """[cfr-143-3], as read."""
    (level,) = (each for each in nuisance(name) if each.source == "cfr-143-3")
    assert level.value == pytest.approx(printed * mg / L)


# The table of 40 CFR 141.62(b) as read.
MAXIMUM = {
    "nitrate": 10, "nitrite": 1, "fluoride": 4.0, "antimony": 0.006, "barium": 2,
    "beryllium": 0.004, "cadmium": 0.005, "chromium": 0.1, "cyanide": 0.2, "mercury": 0.002,
    "selenium": 0.05, "thallium": 0.002,
}  # fmt: skip


@pytest.mark.parametrize(("name", "printed"), MAXIMUM.items())
def test_maximum_levels(name: str, printed: float) -> None:
    """[cfr-141-62], as read: nitrate as nitrogen."""
    (level,) = (each for each in health(name) if each.source == "cfr-141-62")
    assert level.value == pytest.approx(printed * mg / L)
    assert level.kind == "enforceable"


def test_ph_levels() -> None:
    """[cfr-143-3]: 6.5 to 8.5."""
    assert [LEVELS[name][0].value for name in ("low_ph", "high_ph")] == [6.5, 8.5]


def test_strictest_is_the_lowest() -> None:
    """By hand: five of arsenic in two states, 0.08 of manganese by WHO, 10 as N under 50 as NO3."""
    assert strictest("arsenic").value == pytest.approx(5e-3 * mg / L)
    assert strictest("manganese").body == "WHO"
    assert strictest("nitrate").body == "US EPA"


def test_every_level_is_dated_and_told_for_what_it_is() -> None:
    """By reason: a level without its kind, its year or its source misleads."""
    for level in (each for many in LEVELS.values() for each in many):
        assert level.kind in KINDS
        assert 1970 < level.year < 2100
        assert level.seen in ("read", "second-hand", "from memory")
        assert level.source in SOURCES
        assert str(level.year) in level.words
        assert ("not confirmed" in level.words) == (level.seen != "read")


ROW = re.compile(r"\| (\w+) \| (.+?) \[@([\w-]+)\] \| ([^|]+) \| ([^|]+) \| (\d{4}), ([\w -]+) \|")
TOLD = {
    "law for supplies": "enforceable", "must act": "action", "advice": "advice", "goal": "nuisance",
}  # fmt: skip


def test_the_chapter_prints_the_same_levels() -> None:
    """The other way round: the table of the chapter, row by row, is the data and no more."""
    chapter = Path(__file__).resolve().parents[1] / "docs/treatment/report.md"
    printed = []
    for name, body, source, level, kind, year, seen in ROW.findall(chapter.read_text("utf-8")):
        like = kind_of(name)
        value = like.read(level, like.usual("us"))[0]
        printed.append((name, body, value, TOLD[kind], int(year), seen, source))
    held = [
        (name, each.body, each.value, each.kind, each.year, each.seen, each.source)
        for name, many in LEVELS.items()
        for each in many
        if not name.endswith("_ph") and not name.startswith("radon")
    ]
    assert printed == held
