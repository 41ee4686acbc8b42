"""Water that a house takes in a day, garden and all, beside published minimums."""

from typing import NamedTuple

from calc import cautions
from calc.charts import Bar, Bars
from calc.fields import INVENTED
from calc.fields.household import people
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.daily_use import ONTARIO_EACH, ONTARIO_LEAST, bedroom_peak, watering
from calc.units import (
    L,
    area,
    day,
    duration,
    flow,
    ft,
    gal,
    gpm,
    hour,
    inch,
    length,
    number,
    volume,
)

WEEK = 7.0  # days
PEAK = 2 * hour  # all of a day's use within it [psu-needs]
NEW_YORK = 110 * gal  # a day and bedroom [nysdoh-fs2]
GARDEN = "Garden"
LARGE = 0.25  # share of the house's water from which another use is worth a word


class _Day(NamedTuple):
    """Water of one day, m³."""

    house: float
    watering: float
    other: float
    garden: float

    @property
    def biggest(self) -> float:
        """On a day on which the garden is watered."""
        return self.house + self.other + self.watering


def daily_demand(
    people: float,
    person_day: float,
    bedrooms: float,
    other_day: float,
    garden_area: float,
    garden_depth: float,
    garden_days: float,
) -> Answer:
    """A usual day, the biggest day, and what published rules ask for a house like it."""
    water = _Day(
        house=people * person_day,
        watering=watering(garden_area, garden_depth, garden_days),
        other=other_day,
        garden=watering(garden_area, garden_depth, WEEK),
    )
    outputs = {
        "daily": (water.house + water.other + water.garden) / day,
        "house_day": water.house,
        "watering_day": water.watering,
        "biggest_day": water.biggest,
        "steady": water.biggest / day,
        "two_hours": (water.house + water.other) / PEAK,
        "new_york_day": NEW_YORK * bedrooms,
        "ontario_flow": bedroom_peak(bedrooms),
    }
    return Answer(
        outputs=outputs,
        findings=_findings(water),
        steps=_steps(water),
        charts=(_rules(outputs["two_hours"], outputs["ontario_flow"]),),
    )


def _findings(water: _Day) -> tuple[Finding, ...]:
    findings = [
        Finding(
            "good",
            "A day's water.",
            "In the season of watering the house takes {daily} on the average and {biggest_day} on "
            "a day of watering. A well that gives {steady} day and night, into storage, covers "
            "that; the morning is another question.",
        ),
        Finding(
            "caution",
            "Examples, not your rule.",
            "The published minimums below are from other places and years. What your building "
            "department, lender or health department asks is what counts.",
        ),
    ]
    if water.watering > water.house:
        findings.append(
            Finding(
                "caution",
                "The garden takes more than the house.",
                "A day of watering takes {watering_day}, the people {house_day}. Water at night, "
                "in turns, or from something else than the well.",
            )
        )
    if water.other > LARGE * max(water.house, 1 * gal):
        findings.append(
            Finding(
                "caution",
                "Something runs.",
                "{other_day} a day go elsewhere. If that is a leak, mend it before you size "
                "anything: half a gallon a minute is 720 gallons a day.",
            )
        )
    return tuple(findings)


def _steps(water: _Day) -> tuple[Step, ...]:
    given = {
        "V_g": Quantity(water.garden, volume),
        "n_w": Quantity(WEEK, number, label="days in a week"),
        "t_d": Quantity(day, duration, 4, "a day"),
        "t_p": Quantity(PEAK, duration, label="peak time of the rule of thumb"),
        "v_n": Quantity(NEW_YORK, volume, label="New York's figure for each bedroom"),
        "q_n": Quantity(ONTARIO_EACH, flow, label="Ontario's figure for each person"),
        "q_l": Quantity(ONTARIO_LEAST, flow, label="Ontario's least"),
    }
    return (
        Step("People", "V_h = n_p * v_p", given),
        Step("Garden, on a day of watering", "V_w = A_g * h_g / n_g", given),
        Step("Garden, mean of the week", "V_g = A_g * h_g / n_w", given),
        Step("Mean day in the season", "Q_d = (V_h + V_g + V_x) / t_d", given),
        Step("Biggest day", "V_b = V_h + V_x + V_w", given),
        Step("The biggest day, spread over all of it", "Q_s = V_b / t_d", given),
        Step("A day's use of the house in two hours", "Q_2 = (V_h + V_x) / t_p", given),
        Step("New York: a day's use by bedrooms", "V_n = v_n * n_b", given),
        Step("Ontario: peak by bedrooms", "Q_o = max(q_n * (n_b + 1), q_l)", given),
    )


def _rules(two_hours: float, ontario: float) -> Bars:
    """Published minimums as the flow that each asks for, the place and date in words."""
    return Bars(
        title="Published minimums, as examples",
        says="The flow that each asks for, and for how long. Local rules decide.",
        like=flow,
        bars=(
            Bar("New York fact sheet", 5 * gpm, "Health department, read 2026: meets most peaks"),
            Bar("New York subdivisions", 5 * gpm, "6 NYCRR 653.5, 2025: average yield of a well"),
            Bar("US lender, existing house", 3 * gpm, "HUD, read 2026, shared wells: 4 h, 720 gal"),
            Bar("US lender, new house", 5 * gpm, "HUD, read 2026, shared wells: 4 h, 1,200 gal"),
            Bar("New Hampshire", 5 * gpm, "Water Well Board, advice, read 2026: 2 h, 600 gal"),
            Bar("Ontario", ontario, "Guideline D-5-5 of 1996, from memory: 2 h, by bedrooms"),
            Bar("Nova Scotia, quoted", 1200 * L / PEAK, "Groundwater Project 2022: 1,200 L in 2 h"),
            Bar("Pennsylvania extension", two_hours, "2022, advice: this house's day within 2 h"),
        ),
    )


CALCULATOR = Calculator(
    name="daily_demand",
    title="Daily demand",
    question="How much water does this house take in a day?",
    inputs=(
        people,
        Input(
            name="person_day",
            label="Water for each person and day, indoors",
            symbol="v_p",
            kind=volume,
            default="60 gal",
            origin="58.6 gal in metered houses (DeOreo 2016), from memory; rounded",
            low=5 * gal,
            high=300 * gal,
            measure="Meter over a month without watering, over the days and the people. Planning "
            "figures run from 50 to 100 gal.",
            group=people.group,
            sure="20 %",
        ),
        Input(
            name="bedrooms",
            label="Bedrooms",
            symbol="n_b",
            kind=number,
            default="3",
            origin=INVENTED,
            low=1,
            high=12,
            measure="Rules count bedrooms because people come and go.",
            group=people.group,
        ),
        Input(
            name="other_day",
            label="Other water in a day: softener, backwash, animals, leaks",
            symbol="V_x",
            kind=volume,
            default="10 gal",
            origin="invented example: a backwash of 70 gal each week",
            low=0,
            high=5000 * gal,
            measure="Gallons of each regeneration or backwash, over the days between. For leaks: "
            "meter at bedtime and at dawn, nothing used.",
            group=people.group,
            sure="20 %",
        ),
        Input(
            name="garden_area",
            label="Area that is watered",
            symbol="A_g",
            kind=area,
            default="500 ft²",
            origin=INVENTED,
            low=0,
            high=200_000 * ft**2,
            measure="Length times width, of what gets water from this well.",
            group=GARDEN,
            sure="10 %",
        ),
        Input(
            name="garden_depth",
            label="Water it gets in a week",
            symbol="h_g",
            kind=length,
            us="in",
            si="mm",
            default="1 in",
            origin="common practice, no source: an inch a week in the dry season",
            low=0,
            high=4 * inch,
            measure="Straight-sided cans on the ground while the sprinkler runs. Subtract rain.",
            group=GARDEN,
            sure="20 %",
        ),
        Input(
            name="garden_days",
            label="Days of the week on which it is watered",
            symbol="n_g",
            kind=number,
            default="3",
            origin="common practice, no source",
            low=1,
            high=7,
            measure="Ask, or read the timer.",
            group=GARDEN,
        ),
    ),
    outputs=(
        Output(
            name="daily",
            label="Mean use in the season of watering",
            symbol="Q_d",
            kind=flow,
            us="gal/day",
            si="L/day",
        ),
        Output(name="house_day", label="People, in a day", symbol="V_h", kind=volume),
        Output(
            name="watering_day", label="Garden, on a day of watering", symbol="V_w", kind=volume
        ),
        Output(name="biggest_day", label="Biggest day", symbol="V_b", kind=volume),
        Output(
            name="steady",
            label="Steady flow that brings the biggest day",
            symbol="Q_s",
            kind=flow,
        ),
        Output(
            name="two_hours",
            label="Flow that brings the house's day in two hours",
            symbol="Q_2",
            kind=flow,
        ),
        Output(
            name="new_york_day",
            label="Day's use by New York's fact sheet",
            symbol="V_n",
            kind=volume,
        ),
        Output(
            name="ontario_flow",
            label="Peak by Ontario's guideline of 1996",
            symbol="Q_o",
            kind=flow,
        ),
    ),
    work=daily_demand,
    leaves={"daily": ("daily_use",)},
    cautions=(cautions.BACKFLOW, cautions.LOCAL_CODE),
    sources=(
        "deoreo-2016",
        "psu-needs",
        "nysdoh-fs2",
        "nycrr-653-5",
        "hud-shared-well",
        "nh-water-well-board",
        "on-d-5-5",
        "gwp-box-1",
    ),
)
