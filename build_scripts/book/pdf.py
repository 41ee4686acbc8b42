"""The printed edition: Chromium lays the book out, and a further round writes page numbers.

Chromium knows no contents with page numbers. It does name every place that a link leads to, so
the pages of the last round are read from the file and written into the next, until none moves.
"""

import os
import subprocess
from pathlib import Path
from tempfile import TemporaryDirectory
from xml.etree.ElementTree import Element

import pikepdf
from pypdf import PdfReader

from build_scripts.book.tree import as_xhtml
from build_scripts.book.whole import Book, document
from build_scripts.environment import CHROMIUM

ROUNDS = 6
SECONDS = 120


def write(book: Book, target: Path, paper: str) -> None:
    """Print the book on `paper`, "Letter" or "A4". RuntimeError if its pages never settle."""
    pages: dict[str, int] = {}
    with TemporaryDirectory() as folder:
        source, printed = Path(folder, "book.xhtml"), Path(folder, "book.pdf")
        for _ in range(ROUNDS):
            whole = document(book, pages, paper)
            source.write_text(as_xhtml(whole), encoding="utf-8")
            print_page(source, printed)
            found = places(printed)
            if lost := targets(whole) - set(found):
                raise RuntimeError(f"Links of the book lead nowhere: {sorted(lost)}")
            if found == pages:
                pack(printed, target)
                return
            pages = found
    raise RuntimeError(f"The pages of the book still moved after {ROUNDS} rounds.")


def print_page(source: Path, target: Path) -> None:
    """Let Chromium print a file as it stands, tagged and with an outline."""
    flags = ("--headless", "--no-pdf-header-footer", "--generate-pdf-document-outline",
             f"--user-data-dir={source.parent / 'browser'}")  # fmt: skip
    # Chromium refuses its sandbox to root.
    as_root = ["--no-sandbox"] if os.geteuid() == 0 else []
    command = [str(CHROMIUM), *flags, *as_root, f"--print-to-pdf={target}", source.as_uri()]
    target.unlink(missing_ok=True)
    run = subprocess.run(command, capture_output=True, text=True, timeout=SECONDS, check=False)
    if not target.exists():
        raise RuntimeError(f"Chromium printed nothing: {run.stderr[-500:]}")


def pack(printed: Path, target: Path) -> None:
    """Chromium writes a quarter of a million small objects as they are: a third as much packed."""
    with pikepdf.open(printed) as whole:
        whole.save(target, object_stream_mode=pikepdf.ObjectStreamMode.generate)


def places(pdf: Path) -> dict[str, int]:
    """The page, counted from 1, of every place that a link leads to."""
    reader = PdfReader(pdf)
    return {
        name.removeprefix("/"): number + 1
        for name, place in reader.named_destinations.items()
        if (number := reader.get_destination_page_number(place)) is not None
    }


def targets(whole: Element) -> set[str]:
    hrefs = (a.get("href", "") for a in whole.iter("a"))
    return {href.removeprefix("#") for href in hrefs if href.startswith("#")}
