"""Problems on the filter and the calendar."""

from calc.coursework.problem import (
    Fact,
    Option,
    Part,
    Pick,
    Problem,
    ProblemSet,
    Recall,
    Slip,
    grid,
)

_CLEAN = ("6.4", "6.5", "6.65", "6.8")
_TODAY = grid("4.6", "5.6", "0.1", "gpm")
_FALLS = (  # gpm off the first flow at the second, third and fourth visit
    (0.05, 0.25, 0.55),
    (0.1, 0.3, 0.6),
    (0, 0.2, 0.5),
    (0.1, 0.35, 0.75),
    (0.15, 0.4, 0.8),
)
_LAST = ("5.4", "5.5", "5.6", "5.7", "5.8")
_VISITS = tuple(
    "; ".join(
        [f"{clean} gpm", *(f"{float(clean) - fall:.4g} gpm" for fall in falls), f"{last} gpm"]
    )
    for clean in _CLEAN
    for falls in _FALLS
    for last in _LAST
)
FACTS = Recall(
    name="facts",
    form="recall",
    objective="Explain what to trend at a filter that fouls, and why.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Which figure do you trend from visit to visit?",
            "the resistance of the bed: pressure for each gallon a minute",
            ("the pressure drop over the filter", "the flow in, whatever the gauge says"),
            "The pressure drop goes with the flow, and the flow with the gauge.",
            "Trend the resistance, not the pressure drop",
        ),
        Fact(
            "The drop over a filter is the same as in May, the flow is a third less. What is it?",
            "dirtier than in May",
            ("as clean as in May", "cleaner than in May"),
            "The same pressure for less flow is more resistance.",
            "Trend the resistance, not the pressure drop",
        ),
        Fact(
            "Why do two readings give no interval?",
            "a line goes through both, and nothing shows how far readings scatter",
            ("two readings are never taken on one day", "two readings always agree too well"),
            "Three give an interval, a wide one.",
            "Measure",
        ),
        Fact(
            "Four laws fit the readings about equally well. Which one decides?",
            "the one that ends soonest",
            ("the one that ends last", "the straight line, for it is the simplest"),
            "With a handful of readings nobody can tell the laws apart.",
            "The calculator",
        ),
        Fact(
            "What is counted from one service to the next?",
            "the water that went through",
            ("the days that went by", "the starts of the well pump"),
            "A house uses more in one month than in another; dirt comes with the water.",
            "Measure",
        ),
        Fact(
            "Which part of the inlet's resistance changes from month to month?",
            "the filter bed",
            ("the lift to the open tank", "the inlet limit"),
            "The others stay as they are; so the bed's part can be found by taking them off.",
            "What you are looking at",
        ),
        Fact(
            "The readings taken right after each backwash creep up. What does it mean?",
            "fines and iron stay in the bed: its media will have to be renewed",
            ("the backwash comes too often", "the gauge drifts, for a backwash cleans all"),
            "The foot of the saw-tooth sets when the media is renewed.",
            "Backwash, and what it leaves",
        ),
        Fact(
            "When is the first reading taken?",
            "right after service",
            ("when the flow has fallen by a tenth", "a month after service"),
            "The line needs its start.",
            "Measure",
        ),
    ),
)

RESISTANCE = Problem(
    name="resistance",
    form="one-step",
    objective="Compute the resistance of a filter bed from a pail and a gauge.",
    level=2,
    minutes=5,
    text="The spout of the open tank lies {rise} above the gauge before the filter. Right after "
    "service and today the pail and the gauge showed {filter_flows} and {filter_gauges}. Without "
    "its filter the inlet has a flow coefficient of {inlet_coefficient}: gallons a minute at "
    "1 psi. Take 0.433 psi for each foot of water.",
    calculator="filter_due",
    draws={
        "rise": grid("10", "24", "1", "ft"),
        "filter_flows": tuple(f"6.6 gpm; {today}" for today in _TODAY),
        "filter_gauges": tuple(f"52 psi; {gauge} psi" for gauge in range(46, 60)),
        "inlet_coefficient": grid("1.1", "1.5", "0.05", "Cv"),
    },
    fixed={"filter_meter": "0 gal; 12000 gal"},
    parts=(
        Part(
            finds="r_n",
            ask="What is the bed's resistance today?",
            section="What you are looking at",
            slips=(
                Slip("The lift is missing: it drives nothing.", "r_n = p_n / Q_n - Q_n / C**2"),
                Slip(
                    "The limit, pipe and float valve take their part too.",
                    "r_n = (p_n - p_h) / Q_n",
                ),
                Slip("That is a pressure. Divide it by the flow.", "r_n * Q_n / gpm"),
            ),
        ),
    ),
)

DUE_AT = Problem(
    name="due_at",
    form="one-step",
    objective="Compute the resistance at which a filter must be serviced.",
    level=2,
    minutes=5,
    text="The outlet passes {worst_outlet} at its worst, and {guard} are kept above it for the "
    "doubt. The well pump starts at {well_cut_in}. The spout lies {rise} above the gauge before "
    "the filter, and the inlet without its filter has a flow coefficient of {inlet_coefficient}. "
    "Take 0.433 psi for each foot of water.",
    calculator="filter_due",
    draws={
        "worst_outlet": grid("4", "5.2", "0.1", "gpm"),
        "guard": grid("0.2", "0.4", "0.1", "gpm"),
        "well_cut_in": grid("36", "50", "2", "psi"),
        "rise": grid("10", "20", "2", "ft"),
        "inlet_coefficient": grid("1.1", "1.5", "0.05", "Cv"),
    },
    parts=(
        Part(
            finds="r_c",
            ask="At which resistance of its bed is the filter due?",
            section="What buys time",
            slips=(
                Slip("The guard is missing.", "q_s = Q_x"),
                Slip("The lift is missing: it drives nothing.", "p_h = 0 * w"),
                Slip(
                    "The limit, pipe and float valve take their part too.",
                    "r_c = (p_c - p_h) / q_s",
                ),
            ),
        ),
    ),
)

LINE = Problem(
    name="line",
    form="multi-step",
    objective="Compute when a filter is due by a straight line, and say what that date is worth.",
    level=2,
    minutes=12,
    text="With {filter_meter} through the filter since its service the pail showed {filter_flows} "
    "in, and the gauge before it {filter_gauges}. The well pump starts at {well_cut_in}, the "
    "spout lies {rise} above the gauge, the inlet without its filter has a flow coefficient of "
    "{inlet_coefficient}. The outlet passes {worst_outlet} at its worst, {guard} are kept for the "
    "doubt. The house uses {daily_use}. Take 0.433 psi for each foot of water.",
    calculator="filter_due",
    draws={
        "filter_flows": tuple(f"{clean} gpm; {last} gpm" for clean in _CLEAN for last in _LAST),
        "filter_gauges": tuple(f"44 psi; {gauge} psi" for gauge in range(42, 47)),
        "filter_meter": tuple(f"0 gal; {meter} gal" for meter in range(6000, 15000, 1000)),
        "daily_use": grid("120", "240", "20", "gal/day"),
    },
    parts=(
        Part(
            finds="q_s",
            ask="At which flow in is the filter due?",
            section="The calculator",
            slips=(Slip("The guard is added to the outlet, not taken off.", "Q_x - G"),),
        ),
        Part(
            finds="r_n",
            ask="What is the bed's resistance today?",
            section="What you are looking at",
            slips=(
                Slip("The lift is missing: it drives nothing.", "r_n = p_n / Q_n - Q_n / C**2"),
                Slip(
                    "The limit, pipe and float valve take their part too.",
                    "r_n = (p_n - p_h) / Q_n",
                ),
            ),
        ),
        Part(
            finds="r_c",
            ask="At which resistance is it due?",
            section="What buys time",
            slips=(
                Slip("The guard is missing.", "r_c = (p_c - p_h) / Q_x - Q_x / C**2"),
                Slip(
                    "The well pump lets the gauge fall to cut-in.",
                    "r_c = (p_n - p_h) / q_s - q_s / C**2",
                ),
            ),
        ),
        Part(
            finds="cake",
            ask="In how many days is that, on a straight line through both readings?",
            section="Four ways to foul",
            tolerance=0.05,
            digits=2,
            marks=2,
            slips=(
                Slip(
                    "That is counted from the service. Part of it is gone already.",
                    "cake + V_n / Q_u",
                ),
            ),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide what service date goes on a tag.",
    level=3,
    minutes=15,
    text="Invented: the Quarry Road house at Alder Ledge. Five visits to the filter, at "
    "{filter_meter} on the meter since service: flow in {filter_flows}; gauge {filter_gauges}. "
    "The well pump starts at {well_cut_in}, the lift is {rise}, the inlet's flow coefficient "
    "without its filter {inlet_coefficient}. The outlet passes {worst_outlet} at its worst, "
    "{guard} are kept for the doubt. The house uses {daily_use}. Use the chapter's calculator.",
    calculator="filter_due",
    draws={
        "filter_flows": _VISITS,
        "filter_gauges": tuple(
            f"{a} psi; 46 psi; {b} psi; 45 psi; 44 psi" for a in (44, 45, 46) for b in (43, 44)
        ),
        "daily_use": grid("120", "240", "20", "gal/day"),
    },
    parts=(
        Part(
            finds="due",
            ask="In how many days is the filter due?",
            section="The calculator",
            tolerance=0.05,
            digits=2,
            marks=2,
            slips=(
                Slip("The straight line is a trap: a law that ends sooner fits too.", "cake"),
                Slip(
                    "That is the date without doubt. The question is when it is due.", "due_surely"
                ),
            ),
        ),
        Pick(
            finds="tag",
            ask="The owner will have it serviced on one of three days. Which is the last that is "
            "not too late, 19 times in 20?",
            section="The calculator",
            options=(
                Option("now", "today", "due_surely < 2 * day"),
                Option("two", "two days from today", "due_surely < 7 * day"),
                Option("week", "a week from today"),
            ),
            because="Plan by the earlier end of the interval.",
        ),
        Part(
            finds="r_c",
            ask="Which resistance goes on the tag as the one at which it is due?",
            section="What to record",
            slips=(
                Slip("The guard is missing.", "q_s = Q_x"),
                Slip("That is today's.", "r_n"),
            ),
        ),
    ),
    keep=lambda case: bool(case.answer and (case.answer.outputs["due"] or 0) > 86400),
)

SET = ProblemSet(
    name="open_tank_filter",
    chapter="open-tank/filter.md",
    title="The filter and the calendar",
    revision="2026-11-25",
    problems=(FACTS, RESISTANCE, DUE_AT, LINE, FIELD),
)
