"""A filter that holds the rust: how wide, how often it is washed, and with how much water."""

from dataclasses import replace
from math import pi, sqrt
from typing import NamedTuple

from calc import cautions, fields
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.fields import BED, bed_fields, open_tank_fields, treatment_fields, well_pump_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.iron_removal import BEDS, COSTS, Bed, cost, run_time
from calc.units import (
    area,
    area_load,
    concentration,
    day,
    duration,
    flow,
    ft,
    inch,
    lb,
    length,
    loading,
    mass,
    number,
    share,
    volume,
)

WEEK = 7 * day  # washed at least once a week: common practice, no source
OFTEN = 1 * day
GREEDY = 0.2  # share of the water that washing may take before it is worth a word, no source
TANKS = (6, 24)  # inches, on the chart
POINTS = 36


class _Filter(NamedTuple):
    """The filter and its work, SI.

    solids       -- dry, in the water, kg/m³
    service, wash -- flow for each area
    run, every   -- until the bed is full; from wash to wash
    washed_away  -- water for washing over the water used
    """

    bed: Bed
    area: float
    solids: float
    service: float
    wash: float
    least_wash: float
    run: float
    every: float
    washed_away: float


def iron_filter(
    raw_iron: float,
    manganese: float,
    oxidant: str,
    rust_ph: float,
    iron_media: str,
    tank_diameter: float,
    service_flow: float,
    daily_use: float,
    solids_load: float,
    backwash_flow: float,
    backwash_time: float,
    well_pump: float,
) -> Answer:
    """Width of the tank, days between washes, and whether there is water to wash it."""
    taken = cost(oxidant, raw_iron, manganese)
    bed = BEDS[iron_media]
    surface = pi * tank_diameter**2 / 4
    run = run_time(surface, solids_load, taken.solids, daily_use)
    every = min(run, WEEK)
    water = backwash_flow * backwash_time
    made = _Filter(
        bed,
        surface,
        taken.solids,
        service_flow / surface,
        backwash_flow / surface,
        bed.wash[0] * surface,
        run,
        every,
        water / every / daily_use,
    )
    return Answer(
        outputs={
            "service_rate": made.service,
            "diameter_wanted": sqrt(4 * service_flow / bed.service / pi),
            "wash_rate": made.wash,
            "wash_least": made.least_wash,
            "wash_most": bed.wash[1] * surface,
            "solids_day": taken.solids * daily_use * day,
            "run": run,
            "wash_every": every,
            "wash_water": water,
            "wash_share": made.washed_away,
            "oxidant_day": taken.oxidant * daily_use * day,
        },
        findings=(
            _headline(made),
            *_supply(made, backwash_flow, well_pump),
            *_more(made, rust_ph, raw_iron + manganese, oxidant, iron_media),
        ),
        steps=_steps(made, oxidant),
        charts=(_chart(made, tank_diameter, service_flow, backwash_flow),),
    )


def _headline(made: _Filter) -> Finding:
    given = {"most": Quantity(made.bed.service, loading, 2)}
    if made.wash < made.bed.wash[0]:
        return Finding(
            "danger",
            "It will not come clean.",
            "Such a bed takes {wash_least} to wash in a tank of {tank_diameter}, and gets "
            "{backwash_flow}. Rust stays, packs, and the bed channels or bleeds. A narrower tank, "
            "two in turn, or a wash from storage through pump 2.",
        )
    if made.service > made.bed.service:
        return Finding(
            "caution",
            "Narrow for the flow.",
            "{service_rate} at the largest flow; such a bed holds rust up to {most}. That would "
            "take {diameter_wanted} across, two tanks side by side washed one after the other, or "
            "a smaller flow.",
            given,
        )
    return Finding(
        "good",
        "The size fits.",
        "{service_rate} at the largest flow, {most} at most. Wash it every {wash_every}.",
        given,
    )


def _supply(made: _Filter, wash: float, pump: float) -> list[Finding]:
    if wash <= pump:
        return []
    return [
        Finding(
            "caution",
            "More than pump 1 gives.",
            "Pump 1 gives {well_pump}. The pressure tank carries the rest for a minute or so, then "
            "the flow falls: the page on backwash counts it.",
        )
    ]


def _more(made: _Filter, ph: float, metals: float, oxidant: str, media: str) -> list[Finding]:
    found = []
    if made.wash > made.bed.wash[1]:
        found.append(
            Finding(
                "caution",
                "Harder than it needs.",
                "Over {wash_most} such a bed may lose grains, most of all in cold water.",
            )
        )
    if ph < made.bed.least_ph:
        found.append(
            Finding(
                "caution",
                "Too acid for it.",
                "Such a bed wants a pH of {ph} at least. Raise the pH before it.",
                {"ph": Quantity(made.bed.least_ph, number, 2)},
            )
        )
    if metals > made.bed.most_iron:
        found.append(
            Finding(
                "caution",
                "Much iron for a bed.",
                "Over 10 mg/L of iron and manganese let most of the rust settle in a tank first.",
            )
        )
    if media == "greensand" and oxidant == "air":
        found.append(
            Finding(
                "caution",
                "Air does not renew it.",
                "Greensand lives on bleach fed all the time, or on soaks in permanganate.",
            )
        )
    if media == "sand" and oxidant == "air":
        found.append(
            Finding(
                "caution",
                "Sand holds, it does not help.",
                "All the iron must be rust before it. See the page on contact time; manganese "
                "passes.",
            )
        )
    if made.run < OFTEN:
        found.append(
            Finding(
                "caution",
                "Full within a day.",
                "It holds {run} of use. A wider tank, or settle the rust first.",
            )
        )
    if made.washed_away > GREEDY:
        found.append(
            Finding(
                "caution",
                "Thirsty.",
                "{wash_share} of the water used goes into washing it. The well and the septic tank "
                "or the ditch must take that.",
            )
        )
    return found


def _steps(made: _Filter, oxidant: str) -> tuple[Step, ...]:
    iron, manganese = COSTS[oxidant]
    given = {
        "pi": Quantity(pi, number, 5, "a circle's circumference over its diameter"),
        "d_i": Quantity(iron.oxidant, number, 4, "oxidant for each part of iron"),
        "d_m": Quantity(manganese.oxidant, number, 4, "oxidant for each part of manganese"),
        "z_i": Quantity(iron.solids, number, 4, "solids from each part of iron"),
        "z_m": Quantity(manganese.solids, number, 4, "solids from each part of manganese"),
        "A_f": Quantity(made.area, area),
        "v_m": Quantity(made.bed.service, loading, 3, "most in service for this bed"),
        "v_1": Quantity(made.bed.wash[0], loading, 3, "least wash for this bed"),
        "v_2": Quantity(made.bed.wash[1], loading, 3, "most wash for this bed"),
        "S": Quantity(made.solids, concentration, 4),
        "d": Quantity(day, duration, 4, "a day"),
        "w": Quantity(WEEK, duration, 4, "a week, the longest without a wash"),
    }
    return (
        Step("Dry solids made", "S = z_i * F + z_m * C_Mn", given),
        Step("Area of the tank", "A_f = pi * D_f**2 / 4", given),
        Step("Flow for each area, in service", "v = Q_f / A_f", given),
        Step("Tank that the largest flow wants", "D_n = sqrt(4 * Q_f / (pi * v_m))", given),
        Step("Flow for each area, washing", "v_b = Q_b / A_f", given),
        Step("Least flow of the wash", "Q_1w = v_1 * A_f", given),
        Step("Most flow of the wash", "Q_2w = v_2 * A_f", given),
        Step("Dry solids in a day", "M_d = S * Q_u * d", given),
        Step("The bed is full after", "t_r = A_f * m_s / (S * Q_u)", given),
        Step("Wash it every", "t_e = min(t_r, w)", given),
        Step("Water for one wash", "V_b = Q_b * t_b", given),
        Step("That over the water used", "x_b = V_b / (Q_u * t_e)", given),
        Step("Oxidant in a day", "M_o = (d_i * F + d_m * C_Mn) * Q_u * d", given),
    )


def _chart(made: _Filter, diameter: float, service: float, wash: float) -> Chart:
    first, last = TANKS
    widths = [inch * (first + (last - first) * n / POINTS) for n in range(POINTS + 1)]

    def line(label: str, rate: float) -> Line:
        return Line(label, tuple((each, rate * pi * each**2 / 4) for each in widths))

    return Chart(
        title="What a tank takes to wash, and what it passes in service",
        says="Both grow with the square of the width: a tank wide enough for the house may be too "
        "wide for the well to wash.",
        x=Axis("Inside diameter of the filter tank", bed_fields.tank_diameter),
        y=Axis("Flow", flow),
        lines=(
            line("least to wash", made.bed.wash[0]),
            line("most in service", made.bed.service),
        ),
        limits=(Limit("backwash there is", wash), Limit("largest flow", service)),
        marks=(Mark("this tank", diameter, made.least_wash, here=True),),
    )


CALCULATOR = Calculator(
    name="iron_filter",
    title="Filter for iron",
    question="How wide must the filter be, how often is it washed, and is there water to wash it?",
    inputs=(
        treatment_fields.raw_iron,
        treatment_fields.manganese,
        replace(treatment_fields.oxidant, default="bleach"),
        treatment_fields.rust_ph,
        Choice(
            name="iron_media",
            label="What the bed for the rust is made of",
            options={
                "greensand": "manganese greensand, with bleach or permanganate",
                "coated": "other grains with a manganese coat (catalytic)",
                "sand": "sand and anthracite, behind a contact tank",
            },
            default="greensand",
            origin=fields.INVENTED,
            measure="From the bag or the label of the tank.",
            group=BED,
        ),
        bed_fields.tank_diameter,
        bed_fields.service_flow,
        replace(open_tank_fields.daily_use, group=BED),
        Input(
            name="solids_load",
            label="Dry rust that the bed holds for each area",
            symbol="m_s",
            kind=area_load,
            default="0.5 lb/ft²",
            origin="common practice, no source: under 0.5 on a fine surface, 0.5 to 1 in two media",
            low=0.05 * lb / ft**2,
            high=3 * lb / ft**2,
            measure="Not measured: find the one that gives the days until your two gauges part, or "
            "until iron shows behind the bed.",
            group=BED,
            sure="50 %",
        ),
        treatment_fields.backwash_flow,
        treatment_fields.backwash_time,
        well_pump_fields.well_pump,
    ),
    outputs=(
        Output(name="service_rate", label="Flow for each area", symbol="v", kind=loading),
        Output(
            name="diameter_wanted",
            label="Inside diameter that the largest flow wants",
            symbol="D_n",
            kind=length,
            us="in",
            si="cm",
        ),
        Output(name="wash_rate", label="Backwash for each area", symbol="v_b", kind=loading),
        Output(name="wash_least", label="Least backwash for this tank", symbol="Q_1w", kind=flow),
        Output(name="wash_most", label="Most backwash for this tank", symbol="Q_2w", kind=flow),
        Output(
            name="solids_day", label="Dry rust in a day", symbol="M_d", kind=mass, us="g", si="g"
        ),
        Output(
            name="run",
            label="The bed is full after",
            symbol="t_r",
            kind=duration,
            us="days",
            si="days",
            digits=2,
        ),
        Output(
            name="wash_every",
            label="Wash it every",
            symbol="t_e",
            kind=duration,
            us="days",
            si="days",
            digits=2,
        ),
        Output(name="wash_water", label="Water for one wash", symbol="V_b", kind=volume),
        Output(
            name="wash_share",
            label="Water for washing, over the water used",
            symbol="x_b",
            kind=share,
            digits=2,
        ),
        Output(
            name="oxidant_day",
            label="Oxygen, chlorine or permanganate in a day",
            symbol="M_o",
            kind=mass,
            us="g",
            si="g",
        ),
    ),
    work=iron_filter,
    cautions=(
        cautions.BACKWASH_INLET,
        cautions.PRESSURE,
        cautions.CHLORINE,
        "Drain. Its line ends in an air gap, and its water counts for the septic tank. Purple "
        "water from a bed soaked in permanganate does not belong in one.",
        cautions.LOCAL_CODE,
    ),
    sources=("wtpd-iron", "wi-nr-811-52", "ten-states", "ufc-3-280-04", "cdc-drilled"),
)
