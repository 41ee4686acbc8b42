"""Where a pump runs between cut-in and cut-out, and whether it can pump its well down."""

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple

from calc import cautions, pipes
from calc.charts import Axis, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import CURVE, DROP, SWITCH, WELL_PUMP, well_pump_fields, well_tank_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.inlet_network import Water
from calc.physics.pump_curve import Point, PumpCurve
from calc.physics.pump_system import at_speed, curve_of_sheet, total_head, worn
from calc.physics.pump_system import operating_point as point_of
from calc.physics.water import density, viscosity
from calc.units import GRAVITY, flow, gauge_pressure, length, number, pressure_gradient, psi, share

COLD = Water(density(283.15), viscosity(283.15))  # 10 °C: a few degrees move the flow by 0.1 %
WEIGHT = COLD.density * GRAVITY
CLEAR = 10 * psi  # by which shut-off should clear cut-out: common practice, no source
RATED = 100 * psi  # of a small pressure tank: common practice, no source; the label decides


# Pump and what is left for friction, at cut-in and at cut-out; whole, for the build looks for them.
CROSSINGS = {
    "a": (
        "H_a = s * N**2 * (H_0 - (H_0 - H_1) * (Q_a / (N * Q_1))**n)",
        "h_a = H_a - h_w - p_c / w",
    ),
    "b": (
        "H_b = s * N**2 * (H_0 - (H_0 - H_1) * (Q_b / (N * Q_1))**n)",
        "h_b = H_b - h_w - p_o / w",
    ),
}


class _Found(NamedTuple):
    """The pump as it stands, and the points at which it runs with the well pumped down.

    rest -- at cut-in with the well at rest
    dead_head, dead_low -- gauge with everything shut, well at rest and pumped down, Pa
    """

    pump: PumpCurve
    cut_in: Point
    cut_out: Point
    rest: Point
    dead_head: float
    dead_low: float


def operating_point(
    curve_flows: tuple[float, ...],
    curve_heads: tuple[float, ...],
    pump_speed: float,
    head_left: float,
    rest_level: float,
    well_level: float,
    well_yield: float,
    well_cut_in: float,
    well_cut_out: float,
    drop_kind: str,
    drop_length: float,
    line_kind: str,
    line_length: float,
    well_fittings: float,
) -> Answer:
    """Flow and head at cut-in and at cut-out."""
    sheet = curve_of_sheet(curve_flows, curve_heads)
    if sheet is None:
        says = "must be three heads that fall while the flows rise from 0: {curve_flows}"
        raise Refused("contradiction", "curve_heads", says=says)
    if well_level < rest_level:
        raise Refused("contradiction", "well_level", says="is above the level at rest")
    if well_cut_out <= well_cut_in:
        raise Refused("contradiction", "well_cut_out", says="must be above {well_cut_in}")
    pump = worn(at_speed(sheet, pump_speed), head_left)
    lines = (
        pipes.line_of(drop_kind, drop_length),
        pipes.line_of(line_kind, line_length, well_fittings),
    )

    def taken(q: float, gauge: float) -> float:
        return total_head(q, well_level, gauge, lines, COLD)

    found = _Found(
        pump,
        point_of(pump, well_level, well_cut_in, lines, COLD),
        point_of(pump, well_level, well_cut_out, lines, COLD),
        point_of(pump, rest_level, well_cut_in, lines, COLD),
        (pump.shut_off - rest_level) * WEIGHT,
        (pump.shut_off - well_level) * WEIGHT,
    )
    if found.cut_in[0] <= 0:
        says = "makes too little head to reach even cut-in with the water {well_level} down"
        raise Refused("contradiction", "curve_heads", says=says)
    gauges = well_cut_in, well_cut_out
    most = max(curve_flows[-1], found.cut_in[0])
    stalls = found.cut_out[0] <= 0
    return Answer(
        outputs={
            "flow_cut_in": found.cut_in[0],
            "flow_cut_out": None if stalls else found.cut_out[0],
            "head_in": found.cut_in[1],
            "head_out": None if stalls else found.cut_out[1],
            "falls_by": None if stalls else 1 - found.cut_out[0] / found.cut_in[0],
            "flow_most": found.rest[0],
            "dead_head": found.dead_head,
        },
        findings=_findings(found, well_cut_out, well_yield, curve_flows[-1] * pump_speed),
        steps=_steps(
            sheet, found, well_level, gauges, (curve_heads[0], curve_flows[1], curve_heads[1])
        ),
        charts=(_chart(found, sheet if pump != sheet else None, most, taken, gauges),),
    )


def _findings(found: _Found, cut_out: float, gives: float, last: float) -> tuple[Finding, ...]:
    said = [_headline(found, cut_out)]
    if found.cut_in[0] > gives:
        said.append(
            Finding(
                "caution",
                "Can pump the well down.",
                "At cut-in it takes {flow_cut_in}, the well gives {well_yield}: in a long draw the "
                "level falls to the pump. Throttle it, or fit a dry-run protection.",
            )
        )
    if max(found.cut_in[0], found.rest[0]) > last:
        said.append(
            Finding(
                "caution",
                "Off the sheet.",
                "With the well at rest it runs at {flow_most}, past the last point you gave. The "
                "curve there is a guess, and a motor may be overloaded.",
            )
        )
    if found.dead_head > RATED:
        said.append(
            Finding(
                "danger",
                "Can burst a tank.",
                "If the switch sticks, the gauge climbs to {dead_head}. Many small tanks are made "
                "for 100 psi (690 kPa): common practice, no source. A relief valve must open below "
                "the lowest rating in line and pass all that the pump gives.",
            )
        )
    return tuple(said)


def _headline(found: _Found, cut_out: float) -> Finding:
    if found.cut_out[0] <= 0:
        return Finding(
            "danger",
            "Never stops.",
            "With the water {well_level} down the pump cannot reach {well_cut_out}. It runs on "
            "against closed taps and boils its water. Lower the switch or mend the pump.",
        )
    if found.dead_low - cut_out < CLEAR:
        return Finding(
            "caution",
            "Hardly stops.",
            "With everything shut it clears cut-out by only {spare}. A little wear, a little less "
            "voltage or a foot of level, and it never stops. 10 psi (69 kPa) is common practice, "
            "no source.",
            {"spare": Quantity(found.dead_low - cut_out, gauge_pressure)},
        )
    return Finding(
        "good",
        "It runs.",
        "{flow_cut_in} at cut-in, {flow_cut_out} at cut-out. What a pail catches is somewhere "
        "between, and depends on the gauge while you catch.",
    )


def _steps(
    sheet: PumpCurve,
    found: _Found,
    level: float,
    gauges: tuple[float, float],
    points: tuple[float, float, float],
) -> tuple[Step, ...]:
    """`points`: head at no flow, flow and head in the middle of the sheet."""
    given = {
        "w": Quantity(WEIGHT, pressure_gradient, label="weight of water"),
        "H_0": Quantity(points[0], length, label="head on the sheet at no flow"),
        "Q_1": Quantity(points[1], flow, label="middle flow on the sheet"),
        "H_1": Quantity(points[2], length, label="head on the sheet at the middle flow"),
        "n": Quantity(sheet.power, number, 4, "power of the curve through the three points"),
        "p_d": Quantity(found.dead_head, gauge_pressure),
    }
    steps = [
        Step("Gauge with everything shut, well at rest", "p_d = w * (s * N**2 * H_0 - h_r)", given),
        *_crossing("a", "cut-in", found.cut_in, level + gauges[0] / WEIGHT, given),
    ]
    if found.cut_out[0] > 0:
        steps += _crossing("b", "cut-out", found.cut_out, level + gauges[1] / WEIGHT, given)
    return tuple(steps)


def _crossing(
    letter: str, name: str, point: Point, static: float, given: dict[str, Quantity]
) -> tuple[Step, Step]:
    """The head that the pump gives at a crossing, and what it leaves for friction."""
    known = given | {
        f"Q_{letter}": Quantity(point[0], flow, label=f"flow at {name}, found by trial"),
        f"H_{letter}": Quantity(point[1], length),
        f"h_{letter}": Quantity(point[1] - static, length),
    }
    curve, spent = CROSSINGS[letter]
    return (
        Step(f"Head that the pump gives at {name}", curve, known),
        Step(f"Of it left for friction at {name}: what pipe and fittings take", spent, known),
    )


def _chart(
    found: _Found,
    sheet: PumpCurve | None,
    most: float,
    taken: Callable[[float, float], float],
    gauges: tuple[float, float],
) -> Chart:
    flows = [most * step / 30 for step in range(31)]
    lines = [
        Line("pump", tuple((q, max(found.pump.head(q), 0.0)) for q in flows)),
        Line("system at cut-in", tuple((q, taken(q, gauges[0])) for q in flows)),
        Line("system at cut-out", tuple((q, taken(q, gauges[1])) for q in flows)),
    ]
    if sheet:
        lines.append(Line("pump as on its sheet", tuple((q, sheet.head(q)) for q in flows)))
    marks = [Mark("cut-in", *found.cut_in, here=True)]
    if found.cut_out[0] > 0:
        marks.append(Mark("cut-out", *found.cut_out, here=True))
    return Chart(
        title="Pump and system, well pumped down",
        says="Where the pump's curve crosses a system curve, there it runs. Between the two "
        "crossings it wanders up and down in every cycle of the switch.",
        x=Axis("Flow", flow),
        y=Axis("Head", length),
        lines=tuple(lines),
        marks=tuple(marks),
    )


CALCULATOR = Calculator(
    name="operating_point",
    title="Where the pump runs",
    question="How much does this pump bring at cut-in and at cut-out, and does it ever stop?",
    inputs=(
        well_pump_fields.curve_flows,
        well_pump_fields.curve_heads,
        Input(
            name="pump_speed",
            label="Speed of the pump over that of the sheet",
            symbol="N",
            kind=share,
            default="100 %",
            origin="as on the sheet",
            low=0.4,
            high=1.3,
            measure="A sheet for 60 Hz on a 50 Hz supply: 83 %. A drive shows its frequency.",
            group=CURVE,
        ),
        Input(
            name="head_left",
            label="Share of the sheet's head left",
            symbol="s",
            kind=share,
            default="100 %",
            origin="a new pump",
            low=0.2,
            high=1.2,
            measure="From the page on wear: one measured flow and gauge against the sheet.",
            group=CURVE,
            sure="3 %",
        ),
        well_pump_fields.rest_level,
        well_pump_fields.well_level,
        replace(well_pump_fields.well_yield, group=WELL_PUMP),
        replace(well_tank_fields.well_cut_in, group=SWITCH),
        replace(well_tank_fields.well_cut_out, group=SWITCH),
        pipes.pipe_choice("drop_kind", "Drop pipe", "pe-1", DROP),
        well_pump_fields.drop_length,
        pipes.pipe_choice("line_kind", "Pipe from the well head to the gauge", "pe-1", DROP),
        well_pump_fields.line_length,
        well_pump_fields.well_fittings,
    ),
    outputs=(
        Output(name="flow_cut_in", label="Flow at cut-in, pumped down", kind=flow),
        Output(
            name="flow_cut_out",
            label="Flow at cut-out, pumped down",
            kind=flow,
            none="it does not reach cut-out",
        ),
        Output(name="head_in", label="Head at cut-in", symbol="H_a", kind=length),
        Output(
            name="head_out",
            label="Head at cut-out",
            symbol="H_b",
            kind=length,
            none="it does not reach cut-out",
        ),
        Output(
            name="falls_by",
            label="The flow falls between them by",
            kind=share,
            none="it does not reach cut-out",
        ),
        Output(name="flow_most", label="Most, at cut-in with the well at rest", kind=flow),
        Output(
            name="dead_head",
            label="Gauge if the switch sticks, well at rest",
            symbol="p_d",
            kind=gauge_pressure,
        ),
    ),
    work=operating_point,
    trials=200,
    cautions=(cautions.ELECTRICITY, cautions.PRESSURE, cautions.LOCAL_CODE),
    leaves={"flow_cut_in": ("well_pump",)},
    sources=(
        "rossman-2000",
        "colebrook-1939",
        "moody-1944",
        "binder-1973",
        "iapws-liquid",
        "osha-1910-147",
        *pipes.STANDARDS,
    ),
)
