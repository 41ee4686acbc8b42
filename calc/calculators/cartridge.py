"""A cartridge filter: what it takes from the pressure, how many side by side, and when it is "
"due."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, flow_input, open_tank_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.cartridge import (
    Cartridge,
    most_resistance,
    pressure_drop,
    water_until,
)
from calc.physics.cartridge import (
    cartridge as housing_of,
)
from calc.physics.fouling import LAWS, fitted
from calc.units import bed_resistance, day, duration, gal, gauge_pressure, number, psi, volume

NEW, DIRTY, WANTED = "With a new element", "Today", "What is asked of it"
USUAL_MAKER = 20 * psi  # elements collapse somewhere over it. Common practice, no source
SHORT = 30 * day  # a change a month is too often for a household. Common practice, no source
POINTS = 16  # of each line


class _Filter(NamedTuple):
    """What the readings say, SI."""

    clean: Cartridge
    now: float
    most: float
    spare: float
    flow: float
    housings: int
    water: Mapping[str, float]

    @property
    def shortest(self) -> float | None:
        return min(self.water.values(), default=None)


def cartridge(
    filter_side: str,
    housings: str,
    filter_flow: float,
    spare_drop: float,
    daily_use: float,
    clean_drop: float,
    empty_drop: float,
    drop_flow: float,
    dirty_drop: float,
    dirty_flow: float,
    water_passed: float,
) -> Answer:
    """Drop clean and dirty, and the water and days until the spare pressure is used up."""
    if empty_drop >= clean_drop:
        raise Refused(
            "contradiction",
            "empty_drop",
            says="must be less than {clean_drop}: an element always takes some",
        )
    clean = housing_of(clean_drop, empty_drop, drop_flow)
    now = dirty_drop / dirty_flow - clean.housing * dirty_flow
    if now <= 0:
        says = "is less than the empty housing alone loses at {dirty_flow}"
        raise Refused("contradiction", "dirty_drop", says=says)
    many = int(housings)
    most = most_resistance(clean.housing, spare_drop, filter_flow, many)
    water = {}
    if clean.element < min(now, most):
        water = dict(water_until(clean.element, now, water_passed, most, many))
    found = _Filter(clean, now, most, spare_drop, filter_flow, many, water)
    shortest = found.shortest
    return Answer(
        outputs={
            "new_drop": pressure_drop(clean, filter_flow, many),
            "today_drop": pressure_drop(Cartridge(now, clean.housing), filter_flow, many),
            "element_new": clean.element,
            "element_now": now,
            "element_most": most if most > 0 else None,
            "water_left": None if shortest is None else max(shortest - many * water_passed, 0.0),
            "days_left": None
            if shortest is None
            else max(shortest - many * water_passed, 0.0) / daily_use,
            **{f"{law}_life": _days(water.get(law), daily_use) for law in LAWS},
        },
        findings=(_headline(found, shortest, daily_use), *_others(found, filter_side)),
        steps=_steps(found),
        charts=_charts(found, water_passed),
    )


def _days(water: float | None, daily_use: float) -> float | None:
    return None if water is None else water / daily_use


def _headline(found: _Filter, shortest: float | None, daily_use: float) -> Finding:
    if found.most <= found.clean.element:
        return Finding(
            "danger",
            "Too small from the start.",
            "Even new elements lose {new_drop} at {filter_flow}, more than the {spare_drop} to "
            "spare. Another housing side by side, or a longer one.",
        )
    if found.now >= found.most:
        return Finding(
            "danger",
            "Due now.",
            "The element stands at {element_now}, and at {element_most} the spare pressure is used "
            "up. At {filter_flow} it would take {today_drop}.",
        )
    if shortest is None:
        return Finding(
            "caution",
            "No trend.",
            "The element takes no more than a new one. Read again after twice as much water: "
            "nothing can be foretold from this.",
        )
    if shortest / daily_use < SHORT:
        return Finding(
            "caution",
            "Too often.",
            "A set of elements lasts less than a month. Look for what makes the dirt, put a "
            "coarser one before it, or more housings side by side.",
        )
    return Finding(
        "good",
        "There is a date.",
        "By the law that ends soonest the spare pressure is used up in {days_left}. One reading "
        "fits every law: take a third at half that time.",
    )


def _others(found: _Filter, side: str) -> Iterator[Finding]:
    if side == "well":
        yield Finding(
            "caution",
            "It sets the flow in.",
            "Before the open tank a dirty cartridge starves the tank, and the outlet goes on "
            "taking. The outlet must be set by the flow in with the dirtiest element you will "
            "allow.",
        )
    else:
        yield Finding(
            "caution",
            "It sets the flow out.",
            "Behind pump 2 a dirty cartridge slows the house and spares the tank. So set the "
            "outlet with new elements in: whoever changes them opens it again.",
        )
    if found.spare > USUAL_MAKER:
        yield Finding(
            "caution",
            "Over what elements usually stand.",
            "{spare_drop} across an element can crush it or push dirt through. Ask for its limit: "
            "15 to 20 psi is usual.",
        )


def _steps(found: _Filter) -> tuple[Step, ...]:
    given = {
        "N": Quantity(float(found.housings), number, 2, "housings side by side"),
    }
    steps = [
        Step("Resistance of a new element", "R_0 = (p_k - p_e) / Q_k", given),
        Step("Resistance of the element today", "R_n = p_d / Q_d - p_e * Q_d / Q_k**2", given),
        Step("Drop of new elements", "p_0 = R_0 * Q_f / N + p_e * (Q_f / N / Q_k)**2", given),
        Step(
            "Drop of elements as dirty as today's",
            "p_t = R_n * Q_f / N + p_e * (Q_f / N / Q_k)**2",
            given,
        ),
    ]
    if found.most > 0:
        steps.append(
            Step("Most resistance", "R_m = p_s / (Q_f / N) - p_e * Q_f / N / Q_k**2", given)
        )
    if "cake" in found.water:
        steps += [
            Step("Life by cake", "t_c = N * V_p * (R_m - R_0) / (R_n - R_0) / Q_u", given),
            Step(
                "Life by pores that narrow",
                "t_n = N * V_p * (1 - sqrt(R_0 / R_m)) / (1 - sqrt(R_0 / R_n)) / Q_u",
                given,
            ),
            Step(
                "Life by pores that close",
                "t_p = N * V_p * (1 - R_0 / R_m) / (1 - R_0 / R_n) / Q_u",
                given,
            ),
            Step("Water left", "V_l = max(t_p * Q_u - N * V_p, 0)", given),
            Step("Time left", "t = V_l / Q_u"),
        ]
    return tuple(steps)


def _charts(found: _Filter, water_passed: float) -> tuple[Chart, ...]:
    flows = [2 * found.flow * step / POINTS for step in range(POINTS + 1)]
    lines = [Line("new", _drops(found, found.clean.element, flows))]
    lines.append(Line("today", _drops(found, found.now, flows)))
    of_flow = Chart(
        title="Pressure that the cartridge takes",
        says="New and as dirty as today, over the flow; the line across is what there is to spare.",
        x=Axis("Flow through all housings", _FLOW),
        y=Axis("Pressure drop", gauge_pressure),
        lines=tuple(lines),
        limits=(Limit("to spare", found.spare),),
        marks=(
            Mark(
                "today",
                found.flow,
                pressure_drop(
                    Cartridge(found.now, found.clean.housing), found.flow, found.housings
                ),
                True,
            ),
        ),
    )
    return (of_flow, *([_life_chart(found, water_passed)] if found.water else []))


def _drops(found: _Filter, element: float, flows: list[float]) -> tuple[tuple[float, float], ...]:
    one = Cartridge(element, found.clean.housing)
    return tuple((flow, pressure_drop(one, flow, found.housings)) for flow in flows)


def _life_chart(found: _Filter, water_passed: float) -> Chart:
    """Resistance of the elements against water, each law up to where it ends."""
    lines = []
    for law, end in found.water.items():
        fit = fitted((0.0, water_passed), (found.clean.element, found.now), LAWS[law])
        at = [end / found.housings * step / POINTS for step in range(POINTS)]
        points = [(v * found.housings, fit.resistance(v)) for v in at]
        lines.append(Line(law, (*points, (end, found.most))))
    return Chart(
        title="Resistance of an element against the water of the house",
        says="All four laws go through the new element and today's; each ends where the spare "
        "pressure is used up.",
        x=Axis("Water through all housings", volume),
        y=Axis("Resistance of one element", bed_resistance),
        lines=tuple(lines),
        limits=(Limit("used up", found.most),),
        marks=(Mark("today", water_passed * found.housings, found.now, True),),
    )


def _pressure(name: str, label: str, symbol: str, default: str, measure: str, group: str) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=gauge_pressure,
        default=default,
        origin=INVENTED,
        low=0.05 * psi,
        high=80 * psi,
        measure=measure,
        group=group,
        sure="0.2 psi",
    )


def _life(law: str, label: str, symbol: str) -> Output:
    return Output(
        name=f"{law}_life",
        label=label,
        symbol=symbol,
        kind=duration,
        us="days",
        si="days",
        digits=2,
        none="not in sight",
    )


def _resistance(name: str, label: str, symbol: str) -> Output:
    return Output(name=name, label=label, symbol=symbol, kind=bed_resistance, none="none is enough")


_FLOW = flow_input(
    "filter_flow",
    "Flow that must still pass",
    "Q_f",
    "6 gpm",
    "Before the open tank: the flow in at which the filter is to be changed. Behind pump 2: what "
    "the house asks for at its busiest.",
    WANTED,
)
CALCULATOR = Calculator(
    name="cartridge",
    title="Cartridge filters",
    question="What does this cartridge take from the pressure, and when must it be changed?",
    inputs=(
        Choice(
            name="filter_side",
            label="Where it sits",
            options={
                "well": "before the open tank, at well pressure",
                "house": "behind pump 2, at house pressure",
            },
            default="house",
            origin=INVENTED,
            measure="Follow the pipe. It decides whether dirt lowers the flow in or the flow out.",
            group=WANTED,
        ),
        Choice(
            name="housings",
            label="Housings side by side from now on",
            options={"1": "one", "2": "two", "3": "three", "4": "four"},
            default="1",
            origin=INVENTED,
            measure="Alike, with pipes of one length, so that they share the flow.",
            group=WANTED,
        ),
        _FLOW,
        _pressure(
            "spare_drop",
            "Pressure that the filter may take at that flow",
            "p_s",
            "10 psi",
            "Gauge before it less what must be left behind it; never over the element's own limit.",
            WANTED,
        ),
        replace(open_tank_fields.daily_use, group=WANTED),
        _pressure(
            "clean_drop",
            "Drop over the housing, new element",
            "p_k",
            "3 psi",
            "Two gauges, or one on a manifold with two cocks: the same gauge for both sides.",
            NEW,
        ),
        _pressure(
            "empty_drop",
            "Drop over the same housing without its element",
            "p_e",
            "1 psi",
            "Run it empty once, at the same flow, and flush the line after it. Ports and head take "
            "this much for ever.",
            NEW,
        ),
        flow_input(
            "drop_flow",
            "Flow of those two readings",
            "Q_k",
            "6 gpm",
            "Pail at a full-size pipe. Through one housing: close off the others.",
            NEW,
        ),
        _pressure(
            "dirty_drop",
            "Drop over one housing today",
            "p_d",
            "4.5 psi",
            "With water running; at rest it is always zero.",
            DIRTY,
        ),
        flow_input(
            "dirty_flow",
            "Flow of that reading, through that housing",
            "Q_d",
            "5.5 gpm",
            "Pail. A drop without its flow tells nothing.",
            DIRTY,
        ),
        Input(
            name="water_passed",
            label="Water through that housing since its change",
            symbol="V_p",
            kind=volume,
            default="4000 gal",
            origin=INVENTED,
            low=10 * gal,
            high=1e6 * gal,
            measure="Meter today less meter at the change, over the number of housings in use.",
            group=DIRTY,
            sure="2 %",
        ),
    ),
    outputs=(
        Output(
            name="days_left",
            label="To be changed in",
            symbol="t",
            kind=duration,
            us="days",
            si="days",
            digits=2,
            none="no date: see what it says",
        ),
        Output(
            name="water_left",
            label="Water until then",
            symbol="V_l",
            kind=volume,
            digits=2,
            none="not known",
        ),
        Output(name="new_drop", label="Drop with new elements", symbol="p_0", kind=gauge_pressure),
        Output(
            name="today_drop",
            label="Drop with elements as dirty as today's",
            symbol="p_t",
            kind=gauge_pressure,
        ),
        _resistance("element_new", "Resistance of a new element", "R_0"),
        _resistance("element_now", "Resistance of the element today", "R_n"),
        _resistance("element_most", "Resistance at which it is due", "R_m"),
        _life("cake", "Life of a set by the law of a cake on the surface", "t_c"),
        _life("intermediate", "Life by intermediate blocking", ""),
        _life("standard", "Life by pores that narrow (standard blocking)", "t_n"),
        _life("complete", "Life by pores that close one by one (complete blocking)", "t_p"),
    ),
    work=cartridge,
    cautions=(cautions.PRESSURE, cautions.RADON_AIR, cautions.LOCAL_CODE),
    sources=("hermia-1982", "grace-1956", "iec-60534-2-1", "epa-radon-2016"),
)
