"""The trouble call's arithmetic: Bayes' rule on the table of causes, and what is asked next."""

from math import log2
from pathlib import Path

import pytest

from calc.diagnosis.evidence import (
    ENOUGH,
    LEAST_GAIN,
    best_steps,
    chances,
    fix,
    found,
    gain,
    likelihood,
)
from calc.diagnosis.path import Branch, Cause, Step, Symptom
from calc.diagnosis.symptoms import SYMPTOMS

DOCS = Path(__file__).resolve().parents[2] / "docs"


def branch(shows: str, *fits: str) -> Branch:
    return Branch(shows, "", "Mend it.", fits=fits)


TWO = Symptom(
    "Two causes",
    "",
    (
        Step("even", (branch("yes", "a"), branch("no", "b")), "even", sure=0.9),
        Step("weak", (branch("yes", "a"), branch("no", "b")), "weak", sure=0.6),
        Step("blind", (branch("yes", "a", "b"), branch("no", "a", "b")), "blind"),
    ),
    causes={"a": Cause("A", 1, ""), "b": Cause("B", 1, "")},
)
CASES = [(name, cause) for name, symptom in SYMPTOMS.items() for cause in symptom.causes]


def test_chances_follow_bayes_by_hand() -> None:
    """By hand: even odds and a reading of 0.9 against 0.1; a second one of 0.6 against 0.4."""
    assert chances(TWO, {}) == {"a": 0.5, "b": 0.5}
    assert chances(TWO, {"even": 0})["a"] == pytest.approx(0.9)
    assert chances(TWO, {"even": 0, "weak": 1})["a"] == pytest.approx(0.9 * 0.4 / (0.36 + 0.06))


def test_the_gain_is_that_of_a_binary_symmetric_channel() -> None:
    """Shannon (1948), from memory: 1 - H(0.1) bits for two even causes."""
    noise = -(0.1 * log2(0.1) + 0.9 * log2(0.9))
    even, _, blind = TWO.steps
    assert gain(even, {"a": 0.5, "b": 0.5}) == pytest.approx(1 - noise)
    assert gain(blind, {"a": 0.5, "b": 0.5}) == pytest.approx(0)


def test_the_most_telling_measurement_comes_first_and_one_that_tells_nothing_never() -> None:
    assert [step.name for step in best_steps(TWO, {})] == ["even"]  # weak: 0.03 bits
    assert best_steps(TWO, {"even": 0}, left_out=("weak",)) == []


def test_effort_puts_a_dear_measurement_behind_a_cheap_one() -> None:
    """By hand: twice the effort for the same gain."""
    dear = TWO.steps[0]._replace(name="dear", effort=2)
    two = TWO._replace(steps=(dear, TWO.steps[0]))
    assert [step.name for step in best_steps(two, {})] == ["even", "dear"]


@pytest.mark.parametrize("name", SYMPTOMS)
def test_a_step_is_a_chance_for_every_cause(name: str) -> None:
    """The axioms: each cause shows some reading of a step, and the chances are one together."""
    symptom = SYMPTOMS[name]
    for step in symptom.steps:
        for cause in symptom.causes:
            shares = [likelihood(step, place, cause) for place in range(len(step.branches))]
            assert sum(shares) == pytest.approx(1)
            assert min(shares) > 0


@pytest.mark.parametrize("name", SYMPTOMS)
def test_the_table_is_whole(name: str) -> None:
    """The data: causes and readings name each other, steps have names of their own, weights are
    chances, and the fix's chapter is there."""
    symptom = SYMPTOMS[name]
    fits = {cause for step in symptom.steps for each in step.branches for cause in each.fits}
    assert fits == {*symptom.causes}
    assert len({step.name for step in symptom.steps}) == len(symptom.steps)
    assert all(step.name and 0.5 < step.sure < 1 and step.effort >= 1 for step in symptom.steps)
    assert symptom.says
    for cause in symptom.causes.values():
        assert cause.weight > 0
        assert (DOCS / cause.chapter).is_file()


@pytest.mark.parametrize(("name", "cause"), CASES)
def test_whoever_reads_what_a_cause_shows_ends_at_that_cause(name: str, cause: str) -> None:
    """By reason, cause by cause: the asked measurements alone, read as the cause shows them, lead
    to it and to something to do, in no more than five."""
    symptom = SYMPTOMS[name]
    seen: dict[str, int] = {}
    while not found(symptom, seen):
        step = best_steps(symptom, seen)[0]
        shows = range(len(step.branches))
        seen[step.name] = max(shows, key=lambda place: likelihood(step, place, cause))
    assert found(symptom, seen) == cause
    assert len(seen) <= 5
    assert fix(symptom, seen, cause).do != "Next step."


def test_it_ends_only_when_sure_or_out_of_questions() -> None:
    """By reason, over every first reading of every complaint."""
    for symptom in SYMPTOMS.values():
        for place in range(len(symptom.steps[0].branches)):
            seen = {symptom.steps[0].name: place}
            now = max(chances(symptom, seen).values())
            left = best_steps(symptom, seen)
            assert bool(found(symptom, seen)) == (now >= ENOUGH or not left)
            assert all(gain(step, chances(symptom, seen)) >= LEAST_GAIN for step in left)
