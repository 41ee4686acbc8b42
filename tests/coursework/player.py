"""The player of the packages, run in Node."""

import json
import subprocess
from functools import lru_cache
from pathlib import Path
from typing import Any

from build_scripts.scorm.contents import as_script, book
from calc.coursework.sets import problem_set

SCRIPT = Path(__file__).parent / "player_in_node.mjs"


@lru_cache
def book_script(name: str, answers: bool = True) -> str:
    return as_script(book(problem_set(name), "", answers, "", 70))


def player(does: str, name: str = "", **asked: Any) -> Any:
    """What the player answers; `name` is the set that it is given."""
    told = {"does": does, "book": book_script(name) if name else None, **asked}
    done = subprocess.run(
        ["node", str(SCRIPT)], input=json.dumps(told), check=True, capture_output=True, text=True
    )
    return json.loads(done.stdout)
