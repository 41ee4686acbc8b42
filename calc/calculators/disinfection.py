"""Chlorine for a well, its plumbing and a tank: what to pour or weigh, and how long it stands."""

from dataclasses import replace
from math import pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Bar, Bars, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, well_fields
from calc.fields.house_tank_fields import water_now
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.chlorine import (
    ASCORBIC,
    CHLORINE,
    acid_constant,
    ascorbic_acid,
    dry_dose,
    hypochlorous_share,
    level_given,
    liquid_dose,
)
from calc.physics.well import stored_volume
from calc.units import (
    L,
    concentration,
    duration,
    ft,
    gal,
    hour,
    inch,
    length,
    mass,
    mg,
    number,
    percent,
    share,
    temperature,
    volume,
)

WEAK, STRONG = 50 * mg / L, 200 * mg / L  # common practice, no source: what published tables span
SHORT, LONG = 12 * hour, 24 * hour  # [frederick-disinfect]
SLOW = 0.3  # share of hypochlorous acid under which the kill is slow; common practice, no source
BETWEEN = 0.20  # no bleach is stronger, no dry product weaker; common practice, no source
PER_LITRE = 1000.0  # kg/m³ in a liquid of 100 %
WELL, PLUMBING, DOSE = "Well", "Plumbing and tank", "Chlorine"


class _Water(NamedTuple):
    """What is treated, m³."""

    casing: float
    pipe: float
    closed: float
    open: float

    @property
    def from_well(self) -> float:
        """What is dosed through the well: its water, and what it then sends to the taps."""
        return self.casing + self.pipe + self.closed


def disinfection(
    casing_bore: float,
    well_depth: float,
    static_level: float,
    house_pipe: float,
    house_pipe_bore: float,
    closed_tanks: float,
    open_tank_dosed: float,
    chlorine_level: float,
    shock_product: str,
    shock_strength: float,
    chlorinated_ph: float,
    water_now: float,
    shock_time: float,
) -> Answer:
    """The product for each place, the level it gives at first, and what neutralizes it."""
    _check(well_depth, static_level, shock_product, shock_strength)
    column = well_depth - static_level
    pipe = stored_volume(house_pipe_bore, house_pipe)
    water = _Water(stored_volume(casing_bore, column), pipe, closed_tanks, open_tank_dosed)
    whole = (water.from_well + water.open) * chlorine_level
    is_liquid = shock_product == "liquid"
    dose = liquid_dose if is_liquid else dry_dose
    well = dose(water.from_well, chlorine_level, shock_strength)
    tank = dose(water.open, chlorine_level, shock_strength)
    first = level_given(water.from_well * chlorine_level, water.casing)
    killing = hypochlorous_share(chlorinated_ph, water_now)
    return Answer(
        outputs={
            "into_well": well if is_liquid else None,
            "into_tank": tank if is_liquid else None,
            "weigh_well": None if is_liquid else well,
            "weigh_tank": None if is_liquid else tank,
            "casing_water": water.casing,
            "plumbing_water": pipe + closed_tanks,
            "first_level": first,
            "killing_share": killing,
            "neutralizer": ascorbic_acid(whole),
        },
        findings=(
            _headline(chlorine_level, is_liquid, shock_strength < BETWEEN),
            *_handling(water.open, is_liquid, first),
            *_conditions(killing, shock_time),
        ),
        steps=_steps(water, whole, is_liquid, water_now),
        charts=(_places(water, chlorine_level), _by_ph(chlorinated_ph, killing, water_now)),
    )


def _check(depth: float, level: float, product: str, strength: float) -> None:
    if depth <= level:
        says = "must be below the static level of {static_level}"
        raise Refused("contradiction", "well_depth", says=says)
    if product == "liquid" and strength > BETWEEN:
        raise Refused("contradiction", "shock_strength", says="is more than any liquid bleach has")


def _headline(level: float, is_liquid: bool, is_weak: bool) -> Finding:
    if is_weak and not is_liquid:
        return Finding(
            "danger",
            "Read the label.",
            "Dry products have 65 to 70 % of available chlorine. {shock_strength} is a liquid's "
            "figure: with it you would weigh ten times too much.",
        )
    much = "{into_well} of the liquid" if is_liquid else "{weigh_well} of the dry product"
    says = f"{much} for well and plumbing, to bring all their water to {{chlorine_level}}."
    if level < WEAK:
        return Finding("caution", "Too weak.", f"{says} Published tables ask for 50 mg/L or more.")
    if level > STRONG:
        return Finding(
            "caution",
            "Too strong.",
            f"{says} More is not better: over 200 mg/L the pH climbs, the chlorine kills less and "
            "eats more metal and rubber.",
        )
    return Finding("good", "Measured out.", says)


def _handling(tank: float, is_liquid: bool, first: float) -> list[Finding]:
    findings = []
    if tank:
        much = "{into_tank}" if is_liquid else "{weigh_tank}"
        findings.append(
            Finding(
                "caution",
                "The open tank apart.",
                f"Into its own water {much}, stirred. Blower on, lid tight, nobody's head inside.",
            )
        )
    if not is_liquid:
        findings.append(
            Finding(
                "caution",
                "Dissolve it first.",
                "In a clean plastic pail, product into water. Tablets dropped down the well lodge "
                "on pump and ledges, and in arsenic country dry products are told against.",
            )
        )
    if first > STRONG:
        findings.append(
            Finding(
                "caution",
                "Strong at first.",
                "Until it is drawn to the taps the well holds {first_level}. Thin it in many pails "
                "of water, start the hose before you pour, and rinse the casing afterwards.",
            )
        )
    return findings


def _conditions(killing: float, contact: float) -> list[Finding]:
    findings = []
    if killing < SLOW:
        findings.append(
            Finding(
                "caution",
                "The pH is high.",
                "Only {killing_share} of the chlorine is in the form that kills well. Give it the "
                "longer time. Never add acid to bring the pH down: ask a professional.",
            )
        )
    if contact < SHORT:
        findings.append(
            Finding("caution", "Too short.", "Let it stand 12 hours at least, 24 at most.")
        )
    if contact > LONG:
        findings.append(
            Finding(
                "caution",
                "Too long.",
                "After 24 hours little more is killed, and chlorine goes on eating metal, rubber "
                "and the pump's cable.",
            )
        )
    return findings


def _steps(water: _Water, whole: float, is_liquid: bool, warmth: float) -> tuple[Step, ...]:
    given = {
        "pi": Quantity(pi, number, 5, "half turn"),
        "V_l": Quantity(water.pipe, volume),
        "V_w": Quantity(water.from_well, volume),
        "V_p": Quantity(water.pipe + water.closed, volume),
        "c_1": Quantity(PER_LITRE, concentration, 4, "chlorine in a liquid of 100 %"),
        "M": Quantity(whole, mass),
        "pK": Quantity(acid_constant(warmth), number, 4),
        "T": Quantity(warmth / temperature.unit("K").scale, number, 5, "temperature in kelvins"),
        "m_a": Quantity(ASCORBIC, number, 5, "molar mass of ascorbic acid"),
        "m_c": Quantity(CHLORINE, number, 4, "molar mass of chlorine, Cl2"),
    }
    liquid = (
        Step("Into the well", "X_w = V_w * C / (c_1 * p)", given),
        Step("Into the open tank", "X_t = V_o * C / (c_1 * p)", given),
    )
    dry = (
        Step("For the well", "m_w = V_w * C / p", given),
        Step("For the open tank", "m_t = V_o * C / p", given),
    )
    return (
        Step("Water in the well", "V_c = pi * D_c**2 / 4 * (h_b - h_s)", given),
        Step("Water in the pipes", "V_l = pi * d_p**2 / 4 * L_p", given),
        Step("Plumbing", "V_p = V_l + V_k", given),
        Step("Dosed through the well", "V_w = V_c + V_p", given),
        *(liquid if is_liquid else dry),
        Step("Level in the well at first", "C_1 = C * V_w / V_c", given),
        Step("pH at which half of it kills well", "pK = 3000 / T - 10.0686 + 0.0253 * T", given),
        Step("Share that kills well", "f = 1 / (1 + 10**(pH_c - pK))", given),
        Step("Chlorine in all", "M = (V_w + V_o) * C", given),
        Step("Ascorbic acid that neutralizes it", "m_n = M * m_a / m_c", given),
    )


def _places(water: _Water, level: float) -> Bars:
    names = ("Well", "Pipes", "Pressure tanks and heater", "Open tank")
    return Bars(
        title="Where the chlorine goes",
        says="Mass of chlorine for each place. The first three are poured into the well together.",
        like=NEUTRALIZER,
        bars=tuple(Bar(name, each * level) for name, each in zip(names, water, strict=True)),
    )


def _by_ph(ph: float, killing: float, warmth: float) -> Chart:
    points = tuple((n / 4, hypochlorous_share(n / 4, warmth)) for n in range(20, 41))
    return Chart(
        title="What pH does to chlorine",
        says="The share of the chlorine in the form that kills well falls from nearly all at pH 6 "
        "to a few hundredths at pH 9.",
        x=Axis("pH of the chlorinated water", number),
        y=Axis("Share that kills well", share),
        lines=(Line("Hypochlorous acid", points),),
        marks=(Mark("Yours", ph, killing, here=True),),
    )


NEUTRALIZER = Output(
    name="neutralizer",
    label="Ascorbic acid to neutralize all of it",
    symbol="m_n",
    kind=mass,
    us="oz",
    si="g",
)


def _volume(name: str, label: str, symbol: str, default: str, measure: str) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=volume,
        default=default,
        origin=INVENTED,
        low=0,
        high=5000 * gal,
        measure=measure,
        group=PLUMBING,
        sure="10 %",
    )


def _down(name: str, label: str, symbol: str, default: str, low: float, measure: str) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=length,
        us="ft",
        default=default,
        origin=INVENTED,
        low=low,
        high=2000 * ft,
        measure=measure,
        group=WELL,
        sure="2 ft",
    )


def _poured(name: str, label: str, symbol: str) -> Output:
    return Output(
        name=name, label=label, symbol=symbol, kind=volume, us="cups", si="mL",
        none="the product is dry: weigh it",
    )  # fmt: skip


def _weighed(name: str, label: str, symbol: str) -> Output:
    return Output(
        name=name, label=label, symbol=symbol, kind=mass, us="oz", si="g",
        none="the product is liquid: pour it",
    )  # fmt: skip


CALCULATOR = Calculator(
    name="disinfection",
    title="Disinfection",
    question="How much chlorine brings the well, the plumbing and a tank to the level wanted?",
    inputs=(
        well_fields.casing_bore,
        _down(
            "well_depth",
            "Depth of the well",
            "h_b",
            "160 ft",
            3 * ft,
            "Driller's record, or a clean weight on a line, power off and locked.",
        ),
        _down(
            "static_level",
            "Depth of the static water level",
            "h_s",
            "30 ft",
            0,
            "Sounder, after hours without pumping. Both from the same mark. All the water in the "
            "well counts, down to the bottom.",
        ),
        Input(
            name="house_pipe",
            label="Length of all pipes, well to the last tap",
            symbol="L_p",
            kind=length,
            us="ft",
            default="400 ft",
            origin=INVENTED,
            low=0,
            high=5000 * ft,
            measure="Drop pipe, trench and house, hot and cold. A rough figure does: pipes hold "
            "little.",
            group=PLUMBING,
            sure="10 %",
        ),
        Input(
            name="house_pipe_bore",
            label="Inside diameter of most of it",
            symbol="d_p",
            kind=length,
            us="in",
            si="mm",
            default="1.049 in",
            origin="1 in pipe of schedule 40 bore, from memory",
            low=0.25 * inch,
            high=4 * inch,
            measure="From a table for the kind of pipe.",
            group=PLUMBING,
            sure="5 %",
        ),
        _volume(
            "closed_tanks",
            "Water in pressure tanks, heater and filters left in line",
            "V_k",
            "60 gal",
            "Heater by its label. Of a pressure tank the drawdown and what stays: about a third of "
            "its size. Nothing for what is on bypass.",
        ),
        _volume(
            "open_tank_dosed",
            "Water in an open tank or cistern that is dosed too",
            "V_o",
            "0 gal",
            "Its water now, full to the float. 0 where it is not to be dosed.",
        ),
        Input(
            name="chlorine_level",
            label="Level of chlorine wanted",
            symbol="C",
            kind=concentration,
            default="100 mg/L",
            origin="North Carolina's rule of 2024: at least 100 ppm; tables span 50 to 200",
            low=1 * mg / L,
            high=1000 * mg / L,
            measure="What your health department's sheet names. Iron and slime use some up: "
            "measure at a tap with strips for high levels.",
            group=DOSE,
        ),
        Choice(
            name="shock_product",
            label="Product",
            options={"liquid": "liquid bleach", "dry": "dry calcium hypochlorite"},
            default="liquid",
            origin="common practice, no source",
            measure="Plain and unscented, nothing thickened, no splash-less bleach, no stabilized "
            "pool tablets. One that is listed for drinking water where your code asks for it.",
            group=DOSE,
        ),
        Input(
            name="shock_strength",
            label="Its available chlorine",
            symbol="p",
            kind=share,
            default="6 %",
            origin="common practice, no source: a usual household bleach",
            low=1 * percent,
            high=80 * percent,
            measure="Label. Liquids 5 to 12.5 %, dry 65 to 70 %. Liquids lose strength on the "
            "shelf: buy fresh, read the date.",
            group=DOSE,
            sure="0.5 %",
        ),
        Input(
            name="chlorinated_ph",
            label="pH of the water with the chlorine in it",
            symbol="pH_c",
            kind=number,
            default="7.5",
            origin=INVENTED,
            low=5,
            high=11,
            measure="pH paper made for chlorinated water, or a meter. Strong chlorine bleaches the "
            "dye of common kits. The water's own pH is too low a guess: bleach raises it.",
            group=DOSE,
            sure="0.2",
        ),
        replace(water_now, group=DOSE),
        Input(
            name="shock_time",
            label="Time it stands",
            symbol="t_c",
            kind=duration,
            us="h",
            si="h",
            default="16 h",
            origin="invented example: from evening to noon",
            low=0.5 * hour,
            high=96 * hour,
            measure="From the last tap that smelled of chlorine to the first flushing.",
            group=DOSE,
        ),
    ),
    outputs=(
        _poured("into_well", "Pour into the well, for well and plumbing", "X_w"),
        _poured("into_tank", "Pour into the open tank", "X_t"),
        _weighed("weigh_well", "Weigh for well and plumbing", "m_w"),
        _weighed("weigh_tank", "Weigh for the open tank", "m_t"),
        Output(name="casing_water", label="Water in the well", symbol="V_c", kind=volume),
        Output(name="plumbing_water", label="Water in the plumbing", symbol="V_p", kind=volume),
        Output(
            name="first_level",
            label="Level in the well before it is drawn to the taps",
            symbol="C_1",
            kind=concentration,
        ),
        Output(
            name="killing_share",
            label="Share of the chlorine in the form that kills well",
            symbol="f",
            kind=share,
            digits=2,
        ),
        NEUTRALIZER,
    ),
    work=disinfection,
    cautions=(
        cautions.CHLORINE,
        cautions.WELL_PIT,
        cautions.CHLORINATED_WATER,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "cdc-drilled",
        "hickory-disinfect",
        "mesa-shock",
        "nc-2c-0111",
        "frederick-disinfect",
        "wi-dnr-bacteria",
        "agwt-disinfect",
        "morris-1966",
        "ciaaw-2021",
        "land-2005",
        "pg-disinfect",
        "cdc-dug",
        "alberta-shock",
        "ahs-shock",
        "st-clair-disinfect",
        "brunswick-disinfect",
    ),
)
