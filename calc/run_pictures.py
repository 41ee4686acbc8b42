"""A run of the open tank told: its charts, the scene of its moments, and its spells of air."""

from itertools import pairwise

from calc.charts import Axis, Chart, Limit, Line, Mark, Moment, Scene
from calc.model import Output
from calc.physics.tank_switches import EVENTS, FREE, Levels, Point, Run
from calc.units import duration, flow, volume

MOST_MOMENTS = 60
_APART = 1 / 15  # of the run: longer without an event, and a moment is put between

_HELD = "the house pressure is at cut-in, and pump 2 is held off"

TIME = Output(
    name="dry_after",
    label="The intake uncovers at",
    kind=duration,
    none="it stays under water",
)


def air_time(run: Run) -> float:
    """How long pump 2 draws air, s."""
    return sum(b.time - a.time for a, b in pairwise(run.points) if "air" in a.on)


def time_on(run: Run, what: str, without: str) -> float:
    """How long one thing was on while another was not, s."""
    return sum(
        b.time - a.time for a, b in pairwise(run.points) if what in a.on and without not in a.on
    )


def starts(run: Run, pump: str) -> float:
    """How often a pump began to run, locks and interlocks included."""
    first = pump in run.points[0].on
    begun = sum(pump in b.on and pump not in a.on for a, b in pairwise(run.points))
    return float(first + begun)


def level_chart(run: Run, plant: Levels) -> Chart:
    """The level over the run."""
    dry, lowest = run.first("dry"), run.lowest
    marks = [Mark("lowest", lowest.time, lowest.level)] if dry is None else []
    marks += [] if dry is None else [Mark("intake uncovers", dry, 0.0)]
    limits = [
        Limit("float opens", plant.float_open),
        Limit("float closes", plant.float_closed),
        Limit("intake", 0.0),
    ]
    if plant.lock_at > 0:
        limits.append(Limit("pump 2 locked out", plant.lock_at))
    return Chart(
        title="Water above the intake",
        says="The level over the whole run.",
        x=Axis("Time", TIME),
        y=Axis("Water above the intake", volume),
        lines=(Line("level", tuple((p.time, p.level) for p in run.points)),),
        limits=tuple(limits),
        marks=tuple(marks),
    )


def flow_chart(run: Run) -> Chart:
    """The flows over the run: a pump runs while its flow is not 0."""
    lines = [("into the open tank", 0), ("through pump 2", 1), ("to the house", 2)]
    if run.points[0].flows.lifted < FREE and any(p.flows.lifted for p in run.points):
        lines.append(("through pump 1", 3))
    return Chart(
        title="Flows and pumps",
        says="A pump runs while water flows through it.",
        x=Axis("Time", TIME),
        y=Axis("Flow", flow),
        lines=tuple(
            Line(label, tuple((p.time, p.flows[n]) for p in run.points), steps=True)
            for label, n in lines
        ),
    )


def scene(run: Run, plant: Levels, limit: str) -> Scene:
    """The system at the moments of the run that matter, the lowest level first in view."""
    points = _chosen(run)
    moments = tuple(_moment(point, said, plant) for point, said in points)
    shown = min(range(len(moments)), key=lambda n: moments[n].level)
    return Scene(
        title="The system, moment by moment",
        says="Pipes are drawn heavy while water flows in them.",
        moments=moments,
        shown=shown,
        full=plant.float_closed,
        opens=plant.float_open,
        limit=limit,
    )


def _chosen(run: Run) -> list[tuple[Point, str]]:
    """One point for each time at which something happened, the lowest, and some between."""
    happened: dict[float, list[str]] = {run.points[0].time: ["the start"]}
    last = {point.time: point for point in run.points}  # of several at once, what they lead to
    for time, event in run.events:
        held = event == "pump starts" and "pump 2" not in last[time].on
        happened.setdefault(time, []).append(_HELD if held else EVENTS[event])
    lowest, end = run.lowest.time, run.points[-1].time
    kept = [time for time in last if time in happened or time in (lowest, end)]
    for a, b in pairwise(list(kept)):
        between = [time for time in last if a < time < b]
        if b - a > _APART * end and between:
            kept.append(min(between, key=lambda time: abs(time - (a + b) / 2)))
    kept.sort()
    if len(kept) > MOST_MOMENTS:
        kept = sorted({*kept[: MOST_MOMENTS - 2], lowest, end})
    return [(last[time], _words(happened.get(time, []), time == lowest)) for time in kept]


def _words(said: list[str], is_lowest: bool) -> str:
    counted = list(dict.fromkeys(said))
    if is_lowest:
        counted.append("the lowest level")
    return "; ".join(counted)


def _moment(point: Point, said: str, plant: Levels) -> Moment:
    well = 1.0
    if plant.well_drawdown < FREE:
        well = _share(point.well, plant.well_residual, plant.well_drawdown)
    return Moment(
        point.time,
        said,
        point.level,
        _share(point.stored, plant.residual, plant.drawdown),
        well,
        point.flows.inflow,
        point.flows.pumped,
        point.flows.delivered,
        point.on,
    )


def _share(stored: float, residual: float, drawdown: float) -> float:
    return min(1.0, max(0.0, (stored + residual) / (drawdown + residual)))
