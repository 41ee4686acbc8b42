"""Fixtures against scipy.stats, every mix listed one by one, and published curves."""

from itertools import product
from math import prod, sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from calc.figures import agrees
from calc.physics.fixtures import (
    FIXTURES,
    HUNTER_BUSY,
    ILLINOIS,
    INTERNATIONAL,
    NSPC_TANKS,
    NSPC_VALVES,
    STEP,
    Counts,
    Curve,
    bathrooms,
    binomial,
    curve_flow,
    flow_chances,
    load_units,
    most_at_once,
    peak_flow,
)
from calc.units import gpm
from tests.model.given import steady

TWO_BATHS = {
    "lavatories": 2, "kitchen_sinks": 1, "tub_showers": 1, "showers": 1, "toilets": 2,
    "washers": 1, "dishwashers": 1,
}  # fmt: skip
ONE_BATH = {"lavatories": 1, "kitchen_sinks": 1, "tub_showers": 1, "toilets": 1, "washers": 1}
houses = pytest.mark.parametrize("counts", [TWO_BATHS, ONE_BATH], ids=["two baths", "one bath"])


def mixes(counts: Counts) -> dict[int, float]:
    """Each fixture open or shut by itself, all 2 to the n of them listed."""
    every = [FIXTURES[name] for name, count in counts.items() for _ in range(int(count))]
    chances = dict[int, float]()
    for running in product((False, True), repeat=len(every)):
        flow = sum(each.flow for each, on in zip(every, running, strict=True) if on)
        chance = prod(
            each.busy if on else 1 - each.busy for each, on in zip(every, running, strict=True)
        )
        chances[round(flow / STEP)] = chances.get(round(flow / STEP), 0.0) + chance
    return chances


@houses
def test_chances_against_every_mix(counts: Counts) -> None:
    """All mixes written out: 512 for two baths."""
    listed = mixes(counts)
    found = flow_chances(counts)
    assert set(found) == set(listed)
    for flow, chance in found.items():
        assert chance == pytest.approx(listed[flow], rel=1e-12)


@houses
def test_chances_against_scipy(counts: Counts) -> None:
    """scipy.stats.binom for each kind, put together by numpy's convolution."""
    whole = np.array([1.0])
    for name, count in counts.items():
        step = round(FIXTURES[name].flow / STEP)
        alike = np.zeros(step * int(count) + 1)
        alike[::step] = stats.binom.pmf(np.arange(count + 1), count, FIXTURES[name].busy)
        whole = np.convolve(whole, alike)
    found = flow_chances(counts)
    for flow, chance in enumerate(whole):
        assert found.get(flow, 0.0) == pytest.approx(chance, rel=1e-9, abs=1e-15)


@houses
def test_peak_against_scipy(counts: Counts) -> None:
    """scipy.stats.rv_discrete's own percentile, with the moments of no flow and without them."""
    listed = mixes(counts)
    flows, chances = np.array(list(listed)), np.array(list(listed.values()))
    running = flows > 0
    for served in (0.9, 0.95, 0.99):
        every = stats.rv_discrete(values=(flows, chances)).ppf(served)
        busy = stats.rv_discrete(values=(flows[running], chances[running] / chances[running].sum()))
        found = flow_chances(counts)
        assert peak_flow(found, served, quiet=True) / STEP == pytest.approx(every)
        assert peak_flow(found, served) / STEP == pytest.approx(busy.ppf(served))


def test_two_baths() -> None:
    """Worked once apart from this code, with the same p and q: 9.0 gpm, 6.5 with quiet moments."""
    chances = flow_chances(TWO_BATHS)
    assert agrees(peak_flow(chances, 0.99) / gpm, "9.0")
    assert agrees(peak_flow(chances, 0.99, quiet=True) / gpm, "6.5")
    assert agrees(chances[0], "0.7869")
    assert agrees(max(chances) * STEP / gpm, "23.5")


def test_one_bath() -> None:
    """The same: 9.0 and 5.5 gpm, nothing runs in 0.85358 of the moments."""
    chances = flow_chances(ONE_BATH)
    assert agrees(peak_flow(chances, 0.99) / gpm, "9.0")
    assert agrees(peak_flow(chances, 0.99, quiet=True) / gpm, "5.5")
    assert agrees(chances[0], "0.85358")


def test_two_baths_beside_the_normal_curve() -> None:
    """Wistort's normal curve by hand: mean 0.738, deviation 1.642, 4.56 gpm; cut at zero 7.63.

    Both stay under what the count gives: a house has too few fixtures for a bell.
    """
    chances = flow_chances(TWO_BATHS)
    mean = sum(flow * chance for flow, chance in chances.items()) * STEP / gpm
    spread = sqrt(sum((flow * STEP / gpm - mean) ** 2 * chance for flow, chance in chances.items()))
    assert agrees(mean, "0.738")
    assert agrees(spread, "1.642")
    assert agrees(mean + 2.326 * spread, "4.56")
    still = chances[0]
    cut = (mean + 2.326 * sqrt((1 - still) * spread**2 - still * mean**2)) / (1 - still)
    assert agrees(cut, "7.63")
    assert cut < peak_flow(chances, 0.99) / gpm


@steady
@given(st.fixed_dictionaries({name: st.floats(0, 3) for name in FIXTURES}))
def test_parts_of_fixtures_keep_the_mean(counts: dict[str, float]) -> None:
    """By reason: chances make 1, and the mean flow is the sum of n p q, whatever n."""
    chances = flow_chances(counts)
    assert sum(chances.values()) == pytest.approx(1, rel=1e-12)
    mean = sum(flow * chance for flow, chance in chances.items()) * STEP
    wanted = sum(
        count * FIXTURES[name].busy * FIXTURES[name].flow for name, count in counts.items()
    )
    assert mean == pytest.approx(wanted, rel=1e-9, abs=1e-15)


@pytest.mark.parametrize(
    ("count", "most"), [(1, 1), (2, 2), (3, 2), (5, 3), (10, 5), (20, 8), (50, 17), (100, 30)]
)
def test_toilets_by_hunter(count: int, most: int) -> None:
    """[hunter-1940] p = 0.2, and scipy.stats.binom's percentile."""
    assert most_at_once(count, HUNTER_BUSY) == most == stats.binom.ppf(0.99, count, 0.2)


def test_flush_valves_by_hunter() -> None:
    """[hunter-1940] ten valves, 9 s in 300: more than one 0.0345, more than two 0.00276."""
    assert most_at_once(10, 9 / 300) == stats.binom.ppf(0.99, 10, 0.03) == 2
    more_than_one = 1 - binomial(10, 0, 0.03) - binomial(10, 1, 0.03)
    assert agrees(more_than_one, "0.0345")
    assert agrees(more_than_one - binomial(10, 2, 0.03), "0.00276")
    assert stats.binom.sf(2, 10, 0.03) == pytest.approx(more_than_one - binomial(10, 2, 0.03))


@pytest.mark.parametrize(
    ("units", "tanks", "valves"),
    [
        (5, "4.5", "22"), (6, "5", "23"), (7, "6", "24"), (8, "7", "25"), (9, "7.5", "26"),
        (10, "8", "27"), (11, "8.5", "28"), (12, "9", "29"), (13, "10", "29.5"), (14, "10.5", "30"),
        (120, "49", "74"), (140, "53", "78"), (160, "57", "83"), (180, "61", "87"),
        (200, "65", "91"), (225, "70", "95"), (250, "75", "100"), (300, "85", "110"),
        (400, "105", "125"), (500, "125", "140"), (750, "170", "175"), (1000, "210", "210"),
    ],
)  # fmt: skip
def test_rows_of_the_national_table(units: float, tanks: str, valves: str) -> None:
    """[nspc-b54] as printed."""
    assert agrees(curve_flow(NSPC_TANKS, units) / gpm, tanks)
    assert agrees(curve_flow(NSPC_VALVES, units) / gpm, valves)


@pytest.mark.parametrize(("units", "flow"), [row for row in ILLINOIS if 4 <= row[0] <= 14])
def test_two_tables_of_one_curve(units: float, flow: float) -> None:
    """[il-890-n] beside [nspc-b54], each read by itself: a gallon a minute apart at most."""
    assert curve_flow(NSPC_TANKS, units) / gpm == pytest.approx(flow, abs=1)


@pytest.mark.parametrize("rows", [NSPC_TANKS, INTERNATIONAL])
@pytest.mark.parametrize("units", [120, 200, 400, 500, 1000])
def test_all_curves_meet_in_large_buildings(rows: Curve, units: float) -> None:
    """[il-890-n] beside the two others: within 3 % from 120 fixture units on."""
    assert curve_flow(rows, units) == pytest.approx(curve_flow(ILLINOIS, units), rel=0.03)


def test_two_curves_differ_in_a_small_house() -> None:
    """[ipc-e103-3], from memory, beside [nspc-b54]: 14.6 and 8 gpm for 10 units."""
    assert agrees(curve_flow(INTERNATIONAL, 10) / gpm, "14.6")
    assert agrees(curve_flow(NSPC_TANKS, 10) / gpm, "8")


@pytest.mark.parametrize("rows", [NSPC_TANKS, NSPC_VALVES, ILLINOIS, INTERNATIONAL])
def test_curves_rise_and_end(rows: Curve) -> None:
    """By reason: more fixtures take more. Under the first row its flow, past the last none."""
    flows = [curve_flow(rows, units) for units, _ in rows]
    assert flows == sorted(flows)
    assert curve_flow(rows, 0.0) == rows[0][1] * gpm
    with pytest.raises(ValueError, match="no row"):
        curve_flow(rows, rows[-1][0] + 1)


def test_units_by_hand() -> None:
    """[ipc-e103]: two bathrooms of 3.6 and four more of 1.4; one bathroom and two."""
    assert bathrooms(TWO_BATHS) == 2
    assert load_units(TWO_BATHS) == pytest.approx(2 * 3.6 + 3 * 1.4, rel=1e-12)
    assert load_units(ONE_BATH) == pytest.approx(3.6 + 2 * 1.4, rel=1e-12)
    assert load_units({"lavatories": 2}) == pytest.approx(1.4, rel=1e-12)
