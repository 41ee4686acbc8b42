"""Declared text as Markdown: escaped in one place."""

import re

from calc import sources
from calc.figures import plainly_written
from calc.model import UNIT_SETS, Field
from calc.views.formula import letter
from calc.views.html import tag
from calc.views.words import with_unit

_KEPT = re.compile(r"`(?P<code>[^`]+)`|\[(?P<source>[a-z0-9-]+)\]")
_SPECIAL = re.compile(r"[\\`*_{}\[\]<&|]")
_ENTITIES = {"<": "&lt;", "&": "&amp;"}


def escaped(text: str) -> str:
    """`text` in which nothing means anything to Markdown.

    >>> escaped("V_on < 2 * [a|b]")
    'V\\\\_on &lt; 2 \\\\* \\\\[a\\\\|b\\\\]'
    """
    return _SPECIAL.sub(lambda sign: _ENTITIES.get(sign[0], f"\\{sign[0]}"), text)


def prose(text: str) -> str:
    """A declared text, with its [source] as a citation and its `name` as code.

    >>> prose("See `drawdown`: 2 * a [ergun].")
    'See `drawdown`: 2 \\\\* a [@ergun].'

    Raises KeyError for a source that does not exist.
    """
    written, place = "", 0
    for kept in _KEPT.finditer(text):
        written += escaped(text[place : kept.start()])
        if kept["source"]:
            sources.entry(kept["source"])
            written += f"[@{kept['source']}]"
        else:
            written += kept[0]
        place = kept.end()
    return written + escaped(text[place:])


def symbol(name: str) -> str:
    """A symbol of a formula in running text: the letter slanted, its index lowered."""
    base, _, index = letter(name).partition("_")
    return f"<var>{base}<sub>{index}</sub></var>" if index else f"<var>{base}</var>"


def heading(level: int, text: str, id_: str) -> str:
    """A heading with an address of its own, whatever its words become."""
    return f"{'#' * level} {text} {{#{id_}}}"


def code(lines: list[str]) -> str:
    """Lines as they are typed. On a phone they wrap: a box that scrolls is one no keyboard reaches,
    for the theme takes it out of the order of focus there."""
    parts = [part for line in lines for part in (tag("br"), tag("code", line))]
    return tag("p", *parts[1:])


def bullets(facts: dict[str, str]) -> str:
    """Facts under their names, those that are empty left out."""
    return "\n".join(f"- **{name}:** {fact}" for name, fact in facts.items() if fact)


def listed(texts: list[str], last: str = "and") -> str:
    """`a`, `a and b`, `a, b and c`.

    >>> listed(["a", "b", "c"]), listed(["a"])
    ('a, b and c', 'a')
    """
    return f" {last} ".join([", ".join(texts[:-1])] * (len(texts) > 1) + texts[-1:])


def in_both_sets(low: float, high: float | None, like: Field) -> str:
    """A value, or a range from low to high, in the usual unit of each set, once if they agree."""
    ends = (low,) if high is None else (low, high)
    said = []
    for unit in dict.fromkeys(like.usual(unit_set) for unit_set in UNIT_SETS):
        figures = [plainly_written(unit.out_of_si(end), 4) for end in ends]
        said.append(with_unit(" to ".join(figures), unit))
    return "; ".join(escaped(each) for each in said)
