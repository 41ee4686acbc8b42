"""What a writer's server need not make again: of pages whose text is as it was, all of it.

MkDocs makes every page anew after each change, which takes longer than a writer waits. Only while
serving, and only until our own code changes: then the module that holds this is run anew.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from jinja2 import ChoiceLoader, DictLoader, Environment
from mkdocs.structure.files import Files
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import TableOfContents

from build_scripts.pages.uses import Book, title

NOTHING = "kept.html"  # the template of a page that stands already


@dataclass
class Made:
    """What came of a page's text. `output` is the whole page, None until it is written."""

    markdown: str
    content: str | None = None
    toc: TableOfContents = field(default_factory=lambda: TableOfContents([]))
    title: str | None = None
    anchors: set[str] = field(default_factory=set)
    links: dict[str, dict[str, str]] = field(default_factory=dict)
    entries: list[Any] | None = None
    output: str | None = None


class Kept:
    """All pages of the last build, by their path in docs/."""

    def __init__(self) -> None:
        self._pages: dict[str, Made] = {}
        self._same: set[str] = set()
        self._book: object = None
        self._titles: object = None

    def begin(self, book: Book) -> None:
        """A build begins. What pages say of each other must be as it was, or all is forgotten."""
        named = {path: title(text) for path, text in book.chapters.items()}
        told = (named, book.places())
        if told != self._book:
            self._pages.clear()
        self._book = told
        self._same.clear()

    def text(self, page: Page, markdown: str) -> str:
        """What of a page's text MkDocs has to convert: nothing if it has done so before."""
        path = page.file.src_uri
        made = self._pages.get(path)
        if made and made.markdown == markdown and made.content is not None:
            self._same.add(path)
            return ""
        self._pages[path] = Made(markdown)
        return markdown

    def content(self, page: Page, html: str, files: Files) -> str:
        """What MkDocs made of a page's text, now or before."""
        made = self._pages[page.file.src_uri]
        if page.file.src_uri not in self._same:
            assert page.present_anchor_ids is not None
            made.content, made.toc, made.title = html, page.toc, page._title_from_render
            made.anchors = page.present_anchor_ids
            made.links = {file.src_uri: its for file, its in (page.links_to_anchors or {}).items()}
            return html
        assert made.content is not None
        page.toc, page._title_from_render = made.toc, made.title
        page.present_anchor_ids = made.anchors
        found = ((files.get_file_from_path(path), its) for path, its in made.links.items())
        page.links_to_anchors = {file: its for file, its in found if file}
        return made.content

    def ready(self, files: Files, env: Environment, index: Any) -> None:
        """All pages are read. Where each shows the same titles of others, none is drawn again."""
        every = {each.src_uri: each.page for each in files.documentation_pages() if each.page}
        titles = {path: page.title for path, page in every.items()}
        for path, made in self._pages.items():
            if path not in self._same or titles != self._titles:
                made.output = None
            elif made.output is not None and path in every:
                every[path].meta["template"] = NOTHING
        self._titles = titles
        assert env.loader
        env.loader = ChoiceLoader([DictLoader({NOTHING: ""}), env.loader])
        index.add_entry_from_context = self._indexed(index, index.add_entry_from_context)

    def _indexed(self, index: Any, add: Callable[[Page], None]) -> Callable[[Page], None]:
        """`add`, which reads a page for the search, or what it found there before."""

        def added(page: Page) -> None:
            made = self._pages[page.file.src_uri]
            if page.file.src_uri in self._same and made.entries is not None:
                index.entries.extend(made.entries)
                return
            before = len(index.entries)
            add(page)
            made.entries = index.entries[before:]

        return added

    def output(self, page: Page, draw: Callable[[], str]) -> str:
        """The whole page, drawn now or before."""
        made = self._pages[page.file.src_uri]
        if made.output is None:
            made.output = draw()
        return made.output
