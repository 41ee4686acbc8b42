"""The alphabetical index: headings, the labels of figures, and words of the trade."""

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from itertools import count, groupby
from pathlib import Path
from typing import NamedTuple
from xml.etree.ElementTree import Element

from build_scripts.book.gather import Chapter
from build_scripts.book.tree import classes, having, is_heading, make, text

TERMS = Path(__file__).with_name("terms.txt")
REFERENCE = ("reference/", "sources.html")
OWN_ID = "alphabetical"
RUNNING = {"p", "li", "td", "dd", "figcaption", "em", "strong", "a", "span"}

type Index = Mapping[str, list[str]]  # for each entry the ids of its places


class Finder(NamedTuple):
    """One pattern for all terms; its group n finds forms of term n."""

    pattern: re.Pattern[str]
    terms: list[str]


def terms() -> list[list[str]]:
    """The words to be found, each with its other forms behind it."""
    lines = (line.strip() for line in TERMS.read_text(encoding="utf-8").splitlines())
    every = (line.split("|") for line in lines if line and not line.startswith("#"))
    return [[form.strip() for form in forms] for forms in every]


def _finder() -> Finder:
    every = terms()
    groups = "|".join(f"({'|'.join(map(_form, forms))})" for forms in every)
    pattern = re.compile(rf"\b(?:{groups})(?:e?s)?\b", re.IGNORECASE)
    return Finder(pattern, ["", *(forms[0] for forms in every)])


def _form(said: str) -> str:
    return r"\s+".join(map(re.escape, said.split()))


def index(chapters: list[Chapter]) -> Index:
    """The index of the book. Words found get ids that a page number can be asked for."""
    found: defaultdict[str, list[str]] = defaultdict(list)
    ids = (f"at.{n}" for n in count(1))
    for chapter in chapters:
        is_reference = chapter.path.startswith(REFERENCE)
        if not chapter.path:  # a heading over several chapters
            continue
        for entry, element in _named(chapter, is_reference):
            element.set("id", element.get("id") or next(ids))
            found[entry].append(element.attrib["id"])
        if not is_reference:
            for term, span in _terms(chapter.body):
                span.set("id", next(ids))
                found[term].append(span.attrib["id"])
    return _merged(found)


def _named(chapter: Chapter, is_reference: bool) -> Iterator[tuple[str, Element]]:
    """Headings of chapters, and labels of figures wherever they name one."""
    for each in chapter.body.iter():
        if is_heading(each):
            names = not is_reference or "chapter" in classes(each)
        elif each.tag == "dt":  # one with a formula explains a letter
            names = each.find(".//math") is None
            names &= not is_reference or chapter.path == "reference/words.html"
        else:
            names = "label" in classes(each)
        if names:
            yield re.sub(r"^\d+\. ", "", text(each)), each  # a step of a visit has its number


def _merged(found: Mapping[str, list[str]]) -> Index:
    """Entries that differ only in their capitals are one."""
    merged: dict[str, tuple[str, list[str]]] = {}
    for entry, ids in found.items():
        merged.setdefault(entry.casefold(), (entry[:1].upper() + entry[1:], []))[1].extend(ids)
    return dict(merged[key] for key in sorted(merged, key=_sorting))


def _sorting(entry: str) -> str:
    return re.sub(r"[^\w ]", "", entry)


def _terms(body: Element) -> Iterator[tuple[str, Element]]:
    """Each term once in a section, with the new element that holds it.

    Not in the table behind a chart: paper does not show it, so no page could be told.
    """
    finder = _finder()
    seen: set[str] = set()
    unseen = {cell for chart in having(body, "calc-chart") for cell in chart.iter("td")}
    for parent in list(body.iter()):
        if is_heading(parent):
            seen = set()
        if parent.tag in RUNNING and parent not in unseen:
            for child in (None, *parent):
                yield from _marked(parent, child, finder, seen)


def _marked(
    parent: Element, child: Element | None, finder: Finder, seen: set[str]
) -> Iterator[tuple[str, Element]]:
    """Put the terms of one stretch of text that were not seen before into spans.

    The stretch is the text before the first child, or that behind `child`.
    """
    stretch = (parent.text if child is None else child.tail) or ""
    place = 0 if child is None else list(parent).index(child) + 1
    end, before = 0, child
    for match in finder.pattern.finditer(stretch):
        term = finder.terms[match.lastindex or 0]
        if term in seen:
            continue
        seen.add(term)
        _set_text(parent, before, stretch[end : match.start()])
        before = make("span", match[0])
        parent.insert(place, before)
        place, end = place + 1, match.end()
        yield term, before
    _set_text(parent, before, stretch[end:])


def _set_text(parent: Element, before: Element | None, said: str) -> None:
    if before is None:
        parent.text = said
    else:
        before.tail = said


def drawn(entries: Index, pages: Mapping[str, int]) -> Element:
    """The index as a chapter; a place whose page is not known yet stands as 00."""
    body = make("section", make("h1", "Index", class_="chapter", id=OWN_ID), class_="index")
    for initial, some in groupby(entries, lambda entry: _sorting(entry)[:1].upper()):
        rows = (make("li", f"{entry} ", *_numbers(entries[entry], pages)) for entry in some)
        body.append(make("div", make("p", initial, class_="initial"), make("ul", *rows)))
    return body


def _numbers(ids: list[str], pages: Mapping[str, int]) -> Iterator[Element | str]:
    """Each page once. Every place is a link, so that its page can be asked for."""
    told: set[int] = set()
    for id_ in ids:
        page = pages.get(id_)
        if page is None or page not in told:
            yield ", " if told else ""
            yield make("a", str(page or "00"), href=f"#{id_}")
        else:
            yield make("a", href=f"#{id_}")
        told.add(page or 0)
