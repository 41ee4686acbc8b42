"""The order of treatment: no rule against another, and every box where the rules want it."""

from itertools import combinations, product

import pytest

from calc.treatment_order import PURPOSE, USUAL, Facts, broken, ordered, reason, rules

EVERY_HOUSE = [Facts(*each) for each in product((False, True), repeat=4)]
EVERY_SET = [boxes for size in range(len(USUAL) + 1) for boxes in combinations(USUAL, size)]
SOFT = Facts(acid=True, iron=False, scales=False, washes=True)


@pytest.mark.parametrize("facts", EVERY_HOUSE, ids=str)
def test_the_order_breaks_no_rule(facts: Facts) -> None:
    """Every set of boxes in every house: the rules have no circle, and their order keeps them."""
    for boxes in EVERY_SET:
        best = ordered(boxes, facts)
        assert sorted(best) == sorted(boxes)
        assert broken(best, facts) == ()


@pytest.mark.parametrize("facts", EVERY_HOUSE, ids=str)
def test_turned_round_every_rule_is_broken(facts: Facts) -> None:
    """The other way round."""
    for boxes in EVERY_SET:
        backwards = tuple(reversed(ordered(boxes, facts)))
        assert set(broken(backwards, facts)) == set(rules(boxes, facts))


@pytest.mark.parametrize(
    ("facts", "order"),
    [
        (SOFT, "sediment tank neutralizer softener cartridge uv"),
        (SOFT._replace(washes=False), "sediment neutralizer tank softener cartridge uv"),
        (SOFT._replace(scales=True), "sediment neutralizer softener tank cartridge uv"),
    ],
)
def test_air_before_stone_where_it_can_be(facts: Facts, order: str) -> None:
    """By hand, from the chapter on acid water."""
    boxes = ("uv", "cartridge", "softener", "neutralizer", "tank", "sediment")
    assert ordered(boxes, facts) == tuple(order.split())


def test_iron_goes_before_the_air() -> None:
    """By hand: with iron, the filter before the tank, and stone before the filter."""
    facts = SOFT._replace(iron=True)
    boxes = ("tank", "iron_filter", "neutralizer", "cartridge")
    assert ordered(boxes, facts) == ("neutralizer", "iron_filter", "tank", "cartridge")
    assert "Iron first" in reason("iron_filter", boxes, facts) or "Acid first" in reason(
        "iron_filter", boxes, facts
    )


def test_the_lamp_is_last_and_the_gravest() -> None:
    """By hand: a lamp before carbon and a softener before stone; the lamp is told first."""
    wrong = broken(("softener", "neutralizer", "uv", "carbon"), SOFT)
    assert [rule.level for rule in wrong] == ["danger", "caution"]
    assert (wrong[0].first, wrong[0].then) == ("carbon", "uv")


def test_two_of_a_kind_stay_together() -> None:
    """By hand: two cartridges are no circle."""
    assert ordered(("cartridge", "cartridge", "sediment"), SOFT) == (
        "sediment",
        "cartridge",
        "cartridge",
    )


@pytest.mark.parametrize("box", USUAL)
def test_every_box_has_a_reason(box: str) -> None:
    """By reason: alone it says what it is for, and among others why it stands there."""
    assert reason(box, (box,), SOFT) == PURPOSE[box]
    assert len(reason(box, USUAL, SOFT)) > len(PURPOSE[box])
