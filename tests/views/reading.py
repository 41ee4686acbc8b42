"""HTML read strictly: what a browser would mend in silence is a fault here."""

from dataclasses import dataclass, field
from html.parser import HTMLParser

VOID = {"input", "br", "hr", "img", "meta", "link"}
BLOCKS = {"p", "div", "ul", "ol", "dl", "table", "figure", "fieldset", "details", "form", "h3"}
ESCAPES = {"amp", "lt", "gt", "quot"}


@dataclass
class Element:
    """One element: its name, attributes, parent, and the text anywhere inside it."""

    name: str
    attributes: dict[str, str]
    parent: "Element | None"
    text: str = ""
    children: list["Element"] = field(default_factory=list)

    def all(self, name: str = "") -> list["Element"]:
        """The elements inside, at any depth, all or those of one name."""
        found = []
        for child in self.children:
            found += [child] if name in ("", child.name) else []
            found += child.all(name)
        return found

    def one(self, name: str, class_: str = "") -> "Element":
        """The only element inside of that name and class."""
        (found,) = (
            each
            for each in self.all(name)
            if class_ in ("", *each.attributes.get("class", "").split())
        )
        return found


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.root = self.here = Element("", {}, None)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        assert len(set(names)) == len(names), f"<{tag}> has an attribute twice: {names}"
        attributes = {name: value or "" for name, value in attrs}
        new = Element(tag, attributes, self.here)
        if tag in BLOCKS:
            assert "p" not in self._open(), f"<{tag}> inside <p>: a browser ends the paragraph"
        self.here.children.append(new)
        if tag not in VOID:
            self.here = new

    def handle_endtag(self, tag: str) -> None:
        assert tag == self.here.name, f"</{tag}> where <{self.here.name}> is open"
        assert self.here.parent
        self.here = self.here.parent

    def handle_data(self, data: str) -> None:
        assert not {"<", ">", "&"} & set(data), f"not escaped: {data!r}"
        self._add(data)

    def handle_entityref(self, name: str) -> None:
        assert name in ESCAPES
        self._add({"amp": "&", "lt": "<", "gt": ">", "quot": '"'}[name])

    def handle_charref(self, name: str) -> None:
        assert name == "39"
        self._add("'")

    def handle_comment(self, data: str) -> None:
        raise AssertionError(f"a comment: {data!r}")

    def _add(self, text: str) -> None:
        element: Element | None = self.here
        while element:
            element.text += text
            element = element.parent

    def _open(self) -> list[str]:
        names, element = list[str](), self.here
        while element.parent:
            names.append(element.name)
            element = element.parent
        return names


def read(html: str) -> Element:
    """The elements of a piece of HTML. AssertionError if it is not well formed."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    assert reader.here is reader.root, f"<{reader.here.name}> is never closed"
    return reader.root
