"""Writes sw.js, which keeps the book on the reader's device, with the list of its files.

A page carries the hash of all that runs in it, so that a page of one edition is never put
into a window in which the scripts of another run.
"""

import hashlib
import json
import os
import re
from datetime import UTC, datetime
from pathlib import Path

from calc import EDITION

WORKER = Path(__file__).resolve().parents[1] / "docs" / "app" / "sw.js"
ENGINE = "runtime/"
SHELL = ("app/", "assets/", "search/", "index.html", "offline.html")
# What no page asks for: maps for debuggers, the theme's other languages, copies, downloads.
LEFT_OUT = re.compile(
    r".*\.(map|gz|br|pdf|epub|xml|txt)|.*/lunr/.*|404\.html|sw\.js|hosting/.*"
    rf"|{ENGINE}manifest\.json|(?!{ENGINE}).*\.zip"
)
PACKED = (".br", ".gz")
FORGET = """\
self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", () => self.registration.unregister());
"""


def mark(site: Path) -> None:
    """Mark the pages of a built site with the hash of the scripts and the engine. Repeatable."""
    program = hashlib.sha256()
    for path in book_files(site):
        if path.startswith((ENGINE, "app/")):
            program.update(path.encode() + (site / path).read_bytes())
    for page in site.rglob("*.html"):
        html = page.read_text(encoding="utf-8")
        bare = re.sub(r'<html data-program="\w*"', "<html", html, count=1)
        marked = bare.replace("<html", f'<html data-program="{program.hexdigest()[:12]}"', 1)
        page.write_text(marked, encoding="utf-8")


def write(site: Path) -> None:
    """Write the sw.js of a built site whose pages are marked."""
    book = {
        "edition": EDITION,
        "date": build_date(),
        "engine": ENGINE,
        "files": {path: described(site, path) for path in book_files(site)},
    }
    worker = WORKER.read_text(encoding="utf-8")
    (site / "sw.js").write_text(f"const BOOK = {json.dumps(book)};\n{worker}", encoding="utf-8")


def write_none(site: Path) -> None:
    """Write a sw.js that ends what another copy of the book has left behind on this address."""
    (site / "sw.js").write_text(FORGET, encoding="utf-8")


def book_files(site: Path) -> list[str]:
    every = (file.relative_to(site).as_posix() for file in site.rglob("*") if file.is_file())
    return sorted(path for path in every if not LEFT_OUT.fullmatch(path))


def kind(path: str) -> str:
    if path.startswith(ENGINE):
        return "engine"
    return "shell" if path.startswith(SHELL) else "page"


def build_date() -> str:
    """The day of the build, which a packager may set as reproducible-builds.org says."""
    given = os.environ.get("SOURCE_DATE_EPOCH")
    now = datetime.fromtimestamp(int(given), UTC) if given else datetime.now(UTC)
    return now.date().isoformat()


def described(site: Path, path: str) -> dict[str, str | int]:
    content = (site / path).read_bytes()
    copies = [site / f"{path}{ending}" for ending in PACKED]
    return {
        "kind": kind(path),
        "sha256": hashlib.sha256(content).hexdigest(),
        "bytes": len(content),
        "packed": min([len(content), *(each.stat().st_size for each in copies if each.exists())]),
    }
