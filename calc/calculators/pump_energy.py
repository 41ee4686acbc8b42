"""What pumping costs: power, energy and money, for one pump or for two through an open tank."""

from dataclasses import replace

from calc import cautions
from calc.charts import Bar, Bars
from calc.fields import INVENTED, open_tank_fields, well_pump_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.pump_system import pumping_energy, water_power
from calc.physics.water import density
from calc.units import (
    GRAVITY,
    day,
    duration,
    energy,
    ft,
    gal,
    hour,
    length,
    number,
    power,
    pressure_gradient,
    share,
    volume,
)

FIRST = "Well pump"
SECOND = "Pump 2, after an open tank"
MONEY = "Use and price"
KWH = 1e3 * hour  # J
BATCH = 1000 * gal
YEAR = 365 * day
POOR = 0.25  # wire to water; 0.3 to 0.4 is common practice, no source
RHO = density(283.15)  # 10 °C


def pump_energy(
    well_pump: float,
    pump_head: float,
    pump_efficiency: float,
    motor_efficiency: float,
    second_head: float,
    second_efficiency: float,
    daily_use: float,
    energy_price: float,
) -> Answer:
    """Power of the well pump, and what a thousand gallons and a year take."""
    water = water_power(well_pump, pump_head, RHO)
    shaft = water / pump_efficiency
    wire = shaft / motor_efficiency
    both = pump_efficiency * motor_efficiency
    first = pumping_energy(BATCH, pump_head, RHO, both)
    second = pumping_energy(BATCH, second_head, RHO, second_efficiency)
    price = energy_price / KWH
    year = (first + second) * daily_use * YEAR / BATCH
    return Answer(
        outputs={
            "cost_batch": (first + second) * price,
            "energy_batch": first + second,
            "energy_second": second,
            "wire_power": wire,
            "shaft_power": shaft,
            "water_power": water,
            "wire_to_water": both,
            "runs_a_day": daily_use * day / well_pump,
            "energy_year": year,
            "cost_year": year * price,
        },
        findings=_findings(both, second_head),
        steps=_steps(first, second, both),
        charts=(_chart(first, second, both, pump_efficiency, second_efficiency),),
    )


def _findings(both: float, second_head: float) -> tuple[Finding, ...]:
    said = [
        Finding(
            "good",
            "This is the bill.",
            "A thousand gallons take {energy_batch}, a year {energy_year} for {cost_year} in the "
            "coin of the price.",
        )
        if both >= POOR
        else Finding(
            "caution",
            "Poor for its kind.",
            "Only {wire_to_water} of the power becomes water lifted. A small submersible pump that "
            "runs where it was made for turns 30 to 40 % into it: common practice, no source. "
            "Measure flow, head and power before you believe it.",
        )
    ]
    if second_head > 0:
        said.append(
            Finding(
                "caution",
                "Pressure is spent twice.",
                "An open tank gives up what pressure the well pump made. Pump 2 makes it anew and "
                "takes {energy_second} for each thousand gallons. What the well pump makes over "
                "the head up to the spout is lost.",
            )
        )
    return tuple(said)


def _steps(first: float, second: float, both: float) -> tuple[Step, ...]:
    given = {
        "w": Quantity(RHO * GRAVITY, pressure_gradient, label="weight of water"),
        "V": Quantity(BATCH, volume, 4, "a thousand gallons"),
        "eta_w": Quantity(both, share),
        "E_1": Quantity(first, energy),
        "k": Quantity(KWH, energy, label="a kilowatt-hour"),
        "t": Quantity(YEAR, duration, label="a year"),
    }
    return (
        Step("Power that the water takes along", "P_w = w * Q_1 * H", given),
        Step("Power at the shaft", "P_s = P_w / eta_p", given),
        Step("Power from the wire", "P_e = P_s / eta_m", given),
        Step("Wire to water", "eta_w = eta_p * eta_m", given),
        Step("Well pump, a thousand gallons", "E_1 = w * V * H / eta_w", given),
        Step("Pump 2, a thousand gallons", "E_2 = w * V * H_2 / eta_2", given),
        Step("Both", "E_b = E_1 + E_2", given),
        Step("Cost of a thousand gallons", "C_b = c * E_b / k", given),
        Step("Electricity in a year", "E_y = E_b * Q_u * t / V", given),
        Step("Cost of a year", "C_y = c * E_y / k", given),
    )


def _chart(first: float, second: float, both: float, pump: float, two: float) -> Bars:
    motor = both / pump
    parts = (
        ("well pump: lifts water", first * both),
        ("well pump: lost in the pump", first * motor * (1 - pump)),
        ("well pump: lost in the motor", first * (1 - motor)),
        ("pump 2: lifts water", second * two),
        ("pump 2: lost", second * (1 - two)),
    )
    return Bars(
        title="Where the electricity of a thousand gallons goes",
        says="Most of it warms the pump and its motor.",
        like=_BATCH,
        bars=tuple(Bar(label, max(part, 0.0)) for label, part in parts),
    )


def _efficiency(
    name: str, label: str, symbol: str, default: str, measure: str, group: str
) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=share,
        default=default,
        origin="common practice, no source",
        low=0.02,
        high=1,
        measure=measure,
        group=group,
        sure="5 %",
    )


_BATCH = Output(
    name="energy_batch",
    label="Electricity for 1,000 gallons (3.785 m³)",
    symbol="E_b",
    kind=energy,
)
CALCULATOR = Calculator(
    name="pump_energy",
    title="What pumping costs",
    question="How much power does the pump take, and what does a thousand gallons cost?",
    inputs=(
        replace(well_pump_fields.well_pump, group=FIRST, sure="3 %"),
        Input(
            name="pump_head",
            label="Total head while it runs",
            symbol="H",
            kind=length,
            default="250 ft",
            origin=INVENTED,
            low=10 * ft,
            high=2000 * ft,
            us="ft",
            measure="From the page on total head: the mean of cut-in and cut-out, pumped down.",
            group=FIRST,
            sure="5 %",
        ),
        _efficiency(
            "pump_efficiency",
            "Efficiency of the pump",
            "eta_p",
            "50 %",
            "From its sheet, at that flow: 45 to 60 % in the middle of a small one's curve, far "
            "less near its ends.",
            FIRST,
        ),
        _efficiency(
            "motor_efficiency",
            "Efficiency of its motor",
            "eta_m",
            "65 %",
            "From its sheet: 55 to 70 % for a small single-phase motor.",
            FIRST,
        ),
        Input(
            name="second_head",
            label="Head that pump 2 makes; 0 without one",
            symbol="H_2",
            kind=length,
            default="95 ft",
            origin="invented: 40 psi at its gauge, and a few feet for pipe",
            low=0,
            high=500 * ft,
            us="ft",
            measure="Mean gauge at the house pressure tank, less the height of the water in the "
            "open tank above that gauge, with losses between.",
            group=SECOND,
            sure="5 %",
        ),
        _efficiency(
            "second_efficiency",
            "Its efficiency, wire to water",
            "eta_2",
            "30 %",
            "Pump and motor together. Jet pumps are far below that.",
            SECOND,
        ),
        replace(open_tank_fields.daily_use, group=MONEY),
        Input(
            name="energy_price",
            label="Price of a kilowatt-hour, in your coin",
            symbol="c",
            kind=number,
            default="0.15",
            origin=INVENTED,
            low=0.001,
            high=1000,
            measure="The bill over its kilowatt-hours, charges and all. Answers are in this coin.",
            group=MONEY,
        ),
    ),
    outputs=(
        Output(
            name="cost_batch", label="Cost of 1,000 gallons (3.785 m³)", symbol="C_b", kind=number
        ),
        _BATCH,
        Output(name="energy_second", label="Of it for pump 2", symbol="E_2", kind=energy),
        Output(
            name="wire_power",
            label="Power that the well pump draws",
            symbol="P_e",
            kind=power,
            us="kW",
        ),
        Output(name="shaft_power", label="Power at its shaft", symbol="P_s", kind=power),
        Output(
            name="water_power", label="Power that the water takes along", symbol="P_w", kind=power
        ),
        Output(name="wire_to_water", label="Wire to water", symbol="eta_w", kind=share),
        Output(name="runs_a_day", label="The well pump runs in a day", kind=duration),
        Output(name="energy_year", label="Electricity in a year", symbol="E_y", kind=energy),
        Output(name="cost_year", label="Cost of a year", symbol="C_y", kind=number),
    ),
    work=pump_energy,
    cautions=(cautions.ELECTRICITY, cautions.LOCAL_CODE),
    sources=("nist-811", "iapws-liquid", "osha-1910-147"),
)
