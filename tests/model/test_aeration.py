"""The aeration calculators by another way than their own."""

from math import exp

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from calc.calculators import calculator
from calc.charts import Chart
from calc.figures import agrees
from calc.model import Typed, solve
from calc.request import case_of
from calc.units import L, ft, gal, gpm, inch, minute, mm, pCi
from tests.model.given import patient, typed

many = settings(patient, max_examples=60)
cfm = ft**3 / minute
unit = pCi / L
HELD = 1 / 0.35016  # Weigel at 10 °C, by hand: 0.105 + 0.405 exp(-0.502)


def outputs(*words: str) -> dict[str, float]:
    case = case_of(words)
    assert case.answer, case.errors
    return {name: value for name, value in case.answer.outputs.items() if value is not None}


def test_basins_by_hand() -> None:
    """Three basins by the balance of each, one after the other, with air that holds radon."""
    found = outputs("aeration_removal", "air_radon=100")
    full, factor = found["saturation"], HELD * 12 * cfm / (5.6 * gpm)
    water, air = 20000.0, 100.0
    for _ in range(3):
        # a third of the air, which leaves f of the way from its own radon to the water's H′ x:
        # x_in - x = (S/3) f (x - air / H′)
        pull = factor / 3 * full
        water = (water + pull * air / HELD) / (1 + pull)
    assert found["treated_radon"] / unit == pytest.approx(water, rel=1e-4)
    assert found["removal"] == pytest.approx(1 - water / 20000, rel=1e-4)
    assert found["least_radon"] / unit == pytest.approx(100 / HELD, rel=1e-4)
    assert agrees(100 * found["formula_spread"], "2.9")


def test_pocket_calculation_of_the_default_bubble() -> None:
    """By hand: 18 in at 0.25 m/s is 1.829 s; K = 2.936e-4 m/s; u = 0.1504, f = 13.97 %."""
    u = 6 * 0.4 * 2.936e-4 * (18 * inch / 0.25) / (3 * mm * HELD)
    found = outputs("aeration_removal")
    assert found["saturation"] == pytest.approx(1 - exp(-u), rel=1e-3)


ways = st.sampled_from(["basins", "trays", "crossed"])


@many
@given(data=st.data(), way=ways)
def test_at_the_largest_flow_the_target_is_just_kept(data: st.DataObject, way: str) -> None:
    """The calculator asked again at its own answer: flow, air and stage each meet the claim."""
    declared = calculator("aeration_removal")
    fields = data.draw(typed(declared)) | {"aerator": Typed(way)}
    first = solve(declared, fields)
    assume(first.answer)
    assert first.answer
    found, target = first.answer.outputs, first.values["target_radon"]
    most, air = found["largest_flow"], found["air_needed"]
    assume(most is not None and 0.11 * gpm < most < 99 * gpm)
    assert most
    again = solve(declared, fields | {"aerator_flow": Typed(f"{most / gpm!r} gpm")})
    assert again.answer
    assert again.answer.outputs["treated_radon"] == pytest.approx(target, rel=1e-6)
    assume(air is not None and 0.11 * cfm < air < 499 * cfm)
    assert air
    again = solve(declared, fields | {"aerator_air": Typed(f"{air / cfm!r} cfm")})
    assert again.answer
    assert again.answer.outputs["treated_radon"] == pytest.approx(target, rel=1e-6)


@many
@given(data=st.data(), way=st.sampled_from(["basins", "trays"]), stages=st.integers(1, 7))
def test_one_more_stage_is_worth_its_air(data: st.DataObject, way: str, stages: int) -> None:
    """The calculator asked again with the stage, and with the air said to be as good."""
    declared = calculator("aeration_removal")
    fields = data.draw(typed(declared))
    fields |= {"aerator": Typed(way), "aerator_stages": Typed(str(stages))}
    first = solve(declared, fields)
    assume(first.answer)
    assert first.answer
    found = first.answer.outputs
    staged = solve(declared, fields | {"aerator_stages": Typed(str(stages + 1))})
    assert staged.answer
    assert staged.answer.outputs["treated_radon"] == pytest.approx(found["stage_radon"], rel=1e-9)
    air = found["stage_air"]
    assume(air is not None and air < 499 * cfm)
    assert air
    more = solve(declared, fields | {"aerator_air": Typed(f"{air / cfm!r} cfm")})
    assert more.answer
    assert more.answer.outputs["treated_radon"] == pytest.approx(found["stage_radon"], rel=1e-6)


@many
@given(data=st.data(), way=st.sampled_from(["basins", "trays"]))
def test_fewest_stages(data: st.DataObject, way: str) -> None:
    """Counted up: that many keep the target, one fewer does not."""
    declared = calculator("aeration_removal")
    fields = data.draw(typed(declared)) | {"aerator": Typed(way)}
    kept = []
    for stages in range(1, 9):
        case = solve(declared, fields | {"aerator_stages": Typed(str(stages))})
        assume(case.answer)
        assert case.answer
        treated, target = case.answer.outputs["treated_radon"], case.values["target_radon"]
        assert treated is not None
        assert isinstance(target, float)
        assume(abs(treated / target - 1) > 1e-6)
        if treated <= target:
            kept.append(stages)
    assert case.answer
    assert case.answer.outputs["stages_needed"] == (min(kept) if kept else None)


@many
@given(data=st.data(), way=ways)
def test_more_air_and_less_water_leave_less(data: st.DataObject, way: str) -> None:
    """By reason, whatever the kind of aerator; and the removal is a share."""
    declared = calculator("aeration_removal")
    fields = data.draw(typed(declared)) | {
        "aerator": Typed(way), "aerator_flow": Typed("5 gpm"), "aerator_air": Typed("20 cfm"),
    }  # fmt: skip
    cases = [
        solve(declared, fields | change)
        for change in ({}, {"aerator_air": Typed("22 cfm")}, {"aerator_flow": Typed("4.5 gpm")})
    ]
    assume(all(case.answer for case in cases))
    here, air, water = (case.answer.outputs["treated_radon"] or 0 for case in cases if case.answer)
    assert air <= here
    assert water <= here
    assert cases[0].answer
    assert 0 <= (cases[0].answer.outputs["removal"] or 0) <= 1


def test_the_picture_holds_the_readers_case() -> None:
    """By hand: the marked point lies on the line of the reader's own unit."""
    case = case_of(["aeration_removal"])
    assert case.answer
    (chart,) = case.answer.charts
    assert isinstance(chart, Chart)
    here = next(mark for mark in chart.marks if mark.here)
    line = next(each for each in chart.lines if each.label == "3 basins in a row")
    (left, low), (right, high) = min(
        zip(line.points, line.points[1:], strict=False), key=lambda two: abs(two[0][0] - here.x)
    )
    assert low is not None
    assert high is not None
    on_line = low + (high - low) * (here.x - left) / (right - left)
    assert here.y == pytest.approx(on_line, abs=1e-3)


def test_re_aeration_in_steps() -> None:
    """The tank by small steps of time: what each second's air carries off."""
    found = outputs("re_aeration", "air_radon=20")
    carried = HELD * 12 * cfm * found["saturation"] / (40 * gal)
    water, step, time = 20000.0, 0.02, 0.0
    while water > 300:
        middle = water - carried * (water - 20 / HELD) * step / 2
        water -= carried * (middle - 20 / HELD) * step
        time += step
    assert found["wait"] == pytest.approx(time, rel=1e-3)
    assert found["running_air"] / unit == pytest.approx(20000 * HELD, rel=1e-4)
    standing = 20000 * 40 / (40 + HELD * 20) * HELD
    assert found["standing_air"] / unit == pytest.approx(standing, rel=1e-4)


@many
@given(data=st.data())
def test_stiff_bubbles_and_foul_tanks_take_longer(data: st.DataObject) -> None:
    """By reason: the wait grows with the water and falls with the air."""
    declared = calculator("re_aeration")
    fields = data.draw(typed(declared)) | {
        "tank_water": Typed("50 gal"), "aerator_air": Typed("10 cfm"), "bubble_share": Typed("40"),
    }  # fmt: skip
    cases = [
        solve(declared, fields | change)
        for change in ({}, {"tank_water": Typed("60 gal")}, {"aerator_air": Typed("11 cfm")})
    ]
    assume(all(case.answer for case in cases))
    here, water, air = (case.answer.outputs["wait"] or 0 for case in cases if case.answer)
    assert air < here < water
    assert cases[0].answer
    assert (cases[0].answer.outputs["stiff_wait"] or 0) > here


def test_first_worked_column_by_the_calculator() -> None:
    """Worked beforehand: 6 in, 5 gpm, 10 °C, 30 parts of air, 25 mm rings: 5.34 m for 99 %."""
    found = outputs(
        "packed_tower", "aerator_flow=5", f"aerator_air={150 * gpm / cfm!r}", "tower_diameter=6",
        "raw_radon=30000", "tower_height=17.52",
    )  # fmt: skip
    assert found["packed_height"] == pytest.approx(5.34, rel=2e-3)
    assert found["sure_height"] == pytest.approx(5.34 / 0.7, rel=2e-3)
    assert agrees(100 * found["removal"], "99.0")


def test_spray_by_hand() -> None:
    """Worked beforehand: at five parts of air .6 becomes .576; three passes leave 7.6 %."""
    air = f"aerator_air={25 * gpm / cfm!r}"
    found = outputs(
        "spray_removal", "spray_way=passes", "aerator_flow=5", air, "passes=3",
        "raw_radon=10000",
    )  # fmt: skip
    assert agrees(found["chamber_removal"], "0.576")
    assert agrees(100 * found["removal"], "92.4")
    assert found["treated_radon"] / unit == pytest.approx(10000 * (1 - 0.5758) ** 3, rel=1e-3)
    assert found["passes_needed"] == 5  # 0.424⁴ is 3.2 %, 0.424⁵ is 1.4 %: 300 of 10 000 is 3 %


def test_spray_round_and_round_by_hand() -> None:
    """The tank's balance by hand: 10 gpm round, 5 through, 0.576 of it taken."""
    air = f"aerator_air={50 * gpm / cfm!r}"
    found = outputs("spray_removal", "aerator_flow=5", "around=10", air)
    assert found["treated_radon"] / unit == pytest.approx(20000 / (1 + 2 * 0.5758), rel=1e-3)
    assert found["around_needed"] == pytest.approx((20000 / 300 - 1) * 5 * gpm / 0.5758, rel=1e-3)


@pytest.mark.parametrize("way", ["basins", "trays", "crossed"])
def test_fouled_by_hand(way: str) -> None:
    """Trays asked again at half their efficiency; bubbles at a stiff skin's share, 15.7 %.

    Frössling over Higbie at 10 °C and 3 mm by hand: Re 574, Sc 1607; 4.62e-5 over 2.936e-4 m/s.
    """
    found = outputs("aeration_removal", f"aerator={way}")
    worse = ("bubble_share=15.72 %", "tray_efficiency=2.5 %")
    again = outputs("aeration_removal", f"aerator={way}", *worse)
    assert found["fouled_radon"] == pytest.approx(again["treated_radon"], rel=1e-3)
    assert found["fouled_radon"] > found["treated_radon"]
