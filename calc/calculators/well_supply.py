"""What the well gives in a peak and in a day, beside the sum that promises too much."""

from math import log, pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line
from calc.fields import INVENTED, open_tank_fields, well_fields, well_pump_fields
from calc.fields.well_fields import PEAK, lowest_drawdown, well_of
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.well import (
    Supply,
    Well,
    drawdown_after,
    inflow_at,
    naive_supply,
    recovery_time,
    supply,
)
from calc.units import area, duration, flow, hour, length, minute, number, share, volume

BACK = 0.9  # share of the drawdown that counts as recovered; the whole takes for ever
POINTS = 30


class _Peak(NamedTuple):
    """The peak, SI."""

    well: Well
    pumped: float
    lowest: float
    time: float
    given: Supply
    naive: float
    left: float
    after: float

    @property
    def full_yield(self) -> float:
        return inflow_at(self.well, self.lowest)

    @property
    def naive_down(self) -> float | None:
        """When the sum would have the level at its lowest, s."""
        stored = self.well.area * self.lowest
        return stored / (self.pumped - self.full_yield) if self.pumped > self.full_yield else None

    @property
    def bares(self) -> bool:
        """Whether the fracture lies bare before the pump must stop."""
        return self.well.fracture < self.lowest


def well_supply(
    casing_bore: float,
    static_level: float,
    pump_depth: float,
    pump_cover: float,
    well_inflow: float,
    fracture_depth: float,
    well_pump: float,
    peak_time: float,
    peak_use: float,
    peak_gap: float,
    daily_use: float,
) -> Answer:
    """Water for one peak, for the next one, and in a day."""
    lowest = lowest_drawdown(static_level, pump_depth, pump_cover)
    well = well_of(casing_bore, static_level, well_inflow, fracture_depth)
    given = supply(well, well_pump, 0.0, lowest, peak_time)
    left = drawdown_after(well, 0.0, given.end, peak_gap)
    after = supply(well, well_pump, left, lowest, peak_time).volume
    naive = naive_supply(well, well_pump, lowest, peak_time)
    peak = _Peak(well, well_pump, lowest, peak_time, given, naive, left, after)
    day_supply = min(well_pump, peak.full_yield)
    return Answer(
        outputs={
            "peak_supply": given.volume,
            "peak_margin": given.volume - peak_use,
            "naive_supply": naive,
            "over_promise": naive / given.volume - 1,
            "pump_down": given.down,
            "naive_down": peak.naive_down,
            "well_stored": well.area * lowest,
            "full_yield": peak.full_yield,
            "mean_inflow": (given.volume - well.area * given.end) / peak_time,
            "left_drawdown": left,
            "next_supply": after,
            "day_supply": day_supply,
            "recovery": recovery_time(well, lowest, BACK),
        },
        findings=_findings(peak, peak_use, daily_use > day_supply),
        steps=_steps(peak),
        charts=(_chart(peak, peak_use),),
    )


def _findings(peak: _Peak, peak_use: float, day_fails: bool) -> tuple[Finding, ...]:
    findings = [_headline(peak, peak_use, day_fails)]
    if peak.given.volume < peak_use <= peak.naive:
        findings.append(
            Finding(
                "caution",
                "The sum would have said yes.",
                "Stored water and full yield add up to {naive_supply}. Full yield flows in only "
                "when the level is at its lowest; on the way down less does.",
            )
        )
    if peak.given.down is not None:
        findings.append(
            Finding(
                "caution",
                "The pump must be stopped.",
                "After {pump_down} of steady pumping the level is at its lowest. Without a cut-out "
                "or a throttle the pump draws air and burns.",
            )
        )
    if peak.bares:
        findings.append(
            Finding(
                "caution",
                "A fracture sets the yield.",
                "Under {fracture_depth} the inflow grows no further. A deeper pump gains stored "
                "water, no yield.",
            )
        )
    return tuple(findings)


def _headline(peak: _Peak, peak_use: float, day_fails: bool) -> Finding:
    if day_fails:
        return Finding(
            "danger",
            "The day fails.",
            "Held at its lowest level around the clock the well gives {day_supply}, and "
            "{daily_use} are used. No tank makes that good: less use, or more well.",
        )
    if peak.given.volume < peak_use:
        return Finding(
            "danger",
            "Not enough for the peak.",
            "The well gives {peak_supply} in {peak_time}, and {peak_use} are wanted. Storage, or a "
            "peak spread over more hours, can carry it.",
        )
    if peak.after < peak_use:
        return Finding(
            "caution",
            "The next peak comes too soon.",
            "The first peak has its water. After {peak_gap} of rest the level is still down by "
            "{left_drawdown}, and the next peak gets {next_supply}.",
        )
    return Finding(
        "good",
        "Enough.",
        "The well gives {peak_supply} in the peak, {next_supply} in the next one, and at most "
        "{day_supply}.",
    )


def _steps(peak: _Peak) -> tuple[Step, ...]:
    well, bend = peak.well, min(peak.lowest, peak.well.fracture)
    given = {
        "pi": Quantity(pi, number, label="the number pi"),
        "A": Quantity(well.area, area),
        "s_m": Quantity(peak.lowest, length),
        "s_f": Quantity(well.fracture, length),
        "s_e": Quantity(peak.given.end, length, label="drawdown at the end of the peak"),
    }
    steps = [
        Step("Lowest drawdown allowed", "s_m = h_p - h_k - h_s", given),
        Step("Surface of the water in the casing", "A = pi * D_c**2 / 4", given),
        Step("Stored water", "V_s = A * s_m", given),
        Step("Drawdown at which the fracture lies bare", "s_f = h_f - h_s", given),
        Step("Full yield, at the lowest level", "Y = C * min(s_m, s_f)", given),
        Step("What the sum promises", "N = min(Q_1 * t_p, V_s + Y * t_p)", given),
    ]
    if peak.naive_down is not None:
        steps.append(Step("When the sum has the level down", "t_n = V_s / (Q_1 - Y)", given))
    if peak.given.down is None:
        steps.append(Step("The pump runs through the peak", "V = Q_1 * t_p", given))
    else:
        ratio = log(peak.pumped / (peak.pumped - well.inflow * bend))
        given["l"] = Quantity(ratio, number, 4, "natural logarithm of Q_1 / (Q_1 - Y)")
        formula = "t_d = A / C * l + A * max(s_m - s_f, 0) / (Q_1 - Y)"
        steps += [
            Step("Time until the level is at its lowest", formula, given),
            Step("Water for the peak", "V = Q_1 * t_d + Y * (t_p - t_d)", given),
        ]
    steps += [
        Step("Left over", "M = V - V_p", given),
        Step("The sum promises too much by", "r = N / V - 1", given),
        Step("Mean inflow in the peak", "Q_m = (V - A * s_e) / t_p", given),
        Step("In a day at most", "D = min(Q_1, Y)", given),
    ]
    return tuple(steps)


def _chart(peak: _Peak, peak_use: float) -> Chart:
    times = [peak.time * place / POINTS for place in range(POINTS + 1)]
    if peak.given.down is not None:
        times = sorted([*times, peak.given.down])
    honest = [(t, supply(peak.well, peak.pumped, 0.0, peak.lowest, t).volume) for t in times]
    summed = [(t, naive_supply(peak.well, peak.pumped, peak.lowest, t)) for t in times]
    return Chart(
        title="Water given by the well through the peak",
        says="What the well gives, and what stored water plus full yield would promise. The "
        "second is never less.",
        x=Axis("Time from the start of the peak", _DOWN),
        y=Axis("Water given", well_fields.peak_use),
        lines=(Line("the well gives", tuple(honest)), Line("the sum promises", tuple(summed))),
        limits=(Limit("wanted", peak_use),),
    )


_DOWN = Output(
    name="pump_down",
    label="The level is at its lowest after",
    symbol="t_d",
    kind=duration,
    none="not within the peak",
)
CALCULATOR = Calculator(
    name="well_supply",
    title="What the well gives",
    question="How much water does the well give in a peak, in the next one, and in a day?",
    inputs=(
        well_fields.casing_bore,
        well_fields.static_level,
        well_fields.pump_depth,
        well_fields.pump_cover,
        well_fields.well_inflow,
        well_fields.fracture_depth,
        well_pump_fields.well_pump,
        well_fields.peak_time,
        well_fields.peak_use,
        Input(
            name="peak_gap",
            label="Shortest rest between two peaks",
            symbol="t_g",
            kind=duration,
            us="h",
            si="h",
            default="8 h",
            origin=INVENTED,
            low=10 * minute,
            high=48 * hour,
            measure="From the end of one peak to the start of the next, on the busiest day.",
            group=PEAK,
        ),
        open_tank_fields.daily_use,
    ),
    outputs=(
        Output(name="peak_supply", label="The well gives in the peak", symbol="V", kind=volume),
        Output(
            name="peak_margin",
            label="Left over in the peak",
            symbol="M",
            kind=volume,
            digits=2,
            low=0.0,
            outside="The peak wants more than the well gives.",
        ),
        Output(
            name="naive_supply",
            label="Stored water plus full yield would promise",
            symbol="N",
            kind=volume,
        ),
        Output(name="over_promise", label="That is too much by", symbol="r", kind=share, digits=2),
        _DOWN,
        Output(
            name="naive_down",
            label="The sum would have it there after",
            symbol="t_n",
            kind=duration,
            none="never: the well makes more than the pump takes",
        ),
        Output(name="well_stored", label="Usable water stored", symbol="V_s", kind=volume),
        Output(name="full_yield", label="Full yield, at the lowest level", symbol="Y", kind=flow),
        Output(name="mean_inflow", label="Mean inflow in the peak", symbol="Q_m", kind=flow),
        Output(
            name="left_drawdown",
            label="Drawdown left when the next peak starts",
            kind=length,
            us="ft",
            si="m",
        ),
        Output(name="next_supply", label="The well gives in the next peak", kind=volume),
        Output(
            name="day_supply",
            label="In a day at most, held at its lowest level",
            symbol="D",
            kind=flow,
            us="gal/day",
            si="L/day",
        ),
        Output(
            name="recovery",
            label="From the lowest level nine tenths are back after",
            kind=duration,
        ),
    ),
    work=well_supply,
    cautions=(
        cautions.WELL_OPEN,
        cautions.ELECTRICITY,
        cautions.WELL_PIT,
        cautions.LOCAL_CODE,
    ),
    leaves={"full_yield": ("tank_supply",)},
    sources=("gwp-box-1", "slichter-recuperation", "mesa-shock", "cdc-drilled", "osha-1910-147"),
)
