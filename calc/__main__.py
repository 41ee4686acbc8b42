"""python -m calc [options] [NAME [input=value ...]]"""

import argparse
import json
import sys
import time
from collections.abc import Callable
from pathlib import Path

from calc import EDITION
from calc.calculators import calculator, names
from calc.errors import Refused
from calc.job import Job, kept, read_job, typed, write_job
from calc.model import UNIT_SETS, Case, Typed, solve
from calc.request import typed_of
from calc.views.backwards import backwards
from calc.views.chart import csv
from calc.views.data import answered, described
from calc.views.jobs import job_refusal_words, left_as
from calc.views.sure import sureness
from calc.views.text import calculator_help, case_text, refusals
from calc.views.tools import COUNTED
from calc.views.words import refusal_words

COURSEWORK = ("problems", "sheets", "keys", "package", "regrade")
EXAMPLES = """
Values are written as a person writes them; what is not given has its default:
  python -m calc outlet_setting inlet=5.2 outlet="20 L/min ± 3 %" limit=after
  python -m calc pail_flow pail="1 1/2 gal" runs="16 s; 17 s; 16.5 s" --working
  python -m calc outlet_setting --solve outlet margin="0.2 gpm"
  python -m calc tank_draw --job visit.json --units si --plus-minus
Coursework: python -m calc problems --help
"""


class Unusable(Exception):
    """What the command line was given and cannot use, in one line."""


def main(arguments: list[str] | None = None) -> int:
    """The command line. Returns the exit status: 0, or 2 for input that cannot be used."""
    words = sys.argv[1:] if arguments is None else arguments
    if words[:1] and words[0] in COURSEWORK:
        from calc.coursework.command import main as coursework

        return coursework(words)
    asked = _parser().parse_intermixed_args(arguments)
    try:
        print(_told(asked), end="")
    except Unusable as why:
        print(str(why).partition("\n")[0], file=sys.stderr)
        return 2
    return 0


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m calc",
        description="The calculators of Pail and Timer. Without a name, lists them.",
        epilog=EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
        add_help=False,
    )
    add = parser.add_argument
    add("name", nargs="?", help="calculator")
    add("values", nargs="*", metavar="input=value")
    add("-h", "--help", action="store_true", help="this; with a name, what it takes and gives")
    add("--units", choices=UNIT_SETS, default="us", help="units of the answers")
    add("--working", action="store_true", help="every step with its formula and numbers")
    add("--plus-minus", action="store_true", help="how sure each answer is")
    add("--solve", nargs=2, metavar=("INPUT", "OUTPUT=VALUE"), help="work backwards")
    add("--json", action="store_true", help="print JSON")
    add("--csv", action="store_true", help="print the figures of the chart")
    add("--job", type=Path, metavar="FILE", help="take values from a job file")
    add("--keep", type=Path, metavar="FILE", help="keep the given values in a job file")
    return parser


def _told(asked: argparse.Namespace) -> str:
    if asked.name is None:
        return _parser().format_help() if asked.help else _listing(asked.json)
    try:
        chosen = calculator(asked.name)
    except KeyError:
        raise Unusable(f"no calculator {asked.name!r}; there are {', '.join(names())}") from None
    if asked.help:
        return calculator_help(chosen)
    given = _worded(lambda: dict(typed_of(chosen, word) for word in asked.values))
    from_job = typed(_job(asked.job), chosen) if asked.job else {}
    case = solve(chosen, from_job | given, asked.units)
    if not case.answer:
        raise Unusable(refusals(case))
    if asked.keep:
        _keep(asked.keep, case, given)
    return _answered(case, asked)


def _answered(case: Case, asked: argparse.Namespace) -> str:
    if asked.solve:
        return _solved(case, *asked.solve)
    if asked.csv:
        return "".join(csv(case, chart) for chart in case.answer.charts) if case.answer else ""
    sures = sureness(case) if asked.plus_minus else {}
    if asked.json:
        return json.dumps(answered(case, sures), ensure_ascii=False, indent=1) + "\n"
    return case_text(case, sures, working=asked.working)


def _listing(as_json: bool) -> str:
    if as_json:
        return json.dumps(described(), ensure_ascii=False, indent=1) + "\n"
    every = [calculator(name) for name in names()]
    width = max(len(each.name) for each in every)
    return "".join(f"{each.name:{width}}  {each.question}\n" for each in every)


def _solved(case: Case, free: str, goal: str) -> str:
    wanted, equals, text = goal.partition("=")
    if not equals:
        raise Unusable(f"{goal}: write it as OUTPUT=VALUE")
    if case.calculator.simulation:
        raise Unusable(f"{case.calculator.name}: {COUNTED}")
    try:
        told = backwards(case, wanted.strip(), text, free)
    except KeyError as missing:
        raise Unusable(f"{missing.args[0]}: there is no such figure to solve for") from None
    except Refused as refused:
        raise Unusable(f"{refused.field}: {refusal_words(case, refused)}") from None
    return "\n".join(told.sentences).replace("\u00a0", " ") + "\n"


def _worded[T](what: Callable[[], T]) -> T:
    """What `what` returns; a refusal is told in words."""
    try:
        return what()
    except Refused as refused:
        raise Unusable(f"{refused.field}: {job_refusal_words(refused)}".lstrip(": ")) from None


def _job(file: Path) -> Job:
    try:
        text = file.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as why:
        raise Unusable(f"{file}: {why}") from None
    return _worded(lambda: read_job(text))


def _keep(file: Path, case: Case, given: dict[str, Typed]) -> None:
    """Keep what was typed, and what the calculator leaves for one place only."""
    if file.exists():
        job = _job(file)
    else:
        job = Job(name=file.stem, date=time.strftime("%Y-%m-%d"), handbook=EDITION)
    file.write_text(_worded(lambda: write_job(_with(job, case, given))), encoding="utf-8")


def _with(job: Job, case: Case, given: dict[str, Typed]) -> Job:
    now = time.strftime("%Y-%m-%dT%H:%M:%SZ", time.gmtime())
    for name, value in given.items():
        if case.calculator.input(name).once:
            job = kept(job, name, value, "measured", now, case.unit_set)
    for output, places in case.calculator.leaves.items():
        if len(places) == 1 and (left := left_as(case, output)):
            job = kept(job, places[0], left, case.calculator.name, now, case.unit_set)
    return job


if __name__ == "__main__":
    sys.exit(main())
