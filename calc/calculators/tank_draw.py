"""How the open tank comes through one big draw, drawn over time."""

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import OPEN_TANK, house_tank_fields, open_tank_fields
from calc.model import Answer, Calculator, Choice, Finding, Output, Quantity, Step
from calc.physics.open_tank import largest_draw, sure_reserve, sure_time
from calc.physics.pressure_tank import drawdown, residual
from calc.physics.tank_run import EVENTS, Draw, Plant, Run, run
from calc.units import atm, duration, flow, gal, gauge_pressure, hour, volume

# Under these pump 2, or the float, would switch several times a minute.
LEAST_DRAWDOWN = LEAST_BAND = 0.5 * gal
LONGEST = 6 * hour


def tank_draw(
    draw_flow: float,
    draw_volume: float,
    worst_inlet: float,
    limit: str,
    worst_outlet: float,
    pump: float,
    float_open: float,
    float_closed: float,
    start: str,
    house_tank: float,
    precharge: float,
    cut_in: float,
    cut_out: float,
) -> Answer:
    """Level of the open tank through one draw, and when the intake uncovers."""
    before = limit == "before"
    _check(float_open, float_closed, precharge, cut_in, cut_out)
    taken = drawdown(house_tank, precharge, cut_in, cut_out)
    if taken < LEAST_DRAWDOWN:
        raise Refused(
            "contradiction", "house_tank", says="gives too little between cut-in and cut-out"
        )
    if not before and pump < worst_outlet:
        raise Refused("contradiction", "pump", says="must pass at least {worst_outlet}")
    plant = Plant(
        inlet=worst_inlet,
        pump=min(pump, worst_outlet) if before else pump,
        house=float("inf") if before else worst_outlet,
        float_open=float_open,
        float_closed=float_closed,
        drawdown=taken,
        residual=residual(house_tank, precharge, cut_in),
    )
    level, stored = (float_closed, taken) if start == "full" else (float_open, 0.0)
    result = run(plant, [Draw(0.0, draw_flow, draw_volume)], level, stored, LONGEST)
    dry = result.first("dry")
    # before the pressure tank the limit bounds pump 2 itself, whatever the house draws
    leaves = plant.pump if before else min(draw_flow, worst_outlet)
    reserve = sure_reserve(float_open, taken, before)
    lasts = sure_time(reserve, worst_inlet, leaves)
    given = {
        "P_a": Quantity(atm, gauge_pressure, label="pressure of the air"),
        "Q_e": Quantity(leaves, flow),
        "R": Quantity(reserve, volume),
    }
    return Answer(
        outputs={
            "dry_after": dry,
            "lowest": result.lowest.level,
            "lowest_at": result.lowest.time,
            "draw_ends": result.first("draw ends"),
            "sure_time": lasts,
            "sure_draw": largest_draw(reserve, worst_inlet, leaves, taken if before else 0.0),
            "drawdown": taken,
        },
        findings=(_headline(dry, result.lowest.level < float_open),),
        steps=_steps(before, reserve <= 0, leaves > worst_inlet, given),
        charts=(_chart(result, float_open, float_closed),),
    )


def _check(
    float_open: float, float_closed: float, precharge: float, cut_in: float, cut_out: float
) -> None:
    if float_closed < float_open + LEAST_BAND:
        says = "must be well above the float's opening at {float_open}"
        raise Refused("contradiction", "float_closed", says=says)
    if cut_out <= cut_in:
        raise Refused("contradiction", "cut_out", says="must be above the cut-in of {cut_in}")
    if precharge >= cut_out:
        raise Refused("contradiction", "precharge", says="must be below the cut-out of {cut_out}")


def _headline(dry: float | None, below: bool) -> Finding:
    if dry is not None:
        return Finding(
            "danger",
            "Runs dry.",
            "{dry_after} into the draw the intake uncovers and pump 2 pulls air into the house.",
        )
    if below:
        return Finding(
            "caution",
            "Lasts, this time.",
            "The lowest level is {lowest} above the intake, below the float's opening. A longer "
            "draw, or a second one before the tank is full, goes lower.",
        )
    return Finding("good", "Lasts.", "The level never falls below the float's opening.")


def _steps(before: bool, empty: bool, dries: bool, given: dict[str, Quantity]) -> tuple[Step, ...]:
    steps = [
        Step(
            "Drawdown of the house pressure tank",
            "dV = V_t * (P_p + P_a) * (1 / (max(P_i, P_p) + P_a) - 1 / (P_o + P_a))",
            given,
        ),
        Step("Most that leaves", "Q_e = min(Q_p, Q_x)" if before else "Q_e = min(Q_d, Q_x)", given),
        Step("Water sure to be there", "R = V_on" if before else "R = V_on - dV", given),
    ]
    if empty or dries:
        lasts = "t_s = max(R, 0) / Q_e" if empty else "t_s = R / (Q_e - Q_w)"
        steps += [
            Step("Sure to last at least", lasts, given),
            Step(
                "One draw that always passes",
                "D_s = max(Q_e * t_s - dV, 0)" if before else "D_s = Q_e * t_s",
                given,
            ),
        ]
    return tuple(steps)


def _chart(result: Run, float_open: float, float_closed: float) -> Chart:
    points = tuple((point.time, point.level) for point in result.points)
    happened = "; ".join(EVENTS[name] for _, name in result.events[:6])
    return Chart(
        title="Water above the intake through the draw",
        says=f"In order: {happened}." if happened else "Nothing happens.",
        x=Axis("Time from the start of the draw", _TIME),
        y=Axis("Water above the intake", open_tank_fields.float_open),
        lines=(Line("level", points),),
        limits=(
            Limit("float opens", float_open),
            Limit("float closes", float_closed),
            Limit("intake", 0.0),
        ),
        marks=(Mark("lowest", result.lowest.time, result.lowest.level),),
    )


_TIME = Output(
    name="dry_after",
    label="The intake uncovers after",
    kind=duration,
    none="it stays under water",
)
CALCULATOR = Calculator(
    name="tank_draw",
    title="How long the open tank lasts",
    question="Does the open tank come through this draw, and what is its lowest level?",
    inputs=(
        open_tank_fields.draw_flow,
        open_tank_fields.draw_volume,
        open_tank_fields.worst_inlet,
        open_tank_fields.limit,
        open_tank_fields.worst_outlet,
        open_tank_fields.pump,
        open_tank_fields.float_open,
        open_tank_fields.float_closed,
        Choice(
            name="start",
            label="How the draw finds the tanks",
            options={
                "worst": "at the float's opening, house pressure tank about to refill",
                "full": "both full",
            },
            default="worst",
            origin="the worst hour decides",
            measure="The worst is what a house meets sooner or later.",
            group=OPEN_TANK,
        ),
        house_tank_fields.house_tank,
        house_tank_fields.precharge,
        house_tank_fields.cut_in,
        house_tank_fields.cut_out,
    ),
    outputs=(
        _TIME,
        Output(name="lowest", label="Lowest level above the intake", kind=volume),
        Output(name="lowest_at", label="Lowest after", kind=duration),
        Output(
            name="draw_ends",
            label="The draw ends after",
            kind=duration,
            none="it does not get its water",
        ),
        Output(
            name="sure_time",
            label="Sure to last at least",
            symbol="t_s",
            kind=duration,
            none="for good: no less enters than leaves",
        ),
        Output(
            name="sure_draw",
            label="One draw that always passes",
            symbol="D_s",
            kind=volume,
            none="any amount",
        ),
        Output(
            name="drawdown", label="Drawdown of the house pressure tank", symbol="dV", kind=volume
        ),
    ),
    work=tank_draw,
    cautions=(
        cautions.RADON_AIR,
        cautions.PRESSURE,
        cautions.LOCAL_CODE,
    ),
    sources=("pelikan-2006", "nist-811", "epa-radon-2016"),
    leaves={"drawdown": ("house_drawdown",)},
)
