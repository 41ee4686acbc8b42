"""One name, one quantity, in all calculators."""

from dataclasses import replace

import pytest

from calc.cautions import LOCAL_CODE
from calc.model import Answer, Calculator, Choice, Input, Output, Typed
from calc.units import flow, gal, gauge_pressure, gpm, volume
from calc.vocabulary import gathered, words
from tests.model.given import CALCULATORS

INLET = Input(
    name="inlet", label="Flow in", symbol="Q_i", kind=flow, default="5 gpm", origin="invented",
    low=1 * gpm, high=50 * gpm, measure="With a pail.",
)  # fmt: skip
LIMIT = Choice(
    name="limit", label="Limit", options={"before": "before", "after": "after"}, default="before",
    origin="invented", measure="Look.",
)  # fmt: skip
ONCE_NO_MORE = replace(INLET, name="run", once=False)


def using(name: str, *inputs: Input | Choice, **leaves: tuple[str, ...]) -> Calculator:
    """A calculator of these inputs, which its work takes by name, that gives two outputs."""
    arguments = ", ".join(each.name for each in inputs)
    work = eval(f"lambda {arguments}: answer", {"answer": Answer({}, (), ())})
    outputs = (
        Output(name="out_flow", label="Flow", kind=flow),
        Output(name="out_volume", label="Volume", kind=volume),
    )
    return Calculator(
        name=name, title=name, question="What?", inputs=inputs, outputs=outputs, work=work,
        cautions=(LOCAL_CODE,), sources=("nist-811",), leaves=leaves,
    )  # fmt: skip


def test_every_input_of_every_calculator_is_a_word() -> None:
    """The declarations: none is missing, and each serves wherever its name stands."""
    known = words()
    assert {*known} == {each.name for one in CALCULATORS for each in one.inputs}
    for one in CALCULATORS:
        for each in one.inputs:
            word = known[each.name]
            assert word.label == each.label
            assert word.take(Typed(each.default), "us") == each.take(Typed(each.default), "us")


@pytest.mark.parametrize(
    ("other", "differ"),
    [
        (replace(INLET, kind=gauge_pressure, default="5 psi", low=0, high=1e6), "kind"),
        (replace(INLET, symbol="Q"), "symbol"),
        (replace(INLET, label="Flow in, at its worst"), "label"),
        (replace(INLET, several=3), "several"),
        (replace(INLET, once=False), "once"),
        (replace(LIMIT, name="inlet", label="Flow in"), "kind, symbol, several, options"),
    ],
)
def test_one_name_with_two_meanings_is_refused(other: Input | Choice, differ: str) -> None:
    """The package's own rule: both calculators are named, and what they differ in."""
    says = f"^inlet of first and of second: not one {differ}$"
    with pytest.raises(ValueError, match=says):
        gathered([using("first", INLET), using("second", LIMIT, other)])


def test_one_choice_with_other_options_is_refused() -> None:
    """The package's own rule: an option kept on one page must be one on the next."""
    fewer = replace(LIMIT, options={"before": "before"})
    with pytest.raises(ValueError, match=r"^limit of first and of second: not one options$"):
        gathered([using("first", LIMIT), using("second", fewer)])


def test_every_conflict_is_told_at_once() -> None:
    """By reason: who mends declarations wants the whole list."""
    with pytest.raises(ValueError, match=r"inlet of .*; limit of .*"):
        gathered(
            [
                using("first", INLET, LIMIT),
                using("second", replace(INLET, symbol="Q"), replace(LIMIT, label="Stop")),
            ]
        )


def test_a_word_has_the_widest_range() -> None:
    """By reason: a value that any calculator can use may be kept."""
    narrow = replace(INLET, low=4 * gpm, high=6 * gpm)
    long = replace(INLET, low=2 * gpm, high=90 * gpm)
    word = gathered(using(f"c{i}", each) for i, each in enumerate((narrow, INLET, long)))["inlet"]
    assert isinstance(word, Input)
    assert (word.low, word.high) == (1 * gpm, 90 * gpm)
    assert (narrow.low, narrow.high) == (4 * gpm, 6 * gpm)


def test_an_output_is_left_as_an_input_of_its_kind() -> None:
    """By hand: a flow measured on one page is the flow in of another."""
    assert {*gathered([using("first", out_flow=("inlet",)), using("second", INLET)])} == {"inlet"}


@pytest.mark.parametrize(
    ("leaves", "says"),
    [
        ({"out_flow": ("outlet",)}, "first leaves out_flow as outlet: no input of its kind"),
        ({"out_volume": ("inlet",)}, "first leaves out_volume as inlet: no input of its kind"),
        ({"out_flow": ("limit",)}, "first leaves out_flow as limit: no input of its kind"),
        ({"out_flow": ("inlet", "run")}, "first leaves out_flow as run: no value of the job"),
    ],
)
def test_what_is_left_must_have_a_place(leaves: dict[str, tuple[str, ...]], says: str) -> None:
    """The package's own rule: the job can take what a calculator says it leaves."""
    tank = replace(INLET, name="tank", kind=volume, default="9 gal", low=gal, high=99 * gal)
    with pytest.raises(ValueError, match=f"^{says}$"):
        gathered([using("first", **leaves), using("second", INLET, LIMIT, ONCE_NO_MORE, tank)])
