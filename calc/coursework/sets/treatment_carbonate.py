"""Problems on carbon dioxide, chalk and pH."""

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
    objective="Explain what pH, alkalinity and the index tell.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Two waters of pH 6.3: alkalinity 40 and 120. Which needs more stone?",
            "the second: it holds three times the carbon dioxide",
            ("the first: it is softer", "neither: the pH is the same"),
            "At one pH the carbon dioxide goes with the alkalinity.",
            "Check yourself",
        ),
        Fact(
            "Why can a bed of calcite not overdose?",
            "calcite stops dissolving when the index is 0",
            ("it dissolves too slowly", "the water is too cold"),
            "At rest with calcite nothing more goes in.",
            "Check yourself",
        ),
        Fact(
            "What does the index say of copper?",
            "nothing",
            ("under 0 it dissolves", "over 0 it is safe"),
            "It is an index of chalk.",
            "Common mistakes",
        ),
        Fact(
            "What does pH without alkalinity tell?",
            "which way, not how much",
            ("how much stone", "how much copper"),
            "Both are needed for the carbon dioxide.",
            "Common mistakes",
        ),
        Fact(
            "Hardness is typed in as calcium. What follows?",
            "calcium is overstated, 2.5 times and more",
            ("the pH falls", "nothing: they are the same"),
            "Divide hardness by 2.5, and know that magnesium is in it.",
            "Common mistakes",
        ),
    ),
)

BOTTLE = Problem(
    name="bottle",
    form="one-step",
    objective="Compute how much of its gas a sample has lost.",
    level=1,
    minutes=4,
    text="At the well the pH is {raw_ph}, on the sheet {lab_ph}. The alkalinity is {alkalinity} "
    "both times.",
    calculator="field_ph",
    draws={
        "raw_ph": grid("5.8", "6.5", "0.1", ""),
        "lab_ph": grid("6.6", "7.4", "0.1", ""),
        "alkalinity": grid("20", "130", "5", "mg/L as CaCO3"),
    },
    parts=(
        Part(
            finds="n",
            ask="How many times the sheet's carbon dioxide does the well's water hold?",
            section="The bottle lies",
            tolerance=0.05,
            slips=(Slip("pH is a logarithm: ten to the difference.", "pH_l / pH_w"),),
        ),
    ),
)

SHORTCUT = Problem(
    name="shortcut",
    form="multi-step",
    objective="Compute Langelier's index by the shortcut.",
    level=2,
    minutes=10,
    text="pH {raw_ph}, alkalinity {alkalinity}, calcium {calcium}, {solids} of dissolved solids, "
    "{water_temperature}. pH of rest = 9.3 + A + B − C − D, with A = (log solids − 1) / 10, "
    "B = 34.55 − 13.12 log (°C + 273.15), C = log (2.497 × calcium) − 0.4, D = log alkalinity; "
    "logarithms to the base of ten, figures in mg/L.",
    calculator="carbonate",
    draws={
        "raw_ph": grid("7", "7.9", "0.1", ""),
        "alkalinity": grid("60", "200", "10", "mg/L as CaCO3"),
        "calcium": grid("20", "70", "5", "mg/L"),
        "solids": ("160 mg/L", "220 mg/L", "300 mg/L"),
    },
    parts=(
        Part(
            finds="pH_s",
            ask="What is the pH of rest?",
            section="The shortcut, for class only",
            tolerance="0.05",
            digits=2,
            slips=(
                Slip("C takes calcium as calcium carbonate: times 2.497.", "C = C - 0.3974"),
                Slip("A and B are added, C and D taken away.", "pH_s = 9.3 - A - B + C + D"),
            ),
        ),
        Part(
            finds="L_I",
            ask="And Langelier's index? Give its sign.",
            section="The shortcut, for class only",
            tolerance="0.07",
            digits=1,
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether an aerator will lay chalk.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge has a new well. pH {raw_ph}, alkalinity "
    "{alkalinity}, calcium {calcium}, {solids} of solids, {water_temperature}; the blower takes "
    "air with {air_co2} of carbon dioxide. Use the chapter's calculator.",
    calculator="carbonate",
    draws={
        "raw_ph": grid("6.7", "7.4", "0.1", ""),
        "alkalinity": grid("40", "200", "10", "mg/L as CaCO3"),
        "calcium": grid("10", "70", "5", "mg/L"),
    },
    fixed={"solids": "260 mg/L"},
    parts=(
        Part(
            finds="c",
            ask="How much carbon dioxide does it hold?",
            section="What you are looking at",
            tolerance=0.05,
            slips=(Slip("A step of pH the wrong way: ten times.", "c = b * 10 ** (pH_w - p_1)"),),
        ),
        Pick(
            finds="chalk",
            ask="Will the water lay chalk once it is at rest with the blower's air?",
            section="What air does",
            options=(
                Option("no", "No: it still dissolves chalk.", "vented_index < 0"),
                Option("yes", "Yes, in the aerator and the tank."),
            ),
            because="Air takes the carbon dioxide that kept the chalk dissolved.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="treatment_carbonate",
    chapter="treatment/carbonate.md",
    title="Carbon dioxide, chalk and pH",
    revision="2026-11-25",
    problems=(FACTS, BOTTLE, SHORTCUT, FIELD),
)
