"""A storage tank for a slow well: how large for the day's peaks, how old its water gets."""

from math import e, log
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line
from calc.errors import Refused
from calc.fields import INVENTED, flow_input, open_tank_fields, well_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.decay import RADON, remaining, remaining_mixed
from calc.physics.storage import empty_after, refill_time, shortages, storage_needed, turnover
from calc.units import day, duration, flow, gal, gpm, minute, number, share, volume

MOST_STRETCHES = 6
STALE = 5 * day  # [awwa-2002]
DEMAND = "Demand of the busiest day"
STORAGE = "Storage"


class _Day(NamedTuple):
    """The busiest day, SI: what is drawn in each stretch, the quiet rest of it as the last."""

    draws: tuple[float, ...]
    spans: tuple[float, ...]
    supplied: float
    usable: float

    @property
    def drawn(self) -> float:
        return sum(draw * span for draw, span in zip(self.draws, self.spans, strict=True))

    @property
    def needed(self) -> float | None:
        return storage_needed(self.draws, self.spans, self.supplied)

    @property
    def shorts(self) -> list[tuple[float, float]]:
        return shortages(self.draws, self.spans, self.supplied)


def storage_tank(
    stretch_flows: tuple[float, ...],
    stretch_times: tuple[float, ...],
    tank_supply: float,
    tank_usable: float,
    tank_dead: float,
    daily_use: float,
) -> Answer:
    """Usable storage that the busiest day needs, and how long water stands in the tank."""
    if len(stretch_flows) != len(stretch_times):
        says = "needs one time for each of the flows: {stretch_flows}"
        raise Refused("contradiction", "stretch_times", says=says)
    rest = day - sum(stretch_times)
    if rest < 0:
        raise Refused("contradiction", "stretch_times", says="add up to more than a day")
    busy = _Day((*stretch_flows, 0.0), (*stretch_times, rest), tank_supply, tank_usable)
    stands = turnover(tank_usable + tank_dead, daily_use)
    needed = busy.needed
    return Answer(
        outputs={
            "storage_needed": needed,
            "tank_spare": None if needed is None else tank_usable - needed,
            "empty_after": empty_after(busy.shorts, tank_usable),
            "day_drawn": busy.drawn,
            "day_margin": tank_supply * day - busy.drawn,
            "refill": refill_time(tank_usable, tank_supply),
            "turnover": stands,
            "radon_mixed": remaining_mixed(stands),
            "radon_plug": remaining(stands),
        },
        findings=_findings(needed, tank_usable, stands),
        steps=_steps(busy),
        charts=(_chart(busy),),
    )


def _findings(needed: float | None, usable: float, stands: float) -> tuple[Finding, ...]:
    findings = [_headline(needed, usable)]
    if stands > STALE:
        findings.append(
            Finding(
                "caution",
                "The water stands long.",
                "{turnover} on average. Without chlorine germs grow in it. Store less, or "
                "disinfect behind the tank, and test for bacteria.",
            )
        )
    findings.append(
        Finding(
            "caution",
            "No treatment for radon.",
            "Decay in the tank leaves {radon_mixed} of it where the tank mixes, {radon_plug} at "
            "best. And an open tank gives radon off: its air must go outdoors.",
        )
    )
    return tuple(findings)


def _headline(needed: float | None, usable: float) -> Finding:
    if needed is None:
        return Finding(
            "danger",
            "No tank is large enough.",
            "{day_drawn} are drawn in the day, and less comes in. Storage moves water from one "
            "hour to another; it makes none.",
        )
    if needed > usable:
        return Finding(
            "danger",
            "Too small.",
            "The day needs {storage_needed} of usable water, and the tank has {tank_usable}. It is "
            "empty after {empty_after}.",
        )
    return Finding(
        "good",
        "Large enough.",
        "The day needs {storage_needed} of usable water. {tank_spare} are spare.",
    )


def _steps(busy: _Day) -> tuple[Step, ...]:
    given = {
        "V_d": Quantity(busy.drawn, volume, label="sum of flow times time over the stretches"),
        "t_d": Quantity(day, duration, label="a day"),
        "l_2": Quantity(log(2), number, 4, "natural logarithm of two"),
        "t_h": Quantity(RADON, _TURNOVER, 4, "half-life of radon"),
        "e": Quantity(e, number, 4, "base of the natural logarithms"),
    }
    steps = [
        Step("Left over in the day", "M = S * t_d - V_d", given),
        Step("Filled again, with nothing drawn", "t_f = V_u / S", given),
        Step("How long water stands in it", "t_s = (V_u + V_x) / Q_u", given),
        Step("Radon left, tank mixed", "f_m = 1 / (1 + l_2 * t_s / t_h)", given),
        Step("Radon left, first in first out", "f_p = e**(-l_2 * t_s / t_h)", given),
    ]
    return tuple(steps) if busy.needed is None else (*steps, *_shortage_steps(busy))


def _shortage_steps(busy: _Day) -> list[Step]:
    """The stretch at whose end the tank stands lowest."""
    before = ran = busy.shorts[0][1]
    draw = span = short = 0.0
    for flow_out, time in zip(busy.draws, busy.spans, strict=True):
        after = max(ran + (flow_out - busy.supplied) * time, 0.0)
        if after >= short:
            before, draw, span, short = ran, flow_out, time, after
        ran = after
    given = {
        "K_0": Quantity(before, volume, 4, "under full when the worst stretch begins"),
        "D_x": Quantity(draw, flow, 4, "flow of that stretch, at whose end the tank is lowest"),
        "t_x": Quantity(span, duration, 4, "time of that stretch"),
    }
    return [
        Step("Usable storage needed", "V_n = max(K_0 + (D_x - S) * t_x, 0)", given),
        Step("Spare", "V_s = V_u - V_n", given),
    ]


def _chart(busy: _Day) -> Chart:
    return Chart(
        title="Water in the tank through the busiest day",
        says="Above the low-level cut-out. Under 0 it is water that the house wants and does not "
        "get. A day like the one before it.",
        x=Axis("Time from the first stretch", _EMPTY),
        y=Axis("Usable water in the tank", well_fields.tank_usable),
        lines=(Line("level", tuple((t, busy.usable - short) for t, short in busy.shorts)),),
        limits=(Limit("full", busy.usable), Limit("cut-out", 0.0)),
    )


_TURNOVER = Output(
    name="turnover",
    label="Water stands in the tank for, on average",
    symbol="t_s",
    kind=duration,
    us="days",
    si="days",
    digits=2,
)
_EMPTY = Output(
    name="empty_after",
    label="The tank is first empty after",
    kind=duration,
    us="h",
    si="h",
    none="never: it carries the day",
)
CALCULATOR = Calculator(
    name="storage_tank",
    title="Storage tank",
    question="How large must the storage tank be for the busiest day, and how old gets its water?",
    inputs=(
        Input(
            name="stretch_flows",
            label="Mean flow in each stretch of the day",
            kind=flow,
            default="2.5 gpm; 0.1 gpm; 1.5 gpm",
            origin="invented example: washing, the day, the evening",
            low=0.0,
            high=100 * gpm,
            several=MOST_STRETCHES,
            measure="Meter before and after each stretch, divided by its time. From the first "
            "heavy one on. What is left of the day counts as nothing drawn.",
            group=DEMAND,
        ),
        Input(
            name="stretch_times",
            label="How long each stretch lasts",
            kind=duration,
            us="min",
            si="min",
            default="30 min; 480 min; 40 min",
            origin=INVENTED,
            low=1 * minute,
            high=day,
            several=MOST_STRETCHES,
            measure="One time for each flow, in the same order.",
            group=DEMAND,
        ),
        flow_input(
            "tank_supply",
            "Flow into the tank while there is room in it",
            "S",
            "0.35 gpm",
            "What the well keeps up in a dry season, or what its timer lets through on average: on "
            "time over on and off time, times the pump's flow.",
            STORAGE,
            sure="10 %",
        ),
        well_fields.tank_usable,
        Input(
            name="tank_dead",
            label="Water under the low-level cut-out",
            symbol="V_x",
            kind=volume,
            default="30 gal",
            origin=INVENTED,
            low=0.0,
            high=1e5 * gal,
            measure="It is never used in a peak, but it stands in the tank and ages.",
            group=STORAGE,
        ),
        open_tank_fields.daily_use,
    ),
    outputs=(
        Output(
            name="storage_needed",
            label="Usable storage that the day needs",
            symbol="V_n",
            kind=volume,
            none="none is enough: less comes in than is drawn",
        ),
        Output(
            name="tank_spare",
            label="Spare in this tank",
            symbol="V_s",
            kind=volume,
            digits=2,
            low=0.0,
            outside="The tank is too small.",
            none="none",
        ),
        _EMPTY,
        Output(name="day_drawn", label="Drawn in the busiest day", kind=volume),
        Output(
            name="day_margin",
            label="The day brings more than is drawn by",
            symbol="M",
            kind=volume,
            digits=2,
            low=0.0,
            outside="Less comes in than is drawn.",
        ),
        Output(
            name="refill",
            label="Filled from empty, with nothing drawn, in",
            symbol="t_f",
            kind=duration,
            none="never",
        ),
        _TURNOVER,
        Output(
            name="radon_mixed", label="Radon left in a tank that mixes", symbol="f_m", kind=share
        ),
        Output(
            name="radon_plug",
            label="Radon left if first in is first out",
            symbol="f_p",
            kind=share,
        ),
    ),
    work=storage_tank,
    cautions=(
        cautions.WELL_PIT,
        cautions.ELECTRICITY,
        cautions.RADON_AIR,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "thomas-burden-1963",
        "icrp-107",
        "awwa-2002",
        "cdc-drilled",
        "epa-radon-2016",
        "osha-1910-147",
    ),
)
