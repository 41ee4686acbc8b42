"""Problems on light and chlorine against germs."""

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
    objective="Name what light and chlorine do not do.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "E. coli is found, and the house has a lamp that works. What first?",
            "nobody drinks, everyone is told, the health department is called",
            ("a larger lamp", "a second sample next month"),
            "Then see why: flow, sleeve, lamp, alarm, and the well itself.",
            "Check yourself",
        ),
        Fact(
            "For how much contact does a bladder tank count?",
            "none",
            ("all that it holds", "half of it"),
            "Water goes in and out by one port.",
            "Common mistakes",
        ),
        Fact(
            "A blue glow is seen. What does it prove?",
            "no dose",
            ("enough light", "a clean sleeve"),
            "Change the lamp by its date.",
            "Common mistakes",
        ),
        Fact(
            "Which chlorine counts?",
            "free chlorine behind the tank",
            ("total chlorine", "what was dosed"),
            "What the water has used up kills nothing.",
            "Common mistakes",
        ),
        Fact(
            "By which flow is contact reckoned?",
            "the largest",
            ("the mean", "the smallest"),
            "Germs do not wait for the mean.",
            "Common mistakes",
        ),
    ),
)

LIGHT = Problem(
    name="light",
    form="one-step",
    objective="Compute the dose of a lamp at another flow.",
    level=1,
    minutes=4,
    text="A device gave {rated_dose} in its test at {rated_flow}, in water of {rated_uvt} "
    "transmittance. This water has {uvt}, the sleeve lets {sleeve} pass, and the lamp is as weak "
    "as it was in the test: {lamp_age} of {lamp_life}. At most {uv_flow} pass the device.",
    calculator="uv_dose",
    draws={
        "rated_flow": grid("8", "15", "0.5", "gpm"),
        "uv_flow": grid("3", "7.4", "0.1", "gpm"),
        "rated_dose": ("30 mJ/cm²", "40 mJ/cm²"),
    },
    fixed={"lamp_age": "365 days", "sleeve": "100 %", "uvt": "75 %"},
    parts=(
        Part(
            finds="D",
            ask="What is the dose at that flow?",
            section="Light",
            slips=(
                Slip("Less flow gives more light.", "D = D_r * Q_v / Q_r"),
                Slip("That is the dose of the test.", "D_r"),
            ),
        ),
    ),
)

CHLORINE = Problem(
    name="chlorine",
    form="multi-step",
    objective="Compute the contact of chlorine, and the logs of viruses it counts for.",
    level=2,
    minutes=10,
    text="A contact tank of {contact_volume}, in at one end and out at the other, counts 0.3 of "
    "its space. At most {contact_flow} pass it, with {residual} of free chlorine behind it, at "
    "{water_temperature}. There 4 log of viruses take 6 mg·min/L, and the logs go with it.",
    calculator="contact_time",
    draws={
        "contact_volume": grid("40", "100", "5", "gal"),
        "contact_flow": grid("4", "7", "0.1", "gpm"),
        "residual": grid("0.5", "1.1", "0.1", "mg/L"),
    },
    keep=lambda case: bool(case.answer and (case.answer.outputs["virus_credit"] or 4) < 3.9),
    parts=(
        Part(
            finds="t",
            ask="How long is the contact, all but the fastest tenth?",
            section="Chlorine",
            slips=(Slip("Part of the water goes straight through.", "t = V_c / Q_c"),),
        ),
        Part(
            finds="X",
            ask="What is chlorine times time?",
            section="Chlorine",
            slips=(Slip("Times the chlorine, not over it.", "X = t * mg ** 2 / L ** 2 / C_c"),),
        ),
        Part(
            finds="l_v",
            ask="How many logs of viruses does it count for?",
            section="Chlorine",
            slips=(Slip("Turn it over.", "L_v * X_v / X"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a contact tank is long enough.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. Chlorine is fed before a tank of "
    "{contact_volume}, in at one end and out at the other (0.3 of it counts). At most "
    "{contact_flow} pass; {residual} of free chlorine are left behind it, and the water uses up "
    "{demand}. The solution has {bleach_strength}. At {water_temperature}, 4 log of viruses take 6 "
    "mg·min/L.",
    calculator="contact_time",
    draws={
        "contact_volume": grid("60", "140", "10", "gal"),
        "contact_flow": grid("3", "7", "0.2", "gpm"),
        "residual": grid("0.6", "1.4", "0.2", "mg/L"),
        "demand": grid("1", "3", "0.5", "mg/L"),
    },
    parts=(
        Part(
            finds="d",
            ask="How much chlorine is dosed?",
            section="Chlorine",
            slips=(
                Slip("What the water uses up comes on top.", "C_c"),
                Slip("What must be left comes on top.", "C_d"),
            ),
        ),
        Part(
            finds="q",
            ask="How much solution is fed while it runs?",
            section="Chlorine",
            slips=(Slip("The dose is for all that the water takes.", "Q_c * C_c / S_b"),),
        ),
        Pick(
            finds="long",
            ask="Is the tank long enough for 4 log of viruses?",
            section="Chlorine",
            options=(
                Option("no", "No: more volume, a better baffled tank, or less flow.", "X < X_v"),
                Option("yes", "Yes, for viruses."),
            ),
            because="Chlorine times time is held against what 4 log take at that temperature.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="treatment_germs",
    chapter="treatment/germs.md",
    title="Germs",
    revision="2026-11-25",
    problems=(FACTS, LIGHT, CHLORINE, FIELD),
)
