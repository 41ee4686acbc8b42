"""Writes the printed edition and the EPUB of a built handbook:

python3 -m build_scripts.book SITE OUT_FOLDER
"""

import sys
from pathlib import Path

from build_scripts.book import epub, pdf, whole

PAPERS = ("Letter", "A4")


def main() -> None:
    site, out = map(Path, sys.argv[1:])
    out.mkdir(parents=True, exist_ok=True)
    book = whole.book(site)
    epub.write(book, out / "pail-and-timer.epub")
    for paper in PAPERS:
        pdf.write(book, out / f"pail-and-timer-{paper.lower()}.pdf", paper)


if __name__ == "__main__":
    main()
