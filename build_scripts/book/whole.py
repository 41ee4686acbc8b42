"""The book in one document: title page, contents, chapters, index."""

from collections.abc import Iterator, Mapping
from copy import deepcopy
from pathlib import Path
from typing import Any, NamedTuple
from xml.etree.ElementTree import Element

from build_scripts.book import fills, index
from build_scripts.book.gather import Chapter, chapters, settings
from build_scripts.book.tree import classes, inside, is_heading, make, read, text
from build_scripts.offline import build_date
from calc import EDITION

STYLE = Path(__file__).resolve().parents[1] / "book.css"
PAPER_STYLE = Path(__file__).with_name("paper.css")
LANGUAGE = "en"
COLUMN = 30  # letters of a formula that a column of the reference pages holds
LIMITS = "limits-of-use"  # the section of the first page that the title page repeats


class Book(NamedTuple):
    title: str
    subtitle: str
    licence: Element
    date: str
    chapters: list[Chapter]
    entries: index.Index


def book(site: Path) -> Book:
    """The book of a built handbook."""
    said: dict[str, Any] = settings()
    found = chapters(site, said["nav"])
    licence = next(read(said["copyright"]).iter("body"))
    return Book(said["site_name"], said["site_description"], licence, build_date(), found,
                index.index(found))  # fmt: skip


def document(book: Book, pages: Mapping[str, int], paper: str) -> Element:
    """The whole book for printing, with the page numbers known so far."""
    heads = "".join(_running_head(group, place) for place, group in enumerate(_groups(book)))
    sheets = "".join(sheet.read_text(encoding="utf-8") for sheet in (STYLE, PAPER_STYLE))
    edition = f'"edition {EDITION} of {book.date}"'
    foot = f"@bottom-left {{ content: {edition}; }}"
    style = f"{sheets}{heads}@page {{ size: {paper}; {foot} }}"
    body = make("body", title_page(book), contents(book, pages), class_="printed")
    for place, group in enumerate(_groups(book)):
        sections = [_with_pages(each, pages) for each in group]
        body.append(make("div", *sections, class_=_kind(group), style=f"page: group{place}"))
    body.append(index.drawn(book.entries, pages))
    fills.as_lines(body)
    head = make("head", make("title", book.title), make("style", style))
    return make("html", head, body, lang=LANGUAGE)


def title_page(book: Book) -> Element:
    """Name, edition, licence, and what the book is not."""
    return make(
        "section",
        make("p", book.title, class_="title"),
        make("p", book.subtitle, class_="subtitle"),
        make("p", f"Edition {EDITION}, {book.date}", class_="edition"),
        make("div", make("p", "Limits of use", class_="opened"), *limits(book), class_="limits"),
        make("p", *inside(book.licence), class_="licence"),
        class_="title-page",
    )


def limits(book: Book) -> Iterator[Element]:
    """What stands under the heading of that section. StopIteration if it is not there."""
    first = book.chapters[0]
    below = iter(first.body)
    next(each for each in below if each.get("id") == f"{first.slug}.{LIMITS}")
    for each in below:
        if is_heading(each):
            return
        yield deepcopy(each)


def contents(book: Book, pages: Mapping[str, int]) -> Element:
    """Chapters and their sections with page numbers."""
    rows = []
    for chapter in book.chapters:
        top = next(each for each in chapter.body.iter() if is_heading(each))
        below = [each for each in chapter.body if is_heading(each) and each is not top]
        rows.append(_line(top, pages, f"depth-{chapter.depth}"))
        if not chapter.depth:
            level = f"h{int(top.tag[1]) + 1}"
            rows += [_line(each, pages, "section") for each in below if each.tag == level]
    rows.append(_line(make("h1", "Index", id=index.OWN_ID), pages, "depth-0"))
    heading = make("h1", "Contents", class_="chapter")
    return make("section", heading, make("ul", *rows), class_="contents")


def _line(heading: Element, pages: Mapping[str, int], class_: str) -> Element:
    id_ = heading.attrib["id"]
    number = make("span", str(pages.get(id_, "00")), class_="page")
    return make("li", make("a", make("span", text(heading)), " ", number, href=f"#{id_}"),
                class_=class_)  # fmt: skip


def _groups(book: Book) -> Iterator[list[Chapter]]:
    """Chapters that share a running head: a heading over several goes with the first of them."""
    group: list[Chapter] = []
    for chapter in book.chapters:
        if group and group[-1].path and chapter.depth < 2:
            yield group
            group = []
        group.append(chapter)
    yield group


def _kind(group: list[Chapter]) -> str:
    return "chapters reference" if group[-1].path.startswith(index.REFERENCE) else "chapters"


def _running_head(group: list[Chapter], place: int) -> str:
    short = group[-1 if len(group) < 2 or group[0].path else 1].short.replace('"', r"\"")
    return f'@page group{place} {{ @top-right {{ content: "{short}"; }} }}\n'


def _with_pages(chapter: Chapter, pages: Mapping[str, int]) -> Element:
    """The chapter with the page behind each link that leads to another one."""
    body = deepcopy(chapter.body)
    for each in list(body.iter()):
        if "elsewhere" in classes(each):
            page = pages.get(each.attrib["href"].removeprefix("#"), "00")
            each.append(make("span", f" (p.\u00a0{page})", class_="at"))
        if each.tag == "math" and chapter.path.startswith(index.REFERENCE):
            each.set("style", f"font-size: {min(100, 100 * COLUMN // _breadth(each))}%")
        if each.get("role") == "math":  # Chromium's tags know a label only on a picture
            each.set("role", "img")
    return body


def _breadth(formula: Element) -> int:
    """About how many letters wide a formula is: of a fraction only the longer part counts."""
    parts = [_breadth(each) for each in formula]
    across = max(parts) if formula.tag == "mfrac" else sum(parts)
    return across + len((formula.text or "").strip())
