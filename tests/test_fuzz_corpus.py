"""What nonsense has once found stays found; and `tests.fuzz` can find something."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import strategies as st

from calc.coursework.regrade import LARGEST
from tests.fuzz import fuzzed
from tests.fuzz_targets import TARGETS, Target

FOUND = json.loads(Path(__file__).with_name("fuzz_corpus.json").read_text(encoding="utf-8"))
LONG = [
    ("parser", ["flow", "gpm", "5gpm" * 100_000], "unreadable"),  # took a second and a half
    ("parser", ["flow", "gpm", "½" * 299], "unreadable"),
    ("job", "9" * 5_000, "job not an object"),
    ("responses", "9" * 5_000, "unreadable"),  # a ValueError that is no JSONDecodeError
    ("responses", "[" * LARGEST, "unreadable"),
    ("responses", " " * (LARGEST + 1), "unreadable"),
]


@pytest.mark.parametrize("found", FOUND, ids=lambda found: f"{found['target']}: {found['reason']}")
def test_what_was_once_found(found: dict[str, Any]) -> None:
    """By the reason that stands beside it."""
    assert TARGETS[found["target"]].check(found["input"]) == found["came"]


@pytest.mark.parametrize(("name", "long", "came"), LONG)
def test_what_is_long(name: str, long: Any, came: str) -> None:
    """By reason: too long for a file of finds."""
    assert TARGETS[name].check(long) == came


@pytest.mark.parametrize("name", TARGETS)
def test_inputs_can_be_drawn_and_pass(name: str) -> None:
    """A few seconds of what the command does for minutes, here from the same seed each time."""
    assert fuzzed(name, TARGETS[name], minutes=0, most=10, first=1)


def test_a_failure_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    """By reason: a search that cannot fail finds nothing."""

    def check(number: int) -> str:
        assert number < 1000
        return "small"

    assert not fuzzed("numbers", Target(st.integers(), check), minutes=0.2, most=1000)
    told = capsys.readouterr()
    assert "something failed" in told.out
    assert "told=1000" in told.err


def test_a_seed_goes_the_same_way() -> None:
    """By reason: a check that fails by chance tells nothing of the change that it checks."""

    def drawn() -> list[int]:
        met: list[int] = []

        def check(number: int) -> str:
            met.append(number)
            return "met"

        assert fuzzed("numbers", Target(st.integers(), check), minutes=0, most=30, first=1)
        return met

    assert drawn() == drawn()
