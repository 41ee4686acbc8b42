"""A flow by pail and timer, with its plus-or-minus and what to do about it."""

from math import ceil

from calc import cautions
from calc.errors import Refused
from calc.fields import INVENTED
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.pail import (
    Budget,
    coverage_factor,
    effective_freedom,
    relative_spread,
    uncertainty_budget,
)
from calc.units import duration, flow, gal, mass, minute, number, percent, share, volume

# Water at 60 °F weighs 999.0 kg/m³, from memory; 8.34 lb a US gallon.
WATER = 999.0
FEWEST_RUNS, MOST_RUNS = 3, 6
# The runs have had their say when they add less than a tenth to the rest.
RUNS_SHARE = 1.1**2 - 1


def pail_flow(
    pail: float, mark: float, runs: tuple[float, ...], timing: float, scatter: float
) -> Answer:
    """Flow from several timed fills of one pail. Sources: see `calc.physics.pail`."""
    if mark > pail / 4:
        raise Refused("contradiction", "mark", says="is over a quarter of the pail ({pail})")
    mean = sum(runs) / len(runs)
    measured = relative_spread(runs)
    # two runs that happen to agree prove little: assume the usual scatter until there are three
    spread = measured if len(runs) >= FEWEST_RUNS else max(measured, scatter)
    budget = uncertainty_budget(pail, mark, mean, timing, spread, len(runs))
    factor = coverage_factor(effective_freedom(budget, len(runs)))
    sure = factor * budget.whole
    result = pail / mean
    still = max(_runs_worth(budget, spread), FEWEST_RUNS)
    given = {
        "T": Quantity(sum(runs), _RUNS, 5, "time of all runs together"),
        "n": Quantity(len(runs), number, label="number of runs"),
        "s": Quantity(spread, share, label="scatter of one run"),
        "k": Quantity(factor, number, label="Student's factor for so many runs"),
        "u_V": Quantity(budget.mark, share),
        "u_t": Quantity(budget.timing, share),
        "u_s": Quantity(budget.runs, share),
        "u": Quantity(budget.whole, share),
    }
    return Answer(
        outputs={
            "flow": result,
            "plus_minus": sure * result,
            "plus_minus_share": sure,
            "mean_time": mean,
            "spread": measured if len(runs) > 1 else None,
            "runs_worth": still,
            "pail_weight": pail * WATER,
        },
        findings=(_headline(sure), _advice(budget, len(runs), still)),
        steps=(
            Step("Mean time of the runs", "t = T / n", given),
            Step("Flow", "Q = V / t"),
            Step("Share that the pail's mark leaves in doubt", "u_V = a / sqrt(3) / V", given),
            Step("Share from starting and stopping the watch", "u_t = d / t", given),
            Step("Share from the scatter of the runs", "u_s = s / sqrt(n)", given),
            Step("Together", "u = sqrt(u_V**2 + u_t**2 + u_s**2)", given),
            Step("Plus-or-minus that holds 19 times in 20", "U = k * u * Q", given),
        ),
    )


def _runs_worth(budget: Budget, spread: float) -> int:
    steady = budget.mark**2 + budget.timing**2
    worth = spread**2 / (RUNS_SHARE * steady) if steady else MOST_RUNS
    return min(MOST_RUNS, ceil(worth - 1e-9))


def _headline(sure: float) -> Finding:
    text = "The flow is {flow}, give or take {plus_minus} ({plus_minus_share})."
    if sure <= 0.05:
        return Finding("good", "Measured.", text)
    return Finding("caution", "Rough.", text + " Too loose to set a limit by.")


def _advice(budget: Budget, done: int, worth: int) -> Finding:
    if done < worth:
        return Finding(
            "caution",
            "More runs.",
            "Take {more} more. The scatter of the runs is still a large part of the doubt.",
            {"more": Quantity(worth - done, number)},
        )
    if budget.mark >= budget.timing:
        return Finding(
            "good",
            "Enough runs.",
            "The pail's mark is now the larger doubt: check it once by weight. Water to a true "
            "mark weighs {pail_weight}, the empty pail apart.",
        )
    return Finding(
        "good",
        "Enough runs.",
        "The watch is now the larger doubt: a bigger pail makes a longer fill.",
    )


_RUNS = Input(
    name="runs",
    label="Time of each run",
    kind=duration,
    us="s",
    si="s",
    default="53.1 s; 53.9 s; 53.4 s",
    origin=INVENTED,
    low=1.0,
    high=60 * minute,
    several=MOST_RUNS,
    once=False,
    timed=True,
    measure="Start as the stream enters, stop at the mark. At least three runs, half a minute or "
    "longer each. A minute and two seconds is 62 or 1:02.",
    group="The runs",
)

CALCULATOR = Calculator(
    name="pail_flow",
    title="Flow by pail and timer",
    question="How much water flows here, and how sure is that?",
    inputs=(
        Input(
            name="pail",
            label="Pail, to the mark",
            symbol="V",
            kind=volume,
            default="5 gal",
            origin=INVENTED,
            low=0.1 * gal,
            high=200 * gal,
            measure="To the mark you stop at, not to the rim. Five gallons or more is worth "
            "carrying: a small pail doubles the doubt.",
            group="The pail",
        ),
        Input(
            name="mark",
            label="How far the mark may be off, either way",
            symbol="a",
            kind=volume,
            default="0.1 gal",
            origin="common practice, no source: a finger's width in a five-gallon pail",
            low=0.0,
            high=50 * gal,
            measure="Weigh the pail empty and full to the mark once, and write the true volume "
            "on it; then 0.02 gal is fair.",
            group="The pail",
        ),
        _RUNS,
        Input(
            name="timing",
            label="Start and stop of the watch (standard deviation)",
            symbol="d",
            kind=duration,
            us="s",
            si="s",
            default="0.10 s",
            origin="[faux-2019]: start and stop together, an event seen coming",
            low=0.0,
            high=10.0,
            measure="Leave it, unless two people call to each other: then 0.5 s.",
            group="The runs",
        ),
        Input(
            name="scatter",
            label="Scatter to assume until there are three runs",
            kind=share,
            default="1 %",
            origin="common practice, no source",
            low=0.0,
            high=50 * percent,
            measure="The standard deviation of one run. With three runs or more their own "
            "scatter counts.",
            group="The runs",
        ),
    ),
    outputs=(
        Output(name="flow", label="Flow", symbol="Q", kind=flow),
        Output(
            name="plus_minus",
            label="Plus or minus, 19 times in 20",
            symbol="U",
            kind=flow,
            digits=2,
        ),
        Output(name="plus_minus_share", label="The same as a share", kind=share, digits=2),
        Output(name="mean_time", label="Mean time", symbol="t", kind=duration, us="s", si="s"),
        Output(
            name="spread",
            label="Scatter of the runs",
            kind=share,
            digits=2,
            high=5 * percent,
            outside="The runs do not agree. Is the flow steady? Is a pump cycling?",
            none="one run tells nothing of it",
        ),
        Output(name="runs_worth", label="Runs worth taking", kind=number),
        Output(name="pail_weight", label="A true pail of water weighs", kind=mass),
    ),
    work=pail_flow,
    cautions=(cautions.RADON_AIR, cautions.ELECTRICITY, cautions.LOCAL_CODE),
    leaves={"flow": ("inlet", "outlet", "pump", "well_pump")},
    sure_of={"flow": "plus_minus"},
    sources=("jcgm-100", "faux-2019", "nist-960-12", "nist-811", "epa-radon-2016", "osha-1910-147"),
)
