"""Problems on the train: which box stands where, and who washes whom."""

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
    objective="Explain which box stands where.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Where does the lamp stand when there is a carbon filter?",
            "behind it, last",
            ("before it", "at the well"),
            "Germs live in carbon.",
            "Check yourself",
        ),
        Fact(
            "Why does the pH fall a little in an iron filter?",
            "rusting iron makes acid",
            ("the media is acid", "air comes in"),
            "So the neutralizer stands before it.",
            "Check yourself",
        ),
        Fact(
            "Iron filter and softener both wash at two at night. What is wrong?",
            "two washes at one hour",
            ("nothing", "night is the wrong time"),
            "Timers are set two hours apart.",
            "Who washes whom",
        ),
        Fact(
            "All boxes look perfect when the gauges are read. When was that?",
            "at no flow",
            ("at the largest flow", "in summer"),
            "A drop needs a flow.",
            "Common mistakes",
        ),
        Fact(
            "A lamp was set first, to kill what comes from the well. What becomes of it?",
            "iron and scale cover the sleeve",
            ("it lasts longer", "nothing"),
            "It takes weeks.",
            "Common mistakes",
        ),
    ),
)

WELL = Problem(
    name="well",
    form="one-step",
    objective="Compute the wash of a bed, and choose whether a pump can feed it.",
    level=1,
    minutes=5,
    text="A bed of stone stands before the open tank, in a tank of {tank_diameter} inside. It asks "
    "8 gpm/ft² to be washed. Pump 1 gives {well_pump}.",
    calculator="treatment_train",
    draws={
        "tank_diameter": grid("8", "16", "0.5", "in"),
        "well_pump": grid("4", "9.8", "0.1", "gpm"),
    },
    fixed={"place_1": "neutralizer", "place_2": "none", "place_3": "none", "place_4": "none"},
    parts=(
        Part(
            finds="Q_y",
            ask="Which flow does the wash ask?",
            section="Who washes whom",
            slips=(
                Slip("That takes the diameter for the radius.", "D_f = 2 * D_f"),
                Slip("That takes half the diameter for the diameter.", "D_f = D_f / 2"),
            ),
        ),
        Pick(
            finds="can",
            ask="Can pump 1 wash it?",
            section="Who washes whom",
            options=(
                Option("no", "No: the bed is not lifted, and cements.", "well_pump < Q_y"),
                Option("yes", "Yes, if the well holds out."),
            ),
            because="The pump's flow is held against that of the wash.",
        ),
    ),
)

TRAIN = {"place_1": "sediment", "place_2": "tank_strong", "place_3": "neutralizer"}

HOUSE = Problem(
    name="house",
    form="multi-step",
    objective="Compute by how much a wash draws down the open tank.",
    level=2,
    minutes=10,
    text="A bed of stone stands behind the open tank, in a tank of {tank_diameter} inside. Pump 2 "
    "washes it for 10 minutes with 8 gpm/ft², out of the open tank. {service_flow} enter that tank "
    "meanwhile.",
    calculator="treatment_train",
    draws={
        "tank_diameter": grid("12.5", "20", "0.5", "in"),
        "service_flow": grid("3", "6.4", "0.05", "gpm"),
    },
    fixed={**TRAIN, "place_4": "none"},
    parts=(
        Part(
            finds="Q_z",
            ask="Which flow does the wash ask?",
            section="Who washes whom",
            slips=(
                Slip("That takes the diameter for the radius.", "D_f = 2 * D_f"),
                Slip("That takes half the diameter for the diameter.", "D_f = D_f / 2"),
            ),
        ),
        Part(
            finds="V_n",
            ask="By how much does the open tank go down?",
            section="Who washes whom",
            tolerance=0.05,
            slips=(Slip("Water enters all the while.", "V_n = Q_z * t_w"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide whether a bed may stand behind the open tank.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. A shop would put a neutralizer of "
    "{tank_diameter} inside behind the open tank. Its stone asks 8 gpm/ft² for 10 minutes, which "
    "pump 2 takes from the open tank. {service_flow} enter that tank, and {float_open} stand over "
    "the intake when the float opens.",
    calculator="treatment_train",
    draws={
        "tank_diameter": grid("12", "15", "0.5", "in"),
        "service_flow": grid("3", "5.9", "0.1", "gpm"),
        "float_open": grid("8", "30", "2", "gal"),
    },
    fixed={**TRAIN, "place_4": "none"},
    parts=(
        Part(
            finds="V_n",
            ask="By how much does the wash draw the open tank down?",
            section="Who washes whom",
            tolerance=0.05,
            slips=(Slip("Water enters all the while.", "V_n = Q_z * t_w"),),
        ),
        Pick(
            finds="stand",
            ask="May it stand there, if nobody draws during the wash?",
            section="Who washes whom",
            options=(
                Option("no", "No: pump 2 draws air.", "float_open < V_n"),
                Option("yes", "It may, at night, and with nobody drawing."),
            ),
            because="What the wash takes is held against what stands over the intake.",
            marks=2,
        ),
    ),
)

SET = ProblemSet(
    name="treatment_order",
    chapter="treatment/order.md",
    title="The train: which box stands where",
    revision="2026-11-25",
    problems=(FACTS, WELL, HOUSE, FIELD),
)
