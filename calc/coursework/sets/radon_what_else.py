"""Problems on what else the aerator does: pH, iron, scale."""

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
    objective="Name what pH, iron and scale tell of an aerator.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Where is the aerator's pH measured?",
            "behind the aerator and before any neutralizer",
            ("behind the neutralizer", "in a bottle at the laboratory"),
            "A neutralizer lifts it whatever the aerator does.",
            "Common mistakes",
        ),
        Fact(
            "What does a good pH say about the removal of radon?",
            "that the unit has not failed, not how good it is",
            ("that the removal is above 99 %", "nothing at all"),
            "Near its end the pH cannot tell 99 from 99.9 %.",
            "Common mistakes",
        ),
        Fact(
            "The pH behind the aerator is the same as before it. What is looked at first?",
            "blower, stones and vent",
            ("the well", "the softener"),
            "No carbon dioxide has left.",
            "Check yourself",
        ),
        Fact(
            "Which water is tested for the iron in the tank?",
            "what enters the aerator",
            ("what leaves the softener", "what leaves the tap"),
            "That is the iron that rusts there.",
            "Common mistakes",
        ),
        Fact(
            "Why does the pH rise in an aerator?",
            "carbon dioxide leaves",
            ("radon leaves", "iron dissolves"),
            "It is the acid of such water.",
            "Why the pH rises",
        ),
    ),
)

SLUDGE = Problem(
    name="rust",
    form="one-step",
    objective="Compute the rust that iron makes in a year.",
    level=2,
    minutes=5,
    text="{daily_use} of water with {raw_iron} of iron are treated. One part of iron makes 1.914 "
    "parts of dry rust; wet sludge holds {sludge_solids} of it.",
    calculator="aerator_iron",
    draws={
        "daily_use": grid("100", "300", "10", "gal/day"),
        "raw_iron": grid("0.3", "3", "0.1", "mg/L"),
        "sludge_solids": ("15 g/L", "20 g/L", "25 g/L"),
    },
    parts=(
        Part(
            finds="M_y",
            ask="How much dry rust is that in a year?",
            section="Iron",
            slips=(
                Slip("Rust is heavier than its iron: 1.914 to one.", "M_y / z"),
                Slip("Litres and gallons are mixed: a gallon is 3.785 litres.", "M_y * L / gal"),
                Slip("That is a day's.", "M_d"),
            ),
        ),
        Part(
            finds="V_y",
            ask="And how much wet sludge?",
            section="Iron",
        ),
    ),
)

CARBON = Problem(
    name="carbon",
    form="multi-step",
    objective="Compute the carbon dioxide that an aerator takes out, from two pH readings.",
    level=2,
    minutes=8,
    text="Water with an alkalinity of {alkalinity}, at {water_temperature}, enters with a pH of "
    "{entering_ph} and leaves the aerator with {treated_ph}. A step of one in pH is ten times in "
    "carbon dioxide. Use the chapter's calculator for the constants.",
    calculator="aerated_ph",
    draws={
        "alkalinity": grid("30", "80", "5", "mg/L as CaCO3"),
        "entering_ph": grid("6", "6.6", "0.1", ""),
        "treated_ph": grid("7.1", "7.6", "0.1", ""),
        "water_temperature": ("46 °F", "50 °F", "54 °F"),
    },
    parts=(
        Part(
            finds="c_r",
            ask="How much carbon dioxide enters?",
            section="Why the pH rises",
            tolerance=0.05,
            digits=2,
        ),
        Part(
            finds="c_t",
            ask="How much is left?",
            section="Why the pH rises",
            tolerance=0.05,
            digits=2,
            slips=(Slip("That is what enters.", "c_r"),),
        ),
        Part(
            finds="R_c",
            ask="Which share of it has left?",
            section="Why the pH rises",
            tolerance="0.6 %",
            slips=(Slip("That is the share that stayed.", "1 - R_c"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide how often an aerator's tank is cleaned of rust.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. {raw_iron} of iron enter with "
    "{daily_use}; pH {treated_ph} behind the aerator, {water_temperature}, {tank_water} in the "
    "tank. {settled_share} of the rust stays in it; wet sludge holds {sludge_solids}, and "
    "{sludge_room} of it may lie there. Use the chapter's calculator.",
    calculator="aerator_iron",
    draws={
        "raw_iron": grid("0.4", "3", "0.1", "mg/L"),
        "daily_use": grid("120", "240", "20", "gal/day"),
        "treated_ph": grid("7.2", "7.8", "0.1", ""),
        "sludge_room": ("1 gal", "2 gal", "3 gal"),
    },
    parts=(
        Part(
            finds="clean_after",
            ask="After how many days is the tank cleaned at the latest?",
            section="Iron",
            tolerance=0.04,
        ),
        Pick(
            finds="often",
            ask="Is once a year enough?",
            section="Iron",
            options=(
                Option("yes", "Yes.", "365 * day < clean_after"),
                Option("no", "No, but twice is.", "182 * day < clean_after"),
                Option("iron", "No, nor is twice: treat the iron first."),
            ),
            because="The latest day is held against the year and its half.",
        ),
    ),
)

SET = ProblemSet(
    name="radon_what_else",
    chapter="radon/what-else.md",
    title="What else the aerator does: pH, iron, scale",
    revision="2026-11-25",
    problems=(FACTS, SLUDGE, CARBON, FIELD),
)
