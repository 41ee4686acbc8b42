"""Problems on carbon instead of aeration."""

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
    objective="Name what carbon gathers, and what follows for its place and its end.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "By which flow is a carbon bed for radon sized?",
            "the average of the day",
            ("the flow of a tap", "the peak of the morning"),
            "It holds radon until it has decayed.",
            "Common mistakes",
        ),
        Fact(
            "Which carbon is it sized by?",
            "the worn one",
            ("the new one", "the mean of both"),
            "The worn bed guards the house most of its life.",
            "Common mistakes",
        ),
        Fact(
            "Why does waiting not solve the disposal of old carbon?",
            "lead-210 takes 22 years to halve",
            ("radon takes 22 years to halve", "carbon never lets go of water"),
            "Radon and its short-lived followers die; the lead stays.",
            "Check yourself",
        ),
        Fact(
            "A bed stands in the basement. Where is the distance measured to?",
            "to where people are, the room above too",
            ("along the floor, to the next wall", "to the outside of the house"),
            "The bedroom is above.",
            "Common mistakes",
        ),
        Fact(
            "A meter at the old carbon is silent. Is the carbon clean?",
            "no: lead-210 hardly shows on it",
            ("yes: what is silent is clean", "yes, if it is dry"),
            "Ask the state's radiation office what to do with it.",
            "Common mistakes",
        ),
    ),
)

_BEDS = ("1 ft³", "1.5 ft³", "2 ft³", "2.5 ft³", "3 ft³")

CONTACT = Problem(
    name="contact",
    form="one-step",
    objective="Compute the contact time of a bed.",
    level=1,
    minutes=4,
    text="{bed_volume} of carbon treat {daily_use}.",
    calculator="carbon_bed",
    draws={
        "bed_volume": grid("1", "5", "0.1", "ft³"),
        "daily_use": grid("100", "300", "10", "gal/day"),
    },
    parts=(
        Part(
            finds="t_e",
            ask="What is the empty-bed contact time?",
            section="How big it must be",
            slips=(
                Slip(
                    "Gallons and cubic feet are mixed: a cubic foot is 7.48 gallons.",
                    "t_e * gal / ft**3",
                ),
                Slip("Volume over flow, not the other way.", "1 / t_e * second**2"),
            ),
        ),
    ),
)

REMOVED = Problem(
    name="removed",
    form="multi-step",
    objective="Compute what a carbon bed leaves, new and worn.",
    level=2,
    minutes=10,
    text="{bed_volume} of carbon with a constant Kss of {kss} treat {daily_use} of water of "
    "{raw_radon}. Worn, the carbon keeps {worn_share} of its constant.",
    calculator="carbon_bed",
    draws={
        "bed_volume": _BEDS,
        "kss": grid("1.5", "3", "0.1", "per h"),
        "daily_use": grid("150", "300", "10", "gal/day"),
        "raw_radon": grid("5000", "20000", "1000", "pCi/L"),
    },
    parts=(
        Part(finds="t_e", ask="What is the empty-bed contact time?", section="How big it must be"),
        Part(
            finds="R_n",
            ask="Which share does the new bed take out?",
            section="How big it must be",
            tolerance="0.4 %",
            slips=(Slip("That is the share that is left.", "1 - R_n"),),
        ),
        Part(
            finds="C_w",
            ask="What does the worn bed leave?",
            section="How big it must be",
            tolerance=0.03,
            slips=(
                Slip("That is the new bed.", "C_n"),
                Slip("The share belongs to the constant, not to the radon.", "C_r * w"),
            ),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a carbon bed stands far enough from people.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. A carbon bed takes {raw_radon} to "
    "{treated_radon} at {daily_use}. It stands {bed_distance} from a desk where somebody sits "
    "{bed_hours} a year. Radon decays at 0.00755 per h; one MBq gives 0.195 µSv/h at a metre.",
    calculator="carbon_dose",
    draws={
        "raw_radon": grid("10000", "40000", "2000", "pCi/L"),
        "treated_radon": grid("200", "600", "100", "pCi/L"),
        "daily_use": grid("120", "240", "20", "gal/day"),
        "bed_distance": grid("3", "10", "0.5", "ft"),
        "bed_hours": grid("1600", "3000", "200", "h"),
    },
    parts=(
        Part(
            finds="A",
            ask="How much radon does the bed hold?",
            section="What stays in it",
            slips=(Slip("Litres and gallons are mixed: a gallon is 3.785 litres.", "A * L / gal"),),
        ),
        Part(
            finds="H",
            ask="What is the dose rate at the desk, at most?",
            section="How far off it must stand",
            slips=(
                Slip("It falls with the square of the distance.", "H * r / r_1"),
                Slip("That is at a metre.", "H * (r / r_1)**2"),
            ),
        ),
        Part(
            finds="D",
            ask="And the dose in a year?",
            section="How far off it must stand",
            slips=(Slip("That counts every hour of the year.", "H * year"),),
        ),
        Pick(
            finds="far",
            ask="Is the desk far enough for 1 mSv a year?",
            section="How far off it must stand",
            options=(
                Option("yes", "Yes.", "D < 1 * mSv"),
                Option("no", "No: move the one or the other."),
            ),
            because="The dose of the year is held against the millisievert.",
        ),
    ),
)

SET = ProblemSet(
    name="radon_carbon",
    chapter="radon/carbon.md",
    title="Carbon instead of aeration",
    revision="2026-11-25",
    problems=(FACTS, CONTACT, REMOVED, FIELD),
)
