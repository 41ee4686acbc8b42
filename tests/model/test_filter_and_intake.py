"""The filter's date, the intake's heights and the check of interlocks, by another way."""

from math import sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats
from scipy.optimize import brentq

from calc.calculators import calculator
from calc.calculators.interlock_check import HAZARDS, RESULTS, UNTESTED
from calc.figures import agrees
from calc.model import Choice, Typed, solve
from calc.physics.restriction import flow_through_bed
from calc.request import case_of
from calc.units import day, ft, ftH2O, gal, gpm, inch, psi
from calc.views.record import Head, record
from tests.model.given import patient

many = settings(patient, max_examples=60)
GAUGES = np.array([44, 46, 43, 45, 44.0])
FLOWS = np.array([6.65, 6.65, 6.25, 6.1, 5.6])
METER = np.array([0, 3000, 6000, 9000, 12000.0])
LIFT = 6 * ftH2O / psi
REST = 1 / 1.087**2  # psi/gpm²


def outputs(*words: str) -> dict[str, float | None]:
    case = case_of(words)
    assert case.answer, case.errors
    return dict(case.answer.outputs)


def test_filter_due_by_hand() -> None:
    """The example in psi, gpm and gallons with numpy.polyfit; Fieller's band by root finder."""
    found = outputs("filter_due")
    beds = (GAUGES - LIFT) / FLOWS - FLOWS * REST
    critical = (40 - LIFT) / 4.8 - 4.8 * REST
    assert (found["bed_now"] or 0) / (psi / gpm) == pytest.approx(beds[-1], rel=1e-9)
    assert (found["critical"] or 0) / (psi / gpm) == pytest.approx(critical, rel=1e-9)

    slope, start = np.polyfit(METER, 1 / beds, 1, w=beds**2)
    reached = (1 / critical - start) / slope
    assert found["complete"] == pytest.approx((reached - 12000) / 150 * day, rel=1e-6)
    assert found["due"] == found["complete"]

    slope, start = np.polyfit(METER, beds, 1)
    reached = (critical - start) / slope
    assert found["cake"] == pytest.approx((reached - 12000) / 150 * day, rel=1e-6)


def test_earliest_end_by_hand() -> None:
    """[fieller-1954] by its meaning on the example: the band of the complete law, by numpy."""
    found = outputs("filter_due")
    beds = (GAUGES - LIFT) / FLOWS - FLOWS * REST
    critical = (40 - LIFT) / 4.8 - 4.8 * REST
    weights = beds**4
    design = np.vstack([np.ones(5), METER]).T
    inverse = np.linalg.inv(design.T @ (weights[:, None] * design))
    start, slope = inverse @ design.T @ (weights * -1 / beds)
    left = -1 / beds - start - slope * METER
    scatter = sqrt(float(np.sum(weights * left**2)) / 3)
    t = float(stats.t.ppf(0.95, 3))

    def above(volume: float) -> float:
        at = np.array([1, volume])
        width = t * scatter * sqrt(float(at @ inverse @ at))
        return float(start + slope * volume + width + 1 / critical)

    low = brentq(above, 8000, (-1 / critical - start) / slope, xtol=1e-6)
    assert found["due_surely"] == pytest.approx((low - 12000) / 150 * day, rel=1e-4)


def test_overdue_is_now() -> None:
    """By reason: once the bed has the resistance at which it is due, no time is left."""
    found = outputs("filter_due", "worst_outlet=5.4")
    assert (found["bed_now"] or 0) > (found["critical"] or 0)
    assert {found["due"], found["due_surely"], found["cake"], found["complete"]} == {0.0}


def test_what_a_lower_outlet_buys() -> None:
    """The calculator asked again with the outlet at nine tenths."""
    first, second = outputs("filter_due"), outputs("filter_due", f"worst_outlet={0.9 * 4.63}")
    later = (second["due"] or 0) - (first["due"] or 0)
    assert first["lower_buys"] == pytest.approx(later, rel=1e-9)


def test_outlet_of_a_filter_serviced_twice_as_often() -> None:
    """scipy's root finder on the pressures, with the bed of the law at half its end."""
    found = outputs("filter_due")
    beds = (GAUGES - LIFT) / FLOWS - FLOWS * REST
    slope, start = np.polyfit(METER, 1 / beds, 1, w=beds**2)
    half = ((found["due"] or 0) / day * 150 + 12000) / 2
    bed = 1 / (start + slope * half)
    brings = brentq(lambda q: bed * q + REST * q**2 - (40 - LIFT), 0, 20)
    assert (found["half_outlet"] or 0) / gpm == pytest.approx(brings - 0.17, rel=1e-6)


@many
@given(st.lists(st.floats(30, 60), min_size=5, max_size=5), st.floats(0.1, 1.0))
def test_the_gauge_of_the_day_does_not_matter(gauges: list[float], growth: float) -> None:
    """One filter read at any gauge gives one date: resistance is trended, not pressure drop."""
    meter = [0.0, 3000.0, 6000.0, 9000.0, 12000.0]
    beds = [0.3 * (1 + growth * v / 3000) for v in meter]
    flows = [
        flow_through_bed(gauge - LIFT, bed, REST) for gauge, bed in zip(gauges, beds, strict=True)
    ]
    case = solve(
        calculator("filter_due"),
        {
            "filter_flows": Typed("; ".join(f"{each!r} gpm" for each in flows)),
            "filter_gauges": Typed("; ".join(f"{each!r} psi" for each in gauges)),
            "filter_meter": Typed("; ".join(f"{each} gal" for each in meter)),
        },
    )
    assert case.answer, case.errors
    critical = (40 - LIFT) / 4.8 - 4.8 * REST
    true = (critical / 0.3 - 1) / growth * 3000
    if true < 20 * 12000:
        expected = max(true - 12000, 0) / 150 * day
        assert case.answer.outputs["cake"] == pytest.approx(expected, rel=1e-6)


def test_intake_depth_by_hand() -> None:
    """[ansi-hi-9-8] worked apart: 4.2534 in, over 1.77 ft²; then heights added up."""
    found = outputs("intake_depth")
    inches = {name: (value or 0) / inch for name, value in found.items()}
    each_inch = 1.77 * ft**2 * inch / gal
    assert agrees(inches["submergence"], "4.253")
    assert (found["unusable"] or 0) / gal == pytest.approx(4.2534 * each_inch, rel=1e-4)
    assert (found["usable"] or 0) / gal == pytest.approx(9.5 - 4.2534 * each_inch, rel=1e-4)
    assert inches["open_now"] == pytest.approx(9.5 / each_inch, rel=1e-9)
    assert inches["open_height"] == pytest.approx(4.2534 + 2 / each_inch, rel=1e-4)
    assert inches["close_height"] == pytest.approx(4.2534 + 3.5 / each_inch, rel=1e-4)
    assert inches["alarm_height"] == pytest.approx(5.2534 + 3.5 / each_inch, rel=1e-4)


def test_a_limit_after_the_pressure_tank_adds_its_drawdown() -> None:
    """By hand: pump 2 at 12 gpm wants 7.46 in, and a drawdown more than without it."""
    found = outputs("intake_depth", "limit=after")
    assert agrees((found["submergence"] or 0) / inch, "7.46")
    over = (found["open_height"] or 0) - (found["submergence"] or 0)
    assert over * 1.77 * ft**2 / gal == pytest.approx(7.9, rel=1e-9)


results = st.fixed_dictionaries({name: st.sampled_from(list(RESULTS)) for name in HAZARDS})


@many
@given(results)
def test_interlocks_in_the_order_of_mending(picked: dict[str, str]) -> None:
    """Counted again: what is broken in the order of harm, then what is not tested."""
    case = solve(
        calculator("interlock_check"), {name: Typed(each) for name, each in picked.items()}
    )
    assert case.answer
    broken = [name for name in HAZARDS if picked[name] in ("failed", "missing")]
    untested = [name for name in HAZARDS if picked[name] == "untested"]
    headline, *rest = case.answer.findings
    assert [each.head for each in rest] == [HAZARDS[name].head for name in broken + untested]
    assert [each.text.startswith(UNTESTED) for each in rest] == (
        [False] * len(broken) + [True] * len(untested)
    )
    assert case.answer.outputs == {
        "lock_play": pytest.approx(3.5 * gal),
        "open_hazards": len(broken),
        "untested": len(untested),
        "passed": len(HAZARDS) - len(broken) - len(untested),
    }
    grave = any(HAZARDS[name].level == "danger" for name in broken)
    expected = "danger" if grave else "caution" if broken or untested else "good"
    assert headline.level == expected


def test_every_hazard_is_an_input_in_its_order() -> None:
    """By reason: the list of hazards and the form are one list."""
    inputs = calculator("interlock_check").inputs
    assert [each.name for each in inputs if isinstance(each, Choice)] == list(HAZARDS)


def test_the_record_says_what_stands_open() -> None:
    """By reason: the sheet that is left holds each test's result and each open hazard."""
    case = case_of(["interlock_check", "low_float=failed"])
    page = record(case, Head(job="Quarry Road", date="2026-11-25"), {})
    assert HAZARDS["low_float"].head in page
    assert RESULTS["failed"] in page
    assert HAZARDS["bypass"].head not in page
