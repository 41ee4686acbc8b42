"""The chapters of the book, in the order of the handbook's navigation."""

import posixpath
import re
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple
from urllib.parse import urldefrag
from xml.etree.ElementTree import Element

from mkdocs.utils.yaml import yaml_load

from build_scripts.book.paper import on_paper
from build_scripts.book.tree import classes, is_heading, make, read, text

SETTINGS = Path(__file__).resolve().parents[2] / "mkdocs.yml"
NAMING = ("aria-labelledby", "aria-describedby", "headers", "for")


class Chapter(NamedTuple):
    """A page as a chapter, or the heading over several: that has no path and an empty body."""

    slug: str
    path: str
    title: str
    short: str  # for the running head
    depth: int
    body: Element


def settings() -> dict[str, Any]:
    loaded: dict[str, Any] = yaml_load(SETTINGS.read_text(encoding="utf-8"))
    return loaded


def chapters(site: Path, nav: list[Any]) -> list[Chapter]:
    """Every page that the navigation leads to, ready for paper, each id and link the book's own."""
    found = list(_listed(site, nav, 0))
    slugs = {each.path: each.slug for each in found if each.path}
    for each in found:
        _name_ids(each)
        _bind_links(each, slugs)
        _lower_headings(each)
    return found


def _listed(site: Path, nav: list[Any], depth: int) -> Iterator[Chapter]:
    for item in nav:
        title, target = next(iter(item.items())) if isinstance(item, dict) else ("", item)
        if isinstance(target, list):
            body = make("section", make("h1", title))
            yield Chapter(_slug(title), "", title, title, depth, body)
            yield from _listed(site, target, depth + 1)
        else:
            yield from _page(site, target.removesuffix(".md") + ".html", title, depth)


def _page(site: Path, path: str, short: str, depth: int) -> Iterator[Chapter]:
    """A page and, behind it, the pages of its own folder in the order in which it lists them."""
    article = next(read((site / path).read_text(encoding="utf-8")).iter("article"))
    folder = path.removesuffix(".html")
    hrefs = [posixpath.join(posixpath.dirname(path), a.get("href", "")) for a in article.iter("a")]
    below = dict.fromkeys(
        href for href in hrefs if href.startswith(f"{folder}/") and href.endswith(".html")
    )
    body = on_paper(article)
    title = text(next(body.iter("h1")))
    yield Chapter(_slug(folder), path, title, short or title, depth, body)
    for each in below:
        yield from _page(site, each, "", depth + 1)


def _slug(name: str) -> str:
    return re.sub(r"\W+", "-", name.lower())


def _name_ids(chapter: Chapter) -> None:
    """Two chapters may use one id: put the chapter's name before it."""
    for each in chapter.body.iter():
        if "id" in each.attrib:
            each.set("id", f"{chapter.slug}.{each.attrib['id']}")
        for name in NAMING:
            if name in each.attrib:
                each.set(name, re.sub(r"\S+", rf"{chapter.slug}.\g<0>", each.attrib[name]))
        if each.tag != "a" and each.get("href", "").startswith("#"):  # a part of a drawing
            each.set("href", f"#{chapter.slug}.{each.attrib['href'][1:]}")
        for name, said in each.attrib.items():
            if "url(#" in said:
                each.set(name, said.replace("url(#", f"url(#{chapter.slug}."))
    next(chapter.body.iter("h1")).set("id", chapter.slug)


def _bind_links(chapter: Chapter, slugs: Mapping[str, str]) -> None:
    """Lead links between pages to chapters. What is not in the book keeps only its words."""
    for a in chapter.body.iter("a"):
        to, id_ = urldefrag(a.attrib.pop("href", ""))
        if ":" in to:
            a.set("href", f"{to}#{id_}" if id_ else to)
            continue
        id_ = id_.partition("&")[0]  # behind it stands a case for the form
        path = posixpath.normpath(posixpath.join(posixpath.dirname(chapter.path), to))
        slug = slugs.get(path) if to else chapter.slug
        if slug is None:
            a.tag = "span"
            continue
        a.set("href", f"#{slug}.{id_}" if id_ else f"#{slug}")
        if slug not in {chapter.slug, "sources"}:
            a.set("class", "elsewhere")


def _lower_headings(chapter: Chapter) -> None:
    """One level down for each level of the navigation, so that the outline is one tree."""
    for each in chapter.body.iter():
        if is_heading(each):
            level = int(each.tag[1])
            if level == 1:
                each.set("class", " ".join(sorted(classes(each) | {"chapter"})))
            each.tag = f"h{min(level + chapter.depth, 6)}"
