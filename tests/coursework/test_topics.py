"""The table from chapters to public topics."""

from calc.coursework.sets import names
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
