"""What the aerator that is there does to the radon in this water, and what would do more."""

from collections.abc import Callable
from math import ceil, e, log
from typing import NamedTuple

from calc import cautions, stripping_steps
from calc.charts import Axis, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import AERATOR, aerator_fields, radon_fields, water_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.bubbles import RISE, Bubble, bubble
from calc.physics.radon_solubility import ICE_POINT, air_to_water, spread
from calc.physics.stripping import (
    factor_basins,
    factor_cross_flow,
    factor_trays,
    ideal_trays,
    least_radon,
    left_basins,
    left_cross_flow,
    left_trays,
    overall_efficiency_lewis,
)
from calc.units import air_flow, flow, number, percent, radon, share, velocity

POINTS = 40
WIDEST = 25.0  # parts of air that the picture shows at least: the pilot plant's runs lie within
FOULED_TRAY = 0.5  # of a tray's efficiency, when scale and iron are on it: from memory
FOUL_AIR = 0.1  # share of the target from which the blower's own air is worth a word
PILOT = (
    Mark("pilot plant, 19 min in its tank", 12.0, 0.97),
    Mark("pilot plant, 4 min in its tank", 19.0, 0.90),
)


class _Unit(NamedTuple):
    """How a kind of aerator answers: share left at a stripping factor and so many stages, and
    the stripping factor at which so much is left."""

    left: Callable[[float, int], float]
    factor: Callable[[float, int], float]


def _unit(kind: str, full: float) -> _Unit:
    if kind == "basins":
        return _Unit(
            lambda factor, stages: left_basins(factor, stages, full),
            lambda left, stages: factor_basins(left, stages, full),
        )
    if kind == "trays":
        return _Unit(
            lambda factor, stages: left_trays(factor, stages, full),
            lambda left, stages: factor_trays(left, stages, full),
        )
    return _Unit(
        lambda factor, _: left_cross_flow(factor, full),
        lambda left, _: factor_cross_flow(left, full),
    )


def aeration_removal(
    raw_radon: float,
    target_radon: float,
    air_radon: float,
    aerator_flow: float,
    aerator_air: float,
    water_temperature: float,
    aerator: str,
    aerator_stages: str,
    tray_efficiency: float,
    bubble_depth: float,
    bubble_size: float,
    bubble_share: float,
) -> Answer:
    """Radon left, the largest flow that keeps the target, and air against one more stage."""
    held = air_to_water(water_temperature)
    least = least_radon(air_radon, held)
    if target_radon >= raw_radon:
        raise Refused("contradiction", "target_radon", says="must be below {raw_radon}")
    if least >= raw_radon:
        raise Refused("contradiction", "air_radon", says="gives the water more than {raw_radon}")
    rising = bubble(water_temperature, bubble_depth, bubble_size, bubble_share)
    in_bubbles = aerator == "basins"
    full = rising.saturation if in_bubbles else tray_efficiency
    unit, stages = _unit(aerator, full), int(aerator_stages)
    per_flow = held * aerator_air  # stripping factor times flow of water
    factor = per_flow / aerator_flow

    def radon_left(left: float) -> float:
        return least + (raw_radon - least) * left

    left = unit.left(factor, stages)
    treated = radon_left(left)
    skin = min(bubble_share, rising.stiff)
    worst = bubble(water_temperature, bubble_depth, bubble_size, skin).saturation
    fouled = _unit(aerator, worst if in_bubbles else tray_efficiency * FOULED_TRAY)
    wanted = (target_radon - least) / (raw_radon - least)
    at_target = unit.factor(wanted, stages) if wanted > 0 else None
    staged = None if aerator == "crossed" else unit.left(factor, stages + 1)
    as_staged = unit.factor(staged, stages) if staged else None
    ratio = aerator_air / aerator_flow
    outputs = {
        "removal": 1 - treated / raw_radon,
        "treated_radon": treated,
        "fouled_radon": radon_left(fouled.left(factor, stages)),
        "air_ratio": ratio,
        "saturation": full,
        "largest_flow": per_flow / at_target if at_target else None,
        "air_needed": at_target * aerator_flow / held if at_target else None,
        "stages_needed": _stages_needed(aerator, factor, full, wanted),
        "stage_radon": radon_left(staged) if staged else None,
        "stage_air": as_staged * aerator_flow / held if as_staged else None,
        "least_radon": least,
        "formula_spread": spread(water_temperature),
    }
    given = _given(rising, water_temperature, held, factor, full, left, wanted, at_target)
    given["N"] = Quantity(stages, number, label="basins or trays")
    return Answer(
        outputs=outputs,
        findings=_findings(aerator, target_radon, outputs),
        steps=_steps(aerator, wanted, given),
        charts=(_chart(held, rising.saturation, tray_efficiency, stages, outputs),),
    )


def _stages_needed(kind: str, factor: float, full: float, wanted: float) -> float | None:
    """Fewest stages that keep the target with the same water and air; None past the most."""
    if wanted <= 0 or kind == "crossed":
        return None
    if kind == "basins":
        counts = range(1, aerator_fields.MOST_STAGES + 1)
        return next((float(n) for n in counts if left_basins(factor, n, full) <= wanted), None)
    if wanted <= 1 - factor:
        return None
    trays = ideal_trays(factor, wanted) / overall_efficiency_lewis(factor, full)
    # a hair less, so that rounding adds no tray
    return float(ceil(trays - 1e-9)) if trays <= aerator_fields.MOST_STAGES else None


def _findings(kind: str, target: float, outputs: dict[str, float | None]) -> tuple[Finding, ...]:
    treated, fouled, least = (
        outputs[name] for name in ("treated_radon", "fouled_radon", "least_radon")
    )
    assert treated is not None
    assert fouled is not None
    assert least is not None
    findings = [_headline(target, treated, fouled, outputs["largest_flow"])]
    if kind != "crossed":
        findings.append(
            Finding(
                "good",
                "One more stage, or more air.",
                "One more stage with the same air leaves {stage_radon}. Without it, the same takes "
                "{stage_air} of air in place of {aerator_air}.",
            )
        )
    if FOUL_AIR * target < least < target:
        findings.append(
            Finding(
                "caution",
                "Give the blower clean air.",
                "Its air alone keeps the water at {least_radon}. Lead its intake to outdoor air, "
                "far from the vent.",
            )
        )
    return tuple(findings)


def _headline(target: float, treated: float, fouled: float, flow: float | None) -> Finding:
    if flow is None:
        return Finding(
            "danger",
            "Out of reach.",
            "The air that the blower takes keeps the water at {least_radon}, however much of it "
            "there is. Find out where that air comes from.",
        )
    if treated > target:
        return Finding(
            "danger",
            "Short of the target.",
            "{treated_radon} of {raw_radon} stay in the water; {target_radon} were wanted. It "
            "keeps the target up to {largest_flow}, or with {air_needed} of air.",
        )
    if fouled > target:
        return Finding(
            "caution",
            "Only while it is clean.",
            "{treated_radon} stay in the water. When iron or age has fouled the unit it is "
            "{fouled_radon}, over the target. Prove it by samples before and after.",
        )
    return Finding(
        "good",
        "Reaches the target.",
        "{treated_radon} of {raw_radon} stay in the water, up to {largest_flow} no more than the "
        "target. Prove it by samples before and after.",
    )


def _given(
    rising: Bubble,
    temperature: float,
    held: float,
    factor: float,
    full: float,
    left: float,
    wanted: float,
    at_target: float | None,
) -> dict[str, Quantity]:
    given = {
        "e": Quantity(e, number, 6, "base of natural logarithms"),
        "t": Quantity(temperature - ICE_POINT, number, 4, "temperature of the water in °C"),
        "L": Quantity(1 / held, number, 4),
        "H": Quantity(held, number, 4),
        "S": Quantity(factor, number, 4),
        "v": Quantity(RISE, velocity, label="speed of rising bubbles"),
        "K": Quantity(rising.clean, _SKIN, label="speed through a clean bubble's skin, by Higbie"),
        "u": Quantity(rising.units, number, 4),
        "f": Quantity(full, share, 4),
        "y": Quantity(left, share, 4),
        "w": Quantity(wanted, share, 4),
    }
    if at_target:
        given["S_t"] = Quantity(at_target, number, 4, "stripping factor that just keeps the target")
        given["n_t"] = Quantity(-log(wanted), number, 4, "natural logarithm of 1 / w")
    return given


def _steps(kind: str, wanted: float, given: dict[str, Quantity]) -> tuple[Step, ...]:
    if kind == "crossed":
        shares, at_target = "y = e**(-S * f)", "S_t = n_t / f"
    elif kind == "basins":
        shares, at_target = "y = (1 + S * f / N)**(-N)", "S_t = N * (w**(-1 / N) - 1) / f"
    else:
        shares = "y = (S - 1) / (S * (1 + f * (S - 1))**N - 1)"
        at_target = ""
    steps = (
        *stripping_steps.stripping_factor(given),
        *(
            stripping_steps.filling(given)
            if kind == "basins"
            else (Step("How full air leaves a tray", "f = E_t", given),)
        ),
        Step("Share left of what can be stripped", shares, given),
        Step("What the blower's own air keeps in the water", "C_f = C_a / H", given),
        Step("Radon left in the water", "C_w = C_f + (C_r - C_f) * y", given),
        Step("Removal", "R = 1 - C_w / C_r", given),
    )
    if wanted <= 0:
        return steps
    return (
        *steps,
        Step("Share that may be left", "w = (C_t - C_f) / (C_r - C_f)", given),
        *(
            (Step("Stripping factor that just keeps the target", at_target, given),)
            if at_target
            else ()
        ),
        Step("Largest flow that keeps the target", "Q_m = H * G / S_t", given),
        Step("Air that keeps it at this flow", "G_t = S_t * Q_a / H", given),
    )


def _chart(
    held: float,
    saturation: float,
    efficiency: float,
    stages: int,
    outputs: dict[str, float | None],
) -> Chart:
    ratio, removal = outputs["air_ratio"], outputs["removal"]
    assert ratio is not None
    assert removal is not None
    widest = max(2 * ratio, WIDEST)
    ratios = [widest * n / POINTS for n in range(1, POINTS + 1)]
    several = max(stages, 2)

    def line(label: str, left: Callable[[float], float]) -> Line:
        return Line(label, tuple((each, 1 - left(held * each)) for each in ratios))

    return Chart(
        title="Removal by air for each part of water",
        says="Clean air, this water's temperature, this unit's bubbles and trays. The two runs of "
        "a pilot plant are published figures; its bubbles and temperature are not known.",
        x=Axis("Air for each part of water", number),
        y=Axis("Share of the radon removed", share),
        lines=(
            line("one mixed basin", lambda factor: left_basins(factor, 1, saturation)),
            line(
                f"{several} basins in a row",
                lambda factor: left_basins(factor, several, saturation),
            ),
            line("one long crossed tray", lambda factor: left_cross_flow(factor, efficiency)),
            line(
                f"{several} trays, air against water",
                lambda factor: left_trays(factor, several, efficiency),
            ),
        ),
        marks=(Mark("you are here", ratio, removal, here=True), *PILOT),
    )


_SKIN = Output(
    name="skin", label="Speed through a bubble's skin", kind=velocity, us="m/h", si="m/h"
)
_NO_TARGET = "none: the blower's own air keeps the water above the target"
_NO_STAGES = "none: a crossed tray has no stages"

CALCULATOR = Calculator(
    name="aeration_removal",
    title="What the aerator reaches",
    question="How much radon does this aerator leave in the water, and what would leave less?",
    inputs=(
        radon_fields.raw_radon,
        radon_fields.target_radon,
        radon_fields.air_radon,
        aerator_fields.aerator_flow,
        aerator_fields.aerator_air,
        water_fields.water_temperature,
        aerator_fields.aerator,
        aerator_fields.aerator_stages,
        Input(
            name="tray_efficiency",
            label="How near a tray brings its air to rest with the water",
            symbol="E_t",
            kind=share,
            default="5 %",
            origin="computed here: 3 mm bubbles through 2 inches of clean water come to 4 %",
            low=1 * percent,
            high=100 * percent,
            measure="Only for trays: Murphree's efficiency, of the air. A pair of samples before "
            "and after tells yours: work backwards from the removal. Froth does better than the "
            "default, a shallow or uneven sheet of water worse.",
            group=AERATOR,
            sure="2 %",
        ),
        aerator_fields.bubble_depth,
        aerator_fields.bubble_size,
        aerator_fields.bubble_share,
    ),
    outputs=(
        Output(name="treated_radon", label="Radon left in the water", symbol="C_w", kind=radon),
        Output(name="removal", label="Removal", symbol="R", kind=share, digits=4),
        Output(
            name="fouled_radon",
            label="Left when fouled: bubbles' skins stiff, or trays half as good",
            kind=radon,
        ),
        Output(
            name="largest_flow",
            label="Largest flow that keeps the target",
            symbol="Q_m",
            kind=flow,
            none=_NO_TARGET,
        ),
        Output(
            name="air_needed",
            label="Air that keeps the target at this flow",
            symbol="G_t",
            kind=air_flow,
            none=_NO_TARGET,
        ),
        Output(
            name="stages_needed",
            label="Stages that keep the target with this water and air",
            kind=number,
            none=f"none up to {aerator_fields.MOST_STAGES}, or no stages at all",
        ),
        Output(
            name="stage_radon",
            label="Left with one more stage and the same air",
            kind=radon,
            none=_NO_STAGES,
        ),
        Output(
            name="stage_air",
            label="Air that would do as much without it",
            kind=air_flow,
            none=_NO_STAGES,
        ),
        Output(name="air_ratio", label="Air for each part of water", symbol="A", kind=number),
        Output(name="saturation", label="How full the air leaves", symbol="f", kind=share),
        Output(
            name="least_radon",
            label="What the blower's own air keeps in the water",
            symbol="C_f",
            kind=radon,
        ),
        Output(
            name="formula_spread",
            label="How far three published solubilities lie apart",
            kind=share,
            digits=2,
        ),
    ),
    work=aeration_removal,
    cautions=(
        cautions.VENT_OUTDOORS,
        cautions.DRY_TANK,
        cautions.RADON_AIR,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "weigel-1978",
        "schubert-2012",
        "clever-1979",
        "sander-2023",
        "crc-gases",
        "higbie-1935",
        "froessling-1938",
        "alves-2005",
        "kremser-1930",
        "lewis-1936",
        "bubble-pilot-1999",
        "epa-1999-proposal",
        "epa-radon-2016",
    ),
)
