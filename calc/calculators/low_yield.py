"""A well too slow for its peak: what each remedy brings, side by side."""

from dataclasses import replace
from math import pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Bar, Bars
from calc.errors import Refused
from calc.fields import INVENTED, flow_input, open_tank_fields, well_fields, well_pump_fields
from calc.fields.well_fields import lowest_drawdown, well_of
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.storage import refill_time
from calc.physics.well import inflow_at, supply
from calc.units import area, duration, flow, ft, gal, length, number, volume

SPREAD = 2.0  # the same water over twice the time
DRY_AUGUST = "invented example: a dry August with guests"
REMEDIES = {
    "as_is": "as it is",
    "second_tank": "one more pressure tank",
    "throttled": "timer or throttle alone",
    "spread": "the peak spread over twice the time",
    "deeper": "the pump set deeper",
    "stored": "storage tank, filled by the timer",
}


class _Remedies(NamedTuple):
    """Water in the peak with each of them, m³."""

    as_is: float
    second_tank: float
    throttled: float
    spread: float
    deeper: float
    stored: float


def low_yield(
    casing_bore: float,
    static_level: float,
    pump_depth: float,
    pump_cover: float,
    well_inflow: float,
    fracture_depth: float,
    well_pump: float,
    peak_time: float,
    peak_use: float,
    daily_use: float,
    added_drawdown: float,
    timer_flow: float,
    deeper_pump: float,
    tank_usable: float,
) -> Answer:
    """What the well gives in the peak as it is, and with each remedy."""
    lowest = lowest_drawdown(static_level, pump_depth, pump_cover)
    well = well_of(casing_bore, static_level, well_inflow, fracture_depth)
    if deeper_pump < pump_depth:
        raise Refused("contradiction", "deeper_pump", says="is less than today's {pump_depth}")
    deepest = lowest + deeper_pump - pump_depth

    def given(pumped: float, depth: float = lowest, time: float = peak_time) -> float:
        return supply(well, pumped, 0.0, depth, time).volume

    timed = min(timer_flow, well_pump)
    as_is, throttled = given(well_pump), given(timed)
    found = _Remedies(
        as_is=as_is,
        second_tank=as_is + added_drawdown,
        throttled=throttled,
        spread=given(well_pump, lowest, SPREAD * peak_time),
        deeper=given(well_pump, deepest),
        stored=throttled + tank_usable,
    )
    full = inflow_at(well, lowest)
    needed = max(peak_use - throttled, 0.0)
    return Answer(
        outputs={
            "as_is_supply": found.as_is,
            "peak_short": max(peak_use - found.as_is, 0.0),
            "second_tank_supply": found.second_tank,
            "throttled_supply": found.throttled,
            "spread_supply": found.spread,
            "deeper_supply": found.deeper,
            "deeper_yield": inflow_at(well, deepest),
            "stored_supply": found.stored,
            "storage_needed": needed,
            "refill": refill_time(min(needed, tank_usable), min(timed, full)),
            "full_yield": full,
            "day_supply": min(well_pump, full),
        },
        findings=_findings(
            found, peak_use, daily_use > full, timed > full, timed < daily_use,
            well.fracture < lowest,
        ),
        steps=_steps(well.area, lowest, well.fracture, throttled, as_is, needed < tank_usable),
        charts=(_bars(found, peak_use),),
    )  # fmt: skip


def _findings(
    found: _Remedies, wanted: float, day_fails: bool, too_fast: bool, too_slow: bool, bare: bool
) -> tuple[Finding, ...]:
    if day_fails:
        text = (
            "Around the clock the well gives {day_supply}, and {daily_use} are used. No tank and "
            "no timer makes that good. Use less, or get more well: deeper, cleaned, opened by "
            "pressure, or a second one."
        )
        return (Finding("danger", "The day fails.", text),)
    findings = [_headline(found, wanted), *_helps(found, wanted)]
    if too_fast:
        text = (
            "It lets {timer_flow} through, and the well makes {full_yield} at the most. The level "
            "goes down to the pump: set it lower, and keep the dry-run cut-out."
        )
        findings.append(Finding("caution", "The timer empties the well.", text))
    if too_slow:
        text = "{timer_flow} around the clock is less than the day's {daily_use}."
        findings.append(Finding("danger", "The timer starves the day.", text))
    if bare:
        text = (
            "The level already goes under the fracture that feeds the well. A deeper pump brings "
            "stored water for one peak and not a gallon more in the day."
        )
        findings.append(Finding("caution", "Deeper brings no yield.", text))
    return tuple(findings)


def _headline(found: _Remedies, wanted: float) -> Finding:
    if found.as_is >= wanted:
        text = "The well gives {as_is_supply} in the peak as it is, and {peak_use} are wanted."
        return Finding("good", "It carries the peak as it is.", text)
    if max(found) < wanted:
        text = (
            "{peak_short} are missing in the peak, and no remedy here brings them by itself. A "
            "storage tank of {storage_needed} usable would."
        )
        return Finding("danger", "No remedy is enough by itself.", text)
    text = "{peak_short} are missing in the peak. What would carry it by itself stands below."
    return Finding("caution", "Short in the peak.", text)


def _helps(found: _Remedies, wanted: float) -> list[Finding]:
    if found.as_is >= wanted:
        return []
    findings = []
    if found.spread >= wanted:
        text = "The same water over twice the time: {spread_supply}. It costs a habit."
        findings.append(Finding("good", "Spreading it is enough.", text))
    if found.deeper >= wanted:
        text = "With the pump at {deeper_pump} the peak has {deeper_supply}."
        findings.append(Finding("good", "A deeper pump is enough.", text))
    if found.stored >= wanted:
        text = (
            "Tank and timer together give {stored_supply}. What the peak took is back {refill} "
            "after it."
        )
        findings.append(Finding("good", "Storage is enough.", text))
    if found.second_tank < wanted:
        text = "It adds its drawdown once, {added_drawdown}. What is missing is more."
        findings.append(Finding("caution", "A pressure tank is no storage.", text))
    return findings


def _steps(
    surface: float, lowest: float, fracture: float, throttled: float, as_is: float, refills: bool
) -> tuple[Step, ...]:
    given = {
        "pi": Quantity(pi, number, label="the number pi"),
        "A": Quantity(surface, area),
        "s_m": Quantity(lowest, length),
        "s_f": Quantity(fracture, length),
        "V_t": Quantity(throttled, volume, 4, "water that the timer lets through in the peak"),
        "V_0": Quantity(as_is, volume, 4, "water in the peak as it is, by balance of the casing"),
    }
    return (
        Step("Surface of the water in the casing", "A = pi * D_c**2 / 4", given),
        Step("Lowest drawdown allowed", "s_m = h_p - h_k - h_s", given),
        Step("Drawdown at which the fracture lies bare", "s_f = h_f - h_s", given),
        Step("Full yield", "Y = C * min(s_m, s_f)", given),
        Step("In a day at most", "D = min(Q_1, Y)", given),
        Step("Missing in the peak", "K = max(V_p - V_0, 0)", given),
        Step("With one more pressure tank", "V_2 = V_0 + dV_a", given),
        Step("With storage and timer", "V_s = V_t + V_u", given),
        Step("Storage that the peak needs", "V_n = max(V_p - V_t, 0)", given),
        Step(
            "Full again after the peak in",
            "t_f = V_n / min(q_t, Q_1, Y)" if refills else "t_f = V_u / min(q_t, Q_1, Y)",
            given,
        ),
    )


def _bars(found: _Remedies, wanted: float) -> Bars:
    bars = []
    for name, label in REMEDIES.items():
        value = getattr(found, name)
        missing = wanted - value
        bars.append(Bar(label, value, "enough" if missing <= 0 else f"{value / wanted:.0%} of it"))
    return Bars(
        title="Water in the peak",
        says="What the well gives in the peak as it is and with each remedy, against what is "
        "wanted.",
        like=well_fields.peak_use,
        bars=(*bars, Bar("wanted", wanted)),
    )


def _volume(name: str, label: str, symbol: str = "") -> Output:
    return Output(name=name, label=label, symbol=symbol, kind=volume)


CALCULATOR = Calculator(
    name="low_yield",
    title="Living with a slow well",
    question="Which remedy carries the peak: habits, timer, deeper pump, more tank?",
    inputs=(
        well_fields.casing_bore,
        replace(well_fields.static_level, default="80 ft", origin=DRY_AUGUST),
        well_fields.pump_depth,
        well_fields.pump_cover,
        replace(well_fields.well_inflow, default="0.008 gpm/ft", origin=DRY_AUGUST),
        well_fields.fracture_depth,
        well_pump_fields.well_pump,
        well_fields.peak_time,
        replace(well_fields.peak_use, default="160 gal", origin=DRY_AUGUST),
        replace(open_tank_fields.daily_use, default="300 gal/day", origin=DRY_AUGUST),
        Input(
            name="added_drawdown",
            label="Drawdown of the pressure tank you might add",
            symbol="dV_a",
            kind=volume,
            default="12 gal",
            origin="invented example: some 44 gallons of tank on a 40/60 switch",
            low=0.5 * gal,
            high=500 * gal,
            measure="From cut-out to cut-in, not its size: a quarter to a third of it.",
            group="Remedies",
        ),
        flow_input(
            "timer_flow",
            "Mean flow that a timer or throttle would let through",
            "q_t",
            "0.35 gpm",
            "Under the full yield, so that the well is never emptied, and over the day's use. On "
            "time over on and off time, times the pump's flow.",
            "Remedies",
            sure="5 %",
        ),
        Input(
            name="deeper_pump",
            label="Depth to which the pump could be lowered",
            symbol="h_d",
            kind=length,
            us="ft",
            si="m",
            default="200 ft",
            origin=INVENTED,
            low=5 * ft,
            high=2000 * ft,
            measure="Depth of the well less 10 to 20 ft for what settles in it. The pump must have "
            "the head for it.",
            group="Remedies",
        ),
        well_fields.tank_usable,
    ),
    outputs=(
        _volume("as_is_supply", "The well gives in the peak as it is"),
        _volume("peak_short", "Missing in the peak", "K"),
        _volume("spread_supply", "With the peak spread over twice the time"),
        _volume("throttled_supply", "With a timer or throttle alone"),
        _volume("second_tank_supply", "With one more pressure tank", "V_2"),
        _volume("deeper_supply", "With the pump set deeper"),
        Output(name="deeper_yield", label="Full yield with the pump set deeper", kind=flow),
        _volume("stored_supply", "With storage and timer", "V_s"),
        _volume("storage_needed", "Usable storage that the peak needs, with the timer", "V_n"),
        Output(
            name="refill",
            label="What the peak took of it is back after",
            symbol="t_f",
            kind=duration,
            none="never",
        ),
        Output(name="full_yield", label="Full yield, at the lowest level", symbol="Y", kind=flow),
        Output(
            name="day_supply",
            label="In a day at most",
            symbol="D",
            kind=flow,
            us="gal/day",
            si="L/day",
        ),
    ),
    work=low_yield,
    cautions=(
        cautions.WELL_OPEN,
        cautions.ELECTRICITY,
        cautions.WELL_PIT,
        cautions.PRESSURE,
        cautions.LOCAL_CODE,
    ),
    leaves={"full_yield": ("tank_supply",)},
    sources=("gwp-box-1", "nysdoh-fs2", "slichter-recuperation", "cdc-drilled", "osha-1910-147"),
)
