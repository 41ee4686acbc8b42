"""Answers that are counted: what their page offers, and how they are counted for longer."""

import json
from typing import Any

import pytest

from calc.__main__ import main
from calc.calculators import calculator, names
from calc.model import Simulation, Typed, solve
from calc.views.browser import reply
from calc.views.page import section
from calc.views.sure import sureness
from calc.views.tools import COUNTED
from tests.views.reading import read

SIMULATED = [name for name in names() if calculator(name).simulation]
each_simulated = pytest.mark.parametrize("name", SIMULATED)


def asked(name: str, do: str, **more: Any) -> dict[str, Any]:
    request = {"calculator": name, "key": name, "root": "", "units": "us", "do": do, **more}
    told: dict[str, Any] = json.loads(reply(json.dumps(request)))
    return told


def simulation_of(name: str) -> Simulation:
    simulation = calculator(name).simulation
    assert simulation
    return simulation


def test_there_are_some() -> None:
    """By reason: with none of them the tests below would prove nothing."""
    assert {"year_of_draws", "first_fix"} <= {*SIMULATED}


@pytest.mark.parametrize("name", names())
def test_what_a_page_offers(name: str) -> None:
    """The model: what is counted is not worked backwards nor varied, and can be counted for
    longer; what makes no trials has no plus-or-minus to type. Everything else the other way."""
    root = read(section(solve(calculator(name)), "key", ""))
    does = {e.attributes["data-do"] for e in root.all("button") if "data-do" in e.attributes}
    boxes = [e for e in root.all("input") if "data-sure" in e.attributes]
    counted = name in SIMULATED
    assert ({"longer", "enough"} <= does) is counted
    assert ({"backwards", "varied"} <= does) is not counted
    assert bool(boxes) == bool(calculator(name).trials)


@each_simulated
def test_it_carries_its_own_interval(name: str) -> None:
    """The model: no plus-or-minus is found, whatever the inputs' own."""
    assert sureness(solve(calculator(name), {"worst_inlet": Typed("3 gpm ± 1 gpm")})) == {}


@each_simulated
def test_in_pieces_as_at_once(name: str) -> None:
    """By reason: the tally of nine weeks is that of two, three and four one after another."""
    tally: dict[str, float] = {}
    for weeks in (2, 3, 4):
        told = asked(name, "longer", weeks=weeks, tally=tally or None)
        tally = told["tally"]
    once = asked(name, "longer", weeks=9)
    assert tally["weeks"] == 9
    assert tally == pytest.approx(once["tally"], rel=1e-12)
    assert told["says"] == once["says"]
    assert "9 weeks" in told["counted"]
    assert read(told["answer"]).text == read(once["answer"]).text


@each_simulated
def test_the_first_answer_is_that_of_its_weeks(name: str) -> None:
    """By reason: to count longer goes on from there, and does not count something else."""
    case = solve(calculator(name))
    assert case.answer
    (weeks,) = {s.given["n_c"].value for s in case.answer.steps if "n_c" in s.given}
    tally = simulation_of(name).more(case.values, {}, int(weeks))
    assert simulation_of(name).told(case.values, tally).outputs == case.answer.outputs


def test_more_weeks_narrow_the_interval() -> None:
    """[clopper-1934]: the interval of many weeks is narrower than that of few."""
    fields = {"hose_days": Typed("0 %"), "worst_outlet": Typed("5.6 gpm")}
    case, simulation = solve(calculator("year_of_draws"), fields), simulation_of("year_of_draws")
    widths = []
    for weeks in (20, 400):
        outputs = simulation.told(case.values, simulation.more(case.values, {}, weeks)).outputs
        high, low = outputs["chance_high"], outputs["chance_low"]
        assert high is not None
        assert low is not None
        widths.append(high - low)
    assert widths[1] < widths[0]


@each_simulated
def test_a_request_is_bounded(name: str) -> None:
    """By reason: a page that asks for no week gets one, and wrong figures get no count."""
    assert asked(name, "longer", weeks=-5)["tally"]["weeks"] == 1
    wrong = {"worst_inlet": {"text": "x"}}
    assert asked(name, "longer", weeks=2, fields=wrong) == {"tally": None}


def test_what_is_computed_is_not_counted() -> None:
    """By reason: only a calculator with a simulation has more weeks to give."""
    assert asked("tank_draw", "longer", weeks=2) == {"tally": None}


@each_simulated
def test_backwards_and_varied_say_why_not(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    """By reason: a hundred counts would pass the page's limit."""
    free, wanted = "worst_inlet", calculator(name).outputs[0].name
    told = asked(name, "backwards", wanted=wanted, target="1", free=free)
    assert COUNTED in told["found"]
    assert COUNTED in asked(name, "varied", varied=free, seen=wanted)["drawn"]
    assert main([name, "--solve", free, f"{wanted}=1"]) == 2
    assert COUNTED in capsys.readouterr().err
