"""What pressure the blower must give through water, stones and vent, and what the vent does."""

from collections.abc import Callable
from dataclasses import replace
from math import pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.fields import AERATOR, INVENTED, aerator_fields, water_fields, well_pump_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics import air
from calc.physics.off_gas import condensate
from calc.physics.pipe import ROUGHNESS_DRAWN, friction_factor
from calc.physics.vent import Duct, blower_power, blower_pressure, vent_loss, vent_velocity
from calc.units import (
    GRAVITY,
    concentration,
    day,
    duration,
    energy,
    energy_price,
    flow,
    ft,
    gauge_pressure,
    hour,
    inch,
    inH2O,
    length,
    money,
    number,
    percent,
    power,
    pressure_gradient,
    share,
    temperature,
    velocity,
)

VENT = "Vent"
BLOWER = "Blower"
FREEZING = 273.15
WATER = 1000.0  # kg/m³, of condensate
YEAR = 365.25 * day
DOLLAR = 1 / (1e3 * hour)  # for each kWh
NARROW = 0.2  # share of the blower's pressure from which a wider vent is worth its price
POINTS = 30


class _Vent(NamedTuple):
    """The air in the vent: its density kg/m³, speed m/s, Darcy's factor, and the
    water each m³ leaves behind, kg/m³."""

    weight: float
    speed: float
    factor: float
    dropped: float


def blower_and_vent(
    aerator_air: float,
    water_temperature: float,
    stone_loss: float,
    fouling_margin: float,
    bubble_depth: float,
    vent_length: float,
    vent_bore: float,
    vent_fittings: float,
    vent_coldest: float,
    altitude: float,
    blower_gives: float,
    blower_efficiency: float,
    blower_hours: float,
    price: float,
) -> Answer:
    """Pressure the blower needs clean and fouled, its power and cost, water and ice in the vent."""
    duct = Duct(vent_length, vent_bore, vent_fittings)
    outside = air.pressure(altitude)
    lost = vent_loss(aerator_air, duct, water_temperature, outside)
    clean = blower_pressure(bubble_depth, stone_loss, lost)
    fouled = blower_pressure(bubble_depth, stone_loss, lost, fouling_margin)
    watts = blower_power(aerator_air, clean, blower_efficiency)
    used = watts * blower_hours / day * YEAR
    dropped = condensate(1.0, water_temperature, vent_coldest, outside)
    vent = _vent(aerator_air, vent_bore, water_temperature, outside, dropped)

    def needed(air_flow: float, fouling: float) -> float:
        stones = stone_loss * (air_flow / aerator_air) ** 2
        inside = vent_loss(air_flow, duct, water_temperature, outside)
        return blower_pressure(bubble_depth, stones, inside, fouling)

    return Answer(
        outputs={
            "clean_pressure": clean,
            "fouled_pressure": fouled,
            "pressure_left": blower_gives - fouled,
            "vent_loss": lost,
            "vent_speed": vent.speed,
            "watts": watts,
            "year_energy": used,
            "year_cost": used * price,
            "vent_water": dropped * aerator_air * blower_hours / day / WATER,
        },
        findings=(
            _headline(blower_gives, clean, fouled),
            *_about_the_vent(lost / clean, vent_coldest, dropped),
        ),
        steps=_steps(vent),
        charts=(_chart(needed, aerator_air, fouling_margin, blower_gives),),
    )


def _vent(
    air_flow: float, bore: float, temperature: float, outside: float, dropped: float
) -> _Vent:
    weight = air.density(temperature, outside, air.humidity(temperature, outside))
    speed = vent_velocity(air_flow, bore)
    reynolds = weight * speed * bore / air.viscosity(temperature)
    return _Vent(weight, speed, friction_factor(reynolds, ROUGHNESS_DRAWN / bore), dropped)


def _headline(gives: float, clean: float, fouled: float) -> Finding:
    if gives < clean:
        return Finding(
            "danger",
            "Too weak.",
            "At this air flow the blower gives {blower_gives}, and clean stones and vent ask for "
            "{clean_pressure}. Less air goes through than you count on, and less radon comes out.",
        )
    if gives < fouled:
        return Finding(
            "caution",
            "Enough while clean.",
            "The blower gives {blower_gives}. Clean it needs {clean_pressure}, fouled "
            "{fouled_pressure}: the air falls off before anyone cleans. Clean sooner, or fit a "
            "stronger blower.",
        )
    return Finding(
        "good",
        "Strong enough.",
        "The blower gives {blower_gives} and needs {clean_pressure} clean, {fouled_pressure} "
        "fouled. Write both on the tag beside its gauge.",
    )


def _about_the_vent(part: float, coldest: float, dropped: float) -> tuple[Finding, ...]:
    findings = []
    if part > NARROW:
        findings.append(
            Finding(
                "caution",
                "A narrow vent.",
                "The vent alone takes {vent_loss}. One size wider gives most of it back to the "
                "stones.",
            )
        )
    if dropped <= 0:
        return tuple(findings)
    if coldest < FREEZING:
        findings.append(
            Finding(
                "danger",
                "Ice.",
                "Up to {vent_water} can stay in the cold stretch as ice and close it. The "
                "air then finds another way: into the room. Insulate, keep the outdoor stretch "
                "short and wide, no screen of fine mesh, and a high limit on the blower's switch.",
            )
        )
    else:
        findings.append(
            Finding(
                "caution",
                "Water in the vent.",
                "Up to {vent_water} runs down the pipe. It must fall all the way back to the "
                "tank: a sag that holds water is a plug.",
            )
        )
    return tuple(findings)


def _steps(vent: _Vent) -> tuple[Step, ...]:
    given = {
        "pi": Quantity(pi, number, 4, "a circle over its width"),
        "w": Quantity(WATER * GRAVITY, pressure_gradient, 4, "weight of standing water"),
        "rho": Quantity(vent.weight, concentration, 4, "weight of the damp air in the vent"),
        "f": Quantity(vent.factor, number, 4, "Darcy's friction factor, by Colebrook"),
        "P": Quantity(vent.weight * vent.speed**2 / 2, gauge_pressure, 4),
        "m": Quantity(vent.dropped, concentration, 4, "water that this air drops as it cools"),
        "rho_w": Quantity(WATER, concentration, 4, "weight of water"),
        "n": Quantity(YEAR / day, number, 5, "days in a year"),
        "d": Quantity(day, duration, 4, "a day"),
    }
    return (
        Step("Velocity in the vent", "v = 4 * G / (pi * D_v**2)", given),
        Step("What that velocity is worth in pressure", "P = rho * v**2 / 2", given),
        Step("Lost in the vent", "dp_v = (f * L_v / D_v + K_v) * P", given),
        Step("The blower needs, clean", "p_c = w * z_b + dp_s + dp_v", given),
        Step("The blower needs, fouled", "p_f = w * z_b + (dp_s + dp_v) * (1 + M_f)", given),
        Step("Left over", "p_l = p_b - p_f", given),
        Step("Power, clean", "P_e = G * p_c / eta", given),
        Step("Energy in a year", "E = P_e * t_b * n", given),
        Step("Cost in a year", "B = E * c_e", given),
        Step("Water that the vent sheds in a day", "Q_v = G * m / rho_w * (t_b / d)", given),
    )


def _chart(
    needed: Callable[[float, float], float], air_flow: float, fouling: float, gives: float
) -> Chart:
    flows = [1.6 * air_flow * n / POINTS for n in range(POINTS + 1)]

    def line(label: str, worse: float) -> Line:
        return Line(label, tuple((each, needed(each, worse)) for each in flows))

    return Chart(
        title="Pressure that the air needs",
        says="At no flow it is the weight of the water alone. Stones and vent add to it with the "
        "square of the flow.",
        x=Axis("Air", aerator_fields.aerator_air),
        y=Axis("Pressure", _CLEAN),
        lines=(line("clean", 0.0), line("fouled", fouling)),
        marks=(Mark("what the blower gives", air_flow, gives, here=True),),
    )


def _pressure(name: str, label: str, symbol: str) -> Output:
    return Output(
        name=name,
        label=label,
        symbol=symbol,
        kind=gauge_pressure,
        us="in of water",
        si="Pa",
    )


_CLEAN = _pressure("clean_pressure", "The blower needs, clean", "p_c")

CALCULATOR = Calculator(
    name="blower_and_vent",
    title="Blower and vent",
    question="Can the blower push this air through water, stones and vent, and what stays in the "
    "vent?",
    inputs=(
        aerator_fields.aerator_air,
        water_fields.water_temperature,
        Input(
            name="stone_loss",
            label="Lost in stones, hose and air filter, clean",
            symbol="dp_s",
            kind=gauge_pressure,
            us="in of water",
            si="Pa",
            default="6 in of water",
            origin=INVENTED,
            low=0,
            high=100 * inH2O,
            measure="Gauge at the blower, everything clean, less the water over the stones and "
            "less the vent. Unknown: stones in a pail of water no deeper than they are.",
            group=AERATOR,
            sure="1 in of water",
        ),
        Input(
            name="fouling_margin",
            label="How much worse stones and vent may get before cleaning",
            symbol="M_f",
            kind=share,
            default="100 %",
            origin="common practice, no source: twice the clean loss",
            low=0,
            high=1000 * percent,
            measure="You decide. With iron in the water stones can lose five times as much within "
            "months: then write down the gauge at each cleaning and take your own figure.",
            group=AERATOR,
        ),
        aerator_fields.bubble_depth,
        Input(
            name="vent_length",
            label="Length of the vent",
            symbol="L_v",
            kind=length,
            us="ft",
            default="30 ft",
            origin=INVENTED,
            low=1 * ft,
            high=300 * ft,
            measure="Tape measure along the pipe, from the tank's lid to the open end.",
            group=VENT,
            sure="1 ft",
        ),
        Input(
            name="vent_bore",
            label="Inside diameter of the vent",
            symbol="D_v",
            kind=length,
            us="in",
            si="mm",
            default="3.068 in",
            origin="3 inch pipe of schedule 40, from memory",
            low=0.5 * inch,
            high=12 * inch,
            measure="Inside, at an open end. 1½, 2, 3, 4 in of schedule 40 are 1.610, 2.067, "
            "3.068, 4.026 in; thin-walled drain pipe is wider.",
            group=VENT,
            sure="0.02 in",
        ),
        Input(
            name="vent_fittings",
            label="K of all fittings of the vent, open end counted",
            symbol="K_v",
            kind=number,
            default="3",
            origin="invented example: four elbows of 0.5 and the open end of 1",
            low=1,
            high=100,
            measure="Add up: elbow 0.3 to 0.9, long sweep 0.25, tee turned 1, coarse screen or "
            "cap 1, the open end always 1 (from memory).",
            group=VENT,
            sure="20 %",
        ),
        Input(
            name="vent_coldest",
            label="Coldest that the vent's pipe gets",
            symbol="T_v",
            kind=temperature,
            default="14 °F",
            origin=INVENTED,
            low=FREEZING - 40,
            high=FREEZING + 40,
            measure="The cold stretch decides: outdoors or in an unheated attic the coldest "
            "night, indoors the coldest room.",
            group=VENT,
            sure="5 °F",
        ),
        replace(well_pump_fields.altitude, group=VENT),
        Input(
            name="blower_gives",
            label="Pressure that the blower gives at this air",
            symbol="p_b",
            kind=gauge_pressure,
            us="in of water",
            si="Pa",
            default="40 in of water",
            origin=INVENTED,
            low=0.1 * inH2O,
            high=300 * inH2O,
            measure="From its curve, at the air that goes through the aerator. The largest "
            "pressure on its label is given at no air at all.",
            group=BLOWER,
            sure="10 %",
        ),
        Input(
            name="blower_efficiency",
            label="Efficiency of blower and motor together",
            symbol="eta",
            kind=share,
            default="35 %",
            origin="small blowers 20 to 45 %, from memory",
            low=3 * percent,
            high=90 * percent,
            measure="Air times pressure over the watts of a plug-in meter.",
            group=BLOWER,
            sure="10 %",
        ),
        Input(
            name="blower_hours",
            label="The blower runs in a day",
            symbol="t_b",
            kind=duration,
            us="h",
            si="h",
            default="24 h",
            origin="invented example: a blower that never stops, so that the tank stays clean",
            low=0.1 * hour,
            high=24 * hour,
            measure="An hour meter, or clock it over a day of ordinary use.",
            group=BLOWER,
        ),
        Input(
            name="price",
            label="Price of electricity",
            symbol="c_e",
            kind=energy_price,
            default="0.20 $/kWh",
            origin=INVENTED,
            low=0.01 * DOLLAR,
            high=2 * DOLLAR,
            measure="From the bill: all of it over the kilowatt-hours.",
            group=BLOWER,
        ),
    ),
    outputs=(
        _CLEAN,
        _pressure("fouled_pressure", "The blower needs, fouled", "p_f"),
        Output(
            name="pressure_left",
            label="Left over when fouled",
            symbol="p_l",
            kind=gauge_pressure,
            us="in of water",
            si="Pa",
            low=0.0,
            outside="The blower cannot hold this air when fouled.",
        ),
        _pressure("vent_loss", "Lost in the vent", "dp_v"),
        Output(name="vent_speed", label="Velocity in the vent", symbol="v", kind=velocity),
        Output(name="watts", label="Power, clean", symbol="P_e", kind=power, us="W", si="W"),
        Output(name="year_energy", label="Energy in a year", symbol="E", kind=energy),
        Output(name="year_cost", label="Cost in a year", symbol="B", kind=money),
        Output(
            name="vent_water",
            label="Water or ice that the vent sheds in a day, at most",
            symbol="Q_v",
            kind=flow,
            us="gal/day",
            si="L/day",
            digits=2,
        ),
    ),
    work=blower_and_vent,
    cautions=(
        cautions.VENT_OUTDOORS,
        cautions.RADON_AIR,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "rossman-2000",
        "colebrook-1939",
        "binder-1973",
        "us-standard-1976",
        "iapws-sat",
        "iapws-ice",
        "nist-811",
        "epa-radon-2016",
        "osha-1910-147",
    ),
)
