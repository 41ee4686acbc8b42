"""Problems on hardness and softeners."""

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
    objective="Name what a softener takes, gives and cannot do.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Salt is turned up, and hardness still comes through. What is looked at?",
            "the resin: rust in it",
            ("the brand of the salt", "the well's level"),
            "Salt does not take rust out.",
            "Common mistakes",
        ),
        Fact(
            "What does shock chlorine do to a softener?",
            "it eats the resin: bypass it",
            ("it cleans the resin", "nothing"),
            "Bypass it before the well is disinfected.",
            "Common mistakes",
        ),
        Fact(
            "Soft for 3 days where it was 7, salt in the tank. What comes first?",
            "whether it draws brine",
            ("a larger softener", "more salt each time"),
            "Then how much water the house uses now, then iron on the resin.",
            "Check yourself",
        ),
        Fact(
            "Why is sodium not counted from the hardness to size by?",
            "most of what is added for iron is a price for fouling",
            ("sodium comes from iron", "it is counted from it"),
            "Only charges that leave bring sodium.",
            "Check yourself",
        ),
        Fact(
            "A softener stands behind a neutralizer. By which hardness is it sized?",
            "that behind the neutralizer",
            ("the well's", "half of the well's"),
            "Stone that dissolves is hardness.",
            "Common mistakes",
        ),
    ),
)

SIZE = Problem(
    name="size",
    form="one-step",
    objective="Compute the hardness that a softener is sized by.",
    level=1,
    minutes=4,
    text="{entering_hardness} enter a softener, with {raw_iron} of dissolved iron and {manganese} "
    "of manganese. Those two count {hardness_for_iron}; 1 gpg is 17.1 mg/L.",
    calculator="softener",
    draws={
        "entering_hardness": grid("6", "18", "0.5", "gpg"),
        "raw_iron": grid("0.6", "2", "0.1", "mg/L"),
        "manganese": ("0.1 mg/L", "0.2 mg/L", "0.3 mg/L"),
    },
    parts=(
        Part(
            finds="H_c",
            ask="By which hardness is it sized?",
            section="Hardness to size by",
            slips=(
                Slip("Iron and manganese count three grains for each.", "H_e"),
                Slip("Iron is added, not taken away.", "H_c = H_e - w * (F + C_Mn)"),
            ),
        ),
    ),
)

DAYS = Problem(
    name="days",
    form="multi-step",
    objective="Compute how long a softener lasts, and what its salt buys.",
    level=2,
    minutes=10,
    text="Water of {entering_hardness}, no iron and no manganese. The house uses {daily_use}. "
    "There is {resin_volume} of resin, which with {salt_dose} of salt (sodium chloride) takes "
    "20,000 grains for each cubic foot. Days of use kept back: {reserve_days}.",
    calculator="softener",
    draws={
        "entering_hardness": grid("8", "20", "0.5", "gpg"),
        "daily_use": grid("120", "240", "10", "gal/day"),
        "resin_volume": ("1 ft³", "1.5 ft³", "2 ft³"),
    },
    fixed={"raw_iron": "0 mg/L", "manganese": "0 mg/L", "salt_dose": "6 lb/ft³"},
    parts=(
        Part(
            finds="M_d",
            ask="How much hardness comes in a day, in grains?",
            section="Days, reserve, calendar",
        ),
        Part(
            finds="t_l",
            ask="How long does the resin last, the reserve kept?",
            section="Days, reserve, calendar",
            slips=(Slip("A day's use is kept back.", "B / M_d * day"),),
        ),
        Part(
            finds="m_s",
            ask="How much salt does it take each time?",
            section="What salt buys",
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a household must be told of sodium.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. {entering_hardness} of hardness and "
    "{sodium} of sodium enter a softener run with sodium chloride; no iron, no manganese. Each "
    "mg/L of hardness brings 0.459 mg/L of sodium. Somebody there eats without salt; the advice "
    "for such a diet is 20 mg/L at most.",
    calculator="softener",
    draws={
        "entering_hardness": grid("14", "50", "1", "mg/L as CaCO3"),
        "sodium": grid("3", "14", "0.5", "mg/L"),
    },
    fixed={"raw_iron": "0 mg/L", "manganese": "0 mg/L"},
    parts=(
        Part(
            finds="a",
            ask="How much sodium does the softener add?",
            section="Sodium in the glass",
            slips=(Slip("That is hardness, not sodium.", "X"),),
        ),
        Part(
            finds="C_a",
            ask="How much is in the water behind it?",
            section="Sodium in the glass",
            slips=(Slip("The water had sodium before.", "a"),),
        ),
        Pick(
            finds="tell",
            ask="What is said to the household?",
            section="Sodium in the glass",
            options=(
                Option("under", "It is under the advice.", "C_a < 20 * mg / L"),
                Option("over", "It is over the advice: a hard tap, and a doctor's word."),
            ),
            because="The advice is for people held to a diet poor in salt.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="treatment_hardness",
    chapter="treatment/hardness.md",
    title="Hardness",
    revision="2026-11-25",
    problems=(FACTS, SIZE, DAYS, FIELD),
)
