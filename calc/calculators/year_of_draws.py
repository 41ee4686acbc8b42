"""How often the open tank runs dry in a year of the household's own draws."""

from collections.abc import Mapping

from calc import cautions
from calc.charts import Bar, Bars
from calc.fields import household
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
from calc.physics.chance import at_least_once, chance_bound, chance_interval
from calc.physics.demand import WEEK, WEEKS_A_YEAR, day_volume, week_of_draws
from calc.physics.year_run import Counted, counted
from calc.units import day, duration, number, share, volume

SURENESS = 0.95
CERTAIN = 0.999  # a chance over this is told in words: "100 % or more" tells nothing
SLOW = 0.9  # share of the wanted flow under which a house notices; common practice, no source
# How low the tank came in a week, as shares of the water at the float's opening.
DEPTHS = (
    ("the intake uncovered", 0.0),
    ("wet, but under a quarter of the float's opening", 0.25),
    ("a quarter to a half of it", 0.5),
    ("a half to all of it", 1 - 1e-9),
    ("never under the float's opening", float("inf")),
)


def year_of_draws(
    people: float,
    loads: float,
    wash_days: float,
    fill: float,
    fill_flow: float,
    hose_days: float,
    uneven: float,
    worst_inlet: float,
    limit: str,
    worst_outlet: float,
    pump: float,
    float_open: float,
    float_closed: float,
    house_drawdown: float,
) -> Answer:
    """Chance of a dry tank in a year, from the first weeks that can be counted at once."""
    house = House(
        people, loads, wash_days, fill, fill_flow, hose_days, uneven, worst_inlet, limit,
        worst_outlet, pump, float_open, float_closed, house_drawdown,
    )  # fmt: skip
    house.check()
    return _told(house, _more(house, {}, house.first_weeks()))


def _more(house: House, tally: Tally, weeks: int) -> Tally:
    """The tally after the weeks that follow those in it. Each starts with both tanks full."""
    now = {"weeks": 0.0, "lowest": house.float_closed} | dict(tally)
    first = int(now["weeks"])
    for week in range(first, first + weeks):
        seen = counted(house.plant, week_of_draws(house.household, week), WEEK)
        now["weeks"] += 1
        now["lowest"] = min(now["lowest"], seen.lowest)
        for name, more in _sums(house, seen):
            now[name] = now.get(name, 0.0) + more
    return now


def _sums(house: House, seen: Counted) -> list[tuple[str, float]]:
    full = house.float_open
    depth = next(n for n, (_, part) in enumerate(DEPTHS) if seen.lowest <= part * full)
    return [
        ("dry_weeks", float(seen.dry_events > 0)),
        ("dry_events", seen.dry_events),
        ("dry_time", seen.dry_time),
        ("starts", seen.starts),
        ("wanted", seen.wanted),
        ("met", seen.met),
        *((f"depth_{n}", float(n == depth)) for n in range(len(DEPTHS))),
    ]


def _told(house: House, tally: Tally) -> Answer:
    weeks, dry = int(tally["weeks"]), int(tally["dry_weeks"])
    years = weeks / WEEKS_A_YEAR
    low, high = chance_interval(dry, weeks, SURENESS)
    if not dry:
        high = 0.0 if house.is_sure else chance_bound(weeks, SURENESS)
    chances = [at_least_once(each, WEEKS_A_YEAR) for each in (dry / weeks, low, high)]
    outputs = {
        "dry_chance": chances[0] if dry or house.is_sure else None,
        "chance_low": chances[1],
        "chance_high": chances[2],
        "dry_events": tally["dry_events"] / years,
        "dry_time": tally["dry_time"] / years,
        "lowest_seen": tally["lowest"],
        "delivered": tally["met"] / tally["wanted"] if tally["wanted"] else 1.0,
        "pump_starts": tally["starts"] * day / (weeks * WEEK),
        "day_water": day_volume(house.household),
        "house_years": years,
    }
    return Answer(
        outputs=outputs,
        findings=_findings(house, dry, chances[1], outputs["delivered"] or 0.0),
        steps=_steps(tally, high),
        charts=(_chart(tally),),
    )


def _findings(house: House, dry: int, least_chance: float, delivered: float) -> tuple[Finding, ...]:
    findings = [_headline(house, dry, least_chance > CERTAIN)]
    if delivered < SLOW:
        findings.append(
            Finding(
                "caution",
                "Slow taps.",
                "While taps are open the house gets {delivered} of the flow they ask for. "
                "Washer, tub and toilet still get their water, only later.",
            )
        )
    return tuple(findings)


def _headline(house: House, dry: int, is_certain: bool) -> Finding:
    if dry:
        chance = (
            "That it happens within a year is all but certain."
            if is_certain
            else "The chance that it happens at all in a year is {chance_low} or more."
        )
        return Finding(
            "danger",
            "Runs dry.",
            "In a year like those counted the intake uncovers {dry_events} times, and pump 2 "
            f"draws air for {{dry_time}}. {chance}",
        )
    if house.is_sure:
        return Finding(
            "good",
            "Cannot run dry.",
            "No more leaves than enters, so no draw whatever can empty the tank. That is proved, "
            "not counted: it holds while the worst flow in is no worse than {worst_inlet}.",
        )
    return Finding(
        "caution",
        "Not seen dry, not sure.",
        "The intake never uncovered in what was counted. A chance of up to {chance_high} in a "
        "year would often have looked the same. Counting longer lowers that figure; only an "
        "outlet no larger than the worst inlet makes it nothing.",
    )


def _steps(tally: Tally, high: float) -> tuple[Step, ...]:
    dry = tally["dry_weeks"] / tally["weeks"]
    given = {
        "n_c": Quantity(tally["weeks"], number, 6, "weeks counted"),
        "n_y": Quantity(WEEKS_A_YEAR, number, 5, "weeks in a year"),
        "n_d": Quantity(tally["dry_weeks"], number, 6, "weeks in which the intake uncovered"),
        "n_e": Quantity(tally["dry_events"], number, 6, "times that the intake uncovered"),
        "t_c": Quantity(tally["dry_time"], duration, 4, "time counted in which pump 2 drew air"),
        "p_h": Quantity(high, share, 3, "highest chance of a dry week that count or proof allows"),
        "p_w": Quantity(dry, share, 3),
        "P_w": Quantity(at_least_once(dry, WEEKS_A_YEAR), share),
    }
    return (
        Step("House-years counted", "Y = n_c / n_y", given),
        Step("Times dry in a year", "E = n_e / Y", given),
        Step("Time dry in a year", "t_a = t_c / Y", given),
        Step("Share of dry weeks", "p_w = n_d / n_c", given),
        Step("Chance of at least one in a year", "P_w = 1 - (1 - p_w)**n_y", given),
        Step("The same, at most", "P_h = 1 - (1 - p_h)**n_y", given),
    )


def _chart(tally: Tally) -> Bars:
    bars = tuple(
        Bar(label, tally[f"depth_{n}"] / tally["weeks"]) for n, (label, _) in enumerate(DEPTHS)
    )
    return Bars("Weeks by the lowest level in them", "From the worst weeks down.", share, bars)


def _house(values: Mapping[str, Value]) -> House:
    return House._make(values[name] for name in House._fields)


CALCULATOR = Calculator(
    name="year_of_draws",
    title="A year of draws",
    question="How likely is it that the open tank runs dry in a year of this house's draws?",
    inputs=household.INPUTS,
    outputs=(
        Output(
            name="dry_chance",
            label="Chance that it runs dry in a year",
            kind=share,
            digits=2,
            none="never in what was counted",
        ),
        Output(name="chance_low", label="That chance is at least", kind=share, digits=2),
        Output(
            name="chance_high", label="That chance is at most", symbol="P_h", kind=share, digits=2
        ),
        Output(name="dry_events", label="Times dry in a year", symbol="E", kind=number, digits=2),
        Output(
            name="dry_time",
            label="Time in a year that pump 2 draws air",
            symbol="t_a",
            kind=duration,
            digits=2,
        ),
        Output(name="lowest_seen", label="Lowest level counted, above the intake", kind=volume),
        Output(
            name="delivered",
            label="Share of the wanted flow that open taps get",
            kind=share,
        ),
        Output(name="pump_starts", label="Starts of pump 2 in a day", kind=number),
        Output(name="day_water", label="Water the house takes in a day", kind=volume),
        Output(name="house_years", label="House-years counted", symbol="Y", kind=number, digits=2),
    ),
    work=year_of_draws,
    trials=0,
    cautions=(cautions.RADON_AIR, cautions.LOCAL_CODE),
    sources=(*household.SOURCES, "clopper-1934", "hanley-1983", "dlmf"),
    simulation=Simulation(
        more=lambda values, tally, weeks: _more(_house(values), tally, weeks),
        told=lambda values, tally: _told(_house(values), tally),
    ),
)
