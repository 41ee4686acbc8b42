"""How high a packed tower must be for a removal, and what the height that there is reaches."""

from math import e, log, pi

from calc import cautions, stripping_steps
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, aerator_fields, radon_fields, water_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.packed_column import Column, Packing, column_onda, left_column, transfer_units
from calc.physics.radon_solubility import ICE_POINT, air_to_water
from calc.units import (
    area,
    duration,
    ft,
    inch,
    length,
    mm,
    number,
    percent,
    radon,
    share,
    velocity,
)

TOWER = "Tower"
# Slotted plastic rings; surfaces from memory.
PACKINGS = {
    "16": Packing(341.0, 16 * mm),
    "25": Packing(206.0, 25 * mm),
    "38": Packing(128.0, 38 * mm),
    "50": Packing(102.0, 50 * mm),
}
WATER_LOADS, AIR_LOADS = (0.8, 43.0), (0.014, 1.7)  # kg/(m² s) that Onda's data cover, from memory
DOUBT = 30 * percent  # that Onda's K a may be too high, [dvorak-1996]
COARSE = 8  # a tower this many times its packing, or wider: common practice, no source
POINTS = 40


def packed_tower(
    raw_radon: float,
    target_radon: float,
    aerator_flow: float,
    aerator_air: float,
    water_temperature: float,
    tower_diameter: float,
    packing: str,
    tower_height: float,
) -> Answer:
    """Height of packing by Onda's equations, and radon left by the height that there is."""
    if target_radon >= raw_radon:
        raise Refused("contradiction", "target_radon", says="must be below {raw_radon}")
    held = air_to_water(water_temperature)
    factor = held * aerator_air / aerator_flow
    rings = PACKINGS[packing]
    column = column_onda(aerator_flow, aerator_air, water_temperature, tower_diameter, rings)
    unit = column.unit_height
    wanted = target_radon / raw_radon
    units = transfer_units(factor, wanted) if wanted > 1 - factor else None
    left = left_column(factor, tower_height / unit)
    height = units * unit if units else None
    outputs = {
        "packed_height": height,
        "sure_height": height / (1 - DOUBT) if height else None,
        "treated_radon": raw_radon * left,
        "removal": 1 - left,
        "unit_height": unit,
        "transfer_units": units,
        "wetted": column.wetted,
        "air_ratio": aerator_air / aerator_flow,
    }
    given = {
        "e": Quantity(e, number, 6, "base of natural logarithms"),
        "pi": Quantity(pi, number, 5, "ratio of a circle's round to its width"),
        "t": Quantity(water_temperature - ICE_POINT, number, 4, "temperature of the water in °C"),
        "L": Quantity(1 / held, number, 4),
        "H": Quantity(held, number, 4),
        "S": Quantity(factor, number, 4),
        "A_t": Quantity(pi / 4 * tower_diameter**2, area, 4),
        "U": Quantity(aerator_flow / (pi / 4 * tower_diameter**2), velocity, 4),
        "t_x": Quantity(1 / column.rate, duration, 4, "1 / (K a) by Onda's equations"),
        "n": Quantity(tower_height / unit, number, 4),
        "y": Quantity(left, share, 4),
        "m": Quantity(DOUBT, share, label="how much too high Onda's figure may be"),
    }
    if units:
        inside = ((factor - 1) / wanted + 1) / factor
        meaning = "natural logarithm of ((S − 1) × C_r / C_t + 1) / S"
        given["n_l"] = Quantity(log(inside), number, 4, meaning)
    return Answer(
        outputs=outputs,
        findings=_findings(outputs, tower_height, column, tower_diameter / rings.size),
        steps=_steps(units, given),
        charts=(_chart(factor, unit, tower_height, 1 - left, 1 - wanted),),
    )


def _findings(
    outputs: dict[str, float | None], there: float, column: Column, widths: float
) -> tuple[Finding, ...]:
    findings = [_headline(outputs["packed_height"], outputs["sure_height"], there)]
    loads = ((column.water_load, WATER_LOADS), (column.air_load, AIR_LOADS))
    if not all(low <= load <= high for load, (low, high) in loads):
        findings.append(
            Finding(
                "caution",
                "Outside the trials.",
                "Onda's trials covered 0.8 to 43 kg of water and 0.014 to 1.7 kg of air for each "
                "m² and second; here it is {water} and {air}. The height may be well off.",
                {
                    "water": Quantity(column.water_load, number),
                    "air": Quantity(column.air_load, number),
                },
            )
        )
    if widths < COARSE:
        findings.append(
            Finding(
                "caution",
                "Packing too coarse.",
                "The tower is only {widths} times as wide as its packing. Under eight, water runs "
                "down the wall past the air.",
                {"widths": Quantity(widths, number)},
            )
        )
    return tuple(findings)


def _headline(height: float | None, sure: float | None, there: float) -> Finding:
    if height is None or sure is None:
        return Finding(
            "danger",
            "Too little air.",
            "No height reaches {target_radon} with {air_ratio} parts of air for each of water.",
        )
    if there < height:
        return Finding(
            "danger",
            "Too short.",
            "{tower_height} of packing leaves {treated_radon}. The target takes {packed_height}, "
            "and {sure_height} to be sure of it.",
        )
    if there < sure:
        return Finding(
            "caution",
            "High enough on paper.",
            "{tower_height} of packing leaves {treated_radon} by Onda's equations. They may be 30 "
            "% too hopeful: {sure_height} would be sure.",
        )
    return Finding(
        "good",
        "High enough.",
        "{tower_height} of packing leaves {treated_radon}; {sure_height} would be enough.",
    )


def _steps(units: float | None, given: dict[str, Quantity]) -> tuple[Step, ...]:
    steps = (
        *stripping_steps.stripping_factor(given),
        Step("Cross-section of the tower", "A_t = pi / 4 * d_t**2", given),
        Step("Speed of the water, were the tower empty", "U = Q_a / A_t", given),
        Step("Height of a transfer unit", "h_u = U * t_x", given),
        Step("Transfer units that there are", "n = z_t / h_u", given),
        Step("Share left", "y = (S - 1) / (S * e**(n * (S - 1) / S) - 1)", given),
        Step("Radon left in the water", "C_w = C_r * y", given),
        Step("Removal", "R = 1 - y", given),
    )
    if units is None:
        return steps
    return (
        *steps,
        Step("Transfer units for the target", "N_u = S / (S - 1) * n_l", given),
        Step("Height of packing for the target", "z_n = N_u * h_u", given),
        Step("Height to be sure of it", "z_s = z_n / (1 - m)", given),
    )


def _chart(factor: float, unit: float, there: float, removal: float, wanted: float) -> Chart:
    heights = [2 * there * n / POINTS for n in range(POINTS + 1)]

    def line(label: str, slower: float) -> Line:
        return Line(
            label, tuple((each, 1 - left_column(factor, each / unit * slower)) for each in heights)
        )

    return Chart(
        title="Removal by height of packing",
        says="Onda's equations, and the same with a transfer that is 30 % slower.",
        x=Axis("Height of packing", _HEIGHT),
        y=Axis("Share of the radon removed", share),
        lines=(line("by Onda", 1.0), line("30 % slower", 1 - DOUBT)),
        limits=(Limit("target", wanted),),
        marks=(Mark("you are here", there, removal, here=True),),
    )


_TOO_LITTLE = "none: there is too little air"
_HEIGHT = Output(
    name="packed_height",
    label="Height of packing for the target",
    symbol="z_n",
    kind=length,
    none=_TOO_LITTLE,
)

CALCULATOR = Calculator(
    name="packed_tower",
    title="Packed tower",
    question="How high must the packing be, and what does the height that there is reach?",
    inputs=(
        radon_fields.raw_radon,
        radon_fields.target_radon,
        aerator_fields.aerator_flow,
        aerator_fields.aerator_air,
        water_fields.water_temperature,
        Input(
            name="tower_diameter",
            label="Inside diameter of the tower",
            symbol="d_t",
            kind=length,
            default="8 in",
            origin=INVENTED,
            low=3 * inch,
            high=48 * inch,
            us="in",
            si="cm",
            measure="From the pipe's table of sizes, or a tape across the open end.",
            group=TOWER,
        ),
        Choice(
            name="packing",
            label="Packing: slotted plastic rings",
            options={
                size: f"{size} mm, {each.surface:.0f} m²/m³" for size, each in PACKINGS.items()
            },
            default="25",
            origin=INVENTED,
            measure="The maker's sheet names size and surface. Other shapes: take the nearest "
            "surface, not the nearest size.",
            group=TOWER,
        ),
        Input(
            name="tower_height",
            label="Height of packing that there is",
            symbol="z_t",
            kind=length,
            default="5 ft",
            origin=INVENTED,
            low=0.5 * ft,
            high=40 * ft,
            measure="Packing only, from its support to its top. In a cellar the ceiling less the "
            "sump, the spreader and the vent.",
            group=TOWER,
            sure="1 in",
        ),
    ),
    outputs=(
        _HEIGHT,
        Output(
            name="sure_height",
            label="Height if Onda is 30 % too hopeful",
            symbol="z_s",
            kind=length,
            none=_TOO_LITTLE,
        ),
        Output(
            name="treated_radon",
            label="Radon left by the height that there is",
            symbol="C_w",
            kind=radon,
        ),
        Output(name="removal", label="Removal by it", symbol="R", kind=share, digits=4),
        Output(name="unit_height", label="Height of a transfer unit", symbol="h_u", kind=length),
        Output(
            name="transfer_units",
            label="Transfer units for the target",
            symbol="N_u",
            kind=number,
            none=_TOO_LITTLE,
        ),
        Output(name="wetted", label="Share of the packing that is wet", kind=share),
        Output(name="air_ratio", label="Air for each part of water", symbol="A", kind=number),
    ),
    work=packed_tower,
    cautions=(
        cautions.VENT_OUTDOORS,
        cautions.DRY_TANK,
        cautions.RADON_AIR,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "weigel-1978",
        "crc-gases",
        "onda-1968",
        "colburn-1939",
        "dvorak-1996",
        "iapws-tension",
        "us-standard-1976",
        "epa-1999-proposal",
    ),
)
