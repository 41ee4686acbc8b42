"""Problems on radon in the water: does it matter here?"""

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
    objective="Explain what radon in water does to the air of a house.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "What is the rule of ten thousand?",
            "an average of houses, and no house's own figure",
            ("a limit by law", "the least that any house thins it"),
            "A small, tight house with much use is far from it.",
            "The rule of ten thousand",
        ),
        Fact(
            "What is 300 pCi/L for a private well?",
            "a figure proposed for public supplies, no limit",
            ("the legal limit", "the level of a healthy well"),
            "Levels carry their kind and their day.",
            "Common mistakes",
        ),
        Fact(
            "The air holds 6 pCi/L, the water adds a fifth of it. What comes first?",
            "the ground under the house",
            ("the water", "the kitchen tap"),
            "Four fifths come from there.",
            "Check yourself",
        ),
        Fact(
            "What does a filter at the kitchen tap do about radon in the air?",
            "little: it comes from shower and laundry",
            ("all: radon is drunk", "half: the other half is bathroom"),
            "What counts is all water that runs in the house.",
            "Common mistakes",
        ),
        Fact(
            "How many Bq/m³ are one Bq/L?",
            "a thousand",
            ("one", "a hundred"),
            "Water is told by the litre, air by the cubic metre.",
            "Common mistakes",
        ),
    ),
)

STORED = Problem(
    name="stored",
    form="one-step",
    objective="Compute what decay leaves of the radon in a storage tank.",
    level=2,
    minutes=5,
    text="{storage_water} stand in a tank that mixes, {daily_use} are used; the water comes with "
    "{raw_radon}. Radon decays at 0.00755 per h.",
    calculator="radon_decay_in_storage",
    draws={
        "storage_water": grid("200", "800", "50", "gal"),
        "daily_use": grid("100", "240", "20", "gal/day"),
        "raw_radon": grid("5000", "20000", "1000", "pCi/L"),
    },
    parts=(
        Part(
            finds="t_r",
            ask="How long does the water stand, on average?",
            section="What to do with the answer",
        ),
        Part(
            finds="C_s",
            ask="What is left by decay alone?",
            section="What to do with the answer",
            slips=(Slip("That is what decay takes away.", "C_r - C_s"),),
        ),
    ),
)

ADDED = Problem(
    name="added",
    form="multi-step",
    objective="Compute what a house's water adds to its air.",
    level=2,
    minutes=8,
    text="A house holds {house_volume} of air and changes it {air_change}; radon itself decays at "
    "0.00755 per h. Its water holds {raw_radon}, {daily_use} are used, and {release} of the radon "
    "is given off indoors.",
    calculator="radon_in_air",
    draws={
        "house_volume": grid("8000", "20000", "800", "ft³"),
        "air_change": grid("0.25", "0.8", "0.05", "per h"),
        "raw_radon": grid("4000", "30000", "1000", "pCi/L"),
        "daily_use": grid("120", "240", "20", "gal/day"),
    },
    fixed={"house_air": "40 pCi/L"},
    parts=(
        Part(
            finds="N",
            ask="By how many times is the water's radon thinned?",
            section="Work it out",
            slips=(
                Slip("Only a share is given off.", "N * e"),
                Slip("Hours and days are mixed: twenty-four to one.", "N / 24"),
                Slip("Gallons and cubic feet are mixed.", "N * gal / ft**3"),
            ),
        ),
        Part(
            finds="C_x",
            ask="What does the water add to the air?",
            section="Work it out",
            slips=(Slip("That is the rule of ten thousand, not this house.", "C_r / 10000"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether water or ground comes first.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. {house_volume} of air, changed "
    "{air_change}, a long-term test of the air shows {house_air}; water of {raw_radon}, "
    "{daily_use} used, {release} of it given off; radon decays at 0.00755 per h.",
    calculator="radon_in_air",
    draws={
        "house_volume": grid("8000", "16000", "800", "ft³"),
        "air_change": grid("0.3", "0.6", "0.05", "per h"),
        "house_air": grid("3", "8", "0.5", "pCi/L"),
        "raw_radon": grid("5000", "40000", "1000", "pCi/L"),
        "daily_use": ("120 gal/day", "150 gal/day", "180 gal/day"),
    },
    parts=(
        Part(
            finds="C_x",
            ask="What does the water add to the air?",
            section="Work it out",
            slips=(Slip("That is the rule of ten thousand, not this house.", "C_r / 10000"),),
        ),
        Part(
            finds="C_k",
            ask="Which water would add just {air_budget}?",
            section="Work it out",
            slips=(Slip("That is the rule of ten thousand.", "C_b * 10000"),),
        ),
        Pick(
            finds="first",
            ask="Which brings more into the air?",
            section="Worked case",
            options=(
                Option("ground", "The ground: see to it first.", "air_share < 0.5"),
                Option("water", "The water."),
            ),
            because="What the water adds is held against half of what the test found.",
        ),
    ),
)

SET = ProblemSet(
    name="radon_does_it_matter",
    chapter="radon/does-it-matter.md",
    title="Radon in the water: does it matter here?",
    revision="2026-11-25",
    problems=(FACTS, STORED, ADDED, FIELD),
)
