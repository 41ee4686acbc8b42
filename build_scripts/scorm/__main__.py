"""Makes packages for an LMS: python3 -m build_scripts.scorm FOLDER [SET ...]"""

import argparse
import sys
from pathlib import Path

from build_scripts.scorm import zipped
from build_scripts.scorm.contents import MASTERY
from calc.coursework.sets import names, problem_set


def main() -> int:
    parser = argparse.ArgumentParser(prog="python3 -m build_scripts.scorm", description=__doc__)
    parser.add_argument("folder", type=Path, help="where the zips go; never below site/")
    parser.add_argument("sets", nargs="*", metavar="SET", help="all where none is named")
    parser.add_argument("--word", default="", help="a word of the school: decks of its own")
    parser.add_argument("--section", default="", help="name of the class; deals the variants")
    parser.add_argument("--mastery", type=float, default=MASTERY, help="per cent, %(default)g")
    parser.add_argument("--without-answers", action="store_true", help="the instructor grades")
    asked = parser.parse_args()
    if "site" in asked.folder.resolve().parts:
        parser.error("a package holds what is right: it does not go into the site")
    if unknown := sorted({*asked.sets} - {*names()}):
        parser.error(f"no problem set {', '.join(unknown)}; there are {', '.join(names())}")
    asked.folder.mkdir(parents=True, exist_ok=True)
    for name in asked.sets or names():
        made = zipped(
            problem_set(name),
            word=asked.word,
            section=asked.section,
            mastery=asked.mastery,
            answers=not asked.without_answers,
        )
        file = asked.folder / f"{name}.zip"
        file.write_bytes(made)
        print(f"{file}  {len(made) / 1000:.0f} kB")
    return 0


if __name__ == "__main__":
    sys.exit(main())
