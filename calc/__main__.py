"""python -m calc [--json] [--units us|si] [NAME [input=value ...]]"""

import argparse
import json
import sys

from calc.calculators import calculator, names
from calc.errors import Refused
from calc.model import UNIT_SETS, Case
from calc.request import case_of
from calc.views.data import answered, declaration
from calc.views.text import case_text, inputs_help, refusals
from calc.views.words import REASONS


def main(arguments: list[str] | None = None) -> int:
    """The command line. Returns the exit status: 0, or 2 for input that cannot be used."""
    parser = argparse.ArgumentParser(
        prog="python -m calc",
        description="The calculators of the handbook. Without a name, lists them.",
        epilog='Values as a person writes them: inlet=5.2 inlet="20 L/min" pail="1 1/2 gal" '
        'runs="53 s; 54 s". What is not given has its default.',
    )
    parser.add_argument("name", nargs="?", help="calculator")
    parser.add_argument("values", nargs="*", metavar="input=value")
    parser.add_argument("--json", action="store_true", help="print JSON")
    parser.add_argument("--units", choices=UNIT_SETS, default="us", help="units of the answers")
    parser.add_argument("--inputs", action="store_true", help="list the calculator's inputs")
    asked = parser.parse_intermixed_args(arguments)
    if asked.name is None:
        print(_listing(asked.json))
        return 0
    try:
        case = case_of([asked.name, *asked.values], asked.units)
    except KeyError:
        return _refuse(f"no calculator {asked.name!r}; there are {', '.join(names())}")
    except Refused as refused:
        return _refuse(f"{refused.field}: {REASONS[refused.reason]}")
    if asked.inputs:
        print(inputs_help(case))
        return 0
    return _tell(case, asked.json)


def _listing(as_json: bool) -> str:
    every = [calculator(name) for name in names()]
    if as_json:
        return json.dumps([declaration(each) for each in every], ensure_ascii=False, indent=1)
    width = max(len(each.name) for each in every)
    return "\n".join(f"{each.name:{width}}  {each.question}" for each in every)


def _tell(case: Case, as_json: bool) -> int:
    if not case.answer:
        return _refuse(refusals(case).partition("\n")[0])
    if as_json:
        print(json.dumps(answered(case), ensure_ascii=False, indent=1))
    else:
        print(case_text(case), end="")
    return 0


def _refuse(why: str) -> int:
    print(why, file=sys.stderr)
    return 2


if __name__ == "__main__":
    sys.exit(main())
