"""Problems on what the well gives."""

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
    objective="Name what a slow well gives, and when.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Which water of a well counts as stored?",
            "what stands over the pump, less what must stay over it",
            ("the whole depth of the well", "what stands under the pump"),
            "The pump reaches no other.",
            "Common mistakes",
        ),
        Fact(
            "When does a well give its full yield?",
            "at its lowest level: it comes last",
            ("from the first minute", "at rest"),
            "Inflow grows with drawdown.",
            "Common mistakes",
        ),
        Fact(
            "A static level is read too early after pumping. What comes of it?",
            "the inflow for each foot comes out too large",
            ("the inflow for each foot comes out too small", "nothing: levels even out"),
            "It is too deep, so the drawdowns come out too small.",
            "Common mistakes",
        ),
        Fact(
            "What does a pump set deeper than the fracture buy?",
            "the water of one peak",
            ("more yield, all day", "nothing at all"),
            "Below the fracture inflow does not grow.",
            "Common mistakes",
        ),
        Fact(
            "The level comes back by the same height in each period. What feeds the well?",
            "a fracture above it",
            ("the bottom of the bore", "surface water"),
            "Rising toward it would slow an inflow from below.",
            "Check yourself",
        ),
    ),
)

STORED = Problem(
    name="stored",
    form="one-step",
    objective="Compute the usable water that a well stores.",
    level=1,
    minutes=5,
    text="A bore of {casing_bore}: water at rest at {static_level}, pump at {pump_depth}, "
    "{pump_cover} of water are to stay over it.",
    calculator="well_supply",
    draws={
        "casing_bore": ("5 in", "6 in", "8 in", "10 in"),
        "static_level": grid("20", "60", "2", "ft"),
        "pump_depth": grid("120", "240", "10", "ft"),
        "pump_cover": ("10 ft", "15 ft", "20 ft"),
    },
    fixed={"fracture_depth": "400 ft"},
    parts=(
        Part(
            finds="s_m",
            ask="How far may the level fall?",
            section="What a peak and a day get",
            slips=(
                Slip("Some water must stay over the pump.", "h_p - h_s"),
                Slip("Above the level at rest there is none.", "h_p - h_k"),
            ),
        ),
        Part(
            finds="V_s",
            ask="How much usable water does that store?",
            section="What you are looking at",
            slips=(
                Slip("That takes the bore for a radius.", "D_c = 2 * D_c"),
                Slip("That takes half the bore for the bore.", "D_c = D_c / 2"),
                Slip("Gallons and cubic feet are mixed.", "V_s * gal / ft**3"),
            ),
        ),
    ),
)

PEAK = Problem(
    name="peak",
    form="multi-step",
    objective="Compute full yield, what the usual sum promises and what a peak gets.",
    level=3,
    minutes=12,
    text="A bore of {casing_bore}: water at rest at {static_level}, pump at {pump_depth}, "
    "{pump_cover} to stay over it; {well_inflow} flow in for each foot of drawdown, down to a "
    "fracture at {fracture_depth}. Pump 1 gives {well_pump}. A peak of {peak_time} wants "
    "{peak_use}; the well has come to rest. Use the chapter's calculator for the last question.",
    calculator="well_supply",
    draws={
        "static_level": grid("20", "50", "5", "ft"),
        "pump_depth": grid("120", "180", "10", "ft"),
        "well_inflow": grid("0.008", "0.03", "0.002", "gpm/ft"),
        "well_pump": grid("7", "12", "1", "gpm"),
    },
    fixed={"fracture_depth": "300 ft"},
    parts=(
        Part(
            finds="Y",
            ask="What is the full yield, at the lowest level?",
            section="Why the sum promises too much",
            slips=(Slip("Some water must stay over the pump.", "C * (h_p - h_s)"),),
        ),
        Part(
            finds="N",
            ask="What would stored water and full yield promise for the peak?",
            section="Why the sum promises too much",
            slips=(Slip("That is the stored water alone.", "V_s"),),
        ),
        Part(
            finds="peak_supply",
            ask="What does the well give in the peak?",
            section="What a peak and a day get",
            tolerance=0.01,
            slips=(Slip("That is the sum's promise. Inflow is less on the way down.", "N"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a well carries a peak, a day, or neither.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. Bore {casing_bore}, water at rest at "
    "{static_level}, pump at {pump_depth}, {pump_cover} to stay over it, {well_inflow} for each "
    "foot, fracture at {fracture_depth}, pump {well_pump}. The peak of {peak_time} wants "
    "{peak_use}, the day {daily_use}. The well has come to rest. Use the chapter's calculator.",
    calculator="well_supply",
    draws={
        "static_level": grid("20", "60", "5", "ft"),
        "well_inflow": grid("0.001", "0.009", "0.0005", "gpm/ft"),
        "peak_use": grid("80", "260", "20", "gal"),
        "daily_use": grid("150", "450", "50", "gal/day"),
    },
    fixed={"pump_depth": "140 ft", "fracture_depth": "300 ft"},
    parts=(
        Part(finds="Y", ask="What is the full yield?", section="Why the sum promises too much"),
        Part(
            finds="peak_supply",
            ask="What does the well give in the peak?",
            section="What a peak and a day get",
        ),
        Pick(
            finds="enough",
            ask="What does it carry?",
            section="What a peak and a day get",
            options=(
                Option("neither", "Not even the day.", "day_supply < daily_use"),
                Option("day", "The day, but not the peak: storage helps.", "peak_supply < V_p"),
                Option("both", "Both."),
            ),
            because="First the day, then the peak.",
        ),
    ),
)

SET = ProblemSet(
    name="well_what_it_gives",
    chapter="well/what-it-gives.md",
    title="What the well gives",
    revision="2026-11-25",
    problems=(FACTS, STORED, PEAK, FIELD),
)
