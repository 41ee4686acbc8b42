"""Radon in a house's air that its own water brings, with how widely such houses differ."""

from dataclasses import replace
from typing import NamedTuple

from calc import cautions, levels
from calc.charts import Axis, Bar, Bars, Chart, Limit, Line, Mark
from calc.fields import INVENTED, open_tank_fields, radon_fields
from calc.levels import AIR, FIX_AIR, OUTDOOR_AIR, WATER
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.decay import RADON as RADON_HALF_LIFE
from calc.physics.decay import decay_constant
from calc.physics.house_air import (
    RELEASE,
    SPREAD_AIR_CHANGE,
    SPREAD_RELEASE,
    SPREAD_WATER_USE,
    combined_spread,
    lognormal_point,
    share_above,
    transfer,
    water_for_air,
)
from calc.physics.radon_risk import LUNG, STOMACH, risk_by_air, risk_by_water
from calc.units import L, number, pCi, percent, radon, rate, share

SPREAD_MEASURED = 1.3  # of an air change measured or set by a fan: common practice, no source
Z_95 = 1.96
RAREST = 1e-3  # so far out nobody knows whether houses are spread lognormally
_TOLD_FOR = 1000 / L  # Bq/m³
HOUSE, WATER_USE, ACCEPTED = "House", "Water", "What is accepted"
# Places of the chart: houses out of a hundred, and how many standard deviations that is.
_HOUSES = (
    (0.025, -1.960),
    (0.05, -1.645),
    (0.1, -1.282),
    (0.2, -0.842),
    (0.3, -0.524),
    (0.4, -0.253),
    (0.5, 0.0),
    (0.6, 0.253),
    (0.7, 0.524),
    (0.8, 0.842),
    (0.9, 1.282),
    (0.95, 1.645),
    (0.975, 1.960),
)


class _Air(NamedTuple):
    added: float
    spread: float
    low: float
    high: float
    over: float


def radon_in_air(
    raw_radon: float,
    daily_use: float,
    daily_use_from: str,
    release: float,
    house_volume: float,
    air_change: float,
    air_change_from: str,
    house_air: float,
    air_budget: float,
    smoking: str,
) -> Answer:
    """What the water adds to the air, how sure that is, and the risk by two reckonings."""
    moved = transfer(daily_use, release, house_volume, air_change)
    spreads = (
        SPREAD_WATER_USE if daily_use_from == "guess" else 1.0,
        SPREAD_AIR_CHANGE if air_change_from == "guess" else SPREAD_MEASURED,
        SPREAD_RELEASE,
    )
    spread = combined_spread(spreads)
    added = raw_radon * moved
    air = _Air(
        added,
        spread,
        lognormal_point(added, spread, -Z_95),
        lognormal_point(added, spread, Z_95),
        share_above(FIX_AIR, added, spread),
    )
    risk = risk_by_water(raw_radon)
    given = {
        "k": Quantity(decay_constant(RADON_HALF_LIFE), rate, label="decay of radon"),
        "s": Quantity(spread, number, label="geometric spread of such houses"),
        "z": Quantity(Z_95, number, label="holds 19 of 20"),
        "a": Quantity(LUNG * _TOLD_FOR, share, 2, "lung cancer, from water of strength C_1"),
        "b": Quantity(STOMACH * _TOLD_FOR, share, 2, "stomach cancer, likewise"),
        "C_1": Quantity(_TOLD_FOR, radon_fields.raw_radon, label="water that both are told for"),
    }
    return Answer(
        outputs={
            "air_added": added,
            "air_low": air.low,
            "air_high": air.high,
            "over_chance": air.over if air.over >= RAREST else None,
            "dilution": 1 / moved,
            "air_share": added / house_air if added <= house_air else None,
            "water_budget": water_for_air(air_budget, moved),
            "risk_air": risk_by_air(added, smoking),
            "risk_lung": risk.lung,
            "risk_stomach": risk.stomach,
        },
        findings=_findings(air, raw_radon, house_air),
        steps=(
            Step("The air holds one part in", "N = V_h * (l_a + k) / (Q_u * e)", given),
            Step("Added to the air", "C_x = C_r / N"),
            Step("At the least, 19 houses in 20", "C_l = C_x / s**z", given),
            Step("At the most", "C_m = C_x * s**z", given),
            Step("Water that would add just what you allow", "C_k = C_b * N"),
            Step("Lung cancer, average house, NRC 1999", "r_l = a * C_r / C_1", given),
            Step("Stomach cancer, NRC 1999", "r_s = b * C_r / C_1", given),
        ),
        charts=(_spread_chart(air), _levels_chart(raw_radon)),
    )


def _findings(air: _Air, water: float, house_air: float) -> tuple[Finding, ...]:
    found = [_headline(air)]
    if air.added < FIX_AIR <= air.high:
        found.append(
            Finding(
                "caution",
                "It could be far worse.",
                "Such houses differ: in one of 40 the water brings {air_high} or more. A long-term "
                "test of the air and a measured air change say which house this is.",
            )
        )
    if air.added > house_air:
        found.append(
            Finding(
                "caution",
                "More than the air test found.",
                "The test found {house_air} from all sources. So the house has more air, more air "
                "change or less water running than was entered, or the test was too short.",
            )
        )
    elif house_air >= FIX_AIR and air.added < house_air / 2:
        found.append(
            Finding(
                "danger",
                "The ground first.",
                "The air holds {house_air}, over the level at which US EPA advises to fix it, and "
                "the water is only {air_share} of that. Treating the water alone will not do.",
            )
        )
    over = [level.body for level in WATER if water >= level.value]
    if over:
        found.append(
            Finding(
                "caution",
                "Over published levels.",
                "The water, {raw_radon}, is at or over: " + "; ".join(over) + ". "
                f"Looked up in {levels.READ}. No such level binds a private well: ask your state "
                "today.",
            )
        )
    else:
        found.append(
            Finding(
                "good",
                "Under every level listed.",
                "The water, {raw_radon}, is under all levels of the list below. No amount is "
                "without risk.",
            )
        )
    found.append(
        Finding(
            "caution",
            "Two reckonings of risk.",
            "US EPA's is for air, and so for this house. NRC's is for water in a house of average "
            "transfer. They rest on different counts of people: neither add nor compare them.",
        )
    )
    return tuple(found)


def _headline(air: _Air) -> Finding:
    given = {"outdoors": Quantity(OUTDOOR_AIR, _ADDED)}
    text = "This water adds about {air_added} to the air; "
    range_ = "19 in 20 such houses lie between {air_low} and {air_high}."
    if air.added >= FIX_AIR:
        return Finding(
            "danger",
            "Over the action level by the water alone.",
            text + range_ + " US EPA advises to fix a house from 4 pCi/L on. Test the air, and "
            "plan treatment.",
        )
    if air.added > OUTDOOR_AIR:
        return Finding(
            "caution",
            "It matters.",
            text + "outdoor air holds {outdoors}. " + range_ + " Test the air before you decide.",
            given,
        )
    return Finding(
        "good",
        "Little.",
        text + "less than outdoor air itself holds, {outdoors}. " + range_,
        given,
    )


def _spread_chart(air: _Air) -> Chart:
    places = [(houses, lognormal_point(air.added, air.spread, z)) for houses, z in _HOUSES]
    return Chart(
        title="Radon that this water brings into the air of houses like this",
        says="Out of a hundred houses that fit what was entered, so many have less than the line "
        "shows. The line climbs ever more steeply: a few houses have many times the middle.",
        x=Axis("Houses that have less", share),
        y=Axis("Radon added to the air", _ADDED),
        lines=(Line("added by the water", tuple(places)),),
        limits=(
            Limit("US EPA: fix", FIX_AIR),
            *(Limit(level.body, level.value) for level in AIR if level.body == "WHO"),
            Limit("outdoor air", OUTDOOR_AIR),
        ),
        marks=(Mark("as entered", 0.5, air.added, here=True),),
    )


def _levels_chart(water: float) -> Bars:
    return Bars(
        title="This water beside published levels",
        says=f"Levels for radon in water, looked up in {levels.READ}. No such level binds a "
        "private well.",
        like=radon_fields.raw_radon,
        bars=(
            Bar("This water", water),
            *(Bar(level.body, level.value, level.words) for level in WATER),
        ),
    )


_ADDED = Output(
    name="air_added",
    label="Radon added to the air",
    symbol="C_x",
    kind=radon,
    si="Bq/m³",
    high=FIX_AIR,
    outside="The level at which US EPA advises to fix a house.",
)
CALCULATOR = Calculator(
    name="radon_in_air",
    title="Radon in the air from the water",
    question="How much radon does this house's water bring into its air, and does it matter?",
    inputs=(
        radon_fields.raw_radon,
        replace(open_tank_fields.daily_use, group=WATER_USE),
        Choice(
            name="daily_use_from",
            label="How the water use is known",
            options={"meter": "from a meter", "guess": "a guess"},
            default="meter",
            origin=INVENTED,
            measure="A guess from the number of people is off by more than a factor of 1.8 in one "
            "house of three (National Research Council 1999). Leave out what runs outdoors.",
            group=WATER_USE,
        ),
        Input(
            name="release",
            label="Share of its radon that the water gives off indoors",
            symbol="e",
            kind=share,
            default="52 %",
            origin=f"[nrc-1999] table 3.1: {RELEASE}, all uses of a house together",
            low=5 * percent,
            high=1,
            measure="Leave it. Showers, dishwashers and laundry give off most of theirs, a toilet "
            "or a glass of water little (from memory).",
            group=WATER_USE,
        ),
        radon_fields.house_volume,
        radon_fields.air_change,
        Choice(
            name="air_change_from",
            label="How the air change is known",
            options={
                "guess": "a guess",
                "measured": "measured over months, or set by a fan that runs all day",
            },
            default="guess",
            origin="nobody has measured it in most houses",
            measure="A guess is off by more than a factor of 2.3 in one house of three (NRC 1999).",
            group=HOUSE,
        ),
        Input(
            name="house_air",
            label="Radon in the house's air, from all sources",
            symbol="C_h",
            kind=radon,
            si="Bq/m³",
            default="3.1 pCi/L",
            origin=INVENTED,
            low=0.1 * pCi / L,
            high=2000 * pCi / L,
            measure="A test of three months or longer, in a room that is lived in. A test of two "
            "days tells about two days.",
            group=HOUSE,
            sure="20 %",
        ),
        Input(
            name="air_budget",
            label="Radon that you let the water add to the air",
            symbol="C_b",
            kind=radon,
            si="Bq/m³",
            default="0.4 pCi/L",
            origin="as much as outdoor air holds [nrc-1999]: the yardstick of the proposal of 1999",
            low=0.01 * pCi / L,
            high=20 * pCi / L,
            measure="A decision, not a measurement: talk it over with the household.",
            group=ACCEPTED,
        ),
        Choice(
            name="smoking",
            label="For whom the risk is told",
            options={
                "all": "people as they are, smokers and not",
                "never": "never smoked",
                "smokes": "smokes",
            },
            default="all",
            origin="[epa-2003] has all three",
            measure="Who lives there. Nothing lowers this risk as much as to stop smoking.",
            group=ACCEPTED,
        ),
    ),
    outputs=(
        _ADDED,
        Output(
            name="air_low",
            label="19 such houses in 20: at least",
            symbol="C_l",
            kind=radon,
            si="Bq/m³",
            digits=2,
        ),
        Output(
            name="air_high",
            label="19 such houses in 20: at most",
            symbol="C_m",
            kind=radon,
            si="Bq/m³",
            digits=2,
        ),
        Output(
            name="over_chance",
            label="Such houses that the water alone brings to 4 pCi/L",
            kind=share,
            digits=2,
            none="fewer than 1 in 1000",
        ),
        Output(name="dilution", label="The air holds one part in", symbol="N", kind=number),
        Output(
            name="air_share",
            label="Share of the house's radon that comes with the water",
            kind=share,
            digits=2,
            none="more than the air test found in all",
        ),
        Output(
            name="water_budget",
            label="Water that would add just what you allow",
            symbol="C_k",
            kind=radon,
        ),
        Output(
            name="risk_air",
            label="Lifetime risk of death by lung cancer from what is added, by US EPA 2003",
            kind=share,
            digits=2,
            none="the table ends at 20 pCi/L",
        ),
        Output(
            name="risk_lung",
            label="Lifetime risk of lung cancer from such water in an average house, by NRC 1999",
            symbol="r_l",
            kind=share,
            digits=2,
        ),
        Output(
            name="risk_stomach",
            label="Lifetime risk of stomach cancer from drinking it, by NRC 1999",
            symbol="r_s",
            kind=share,
            digits=2,
        ),
    ),
    work=radon_in_air,
    cautions=(cautions.RADON_HEALTH, cautions.LOCAL_CODE),
    sources=(
        "nrc-1999",
        "nazaroff-1987",
        "icrp-107",
        "epa-2003",
        *levels.sources_of("radon_water", "radon_air"),
    ),
    leaves={"water_budget": ("target_radon",)},
)
