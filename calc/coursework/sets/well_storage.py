"""Problems on storage."""

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
    objective="Name what storage can do for a slow well, and what it cannot.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "A well fails the day. What does a bigger tank do?",
            "it fails later, with older water",
            ("it makes the day come right", "it makes the well give more"),
            "Storage moves water from one hour to another. It makes none.",
            "Common mistakes",
        ),
        Fact(
            "What is storage as a treatment for radon?",
            "too slow: it would take weeks",
            ("as good as aeration", "enough after a day"),
            "Radon halves in 3.8 days.",
            "Common mistakes",
        ),
        Fact(
            "What is usable water?",
            "what stands between overflow and the low-level cut-out",
            ("the tank's nominal size", "what stands under the cut-out"),
            "A third may be lost at top and bottom.",
            "Common mistakes",
        ),
        Fact(
            "Who enters a storage tank to clean it?",
            "nobody: from outside, or people who do that for a living",
            ("the owner, with the lid open", "two people, one of them holding a rope"),
            "The air in it may kill.",
            "Common mistakes",
        ),
        Fact(
            "Two peaks follow each other. How is the tank sized?",
            "over both: the second meets a tank that is not full",
            ("by the larger of the two", "by the first"),
            "Follow the water through the day.",
            "Common mistakes",
        ),
    ),
)

TURNOVER = Problem(
    name="turnover",
    form="one-step",
    objective="Compute how long a tank takes to fill, and how old its water is.",
    level=1,
    minutes=4,
    text="A tank has {tank_usable} usable and {tank_dead} under its cut-out. {tank_supply} flow in "
    "while there is room; the house uses {daily_use}.",
    calculator="storage_tank",
    draws={
        "tank_usable": grid("100", "500", "25", "gal"),
        "tank_dead": grid("30", "80", "10", "gal"),
        "tank_supply": grid("0.3", "1", "0.05", "gpm"),
        "daily_use": grid("100", "240", "20", "gal/day"),
    },
    parts=(
        Part(
            finds="t_f",
            ask="How long does it take to fill from the cut-out, with nothing drawn?",
            section="How large: the mass curve",
            slips=(
                Slip("What stands under the cut-out is there already.", "(V_u + V_x) / S"),
                Slip("Minutes and hours are mixed: sixty to one.", "t_f / 60"),
            ),
        ),
        Part(
            finds="t_s",
            ask="How long does water stand in it, on average?",
            section="How old: turnover",
            slips=(Slip("What stands under the cut-out ages too.", "V_u / Q_u"),),
        ),
    ),
)

PEAK = Problem(
    name="peak",
    form="multi-step",
    objective="Compute the storage that a peak takes.",
    level=2,
    minutes=8,
    text="The busiest day draws {stretch_flows} for {stretch_times}, one after the other, and "
    "nothing else. {tank_supply} flow into the tank while there is room. It has {tank_usable} "
    "usable.",
    calculator="storage_tank",
    draws={
        "stretch_flows": tuple(
            f"{first / 10:g} gpm; 0.1 gpm; {second / 10:g} gpm"
            for first in range(20, 62, 2)
            for second in (8, 12, 16)
        ),
        "stretch_times": tuple(f"{length} min; 480 min; 30 min" for length in (20, 25, 30, 35, 40)),
        "tank_supply": grid("0.3", "0.6", "0.05", "gpm"),
        "tank_usable": grid("200", "400", "50", "gal"),
    },
    parts=(
        Part(
            finds="V_n",
            ask="How much usable storage does the day need?",
            section="How large: the mass curve",
            slips=(
                Slip("Water flows in all the while.", "V_n = K_0 + D_x * t_x"),
                Slip("That is the whole day. Only the stretch that empties it counts.", "V_d"),
            ),
        ),
        Part(
            finds="V_s",
            ask="What is to spare in this tank?",
            section="How large: the mass curve",
            tolerance="4 gal",
        ),
        Part(
            finds="M",
            ask="By how much does the day bring more than is drawn?",
            section="How large: the mass curve",
            tolerance="10 gal",
            slips=(Slip("That is what the day brings.", "S * t_d"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a tank, or a well, is too small for a house.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. The busiest day draws {stretch_flows} "
    "for {stretch_times}, one after the other. {tank_supply} flow into a tank of {tank_usable} "
    "usable.",
    calculator="storage_tank",
    draws={
        "stretch_flows": tuple(
            f"{first / 10:g} gpm; 0.2 gpm; {second / 10:g} gpm"
            for first in range(20, 72, 4)
            for second in (10, 15, 20)
        ),
        "stretch_times": tuple(f"{length} min; 600 min; 60 min" for length in (20, 30, 40)),
        "tank_supply": grid("0.1", "0.4", "0.02", "gpm"),
        "tank_usable": grid("50", "200", "25", "gal"),
    },
    parts=(
        Part(
            finds="day_drawn",
            ask="How much does that day draw?",
            section="How large: the mass curve",
            slips=(Slip("That is what the day brings.", "S * t_d"),),
        ),
        Pick(
            finds="small",
            ask="What is too small?",
            section="How large: the mass curve",
            options=(
                Option("well", "The supply: a day draws more than it brings.", "S * t_d < V_d"),
                Option("tank", "The tank: the supply carries the day.", "V_u < storage_needed"),
                Option("none", "Neither."),
            ),
            because="First the day, then its hours.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="well_storage",
    chapter="well/storage.md",
    title="Storage",
    revision="2026-11-25",
    problems=(FACTS, TURNOVER, PEAK, FIELD),
)
