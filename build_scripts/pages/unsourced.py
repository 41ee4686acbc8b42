"""The page of all that nobody has read in its source: by where the figure stands."""

from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from build_scripts.pages.doubts import PHRASE, in_chapter, in_module
from build_scripts.pages.markdown import escaped, heading, prose
from build_scripts.pages.uses import Book, title
from calc import other_treatment
from calc.diagnosis.symptoms import SYMPTOMS
from calc.levels import LEVELS, READ
from calc.model import Calculator
from calc.sources import SOURCES

CALC = Path(__file__).resolve().parents[2] / "calc"
# Told above in sections of their own, or no figures of the book's.
TOLD = ("sources.py", "levels.py", "other_treatment.py", "coursework")
INTRODUCTION = """# Without a source read

All in this handbook that nobody has confirmed in its source: from memory, seen second-hand, or
common practice for which we found no source. The build gathers it from the chapters, the
calculators and the code, so that nothing is left off by hand. Figures of the worked house are
**invented**; they say so beside the field and are not listed. If you have one of these sources
at hand, [tell us](../about/wrong-number.md)."""


def page(book: Book, every: Sequence[Calculator]) -> str:
    """The whole page."""
    chapters = (_chapter(path, text) for path, text in book.chapters.items() if path != "index.md")
    return "\n\n".join(
        [
            INTRODUCTION,
            heading(2, "Sources not read", "sources"),
            "\n".join(_sources()),
            heading(2, "Levels", "levels"),
            f"Looked up in {READ}.",
            "\n".join(_levels()),
            heading(2, "Ways of treatment", "treatment"),
            "\n".join(_options()),
            heading(2, "Defaults of calculators", "defaults"),
            "\n".join(_defaults(every)),
            heading(2, "Chances of causes", "causes"),
            *_causes(),
            heading(2, "In the chapters", "chapters"),
            *(block for blocks in chapters for block in blocks),
            heading(2, "In the code", "code"),
            "What the texts and comments of the arithmetic and of the calculators say, by module.",
            *_code(every),
        ]
    )


def _sources() -> Iterator[str]:
    for key, source in SOURCES.items():
        if source.seen != "read":
            note = f" {escaped(source.note)}" if source.note else ""
            yield f"- [@{key}] *{escaped(source.title)}*: {source.seen}.{note}"


def _levels() -> Iterator[str]:
    for name, levels in LEVELS.items():
        for each in levels:
            if each.seen != "read":
                what = escaped(name.replace("_", " "))
                says = f", {escaped(each.says)}" if each.says else ""
                yield f"- {what}: {escaped(each.body)}{says} [@{each.source}]: {each.seen}."


def _options() -> Iterator[str]:
    for each in other_treatment.OPTIONS:
        if PHRASE.search(each.source):
            yield f"- {escaped(f'{each.substance}, {each.where}: {each.done}')}: {each.source}."


def _defaults(every: Iterable[Calculator]) -> Iterator[str]:
    """Each default once, with every calculator that has it."""
    places: dict[tuple[str, str, str], list[str]] = {}
    for one in every:
        for each in one.inputs:
            if PHRASE.search(each.origin):
                link = f"[{escaped(one.title)}](calculators/{one.name}.md#{each.name})"
                places.setdefault((each.label, each.default, each.origin), []).append(link)
    for (label, default, origin), links in places.items():
        yield f"- {escaped(label)}, {escaped(default)}: {prose(origin)}. In {', '.join(links)}."


def _causes() -> Iterator[str]:
    yield (
        "How often a symptom has this cause rather than that, and how surely a reading fits, is "
        "judgement: no count of service calls was found that could be cited. The weights, against "
        "each other:"
    )
    yield "\n".join(
        f"- {escaped(symptom.title)}: "
        + "; ".join(f"{escaped(one.name)} {one.weight:g}" for one in symptom.causes.values())
        for symptom in SYMPTOMS.values()
    )


def _chapter(path: str, text: str) -> list[str]:
    rows = [
        f"- [{escaped(each.heading)}](../{path}{'#' if each.id else ''}{each.id}): "
        f"{escaped_but_cited(each.words)}"
        for each in in_chapter(text)
    ]
    id_ = "in-" + path.removesuffix(".md").replace("/", "-")
    return [heading(3, title(text), id_), "\n".join(rows)] if rows else []


def escaped_but_cited(words: str) -> str:
    """A sentence of a chapter, which writes [@source], escaped like one of a declaration."""
    return prose(words.replace("[@", "["))


def _code(every: Iterable[Calculator]) -> Iterator[str]:
    origins = {each.origin for one in every for each in one.inputs}
    for file in sorted(CALC.rglob("*.py")):
        path = file.relative_to(CALC)
        if path.parts[0] not in TOLD:
            rows = [f"- {_safe(each)}" for each in in_module(file) if each not in origins]
            if rows:
                yield f"`calc/{path.as_posix()}`"
                yield "\n".join(rows)


def _safe(sentence: str) -> str:
    """A sentence of the code: what stands in brackets may be no source."""
    try:
        return prose(sentence)
    except KeyError:
        return escaped(sentence)
