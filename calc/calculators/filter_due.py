"""When the filter is due, from the technician's own readings of flow, gauge and meter."""

from collections.abc import Mapping
from itertools import pairwise
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Bar, Bars, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INLET, INVENTED, OUTLET, flow_input, open_tank_fields, well_tank_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.filter_life import Outlook, outlooks
from calc.physics.fouling import bed_resistance as resistance_of
from calc.physics.restriction import flow_through_bed
from calc.units import (
    WATER_COLUMN,
    Cv,
    bed_resistance,
    day,
    duration,
    flow,
    flow_coefficient,
    gal,
    gauge_pressure,
    gpm,
    pressure_gradient,
    psi,
    volume,
)

MOST_READINGS = 6
LOWERED = 0.9  # share of the outlet left in the answer to "what does lowering it buy?"
POINTS = 16  # of each line in the chart
READINGS = "Readings since the last service, oldest first"


class _Filter(NamedTuple):
    """What the readings and the house say, SI."""

    throughputs: tuple[float, ...]
    resistances: tuple[float, ...]
    spare: float  # pressure at cut-in less the lift
    coefficient: float
    needed: float
    critical: float
    laws: Mapping[str, Outlook]

    @property
    def now(self) -> float:
        return self.throughputs[-1]

    @property
    def overdue(self) -> bool:
        return self.resistances[-1] >= self.critical

    @property
    def kept(self) -> list[Outlook]:
        return [law for law in self.laws.values() if law.kept]

    @property
    def soonest(self) -> Outlook | None:
        return min(self.kept, key=lambda law: law.reached, default=None)

    def left(self, throughput: float | None) -> float | None:
        """Water until then; none left of it once the filter is overdue."""
        if throughput is None:
            return None
        return 0.0 if self.overdue else max(throughput - self.now, 0.0)


def filter_due(
    filter_flows: tuple[float, ...],
    filter_gauges: tuple[float, ...],
    filter_meter: tuple[float, ...],
    well_cut_in: float,
    rise: float,
    inlet_coefficient: float,
    worst_outlet: float,
    guard: float,
    daily_use: float,
) -> Answer:
    """Days until the inlet, at cut-in, brings no more than the outlet and its guard."""
    lift = WATER_COLUMN * rise
    needed = worst_outlet + guard
    _check(filter_flows, filter_gauges, filter_meter, well_cut_in, lift)
    critical = resistance_of(needed, well_cut_in - lift, inlet_coefficient)
    if critical <= 0:
        says = "and the guard are more than the inlet brings at cut-in with no filter in it"
        raise Refused("contradiction", "worst_outlet", says=says)
    readings = tuple(
        resistance_of(each, gauge - lift, inlet_coefficient)
        for each, gauge in zip(filter_flows, filter_gauges, strict=True)
    )
    if readings[-1] <= 0:
        says = "would pass less than the last reading shows, with no filter in it"
        raise Refused("contradiction", "inlet_coefficient", says=says)
    laws = outlooks(filter_meter, readings, critical)
    found = _Filter(
        filter_meter, readings, well_cut_in - lift, inlet_coefficient, needed, critical, laws
    )
    days = {name: _days(found, law.reached, daily_use) for name, law in laws.items()}
    soonest = found.soonest
    due = _days(found, soonest.reached if soonest else None, daily_use)
    surely = _surely(found)
    return Answer(
        outputs={
            "due": due,
            "due_surely": _days(found, surely, daily_use),
            "service_flow": needed,
            "bed_now": readings[-1],
            "critical": critical,
            **{name: days.get(name) for name in ("cake", "intermediate", "standard", "complete")},
            "lower_buys": _bought(found, worst_outlet, daily_use),
            "half_outlet": _outlet_at_half(found, guard),
        },
        findings=_findings(found, surely),
        steps=_steps(found, lift, filter_flows[-1], filter_gauges[-1]),
        charts=_charts(found, daily_use),
    )


def _check(
    flows: tuple[float, ...],
    gauges: tuple[float, ...],
    meter: tuple[float, ...],
    cut_in: float,
    lift: float,
) -> None:
    if len(meter) < 2:
        raise Refused("contradiction", "filter_meter", says="needs two readings: one has no trend")
    for name, many in (("filter_flows", flows), ("filter_gauges", gauges)):
        if len(many) != len(meter):
            says = "needs one reading for each of the meter's: {filter_meter}"
            raise Refused("contradiction", name, says=says)
    if any(later <= earlier for earlier, later in pairwise(meter)):
        raise Refused("contradiction", "filter_meter", says="must rise from reading to reading")
    if min(gauges) <= lift:
        raise Refused("contradiction", "filter_gauges", says="cannot all lift water by {rise}")
    if cut_in <= lift:
        raise Refused("contradiction", "well_cut_in", says="cannot lift water by {rise}")


def _days(found: _Filter, throughput: float | None, daily_use: float) -> float | None:
    left = found.left(throughput)
    return None if left is None else left / daily_use


def _surely(found: _Filter) -> float | None:
    """The earliest throughput at which any law that was kept may end."""
    lows = [law.low for law in found.kept]
    known = [low for low in lows if low is not None]
    return min(known) if known and len(known) == len(lows) else None


def _bought(found: _Filter, outlet: float, daily_use: float) -> float | None:
    """Time that an outlet closed to nine tenths buys, by the law that ends soonest."""
    if not found.soonest:
        return None
    less = found.needed - (1 - LOWERED) * outlet
    later = resistance_of(less, found.spare, found.coefficient)
    fit = found.soonest.fit
    return (fit.reaches(later) - fit.reaches(found.critical)) / daily_use


def _outlet_at_half(found: _Filter, guard: float) -> float | None:
    """Outlet that the inlet allows if the filter never passes more than half as much."""
    if not found.soonest:
        return None
    resistance = max(found.soonest.fit.resistance(found.soonest.reached / 2), 0.0)
    brings = flow_through_bed(found.spare, resistance, 1 / found.coefficient**2)
    return max(brings - guard, 0.0)


def _findings(found: _Filter, surely: float | None) -> tuple[Finding, ...]:
    findings = [_headline(found)]
    soonest = found.soonest
    if len(found.throughputs) == 2:
        text = (
            "Two readings make a line but tell nothing of its doubt: there is no interval, and "
            "any law fits. Take the third reading at half the time left."
        )
        findings.append(Finding("caution", "Two readings.", text))
    elif soonest and surely is None:
        text = (
            "The readings scatter as much as the filter has fouled. There is no sure date: "
            "read again, with the same pail and the same gauge."
        )
        findings.append(Finding("caution", "Too much scatter.", text))
    if soonest and any(law.kept and law.reached > 1.5 * soonest.reached for law in _all(found)):
        text = (
            "The laws still differ by more than half. The soonest decides; a reading at half the "
            "time left will tell them apart."
        )
        findings.append(Finding("caution", "The laws disagree.", text))
    if min(found.resistances) <= 0:
        text = (
            "A reading shows no resistance at all, so only the straight line can be fitted. Was "
            "the gauge right, and the coefficient of the inlet measured?"
        )
        findings.append(Finding("caution", "No resistance.", text))
    return tuple(findings)


def _all(found: _Filter) -> tuple[Outlook, ...]:
    return tuple(found.laws.values())


def _headline(found: _Filter) -> Finding:
    if found.overdue:
        return Finding(
            "danger",
            "Overdue.",
            "The bed's resistance is {bed_now}, and {critical} is the most. With the well pump "
            "about to start, less than {service_flow} enters. Service the filter, or close the "
            "outlet today.",
        )
    if not found.soonest:
        return Finding(
            "caution",
            "No trend.",
            "The readings do not show the resistance rising toward {critical}. Nothing can be "
            "foretold from them; keep the date you have and go on reading.",
        )
    if found.left(_surely(found)) == 0:
        return Finding(
            "caution",
            "Due now, to be sure.",
            "The likely date is in {due}, but the readings allow today.",
        )
    return Finding(
        "good",
        "There is a date.",
        "By the law that ends soonest the inlet falls to {service_flow} in {due}. Write the "
        "earlier date on the tag.",
    )


def _steps(found: _Filter, lift: float, last: float, gauge: float) -> tuple[Step, ...]:
    given = {
        "w": Quantity(WATER_COLUMN, pressure_gradient, label="weight of standing water"),
        "p_h": Quantity(lift, gauge_pressure),
        "p_n": Quantity(gauge, gauge_pressure, label="gauge at the last reading"),
        "Q_n": Quantity(last, flow, label="flow in at the last reading"),
        "V_n": Quantity(found.now, volume, 5, label="meter at the last reading"),
    }
    steps = [
        Step("Pressure that only lifts the water", "p_h = w * h", given),
        Step("Flow in at which the filter is due", "q_s = Q_x + G", given),
        Step("Resistance of the bed today", "r_n = (p_n - p_h) / Q_n - Q_n / C**2", given),
        Step("Resistance at which it is due", "r_c = (p_c - p_h) / q_s - q_s / C**2", given),
    ]
    if found.soonest:
        label = "where the law that ends soonest reaches that, by least squares"
        reached = found.now if found.overdue else found.soonest.reached
        given = given | {"V_c": Quantity(reached, volume, 5, label=label)}
        steps.append(Step("Time left", "t = max(V_c - V_n, 0) / Q_u", given))
    return tuple(steps)


def _charts(found: _Filter, daily_use: float) -> tuple[Chart | Bars, ...]:
    return (_fits(found), *([_times(found, daily_use)] if found.laws else []))


def _fits(found: _Filter) -> Chart:
    first, now = found.throughputs[0], found.now
    ends = [law.reached for law in _all(found)]
    end = max(now, min(max(ends, default=now), now + 2 * (now - first)))
    top = 1.2 * max(found.critical, *found.resistances)
    lines = []
    for name, law in found.laws.items():
        at = [first + (end - first) * step / POINTS for step in range(POINTS + 1)]
        points = [(v, r) for v in at if (r := law.fit.resistance(v)) <= top]
        lines.append(Line(name, tuple(points)))
    readings = list(zip(found.throughputs, found.resistances, strict=True))
    last = len(readings)
    return Chart(
        title="Resistance of the bed against the water it has passed",
        says="The readings, the laws fitted to them, and the resistance at which the filter is "
        "due.",
        x=Axis("Water through the filter", _METER),
        y=Axis("Resistance of the bed", bed_resistance),
        lines=tuple(lines),
        limits=(Limit("due", found.critical),),
        marks=tuple(Mark(f"reading {i}", v, r, i == last) for i, (v, r) in enumerate(readings, 1)),
    )


def _times(found: _Filter, daily_use: float) -> Bars:
    bars = []
    for name, law in found.laws.items():
        low, high = (_days(found, end, daily_use) for end in (law.low, law.high))
        words = "no interval" if low is None else f"not before {low / day:.0f} days"
        words += "" if high is None else f", not after {high / day:.0f}"
        words += "" if law.kept else "; set aside, the readings contradict it"
        bars.append(Bar(name, _days(found, law.reached, daily_use) or 0.0, words))
    return Bars(
        title="Time left by each law",
        says="Each end of an interval holds 19 times in 20, if the law does.",
        like=_DUE,
        bars=tuple(bars),
    )


_METER = Input(
    name="filter_meter",
    label="Water through the filter",
    kind=volume,
    default="0 gal; 3000 gal; 6000 gal; 9000 gal; 12000 gal",
    origin=INVENTED,
    low=0.0,
    high=1e6 * gal,
    several=MOST_READINGS,
    measure="Meter today less the meter right after the last service or backwash. Without a meter: "
    "days times gallons a day, which is a guess.",
    group=READINGS,
)
_DUE = Output(
    name="due",
    label="The filter is due in",
    symbol="t",
    kind=duration,
    us="days",
    si="days",
    digits=2,
    none="no date: see what the readings say",
)


def _law(name: str, label: str) -> Output:
    return Output(
        name=name,
        label=f"By the law of {label}",
        kind=duration,
        us="days",
        si="days",
        digits=2,
        none="not in sight",
    )


CALCULATOR = Calculator(
    name="filter_due",
    title="When the filter is due",
    question="When will the fouling filter let in no more than the outlet lets out?",
    inputs=(
        Input(
            name="filter_flows",
            label="Flow in",
            kind=flow,
            default="6.65 gpm; 6.65 gpm; 6.25 gpm; 6.1 gpm; 5.6 gpm",
            origin=INVENTED,
            low=0.1 * gpm,
            high=100 * gpm,
            several=MOST_READINGS,
            measure="Pail at the open tank's inlet, float wide open, the same pail each time. The "
            "first reading right after service, the last one today. With more than six leave out "
            "some in the middle.",
            group=READINGS,
        ),
        Input(
            name="filter_gauges",
            label="Gauge before the filter",
            kind=gauge_pressure,
            default="44 psi; 46 psi; 43 psi; 45 psi; 44 psi",
            origin=INVENTED,
            low=1 * psi,
            high=150 * psi,
            several=MOST_READINGS,
            measure="At the middle of the same fill. It need not be the same each time: that is "
            "what resistance is for.",
            group=READINGS,
        ),
        _METER,
        well_tank_fields.well_cut_in,
        open_tank_fields.rise,
        Input(
            name="inlet_coefficient",
            label="Flow coefficient of the inlet without its filter",
            symbol="C",
            kind=flow_coefficient,
            default="1.087 Cv",
            origin=INVENTED,
            low=0.05 * Cv,
            high=50 * Cv,
            measure="Bypass the filter and catch a pail. In US units: gallons a minute over the "
            "root of the gauge in psi, less 0.43 psi for each foot of lift.",
            group=INLET,
            sure="2 %",
        ),
        flow_input(
            "worst_outlet",
            "Worst flow out",
            "Q_x",
            "4.63 gpm",
            "As the outlet is set and locked: from the outlet-setting page.",
            OUTLET,
        ),
        Input(
            name="guard",
            label="Guard to keep above it",
            symbol="G",
            kind=flow,
            default="0.17 gpm",
            origin="from the outlet-setting page, invented example",
            low=0.0,
            high=20 * gpm,
            measure="From the outlet-setting page: what the two pails cannot tell apart.",
            group=OUTLET,
        ),
        open_tank_fields.daily_use,
    ),
    outputs=(
        _DUE,
        Output(
            name="due_surely",
            label="Not sooner, 19 times in 20, than",
            kind=duration,
            us="days",
            si="days",
            digits=2,
            none="no interval",
        ),
        Output(
            name="service_flow",
            label="Flow in at which it is due",
            symbol="q_s",
            kind=flow,
        ),
        Output(
            name="bed_now", label="Resistance of the bed today", symbol="r_n", kind=bed_resistance
        ),
        Output(
            name="critical",
            label="Resistance at which it is due",
            symbol="r_c",
            kind=bed_resistance,
        ),
        _law("cake", "a cake on the surface"),
        _law("intermediate", "intermediate blocking"),
        _law("standard", "pores that narrow (standard blocking)"),
        _law("complete", "pores that close one by one (complete blocking)"),
        Output(
            name="lower_buys",
            label="An outlet one tenth lower buys",
            kind=duration,
            us="days",
            si="days",
            digits=2,
            none="not known",
        ),
        Output(
            name="half_outlet",
            label="Outlet that service twice as often would allow",
            kind=flow,
            none="not known",
        ),
    ),
    work=filter_due,
    cautions=(
        cautions.PRESSURE,
        cautions.RADON_AIR,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    leaves={"service_flow": ("service_at",)},
    sources=(
        "hermia-1982",
        "grace-1956",
        "hermans-1936",
        "cheremisinoff-2002",
        "fieller-1954",
        "cacoullos-1965",
        "abramowitz-stegun",
        "ergun",
        "epa-radon-2016",
        "osha-1910-147",
    ),
)
