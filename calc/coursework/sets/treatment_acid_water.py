"""Problems on acid water: stone, its wash, and what it uses."""

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
    objective="Explain in which order acid water is cured.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Air runs anyway. Where does the stone go?",
            "behind the air, if any is still needed",
            ("before the air", "it makes no difference"),
            "Air drives out the acid that would use up the stone.",
            "Common mistakes",
        ),
        Fact(
            "What does a glass drawn slowly show?",
            "too high a pH",
            ("too low a pH", "the worst hour"),
            "The water had time in the stone. Open everything, then measure.",
            "Common mistakes",
        ),
        Fact(
            "A wash was set in summer. What happens in winter?",
            "cold water lifts the bed more: it may wash out",
            ("the bed is not lifted", "nothing"),
            "Cold water is thicker.",
            "Can the well wash it?",
        ),
        Fact(
            "Much magnesia was added for good measure. What comes out first?",
            "a glass of pH 9 or 10",
            ("a glass of pH 5", "rust"),
            "Water that stood over magnesia goes far up.",
            "Common mistakes",
        ),
        Fact(
            "What becomes of a bed that the well cannot lift?",
            "it packs, and the inlet pays",
            ("it washes out", "it dissolves sooner"),
            "A bed that packs takes pressure, and the flow in falls.",
            "Common mistakes",
        ),
    ),
)

WASH = Problem(
    name="wash",
    form="one-step",
    objective="Compute the flow and the water that a wash takes.",
    level=1,
    minutes=5,
    text="A bed in a tank of {tank_diameter} inside is washed with {backwash_flow} for "
    "{backwash_time}.",
    calculator="backwash",
    draws={
        "tank_diameter": ("9 in", "10 in", "12 in", "13 in", "14 in"),
        "backwash_flow": grid("5", "9", "0.1", "gpm"),
        "backwash_time": grid("7", "14", "1", "min"),
    },
    parts=(
        Part(
            finds="V_b",
            ask="How much water goes to the drain?",
            section="Can the well wash it?",
            slips=(Slip("Flow times time, not flow over time.", "Q_b / t_b * minute ** 2"),),
        ),
        Part(
            finds="v",
            ask="What is the flow for each area of the bed?",
            section="Can the well wash it?",
            slips=(
                Slip("That takes the diameter for the radius.", "D_f = 2 * D_f"),
                Slip("That takes half the diameter for the diameter.", "D_f = D_f / 2"),
            ),
        ),
    ),
)

CONTACT = Problem(
    name="contact",
    form="multi-step",
    objective="Compute how long water stays in a bed, and how fast it passes.",
    level=2,
    minutes=8,
    text="A bed {bed_depth} deep stands in a tank of {tank_diameter} inside. The largest flow "
    "through it is {service_flow}.",
    calculator="neutralizer",
    draws={
        "bed_depth": grid("24", "42", "2", "in"),
        "tank_diameter": ("9 in", "10 in", "12 in", "13 in", "14 in", "16 in"),
        "service_flow": grid("4", "8", "0.1", "gpm"),
    },
    parts=(
        Part(
            finds="V_b",
            ask="How much space does the bed take?",
            section="How long it must stay",
            slips=(
                Slip("That takes the diameter for the radius.", "D_f = 2 * D_f"),
                Slip("That takes half the diameter for the diameter.", "D_f = D_f / 2"),
            ),
        ),
        Part(
            finds="t_e",
            ask="How long is the water in that space?",
            section="How long it must stay",
            slips=(Slip("Turn it over: space over flow.", "minute ** 2 / t_e"),),
        ),
        Part(
            finds="v",
            ask="What is the flow for each area?",
            section="How long it must stay",
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a bed is large enough for the pH wanted.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. pH {raw_ph}, alkalinity {alkalinity}, "
    "calcium {calcium}, {water_temperature}; no air before the bed. {daily_use} are used; the "
    "largest flow is {service_flow}. The bed is {bed_depth} deep in a tank of {tank_diameter}, "
    "grains of {grain_size}, no magnesia, and {contact_share} of the contact counts. pH "
    "{target_ph} is wanted. Use the chapter's calculator.",
    calculator="neutralizer",
    draws={
        "raw_ph": grid("6", "6.6", "0.1", ""),
        "alkalinity": grid("25", "60", "5", "mg/L as CaCO3"),
        "service_flow": grid("2", "7", "0.2", "gpm"),
        "tank_diameter": ("10 in", "12 in", "14 in"),
    },
    parts=(
        Part(
            finds="M",
            ask="How much stone does it use in a year?",
            section="Refill",
            tolerance=0.05,
            slips=(Slip("That is a day's.", "M / 365.25"),),
        ),
        Pick(
            finds="enough",
            ask="Does the full bed reach the pH wanted at the largest flow?",
            section="How long it must stay",
            options=(
                Option("yes", "Yes.", "bed_needed < V_b"),
                Option("no", "No: a larger bed, or less flow."),
            ),
            because="The bed that gives the pH wanted is held against the one that stands there.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="treatment_acid_water",
    chapter="treatment/acid-water.md",
    title="Acid water",
    revision="2026-11-25",
    problems=(FACTS, WASH, CONTACT, FIELD),
)
