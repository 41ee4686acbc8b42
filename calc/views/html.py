"""HTML, escaped once and in one place."""

import re

from calc import sources


class Safe(str):
    """Text that is HTML already."""

    __slots__ = ()


def escape(text: object) -> str:
    """`text` with the five characters that HTML reads as its own written out."""
    if isinstance(text, Safe):
        return text
    written = str(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return written.replace('"', "&quot;").replace("'", "&#39;")


def tag(name: str, /, *inside: object, **attributes: object) -> Safe:
    """An element. An attribute that is None or False is left out; class_ and for_ lose the _.

    >>> tag("p", "a < b", class_="calc-help", hidden=True)
    '<p class="calc-help" hidden>a &lt; b</p>'
    """
    head = name
    for key, value in attributes.items():
        if value is None or value is False:
            continue
        written = key.rstrip("_").replace("_", "-")
        head += f" {written}" if value is True else f' {written}="{escape(value)}"'
    if name in ("input", "br"):
        return Safe(f"<{head}>")
    return Safe(f"<{head}>{''.join(map(escape, inside))}</{name}>")


def joined(parts: "list[Safe] | tuple[Safe, ...]") -> Safe:
    """Elements one after the other."""
    return Safe("".join(parts))


def uncited(text: str) -> str:
    """`text` without its [source]s, for where there is no page of them."""
    return re.sub(r" \[[a-z0-9-]+\]", "", text)


def cited(text: str, root: str) -> Safe:
    """`text` with every [source] turned into a link to the page of sources under `root`."""

    def link(found: re.Match[str]) -> str:
        short = sources.entry(found[1]).short
        return f'(<a href="{escape(root)}sources.html#{found[1]}">{escape(short)}</a>)'

    return Safe(re.sub(r"\[([a-z0-9-]+)\]", link, escape(text)))
