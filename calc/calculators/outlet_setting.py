"""The outlet setting that keeps the open tank from running dry."""

from typing import NamedTuple

from calc import cautions
from calc.errors import Refused
from calc.fields import (
    INLET,
    INVENTED,
    OUTLET,
    flow_input,
    house_tank_fields,
    open_tank_fields,
    well_tank_fields,
)
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.open_tank import guarded_outlet, largest_draw, sure_reserve, sure_time
from calc.physics.pail import T_95_MANY
from calc.physics.pressure_tank import drawdown
from calc.physics.restriction import flow_at_lower_drop, flow_at_other_drop
from calc.units import (
    WATER_COLUMN,
    atm,
    duration,
    flow,
    gauge_pressure,
    number,
    pressure_gradient,
    psi,
    share,
    volume,
)

# One-sided normal factors, recomputed: chance that the true outlet passes the true inlet.
CHANCE = {"5": 1.645, "1": 2.326}
NEAR_ZERO = 10 * psi  # a house gauge this low: the pressure tank is all but empty
LOOSEST = 0.4  # a plus-or-minus over this share leaves nothing to set


class _Flows(NamedTuple):
    corrected: float
    worst_inlet: float
    worst_outlet: float
    setting: float
    pail_setting: float


def outlet_setting(
    inlet: float,
    inlet_gauge: float,
    well_cut_in: float,
    rise: float,
    service_at: float,
    limit: str,
    outlet: float,
    house_gauge: float,
    chance: str,
    float_open: float,
    house_tank: float,
    precharge: float,
    cut_in: float,
    cut_out: float,
    inlet_sure: float,
    outlet_sure: float,
) -> Answer:
    """Largest safe outlet setting, and what today's setting would do at the worst hour."""
    lift = WATER_COLUMN * rise
    for name, sure in (("inlet", inlet_sure), ("outlet", outlet_sure)):
        if sure > LOOSEST:
            raise Refused("contradiction", name, says="is known too loosely to set a limit by")
    _check(lift, inlet_gauge, well_cut_in, precharge, cut_in, cut_out)
    before = limit == "before"
    z = CHANCE[chance]
    u_in, u_out = inlet_sure / T_95_MANY, outlet_sure / T_95_MANY
    corrected = flow_at_lower_drop(inlet, inlet_gauge - lift, well_cut_in - lift)
    worst_inlet = min(corrected, service_at)
    full = 1.0 if before else max(1.0, flow_at_other_drop(1.0, house_gauge, cut_out))
    setting = guarded_outlet(worst_inlet, u_in, u_out, z)
    flows = _Flows(corrected, worst_inlet, outlet * full, setting, setting / full)
    taken = drawdown(house_tank, precharge, cut_in, cut_out)
    reserve = sure_reserve(float_open, taken, before)
    given = {
        "w": Quantity(WATER_COLUMN, pressure_gradient, label="weight of standing water"),
        "p_h": Quantity(lift, gauge_pressure),
        "Q_c": Quantity(corrected, flow),
        "z": Quantity(z, number, 4, f"normal factor for a chance of {chance} in 100"),
        "u_i": Quantity(u_in, share),
        "u_o": Quantity(u_out, share),
        "P_a": Quantity(atm, gauge_pressure, label="pressure of the air"),
        "dV": Quantity(taken, volume),
        "k": Quantity(T_95_MANY, number, label="from a plus-or-minus to a standard deviation"),
        "U_i": Quantity(inlet_sure, share, label="plus-or-minus of the flow in"),
        "U_o": Quantity(outlet_sure, share, label="plus-or-minus of the flow out"),
    }
    return Answer(
        outputs={
            "setting": setting,
            "pail_setting": flows.pail_setting,
            "worst_inlet": worst_inlet,
            "worst_outlet": flows.worst_outlet,
            "margin": worst_inlet - flows.worst_outlet,
            "guard": worst_inlet - setting,
            "reserve": reserve,
            "lasts": sure_time(reserve, worst_inlet, flows.worst_outlet),
            "one_draw": largest_draw(
                reserve, worst_inlet, flows.worst_outlet, taken if before else 0.0
            ),
        },
        findings=_findings(flows, reserve, before, house_gauge),
        steps=_steps(flows, reserve, before, inlet_gauge > well_cut_in, given),
    )


def _check(
    lift: float, gauge: float, well_cut_in: float, precharge: float, cut_in: float, cut_out: float
) -> None:
    for name, pressure in (("inlet_gauge", gauge), ("well_cut_in", well_cut_in)):
        if pressure <= lift:
            raise Refused("contradiction", name, says="cannot lift water by {rise}")
    if cut_out <= cut_in:
        raise Refused("contradiction", "cut_out", says="must be above the cut-in of {cut_in}")
    if precharge >= cut_out:
        raise Refused("contradiction", "precharge", says="must be below the cut-out of {cut_out}")


def _findings(
    flows: _Flows, reserve: float, before: bool, house_gauge: float
) -> tuple[Finding, ...]:
    measured_at_worst = not before or house_gauge <= NEAR_ZERO
    findings = [_headline(flows, reserve, measured_at_worst)]
    if flows.corrected <= flows.worst_inlet:
        findings.append(
            Finding(
                "caution",
                "Service is due.",
                "When the well pump is about to start, the flow in is already {corrected}: at or "
                "under {service_at}, at which you meant to service the filter.",
                {"corrected": Quantity(flows.corrected, flow)},
            )
        )
    else:
        findings.append(
            Finding(
                "caution",
                "Keep the service promise.",
                "This setting counts on a filter serviced before the flow in falls to "
                "{service_at}.",
            )
        )
    if not measured_at_worst:
        findings.append(
            Finding(
                "caution",
                "Not the worst case.",
                "The house gauge read {house_gauge} while you measured the flow out. Let the "
                "pressure tank run empty through a wide-open pipe first: pump 2 then passes the "
                "most.",
            )
        )
    if not before:
        findings.append(
            Finding(
                "caution",
                "Open pipe only.",
                "A limit after the pressure tank must be measured from an open pipe. Through a "
                "tap it passes less today than it can.",
            )
        )
    return tuple(findings)


def _headline(flows: _Flows, reserve: float, measured_at_worst: bool) -> Finding:
    if reserve <= 0:
        return Finding(
            "danger",
            "Not safe.",
            "One refill of the house pressure tank can take more than the open tank holds when "
            "the float opens, whatever the setting. Move the limit before the pressure tank, or "
            "raise the float.",
        )
    if flows.worst_outlet <= flows.setting and not measured_at_worst:
        return Finding(
            "caution",
            "Not proven.",
            "Today's outlet stays under the worst inlet as it was measured, but it was not "
            "measured at its worst. Measure it again before you trust {pail_setting}.",
        )
    if flows.worst_outlet <= flows.setting:
        return Finding(
            "good",
            "Safe.",
            "At its worst the inlet brings {worst_inlet} and today's outlet passes at most "
            "{worst_outlet}. The outlet may be set to {pail_setting} on the pail, no higher.",
        )
    close = "Close the outlet until the pail shows {pail_setting}, then lock and tag it."
    if flows.worst_outlet <= flows.worst_inlet:
        return Finding(
            "caution",
            "Too close.",
            "Today's outlet is under the worst inlet by {margin}, less than the measurements can "
            "tell apart. " + close,
        )
    return Finding(
        "danger",
        "Can run dry.",
        "At the worst hour {worst_outlet} can leave and {worst_inlet} enters. After {lasts} the "
        "intake can uncover, and so it can after one draw of {one_draw} while the house "
        "pressure tank refills. " + close,
    )


def _steps(
    flows: _Flows, reserve: float, before: bool, falls: bool, given: dict[str, Quantity]
) -> tuple[Step, ...]:
    steps = [Step("Pressure that only lifts the water", "p_h = w * h", given)]
    if falls:
        formula = "Q_c = Q_i * (p_c - p_h) / (p_g - p_h)"
        steps.append(Step("Flow in when the well pump is about to start", formula, given))
    else:
        steps.append(Step("Flow in, measured at or under cut-in", "Q_c = Q_i", given))
    steps.append(Step("Worst flow in", "Q_w = min(Q_c, Q_s)", given))
    if before or flows.pail_setting == flows.setting:
        steps.append(Step("Worst flow out, as measured", "Q_x = Q_o", given))
    else:
        formula = "Q_x = Q_o * sqrt(P_o / p_t)"
        steps.append(Step("Worst flow out, with the tank at cut-out", formula, given))
    steps += [
        Step("Doubt of the flow in", "u_i = U_i / k", given),
        Step("Doubt of the flow out", "u_o = U_o / k", given),
        Step(
            "Largest safe setting",
            "q = Q_w * (1 - (z * u_i)**2)"
            " / (1 + sqrt(1 - (1 - (z * u_o)**2) * (1 - (z * u_i)**2)))",
            given,
        ),
        Step("What the pail shows at that setting", "q_p = q * Q_o / Q_x", given),
        Step("Margin today", "M = Q_w - Q_x", given),
        Step("Guard", "G = Q_w - q", given),
        Step(
            "Drawdown of the house pressure tank",
            "dV = V_t * (P_p + P_a) * (1 / (max(P_i, P_p) + P_a) - 1 / (P_o + P_a))",
            given,
        ),
        Step("Water sure to be there", "R = V_on" if before else "R = V_on - dV", given),
    ]
    if reserve <= 0 or flows.worst_outlet > flows.worst_inlet:
        lasts = "t = max(R, 0) / Q_x" if reserve <= 0 else "t = R / (Q_x - Q_w)"
        steps += [
            Step("How long that lasts", lasts, given),
            Step(
                "One unbroken draw",
                "D = max(Q_x * t - dV, 0)" if before else "D = Q_x * t",
                given,
            ),
        ]
    return tuple(steps)


CALCULATOR = Calculator(
    name="outlet_setting",
    title="Outlet setting",
    question="How far may the outlet be open, so that the open tank never runs dry?",
    inputs=(
        flow_input(
            "inlet",
            "Flow in, measured today",
            "Q_i",
            "5.6 gpm",
            "Pail at the open tank's inlet, float wide open, with the gauge before the filter "
            "falling toward the well pump's cut-in.",
            INLET,
        ),
        Input(
            name="inlet_gauge",
            label="Gauge before the filter while you measured",
            symbol="p_g",
            kind=gauge_pressure,
            default="44 psi",
            origin=INVENTED,
            low=1 * psi,
            high=150 * psi,
            measure="Read it at the middle of the fill. A fill over a whole pump cycle shows the "
            "mean, not the worst.",
            group=INLET,
            sure="2 psi",
        ),
        well_tank_fields.well_cut_in,
        open_tank_fields.rise,
        flow_input(
            "service_at",
            "Flow in at which the filter will be serviced",
            "Q_s",
            "4.8 gpm",
            "You decide: the lowest flow in that anyone will let stand. Write it on the tag.",
            INLET,
            sure="0 gpm",
        ),
        open_tank_fields.limit,
        open_tank_fields.outlet,
        house_tank_fields.house_gauge,
        Choice(
            name="chance",
            label="Accepted chance that the measurements mislead",
            options={"5": "1 in 20", "1": "1 in 100"},
            default="5",
            origin="common practice, no source",
            measure="1 in 100 where a child or a sick person lives, or the vent is doubtful.",
            group=OUTLET,
        ),
        open_tank_fields.float_open,
        house_tank_fields.house_tank,
        house_tank_fields.precharge,
        house_tank_fields.cut_in,
        house_tank_fields.cut_out,
    ),
    outputs=(
        Output(
            name="pail_setting",
            label="Set the outlet until the pail shows",
            symbol="q_p",
            kind=flow,
        ),
        Output(name="setting", label="Largest safe outlet at its worst", symbol="q", kind=flow),
        Output(name="worst_inlet", label="Worst flow in", symbol="Q_w", kind=flow),
        Output(name="worst_outlet", label="Worst flow out", symbol="Q_x", kind=flow),
        Output(
            name="margin",
            label="Margin today: in less out",
            symbol="M",
            kind=flow,
            digits=2,
            low=0.0,
            outside="More can leave than enters.",
        ),
        Output(name="guard", label="Guard kept for the doubt", symbol="G", kind=flow, digits=2),
        Output(
            name="reserve",
            label="Water sure to be there when a draw starts",
            symbol="R",
            kind=volume,
            low=0.0,
            outside="The house pressure tank can take it all.",
        ),
        Output(
            name="lasts",
            label="At today's setting that lasts",
            symbol="t",
            kind=duration,
            none="for good: no less enters than leaves",
        ),
        Output(
            name="one_draw",
            label="One unbroken draw may take",
            symbol="D",
            kind=volume,
            none="any amount",
        ),
    ),
    work=outlet_setting,
    cautions=(
        cautions.RADON_AIR,
        cautions.PRESSURE,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    leaves={"worst_inlet": ("worst_inlet",), "worst_outlet": ("worst_outlet",)},
    sources=(
        "jcgm-106",
        "ilac-g8",
        "jcgm-100",
        "iec-60534-2-1",
        "ergun",
        "pelikan-2006",
        "nist-811",
        "epa-radon-2016",
        "osha-1910-147",
    ),
)
