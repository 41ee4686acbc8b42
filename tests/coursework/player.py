"""Packages of the sets, and their player run in Node."""

import json
import subprocess
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from typing import Any
from zipfile import ZipFile

from build_scripts.scorm import zipped
from calc.coursework.sets import problem_set

SCRIPT = Path(__file__).parent / "player_in_node.mjs"


@lru_cache
def packed(name: str) -> bytes:
    """The package of a set, made once for all tests."""
    return zipped(problem_set(name))


def member(name: str, file: str) -> str:
    """A text file of the package of a set."""
    with ZipFile(BytesIO(packed(name))) as archive:
        return archive.read(file).decode()


def player(does: str, name: str = "", **asked: Any) -> Any:
    """What the player answers; `name` is the set that it is given."""
    told = {"does": does, "book": member(name, "set.js") if name else None, **asked}
    done = subprocess.run(
        ["node", str(SCRIPT)], input=json.dumps(told), check=True, capture_output=True, text=True
    )
    return json.loads(done.stdout)
