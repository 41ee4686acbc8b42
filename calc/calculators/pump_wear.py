"""What is left of a pump: one measured point against its curve."""

from typing import NamedTuple

from calc import cautions, pipes
from calc.charts import Axis, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import DROP, INVENTED, flow_input, well_pump_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.inlet_network import Water
from calc.physics.pump_curve import PumpCurve
from calc.physics.pump_system import curve_of_sheet, line_loss, speed_through, worn
from calc.physics.water import density, viscosity
from calc.units import (
    GRAVITY,
    flow,
    ft,
    gauge_pressure,
    length,
    number,
    pressure_gradient,
    psi,
    share,
)

TEST = "The test"
COLD = Water(density(283.15), viscosity(283.15))  # 10 °C: a few degrees are a few hundredths of it
NEW, WEAK = 0.95, 0.85  # shares of head: 10 to 15 % low is worn, common practice, no source


class _Test(NamedTuple):
    """The measured point, and the sheet's head at its flow, m."""

    curve: PumpCurve
    flow: float
    head: float
    sheet: float

    @property
    def left(self) -> float:
        return self.head / self.sheet


def pump_wear(
    curve_flows: tuple[float, ...],
    curve_heads: tuple[float, ...],
    tested_flow: float,
    tested_gauge: float,
    tested_level: float,
    drop_kind: str,
    drop_length: float,
) -> Answer:
    """Share of the sheet's head that the pump still gives."""
    curve = curve_of_sheet(curve_flows, curve_heads)
    if curve is None:
        says = "must be three heads that fall while the flows rise from 0: {curve_flows}"
        raise Refused("contradiction", "curve_heads", says=says)
    friction = line_loss(tested_flow, pipes.line_of(drop_kind, drop_length), COLD)
    weight = COLD.density * GRAVITY
    head = tested_level + tested_gauge / weight + friction
    sheet = curve.head(tested_flow)
    if sheet <= 0:
        raise Refused("contradiction", "tested_flow", says="is past the end of the curve")
    test = _Test(curve, tested_flow, head, sheet)
    return Answer(
        outputs={
            "head_left": test.left,
            "head_measured": head,
            "head_sheet": sheet,
            "missing": sheet - head,
            "speed_like": speed_through(curve, tested_flow, head),
        },
        findings=(_headline(test),),
        steps=_steps(curve, curve_flows, curve_heads, friction, weight),
        charts=(_chart(test, curve_flows[-1]),),
    )


def _headline(test: _Test) -> Finding:
    if test.left > 2 - NEW:
        return Finding(
            "caution",
            "Better than its sheet.",
            "It gave {head_measured} where the sheet says {head_sheet}. Then it is another pump, "
            "another speed, or a reading is wrong.",
        )
    if test.left >= NEW:
        return Finding(
            "good",
            "As on its sheet.",
            "It gave {head_measured}, the sheet says {head_sheet}: no wear that two gauges and a "
            "pail could tell.",
        )
    if test.left >= WEAK:
        return Finding(
            "caution",
            "Wearing.",
            "It has lost {missing} of its head. Check the voltage, the level and the check valve "
            "first, write the figure down, and test again in a year.",
        )
    return Finding(
        "caution",
        "Worn, slow or leaking.",
        "Only {head_left} of the head is left. Worn stages, low voltage, a hole in the drop pipe "
        "and a level lower than you took it for all look like this: the level, the volts and the "
        "gauge with the pump off tell them apart.",
    )


def _steps(
    curve: PumpCurve,
    flows: tuple[float, ...],
    heads: tuple[float, ...],
    friction: float,
    weight: float,
) -> tuple[Step, ...]:
    given = {
        "w": Quantity(weight, pressure_gradient, label="weight of water"),
        "h_d": Quantity(friction, length, label="lost in the drop pipe, Colebrook"),
        "H_0": Quantity(heads[0], length, label="head on the sheet at no flow"),
        "H_1": Quantity(heads[1], length, label="head on the sheet at the middle flow"),
        "Q_1": Quantity(flows[1], flow, label="middle flow on the sheet"),
        "n": Quantity(curve.power, number, 4, "power of the curve through the three points"),
    }
    return (
        Step("Head that the pump gave", "H_m = h_t + p_g / w + h_d", given),
        Step(
            "Head on the sheet at that flow",
            "H_s = H_0 - (H_0 - H_1) * (Q_t / Q_1)**n",
            given,
        ),
        Step("Share that is left", "s = H_m / H_s", given),
    )


def _chart(test: _Test, far: float) -> Chart:
    tired = worn(test.curve, test.left)
    most = max(far, test.flow)
    flows = [most * step / 20 for step in range(21)]
    return Chart(
        title="The sheet and the test",
        says="The lower line is the sheet's curve brought down to the measured point. Far from "
        "the point it is a guess.",
        x=Axis("Flow", flow),
        y=Axis("Head", length),
        lines=(
            Line("sheet", tuple((q, test.curve.head(q)) for q in flows)),
            Line("as tested", tuple((q, tired.head(q)) for q in flows)),
        ),
        marks=(Mark("test", test.flow, test.head, here=True),),
    )


CALCULATOR = Calculator(
    name="pump_wear",
    title="Wear of a pump",
    question="How much of its curve does this pump still give?",
    inputs=(
        well_pump_fields.curve_flows,
        well_pump_fields.curve_heads,
        flow_input(
            "tested_flow",
            "Flow in the test",
            "Q_t",
            "7 gpm",
            "A pail at a hose bib before any treatment, gauge held steady with its valve. Or the "
            "tank's drawdown over the time the pump takes to fill it, taps closed.",
            TEST,
        ),
        Input(
            name="tested_gauge",
            label="Gauge in the test",
            symbol="p_g",
            kind=gauge_pressure,
            default="50 psi",
            origin=INVENTED,
            low=0,
            high=200 * psi,
            measure="Steady, at the pressure tank, while you catch.",
            group=TEST,
            sure="2 psi",
        ),
        Input(
            name="tested_level",
            label="Water in the well below the gauge in the test",
            symbol="h_t",
            kind=length,
            default="95 ft",
            origin=INVENTED,
            low=1 * ft,
            high=1000 * ft,
            us="ft",
            measure="Sounder, while the pump runs. The level at rest makes the pump look worn.",
            group=TEST,
            sure="3 ft",
        ),
        pipes.pipe_choice("drop_kind", "Drop pipe", "pe-1", DROP),
        well_pump_fields.drop_length,
    ),
    outputs=(
        Output(name="head_left", label="Share of its head left", symbol="s", kind=share),
        Output(name="head_measured", label="Head it gave", symbol="H_m", kind=length),
        Output(name="head_sheet", label="Head on its sheet", symbol="H_s", kind=length),
        Output(name="missing", label="Missing", kind=length),
        Output(
            name="speed_like",
            label="The same as a new pump at this share of its speed",
            kind=share,
        ),
    ),
    work=pump_wear,
    trials=200,
    cautions=(cautions.ELECTRICITY, cautions.PRESSURE, cautions.LOCAL_CODE),
    leaves={"head_left": ("head_left",)},
    sources=(
        "rossman-2000",
        "colebrook-1939",
        "iapws-liquid",
        "osha-1910-147",
    ),
)
