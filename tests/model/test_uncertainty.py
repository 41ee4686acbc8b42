"""`uncertainty`: printed examples, closed forms, and trials by another library."""

from collections.abc import Callable, Mapping
from math import ceil, exp, hypot, isfinite, nan, sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from scipy.stats import norm

from calc.errors import Refused
from calc.figures import agrees
from calc.uncertainty import NORMAL_95, PROBES, TRIALS, Limits, Sure, propagated
from tests.model.given import steady

type Values = Mapping[str, float]
type Array = NDArray[np.float64]
nm, mm = 1e-9, 1e-3
ANYWHERE: Limits = {}


def one(
    function: Callable[[Values], float | None],
    values: Values,
    sures: Values,
    limits: Limits = ANYWHERE,
) -> Sure:
    """How sure a single output is."""
    return propagated(lambda x: {"y": function(x)}, values, sures, limits)["y"]


def moves(sure: Sure) -> dict[str, float]:
    return {part.name: part.moves for part in sure.parts}


END_GAUGE = {
    "l_S": 50.000623 * mm,
    "d": 215 * nm,
    "a_S": 11.5e-6,
    "th": -0.1,
    "da": 0.0,
    "dth": 0.0,
}
END_GAUGE_U = {
    "l_S": 25 * nm,
    "d": 9.7 * nm,
    "a_S": 1.2e-6,
    "th": 0.41,
    "da": 0.58e-6,
    "dth": 0.029,
}


def end_gauge(x: Values) -> float:
    return x["l_S"] + x["d"] - x["l_S"] * (x["da"] * x["th"] + x["a_S"] * x["dth"])


def end_gauge_sure() -> Sure:
    return one(end_gauge, END_GAUGE, {name: NORMAL_95 * u for name, u in END_GAUGE_U.items()})


def test_end_gauge_contributions() -> None:
    """[jcgm-100] H.1, printed: 50.000838 mm, u_c = 32 nm from 25, 9.7, 0, 0, 2.9 and 16.6 nm.

    Seen second-hand, in tests of three open libraries. 16.6 is cut off, not rounded:
    50.000623 mm times 11.5e-6 times 0.029 is 16.675 nm.
    """
    sure = end_gauge_sure()
    found = {name: move / NORMAL_95 / nm for name, move in moves(sure).items()}
    assert agrees(sure.value / mm, "50.000838")
    assert agrees(hypot(*found.values()), "32")
    assert agrees(found["l_S"], "25")
    assert agrees(found["d"], "9.7")
    assert (found["a_S"], found["th"]) == (0, 0)
    assert agrees(found["da"], "2.9")
    assert found["dth"] == pytest.approx(-16.675, abs=0.001)


def test_end_gauge_is_bent() -> None:
    """[jcgm-100] H.1.7, printed: 34 nm with the terms of second order, seen second-hand.

    The product of two inputs that are about 0 adds 11.9 nm to 32 nm: too much to call the
    answer straight. The trials have 3 % of noise.
    """
    sure = end_gauge_sure()
    assert sure.by_trials
    assert sure.plus_minus / NORMAL_95 / nm == pytest.approx(34, rel=0.05)
    assert sure.missing == 0


def test_sum_of_four() -> None:
    """JCGM 101:2008, 9.2.2, printed: u = 2.0, 95 % between -3.92 and 3.92 (from memory)."""
    names = "abcd"
    sure = one(
        lambda x: sum(x.values()), dict.fromkeys(names, 0.0), dict.fromkeys(names, NORMAL_95)
    )
    assert agrees(sure.plus_minus / NORMAL_95, "2.0")
    assert agrees(sure.low, "-3.92")
    assert agrees(sure.high, "3.92")
    assert not sure.by_trials


@settings(steady)
@given(st.floats(1, 100), st.floats(1, 100), st.floats(1e-4, 0.05), st.floats(1e-4, 0.05))
def test_product_and_quotient(a: float, b: float, sure_a: float, sure_b: float) -> None:
    """[jcgm-100] equation (12): relative uncertainties add by their squares. A quotient's end
    departs from its tangent by the square of the relative uncertainty."""
    values, sures = {"a": a, "b": b}, {"a": sure_a * a, "b": sure_b * b}
    together = hypot(sure_a, sure_b)
    product = one(lambda x: x["a"] * x["b"], values, sures)
    quotient = one(lambda x: x["a"] / x["b"], values, sures)
    assert product.plus_minus / product.value == pytest.approx(together, rel=1e-9)
    assert quotient.plus_minus / quotient.value == pytest.approx(
        together, rel=1.01 * sure_b**2 + 1e-9
    )
    assert not product.by_trials
    assert not quotient.by_trials


def by_numpy(
    function: Callable[[Mapping[str, Array]], Array], values: Values, sures: Values
) -> Array:
    """Ends of the middle 95 % of 200,000 trials."""
    rng = np.random.default_rng(20240229)
    drawn = {k: rng.normal(x, sures.get(k, 0.0) / 1.96, 200_000) for k, x in values.items()}
    return np.asarray(np.quantile(function(drawn), [0.025, 0.975]), dtype=np.float64)


def test_smooth_against_trials_by_numpy() -> None:
    """A flow through a throttle that was measured at another pressure: a second method."""
    values = {"Q": 4.0, "p": 40.0, "P": 55.0}
    sures = {"Q": 0.3, "p": 2.0, "P": 3.0}
    sure = one(lambda x: x["Q"] * sqrt(x["P"] / x["p"]), values, sures)
    ends = by_numpy(lambda x: x["Q"] * np.sqrt(x["P"] / x["p"]), values, sures)
    assert not sure.by_trials
    assert (sure.low, sure.high) == pytest.approx(tuple(ends), rel=0.005)
    assert sure.plus_minus == pytest.approx((ends[1] - ends[0]) / 2, rel=0.015)


BENT: dict[str, tuple[Callable[[Values], float], Callable[[Mapping[str, Array]], Array]]] = {
    "root near 0": (
        lambda x: sqrt(max(x["a"] - 0.9 * x["b"], 0.0)),
        lambda x: np.sqrt(np.maximum(x["a"] - 0.9 * x["b"], 0.0)),
    ),
    "lesser": (lambda x: min(x["a"], x["b"]), lambda x: np.minimum(x["a"], x["b"])),
    "reciprocal": (lambda x: x["b"] / x["a"] ** 2, lambda x: x["b"] / x["a"] ** 2),
    "square at its bottom": (
        lambda x: (x["a"] - 1) ** 2 + (x["b"] - 1) ** 2,
        lambda x: (x["a"] - 1) ** 2 + (x["b"] - 1) ** 2,
    ),
    "product of errors": (
        lambda x: (x["a"] - 1) * (x["b"] - 1),
        lambda x: (x["a"] - 1) * (x["b"] - 1),
    ),
}


@pytest.mark.parametrize(("function", "array_function"), BENT.values(), ids=BENT)
def test_bent_against_trials_by_numpy(
    function: Callable[[Values], float], array_function: Callable[[Mapping[str, Array]], Array]
) -> None:
    """A second method. A thousand trials leave 3 % of noise in the width, more in one end."""
    values, sures = {"a": 1.0, "b": 1.0}, {"a": 0.35, "b": 0.2}
    sure = one(function, values, sures)
    low, high = by_numpy(array_function, values, sures)
    assert sure.by_trials
    assert sure.low == pytest.approx(min(low, sure.value), abs=0.07 * (high - low))
    assert sure.high == pytest.approx(max(high, sure.value), abs=0.07 * (high - low))
    assert sure.plus_minus == pytest.approx((sure.high - sure.low) / 2)
    assert sure.low <= sure.value <= sure.high


def test_one_bent_input_has_no_noise() -> None:
    """Against the normal distribution: a rising answer keeps the quantiles of its input."""
    sure = one(lambda x: exp(x["a"]), {"a": 1.0}, {"a": 0.5})
    ends = norm.ppf([0.025, 0.975], 1.0, 0.5 / 1.96)
    assert sure.by_trials
    assert (sure.low, sure.high) == pytest.approx(tuple(np.exp(ends)), rel=0.005)


@pytest.mark.parametrize("refuses", [False, True])
def test_share_without_a_number(refuses: bool) -> None:
    """Against the normal distribution: a tank empties only if more leaves than enters."""

    def time_to_empty(x: Values) -> float | None:
        spare = x["out"] - x["in"]
        if spare <= 0 and refuses:
            raise Refused("contradiction", "out")
        return 11 / spare if spare > 0 else None

    sures = {"in": 0.8 * NORMAL_95, "out": 0.6 * NORMAL_95}
    sure = one(time_to_empty, {"in": 5.0, "out": 6.0}, sures)
    assert sure.by_trials
    assert sure.missing == pytest.approx(norm.cdf(-1.0), abs=0.02)


def test_no_number_on_one_side_only() -> None:
    """By reason: an answer that vanishes beyond 1.8 plus-or-minuses is not straight."""
    sure = one(lambda x: x["a"] if x["a"] < 1.9 else None, {"a": 1.0}, {"a": 1.0})
    assert sure.by_trials
    assert sure.missing == pytest.approx(norm.sf(0.9 * 1.96), abs=0.002)
    assert moves(sure)["a"] == pytest.approx(1.0)


def test_no_number_between() -> None:
    """Against the normal distribution: both ends may have a number, and what lies between none."""
    sure = one(lambda x: None if 1.2 < x["a"] < 1.7 else x["a"], {"a": 1.0}, {"a": 1.0})
    assert sure.by_trials
    assert sure.missing == pytest.approx(norm.cdf(0.7 * 1.96) - norm.cdf(0.2 * 1.96), abs=0.002)


def test_rounding_is_no_bend() -> None:
    """By reason: next to a million a float follows a ten-billionth by jolts."""
    assert not one(lambda x: 1e6 + x["a"], {"a": 1.0}, {"a": 1e-10}).by_trials


numbers = st.floats(-1e3, 1e3)
sures_of_inputs = st.one_of(st.just(0.0), st.floats(1e-6, 1e3))
named = st.dictionaries(st.sampled_from("abcdef"), st.tuples(numbers, sures_of_inputs, numbers))


@settings(steady, max_examples=200)
@given(named, st.floats(1e-6, 1e6), st.booleans())
def test_straight_answers(
    inputs: dict[str, tuple[float, float, float]], by: float, at_limit: bool
) -> None:
    """[jcgm-100] equation (10) is exact for them, also at a limit, and in every unit."""
    values = {name: value for name, (value, _, _) in inputs.items()}
    sures = {name: sure for name, (_, sure, _) in inputs.items()}
    slopes = {name: slope for name, (_, _, slope) in inputs.items()}
    limits = {name: (value, value + 10) for name, value in values.items()} if at_limit else {}

    def straight(x: Values) -> float:
        return sum(slopes[name] * value for name, value in x.items())

    sure = one(straight, values, sures, limits)
    scaled = one(lambda x: by * straight(x), values, sures, limits)
    expected = hypot(*(slopes[name] * sures[name] for name in inputs))
    size = sum(abs(slopes[name]) * (abs(values[name]) + sures[name]) for name in inputs)
    assert sure.plus_minus == pytest.approx(expected, abs=1e-12 * size)
    assert scaled.plus_minus == pytest.approx(by * expected, abs=by * 1e-12 * size)
    assert (sure.low + sure.high) / 2 == pytest.approx(sure.value, abs=1e-12 * size)
    assert not sure.by_trials
    assert not scaled.by_trials


def test_importance() -> None:
    """By algebra: 3², 4² and 12² of 13²; an input that only bends the answer counts too."""
    values, sures = dict.fromkeys("abcd", 1.0), {"a": 3.0, "b": 4.0, "c": 12.0, "d": 0.0}
    sure = one(lambda x: x["a"] + x["b"] - x["c"], values, sures)
    assert [part.name for part in sure.parts] == ["c", "b", "a"]
    assert [part.share for part in sure.parts] == pytest.approx([144 / 169, 16 / 169, 9 / 169])
    assert moves(sure) == pytest.approx({"c": -12, "b": 4, "a": 3})
    bent = one(lambda x: x["a"] + (x["b"] - 1) ** 2, values, {"a": 1.0, "b": 2.0})
    # variances u² and 2 u⁴, the standard uncertainties 1/1.96 and 2/1.96
    assert bent.parts[0].name == "b"
    assert bent.parts[0].share == pytest.approx(32 / 1.96**4 / (32 / 1.96**4 + 1 / 1.96**2))


def test_each_output_is_judged_by_itself() -> None:
    """By reason: a bent answer does not make its neighbour rough, nor does one without a number."""
    found = propagated(
        lambda x: {"double": 2 * x["a"], "least": min(x["a"], 1.0), "none": None, "nan": nan},
        {"a": 1.0},
        {"a": 0.1},
        {},
    )
    assert set(found) == {"double", "least"}
    assert not found["double"].by_trials
    assert found["double"].plus_minus == pytest.approx(0.2)
    assert found["least"].by_trials
    assert found["least"].high == 1.0


def test_steps() -> None:
    """By reason: whole runs stay whole, and the answer is within its own interval."""
    sure = one(lambda x: ceil(x["a"]), {"a": 2.1}, {"a": 0.9})
    assert (sure.low, sure.value, sure.high) == (2, 3, 3)
    assert sure.by_trials


def test_exact_inputs() -> None:
    """By reason: nothing in doubt leaves nothing in doubt, and the work is asked once."""
    asked: list[Values] = []

    def work(x: Values) -> dict[str, float | None]:
        asked.append(x)
        return {"y": x["a"] ** 2}

    assert propagated(work, {"a": 3.0}, {"a": 0.0}, {}) == {"y": Sure(9.0, 0.0, 9.0, 9.0, ())}
    assert asked == [{"a": 3.0}]


def refuse(_: Values) -> dict[str, float | None]:
    raise Refused("contradiction", "a")


def test_no_answer() -> None:
    """By reason: what is refused has no doubt to tell."""
    assert propagated(refuse, {"a": 1.0}, {"a": 1.0}, {}) == {}


@pytest.mark.parametrize("bent", [False, True])
def test_what_it_asks(bent: bool) -> None:
    """By reason: within the limits, as often as said, and the same the second time."""
    asked: list[Values] = []

    def work(x: Values) -> dict[str, float | None]:
        asked.append(dict(x))
        return {"y": abs(x["a"]) if bent else x["a"] + x["b"]}

    question = (work, {"a": 0.0, "b": 5.0}, {"a": 3.0, "b": 1.0}, {"a": (-1, 9), "b": (5.0, 5.5)})
    first = propagated(*question)
    assert len(asked) == 1 + 2 * 2 + (TRIALS if bent else PROBES)
    assert {-1.0, 3.0} <= {x["a"] for x in asked}
    assert all(-1 <= x["a"] <= 9 and 5 <= x["b"] <= 5.5 for x in asked)
    assert propagated(*question) == first


levels = st.one_of(st.none(), st.sampled_from([nan, float("inf"), 1e300, 0.0]), st.floats(-5, 5))
tiny_to_huge = st.one_of(st.floats(0, 1e6), st.sampled_from([5e-324, 1e-300, 1e-17, 1e90]))


@settings(steady)
@given(st.lists(levels, min_size=1, max_size=6), st.tuples(tiny_to_huge, tiny_to_huge), numbers)
def test_any_function(steps: list[float | None], sures: tuple[float, float], slope: float) -> None:
    """By reason: with jumps, refusals and no numbers anywhere, what comes out are numbers."""

    def work(x: Values) -> dict[str, float | None]:
        level = steps[int(abs(x["a"]) * 7) % len(steps)]
        if level == 0:
            raise Refused("contradiction", "a")
        return {"y": None if level is None else level + slope * x["b"]}

    found = propagated(work, {"a": 1.0, "b": 2.0}, dict(zip("ab", sures, strict=True)), {})
    for sure in found.values():
        assert all(map(isfinite, (*sure[:4], *moves(sure).values())))
        assert sure.low <= sure.value <= sure.high
        assert 0 <= sure.missing <= 1
        if any(moves(sure).values()):
            assert sum(part.share for part in sure.parts) == pytest.approx(1.0)
