"""The calculators of pump, pipe and pressure tank by another way than their own."""

from contextlib import suppress
from math import pi

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calc.calculators import calculator
from calc.errors import Refused
from calc.figures import agrees
from calc.model import solve
from calc.pipes import PIPES
from calc.request import case_of
from calc.units import ft, gpm, psi
from tests.model.given import patient, typed

some = settings(patient, max_examples=40)
TEN = "water_coldest=50 °F"  # 10 °C, at which the operating point takes its water


def outputs(*words: str) -> dict[str, float | None]:
    case = case_of(words)
    assert case.answer, case.errors
    return dict(case.answer.outputs)


@pytest.mark.parametrize("name", PIPES)
def test_speed_in_every_pipe(name: str) -> None:
    """The trade's 0.4085 Q / d² ft/s, gpm and inches: every option leads to its own bore."""
    found = outputs("pipe_loss", f"pipe_kind={name}")
    bore = PIPES[name].bore
    assert found["bore"] == bore
    assert (found["speed"] or 0) / ft == pytest.approx(0.4085 * 8 / (bore / 0.0254) ** 2, rel=1e-3)


@pytest.mark.parametrize("gauge", ["cut_in", "cut_out"])
@pytest.mark.parametrize("pipe", ["pe-1", "copperL-1.25", "galvanized-1"])
def test_where_it_runs_the_head_is_the_total_head(gauge: str, pipe: str) -> None:
    """The other calculator: at the flow of the operating point it asks for the same head."""
    pipes = (f"drop_kind={pipe}", f"line_kind={pipe}")
    runs = outputs("operating_point", *pipes)
    flow = (runs[f"flow_{gauge}"] or 0) / gpm
    asks = outputs("total_head", f"wanted_pump={flow!r}", TEN, *pipes)
    wanted, given_ = ("head_cut_in", "head_in") if gauge == "cut_in" else ("head", "head_out")
    assert asks[wanted] == pytest.approx(runs[given_], rel=1e-9)


@pytest.mark.parametrize("left", [75, 90, 100])
def test_wear_is_found_again(left: float) -> None:
    """The other calculator: tested where a worn pump runs, it shows that wear."""
    level = ("well_level=80", "line_length=0", "well_fittings=0")
    runs = outputs("operating_point", f"head_left={left}", *level)
    flow = (runs["flow_cut_in"] or 0) / gpm
    found = outputs("pump_wear", f"tested_flow={flow!r}", "tested_gauge=40", "tested_level=80")
    assert found["head_left"] == pytest.approx(left / 100, rel=1e-9)


@some
@given(data=st.data())
def test_more_of_anything_never_brings_more(data: st.DataObject) -> None:
    """By reason: a lower level, a higher switch, a longer pipe, a worn pump bring less water."""
    declared = calculator("operating_point")
    case = solve(declared, data.draw(typed(declared)))
    assume(case.answer)
    assert case.answer
    values = dict(case.values)
    harder = {
        "well_level": 1.1, "well_cut_in": 1.01, "drop_length": 1.2, "well_fittings": 2.0,
        "head_left": 0.97,
    }  # fmt: skip
    name = data.draw(st.sampled_from(sorted(harder)))
    values[name] = float(values[name]) * harder[name]  # type: ignore[arg-type]
    if name == "well_cut_in":
        assume(values[name] < values["well_cut_out"])  # type: ignore[operator]
    before = case.answer.outputs["flow_cut_in"] or 0.0
    after = 0.0
    with suppress(Refused):  # where it no longer reaches cut-in
        after = case.work(values).outputs["flow_cut_in"] or 0.0
    assert after <= before * (1 + 1e-9)


def test_an_open_tank_asks_for_no_pressure() -> None:
    """By hand: 120 ft and 6 ft of lift, 10 psi of nozzle, friction of the page."""
    found = outputs("total_head", "well_feeds=open", "spent_before=10", TEN)
    static = 126 + 10 * psi / (999.7 * 9.80665) / ft
    assert ((found["head"] or 0) - (found["friction"] or 0)) / ft == pytest.approx(static, rel=1e-4)
    assert found["head_cut_in"] is None


def test_suction_by_hand() -> None:
    """Check set A20, and worked by hand: 32.9 ft at sea level and 25 °C, less 15, 8 and 2 ft."""
    found = outputs("suction_limit", "altitude=0", "water_warmest=25 °C", "suction_fittings=0",
                    "suction_kind=pe-2", "suction_length=1")  # fmt: skip
    assert agrees((found["lift_limit"] or 0) / ft, "32.9")
    assert (found["spare"] or 0) / ft == pytest.approx(32.9 - 25, abs=0.05)
    assert (found["highest_lift"] or 0) / ft == pytest.approx(32.9 - 10, abs=0.05)


def test_two_pumps_add() -> None:
    """By reason: pump 2 alone and the well pump alone, together."""
    both = outputs("pump_energy")["energy_batch"] or 0.0
    alone = outputs("pump_energy", "second_head=0")["energy_batch"] or 0.0
    assert outputs("pump_energy")["energy_second"] == pytest.approx(both - alone, rel=1e-9)


@some
@given(data=st.data())
def test_the_tank_wanted_runs_long_enough(data: st.DataObject) -> None:
    """Backwards: with that tank, rightly charged, the pump runs just the least time."""
    declared = calculator("pressure_tank")
    first = solve(declared, data.draw(typed(declared)))
    assume(first.answer)
    assert first.answer
    values = dict(first.values)
    values["well_tank"] = first.answer.outputs["tank_wanted"] or 0.0
    values["well_precharge"] = first.answer.outputs["precharge_right"] or 0.0
    again = first.work(values)
    assert again.outputs["run_time"] == pytest.approx(values["run_least"], rel=1e-9)
    assert again.outputs["drawdown"] == pytest.approx(again.outputs["drawdown_right"], rel=1e-9)


def test_bores_are_diameters() -> None:
    """By reason: a flow over the circle of the bore is the speed."""
    found = outputs("pipe_loss")
    assert found["speed"] == pytest.approx(8 * gpm / (pi * (found["bore"] or 1) ** 2 / 4), rel=1e-9)
