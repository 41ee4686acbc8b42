"""Problems on proving removal, and keeping it proven."""

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
    objective="Name what a pair of samples proves, and what it does not.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "How much water runs while the treated sample is drawn?",
            "the largest flow of the house",
            ("one tap's", "none: the tank has stood all night"),
            "The unit is weakest at its largest flow.",
            "Common mistakes",
        ),
        Fact(
            "The blower's gauge stands lower than when it was clean. What is it?",
            "a leak to be found",
            ("a cleaner unit", "less iron in the water"),
            "Air goes where it does not strip.",
            "Check yourself",
        ),
        Fact(
            "What besides the water is tested?",
            "the air of the room with the unit",
            ("the air in the well", "the pH of the raw water"),
            "The radon may be in the basement.",
            "Common mistakes",
        ),
        Fact(
            "When is a pair drawn, besides after cleaning?",
            "before it too",
            ("never", "while the blower is off"),
            "The dirty unit is the one people drink from.",
            "Common mistakes",
        ),
        Fact(
            "The pressure has risen evenly. Why look before the date of the straight line?",
            "dirt catches dirt",
            ("gauges drift upward", "iron grows in winter"),
            "Look in half of that time.",
            "Check yourself",
        ),
    ),
)

PAIR = Problem(
    name="pair",
    form="one-step",
    objective="Compute removal, and the removal that a target needs.",
    level=1,
    minutes=4,
    text="Raw water {raw_radon}, treated {treated_radon}, drawn within the hour. The target is "
    "{target_radon}.",
    calculator="radon_removal",
    draws={
        "raw_radon": grid("5000", "15000", "500", "pCi/L"),
        "treated_radon": grid("400", "1500", "50", "pCi/L"),
        "target_radon": ("300 pCi/L", "500 pCi/L"),
    },
    parts=(
        Part(
            finds="R",
            ask="What is the removal, in per cent?",
            section="What the pair proves",
            tolerance="0.15 %",
            slips=(
                Slip("That is the share that is left.", "C_w / C_r"),
                Slip("That is the removal that the target needs.", "R_t"),
            ),
        ),
        Part(
            finds="R_t",
            ask="Which removal does the target need?",
            section="What the pair proves",
            tolerance="0.15 %",
            slips=(Slip("That is the share that may be left.", "C_t / C_r"),),
        ),
    ),
)

SERVICE = Problem(
    name="service",
    form="multi-step",
    objective="Compute when a unit must be cleaned, by iron and by pressure.",
    level=2,
    minutes=10,
    text="Water with {iron} of iron, of which {iron_falls} falls out in the unit; {daily_use} "
    "used; {floc_allowed} of dry iron may lie there. A part of iron makes 1.914 parts of it. "
    "Cleaned {cleaned_ago} ago; the blower stood at {blower_clean} then, stands at {blower_now} "
    "today, and is cleaned at {blower_limit}.",
    calculator="aerator_service",
    draws={
        "iron": grid("0.3", "1.5", "0.1", "mg/L"),
        "daily_use": grid("120", "240", "20", "gal/day"),
        "cleaned_ago": grid("30", "60", "5", "days"),
        "blower_now": ("21 in of water", "21.5 in of water", "22 in of water"),
    },
    parts=(
        Part(
            finds="m_d",
            ask="How much dry iron settles in a day?",
            section="When to clean, when to test",
            slips=(
                Slip("Only a share of it falls out.", "m_d / a_i"),
                Slip("Litres and gallons are mixed: a gallon is 3.785 litres.", "m_d * L / gal"),
                Slip("Iron takes up oxygen and water: 1.914 to one.", "m_d / k"),
            ),
        ),
        Part(
            finds="t_i",
            ask="In how many days is it due by the iron?",
            section="When to clean, when to test",
            tolerance=0.03,
            slips=(Slip("That is counted from the cleaning.", "t_i + t_s"),),
        ),
        Part(
            finds="t_p",
            ask="In how many days by the pressure, on a straight line?",
            section="When to clean, when to test",
            slips=(Slip("That is counted from the cleaning.", "t_p + t_s"),),
        ),
    ),
    keep=lambda case: bool(case.answer and case.answer.outputs["clean_by_iron"]),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a pair of samples proves a target.",
    level=3,
    minutes=8,
    text="Invented: the Quarry Road house at Alder Ledge. Raw {raw_radon}, treated {treated_radon} "
    "give or take 40 pCi/L, drawn within the hour. The target is {target_radon}.",
    calculator="radon_removal",
    draws={
        "raw_radon": grid("8000", "24000", "500", "pCi/L"),
        "treated_radon": grid("180", "420", "2", "pCi/L"),
        "target_radon": ("300 pCi/L",),
    },
    parts=(
        Part(
            finds="R",
            ask="What is the removal, in per cent?",
            section="What the pair proves",
            tolerance="0.15 %",
            slips=(Slip("That is the share that is left.", "C_w / C_r"),),
        ),
        Part(
            finds="C_u",
            ask="What is the upper end of the treated water?",
            section="What the pair proves",
            slips=(Slip("That is its middle.", "C_w"), Slip("That is its lower end.", "C_w - U_2")),
        ),
        Pick(
            finds="proven",
            ask="Does it meet the target?",
            section="What the pair proves",
            options=(
                Option("yes", "Yes.", "C_u < C_t"),
                Option("open", "It cannot be told: draw again.", "C_w - U_2 < C_t"),
                Option("no", "No."),
            ),
            because="Both ends of the treated water are held against the target.",
        ),
    ),
)

SET = ProblemSet(
    name="radon_verify",
    chapter="radon/verify.md",
    title="Prove it, and keep it proven",
    revision="2026-11-25",
    problems=(FACTS, PAIR, SERVICE, FIELD),
)
