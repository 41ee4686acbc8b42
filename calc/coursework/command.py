"""python -m calc problems | sheets | keys | package | regrade"""

import argparse
import json
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

from calc.coursework.deck import VARIANTS, place, seat
from calc.coursework.lms import Defaults, exported
from calc.coursework.package import package
from calc.coursework.problem import ProblemSet
from calc.coursework.regrade import Response, Unreadable, as_csv, regraded, responses
from calc.coursework.sets import names, problem_set
from calc.coursework.sheets import key_text, sheet_text
from calc.coursework.topics import mapped

EXAMPLES = """
A learner's variant follows from the section and the learner's name or number; on a class list it
follows from the row, so that no two are alike:
  python -m calc problems balance
  python -m calc sheets balance --section "Monday" --learner 1017
  python -m calc keys balance --numbers 1-24,230
  python -m calc sheets balance --section "Monday" --list class.txt --word SECRET --out sheets
  python -m calc sheets balance --section "Monday" --count 24
  python -m calc package balance --without-answers > balance.json
  python -m calc regrade responses/*.json --csv grades.csv
  python -m calc regrade export.csv --set balance --section "Monday" --csv grades.csv
"""


def main(arguments: list[str]) -> int:
    """The command line of the coursework. Returns 0, or 2 for input that cannot be used."""
    asked = parser().parse_args(arguments)
    try:
        return int(asked.does(asked) or 0)
    except (Unreadable, OSError, UnicodeDecodeError) as why:
        _complain(why)
        return 2


def _complain(why: Exception) -> None:
    print(str(why).partition("\n")[0], file=sys.stderr)


def parser() -> argparse.ArgumentParser:
    """What the command line takes."""
    made = argparse.ArgumentParser(
        prog="python -m calc",
        description="Coursework: problem sets, sheets, keys and grades.",
        epilog=EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    commands = made.add_subparsers(required=True)
    listing = commands.add_parser("problems", help="the sets, or what is in one")
    listing.add_argument("set", nargs="?", type=named_set)
    listing.set_defaults(does=_problems)
    for name, help_, write in (
        ("sheets", "problems without answers", sheet_text),
        ("keys", "answers with the working", key_text),
    ):
        _add_sheets(commands.add_parser(name, help=help_), write)
    data = commands.add_parser("package", help="a set as JSON, for a package without Python")
    data.add_argument("set", type=named_set)
    data.add_argument("--without-answers", action="store_true", help="leave out what is right")
    _add_word(data)
    data.set_defaults(does=_package)
    _add_regrade(commands.add_parser("regrade", help="grade what came back again"))
    return made


def _add_regrade(again: argparse.ArgumentParser) -> None:
    again.add_argument("files", nargs="+", type=Path, help="response files; a CSV from an LMS")
    again.add_argument("--set", default="", help="the set of a CSV that does not name it")
    again.add_argument("--section", default="", help="the class of a CSV that does not name it")
    again.add_argument("--list", action="store_true", help="variants were dealt by a class list")
    again.add_argument("--csv", type=Path, metavar="FILE", help="write the grades there")
    _add_word(again)
    again.set_defaults(does=_regrade)


def _add_word(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--word", default="", help="a word of the school: shuffles decks of its own"
    )


def _add_sheets(
    parser: argparse.ArgumentParser, write: Callable[[ProblemSet, int, str], str]
) -> None:
    parser.add_argument("set", type=named_set)
    add_class(parser)
    parser.add_argument("--out", type=Path, metavar="FOLDER", help="a file for each variant")
    parser.set_defaults(does=_sheets, write=write)


def add_class(parser: argparse.ArgumentParser) -> None:
    """The options that say whose sheets are wanted, as `dealt` reads them."""
    who = parser.add_mutually_exclusive_group(required=True)
    who.add_argument("--numbers", type=_numbers, help="variants, as 1-24,230")
    who.add_argument("--learner", help="the variant dealt to one learner of the section")
    who.add_argument("--list", type=Path, metavar="FILE", help="a class list, a line for each")
    who.add_argument("--count", type=_count, help="so many learners, as rows of a class list")
    parser.add_argument("--section", default="", help="name of the class")
    _add_word(parser)


def named_set(name: str) -> ProblemSet:
    """The set of that name, for a command line."""
    try:
        return problem_set(name)
    except KeyError:
        raise argparse.ArgumentTypeError(
            f"no problem set {name!r}; there are {', '.join(names())}"
        ) from None


def _numbers(text: str) -> list[int]:
    numbers = list[int]()
    for part in text.split(","):
        first, dash, last = part.partition("-")
        if not first.isdecimal() or (dash and not last.isdecimal()):
            raise argparse.ArgumentTypeError(f"{text!r} is no list of numbers as 1-24,230")
        numbers += range(int(first), int(last or first) + 1)
        if not all(1 <= number <= VARIANTS for number in numbers[-1:]) or numbers[0] < 1:
            raise argparse.ArgumentTypeError(f"variants run from 1 to {VARIANTS}")
    return list(dict.fromkeys(numbers))


def _count(text: str) -> int:
    if not text.isdecimal() or not 1 <= int(text) <= VARIANTS:
        raise argparse.ArgumentTypeError(f"{text!r} is no number from 1 to {VARIANTS}")
    return int(text)


def _problems(asked: argparse.Namespace) -> None:
    for each in [asked.set] if asked.set else map(problem_set, names()):
        minutes = sum(problem.minutes for problem in each.problems)
        print(f"{each.name}  {each.title} ({each.chapter}), {minutes} min, {each.revision}")
        if asked.set:
            for problem in each.problems:
                print(
                    f"  {problem.name}  {problem.form}, level {problem.level}, "
                    f"{problem.minutes} min. {problem.objective}"
                )
            for topic in mapped(each.name):
                print(f"  maps to  {topic.code} {topic.words} [{topic.list}]")


def dealt(asked: argparse.Namespace) -> Iterator[tuple[str, int]]:
    """Whose sheet, by the label the instructor gave, and its variant."""
    if asked.numbers:
        yield from (("", number) for number in asked.numbers)
    elif asked.learner:
        yield asked.learner, seat(asked.section, asked.learner)
    elif asked.count:
        yield from (("", place(asked.section, row)) for row in range(asked.count))
    else:
        for row, label in enumerate(_labels(asked.list)):
            yield label, place(asked.section, row)


def _labels(file: Path) -> list[str]:
    # a spreadsheet saves a list with a mark before its first letter
    lines = file.read_text(encoding="utf-8-sig").splitlines()
    labels = [line.strip() for line in lines if line.strip()]
    if not 1 <= len(labels) <= VARIANTS:
        raise Unreadable(f"{file}: {len(labels)} lines; a class list has 1 to {VARIANTS}")
    return labels


def _sheets(asked: argparse.Namespace) -> None:
    for learner, number in dealt(asked):
        text = (f"{learner}\n" if learner else "") + asked.write(asked.set, number, asked.word)
        if asked.out:
            asked.out.mkdir(parents=True, exist_ok=True)
            file = asked.out / f"{asked.set.name}-{number:03d}-{asked.write.__name__[:-5]}.txt"
            file.write_text(text, encoding="utf-8")
        else:
            print(text)


def _package(asked: argparse.Namespace) -> None:
    data = package(asked.set, asked.word, answers=not asked.without_answers)
    print(json.dumps(data, ensure_ascii=False, separators=(",", ":")))


def _regrade(asked: argparse.Namespace) -> int:
    """Grades what can be read; 2 if a file could not."""
    many, unread = list[Response](), 0
    for file in asked.files:
        try:
            many += _read(file, asked)
        except Unreadable as why:
            _complain(why)
            unread += 1
    text = as_csv(regraded(many, asked.word, dealt=not asked.list))
    if asked.csv:
        asked.csv.write_text(text, encoding="utf-8")
    else:
        print(text, end="")
    return 2 if unread else 0


def _read(file: Path, asked: argparse.Namespace) -> list[Response]:
    if file.suffix.lower() == ".csv":
        return list(exported(file, Defaults(asked.set, asked.section, asked.word)))
    return list(responses(file))
