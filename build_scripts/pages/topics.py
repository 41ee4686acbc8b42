"""The table from chapters to public task topics, with what a learner can do after each set."""

from collections.abc import Iterable

from build_scripts.pages.markdown import escaped, heading
from calc.coursework.problem import ProblemSet
from calc.coursework.sets import names, problem_set
from calc.coursework.topics import LISTS, TOPICS, Topic, mapped

INTRODUCTION = """# Chapters and public topics

Which chapter's problems map to which topic of a public list. It is a map and no promise: which
examination asks for what, and in which words, is for the authority that holds it to say. That a
chapter stands beside a topic is our own judgement.

Level 1 is one rule, 2 several steps, 3 a case to judge. Minutes are estimated, with paper and a
pocket calculator; add them up for a log of hours."""


def page() -> str:
    """Topics with their chapters, then chapters with objectives and topics."""
    sets = [problem_set(name) for name in names()]
    by_name = {each.name: each for each in sets}
    return "\n\n".join(
        [
            INTRODUCTION,
            heading(2, "By topic", "by-topic"),
            *(_list(name, about, by_name) for name, about in LISTS.items()),
            heading(2, "By chapter", "by-chapter"),
            *map(_chapter, sets),
        ]
    )


def _list(name: str, about: str, sets: dict[str, ProblemSet]) -> str:
    rows = [
        (
            topic.code.replace("-", "\u2011"),  # a code stays on one line
            topic.words,
            ", ".join(_link(sets[each]) for each in topic.sets),
        )
        for topic in TOPICS
        if topic.list == name
    ]
    coded = any(code for code, *_ in rows)
    head = ("Task", "Topic", "Maps to") if coded else ("Topic", "Maps to")
    table = _table(head, (row if coded else row[1:] for row in rows))
    return "\n\n".join([f"### {name.capitalize()}", f"{escaped(about)}.", table])


def _chapter(chosen: ProblemSet) -> str:
    rows = [
        (each.objective, each.form, str(each.level), str(each.minutes)) for each in chosen.problems
    ]
    topics = mapped(chosen.name)
    said = f"Maps to: {'; '.join(map(_named, topics))}." if topics else "Maps to no topic listed."
    return "\n\n".join(
        [
            heading(3, escaped(chosen.title), chosen.name),
            f"Chapter {_link(chosen)}, {sum(each.minutes for each in chosen.problems)} min. {said}",
            _table(("After it you can", "Form", "Level", "Minutes"), rows),
        ]
    )


def _named(topic: Topic) -> str:
    return " ".join(filter(None, [escaped(topic.list), topic.code, escaped(topic.words)]))


def _link(chosen: ProblemSet) -> str:
    return f"[{escaped(chosen.title)}](../{chosen.chapter})"


def _table(head: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> str:
    lines = (head, tuple("---" for _ in head), *rows)
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)
