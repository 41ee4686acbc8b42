"""Backwash of a filter bed: how far it lifts in the coldest water, and whether the well can."""

from dataclasses import replace
from math import inf, pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.fields import (
    BED,
    INVENTED,
    bed_fields,
    treatment_fields,
    water_fields,
    well_pump_fields,
    well_tank_fields,
)
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.granular_bed import (
    MEDIA,
    Lifting,
    Medium,
    bed_area,
    lifting,
    lifting_velocity,
    pressure_loss,
)
from calc.physics.radon_solubility import ICE_POINT
from calc.units import (
    area,
    duration,
    flow,
    gal,
    gauge_pressure,
    inch,
    length,
    loading,
    number,
    share,
    velocity,
    volume,
)

WELL = "Well side"
WARM = 20 + ICE_POINT  # K, for comparing: a bed set in summer
POINTS, TOP = 24, 1.0  # of a chart; the expansion at which its lines end


class _Supply(NamedTuple):
    """What the well side gives: flow of pump 1, drawdown of its tank, what the well makes, and
    what stands in it above the pump."""

    pump: float
    drawdown: float
    makes: float
    stored: float

    def tank_lasts(self, flow: float) -> float | None:
        """s until the pressure tank is empty and the flow falls to the pump's; None: for good."""
        return self.drawdown / (flow - self.pump) if flow > self.pump else None

    def well_lasts(self, flow: float) -> float | None:
        """s until the pump draws air; None: it never does."""
        taken = min(flow, self.pump)
        return self.stored / (taken - self.makes) if taken > self.makes else None


class _Lift(NamedTuple):
    """The bed in the coldest water and in warm: flows that lift it, m³/s, and shares by which it
    grows at the planned flow; `room` is the share that it may grow by."""

    cold: Lifting
    warm: Lifting
    rate: float
    grown: float
    floats: float
    wanted: float
    room: float


def backwash(
    media: str,
    grain_size: float,
    tank_diameter: float,
    bed_depth: float,
    freeboard: float,
    service_flow: float,
    deposit: float,
    water_coldest: float,
    expansion_wanted: float,
    backwash_flow: float,
    backwash_time: float,
    well_pump: float,
    well_drawdown: float,
    well_yield: float,
    well_stored: float,
) -> Answer:
    """How far a backwash lifts the bed, and whether the well side can feed it."""
    medium = MEDIA[media]
    surface = bed_area(tank_diameter)
    cold, warm = (lifting(grain_size, medium, kelvin) for kelvin in (water_coldest, WARM))
    rate = backwash_flow / surface
    lift = _Lift(
        cold,
        warm,
        rate,
        cold.expansion(rate),
        lifting_velocity(grain_size, medium, water_coldest) * surface,
        cold.velocity(expansion_wanted) * surface,
        freeboard / bed_depth,
    )
    supply = _Supply(well_pump, well_drawdown, well_yield, well_stored)
    tank_lasts, well_lasts = supply.tank_lasts(backwash_flow), supply.well_lasts(backwash_flow)
    warm_grown = warm.expansion(rate)

    def loss(porosity: float) -> float:
        bed = medium._replace(porosity=porosity)
        return pressure_loss(service_flow / surface, bed_depth, grain_size, bed, water_coldest)

    return Answer(
        outputs={
            "wash_wanted": lift.wanted,
            "wash_rate": rate,
            "expansion_cold": None if lift.grown == inf else lift.grown,
            "expansion_warm": None if warm_grown == inf else warm_grown,
            "floats_at": lift.floats,
            "wash_most": cold.velocity(lift.room) * surface,
            "tank_lasts": tank_lasts,
            "well_lasts": well_lasts,
            "wash_water": backwash_flow * backwash_time,
            "loss_clean": loss(medium.porosity),
            "loss_fouled": loss(medium.porosity - deposit),
        },
        findings=(
            _supply_finding(tank_lasts, well_lasts, backwash_time),
            _bed_finding(lift, backwash_flow),
            *_inlet_finding(well_pump, backwash_flow, service_flow),
        ),
        steps=_steps(lift, surface, tank_lasts, well_lasts, medium),
        charts=(_chart(lift),),
    )


def _supply_finding(tank: float | None, well: float | None, time: float) -> Finding:
    if well is not None and well < time:
        return Finding(
            "danger",
            "The well runs out.",
            "After {well_lasts} pump 1 draws air, {backwash_time} are planned. A smaller tank, a "
            "wash from storage through pump 2, or media that need less.",
        )
    if tank is not None and tank < time:
        return Finding(
            "caution",
            "The pump cannot keep up.",
            "After {tank_lasts} the pressure tank is empty and the flow falls to {well_pump}. What "
            "comes after that lifts less than it should.",
        )
    return Finding(
        "good",
        "The well side can.",
        "Pump and well hold {backwash_flow} for {backwash_time}, {wash_water} in all.",
    )


def _bed_finding(lift: _Lift, flow: float) -> Finding:
    if lift.grown > lift.room:
        return Finding(
            "danger",
            "Washes the bed away.",
            "In the coldest water the bed fills the free height at {wash_most}, and at "
            "{backwash_flow} grains leave through the drain.",
        )
    if flow < lift.floats:
        return Finding(
            "caution",
            "Does not lift the bed.",
            "Even round grains of {grain_size} float only from {floats_at} up. Less rinses the top "
            "and turns the fines.",
        )
    if not lift.grown:
        return Finding(
            "caution",
            "Hardly lifts the bed.",
            "Round grains of {grain_size} would float from {floats_at} up, but by the law of "
            "growth this bed still lies at {backwash_flow}. {wash_wanted} would lift it by "
            "{expansion_wanted}. Stone that dissolves gets by with less, until iron or clay "
            "cements it.",
        )
    if flow < lift.wanted:
        return Finding(
            "caution",
            "Lifts less than wanted.",
            "The bed grows by {expansion_cold}; {expansion_wanted} would take {wash_wanted}.",
        )
    return Finding(
        "good",
        "Lifts the bed.",
        "In the coldest water it grows by {expansion_cold}, in water of 68 °F by {expansion_warm}.",
    )


def _inlet_finding(pump: float, wash: float, service: float) -> list[Finding]:
    """A filter that washes leaves the open tank what the pump has over, and often nothing."""
    left = max(pump - wash, 0.0)
    if left >= service:
        return []
    return [
        Finding(
            "caution",
            "The open tank goes short.",
            "While it washes, pump 1 has {left} left for the open tank's inlet, if the valve lets "
            "any pass. Wash at night, with a full tank.",
            {"left": Quantity(left, flow, 2)},
        )
    ]


def _steps(
    lift: _Lift, surface: float, tank: float | None, well: float | None, medium: Medium
) -> tuple[Step, ...]:
    cold, wanted = lift.cold, lift.wanted / surface

    def open_at(upward: float) -> float:
        return float((upward / cold.fall) ** (1 / cold.exponent))

    given = {
        "pi": Quantity(pi, number, 5, "a circle's circumference over its diameter"),
        "A_f": Quantity(surface, area),
        "v_t": Quantity(cold.fall, velocity, 4, "fall of one grain in the coldest water"),
        "n": Quantity(cold.exponent, number, 4, "how grains hinder each other"),
        "e_0": Quantity(medium.porosity, number, 3, "water in the settled bed, as a share"),
        "e_w": Quantity(open_at(wanted), number, 4),
        "e_b": Quantity(open_at(lift.rate), number, 4),
    }
    steps = [
        Step("Area of the tank", "A_f = pi * D_f**2 / 4", given),
        Step("Water in the bed that has grown as wanted", "e_w = 1 - (1 - e_0) / (1 + E_w)", given),
        Step("Flow that lifts it so far", "Q_w = A_f * v_t * e_w**n", given),
        Step("Flow for each area", "v = Q_b / A_f", given),
    ]
    if lift.grown < inf:
        steps += [
            Step("Water in the bed at the planned flow", "e_b = (v / v_t)**(1 / n)", given),
            Step("Growth at the planned flow", "E_c = max((1 - e_0) / (1 - e_b) - 1, 0)", given),
        ]
    if tank is not None:
        steps.append(Step("The pressure tank lasts", "t_t = dV_1 / (Q_b - Q_1)", given))
    if well is not None:
        steps.append(
            Step("What stands in the well lasts", "t_w = V_w / (min(Q_b, Q_1) - Q_y)", given)
        )
    steps.append(Step("Water for one wash", "V_b = Q_b * t_b", given))
    return tuple(steps)


def _chart(lift: _Lift) -> Chart:
    def line(label: str, bed: Lifting) -> Line:
        grown = [TOP * i / POINTS for i in range(POINTS + 1)]
        return Line(label, tuple((bed.velocity(each), each) for each in grown))

    marks = [] if lift.grown > TOP else [Mark("planned", lift.rate, lift.grown, here=True)]
    return Chart(
        title="Growth of the bed against the flow",
        says="Cold water lifts further than warm at the same flow. A wash set in summer throws "
        "media out in winter; one set in winter lifts too little in summer.",
        x=Axis("Flow over the area of the tank", loading),
        y=Axis("Growth of the bed", share),
        lines=(line("coldest water", lift.cold), line("water of 68 °F (20 °C)", lift.warm)),
        limits=(Limit("free height", lift.room),) if lift.room <= TOP else (),
        marks=tuple(marks),
    )


CALCULATOR = Calculator(
    name="backwash",
    title="Backwash",
    question="Does the backwash lift the bed in the coldest water, and can the well feed it?",
    inputs=(
        Choice(
            name="media",
            label="What the bed is made of",
            options={
                "calcite": "calcite, or a blend of it",
                "sand": "filter sand",
                "greensand": "manganese greensand",
                "carbon": "granular carbon",
                "resin": "softening resin",
            },
            default="calcite",
            origin=INVENTED,
            measure="From the bag or the label of the tank.",
            group=BED,
        ),
        bed_fields.grain_size,
        bed_fields.tank_diameter,
        bed_fields.bed_depth,
        Input(
            name="freeboard",
            label="Free height over the bed",
            symbol="h_f",
            kind=length,
            default="18 in",
            origin="common practice, no source: at least half of the bed's depth",
            low=0.5 * inch,
            high=96 * inch,
            us="in",
            si="cm",
            measure="From the top of the bed up to the screen or the top of the tank. Grows as "
            "calcite dissolves.",
            group=BED,
            sure="1 in",
        ),
        bed_fields.service_flow,
        Input(
            name="deposit",
            label="Dirt in the bed, as a share of its space",
            symbol="s_d",
            kind=share,
            default="7 %",
            origin="for comparing: takes porosity from 0.45 to 0.38",
            low=0,
            high=0.15,
            measure="Not measured: find the one that gives the loss on your two gauges.",
            group=BED,
        ),
        replace(water_fields.water_coldest, group=treatment_fields.WASH),
        Input(
            name="expansion_wanted",
            label="Growth of the bed wanted",
            symbol="E_w",
            kind=share,
            default="10 %",
            origin="common practice, no source: calcite 10 %, sand 20 %, greensand 30 %, "
            "resin 50 %",
            low=0.01,
            high=1,
            measure="From the data sheet of the media.",
            group=treatment_fields.WASH,
        ),
        treatment_fields.backwash_flow,
        treatment_fields.backwash_time,
        well_pump_fields.well_pump,
        well_tank_fields.well_drawdown,
        replace(well_pump_fields.well_yield, group=WELL),
        Input(
            name="well_stored",
            label="Water that stands in the well above the pump",
            symbol="V_w",
            kind=volume,
            default="140 gal",
            origin="invented example: 95 ft of water in a 6 in casing, 1.47 gal a foot",
            low=0,
            high=5000 * gal,
            measure="Depth of the pump less the depth of the water, times gallons a foot.",
            group=WELL,
            sure="10 %",
        ),
    ),
    outputs=(
        Output(
            name="wash_wanted",
            label="Flow that lifts the bed as wanted, coldest water",
            symbol="Q_w",
            kind=flow,
        ),
        Output(name="wash_rate", label="Planned flow for each area", symbol="v", kind=loading),
        Output(
            name="expansion_cold",
            label="Growth at the planned flow, coldest water",
            symbol="E_c",
            kind=share,
            none="carried off",
        ),
        Output(
            name="expansion_warm",
            label="Growth at the planned flow, water of 68 °F (20 °C)",
            kind=share,
            none="carried off",
        ),
        Output(name="floats_at", label="Flow at which grains of that size float", kind=flow),
        Output(name="wash_most", label="Flow that fills the free height", kind=flow),
        Output(
            name="tank_lasts",
            label="The pressure tank lasts",
            symbol="t_t",
            kind=duration,
            none="for good: pump 1 keeps up",
        ),
        Output(
            name="well_lasts",
            label="What stands in the well lasts",
            symbol="t_w",
            kind=duration,
            none="for good: the well makes as much",
        ),
        Output(name="wash_water", label="Water for one wash", symbol="V_b", kind=volume),
        Output(
            name="loss_clean",
            label="Pressure the bed takes at the largest flow, clean",
            kind=gauge_pressure,
        ),
        Output(name="loss_fouled", label="The same with the dirt in it", kind=gauge_pressure),
    ),
    work=backwash,
    cautions=(
        cautions.BACKWASH_INLET,
        cautions.PRESSURE,
        "Drain line. It ends in an air gap, never in a pipe that can suck back, and its water "
        "counts for the septic tank.",
        cautions.LOCAL_CODE,
    ),
    sources=(
        "richardson-zaki-1954",
        "schiller-1933",
        "haider-1989",
        "wen-yu-1966",
        "ergun",
        "iapws-liquid",
    ),
)
