"""A train of treatment between well and tap: its boxes, and the water followed through them."""

from collections.abc import Iterable
from math import sqrt
from typing import NamedTuple

from calc.physics.calcite import SODA_ASH
from calc.physics.carbonate import co2_at_rest
from calc.physics.granular_bed import MEDIA, pressure_loss
from calc.physics.iron_oxidation import half_time, rusted
from calc.physics.iron_removal import BEDS
from calc.physics.neutralizer import grain_surface
from calc.physics.treated_water import (
    Treated,
    aired,
    cleared,
    fed,
    iron_filtered,
    oxidized,
    softened,
    through_stone,
)
from calc.roots import bracket
from calc.units import Cv, ft, gpm, inch, minute, mm

AIR_CO2 = 800e-6  # of the blower's air, a lived-in house, common practice, no source
WORKS = 0.4  # share of the contact that counts in a neutralizer, common practice, no source
DEPTH = 36 * inch  # of a bed, common practice, no source
NOTHING = 1.0  # Pa: where the flow takes all pressure, what rounding leaves is none
WASH_TIME = 10 * minute  # common practice, no source: 8 to 15
_RATE = gpm / ft**2


class Box(NamedTuple):
    """What a piece of equipment is to the pressure and to a backwash.

    valve -- flow coefficient of valve, ports and distributor, m³/s per √Pa
    media -- of its bed, a key of `MEDIA`; empty: no bed
    grain -- m
    wash  -- backwash for each area, m/s
    """

    valve: float
    media: str = ""
    grain: float = 0.0
    wash: float = 0.0


# Common practice, no source: flow coefficients of valves and housings of a house's size, grains
# and backwash rates.
BOXES = {
    "sediment": Box(5 * Cv),
    "soda_ash": Box(20 * Cv),
    "neutralizer": Box(4 * Cv, "calcite", 0.7 * mm, 8 * _RATE),
    "iron_filter": Box(4 * Cv, "greensand", 0.35 * mm, BEDS["greensand"].wash[1]),
    "softener": Box(4 * Cv, "resin", 0.6 * mm, 5 * _RATE),
    "carbon": Box(4 * Cv, "carbon", 1 * mm, 10 * _RATE),
    "cartridge": Box(4 * Cv),
    "uv": Box(4 / sqrt(2) * Cv),  # a cartridge and the lamp's chamber in line
}
# Share of the carbon dioxide over what the air itself brings that an open tank drives out: a fair
# one as on the page of neutralizers, a strong one as the worked case of the page on pH after the
# aerator finds it with three basins.
TANKS = {"tank_strong": 0.98, "tank_fair": 0.8}


class Plant(NamedTuple):
    """What stands around the train.

    flow  -- wanted through it, m³/s
    well  -- pressure behind pump 1's pressure tank, Pa
    house -- pressure behind pump 2's, Pa
    area  -- of each filter tank, m²
    open  -- water in the open tank, m³
    """

    flow: float
    well: float
    house: float
    area: float
    open: float


class Stop(NamedTuple):
    """Behind one box: its key, or "well" at the start and "pump" behind pump 2; the water, the
    pressure, Pa, and the flow that comes through, m³/s."""

    box: str
    water: Treated
    pressure: float
    flow: float


def bed_loss(box: Box, flow: float, plant: Plant, temperature: float) -> float:
    """Pressure that a box takes at a flow, clean, Pa: bed, and valve with its square.

    Source: `granular_bed.pressure_loss`, [iec-60534-2-1].
    """
    valve = (flow / box.valve) ** 2
    if not box.media:
        return valve
    medium = MEDIA[box.media]
    return valve + pressure_loss(flow / plant.area, DEPTH, box.grain, medium, temperature)


def flow_through_boxes(
    boxes: Iterable[Box], pressure: float, plant: Plant, temperature: float
) -> float:
    """Flow that comes through boxes in line, m³/s: what is wanted, or what the pressure can push.

    Source: one flow through all, by [brent-1973].
    """
    line = tuple(boxes)

    def left(flow: float) -> float:
        return pressure - sum(bed_loss(box, flow, plant, temperature) for box in line)

    return plant.flow if left(plant.flow) >= 0 else bracket(left, 0.0, plant.flow)[0]


def through(box: str, water: Treated, flow: float, plant: Plant) -> Treated:
    """The water behind a box that it passes at a flow.

    box -- a key of `BOXES` or `TANKS`
    """
    if box in TANKS:
        rest = co2_at_rest(water.body.temperature, AIR_CO2)
        air = aired(water, TANKS[box], rest)
        half = half_time(air.body.state().ph, air.body.temperature)
        return oxidized(air, rusted(half, plant.open / flow))
    if box == "neutralizer":
        return through_stone(water, plant.area * DEPTH / flow, _stone_surface())
    if box == "soda_ash":
        return fed(water, SODA_ASH)
    if box == "iron_filter":
        return iron_filtered(water)
    if box == "softener":
        return softened(water)
    return cleared(water) if box in ("cartridge", "uv") else water


def followed(raw: Treated, boxes: tuple[str, ...], plant: Plant) -> tuple[Stop, ...]:
    """The water followed through the whole train: the start, then behind each box.

    boxes -- keys of `BOXES` and `TANKS` in the order of the water, one tank at most. It breaks the
             pressure, and pump 2 behind it makes it anew

    Source: the functions above, one after the other.
    """
    kelvin = raw.body.temperature
    first = _before_tank(boxes)
    flow = flow_through_boxes((BOXES[box] for box in first), plant.well, plant, kelvin)
    stops = [Stop("well", raw, plant.well, flow)]
    for box in boxes:
        _, water, pressure, flow = stops[-1]
        water = through(box, water, flow, plant)
        if box in TANKS:
            stops.append(Stop(box, water, 0.0, flow))
            rest = boxes[len(first) + 1 :]
            behind = flow_through_boxes((BOXES[b] for b in rest), plant.house, plant, kelvin)
            stops.append(Stop("pump", water, plant.house, behind))
        else:
            left = pressure - bed_loss(BOXES[box], flow, plant, kelvin)
            stops.append(Stop(box, water, left if left > NOTHING else 0.0, flow))
    return tuple(stops)


def _before_tank(boxes: tuple[str, ...]) -> tuple[str, ...]:
    places = [place for place, box in enumerate(boxes) if box in TANKS]
    return boxes[: places[0]] if places else boxes


def _stone_surface() -> float:
    box = BOXES["neutralizer"]
    return WORKS * grain_surface(box.grain, MEDIA[box.media])
