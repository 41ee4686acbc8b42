"""Problems on arsenic, uranium, nitrate and lead: how near a sheet is to its levels."""

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
    objective="Name what holds for substances that harm by drinking.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Arsenic in a deep well that smells a little of sulfide. Which form is expected?",
            "the one without charge",
            ("the one with a charge", "neither"),
            "There is no oxygen there. Have it measured.",
            "Check yourself",
        ),
        Fact(
            "Nitrate is over its level, and there is a baby. What first?",
            "bottled water for the baby, today",
            ("boil the water", "a filter jug"),
            "Then the cause.",
            "Check yourself",
        ),
        Fact(
            "Only the hot water smells. Whom do you suspect?",
            "the heater's magnesium rod",
            ("the well", "the aerator"),
            "The cold water would smell too.",
            "Check yourself",
        ),
        Fact(
            "What may a bed give back when it is spent?",
            "all it holds, at once",
            ("nothing", "a little each day"),
            "So a sample tap, a meter, and a date.",
            "What holds for all five",
        ),
        Fact(
            "Does carbon in a filter jug take nitrate?",
            "no",
            ("yes", "yes, if it is new"),
            "Carbon does not take it.",
            "Common mistakes",
        ),
    ),
)

URANIUM = Problem(
    name="uranium",
    form="one-step",
    objective="Compute how near uranium and lead are to their levels.",
    level=1,
    minutes=4,
    text="A sheet says uranium {uranium} and, in the first draw, lead {lead}. The levels are 30 "
    "µg/L and 10 µg/L.",
    calculator="water_report",
    draws={
        "uranium": grid("8", "48", "1", "µg/L"),
        "lead": grid("2", "14", "0.2", "µg/L"),
    },
    parts=(
        Part(
            finds="s_U",
            ask="Which share of its level is the uranium?",
            section="Uranium",
            slips=(Slip("Turn it over: the result over the level.", "s_U = L_U / C_U"),),
        ),
        Part(
            finds="s_Pb",
            ask="Which share of its level is the lead?",
            section="Lead",
            slips=(
                Slip("Turn it over: the result over the level.", "s_Pb = L_Pb / C_Pb"),
                Slip("The level was 15 µg/L once; it is 10.", "L_Pb = 1.5 * L_Pb"),
            ),
        ),
    ),
)

NEAREST = Problem(
    name="nearest",
    form="multi-step",
    objective="Find which result is nearest to its level.",
    level=2,
    minutes=8,
    text="A sheet says arsenic {arsenic}, uranium {uranium}, and nitrate {nitrate}. The strictest "
    "levels are 5 µg/L, 30 µg/L, and 10 mg/L as N. All else on it is under a tenth of its level.",
    calculator="water_report",
    draws={
        "arsenic": grid("1.5", "7", "0.5", "µg/L"),
        "uranium": grid("9", "42", "3", "µg/L"),
        "nitrate": grid("3", "13", "0.5", "mg/L as N"),
    },
    fixed={
        "lead": "0.5 µg/L",
        "copper": "0.05 mg/L",
        "fluoride": "0.1 mg/L",
        "manganese": "0.005 mg/L",
        "sodium": "1.5 mg/L",
    },
    parts=(
        Part(
            finds="s_As",
            ask="Which share of its level is the arsenic?",
            section="Arsenic",
            slips=(Slip("That is against 10 µg/L. Take the strictest level.", "L_As = 2 * L_As"),),
        ),
        Part(
            finds="s_N",
            ask="Which share of its level is the nitrate?",
            section="Nitrate",
            slips=(Slip("Turn it over: the result over the level.", "s_N = L_N / C_N"),),
        ),
        Part(
            finds="s",
            ask="Which share has the result that is nearest to its level, or over it most?",
            section="The record",
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide what a household with an infant is told of nitrate.",
    level=3,
    minutes=8,
    text="Invented: the Quarry Road house at Alder Ledge after a wet spring, with an infant in the "
    "house. The sheet says nitrate {nitrate} and lead {lead} in the first draw. The levels are 10 "
    "mg/L as N and 10 µg/L; nitrate is 4.427 times its nitrogen.",
    calculator="water_report",
    draws={
        "nitrate": grid("20", "70", "1", "mg/L as NO3"),
        "lead": grid("2", "14", "0.5", "µg/L"),
    },
    fixed={"infant": "yes"},
    parts=(
        Part(
            finds="s_N",
            ask="Which share of its level is the nitrate?",
            section="Nitrate",
            slips=(
                Slip("The sheet means nitrate, the level nitrogen.", "s_N = 4.427 * C_N / L_N"),
                Slip("Turn it over: the result over the level.", "s_N = L_N / C_N"),
            ),
        ),
        Pick(
            finds="tell",
            ask="What is the household told today, of nitrate?",
            section="Nitrate",
            options=(
                Option("test", "It is under the level: test again each season.", "s_N < 1"),
                Option("bottle", "Bottled water for the infant, and do not boil this one."),
            ),
            because="Nitrate takes from an infant's blood the power to carry oxygen; boiling makes "
            "it stronger.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="treatment_other",
    chapter="treatment/other.md",
    title="Arsenic, uranium, nitrate, sulfide, lead",
    revision="2026-11-25",
    problems=(FACTS, URANIUM, NEAREST, FIELD),
)
