"""The whole system through a schedule of draws, event by event, with constant flows.

Its inputs declare no plus-or-minus: a run is one story, and a thousand of them would take a
phone ten seconds. How sure the lowest level is, `tank_draw` and `outlet_setting` tell.
"""

from dataclasses import replace

from calc import cautions
from calc.errors import Refused
from calc.fields import (
    INVENTED,
    OPEN_TANK,
    house_tank_fields,
    open_tank_fields,
    well_pump_fields,
    well_tank_fields,
)
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.open_tank import sure_reserve
from calc.physics.tank_run import FREE, Draw, Plant, Run, Stop, run
from calc.run_pictures import TIME, air_time, flow_chart, level_chart, scene, starts, time_on
from calc.units import Kind, duration, flow, gal, gpm, hour, number, volume

LONGEST = 6 * hour
LEAST_BAND = 0.5 * gal  # under this the float would switch several times a minute
RESET = 3 * gal  # above the lock-out's level: common practice, no source
MOST_DRAWS = 6
# Of a drawdown, what a pressure tank still gives below cut-in: 0.895 of 5.906 gal with a
# pre-charge 2 psi under a 30/50 psi switch, by Boyle's law.
RESIDUAL = 0.15


def system_run(
    draw_starts: tuple[float, ...],
    draw_flows: tuple[float, ...],
    draw_volumes: tuple[float, ...],
    draws_keep: str,
    well_pump: float,
    well_drawdown: float,
    worst_inlet: float,
    limit: str,
    worst_outlet: float,
    pump: float,
    float_kind: str,
    float_open: float,
    float_closed: float,
    lock_at: float,
    house_drawdown: float,
    blower: str,
) -> Answer:
    """What happens to the open tank through the draws, and in which order."""
    before = limit == "before"
    _check(before, pump, worst_outlet, float_open, float_closed, lock_at)
    draws = _draws(draw_starts, draw_flows, draw_volumes, draws_keep == "time")
    plant = Plant(
        inlet=worst_inlet,
        pump=min(pump, worst_outlet) if before else pump,
        house=FREE if before else worst_outlet,
        float_open=float_open,
        float_closed=float_closed,
        drawdown=house_drawdown,
        residual=RESIDUAL * house_drawdown,
        modulating=float_kind == "modulating",
        well_pump=well_pump,
        well_drawdown=well_drawdown,
        well_residual=RESIDUAL * well_drawdown,
        lock_at=lock_at,
        lock_reset=min(lock_at + RESET, (float_open + float_closed) / 2),
        proves="nothing" if blower == "runs" else blower,
    )
    stops = [] if blower == "runs" else [Stop("blower", min(draw_starts))]
    result = run(plant, draws, float_closed, house_drawdown, LONGEST, stops=stops)
    taken = Quantity(sure_reserve(float_open, house_drawdown, before), volume)
    return Answer(
        outputs=_outputs(result),
        findings=tuple(_findings(result, plant, worst_outlet)),
        steps=_steps(result, before, taken),
        charts=(level_chart(result, plant), flow_chart(result)),
        scenes=(scene(result, plant, limit),),
    )


def _check(
    before: bool, pump: float, worst_outlet: float, opens: float, closes: float, lock: float
) -> None:
    if closes < opens + LEAST_BAND:
        says = "must be well above the float's opening at {float_open}"
        raise Refused("contradiction", "float_closed", says=says)
    if not before and pump < worst_outlet:
        raise Refused("contradiction", "pump", says="must pass at least {worst_outlet}")
    if lock >= opens:
        says = "must be below the float's opening at {float_open}, or nothing would enter"
        raise Refused("contradiction", "lock_at", says=says)


def _draws(
    starts: tuple[float, ...], flows: tuple[float, ...], volumes: tuple[float, ...], timed: bool
) -> list[Draw]:
    """As many draws as the longest list has figures; the last figure of a shorter one stands
    for all that follow."""
    count = max(map(len, (starts, flows, volumes)))
    filled = ((*each, *[each[-1]] * (count - len(each))) for each in (starts, flows, volumes))
    return [
        Draw(start, q, lasts=v / q) if timed else Draw(start, q, volume=v)
        for start, q, v in zip(*filled, strict=True)
    ]


def _outputs(result: Run) -> dict[str, float | None]:
    return {
        "dry_after": result.first("dry"),
        "lowest": result.lowest.level,
        "lowest_at": result.lowest.time,
        "air_time": air_time(result),
        "had": result.moved.delivered,
        "entered": result.moved.inflow,
        "taken_out": result.moved.pumped,
        "gained": result.moved.inflow - result.moved.pumped,
        "starts": starts(result, "pump 2"),
        "well_starts": starts(result, "pump 1"),
        "lock_outs": float(result.count("lock-out")),
    }


def _findings(result: Run, plant: Plant, limit: float) -> list[Finding]:
    """The headline, then what else went wrong."""
    found = [_headline(result, plant)]
    if result.count("lock-out"):
        text = (
            "Times the low-level switch stopped pump 2: {lock_outs}. It kept air out of the "
            "house, and the house was without water. It is the backstop, not the balance."
        )
        found.append(Finding("caution", "Locked out.", text))
    unproven = time_on(result, "pump 2", "blower")
    if unproven:
        text = (
            "The blower stood still while pump 2 ran for {untreated}. Water that nothing has "
            "stripped went to the house, and nobody could see it."
        )
        given = {"untreated": Quantity(unproven, duration)}
        found.append(Finding("danger", "Radon passes.", text, given))
    if result.count("well tank empty"):
        text = "The well's pressure tank ran empty: pump 1 lifts less than the inlet takes."
        found.append(Finding("caution", "The well falls behind.", text))
    if plant.house < FREE and plant.inlet >= limit and result.lowest.level < plant.float_open:
        text = (
            "No less enters than the house can take, and still the level fell below the float's "
            "opening: pump 2 refilled the house pressure tank faster than water entered."
        )
        found.append(Finding("caution", "The pressure tank drinks.", text))
    return found


def _headline(result: Run, plant: Plant) -> Finding:
    if result.first("dry") is not None:
        text = "At {dry_after} the intake uncovers. Pump 2 draws air for {air_time} in all."
        return Finding("danger", "Runs dry.", text)
    if result.lowest.level < plant.float_open * (1 - 1e-9):
        text = (
            "The lowest level is {lowest} above the intake, at {lowest_at}, below the float's "
            "opening. It is this schedule that passes, not every one."
        )
        return Finding("caution", "Lasts, this time.", text)
    return Finding("good", "Lasts.", "The level never falls below the float's opening.")


def _steps(result: Run, before: bool, reserve: Quantity) -> tuple[Step, ...]:
    moved = result.moved
    given = {
        "R": reserve,
        "E": Quantity(moved.inflow, volume, label="water that entered the open tank"),
        "U": Quantity(moved.pumped, volume, label="water pump 2 took out of it"),
    }
    return (
        Step("Water sure to be there", "R = V_on" if before else "R = V_on - dV_h", given),
        Step("What the open tank gained over the run", "G = E - U", given),
    )


def _figures(
    *, name: str, label: str, kind: Kind, default: str, low: float, high: float, measure: str
) -> Input:
    """One figure for each draw."""
    return Input(
        name=name,
        label=label,
        kind=kind,
        default=default,
        low=low,
        high=high,
        measure=measure,
        origin="invented example: two fills of a washer, and a shower between them",
        several=MOST_DRAWS,
        group="Draws",
        once=False,
    )


CALCULATOR = Calculator(
    name="system_run",
    title="The whole system through a schedule of draws",
    question="What happens, minute by minute, when these draws come one after another?",
    inputs=(
        _figures(
            name="draw_starts",
            label="Each draw starts at",
            default="0 min; 3 min; 11 min",
            measure="From the first one on. Write down a real wash day with a watch.",
            kind=duration,
            low=0,
            high=2 * hour,
        ),
        _figures(
            name="draw_flows",
            label="Flow of each draw",
            default="6 gpm; 2.1 gpm; 6 gpm",
            measure="With a pail, or from the meter over a minute. The last figure stands for "
            "all that follow.",
            kind=flow,
            low=0.1 * gpm,
            high=40 * gpm,
        ),
        _figures(
            name="draw_volumes",
            label="Water each draw takes",
            default="25 gal; 16.8 gal; 25 gal",
            measure="Meter before and after. The last figure stands for all that follow.",
            kind=volume,
            low=0.5 * gal,
            high=200 * gal,
        ),
        Choice(
            name="draws_keep",
            label="A draw that is held back",
            options={
                "volume": "runs until it has its water, as a washer or a tub does",
                "time": "ends in its time with less water, as a shower or a hose does",
            },
            default="volume",
            origin="washers and tubs are the draws that matter",
            measure="Ask what shuts it off: a level, or a person.",
            group="Draws",
            once=False,
        ),
        replace(well_pump_fields.well_pump, sure=""),
        well_tank_fields.well_drawdown,
        replace(open_tank_fields.worst_inlet, sure=""),
        open_tank_fields.limit,
        replace(open_tank_fields.worst_outlet, sure=""),
        replace(open_tank_fields.pump, sure=""),
        Choice(
            name="float_kind",
            label="The float",
            options={
                "snap": "opens and closes the inlet at two levels",
                "modulating": "throttles it between them",
            },
            default="snap",
            origin=INVENTED,
            measure="Watch it while the tank fills: a float valve on an arm closes little by "
            "little, a float switch with a solenoid all at once.",
            group=OPEN_TANK,
        ),
        replace(open_tank_fields.float_open, sure=""),
        replace(open_tank_fields.float_closed, sure=""),
        Input(
            name="lock_at",
            label="Water above the intake when a low-level switch stops pump 2",
            symbol="V_l",
            kind=volume,
            default="0 gal",
            origin="0: there is none; a switch lets go about 3 gal higher",
            low=0,
            high=2000 * gal,
            measure="Lower the level slowly with the inlet shut, and count pails from where pump 2 "
            "stops to the first air at the intake. 0 if there is no switch.",
            group=OPEN_TANK,
        ),
        replace(house_tank_fields.house_drawdown, sure=""),
        Choice(
            name="blower",
            label="The blower",
            options={
                "runs": "runs all the time",
                "nothing": "stops at the first draw, and nothing is wired to it",
                "inlet": "stops at the first draw, and the inlet shuts with it",
                "both": "stops at the first draw, and inlet and pump 2 stop with it",
            },
            default="runs",
            origin="the usual day",
            measure="Pull its plug and see what shuts. Air the room first.",
            group="Blower",
            once=False,
        ),
    ),
    outputs=(
        TIME,
        Output(name="lowest", label="Lowest level above the intake", kind=volume),
        Output(name="lowest_at", label="Lowest at", kind=duration),
        Output(name="air_time", label="Pump 2 draws air for", kind=duration),
        Output(name="had", label="Water the house had", kind=volume),
        Output(name="entered", label="Water that entered", kind=volume),
        Output(name="taken_out", label="Water pump 2 took out", kind=volume),
        Output(name="gained", label="What the open tank gained", symbol="G", kind=volume),
        Output(name="starts", label="Starts of pump 2", kind=number),
        Output(name="well_starts", label="Starts of pump 1", kind=number),
        Output(name="lock_outs", label="Times locked out", kind=number),
    ),
    work=system_run,
    trials=200,
    cautions=(
        cautions.RADON_AIR,
        cautions.PRESSURE,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    sources=("nist-811", "epa-radon-2016", "osha-1910-147"),
)
