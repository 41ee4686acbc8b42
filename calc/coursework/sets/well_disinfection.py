"""Problems on disinfection."""

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
    objective="Name what makes disinfection of a well work, and what makes it dangerous.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Which water of a well is dosed?",
            "what stands in it, from its level at rest to its bottom",
            ("its whole depth", "what stands over the pump"),
            "The whole depth gives far too much.",
            "Common mistakes",
        ),
        Fact(
            "Why is no acid poured after bleach?",
            "it sets free a poison gas",
            ("it spoils the smell", "it eats the casing"),
            "Vinegar is an acid too.",
            "Common mistakes",
        ),
        Fact(
            "What is done with a carbon filter?",
            "it is taken out of the line, or bypassed",
            ("it is dosed like a pipe", "it stays: it lets chlorine pass"),
            "It eats the chlorine, and the taps after it never see any.",
            "Common mistakes",
        ),
        Fact(
            "Why does the plumbing's dose go into the well?",
            "the plumbing's water is drawn from the well",
            ("pipes cannot be opened", "the well is dirtier"),
            "Fresh water follows what is drawn.",
            "Check yourself",
        ),
        Fact(
            "A well needs disinfecting every year. What does it need?",
            "mending",
            ("a double dose", "a stronger bleach"),
            "Germs come in somewhere.",
            "Common mistakes",
        ),
    ),
)

WELL = Problem(
    name="well",
    form="one-step",
    objective="Compute the water that stands in a well.",
    level=1,
    minutes=5,
    text="A bore of {casing_bore} is {well_depth} deep, its water stands at {static_level}. "
    "{house_pipe} of pipe, {house_pipe_bore} inside, and {closed_tanks} in tanks and heater belong "
    "to it.",
    calculator="disinfection",
    draws={
        "casing_bore": ("4 in", "5 in", "6 in", "8 in"),
        "well_depth": grid("120", "320", "10", "ft"),
        "static_level": grid("20", "60", "5", "ft"),
        "closed_tanks": ("40 gal", "60 gal", "80 gal"),
    },
    parts=(
        Part(
            finds="V_c",
            ask="How much water stands in the well?",
            section="How much",
            slips=(
                Slip("That takes the bore for a radius.", "D_c = 2 * D_c"),
                Slip("That counts the whole depth, not the water's.", "h_s = 0 * h_s"),
                Slip("Gallons and cubic feet are mixed.", "V_c * gal / ft**3"),
            ),
        ),
        Part(
            finds="V_p",
            ask="How much stands in the plumbing?",
            section="How much",
            slips=(
                Slip("The tanks and the heater are missing.", "V_l"),
                Slip("That takes the bore for a radius.", "d_p = 2 * d_p"),
            ),
        ),
    ),
)

DOSE = Problem(
    name="dose",
    form="multi-step",
    objective="Compute the bleach that a well and its plumbing take.",
    level=2,
    minutes=10,
    text="A bore of {casing_bore}, {well_depth} deep, water at {static_level}; {house_pipe} of "
    "pipe of {house_pipe_bore}, {closed_tanks} in tanks. {chlorine_level} are wanted; the bleach "
    "has {shock_strength} of available chlorine, a share of weight over volume: 1 % is 10 grams a "
    "litre.",
    calculator="disinfection",
    draws={
        "casing_bore": ("4 in", "5 in", "6 in"),
        "well_depth": grid("120", "320", "20", "ft"),
        "static_level": grid("20", "60", "5", "ft"),
        "chlorine_level": ("50 mg/L", "100 mg/L", "150 mg/L"),
        "shock_strength": ("5.25 %", "6 %", "7.5 %", "8.25 %"),
    },
    parts=(
        Part(
            finds="V_w",
            ask="How much water is dosed?",
            section="How much",
            slips=(
                Slip("The plumbing belongs to it.", "V_c"),
                Slip("That counts the whole depth, not the water's.", "h_s = 0 * h_s"),
            ),
        ),
        Part(
            finds="X_w",
            ask="How much bleach is poured?",
            section="How much",
            tolerance=0.03,
            slips=(
                Slip("That takes the bleach for pure chlorine.", "X_w * p"),
                Slip("The plumbing belongs to it.", "V_w = V_c"),
            ),
        ),
        Part(
            finds="C_1",
            ask="Which level stands in the well before it is drawn to the taps?",
            section="How much",
            tolerance=0.03,
            slips=(Slip("That is the level when all has been drawn through.", "C"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether chlorine at a pH still kills.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. Bore {casing_bore}, {well_depth} deep, "
    "water at {static_level}; {house_pipe} of pipe of {house_pipe_bore}, {closed_tanks} in tanks; "
    "{chlorine_level} wanted, bleach of {shock_strength}. With the chlorine in it the water has a "
    "pH of {chlorinated_ph} at {water_now}. The chapter's calculator may be used.",
    calculator="disinfection",
    draws={
        "well_depth": grid("120", "320", "20", "ft"),
        "static_level": grid("20", "60", "10", "ft"),
        "chlorinated_ph": grid("6.8", "8.8", "0.1", ""),
        "shock_strength": ("5.25 %", "6 %", "8.25 %"),
    },
    parts=(
        Part(
            finds="X_w",
            ask="How much bleach is poured?",
            section="How much",
            tolerance=0.03,
            slips=(Slip("The plumbing belongs to it.", "V_w = V_c"),),
        ),
        Part(
            finds="f",
            ask="Which share of the chlorine is in the form that kills well?",
            section="pH matters more than a second jug",
            tolerance="1.5 %",
            digits=2,
            slips=(Slip("That is the share in the weak form.", "1 - f"),),
        ),
        Pick(
            finds="half",
            ask="Is half of it or more in that form?",
            section="pH matters more than a second jug",
            options=(
                Option("no", "No. Nor is acid added: that sets free a poison gas.", "f < 0.5"),
                Option("yes", "Yes."),
            ),
            because="Half of it kills well at the pH that the temperature sets.",
        ),
    ),
)

SET = ProblemSet(
    name="well_disinfection",
    chapter="well/disinfection.md",
    title="Disinfection",
    revision="2026-11-25",
    problems=(FACTS, WELL, DOSE, FIELD),
)
