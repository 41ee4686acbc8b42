"""A bail or recovery test: from the rising level to the inflow and the yield."""

from math import pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.fields import INVENTED, well_fields
from calc.fields.well_fields import TEST, lowest_drawdown, refuse_pipe, refuse_readings
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.filter_life import largest_ratio
from calc.physics.fouling import Fit, fitted
from calc.physics.pumping_test import TWO_SIDED
from calc.physics.student import student_t
from calc.physics.well import inflow_while, open_area
from calc.units import area, duration, flow, ft, length, minute, number, specific_capacity, velocity

MOST_READINGS = 12
POINTS = 24
DEEP_ENOUGH = 0.5  # share of the lowest drawdown that a test should have reached


class _Test(NamedTuple):
    """The readings and the two laws fitted to them, SI.

    picked      -- what the reader knows of the law, or that the readings are to decide
    by_drawdown -- inflow in proportion to drawdown: the level comes back ever slower
    even        -- the same inflow at any level: it comes back by as much each minute
    """

    picked: str
    times: tuple[float, ...]
    drawdowns: tuple[float, ...]
    area: float
    lowest: float
    by_drawdown: Fit
    even: Fit

    @property
    def rises(self) -> bool:
        return self.even.slope < 0 and self.by_drawdown.slope < 0

    def fits(self, one: Fit, other: Fit) -> bool:
        """Whether the readings allow the one law beside the other."""
        freedom = one.freedom
        return not freedom or one.scatter <= largest_ratio(freedom) * other.scatter

    @property
    def is_even(self) -> bool:
        """Whether only the even law is allowed."""
        return not self.fits(self.by_drawdown, self.even)

    @property
    def is_proportional(self) -> bool:
        """Whether only the law by drawdown is allowed."""
        return not self.fits(self.even, self.by_drawdown)

    @property
    def each(self) -> float:
        """Inflow for each metre of drawdown, m²/s."""
        return -self.area * self.by_drawdown.slope

    @property
    def steady(self) -> float:
        """Inflow by the even law, m³/s."""
        return -self.area * self.even.slope

    @property
    def takes_even(self) -> bool:
        """Whether the yield is told by the even law. Where the readings allow both, the lesser."""
        if self.picked != "readings":
            return self.picked == "even"
        if self.is_even or self.is_proportional:
            return self.is_even
        return self.steady < self.each * self.lowest

    @property
    def full_yield(self) -> float:
        """Inflow at the lowest level, m³/s."""
        return self.steady if self.takes_even else self.each * self.lowest


def well_test(
    casing_bore: float,
    drop_pipe: float,
    static_level: float,
    pump_depth: float,
    pump_cover: float,
    rise_times: tuple[float, ...],
    rise_levels: tuple[float, ...],
    rise_law: str,
) -> Answer:
    """Inflow for each foot of drawdown, and the yield at the lowest level."""
    lowest = lowest_drawdown(static_level, pump_depth, pump_cover)
    refuse_pipe(drop_pipe, casing_bore)
    refuse_readings("rise", rise_times, rise_levels, static_level)
    drawdowns = tuple(level - static_level for level in rise_levels)
    test = _Test(
        rise_law,
        rise_times,
        drawdowns,
        open_area(casing_bore, drop_pipe),
        lowest,
        fitted(rise_times, drawdowns, 1.0),
        fitted(rise_times, drawdowns, 0.0),
    )
    rises = test.rises
    low, high = _interval(test) if rises else (None, None)
    first, last = (_between(test, place) for place in (0, len(rise_times) - 2))
    return Answer(
        outputs={
            "inflow_each": test.each if rises else None,
            "inflow_low": low,
            "inflow_high": high,
            "full_yield": test.full_yield if rises else None,
            "day_yield": test.full_yield if rises else None,
            "first_inflow": first,
            "last_inflow": last,
            "even_inflow": test.steady if rises else None,
            "deepest": max(drawdowns),
        },
        findings=_findings(test),
        steps=_steps(test),
        charts=(_chart(test),),
    )


def _interval(test: _Test) -> tuple[float | None, float | None]:
    """Between which the inflow for each metre lies, 19 times in 20."""
    fit = test.by_drawdown
    if not fit.freedom:
        return None, None
    sure = student_t(TWO_SIDED, fit.freedom) * fit.scatter / fit.spread**0.5
    return max(test.area * (-fit.slope - sure), 0.0), test.area * (-fit.slope + sure)


def _between(test: _Test, place: int) -> float:
    """What flowed in between one reading and the next."""
    fall = test.drawdowns[place + 1] - test.drawdowns[place]
    return inflow_while(test.area, 0.0, fall, test.times[place + 1] - test.times[place])


def _findings(test: _Test) -> tuple[Finding, ...]:
    if not test.rises:
        text = (
            "The level does not come back. Something still draws, a pipe leaks into the house, or "
            "the times and levels are mixed up. There is no yield to tell."
        )
        return (Finding("danger", "It does not rise.", text),)
    findings = [_headline(test)]
    if not test.by_drawdown.freedom:
        text = "Two readings give a figure but no idea how far to trust it. Take five or more."
        findings.append(Finding("caution", "Two readings.", text))
    if max(test.drawdowns) < DEEP_ENOUGH * test.lowest:
        findings.append(
            Finding(
                "caution",
                "Not drawn down far enough.",
                "The test began at {deepest} of drawdown, and the yield is told for "
                "{lowest}. That is a guess: draw it down further.",
                {"lowest": Quantity(test.lowest, length)},
            )
        )
    return tuple(findings)


def _headline(test: _Test) -> Finding:
    if (test.picked == "even" and test.is_proportional) or (
        test.picked == "drawdown" and test.is_even
    ):
        text = (
            "They do not lie on the law that was picked. Look at the chart, and ask the log again."
        )
        return Finding("caution", "The readings say otherwise.", text)
    if test.is_even or test.picked == "even":
        return Finding(
            "caution",
            "It rises evenly.",
            "As much comes in at any level: a fracture above the water feeds the well. The yield "
            "is {even_inflow}, and a deeper pump gains none.",
        )
    if test.is_proportional or test.picked == "drawdown":
        return Finding(
            "good",
            "It comes back ever slower.",
            "For each foot or metre of drawdown {inflow_each} flow in: at the lowest level "
            "{full_yield}, {day_yield} at most.",
        )
    return Finding(
        "caution",
        "Either law fits.",
        "The readings cannot tell whether inflow grows with drawdown or not. The yield told is the "
        "lesser of the two, {full_yield}. Read on until the level is nearly back.",
    )


def _steps(test: _Test) -> tuple[Step, ...]:
    given = {
        "pi": Quantity(pi, number, label="the number pi"),
        "A": Quantity(test.area, area),
        "s_m": Quantity(test.lowest, length),
        "k": Quantity(
            -test.by_drawdown.slope * minute,
            number,
            4,
            "share of the drawdown that comes back in a minute, by least squares",
        ),
        "t_1": Quantity(minute, duration, label="one minute"),
        "v": Quantity(-test.even.slope, velocity, 4, "speed of an even rise, by least squares"),
    }
    steps = [
        Step("Lowest drawdown allowed", "s_m = h_p - h_k - h_s", given),
        Step("Surface of the water in the casing", "A = pi * (D_c**2 - D_p**2) / 4", given),
    ]
    if not test.rises:
        return tuple(steps)
    steps += [
        Step("Inflow for each foot or metre of drawdown", "C = A * k / t_1", given),
        Step("Inflow, if it is the same at any level", "Q_e = A * v", given),
    ]
    formula = "Y = Q_e" if test.takes_even else "Y = C * s_m"
    return (*steps, Step("Yield at the lowest level", formula, given))


def _chart(test: _Test) -> Chart:
    end = test.times[-1]
    times = [test.times[0] + (end - test.times[0]) * place / POINTS for place in range(POINTS + 1)]
    readings = zip(test.times, test.drawdowns, strict=True)
    return Chart(
        title="Drawdown while the well comes back",
        says="The readings, and the two laws fitted to them: inflow that grows with drawdown, "
        "which bends, and an even inflow, which does not.",
        x=Axis("Time since the stop", _TIMES),
        y=Axis("Drawdown", _DEEPEST),
        lines=(
            Line("inflow by drawdown", tuple((t, test.by_drawdown.resistance(t)) for t in times)),
            Line("even inflow", tuple((t, test.even.resistance(t)) for t in times)),
        ),
        limits=(Limit("static level", 0.0),),
        marks=tuple(Mark(f"reading {i}", t, s) for i, (t, s) in enumerate(readings, 1)),
    )


_TIMES = Input(
    name="rise_times",
    label="Time of each reading",
    kind=duration,
    us="min",
    si="min",
    default="1 min; 10 min; 20 min; 30 min; 45 min; 60 min; 90 min; 120 min",
    origin=INVENTED,
    low=0.0,
    high=48 * 60 * minute,
    several=MOST_READINGS,
    measure="Since the bailing or the pump stopped. Close together at first.",
    group=TEST,
)
_DEEPEST = Output(
    name="deepest",
    label="Drawdown at the deepest reading",
    kind=length,
    us="ft",
    si="m",
)
CALCULATOR = Calculator(
    name="well_test",
    title="Bail or recovery test",
    question="What flows into the well, read from how its level comes back?",
    inputs=(
        well_fields.casing_bore,
        well_fields.drop_pipe,
        well_fields.static_level,
        well_fields.pump_depth,
        well_fields.pump_cover,
        _TIMES,
        Input(
            name="rise_levels",
            label="Depth to water at each reading",
            kind=length,
            us="ft",
            si="m",
            default="118.6 ft; 107.6 ft; 98.3 ft; 88.8 ft; 77.3 ft; 67.7 ft; 54.4 ft; 46.3 ft",
            origin=INVENTED,
            low=0.0,
            high=2000 * ft,
            several=MOST_READINGS,
            measure="Tape or sounder from the same mark on the casing. Nothing may be drawn "
            "meanwhile, and no pipe may drain back into the well.",
            group=TEST,
        ),
        Choice(
            name="rise_law",
            label="What feeds the well",
            options={
                "readings": "not known: let the readings decide",
                "drawdown": "rock or fractures below the level: more drawdown, more inflow",
                "even": "a fracture above the level: the same at any level",
            },
            default="readings",
            origin="not known of most wells",
            measure="From the driller's log: depth of the fractures that gave water.",
            group=TEST,
        ),
    ),
    outputs=(
        Output(
            name="inflow_each",
            label="Inflow for each foot or metre of drawdown",
            symbol="C",
            kind=specific_capacity,
            none="none: the level does not rise",
        ),
        Output(
            name="inflow_low",
            label="19 times in 20 not under",
            kind=specific_capacity,
            none="no interval",
        ),
        Output(
            name="inflow_high",
            label="and not over",
            kind=specific_capacity,
            none="no interval",
        ),
        Output(
            name="full_yield",
            label="Yield at the lowest level",
            symbol="Y",
            kind=flow,
            none="none: the level does not rise",
        ),
        Output(
            name="day_yield",
            label="That is in a day at most",
            kind=flow,
            us="gal/day",
            si="L/day",
            none="none",
        ),
        Output(name="first_inflow", label="Inflow between the first two readings", kind=flow),
        Output(name="last_inflow", label="Inflow between the last two readings", kind=flow),
        Output(
            name="even_inflow",
            label="Inflow, if it is the same at any level",
            symbol="Q_e",
            kind=flow,
            none="none: the level does not rise",
        ),
        _DEEPEST,
    ),
    work=well_test,
    cautions=(
        cautions.WELL_OPEN,
        cautions.ELECTRICITY,
        cautions.WELL_PIT,
        cautions.LOCAL_CODE,
    ),
    leaves={"inflow_each": ("well_inflow",), "full_yield": ("tank_supply",)},
    sources=(
        "slichter-recuperation",
        "draper-smith",
        "cacoullos-1965",
        "abramowitz-stegun",
        "cdc-drilled",
        "osha-1910-147",
    ),
)
