"""Problems on the pumping test."""

from math import log10

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

_TIMES = (1000, 1200, 1440, 2000, 2880)


def _levels(first: float, cycle: float) -> str:
    """Depths to water, in feet, that fall by so much for each tenfold time, a bit scattered."""
    scatter = (0.0, 0.2, -0.2, 0.2, 0.0)
    return "; ".join(
        f"{first + cycle * log10(minutes / 1000) + off:.1f} ft"
        for minutes, off in zip(_TIMES, scatter, strict=True)
    )


_FALLS = tuple(
    _levels(first, cycle / 2) for first in range(60, 80, 4) for cycle in range(12, 32, 2)
)

FACTS = Recall(
    name="facts",
    form="recall",
    objective="Explain how a pumping test is read.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "When may a test be stopped because the level “has stabilized”?",
            "never: against the clock everything looks flat",
            ("after an hour", "when it falls less than an inch in ten minutes"),
            "Against the logarithm of time nothing is.",
            "Common mistakes",
        ),
        Fact(
            "Which readings does the line leave out?",
            "the first: they belong to the casing",
            ("the last: the pump is tired then", "none"),
            "Until then the casing's own water is pumped.",
            "Common mistakes",
        ),
        Fact(
            "What does a flow that sinks unnoticed do to a test?",
            "the well looks splendid: its level stands still",
            ("the well looks poor", "nothing: only levels count"),
            "Read the flow as often as the level.",
            "Common mistakes",
        ),
        Fact(
            "What does storativity need?",
            "a second well",
            ("a longer test", "a larger pump"),
            "Casing and entrance losses spoil it in the pumped well.",
            "Common mistakes",
        ),
        Fact(
            "To how many figures is transmissivity told?",
            "two are generous",
            ("three", "as many as the calculator shows"),
            "Rock is no pipe.",
            "Common mistakes",
        ),
    ),
)

CAPACITY = Problem(
    name="capacity",
    form="one-step",
    objective="Compute specific capacity at the end of a test.",
    level=1,
    minutes=3,
    text="A well with its water at rest at {static_level} was pumped at {test_flow} for "
    "{pumped_for}. After {test_times} the water stood at {test_levels}.",
    calculator="pumping_test",
    draws={
        "static_level": grid("20", "40", "2", "ft"),
        "test_flow": grid("1.2", "3", "0.1", "gpm"),
        "test_levels": _FALLS,
    },
    fixed={"test_times": "; ".join(f"{minutes} min" for minutes in _TIMES)},
    parts=(
        Part(
            finds="last_capacity",
            ask="What is the specific capacity at the last reading?",
            section="The calculator",
            slips=(
                Slip("Flow over drawdown, not the other way.", "1 / last_capacity * (gpm / ft)**2"),
            ),
        ),
    ),
)

LINE = Problem(
    name="line",
    form="multi-step",
    objective="Compute transmissivity from the fall for each tenfold time.",
    level=3,
    minutes=12,
    text="A bore of {casing_bore} with a drop pipe of {drop_pipe}, water at rest at "
    "{static_level}, was pumped at {test_flow} for {pumped_for}. After {test_times} the water "
    "stood at {test_levels}. Plot the levels over the logarithm of time, or use the chapter's "
    "calculator.",
    calculator="pumping_test",
    draws={
        "static_level": grid("20", "40", "4", "ft"),
        "test_flow": grid("1.2", "3", "0.1", "gpm"),
        "test_levels": _FALLS,
    },
    fixed={"test_times": "; ".join(f"{minutes} min" for minutes in _TIMES)},
    parts=(
        Part(
            finds="ds",
            ask="How far does the water fall for each tenfold time?",
            section="The calculator",
            tolerance=0.06,
            digits=2,
        ),
        Part(
            finds="T",
            ask="What is the transmissivity?",
            section="The calculator",
            tolerance=0.06,
            digits=2,
            slips=(Slip("The factor 2.30 over 4 π is missing.", "Q / ds"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide from a test what a well stands in a dry season.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. Bore {casing_bore}, drop pipe "
    "{drop_pipe}, water at rest at {static_level}, pumped at {test_flow} for {pumped_for}; after "
    "{test_times} it stood at {test_levels}. The pump hangs so that the level may be drawn down by "
    "60 ft. Use the chapter's calculator.",
    calculator="pumping_test",
    draws={
        "static_level": grid("20", "40", "2", "ft"),
        "test_flow": grid("1.2", "3", "0.1", "gpm"),
        "test_levels": _FALLS,
    },
    fixed={"test_times": "; ".join(f"{minutes} min" for minutes in _TIMES)},
    parts=(
        Part(
            finds="season_drawdown",
            ask="What would the drawdown be after 100 days at this flow?",
            section="The calculator",
            tolerance=0.04,
        ),
        Pick(
            finds="season",
            ask="Does it stand a hundred days at this flow?",
            section="Worked case",
            options=(
                Option("yes", "Yes, if the rock goes on as it began.", "season_drawdown < 60 * ft"),
                Option("no", "No."),
            ),
            because="The line is drawn on to a hundred days.",
        ),
    ),
)

SET = ProblemSet(
    name="well_pumping_test",
    chapter="well/pumping-test.md",
    title="The pumping test",
    revision="2026-11-25",
    problems=(FACTS, CAPACITY, LINE, FIELD),
)
