"""A response file: what a learner did, as the page hands it over and `regrade` reads it."""

import json
from collections.abc import Iterable

from calc.coursework.problem import ProblemSet
from calc.coursework.record import Sheet, Try

FORMAT, VERSION = "pail-and-timer responses", 1


def response(
    problem_set: ProblemSet,
    number: int,
    tries: Iterable[Try],
    made: Sheet,
    *,
    section: str,
    learner: str,
) -> str:
    """The file's text. `made` is the sheet after these tries."""
    return json.dumps(
        {
            "format": FORMAT,
            "version": VERSION,
            "set": problem_set.name,
            "revision": problem_set.revision,
            "section": section,
            "learner": learner,
            "variant": number,
            "code": made.code,
            "claimed": round(made.score, 4),
            "tries": [list(each) for each in tries],
        },
        ensure_ascii=False,
        indent=1,
    )
