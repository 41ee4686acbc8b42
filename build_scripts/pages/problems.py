"""The list of problem sets, and a page for each: what it is for, what it maps to, the problems."""

from collections.abc import Iterable

from build_scripts.pages.markdown import bullets, escaped, heading
from calc.coursework.deck import VARIANTS
from calc.coursework.problem import ProblemSet
from calc.coursework.record import sheet
from calc.coursework.topics import Topic, mapped
from calc.coursework.variants import EXAMPLE

INTRODUCTION = f"""# Problem sets

A set for each of these chapters, in {VARIANTS} variants with numbers of their own. Answers, steps
and formulas are the calculators' own. Practise as often as you like: the page needs no network once
the book is kept, and what you did stays on the device.

Scores are computed on the student's device. Use them for homework; for an exam print the sheets and
stay in the room."""


def path(chosen: ProblemSet) -> str:
    """The page of a set, in docs/."""
    return f"coursework/problems/{chosen.name}.md"


def listing(every: Iterable[ProblemSet]) -> str:
    """All sets."""
    lines = [
        f"- [{escaped(each.title)}](problems/{each.name}.md), {minutes(each)} min" for each in every
    ]
    return "\n\n".join(
        [
            INTRODUCTION,
            "Teaching? Begin with [the guide](guide.md). Which set maps to which public topic is "
            "in [a table](topics.md).",
            heading(2, "The sets", "sets"),
            "\n".join(lines),
        ]
    )


def page(chosen: ProblemSet) -> str:
    """What a set is for, and the problems themselves."""
    marks = sheet(chosen, EXAMPLE).full
    about = {
        "Chapter": f"[{escaped(chosen.title)}](../../{chosen.chapter})",
        "Time": f"about {minutes(chosen)} minutes, estimated",
        "Marks": str(marks),
        "Revision": f"{chosen.revision}, in {VARIANTS} variants",
        "Maps to": "; ".join(map(_named, mapped(chosen.name))),
    }
    objectives = [
        f"- {escaped(each.objective)} ({each.form}, level {each.level}, {each.minutes} min)"
        for each in chosen.problems
    ]
    return "\n\n".join(
        [
            f"# Problems: {escaped(chosen.title)}",
            bullets(about),
            "Level 1 is one rule, 2 several steps, 3 a case to judge.",
            heading(2, "After it you can", "objectives"),
            "\n".join(objectives),
            heading(2, "Practice", "deal-a-sheet"),
            f"```coursework\n{chosen.name}\n```",
        ]
    )


def with_problems(markdown: str, source: str, root: str, every: Iterable[ProblemSet]) -> str:
    """A chapter with a link to its problem set at the end, where it has one."""
    links = [
        f"[Problems to this chapter]({root}{path(each)}), {minutes(each)} min."
        for each in every
        if each.chapter == source
    ]
    return "\n\n".join([markdown, *links])


def minutes(chosen: ProblemSet) -> int:
    """How long a set takes, estimated."""
    return sum(each.minutes for each in chosen.problems)


def _named(topic: Topic) -> str:
    return escaped(f"{topic.list}, {topic.code} {topic.words}".replace(",  ", ", "))
