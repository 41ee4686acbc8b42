"""What spraying does: one pass, several, or round and round, and what the chamber's air allows."""

from math import ceil, log

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import AERATOR, INVENTED, aerator_fields, flow_input, radon_fields, water_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.radon_solubility import air_to_water, diffusivity
from calc.physics.spray import (
    chamber_removal,
    exit_speed,
    fall_time,
    left_passes,
    left_recirculated,
    still_drop,
)
from calc.physics.water import density
from calc.units import (
    GRAVITY,
    duration,
    gauge_pressure,
    inch,
    length,
    mm,
    number,
    percent,
    psi,
    radon,
    share,
    velocity,
)

NOZZLE = "Nozzle"
COEFFICIENT = 0.95  # of a nozzle's velocity, from memory
MOST_PASSES = 6
POINTS = 40
WIDEST = 10.0  # parts of air that the picture shows at least
STALE = 0.9  # of the free removal: under it the chamber's air costs more than it should


def spray_removal(
    raw_radon: float,
    target_radon: float,
    aerator_flow: float,
    aerator_air: float,
    water_temperature: float,
    spray_way: str,
    passes: str,
    around: float,
    pass_removal: float,
    nozzle_pressure: float,
    drop_size: float,
    drop_fall: float,
) -> Answer:
    """Radon left by a spray, and what a still drop would lose on the same flight."""
    if target_radon >= raw_radon:
        raise Refused("contradiction", "target_radon", says="must be below {raw_radon}")
    turning = spray_way == "around"
    held = air_to_water(water_temperature)
    sprayed = around if turning else aerator_flow
    factor = held * aerator_air / sprayed
    once = chamber_removal(pass_removal, factor)
    left = (
        left_recirculated(once, around, aerator_flow) if turning else left_passes(once, int(passes))
    )
    speed = exit_speed(nozzle_pressure, density(water_temperature), COEFFICIENT)
    flight = fall_time(speed, drop_fall)
    still = still_drop(diffusivity(water_temperature), flight, drop_size)
    wanted = target_radon / raw_radon
    outputs = {
        "treated_radon": raw_radon * left,
        "removal": 1 - left,
        "chamber_removal": once,
        "passes_needed": None if turning else float(ceil(log(wanted) / log(1 - once))),
        "around_needed": (1 / wanted - 1) * aerator_flow / once if turning else None,
        "nozzle_speed": speed,
        "flight": flight,
        "still_removal": still,
    }
    given = {
        "H": Quantity(held, number, 4, "radon in air over radon in water at rest, by Weigel"),
        "S": Quantity(factor, number, 4),
        "c_v": Quantity(COEFFICIENT, number, label="coefficient of velocity of a smooth nozzle"),
        "v_p": Quantity(speed / COEFFICIENT, velocity, 4, "speed that this pressure can give"),
        "v_w": Quantity(speed + GRAVITY * flight, velocity, 4, "speed as it meets the water"),
        "k": Quantity(int(passes), number, label="passes"),
        "y": Quantity(left, share, 4),
    }
    return Answer(
        outputs=outputs,
        findings=_findings(outputs, target_radon, pass_removal, once, still),
        steps=_steps(turning, given),
        charts=(_chart(held, pass_removal, aerator_air / sprayed, once),),
    )


def _findings(
    outputs: dict[str, float | None], target: float, free: float, once: float, still: float
) -> tuple[Finding, ...]:
    treated = outputs["treated_radon"]
    assert treated is not None
    if treated <= target:
        first = Finding(
            "good",
            "Reaches the target.",
            "{treated_radon} of {raw_radon} stay in the water. Prove it by samples before and "
            "after.",
        )
    elif outputs["around_needed"] is None:
        first = Finding(
            "danger",
            "Short of the target.",
            "{treated_radon} of {raw_radon} stay in the water. The target takes {passes_needed} "
            "passes, each through air of its own.",
        )
    else:
        first = Finding(
            "danger",
            "Too little goes round.",
            "{treated_radon} of {raw_radon} stay in the water. The target takes {around_needed} "
            "through the nozzle, with as much more air.",
        )
    findings = [first]
    if once < STALE * free:
        findings.append(
            Finding(
                "caution",
                "Stale air.",
                "The chamber's own radon brings one pass down to {chamber_removal} from "
                "{pass_removal}. Give it more air.",
            )
        )
    if free < still:
        findings.append(
            Finding(
                "caution",
                "Measure again.",
                "Even still drops of this size would lose {still_removal}, more than the "
                "{pass_removal} given. The drops are larger, or the samples lost radon.",
            )
        )
    return tuple(findings)


def _steps(turning: bool, given: dict[str, Quantity]) -> tuple[Step, ...]:
    left = "y = 1 / (1 + e_c * Q_n / Q_a)" if turning else "y = (1 - e_c)**k"
    return (
        Step(
            "Stripping factor of the sprayed water",
            "S = H * G / Q_n" if turning else "S = H * G / Q_a",
            given,
        ),
        Step("Removal by one pass in the chamber's air", "e_c = e_0 / (1 + e_0 / S)", given),
        Step("Share left", left, given),
        Step("Radon left in the water", "C_w = C_r * y", given),
        Step("Removal", "R = 1 - y", given),
        Step("Speed out of the nozzle", "v_n = c_v * v_p", given),
        Step("Time in the air", "t_f = 2 * z_f / (v_n + v_w)", given),
    )


def _chart(held: float, free: float, ratio: float, once: float) -> Chart:
    widest = max(2 * ratio, WIDEST)
    ratios = [widest * n / POINTS for n in range(1, POINTS + 1)]

    def line(label: str, passes: int) -> Line:
        removals = (
            (each, 1 - left_passes(chamber_removal(free, held * each), passes)) for each in ratios
        )
        return Line(label, tuple(removals))

    return Chart(
        title="Removal by air for each part of sprayed water",
        says="The nozzle as measured; every pass has that much air of its own.",
        x=Axis("Air for each part of sprayed water", number),
        y=Axis("Share of the radon removed", share),
        lines=(line("one pass", 1), line("two passes", 2), line("three passes", 3)),
        marks=(Mark("one pass of yours", ratio, once, here=True),),
    )


CALCULATOR = Calculator(
    name="spray_removal",
    title="What a spray reaches",
    question="How much radon does spraying leave in the water?",
    inputs=(
        radon_fields.raw_radon,
        radon_fields.target_radon,
        aerator_fields.aerator_flow,
        aerator_fields.aerator_air,
        water_fields.water_temperature,
        Choice(
            name="spray_way",
            label="How the water meets the spray",
            options={
                "passes": "once through each of some spray chambers in a row",
                "around": "round and round from one mixed tank, while water enters and leaves",
            },
            default="around",
            origin=INVENTED,
            measure="Follow the pipe to the nozzle: from the well, or from the tank's own pump?",
            group=AERATOR,
        ),
        Choice(
            name="passes",
            label="Passes, each in its own chamber",
            options={str(n): str(n) for n in range(1, MOST_PASSES + 1)},
            default="1",
            origin=INVENTED,
            measure="Count the chambers that the water goes through.",
            group=AERATOR,
        ),
        flow_input(
            "around",
            "Flow round through the nozzle",
            "Q_n",
            "10 gpm",
            "The circulation pump's flow with the nozzle on: pail under the nozzle, outdoors.",
            AERATOR,
        ),
        Input(
            name="pass_removal",
            label="Removed by one pass through clean air",
            symbol="e_0",
            kind=share,
            default="60 %",
            origin="usually quoted as 50 to 90 %, from memory",
            low=1 * percent,
            high=99 * percent,
            measure="Spray raw water outdoors into a pail, sample before the nozzle and from the "
            "pail, without splashing.",
            group=NOZZLE,
            sure="10 %",
        ),
        Input(
            name="nozzle_pressure",
            label="Pressure at the nozzle",
            symbol="p_n",
            kind=gauge_pressure,
            default="20 psi",
            origin=INVENTED,
            low=1 * psi,
            high=150 * psi,
            measure="Gauge at the nozzle while it sprays, not at the pump.",
            group=NOZZLE,
            sure="1 psi",
        ),
        Input(
            name="drop_size",
            label="Diameter of the drops",
            symbol="d_n",
            kind=length,
            default="1 mm",
            origin="common size of a coarse spray, from memory",
            low=0.1 * mm,
            high=10 * mm,
            us="mm",
            si="mm",
            measure="Catch drops for a moment on a plate with oil and lay a ruler beside.",
            group=NOZZLE,
            sure="0.3 mm",
        ),
        Input(
            name="drop_fall",
            label="Height the spray falls to the water",
            symbol="z_f",
            kind=length,
            default="20 in",
            origin=INVENTED,
            low=1 * inch,
            high=240 * inch,
            us="in",
            si="cm",
            measure="From the nozzle down to the highest water level.",
            group=NOZZLE,
            sure="1 in",
        ),
    ),
    outputs=(
        Output(name="treated_radon", label="Radon left in the water", symbol="C_w", kind=radon),
        Output(name="removal", label="Removal", symbol="R", kind=share),
        Output(
            name="chamber_removal",
            label="Removed by one pass in the chamber's air",
            symbol="e_c",
            kind=share,
        ),
        Output(
            name="passes_needed",
            label="Passes for the target",
            kind=number,
            none="does not apply: the water goes round",
        ),
        Output(
            name="around_needed",
            label="Flow round for the target, with as much more air",
            kind=aerator_fields.aerator_flow.kind,
            none="does not apply: the water does not go round",
        ),
        Output(name="nozzle_speed", label="Speed out of the nozzle", symbol="v_n", kind=velocity),
        Output(name="flight", label="Time in the air", symbol="t_f", kind=duration, us="s", si="s"),
        Output(name="still_removal", label="Removed if the drops stood still inside", kind=share),
    ),
    work=spray_removal,
    cautions=(
        cautions.VENT_OUTDOORS,
        cautions.DRY_TANK,
        cautions.RADON_AIR,
        cautions.PRESSURE,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    sources=("weigel-1978", "crc-gases", "crank-1975", "mjones-2000", "epa-1999-proposal"),
)
