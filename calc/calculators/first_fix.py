"""Which change does most against a dry tank, in this house: each tried on the same weeks."""

from collections.abc import Mapping
from typing import NamedTuple

from calc import cautions
from calc.charts import Bar, Bars
from calc.errors import Refused
from calc.fields import INLET, flow_input, household, open_tank_fields
from calc.fields.household import House
from calc.model import (
    Answer,
    Calculator,
    Finding,
    Output,
    Quantity,
    Simulation,
    Step,
    Tally,
    Value,
)
from calc.physics.demand import WEEK, WEEKS_A_YEAR, staggered, week_of_draws
from calc.physics.year_run import Counted, LockOut, counted
from calc.units import duration, gal, gpm, minute, number

# Sizes of the fixes: examples, no source. What another size does, the year's page tells.
RAISED = 2 * gal
STORED = 50 * gal
WIDER = 1 * gpm
TANK_TIMES = 2.0
STOPS_AT = 0.2  # of the water at the float's opening, where pump 2 may run again
BIG, APART = 10 * gal, 30 * minute  # staggered: draws of this size, so long after each other


class Fix(NamedTuple):
    """One change: the house with it, whether big draws wait for each other, a lock-out."""

    house: House
    waits: bool = False
    lock_out: LockOut | None = None


def first_fix(
    people: float,
    loads: float,
    wash_days: float,
    fill: float,
    fill_flow: float,
    hose_days: float,
    uneven: float,
    worst_inlet: float,
    serviced_inlet: float,
    limit: str,
    worst_outlet: float,
    pump: float,
    float_open: float,
    float_closed: float,
    house_drawdown: float,
) -> Answer:
    """What each fix leaves of the dry time, from the first weeks that can be counted at once."""
    house = House(
        people, loads, wash_days, fill, fill_flow, hose_days, uneven, worst_inlet, limit,
        worst_outlet, pump, float_open, float_closed, house_drawdown,
    )  # fmt: skip
    house.check()
    if serviced_inlet < worst_inlet:
        says = "must be at least the worst flow in, {worst_inlet}"
        raise Refused("contradiction", "serviced_inlet", says=says)
    fixes = _fixes(house, serviced_inlet)
    return _told(house, fixes, _more(fixes, {}, house.first_weeks(len(fixes) // 2)))


def _fixes(house: House, serviced_inlet: float) -> dict[str, Fix]:
    """Each fix that changes anything here, by its output; first the house as it is."""
    before = house.limit == "before"
    reset = LockOut(STOPS_AT * house.float_open, house.float_open)
    higher = house._replace(
        float_open=house.float_open + RAISED, float_closed=house.float_closed + RAISED
    )
    larger = house._replace(
        float_open=house.float_open + STORED, float_closed=house.float_closed + STORED
    )
    fixes = {
        "as_it_is": Fix(house),
        "service": Fix(house._replace(worst_inlet=serviced_inlet)),
        "raise_float": Fix(higher),
        "lock_out": Fix(house, lock_out=reset),
        "storage": Fix(larger),
        "bigger_inlet": Fix(house._replace(worst_inlet=house.worst_inlet + WIDER)),
        "stagger": Fix(house, waits=True),
        "bigger_tank": Fix(house._replace(house_drawdown=TANK_TIMES * house.house_drawdown)),
    }
    if house.plant_outlet > house.worst_inlet:
        fixes["lower_outlet"] = Fix(house._replace(worst_outlet=house.worst_inlet))
    if not before:
        fixes["move_limit"] = Fix(house._replace(limit="before"))
    if house.hose_days:
        fixes["hose_off"] = Fix(house._replace(hose_days=0.0))
    return fixes


def _more(fixes: Mapping[str, Fix], tally: Tally, weeks: int) -> Tally:
    now = {"weeks": 0.0} | dict(tally)
    first = int(now["weeks"])
    for week in range(first, first + weeks):
        now["weeks"] += 1
        for name, fix in fixes.items():
            for what, more in _followed(fix, week)._asdict().items():
                if what != "lowest":
                    now[f"{name}.{what}"] = now.get(f"{name}.{what}", 0.0) + more
    return now


def _followed(fix: Fix, week: int) -> Counted:
    """The same week with a fix: what it does not change is left to the same chances."""
    draws = week_of_draws(fix.house.household, week)
    if fix.waits:
        draws = staggered(draws, BIG, APART)
    return counted(fix.house.plant, draws, WEEK, fix.lock_out)


def _told(house: House, fixes: Mapping[str, Fix], tally: Tally) -> Answer:
    years = tally["weeks"] / WEEKS_A_YEAR
    times = {name: tally[f"{name}.dry_time"] / years for name in fixes}
    outputs: dict[str, float | None] = {each.name: times.get(each.name) for each in FIXES}
    outputs["house_years"] = years
    order = sorted(
        fixes,
        key=lambda name: (not fixes[name].house.is_sure, times[name], -_delivered(tally, name)),
    )
    given = {
        "n_c": Quantity(tally["weeks"], number, 6, "weeks counted"),
        "n_y": Quantity(WEEKS_A_YEAR, number, 5, "weeks in a year"),
        "t_c": Quantity(tally["as_it_is.dry_time"], duration, 4, "time dry in them, as it is"),
    }
    return Answer(
        outputs=outputs,
        findings=_findings(house, times),
        steps=(
            Step("House-years counted", "Y = n_c / n_y", given),
            Step("Time dry in a year, as it is; each fix likewise", "t_0 = t_c / Y", given),
        ),
        charts=(_chart(fixes, order, times, tally),),
    )


def _delivered(tally: Tally, name: str) -> float:
    wanted = tally[f"{name}.wanted"]
    return tally[f"{name}.met"] / wanted if wanted else 1.0


def _findings(house: House, times: Mapping[str, float]) -> tuple[Finding, ...]:
    findings = [_headline(house, times["as_it_is"])]
    if "lower_outlet" in times and house._replace(worst_outlet=house.worst_inlet).is_sure:
        findings.append(
            Finding(
                "good",
                "Sure: a lower outlet.",
                "An outlet of {worst_inlet}, no more than the worst inlet, is the one fix here "
                "that is proved and not only counted. It costs flow at the taps, nothing else.",
            )
        )
    if times["bigger_tank"] > times["as_it_is"]:
        findings.append(
            Finding(
                "caution",
                "Not a bigger pressure tank.",
                "Twice the drawdown makes {bigger_tank} of dry time out of {as_it_is}. It takes "
                "more at once out of the open tank; it is there for the pump's sake.",
            )
        )
    return tuple(findings)


def _headline(house: House, time: float) -> Finding:
    if house.is_sure:
        return Finding(
            "good",
            "Nothing to mend.",
            "No more leaves than enters, so the tank cannot run dry as it is.",
        )
    if time:
        return Finding(
            "danger",
            "Runs dry as it is.",
            "Pump 2 draws air for {as_it_is} a year. The picture ranks the fixes by what they "
            "leave of it; what each costs is yours to know.",
        )
    return Finding(
        "caution",
        "Not seen dry as it is.",
        "The intake did not uncover in the weeks counted, which does not make it sure. Count "
        "longer, or see the year's page for the chance that is left.",
    )


def _chart(
    fixes: Mapping[str, Fix], order: list[str], times: Mapping[str, float], tally: Tally
) -> Bars:
    labels = {each.name: each.label for each in FIXES}
    return Bars(
        title="Time in a year that pump 2 draws air",
        says="What is proved comes first, then what leaves least.",
        like=FIXES[0],
        bars=tuple(
            Bar(labels[name], times[name], _words(fixes[name], name, tally)) for name in order
        ),
    )


def _words(fix: Fix, name: str, tally: Tally) -> str:
    years = tally["weeks"] / WEEKS_A_YEAR
    dry = tally[f"{name}.dry_events"] / years
    said = f"dry {_times(dry)} a year" if dry else "dry never in the weeks counted"
    if fix.house.is_sure:
        said = "cannot run dry: proved"
    elif fix.lock_out:
        said = f"stops pump 2 {_times(tally[f'{name}.locks'] / years)} a year"
    return f"{said}; open taps get {100 * _delivered(tally, name):.1f} % of their flow"


def _times(often: float) -> str:
    return f"{often:.0f} times" if often >= 10 else f"{often:.1f} times"


def _fix(name: str, label: str, none: str = "", symbol: str = "") -> Output:
    return Output(name=name, label=label, symbol=symbol, kind=duration, digits=2, none=none)


def _inputs(values: Mapping[str, Value]) -> tuple[House, dict[str, Fix]]:
    house = House._make(values[name] for name in House._fields)
    serviced_inlet = values["serviced_inlet"]
    assert isinstance(serviced_inlet, float)
    return house, _fixes(house, serviced_inlet)


FIXES = (
    _fix("as_it_is", "As it is", symbol="t_0"),
    _fix("lower_outlet", "Outlet closed to the worst flow in", "it is no larger already"),
    _fix("service", "Filter serviced"),
    _fix("move_limit", "Limit moved before the house pressure tank", "it is there already"),
    _fix("raise_float", "Float raised by 2 gal (7.6 L)"),
    _fix("lock_out", "Low-level switch stops pump 2"),
    _fix("hose_off", "Hose bibs branched off before the tank", "no hose on treated water"),
    _fix("storage", "Open tank larger by 50 gal (190 L)"),
    _fix("bigger_inlet", "Inlet limit larger by 1 gpm (3.8 L/min)"),
    _fix("stagger", "Big draws half an hour apart"),
    _fix("bigger_tank", "House pressure tank of twice the drawdown"),
)
CALCULATOR = Calculator(
    name="first_fix",
    title="What to change first",
    question="Which change does most against a dry tank in this house?",
    inputs=(
        *household.USE,
        open_tank_fields.worst_inlet,
        flow_input(
            "serviced_inlet",
            "Worst flow in with the filter just serviced",
            "Q_n",
            "5.6 gpm",
            "Pail at the open tank's inlet after a service, gauge falling toward the well pump's "
            "cut-in.",
            INLET,
        ),
        *household.OUT,
    ),
    outputs=(
        *FIXES,
        Output(name="house_years", label="House-years counted", symbol="Y", kind=number, digits=2),
    ),
    work=first_fix,
    trials=0,
    cautions=(cautions.RADON_AIR, cautions.PRESSURE, cautions.ELECTRICITY, cautions.LOCAL_CODE),
    sources=household.SOURCES,
    simulation=Simulation(
        more=lambda values, tally, weeks: _more(_inputs(values)[1], tally, weeks),
        told=lambda values, tally: _told(*_inputs(values), tally),
    ),
)
