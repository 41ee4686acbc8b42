"""Iron that turns to rust in the aerator: how much, and when the unit must be cleaned."""

from math import log
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.fields import INVENTED, open_tank_fields, treatment_fields, water_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.carbonate import log_water
from calc.physics.iron_oxidation import (
    ALKALINITY_USED,
    OXYGEN,
    RATE,
    RUST,
    SCATTER,
    half_time,
    rusted,
    sludge,
)
from calc.units import (
    L,
    atm,
    concentration,
    day,
    duration,
    gal,
    hardness,
    mass,
    mg,
    minute,
    number,
    percent,
    share,
    volume,
)

SLUDGE = "Sludge"
STAINS = 0.3 * mg / L  # [cfr-143-3], for taste and stains
OFTEN = 60 * day  # cleaned more often than this nobody keeps it up: common practice, no source
PART = 0.2  # share of the alkalinity from which the loss shows in the pH
YEAR = 365.25 * day
POINTS = 40


class _Rust(NamedTuple):
    """Half time, time in the tank, s; shares rusted there: by the law, ten times slower, ten
    times faster."""

    half: float
    stay: float
    law: float
    slow: float
    fast: float


def aerator_iron(
    raw_iron: float,
    treated_ph: float,
    alkalinity: float,
    water_temperature: float,
    daily_use: float,
    tank_water: float,
    settled_share: float,
    sludge_solids: float,
    sludge_room: float,
) -> Answer:
    """How fast the iron rusts, dry solids in a year, and how long the sludge has room."""
    rust = _rust(treated_ph, water_temperature, tank_water / daily_use)
    made = RUST * raw_iron * daily_use
    settles = made * rust.fast * settled_share
    interval = sludge_room / sludge(settles, sludge_solids)
    return Answer(
        outputs={
            "clean_after": interval,
            "half_time": rust.half,
            "in_tank": rust.law,
            "in_tank_slow": rust.slow,
            "in_tank_fast": rust.fast,
            "year_solids": made * YEAR,
            "year_sludge": sludge(made * YEAR, sludge_solids),
            "alkalinity_used": ALKALINITY_USED * raw_iron,
        },
        findings=(_headline(raw_iron, interval), *_more(rust, raw_iron, alkalinity)),
        steps=_steps(_given(treated_ph, water_temperature, rust, made, settles)),
        charts=(_chart(treated_ph, water_temperature, rust),),
    )


def _rust(ph: float, temperature: float, stay: float) -> _Rust:
    half = half_time(ph, temperature)
    return _Rust(
        half,
        stay,
        rusted(half, stay),
        rusted(half * SCATTER, stay),
        rusted(half / SCATTER, stay),
    )


def _headline(iron: float, interval: float) -> Finding:
    if interval < OFTEN:
        return Finding(
            "danger",
            "Treat the iron first.",
            "Sludge is in the way after {clean_after}. Nobody cleans that often for long, and "
            "blinded stones let radon through without a sign. Take the iron out before the "
            "aerator.",
        )
    if iron > STAINS:
        return Finding(
            "caution",
            "Clean by the calendar.",
            "At the latest after {clean_after}; sooner when the blower's gauge says so. Iron over "
            "0.3 mg/L stains as well (US EPA, secondary standard, for public supplies, advice "
            "only).",
        )
    return Finding(
        "good",
        "Little iron.",
        "Sludge alone asks for cleaning after {clean_after}. Look in once a year all the same.",
    )


def _more(rust: _Rust, iron: float, alkalinity: float) -> tuple[Finding, ...]:
    findings = []
    if rust.slow > 0.5:
        findings.append(
            Finding(
                "caution",
                "It rusts in the tank.",
                "Even ten times slower than the law {in_tank_slow} of the iron turns to rust in "
                "the tank over the day. Stones, float, level switch and walls get it, and what "
                "does not settle goes to pump 2 and the filters after it.",
            )
        )
    elif rust.fast < 0.5:
        findings.append(
            Finding(
                "caution",
                "It rusts later.",
                "Even ten times faster than the law only {in_tank_fast} turns to rust in the tank. "
                "The rest does so in the pressure tank, the heater and the laundry.",
            )
        )
    else:
        findings.append(
            Finding(
                "caution",
                "It may rust here or later.",
                "By the law {in_tank} turns to rust in the tank; real waters lie between "
                "{in_tank_slow} and {in_tank_fast}. Stand a glass of the treated water for an "
                "hour: what color comes was still dissolved.",
            )
        )
    if ALKALINITY_USED * iron > PART * alkalinity:
        findings.append(
            Finding(
                "caution",
                "Iron makes acid.",
                "Rusting uses {alkalinity_used} of the {alkalinity} alkalinity: the pH rises less "
                "than without iron.",
            )
        )
    return tuple(findings)


def _given(
    ph: float, temperature: float, rust: _Rust, made: float, settles: float
) -> dict[str, Quantity]:
    return {
        "p_w": Quantity(-log_water(temperature), number, 5, "ion product of water, pKw"),
        "o": Quantity(10 ** (log_water(temperature) + ph), number, 4),
        "k": Quantity(RATE * minute, number, 3, "rate of the law, L²/(mol² atm min)"),
        "p_o": Quantity(OXYGEN / atm, number, 4, "oxygen in the air, atmospheres"),
        "n_2": Quantity(log(2), number, 4, "natural logarithm of 2"),
        "m": Quantity(minute, duration, 4, "a minute"),
        "t_s": Quantity(rust.stay, duration, 4),
        "u": Quantity(log(2) * rust.stay / rust.half, number, 4),
        "s": Quantity(SCATTER, number, 3, "times that real waters lie off the law"),
        "z": Quantity(RUST, number, 4, "rust from each part of iron"),
        "d": Quantity(day, duration, 4, "a day"),
        "Y": Quantity(YEAR / day, number, 5, "days in a year"),
        "M_d": Quantity(made * day, mass, 4),
        "M_s": Quantity(settles * day, mass, 4),
        "a": Quantity(ALKALINITY_USED, number, 4, "alkalinity used by each part of iron"),
    }


def _steps(given: dict[str, Quantity]) -> tuple[Step, ...]:
    return (
        Step("Hydroxide, mol/L", "o = 10**(pH_t - p_w)", given),
        Step("Half turns to rust in", "t_h = n_2 * m / (k * o**2 * p_o)", given),
        Step("The water stays in the tank on average", "t_s = V_w / Q_u", given),
        Step("That over the time of the law", "u = n_2 * t_s / t_h", given),
        Step("Share that rusts in the tank", "x = u / (1 + u)", given),
        Step("The same ten times slower", "x_s = u / (s + u)", given),
        Step("The same ten times faster", "x_f = s * u / (1 + s * u)", given),
        Step("Dry rust in a day", "M_d = z * F * Q_u * d", given),
        Step("Dry rust in a year", "M_y = M_d * Y", given),
        Step("Wet sludge in a year", "V_y = M_y / c_s", given),
        Step("Dry rust that settles in a day, at most", "M_s = M_d * x_f * w", given),
        Step("Clean after", "t_c = V_s * c_s / M_s * d", given),
        Step("Alkalinity used", "A_u = a * F", given),
    )


def _chart(ph: float, temperature: float, rust: _Rust) -> Chart:
    places = [5.5 + 3.0 * n / POINTS for n in range(POINTS + 1)]

    def line(label: str, times: float) -> Line:
        return Line(
            label,
            tuple(
                (each, rusted(times * half_time(each, temperature), rust.stay)) for each in places
            ),
        )

    return Chart(
        title="Iron that rusts in the tank, by the pH in it",
        says="A low pH keeps iron dissolved. One step up in pH is a hundred times the speed. Real "
        "waters lie between the outer lines.",
        x=Axis("pH in the tank", number),
        y=Axis("Share of the iron that rusts in the tank", share),
        lines=(
            line("ten times faster", 1 / SCATTER),
            line("by the law", 1.0),
            line("ten times slower", SCATTER),
        ),
        marks=(Mark("this tank", ph, rust.law, here=True),),
    )


CALCULATOR = Calculator(
    name="aerator_iron",
    title="Iron in the aerator",
    question="How much rust does the aerator make of the iron, and when must it be cleaned?",
    inputs=(
        treatment_fields.raw_iron,
        water_fields.treated_ph,
        water_fields.alkalinity,
        water_fields.water_temperature,
        open_tank_fields.daily_use,
        open_tank_fields.tank_water,
        Input(
            name="settled_share",
            label="Share of that rust that stays in the tank",
            symbol="w",
            kind=share,
            default="50 %",
            origin="a guess on the cautious side: bubbles keep most of the floc afloat",
            low=1 * percent,
            high=100 * percent,
            measure="At a cleaning: sludge taken out, let stand a day, over what these figures "
            "made since the last. 100 % for a quiet tank.",
            group=SLUDGE,
        ),
        Input(
            name="sludge_solids",
            label="Dry rust in wet sludge",
            symbol="c_s",
            kind=concentration,
            us="g/L",
            si="g/L",
            default="20 g/L",
            origin="fresh floc 10 to 50 g/L, from memory",
            low=1.0,
            high=500.0,
            measure="Dry a jar of settled sludge in the oven and weigh it.",
            group=SLUDGE,
        ),
        Input(
            name="sludge_room",
            label="Sludge that may lie before it is in the way",
            symbol="V_s",
            kind=volume,
            default="2 gal",
            origin=INVENTED,
            low=0.05 * gal,
            high=500 * gal,
            measure="Floor of the tank times the height from it to the stones or the intake, "
            "whichever is lower, less a third for heaps.",
            group=SLUDGE,
            sure="20 %",
        ),
    ),
    outputs=(
        Output(
            name="clean_after",
            label="Clean at the latest after",
            symbol="t_c",
            kind=duration,
            us="days",
            si="days",
            digits=2,
        ),
        Output(
            name="half_time", label="Half of the iron turns to rust in", symbol="t_h", kind=duration
        ),
        Output(
            name="in_tank",
            label="Iron that rusts in the tank, over the day, by the law",
            symbol="x",
            kind=share,
            digits=2,
        ),
        Output(
            name="in_tank_slow",
            label="The same in a water ten times slower",
            symbol="x_s",
            kind=share,
            digits=2,
        ),
        Output(
            name="in_tank_fast",
            label="The same in a water ten times faster",
            symbol="x_f",
            kind=share,
            digits=2,
        ),
        Output(
            name="year_solids",
            label="Dry rust in a year, here and later",
            symbol="M_y",
            kind=mass,
        ),
        Output(
            name="year_sludge",
            label="Wet sludge in a year, here and later",
            symbol="V_y",
            kind=volume,
        ),
        Output(
            name="alkalinity_used",
            label="Alkalinity used by the rusting",
            symbol="A_u",
            kind=hardness,
        ),
    ),
    work=aerator_iron,
    cautions=(
        cautions.DRY_TANK,
        cautions.VENT_OUTDOORS,
        cautions.RADON_AIR,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "singer-stumm-1970",
        "king-1998",
        "emmenegger-1998",
        "stumm-morgan-1996",
        "kinner-1990",
        "cfr-143-3",
        "epa-radon-2016",
        "osha-1910-147",
    ),
)
