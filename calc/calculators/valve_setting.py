"""Where a valve must stand to pass a flow, how touchy it is there, and whether it chokes."""

from math import pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, flow_input, house_tank_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics import valve
from calc.physics.restriction import flow_coefficient, orifice_bore
from calc.physics.water import CRITICAL_PRESSURE, density, vapour_pressure
from calc.units import (
    GRAVITY,
    absolute_pressure,
    acceleration,
    angle,
    area,
    atm,
    flow,
    gauge_pressure,
    inch,
    length,
    number,
    pressure_gradient,
    psi,
    share,
)
from calc.units import flow_coefficient as coefficient_kind

WANTED = "Wanted"
THE_VALVE = "The valve"
DEGREE = pi / 180
TENTH = 0.1  # of a turn
SHARP = 0.61  # discharge coefficient of a sharp-edged hole, from memory of any handbook
REACH = 10  # degrees of handle to either side in the picture


class _Stand(NamedTuple):
    """Where both valves stand for the flow, None past their tables; K wanted."""

    loss: float
    cock: valve.Opening | None
    globe: valve.Opening | None


def valve_setting(
    wanted_flow: float,
    valve_before: float,
    valve_after: float,
    valve_bore: float,
    globe_turns: float,
    water_now: float,
) -> Answer:
    """Opening and touchiness of a cock and of a globe valve, and whether either chokes."""
    if valve_after >= valve_before:
        raise Refused("contradiction", "valve_after", says="must be below {valve_before}")
    drop, rho = valve_before - valve_after, density(water_now)
    wanted = flow_coefficient(wanted_flow, drop)
    loss = valve.loss_of_coefficient(wanted, valve_bore, rho)
    stand = _Stand(loss, valve.opening(valve.COCK, loss), valve.opening(valve.GLOBE, loss))
    upstream, pv = valve_before + atm, vapour_pressure(water_now)
    chokes = {
        name: valve.choking_drop(upstream, pv, recovery)
        for name, recovery in (
            ("choke_cock", valve.RECOVERY_COCK),
            ("choke_globe", valve.RECOVERY_GLOBE),
        )
    }
    sigma = valve.cavitation_index(upstream, valve_after + atm, pv)
    cock, globe = stand.cock, stand.globe
    outputs = {
        "cv_wanted": wanted,
        "loss_wanted": loss,
        "cock_at": cock.at if cock else None,
        "cock_step": _step(cock, DEGREE),
        "globe_at": globe.at if globe else None,
        "globe_step": _step(globe, TENTH / globe_turns),
        "hole": orifice_bore(wanted, SHARP, rho),
        **chokes,
        "sigma": sigma,
    }
    return Answer(
        outputs=outputs,
        findings=(
            *_openings(stand, wanted_flow),
            _choking(drop, chokes["choke_cock"], chokes["choke_globe"], sigma),
        ),
        steps=_steps(valve_bore, rho, pv),
        charts=_charts(stand, wanted_flow, globe_turns),
    )


def _step(opening: valve.Opening | None, moved: float) -> float | None:
    """Share by which the flow rises when the handle moves that far open."""
    return valve.flow_after_knock(abs(opening.slope), moved) - 1 if opening else None


def _openings(stand: _Stand, wanted: float) -> tuple[Finding, ...]:
    most_shut, least_shut = valve.GLOBE[0][1], valve.GLOBE[-1][1]
    findings = [_headline(stand, wanted)]
    if stand.loss > most_shut:
        findings.append(
            Finding(
                "caution",
                "A globe valve is nearly shut.",
                "A globe valve of this bore would stand less than a quarter open, where its disk "
                "sits almost on the seat. Take a smaller one, or a needle valve.",
            )
        )
    elif stand.loss < least_shut:
        findings.append(
            Finding(
                "caution",
                "A globe valve is too small.",
                "A globe valve of this bore cannot pass that, not even wide open.",
            )
        )
    return tuple(findings)


def _headline(stand: _Stand, wanted: float) -> Finding:
    if stand.cock is None and stand.loss > valve.COCK[0][1]:
        return Finding(
            "caution",
            "The valve is far too big.",
            "It needs a flow coefficient of {cv_wanted}: a quarter-turn valve of this bore would "
            "stand all but shut. Take a smaller valve, or a disk with a hole of {hole}.",
        )
    if stand.cock is None:
        return Finding(
            "caution",
            "The valve is too small.",
            "It needs a flow coefficient of {cv_wanted}: more than a valve of this bore passes "
            "wide open.",
        )
    knocked = wanted * valve.flow_after_knock(abs(stand.cock.slope), 2 * DEGREE)
    return Finding(
        "caution",
        "A cock is touchy.",
        "It needs a flow coefficient of {cv_wanted}. A quarter-turn valve of this bore would "
        "stand {cock_at} from open, and each degree changes the flow by {cock_step}. A knock of "
        "2 degrees makes {knocked} of {wanted_flow}.",
        {"knocked": Quantity(knocked, flow)},
    )


def _choking(drop: float, cock: float, globe: float, sigma: float) -> Finding:
    if drop >= globe:
        return Finding(
            "danger",
            "Chokes.",
            "The drop is past {choke_globe}, at which even a globe valve chokes: it hisses like "
            "gravel, passes less than its coefficient says, and its seat wears away until it "
            "passes more. Share the drop between two restrictions in line.",
        )
    if drop >= cock or sigma < valve.QUIET:
        return Finding(
            "caution",
            "May cavitate.",
            "A quarter-turn valve can choke from {choke_cock} on, a globe valve at {choke_globe}. "
            "Listen: a hiss or a rattle of gravel is water tearing, and the setting will drift.",
        )
    return Finding(
        "good",
        "No choking.",
        "The drop is under {choke_cock}, at which a quarter-turn valve can begin to choke.",
    )


def _steps(bore: float, rho: float, pv: float) -> tuple[Step, ...]:
    given = {
        "A": Quantity(pi * bore**2 / 4, area),
        "pi": Quantity(pi, number, 5, "a circle's circumference over its diameter"),
        "w": Quantity(rho * GRAVITY, pressure_gradient, label="weight of standing water"),
        "g": Quantity(GRAVITY, acceleration, label="gravity"),
        "c": Quantity(SHARP, number, label="discharge coefficient of a sharp-edged hole"),
        "P_a": Quantity(atm, gauge_pressure, label="pressure of the air"),
        "p_v": Quantity(pv, absolute_pressure, label="pressure at which the water boils"),
        "p_z": Quantity(CRITICAL_PRESSURE, absolute_pressure, label="critical pressure of water"),
        "F_F": Quantity(valve.critical_ratio(pv), number),
        "F_k": Quantity(valve.RECOVERY_COCK, number, label="FL of a quarter-turn valve, open"),
        "F_g": Quantity(valve.RECOVERY_GLOBE, number, label="FL of a globe valve"),
    }
    return (
        Step("Flow coefficient wanted", "C = Q / sqrt(p_1 - p_2)", given),
        Step("Cross-section of the valve", "A = pi * D**2 / 4", given),
        Step("Loss factor wanted, to look up the opening", "K = 2 * g / w * (A / C)**2", given),
        Step("Hole in a disk that does the same", "d = sqrt(4 * C / (pi * c) * sqrt(w / (2 * g)))",
             given),
        Step("Critical pressure ratio of the water", "F_F = 0.96 - 0.28 * sqrt(p_v / p_z)", given),
        Step("A quarter-turn valve chokes at", "p_k = F_k**2 * (p_1 + P_a - F_F * p_v)", given),
        Step("A globe valve chokes at", "p_g = F_g**2 * (p_1 + P_a - F_F * p_v)", given),
        Step("Cavitation index", "sigma = (p_1 + P_a - p_v) / (p_1 - p_2)", given),
    )  # fmt: skip


def _charts(stand: _Stand, wanted: float, globe_turns: float) -> tuple[Chart, ...]:
    moves = [degrees * DEGREE for degrees in range(-REACH, REACH + 1)]
    slopes = []
    if stand.cock:
        slopes.append(("quarter-turn valve", abs(stand.cock.slope)))
    if stand.globe:
        slopes.append(("globe valve", abs(stand.globe.slope) / (globe_turns * 2 * pi)))
    if not slopes:
        return ()
    return (
        Chart(
            title="What a knock on the handle does",
            says="The steeper line is the valve that is harder to set and easier to upset.",
            x=Axis("Handle moved toward open", angle),
            y=Axis("Flow at the same pressures", flow),
            lines=tuple(
                Line(
                    name,
                    tuple((by, wanted * valve.flow_after_knock(slope, by)) for by in moves),
                )
                for name, slope in slopes
            ),
            marks=(Mark("as set", 0.0, wanted, here=True),),
        ),
    )


CALCULATOR = Calculator(
    name="valve_setting",
    title="Setting a valve",
    question="How far open must a valve stand, how touchy is it there, and does it choke?",
    inputs=(
        flow_input(
            "wanted_flow",
            "Flow that the valve is to pass",
            "Q",
            "7 gpm",
            "For the outlet: the pail's figure from the outlet-setting page.",
            WANTED,
            sure="0 gpm",
        ),
        Input(
            name="valve_before",
            label="Gauge before the valve at that flow",
            symbol="p_1",
            kind=gauge_pressure,
            default="36 psi",
            origin=INVENTED,
            low=1 * psi,
            high=200 * psi,
            measure="A gauge right before it. For the outlet's worst: pump 2 running, the house "
            "pressure tank empty, or the tank at cut-out if the valve sits after it.",
            group=WANTED,
            sure="2 psi",
        ),
        Input(
            name="valve_after",
            label="Gauge behind the valve at that flow",
            symbol="p_2",
            kind=gauge_pressure,
            default="21 psi",
            origin=INVENTED,
            low=0,
            high=199 * psi,
            measure="A gauge right behind it; 0 for an open end.",
            group=WANTED,
            sure="2 psi",
        ),
        Input(
            name="valve_bore",
            label="Inside diameter of the valve",
            symbol="D",
            kind=length,
            default="0.622 in",
            origin="1/2 in schedule 40 pipe, from memory",
            low=0.1 * inch,
            high=4 * inch,
            us="in",
            si="mm",
            measure="Caliper, or a table for its size. A ball valve may be narrower than its pipe.",
            group=THE_VALVE,
            sure="0.01 in",
        ),
        Input(
            name="globe_turns",
            label="Turns of a globe valve from shut to open",
            kind=number,
            default="4",
            origin="common practice, no source",
            low=0.5,
            high=30,
            measure="Count them.",
            group=THE_VALVE,
        ),
        house_tank_fields.water_now,
    ),
    outputs=(
        Output(
            name="cv_wanted", label="Flow coefficient wanted", symbol="C", kind=coefficient_kind
        ),
        Output(name="loss_wanted", label="Loss factor wanted", symbol="K", kind=number),
        Output(
            name="cock_at",
            label="Quarter-turn valve, away from open",
            kind=angle,
            digits=2,
            none="past the table: from 5 to 65 degrees",
        ),
        Output(
            name="cock_step",
            label="Its flow changes for each degree by",
            kind=share,
            digits=2,
            none="not known",
        ),
        Output(
            name="globe_at",
            label="Globe valve, share of its travel open",
            kind=share,
            digits=2,
            none="past the table: from a quarter open to open",
        ),
        Output(
            name="globe_step",
            label="Its flow changes for each tenth of a turn by",
            kind=share,
            digits=2,
            none="not known",
        ),
        Output(
            name="hole",
            label="Hole in a disk that does the same",
            symbol="d",
            kind=length,
            us="in",
            si="mm",
        ),
        Output(
            name="choke_cock",
            label="A quarter-turn valve can choke from a drop of",
            symbol="p_k",
            kind=gauge_pressure,
        ),
        Output(
            name="choke_globe",
            label="A globe valve chokes at a drop of",
            symbol="p_g",
            kind=gauge_pressure,
        ),
        Output(name="sigma", label="Cavitation index", symbol="sigma", kind=number, digits=2),
    ),
    work=valve_setting,
    cautions=(cautions.PRESSURE, cautions.LOCAL_CODE),
    sources=("iec-60534-2-1", "perry-cock", "isa-75-23", "iapws-liquid", "iapws-sat"),
)
