"""A pressure tank on its switch: drawdown, run time and starts, at any pre-charge and altitude."""

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import SWITCH, open_tank_fields, well_pump_fields, well_tank_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics import pressure_tank as tank
from calc.physics.suction import EXPONENT, SCALE, air_pressure
from calc.units import (
    absolute_pressure,
    atm,
    day,
    duration,
    gauge_pressure,
    length,
    minute,
    number,
    psi,
    volume,
)

TANK = "Pressure tank"
USE = "Pump and use"
UNDER = 2 * psi  # right pre-charge under cut-in, [pelikan-2006] and common practice
FLAT = 0.5  # share of the right drawdown under which a tank is as good as waterlogged
SHORT = 0.9  # and under which the pre-charge is worth a pump-up


class _Tank(NamedTuple):
    """Drawdowns in m³: as it stands, rightly charged, without charge, in a fast draw."""

    taken: float
    right: float
    flat: float
    fast: float
    run: float


def pressure_tank(
    well_tank: float,
    well_precharge: float,
    well_cut_in: float,
    well_cut_out: float,
    altitude: float,
    well_pump: float,
    draw_flow: float,
    daily_use: float,
    run_least: float,
    starts_most: float,
) -> Answer:
    """Drawdown as it stands and as it could be, and what it does to the pump."""
    if well_cut_out <= well_cut_in:
        raise Refused("contradiction", "well_cut_out", says="must be above {well_cut_in}")
    if well_precharge >= well_cut_out:
        raise Refused("contradiction", "well_precharge", says="must be below {well_cut_out}")
    air = air_pressure(altitude)
    best = max(0.0, well_cut_in - UNDER)

    def drawdown(precharge: float) -> float:
        return tank.drawdown(well_tank, precharge, well_cut_in, well_cut_out, air)

    found = _Tank(
        drawdown(well_precharge),
        drawdown(best),
        drawdown(0.0),
        tank.drawdown_fast(well_tank, well_precharge, well_cut_in, well_cut_out, air),
        tank.run_time(drawdown(well_precharge), well_pump) or 0.0,
    )
    starts = daily_use * day / found.taken
    return Answer(
        outputs={
            "drawdown": found.taken,
            "drawdown_right": found.right,
            "precharge_right": best,
            "drawdown_flat": found.flat,
            "drawdown_fast": found.fast,
            "holds": well_tank * tank.acceptance(well_precharge, well_cut_out, air),
            "run_time": found.run,
            "run_time_draw": tank.run_time(found.taken, well_pump, draw_flow),
            "cycle": tank.shortest_cycle(found.taken, well_pump),
            "starts_day": starts,
            "tank_wanted": well_pump * run_least * well_tank / found.right,
        },
        findings=_findings(found, well_precharge > well_cut_in, run_least, starts > starts_most),
        steps=_steps(air, best),
        charts=(_chart(drawdown, well_cut_in, well_cut_out, well_precharge,
                       well_pump * run_least),),
    )  # fmt: skip


def _findings(found: _Tank, over: bool, least: float, often: bool) -> tuple[Finding, ...]:
    said = [_headline(found, least)]
    if over:
        said.append(
            Finding(
                "caution",
                "Pre-charge over cut-in.",
                "The tank is empty before the switch closes: the water stops for a moment at every "
                "start, and the bladder slams. Let air out down to {precharge_right}, tank empty.",
            )
        )
    elif found.taken < FLAT * found.right:
        said.append(
            Finding(
                "danger",
                "As good as waterlogged.",
                "It gives {drawdown} where {drawdown_right} is possible, and the pump starts far "
                "more often than it should. If water comes from the air valve the bladder is torn: "
                "a new tank, not more air.",
            )
        )
    elif found.taken < SHORT * found.right:
        said.append(
            Finding(
                "caution",
                "Pre-charge is low.",
                "With {precharge_right} it would give {drawdown_right}. Empty the tank, pump it "
                "up, and find out where the air went.",
            )
        )
    if often:
        said.append(
            Finding(
                "caution",
                "Too many starts.",
                "Small draws and drips can start the pump {starts_day} times a day, more than the "
                "{starts_most} you allow.",
            )
        )
    return tuple(said)


def _headline(found: _Tank, least: float) -> Finding:
    if found.run >= least:
        return Finding(
            "good",
            "Big enough.",
            "A drawdown of {drawdown} keeps the pump running for {run_time} with the taps closed, "
            "and longer with one open.",
        )
    return Finding(
        "caution",
        "Too small for the pump.",
        "With the taps closed the pump fills the drawdown of {drawdown} in {run_time}, less than "
        "{run_least}. Rightly charged it takes a tank of {tank_wanted}, or a pump that brings "
        "less.",
    )


def _steps(air: float, best: float) -> tuple[Step, ...]:
    given = {
        "P_0": Quantity(atm, absolute_pressure, 4, "air at sea level on a standard day"),
        "h_s": Quantity(SCALE, length, 4, "height scale of the standard atmosphere"),
        "n": Quantity(EXPONENT, number, 5, "exponent of the standard atmosphere"),
        "P_a": Quantity(air, absolute_pressure),
        "d": Quantity(UNDER, gauge_pressure, label="pre-charge under cut-in"),
        "u": Quantity(day, duration, label="a day"),
        "x": Quantity(0.0, gauge_pressure, label="no charge"),
    }
    return (
        Step("Pressure of the air here", "P_a = P_0 * (1 - A / h_s)**n", given),
        Step(
            "Drawdown as it stands",
            "dV = V_1 * (P_1 + P_a) * (1 / (max(p_c, P_1) + P_a) - 1 / (p_o + P_a))",
            given,
        ),
        Step("Right pre-charge", "p_r = max(p_c - d, x)", given),
        Step(
            "Drawdown rightly charged",
            "dV_r = V_1 * (p_r + P_a) * (1 / (p_c + P_a) - 1 / (p_o + P_a))",
            given,
        ),
        Step("Run time, taps closed", "t_r = dV / Q_1", given),
        Step("Shortest time from start to start", "t_c = 4 * dV / Q_1", given),
        Step("Starts a day at most", "S = Q_u * u / dV", given),
        Step("Tank that makes the least run time", "V_w = Q_1 * t_m * V_1 / dV_r", given),
    )


def _chart(
    drawdown: Callable[[float], float], cut_in: float, cut_out: float, here: float, wanted: float
) -> Chart:
    charges = sorted({*(cut_out * step / 20 for step in range(20)), cut_in, here})
    return Chart(
        title="Drawdown at other pre-charges",
        says="It grows up to cut-in and falls steeply above it: a little too low costs a little, a "
        "little too high costs more, and the water stops at every start.",
        x=Axis("Pre-charge", gauge_pressure),
        y=Axis("Drawdown", volume),
        lines=(Line("drawdown", tuple((each, drawdown(each)) for each in charges)),),
        limits=(Limit("for the least run time", wanted),),
        marks=(Mark("as it stands", here, drawdown(here), here=True),),
    )


CALCULATOR = Calculator(
    name="pressure_tank",
    title="Pressure tank and pump",
    question="Is the tank big enough and rightly charged for this pump and switch?",
    inputs=(
        replace(well_tank_fields.well_tank, group=TANK, sure="5 %"),
        replace(well_tank_fields.well_precharge, group=TANK),
        replace(well_tank_fields.well_cut_in, group=SWITCH),
        replace(well_tank_fields.well_cut_out, group=SWITCH),
        well_pump_fields.altitude,
        replace(well_pump_fields.well_pump, group=USE, sure="3 %"),
        replace(open_tank_fields.draw_flow, group=USE),
        replace(open_tank_fields.daily_use, group=USE),
        Input(
            name="run_least",
            label="Least time the pump should run",
            symbol="t_m",
            kind=duration,
            default="1 min",
            origin="printed by makers of submersible motors, seen on the web in 2026",
            low=6,
            high=15 * minute,
            measure="From the motor's sheet. 1 min is usual up to 1 hp, 2 min above: common "
            "practice, no source.",
            group=USE,
        ),
        Input(
            name="starts_most",
            label="Starts a day that the motor may make",
            symbol="S_m",
            kind=number,
            default="300",
            origin="printed by makers of submersible motors, seen on the web in 2026",
            low=1,
            high=2000,
            measure="From the motor's sheet. Single-phase up to 3/4 hp 300, from 1 to 5 hp 100, is "
            "what makers print.",
            group=USE,
        ),
    ),
    outputs=(
        Output(name="drawdown", label="Drawdown as it stands", symbol="dV", kind=volume),
        Output(name="drawdown_right", label="Drawdown rightly charged", symbol="dV_r", kind=volume),
        Output(name="precharge_right", label="Right pre-charge", symbol="p_r", kind=gauge_pressure),
        Output(name="drawdown_flat", label="Drawdown with no charge at all", kind=volume),
        Output(name="drawdown_fast", label="Drawdown in a fast draw, at least", kind=volume),
        Output(name="holds", label="Water in the tank at cut-out", kind=volume),
        Output(
            name="run_time",
            label="Pump runs, taps closed",
            symbol="t_r",
            kind=duration,
            us="s",
            si="s",
        ),
        Output(
            name="run_time_draw",
            label="Pump runs, with the draw going on",
            kind=duration,
            none="it never fills: the draw takes all that the pump brings",
        ),
        Output(
            name="cycle",
            label="Shortest time from start to start",
            symbol="t_c",
            kind=duration,
        ),
        Output(name="starts_day", label="Starts a day, at most", symbol="S", kind=number),
        Output(
            name="tank_wanted",
            label="Tank that makes the least run time, rightly charged",
            symbol="V_w",
            kind=volume,
        ),
    ),
    work=pressure_tank,
    cautions=(cautions.PRESSURE, cautions.ELECTRICITY, cautions.LOCAL_CODE),
    sources=("pelikan-2006", "pelikan-start", "us-atmosphere-1976", "osha-1910-147"),
)
