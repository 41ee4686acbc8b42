"""The table from chapters to public topics."""

import re

from build_scripts.pages import topics
from calc.coursework.sets import names, problem_set
from calc.coursework.topics import LISTS, TOPICS, mapped


def test_topics_name_sets_and_lists() -> None:
    """By reason: a misspelt set or list maps to nothing."""
    for topic in TOPICS:
        assert topic.list in LISTS
        assert {*topic.sets} <= {*names()}
        assert len({*topic.sets}) == len(topic.sets)


def test_a_set_finds_its_topics() -> None:
    """By hand: a house's demand stands in three lines, a carbon bed in none."""
    assert len(mapped("well_what_the_house_takes")) == 3
    assert mapped("radon_carbon") == []


def test_the_page_has_every_chapter_and_topic() -> None:
    """Issue: a table from chapters to public topics, "maps to", never "covers"; objectives, level
    and time with it."""
    page = topics.page()
    for name in names():
        chosen = problem_set(name)
        assert f"{{#{name}}}" in page
        for each in chosen.problems:
            assert f"| {each.objective} | {each.form} | {each.level} | {each.minutes} |" in page
    for topic in TOPICS:
        row = next(line for line in page.splitlines() if f"| {topic.words} |" in line)
        assert all(f"(../{problem_set(name).chapter})" in row for name in topic.sets)
    assert "maps to" in page.lower()
    assert not re.search(r"\bcovers?\b", page.lower())
