"""Prints the problem sheets of a class, and their keys into a folder of their own:

python3 -m build_scripts.paper_sheets SET --list class.txt --section "Monday" --out printed
"""

import argparse
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from xml.etree.ElementTree import Element

from pypdf import PdfReader

from build_scripts.book.pdf import print_page
from build_scripts.book.tree import as_xhtml
from build_scripts.environment import ROOT
from build_scripts.formulas import teach
from build_scripts.paper_sheets import key, paper, sheet
from calc.coursework.command import add_class, dealt, named_set
from calc.coursework.regrade import Unreadable

PAPERS = ("Letter", "A4")


def main(arguments: list[str] | None = None) -> int:
    """Two PDFs. Returns 0, or 2 for what cannot be printed or must not lie there."""
    asked = parser().parse_args(arguments)
    try:
        if why := public(asked.out.resolve()):
            raise Unreadable(f"{asked.out}: {why}; keys must not lie there")
        copies = paper.copies(asked.set, list(dealt(asked)), asked.word)
    except (Unreadable, OSError, UnicodeDecodeError) as why:
        print(why, file=sys.stderr)
        return 2
    teach()
    _print(_target(asked, "keys"), key.document(asked.set, asked.section, copies, asked.paper))
    sheets = _target(asked, "sheets")
    _print(sheets, sheet.document(asked.set, asked.section, copies, asked.paper))
    if odd := _odd(sheets, copies):
        _print(sheets, sheet.document(asked.set, asked.section, copies, asked.paper, odd))
    return 0


def _target(asked: argparse.Namespace, kind: str) -> Path:
    target: Path = asked.out / kind / f"{asked.set.name}-{asked.paper.lower()}.pdf"
    target.parent.mkdir(parents=True, exist_ok=True)
    print(target)
    return target.resolve()


def _print(target: Path, whole: Element) -> None:
    with TemporaryDirectory() as folder:
        source = Path(folder, "class.xhtml")
        source.write_text(as_xhtml(whole), encoding="utf-8")
        print_page(source, target)


def _odd(printed: Path, copies: list[paper.Copy]) -> set[int]:
    """The variants whose sheets end on a front."""
    pages = [page.extract_text() for page in PdfReader(printed).pages]
    return {
        each.number
        for each in copies
        if sum(f"variant {each.number} of" in text for text in pages) % 2
    }


def public(folder: Path) -> str:
    """Why what lies in a folder is given to everybody; empty if it is not."""
    if folder.is_relative_to(ROOT / "docs"):
        return "the build publishes this folder"
    if any((each / "sw.js").exists() for each in (folder, *folder.parents)):
        return "this is a built handbook"
    return ""


def parser() -> argparse.ArgumentParser:
    """What the command line takes."""
    made = argparse.ArgumentParser(prog="python -m build_scripts.paper_sheets",
                                     description="Problem sheets and keys as PDF.")  # fmt: skip
    made.add_argument("set", type=named_set)
    add_class(made)
    made.add_argument("--paper", choices=PAPERS, default="Letter")
    made.add_argument("--out", type=Path, required=True, metavar="FOLDER",
                        help="gets a folder sheets and a folder keys")  # fmt: skip
    return made


if __name__ == "__main__":
    sys.exit(main())
