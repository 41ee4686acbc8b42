"""The guide for instructors: its commands are ones that the programs take."""

import re
import shlex
from pathlib import Path

import pytest

from build_scripts.paper_sheets import __main__ as paper_sheets
from calc.coursework import command

GUIDE = Path(__file__).parents[2] / "docs/coursework/guide.md"
PARSERS = {"calc": command.parser, "build_scripts.paper_sheets": paper_sheets.parser}
COMMAND = re.compile(r"python3? -m (\S+) ((?:[^`\n\\]|\\\n)+)")


def commands() -> list[tuple[str, str]]:
    found = COMMAND.findall(GUIDE.read_text(encoding="utf-8"))
    return [
        (module, said.replace("\\\n", " "))
        for module, said in found
        if module in PARSERS and " " in said.strip()  # else it is named, not typed
    ]


def test_the_guide_has_commands() -> None:
    """By reason: else the next test would test nothing."""
    assert len(commands()) >= 4


@pytest.mark.parametrize(("module", "said"), commands())
def test_a_command_of_the_guide_is_taken(module: str, said: str) -> None:
    """Issue: set up in ten minutes. What the guide says to type is understood."""
    assert PARSERS[module]().parse_args(shlex.split(said)).set is not None
