"""Problems on iron and manganese."""

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
    objective="Name what decides on a filter for iron.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "A glass is clear, stays clear for a day with air, and the filter takes nothing out. "
            "The laboratory found 2 mg/L. What is it?",
            "bound iron",
            ("clear-water iron", "rust"),
            "Air does not turn it, and it is too fine to catch.",
            "Check yourself",
        ),
        Fact(
            "At pH 7.0 half of the iron takes 48 minutes. What at pH 7.5?",
            "a tenth of that",
            ("half of that", "twice that"),
            "One step of pH is a hundred times.",
            "How long it takes",
        ),
        Fact(
            "A softener stands behind an open tank, and salt cannot keep up. What is looked at "
            "first?",
            "the resin: rust in it",
            ("the salt's brand", "the well pump"),
            "Air has made rust of the iron, and rust stays in the resin.",
            "Check yourself",
        ),
        Fact(
            "What becomes of a wide tank on a small well?",
            "it is never washed, only rinsed",
            ("it needs no wash", "it takes more iron for ever"),
            "The wash asks a flow for each area.",
            "Common mistakes",
        ),
        Fact(
            "Iron filter first or neutralizer first?",
            "the neutralizer",
            ("the iron filter", "side by side"),
            "The acid of the iron stops its own rusting.",
            "Common mistakes",
        ),
    ),
)

STAY = Problem(
    name="stay",
    form="one-step",
    objective="Compute how long water stays in a tank, and what its iron takes from the air.",
    level=1,
    minutes=4,
    text="A tank holds {contact_volume}. At most {contact_flow} pass it. The water has {raw_iron} "
    "of dissolved iron, and each milligram of iron takes 0.143 mg of oxygen.",
    calculator="iron_contact",
    draws={
        "contact_volume": grid("40", "120", "10", "gal"),
        "contact_flow": grid("3", "6", "0.5", "gpm"),
        "raw_iron": grid("1", "5", "0.2", "mg/L"),
    },
    parts=(
        Part(
            finds="t_k",
            ask="How long does the water stay at the largest flow?",
            section="How long it takes",
            slips=(Slip("Turn it over: volume over flow.", "minute ** 2 / t_k"),),
        ),
        Part(
            finds="D",
            ask="How much oxygen does the iron take?",
            section="What rusting takes",
            slips=(Slip("That is iron for each oxygen: turn it over.", "F / d_i"),),
        ),
    ),
)

FORM = Problem(
    name="form",
    form="multi-step",
    objective="Find in which form the iron is, by three samples.",
    level=2,
    minutes=8,
    text="The unfiltered sample has {total_iron} of iron. What passes a fine filter at once has "
    "{iron_filtered}; what passes it after a day with air has {iron_stood}.",
    calculator="iron_form",
    draws={
        "total_iron": grid("2.6", "4.4", "0.1", "mg/L"),
        "iron_filtered": grid("1", "2.4", "0.1", "mg/L"),
        "iron_stood": grid("0.1", "0.6", "0.1", "mg/L"),
    },
    parts=(
        Part(
            finds="F_d",
            ask="How much of it is dissolved?",
            section="Which iron it is",
            slips=(
                Slip("What still passes after a day is bound, not dissolved.", "F_p"),
                Slip("That has the rust in it.", "C_Fe - F_b"),
            ),
        ),
        Part(
            finds="F_r",
            ask="How much is rust already?",
            section="Which iron it is",
            slips=(Slip("That is the rust and the dissolved iron.", "C_Fe - F_b"),),
        ),
        Part(
            finds="x_d",
            ask="Which share is dissolved?",
            section="Which iron it is",
            slips=(Slip("A share of all the iron.", "x_d = F_d / F_p"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a well can wash an iron filter.",
    level=3,
    minutes=10,
    text="Invented: the Quarry Road house at Alder Ledge. A greensand filter of {tank_diameter} "
    "inside is offered; such a bed asks 8 gpm/ft² to be washed. The pail at its drain shows "
    "{backwash_flow}. The largest flow in service is {service_flow}.",
    calculator="iron_filter",
    draws={
        "tank_diameter": ("9 in", "10 in", "12 in", "13 in", "14 in"),
        "backwash_flow": grid("3", "9", "0.2", "gpm"),
        "service_flow": grid("4", "7", "0.2", "gpm"),
    },
    parts=(
        Part(
            finds="Q_1w",
            ask="Which flow does the wash take at the least?",
            section="The filter",
            slips=(
                Slip("That takes the diameter for the radius.", "D_f = 2 * D_f"),
                Slip("That takes half the diameter for the diameter.", "D_f = D_f / 2"),
            ),
        ),
        Part(
            finds="v",
            ask="What is the flow for each area in service?",
            section="The filter",
            slips=(Slip("That is the wash.", "Q_b / A_f"),),
        ),
        Pick(
            finds="wash",
            ask="Can it be washed?",
            section="The filter",
            options=(
                Option("no", "No: a narrower tank, or two of them.", "Q_b < Q_1w"),
                Option("yes", "Yes."),
            ),
            because="A bed that is not lifted is only rinsed.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="treatment_iron",
    chapter="treatment/iron.md",
    title="Iron and manganese",
    revision="2026-11-25",
    problems=(FACTS, STAY, FORM, FIELD),
)
