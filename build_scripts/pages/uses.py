"""What the written chapters use: read from their Markdown, without MkDocs."""

import re
from pathlib import Path

from build_scripts.pages.markdown import listed

_SHOWN = re.compile(r"^```calc\n(\w+)", re.MULTILINE)
_TITLE = re.compile(r"^# (.+?)(?: \{.*\})?$", re.MULTILINE)


class Book:
    """The chapters by their path in docs/."""

    def __init__(self, docs: Path) -> None:
        self.chapters = {
            file.relative_to(docs).as_posix(): file.read_text(encoding="utf-8")
            for file in sorted(docs.rglob("*.md"))
        }

    def showing(self, name: str, root: str) -> str:
        """Links to the places where a calculator is live; `root` leads to docs/."""
        return listed(
            [
                f"[{title(text)}]({root}{path}#{name})"
                for path, text in self.chapters.items()
                if name in _SHOWN.findall(text)
            ]
        )

    def places(self) -> dict[str, str]:
        """The first page on which each calculator is live, by the calculator's name."""
        return {
            name: path.removesuffix(".md") + ".html"
            for path, text in reversed(self.chapters.items())
            for name in _SHOWN.findall(text)
        }

    def place(self, name: str) -> str:
        """The first chapter in which a calculator is live. KeyError if there is none."""
        for path, text in self.chapters.items():
            if name in _SHOWN.findall(text):
                return path
        raise KeyError(f"{name} is live in no chapter")


def title(markdown: str) -> str:
    """The title of a page, as its first heading says it."""
    found = _TITLE.search(markdown)
    if not found:
        raise ValueError(f"a page has no title: {markdown[:60]!r}")
    return found[1]
