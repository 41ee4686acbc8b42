"""The state of a water: its carbon dioxide, what it does to chalk, and what air, heat and bases
do to it."""

from dataclasses import replace
from math import log10
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.fields import INVENTED, raw_water, water_fields
from calc.fields.raw_water import RawWater
from calc.fields.water_fields import LEAST_PH, MOST_PH
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.calcite import (
    CALCITE,
    MAGNESIA,
    SODA_ASH,
    Base,
    Water,
    dissolved_to,
    heated,
    langelier,
    vented,
    with_base,
)
from calc.physics.carbonate import (
    CACO3_EQUIVALENT,
    CO2_MOLAR,
    LITRES,
    Carbonate,
    co2_at_rest,
    constants,
    from_co2,
    log_calcite,
    saturation_index,
)
from calc.physics.radon_solubility import ICE_POINT
from calc.physics.water_report import strength_of_solids
from calc.units import L, concentration, mg, number, share, temperature

CHANGES = "What is done to it"
NEAR = 0.2  # an index this near 0 is 0: pH to 0.1, alkalinity and calcium to 10 %
MUCH = 0.4  # over 0 by so much a heater crusts, from memory
# Of a chart: points; most of a base over what calcite takes to be at rest, and the least, kg/m³.
POINTS, MOST_DOSE, LEAST_DOSE = 10, 1.3, 10 * mg / L


class _Seen(NamedTuple):
    """A changed water: its pH and its saturation index."""

    ph: float
    saturation: float


class _Found(NamedTuple):
    """The raw water and what becomes of it: at rest with calcite, at rest with the blower's
    air, in the heater, and with magnesia; kg/m³ of calcite that it takes to be at rest."""

    raw: Water
    state: Carbonate
    saturation: float
    stone: float
    rested: _Seen
    vented: _Seen
    hot: _Seen
    dosed: _Seen
    air: float


def carbonate(
    raw_ph: float,
    alkalinity: float,
    calcium: float,
    water_temperature: float,
    solids: float,
    air_co2: float,
    heater_temperature: float,
    magnesia_dose: float,
) -> Answer:
    """Carbon dioxide, saturation index and CCPP of a water, and what moves them."""
    asked = RawWater(raw_ph, alkalinity, calcium, water_temperature)
    raw = asked.water(strength_of_solids(solids))
    stone, air = dissolved_to(raw), co2_at_rest(water_temperature, air_co2)
    found = _Found(
        raw,
        raw.state(),
        raw.saturation(),
        stone * CALCITE.molar,
        _seen(with_base(raw, CALCITE, stone)),
        _seen(vented(raw, air)),
        _seen(heated(raw, heater_temperature)),
        _seen(with_base(raw, MAGNESIA, magnesia_dose / MAGNESIA.molar)),
        air,
    )
    chalk = 2 * CACO3_EQUIVALENT * raw.calcium
    shortcut = langelier(raw_ph, solids, chalk, alkalinity, water_temperature)
    return Answer(
        outputs={
            "co2": found.state.co2 * CO2_MOLAR,
            "saturation_index": found.saturation,
            "ccpp": -found.stone,
            "shortcut": shortcut,
            "shortcut_error": shortcut - found.saturation,
            "calcite_ph": found.rested.ph,
            "vented_ph": found.vented.ph,
            "vented_index": found.vented.saturation,
            "hot_ph": found.hot.ph,
            "hot_index": found.hot.saturation,
            "magnesia_ph": found.dosed.ph,
        },
        findings=_findings(found),
        steps=_steps(found, raw_ph - shortcut, _logarithms(found, solids, chalk, alkalinity)),
        charts=(_venting(found), _bases(found)),
    )


def _seen(water: Water) -> _Seen:
    state = water.state()
    index = saturation_index(state, water.calcium, water.temperature, water.strength)
    return _Seen(state.ph, index)


def _findings(found: _Found) -> tuple[Finding, ...]:
    findings = [_headline(found.saturation, found.stone)]
    ph = found.state.ph
    if ph < LEAST_PH:
        findings.append(
            Finding(
                "caution",
                "Acid.",
                "Under pH 6.5, the low end of US EPA's secondary standard (for public supplies, "
                "advice only). {co2} of carbon dioxide make it so. Acid water takes copper and "
                "lead from pipes: have a first-draw sample tested.",
            )
        )
    if ph > MOST_PH:
        findings.append(
            Finding(
                "caution",
                "Alkaline.",
                "Over pH 8.5, the high end of US EPA's secondary standard (for public supplies, "
                "advice only).",
            )
        )
    findings += _air(found)
    if found.hot.saturation > MUCH:
        findings.append(
            Finding(
                "caution",
                "Scale in the heater.",
                "At {heater_temperature} the index is {hot_index}. Chalk dissolves worse in hot "
                "water than in cold.",
            )
        )
    if found.dosed.ph > MOST_PH:
        findings.append(
            Finding(
                "caution",
                "Too much magnesia.",
                "{magnesia_dose} of it bring the water to pH {magnesia_ph}. Calcite stops by "
                "itself, magnesia does not.",
            )
        )
    return tuple(findings)


def _headline(index: float, stone: float) -> Finding:
    if index > NEAR:
        return Finding(
            "caution",
            "Can make scale.",
            "The saturation index is {saturation_index}. At rest {ccpp} of chalk would have "
            "fallen out.",
        )
    if index < -NEAR:
        return Finding(
            "caution",
            "Dissolves chalk.",
            "The saturation index is {saturation_index}. The water lays no chalk on pipes and "
            "would take {taken} of it from a bed of calcite, which brings it to pH {calcite_ph}.",
            {"taken": Quantity(stone, concentration)},
        )
    return Finding(
        "good",
        "At rest with chalk.",
        "The saturation index is {saturation_index}, 0 as far as these measurements can tell.",
    )


def _air(found: _Found) -> list[Finding]:
    if found.vented.saturation > NEAR:
        return [
            Finding(
                "caution",
                "Air makes it scale.",
                "When its carbon dioxide has left, the index is {vented_index}: chalk settles in "
                "the aerator, the open tank and the heater.",
            )
        ]
    if found.state.ph < LEAST_PH <= found.vented.ph:
        return [
            Finding(
                "good",
                "Air cures most of it.",
                "An aerator that drives out all the carbon dioxide it can brings this water to pH "
                "{vented_ph}, and adds nothing to it.",
            )
        ]
    return []


def _logarithms(
    found: _Found, solids: float, chalk: float, alkalinity: float
) -> dict[str, Quantity]:
    """What the steps need of logarithms: to base 10, of mg/L in the shortcut."""
    raw, milligram = found.raw, mg / L
    solubility = -log_calcite(raw.temperature)
    known = {
        "p_1": (
            "first constant of carbonic acid, pK1",
            -log10(constants(raw.temperature, raw.strength).first / LITRES),
        ),
        "l_p": (
            "logarithm of the activities of calcium and carbonate multiplied",
            found.saturation - solubility,
        ),
        "p_s": ("solubility of calcite, pKs", solubility),
        "A": ("for the solids: (log TDS - 1) / 10", (log10(solids / milligram) - 1) / 10),
        "B": ("for the temperature: 34.55 - 13.12 log T", 34.55 - 13.12 * log10(raw.temperature)),
        "C": ("for the calcium as CaCO3: log C - 0.4", log10(chalk / milligram) - 0.4),
        "D": ("for the alkalinity: log A", log10(alkalinity / milligram)),
    }
    return {letter: Quantity(value, number, 5, label) for letter, (label, value) in known.items()}


def _steps(found: _Found, rest_ph: float, logs: dict[str, Quantity]) -> tuple[Step, ...]:
    given = logs | {
        "b": Quantity(
            found.state.bicarbonate * CO2_MOLAR,
            concentration,
            4,
            "bicarbonate, counted as carbon dioxide",
        ),
        "x_k": Quantity(
            found.stone,
            concentration,
            4,
            "calcite that dissolves until the index is 0, found by trial",
        ),
        "pH_s": Quantity(rest_ph, number, 4),
    }
    return (
        Step("Carbon dioxide", "c = b * 10**(p_1 - pH_w)", given),
        Step("Saturation index", "S_I = l_p + p_s", given),
        Step("Chalk that would fall out", "K = -x_k", given),
        Step("pH of rest by the shortcut", "pH_s = 9.3 + A + B - C - D", given),
        Step("Langelier's index by the shortcut", "L_I = pH_w - pH_s", given),
        Step("Error of the shortcut", "E_L = L_I - S_I", given),
    )


def _venting(found: _Found) -> Chart:
    water, first = found.raw, found.state.co2

    def at(gone: float) -> float:
        left = first + (found.air - first) * gone
        return from_co2(left, water.alkalinity, water.temperature, water.strength).ph

    ways = [1 - (1 - i / POINTS) ** 2 for i in range(POINTS + 1)]
    return Chart(
        title="pH as carbon dioxide leaves",
        says="Half of it gone is 0.3 up, nine tenths one whole unit. At the end the water is at "
        "rest with the blower's air.",
        x=Axis("Way to rest with the blower's air", share),
        y=Axis("pH", number),
        lines=(Line("in this water", tuple((gone, at(gone)) for gone in ways)),),
        limits=(Limit("pH 6.5", LEAST_PH),),
        marks=(Mark("as it is", 0.0, found.state.ph, here=True),),
    )


def _bases(found: _Found) -> Chart:
    enough = max(found.stone, LEAST_DOSE)
    doses = [MOST_DOSE * enough * i / POINTS for i in range(POINTS + 1)]

    def line(label: str, base: Base, doses: list[float]) -> Line:
        def at(dose: float) -> float:
            return with_base(found.raw, base, dose / base.molar).state().ph

        return Line(label, tuple((dose, at(dose)) for dose in doses))

    stone = [enough * i / POINTS for i in range(POINTS + 1)]
    return Chart(
        title="pH against what dissolves in it",
        says="Calcite stops where its line ends, at rest with the water. Soda ash goes on, and "
        "magnesia, of which the least is needed, goes highest.",
        x=Axis("Base that has dissolved", concentration),
        y=Axis("pH", number),
        lines=(
            line("calcite", CALCITE, stone),
            line("soda ash", SODA_ASH, doses),
            line("magnesia", MAGNESIA, [dose / 2 for dose in doses]),
        ),
        limits=(Limit("pH 8.5", MOST_PH),),
        marks=(Mark("as it is", 0.0, found.state.ph, here=True),),
    )


CALCULATOR = Calculator(
    name="carbonate",
    title="The state of a water",
    question="How much carbon dioxide is in the water, does it dissolve chalk or lay it down, and "
    "what do air, heat and a neutralizer do to it?",
    inputs=(
        *raw_water.INPUTS,
        water_fields.solids,
        replace(water_fields.air_co2, group=CHANGES),
        Input(
            name="heater_temperature",
            label="Temperature in the water heater",
            symbol="T_h",
            kind=temperature,
            default="130 °F",
            origin=INVENTED,
            low=20 + ICE_POINT,
            high=80 + ICE_POINT,
            measure="Thermometer at the nearest hot tap, run until it stays.",
            group=CHANGES,
            caution="Hot water scalds in seconds at 140 °F.",
            sure="5 °F",
        ),
        Input(
            name="magnesia_dose",
            label="Magnesia that dissolves in it",
            kind=concentration,
            default="12 mg/L",
            origin="for trying: a bed with magnesia gives more to water that stands",
            low=0,
            high=100 * (mg / L),
            measure="Not measured: try values, and compare the pH with a sample after a night.",
            group=CHANGES,
            once=False,
        ),
    ),
    outputs=(
        Output(name="co2", label="Carbon dioxide", symbol="c", kind=concentration),
        Output(
            name="saturation_index",
            label="Saturation index of calcite",
            symbol="S_I",
            kind=number,
        ),
        Output(
            name="ccpp",
            label="CCPP: chalk that falls out, under 0 dissolves",
            symbol="K",
            kind=concentration,
        ),
        Output(
            name="shortcut",
            label="Langelier's index by the shortcut",
            symbol="L_I",
            kind=number,
        ),
        Output(
            name="shortcut_error",
            label="Error of the shortcut",
            symbol="E_L",
            kind=number,
            digits=2,
        ),
        Output(name="calcite_ph", label="pH at rest with calcite", kind=number),
        Output(name="vented_ph", label="pH at rest with the blower's air", kind=number),
        Output(name="vented_index", label="Saturation index then", kind=number),
        Output(name="hot_ph", label="pH in the heater", kind=number),
        Output(name="hot_index", label="Saturation index in the heater", kind=number),
        Output(name="magnesia_ph", label="pH with the magnesia", kind=number),
    ),
    work=carbonate,
    trials=200,
    cautions=(
        cautions.NO_INDEX,
        cautions.LEAVES_CO2,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "plummer-1982",
        "stumm-morgan-1996",
        "davies-1962",
        "malmberg-1956",
        "phreeqc-3",
        "langelier-1936",
        "sm-2330",
        "edwards-1996",
        "cfr-143-3",
    ),
)
