"""Finds what is said to be from memory, second-hand or common practice, where it is said."""

import ast
import re
import tokenize
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple

from markdown.extensions.toc import slugify, unique

PHRASE = re.compile(
    r"from memory|common practice|common size|second-hand|judgement|\ba guess\b"
    r"|(?<!is )\bno source\b",
    re.IGNORECASE,
)
_SENTENCE = re.compile(r"(?<=[.])\s+(?=[^a-z])")
_SHORT = 40  # letters: a sentence so short says nothing without the one before it
_FENCE = re.compile(r"^( *)```.*?^\1```", re.MULTILINE | re.DOTALL)
_HEADING = re.compile(r"#+ +(?P<said>.+?)(?: +\{.*?#(?P<id>[\w-]+).*?\})?")
_OWN_BLOCK = re.compile(r"\s*(?:[-|!:*]|\d+\.)")


class Said(NamedTuple):
    """A sentence of a chapter, and the heading and address under which it stands.

    id -- empty under the title: there the page itself is the address
    """

    heading: str
    id: str
    words: str


def doubted(text: str) -> list[str]:
    """The sentences of one paragraph that hold a phrase, a short one with that before it.

    >>> doubted("All is well. A float lets go three feet higher, from memory. So be it.")
    ['A float lets go three feet higher, from memory.']
    """
    every = _SENTENCE.split(re.sub(r"\s+", " ", text).strip())
    return [
        f"{before} {each}".strip() if len(each) < _SHORT else each
        for before, each in pairwise(["", *every])
        if PHRASE.search(each)
    ]


def in_chapter(markdown: str) -> Iterator[Said]:
    """Sentences of a chapter, fences left out."""
    used: set[str] = set()
    at, id_ = "", ""
    for block in _blocks(_FENCE.sub("", markdown)):
        if found := _HEADING.fullmatch(block):
            at = found["said"]
            id_ = found["id"] or unique(slugify(plain(at), "-"), used)
            used.add(id_)
            if block.startswith("# "):
                id_ = ""
        else:
            yield from (Said(plain(at), id_, plain(each)) for each in doubted(block))


def _blocks(markdown: str) -> Iterator[str]:
    """Headings, paragraphs, and each list item or row of a table alone."""
    block = ""
    for line in [*markdown.splitlines(), ""]:
        if not line.strip() or line.startswith("#") or _OWN_BLOCK.match(line):
            yield block.strip()
            block = ""
        block += f" {line.strip()}"
        if line.startswith("#"):
            yield block.strip()
            block = ""
    yield block.strip()


def plain(markdown: str) -> str:
    """Running text without links, slant, or the signs of a list or a table; citations stay."""
    text = re.sub(r"\[([^\]@]+)\]\([^)]*\)", r"\1", markdown)
    text = re.sub(r"[*`]|^(?:[-:]|\d+\.) +", "", text)
    return re.sub(r"\s*\|\s*", "; ", text.strip(" |"))


@cache  # a writer changes chapters, and waits
def in_module(file: Path) -> list[str]:
    """Sentences in the texts and comments of a module of ours, each once."""
    source = file.read_text(encoding="utf-8")
    found = [each for text in (*_texts(source), *_comments(file)) for each in doubted(text)]
    return list(dict.fromkeys(found))


def _texts(source: str) -> Iterable[str]:
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield from node.value.split("\n\n")


def _comments(file: Path) -> Iterator[str]:
    """Comments, those on lines of their own that follow each other as one."""
    whole, before = "", -1
    with file.open("rb") as lines:
        for token in tokenize.tokenize(lines.readline):
            if token.type == tokenize.COMMENT:
                alone = token.line.lstrip().startswith("#")
                if token.start[0] != before + 1 or not alone:
                    yield whole
                    whole = ""
                whole += token.string.replace("#", " ", 1)
                before = token.start[0] if alone else -1
    yield whole
