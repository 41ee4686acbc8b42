"""How long the blower must run after an outage until a tank of raw water is fit again."""

from dataclasses import replace
from math import e, exp, log

from calc import cautions, fields, stripping_steps
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import OPEN_TANK, aerator_fields, open_tank_fields, radon_fields, water_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.bubbles import RISE, Bubble, bubble
from calc.physics.radon_solubility import ICE_POINT, air_to_water
from calc.physics.stripping import batch_rate, least_radon, left_standing
from calc.units import duration, gal, hour, number, radon, share, velocity, volume

POINTS = 40
LONG = 1 * hour  # over it somebody will not wait


def re_aeration(
    raw_radon: float,
    target_radon: float,
    air_radon: float,
    tank_water: float,
    tank_air: float,
    aerator_air: float,
    water_temperature: float,
    bubble_depth: float,
    bubble_size: float,
    bubble_share: float,
) -> Answer:
    """Time until one tank full is down at the target, nothing entering or leaving."""
    held = air_to_water(water_temperature)
    least = least_radon(air_radon, held)
    if target_radon >= raw_radon:
        raise Refused("contradiction", "target_radon", says="must be below {raw_radon}")
    if least >= target_radon:
        raise Refused("contradiction", "air_radon", says="keeps the water above {target_radon}")
    rising = bubble(water_temperature, bubble_depth, bubble_size, bubble_share)
    skin = min(bubble_share, rising.stiff)
    stiff = bubble(water_temperature, bubble_depth, bubble_size, skin)
    rate = batch_rate(held * aerator_air, rising.saturation, tank_water)
    stiff_rate = batch_rate(held * aerator_air, stiff.saturation, tank_water)
    folds = log((raw_radon - least) / (target_radon - least))
    standing = held * raw_radon * left_standing(held, tank_air, tank_water)
    given = _given(rising, water_temperature, held, rate, folds)
    wait = folds / rate
    return Answer(
        outputs={
            "wait": wait,
            "stiff_wait": folds / stiff_rate,
            "half_time": log(2) / rate,
            "first_air": air_radon + rising.saturation * (held * raw_radon - air_radon),
            "standing_air": standing,
            "running_air": held * raw_radon,
            "saturation": rising.saturation,
        },
        findings=(
            _headline(wait),
            Finding(
                "danger",
                "Keep the lid shut.",
                "Over one filling that stood, the tank's air comes to {standing_air}; if raw water "
                "kept running through, up to {running_air}. The first air that the blower drives "
                "out holds {first_air}.",
            ),
            Finding(
                "caution",
                "The house is not clean yet.",
                "Raw water that went through during the outage stands in the pressure tank and the "
                "pipes. Flush them outdoors or to a drain, windows open, when the tank is ready.",
            ),
        ),
        steps=_steps(given),
        charts=(_chart(raw_radon, target_radon, least, rate, wait),),
    )


def _headline(wait: float) -> Finding:
    if wait > LONG:
        return Finding(
            "caution",
            "A long wait.",
            "{wait} with the blower on and nobody drawing water, {stiff_wait} if the bubbles are "
            "stiff. More air or finer bubbles shorten it.",
        )
    return Finding(
        "good",
        "Wait, then draw.",
        "{wait} with the blower on and nobody drawing water. If dirt has stiffened the bubbles, "
        "{stiff_wait}: wait that long unless you have tested.",
    )


def _given(
    rising: Bubble, temperature: float, held: float, rate: float, folds: float
) -> dict[str, Quantity]:
    return {
        "e": Quantity(e, number, 6, "base of natural logarithms"),
        "t": Quantity(temperature - ICE_POINT, number, 4, "temperature of the water in °C"),
        "L": Quantity(1 / held, number, 4),
        "H": Quantity(held, number, 4),
        "v": Quantity(RISE, velocity, label="speed of rising bubbles"),
        "K": Quantity(rising.clean, _SKIN, label="speed through a clean bubble's skin, by Higbie"),
        "u": Quantity(rising.units, number, 4),
        "t_e": Quantity(1 / rate, duration, 4),
        "n": Quantity(folds, number, 4, "natural logarithm of (C_r − C_f) / (C_t − C_f)"),
        "n_2": Quantity(log(2), number, 4, "natural logarithm of 2"),
    }


def _steps(given: dict[str, Quantity]) -> tuple[Step, ...]:
    return (
        *stripping_steps.at_rest(given),
        *stripping_steps.filling(given),
        Step("Time in which 63 % of the radon leaves", "t_e = V_w / (H * G * f)", given),
        Step("Time to the target", "t_w = n * t_e", given),
        Step("Time in which half leaves", "t_h = n_2 * t_e", given),
        Step("Radon in the first air that leaves", "C_1 = C_a + f * (H * C_r - C_a)", given),
        Step("Most that the tank's air can come to", "C_m = H * C_r", given),
        Step("The same over one filling", "C_s = C_m / (1 + H * V_a / V_w)", given),
    )


def _chart(raw: float, target: float, least: float, rate: float, wait: float) -> Chart:
    times = [1.5 * wait * n / POINTS for n in range(POINTS + 1)]
    line = tuple((time, least + (raw - least) * exp(-rate * time)) for time in times)
    return Chart(
        title="Radon in the tank after the blower starts again",
        says="Nothing enters or leaves, and the bubbles keep the tank mixed.",
        x=Axis("Time with the blower on", _WAIT),
        y=Axis("Radon in the water", radon),
        lines=(Line("radon in the water", line),),
        limits=(Limit("target", target),),
        marks=(Mark("you may draw", wait, target, here=True),),
    )


_SKIN = Output(
    name="skin", label="Speed through a bubble's skin", kind=velocity, us="m/h", si="m/h"
)
_WAIT = Output(name="wait", label="Wait until the target", symbol="t_w", kind=duration)

CALCULATOR = Calculator(
    name="re_aeration",
    title="After an outage",
    question="How long must the blower run before the tank's water may be drawn again?",
    inputs=(
        radon_fields.raw_radon,
        radon_fields.target_radon,
        radon_fields.air_radon,
        replace(
            open_tank_fields.tank_water,
            measure="All of it, under the intake too. Full, for that takes longest.",
        ),
        Input(
            name="tank_air",
            label="Air over the water in the tank",
            symbol="V_a",
            kind=volume,
            default="20 gal",
            origin=fields.INVENTED,
            low=0.1 * gal,
            high=5000 * gal,
            measure="The tank's whole volume less its water. The smaller, the richer it becomes.",
            group=OPEN_TANK,
            sure="10 %",
        ),
        aerator_fields.aerator_air,
        water_fields.water_temperature,
        aerator_fields.bubble_depth,
        aerator_fields.bubble_size,
        aerator_fields.bubble_share,
    ),
    outputs=(
        _WAIT,
        Output(name="stiff_wait", label="Wait if the bubbles' skins are stiff", kind=duration),
        Output(name="half_time", label="Half the radon leaves in", symbol="t_h", kind=duration),
        Output(
            name="first_air", label="Radon in the first air that leaves", symbol="C_1", kind=radon
        ),
        Output(
            name="standing_air",
            label="Radon in the tank's air over one filling that stood",
            symbol="C_s",
            kind=radon,
        ),
        Output(
            name="running_air",
            label="The same if raw water kept running through",
            symbol="C_m",
            kind=radon,
        ),
        Output(name="saturation", label="How full the air leaves", symbol="f", kind=share),
    ),
    work=re_aeration,
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
        "higbie-1935",
        "froessling-1938",
        "alves-2005",
        "epa-1999-proposal",
    ),
)
