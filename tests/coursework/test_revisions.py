"""An answer that moves without a new revision makes last term's keys wrong.

`python -m tests.coursework.test_revisions` records the answers of today's revisions anew.
"""

import json
import zlib
from pathlib import Path

from calc.coursework.problem import ProblemSet
from calc.coursework.record import sheet
from tests.coursework.given import SETS

RECORDED = Path(__file__).with_name("revisions.json")
SHEETS = (1, 57, 230, 400)


def told(problems: ProblemSet) -> dict[str, str]:
    """A set's revision, and a checksum over the check codes of some of its sheets."""
    codes = "".join(sheet(problems, number).code for number in SHEETS)
    return {"revision": problems.revision, "sum": f"{zlib.crc32(codes.encode()):08x}"}


def test_answers_move_with_their_revision() -> None:
    """What was recorded: the same revision has the same questions and answers."""
    recorded = json.loads(RECORDED.read_text(encoding="utf-8"))
    assert {*recorded} == {each.name for each in SETS}
    for each in SETS:
        now = told(each)
        if now["revision"] == recorded[each.name]["revision"]:
            assert now == recorded[each.name], (
                f"{each.name}: questions or answers have changed. Give the set a new revision, "
                "and say so in the change log"
            )


if __name__ == "__main__":
    made = {each.name: told(each) for each in SETS}
    RECORDED.write_text(json.dumps(made, indent=1) + "\n", encoding="utf-8")
