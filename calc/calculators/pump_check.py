"""Pump, pressure tank and check valve, told apart by a gauge, a pail and a watch."""

from dataclasses import replace
from math import log
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, WELL_PUMP, well_pump_fields, well_tank_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.pressure_tank import drawdown
from calc.physics.pump_check import fill_flow, measured_head, sheet_flow
from calc.physics.pump_curve import PumpCurve, curve_through
from calc.units import (
    WATER_COLUMN,
    atm,
    duration,
    flow,
    ft,
    gal,
    gauge_pressure,
    length,
    minute,
    number,
    pressure_gradient,
    psi,
    second,
    share,
    volume,
)

TANK = "Well's pressure tank"
LEAK = "Leak-back"
WORN = 0.9  # of the sheet's shut-off head: common practice, no source, 10 to 15 % short
HELD = (
    0.8  # of the sheet's flow; a choice, no source: the pipe's friction must not be taken for wear
)
TIRED = 0.8  # of the water the tank should give; a choice, no source
SHORT = 1 * minute  # shortest run of a pump up to 1 hp [pelikan-2006]
READ = 1 * psi  # what a gauge cannot tell
THREE = 3  # points of the sheet
FLATTEST, STEEPEST = 0.2, 10  # powers; pumps lie between 1 and 3, from memory
POINTS = 40


class _Found(NamedTuple):
    """Flows, m³/s; heads, m; volumes, m³; times, s."""

    flow: float
    sheet_flow: float
    head: float
    filling: float
    should_give: float
    leaked: float


def pump_check(
    well_caught: float,
    fill_time: float,
    well_precharge: float,
    well_cut_in: float,
    well_cut_out: float,
    well_tank: float,
    shut_off_gauge: float,
    water_below: float,
    curve_flows: tuple[float, ...],
    curve_heads: tuple[float, ...],
    leak_from: float,
    leak_to: float,
    leak_time: float,
) -> Answer:
    """Flow and shut-off head against the sheet, the tank against Boyle, and what leaks back."""
    _check(well_cut_in, well_cut_out, well_precharge)
    curve = _curve(curve_flows, curve_heads)
    if leak_to > leak_from:
        raise Refused("contradiction", "leak_to", says="must be no more than {leak_from}")
    middle = (well_cut_in + well_cut_out) / 2
    filling = measured_head(middle, water_below)
    found = _Found(
        fill_flow(well_caught, fill_time),
        sheet_flow(filling, curve),
        measured_head(shut_off_gauge, water_below),
        filling,
        drawdown(well_tank, well_precharge, well_cut_in, well_cut_out),
        drawdown(well_tank, well_precharge, leak_to, leak_from),
    )
    flow_share = found.flow / found.sheet_flow if found.sheet_flow else None
    head_share = found.head / curve.shut_off
    tank_share = well_caught / found.should_give
    return Answer(
        outputs={
            "pump_flow": found.flow,
            "sheet_flow": found.sheet_flow,
            "flow_share": flow_share,
            "measured_shut_off": found.head,
            "head_share": head_share,
            "tank_should_give": found.should_give,
            "tank_share": tank_share,
            "leaked": found.leaked,
            "leak_rate": found.leaked / leak_time,
        },
        findings=(
            *_pump(flow_share, head_share, shut_off_gauge - well_cut_out),
            *_tank(tank_share, fill_time, well_precharge > well_cut_in),
            *_leak(leak_from - leak_to),
        )
        or (_sound(),),
        steps=_steps(found, curve, curve_flows[1], curve_heads[1]),
        charts=(_chart(found, curve, curve_flows[1]),),
    )


def _check(cut_in: float, cut_out: float, precharge: float) -> None:
    if cut_out <= cut_in:
        raise Refused("contradiction", "well_cut_out", says="must be above {well_cut_in}")
    if precharge >= cut_out:
        raise Refused("contradiction", "well_precharge", says="must be below {well_cut_out}")


def _curve(flows: tuple[float, ...], heads: tuple[float, ...]) -> PumpCurve:
    if len(flows) != THREE or flows[0] or not 0 < flows[1] < flows[2]:
        raise Refused("contradiction", "curve_flows", says="must be three: 0, and two that rise")
    if len(heads) != THREE or not heads[0] > heads[1] > heads[2]:
        raise Refused("contradiction", "curve_heads", says="must be three, each less than the last")
    bend = log((heads[0] - heads[2]) / (heads[0] - heads[1])) / log(flows[2] / flows[1])
    if not FLATTEST <= bend <= STEEPEST:
        raise Refused("contradiction", "curve_heads", says="bend as no pump's curve does")
    return curve_through(heads[0], (flows[1], heads[1]), (flows[2], heads[2]))


def _pump(flow_share: float | None, head_share: float, over: float) -> tuple[Finding, ...]:
    if over <= 0:
        return (
            Finding(
                "danger",
                "It cannot reach cut-out.",
                "Against a shut valve it makes {shut_off_gauge}; the switch waits for "
                "{well_cut_out}. It never stops. Switch it off until the cause is found: a worn "
                "pump, a leak in the drop pipe, low water, low voltage, or a cut-out set too high.",
            ),
        )
    if head_share < WORN:
        return (
            Finding(
                "caution",
                "Short of head.",
                "It makes {measured_shut_off}, {head_share} of its sheet. Worn, a hole in the drop "
                "pipe, or too slow: measure the voltage at the panel while it runs, then pull it.",
            ),
        )
    if flow_share is not None and flow_share < HELD:
        return (
            Finding(
                "caution",
                "Held back, not worn.",
                "Its head is sound, but it gives {pump_flow}, {flow_share} of what the sheet "
                "promises here. Look for what lies in its way: a clogged screen, a stuck check "
                "valve, "
                "a filter before the tank, a narrow pipe. Or the water falls while it runs.",
            ),
        )
    return ()


def _tank(tank_share: float, time: float, over: bool) -> tuple[Finding, ...]:
    findings = []
    if over:
        findings.append(
            Finding(
                "caution",
                "Pre-charge over cut-in.",
                "At {well_precharge} the tank is empty before the pump starts at {well_cut_in}: "
                "the taps stop, then jerk. Let air out until it is 2 psi under cut-in.",
            )
        )
    if tank_share < TIRED:
        findings.append(
            Finding(
                "caution",
                "The tank gives too little.",
                "It gave {well_caught}; with this pre-charge it should give {tank_should_give}. "
                "Pump off, tap open, tank empty: read the pre-charge again. Water from its air "
                "valve means the bladder is torn.",
            )
        )
    if tank_share > 1 / TIRED:
        findings.append(
            Finding(
                "caution",
                "A figure does not fit.",
                "It gave {well_caught}, more than a sound tank can: {tank_should_give}. Check the "
                "size on its label, the gauge, and that the pump was off.",
            )
        )
    if time < SHORT:
        findings.append(
            Finding(
                "caution",
                "Short runs.",
                "{fill_time} is under a minute, the least for a pump up to 1 hp. Each start heats "
                "the motor.",
            )
        )
    return tuple(findings)


def _leak(fallen: float) -> tuple[Finding, ...]:
    if fallen <= READ:
        return ()
    return (
        Finding(
            "caution",
            "It leaks back.",
            "{leaked} left the tank in {leak_time} with the house shut off: {leak_rate}. Shut the "
            "valve between well and tank as well. If the gauge now stands, the check valve, the "
            "drop pipe or the line in the ground leaks. If it still falls, it is on the house's "
            "side.",
        ),
    )


def _sound() -> Finding:
    return Finding(
        "good",
        "As it should be.",
        "The pump gives {pump_flow}, {flow_share} of its sheet, its head is {head_share}, the tank "
        "gives {tank_share} of what it should, and nothing leaks back. Keep these figures for the "
        "next visit.",
    )


def _steps(found: _Found, curve: PumpCurve, flow_1: float, head_1: float) -> tuple[Step, ...]:
    given = {
        "w": Quantity(WATER_COLUMN, pressure_gradient, label="weight of standing water"),
        "P_a": Quantity(atm, gauge_pressure, label="pressure of the air"),
        "H_f": Quantity(found.filling, length, 4),
        "H_0": Quantity(curve.shut_off, length, 4, "head at no flow on the sheet"),
        "H_1": Quantity(head_1, length, 4, "second head on the sheet"),
        "Q_1": Quantity(flow_1, flow, 4, "second flow on the sheet"),
        "n": Quantity(curve.power, number, 4, "bend of its curve, by the third point"),
    }
    steps = [
        Step("Flow while it fills the tank", "Q = V / t", given),
        Step("Head it makes meanwhile", "H_f = (p_c + p_o) / 2 / w + h_n", given),
        Step(
            "Flow its sheet promises at that head",
            "Q_s = Q_1 * (max(H_0 - H_f, 0) / (H_0 - H_1))**(1 / n)",
            given,
        ),
    ]
    if found.sheet_flow:
        steps.append(Step("Share of it", "s_Q = Q / Q_s", given))
    return (
        *steps,
        Step("Head at no flow", "H = p_s / w + h_n", given),
        Step("Share of its sheet", "s_H = H / H_0", given),
        Step(
            "What a sound tank gives",
            "V_b = V_1 * (P_1 + P_a) * (1 / (max(p_c, P_1) + P_a) - 1 / (p_o + P_a))",
            given,
        ),
        Step("Share that it gave", "s_V = V / V_b", given),
        Step(
            "Water that left with everything shut",
            "V_l = V_1 * (P_1 + P_a) * max(1 / (max(p_2, P_1) + P_a) - 1 / (p_1 + P_a), 0)",
            given,
        ),
        Step("Rate", "Q_l = V_l / t_l", given),
    )


def _chart(found: _Found, curve: PumpCurve, rated: float) -> Chart:
    most = max(1.5 * rated, 1.1 * found.flow)
    flows = [most * step / POINTS for step in range(POINTS + 1)]
    line = tuple((q, h if (h := curve.head(q)) >= 0 else None) for q in flows)
    return Chart(
        title="The pump against its sheet",
        says="On the line the pump is as good as its sheet. Under it at no flow: worn or leaking. "
        "Under it only while it fills: something is in its way.",
        x=Axis("Flow", flow),
        y=Axis("Head", length),
        lines=(Line("by its sheet", line),),
        marks=(
            Mark("shut off", 0.0, found.head),
            Mark("filling the tank", found.flow, found.filling, True),
        ),
    )


CALCULATOR = Calculator(
    name="pump_check",
    title="Check of pump, tank and check valve",
    question="Is it the pump, the pressure tank, or a leak?",
    inputs=(
        Input(
            name="well_caught",
            label="Water caught from cut-out down to cut-in, pump off",
            symbol="V",
            kind=volume,
            default="5.1 gal",
            origin=INVENTED,
            low=0.01 * gal,
            high=200 * gal,
            measure="Let the pump reach cut-out, switch it off at the panel, and catch what comes "
            "until the gauge stands at cut-in.",
            group=TANK,
            sure="0.2 gal",
        ),
        Input(
            name="fill_time",
            label="Time the pump takes from cut-in to cut-out, taps shut",
            symbol="t",
            kind=duration,
            us="s",
            si="s",
            default="41 s",
            origin=INVENTED,
            low=1 * second,
            high=120 * minute,
            measure="Watch and gauge, everything closed, the open tank's float up. A drip counts.",
            group=TANK,
            sure="1 s",
        ),
        replace(well_tank_fields.well_precharge, group=TANK),
        well_tank_fields.well_cut_in,
        well_tank_fields.well_cut_out,
        well_tank_fields.well_tank,
        Input(
            name="shut_off_gauge",
            label="Gauge with the valve after the pump shut",
            symbol="p_s",
            kind=gauge_pressure,
            default="84 psi",
            origin=INVENTED,
            low=1 * psi,
            high=400 * psi,
            measure="Shut it for a few seconds only, with a relief valve in the line, and only if "
            "tank and pipe are made for it. No valve before the switch: leave this test out.",
            group=WELL_PUMP,
            caution="A pump against a shut valve can burst pipe and tank, and boils its water.",
            sure="2 psi",
        ),
        Input(
            name="water_below",
            label="Water in the well below the gauge while you measured",
            symbol="h_n",
            kind=length,
            us="ft",
            default="100 ft",
            origin=INVENTED,
            low=0,
            high=1000 * ft,
            measure="With a sounder, pump running, plus what the gauge stands above the well.",
            group=WELL_PUMP,
            sure="3 ft",
        ),
        well_pump_fields.curve_flows,
        well_pump_fields.curve_heads,
        Input(
            name="leak_from",
            label="Gauge when the house was shut off",
            symbol="p_1",
            kind=gauge_pressure,
            default="60 psi",
            origin=INVENTED,
            low=1 * psi,
            high=150 * psi,
            measure="Pump off at the panel, the valve to the house shut.",
            group=LEAK,
        ),
        Input(
            name="leak_to",
            label="Gauge at the end of the watch",
            symbol="p_2",
            kind=gauge_pressure,
            default="60 psi",
            origin=INVENTED,
            low=0,
            high=150 * psi,
            measure="The same gauge, not tapped in between.",
            group=LEAK,
        ),
        Input(
            name="leak_time",
            label="How long you watched",
            symbol="t_l",
            kind=duration,
            default="30 min",
            origin=INVENTED,
            low=1 * minute,
            high=1440 * minute,
            measure="Half an hour shows what matters. A slow leak wants a night.",
            group=LEAK,
        ),
    ),
    outputs=(
        Output(name="pump_flow", label="Flow of the pump", symbol="Q", kind=flow),
        Output(name="sheet_flow", label="Flow its sheet promises here", symbol="Q_s", kind=flow),
        Output(
            name="flow_share",
            label="Share of the sheet's flow",
            symbol="s_Q",
            kind=share,
            none="by its sheet it does not reach this pressure",
        ),
        Output(
            name="measured_shut_off",
            label="Head at no flow, measured",
            symbol="H",
            kind=length,
            us="ft",
        ),
        Output(name="head_share", label="Share of the sheet's", symbol="s_H", kind=share),
        Output(name="tank_should_give", label="What a sound tank gives", symbol="V_b", kind=volume),
        Output(name="tank_share", label="Share that it gave", symbol="s_V", kind=share),
        Output(
            name="leaked", label="Water that left with everything shut", symbol="V_l", kind=volume
        ),
        Output(
            name="leak_rate",
            label="Rate of that",
            symbol="Q_l",
            kind=flow,
            us="gal/day",
            si="L/day",
        ),
    ),
    work=pump_check,
    cautions=(cautions.PRESSURE, cautions.WIRING, cautions.RADON_AIR, cautions.LOCAL_CODE),
    leaves={"pump_flow": ("well_pump",)},
    sources=("pelikan-2006", "rossman-2000", "epa-radon-2016"),
)
