"""Problems on what to change first. Counted weeks take too long to deal four hundred times, so
these hold one fix against another in a single draw."""

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
    objective="Compare the ways to keep an open tank wet.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Which fixes are tried first?",
            "the free ones: close a valve",
            ("a larger tank", "a larger pump"),
            "Nothing is bought before a valve is closed.",
            "Common mistakes",
        ),
        Fact(
            "Nothing ran dry in the weeks counted, with the outlet over the worst inlet. Is the "
            "house mended?",
            "no: luck is larger than most fixes",
            ("yes, a count proves it", "yes, if it was a wash week"),
            "Only an outlet no higher than the worst inlet is proved.",
            "Check yourself",
        ),
        Fact(
            "What does a bigger house pressure tank do here?",
            "it takes more at once, and spares the pump its starts",
            ("it keeps the open tank fuller", "it lets less pass the limit"),
            "For the open tank it is worse.",
            "Check yourself",
        ),
        Fact(
            "The bed is dirty. What does a bigger inlet limit bring?",
            "little: the bed is the limit then",
            ("twice the flow", "a cleaner bed"),
            "Measure with the limit wide open.",
            "Common mistakes",
        ),
        Fact(
            "How long does staggered laundry last as a cure?",
            "until the next visitor",
            ("for ever", "until the filter is serviced"),
            "Habits are no setting.",
            "Common mistakes",
        ),
    ),
)

FLOAT = Problem(
    name="float",
    form="one-step",
    objective="Compute what a raised float buys in one draw.",
    level=2,
    minutes=4,
    text="{worst_inlet} enter at the worst hour, {worst_outlet} pass the limit before the house "
    "pressure tank; pump 2 could give {pump}. The float is raised, and now opens with {float_open} "
    "over the intake.",
    calculator="tank_draw",
    draws={
        "worst_inlet": grid("3", "5", "0.1", "gpm"),
        "worst_outlet": grid("5.6", "7", "0.1", "gpm"),
        "float_open": grid("8", "18", "0.5", "gal"),
    },
    fixed={"float_closed": "24 gal"},
    parts=(
        Part(
            finds="t_s",
            ask="How long is one draw sure to last now?",
            section="Rank them",
            slips=(
                Slip("Water enters all the while: only the difference is lost.", "t_s = R / Q_e"),
                Slip("Pump 2 passes no more than its limit.", "Q_e = Q_p"),
            ),
        ),
    ),
)

INLET = Problem(
    name="service",
    form="multi-step",
    objective="Compute what a serviced filter buys in one draw.",
    level=2,
    minutes=8,
    text="With the filter just serviced {worst_inlet} enter at the worst hour. {worst_outlet} pass "
    "the limit before the house pressure tank; pump 2 could give {pump}. The float opens with "
    "{float_open} over the intake. The house pressure tank holds {house_tank}, is pre-charged to "
    "{precharge} and works from {cut_in} to {cut_out}; the air presses with 14.7 psi.",
    calculator="tank_draw",
    draws={
        "worst_inlet": grid("3.5", "5.2", "0.1", "gpm"),
        "worst_outlet": grid("5.8", "7", "0.1", "gpm"),
        "float_open": grid("9", "16", "0.5", "gal"),
        "house_tank": ("14 gal", "20 gal", "26 gal", "32 gal"),
    },
    fixed={"float_closed": "20 gal"},
    parts=(
        Part(
            finds="t_s",
            ask="How long is one draw sure to last?",
            section="Rank them",
            slips=(
                Slip("Water enters all the while: only the difference is lost.", "t_s = R / Q_e"),
            ),
        ),
        Part(
            finds="D_s",
            ask="How much may one draw take, if the pressure tank must be refilled after it?",
            section="Rank them",
            slips=(
                Slip("Pump 2 still fills the pressure tank after the draw.", "D_s = Q_e * t_s"),
            ),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a bigger pressure tank helps an open tank.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. The limit sits after the house pressure "
    "tank and lets {worst_outlet} pass, the pump {pump}; {worst_inlet} enter at the worst hour, "
    "and the float opens with {float_open} over the intake. A shop offers a pressure tank of "
    "{house_tank}, pre-charged to {precharge}, {cut_in} to {cut_out}. The air presses with 14.7 "
    "psi.",
    calculator="tank_draw",
    draws={
        "worst_outlet": grid("5.2", "6", "0.1", "gpm"),
        "worst_inlet": grid("4", "4.8", "0.1", "gpm"),
        "float_open": grid("8", "16", "0.5", "gal"),
        "house_tank": grid("14", "62", "4", "gal"),
    },
    fixed={"limit": "after", "float_closed": "20 gal"},
    parts=(
        Part(
            finds="dV",
            ask="How much does that tank take between cut-in and cut-out?",
            section="How to read it",
            slips=(
                Slip("Boyle's law needs absolute pressures: add that of the air.", "P_a = 0 * P_a"),
                Slip("That is the whole tank. Air fills most of it.", "V_t"),
            ),
        ),
        Pick(
            finds="holds",
            ask="Does what stands at the float's opening hold one refill of it?",
            section="How to read it",
            options=(
                Option("no", "No: the intake may uncover at once.", "V_on < dV"),
                Option("yes", "Yes, and what is over lasts for a while."),
            ),
            because="With the limit after the tank, pump 2 refills it at full flow out of the open "
            "tank.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="open_tank_fixes",
    chapter="open-tank/fixes.md",
    title="What to change first",
    revision="2026-11-25",
    problems=(FACTS, FLOAT, INLET, FIELD),
)
