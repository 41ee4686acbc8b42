"""Problems on the sample: what the water held when it was drawn."""

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

_PAIRS = tuple(
    f"{low} pCi/L; {low + more} pCi/L"
    for low in range(4000, 16000, 500)
    for more in (100, 300, 500, 800)
)

FACTS = Recall(
    name="facts",
    form="recall",
    objective="Name what spoils a radon sample.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Why must no air touch the sample?",
            "radon leaves the water for the air",
            ("air brings radon into the water", "air makes iron fall out"),
            "A bubble of 1 mm holds next to nothing; it shows that the water met air.",
            "Check yourself",
        ),
        Fact(
            "Two bottles disagree by more than doubt explains. What do you do?",
            "draw again, and until then take the higher",
            ("take the mean", "take the lower"),
            "A loss has no opposite that evens it out.",
            "Check yourself",
        ),
        Fact(
            "What does “below detection” stand for?",
            "anything up to the least that the count finds",
            ("zero", "half of the raw water"),
            "It is no zero.",
            "Common mistakes",
        ),
        Fact(
            "Where is the raw sample drawn?",
            "at the cock by the tank, after it has run until fresh from the well",
            ("at the kitchen tap", "at the shower, hot"),
            "The kitchen's water has stood and has been aerated on its way.",
            "Common mistakes",
        ),
        Fact(
            "The laboratory has brought its result back to the draw already. What do you do?",
            "leave it so",
            ("bring it back once more", "halve it"),
            "Brought back twice is as wrong as not at all.",
            "Common mistakes",
        ),
    ),
)

BACK = Problem(
    name="back",
    form="one-step",
    objective="Compute what the water held at the draw.",
    level=2,
    minutes=4,
    text="{sample_radon}, as at the count: the results of two bottles, drawn without a bubble, "
    "counted {sample_age} after the draw. Radon's half-life is 3.82 days.",
    calculator="radon_sample",
    draws={"sample_radon": _PAIRS, "sample_age": grid("24", "84", "4", "h")},
    parts=(
        Part(
            finds="D",
            ask="By which factor do you bring them back?",
            section="Bring it back",
            slips=(
                Slip("The water held more at the draw, not less.", "1 / D"),
                Slip("Days and hours are mixed.", "2**(t_a / 24 / T_h)"),
            ),
        ),
        Part(
            finds="C_d",
            ask="What did the water hold at the draw?",
            section="Bring it back",
            slips=(
                Slip("That is as at the count.", "C_n"),
                Slip("The water held more at the draw, not less.", "C_d / D**2"),
            ),
        ),
    ),
)

COUNT = Problem(
    name="count",
    form="multi-step",
    objective="Compute radon from counts, and its plus-or-minus.",
    level=3,
    minutes=10,
    text="A vial with {count_volume} of the water gives {count_gross}, a blank "
    "{count_background}, each counted for {count_time}. One decay's worth is {count_efficiency}. "
    "The middle of the count was {count_age} after the draw. Half-life 3.82 days.",
    calculator="radon_count",
    draws={
        "count_gross": grid("60", "300", "10", "cpm"),
        "count_background": grid("14", "26", "2", "cpm"),
        "count_time": ("30 min", "40 min", "50 min", "60 min"),
        "count_age": grid("24", "72", "6", "h"),
    },
    parts=(
        Part(
            finds="D",
            ask="Which share of the radon was left at the count?",
            section="Bring it back",
            slips=(Slip("That is the factor to bring it back by.", "1 / D"),),
        ),
        Part(
            finds="C_d",
            ask="What did the water hold at the draw?",
            section="What the counter can tell",
            slips=(
                Slip("The blank is taken off.", "C_d = G / (k * V_c * D)"),
                Slip("That is as at the count.", "C_d * D"),
            ),
        ),
        Part(
            finds="U_c",
            ask="What is its plus-or-minus by counting, 19 times in 20?",
            section="What the counter can tell",
            tolerance=0.05,
            digits=2,
            slips=(Slip("That is one standard deviation.", "U_c / z"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether two bottles agree.",
    level=3,
    minutes=8,
    text="Invented: the Quarry Road house at Alder Ledge. Two bottles, {sample_radon} as at the "
    "count, each good to {lab_sure}, drawn without a bubble, counted after {sample_age}. Half-life "
    "3.82 days.",
    calculator="radon_sample",
    draws={
        "sample_radon": tuple(
            f"{low} pCi/L; {low + low * more // 100} pCi/L"
            for low in range(4000, 16000, 1000)
            for more in (2, 4, 6, 8, 18, 22, 26, 30)
        ),
        "lab_sure": ("8 %", "10 %", "12 %"),
        "sample_age": grid("36", "84", "6", "h"),
    },
    parts=(
        Part(
            finds="difference",
            ask="By how much do they differ, in per cent of their mean?",
            section="Bring it back",
            tolerance="0.6 %",
            digits=2,
        ),
        Part(
            finds="d_a",
            ask="How much of a difference does their doubt explain?",
            section="Bring it back",
            tolerance="0.4 %",
            digits=2,
            slips=(Slip("Two doubts add up by their squares.", "2 * U_l"),),
        ),
        Pick(
            finds="agree",
            ask="What now?",
            section="Bring it back",
            options=(
                Option("agree", "They agree: take the mean.", "difference < difference_allowed"),
                Option("again", "Draw again; until then take the higher."),
            ),
            because="The difference is held against what doubt explains.",
        ),
    ),
)

SET = ProblemSet(
    name="radon_sample",
    chapter="radon/sample.md",
    title="The sample: what the water held when it was drawn",
    revision="2026-11-25",
    problems=(FACTS, BACK, COUNT, FIELD),
)
