"""Water that must stand over the intake, what of the tank is usable, and the floats' heights."""

from dataclasses import replace
from math import pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, OPEN_TANK, OUTLET, flow_input, house_tank_fields, open_tank_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics import pipe
from calc.physics.intake import (
    float_opening,
    froude_number,
    least_submergence,
    usable_volume,
)
from calc.units import (
    GRAVITY,
    acceleration,
    area,
    flow,
    ft,
    gal,
    inch,
    length,
    number,
    velocity,
    volume,
)

# An alarm float this far over the level where the inlet closes is not set off by ripples.
# Common practice, no source.
ALARM_ABOVE = 1 * inch
POINTS = 40


class _Heights(NamedTuple):
    """Over the intake, m."""

    submergence: float
    opens: float
    needed: float
    closes: float
    alarm: float
    overflow: float


def intake_depth(
    limit: str,
    worst_outlet: float,
    pump: float,
    house_drawdown: float,
    intake_bore: float,
    tank_area: float,
    float_open: float,
    float_closed: float,
    keep: float,
    overflow_height: float,
) -> Answer:
    """Submergence, usable water, and where cut-off, float and alarm must sit."""
    if float_closed <= float_open:
        says = "must be above the float's opening at {float_open}"
        raise Refused("contradiction", "float_closed", says=says)
    before = limit == "before"
    most = min(pump, worst_outlet) if before else pump
    taken = 0.0 if before else house_drawdown
    speed = pipe.velocity(most, intake_bore)
    submergence = least_submergence(most, intake_bore)
    needed = float_opening(submergence, taken, keep, tank_area)
    closes = needed + (float_closed - float_open) / tank_area
    heights = _Heights(
        submergence,
        float_open / tank_area,
        needed,
        closes,
        closes + ALARM_ABOVE,
        overflow_height,
    )
    usable = usable_volume(float_open, tank_area, submergence)
    given = {
        "Q": Quantity(most, flow, label="most that the intake draws"),
        "pi": Quantity(pi, number, 4, "a circle over its width"),
        "g": Quantity(GRAVITY, acceleration, label="gravity"),
        "a": Quantity(ALARM_ABOVE, _ALARM, label="alarm above the level where the inlet closes"),
        "V_d": Quantity(taken, volume, label="what the house pressure tank may take at once"),
    }
    return Answer(
        outputs={
            "submergence": submergence,
            "usable": usable,
            "unusable": tank_area * submergence,
            "speed": speed,
            "froude": froude_number(speed, intake_bore),
            "open_now": heights.opens,
            "cut_off_height": submergence,
            "open_height": needed,
            "close_height": closes,
            "alarm_height": heights.alarm,
        },
        findings=_findings(heights, usable, taken + keep),
        steps=_steps(before, given),
        charts=(_chart(min(pump, worst_outlet), pump, intake_bore, heights),),
    )


def _findings(heights: _Heights, usable: float, wanted: float) -> tuple[Finding, ...]:
    findings = [_headline(heights, usable, wanted)]
    if heights.alarm > heights.overflow:
        findings.append(
            Finding(
                "danger",
                "The floats do not fit.",
                "The alarm would sit at {alarm_height}, over the overflow at {overflow_height}. "
                "A wider intake, a lower outlet or a taller tank makes room; the air gap "
                "must not.",
            )
        )
    return tuple(findings)


def _headline(heights: _Heights, usable: float, wanted: float) -> Finding:
    if usable <= 0:
        return Finding(
            "danger",
            "Air before the tank is low.",
            "When the float opens, {open_now} stands over the intake, and {submergence} is "
            "wanted. A whirl can draw air while the tank looks half full. Fit a wider intake or "
            "pass less through it, and raise the float.",
        )
    if usable < wanted:
        return Finding(
            "caution",
            "Raise the float.",
            "Of the {float_open} over the intake {usable} can be used. The float must open at "
            "{open_height}; it opens at {open_now}.",
        )
    return Finding(
        "good",
        "Deep enough.",
        "Of the {float_open} over the intake {usable} can be used when the float opens. Set the "
        "low-level switch to {cut_off_height} or higher.",
    )


def _steps(before: bool, given: dict[str, Quantity]) -> tuple[Step, ...]:
    most = "Q = min(Q_p, Q_x)" if before else "Q = Q_p"
    return (
        Step("Most that the intake draws", most, given),
        Step("Velocity in the opening", "v = 4 * Q / (pi * D**2)", given),
        Step("Froude number", "F = v / sqrt(g * D)", given),
        Step("Water that must stand over it", "S = D * (1 + 2.3 * F)", given),
        Step("Water that cannot be used", "V_s = A * S", given),
        Step("Water that can, when the float opens", "V_u = V_on - V_s", given),
        Step("The float opens today at", "h_n = V_on / A", given),
        Step("Low-level switch, at the lowest", "h_s = S", given),
        Step("The float must open at", "h_on = S + (V_d + V_k) / A", given),
        Step("It then closes at", "h_off = h_on + (V_off - V_on) / A", given),
        Step("High-level alarm", "h_a = h_off + a", given),
    )


def _chart(limited: float, free: float, bore: float, heights: _Heights) -> Chart:
    most = max(2.5 * bore, 2 * inch)
    bores = [bore / 2 + (most - bore / 2) * step / POINTS for step in range(POINTS + 1)]

    def line(label: str, drawn: float) -> Line:
        return Line(label, tuple((each, least_submergence(drawn, each)) for each in bores))

    return Chart(
        title="Water that must stand over the intake, by its bore",
        says="A wider opening needs less water over it, until it is so wide that its own size "
        "counts. A pump that nothing holds back needs the most.",
        x=Axis("Bore of the opening", _BORE),
        y=Axis("Water over it", _SUBMERGENCE),
        lines=(line("limit before the pressure tank", limited), line("pump 2 unlimited", free)),
        limits=(Limit("float opens today", heights.opens),),
        marks=(Mark("this intake", bore, heights.submergence, True),),
    )


def _height(name: str, label: str, symbol: str) -> Output:
    return Output(name=name, label=label, symbol=symbol, kind=length, us="in", si="cm")


_BORE = Input(
    name="intake_bore",
    label="Inside diameter of the intake's opening",
    symbol="D",
    kind=length,
    us="in",
    si="mm",
    default="1.049 in",
    origin="1 inch pipe of schedule 40, from memory",
    low=0.25 * inch,
    high=12 * inch,
    measure="Of the open end in the tank: a bell or a wide fitting counts with its mouth, a "
    "strainer with the area of its holes together.",
    group=OPEN_TANK,
    sure="0.02 in",
)
_SUBMERGENCE = _height("submergence", "Water that must stand over the intake", "S")
_ALARM = _height("alarm_height", "High-level alarm at", "h_a")

CALCULATOR = Calculator(
    name="intake_depth",
    title="How deep the intake must sit",
    question="How much water must stay over the intake, and at which heights do the floats sit?",
    inputs=(
        open_tank_fields.limit,
        flow_input(
            "worst_outlet",
            "Worst flow out",
            "Q_x",
            "6 gpm",
            "From the outlet-setting page.",
            OUTLET,
        ),
        flow_input(
            "pump",
            "Flow of pump 2 with nothing holding it back",
            "Q_p",
            "12 gpm",
            "Its curve at cut-in pressure, or a pail with the limit wide open.",
            OUTLET,
        ),
        replace(house_tank_fields.house_drawdown, group=OUTLET),
        _BORE,
        Input(
            name="tank_area",
            label="Surface of the water in the open tank",
            symbol="A",
            kind=area,
            default="1.77 ft²",
            origin="invented example: a round tank 18 in wide",
            low=0.1 * ft**2,
            high=200 * ft**2,
            measure="Round: 0.785 times width times width. Take off what stands in it. Check: "
            "water drawn by the pail over inches fallen.",
            group=OPEN_TANK,
            sure="3 %",
        ),
        open_tank_fields.float_open,
        open_tank_fields.float_closed,
        Input(
            name="keep",
            label="Water to keep over that",
            symbol="V_k",
            kind=volume,
            default="2 gal",
            origin="common practice, no source",
            low=0.0,
            high=500 * gal,
            measure="For ripples, for a float that sticks a little, for the play of the low-level "
            "switch.",
            group=OPEN_TANK,
        ),
        Input(
            name="overflow_height",
            label="Height of the overflow over the intake",
            kind=length,
            us="in",
            si="cm",
            default="14 in",
            origin=INVENTED,
            low=1 * inch,
            high=240 * inch,
            measure="From the opening up to the lowest point where water leaves to the drain.",
            group=OPEN_TANK,
            sure="0.25 in",
        ),
    ),
    outputs=(
        _SUBMERGENCE,
        Output(
            name="usable",
            label="Water that can be used when the float opens",
            symbol="V_u",
            kind=volume,
            low=0.0,
            outside="The intake may draw air before the float opens.",
        ),
        Output(name="unusable", label="Water that cannot be used", symbol="V_s", kind=volume),
        Output(name="speed", label="Velocity in the opening", symbol="v", kind=velocity),
        Output(name="froude", label="Froude number of the intake", symbol="F", kind=number),
        _height("open_now", "The float opens today at", "h_n"),
        _height("cut_off_height", "Low-level switch at the lowest", "h_s"),
        _height("open_height", "The float must open at", "h_on"),
        _height("close_height", "It then closes at", "h_off"),
        _ALARM,
    ),
    work=intake_depth,
    cautions=(
        cautions.RADON_AIR,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    sources=("ansi-hi-9-8", "irc-p2902", "epa-radon-2016", "osha-1910-147"),
)
