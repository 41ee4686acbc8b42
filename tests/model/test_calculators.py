"""The answers of the calculators by another way than their own."""

from math import sqrt

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from calc.calculators import calculator
from calc.figures import agrees
from calc.model import Typed, solve
from calc.request import case_of
from calc.units import ftH2O, gal, gpm, minute, psi
from tests.model.given import patient, typed

many = settings(patient, max_examples=100)


def outputs(*words: str) -> dict[str, float | None]:
    case = case_of(words)
    assert case.answer, case.errors
    return dict(case.answer.outputs)


def test_pail_flow_by_hand() -> None:
    """[jcgm-100] (5), (12), (G.2b) and Table G.2 worked by hand.

    5 gal ± 0.1 in 59.4, 60 and 60.6 s: scatter 1 %, u 1.3017 %, 51.7 degrees of freedom,
    t 2.01, plus or minus 2.616 % of 5 gpm.
    """
    found = outputs("pail_flow", "pail=5", "mark=0.1", "runs=59.4;60;60.6", "timing=0.1")
    assert found["flow"] == pytest.approx(5 * gpm, rel=1e-12)
    assert agrees(100 * (found["spread"] or 0), "1.00")
    assert agrees(100 * (found["plus_minus_share"] or 0), "2.616")
    assert agrees((found["plus_minus"] or 0) / gpm, "0.1308")


@many
@given(st.floats(0.5, 10), st.floats(0.0, 0.2), st.lists(st.floats(50, 60), min_size=3, max_size=6))
def test_runs_worth_taking(pail: float, off: float, runs: list[float]) -> None:
    """Counted up: the fewest runs, from 3 to 6, that leave the scatter a tenth of the doubt."""
    given_ = {
        "pail": Typed(f"{pail} gal"),
        "mark": Typed(f"{off * pail} gal"),
        "runs": Typed("; ".join(map(str, runs))),
    }
    case = solve(calculator("pail_flow"), given_)
    assert case.answer
    mean = sum(runs) / len(runs)
    steady = sqrt((off / sqrt(3)) ** 2 + (0.1 / mean) ** 2)
    spread = case.answer.outputs["spread"] or 0.0
    enough = (
        n for n in range(3, 6) if sqrt(steady**2 + spread**2 / n) <= 1.1 * steady * (1 + 1e-9)
    )
    assert case.answer.outputs["runs_worth"] == next(enough, 6)


def test_outlet_setting_by_hand() -> None:
    """[jcgm-106] 8.3.2 solved by scipy's root finder, and Darcy's law by hand, on the example.

    5.6 gpm at 44 psi, 40 psi at cut-in, 6 ft of lift: 5.059 gpm; serviced at 4.8 gpm.
    """
    found = outputs("outlet_setting", "limit=before")
    lift = 6 * ftH2O / psi
    assert 5.6 * (40 - lift) / (44 - lift) == pytest.approx(5.059, abs=5e-4)
    assert found["worst_inlet"] == pytest.approx(4.8 * gpm, rel=1e-12)
    doubt = 0.03 / 1.960  # what the inputs declare, where no plus-or-minus is given

    def gap(q: float) -> float:
        return 4.8 - 1.645 * doubt * sqrt(4.8**2 + q**2) - q

    assert (found["setting"] or 0) / gpm == pytest.approx(brentq(gap, 0, 4.8, xtol=1e-13), rel=1e-9)
    assert found["worst_outlet"] == 6 * gpm
    assert found["pail_setting"] == found["setting"]
    assert found["reserve"] == pytest.approx(9.5 * gal, rel=1e-12)
    assert found["lasts"] == pytest.approx(9.5 / 1.2 * minute, rel=1e-9)


def test_outlet_setting_after_the_pressure_tank_by_hand() -> None:
    """The square root of the pressures by hand: 6 gpm at 32 psi is 7.5 gpm at 50 psi."""
    found = outputs("outlet_setting", "limit=after", "house_gauge=32", "cut_out=50", "inlet=4")
    assert found["worst_outlet"] == pytest.approx(7.5 * gpm, rel=1e-12)
    assert found["pail_setting"] == pytest.approx((found["setting"] or 0) * 0.8, rel=1e-12)
    assert (found["reserve"] or 0) / gal == pytest.approx(9.5 - 5.906, abs=1e-3)


flows = st.floats(2, 12).map(lambda flow: f"{flow} gpm")


@many
@given(
    st.fixed_dictionaries(
        {
            "limit": st.sampled_from(["before", "after"]),
            "chance": st.sampled_from(["5", "1"]),
            "float_open": st.floats(6.5, 20).map(lambda volume: f"{volume} gal"),
            "inlet": flows,
            "service_at": flows,
        }
    ),
    st.floats(1, 20),
    st.floats(5, 100),
)
def test_a_safe_setting_runs_safe(asked: dict[str, str], draw: float, volume: float) -> None:
    """The other calculator: with the outlet at the setting, no draw uncovers the intake."""
    first = solve(calculator("outlet_setting"), {name: Typed(text) for name, text in asked.items()})
    assert first.answer
    found = first.answer.outputs
    assert (found["setting"] or 0) < (found["worst_inlet"] or 0)
    given_ = {name: first.typed[name] for name in ("limit", "float_open")} | {
        "worst_inlet": Typed(f"{(found['worst_inlet'] or 0) / gpm!r} gpm"),
        "worst_outlet": Typed(f"{(found['setting'] or 0) / gpm!r} gpm"),
        "float_closed": Typed("25 gal"),
        "draw_flow": Typed(f"{draw} gpm"),
        "draw_volume": Typed(f"{volume} gal"),
    }
    run = solve(calculator("tank_draw"), given_)
    assert run.answer, run.errors
    assert run.answer.outputs["dry_after"] is None
    assert (run.answer.outputs["lowest"] or 0) >= (found["reserve"] or 0) * (1 - 1e-9)


@many
@given(data=st.data())
def test_the_sure_time_is_sure(data: st.DataObject) -> None:
    """The whole run: the intake stays covered at least as long as the bound says."""
    declared = calculator("tank_draw")
    case = solve(declared, data.draw(typed(declared)))
    assume(case.answer)
    assert case.answer
    found = case.answer.outputs
    dry, sure = found["dry_after"], found["sure_time"]
    assert dry is None or (sure is not None and dry >= sure * (1 - 1e-9))


@many
@given(data=st.data())
def test_the_sure_draw_always_passes(data: st.DataObject) -> None:
    """The whole run, refill included: a hair less than "one draw that always passes" passes."""
    declared = calculator("tank_draw")
    first = solve(declared, data.draw(typed(declared)))
    assume(first.answer)
    assert first.answer
    sure = first.answer.outputs["sure_draw"]
    assume(sure is None or sure > 0.51 * gal)
    volume = 100 * gal if sure is None else min(sure * (1 - 1e-6), 500 * gal)
    again = {"draw_volume": Typed(f"{volume / gal!r} gal"), "start": Typed("worst")}
    second = solve(declared, {**first.typed, **again})
    assert second.answer
    assert second.answer.outputs["dry_after"] is None


def test_floats_that_nearly_touch() -> None:
    """By reason: a float that opens and closes at nearly one level is answered or refused."""
    case = case_of(["tank_draw", "float_open=9.5", "float_closed=9.501", "worst_inlet=20"])
    assert bool(case.answer) != bool(case.errors)
