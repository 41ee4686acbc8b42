"""The EPUB: the chapters as the printed edition has them, without page numbers or an index."""

import zipfile
from collections.abc import Iterator, Mapping
from copy import deepcopy
from pathlib import Path
from uuid import NAMESPACE_URL, uuid5
from xml.etree.ElementTree import Element, tostring

from build_scripts.book.gather import Chapter
from build_scripts.book.tree import as_xhtml, make, text
from build_scripts.book.whole import LANGUAGE, STYLE, Book, title_page
from calc import EDITION

OPF = "http://www.idpf.org/2007/opf"
DC = "http://purl.org/dc/elements/1.1/"
SUMMARY = "Formulas are MathML. Drawings and charts are described, charts have data tables."
STAMP = (1980, 1, 1, 0, 0, 0)  # the same book gives the same file
CONTAINER = """<?xml version="1.0" encoding="utf-8"?>
<container version="1.0" xmlns="urn:oasis:names:tc:opendocument:xmlns:container">
<rootfiles>
<rootfile full-path="book/package.opf" media-type="application/oebps-package+xml"/>
</rootfiles>
</container>
"""


def write(book: Book, target: Path) -> None:
    """Write the book as EPUB 3, one file for each chapter."""
    pages = {"title": _page(book, book.title, title_page(book))}
    pages |= {each.slug: _page(book, each.title, deepcopy(each.body)) for each in book.chapters}
    files = {
        "META-INF/container.xml": CONTAINER,
        "book/package.opf": _as_xml(_package(book, pages)),
        "book/nav.xhtml": as_xhtml(_navigation(book)),
        "book/cover.svg": _as_xml(_cover(book)),
        "book/book.css": STYLE.read_text(encoding="utf-8"),
        **{f"book/{slug}.xhtml": as_xhtml(page) for slug, page in pages.items()},
    }
    with zipfile.ZipFile(target, "w") as archive:
        # a reader knows the format by this entry: first, and not packed
        archive.writestr(zipfile.ZipInfo("mimetype", STAMP), "application/epub+zip")
        for name, content in files.items():
            archive.writestr(zipfile.ZipInfo(name, STAMP), content, zipfile.ZIP_DEFLATED)


def _page(book: Book, title: str, body: Element) -> Element:
    """One file, its links leading into the files of other chapters."""
    slugs = {each.slug for each in book.chapters}
    for a in body.iter("a"):
        href = a.get("href", "")
        slug = href.removeprefix("#").partition(".")[0]
        if href.startswith("#") and slug in slugs:
            a.set("href", f"{slug}.xhtml{href}")
    return _document(title, body)


def _document(title: str, *inside: Element) -> Element:
    sheet = make("link", rel="stylesheet", href="book.css", type="text/css")
    return make("html", make("head", make("title", title), sheet), make("body", *inside),
                lang=LANGUAGE)  # fmt: skip


def _navigation(book: Book) -> Element:
    nav = make("nav", make("h1", "Contents"), _branch(book.chapters), id="toc")
    nav.set("epub:type", "toc")
    page = _document("Contents", nav)
    page.set("xmlns:epub", "http://www.idpf.org/2007/ops")
    return page


def _branch(chapters: list[Chapter]) -> Element:
    """The chapters of one depth, each with those that stand under it."""
    listed = make("ol")
    tops = [n for n, each in enumerate(chapters) if each.depth == chapters[0].depth]
    for start, end in zip(tops, [*tops[1:], len(chapters)], strict=True):
        top, below = chapters[start], chapters[start + 1 : end]
        item = make("li", make("a", top.title, href=f"{top.slug}.xhtml"))
        if below:
            item.append(_branch(below))
        listed.append(item)
    return listed


def _package(book: Book, pages: Mapping[str, Element]) -> Element:
    identity = uuid5(NAMESPACE_URL, f"{book.title} {EDITION} {book.date}").urn
    said = {"title": book.title, "language": LANGUAGE, "description": book.subtitle,
            "creator": "the Pail and Timer contributors", "rights": text(book.licence),
            "date": book.date}  # fmt: skip
    metadata = make("metadata", make("dc:identifier", identity, id="book-id"))
    metadata.set("xmlns:dc", DC)
    for name, words in said.items():
        metadata.append(make(f"dc:{name}", words))
    for name, words in _properties(book):
        metadata.append(make("meta", words, property=name))
    order = [make("itemref", idref=f"page-{slug}") for slug in pages]
    package = make("package", metadata, make("manifest", *_items(pages)), make("spine", *order),
                   version="3.0", unique_identifier="book-id")  # fmt: skip
    package.set("xmlns", OPF)
    return package


def _properties(book: Book) -> Iterator[tuple[str, str]]:
    yield "dcterms:modified", f"{book.date}T00:00:00Z"
    yield "schema:accessMode", "textual"
    yield "schema:accessMode", "visual"
    yield "schema:accessModeSufficient", "textual"
    for feature in ("tableOfContents", "structuralNavigation", "alternativeText", "MathML"):
        yield "schema:accessibilityFeature", feature
    yield "schema:accessibilityHazard", "none"
    yield "schema:accessibilitySummary", SUMMARY


def _items(pages: Mapping[str, Element]) -> Iterator[Element]:
    xhtml = "application/xhtml+xml"
    yield make("item", id="nav", href="nav.xhtml", media_type=xhtml, properties="nav")
    yield make("item", id="style", href="book.css", media_type="text/css")
    yield make("item", id="cover", href="cover.svg", media_type="image/svg+xml",
               properties="cover-image")  # fmt: skip
    for slug, page in pages.items():
        tags = {each.tag for each in page.iter()}
        holds = " ".join(kind for kind, tag in (("mathml", "math"), ("svg", "svg")) if tag in tags)
        yield make("item", id=f"page-{slug}", href=f"{slug}.xhtml", media_type=xhtml,
                   properties=holds)  # fmt: skip


def _cover(book: Book) -> Element:
    """A title in the manner of the title page."""
    lines = [(620, 130, "bold", book.title), (760, 48, "normal", book.subtitle),
             (1500, 44, "normal", f"Edition {EDITION}, {book.date}")]  # fmt: skip
    cover = make("svg", make("title", book.title),
                 make("rect", width="1200", height="1600", fill="#fff"),
                 make("rect", x="80", y="670", width="1040", height="12"),
                 xmlns="http://www.w3.org/2000/svg", viewBox="0 0 1200 1600",
                 font_family="sans-serif")  # fmt: skip
    for y, size, weight, words in lines:
        cover.append(make("text", words, x="80", y=str(y), font_size=str(size),
                          font_weight=weight))  # fmt: skip
    return cover


def _as_xml(root: Element) -> str:
    return f'<?xml version="1.0" encoding="utf-8"?>\n{tostring(root, encoding="unicode")}\n'
