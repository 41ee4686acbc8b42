"""Plants, draws and starting volumes for the tests of the open tank."""

from typing import NamedTuple

from hypothesis import strategies as st

from calc.physics.tank_run import Draw, Plant, Run, run
from calc.units import gal, gpm, minute

FREE = float("inf")
LONG = 1e9  # s: every run of these plants is at rest long before


class Start(NamedTuple):
    """One run to be made: the plant, its draws, and the volumes it starts from."""

    plant: Plant
    draws: list[Draw]
    level: float
    stored: float

    def run(self) -> Run:
        return run(self.plant, self.draws, self.level, self.stored, LONG)


def _in(low: float, high: float, unit: float) -> st.SearchStrategy[float]:
    return st.floats(low, high).map(lambda number: number * unit)


def plants(limit: str = "any") -> st.SearchStrategy[Plant]:
    """Plants with the limit "before" or "after" the house pressure tank, or as it comes.

    After it, pump 2 passes at least what the limit does: else the limit limits nothing.
    """

    @st.composite
    def plant(draw: st.DrawFn) -> Plant:
        pump = draw(_in(0.5, 30, gpm))
        house = FREE
        if limit == "after":
            house = draw(st.floats(0.02, 1.0)) * pump
        elif limit == "any":
            house = draw(st.one_of(st.just(FREE), _in(0.1, 20, gpm)))
        opens = draw(_in(1, 40, gal))
        return Plant(
            inlet=draw(st.one_of(_in(0.1, 20, gpm), st.floats(0.5, 1.5).map(lambda x: x * pump))),
            pump=pump,
            house=house,
            float_open=opens,
            float_closed=opens + draw(_in(0.5, 15, gal)),
            drawdown=draw(_in(0.5, 20, gal)),
            residual=draw(_in(0.0, 4, gal)),
        )

    return plant()


draws = st.lists(
    st.tuples(_in(0, 60, minute), _in(0.1, 20, gpm), _in(0.1, 60, gal)).map(lambda it: Draw(*it)),
    min_size=1,
    max_size=6,
)


def starts(limit: str = "any") -> st.SearchStrategy[Start]:
    """Runs from any volumes that a plant may stand at."""

    @st.composite
    def start(draw: st.DrawFn) -> Start:
        plant = draw(plants(limit))
        share = st.one_of(st.sampled_from([0.0, 1.0]), st.floats(0, 1))
        level = draw(
            st.one_of(st.just(plant.float_open), share.map(lambda x: x * plant.float_closed))
        )
        return Start(plant, draw(draws), level, draw(share) * plant.drawdown)

    return start()


def open_times(start: Start, result: Run) -> list[tuple[float, float]]:
    """From when to when the float held the inlet open, read off the events."""
    opened = [0.0] if start.level <= start.plant.float_open else []
    opened += [time for time, event in result.events if event == "float opens"]
    closed = [time for time, event in result.events if event == "float closes"]
    if len(closed) < len(opened):
        closed.append(result.points[-1].time)
    return list(zip(opened, closed, strict=True))
