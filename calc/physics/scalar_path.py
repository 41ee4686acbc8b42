"""A volume whose rate depends on nothing but itself, followed by quadrature.

    dW/dt = f(W)   so   t = ∫ dW / f(W)

and whatever else flows meanwhile is ∫ q dW / f.
"""

from bisect import bisect_right
from collections.abc import Callable
from math import inf

# Nodes and weights of Gauss and Legendre on -1 to 1, eight points. Source:
# [abramowitz-stegun] Table 25.4; recomputed with numpy.
_HALF = (
    (0.18343464249564980, 0.36268378337836198),
    (0.52553240991632899, 0.31370664587788729),
    (0.79666647741362674, 0.22238103445337447),
    (0.96028985649753623, 0.10122853629037626),
)
_NODES = tuple((sign * x, weight) for x, weight in _HALF for sign in (-1.0, 1.0))

# One panel reaches no further than the rate falls to this share: the quadrature is then
# good to about 1e-12. Toward an equilibrium the panels so become ever shorter.
_FALL = 0.5
_REST = 1e-13  # of its first rate: there the volume stands still

_NOISE = 1e-13  # of a flow: less is rounding
_LATE = 1e-6  # of a panel; what Newton's method leaves then is the square of it

type Rates = tuple[float, ...]


class Path:
    """The way of a volume from `start` toward `goal`.

    rates -- from the volume to its rate, and to the flows whose sums are wanted
    goal  -- volume at which the way ends; a rest before it is found on the way

    The first of the flows is one of those whose difference is the rate.

    The rate must not grow on the way: a tank fills the slower the fuller it is.

    A tank that loses a tenth of itself each second, by the exponential:

    >>> path = Path(lambda w: (-0.1 * w, 0.1 * w), 100.0, 50.0)
    >>> round(path.end(inf), 9), round(path.at(5.0)[0], 9)
    (6.931471806, 60.653065971)

    Source: Gauss and Legendre's quadrature [abramowitz-stegun] 25.4.29; Newton's method.
    """

    def __init__(self, rates: Callable[[float], Rates], start: float, goal: float) -> None:
        self._rates, self._goal = rates, goal
        self._times, self._volumes = [0.0], [start]
        first = rates(start)
        self._at_edges = [first]
        self._sums: list[Rates] = [(0.0,) * (len(first) - 1)]
        self._known: dict[float, tuple[float, Rates, Rates]] = {}
        # near rest the rate is the small difference of two flows, of which this is one
        self._least = max(abs(first[0]) * _REST, abs(first[1]) * _NOISE)
        self._rests = abs(first[0]) <= self._least or (goal - start) * first[0] < 0

    def end(self, limit: float) -> float:
        """When the goal is reached; infinite if never, or not before `limit`."""
        while self._times[-1] < limit and self._grows():
            pass
        return self._times[-1] if self._volumes[-1] == self._goal else inf

    def at(self, time: float) -> tuple[float, Rates, Rates]:
        """The volume at that time, its rate and the flows there, and their sums until then."""
        if time not in self._known:
            self._known[time] = self._at(time)
        return self._known[time]

    def _at(self, time: float) -> tuple[float, Rates, Rates]:
        while self._times[-1] < time and self._grows():
            pass
        place = bisect_right(self._times, time) - 1
        rest = time - self._times[place]
        if place + 1 == len(self._times):  # at the goal, or at rest
            rates = self._at_edges[place]
            return self._volumes[place], rates, self._summed(place, [q * rest for q in rates[1:]])
        return self._landed(place, rest)

    def _landed(self, place: int, rest: float) -> tuple[float, Rates, Rates]:
        """Newton's method within a panel. Its last step is so short that the flows hold over it."""
        start, end = self._volumes[place : place + 2]
        whole = self._times[place + 1] - self._times[place]
        found = _between(start, end, self._at_edges[place : place + 2], whole, rest / whole)
        for _ in range(30):
            passed, sums = self._over(start, found)
            rates = self._rates(found)
            late = rest - passed
            step = late * rates[0]
            if abs(late) <= _LATE * whole:
                break
            found = min(max(found + step, min(start, end)), max(start, end))
        sums = [done + flow * late for done, flow in zip(sums, rates[1:], strict=True)]
        return found + step, rates, self._summed(place, sums)

    def _summed(self, place: int, more: list[float]) -> Rates:
        return tuple(a + b for a, b in zip(self._sums[place], more, strict=True))

    def _grows(self) -> bool:
        """One panel more. False at the goal or at rest."""
        start, here = self._volumes[-1], self._at_edges[-1]
        if self._rests or start == self._goal:
            return False
        end = self._goal if abs(here[0]) > self._least else start
        there = self._rates(end)
        while end != start and there[0] / here[0] < _FALL:
            end = start + (end - start) / 2
            there = self._rates(end)
        if end == start:
            self._rests = True
            self._at_edges[-1] = (0.0, *here[1:])
            return False
        passed, sums = self._over(start, end)
        self._times.append(self._times[-1] + passed)
        self._volumes.append(end)
        self._at_edges.append(there)
        self._sums.append(self._summed(-1, sums))
        return True

    def _over(self, start: float, end: float) -> tuple[float, list[float]]:
        """Time from one volume to another, and the sums of the flows over it."""
        middle, half = (start + end) / 2, (end - start) / 2
        passed, sums = 0.0, [0.0] * (len(self._at_edges[0]) - 1)
        for node, weight in _NODES:
            rate, *flows = self._rates(middle + half * node)
            share = weight * half / rate
            passed += share
            for n, flow in enumerate(flows):
                sums[n] += flow * share
        return passed, sums


def _between(start: float, end: float, edges: list[Rates], whole: float, share: float) -> float:
    """A volume between two, by Hermite's cubic through them with the rates there."""
    first, last = (rates[0] * whole for rates in edges)
    left = 1 - share
    straight = start * left + end * share
    risen = end - start
    return straight + share * left * ((first - risen) * left + (risen - last) * share)
