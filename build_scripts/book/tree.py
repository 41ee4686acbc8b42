"""A page as a tree of plain names, and the few ways in which the book changes it."""

import re
from collections.abc import Callable, Iterator
from copy import deepcopy
from xml.etree.ElementTree import Element, fromstring, tostring

import tinyhtml5

XMLNS = {"svg": "http://www.w3.org/2000/svg", "math": "http://www.w3.org/1998/Math/MathML"}
XHTML = "http://www.w3.org/1999/xhtml"


def read(html: str) -> Element:
    """The tree of a page. Its names carry no namespace; `svg` and `math` say theirs themselves."""
    root: Element = tinyhtml5.parse(html)
    reshape(root, lambda each: each if isinstance(each.tag, str) else None)  # less comments
    for parent in root.iter():
        parent.tag = parent.tag.rpartition("}")[2]
        for name in [name for name in parent.attrib if name.startswith("{")]:
            parent.set(name.rpartition("}")[2], parent.attrib.pop(name))
        if parent.tag in XMLNS:
            parent.set("xmlns", XMLNS[parent.tag])
    return root


def make(tag: str, *inside: "Element | str", **attributes: str) -> Element:
    """A new element; `class_="title"` gives it a class."""
    names = {name.rstrip("_").replace("_", "-"): said for name, said in attributes.items()}
    made = Element(tag, {name: said for name, said in names.items() if said})
    for part in inside:
        if isinstance(part, Element):
            made.append(part)
        else:
            _add_text(made, part)
    return made


def _add_text(parent: Element, text: str | None, before: int | None = None) -> None:
    """Add text behind the children of `parent`, or behind those that stand before a place."""
    earlier = parent[:before]
    if earlier:
        earlier[-1].tail = (earlier[-1].tail or "") + (text or "")
    else:
        parent.text = (parent.text or "") + (text or "")


def swap(parent: Element, child: Element, other: Element | None = None) -> None:
    """Put another element, or nothing, in place of a child; the text behind it stays."""
    place = list(parent).index(child)
    tail, child.tail = child.tail, None
    parent.remove(child)
    if other is None:
        _add_text(parent, tail, place)
    else:
        other.tail = tail
        parent.insert(place, other)


def reshape(parent: Element, rule: Callable[[Element], Element | None]) -> None:
    """Put what the rule says in place of everything below `parent`, from the outside inwards."""
    for child in list(parent):
        other = rule(child)
        if other is not child:
            swap(parent, child, other)
        if other is not None:
            reshape(other, rule)


def classes(element: Element) -> set[str]:
    return set(element.get("class", "").split())


def having(root: Element, name: str) -> Iterator[Element]:
    """Everything in `root` that has a class."""
    return (each for each in root.iter() if name in classes(each))


def text(element: Element | None) -> str:
    """The words of an element, less those that only draw or name a drawing."""
    return "" if element is None else " ".join("".join(element.itertext()).split())


def inside(element: Element | None) -> list[Element | str]:
    """A copy of what stands in an element."""
    if element is None:
        return []
    copied = deepcopy(element)
    return [copied.text or "", *copied]


def is_heading(element: Element) -> bool:
    return re.fullmatch(r"h[1-6]", element.tag) is not None


def as_xhtml(root: Element) -> str:
    """A whole document. Only XHTML keeps MathML and SVG the same for a browser and a reader.

    ParseError if it is not well formed: a browser would print its own message instead.
    """
    root.set("xmlns", XHTML)
    written = tostring(root, encoding="unicode", short_empty_elements=True)
    # an empty element of HTML may close itself only where HTML knows it as empty
    opened = re.sub(r"<(?!(?:br|col|hr|img|link|meta|wbr)\b)([a-z]\w*)([^<>]*) />", r"<\1\2></\1>",
                    written)  # fmt: skip
    fromstring(opened)
    return f'<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE html>\n{opened}\n'
