"""Problems on aeration: how much radon a unit takes out."""

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
    objective="Name what an aerator's removal rests on.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "For which flow is an aerator designed?",
            "the largest that runs through it",
            ("the average of the day", "the flow at night"),
            "It fails in the shower hour.",
            "Common mistakes",
        ),
        Fact(
            "What makes a second stage?",
            "a wall between two basins",
            ("a second air stone in the basin", "a second blower"),
            "Stones in one basin stir one basin.",
            "Common mistakes",
        ),
        Fact(
            "For what is the flow on a blower's label?",
            "for free air",
            ("for air under a foot of water", "for air through the longest vent allowed"),
            "Under water and through a vent it gives less.",
            "Common mistakes",
        ),
        Fact(
            "Does warm or cold water let go of radon more easily?",
            "warm water",
            ("cold water", "both alike"),
            "Radon is less soluble in warm water.",
            "Check yourself",
        ),
        Fact(
            "What do coarse bubbles from a torn stone do?",
            "they carry off little, however many they are",
            ("they carry off more, because they are larger", "they stay in the water longer"),
            "The skin counts, and time to fill.",
            "Common mistakes",
        ),
    ),
)

RATIO = Problem(
    name="ratio",
    form="one-step",
    objective="Compute the air for each part of water, and the removal of a unit.",
    level=1,
    minutes=4,
    text="{aerator_flow} of water and {aerator_air} of air go through an aerator.",
    calculator="aeration_removal",
    draws={
        "aerator_flow": grid("3", "8", "0.2", "gpm"),
        "aerator_air": grid("8", "40", "1", "cfm"),
    },
    parts=(
        Part(
            finds="A",
            ask="How many parts of air is that for each part of water?",
            section="What the unit reaches",
            slips=(
                Slip(
                    "Gallons and cubic feet are mixed: a cubic foot is 7.48 gallons.",
                    "A * gal / ft**3",
                ),
                Slip("Air over water, not water over air.", "1 / A"),
                Slip("7.48 is turned over.", "A * (gal / ft**3)**2"),
            ),
        ),
    ),
)

LEFT = Problem(
    name="left",
    form="multi-step",
    objective="Compute what an aerator of several basins leaves.",
    level=3,
    minutes=12,
    text="Water of {raw_radon} runs through {aerator_stages} mixed basins in line, each with its "
    "own air, in all {aerator_flow} of water and {aerator_air} of air. Water {water_temperature}; "
    "bubbles of {bubble_size} rise through {bubble_depth}, their skins pass {bubble_share} of "
    "what clean ones do; the blower's air holds {air_radon}. Use the chapter's calculator for the "
    "solubility and for how full the bubbles leave.",
    calculator="aeration_removal",
    draws={
        "raw_radon": grid("10000", "30000", "1000", "pCi/L"),
        "aerator_stages": ("2", "3", "4"),
        "aerator_flow": grid("4", "7", "0.5", "gpm"),
        "aerator_air": grid("10", "20", "2", "cfm"),
    },
    parts=(
        Part(
            finds="S",
            ask="What is the stripping factor: the air for each part of water, times the radon in "
            "air over that in water at rest?",
            section="What the unit reaches",
            tolerance=0.03,
            slips=(Slip("That is the air for each part of water alone.", "A"),),
        ),
        Part(
            finds="y",
            ask="Which share of the radon is left?",
            section="What the unit reaches",
            tolerance=0.05,
            slips=(
                Slip("That is one basin with all the air.", "1 / (1 + S * f)"),
                Slip("That is the share taken out.", "1 - y"),
            ),
        ),
        Part(
            finds="C_w",
            ask="What does it leave?",
            section="What the unit reaches",
            tolerance=0.05,
            slips=(Slip("That is what it takes out.", "C_r - C_w"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a unit reaches its target, clean and fouled.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. Raw water {raw_radon}, target "
    "{target_radon}; {aerator_stages} mixed basins, {aerator_flow}, {aerator_air}; water "
    "{water_temperature}, bubbles {bubble_size} through {bubble_depth}, skins {bubble_share}, "
    "blower's air {air_radon}. Use the chapter's calculator.",
    calculator="aeration_removal",
    draws={
        "raw_radon": grid("3000", "20000", "1000", "pCi/L"),
        "target_radon": ("300 pCi/L", "1000 pCi/L", "2000 pCi/L"),
        "aerator_stages": ("2", "3", "4"),
        "aerator_air": grid("10", "24", "2", "cfm"),
        "aerator_flow": ("4 gpm", "5 gpm", "6 gpm"),
    },
    parts=(
        Part(
            finds="treated_radon",
            ask="What does the clean unit leave?",
            section="What the unit reaches",
            tolerance=0.03,
            slips=(Slip("That is the fouled unit.", "fouled_radon"),),
        ),
        Part(
            finds="largest_flow",
            ask="What is the largest flow that keeps the target?",
            section="What the unit reaches",
            tolerance=0.03,
        ),
        Pick(
            finds="reaches",
            ask="Does it reach its target?",
            section="What the unit reaches",
            options=(
                Option("always", "Yes, fouled too.", "fouled_radon < C_t"),
                Option("clean", "Only while it is clean.", "treated_radon < C_t"),
                Option("never", "No, not even clean."),
            ),
            because="People drink from the fouled unit most of the time.",
        ),
    ),
)

SET = ProblemSet(
    name="radon_aeration",
    chapter="radon/aeration.md",
    title="Aeration: how much radon a unit takes out",
    revision="2026-11-25",
    problems=(FACTS, RATIO, LEFT, FIELD),
)
