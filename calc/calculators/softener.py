"""A softener: days between regenerations, salt, water, and the sodium it puts into the water."""

from dataclasses import replace
from math import pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.fields import (
    CHEMISTRY,
    INVENTED,
    bed_fields,
    open_tank_fields,
    treatment_fields,
    water_fields,
)
from calc.levels import LEVELS
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.granular_bed import MEDIA, pressure_loss
from calc.physics.softening import (
    CACO3,
    LEAST_SALT,
    MOST_SALT,
    POTASSIUM,
    POTASSIUM_SALT,
    SODIUM,
    SODIUM_SALT,
    capacity,
    compensated_hardness,
    days_of_capacity,
    exchanged,
    resin_depth,
    salt_in_water,
)
from calc.units import (
    L,
    age,
    area,
    bed_capacity,
    bed_salt,
    bed_water,
    concentration,
    day,
    duration,
    ft,
    gal,
    gauge_pressure,
    gpm,
    grain,
    hardness,
    held_hardness,
    iron_weight,
    lb,
    length,
    loading,
    mass,
    mg,
    mm,
    number,
    salt_yield,
    volume,
    year,
)

RESIN = "Softener"
MG_L, GPG = mg / L, grain / gal
BEAD = 0.6 * mm  # of the resin, common practice, no source
SOFT = 60 * MG_L  # [usgs-hardness]
MOST_IRON = 5 * MG_L  # common practice, no source: 2 to 5 mg/L
PRETREAT = 1 * MG_L  # iron and manganese together, [il-604-805]
# Resin that waits longer is regenerated all the same; with iron sooner. Common practice, no source.
MOST_DAYS, MOST_DAYS_IRON, IRON = 14 * day, 7 * day, 0.3 * MG_L
LEAST_DAYS = 3 * day
NEAR = 1.2  # times longer than it may wait, from which that is worth a word
SERVICE = 7 * gpm / ft**2  # [ten-states]
THRIFTY = 2997 * grain / lb  # half of what one charge for one charge would give
DIET, TASTE = (level.value for level in LEVELS["sodium"])
POINTS = 18


class _Softener(NamedTuple):
    """The softener, SI. `every`: from one regeneration to the next, as it will be run."""

    compensated: float
    held: float
    daily: float
    lasts: float
    every: float
    exchanged: float
    added: float
    depth: float
    rate: float


def softener(
    entering_hardness: float,
    raw_iron: float,
    manganese: float,
    hardness_for_iron: float,
    sodium: float,
    daily_use: float,
    reserve_days: float,
    resin_volume: float,
    resin_diameter: float,
    salt_dose: float,
    salt_kind: str,
    regeneration_water: float,
    service_flow: float,
    water_coldest: float,
) -> Answer:
    """When it regenerates, what that costs in salt and water, and what the water gains."""
    compensated = compensated_hardness(entering_hardness, raw_iron, manganese, hardness_for_iron)
    held = resin_volume * capacity(salt_dose)
    daily = compensated * daily_use * day
    lasts = days_of_capacity(held, reserve_days, daily) * day
    swapped = exchanged(entering_hardness, raw_iron, manganese)
    depth = resin_depth(resin_volume, resin_diameter)
    rate = service_flow / (resin_volume / depth)
    made = _Softener(
        compensated,
        held,
        daily,
        lasts,
        _every(lasts, raw_iron),
        swapped,
        salt_in_water(swapped, SODIUM if salt_kind == "sodium" else POTASSIUM),
        depth,
        rate,
    )
    times = year / made.every if made.every else None
    heavier = _heavier(salt_kind)
    return Answer(
        outputs={
            "compensated": compensated,
            "resin_holds": held,
            "lasts_for": lasts,
            "regenerate_every": made.every or None,
            "salt_once": resin_volume * salt_dose * heavier,
            "salt_year": times and times * resin_volume * salt_dose * heavier,
            "brine_year": times and times * resin_volume * regeneration_water,
            "salt_yield": capacity(salt_dose) / (salt_dose * heavier),
            "added": made.added,
            "sodium_after": sodium + (made.added if salt_kind == "sodium" else 0.0),
            "resin_rate": rate,
            "resin_depth": depth,
            "resin_loss": pressure_loss(rate, depth, BEAD, MEDIA["resin"], water_coldest),
        },
        findings=(
            _headline(made, entering_hardness),
            *_iron(raw_iron, manganese, salt_kind),
            *_health(sodium, made.added, salt_kind),
            *_running(made, salt_dose, resin_volume, service_flow),
        ),
        steps=_steps(made, salt_dose, salt_kind, resin_volume),
        charts=_charts(made, salt_dose, resin_volume, reserve_days, raw_iron, heavier),
    )


def _heavier(salt: str) -> float:
    """Mass of the salt for the charges of one of sodium chloride."""
    return 1.0 if salt == "sodium" else POTASSIUM_SALT / SODIUM_SALT


def _every(lasts: float, iron: float) -> float:
    return min(lasts, MOST_DAYS_IRON if iron > IRON else MOST_DAYS)


def _headline(made: _Softener, hard: float) -> Finding:
    if not made.lasts:
        return Finding(
            "danger",
            "Too small.",
            "One day and its reserve take more than the resin holds, {resin_holds}. Hard water "
            "passes. More resin.",
        )
    if hard <= SOFT:
        return Finding(
            "good",
            "No softener needed.",
            "{entering_hardness} is soft (USGS: up to 60 mg/L). A softener would only add sodium, "
            "salt and waste.",
        )
    if made.lasts < LEAST_DAYS:
        return Finding(
            "caution",
            "Small.",
            "It regenerates every {regenerate_every}. Common practice is 3 days at least: more "
            "resin, not more salt.",
        )
    return Finding(
        "good",
        "It lasts.",
        "It regenerates every {regenerate_every}, with {salt_once} of salt each time, "
        "{salt_year} a year.",
    )


def _iron(iron: float, manganese: float, salt: str) -> list[Finding]:
    if iron > MOST_IRON:
        return [
            Finding(
                "danger",
                "Too much iron for it.",
                "{raw_iron} of iron fouls resin whatever is set. Common practice stops at 2 to 5 "
                "mg/L, all dissolved. Take it out before.",
            )
        ]
    if iron + manganese >= PRETREAT:
        return [
            Finding(
                "caution",
                "Take the iron out first.",
                "From 1 mg/L of iron and manganese together Illinois asks public supplies to do so "
                "(text of 2024, no law for a private well). If not: no air, bleach or rust before "
                "it, and resin cleaner twice a year.",
            )
        ]
    if iron > IRON:
        return [
            Finding(
                "caution",
                "Iron: only if nothing rusts it.",
                "It takes {raw_iron} only while that is dissolved. Behind an aerator, an open tank "
                "or bleach it is rust, and rust stays in the resin. Clean the resin twice a year.",
            )
        ]
    return []


def _health(sodium: float, added: float, salt: str) -> list[Finding]:
    if salt == "potassium":
        return [
            Finding(
                "caution",
                "Potassium.",
                "The water gains {added} of potassium. Whoever has weak kidneys or takes medicine "
                "that holds potassium back asks a doctor first. Leave a hard tap for drinking.",
            )
        ]
    given = {
        "diet": Quantity(DIET, concentration, 2),
        "taste": Quantity(TASTE, concentration, 2),
    }
    after = sodium + added
    if after < DIET:
        return []
    advice = (
        "{sodium_after} of sodium behind it. US EPA advises at most {diet} for people held to 500 "
        "mg of sodium a day (advice of 2003, no limit): they ask a doctor, or drink from a tap "
        "that goes round the softener."
    )
    if after >= TASTE:
        advice += " From {taste} some taste it."
    return [Finding("caution", "Sodium in the drinking water.", advice, given)]


def _running(made: _Softener, dose: float, resin: float, flow: float) -> list[Finding]:
    found = []
    if made.lasts > NEAR * made.every:
        found.append(
            Finding(
                "caution",
                "Regenerate by the calendar.",
                "It would last {lasts_for}, but resin that waits packs and breeds: every "
                "{regenerate_every} all the same. Less salt or less resin would do.",
            )
        )
    if made.rate > SERVICE:
        found.append(
            Finding(
                "caution",
                "Fast for this tank.",
                "{resin_rate} at the largest flow. Standards for public supplies stop at 7 "
                "gpm/ft²; some hardness passes, and the valve takes more pressure than the resin.",
            )
        )
    if capacity(dose) / dose < THRIFTY:
        found.append(
            Finding(
                "caution",
                "Salt for little.",
                "{salt_yield}: over half of the salt goes to the drain unused, for a pound takes "
                "5994 grains at best. Less salt, more often, or more resin.",
            )
        )
    return found


def _steps(made: _Softener, dose: float, salt: str, resin: float) -> tuple[Step, ...]:
    capacity_now = capacity(dose)
    swap = SODIUM if salt == "sodium" else POTASSIUM
    given = {
        "pi": Quantity(pi, number, 5, "a circle's circumference over its diameter"),
        "c": Quantity(capacity_now, bed_capacity, 4, "what resin holds after that salt"),
        "d": Quantity(day, duration, 4, "a day"),
        "M_d": Quantity(made.daily, held_hardness, 4),
        "x_i": Quantity(exchanged(0.0, 1.0, 0.0), number, 4, "hardness of each part of iron"),
        "x_m": Quantity(exchanged(0.0, 0.0, 1.0), number, 4, "hardness of each part of manganese"),
        "X": Quantity(made.exchanged, hardness, 4),
        "q": Quantity(_heavier(salt), number, 4, "mass of the salt for one of sodium chloride"),
        "e": Quantity(swap / CACO3, number, 4, f"{salt} for each part of hardness"),
        "A_f": Quantity(resin / made.depth, area),
        "Y": Quantity(year, age, 5, "a year"),
        "t_x": Quantity(made.every, duration, 3, "longest that resin may wait"),
    }
    steps = [
        Step("Hardness to size by", "H_c = H_e + w * (F + C_Mn)", given),
        Step("The resin holds", "B = V_r * c", given),
        Step("Used up in a day", "M_d = H_c * Q_u * d", given),
        Step("That lasts", "t_l = max(B / M_d - r, 0) * d", given),
        Step("Salt each time", "m_s = V_r * s * q", given),
        Step("Hardness for the salt", "y = c / (s * q)", given),
        Step("Charges exchanged, told as hardness", "X = H_e + x_i * F + x_m * C_Mn", given),
        Step("Added to the water", "a = e * X", given),
        Step("Sodium behind it", "C_a = C_Na + a" if salt == "sodium" else "C_a = C_Na", given),
        Step("Area of the tank", "A_f = pi * D_r**2 / 4", given),
        Step("Depth of the resin", "L_r = V_r / A_f", given),
        Step("Flow for each area", "v = Q_f / A_f", given),
    ]
    if made.every:
        steps += [
            Step("Regenerate every", "t_e = min(t_l, t_x)", given),
            Step("Salt in a year", "M_y = m_s * Y / t_e", given),
            Step("Water for it in a year", "V_y = V_r * g * Y / t_e", given),
        ]
    return tuple(steps)


def _charts(
    made: _Softener, dose: float, resin: float, reserve: float, iron: float, heavier: float
) -> tuple[Chart, ...]:
    """Salt in a year against the salt given each time."""
    doses = [LEAST_SALT + (MOST_SALT - LEAST_SALT) * n / POINTS for n in range(POINTS + 1)]

    def salt(each: float) -> float | None:
        days = days_of_capacity(resin * capacity(each), reserve, made.daily)
        every = _every(days * day, iron)
        return resin * each * heavier * year / every if every else None

    points = tuple((each, salt(each)) for each in doses)
    here = salt(dose)
    if here is None:
        return ()
    return (
        Chart(
            title="Salt in a year, by the salt given each time",
            says="More salt each time buys less and less capacity. Where days are few, the reserve "
            "eats what is saved; where they are many, the calendar does.",
            x=Axis("Salt for each volume of resin", bed_salt),
            y=Axis("Salt in a year", mass),
            lines=(Line("salt in a year", points),),
            marks=(Mark("this setting", dose, here, here=True),),
        ),
    )


CALCULATOR = Calculator(
    name="softener",
    title="Softener",
    question="How often does a softener regenerate, what salt and water does it take, and how much "
    "sodium does it add?",
    inputs=(
        Input(
            name="entering_hardness",
            label="Hardness of the water that enters the softener",
            symbol="H_e",
            kind=hardness,
            default="142 mg/L as CaCO3",
            origin="invented example: 45 in the well, 97 from the stone of the neutralizer",
            low=1 * MG_L,
            high=2000 * MG_L,
            measure="Drop test right before the softener. A neutralizer before it has added "
            "hardness: the well's figure is too low.",
            group=CHEMISTRY,
            sure="10 %",
        ),
        replace(treatment_fields.raw_iron, low=0.0),
        treatment_fields.manganese,
        Input(
            name="hardness_for_iron",
            label="Hardness counted for each iron and manganese",
            symbol="w",
            kind=iron_weight,
            default="3 gpg per mg/L",
            origin="common practice, no source; others count 2 or 5",
            low=0.1 * GPG / MG_L,
            high=6 * GPG / MG_L,
            measure="Not measured. What really exchanges is 0.105; the rest is a price for iron "
            "that salt does not get off again.",
            group=CHEMISTRY,
        ),
        replace(water_fields.sodium, group=CHEMISTRY),
        replace(open_tank_fields.daily_use, group=RESIN),
        Input(
            name="reserve_days",
            label="Days of use kept back",
            symbol="r",
            kind=number,
            default="1",
            origin="common practice, no source: a meter that waits for the night",
            low=0,
            high=3,
            measure="0 for two tanks that take turns, 1 for one that regenerates the night after.",
            group=RESIN,
        ),
        Input(
            name="resin_volume",
            label="Resin",
            symbol="V_r",
            kind=volume,
            us="ft³",
            si="L",
            default="1 ft³",
            origin=INVENTED,
            low=0.1 * ft**3,
            high=20 * ft**3,
            measure="From the label, in cubic feet. A grain figure on a label is for the most salt "
            "and new resin.",
            group=RESIN,
        ),
        replace(
            bed_fields.tank_diameter,
            name="resin_diameter",
            label="Inside diameter of the softener's tank",
            symbol="D_r",
            group=RESIN,
            default="9 in",
        ),
        Input(
            name="salt_dose",
            label="Salt for each volume of resin, counted as sodium chloride",
            symbol="s",
            kind=bed_salt,
            default="6 lb/ft³",
            origin="the thriftiest setting in common use",
            low=LEAST_SALT,
            high=MOST_SALT,
            measure="Salt each time from the valve's program, over the resin. Or weigh what the "
            "tank takes.",
            group=RESIN,
        ),
        Choice(
            name="salt_kind",
            label="Salt",
            options={"sodium": "sodium chloride", "potassium": "potassium chloride"},
            default="sodium",
            origin=INVENTED,
            measure="From the bag. Potassium takes 28 % more mass for the same, and people with "
            "weak kidneys must ask a doctor.",
            group=RESIN,
        ),
        Input(
            name="regeneration_water",
            label="Water for each volume of resin, one regeneration",
            symbol="g",
            kind=bed_water,
            default="60 gal/ft³",
            origin="common practice, no source: 50 to 75",
            low=10 * (gal / ft**3),
            high=200 * (gal / ft**3),
            measure="Meter before and after, or pail at the drain over all steps.",
            group=RESIN,
        ),
        replace(bed_fields.service_flow, group=RESIN),
        replace(water_fields.water_coldest, group=RESIN),
    ),
    outputs=(
        Output(
            name="regenerate_every",
            label="Regenerates every",
            symbol="t_e",
            kind=duration,
            us="days",
            si="days",
            digits=2,
            none="it cannot keep up",
        ),
        Output(
            name="lasts_for",
            label="The resin lasts, reserve kept",
            symbol="t_l",
            kind=duration,
            us="days",
            si="days",
            digits=2,
        ),
        Output(
            name="compensated",
            label="Hardness to size by",
            symbol="H_c",
            kind=hardness,
        ),
        Output(name="resin_holds", label="The resin holds", symbol="B", kind=held_hardness),
        Output(name="salt_once", label="Salt each time", symbol="m_s", kind=mass),
        Output(
            name="salt_year",
            label="Salt in a year",
            symbol="M_y",
            kind=mass,
            none="it cannot keep up",
        ),
        Output(
            name="brine_year",
            label="Water to the drain in a year",
            symbol="V_y",
            kind=volume,
            none="it cannot keep up",
        ),
        Output(name="salt_yield", label="Hardness for the salt", symbol="y", kind=salt_yield),
        Output(
            name="added",
            label="Sodium or potassium added to the water",
            symbol="a",
            kind=concentration,
        ),
        Output(name="sodium_after", label="Sodium behind it", symbol="C_a", kind=concentration),
        Output(name="resin_rate", label="Flow for each area", symbol="v", kind=loading),
        Output(
            name="resin_depth",
            label="Depth of the resin",
            symbol="L_r",
            kind=length,
            us="in",
            si="cm",
        ),
        Output(
            name="resin_loss",
            label="Pressure the clean resin takes at the largest flow",
            kind=gauge_pressure,
            digits=2,
        ),
    ),
    work=softener,
    cautions=(
        cautions.NO_CERTIFICATE,
        cautions.BACKWASH_INLET,
        cautions.NO_INDEX,
        "Brine. It goes to a drain with an air gap, where the code allows it: some places forbid "
        "it in septic systems. Never shock-chlorinate through a softener.",
        cautions.LOCAL_CODE,
    ),
    leaves={},
    sources=(
        "il-604-805",
        "franks-2014",
        "ufc-3-240-13",
        "ten-states",
        "utah-r309-535",
        "usgs-hardness",
        "epa-sodium-2003",
        "ergun",
    ),
)
