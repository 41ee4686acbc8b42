"""Problems on the blower and the vent."""

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
    objective="Name what keeps the air of an aerator out of the house.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "What becomes of the radon that an aerator takes out of the water?",
            "it leaves with the air, through the vent",
            ("it decays in the stones within minutes", "it stays in the filter of the blower"),
            "An aerator destroys nothing; it moves radon from the water into a pipe.",
            "What you are looking at",
        ),
        Fact(
            "A blower pushes air into the tank. Which way does a leak of the vent blow?",
            "outward, into the room",
            ("inward, out of the room", "neither way: the vent has no pressure"),
            "A blower that pushes puts tank and vent under pressure.",
            "What you are looking at",
        ),
        Fact(
            "Which way does a vent slope?",
            "all the way up, or all the way back to the tank",
            ("with one sag, as a trap for water", "level, so that ice cannot slide"),
            "Water in a sag is a plug; it costs as much pressure as it is deep.",
            "Water and ice in the vent",
        ),
        Fact(
            "The gauge at the blower stands over the clean figure. What is likely?",
            "stones, vent or water in the way",
            ("a lid that leaks", "a hose that has slipped off its stone"),
            "A leak, or a hose off its stone, makes the gauge fall.",
            "Size it, and see what the blower needs",
        ),
        Fact(
            "The gauge at the blower stands under the clean figure. What is likely?",
            "less air, a hose off its stone, or a lid that leaks",
            ("ice in the vent", "stones clogged with iron"),
            "What stands in the way of air makes the gauge rise.",
            "Size it, and see what the blower needs",
        ),
        Fact(
            "Where does a vent end best?",
            "straight up, over the roof, far from anything that opens",
            ("out of the wall under a window", "in the chimney, where it draws best"),
            "The local code and the authority that enforces it decide.",
            "Where the vent may end",
        ),
        Fact(
            "What is done before the lid is opened?",
            "shut the inlet, let the blower clear the tank, air the room, then stop the blower",
            (
                "stop the blower first, so that nothing blows out",
                "open it at once, with the pumps running, to see the stones work",
            ),
            "The air over the water is what the blower is there to get rid of.",
            "Blower and vent: what comes out must stay out",
        ),
        Fact(
            "What belongs on the open end of a vent outdoors?",
            "nothing, or a coarse mesh",
            ("a fine screen", "a cap that closes in wind"),
            "In frost a fine screen closes first.",
            "Water and ice in the vent",
        ),
    ),
)

VENT_AIR = Problem(
    name="vent_air",
    form="one-step",
    objective="Compute the radon in the air of a vent while water runs.",
    level=2,
    minutes=5,
    text="Raw water of {raw_radon} leaves the aerator with {treated_radon}. {aerator_flow} run "
    "through it, and {aerator_air} of air.",
    calculator="vent_leak",
    draws={
        "raw_radon": grid("10000", "30000", "1000", "pCi/L"),
        "treated_radon": grid("1000", "4000", "200", "pCi/L"),
        "aerator_flow": grid("4", "8", "0.2", "gpm"),
        "aerator_air": grid("8", "20", "1", "cfm"),
    },
    parts=(
        Part(
            finds="C_v",
            ask="What does the vent's air hold?",
            section="What is in that air, and what a leak does",
            slips=(
                Slip(
                    "Gallons and cubic feet are mixed: a cubic foot is 7.48 gallons.",
                    "c * (Q_a / gpm) / (G / cfm)",
                ),
                Slip("Only what the water loses goes into the air.", "C_v = C_r * Q_a / G"),
                Slip("That is what stays in the water.", "C_v = C_w * Q_a / G"),
                Slip("The ratio is turned over: more air thins it.", "C_v = c * G / Q_a"),
            ),
        ),
    ),
)

BLOWER = Problem(
    name="blower",
    form="multi-step",
    objective="Compute what pressure a blower needs, clean and fouled, and choose.",
    level=2,
    minutes=8,
    text="The bubbles start {bubble_depth} under the water. Stones, hose and air filter take "
    "{stone_loss} when clean, the vent next to nothing. Stones and vent may get worse by "
    "{fouling_margin} before they are cleaned. At this air the blower gives {blower_gives}.",
    calculator="blower_and_vent",
    draws={
        "bubble_depth": grid("12", "30", "1", "in"),
        "stone_loss": grid("4", "10", "0.5", "in of water"),
        "fouling_margin": grid("50", "150", "25", "%"),
        "blower_gives": grid("24", "48", "2", "in of water"),
    },
    parts=(
        Part(
            finds="p_c",
            ask="What does the blower need, clean?",
            section="Size it, and see what the blower needs",
            slips=(
                Slip("The stones take their part too.", "p_c = w * z_b"),
                Slip("The water over the stones is missing.", "p_c = dp_s + dp_v"),
            ),
        ),
        Part(
            finds="p_f",
            ask="And fouled?",
            section="Size it, and see what the blower needs",
            slips=(
                Slip(
                    "The water's depth does not change with dirt.",
                    "p_f = (w * z_b + dp_s + dp_v) * (1 + M_f)",
                ),
                Slip(
                    "Worse by a share means the old part and the share.",
                    "p_f = w * z_b + (dp_s + dp_v) * M_f",
                ),
            ),
        ),
        Part(
            finds="p_l",
            ask="What is left over when fouled? Give its sign.",
            section="Size it, and see what the blower needs",
            tolerance="0.5 in of water",
            digits=1,
            slips=(Slip("That is left over while clean.", "p_l = p_b - p_c"),),
        ),
        Pick(
            finds="enough",
            ask="Is the blower strong enough?",
            section="Size it, and see what the blower needs",
            options=(
                Option("yes", "Yes, until it is cleaned.", "p_f < p_b"),
                Option("clean", "Only while it is clean.", "p_c < p_b"),
                Option("no", "No, not even clean."),
            ),
            because="What it gives is held against what it needs, clean and fouled.",
        ),
    ),
)

POWER = Problem(
    name="power",
    form="multi-step",
    objective="Compute what a blower draws and what it costs in a year.",
    level=2,
    minutes=6,
    text="A blower moves {aerator_air}. The water is {bubble_depth} deep over the stones. They "
    "take {stone_loss} with hose and filter; the vent takes next to nothing. Blower and motor have "
    "together an efficiency of {blower_efficiency}. It runs {blower_hours} a day; electricity "
    "costs {price}.",
    calculator="blower_and_vent",
    draws={
        "aerator_air": grid("8", "20", "1", "cfm"),
        "bubble_depth": grid("12", "24", "2", "in"),
        "stone_loss": grid("4", "10", "1", "in of water"),
        "blower_efficiency": grid("25", "45", "5", "%"),
        "price": ("0.12", "0.15", "0.18", "0.24", "0.30"),
    },
    parts=(
        Part(
            finds="P_e",
            ask="What does it draw?",
            section="Size it, and see what the blower needs",
            slips=(
                Slip(
                    "The wire gives more than the air takes: divide by the efficiency.",
                    "P_e = G * p_c * eta",
                ),
                Slip("That is the air's power. The losses come on top.", "P_e = G * p_c"),
            ),
        ),
        Part(
            finds="E",
            ask="What energy is that in a year?",
            section="Size it, and see what the blower needs",
            slips=(Slip("That is one day's.", "E = P_e * t_b"),),
        ),
        Part(
            finds="B",
            ask="What does it cost in a year?",
            section="Size it, and see what the blower needs",
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a leaking vent does more harm than the water did.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. Raw water of {raw_radon}, treated "
    "{treated_radon}, {daily_use} used. The basement with the aerator holds {room_volume} of air "
    "and changes it {room_change}; radon itself decays at 0.00755 per h. About {leak_share} of the "
    "vent's air leaks into it. Untreated, ordinary use would put one ten-thousandth of the "
    "water's radon into the air of the house.",
    calculator="vent_leak",
    draws={
        "raw_radon": grid("10000", "30000", "2000", "pCi/L"),
        "treated_radon": grid("200", "800", "100", "pCi/L"),
        "daily_use": grid("120", "300", "20", "gal/day"),
        "room_volume": grid("3200", "8000", "400", "ft³"),
        "room_change": grid("0.2", "0.6", "0.05", "per h"),
        "leak_share": ("2 %", "5 %", "10 %", "20 %", "30 %", "40 %"),
    },
    parts=(
        Part(
            finds="A",
            ask="How much radon does the water let go in a day?",
            section="What is in that air, and what a leak does",
            slips=(
                Slip("Litres and gallons are mixed: a gallon is 3.785 litres.", "A * L / gal"),
                Slip("That is what stays in the water.", "A = C_w * Q_u * d"),
            ),
        ),
        Part(
            finds="C_l",
            ask="What does the leak add to the basement's air, day and night?",
            section="What is in that air, and what a leak does",
            marks=2,
            slips=(
                Slip("That is all of it in the room. Only a share leaks.", "C_a"),
                Slip("Hours and days are mixed: twenty-four to one.", "C_l * 24"),
            ),
        ),
        Part(
            finds="C_u",
            ask="What would the same water, untreated, add to the house?",
            section="What is in that air, and what a leak does",
        ),
        Pick(
            finds="verdict",
            ask="Is the aerator with this leak better than none?",
            section="What is in that air, and what a leak does",
            options=(
                Option("better", "Better than none.", "x < x_e"),
                Option("worse", "Worse than none."),
            ),
            because="The leak is held against the share at which basement and untreated house "
            "come out even.",
        ),
    ),
)

SET = ProblemSet(
    name="radon_vent",
    chapter="radon/vent.md",
    title="Blower and vent",
    revision="2026-11-25",
    problems=(FACTS, VENT_AIR, BLOWER, POWER, FIELD),
)
