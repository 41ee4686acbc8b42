"""Working backwards in words, for every figure of every calculator."""

from collections.abc import Iterator

import pytest

from calc.calculators import calculator, names
from calc.model import Input, solve
from calc.views import backwards as views
from calc.views.backwards import Told, backwards

WORKED = [name for name in names() if not calculator(name).simulation]
NONE = ("No value of", "does not change", "has no value")
FAR = "1e30"  # no answer is as large as this, in any unit


@pytest.fixture(autouse=True, scope="module")
def few_cells() -> Iterator[None]:
    """A coarser search, a tenth as long, asks as far below and above the range."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(views, "CELLS", 8)
        patch.setattr(views, "SLOW_CELLS", 8)
        yield


def told_of(name: str, text: str = FAR) -> dict[str, Told]:
    """What is said of each figure for its calculator's first answer that is a number."""
    case = solve(calculator(name))
    assert case.answer
    outputs = case.answer.outputs
    numbers = [each for each in case.calculator.outputs if isinstance(outputs[each.name], float)]
    free = [e.name for e in case.calculator.inputs if isinstance(e, Input) and e.several == 1]
    return {each: backwards(case, numbers[0].name, text, each) for each in free}


@pytest.mark.parametrize("name", WORKED)
def test_out_of_reach(name: str) -> None:
    """By reason: far past its range a figure may have no meaning, but a sentence says so."""
    told = told_of(name).values()
    assert told
    assert not any(each.values for each in told)
    assert all(any(word in str(each) for word in NONE) for each in told)


def test_why_there_is_none() -> None:
    """By reason: a tank that never runs dry has no time of it; pH asks for no daily use."""
    never = backwards(solve(calculator("pressure_draw")), "dry_after", "9 min", "draw_volume")
    assert never.sentences == (
        "“The intake uncovers at” has no value, whatever “Water the draw takes” is from "
        "0.5\xa0gal to 100\xa0gal.",
    )
    level = told_of("neutralizer")["daily_use"]
    assert level.sentences == (
        "“Water used in a day” does not change “pH at the largest flow, bed full”.",
    )


def test_no_temperature_is_ten_times_another() -> None:
    """The definition of a temperature scale: its zero is not nothing. The arithmetic of this one
    would go on, and ask for water of 300 °F."""
    told = backwards(solve(calculator("aerated_ph")), "co2_before", "98 mg/L", "water_temperature")
    assert "No value of" in told.sentences[0]
    assert "It would take" not in str(told)
    assert "It would take" in str(told_of("carbonate", "0.0001 mg/L")["raw_ph"])
