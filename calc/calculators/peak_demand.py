"""The flow that a house takes at its busiest: by fixture units, and by counting."""

from math import ceil
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.fixtures import (
    FIXTURES,
    HUNTER_BUSY,
    HUNTER_FLOW,
    ILLINOIS,
    INTERNATIONAL,
    NSPC_TANKS,
    NSPC_VALVES,
    STEP,
    Counts,
    bathrooms,
    curve_flow,
    flow_chances,
    load_units,
    most_at_once,
    neighbours,
    peak_flow,
)
from calc.units import flow, gpm, number, share

CURVES = {
    "nspc": NSPC_TANKS,
    "nspc_valves": NSPC_VALVES,
    "illinois": ILLINOIS,
    "international": INTERNATIONAL,
}
SERVED = {"99": 0.99, "95": 0.95, "90": 0.90}
CLOSE = 0.1  # two peaks within this share of each other are told as one
MOST = 6
IN_THE_HOUSE = "What is in the house"
HOW = "How it is reckoned"


class _Peak(NamedTuple):
    """SI; flows without the hose."""

    counts: Counts
    units: float
    curve: float
    counted: float
    all_open: float
    quiet: float
    toilets_then: float


def peak_demand(
    lavatories: float,
    toilets: float,
    tub_showers: float,
    showers: float,
    tubs: float,
    kitchen_sinks: float,
    dishwashers: float,
    washers: float,
    laundry_sinks: float,
    hose_flow: float,
    curve: str,
    served: str,
) -> Answer:
    """Both peaks side by side, and why they differ."""
    typed = (lavatories, toilets, tub_showers, showers, tubs, kitchen_sinks, dishwashers, washers)
    counts = dict(zip(NAMES, (*typed, laundry_sinks), strict=True))
    if not any(counts.values()):
        says = "must be at least one, if nothing else is in the house"
        raise Refused("contradiction", "lavatories", says=says)
    rows, wanted = CURVES[curve], SERVED[served]
    chances = flow_chances(counts)
    units = load_units(counts)
    peak = _Peak(
        counts=counts,
        units=units,
        curve=curve_flow(rows, units),
        counted=peak_flow(chances, wanted),
        all_open=max(chances) * STEP,
        quiet=chances[0],
        toilets_then=most_at_once(ceil(counts["toilets"]), HUNTER_BUSY) * HUNTER_FLOW,
    )
    toilets_alone = flow_chances({"toilets": counts["toilets"]})
    return Answer(
        outputs={
            "curve_peak": peak.curve + hose_flow,
            "counted_peak": peak.counted + hose_flow,
            "units": units,
            "any_moment": peak_flow(chances, wanted, quiet=True) + hose_flow,
            "busy": 1 - peak.quiet,
            "at_once": sum(FIXTURES[name].busy * count for name, count in counts.items()),
            "all_open": peak.all_open + hose_flow,
            "toilets_then": peak.toilets_then,
            "toilets_now": peak_flow(toilets_alone, wanted),
        },
        findings=_findings(peak, hose_flow, units < rows[0][0]),
        steps=_steps(peak, curve),
        charts=(_chart(peak, chances, 1 - wanted),),
    )


def _findings(peak: _Peak, hose: float, is_under: bool) -> tuple[Finding, ...]:
    findings = [_headline(peak)]
    if hose:
        findings.append(
            Finding(
                "caution",
                "The hose comes on top.",
                "A hose runs for as long as somebody likes, so its {hose_flow} is added to both. "
                "Count hours of it in the day's water as well.",
            )
        )
    if is_under:
        findings.append(
            Finding(
                "caution",
                "Under the table.",
                "The curve's table begins above {units} fixture units. Its first row is taken.",
            )
        )
    return tuple(findings)


def _headline(peak: _Peak) -> Finding:
    both = "By fixture units the peak is {curve_peak}, by counting {counted_peak}. "
    if peak.curve > (1 + CLOSE) * peak.counted:
        return Finding(
            "good",
            "Fixture units ask for more.",
            both + "The curves come from 1940 and rows of fixtures with people waiting. For one "
            "house the count is nearer. Where the code names a curve, the curve decides the pipe.",
        )
    if peak.curve < (1 - CLOSE) * peak.counted:
        return Finding(
            "caution",
            "Fixture units ask for less.",
            both + "In a house this small the curve lies under what two things take together. "
            "Plan for the larger of the two, or tell the household what not to run at once.",
        )
    luck = "That is luck as much as reason: the chapter says why."
    return Finding("good", "Both agree.", both + luck)


def _steps(peak: _Peak, curve: str) -> tuple[Step, ...]:
    counts, rows = peak.counts, CURVES[curve]
    (left, low), (right, high) = neighbours(rows, peak.units)
    slope = (high - low) / (right - left) if right > left else 0.0
    others = sum(counts.values()) - counts["toilets"] - counts["lavatories"]
    given = {
        "n_t": Quantity(counts["toilets"], number, label="toilets"),
        "n_l": Quantity(counts["lavatories"], number, label="bathroom sinks"),
        "n_o": Quantity(others, number, label="other fixtures"),
        "n_b": Quantity(bathrooms(counts), number, label="bathrooms"),
        "W_1": Quantity(left, number, label="row of the curve before"),
        "Q_1": Quantity(low * gpm, flow, label="flow in the row before"),
        "r": Quantity(slope * gpm, flow, label="rise of the curve for each fixture unit"),
        "Q_c": Quantity(peak.curve, flow),
        "q_e": Quantity(peak.counted, flow, label="flow that enough busy moments do not pass"),
        "q_a": Quantity(peak.all_open, flow, label="sum of all flows"),
        "p_0": Quantity(peak.quiet, share, 4, "product of the chances that each is shut"),
        "m": Quantity(peak.toilets_then / HUNTER_FLOW, number, label="toilets to serve at once"),
        "q_t": Quantity(HUNTER_FLOW, flow, label="flow of a toilet in 1940"),
    }
    return (
        Step("Fixture units", "W = 2.2 * n_t + 0.7 * n_l + 1.4 * n_o - 0.7 * n_b", given),
        Step("The curve", "Q_c = Q_1 + (W - W_1) * r", given),
        Step("Peak by fixture units, with the hose", "Q_h = Q_c + Q_x", given),
        Step("Peak by counting, with the hose", "Q_e = q_e + Q_x", given),
        Step("Chance that something runs", "B = 1 - p_0", given),
        Step("Everything open", "Q_all = q_a + Q_x", given),
        Step("Toilets alone, by the figures of 1940", "T_h = m * q_t", given),
    )


def _chart(peak: _Peak, chances: dict[int, float], missed: float) -> Chart:
    left, points = 1.0, list[tuple[float, float]]()
    for step, chance in chances.items():
        left -= chance
        points.append((step * STEP, max(left, 0.0) / (1 - peak.quiet)))

    def over(flow: float) -> float:
        return min(chance for wanted, chance in points if wanted <= flow + STEP / 2)

    return Chart(
        title="How often the fixtures want more",
        says="Of the moments in which anything runs, the share in which the fixtures want more "
        "than a flow. It falls in steps, one for each mix of fixtures.",
        x=Axis("Flow, without the hose", flow),
        y=Axis("Share of the moments that want more", share),
        lines=(Line("Counted", tuple(points), steps=True),),
        limits=(Limit("What you accept", missed),),
        marks=(
            Mark("By counting", peak.counted, over(peak.counted), here=True),
            Mark("By fixture units", peak.curve, over(peak.curve)),
        ),
    )


def _count(name: str, label: str, default: int, measure: str) -> Input:
    return Input(
        name=name,
        label=label,
        kind=number,
        default=str(default),
        origin=INVENTED,
        low=0,
        high=MOST,
        measure=measure,
        group=IN_THE_HOUSE,
    )


COUNTED = (
    _count(
        "lavatories",
        "Bathroom sinks",
        2,
        "Count the basins, two in one top as two. Here and below: a half for one that is used half "
        "as much.",
    ),
    _count("toilets", "Toilets", 2, "Count those with a tank. Flush valves need a table apart."),
    _count("tub_showers", "Tubs with a shower over them", 1, "One fixture: nobody uses both."),
    _count("showers", "Shower stalls", 1, "Count heads if several run together."),
    _count("tubs", "Tubs without a shower", 0, "A big tub with a fast filler counts as two."),
    _count("kitchen_sinks", "Kitchen sinks", 1, "Bar sinks too."),
    _count("dishwashers", "Dishwashers", 1, "Count them."),
    _count("washers", "Clothes washers", 1, "Count them. It is counted as 3.5 gpm; time yours."),
    _count("laundry_sinks", "Laundry sinks", 0, "Count them, with the sink in the garage."),
)
NAMES = tuple(each.name for each in COUNTED)

CALCULATOR = Calculator(
    name="peak_demand",
    title="Peak demand",
    question="How much may this house take at once?",
    inputs=(
        *COUNTED,
        Input(
            name="hose_flow",
            label="Hose or sprinkler running meanwhile",
            symbol="Q_x",
            kind=flow,
            default="0 gpm",
            origin="invented example: nothing is watered at the peak",
            low=0,
            high=50 * gpm,
            measure="Pail and timer. A half-inch hose gives about 5 gpm.",
            group=IN_THE_HOUSE,
            sure="10 %",
        ),
        Choice(
            name="curve",
            label="Curve for the fixture units",
            options={
                "nspc": "National Standard Plumbing Code, flush tanks",
                "nspc_valves": "National Standard Plumbing Code, flush valves",
                "illinois": "Illinois Plumbing Code, flush tanks",
                "international": "International Plumbing Code, flush tanks",
            },
            default="nspc",
            origin="the one that was read in full",
            measure="The one that your code names. Loads are those of the International Code for "
            "all of them; your code may have its own.",
            group=HOW,
        ),
        Choice(
            name="served",
            label="Moments in which nobody has to wait",
            options={"99": "99 in 100", "95": "95 in 100", "90": "90 in 100"},
            default="99",
            origin="Hunter 1940 and all that followed took 99",
            measure="Of those moments of the busiest hour in which anything runs. With a well that "
            "gives little, agree on less and say so to the household.",
            group=HOW,
        ),
    ),
    outputs=(
        Output(name="curve_peak", label="Peak by fixture units", symbol="Q_h", kind=flow),
        Output(name="counted_peak", label="Peak by counting", symbol="Q_e", kind=flow),
        Output(name="units", label="Fixture units", symbol="W", kind=number),
        Output(
            name="any_moment",
            label="By counting, with the moments in which nothing runs",
            kind=flow,
        ),
        Output(
            name="busy",
            label="Chance that anything runs, at a moment of the busiest hour",
            symbol="B",
            kind=share,
        ),
        Output(name="at_once", label="Fixtures running, on the average", kind=number),
        Output(name="all_open", label="Everything open at once", symbol="Q_all", kind=flow),
        Output(
            name="toilets_then",
            label="Toilets alone, by the figures of 1940",
            symbol="T_h",
            kind=flow,
        ),
        Output(name="toilets_now", label="Toilets alone, by the figures of 2017", kind=flow),
    ),
    work=peak_demand,
    cautions=(cautions.SCALD, cautions.LOCAL_CODE),
    sources=(
        "hunter-1940",
        "buchberger-2017",
        "ipc-e103",
        "ipc-e103-3",
        "nspc-b54",
        "il-890-n",
        "psu-needs",
    ),
)
