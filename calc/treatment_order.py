"""In which order treatment stands, and why: rules of what comes before what.

One list serves three ends: it judges a train as found, orders the same boxes anew, and says for
each place why. Common practice, no source, unless the rule says otherwise.
"""

from collections.abc import Iterator
from typing import Literal, NamedTuple

# The order that stands where no rule speaks.
USUAL = (
    "sediment",
    "soda_ash",
    "neutralizer",
    "iron_filter",
    "tank",
    "softener",
    "carbon",
    "cartridge",
    "uv",
)
PURPOSE = {
    "sediment": "Takes sand and flakes before they reach valves, beds and the float.",
    "soda_ash": "Raises the pH where stone cannot, and adds sodium instead of hardness.",
    "neutralizer": "Stone takes up the acid and hardens the water.",
    "iron_filter": "Turns dissolved iron to rust and holds it, where the pH is high enough.",
    "tank": "Air drives out radon and carbon dioxide. The pressure ends here.",
    "softener": "Gives sodium for hardness.",
    "carbon": "Takes taste, odor and chlorine.",
    "cartridge": "Takes what the boxes before it shed.",
    "uv": "The light finishes what germs are left.",
}


class Facts(NamedTuple):
    """What the rules ask of a house.

    acid   -- raw pH under 7
    iron   -- so much iron that the air's rust would plug the aerator
    scales -- chalk settles in the open tank when the air has been through
    washes -- no more flow is needed to wash the neutralizer than pump 2 may pass
    """

    acid: bool
    iron: bool
    scales: bool
    washes: bool


class Rule(NamedTuple):
    """`first` stands before `then`, because `why`."""

    first: str
    then: str
    why: str
    level: Literal["caution", "danger"] = "caution"


_GRIT = "Grit scores valves, packs beds and holds a float open: the coarse filter comes first."
_SHED = "The fine filter comes behind all that sheds grains, resin or rust."
_LAST = (
    "The lamp comes last: it needs clear water without iron or scale, and what stands behind it "
    "can breed germs anew."
)
_RADON = (
    "Air before carbon: a carbon bed that meets radon collects it, and shines with gamma rays. "
    "Where it has stood so, keep away from it and ask the state's radiation office."
)
_BEDS = ("neutralizer", "iron_filter", "softener")
_FINE = ("cartridge", "uv")


def rules(boxes: tuple[str, ...], facts: Facts) -> tuple[Rule, ...]:
    """The rules that hold in a house, for the boxes it has.

    boxes -- keys of `USUAL`
    """
    have = set(boxes)
    return tuple(rule for rule in _every(have, facts) if {rule.first, rule.then} <= have)


def _every(have: set[str], facts: Facts) -> Iterator[Rule]:
    for box in ("soda_ash", *_BEDS, "tank", "carbon"):
        yield Rule("sediment", box, _GRIT)
        yield Rule(box, "cartridge", _SHED)
    for box in ("sediment", "soda_ash", *_BEDS, "tank", "carbon", "cartridge"):
        yield Rule(box, "uv", _LAST, "danger")
    yield Rule("tank", "carbon", _RADON, "danger")
    for box in _BEDS:
        yield Rule(box, "carbon", "Carbon comes behind the beds: iron and scale seal its pores.")
    yield from _chemistry(have, facts)


def _chemistry(have: set[str], facts: Facts) -> Iterator[Rule]:
    yield Rule(
        "neutralizer",
        "softener",
        "Stone adds hardness, so the softener comes behind the neutralizer.",
    )
    yield Rule("iron_filter", "softener", "Iron and rust coat the resin: the iron filter first.")
    if facts.acid:
        why = "Acid first: iron turns to rust a hundred times sooner for each unit of pH."
        yield Rule("neutralizer", "iron_filter", why)
        yield Rule("soda_ash", "iron_filter", why)
    if facts.iron:
        why = "Iron first: where it meets the air it turns to rust and plugs the aerator's stones."
        yield Rule("iron_filter", "tank", why)
    if facts.scales:
        why = (
            "Softener first: the air drives out what holds this water's chalk dissolved, and it "
            "settles on stones and float."
        )
        yield Rule("softener", "tank", why)
    why = "A feed pump runs with pump 1, and the open tank gives the soda ash time to mix."
    yield Rule("soda_ash", "tank", why)
    yield _stone_or_air(have, facts)


def _stone_or_air(have: set[str], facts: Facts) -> Rule:
    """Air before stone saves most of the stone, but not in every house."""
    if facts.iron and facts.acid and "iron_filter" in have:
        why = "Stone before the air here: the iron filter before the tank needs its pH."
        return Rule("neutralizer", "tank", why)
    if facts.scales and "softener" in have:
        why = "Stone before the air here: the softener before the tank must see its hardness."
        return Rule("neutralizer", "tank", why)
    if not facts.washes:
        why = (
            "Stone before the air here: behind the tank only pump 2 could wash the bed, and it may "
            "not pass so much."
        )
        return Rule("neutralizer", "tank", why)
    why = "Air before stone: what the air drives out for nothing takes no stone and no hardness."
    return Rule("tank", "neutralizer", why)


def broken(boxes: tuple[str, ...], facts: Facts) -> tuple[Rule, ...]:
    """The rules that a train breaks, the gravest first."""
    found = [
        rule
        for rule in rules(boxes, facts)
        if any(box == rule.first and rule.then in boxes[:place] for place, box in enumerate(boxes))
    ]
    return tuple(sorted(found, key=lambda rule: rule.level == "caution"))


def ordered(boxes: tuple[str, ...], facts: Facts) -> tuple[str, ...]:
    """The same boxes in an order that breaks no rule, and is the usual one where none speaks."""
    left, placed = sorted(boxes, key=USUAL.index), list[str]()
    holding = rules(boxes, facts)
    while left:
        waits = {rule.then for rule in holding if rule.first in left}
        free = next(box for box in left if box not in waits)
        placed.append(free)
        left.remove(free)
    return tuple(placed)


def reason(box: str, boxes: tuple[str, ...], facts: Facts) -> str:
    """Why a box stands where the rules put it: what it is for, and a rule for each side of it."""
    holding = rules(boxes, facts)
    behind = [rule.why for rule in holding if rule.then == box and rule.first != "sediment"]
    before = [rule.why for rule in holding if rule.first == box and rule.then not in _FINE]
    return " ".join(dict.fromkeys([PURPOSE[box], *behind[:1], *before[:1]]))
