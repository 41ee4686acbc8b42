"""Chlorine times time: what a contact tank is worth against germs, and the bleach it takes."""

from collections.abc import Iterator
from dataclasses import replace

from calc import cautions
from calc.charts import Bar, Bars
from calc.fields import INVENTED, MG_L, treatment_fields, water_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.feed import feed_flow
from calc.physics.germs import (
    BAFFLING,
    GIARDIA_LOGS,
    GIARDIA_MARGIN,
    VIRUS_LOGS,
    giardia_ct,
    virus_ct,
)
from calc.physics.germs import contact_time as time_of
from calc.physics.radon_solubility import ICE_POINT
from calc.units import concentration, contact, duration, flow, number, volume

MOST_CHLORINE = 4 * MG_L  # [cfr-141-65]
COLDEST = ICE_POINT + 5  # the regression for Giardia starts here
CHLORINE = "Chlorine"


def contact_time(
    contact_volume: float,
    baffling: str,
    contact_flow: float,
    residual: float,
    contact_ph: float,
    demand: float,
    bleach_strength: float,
    water_temperature: float,
) -> Answer:
    """Contact time, chlorine times time, what that counts for, and the bleach to feed."""
    factor = BAFFLING[baffling]
    time = time_of(contact_volume, contact_flow, factor)
    reached = residual * time
    virus = virus_ct(water_temperature)
    giardia = None
    if water_temperature >= COLDEST:
        giardia = GIARDIA_MARGIN * giardia_ct(contact_ph, residual, water_temperature)
    volume_needed = virus / residual * contact_flow / factor if factor else None
    dose = demand + residual
    return Answer(
        outputs={
            "contact_minutes": time,
            "ct": reached,
            "virus_needed": virus,
            "virus_credit": min(VIRUS_LOGS * reached / virus, VIRUS_LOGS),
            "volume_needed": volume_needed,
            "giardia_needed": giardia,
            "giardia_credit": giardia and min(GIARDIA_LOGS * reached / giardia, GIARDIA_LOGS),
            "chlorine_dose": dose,
            "bleach": feed_flow(contact_flow, dose, bleach_strength),
        },
        findings=(
            _headline(factor, reached, virus),
            *_others(reached, giardia, residual, dose),
            Finding(
                "caution",
                "Not for Cryptosporidium.",
                "Chlorine does next to nothing to it. Where surface water comes in, that takes a "
                "fine filter and ultraviolet light, planned by a professional.",
            ),
        ),
        steps=_steps(factor, virus, giardia, reached),
        charts=(_chart(reached, virus, giardia),),
    )


def _headline(factor: float, reached: float, virus: float) -> Finding:
    if not factor:
        return Finding(
            "danger",
            "No contact at all.",
            "Water goes in and out of a bladder tank by one port: what comes first may have gone "
            "in last. It counts for nothing.",
        )
    if reached < virus:
        return Finding(
            "danger",
            "Too short.",
            "{ct} is there, and 4 log of viruses take {virus_needed}. With this tank and chlorine "
            "the volume must be {volume_needed}; or a better baffled tank, or a lower flow.",
        )
    return Finding(
        "good",
        "Long enough for viruses and bacteria.",
        "{ct}, and 4 log of viruses take {virus_needed}. Read the chlorine behind the tank at the "
        "largest flow, each week, and write it down.",
    )


def _others(
    reached: float, giardia: float | None, residual: float, dose: float
) -> Iterator[Finding]:
    if giardia is None:
        yield Finding(
            "caution",
            "Colder than the regression.",
            "There is no figure for Giardia here under 41 °F. Ask the health department for the "
            "table.",
        )
    elif reached < giardia:
        yield Finding(
            "caution",
            "Not enough for Giardia.",
            "3 log take {giardia_needed}: a deep sound well has none, a spring or a shallow well "
            "under the influence of surface water may. The health department decides which yours "
            "is.",
        )
    if residual > MOST_CHLORINE:
        yield Finding(
            "caution",
            "More chlorine than supplies may have.",
            "{residual} stays; the most for public supplies is 4 mg/L [cfr-141-65]. Carbon behind "
            "the tank takes it out, and the tank before it stays chlorinated.",
        )
    if dose > 3 * residual:
        yield Finding(
            "caution",
            "Most of it is used up.",
            "The water itself takes {demand} of the {chlorine_dose}. Take iron, manganese and "
            "sulfide out first, or the residual will swing.",
        )


def _steps(factor: float, virus: float, giardia: float | None, reached: float) -> tuple[Step, ...]:
    given = {
        "B": Quantity(factor, number, 2, "baffling factor"),
        "L_v": Quantity(VIRUS_LOGS, number, 2, "logs of the table for viruses"),
        "v": Quantity(virus, contact, 3, "table for viruses at this temperature [epa-1991-e7]"),
        "L_g": Quantity(GIARDIA_LOGS, number, 2, "logs of the table for Giardia"),
        "z": Quantity(giardia or 1.0, contact, 3, "regression for Giardia and its margin"),
    }
    steps = [
        Step("Contact time, all but the fastest tenth", "t = B * V_c / Q_c", given),
        Step("Chlorine times time", "X = C_c * t"),
        Step("4 log of viruses take", "X_v = v", given),
        Step("Logs of viruses", "l_v = min(L_v * X / X_v, L_v)", given),
    ]
    if factor:
        steps.append(Step("Volume needed", "V_n = X_v / C_c * Q_c / B", given))
    if giardia is not None:
        steps += [
            Step("3 log of Giardia take [smith-1995]", "X_g = z", given),
            Step("Logs of Giardia", "l_g = min(L_g * X / X_g, L_g)", given),
        ]
    return (
        *steps,
        Step("Chlorine to dose", "d = C_d + C_c"),
        Step("Bleach solution to feed", "q = Q_c * d / S_b"),
    )


def _chart(reached: float, virus: float, giardia: float | None) -> Bars:
    bars = [Bar("reached in this tank", reached), Bar("4 log of viruses", virus)]
    if giardia is not None:
        bars.append(Bar("3 log of Giardia", giardia))
    return Bars(
        title="Chlorine times time",
        says="What this tank reaches, and what is asked of it.",
        like=contact,
        bars=tuple(bars),
    )


def _chlorine(
    name: str, label: str, symbol: str, default: str, low: float, high: float, measure: str
) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=concentration,
        default=default,
        origin=INVENTED,
        low=low,
        high=high,
        measure=measure,
        group=CHLORINE,
        sure="10 %",
    )


CALCULATOR = Calculator(
    name="contact_time",
    title="Chlorine and contact time",
    question="Does chlorine stay long enough in this tank, and how much bleach does it take?",
    inputs=(
        treatment_fields.contact_volume,
        Choice(
            name="baffling",
            label="How straight the water goes through it",
            options={
                "none": "bladder pressure tank: one port for in and out (0)",
                "unbaffled": "one round tank, in and out near each other, or stirred by air (0.1)",
                "poor": "in at one end and out at the other, nothing between (0.3)",
                "average": "some walls, or several tanks in a row (0.5)",
                "superior": "walls all along, or a spread inlet and outlet (0.7)",
                "pipe": "a long pipe or coil (1.0)",
            },
            default="poor",
            origin="[epa-815-r-20-003] names the factors; the tanks are put in our own words",
            measure="If in doubt, the lower one. An aerated tank is stirred: 0.1.",
            group=treatment_fields.TANK,
        ),
        treatment_fields.contact_flow,
        _chlorine(
            "residual",
            "Free chlorine behind the tank",
            "C_c",
            "1 mg/L",
            0.1 * MG_L,
            10 * MG_L,
            "Drop or color test for free chlorine, at the largest flow, at once. Total chlorine is "
            "another thing.",
        ),
        Input(
            name="contact_ph",
            label="pH of the water behind the contact tank",
            symbol="pH_t",
            kind=number,
            default="7.2",
            origin=INVENTED,
            low=6.0,
            high=9.0,
            measure="Behind the tank. Over 8 chlorine is slow; bleach itself raises it a little.",
            group=CHLORINE,
            sure="0.1",
        ),
        _chlorine(
            "demand",
            "Chlorine that the water uses up",
            "C_d",
            "2 mg/L",
            0.0,
            50 * MG_L,
            "Three jars with 2, 4 and 8 mg/L: what is gone after half an hour. About 0.63 for each "
            "part of iron, 1.29 of manganese, 2.1 to 8.3 of sulfide, 10 of ammonia, from memory.",
        ),
        Input(
            name="bleach_strength",
            label="Chlorine in the feed solution",
            symbol="S_b",
            kind=concentration,
            us="g/L",
            si="g/L",
            default="52.5 g/L",
            origin="bleach of 5.25 %, undiluted",
            low=0.1,
            high=150.0,
            measure="Percent on the label times ten; less when it is old or thinned. Half is gone "
            "in months on a warm shelf.",
            group=CHLORINE,
            sure="20 %",
        ),
        replace(
            water_fields.water_temperature,
            group=CHLORINE,
            measure="Thermometer behind the tank, in the coldest month: cold slows chlorine down.",
        ),
    ),
    outputs=(
        Output(name="contact_minutes", label="Contact time", symbol="t", kind=duration, us="min"),
        Output(name="ct", label="Chlorine times time", symbol="X", kind=contact),
        Output(
            name="virus_needed", label="4 log of viruses take", symbol="X_v", kind=contact, digits=2
        ),
        Output(
            name="virus_credit",
            label="Logs of viruses, four at the most",
            symbol="l_v",
            kind=number,
            digits=2,
            low=VIRUS_LOGS,
            outside="4 log are asked of public supplies.",
        ),
        Output(
            name="volume_needed",
            label="Volume needed for 4 log of viruses",
            symbol="V_n",
            kind=volume,
            none="no such tank will do",
        ),
        Output(
            name="giardia_needed",
            label="3 log of Giardia take",
            symbol="X_g",
            kind=contact,
            none="no figure under 41 °F",
        ),
        Output(
            name="giardia_credit",
            label="Logs of Giardia, three at the most",
            symbol="l_g",
            kind=number,
            digits=2,
            none="no figure under 41 °F",
        ),
        Output(name="chlorine_dose", label="Chlorine to dose", symbol="d", kind=concentration),
        Output(
            name="bleach",
            label="Solution to feed while it runs",
            symbol="q",
            kind=flow,
            us="mL/min",
            si="mL/min",
        ),
    ),
    work=contact_time,
    cautions=(
        cautions.LICENSED_GERMS,
        cautions.UNSAFE_WATER,
        cautions.CHLORINE,
        cautions.NO_CERTIFICATE,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "epa-815-r-20-003",
        "epa-1991-e7",
        "smith-1995",
        "cfr-141-74",
        "cfr-141-65",
    ),
)
