"""Soda ash, or caustic, fed into acid water: dose, feed pump, sodium, and what an error does."""

from dataclasses import replace
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, open_tank_fields, raw_water, water_fields, well_pump_fields
from calc.fields.raw_water import RawWater
from calc.fields.water_fields import MOST_PH
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.calcite import (
    CAUSTIC,
    SODA_ASH,
    SODIUM_MOLAR,
    Base,
    Water,
    dose_for_co2,
    dose_for_ph,
    with_base,
)
from calc.physics.carbonate import CACO3_EQUIVALENT
from calc.physics.feed import feed_flow
from calc.physics.neutralizer import YEAR, soda_ash_dissolves
from calc.physics.radon_solubility import ICE_POINT
from calc.units import (
    L,
    concentration,
    duration,
    flow,
    gal,
    hardness,
    mass,
    mg,
    minute,
    number,
    share,
    temperature,
    volume,
)

FEED = "Feed"
BASES = {"soda_ash": SODA_ASH, "caustic": CAUSTIC}
STEEP = 0.3  # a feed pump's error, by which a pH after too much and too little is told
LOW_DIET = 20 * mg / L  # [epa-sodium-2003]
FULL, IDLE = 0.9, 0.1  # shares of its stroke between which a feed pump keeps time, from memory
POINTS, LONGEST = 24, 1.6  # of the chart; its end over the dose


class _Feed(NamedTuple):
    """What is fed: the water, the base, mol/m³ of it, kg/m³, pump flow m³/s, its share of the
    most that it gives, and the pH with too little and with too much."""

    water: Water
    base: Base
    amount: float
    dose: float
    flow: float
    setting: float
    low: float
    high: float

    def ph(self, times: float) -> float:
        """pH with so many times the dose."""
        return with_base(self.water, self.base, self.amount * times).state().ph


def soda_ash(
    raw_ph: float,
    alkalinity: float,
    calcium: float,
    water_temperature: float,
    target_ph: float,
    feed_chemical: str,
    well_pump: float,
    feed_solution: float,
    feed_most: float,
    feed_tank: float,
    feed_temperature: float,
    daily_use: float,
) -> Answer:
    """The dose that brings raw water to a pH, and how a feed pump gives it."""
    water = RawWater(raw_ph, alkalinity, calcium, water_temperature).water()
    base = BASES[feed_chemical]
    amount = dose_for_ph(water, base, target_ph)
    if not amount:
        says = "is no higher than the raw water's, {raw_ph}"
        raise Refused("contradiction", "target_ph", says=says)
    dose = amount * base.molar
    fed = feed_flow(well_pump, dose, feed_solution)
    feed = _Feed(water, base, amount, dose, fed, fed / feed_most, 0.0, 0.0)
    feed = feed._replace(low=feed.ph(1 - STEEP), high=feed.ph(1 + STEEP))
    sodium = amount * base.sodium * SODIUM_MOLAR
    after = with_base(water, base, amount)
    return Answer(
        outputs={
            "feed_dose": dose,
            "feed_flow": fed,
            "feed_setting": feed.setting,
            "feed_lasts": feed_tank * feed_solution / (dose * daily_use),
            "feed_year": dose * daily_use * YEAR,
            "sodium_added": sodium,
            "low_ph": feed.low,
            "high_ph": feed.high,
            "fed_index": after.saturation(),
            "rule_dose": dose_for_co2(water.state().co2, base) * base.molar,
        },
        findings=_findings(feed, sodium, feed_chemical, feed_solution, feed_temperature),
        steps=_steps(feed),
        charts=(_chart(feed),),
    )


def _findings(
    feed: _Feed, sodium: float, chemical: str, solution: float, kelvin: float
) -> tuple[Finding, ...]:
    findings = [_headline(feed)]
    if chemical == "caustic":
        findings.append(
            Finding(
                "danger",
                "Caustic burns.",
                "Caustic soda blinds and burns to the bone, and boils when it meets water. It is "
                "for licensed handling only. Soda ash does the same job.",
            )
        )
    elif solution > soda_ash_dissolves(kelvin):
        findings.append(
            Finding(
                "danger",
                "It will not dissolve.",
                "At {feed_temperature} a litre of water holds {most} of soda ash. What is over "
                "sets to stone in the tank and in the feed pump.",
                {"most": Quantity(soda_ash_dissolves(kelvin), _SOLUTION, 2)},
            )
        )
    if sodium > LOW_DIET:
        findings.append(
            Finding(
                "caution",
                "Sodium.",
                "It adds {sodium_added}. US EPA's advice for people on a diet poor in salt is 20 "
                "mg/L in all (advice, no limit). Tell the household, who should ask their doctor.",
            )
        )
    if feed.high > MOST_PH:
        findings.append(
            Finding(
                "caution",
                "Steep.",
                "A feed 30 % too strong gives pH {high_ph}, 30 % too weak {low_ph}. Aim "
                "lower, test weekly at first, and tie the feed to the well pump's run.",
            )
        )
    return tuple(findings)


def _headline(feed: _Feed) -> Finding:
    if feed.setting > 1:
        return Finding(
            "danger",
            "The feed pump is too small.",
            "It would have to give {feed_flow} and gives {feed_most} at the most. A stronger "
            "solution or a bigger pump.",
        )
    if not IDLE <= feed.setting <= FULL:
        return Finding(
            "caution",
            "Badly matched.",
            "The feed pump would run at {feed_setting} of its most. It keeps its rate between "
            "10 and 90 %: change the strength of the solution.",
        )
    return Finding(
        "good",
        "Set it.",
        "The feed pump at {feed_setting} gives {feed_flow}, which brings the water to pH "
        "{target_ph}. A tank of solution lasts {feed_lasts}.",
    )


def _steps(feed: _Feed) -> tuple[Step, ...]:
    base, after = feed.base, feed.water.alkalinity + feed.base.charge * feed.amount
    given = {
        "A_t": Quantity(
            after * CACO3_EQUIVALENT,
            hardness,
            4,
            "alkalinity at which the water has the pH wanted, found by trial",
        ),
        "w": Quantity(
            base.molar / (base.charge * CACO3_EQUIVALENT),
            number,
            4,
            "mass of the chemical over the alkalinity that it brings, as CaCO3",
        ),
        "w_s": Quantity(
            base.sodium * SODIUM_MOLAR / base.molar, number, 4, "sodium in the chemical, by mass"
        ),
        "Y": Quantity(YEAR, _LASTS, 5, "a year"),
    }
    return (
        Step("Dose", "c_d = w * (A_t - A_k)", given),
        Step("Flow of the feed pump", "q = Q_1 * c_d / C_s", given),
        Step("Setting of the feed pump", "s = q / q_m", given),
        Step("A tank of solution lasts", "t_f = V_f * C_s / (c_d * Q_u)", given),
        Step("Powder in a year", "M = c_d * Q_u * Y", given),
        Step("Sodium added", "c_s = w_s * c_d", given),
    )


def _chart(feed: _Feed) -> Chart:
    times = [LONGEST * i / POINTS for i in range(POINTS + 1)]
    return Chart(
        title="pH against the dose",
        says="Flat at first, steep behind the pH of 7.5: there a little too much is far too much.",
        x=Axis("Dose", _DOSE),
        y=Axis("pH", number),
        lines=(Line("in this water", tuple((feed.dose * n, feed.ph(n)) for n in times)),),
        limits=(Limit("pH 8.5", MOST_PH),),
        marks=(Mark("wanted", feed.dose, feed.ph(1.0), here=True),),
    )


_DOSE = Output(name="feed_dose", label="Dose", symbol="c_d", kind=concentration)
_LASTS = Output(
    name="feed_lasts",
    label="A tank of solution lasts",
    symbol="t_f",
    kind=duration,
    us="days",
    si="days",
    digits=2,
)
_SOLUTION = Input(
    name="feed_solution",
    label="Strength of the solution",
    symbol="C_s",
    kind=concentration,
    default="60 g/L",
    origin="common practice, no source: half a pound in a gallon",
    low=5.0,
    high=300.0,
    us="g/L",
    si="g/L",
    measure="Powder weighed in over the litres of finished solution. Dissolve in softened water: "
    "hard water leaves chalk in the feed pump.",
    group=FEED,
    caution="Powder into water, slowly, never water onto powder. Goggles and gloves.",
    sure="3 %",
)

CALCULATOR = Calculator(
    name="soda_ash",
    title="Soda-ash feed",
    question="How much soda ash brings this water to the pH wanted, and how is the feed pump set?",
    inputs=(
        *raw_water.INPUTS,
        water_fields.target_ph,
        Choice(
            name="feed_chemical",
            label="What is fed",
            options={
                "soda_ash": "soda ash (sodium carbonate)",
                "caustic": "caustic soda (licensed handling only)",
            },
            default="soda_ash",
            origin="the one that a house can handle",
            measure="From the bag. Washing soda in crystals is two thirds water: it takes 2.7 "
            "times as much.",
            group=FEED,
        ),
        replace(well_pump_fields.well_pump, group=FEED),
        _SOLUTION,
        Input(
            name="feed_most",
            label="Most that the feed pump gives",
            symbol="q_m",
            kind=flow,
            default="60 mL/min",
            origin=INVENTED,
            low=1e-3 * L / minute,
            high=2 * L / minute,
            us="mL/min",
            si="mL/min",
            measure="Suck from a measuring glass for two minutes, feeding against the pressure of "
            "the line. The label is for no pressure.",
            group=FEED,
            sure="5 %",
        ),
        Input(
            name="feed_tank",
            label="Size of the solution tank",
            symbol="V_f",
            kind=volume,
            default="15 gal",
            origin=INVENTED,
            low=1 * gal,
            high=200 * gal,
            measure="What you fill in, less what stays under the foot of the suction line.",
            group=FEED,
        ),
        Input(
            name="feed_temperature",
            label="Coldest that the solution gets",
            symbol="T_f",
            kind=temperature,
            default="50 °F",
            origin=INVENTED,
            low=0.1 + ICE_POINT,
            high=45 + ICE_POINT,
            measure="Thermometer in the solution tank, in winter.",
            group=FEED,
        ),
        replace(open_tank_fields.daily_use, group=FEED),
    ),
    outputs=(
        _DOSE,
        Output(
            name="feed_flow",
            label="Flow of the feed pump",
            symbol="q",
            kind=flow,
            us="mL/min",
            si="mL/min",
        ),
        Output(name="feed_setting", label="Setting of the feed pump", symbol="s", kind=share),
        _LASTS,
        Output(name="feed_year", label="Powder in a year", symbol="M", kind=mass),
        Output(name="sodium_added", label="Sodium added", symbol="c_s", kind=concentration),
        Output(name="low_ph", label="pH with a feed 30 % too weak", kind=number),
        Output(name="high_ph", label="pH with a feed 30 % too strong", kind=number),
        Output(name="fed_index", label="Saturation index then, as wanted", kind=number, digits=2),
        Output(
            name="rule_dose", label="Dose by the old rule, all acid used up", kind=concentration
        ),
    ),
    work=soda_ash,
    trials=200,
    cautions=(
        cautions.CAUSTIC_DUST,
        "Fed while no water runs, a dose becomes a slug of lye at the first tap. The feed pump "
        "runs only with the well pump, by wiring and not by hand, and a valve stops it from "
        "siphoning.",
        cautions.ELECTRICITY,
        cautions.PRESSURE,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "plummer-1982",
        "davies-1962",
        "phreeqc-3",
        "crc-soda",
        "epa-sodium-2003",
        "cfr-143-3",
        "osha-1910-147",
    ),
)
