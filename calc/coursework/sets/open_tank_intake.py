"""Problems on the intake."""

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
    objective="Explain why water must stand over an intake.",
    level=1,
    minutes=4,
    facts=(
        Fact(
            "Which flow counts for the intake if the limit sits after the pressure tank?",
            "what pump 2 gives with nothing holding it back",
            ("what the limit passes", "the mean flow of the house"),
            "The limit then holds back the house, not the pump.",
            "Check yourself",
        ),
        Fact(
            "From where do you count the water that can be used?",
            "from the depth that must stand over the intake, upward",
            ("from the bottom of the tank, upward", "from the intake's opening, upward"),
            "What stands lower keeps the whirl away and cannot be drawn.",
            "Common mistakes",
        ),
        Fact(
            "Where is the low-level switch set?",
            "no lower than the water that must stand over the intake",
            ("at the intake's opening", "halfway between intake and bottom"),
            "At the intake it acts when the pump has breathed already.",
            "Common mistakes",
        ),
        Fact(
            "Will more depth keep the bubbles of an air stone out of pump 2?",
            "no: they need a baffle and still water",
            ("yes, from a foot on", "yes, if the intake points down"),
            "Depth keeps away the whirl, not bubbles that are carried along.",
            "Check yourself",
        ),
        Fact(
            "Which flow decides how deep an intake must lie?",
            "the largest",
            ("the mean of the day", "the smallest"),
            "The whirl comes with the most.",
            "Common mistakes",
        ),
    ),
)

_BORES = ("0.824 in", "1.049 in", "1.38 in", "1.61 in")

DEEP = Problem(
    name="deep",
    form="one-step",
    objective="Compute how much water must stand over an intake.",
    level=2,
    minutes=6,
    text="Pump 2 could give {pump}. A limit before the house pressure tank lets {worst_outlet} "
    "pass. The intake's opening is {intake_bore} wide.",
    calculator="intake_depth",
    draws={
        "pump": grid("10", "16", "0.5", "gpm"),
        "worst_outlet": grid("4", "8", "0.2", "gpm"),
        "intake_bore": _BORES,
    },
    fixed={"float_open": "20 gal", "float_closed": "24 gal"},
    parts=(
        Part(
            finds="v",
            ask="How fast is the water in the opening?",
            section="How much must stand over it",
            slips=(
                Slip("Behind the limit pump 2 gives no more than it passes.", "Q = Q_p"),
                Slip("That takes the bore for a radius.", "D = 2 * D"),
                Slip("That takes half the bore for the bore.", "D = D / 2"),
            ),
        ),
        Part(
            finds="S",
            ask="How much water must stand over it?",
            section="How much must stand over it",
            tolerance=0.03,
            slips=(
                Slip("Behind the limit pump 2 gives no more than it passes.", "Q = Q_p"),
                Slip("The bore itself belongs to it: one and 2.3 times F.", "S = D * 2.3 * F"),
            ),
        ),
    ),
)

USABLE = Problem(
    name="usable",
    form="multi-step",
    objective="Compute what water of an open tank can be used.",
    level=2,
    minutes=9,
    text="The open tank has a surface of {tank_area}. When the float opens, {float_open} stand "
    "over the intake, whose opening is {intake_bore} wide. The limit sits before the house "
    "pressure tank and lets {worst_outlet} pass; pump 2 could give {pump}.",
    calculator="intake_depth",
    draws={
        "tank_area": grid("1.5", "4", "0.25", "ft²"),
        "float_open": grid("12", "24", "1", "gal"),
        "intake_bore": _BORES,
        "worst_outlet": grid("4", "8", "0.5", "gpm"),
    },
    fixed={"float_closed": "30 gal", "overflow_height": "60 in"},
    parts=(
        Part(
            finds="S",
            ask="How much water must stand over the intake?",
            section="How much must stand over it",
            tolerance=0.03,
            slips=(Slip("Behind the limit pump 2 gives no more than it passes.", "Q = Q_p"),),
        ),
        Part(
            finds="V_s",
            ask="How many gallons is that?",
            section="What is left to use",
            slips=(Slip("Feet and inches are mixed: twelve to one.", "V_s * 12"),),
        ),
        Part(
            finds="usable",
            ask="How much of the water can be used when the float opens?",
            section="What is left to use",
            tolerance="0.3 gal",
            slips=(Slip("All that stands there is not yours: some must stay.", "V_on"),),
        ),
    ),
)

FIELD = Problem(
    name="field",
    form="field case",
    objective="Decide at what heights a float and a switch must act.",
    level=3,
    minutes=12,
    text="Invented: the Quarry Road house at Alder Ledge. Limit before the house pressure tank, "
    "{worst_outlet}; pump 2 could give {pump}. Opening of the intake {intake_bore}, surface of the "
    "tank {tank_area}. The float opens at {float_open} over the intake and closes at "
    "{float_closed}; {keep} are to stay over what the intake needs. The overflow lies "
    "{overflow_height} over the intake.",
    calculator="intake_depth",
    draws={
        "worst_outlet": grid("4", "8", "0.5", "gpm"),
        "intake_bore": _BORES,
        "tank_area": grid("1.5", "3", "0.25", "ft²"),
        "float_open": grid("6", "14", "0.5", "gal"),
        "keep": ("1 gal", "2 gal", "3 gal"),
    },
    fixed={"float_closed": "16 gal", "overflow_height": "30 in"},
    parts=(
        Part(
            finds="h_s",
            ask="How high over the intake is the low-level switch, at the lowest?",
            section="The heights",
            tolerance=0.03,
        ),
        Part(
            finds="h_on",
            ask="How high must the float open?",
            section="The heights",
            tolerance=0.03,
            slips=(Slip("The water to keep stands over what the intake needs.", "V_k / A"),),
        ),
        Pick(
            finds="raise",
            ask="Does it open high enough today?",
            section="The heights",
            options=(
                Option("yes", "Yes.", "h_on < h_n"),
                Option("no", "No: the float must be raised."),
            ),
            because="Today's height is the water at the opening over the tank's surface.",
        ),
    ),
)

SET = ProblemSet(
    name="open_tank_intake",
    chapter="open-tank/intake.md",
    title="The intake",
    revision="2026-11-25",
    problems=(FACTS, DEEP, USABLE, FIELD),
)
