"""What stands between a fault and the house: each interlock's test, and what to mend first.

Every interlock is judged by its test, not by its label. The order is that of the harm: air
that nobody sees before water on the floor, and that before nuisance.
"""

from collections.abc import Mapping
from dataclasses import replace

from calc import cautions
from calc.errors import Refused
from calc.fields import INVENTED
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.intake import lockout_play
from calc.units import gal, number, volume

RESULTS = {
    "passed": "tested today: works",
    "failed": "tested today: does not act",
    "missing": "not fitted",
    "untested": "fitted, not tested",
}
AIR, WATER, REST = "What keeps radon out", "What keeps water in", "What tells and what lasts"

# In the order of mending; what each says when it is missing or fails.
HAZARDS: Mapping[str, Finding] = {
    "low_float": Finding(
        "danger",
        "Nothing stops pump 2 on an empty tank.",
        "Air and radon go to the taps, and the pump runs dry. Mend it so that a broken wire stops "
        "the pump. Until then the outlet must stay under the worst inlet.",
    ),
    "blower_proof": Finding(
        "danger",
        "The blower can stop unseen.",
        "Water full of radon then goes to the house and nothing shows it. Fit a switch that feels "
        "air pressure or flow, in series with the inlet and with pump 2; a relay contact only "
        "shows that the blower was told to run.",
    ),
    "vent": Finding(
        "danger",
        "The vent does not carry the air away.",
        "Stripped radon stays in the room or comes back. Keep out but to air it; shut the blower "
        "and the inlet until the pipe is open to the outdoors, sloped to drain and screened.",
    ),
    "vent_proof": Finding(
        "danger",
        "A blocked vent or diffuser goes unseen.",
        "The blower runs on, and the air goes nowhere or into the room. The proving switch needs "
        "a high limit as well as a low one.",
    ),
    "restart": Finding(
        "danger",
        "After a power failure pump 2 runs before the blower.",
        "The house gets water that was not aerated. Let pump 2 start only when the blower is "
        "proven.",
    ),
    "power_failure": Finding(
        "danger",
        "The inlet stays open without power.",
        "Water comes in unaerated, and only the float holds it. The inlet valve must close by its "
        "spring when power goes.",
    ),
    "high_float": Finding(
        "danger",
        "Nothing stops an inlet that sticks open.",
        "The tank rises to its overflow. A high-level float must close a second valve in series, "
        "not the one that stuck.",
    ),
    "overflow": Finding(
        "danger",
        "The overflow is no safe way out.",
        "It must carry the whole flow in, through an air gap, with a trap that holds water, so "
        "that neither a flood nor radon comes into the basement.",
    ),
    "pump_check": Finding(
        "caution",
        "Water runs back through pump 2.",
        "The house pressure tank drains into the open tank and can overflow it, and the pump "
        "starts without a draw. Replace the check valve.",
    ),
    "limit_locked": Finding(
        "caution",
        "Anyone can open the outlet limit.",
        "One turn brings back the tank that runs dry. Lock it or take the handle off, and tag it "
        "with both flows and the date.",
    ),
    "alarm": Finding(
        "caution",
        "A trip may pass unnoticed.",
        "An alarm must stay on until somebody clears it, and be heard where people live.",
    ),
    "bypass": Finding(
        "caution",
        "The bypass is not marked.",
        "Sooner or later somebody opens it and leaves it. Lock it and label it: untreated, radon.",
    ),
}
# A lock-out that lets go sooner starts and stops pump 2 all day. Common practice, no source.
LEAST_PLAY = 3 * gal
_HASTY = Finding(
    "caution",
    "The lock-out lets go too soon.",
    "It waits for {lock_play} only. Pump 2 then stops and starts all through a draw. Set it to let "
    "go at least {least} higher, or by a timer or by hand.",
    {"least": Quantity(LEAST_PLAY, volume)},
)
UNTESTED = "Not tested: take it as broken until it is. If it is: "


def interlock_check(
    low_float: str,
    lock_off: float,
    lock_on: float,
    blower_proof: str,
    vent: str,
    vent_proof: str,
    restart: str,
    power_failure: str,
    high_float: str,
    overflow: str,
    pump_check: str,
    limit_locked: str,
    alarm: str,
    bypass: str,
) -> Answer:
    """Which hazards stand open, worst first."""
    if lock_on <= lock_off:
        raise Refused("contradiction", "lock_on", says="must be above the {lock_off} it stopped at")
    results = {
        "low_float": low_float,
        "blower_proof": blower_proof,
        "vent": vent,
        "vent_proof": vent_proof,
        "restart": restart,
        "power_failure": power_failure,
        "high_float": high_float,
        "overflow": overflow,
        "pump_check": pump_check,
        "limit_locked": limit_locked,
        "alarm": alarm,
        "bypass": bypass,
    }
    broken = [name for name, result in results.items() if result in ("failed", "missing")]
    untested = [name for name, result in results.items() if result == "untested"]
    grave = [name for name in broken if HAZARDS[name].level == "danger"]
    play = lockout_play(lock_off, lock_on)
    passed = len(results) - len(broken) - len(untested)
    given = {
        "N": Quantity(len(results), number, label="protections on the list"),
        "N_f": Quantity(list(results.values()).count("failed"), number, label="that do not act"),
        "N_m": Quantity(list(results.values()).count("missing"), number, label="not fitted"),
        "N_t": Quantity(len(untested), number, label="fitted, not tested"),
    }
    return Answer(
        outputs={
            "lock_play": play,
            "open_hazards": float(len(broken)),
            "untested": float(len(untested)),
            "passed": float(passed),
        },
        findings=(
            _headline(bool(grave), bool(broken), bool(untested)),
            *(HAZARDS[name] for name in broken),
            *(_doubted(HAZARDS[name]) for name in untested),
            *([_HASTY] if low_float == "passed" and play < LEAST_PLAY else []),
        ),
        steps=(
            Step("Water the lock-out waits for", "V_w = V_r - V_l", given),
            Step("Protections that do not act or are not there", "N_o = N_f + N_m", given),
            Step("Not tested", "N_u = N_t", given),
            Step("Passed their test", "N_p = N - N_o - N_u", given),
        ),
    )


def _doubted(hazard: Finding) -> Finding:
    return replace(hazard, level="caution", text=UNTESTED + hazard.text)


def _headline(grave: bool, broken: bool, untested: bool) -> Finding:
    if grave:
        return Finding(
            "danger",
            "Do not leave it so.",
            "{open_hazards} of the protections do not act or are not there. They follow in the "
            "order to mend them. Tell the household today, in writing, what the first one means.",
        )
    if broken:
        return Finding(
            "caution",
            "Mend before you leave, or soon.",
            "No grave hazard stands open. What follows comes in the order to mend it.",
        )
    if untested:
        return Finding(
            "caution",
            "Test the rest.",
            "Nothing failed, and {untested} are not tested. An interlock that nobody has tried is "
            "a hope.",
        )
    return Finding(
        "good",
        "Every protection acts.",
        "All {passed} passed their test. Write the date on the tag and test again in a year, and "
        "after any work on the wiring.",
    )


def _choice(name: str, label: str, default: str, measure: str, group: str) -> Choice:
    return Choice(
        name=name,
        label=label,
        options=RESULTS,
        default=default,
        origin=INVENTED,
        measure=measure,
        group=group,
        once=False,
    )


def _level(name: str, label: str, symbol: str, default: str, measure: str) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=volume,
        default=default,
        origin=INVENTED,
        low=0.0,
        high=2000 * gal,
        measure=measure,
        group=AIR,
        sure="0.25 gal",
    )


CALCULATOR = Calculator(
    name="interlock_check",
    title="What stands between a fault and the house",
    question="Which hazards stand open at this tank, and which is to be mended first?",
    inputs=(
        _choice(
            "low_float",
            "Low-level switch stops pump 2",
            "passed",
            "Test 1: shut the inlet and draw the tank down. Pump 2 must stop with water over the "
            "intake, and stay off until the level is well up again.",
            AIR,
        ),
        _level(
            "lock_off",
            "Water over the intake when it stopped pump 2",
            "V_l",
            "5 gal",
            "In test 1: height over the intake times gallons an inch. It must be no less than the "
            "intake needs: see how deep the intake must sit.",
        ),
        _level(
            "lock_on",
            "Water over the intake when it let pump 2 go again",
            "V_r",
            "8.5 gal",
            "The same test, with the inlet open again.",
        ),
        _choice(
            "blower_proof",
            "Blower stopped: inlet shut and pump 2 off",
            "untested",
            "Test 2: switch the blower off at its own switch with a tap open. The inlet must shut "
            "and pump 2 stop, at once or when its reserve is used.",
            AIR,
        ),
        _choice(
            "vent",
            "Vent open to the outdoors",
            "passed",
            "Test 3: from outdoors see the end of the pipe, above the roof, screened and free; "
            "feel the air come out. Indoors: no sag where water can stand.",
            AIR,
        ),
        _choice(
            "vent_proof",
            "Vent blocked: blower's switch trips",
            "missing",
            "Test 4: the proving switch must trip on too much pressure too. Try it at the switch's "
            "own tube; do not block the vent.",
            AIR,
        ),
        _choice(
            "restart",
            "After a power failure pump 2 waits for the blower",
            "untested",
            "Test 5: main switch off and on with a tap open. Pump 2 must stay off until the blower "
            "is proven.",
            AIR,
        ),
        _choice(
            "power_failure",
            "Power off: inlet shuts by itself",
            "passed",
            "Test 6: hold the float down, switch the control off. The stream must stop.",
            WATER,
        ),
        _choice(
            "high_float",
            "High-level float shuts a second valve",
            "passed",
            "Test 7: lift the float by hand. A second valve must shut, and the alarm sound.",
            WATER,
        ),
        _choice(
            "overflow",
            "Overflow carries the whole flow in",
            "untested",
            "Test 8: hold the inlet open until it overflows, with pail and mop by. The level must "
            "settle under the rim; the trap must hold water.",
            WATER,
        ),
        _choice(
            "pump_check",
            "Pump 2's check valve holds",
            "passed",
            "Test 9: all taps shut, pump 2 off at the panel: the house gauge must stand still for "
            "half an hour.",
            WATER,
        ),
        _choice(
            "limit_locked",
            "Outlet limit locked and tagged",
            "passed",
            "Test 10: try to turn it. Compare the tag with today's pail.",
            REST,
        ),
        _choice(
            "alarm",
            "Alarm heard, and stays on until cleared",
            "failed",
            "Test 11: during test 1 or 7 let the level come back. The alarm must still be on.",
            REST,
        ),
        _choice(
            "bypass",
            "Bypass shut, locked and labeled",
            "passed",
            "Test 12: read the label as a stranger would. No bypass at all passes.",
            REST,
        ),
    ),
    outputs=(
        Output(
            name="open_hazards",
            label="Protections that do not act or are not there",
            symbol="N_o",
            kind=number,
            high=0.0,
            outside="Hazards stand open.",
        ),
        Output(name="untested", label="Not tested", symbol="N_u", kind=number),
        Output(
            name="lock_play",
            label="Water the low-level lock-out waits for",
            symbol="V_w",
            kind=volume,
        ),
        Output(name="passed", label="Passed their test", symbol="N_p", kind=number),
    ),
    work=interlock_check,
    cautions=(
        cautions.RADON_AIR,
        cautions.ELECTRICITY,
        cautions.PRESSURE,
        cautions.LOCAL_CODE,
    ),
    sources=("epa-radon-2016", "osha-1910-147", "irc-p2902", "sps-382"),
)
