"""What the vent's air holds, and what a leak of it does to the room around the aerator."""

from math import exp
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, aerator_fields, open_tank_fields, radon_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.off_gas import DECAY, FROM_USE, even_share, room_radon, vent_radon
from calc.units import (
    L,
    activity,
    day,
    duration,
    ft,
    hour,
    number,
    pCi,
    percent,
    radon,
    rate,
    share,
    volume,
)

ROOM = "Room with the aerator"
# Level at which US EPA advises to fix a house's air: [epa-radon-2016].
FIX = 4 * pCi / L
OUTDOORS = 0.4 * pCi / L  # [epa-radon-2016]
POINTS = 40


class _Room(NamedTuple):
    """What leaks or would leak into the room: Bq/m³ in its air."""

    leak: float
    all_of_it: float
    hour: float
    even: float


def vent_leak(
    raw_radon: float,
    treated_radon: float,
    daily_use: float,
    aerator_flow: float,
    aerator_air: float,
    leak_share: float,
    room_volume: float,
    room_change: float,
) -> Answer:
    """Radon in the vent, radon let go in a day, and what part of it a leak brings indoors."""
    if treated_radon >= raw_radon:
        raise Refused("contradiction", "treated_radon", says="must be below {raw_radon}")
    removed = raw_radon - treated_radon
    release = removed * daily_use
    drawing = removed * aerator_flow * leak_share
    vent = vent_radon(removed, aerator_flow, aerator_air)
    room = _Room(
        room_radon(release * leak_share, room_volume, room_change),
        room_radon(release, room_volume, room_change),
        room_radon(drawing, room_volume, room_change, 1 * hour),
        even_share(removed / raw_radon, daily_use, room_volume, room_change),
    )
    untreated = FROM_USE * raw_radon
    return Answer(
        outputs={
            "leak_radon": room.leak,
            "hour_radon": room.hour,
            "open_radon": room.all_of_it,
            "untreated_radon": untreated,
            "even_leak": room.even,
            "vent_radon": vent,
            "thinning": vent / OUTDOORS,
            "day_release": release * day,
        },
        findings=(_headline(room, leak_share, untreated), *_more(room, vent)),
        steps=_steps(_given(removed, room_change)),
        charts=(_chart(room, leak_share, untreated),),
    )


def _headline(room: _Room, leak: float, untreated: float) -> Finding:
    if room.leak >= FIX:
        return Finding(
            "danger",
            "The leak alone calls for action.",
            "It adds {leak_radon} to the room's air. US EPA advises to fix a house at {fix} "
            "(2016, advice, no limit by law). Find and seal it before anyone stays in that room.",
            {"fix": Quantity(FIX, radon)},
        )
    if leak > room.even:
        return Finding(
            "danger",
            "Worse than no treatment.",
            "The leak adds {leak_radon} to this room. The same water untreated would have added "
            "about {untreated_radon} to the whole house. No more than {even_leak} may leak before "
            "that.",
        )
    if room.leak >= OUTDOORS:
        return Finding(
            "caution",
            "A leak that shows.",
            "It adds {leak_radon} to the room's air: as much as air outdoors holds, or more. "
            "Seal it, then test the room's air.",
        )
    return Finding(
        "good",
        "Hardly to be seen.",
        "It adds {leak_radon} to the room's air. A test of that air, with the unit running, tells "
        "whether the leak is as small as you think.",
    )


def _more(room: _Room, vent: float) -> tuple[Finding, ...]:
    findings = []
    if room.all_of_it >= FIX:
        findings.append(
            Finding(
                "danger",
                "If the vent comes off.",
                "All of it in this room makes {open_radon}, day and night. So does a vent that ice "
                "or water has closed, when the air leaves by the lid instead.",
            )
        )
    if vent > OUTDOORS:
        findings.append(
            Finding(
                "caution",
                "Keep the outlet far from openings.",
                "While water runs the vent's air holds {vent_radon}. It must thin {thinning} times "
                "before it is like outdoor air.",
            )
        )
    return tuple(findings)


def _given(removed: float, room_change: float) -> dict[str, Quantity]:
    faded = (room_change + DECAY) * hour
    return {
        "c": Quantity(removed, radon, 4),
        "d": Quantity(day, duration, 4, "a day"),
        "l_d": Quantity(DECAY, rate, 4, "decay of radon"),
        "l": Quantity(room_change + DECAY, rate, 4),
        "f": Quantity(FROM_USE, number, 2, "radon in air over radon in water, from ordinary use"),
        "k": Quantity(
            1 - exp(-faded), number, 4, "how far the room gets in an hour, of all the way"
        ),
        "C_n": Quantity(OUTDOORS, radon, 2, "radon outdoors"),
    }


def _steps(given: dict[str, Quantity]) -> tuple[Step, ...]:
    return (
        Step("Radon that the water loses", "c = C_r - C_w", given),
        Step("Radon in the vent while water runs", "C_v = c * Q_a / G", given),
        Step("Times it must thin to be like outdoor air", "N = C_v / C_n", given),
        Step("Let go in a day", "A = c * Q_u * d", given),
        Step("How fast the room loses radon", "l = l_r + l_d", given),
        Step("All of it in the room", "C_a = A / (d * V_r * l)", given),
        Step("What the leak adds, day and night", "C_l = x * C_a", given),
        Step("After an hour of water running", "C_h = k * x * c * Q_a / (V_r * l)", given),
        Step("Untreated, from ordinary use, in the house", "C_u = f * C_r", given),
        Step("Share that may leak before that", "x_e = C_u / C_a", given),
    )


def _chart(room: _Room, leak: float, untreated: float) -> Chart:
    most = min(1.0, max(1.5 * leak, 2 * room.even, 0.02))
    return Chart(
        title="What a leak adds to the room's air",
        says="In proportion to the share that leaks. The line of the untreated water is an average "
        "of houses.",
        x=Axis("Share of the vent's radon that leaks", _LEAK),
        y=Axis("Radon added to the room's air", radon),
        lines=(Line("day and night", ((0.0, 0.0), (most, most * room.all_of_it))),),
        limits=(
            Limit("US EPA advises to fix", FIX),
            Limit("the water untreated, in the house", untreated),
        ),
        marks=(Mark("this leak", leak, room.leak, here=True),),
    )


_LEAK = Input(
    name="leak_share",
    label="Share of the vent's air that leaks into the room",
    symbol="x",
    kind=share,
    default="2 %",
    origin=INVENTED,
    low=0,
    high=100 * percent,
    measure="Soapy water or smoke at lid, unions, pump's cable and overflow finds it, no test at "
    "home measures it. Work it backwards from the room's air with the unit off and on.",
    group=ROOM,
)
CALCULATOR = Calculator(
    name="vent_leak",
    title="A leaking vent",
    question="What is in the vent's air, and what does a leak of it do to the room?",
    inputs=(
        radon_fields.raw_radon,
        radon_fields.treated_radon,
        open_tank_fields.daily_use,
        aerator_fields.aerator_flow,
        aerator_fields.aerator_air,
        _LEAK,
        Input(
            name="room_volume",
            label="Air in the room with the aerator",
            symbol="V_r",
            kind=volume,
            us="ft³",
            si="m³",
            default="7200 ft³",
            origin="invented example: a basement of 900 square feet, 8 feet high",
            low=50 * ft**3,
            high=100000 * ft**3,
            measure="Floor area times height, with the rooms whose doors stand open.",
            group=ROOM,
            sure="10 %",
        ),
        Input(
            name="room_change",
            label="Air changes of that room",
            symbol="l_r",
            kind=rate,
            default="0.3 per h",
            origin="common practice, no source: a closed basement in winter",
            low=0.02 / hour,
            high=20 / hour,
            measure="0.1 to 0.5 closed, several with windows open. Air that only goes round "
            "through a furnace is none.",
            group=ROOM,
            sure="50 %",
        ),
    ),
    outputs=(
        Output(
            name="leak_radon",
            label="The leak adds to the room's air",
            symbol="C_l",
            kind=radon,
            high=FIX,
            outside="The leak alone is over the level at which US EPA advises to fix a house.",
        ),
        Output(
            name="hour_radon",
            label="After an hour of water running, it adds",
            symbol="C_h",
            kind=radon,
        ),
        Output(
            name="open_radon", label="All of it in the room would add", symbol="C_a", kind=radon
        ),
        Output(
            name="untreated_radon",
            label="The same water untreated would add to the house",
            symbol="C_u",
            kind=radon,
            digits=2,
        ),
        Output(
            name="even_leak",
            label="Share that may leak before that is passed",
            symbol="x_e",
            kind=share,
            digits=2,
        ),
        Output(
            name="vent_radon",
            label="Radon in the vent while water runs",
            symbol="C_v",
            kind=radon,
            digits=4,
        ),
        Output(
            name="thinning",
            label="Times that must thin to be like outdoor air",
            symbol="N",
            kind=number,
        ),
        Output(
            name="day_release",
            label="Radon let go in a day",
            symbol="A",
            kind=activity,
            digits=4,
        ),
    ),
    work=vent_leak,
    cautions=(
        cautions.VENT_OUTDOORS,
        cautions.RADON_AIR,
        cautions.DRY_TANK,
        cautions.LOCAL_CODE,
    ),
    sources=("nrc-1999", "epa-radon-2016", "icrp-107"),
)
