"""Stages of treatment: what each may not lose, and which way it may move the water."""

from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.physics.calcite import CALCITE, CALCIUM_MOLAR, SODA_ASH, water_of_ph
from calc.physics.carbonate import CACO3_EQUIVALENT, co2_at_rest, from_ph
from calc.physics.radon_solubility import ICE_POINT
from calc.physics.softening import SODIUM, exchanged, salt_in_water
from calc.physics.train import (
    AIR_CO2,
    BOXES,
    TANKS,
    Plant,
    Stop,
    bed_loss,
    flow_through_boxes,
    followed,
    through,
)
from calc.physics.treated_water import (
    IRON_MOLAR,
    SOFT,
    Treated,
    aired,
    charge,
    cleared,
    dissolving,
    fed,
    iron_filtered,
    oxidized,
    softened,
)
from calc.units import L, gal, gpm, inch, mg, psi
from tests.model.given import steady

EVERY_BOX = (*BOXES, *TANKS)


@st.composite
def waters(draw: st.DrawFn) -> Treated:
    """A well's water, soft or hard, acid or not, with iron or without."""
    alkalinity = draw(st.floats(0.1, 8))
    kelvin = ICE_POINT + draw(st.floats(2, 30))
    ph = draw(st.floats(5.2, 8.8))
    strength = draw(st.floats(0.5, 20))
    assume(from_ph(ph, alkalinity, kelvin, strength).co2 < co2_at_rest(kelvin, 1.0))
    body = water_of_ph(ph, alkalinity, draw(st.floats(0.05, 5)), kelvin, strength)
    return Treated(body, draw(st.floats(0, 2)), iron=draw(st.floats(0, 0.2)))


plants = st.builds(
    Plant,
    st.floats(0.5, 20).map(lambda flow: flow * gpm),
    st.floats(5, 80).map(lambda pressure: pressure * psi),
    st.floats(5, 80).map(lambda pressure: pressure * psi),
    st.floats(6, 24).map(lambda bore: 3.14159 / 4 * (bore * inch) ** 2),
    st.floats(1, 300).map(lambda volume: volume * gal),
)
PLANT = Plant(5.6 * gpm, 40 * psi, 30 * psi, 0.073, 9.5 * gal)


@st.composite
def trains(draw: st.DrawFn) -> tuple[str, ...]:
    """Up to six boxes in any order, one of them perhaps an open tank."""
    boxes = draw(st.lists(st.sampled_from(list(BOXES)), max_size=5))
    if draw(st.booleans()):
        place = draw(st.integers(0, len(boxes)))
        boxes.insert(place, draw(st.sampled_from(list(TANKS))))
    return tuple(boxes)


@steady
@given(waters(), trains(), plants)
def test_charge_is_kept_through_every_stage(
    raw: Treated, boxes: tuple[str, ...], plant: Plant
) -> None:
    """By reason: water has no charge, so alkalinity moves with what carries it and with nothing
    else."""
    for stop in followed(raw, boxes, plant):
        assert charge(stop.water) == pytest.approx(charge(raw), abs=1e-9)


@steady
@given(waters(), trains(), plants)
def test_mass_is_kept_through_every_stage(
    raw: Treated, boxes: tuple[str, ...], plant: Plant
) -> None:
    """By reason: alkalinity comes from stone or soda ash, and goes with iron that rusts; carbon
    comes with it, and goes only into air; iron is dissolved, rust, or held."""
    for before, after in pairwise(followed(raw, boxes, plant)):
        one, other = before.water, after.water
        rose = other.body.alkalinity - one.body.alkalinity
        carbon = other.body.dic - one.body.dic
        hardness = (other.hardness - one.hardness) / (2 * CACO3_EQUIVALENT)
        if after.box == "neutralizer":
            assert (hardness, carbon) == pytest.approx((rose / 2, rose / 2), abs=1e-9)
        elif after.box == "soda_ash":
            sodium = other.sodium - one.sodium
            assert (sodium, carbon) == pytest.approx((rose, rose / 2), abs=1e-9)
        elif after.box in TANKS or after.box == "iron_filter":
            assert rose == pytest.approx(-2 * (one.iron - other.iron), abs=1e-9)
            assert hardness == pytest.approx(0, abs=1e-12)
        else:
            assert (rose, carbon) == (0, 0)
        if after.box in TANKS:
            assert other.iron + other.rust == pytest.approx(one.iron + one.rust, abs=1e-12)
        assert other.iron + other.rust <= one.iron + one.rust + 1e-12
        assert min(other.iron, other.rust, other.body.calcium, other.magnesium) >= 0


@steady
@given(waters(), st.lists(st.floats(0, 0.999), min_size=2, max_size=6))
def test_the_more_carbon_dioxide_leaves_the_higher_the_ph(
    raw: Treated, shares: list[float]
) -> None:
    """By reason: alkalinity stays, so every bit of carbon dioxide that leaves raises the pH."""
    rest = co2_at_rest(raw.body.temperature, AIR_CO2)
    assume(raw.body.state().co2 > rest)
    told = [aired(raw, share, rest) for share in sorted(shares)]
    phs = [water.body.state().ph for water in told]
    assert phs == sorted(phs)
    assert phs[0] >= raw.body.state().ph - 1e-9
    assert all(water.body.alkalinity == raw.body.alkalinity for water in told)
    assert [water.radon for water in told] == sorted((w.radon for w in told), reverse=True)


@steady
@given(waters(), trains(), plants)
def test_pressure_falls_except_at_pumps(raw: Treated, boxes: tuple[str, ...], plant: Plant) -> None:
    """By reason: only a pump gives pressure; an open tank takes all of it."""
    for before, after in pairwise(followed(raw, boxes, plant)):
        if after.box == "pump":
            assert (before.pressure, after.pressure) == (0, plant.house)
        elif after.box in TANKS:
            assert after.pressure == 0
        else:
            assert after.pressure <= before.pressure
            assert after.flow == before.flow


@steady
@given(trains(), plants)
def test_no_more_flows_than_the_pressure_pushes(boxes: tuple[str, ...], plant: Plant) -> None:
    """The other way round: at the flow found, the boxes take no more than there is, and all of it
    where the flow wanted does not come through."""
    line = [BOXES[box] for box in boxes if box in BOXES]
    flow = flow_through_boxes(line, plant.well, plant, 283.15)
    spent = sum(bed_loss(box, flow, plant, 283.15) for box in line)
    assert 0 < flow <= plant.flow
    assert spent <= plant.well * (1 + 1e-9)
    if flow < plant.flow:
        assert spent == pytest.approx(plant.well, rel=1e-6)


@steady
@given(waters())
def test_a_softener_gives_the_sodium_that_its_page_does(raw: Treated) -> None:
    """`softening.salt_in_water`, a second method in mass: 0.4594 mg of sodium for each mg/L."""
    soft = softened(raw)
    assert soft.hardness == pytest.approx(min(SOFT, raw.hardness))
    taken = exchanged(raw.hardness - soft.hardness, IRON_MOLAR * (raw.iron - soft.iron), 0.0)
    assert SODIUM * soft.sodium == pytest.approx(salt_in_water(taken), rel=2e-4, abs=1e-12)


@steady
@given(waters(), st.floats(6.5, 8.5))
def test_soda_ash_never_lowers_the_ph(raw: Treated, ph: float) -> None:
    """By reason: a feed cannot be set below nothing."""
    after = fed(raw, SODA_ASH, ph).body.state().ph
    assert after == pytest.approx(max(ph, raw.body.state().ph), abs=1e-6)


def soft(ph: float, iron: float = 0.0) -> Treated:
    body = water_of_ph(ph, 0.3997, 6e-3 / CALCIUM_MOLAR, 283.15, 0.98)
    return Treated(body, iron=iron * (mg / L) / IRON_MOLAR)


@pytest.mark.parametrize(("removed", "ph"), [(0.5, 6.50), (0.8, 6.90), (0.9, 7.20), (0.95, 7.50)])
def test_air_raises_the_ph_by_the_logarithm_of_what_it_leaves(removed: float, ph: float) -> None:
    """By PHREEQC, a soft water of pH 6.2; air without carbon dioxide."""
    assert aired(soft(6.2), removed, 0.0).body.state().ph == pytest.approx(ph, abs=0.02)


def test_a_bed_of_greensand_wants_its_ph() -> None:
    """By hand: under 6.7 dissolved iron goes through, rust does not."""
    acid = iron_filtered(soft(6.5, iron=2.0)._replace(rust=0.01))
    assert (acid.rust, acid.iron) == (0, soft(6.5, iron=2.0).iron)
    assert iron_filtered(soft(7.0, iron=2.0)).all_iron == 0


def test_rust_stays_in_a_fine_filter_and_passes_a_coarse_one() -> None:
    """By hand."""
    rusty = oxidized(soft(7.5, iron=2.0), 0.5)
    assert cleared(rusty).all_iron == pytest.approx(1.0 * (mg / L))
    assert through("sediment", rusty, PLANT.flow, PLANT) == rusty
    assert through("uv", rusty, PLANT.flow, PLANT).rust == 0


def test_stone_adds_calcium_and_alkalinity() -> None:
    """Conservation: 50 mg/L of calcite is 50 mg/L of hardness and of alkalinity."""
    raw = soft(6.2)
    after = dissolving(raw, CALCITE, 50 * (mg / L) / CALCITE.molar)
    assert after.hardness - raw.hardness == pytest.approx(50 * (mg / L))
    more = (after.body.alkalinity - raw.body.alkalinity) * CACO3_EQUIVALENT
    assert more == pytest.approx(50 * (mg / L))


def test_a_train_without_boxes_is_its_well() -> None:
    """By hand."""
    raw = soft(6.2)
    assert followed(raw, (), PLANT) == (Stop("well", raw, PLANT.well, PLANT.flow),)


def test_slower_flow_gets_more_stone() -> None:
    """By reason: the bed gives the same water more time."""
    phs = [
        through("neutralizer", soft(6.2), flow * gpm, PLANT).body.state().ph for flow in (8, 4, 1)
    ]
    assert 6.5 < phs[0] < phs[1] < phs[2]
