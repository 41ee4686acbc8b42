"""One draw with flows that follow the pressures: pump curves, pressure tanks, bed, throttle.

Its inputs declare no plus-or-minus, for the reason told in `system_run`.
"""

from dataclasses import replace

from calc import cautions
from calc.errors import Refused
from calc.fields import house_tank_fields, open_tank_fields, well_pump_fields, well_tank_fields
from calc.model import Answer, Calculator, Choice, Finding, Output, Quantity, Step
from calc.physics.pressure_plant import Inlet, PressurePlant, Pump, Tank
from calc.physics.pressure_run import run
from calc.physics.tank_run import FREE, Draw, Run
from calc.run_pictures import TIME, flow_chart, level_chart, scene, starts
from calc.units import duration, flow, gal, gauge_pressure, gpm, hour, number, psi, volume

LEAST_BAND = 0.5 * gal
LEAST_DRAWDOWN = 1 * gal
SPAN = 20 * psi  # of a pressure switch: common practice, no source
UNDER = 2 * psi  # pre-charge under cut-in: common practice, no source
LEAST_RISE = 1.02  # a curve must clear its cut-out by this much, or the pump hardly stops
WELL_CURVE = 0.25  # share of a well pump's flow that it loses over its switch's span; from memory
LONGEST = 2 * hour


def pressure_draw(
    draw_flow: float,
    draw_volume: float,
    taps: str,
    well_pump: float,
    well_tank: float,
    well_cut_in: float,
    worst_inlet: float,
    limit: str,
    worst_outlet: float,
    pump: float,
    pump_shut_off: float,
    float_open: float,
    float_closed: float,
    house_tank: float,
    cut_in: float,
    cut_out: float,
) -> Answer:
    """Level of the open tank through one draw, with flows that follow the pressures."""
    before = limit == "before"
    _check(float_open, float_closed, cut_in, cut_out, pump_shut_off)
    if not before and pump < worst_outlet:
        raise Refused("contradiction", "pump", says="must pass at least {worst_outlet}")
    bend = (pump_shut_off - cut_in) / pump**2
    throttle = FREE
    if before:  # with the pressure tank empty pump 2 passes what was measured
        bend = max(bend, pump_shut_off / worst_outlet**2)
    else:  # at cut-out, with every tap open wide
        throttle = worst_outlet / cut_out**0.5
    house = Tank(house_tank, max(0.0, cut_in - UNDER), cut_in, cut_out)
    if house.drawdown < LEAST_DRAWDOWN:
        raise Refused(
            "contradiction", "house_tank", says="gives too little between cut-in and cut-out"
        )
    plant = PressurePlant(
        float_open,
        float_closed,
        house,
        Pump(pump_shut_off, bend),
        _well_side(well_pump, well_tank, well_cut_in, worst_inlet),
        throttle,
    )
    draw = Draw(0.0, draw_flow, draw_volume, open_tap=taps == "open")
    result = run(plant, [draw], float_closed, plant.drawdown, LONGEST)
    result = _until_rest(result)
    at_cut_in, at_cut_out = plant.pump.flow(cut_in), plant.pump.flow(cut_out)
    return Answer(
        outputs={
            "dry_after": result.first("dry"),
            "lowest": result.lowest.level,
            "lowest_at": result.lowest.time,
            "draw_ends": result.first("draw ends"),
            "pump_at_cut_in": at_cut_in,
            "pump_at_cut_out": at_cut_out,
            "starts": starts(result, "pump 2"),
            "well_starts": starts(result, "pump 1"),
        },
        findings=(_headline(result, float_open),),
        steps=_steps(bend),
        charts=(level_chart(result, plant), flow_chart(result)),
        scenes=(scene(result, plant, limit),),
    )


def _check(opens: float, closes: float, cut_in: float, cut_out: float, shut_off: float) -> None:
    if closes < opens + LEAST_BAND:
        says = "must be well above the float's opening at {float_open}"
        raise Refused("contradiction", "float_closed", says=says)
    if cut_out <= cut_in:
        raise Refused("contradiction", "cut_out", says="must be above the cut-in of {cut_in}")
    if shut_off < LEAST_RISE * cut_out:
        says = "must clear the cut-out of {cut_out}, or pump 2 never stops"
        raise Refused("contradiction", "pump_shut_off", says=says)


def _well_side(
    well_pump: float, size: float, cut_in: float, inlet: float
) -> tuple[Tank, Pump, Inlet]:
    """Pump 1, its tank, and an inlet whose flow is in proportion to the pressure: a bed."""
    tank = Tank(size, max(0.0, cut_in - UNDER), cut_in, cut_in + SPAN)
    if tank.drawdown < LEAST_DRAWDOWN:
        raise Refused("contradiction", "well_tank", says="gives too little for its switch")
    bend = SPAN / (well_pump**2 * (1 - (1 - WELL_CURVE) ** 2))
    return tank, Pump(cut_in + bend * well_pump**2, bend), Inlet(0.0, cut_in / inlet, 0.0)


def _until_rest(result: Run) -> Run:
    """The run without the rest after its last event."""
    end = max((time for time, _ in result.events), default=0.0)
    kept = tuple(point for point in result.points if point.time <= end)
    return result._replace(points=kept)


def _headline(result: Run, opens: float) -> Finding:
    if result.first("dry") is not None:
        text = "{dry_after} into the draw the intake uncovers and pump 2 pulls air into the house."
        return Finding("danger", "Runs dry.", text)
    if result.lowest.level < opens * (1 - 1e-9):
        text = (
            "The lowest level is {lowest} above the intake, at {lowest_at}, below the float's "
            "opening."
        )
        return Finding("caution", "Lasts, this time.", text)
    return Finding("good", "Lasts.", "The level never falls below the float's opening.")


def _steps(bend: float) -> tuple[Step, ...]:
    given = {"a": Quantity(bend * gpm**2, gauge_pressure, label="pressure pump 2 loses at 1 gpm")}
    unit = {"q": Quantity(gpm, flow, label="the flow of 1 gpm")}
    return (
        Step(
            "Pump 2 with the tank at cut-in",
            "Q_2 = q * sqrt((p_0 - P_i) / a)",
            given | unit,
        ),
        Step(
            "Pump 2 with the tank at cut-out",
            "Q_3 = q * sqrt((p_0 - P_o) / a)",
            given | unit,
        ),
    )


CALCULATOR = Calculator(
    name="pressure_draw",
    title="One draw with flows that follow the pressures",
    question="How does the draw go when every flow rises and falls with its pressure?",
    inputs=(
        replace(open_tank_fields.draw_flow, sure=""),
        replace(open_tank_fields.draw_volume, sure="", high=100 * gal),
        Choice(
            name="taps",
            label="The draw",
            options={
                "open": "an open tap: its flow follows the pressure; the one above is at 40 psi",
                "steady": "a regulated one: its flow stays as long as there is pressure",
            },
            default="open",
            origin="a tub, a hose or a washer's valve is an open tap",
            measure="Run it while the house gauge falls, and see whether its flow falls too.",
            group="The draw",
            once=False,
        ),
        replace(well_pump_fields.well_pump, sure=""),
        well_tank_fields.well_tank,
        replace(well_tank_fields.well_cut_in, sure=""),
        replace(open_tank_fields.worst_inlet, sure=""),
        open_tank_fields.limit,
        replace(open_tank_fields.worst_outlet, sure=""),
        replace(open_tank_fields.pump, sure=""),
        replace(well_pump_fields.pump_shut_off, sure=""),
        replace(open_tank_fields.float_open, sure=""),
        replace(open_tank_fields.float_closed, sure=""),
        replace(house_tank_fields.house_tank, sure=""),
        replace(house_tank_fields.cut_in, sure=""),
        replace(house_tank_fields.cut_out, sure=""),
    ),
    outputs=(
        TIME,
        Output(name="lowest", label="Lowest level above the intake", kind=volume),
        Output(name="lowest_at", label="Lowest at", kind=duration),
        Output(
            name="draw_ends",
            label="The draw ends after",
            kind=duration,
            none="it does not get its water",
        ),
        Output(
            name="pump_at_cut_in",
            label="Pump 2 passes at cut-in, limit included",
            symbol="Q_2",
            kind=flow,
        ),
        Output(name="pump_at_cut_out", label="And at cut-out", symbol="Q_3", kind=flow),
        Output(name="starts", label="Starts of pump 2", kind=number),
        Output(name="well_starts", label="Starts of pump 1", kind=number),
    ),
    work=pressure_draw,
    trials=0,
    cautions=(cautions.RADON_AIR, cautions.PRESSURE, cautions.ELECTRICITY, cautions.LOCAL_CODE),
    sources=("pelikan-2006", "ergun", "iec-60534-2-1", "abramowitz-stegun", "epa-radon-2016"),
)
