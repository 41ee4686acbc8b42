"""Problems on a run of the whole system."""

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
    objective="Name which switch sees what in a house with an open tank.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "What does pump 2 know of the open tank's level?",
            "nothing",
            ("whether the float is open", "whether the tank is full"),
            "It starts at cut-in and stops at cut-out of its own tank.",
            "What you are looking at",
        ),
        Fact(
            "What does the house gauge show?",
            "the house pressure tank",
            ("the level in the open tank", "the flow that enters"),
            "The open tank may run low behind a good gauge.",
            "Common mistakes",
        ),
        Fact(
            "The blower's proof shuts the inlet and nothing else. What does pump 2 do?",
            "it goes on until it draws air",
            ("it stops too", "it slows down"),
            "Wire it to both.",
            "Check yourself",
        ),
        Fact(
            "How does a run of the worst draw begin?",
            "with the tank just above the float's opening, the pressure tank about to refill",
            ("with both tanks full", "with both tanks empty"),
            "The worst draw finds them low.",
            "Common mistakes",
        ),
        Fact(
            "What does a low-level switch do as a cure?",
            "it short-cycles the pump and leaves the house dry",
            ("it balances the flows", "it fills the tank sooner"),
            "It is a backstop.",
            "Common mistakes",
        ),
    ),
)

_HOUSE = (
    "{worst_inlet} enter at the worst hour, {worst_outlet} pass the limit before the house "
    "pressure tank; pump 2 could give {pump}. The float opens with {float_open} over the intake "
    "and closes with {float_closed}."
)

LOWEST = Problem(
    name="lowest",
    form="one-step",
    objective="Compute how low one draw brings the open tank.",
    level=2,
    minutes=6,
    text=_HOUSE
    + " A draw of {draw_volume} at {draw_flow} begins with the tank at the float's opening and the "
    "house pressure tank about to refill: {house_tank}, {precharge}, {cut_in} to {cut_out}.",
    calculator="tank_draw",
    draws={
        "worst_inlet": grid("4", "5", "0.1", "gpm"),
        "worst_outlet": grid("5.6", "6.6", "0.2", "gpm"),
        "float_open": grid("9", "14", "0.5", "gal"),
        "draw_volume": grid("18", "30", "1", "gal"),
    },
    fixed={"float_closed": "16 gal"},
    parts=(
        Part(
            finds="drawdown",
            ask="What does the pressure tank take from cut-in to cut-out?",
            section="What to measure",
            slips=(
                Slip(
                    "Boyle's law needs absolute pressures: add that of the air.",
                    "V_t * (P_p) * (1 / P_i - 1 / P_o)",
                ),
            ),
        ),
        Part(
            finds="lowest",
            ask="How low does the level go, over the intake?",
            section="Let it run",
            tolerance="0.15 gal",
            slips=(
                Slip("The pressure tank is refilled too.", "V_on - draw_volume * (1 - Q_w / Q_x)"),
                Slip("Water enters all the while.", "V_on - draw_volume"),
            ),
        ),
    ),
    keep=lambda case: bool(case.answer and (case.answer.outputs["lowest"] or 0) > 0),
)

PIECES = Problem(
    name="wash_day",
    form="multi-step",
    objective="Compute what a wash day does to both tanks.",
    level=3,
    minutes=12,
    text=_HOUSE
    + " Draws of {draw_volumes} begin at {draw_starts}, at {draw_flows}; {draws_keep}. Pump 1 "
    "gives {well_pump} and its tank {well_drawdown} from cut-out to cut-in, the house pressure "
    "tank {house_drawdown}. Use the chapter's calculator.",
    calculator="system_run",
    draws={
        "worst_inlet": grid("4.4", "5.4", "0.1", "gpm"),
        "worst_outlet": grid("5.6", "6.6", "0.2", "gpm"),
        "float_open": grid("12", "18", "0.5", "gal"),
        "draw_volumes": tuple(
            f"{one} gal; {two} gal; {one} gal" for one in (18, 20, 22, 25) for two in (10, 15, 20)
        ),
    },
    fixed={"float_closed": "22 gal"},
    parts=(
        Part(
            finds="had",
            ask="How much water did the house have?",
            section="Let it run",
        ),
        Part(
            finds="lowest",
            ask="How low did the level go, over the intake?",
            section="Let it run",
            tolerance="0.15 gal",
        ),
    ),
    keep=lambda case: bool(case.answer and (case.answer.outputs["lowest"] or 0) > 0),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a wash day uncovers the intake.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. "
    + _HOUSE
    + " Draws of {draw_volumes} begin at "
    "{draw_starts}, at {draw_flows}; {draws_keep}. Pump 1 gives {well_pump}, its tank "
    "{well_drawdown}, the house pressure tank {house_drawdown}. Use the chapter's calculator.",
    calculator="system_run",
    draws={
        "worst_inlet": grid("2.8", "5", "0.1", "gpm"),
        "worst_outlet": grid("5.6", "6.6", "0.2", "gpm"),
        "float_open": grid("8", "12", "0.5", "gal"),
        "draw_volumes": tuple(
            f"{one} gal; {two} gal; {one} gal" for one in (18, 20, 22, 25) for two in (10, 15, 20)
        ),
    },
    fixed={"float_closed": "14 gal"},
    parts=(
        Part(
            finds="taken_out",
            ask="How much water does pump 2 take out of the open tank?",
            section="Let it run",
        ),
        Pick(
            finds="dry",
            ask="Does the intake uncover?",
            section="Let it run",
            options=(
                Option("yes", "Yes.", "lowest < 0.05 * gal"),
                Option(
                    "near", "No, but less than two gallons are left over it.", "lowest < 2 * gal"
                ),
                Option("no", "No, two gallons or more are left."),
            ),
            because="The lowest level of the run tells.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="open_tank_run",
    chapter="open-tank/run.md",
    title="A run of the whole system",
    revision="2026-11-25",
    problems=(FACTS, LOWEST, PIECES, FIELD),
)
