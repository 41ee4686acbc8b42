"""How high a pump above the water can lift it, here and on the warmest day."""

from typing import NamedTuple

from calc import cautions, pipes
from calc.charts import Axis, Bar, Bars, Chart, Line, Mark
from calc.fields import INVENTED, flow_input, well_pump_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.inlet_network import Water
from calc.physics.pump_system import line_loss
from calc.physics.suction import (
    EXPONENT,
    SCALE,
    air_pressure,
    npsh_available,
)
from calc.physics.suction import (
    suction_limit as limit_of,
)
from calc.physics.water import density, vapour_pressure, viscosity
from calc.units import (
    GRAVITY,
    absolute_pressure,
    atm,
    ft,
    length,
    number,
    pressure_gradient,
    temperature,
)

LIFT = "Suction side"
PUMP = "The pump"


class _Suction(NamedTuple):
    """Heads in m: what the air can push, what is spent, what is left at the pump."""

    air: float
    vapour: float
    limit: float
    lift: float
    friction: float
    available: float
    needs: float
    margin: float

    @property
    def spare(self) -> float:
        return self.available - self.needs - self.margin

    @property
    def highest(self) -> float:
        """Lift at which nothing is spare."""
        return self.lift + self.spare


def suction_limit(
    altitude: float,
    water_warmest: float,
    suction_lift: float,
    suction_flow: float,
    suction_kind: str,
    suction_length: float,
    suction_fittings: float,
    npsh_required: float,
    npsh_margin: float,
) -> Answer:
    """Suction head that is left at the pump, and the highest lift that leaves enough."""
    water = Water(density(water_warmest), viscosity(water_warmest))
    line = pipes.line_of(suction_kind, suction_length, suction_fittings)
    friction = line_loss(suction_flow, line, water)
    air, vapour = air_pressure(altitude), vapour_pressure(water_warmest)
    limit = limit_of(air, water_warmest)
    weight = water.density * GRAVITY
    found = _Suction(
        air / weight,
        vapour / weight,
        limit,
        suction_lift,
        friction,
        npsh_available(limit, suction_lift, friction),
        npsh_required,
        npsh_margin,
    )
    return Answer(
        outputs={
            "highest_lift": found.highest,
            "spare": found.spare,
            "npsh": found.available,
            "lift_limit": limit,
            "suction_loss": friction,
            "air": air,
        },
        findings=_findings(found),
        steps=_steps(found, air, vapour, weight),
        charts=(_bars(found), _chart(found, altitude, water_warmest)),
    )


def _findings(found: _Suction) -> tuple[Finding, ...]:
    if found.available <= 0:
        said = Finding(
            "danger",
            "Cannot be lifted.",
            "The water would boil before it reaches the pump. No pump above the water helps: put "
            "one into the well, or bring this one down to {highest_lift} above the water.",
        )
    elif found.spare < 0:
        said = Finding(
            "caution",
            "Too high.",
            "{npsh} is left at the pump; it needs {npsh_required} and a margin of {npsh_margin}. "
            "It will lose its prime, rattle and wear. The highest lift here is {highest_lift}.",
        )
    else:
        said = Finding(
            "good",
            "It can suck.",
            "{npsh} is left at the pump, {spare} more than need and margin. The highest lift here "
            "is {highest_lift}.",
        )
    if found.lift <= 0:
        return (said,)
    return (
        said,
        Finding(
            "caution",
            "Gas comes first.",
            "Water that carries gas, or has just been aerated, gives it off under suction long "
            "before it boils. And one pinhole above the water draws air. Prove it with a vacuum "
            "gauge.",
        ),
    )


def _steps(found: _Suction, air: float, vapour: float, weight: float) -> tuple[Step, ...]:
    given = {
        "P_0": Quantity(atm, absolute_pressure, 4, "air at sea level on a standard day"),
        "h_s": Quantity(SCALE, length, 4, "height scale of the standard atmosphere"),
        "n": Quantity(EXPONENT, number, 5, "exponent of the standard atmosphere"),
        "p_v": Quantity(vapour, absolute_pressure, label="pressure at which the water boils"),
        "w": Quantity(weight, pressure_gradient, label="weight of the water"),
        "h_f": Quantity(found.friction, length, label="lost in pipe and fittings, Colebrook"),
    }
    return (
        Step("Pressure of the air", "p_a = P_0 * (1 - A / h_s)**n", given),
        Step("What the air can push up at best", "h_m = (p_a - p_v) / w", given),
        Step("Left at the pump", "N_a = h_m - z - h_f", given),
        Step("To spare", "N_s = N_a - N_r - N_m", given),
        Step("Highest lift", "z_m = h_m - h_f - N_r - N_m", given),
    )


def _bars(found: _Suction) -> Bars:
    parts = (
        ("lift", found.lift),
        ("pipe and fittings", found.friction),
        ("vapour of the water", found.vapour),
        ("the pump's own need", found.needs),
        ("margin", found.margin),
        ("to spare", found.spare),
    )
    return Bars(
        title="What the air's push is spent on",
        says="The air pushes with all of them together; with nothing to spare the pump cannot.",
        like=_LIMIT,
        bars=tuple(Bar(label, max(part, 0.0)) for label, part in parts),
    )


def _chart(found: _Suction, altitude: float, kelvin: float) -> Chart:
    heights = [each * 500 * ft for each in range(21)]
    fixed = found.friction + found.needs + found.margin
    return Chart(
        title="Highest lift by height above sea level",
        says="About a foot is lost with every thousand feet.",
        x=Axis("Height above sea level", well_pump_fields.altitude),
        y=Axis("Lift", _LIMIT),
        lines=(
            Line("no pump lifts more", tuple((h, limit_of(air_pressure(h), kelvin))
                                             for h in heights)),
            Line("this one", tuple((h, limit_of(air_pressure(h), kelvin) - fixed)
                                   for h in heights)),
        ),
        marks=(Mark("your lift", altitude, found.lift, here=True),),
    )  # fmt: skip


_LIMIT = Output(name="lift_limit", label="No pump could lift more than", symbol="h_m", kind=length)
CALCULATOR = Calculator(
    name="suction_limit",
    title="How high a pump can suck",
    question="Can a pump above the water lift it, at this height and temperature?",
    inputs=(
        well_pump_fields.altitude,
        Input(
            name="water_warmest",
            label="Warmest that the water gets",
            symbol="T_w",
            kind=temperature,
            default="60 °F",
            origin=INVENTED,
            low=temperature.unit("°C").into_si(0.1),
            high=temperature.unit("°C").into_si(60),
            measure="Thermometer in a pail, late in summer, after the water has run.",
            group="Place",
            sure="1 °F",
        ),
        Input(
            name="suction_lift",
            label="Height of the pump above the water while it pumps",
            symbol="z",
            kind=length,
            default="15 ft",
            origin=INVENTED,
            low=-30 * ft,
            high=60 * ft,
            us="ft",
            measure="From the pumping level of a dry season to the pump. Below 0 where the water "
            "stands above the pump, as in an open tank.",
            group=LIFT,
            sure="1 ft",
        ),
        flow_input(
            "suction_flow",
            "Flow in the suction pipe",
            "Q",
            "6 gpm",
            "The most that the pump brings: at cut-in.",
            LIFT,
        ),
        pipes.pipe_choice("suction_kind", "Suction pipe", "pe-1.25", LIFT),
        Input(
            name="suction_length",
            label="Length of the suction pipe",
            symbol="L",
            kind=length,
            default="40 ft",
            origin=INVENTED,
            low=1 * ft,
            high=1000 * ft,
            us="ft",
            measure="All of it, from the foot valve to the pump.",
            group=LIFT,
            sure="5 %",
        ),
        Input(
            name="suction_fittings",
            label="Loss factors K of foot valve and fittings",
            symbol="K",
            kind=number,
            default="12",
            origin="invented: a foot valve with its strainer and three elbows",
            low=0,
            high=500,
            measure="Foot valve with poppet 9, with a hinged disk 2, elbow 0.7: from memory.",
            group=LIFT,
            sure="30 %",
        ),
        Input(
            name="npsh_required",
            label="Suction head that the pump needs (NPSH required)",
            symbol="N_r",
            kind=length,
            default="8 ft",
            origin="common practice, no source: a shallow-well pump",
            low=0,
            high=40 * ft,
            us="ft",
            measure="From the pump's sheet at that flow. A sheet that only says “25 ft of lift at "
            "sea level” means about 8 ft.",
            group=PUMP,
            sure="1 ft",
        ),
        Input(
            name="npsh_margin",
            label="Margin on it",
            symbol="N_m",
            kind=length,
            default="2 ft",
            origin="common practice, no source",
            low=0,
            high=20 * ft,
            us="ft",
            measure="For weather, wear and gas.",
            group=PUMP,
        ),
    ),
    outputs=(
        Output(name="highest_lift", label="Highest lift here", symbol="z_m", kind=length),
        Output(name="spare", label="To spare", symbol="N_s", kind=length),
        Output(name="npsh", label="Suction head left (NPSH available)", symbol="N_a", kind=length),
        _LIMIT,
        Output(name="suction_loss", label="Lost in the suction pipe", kind=length),
        Output(name="air", label="Pressure of the air", symbol="p_a", kind=absolute_pressure),
    ),
    work=suction_limit,
    trials=200,
    cautions=(cautions.ELECTRICITY, cautions.PRESSURE, cautions.LOCAL_CODE),
    sources=(
        "us-atmosphere-1976",
        "iapws-sat",
        "iapws-liquid",
        "rossman-2000",
        "colebrook-1939",
        "suction-table",
        "osha-1910-147",
        *pipes.STANDARDS,
    ),
)
