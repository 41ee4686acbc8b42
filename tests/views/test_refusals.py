"""Every refusal in words."""

import json

import pytest

from calc.errors import Refused
from calc.request import case_of
from calc.views.browser import reply
from calc.views.reasons import REASONS
from calc.views.words import refusal_words

REFUSED = {
    "blank": ("inlet=", "Nothing stands here. For example 5.6 gpm."),
    "unreadable": ("inlet=five", "“five” is not a number. For example 5.6 gpm."),
    "ambiguous": ("inlet=1,234", "Is “1,234” a thousand-something or a decimal?"),
    "unknown unit": ("inlet=5 furlongs", "“furlongs” is no unit known here. For example 5.6 gpm."),
    "wrong kind": ("inlet=5 psi", "“psi” measures gauge pressure; here flow is wanted."),
    "sure unreadable": ("inlet=5 ± x", "“x” is no plus-or-minus."),
    "below": ("inlet=1 gal/h", "Too small: the arithmetic holds from 6.00 gal/h to 6 000 gal/h."),
    "above": ("inlet=400 L/min", "Too large: the arithmetic holds from 0.379 L/min to 379 L/min."),
    "too many": ("runs=1;2;3;4;5;6;7", "At most 6 readings."),
    "no such option": ("limit=beside", "“beside” is none of: before, after."),
    "no such input": ("no_such=1", "There is no such input."),
    "contradiction": (
        "cut_out=20",
        "Pump 2 stops at (cut-out) must be above the cut-in of 30 psi.",
    ),
}


@pytest.mark.parametrize("reason", REFUSED)
def test_every_refusal_in_words(reason: str) -> None:
    """By hand: what is wrong, in the unit that was typed."""
    asked, words = REFUSED[reason]
    name = "pail_flow" if asked.startswith("runs") else "outlet_setting"
    (error,) = case_of([name, asked]).errors
    assert error.reason == reason
    told = refusal_words(case_of([name, asked]), error)
    assert told.replace("\u00a0", " ").replace("\u202f", " ").startswith(words)
    assert "{" not in told


def test_a_word_without_a_value_is_refused() -> None:
    """By hand: the one refusal that no form can cause."""
    with pytest.raises(Refused) as refused:
        case_of(["outlet_setting", "inlet"])
    assert (refused.value.reason, refused.value.field) == ("no value", "inlet")


def test_a_request_of_another_shape_is_refused() -> None:
    """By hand: what a page brings out of damaged storage, where its dates were."""
    told = reply('{"do": "sheet-show", "job": "", "dates": {"filter": 5}}')
    assert "“dates” that cannot be one" in json.loads(told)["refused"]


def test_every_refusal_has_its_test() -> None:
    """The words declared: none is left untold above. What a job file may hold is told apart."""
    told = {reason for reason in REASONS if not reason.startswith("job ")}
    assert {*REFUSED, "no value", "request"} == told
