"""What the house takes, and chlorine for its well: the answers by another way than their own."""

from math import pi

import pytest
from pint import UnitRegistry

from calc.charts import Bars, Chart
from calc.request import case_of
from calc.units import day, gal, gpm, mg, minute


def outputs(asked: str) -> dict[str, float | None]:
    case = case_of(asked.split())
    assert case.answer, case.errors
    return dict(case.answer.outputs)


def test_peak_demand_adds_the_hose() -> None:
    """By reason: a hose that runs anyway adds its flow to every peak, and to nothing else."""
    without, with_hose = outputs("peak_demand"), outputs("peak_demand hose_flow=5")
    for name in ("curve_peak", "counted_peak", "any_moment", "all_open"):
        assert (with_hose[name] or 0) - (without[name] or 0) == pytest.approx(5 * gpm)
    assert with_hose["units"] == without["units"]


def test_the_chart_of_peak_demand_crosses_where_the_answer_is() -> None:
    """By reason: at the answer the line is at or under what is accepted, one step before above."""
    case = case_of(["peak_demand"])
    assert case.answer
    (chart,) = case.answer.charts
    assert isinstance(chart, Chart)
    points = [(x, y) for x, y in chart.lines[0].points if y is not None]
    peak = case.answer.outputs["counted_peak"] or 0
    before = max(y for x, y in points if x > peak * (1 - 0.05) and x < peak * (1 - 1e-9))
    here = min(y for x, y in points if x <= peak * (1 + 1e-9))
    assert here <= chart.limits[0].y < before


def test_daily_demand_by_hand() -> None:
    """3 x 60 + 10 gal, 500 square feet of an inch in 3 days: 311.7 gal a week, 293.9 a day."""
    found = outputs("daily_demand")
    week = 500 * 144 / 231
    assert (found["biggest_day"] or 0) / gal == pytest.approx(190 + week / 3, rel=1e-12)
    assert (found["daily"] or 0) / (gal / day) == pytest.approx(190 + week / 7, rel=1e-12)
    assert (found["two_hours"] or 0) / (gal / minute) == pytest.approx(190 / 120, rel=1e-12)
    assert (found["new_york_day"] or 0) / gal == pytest.approx(330, rel=1e-12)


def test_the_family_of_an_extension_page() -> None:
    """[psu-needs]: 400 gallons a day are 400 gallons in two hours, 3.33 gpm."""
    found = outputs("daily_demand people=4 person_day=100 other_day=0 garden_area=0")
    assert (found["two_hours"] or 0) / gpm == pytest.approx(400 / 120, rel=1e-12)


def test_disinfection_against_pint() -> None:
    """The mass balance again in pint's units, well, pipe and tanks added up."""
    quantity = UnitRegistry().Quantity
    well = pi / 4 * 6**2 * 130 * quantity("inch**2 * foot")
    plumbing = pi / 4 * 1.049**2 * 400 * quantity("inch**2 * foot") + 60 * quantity("gallon")
    chlorine = (well + plumbing) * 100 * quantity("milligram / liter")
    bleach = chlorine / (60 * quantity("gram / liter"))
    granules = chlorine / 0.70
    liquid, dry = (
        outputs("disinfection"),
        outputs("disinfection shock_product=dry shock_strength=70"),
    )
    assert liquid["into_well"] == pytest.approx(bleach.to("m**3").magnitude, rel=1e-9)
    assert dry["weigh_well"] == pytest.approx(granules.to("kg").magnitude, rel=1e-9)
    assert liquid["weigh_well"] is dry["into_well"] is None
    first = (chlorine / well).to("mg/L").magnitude
    assert (liquid["first_level"] or 0) / (mg / 1e-3) == pytest.approx(first, rel=1e-9)


def test_the_bars_of_disinfection_add_up() -> None:
    """By reason: the chlorine of all places, times 2.4838, is what the acid neutralizes."""
    case = case_of(["disinfection", "open_tank_dosed=40"])
    assert case.answer
    bars = case.answer.charts[0]
    assert isinstance(bars, Bars)
    whole = sum(bar.value for bar in bars.bars)
    assert case.answer.outputs["neutralizer"] == pytest.approx(whole * 176.124 / 70.9, rel=1e-9)
