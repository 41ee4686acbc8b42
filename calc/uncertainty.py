"""How sure an answer is, when its inputs are known to a plus-or-minus: 19 times in 20.

The errors of the inputs are normally distributed and have nothing to do with each other.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import lru_cache
from math import erf, exp, hypot, pi, sqrt
from random import Random
from typing import NamedTuple

from calc.errors import Refused

type Work = Callable[[Mapping[str, float]], Mapping[str, float | None]]
type Limits = Mapping[str, tuple[float, float]]

# Standard uncertainties in a plus-or-minus that covers 95 %, [jcgm-100] Table G.1.
NORMAL_95 = 1.96
# They leave 3 % of noise in the width of an interval, none if one input matters alone.
TRIALS = 1000
PROBES = 100
# Largest mean departure from a straight line, in standard uncertainties of the answer. One
# bent input that just passes shifts both ends of the interval by a sixth of the
# plus-or-minus: the tolerance of [jcgm-101] clause 8, at one figure.
BENT = 0.15
ROUNDING = 1e-9  # departures under this share of the answer are arithmetic, or never shown
LEAST_STEP = 1e-3  # of a plus-or-minus: a shorter way to a limit drowns the slope in rounding
HUGE = 1e100  # no quantity here comes near it, and its square is still a float


class Part(NamedTuple):
    """What one input does to an answer.

    moves -- c U: how far the input's plus-or-minus moves the answer, with its sign
    share -- of the answer's variance; the bend of the answer in this one input counts
    """

    name: str
    moves: float
    share: float


class Sure(NamedTuple):
    """How sure one answer is.

    plus_minus -- half the width from low to high
    low, high  -- hold 19 times in 20, and hold the answer itself
    parts      -- most important input first; the shares add up to 1, or are all 0
    by_trials  -- whether the answer is bent, so that the interval comes from trials
    missing    -- share of trials in which there was no such number
    """

    value: float
    plus_minus: float
    low: float
    high: float
    parts: tuple[Part, ...]
    by_trials: bool = False
    missing: float = 0.0


class _Tried(NamedTuple):
    """Inputs moved by steps, in plus-or-minuses, and the outputs that were numbers then."""

    steps: Mapping[str, float]
    outputs: Mapping[str, float]


class _Question(NamedTuple):
    work: Work
    values: Mapping[str, float]
    sures: Mapping[str, float]
    limits: Limits

    def tried(self, steps: Mapping[str, float]) -> _Tried:
        """The work with each input moved so far, or to its limit, whichever is nearer."""
        moved, made = dict(self.values), {}
        for name, step in steps.items():
            value, sure = self.values[name], self.sures[name]
            low, high = self.limits.get(name, (-HUGE, HUGE))
            moved[name] = min(max(value + step * sure, low), high)
            made[name] = (moved[name] - value) / sure
        try:
            outputs = self.work(moved)
        except Refused:
            return _Tried(made, {})
        numbers = {k: y for k, y in outputs.items() if y is not None and abs(y) < HUGE}
        return _Tried(made, numbers)


def propagated(
    work: Work,
    values: Mapping[str, float],
    sures: Mapping[str, float],
    limits: Limits,
    count: int = TRIALS,
) -> dict[str, Sure]:
    """How sure each output is that is a number; empty if the work refuses the values.

        U² = Σ (ci Ui)²,   ci Ui = half of f(xi + Ui) - f(xi - Ui)

    work   -- from inputs to outputs; may give None or raise Refused
    values -- the inputs, each within its limits
    sures  -- U, plus-or-minus of each input; 0 or left out means exact
    limits -- (low, high) between which the work may be asked. At a limit the slope is
              taken from the other side, and the answer's own interval is not cut off.
    count  -- trials for an answer that is bent, an even number over PROBES

    The law holds for answers that are nearly straight over the plus-or-minus. Each answer
    is held against its straight line in PROBES trials; one that bends by over BENT, or is
    no number somewhere, gets the middle 95 % of `count` trials instead. The guide's own
    example H.1 bends by 0.38 and goes to trials; it too adds second-order terms to it.
    What fewer than one trial in PROBES meets may go unseen, and hardly moves the middle.

    The law steps by the standard uncertainty. A step of U comes to the same on a straight
    line, and on a bent one its ends are those of the interval.

    >>> flow = propagated(lambda x: {"Q": x["V"] / x["t"]}, {"V": 19.0, "t": 60.0},
    ...                   {"V": 0.2, "t": 1.0}, {})["Q"]
    >>> round(flow.plus_minus / flow.value, 4), [part.name for part in flow.parts]
    (0.0197, ['t', 'V'])

    Source: [jcgm-100] equation (10), 5.1.2 and 5.1.3 note 2; [jcgm-101] 5.9 and 7
    (from memory).
    """
    asked = _Question(work, values, {name: u for name, u in sures.items() if u > 0}, limits)
    answer = asked.tried({}).outputs
    sides = {name: [asked.tried({name: end}) for end in (1.0, -1.0)] for name in asked.sures}
    parts = {name: _parts(name, value, sides) for name, value in answer.items()}
    plan = [dict(zip(sides, row, strict=True)) for row in _plan(len(sides), count)]
    trials = [asked.tried(steps) for steps in plan[:PROBES]]
    seen = [*trials, *(tried for pair in sides.values() for tried in pair)]
    gone = {name for name in answer if any(name not in tried.outputs for tried in seen)}
    bent = {k for k, y in answer.items() if k in gone or _is_bent(k, y, parts[k], trials)}
    if bent:
        trials += [asked.tried(steps) for steps in plan[PROBES:]]
    return {
        k: _by_trials(k, y, parts[k], trials) if k in bent else _by_law(y, parts[k])
        for k, y in answer.items()
    }


def _parts(output: str, value: float, sides: Mapping[str, Sequence[_Tried]]) -> tuple[Part, ...]:
    moves, weights = {}, {}
    for name, pair in sides.items():
        ends = [
            (tried.steps[name], tried.outputs[output] - value)
            for tried in pair
            if output in tried.outputs and abs(tried.steps[name]) > LEAST_STEP
        ]
        moves[name], bend = _slope_and_bend(ends)
        # variance of a t + b t², t normal with standard deviation 1/1.96, times 1.96²
        weights[name] = hypot(moves[name], sqrt(2) / NORMAL_95 * bend)
    whole = hypot(*weights.values()) or 1.0
    parts = [Part(name, moves[name], (weights[name] / whole) ** 2) for name in sides]
    return tuple(sorted(parts, key=lambda part: -part.share))


def _slope_and_bend(ends: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """The a and b of a t + b t² through the ends (t, rise); one end has no bend."""
    slopes = [rise / step for step, rise in ends]
    if len(ends) < 2:
        return sum(slopes), 0.0
    (up, rise), (down, fall) = ends
    return (rise - fall) / (up - down), (slopes[0] - slopes[1]) / (up - down)


def _is_bent(output: str, value: float, parts: Iterable[Part], probes: Sequence[_Tried]) -> bool:
    off = [
        tried.outputs[output] - value - sum(part.moves * tried.steps[part.name] for part in parts)
        for tried in probes
    ]
    spread = hypot(*(part.moves for part in parts)) / NORMAL_95
    return hypot(*off) > sqrt(len(off)) * (BENT * spread + ROUNDING * abs(value))


def _by_law(value: float, parts: tuple[Part, ...]) -> Sure:
    sure = hypot(*(part.moves for part in parts))
    return Sure(value, sure, value - sure, value + sure, parts)


def _by_trials(
    output: str, value: float, parts: tuple[Part, ...], trials: Sequence[_Tried]
) -> Sure:
    got = sorted(tried.outputs[output] for tried in trials if output in tried.outputs)
    cut = len(got) // 40  # 2.5 % at either end
    middle = [value, *got[cut : len(got) - cut]]
    low, high = min(middle), max(middle)
    return Sure(value, (high - low) / 2, low, high, parts, True, 1 - len(got) / len(trials))


@lru_cache(maxsize=8)
def _plan(inputs: int, count: int) -> tuple[tuple[float, ...], ...]:
    """Steps of all inputs, trial by trial: the same `count` equally likely steps for each
    input, in an order of its own. Repeating a question repeats the answer.

    Source: [mckay-1979], Latin hypercube sampling.
    """
    order, steps = Random(1), _steps(count)
    return tuple(zip(*(order.sample(steps, count) for _ in range(inputs)), strict=True))


def _steps(count: int) -> tuple[float, ...]:
    """Middles of `count` equally likely slices of the normal distribution, over 1.96."""
    above, z = [], 0.0
    for slice_ in range(count // 2):
        beyond_middle = (slice_ + 0.5) / count
        for _ in range(6):  # Newton's method, from the slice before and never past this one
            z += (beyond_middle - erf(z / sqrt(2)) / 2) * sqrt(2 * pi) * exp(z * z / 2)
        above.append(z / NORMAL_95)
    return (*(-step for step in above), *above)
