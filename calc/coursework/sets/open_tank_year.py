"""Problems on a year of draws. Counted years take too long to deal four hundred times, so these
ask what a count says, and follow the draws that a count is made of."""

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

FACTS = Recall(
    name="facts",
    form="recall",
    objective="Explain what a count of dry times says, and what it does not.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Nothing was seen in n weeks. How large may the chance of a dry week still be, about?",
            "three over n",
            ("nought", "one over n squared"),
            "That is the rule of three.",
            "When nothing was seen",
        ),
        Fact(
            "Days are more uneven, the mean is the same. What happens to dry times?",
            "there are more: busy days let draws meet",
            ("there are fewer", "nothing: only the mean counts"),
            "An average hides the days that matter.",
            "What you are looking at",
        ),
        Fact(
            "Which figure of a count is its answer?",
            "the interval",
            ("the middle", "the number of weeks"),
            "Read both ends.",
            "Common mistakes",
        ),
        Fact(
            "Which inlet is given to a count?",
            "the worst",
            ("today's", "the one right after service"),
            "Today's filter is clean.",
            "Common mistakes",
        ),
        Fact(
            "What costs nothing but flow and proves more than any count?",
            "an outlet no higher than the worst inlet",
            ("a longer count", "a low-level switch"),
            "A zero that is proved needs no counting.",
            "Common mistakes",
        ),
    ),
)

_TANK = (
    "{worst_inlet} enter at the worst hour, {worst_outlet} pass the limit before the house "
    "pressure tank; pump 2 could give {pump}. The float opens with {float_open} over the intake"
)

FILL = Problem(
    name="fill",
    form="one-step",
    objective="Compute which draws can never run a tank dry.",
    level=2,
    minutes=5,
    text=_TANK + ". One draw, however long, passes as long as the intake is covered.",
    calculator="tank_draw",
    draws={
        "worst_inlet": grid("3.5", "5", "0.1", "gpm"),
        "worst_outlet": grid("5.4", "6.8", "0.1", "gpm"),
        "float_open": grid("8", "16", "0.5", "gal"),
    },
    fixed={"float_closed": "20 gal"},
    parts=(
        Part(
            finds="t_s",
            ask="For how long is it surely covered?",
            section="What you are looking at",
            slips=(
                Slip("Water enters all the while: only the difference is lost.", "t_s = R / Q_e"),
            ),
        ),
    ),
)

MEET = Problem(
    name="meet",
    form="multi-step",
    objective="Compute what two draws that meet do to the tank.",
    level=3,
    minutes=10,
    text=_TANK + " and closes with {float_closed}. Two draws of {draw_volumes} begin at "
    "{draw_starts}, at {draw_flows}; both run until they have their water. The house pressure tank "
    "takes {house_drawdown} from cut-in to cut-out; pump 1 gives {well_pump} and its tank "
    "{well_drawdown}. Use the calculator of the run.",
    calculator="system_run",
    draws={
        "worst_inlet": grid("4", "5", "0.1", "gpm"),
        "worst_outlet": grid("5.4", "6.4", "0.2", "gpm"),
        "float_open": grid("10", "15", "0.5", "gal"),
        "draw_volumes": tuple(
            f"{one} gal; {two} gal" for one in (18, 20, 22, 25) for two in (10, 15, 20)
        ),
    },
    fixed={"float_closed": "18 gal", "draw_starts": "0 min; 2 min", "draw_flows": "6 gpm; 2.1 gpm"},
    parts=(
        Part(finds="had", ask="How much water did the house have?", section="Count"),
        Part(
            finds="lowest",
            ask="How low did the level go, over the intake?",
            section="Count",
            tolerance="0.15 gal",
        ),
    ),
    keep=lambda case: bool(case.answer and (case.answer.outputs["lowest"] or 0) > 0),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether wash day with the hose on uncovers the intake.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. " + _TANK + " and closes with "
    "{float_closed}. A fill and a hose, {draw_volumes}, begin at {draw_starts}, at {draw_flows}; "
    "both run until they have their water. The house pressure tank takes {house_drawdown}; pump 1 "
    "gives {well_pump} and its tank {well_drawdown}. Use the calculator of the run.",
    calculator="system_run",
    draws={
        "worst_inlet": grid("3", "5", "0.1", "gpm"),
        "worst_outlet": grid("5.2", "6.6", "0.2", "gpm"),
        "float_open": grid("8", "14", "0.5", "gal"),
        "draw_volumes": tuple(f"25 gal; {hose} gal" for hose in range(20, 80, 10)),
    },
    fixed={"float_closed": "16 gal", "draw_starts": "0 min; 1 min", "draw_flows": "6 gpm; 5 gpm"},
    parts=(
        Part(finds="taken_out", ask="How much water does pump 2 take out?", section="Count"),
        Pick(
            finds="dry",
            ask="Does the intake uncover?",
            section="What you are looking at",
            options=(
                Option("yes", "Yes.", "lowest < 0.05 * gal"),
                Option("no", "No."),
            ),
            because="The lowest level of the run tells.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="open_tank_year",
    chapter="open-tank/year.md",
    title="A year of draws",
    revision="2026-11-25",
    problems=(FACTS, FILL, MEET, FIELD),
)
