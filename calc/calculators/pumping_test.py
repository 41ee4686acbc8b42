"""A pumping test: the straight line, what casing storage spoils of it, and the transmissivity."""

from math import log, log10, pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.fields import INVENTED, well_fields
from calc.fields.well_fields import TEST, refuse_pipe, refuse_readings
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.pumping_test import (
    SCHAFER,
    casing_time_papadopulos_cooper,
    casing_time_schafer,
    storativity_of_line,
    straight_from,
    straight_line,
    transmissivity_of_line,
    zero_time,
)
from calc.physics.pumping_test import Line as Fitted
from calc.physics.well import inflow_while, open_area, specific_capacity
from calc.units import day, duration, flow, ft, gpm, length, minute, number, transmissivity
from calc.units import specific_capacity as capacity_kind

MOST_READINGS = 12
SEASON = 100 * day
WIDE = 2.0  # an interval whose ends differ by more than this settles little
LEAST_MISS = 0.05  # of a tenfold step; a smaller miss is no matter, however sure
MOST_STORED = 1.0  # no aquifer stores more than its own volume


class _Test(NamedTuple):
    """The readings, SI, and the line through those that nothing spoils.

    logs  -- of the times, or in a recovery of the ratios of times, to base ten
    since -- readings before that are spoiled by casing storage or too early for the line
    """

    recovers: bool
    pumped: float
    distance: float
    times: tuple[float, ...]
    drawdowns: tuple[float, ...]
    logs: tuple[float, ...]
    since: float
    line: Fitted | None

    @property
    def used(self) -> tuple[int, ...]:
        """Places of the readings that the line goes through."""
        return tuple(i for i, t in enumerate(self.times) if t >= self.since)

    @property
    def rises(self) -> bool:
        return self.line is not None and self.line.per_cycle > 0

    @property
    def transmissivity(self) -> float | None:
        """By the line, m²/s; None where there is none or it does not rise."""
        if self.line is None or self.line.per_cycle <= 0:
            return None
        return transmissivity_of_line(self.pumped, self.line.per_cycle)

    @property
    def bounds(self) -> tuple[float | None, float | None]:
        """Between which the transmissivity lies, 19 times in 20; None for an end not known."""
        if self.line is None or not self.rises or self.line.low is None or self.line.high is None:
            return None, None
        low = transmissivity_of_line(self.pumped, self.line.high)
        steep = self.line.low > 0
        return low, transmissivity_of_line(self.pumped, self.line.low) if steep else None


def pumping_test(
    test_phase: str,
    test_flow: float,
    pumped_for: float,
    test_times: tuple[float, ...],
    test_levels: tuple[float, ...],
    test_distance: float,
    static_level: float,
    casing_bore: float,
    drop_pipe: float,
) -> Answer:
    """Transmissivity from the straight line of a pumping or recovery test."""
    refuse_pipe(drop_pipe, casing_bore)
    refuse_readings("test", test_times, test_levels, static_level)
    drawdowns = tuple(level - static_level for level in test_levels)
    recovers = test_phase == "recovery"
    capacity = specific_capacity(test_flow, max(drawdowns))
    casing_time = casing_time_schafer(casing_bore, drop_pipe, capacity)
    test = _test(recovers, test_flow, pumped_for, test_distance, test_times, drawdowns, casing_time)
    t = test.transmissivity
    low, high = test.bounds
    own_well = test_distance == 0
    space = open_area(casing_bore, drop_pipe)
    fall, span = drawdowns[-1] - drawdowns[-2], test_times[-1] - test_times[-2]
    inflow = inflow_while(space, 0.0 if recovers else test_flow, fall, span)
    exact = casing_time_papadopulos_cooper(casing_bore, t) if t and own_well else None
    return Answer(
        outputs={
            "transmissivity": t,
            "transmissivity_low": low,
            "transmissivity_high": high,
            "per_cycle": test.line.per_cycle if test.line else None,
            "casing_time": casing_time if own_well else None,
            "exact_time": exact,
            "last_capacity": test_flow / drawdowns[-1] if own_well and not recovers else None,
            "last_inflow": inflow if own_well else None,
            "season_drawdown": _season(test),
            "zero_miss": test.line.zero if test.line and recovers else None,
            "storativity": _storativity(test),
        },
        findings=_findings(test, exact),
        steps=_steps(test, max(drawdowns), own_well),
        charts=(_chart(test),),
    )


def _test(
    recovers: bool,
    pumped: float,
    pumped_for: float,
    distance: float,
    times: tuple[float, ...],
    drawdowns: tuple[float, ...],
    casing_time: float,
) -> _Test:
    logs = tuple(log10((pumped_for + t) / t if recovers else t) for t in times)
    if distance == 0:
        since = casing_time
    elif recovers or len(times) == 2:
        since = times[0]
    else:
        since = straight_from(times, drawdowns)
    kept = [(x, s) for t, x, s in zip(times, logs, drawdowns, strict=True) if t >= since]
    line = straight_line(*zip(*kept, strict=True)) if len(kept) > 1 else None
    return _Test(recovers, pumped, distance, times, drawdowns, logs, since, line)


def _season(test: _Test) -> float | None:
    """Drawdown at this flow after a season without rain, on the line drawn on."""
    if test.line is None or not test.rises or test.recovers:
        return None
    return test.line.zero + test.line.per_cycle * log10(SEASON)


def _storativity(test: _Test) -> float | None:
    t = test.transmissivity
    if test.line is None or t is None or test.recovers or test.distance == 0:
        return None
    found = storativity_of_line(t, zero_time(test.line), test.distance)
    return found if found < MOST_STORED else None


def _findings(test: _Test, exact: float | None) -> tuple[Finding, ...]:
    findings = [_headline(test)]
    if 0 < len(test.used) < len(test.times):
        spoiled = Quantity(len(test.times) - len(test.used), number)
        text = (
            "{spoiled} of the readings are left out: the water came from the casing, not from "
            "the rock."
            if test.distance == 0
            else "{spoiled} of the readings are left out: so early after the start the drawdown "
            "is no straight line."
        )
        findings.append(
            Finding("caution", "The beginning is left out.", text, {"spoiled": spoiled})
        )
    if exact is not None and test.times[test.used[0]] < exact:
        findings.append(
            Finding(
                "caution",
                "The casing may still be in it.",
                "With the transmissivity found, casing storage shows until {exact_time}. Pump "
                "longer.",
            )
        )
    sure = test.line.zero_sure if test.line and test.recovers else None
    if (
        test.line
        and sure is not None
        and abs(test.line.zero) > max(sure, LEAST_MISS * abs(test.line.per_cycle))
    ):
        text = (
            "Where all time is recovery the line should show no drawdown, and it shows "
            "{zero_miss}. Over 0 the rock is bounded and does not fill up again; under 0 other "
            "water comes in."
        )
        findings.append(Finding("caution", "The line misses zero.", text))
    return tuple(findings)


def _headline(test: _Test) -> Finding:
    if test.line is None:
        return Finding(
            "danger",
            "It measured the casing.",
            "Casing storage spoils this test until {casing_time}, and there are not two readings "
            "after that. It says nothing of the rock. The inflow between the last two readings, "
            "{last_inflow}, is all that can be told.",
        )
    if not test.rises:
        text = (
            "The line does not rise: the level stands, or comes back. Water enters as fast as it "
            "is pumped, or a reading is wrong."
        )
        return Finding("caution", "No slope.", text)
    low, high = test.bounds
    if low is None:
        text = "{transmissivity}, from two readings. Nothing shows how far to trust it."
        return Finding("caution", "Two readings.", text)
    if high is None or high > WIDE * low:
        text = (
            "{transmissivity}, but the readings allow {transmissivity_low} and far more. Take more "
            "of them, over more time."
        )
        return Finding("caution", "A wide interval.", text)
    return Finding(
        "good",
        "A line to go by.",
        "{transmissivity}, between {transmissivity_low} and {transmissivity_high} 19 times in 20, "
        "if the rock is as even as the formula takes it.",
    )


def _steps(test: _Test, deepest: float, own_well: bool) -> tuple[Step, ...]:
    given = {
        "s_x": Quantity(deepest, length, label="largest drawdown read"),
        "k_s": Quantity(SCHAFER, number, 4, "Schafer's figure"),
        "l": Quantity(log(10), number, 5, "natural logarithm of ten"),
        "pi": Quantity(pi, number, label="the number pi"),
    }
    steps = []
    if own_well:
        formula = "t_c = k_s * (D_c**2 - D_p**2) / (Q / s_x)"
        steps.append(Step("Casing storage spoils the test until", formula, given))
    if test.line is None:
        return tuple(steps)
    line = test.line
    x = 1.0 if test.recovers else log10(minute) + 1.0
    given |= {
        "s_1": Quantity(line.zero + line.per_cycle * (x - 1), length, 4,
                        "drawdown where the line begins a tenfold step, by least squares"),
        "s_2": Quantity(line.zero + line.per_cycle * x, length, 4, "drawdown where it ends it"),
    }  # fmt: skip
    steps.append(Step("Drawdown for each tenfold step", "ds = s_2 - s_1", given))
    if test.rises:
        steps.append(Step("Transmissivity", "T = l * Q / (4 * pi * ds)", given))
    if _storativity(test) is not None:
        label = "time at which the line shows no drawdown"
        given["t_0"] = Quantity(zero_time(line), duration, label=label)
        steps.append(Step("Storativity", "S = 2.25 * T * t_0 / r**2", given))
    return tuple(steps)


def _drawn_from(line: Fitted, logs: tuple[float, ...]) -> float:
    """Where the line begins: at the first reading, or later where it comes out of the ground."""
    if line.per_cycle <= 0:
        return logs[0]
    return min(max(logs[0], -line.zero / line.per_cycle), logs[-1])


def _chart(test: _Test) -> Chart:
    points = [(10**x, s) for x, s in zip(test.logs, test.drawdowns, strict=True)]
    used = set(test.used)
    lines = []
    if test.line is not None:
        ends = (_drawn_from(test.line, test.logs), 0.0 if test.recovers else test.logs[-1])
        drawn = tuple((10**x, test.line.zero + test.line.per_cycle * x) for x in ends)
        lines.append(Line("straight line", drawn))
    left_out = tuple(point for i, point in enumerate(points) if i not in used)
    if left_out:
        lines.append(Line("readings left out", left_out))
    shows = "Each step to the right is ten times the time. The line goes through what is left."
    if test.recovers:
        shows = "To the left the recovery is longer. The line should end at no drawdown and 1."
    x = Axis("Time since the start", duration, tenfold=True)
    if test.recovers:
        x = Axis("Time since start / time since stop", number, tenfold=True)
    return Chart(
        title="Drawdown against the logarithm of time",
        says=shows,
        x=x,
        y=Axis("Drawdown", _SLOPE),
        lines=tuple(lines),
        marks=tuple(
            Mark(f"reading {i + 1}" if i in used else f"left out {i + 1}", x, s, i in used)
            for i, (x, s) in enumerate(points)
        ),
    )


_SLOPE = Output(
    name="per_cycle",
    label="Drawdown for each tenfold step of time",
    symbol="ds",
    kind=length,
    us="ft",
    si="m",
    none="no line",
)


def _transmissivity(name: str, label: str, symbol: str, none: str) -> Output:
    return Output(name=name, label=label, symbol=symbol, kind=transmissivity, digits=2, none=none)


CALCULATOR = Calculator(
    name="pumping_test",
    title="Pumping test",
    question="What do the levels of a pumping or recovery test say of the rock, and how surely?",
    inputs=(
        Choice(
            name="test_phase",
            label="The levels were read",
            options={
                "pumping": "while the pump ran",
                "recovery": "after it had stopped",
            },
            default="pumping",
            origin=INVENTED,
            measure="Recovery is the better half: nothing in it depends on a steady flow today.",
            group=TEST,
        ),
        Input(
            name="test_flow",
            label="Flow of the test",
            symbol="Q",
            kind=flow,
            default="1.5 gpm",
            origin=INVENTED,
            low=0.05 * gpm,
            high=2000 * gpm,
            measure="Pail and watch, again and again through the test. Throttle it so that it "
            "stays the same: as the level falls a pump gives less.",
            group=TEST,
            sure="5 %",
        ),
        Input(
            name="pumped_for",
            label="The pump had run for",
            kind=duration,
            us="h",
            si="h",
            default="48 h",
            origin=INVENTED,
            low=6 * minute,
            high=60 * day,
            measure="From its start to its stop. Counts for a recovery only.",
            group=TEST,
        ),
        Input(
            name="test_times",
            label="Time of each reading",
            kind=duration,
            us="min",
            si="min",
            default="10 min; 30 min; 60 min; 120 min; 240 min; 480 min; 720 min; 960 min; 1200 "
            "min; 1440 min; 2160 min; 2880 min",
            origin=INVENTED,
            low=1.0,
            high=60 * day,
            several=MOST_READINGS,
            measure="Since the pump started; in a recovery, since it stopped. Each about half as "
            "long again as the last.",
            group=TEST,
        ),
        Input(
            name="test_levels",
            label="Depth to water at each reading",
            kind=length,
            us="ft",
            si="m",
            default="38.7 ft; 51.6 ft; 64.1 ft; 75.6 ft; 84.5 ft; 89.3 ft; 92.3 ft; 93.7 ft; 95.1 "
            "ft; 95.6 ft; 97.8 ft; 99.1 ft",
            origin=INVENTED,
            low=0.0,
            high=2000 * ft,
            several=MOST_READINGS,
            measure="Tape or sounder, always from the same mark.",
            group=TEST,
        ),
        Input(
            name="test_distance",
            label="Distance to the pumped well",
            symbol="r",
            kind=length,
            us="ft",
            si="m",
            default="0 ft",
            origin="invented example: read in the pumped well itself",
            low=0.0,
            high=5000 * ft,
            measure="0 when the levels were read in the pumped well. From another well the test "
            "says how much the rock stores as well.",
            group=TEST,
        ),
        well_fields.static_level,
        well_fields.casing_bore,
        well_fields.drop_pipe,
    ),
    outputs=(
        _transmissivity("transmissivity", "Transmissivity", "T", "not from this test"),
        _transmissivity("transmissivity_low", "19 times in 20 not under", "", "no interval"),
        _transmissivity("transmissivity_high", "and not over", "", "no upper end"),
        _SLOPE,
        Output(
            name="casing_time",
            label="Casing storage spoils the test until (Schafer)",
            symbol="t_c",
            kind=duration,
            none="not read in the pumped well",
        ),
        Output(
            name="exact_time",
            label="and by Papadopulos and Cooper until",
            kind=duration,
            none="not told",
        ),
        Output(
            name="last_capacity",
            label="Specific capacity at the last reading",
            kind=capacity_kind,
            none="only while the well itself is pumped",
        ),
        Output(
            name="last_inflow",
            label="Inflow between the last two readings",
            kind=flow,
            none="only from the pumped well",
        ),
        Output(
            name="season_drawdown",
            label="Drawdown after 100 days at this flow",
            kind=length,
            us="ft",
            si="m",
            none="not told",
        ),
        Output(
            name="zero_miss",
            label="Drawdown that the line shows at the end of all recovery",
            kind=length,
            us="ft",
            si="m",
            digits=2,
            none="only for a recovery",
        ),
        Output(
            name="storativity",
            label="Storativity",
            symbol="S",
            kind=number,
            digits=2,
            none="only from another well, while pumping",
        ),
    ),
    work=pumping_test,
    cautions=(
        cautions.WELL_OPEN,
        cautions.ELECTRICITY,
        cautions.WELL_PIT,
        cautions.LOCAL_CODE,
    ),
    leaves={"last_capacity": ("well_inflow",)},
    sources=(
        "cooper-jacob-1946",
        "theis-1935",
        "todd-1980",
        "schafer-1978",
        "papadopulos-cooper-1967",
        "halford-2006",
        "draper-smith",
        "abramowitz-stegun",
        "cdc-drilled",
        "osha-1910-147",
    ),
)
