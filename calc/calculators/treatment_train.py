"""The train of treatment: one water followed through every box, and the order they stand in."""

from collections.abc import Mapping
from dataclasses import replace
from itertools import pairwise
from math import log10, pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Place, Track, Train
from calc.errors import Refused
from calc.fields import (
    BED,
    INVENTED,
    bed_fields,
    house_tank_fields,
    open_tank_fields,
    raw_water,
    treatment_fields,
    water_fields,
    well_pump_fields,
    well_tank_fields,
)
from calc.fields.raw_water import RawWater
from calc.fields.water_fields import LEAST_PH
from calc.model import Answer, Calculator, Choice, Finding, Output, Quantity, Step
from calc.physics.calcite import CALCITE, CALCIUM_MOLAR, SODIUM_MOLAR, dissolved_to
from calc.physics.carbonate import (
    CACO3_EQUIVALENT,
    CO2_MOLAR,
    LITRES,
    co2_at_rest,
    constants,
)
from calc.physics.train import (
    AIR_CO2,
    BOXES,
    TANKS,
    WASH_TIME,
    Plant,
    Stop,
    followed,
)
from calc.physics.treated_water import IRON_MOLAR, Treated, aired, oxidized
from calc.treatment_order import Facts, broken, ordered, reason
from calc.units import (
    L,
    area,
    concentration,
    duration,
    flow,
    gauge_pressure,
    loading,
    mg,
    number,
    psi,
    share,
    volume,
)
from calc.units import hardness as hardness_kind

PLACES = 6
ACID = 7.0
ENOUGH_PH = 7.2  # where pipes are copper, common practice, no source
STAINS = 0.3 * mg / L  # [cfr-143-3]
WEAK = 20 * psi  # at the tap, common practice, no source
SAVES = 2.0  # so many times less stone is worth a word
LABELS = {
    "well": "Well, pump 1",
    "sediment": "Coarse filter",
    "soda_ash": "Soda ash feed",
    "neutralizer": "Neutralizer",
    "iron_filter": "Iron filter",
    "softener": "Softener",
    "tank": "Open aerated tank",
    "pump": "Pump 2",
    "carbon": "Carbon",
    "cartridge": "Fine cartridge",
    "uv": "Cartridge and UV",
    "house": "House",
}
OPTIONS = {
    "none": "nothing",
    "sediment": "coarse filter",
    "soda_ash": "soda ash feed",
    "neutralizer": "neutralizer",
    "iron_filter": "iron filter",
    "softener": "softener",
    "tank_strong": "open tank, strong air",
    "tank_fair": "open tank, fair air",
    "carbon": "carbon filter",
    "cartridge": "fine cartridge",
    "uv": "cartridge and UV",
}
FOUND = ("sediment", "neutralizer", "tank_strong", "cartridge", "none", "none")


class _Side(NamedTuple):
    """What washes on one side of the open tank: its boxes, and the flow each asks, m³/s."""

    boxes: tuple[str, ...]
    asks: tuple[float, ...]

    @property
    def thirstiest(self) -> str:
        """The box that asks most, in words."""
        return LABELS[self.boxes[self.asks.index(max(self.asks))]].lower()

    @property
    def named(self) -> str:
        """The boxes in words, one after the other."""
        *others, last = [LABELS[box].lower() for box in self.boxes]
        return f"{', '.join(others)} and {last}".capitalize()

    @property
    def most(self) -> float | None:
        """The largest flow one of them asks; None where nothing is washed."""
        return max(self.asks, default=None)


class _Case(NamedTuple):
    """The train as found.

    raw    -- the water of the well
    boxes  -- as found, the tank with its kind of aeration
    plain  -- the same, the tank just called tank
    stops  -- the water behind each of them
    facts  -- for the rules
    well, house -- what washes before the open tank, and behind it
    needed -- water that one wash draws down the open tank by, m³
    stone, after_air -- that each m³ takes as found, and would take behind the tank, kg/m³
    alone  -- pH behind the air without stone, all iron rusted
    """

    raw: Treated
    boxes: tuple[str, ...]
    plain: tuple[str, ...]
    stops: tuple[Stop, ...]
    facts: Facts
    well: _Side
    house: _Side
    needed: float | None
    stone: float | None
    after_air: float | None
    alone: float


def treatment_train(
    raw_ph: float,
    alkalinity: float,
    hardness: float,
    raw_iron: float,
    water_temperature: float,
    service_flow: float,
    well_pump: float,
    well_cut_in: float,
    cut_in: float,
    float_open: float,
    tank_diameter: float,
    place_1: str,
    place_2: str,
    place_3: str,
    place_4: str,
    place_5: str,
    place_6: str,
) -> Answer:
    """The water behind every box, the order of the boxes, and what their backwash asks."""
    boxes = _boxes((place_1, place_2, place_3, place_4, place_5, place_6))
    sheet = RawWater(raw_ph, alkalinity, _as_calcium(hardness), water_temperature)
    raw = Treated(sheet.water(), iron=raw_iron / IRON_MOLAR)
    surface = pi * tank_diameter**2 / 4
    plant = Plant(service_flow, well_cut_in, cut_in, surface, float_open)
    case = _case(raw, boxes, plant)
    return Answer(
        outputs=_outputs(case),
        findings=(
            *_order_findings(case),
            *_water_findings(case),
            *_flow_findings(case, plant),
            *_wash_findings(case, well_pump),
        ),
        steps=_steps(case, plant),
        charts=_charts(case, plant),
    )


def _boxes(places: tuple[str, ...]) -> tuple[str, ...]:
    tanks = [n for n, box in enumerate(places, 1) if box in TANKS]
    if len(tanks) > 1:
        says = "is a second open tank: this page follows one"
        raise Refused("contradiction", f"place_{tanks[1]}", says=says)
    return tuple(box for box in places if box != "none")


def _as_calcium(hardness: float) -> float:
    return hardness / (2 * CACO3_EQUIVALENT) * CALCIUM_MOLAR


def _plain(box: str) -> str:
    return "tank" if box in TANKS else box


def _case(raw: Treated, boxes: tuple[str, ...], plant: Plant) -> _Case:
    stops = followed(raw, boxes, plant)
    tank = next((n for n, box in enumerate(boxes) if box in TANKS), None)
    well = _side(boxes if tank is None else boxes[:tank], plant)
    house = _side(() if tank is None else boxes[tank + 1 :], plant)
    air = _aired(raw, boxes)
    facts = Facts(
        acid=raw.body.state().ph < ACID,
        iron=IRON_MOLAR * raw.iron > STAINS,
        scales=tank is not None and air.body.saturation() > 0,
        washes=BOXES["neutralizer"].wash * plant.area <= stops[0].flow,
    )
    asked = house.most
    needed = None if asked is None else max(asked - stops[0].flow, 0.0) * WASH_TIME
    stone, sour = _stone(boxes, stops), oxidized(air, 1.0)
    after_air = None
    if stone is not None and tank is not None:
        after_air = max(dissolved_to(sour.body), 0.0) * CALCITE.molar
    plain = tuple(map(_plain, boxes))
    alone = sour.body.state().ph
    return _Case(raw, boxes, plain, stops, facts, well, house, needed, stone, after_air, alone)


def _aired(raw: Treated, boxes: tuple[str, ...]) -> Treated:
    """The raw water behind the air alone; without an open tank as it came."""
    tank = next((box for box in boxes if box in TANKS), None)
    if tank is None:
        return raw
    return aired(raw, TANKS[tank], co2_at_rest(raw.body.temperature, AIR_CO2))


def _side(boxes: tuple[str, ...], plant: Plant) -> _Side:
    washed = tuple(box for box in boxes if BOXES[box].wash)
    return _Side(washed, tuple(BOXES[box].wash * plant.area for box in washed))


def _stone(boxes: tuple[str, ...], stops: tuple[Stop, ...]) -> float | None:
    """Stone that the neutralizers dissolve, kg for each m³; None without one."""
    if "neutralizer" not in boxes:
        return None
    rises = (
        after.water.body.calcium - before.water.body.calcium
        for before, after in pairwise(stops)
        if after.box == "neutralizer"
    )
    return sum(rises) * CALCITE.molar


def _outputs(case: _Case) -> Mapping[str, float | None]:
    tap, has_tank = case.stops[-1], any(stop.box in TANKS for stop in case.stops)
    water = tap.water
    return {
        "tap_ph": water.body.state().ph,
        "tap_co2": water.body.state().co2 * CO2_MOLAR,
        "tap_hardness": water.hardness,
        "tap_iron": water.all_iron,
        "tap_index": water.body.saturation(),
        "radon_left": water.radon if has_tank else None,
        "sodium_brought": water.sodium * SODIUM_MOLAR,
        "stone_here": case.stone,
        "stone_after_air": case.after_air,
        "tank_flow": case.stops[0].flow if has_tank else None,
        "tap_flow": tap.flow,
        "tap_pressure": tap.pressure,
        "wash_well": case.well.most,
        "wash_house": case.house.most,
        "tank_needed": case.needed,
    }


def _order_findings(case: _Case) -> list[Finding]:
    if not case.boxes:
        return [Finding("caution", "Nothing in the train.", "The house gets the well's water.")]
    wrong = broken(case.plain, case.facts)
    if not wrong:
        return [
            Finding(
                "good",
                "In order.",
                "No box stands before one that it needs. Whether the boxes are enough is another "
                "question: see below.",
            )
        ]
    told = {rule.why: rule.level for rule in wrong}
    return [Finding(level, "Out of order.", why) for why, level in told.items()]


def _water_findings(case: _Case) -> list[Finding]:
    found, tap = [], case.stops[-1].water
    if tap.body.state().ph < LEAST_PH:
        found.append(
            Finding(
                "caution",
                "Acid at the tap.",
                "pH {tap_ph} reaches the house and eats copper. US EPA's secondary standard is 6.5 "
                "to 8.5 (for public supplies, advice only). Stone, soda ash or more air.",
            )
        )
    if tap.all_iron > STAINS:
        found.append(
            Finding(
                "caution",
                "Iron at the tap.",
                "{tap_iron} reaches the house; from 0.3 mg/L it stains.",
            )
        )
    if _saves(case):
        found.append(
            Finding(
                "caution",
                "Air first would save stone.",
                "Before the open tank the bed gives {stone_here} of stone to the water; behind it "
                "the water could take at most {stone_after_air}.",
            )
        )
    if case.stone and case.after_air is not None and case.alone >= ENOUGH_PH:
        found.append(
            Finding(
                "good",
                "Air alone would do.",
                "Behind the air, without any stone, this water is at pH {alone}. A bed less to "
                "wash, to fill and to lose pressure in, as long as the blower runs.",
                {"alone": Quantity(case.alone, number)},
            )
        )
    return found + _stage_findings(case)


def _saves(case: _Case) -> bool:
    """Whether the air before the stone would spare most of it."""
    if not case.stone or case.after_air is None:
        return False
    first = case.plain.index("neutralizer") < case.plain.index("tank")
    return first and case.stone > SAVES * case.after_air


def _stage_findings(case: _Case) -> list[Finding]:
    """What the water meets on its way."""
    found = []
    for before, after in pairwise(case.stops):
        entering = {"entering": Quantity(before.water.all_iron, concentration)}
        if after.box in TANKS and before.water.iron * IRON_MOLAR > STAINS:
            found.append(
                Finding(
                    "caution",
                    "Iron meets the air.",
                    "{entering} enters the open tank. What turns to rust there plugs the stones: "
                    "an iron filter before it, or clean it often.",
                    entering,
                )
            )
        if after.box in TANKS and after.water.body.saturation() > 0:
            index = {"index": Quantity(after.water.body.saturation(), number, 2)}
            found.append(
                Finding(
                    "caution",
                    "Chalk in the open tank.",
                    "Behind the air the saturation index is {index}: over 0 chalk can settle on "
                    "stones and float. Look for a white crust at each cleaning.",
                    index,
                )
            )
        if after.box == "softener" and before.water.all_iron > STAINS:
            found.append(
                Finding(
                    "caution",
                    "Iron on the resin.",
                    "{entering} reaches the softener and seals its resin.",
                    entering,
                )
            )
    return found


def _flow_findings(case: _Case, plant: Plant) -> list[Finding]:
    tap = case.stops[-1]
    slowest = min(stop.flow for stop in case.stops)
    if slowest < plant.flow:
        return [
            Finding(
                "danger",
                "The boxes hold the flow back.",
                "Even clean they pass only {slowest} of the {service_flow} at the start of a pump "
                "run. Wider tanks, fewer boxes, or a second one beside the first.",
                {"slowest": Quantity(slowest, flow)},
            )
        ]
    if tap.pressure < WEAK:
        return [
            Finding(
                "caution",
                "Little pressure.",
                "At cut-in {tap_pressure} is left behind the last box, and every floor up takes "
                "4 psi more. Dirty filters take it first.",
            )
        ]
    return []


def _wash_findings(case: _Case, pump: float) -> list[Finding]:
    found = []
    if case.well.most is not None and case.well.most > pump:
        found.append(
            Finding(
                "danger",
                "The well side cannot wash it.",
                f"The {case.well.thirstiest} asks {{wash_well}} in a backwash, and pump 1 gives "
                "{well_pump}. The bed is not lifted, and cements. A narrower and taller tank, or "
                "two small ones washed in turn.",
            )
        )
    if case.house.most is not None and case.house.most > case.stops[0].flow:
        found.append(
            Finding(
                "danger",
                "The house side cannot wash it.",
                f"The {case.house.thirstiest} asks {{wash_house}} in a backwash. A pump 2 that is "
                "held so that the open tank cannot run dry passes no more than enters, "
                "{tank_flow}. One that is not draws the tank down by {tank_needed}, of the "
                "{float_open} over the intake. A narrower tank, or a place before the open tank.",
            )
        )
    return found + _turns(case, pump)


def _turns(case: _Case, pump: float) -> list[Finding]:
    """What may not happen at one hour."""
    found = []
    for side, most in ((case.well, pump), (case.house, case.stops[0].flow)):
        if len(side.asks) > 1 and sum(side.asks) > most:
            together = {"together": Quantity(sum(side.asks), flow)}
            found.append(
                Finding(
                    "caution",
                    "One wash at a time.",
                    f"{side.named} together ask {{together}}. Set their clocks two hours apart, "
                    "and check them after every power cut.",
                    together,
                )
            )
    if case.well.most is not None and "tank" in case.plain:
        left = {"left": Quantity(max(pump - case.well.most, 0.0), flow)}
        found.append(
            Finding(
                "caution",
                "A wash starves the open tank.",
                f"While the {case.well.thirstiest} washes, at most {{left}} is left for the open "
                "tank. At night, tank full, nobody drawing.",
                left,
            )
        )
    return found


def _steps(case: _Case, plant: Plant) -> tuple[Step, ...]:
    tap = case.stops[-1]
    state, body = tap.water.body.state(), tap.water.body
    first = constants(body.temperature, body.strength).first
    given = {
        "pi": Quantity(pi, number, 5, "a circle's circumference over its diameter"),
        "A_f": Quantity(plant.area, area, 4, "area of a filter tank"),
        "t_w": Quantity(WASH_TIME, duration, 3, "time of a backwash"),
        "p_1": Quantity(-log10(first / LITRES), number, 5, "first constant of carbonic acid, pK1"),
        "b_x": Quantity(
            state.bicarbonate * CO2_MOLAR,
            concentration,
            4,
            "bicarbonate at the tap, counted as carbon dioxide",
        ),
        "w_1": Quantity(_rate(case.well, plant), loading, 3, "backwash for each area, well side"),
        "w_2": Quantity(_rate(case.house, plant), loading, 3, "the same, house side"),
        "l_x": Quantity(
            log10(state.co2 / state.bicarbonate),
            number,
            4,
            "logarithm, to base 10, of carbon dioxide over bicarbonate at the tap",
        ),
        "Q_e": Quantity(case.stops[0].flow, flow, 4, "flow into the open tank"),
        "p_b": Quantity(_source(case, plant), gauge_pressure, 4, "pressure before the last boxes"),
        "dp": Quantity(_lost(case, plant), gauge_pressure, 4, "taken by them, clean"),
    }
    steps = [
        Step("pH at the tap", "pH_x = p_1 - l_x", given),
        Step("Carbon dioxide at the tap", "c_x = b_x * 10**(p_1 - pH_x)", given),
        Step("Pressure behind the last box", "p_x = p_b - dp", given),
    ]
    if case.well.asks or case.house.asks:
        steps.append(Step("Area of a filter tank", "A_f = pi * D_f**2 / 4", given))
    if case.well.asks:
        steps.append(Step("Largest backwash, well side", "Q_y = w_1 * A_f", given))
    if case.house.asks:
        steps.append(Step("Largest backwash, house side", "Q_z = w_2 * A_f", given))
        steps.append(Step("The open tank goes down by", "V_n = max(Q_z - Q_e, 0) * t_w", given))
    return tuple(steps)


def _rate(side: _Side, plant: Plant) -> float:
    return (side.most or 0.0) / plant.area


def _source(case: _Case, plant: Plant) -> float:
    return plant.house if "tank" in case.plain else plant.well


def _lost(case: _Case, plant: Plant) -> float:
    return _source(case, plant) - case.stops[-1].pressure


def _charts(case: _Case, plant: Plant) -> tuple[Train, ...]:
    """The train as found and, where that breaks a rule, the same boxes in order."""
    late = {rule.first for rule in broken(case.plain, case.facts)}
    found = _train("The train as found", case.plain, case.stops, case.facts, late)
    if not late:
        return (found,)
    kinds = dict(zip(case.plain, case.boxes, strict=True))
    best = ordered(case.plain, case.facts)
    stops = followed(case.raw, tuple(kinds[box] for box in best), plant)
    return found, _train("The same boxes in order", best, stops, case.facts, set())


def _train(
    title: str, boxes: tuple[str, ...], stops: tuple[Stop, ...], facts: Facts, late: set[str]
) -> Train:
    places = []
    for stop in stops:
        box = _plain(stop.box)
        why = reason(box, boxes, facts) if box in boxes else ""
        places.append(Place(box, LABELS[box], why, box in late, _figures(stop)))
    places.append(Place("house", LABELS["house"], "", False, _figures(stops[-1])))
    return Train(
        title=title,
        says="Each figure is behind the box it stands beside, at the largest flow, beds and "
        "filters clean, both pumps about to start.",
        tracks=_TRACKS,
        places=tuple(places),
    )


def _figures(stop: Stop) -> tuple[float, ...]:
    state = stop.water.body.state()
    return (
        state.ph,
        state.co2 * CO2_MOLAR,
        stop.water.hardness,
        stop.water.all_iron,
        stop.pressure,
    )


_TRACKS = (
    Track("pH", number),
    Track("CO2", concentration),
    Track("hard\u00adness", hardness_kind),
    Track("iron", concentration, 2),
    Track("pres\u00adsure", gauge_pressure),
)


def _place(n: int) -> Choice:
    return Choice(
        name=f"place_{n}",
        label=f"Box {n}",
        options=OPTIONS,
        default=FOUND[n - 1],
        origin=INVENTED,
        measure="Follow the water from the well's pressure tank. Feel the pipe, read the arrows on "
        "the heads, and mind the bypass: a box that is bypassed is not in the train. An open tank "
        "has pump 2 behind it; strong air drives out 98 % of the carbon dioxide, fair air 80 %. "
        "The neutralizer holds calcite, the iron filter greensand with its own oxidant; soda ash "
        "is fed up to pH 7.2.",
        group="The train, from the well's pressure tank to the house",
    )


CALCULATOR = Calculator(
    name="treatment_train",
    title="The train of treatment",
    question="What does each box do to the water, its flow and its pressure, does it stand in the "
    "right place, and can it be washed there?",
    inputs=(
        raw_water.raw_ph,
        raw_water.alkalinity,
        replace(
            water_fields.hardness,
            measure="Drop test or the laboratory's sheet, raw water. All of it is taken as "
            "calcium, which puts scale on the safe side.",
        ),
        treatment_fields.raw_iron,
        raw_water.water_temperature,
        replace(bed_fields.service_flow, group="Flow and pressure"),
        replace(well_pump_fields.well_pump, group="Flow and pressure"),
        replace(well_tank_fields.well_cut_in, group="Flow and pressure"),
        replace(house_tank_fields.cut_in, group="Flow and pressure"),
        replace(open_tank_fields.float_open, group="Flow and pressure"),
        replace(
            bed_fields.tank_diameter,
            measure="Of the widest filter tank; all are taken as this wide, with beds of 36 in. "
            "From the label, or tape around the tank divided by 3.14, less half an inch of wall.",
            group=BED,
        ),
        *(_place(n) for n in range(1, PLACES + 1)),
    ),
    outputs=(
        Output(
            name="tap_ph",
            label="pH at the tap",
            symbol="pH_x",
            kind=number,
            low=LEAST_PH,
            outside="Acid.",
        ),
        Output(name="tap_co2", label="Carbon dioxide at the tap", symbol="c_x", kind=concentration),
        Output(name="tap_hardness", label="Hardness at the tap", kind=hardness_kind),
        Output(
            name="tap_iron",
            label="Iron at the tap, rust included",
            kind=concentration,
            high=STAINS,
            outside="It stains.",
        ),
        Output(
            name="tap_index",
            label="Saturation index of chalk at the tap, hardness taken as calcium",
            kind=number,
            digits=2,
            high=0.0,
            outside="Scale can form.",
        ),
        Output(
            name="radon_left",
            label="Radon left, at most, as a share of the raw water's",
            kind=share,
            digits=2,
            none="nothing here takes it out",
        ),
        Output(
            name="sodium_brought", label="Sodium that the boxes add", kind=concentration, digits=2
        ),
        Output(
            name="stone_here",
            label="Stone that each litre takes from the neutralizer",
            kind=concentration,
            none="no neutralizer",
        ),
        Output(
            name="stone_after_air",
            label="Stone that each litre could take behind the open tank, at most",
            kind=concentration,
            none="no neutralizer, or no open tank",
        ),
        Output(
            name="tank_flow",
            label="Flow into the open tank",
            kind=flow,
            none="no open tank",
        ),
        Output(name="tap_flow", label="Flow through the last boxes", kind=flow),
        Output(
            name="tap_pressure",
            label="Pressure behind the last box, at cut-in",
            symbol="p_x",
            kind=gauge_pressure,
        ),
        Output(
            name="wash_well",
            label="Largest backwash that pump 1 must feed",
            symbol="Q_y",
            kind=flow,
            none="none",
        ),
        Output(
            name="wash_house",
            label="Largest backwash that pump 2 must feed",
            symbol="Q_z",
            kind=flow,
            none="none",
        ),
        Output(
            name="tank_needed",
            label="By how much that draws down the open tank",
            symbol="V_n",
            kind=volume,
            none="nothing is washed from it",
        ),
    ),
    trials=200,
    work=treatment_train,
    cautions=(
        cautions.UNSAFE_WATER,
        cautions.BACKWASH_INLET,
        cautions.PRESSURE,
        cautions.CAUSTIC_DUST,
        cautions.RADON_AIR,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "plummer-1982",
        "plummer-1978",
        "davies-1962",
        "singer-stumm-1970",
        "wi-nr-811-52",
        "higbie-1935",
        "ergun",
        "iec-60534-2-1",
        "cfr-143-3",
    ),
)
