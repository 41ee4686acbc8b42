"""What leaks from the house's plumbing, by how its gauge falls with every tap shut."""

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, house_tank_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.pressure_tank import drawdown
from calc.units import atm, day, duration, flow, gauge_pressure, minute, number, psi, volume

WATCH = "Everything shut"
READ = 1 * psi  # what a gauge is read to
POINTS = 24


def house_leak(
    house_tank: float,
    precharge: float,
    cut_in: float,
    cut_out: float,
    house_from: float,
    house_to: float,
    house_watch: float,
) -> Answer:
    """What leaves the house's plumbing with every tap shut, and how often that starts pump 2."""
    if house_to > house_from:
        raise Refused("contradiction", "house_to", says="must be no more than {house_from}")
    if cut_in >= cut_out:
        raise Refused("contradiction", "cut_in", says="must be below the {cut_out} of cut-out")
    leaked = drawdown(house_tank, precharge, house_to, house_from)
    each = drawdown(house_tank, precharge, cut_in, cut_out)
    leak = leaked / house_watch
    return Answer(
        outputs={
            "house_leaked": leaked,
            "leak_flow": leak,
            "leak_starts": leak * day / each if each else None,
        },
        findings=(_finding(house_from - house_to, house_to < precharge),),
        steps=_steps(each, max(house_to, precharge), max(cut_in, precharge)),
        charts=(_chart(house_tank, precharge, house_from, house_to),),
    )


def _finding(fallen: float, empty: bool) -> Finding:
    if fallen <= READ:
        return Finding(
            "good",
            "Tight, as far as a gauge tells.",
            "It fell by no more than a gauge is read to. A slow drip needs a night with everything "
            "shut.",
        )
    if empty:
        return Finding(
            "caution",
            "More than this.",
            "The gauge is under the pre-charge of {precharge}: the tank ran empty before the end, "
            "and the leak is larger than {leak_flow}. Watch for a shorter time.",
        )
    return Finding(
        "caution",
        "It leaks.",
        "{house_leaked} left in {house_watch} with every tap shut: {leak_flow}, for which pump 2 "
        "starts {leak_starts} times a day. Shut the toilets' valves one after the other and watch "
        "again. If it still falls with the house's main valve shut, the check valve of pump 2 "
        "lets water back into the open tank.",
    )


def _steps(each: float, ends: float, starts: float) -> tuple[Step, ...]:
    given = {
        "p_a": Quantity(atm, gauge_pressure, label="pressure of the air"),
        "p_2": Quantity(
            ends, gauge_pressure, label="gauge at the end, at the least the pre-charge"
        ),
        "p_i": Quantity(starts, gauge_pressure, label="cut-in, at the least the pre-charge"),
        "dV": Quantity(each, volume, 4, "what a start of pump 2 puts into the tank"),
    }
    left = "V_l = max(V_t * (P_p + p_a) * (1 / (p_2 + p_a) - 1 / (p_1 + p_a)), 0)"
    steps = (Step("Left the tank", left, given), Step("Leak", "Q_l = V_l / t_w", given))
    if not each:
        return steps
    one = "dV = V_t * (P_p + p_a) * (1 / (p_i + p_a) - 1 / (P_o + p_a))"
    return (
        *steps,
        Step("One filling", one, given),
        Step("Starts", "n_s = Q_l * D / dV", given | {"D": Quantity(day, duration, 5, "a day")}),
    )


def _chart(tank: float, precharge: float, first: float, last: float) -> Chart:
    falls = [first + (last - first) * i / POINTS for i in range(POINTS + 1)]
    line = tuple((gauge, drawdown(tank, precharge, gauge, first)) for gauge in falls)
    return Chart(
        title="Water that has left the tank",
        says="The lower the gauge, the more leaves for the same fall. Under pre-charge: nothing.",
        x=Axis("House gauge", gauge_pressure),
        y=Axis("Left the tank", _LEAKED),
        lines=(Line("with every tap shut", line),),
        marks=(Mark("end of the watch", last, line[-1][1], here=True),),
    )


_LEAKED = Output(name="house_leaked", label="Left the tank", symbol="V_l", kind=volume)
CALCULATOR = Calculator(
    name="house_leak",
    title="Leak in the house, by the gauge",
    question="How much leaks from the house's plumbing, and how often does that start pump 2?",
    inputs=(
        house_tank_fields.house_tank,
        house_tank_fields.precharge,
        house_tank_fields.cut_in,
        house_tank_fields.cut_out,
        Input(
            name="house_from",
            label="House gauge when everything was shut",
            symbol="p_1",
            kind=gauge_pressure,
            default="48 psi",
            origin=INVENTED,
            low=1 * psi,
            high=150 * psi,
            measure="Pump 2 off at the panel, after it stopped by itself. No tap, no appliance.",
            group=WATCH,
            sure="0.5 psi",
        ),
        Input(
            name="house_to",
            label="House gauge at the end of the watch",
            kind=gauge_pressure,
            default="40 psi",
            origin=INVENTED,
            low=0,
            high=150 * psi,
            measure="The same gauge, not tapped in between.",
            group=WATCH,
            sure="0.5 psi",
        ),
        Input(
            name="house_watch",
            label="How long you watched the house gauge",
            symbol="t_w",
            kind=duration,
            default="30 min",
            origin=INVENTED,
            low=1 * minute,
            high=1440 * minute,
            measure="Watch and gauge. Stop before the gauge comes down to the pre-charge.",
            group=WATCH,
            sure="5 s",
        ),
    ),
    outputs=(
        _LEAKED,
        Output(
            name="leak_flow",
            label="Leak",
            symbol="Q_l",
            kind=flow,
            us="gal/day",
            si="L/day",
        ),
        Output(
            name="leak_starts",
            label="Starts of pump 2 in a day, for the leak alone",
            symbol="n_s",
            kind=number,
            digits=2,
            none="the tank holds no water between cut-in and cut-out",
        ),
    ),
    work=house_leak,
    cautions=(cautions.ELECTRICITY, cautions.PRESSURE, cautions.LOCAL_CODE),
    sources=("pelikan-2006", "osha-1910-147"),
)
