"""Problems on the time after an outage."""

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
    objective="Name what must happen before treated water is drawn again.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "The blower stood for a night. What did standing do to the radon?",
            "it parked some in the tank's air",
            ("it removed it", "it turned it into lead, all of it"),
            "It does not go while no air moves.",
            "Common mistakes",
        ),
        Fact(
            "How do you see whether the blower bubbles?",
            "by its gauge",
            ("by opening the lid", "by putting an ear to the vent"),
            "The air over the water is the one to keep out of.",
            "Common mistakes",
        ),
        Fact(
            "A glass is drawn to try. Where did its water come from?",
            "the house pressure tank, which the blower does not reach",
            ("the open tank", "the well"),
            "Flush it.",
            "Common mistakes",
        ),
        Fact(
            "The breaker is reset and the blower runs. What is left to do?",
            "find the cause, and the switch that failed",
            ("nothing", "raise the air"),
            "It will happen again.",
            "Common mistakes",
        ),
        Fact(
            "The tank holds twice the water. How long is the wait?",
            "twice as long",
            ("the same", "four times as long"),
            "The same air has twice the work.",
            "Check yourself",
        ),
    ),
)

_UNIT = (
    "The tank holds {tank_water} of water and {tank_air} of air over it; {aerator_air} bubble "
    "through, of {bubble_size} through {bubble_depth}, their skins pass {bubble_share}; water of "
    "{water_temperature}, the blower's air holds {air_radon}. Radon {raw_radon}, target "
    "{target_radon}."
)

FIRST = Problem(
    name="rest",
    form="one-step",
    objective="Compute what the air of a standing tank comes to hold.",
    level=2,
    minutes=5,
    text="Raw water of {raw_radon} stood in the tank: {tank_water}, with {tank_air} of air over "
    "it, at {water_temperature}. At rest air holds 2.86 times what as much water holds.",
    calculator="re_aeration",
    draws={
        "raw_radon": grid("5000", "25000", "500", "pCi/L"),
        "tank_water": grid("30", "80", "5", "gal"),
        "tank_air": grid("10", "30", "5", "gal"),
    },
    parts=(
        Part(
            finds="C_m",
            ask="What would the air hold if raw water kept running through?",
            section="What happens while the air is off",
            slips=(Slip("At rest there is more in air than in water.", "C_r / H"),),
        ),
        Part(
            finds="C_s",
            ask="What does it hold over one filling that stood?",
            section="What happens while the air is off",
            slips=(
                Slip("One filling has only so much to give.", "C_m"),
                Slip("Water over air, not air over water.", "C_s = C_m / (1 + H * V_w / V_a)"),
            ),
        ),
    ),
)

WAIT = Problem(
    name="wait",
    form="multi-step",
    objective="Compute how long a unit must run before water may be drawn.",
    level=3,
    minutes=10,
    text=_UNIT
    + " Use the chapter's calculator for the solubility and for how full the bubbles leave.",
    calculator="re_aeration",
    draws={
        "tank_water": grid("30", "80", "5", "gal"),
        "aerator_air": grid("8", "20", "1", "cfm"),
        "raw_radon": grid("5000", "25000", "1000", "pCi/L"),
        "target_radon": ("300 pCi/L", "500 pCi/L", "1000 pCi/L"),
    },
    parts=(
        Part(
            finds="t_e",
            ask="In what time does the radon fall to 1/e, 37 %?",
            section="How long it takes",
            tolerance=0.03,
            slips=(Slip("Gallons and cubic feet are mixed.", "t_e * ft**3 / gal"),),
        ),
        Part(
            finds="t_h",
            ask="In what time does half of it leave?",
            section="How long it takes",
            tolerance=0.03,
            slips=(Slip("That is the time to 37 %.", "t_e"),),
        ),
        Part(
            finds="t_w",
            ask="How long is the wait?",
            section="How long it takes",
            tolerance=0.03,
            slips=(Slip("Count by e, not by tens.", "t_w / 2.3026"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide when water may be drawn after an outage.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. The blower stood over night and runs "
    "again. " + _UNIT + " The owner waited ten minutes. Use the chapter's calculator.",
    calculator="re_aeration",
    draws={
        "tank_water": grid("30", "100", "5", "gal"),
        "aerator_air": grid("6", "20", "1", "cfm"),
        "raw_radon": grid("5000", "25000", "1000", "pCi/L"),
        "target_radon": ("300 pCi/L", "500 pCi/L", "1000 pCi/L"),
    },
    parts=(
        Part(
            finds="wait",
            ask="How long is the wait at least?",
            section="How long it takes",
            tolerance=0.03,
        ),
        Part(
            finds="stiff_wait",
            ask="And if the bubbles' skins are stiff?",
            section="How long it takes",
            tolerance=0.03,
            slips=(Slip("That is with skins as entered.", "wait"),),
        ),
        Pick(
            finds="enough",
            ask="Were ten minutes enough?",
            section="Bring it back",
            options=(
                Option("yes", "Yes, with stiff skins too.", "stiff_wait < 10 * minute"),
                Option("maybe", "Only if the skins are not stiff: wait on.", "wait < 10 * minute"),
                Option("no", "No."),
            ),
            because="Both waits are held against ten minutes; the longer one is sure.",
        ),
    ),
)

SET = ProblemSet(
    name="radon_after_an_outage",
    chapter="radon/after-an-outage.md",
    title="After an outage: when the water may be drawn again",
    revision="2026-11-25",
    problems=(FACTS, FIRST, WAIT, FIELD),
)
