"""Options for what this handbook does not size: each dated, sourced, and with its caution."""

import re
from pathlib import Path

import pytest

from build_scripts.options import table
from calc.other_treatment import OPTIONS, READ, SUBSTANCES, UNSOURCED, options
from calc.physics.iron_removal import CHLORINE
from calc.sources import SOURCES
from tests.views.reading import read

CHAPTER = Path(__file__).resolve().parents[1] / "docs/treatment/other.md"


def test_every_option_has_a_source_or_says_it_has_none() -> None:
    """The rule for numbers people act on; a year for the look-up of all."""
    assert re.fullmatch(r"[A-Z][a-z]+ 20\d\d", READ)
    for option in OPTIONS:
        assert option.source in SOURCES or option.source in UNSOURCED
        assert all(option)
        assert option.caution.endswith(".")


def test_the_chapter_has_a_table_of_each() -> None:
    """The other way round: the fences of the chapter are the data and no more."""
    text = CHAPTER.read_text(encoding="utf-8")
    assert tuple(re.findall(r"^```options\n(\w+)\n```", text, re.MULTILINE)) == SUBSTANCES


@pytest.mark.parametrize("substance", SUBSTANCES)
def test_the_table_is_whole(substance: str) -> None:
    """The strict reader: a row for each option, its caution and source in it, the day over it."""
    drawn = read(table(substance, "../")).one("div", "options")
    rows = drawn.one("tbody").all("tr")
    assert READ in drawn.one("caption").text
    assert len(rows) == len(options(substance))
    for row, option in zip(rows, options(substance), strict=True):
        assert option.caution in row.text
        cell = row.one("td")
        assert bool(cell.all("a")) == (option.source in SOURCES)
        if option.source in UNSOURCED:
            assert cell.text.endswith(f"({option.source})")


def test_levels_stand_over_what_has_them() -> None:
    """[cfr-141-62] and the others: body, figure and kind; sulfide has none."""
    told = read(table("arsenic", "../")).one("ul").text
    assert "US EPA: 10 µg/L" in told
    assert "not for a private well" in told
    assert "No body has set" in read(table("sulfide", "../")).text


def test_unknown_is_refused() -> None:
    """By reason: a misspelled fence must stop the build."""
    with pytest.raises(KeyError, match="argon"):
        options("argon")


def test_chlorine_for_sulfide() -> None:
    """Atomic weights: one or four moles of chlorine for each of sulfide, H2S 34.08 g/mol."""
    printed = re.search(r"([\d.]+) parts of chlorine .* ([\d.]+) to sulfate", OPTIONS[15].caution)
    assert printed
    assert float(printed[1]) == pytest.approx(CHLORINE / 34.08e-3, abs=0.05)
    assert float(printed[2]) == pytest.approx(4 * CHLORINE / 34.08e-3, abs=0.05)
